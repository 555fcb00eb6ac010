"""The work, held against itself: hours, boards and rock by two routes, and what to ask before the price is given."""

from __future__ import annotations

from calc.declare import *
from calc.trade.cautions.checks import Integrity
from calc.trade.inputs.pour import Crew
from calc.trade.inputs.work import OnSite
from calc.trade.materials.base_rock import BaseHaul, BaseNeeds
from calc.trade.prices.wage_rates import CrewRate
from calc.trade.takeoff.forms import Board, Stakes
from calc.trade.takeoff.geometry import EdgeTakeoff
from calc.trade.work.labor import Labor, Task
from calc.trade.work.tasks import Chipping, Work


class WorkIntegrity(Section, title="Integrity of the work", sheet="Checks"):
    """No task is lost or paid twice, and no driver among the crew: a driver's hours are paid with the haul."""

    cents = factor(
        "Cents that rounding may move",
        "$",
        0.2,
        low=0.01,
        high=1,
        source="arithmetic: half a cent for each of the tasks, and a little",
    )

    hours = check(
        "Every hour of labor is the crew's, a labourer's or a finisher's; none is a driver's",
        "h",
        Labor.hours,
        total(Task.composite_hours) + total(Task.laborer_hours) + total(Task.finisher_hours),
        Integrity.tolerance,
    )
    money = check(
        "The tasks cost what their hours cost, but for the cents",
        "$",
        largest(
            0,
            abs_(
                Labor.cost
                - (total(Task.composite_hours) + Labor.idle) * CrewRate.composite
                - total(Task.laborer_hours) * CrewRate.laborer
                - total(Task.finisher_hours) * CrewRate.finisher
            )
            - cents,
        ),
        0 * Labor.cost,
        Integrity.tolerance,
    )
    days = check(
        "The days of the crew hold its hours",
        "h",
        largest(0, Labor.hours + Labor.driver_hours - Labor.days * Labor.crew_hours_per_day),
        0 * Labor.hours,
        Integrity.tolerance,
    )
    dug = check(
        "What is dug is dug once, and what is loaded is loaded once",
        "yd3",
        Work.excavated + Work.loose,
        Work.hand_excavated + Work.machine_excavated + Work.hand_loaded + Work.machine_loaded,
        Integrity.tolerance,
    )
    forms = check(
        "Every form is a board or hardboard",
        "ft",
        total(Board.length) + total(Stakes.curved),
        total(EdgeTakeoff.formed),
        Integrity.tolerance,
    )
    rock = check(
        "No trip for rock is over the payload",
        "ton",
        when(
            BaseHaul.trips.count > 0,
            largest(0, BaseNeeds.buy - BaseHaul.payload * BaseHaul.trips.count),
            0,
        ),
        0 * BaseNeeds.buy,
        Integrity.tolerance,
    )


class WorkCautions(Section, title="Cautions of the work", sheet="Checks"):
    """What to ask before the hours are believed."""

    bars = caution(
        "Bars in an old footing",
        Severity.NOTE,
        total(Chipping.unknown_reinforcement) > 0,
        "Nobody knows whether a footing that is chipped has bars; the number is what is chipped of such footings.",
        total(Chipping.unknown_reinforcement),
        "yd3",
        usual="chipping takes twice as long where bars must be cut",
        do="Ask, or break a corner off and look; then type yes or no in Footings.",
        source="common practice, no source",
    )
    hands = caution(
        "More hands than the crew has",
        Severity.CAUTION,
        Crew.placing + Crew.finishing > OnSite.crew,
        "Those who place and those who finish are more than the crew on the site; the number is how many lack.",
        largest(0, Crew.placing + Crew.finishing - OnSite.crew),
        "person",
        usual="a finisher cannot place while the first of the slab sets",
        do="Make the crew larger, or fewer of them place or finish.",
        source="house rule",
    )
