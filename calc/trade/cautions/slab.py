"""Cautions of the slab: thickness, cover, dowels, joints and panels, restraint, mix and base."""

from __future__ import annotations

from calc.declare import *
from calc.trade.cautions.conditions import AreaSlopes, DowelCover, FootingCover, Restraint
from calc.trade.cautions.worst import worst
from calc.trade.inputs.areas import Area
from calc.trade.inputs.pour import Mixture
from calc.trade.inputs.site import Permissions
from calc.trade.takeoff.joints import JointDepth, Panel

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
        do="Thicken it, or ask an engineer and acknowledge it in Overrides with a reason.",
        brief="Thicken it, or ask an engineer and acknowledge it.",
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
        brief="Thicken it, or say on the bid that it is thin.",
        source="common practice, no source; local code governs",
    )
    thin_cover = worst(
        "Too little cover over a footing",
        Severity.STOP,
        "The concrete over an old footing is below the minimum; the number is the shortfall.",
        FootingCover.cover_shortfall,
        usual="at least 2 in, bonded",
        do="Chip the footing lower, or raise the slab.",
        source=_PRACTICE,
    )
    half_cover = worst(
        "Cover over a footing below half the slab",
        Severity.CAUTION,
        "The concrete over an old footing is less than half the slab; the number is the shortfall.",
        FootingCover.half_depth_shortfall,
        unless=greatest(FootingCover.cover_shortfall) > 0,
        usual="at least half the slab; otherwise it cracks over the edge of the footing",
        do="Put a joint over the edge of the footing, chip it lower, or thicken the slab.",
        brief="Joint over the footing edge, chip it, or thicken.",
        source=_PRACTICE,
    )
    thin_for_vehicles = worst(
        "Slab thin for vehicles",
        Severity.CAUTION,
        "The slab is thinner than usual for the vehicles on it; the number is the shortfall.",
        AreaSlopes.thickness_shortfall,
        usual="5 in under cars, 6 in under trucks",
        do="Thicken it, or keep vehicles off.",
        source=_PRACTICE,
    )
    without_joints = caution(
        "No joint layout",
        Severity.CAUTION,
        total(AreaSlopes.without_joints) > 0,
        "An area larger than a panel has no joints; its length or width is not known.",
        total(AreaSlopes.without_joints),
        "ft2",
        usual="joints no farther apart than 30 times the thickness, nor 15 ft",
        do="Type the length and the panel width for its joint layout in Areas.",
        brief="Type its joint layout in Areas.",
        source="ACI 302.1R-96 and NRMCA CIP 6, seen in print",
    )
    driven_unreinforced = caution(
        "Vehicles without reinforcement",
        Severity.CAUTION,
        total(AreaSlopes.driven_unreinforced) > 0,
        "Vehicles drive on a slab without bars or mesh; the number is its area. Macro fiber counts as none.",
        total(AreaSlopes.driven_unreinforced),
        "ft2",
        usual="#4 at 18 in both ways, or mesh, where trucks drive; city details often ask for it",
        do="Ask what the details want, and type it in Reinforcement.",
        brief="Ask what the details want; type Reinforcement.",
        source=_PRACTICE,
    )
    reinforced = caution(
        "Reinforcement does not replace joints",
        Severity.NOTE,
        total(AreaSlopes.reinforced) > 0,
        "Bars or mesh hold cracks together and prevent none; the number is the reinforced area.",
        total(AreaSlopes.reinforced),
        "ft2",
        usual="joints as close as without reinforcement, mesh in the upper half",
        do="Joint as drawn; support the steel, and cut half of it at each joint.",
        brief="Joint as drawn; cut half of the steel at each joint.",
        source="ACI 302.1R and NRMCA CIP 6, from memory",
    )
    dowel_cover = worst(
        "Low dowel cover",
        Severity.CAUTION,
        "The concrete cover of the dowels is below usual; the number is the shortfall.",
        DowelCover.cover_shortfall,
        unless=greatest(DowelCover.stop_shortfall) > 0,
        usual="1 1/2 in above and below; with less, the edge spalls",
        do="Drill at mid-depth, use a smaller bar, or thicken the slab.",
        brief="Drill at mid-depth, use a smaller bar, or thicken.",
        source=_PRACTICE,
    )
    dowel_stop = worst(
        "Too little dowel cover",
        Severity.STOP,
        "The concrete cover of the dowels is far below usual; the number is the shortfall to 1 in.",
        DowelCover.stop_shortfall,
        usual="1 1/2 in above and below",
        do="Thicken the slab, or leave the dowels out.",
        source=_PRACTICE,
    )
    dowel_end = worst(
        "Short dowel end distance",
        Severity.CAUTION,
        "The end dowel is closer to the end of its edge than usual; the number is the shortfall.",
        DowelCover.end_shortfall,
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
    dowel_size = worst(
        "Dowels small for vehicles",
        Severity.CAUTION,
        "The dowels are smaller than usual for the vehicles on the slab; the number is the shortfall.",
        DowelCover.bar_shortfall,
        usual="1/2 in under cars, 5/8 in under trucks",
        do="Use larger bars.",
        source=_PRACTICE,
    )
    shallow_joints = worst(
        "Joints too shallow",
        Severity.CAUTION,
        "The joints are shallower than the slab needs; the number is the shortfall.",
        JointDepth.short_by,
        usual="a quarter of the thickness, at least 1 in",
        do="Use a deeper groover bit, or saw deeper.",
        source="ACI 302.1R and NRMCA CIP 6, partly from memory",
    )
    long_panels = worst(
        "Long panels",
        Severity.CAUTION,
        "A panel is long for its width; the number is length to width.",
        AreaSlopes.aspect_by_width,
        above=max_aspect,
        usual="1 1/2 times as long as wide at most, 1 1/4 is better",
        do="Add a joint.",
        source=_ACI,
    )
    narrow_strip = worst(
        "Long panels in a narrow strip",
        Severity.NOTE,
        "A strip is so narrow that its panels are long; the number is length to width.",
        AreaSlopes.aspect_at_min_spacing,
        above=max_aspect,
        usual="joints no closer than 4 ft in a narrow strip",
        do="Tell the client that it may crack between the joints.",
        source="common practice, no source",
    )
    panel_length = worst(
        "Panel too long for its thickness",
        Severity.CAUTION,
        "A panel is longer or wider than its thickness allows; the number is the excess.",
        AreaSlopes.excess_panel_length,
        usual="24 to 36 times the thickness, and 15 ft at most",
        do="Add a joint.",
        source=_ACI,
    )
    inside_corners = caution(
        "Inside corners",
        Severity.NOTE,
        total(Panel.inside_corners) > 0,
        "A slab has corners that point into it, at openings or in an L; the number is how many.",
        total(Panel.inside_corners),
        "",
        usual="a joint meets each inside corner, or a crack starts there",
        do="Ask where the joints go, and place one at each of them, or bars across it.",
        brief="A joint at each of them, or bars across it.",
        source="common practice, no source",
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
    deep_base = worst(
        "Deep base",
        Severity.CAUTION,
        "The base is deeper than usual: was a width typed as a depth?",
        Area.base,
        above=max_base,
        usual="up to 8 in under flatwork",
        do="Check the column base in of Areas.",
        source="common practice, no source: to find a typing error",
    )
