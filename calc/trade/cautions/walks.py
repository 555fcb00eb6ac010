"""What to watch on the surface: slopes, lips, width, water, and how soon it is used."""

from __future__ import annotations

from calc.declare import *
from calc.trade.cautions.conditions import AreaSlopes, OpeningToTraffic
from calc.trade.inputs.site import Permissions

_ADA = "2010 ADA Standards, seen in print; local code and the reviewer decide"


class WalkCautions(Section, title="Cautions of the surface", sheet="Checks"):
    """What was found, the number, the usual practice and who says so, and what to do. Local code always wins."""

    step = caution(
        "Lip",
        Severity.CAUTION,
        both(greatest(AreaSlopes.lip) > AreaSlopes.lip_most, greatest(AreaSlopes.lip) <= AreaSlopes.lip_stop),
        "A step stands where the slab joins.",
        greatest(AreaSlopes.lip),
        "in",
        usual="1/4 in; up to 1/2 in when it is bevelled 1 in 2",
        do="Grind it, bevel it, or set the forms to meet it.",
        source=_ADA,
    )
    high_step = caution(
        "High lip",
        Severity.STOP,
        greatest(AreaSlopes.lip) > AreaSlopes.lip_stop,
        "A step stands where the slab joins that needs a ramp.",
        greatest(AreaSlopes.lip),
        "in",
        usual="above 1/2 in it is a ramp",
        do="Make a ramp of it, or meet the old slab.",
        source=_ADA,
    )
    cross = caution(
        "Cross slope",
        Severity.CAUTION,
        greatest(AreaSlopes.cross_over) > 0,
        "A walk leans more than is usual; the number is what it leans too much.",
        greatest(AreaSlopes.cross_over),
        "%",
        usual="2.083 % at most; aim at 1.5 %, so that a tolerance does not fail it: 2 to 2.5 % is over",
        do="Set the forms flatter.",
        source=_ADA,
    )
    run = caution(
        "Run slope",
        Severity.CAUTION,
        both(greatest(AreaSlopes.along) > AreaSlopes.along_most, greatest(AreaSlopes.along) <= AreaSlopes.ramp_most),
        "A walk runs steeper than 1 in 20.",
        greatest(AreaSlopes.along),
        "%",
        usual="5 % for a walk; above it is a ramp with landings and rails",
        do="Ask whether it is a ramp, and price one.",
        source=_ADA,
    )
    ramp = caution(
        "Steeper than a ramp",
        Severity.STOP,
        greatest(AreaSlopes.along) > AreaSlopes.ramp_most,
        "A walk runs steeper than a ramp may.",
        greatest(AreaSlopes.along),
        "%",
        usual="8.33 %, 1 in 12, at most",
        do="Make it longer, or have it drawn by somebody who may.",
        source=_ADA,
    )
    flat = caution(
        "Too flat to drain",
        Severity.CAUTION,
        greatest(AreaSlopes.flat) > 0,
        "Water will stand on it; the number is the slope that is lacking.",
        greatest(AreaSlopes.flat),
        "%",
        usual="1 % at least, 2 % within 10 ft of a building",
        do="Give it more fall away from the building.",
        source="IRC R401.3 and IBC 1804, from memory; local code wins",
    )
    drain = caution(
        "Water to a building",
        Severity.STOP,
        either(total(AreaSlopes.falls) > 0, Permissions.outlet.is_("yes")),
        when(Permissions.outlet.is_("yes"), "The slab covers an outlet of a drain.", "The slab falls to a building."),
        total(AreaSlopes.falls),
        "",
        usual="water runs away from a building, and every outlet stays open",
        do="Turn the fall, or lead the water off, before it is poured.",
        source="IRC R401.3 and IBC 1804, from memory; local code wins",
    )
    narrow = caution(
        "Narrow walk",
        Severity.CAUTION,
        greatest(AreaSlopes.narrow) > 0,
        "The clear width is less than usual; the number is what is lacking.",
        greatest(AreaSlopes.narrow),
        "in",
        usual="36 in, 48 in within a right of way",
        do="Widen it, or ask whoever reviews it.",
        source="2010 ADA 403.5 and PROWAG R302, from memory",
    )
    early = caution(
        "Used too early",
        Severity.CAUTION,
        OpeningToTraffic.lacking > 0,
        "It is closed for fewer days than the concrete needs; the number is what is lacking.",
        OpeningToTraffic.lacking,
        "",
        usual="a day before feet, seven before wheels, twice that below 50 F",
        do="Keep it closed longer.",
        source="common practice, no source; ACI 306R for the cold, from memory",
    )
