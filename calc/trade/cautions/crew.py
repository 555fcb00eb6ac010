"""Cautions of the crew: its size, hours that are a guess, wages."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.pour import Crew
from calc.trade.inputs.site import NOT_ASKED, Permissions
from calc.trade.inputs.work import OnSite
from calc.trade.takeoff.geometry import Slab
from calc.trade.work.labor import Labor, Task
from calc.trade.work.paid_time import PaidTime
from calc.trade.work.prep import Chipping, Roots
from calc.trade.work.visit_rules import VisitRules


class CrewCautions(Section, title="Crew cautions", sheet="Checks"):
    """What was found, the number, the usual practice with its source, and what to do."""

    crew_size = caution(
        "Crew too small",
        Severity.CAUTION,
        Crew.placing + Crew.finishing > OnSite.crew,
        "Placing crew and finishers are more people than the crew; the number is how many it is short.",
        largest(0, Crew.placing + Crew.finishing - OnSite.crew),
        "person",
        usual="a finisher cannot place while the first of the slab sets",
        do="Make the crew larger, or have fewer people place or finish.",
        brief="Enlarge the crew, or have fewer place or finish.",
        source="house rule",
    )
    much_beyond_tasks = caution(
        "Much paid time beyond tasks",
        Severity.NOTE,
        PaidTime.share < VisitRules.share_note,
        "Most paid time is travel, set-up, minimum hours and waiting; the number is the share on tasks.",
        PaidTime.share,
        "%",
        usual="40 % and more on tasks; a small job has its visits all the same",
        do="See the visits on Costs: put visits of two jobs together, or send fewer people.",
        brief="Join visits of two jobs, or send fewer people.",
        source="common practice, no source",
    )
    unknown_bars = caution(
        "Unknown reinforcement in a footing",
        Severity.NOTE,
        total(Chipping.unknown_reinforcement) > 0,
        "Whether a footing that is chipped has bars is unknown; the number is its volume to chip.",
        total(Chipping.unknown_reinforcement),
        "yd3",
        usual="chipping takes twice as long where bars must be cut",
        do="Ask, or break a corner off and look; then type yes or no in Footings.",
        brief="Ask, or break a corner off; type it in Footings.",
        source="common practice, no source",
    )
    private_wages = caution(
        "Private wages for a public client",
        Severity.CAUTION,
        both(Crew.wages.is_("private"), either(Permissions.client.is_("school"), Permissions.client.is_("city"))),
        "A school or a city often has to pay prevailing wages; the number is the hours of labor.",
        total(Task.hours),
        "h",
        usual="prevailing wages, certified payroll, a bid bond",
        do="Ask, and use the prevailing wages.",
        source="Davis-Bacon and state laws, from memory",
    )
    client_unknown = caution(
        "Client kind not asked",
        Severity.NOTE,
        Permissions.client.is_(NOT_ASKED),
        "Whether the client is public is not known; the number is the area of the job.",
        total(Slab.net_area),
        "ft2",
        usual="public work is often at prevailing wages, with certified payroll",
        do='Ask, and type the "Client kind".',
        source="Davis-Bacon and state laws, from memory",
    )
    no_wage_rate = caution(
        "Prevailing wage has no rate",
        Severity.STOP,
        both(Crew.wages.is_("prevailing"), Labor.known <= 0),
        "The company book has no rate for prevailing wages; the number is the hours of labor.",
        total(Task.hours),
        "h",
        usual="a rate for each role",
        do="Fill the column prevailing of Wages.",
        source="house rule",
    )
    stumps = caution(
        "Stumps to take out",
        Severity.CAUTION,
        total(Roots.stumps) > 0,
        "Trunks are thick enough to leave stumps; the number is how many.",
        total(Roots.stumps),
        "each",
        usual="no trunk over 6 in is grubbed by hand: a stump is ground or pulled by a machine",
        do="Get a price from a subcontractor for the stumps, or type unforeseen hours for them.",
        brief="Get a price for the stumps, or type hours for them.",
        source="common practice, no source",
    )
