"""Checks: numbers that two independent routes must agree on."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.loads import Hauled, Hauler
from calc.trade.hauling.piles import Pile
from calc.trade.materials.base_rock import BaseHaul, BaseNeeds
from calc.trade.materials.fiber import FiberDose, FiberTotal, TruckFiber
from calc.trade.materials.liquids import BONDING_PACKS, CURING_PACKS, SEALER_PACKS, Bonding, Curing, Sealer
from calc.trade.ordering.order import Load, Order
from calc.trade.prices.wage_rates import CrewRate
from calc.trade.takeoff.dig import Dig
from calc.trade.takeoff.dowels import CuttingList, DoweledEdge
from calc.trade.takeoff.forms import Board, Stakes
from calc.trade.takeoff.geometry import EdgeTakeoff
from calc.trade.takeoff.joint_list import JointPlace
from calc.trade.takeoff.joints import Matched
from calc.trade.work.labor import Labor, Task
from calc.trade.work.tasks import Work


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
        total(Load.rides),
        tolerance,
    )
    loads = check("Loads add up to the order", "yd3", Order.quantity, total(Load.yards), tolerance)
    fiber = check(
        "No truck is short of fiber",
        "lb",
        largest(0, FiberDose.weight - total(TruckFiber.bags) * FiberDose.bag),
        0 * FiberDose.weight,
        tolerance,
    )
    fiber_bought = check(
        "Fiber bought = fiber loaded, unless overridden",
        "bag",
        when(FiberTotal.bags.is_overridden, total(TruckFiber.bags) + FiberTotal.batch, FiberTotal.bags),
        total(TruckFiber.bags) + FiberTotal.batch,
        tolerance,
    )
    curing = check(
        "Enough curing compound is bought",
        "gal",
        when(CURING_PACKS.can_win > 0, largest(0, Curing.need - CURING_PACKS.bought), 0),
        0 * Curing.need,
        tolerance,
    )
    bonding = check(
        "Enough bonding agent is bought",
        "gal",
        when(BONDING_PACKS.can_win > 0, largest(0, Bonding.need - BONDING_PACKS.bought), 0),
        0 * Bonding.need,
        tolerance,
    )
    sealer = check(
        "Enough sealer is bought",
        "gal",
        when(SEALER_PACKS.can_win > 0, largest(0, Sealer.need - SEALER_PACKS.bought), 0),
        0 * Sealer.need,
        tolerance,
    )
    excavation = check(
        "Soil + old concrete = excavation (fails when there is more old concrete than excavation)",
        "yd3",
        total(Dig.hole),
        total(Dig.bank) + total(Dig.not_soil),
        tolerance,
    )
    overweight = check(
        "No load is over the payload",
        "ton",
        when(Hauler.payload > 0, largest(0, total(Hauled.tons) - Hauler.payload * total(Hauled.loads).count), 0),
        0 * total(Pile.tons),
        tolerance,
    )
    hauled = check("Everything is hauled once", "ton", total(Pile.tons), total(Hauled.tons), tolerance)
    joints = check(
        "Joints fit the list (fails when the list is full: run flatwork again)",
        "",
        total(Matched.joints),
        total(JointPlace.used),
        tolerance,
    )
    dowels = check(
        "Every dowel is on the cutting list once",
        "bar",
        total(DoweledEdge.dowels),
        total(CuttingList.counted),
        tolerance,
    )


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
        total(Task.by_mix) + total(Task.by_labourer) + total(Task.by_finisher),
        Integrity.tolerance,
    )
    money = check(
        "Labor amounts = hours times rates, within rounding",
        "$",
        largest(
            0,
            abs_(
                Labor.cost
                - (total(Task.by_mix) + Labor.idle) * CrewRate.mix
                - total(Task.by_labourer) * CrewRate.labourer
                - total(Task.by_finisher) * CrewRate.finisher
            )
            - rounding_allowance,
        ),
        0 * Labor.cost,
        Integrity.tolerance,
    )
    days = check(
        "Crew days cover the hours",
        "h",
        largest(0, Labor.hours + Labor.driven - Labor.days * Labor.a_day),
        0 * Labor.hours,
        Integrity.tolerance,
    )
    dug = check(
        "Dug once, loaded once",
        "yd3",
        Work.dug + Work.loose,
        Work.hand_dug + Work.machine_dug + Work.hand_loaded + Work.machine_loaded,
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
