"""The work, held against itself: hours, boards and rock by two routes, and what to ask before the price is given."""

from __future__ import annotations

from calc.declare import *
from calc.trade.cautions.checks import Integrity
from calc.trade.hauling.choice import Choice
from calc.trade.hauling.loads import Clock
from calc.trade.inputs.pour import Crew
from calc.trade.inputs.work import OnSite
from calc.trade.materials.base_rock import BaseHaul, BaseNeeds
from calc.trade.money.cost_rows import EQUIPMENT_ROWS, FORMS, PLANT_AND_PUMP, PROTECTION, ROCK
from calc.trade.money.costs import COST, CostTable
from calc.trade.ordering.order import Order
from calc.trade.ordering.pour import PourCost
from calc.trade.prices.wage_rates import CrewRate
from calc.trade.takeoff.forms import Board, FormNeeds, Stakes
from calc.trade.takeoff.geometry import EdgeTakeoff
from calc.trade.work.equipment import Equipment
from calc.trade.work.labor import Labor, Task
from calc.trade.work.protection import Protection
from calc.trade.work.tasks import Chipping, Work

_CREW_HOURS = total(Task.by_mix) + total(Task.by_labourer) + total(Task.by_finisher) + Choice.own_hours + BaseHaul.hours
"""Hours of the crew and of its drivers, by who is paid for them."""

_CREW_DAY = OnSite.crew.count * Clock.day
_LEAST_DAYS = when(Order.bags > 0, Labor.least_bagged, Labor.least_poured)
_ROCK_BROUGHT = when(BaseHaul.delivered > 0, BaseNeeds.buy, BaseHaul.trips.count * BaseHaul.payload)


_PLANT_AND_PUMP = (
    PourCost.yards + PourCost.fees + PourCost.delivery + PourCost.waiting + when(PourCost.pumped > 0, PourCost.pump, 0)
)


def _in_table(rows: tuple[Cost, ...]) -> Expr:
    """What the table of costs has for some of its rows."""
    first, *rest = (at(CostTable.amount, row_called(COST, row.label)) for row in rows)
    return sum(rest, start=first)


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
        total(Task.by_mix) + total(Task.by_labourer) + total(Task.by_finisher),
        Integrity.tolerance,
    )
    money = check(
        "The tasks cost what their hours cost, but for the cents",
        "$",
        largest(
            0,
            abs_(
                Labor.cost
                - (total(Task.by_mix) + Labor.idle) * CrewRate.mix
                - total(Task.by_labourer) * CrewRate.labourer
                - total(Task.by_finisher) * CrewRate.finisher
            )
            - cents,
        ),
        0 * Labor.cost,
        Integrity.tolerance,
    )
    days = check(
        "The days of the crew hold its hours, and one day less would not",
        "h",
        largest(0, _CREW_HOURS - Labor.days * _CREW_DAY)
        + when(both(Labor.days > _LEAST_DAYS, (Labor.days - 1) * _CREW_DAY >= _CREW_HOURS), _CREW_DAY, 0),
        0 * Labor.hours,
        Integrity.tolerance,
    )
    dug = check(
        "What is dug is dug once, and what is loaded is loaded once",
        "yd3",
        Work.dug + Work.loose,
        Work.hand_dug + Work.machine_dug + Work.hand_loaded + Work.machine_loaded,
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
        "All the rock comes, no trip over the payload, and none too many",
        "ton",
        largest(0, largest(BaseNeeds.buy, BaseNeeds.tons) - _ROCK_BROUGHT)
        + when(
            both(BaseHaul.trips.count > 0, (BaseHaul.trips.count - 1) * BaseHaul.payload >= BaseNeeds.buy),
            BaseHaul.payload,
            0,
        ),
        0 * BaseNeeds.buy,
        Integrity.tolerance,
    )
    rock_cost = check(
        "The rock costs what the table of costs has for it",
        "$",
        BaseHaul.cost,
        _in_table(ROCK),
        Integrity.tolerance,
    )
    forms_cost = check(
        "The forms cost what the table of costs has for them",
        "$",
        FormNeeds.charge,
        _in_table(FORMS),
        Integrity.tolerance,
    )
    protection_cost = check(
        "The protection costs what the table of costs has for it",
        "$",
        Protection.cost,
        _in_table(PROTECTION),
        Integrity.tolerance,
    )
    equipment_cost = check(
        "The equipment costs what the table of costs has for it",
        "$",
        Equipment.cost,
        _in_table(EQUIPMENT_ROWS),
        Integrity.tolerance,
    )
    plant_cost = check(
        "The plant and the pump charge what the table of costs has for them, but for the cents",
        "$",
        largest(0, abs_(_PLANT_AND_PUMP - _in_table(PLANT_AND_PUMP)) - cents),
        0 * PourCost.yards,
        Integrity.tolerance,
    )


class WorkCautions(Section, title="Cautions of the work", sheet="Checks"):
    """What to ask before the hours are believed."""

    bars = caution(
        "Bars in an old footing",
        Severity.NOTE,
        total(Chipping.guessed) > 0,
        "Nobody knows whether a footing that is chipped has bars; the number is what is chipped of such footings.",
        total(Chipping.guessed),
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
