"""Cautions of the surface: changes in level, slopes, clear width, drainage, opening to traffic."""

from __future__ import annotations

from calc.declare import *
from calc.trade.cautions.conditions import AreaSlopes, OpeningToTraffic
from calc.trade.inputs.site import Permissions

_ADA = "2010 ADA Standards, seen in print; local code and the reviewer decide"


class SurfaceCautions(Section, title="Surface cautions", sheet="Checks"):
    """What was found, the number, the usual practice with its source, and what to do. Local code governs."""

    level_change = caution(
        "Vertical change in level",
        Severity.CAUTION,
        both(
            greatest(AreaSlopes.level_change) > AreaSlopes.max_level_change,
            greatest(AreaSlopes.level_change) <= AreaSlopes.stop_level_change,
        ),
        "There is a vertical change in level where the slab meets an old one.",
        greatest(AreaSlopes.level_change),
        "in",
        usual="1/4 in; up to 1/2 in when it is beveled 1 in 2",
        do="Grind it, bevel it, or set the forms to meet it.",
        source=_ADA,
    )
    high_level_change = caution(
        "High vertical change in level",
        Severity.STOP,
        greatest(AreaSlopes.level_change) > AreaSlopes.stop_level_change,
        "There is a change in level where the slab meets an old one that needs a ramp.",
        greatest(AreaSlopes.level_change),
        "in",
        usual="above 1/2 in it is a ramp",
        do="Make it a ramp, or meet the old slab.",
        source=_ADA,
    )
    cross_slope = caution(
        "Cross slope",
        Severity.CAUTION,
        greatest(AreaSlopes.excess_cross_slope) > 0,
        "A walk has more cross slope than is usual; the number is the amount over the limit.",
        greatest(AreaSlopes.excess_cross_slope),
        "%",
        usual="2.083 % at most; aim at 1.5 %, so that a tolerance does not fail it: 2 to 2.5 % is over",
        do="Set the forms flatter.",
        source=_ADA,
    )
    running_slope = caution(
        "Running slope",
        Severity.CAUTION,
        both(
            greatest(AreaSlopes.running_slope) > AreaSlopes.max_walk_slope,
            greatest(AreaSlopes.running_slope) <= AreaSlopes.max_ramp_slope,
        ),
        "A walk is steeper than 1 in 20.",
        greatest(AreaSlopes.running_slope),
        "%",
        usual="5 % for a walk; above it is a ramp with landings and rails",
        do="Ask whether it is a ramp, and price one.",
        source=_ADA,
    )
    ramp_slope = caution(
        "Steeper than a ramp",
        Severity.STOP,
        greatest(AreaSlopes.running_slope) > AreaSlopes.max_ramp_slope,
        "A walk is steeper than a ramp may be.",
        greatest(AreaSlopes.running_slope),
        "%",
        usual="8.33 %, 1 in 12, at most",
        do="Make it longer, or have it drawn by a licensed designer.",
        source=_ADA,
    )
    poor_drainage = caution(
        "Too flat to drain",
        Severity.CAUTION,
        greatest(AreaSlopes.slope_shortfall) > 0,
        "Water will pond on it; the number is the slope it is short by.",
        greatest(AreaSlopes.slope_shortfall),
        "%",
        usual="at least 1 %, 2 % within 10 ft of a building",
        do="Give it more slope away from the building.",
        source="IRC R401.3 and IBC 1804, from memory; local code governs",
    )
    drains_to_building = caution(
        "Drains to a building",
        Severity.STOP,
        either(total(AreaSlopes.drains_to_building) > 0, Permissions.outlet.is_("yes")),
        when(Permissions.outlet.is_("yes"), "The slab covers a drain outlet.", "The slab slopes toward a building."),
        total(AreaSlopes.drains_to_building),
        "",
        usual="water drains away from a building, and every outlet stays open",
        do="Regrade, or drain the water away, before the pour.",
        source="IRC R401.3 and IBC 1804, from memory; local code governs",
    )
    narrow_walk = caution(
        "Narrow walk",
        Severity.CAUTION,
        greatest(AreaSlopes.width_shortfall) > 0,
        "The clear width is less than usual; the number is the shortfall.",
        greatest(AreaSlopes.width_shortfall),
        "in",
        usual="36 in, 48 in within a right of way",
        do="Widen it, or ask whoever reviews it.",
        source="2010 ADA 403.5 and PROWAG R302, from memory",
    )
    early_traffic = caution(
        "Opened to traffic too early",
        Severity.CAUTION,
        OpeningToTraffic.days_short > 0,
        "It is closed for fewer days than the concrete needs; the number is the days short.",
        OpeningToTraffic.days_short,
        "",
        usual="1 day to foot traffic, 7 days to vehicle traffic, twice that below 50 F",
        do="Keep it closed longer.",
        source="common practice, no source; ACI 306R for the cold, from memory",
    )
