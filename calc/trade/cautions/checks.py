"""Checks: numbers that two independent routes must agree on."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.choice import Choice
from calc.trade.hauling.loads import Hauled, HaulVehicle, Workday
from calc.trade.hauling.piles import Pile
from calc.trade.inputs.work import OnSite
from calc.trade.materials.base_rock import BaseHaul, BaseNeeds
from calc.trade.materials.fiber import FiberDose, FiberTotal, TruckFiber
from calc.trade.materials.liquids import BONDING_PACKS, CURING_PACKS, SEALER_PACKS, Bonding, Curing, Sealer
from calc.trade.materials.packs import Packs
from calc.trade.money.cost_rows import EQUIPMENT_ROWS, FORMS, PLANT_AND_PUMP, PROTECTION, ROCK
from calc.trade.money.costs import COST, CostTable
from calc.trade.ordering.order import Order, TruckLoad
from calc.trade.ordering.pour import PourCost
from calc.trade.prices.wage_rates import CrewRate
from calc.trade.takeoff.dig import Excavation
from calc.trade.takeoff.dowels import CuttingList, DoweledEdge
from calc.trade.takeoff.forms import Board, FormNeeds, Stakes
from calc.trade.takeoff.geometry import EdgeTakeoff
from calc.trade.takeoff.joint_list import JointPlace
from calc.trade.takeoff.joints import MatchedJoints
from calc.trade.work.equipment import Equipment
from calc.trade.work.labor import Labor, Task
from calc.trade.work.protection import Protection
from calc.trade.work.tasks import Work

ONE_LOAD, ONE_PACK, ONE_BAG = exact(1, "load"), exact(1, "pack"), exact(1, "bag") * FiberDose.bag
_FIBER_OVER = FiberTotal.bags * FiberDose.bag - Order.placed * FiberDose.per_yard
"""The fiber that is bought, over what all that is ordered or mixed takes."""

_BATCHES = when(Order.bags > 0, 1, 0)
"""All that is mixed on the site counts as one batch."""


def _outside(value: Expr, most: Expr) -> Expr:
    """How far a number lies below 0, or above ``most``."""
    return largest(0, -value) + largest(0, value - most)


def _packs_off(packs: Packs, need: Line, small: Price, large: Price) -> Expr:
    """The gallons that the packs to buy are short by; or what the least of them holds, where one less would do."""
    held = packs.small * if_given(small.size, 0) + packs.large * if_given(large.size, 0)
    least_pack = ONE_PACK * when(packs.small > 0, if_given(small.size, 0), if_given(large.size, 0))
    too_many = both(held > 0, held - least_pack >= need)
    return when(packs.can_win > 0, largest(0, need - held) + when(too_many, least_pack, 0), 0)


class Integrity(Section, title="Checks of quantities", sheet="Checks"):
    """Each row reaches one number by two routes: 0 is a pass, 1 is a fail."""

    tolerance = factor(
        "Tolerance of the checks",
        "",
        0.000001,
        low=0,
        high=0.01,
        source="house rule: a millionth, as in every comparison",
    )

    trucks = check(
        "Trucks fit the list (fails when the list is full: run flatwork again)",
        "truck",
        Order.trucks,
        total(TruckLoad.in_use),
        tolerance,
    )
    loads = check("Loads add up to the order", "yd3", Order.quantity, total(TruckLoad.yards), tolerance)
    fiber = check(
        "No truck is short of fiber, nor has a bag too many",
        "lb",
        largest(0, -least(TruckFiber.spare)) + when(greatest(TruckFiber.spare) >= ONE_BAG, ONE_BAG, 0),
        0 * FiberDose.weight,
        tolerance,
    )
    fiber_bought = check(
        "Fiber bought = the dose of everything placed, less than a bag over for each truck, unless overridden",
        "lb",
        when(FiberTotal.bags.is_overridden, 0, _outside(_FIBER_OVER, (Order.trucks.count + _BATCHES) * ONE_BAG)),
        0 * FiberDose.weight,
        tolerance,
    )
    curing = check(
        "Enough curing compound is bought",
        "gal",
        _packs_off(CURING_PACKS, Curing.need, Curing.small, Curing.large),
        0 * Curing.need,
        tolerance,
    )
    bonding = check(
        "Enough bonding agent is bought",
        "gal",
        _packs_off(BONDING_PACKS, Bonding.need, Bonding.small, Bonding.large),
        0 * Bonding.need,
        tolerance,
    )
    sealer = check(
        "Enough sealer is bought",
        "gal",
        _packs_off(SEALER_PACKS, Sealer.need, Sealer.small, Sealer.large),
        0 * Sealer.need,
        tolerance,
    )
    excavation = check(
        "Soil + old concrete = excavation (fails when there is more old concrete than excavation)",
        "yd3",
        total(Excavation.volume),
        total(Excavation.bank) + total(Excavation.old_concrete),
        tolerance,
    )
    overweight = check(
        "No load is over the payload",
        "ton",
        when(HaulVehicle.payload > 0, largest(0, greatest(Hauled.tons_per_load) * ONE_LOAD - HaulVehicle.payload), 0),
        0 * total(Pile.tons),
        tolerance,
    )
    hauled = check("Everything is hauled once", "ton", total(Pile.tons), total(Hauled.tons), tolerance)
    joints = check(
        "Joints fit the list (fails when the list is full: run flatwork again)",
        "",
        total(MatchedJoints.joints),
        total(JointPlace.in_use),
        tolerance,
    )
    dowels = check(
        "Every dowel is on the cutting list once",
        "bar",
        total(DoweledEdge.dowels),
        total(CuttingList.before_spares),
        tolerance,
    )


_CREW_HOURS = (
    total(Task.composite_hours)
    + total(Task.laborer_hours)
    + total(Task.finisher_hours)
    + Choice.own_hours
    + BaseHaul.hours
)
"""Hours of the crew and of its drivers, by who is paid for them."""

_CREW_DAY = OnSite.crew.count * Workday.day
_LEAST_DAYS = when(Order.bags > 0, Labor.min_days_bags, Labor.min_days_ready_mix)
_ROCK_BROUGHT = when(BaseHaul.delivered > 0, BaseNeeds.buy, BaseHaul.trips.count * BaseHaul.payload)
_PLANT_AND_PUMP = (
    PourCost.concrete
    + PourCost.fees
    + PourCost.delivery
    + PourCost.standby
    + when(PourCost.yards_pumped > 0, PourCost.pump, 0)
)


def _cost_of(rows: tuple[Cost, ...]) -> Expr:
    """The amount of some rows of the table of costs."""
    first, *rest = (at(CostTable.amount, row_called(COST, row.label)) for row in rows)
    return sum(rest, start=first)


class WorkIntegrity(Section, title="Checks of labor and forms", sheet="Checks"):
    """No task is lost or paid twice. A driver's hours are paid with hauling, and are none of the crew's."""

    rounding_allowance = factor(
        "Rounding allowance for labor amounts",
        "$",
        0.2,
        low=0.01,
        high=1,
        source="arithmetic: half a cent for each of the tasks, and a little",
    )

    hours = check(
        "Every hour of labor has one rate",
        "h",
        Labor.hours,
        total(Task.composite_hours) + total(Task.laborer_hours) + total(Task.finisher_hours),
        Integrity.tolerance,
    )
    money = check(
        "Labor amounts = hours times rates, within rounding",
        "$",
        largest(
            0,
            abs_(
                Labor.cost
                - (total(Task.composite_hours) + Labor.idle) * CrewRate.composite
                - total(Task.laborer_hours) * CrewRate.laborer
                - total(Task.finisher_hours) * CrewRate.finisher
            )
            - rounding_allowance,
        ),
        0 * Labor.cost,
        Integrity.tolerance,
    )
    days = check(
        "Crew days cover the hours, and one day less would not",
        "h",
        largest(0, _CREW_HOURS - Labor.days * _CREW_DAY)
        + when(both(Labor.days > _LEAST_DAYS, (Labor.days - 1) * _CREW_DAY >= _CREW_HOURS), _CREW_DAY, 0),
        0 * Labor.hours,
        Integrity.tolerance,
    )
    dug = check(
        "Dug once, loaded once",
        "yd3",
        Work.excavated + Work.loose,
        Work.hand_excavated + Work.machine_excavated + Work.hand_loaded + Work.machine_loaded,
        Integrity.tolerance,
    )
    forms = check(
        "Every form is a board or bender board",
        "ft",
        total(Board.length) + total(Stakes.curved),
        total(EdgeTakeoff.formed),
        Integrity.tolerance,
    )
    rock = check(
        "All base rock is brought, no trip over the payload and none too many",
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
    rock_cost = check("Base rock = its rows of Costs", "$", BaseHaul.cost, _cost_of(ROCK), Integrity.tolerance)
    forms_cost = check("Forms = their rows of Costs", "$", FormNeeds.charge, _cost_of(FORMS), Integrity.tolerance)
    protection_cost = check(
        "Protection = its rows of Costs", "$", Protection.cost, _cost_of(PROTECTION), Integrity.tolerance
    )
    equipment_cost = check(
        "Equipment = its rows of Costs", "$", Equipment.cost, _cost_of(EQUIPMENT_ROWS), Integrity.tolerance
    )
    plant_cost = check(
        "Plant and pump charges = their rows of Costs, within rounding",
        "$",
        largest(0, abs_(_PLANT_AND_PUMP - _cost_of(PLANT_AND_PUMP)) - rounding_allowance),
        0 * PourCost.concrete,
        Integrity.tolerance,
    )
