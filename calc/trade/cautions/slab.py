"""What to watch in the slab: thickness, cover, dowels, panels, air and strength."""

from __future__ import annotations

from calc.declare import *
from calc.trade.cautions.conditions import AreaSlopes, DowelCover, FootingCover, Restraint
from calc.trade.inputs.pour import Mixture
from calc.trade.inputs.site import Permissions

_USUAL = "common practice, no source; the city's own detail sheet wins"
_ACI = "ACI 302.1R-96, seen in print"


class SlabCautions(Section, title="Cautions of the slab", sheet="Checks"):
    """What was found, the number, the usual practice and who says so, and what to do. Local code always wins."""

    aspect_most = factor(
        "Longer over shorter side, most", "", 1.5, low=1.25, high=1.5, source="ACI 302.1R-96, 1.5, seen in print"
    )
    frozen_strength = factor(
        "Strength where it freezes, least", "psi", 4000, low=3500, high=4500, source="ACI 318 exposure F, from memory"
    )

    thin_cover = caution(
        "Thin over a footing",
        Severity.STOP,
        greatest(FootingCover.below_least) > 0,
        "Too little concrete lies over an old footing; the number is what is lacking.",
        greatest(FootingCover.below_least),
        "in",
        usual="2 in at least, bonded",
        do="Chip the footing lower, or raise the slab.",
        source=_USUAL,
    )
    half_cover = caution(
        "Half a slab over a footing",
        Severity.CAUTION,
        both(greatest(FootingCover.below_half) > 0, greatest(FootingCover.below_least) <= 0),
        "Less than half of the slab lies over an old footing; the number is what is lacking to half.",
        greatest(FootingCover.below_half),
        "in",
        usual="half of the slab; else it cracks over the edge",
        do="Put a joint over the edge of the footing, chip it lower, or thicken the slab.",
        source=_USUAL,
    )
    vehicles = caution(
        "Thin under vehicles",
        Severity.CAUTION,
        greatest(AreaSlopes.too_thin) > 0,
        "The slab is thinner than usual under what drives on it; the number is what is lacking.",
        greatest(AreaSlopes.too_thin),
        "in",
        usual="5 in under cars, 6 in under trucks",
        do="Thicken it, or keep vehicles off.",
        source=_USUAL,
    )
    dowel_cover = caution(
        "Dowels near the face",
        Severity.CAUTION,
        both(greatest(DowelCover.cover_lacking) > 0, greatest(DowelCover.stop_lacking) <= 0),
        "Dowels have less concrete over and under them than usual; the number is what is lacking.",
        greatest(DowelCover.cover_lacking),
        "in",
        usual="1 1/2 in above and below; nearer, the edge spalls",
        do="Drill at mid-depth, take a smaller bar, or thicken the slab.",
        source=_USUAL,
    )
    dowel_stop = caution(
        "Dowels too near the face",
        Severity.STOP,
        greatest(DowelCover.stop_lacking) > 0,
        "Dowels have far less concrete over and under them than usual; the number is what is lacking to 1 in.",
        greatest(DowelCover.stop_lacking),
        "in",
        usual="1 1/2 in above and below",
        do="Thicken the slab, or leave the dowels out.",
        source=_USUAL,
    )
    dowel_end = caution(
        "Dowels near the end",
        Severity.CAUTION,
        greatest(DowelCover.end_lacking) > 0,
        "The end dowel is nearer the end of its edge than usual; the number is what is lacking.",
        greatest(DowelCover.end_lacking),
        "in",
        usual="6 in from the end",
        do="Move the end dowels in.",
        source=_USUAL,
    )
    hole = caution(
        "Ribbed bar in a tight hole",
        Severity.CAUTION,
        total(DowelCover.tight) > 0,
        "A ribbed bar will not start in a hole of its own size.",
        total(DowelCover.tight),
        "",
        usual="smooth rod in its own size, or 1/16 to 1/8 in more and epoxy",
        do="Take smooth rod, or drill larger and glue.",
        source="common practice, no source: ribs measure about 1/16 in more than the bar",
    )
    dowel_size = caution(
        "Small dowels under vehicles",
        Severity.CAUTION,
        greatest(DowelCover.small) > 0,
        "Dowels are thinner than usual under what drives on it; the number is what is lacking.",
        greatest(DowelCover.small),
        "in",
        usual="1/2 in under cars, 5/8 in under trucks",
        do="Take larger bars.",
        source=_USUAL,
    )
    aspect = caution(
        "Long panels",
        Severity.CAUTION,
        greatest(AreaSlopes.aspect_free) > aspect_most,
        "A panel is long for its width.",
        greatest(AreaSlopes.aspect_free),
        "",
        usual="1 1/2 times as long as wide, 1 1/4 better",
        do="Add a joint.",
        source=_ACI,
    )
    narrow_panel = caution(
        "Long panels of a narrow strip",
        Severity.NOTE,
        greatest(AreaSlopes.aspect_floored) > aspect_most,
        "A strip is so narrow that its panels are long for their width.",
        greatest(AreaSlopes.aspect_floored),
        "",
        usual="joints no nearer than 4 ft in a narrow strip",
        do="Tell the client that it may crack between the joints.",
        source="common practice, no source",
    )
    long_panel = caution(
        "Panel too long for its thickness",
        Severity.CAUTION,
        greatest(AreaSlopes.long_panel) > 0,
        "A panel is longer than its thickness allows; the number is by how much.",
        greatest(AreaSlopes.long_panel),
        "ft",
        usual="24 to 36 times the thickness",
        do="Add a joint.",
        source=_ACI,
    )
    restraint = caution(
        "Held on all sides",
        Severity.CAUTION,
        total(Restraint.held) > 0,
        "An area is bonded below, doweled at a side and poured against a wall: it cannot shrink.",
        total(Restraint.held),
        "",
        usual="one of the three is left free",
        do="Isolate the wall, or put a slip sheet over the footing.",
        source="common practice, no source",
    )
    no_air = caution(
        "No air where it freezes",
        Severity.STOP,
        both(Permissions.freezes.is_("yes"), Mixture.air.is_("no")),
        "The slab freezes while wet, and the mix has no entrained air.",
        Mixture.strength,
        "psi",
        usual="4 1/2 to 7 1/2 % of air, by the exposure",
        do="Order air in the mix.",
        source="ACI 318 and ACI 332, from memory; local code wins",
    )
    weak = caution(
        "Weak where it freezes",
        Severity.CAUTION,
        both(Permissions.freezes.is_("yes"), Mixture.strength < frozen_strength),
        "The slab freezes while wet, and the mix is weaker than usual there.",
        Mixture.strength,
        "psi",
        usual="4,000 to 4,500 psi, water to cement 0.45",
        do="Order a stronger mix.",
        source="ACI 318 exposure F, from memory; local code wins",
    )
