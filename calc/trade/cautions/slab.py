"""Cautions of the slab: thickness, cover, dowels, joints and panels, restraint, mix and base."""

from __future__ import annotations

from calc.declare import *
from calc.trade.cautions.conditions import AreaSlopes, DowelCover, FootingCover, Restraint
from calc.trade.inputs.areas import Area
from calc.trade.inputs.pour import Mixture
from calc.trade.inputs.site import Permissions
from calc.trade.takeoff.joints import JointDepth

_PRACTICE = "common practice, no source; the city's own detail sheet governs"
_ACI = "ACI 302.1R-96, seen in print"


class SlabCautions(Section, title="Slab cautions", sheet="Checks"):
    """What was found, the number, the usual practice with its source, and what to do. Local code governs."""

    min_thickness = factor(
        "Thin slab, caution below",
        "in",
        3.5,
        low=3,
        high=4,
        source="common practice, no source: the usual walk is 4 in",
    )
    stop_thickness = factor("Thin slab, stop below", "in", 2, low=2, high=3, source="common practice, no source")
    max_aspect = factor(
        "Panel length to width, max", "", 1.5, low=1.25, high=1.5, source="ACI 302.1R-96, 1.5, seen in print"
    )
    min_freeze_strength = factor(
        "Strength in freeze-thaw exposure, min",
        "psi",
        4000,
        low=3500,
        high=4500,
        source="ACI 318 exposure F, from memory",
    )
    max_base = factor("Base depth, caution above", "in", 8, low=6, high=18, source="common practice, no source")

    too_thin = caution(
        "Slab too thin",
        Severity.STOP,
        least(Area.thickness) < stop_thickness,
        "The thinnest slab is far below the usual thickness.",
        least(Area.thickness),
        "in",
        usual="4 in for a walk, 5 in under cars, 6 in under trucks",
        do="Thicken it, or acknowledge it in Overrides with a reason; ask an engineer where it carries load.",
        source="common practice, no source; local code governs",
    )
    thin = caution(
        "Thin slab",
        Severity.CAUTION,
        both(least(Area.thickness) < min_thickness, least(Area.thickness) >= stop_thickness),
        "The thinnest slab is below the usual thickness.",
        least(Area.thickness),
        "in",
        usual="4 in for a walk, 5 in under cars, 6 in under trucks",
        do="Thicken it, or state on the bid that it is thinner than usual.",
        source="common practice, no source; local code governs",
    )
    thin_cover = caution(
        "Too little cover over a footing",
        Severity.STOP,
        greatest(FootingCover.cover_shortfall) > 0,
        "The concrete over an old footing is below the minimum; the number is the shortfall.",
        greatest(FootingCover.cover_shortfall),
        "in",
        usual="at least 2 in, bonded",
        do="Chip the footing lower, or raise the slab.",
        source=_PRACTICE,
    )
    half_cover = caution(
        "Cover over a footing below half the slab",
        Severity.CAUTION,
        both(greatest(FootingCover.half_depth_shortfall) > 0, greatest(FootingCover.cover_shortfall) <= 0),
        "The concrete over an old footing is less than half the slab; the number is the shortfall.",
        greatest(FootingCover.half_depth_shortfall),
        "in",
        usual="at least half the slab; otherwise it cracks over the edge of the footing",
        do="Put a joint over the edge of the footing, chip it lower, or thicken the slab.",
        source=_PRACTICE,
    )
    thin_for_vehicles = caution(
        "Slab thin for vehicles",
        Severity.CAUTION,
        greatest(AreaSlopes.thickness_shortfall) > 0,
        "The slab is thinner than usual for the vehicles on it; the number is the shortfall.",
        greatest(AreaSlopes.thickness_shortfall),
        "in",
        usual="5 in under cars, 6 in under trucks",
        do="Thicken it, or keep vehicles off.",
        source=_PRACTICE,
    )
    dowel_cover = caution(
        "Low dowel cover",
        Severity.CAUTION,
        both(greatest(DowelCover.cover_shortfall) > 0, greatest(DowelCover.stop_shortfall) <= 0),
        "The concrete cover of the dowels is below usual; the number is the shortfall.",
        greatest(DowelCover.cover_shortfall),
        "in",
        usual="1 1/2 in above and below; with less, the edge spalls",
        do="Drill at mid-depth, use a smaller bar, or thicken the slab.",
        source=_PRACTICE,
    )
    dowel_stop = caution(
        "Too little dowel cover",
        Severity.STOP,
        greatest(DowelCover.stop_shortfall) > 0,
        "The concrete cover of the dowels is far below usual; the number is the shortfall to 1 in.",
        greatest(DowelCover.stop_shortfall),
        "in",
        usual="1 1/2 in above and below",
        do="Thicken the slab, or leave the dowels out.",
        source=_PRACTICE,
    )
    dowel_end = caution(
        "Short dowel end distance",
        Severity.CAUTION,
        greatest(DowelCover.end_shortfall) > 0,
        "The end dowel is closer to the end of its edge than usual; the number is the shortfall.",
        greatest(DowelCover.end_shortfall),
        "in",
        usual="6 in from the end",
        do="Move the end dowels in.",
        source=_PRACTICE,
    )
    tight_hole = caution(
        "Deformed bar in a tight hole",
        Severity.CAUTION,
        total(DowelCover.tight_hole) > 0,
        "A deformed bar does not fit in a hole of its nominal diameter; the number is how many edges.",
        total(DowelCover.tight_hole),
        "",
        usual="smooth bar in a hole of its diameter, or a hole 1/16 to 1/8 in larger with epoxy",
        do="Use smooth bar, or drill larger and epoxy.",
        source="common practice, no source: deformations add about 1/16 in to the diameter",
    )
    dowel_size = caution(
        "Dowels small for vehicles",
        Severity.CAUTION,
        greatest(DowelCover.bar_shortfall) > 0,
        "The dowels are smaller than usual for the vehicles on the slab; the number is the shortfall.",
        greatest(DowelCover.bar_shortfall),
        "in",
        usual="1/2 in under cars, 5/8 in under trucks",
        do="Use larger bars.",
        source=_PRACTICE,
    )
    shallow_joints = caution(
        "Joints too shallow",
        Severity.CAUTION,
        greatest(JointDepth.short_by) > 0,
        "The joints are shallower than the slab needs; the number is the shortfall.",
        greatest(JointDepth.short_by),
        "in",
        usual="a quarter of the thickness, at least 1 in",
        do="Use a deeper groover bit, or saw deeper.",
        source="ACI 302.1R and NRMCA CIP 6, partly from memory",
    )
    long_panels = caution(
        "Long panels",
        Severity.CAUTION,
        greatest(AreaSlopes.aspect_by_width) > max_aspect,
        "A panel is long for its width; the number is length to width.",
        greatest(AreaSlopes.aspect_by_width),
        "",
        usual="1 1/2 times as long as wide at most, 1 1/4 is better",
        do="Add a joint.",
        source=_ACI,
    )
    narrow_strip = caution(
        "Long panels in a narrow strip",
        Severity.NOTE,
        greatest(AreaSlopes.aspect_at_min_spacing) > max_aspect,
        "A strip is so narrow that its panels are long for their width; the number is length to width.",
        greatest(AreaSlopes.aspect_at_min_spacing),
        "",
        usual="joints no closer than 4 ft in a narrow strip",
        do="Tell the client that it may crack between the joints.",
        source="common practice, no source",
    )
    panel_length = caution(
        "Panel too long for its thickness",
        Severity.CAUTION,
        greatest(AreaSlopes.excess_panel_length) > 0,
        "A panel is longer than its thickness allows; the number is the excess.",
        greatest(AreaSlopes.excess_panel_length),
        "ft",
        usual="24 to 36 times the thickness",
        do="Add a joint.",
        source=_ACI,
    )
    restraint = caution(
        "Over-restrained slab",
        Severity.CAUTION,
        total(Restraint.restrained) > 0,
        "An area is bonded below, doweled at an edge and placed against a wall, so it cannot shrink.",
        total(Restraint.restrained),
        "",
        usual="at least one of the three left free",
        do="Isolate the wall, or put a bond breaker over the footing.",
        source="common practice, no source",
    )
    no_air = caution(
        "No entrained air in freeze-thaw exposure",
        Severity.STOP,
        both(Permissions.freezes.is_("yes"), Mixture.air.is_("no")),
        "The slab freezes while wet, and the mix has no entrained air; the number is its strength.",
        Mixture.strength,
        "psi",
        usual="4 1/2 to 7 1/2 % air, by exposure",
        do="Order entrained air in the mix.",
        source="ACI 318 and ACI 332, from memory; local code governs",
    )
    low_strength = caution(
        "Low strength for freeze-thaw exposure",
        Severity.CAUTION,
        both(Permissions.freezes.is_("yes"), Mixture.strength < min_freeze_strength),
        "The slab freezes while wet, and the mix is weaker than usual for that.",
        Mixture.strength,
        "psi",
        usual="4,000 to 4,500 psi, water-cement ratio 0.45",
        do="Order a stronger mix.",
        source="ACI 318 exposure F, from memory; local code governs",
    )
    deep_base = caution(
        "Deep base",
        Severity.CAUTION,
        greatest(Area.base) > max_base,
        "The base is deeper than usual: was a width typed as a depth?",
        greatest(Area.base),
        "in",
        usual="up to 8 in under flatwork",
        do="Check the column base in of Areas.",
        source="common practice, no source: to find a typing error",
    )
