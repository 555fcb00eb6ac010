"""Cautions of the surface: changes in level, slopes, clear width, drainage, opening to traffic."""

from __future__ import annotations

from calc.declare import *
from calc.trade.cautions.conditions import AreaSlopes, OpeningToTraffic
from calc.trade.cautions.worst import worst
from calc.trade.inputs.site import Permissions

_ADA = "2010 ADA Standards, seen in print; local code and the reviewer decide"


class SurfaceCautions(Section, title="Surface cautions", sheet="Checks"):
    """What was found, the number, the usual practice with its source, and what to do. Local code governs."""

    level_change = worst(
        "Vertical change in level",
        Severity.CAUTION,
        "There is a vertical change in level where the slab meets an old one.",
        AreaSlopes.level_change,
        above=AreaSlopes.max_level_change,
        unless=greatest(AreaSlopes.level_change) > AreaSlopes.stop_level_change,
        usual="1/4 in; up to 1/2 in when it is beveled 1 in 2",
        do="Grind it, bevel it, or set the forms to meet it.",
        source=_ADA,
    )
    high_level_change = worst(
        "High vertical change in level",
        Severity.STOP,
        "There is a change in level where the slab meets an old one that needs a ramp.",
        AreaSlopes.level_change,
        above=AreaSlopes.stop_level_change,
        usual="above 1/2 in it is a ramp",
        do="Make it a ramp, or meet the old slab.",
        source=_ADA,
    )
    driven_level_change = worst(
        "Vertical change in level under wheels",
        Severity.CAUTION,
        "Vehicles cross a high change in level where the slab meets an old one.",
        AreaSlopes.driven_level_change,
        above=AreaSlopes.stop_level_change,
        usual="1/2 in at most: wheels and snow plows break the edge",
        do="Set the forms to meet the old slab, or bevel the edge.",
        source="common practice, no source; 2010 ADA 303 where people walk",
    )
    cross_slope = worst(
        "Cross slope",
        Severity.CAUTION,
        "A walk has more cross slope than is usual; the number is the amount over the limit.",
        AreaSlopes.excess_cross_slope,
        usual="2.083 %, 2.1 % in a right of way; aim at 1.5 %: a builder's 2 to 2.5 % is over",
        do="Set the forms flatter.",
        source="2010 ADA 403.3, seen in print; PROWAG R302.5, from memory; local code",
    )
    running_slope = worst(
        "Running slope",
        Severity.CAUTION,
        "A walk is steeper than 1 in 20, and in a right of way than the street.",
        AreaSlopes.steep_slope,
        unless=greatest(AreaSlopes.ramp_slope) > 0,
        usual="5 % for a walk, in a right of way that of its street; above it is a ramp with rails",
        do="Ask whether it is a ramp, and price one; type the street grade.",
        brief="Ask whether it is a ramp; type the street grade.",
        source="2010 ADA 403.3, seen in print; PROWAG R302.4, from memory; local code",
    )
    ramp_slope = worst(
        "Steeper than a ramp",
        Severity.STOP,
        "A walk is steeper than a ramp may be.",
        AreaSlopes.ramp_slope,
        usual="8.33 %, 1 in 12, at most, unless a walk in a right of way follows a steeper street",
        do="Make it longer, or have it drawn by a licensed designer.",
        brief="Make it longer, or have a licensed designer draw it.",
        source=_ADA,
    )
    poor_drainage = worst(
        "Too flat to drain",
        Severity.CAUTION,
        "Water will pond on it; the number is the slope it is short by.",
        AreaSlopes.slope_shortfall,
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
    narrow_walk = worst(
        "Narrow walk",
        Severity.CAUTION,
        "The clear width is less than usual; the number is the shortfall.",
        AreaSlopes.width_shortfall,
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
