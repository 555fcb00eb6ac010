"""Checks: numbers that two independent routes must agree on."""

from __future__ import annotations

from calc.declare import *
from calc.trade.cautions.second_routes import (
    BONDING_BOUGHT,
    CURING_BOUGHT,
    ONE_BAG,
    SEALER_BOUGHT,
    CrewTime,
    DugOut,
    FiberBought,
    PlantInvoice,
    RockBrought,
    cost_of,
)
from calc.trade.hauling.loads import Hauled, HaulVehicle
from calc.trade.hauling.piles import Pile
from calc.trade.levels import DAY, JOINT, ORDER_SIZE, TRUCK
from calc.trade.materials.base_rock import BaseHaul, BaseNeeds
from calc.trade.materials.fiber import FiberTotal, TruckFiber
from calc.trade.materials.liquids import Bonding, Curing, Sealer
from calc.trade.money.cost_list import COST_SHOWN, TASK_SHOWN, ListedCosts, ListedTasks
from calc.trade.money.cost_rows import EQUIPMENT_ROWS, FORMS, PROTECTION, ROCK
from calc.trade.ordering.order import Order, TruckLoad
from calc.trade.ordering.order_candidates import BestOrder, Shortage
from calc.trade.ordering.pour import PourCost
from calc.trade.papers.load_items import LOAD_ROW, LoadNeed
from calc.trade.prices.wage_rates import CrewRate
from calc.trade.takeoff.dig import Excavation
from calc.trade.takeoff.dowels import CuttingList, DoweledEdge
from calc.trade.takeoff.forms import Board, FormNeeds, Stakes
from calc.trade.takeoff.geometry import EdgeTakeoff
from calc.trade.takeoff.joint_list import JointLayout, JointPlace
from calc.trade.takeoff.joints import MatchedJoints, Panel
from calc.trade.work.calendar import CalendarMarks
from calc.trade.work.calendar_length import CalendarRows
from calc.trade.work.equipment import Equipment
from calc.trade.work.labor import Task
from calc.trade.work.paid_time import PaidTime, Visit
from calc.trade.work.prep import PrepWork
from calc.trade.work.protection import Protection

ONE_LOAD = exact(1, "load")


def _outside(value: Expr, most: Expr) -> Expr:
    """How far a number lies below 0, or above ``most``."""
    return largest(0, -value) + largest(0, value - most)


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

    trucks = list_check("Trucks fit their list", TRUCK, Order.trucks.count, total(TruckLoad.in_use).count, tolerance)
    loads = check("Loads add up to the order", "yd3", Order.quantity, total(TruckLoad.yards), tolerance)
    fiber = check(
        "No truck is short of fiber, nor has a bag too many",
        "lb",
        largest(0, -least(TruckFiber.spare)) + when(greatest(TruckFiber.spare) >= ONE_BAG, ONE_BAG, 0),
        0 * FiberTotal.weight,
        tolerance,
    )
    fiber_bought = check(
        "Fiber bought = the dose of everything placed, less than a bag over for each truck, unless overridden",
        "lb",
        when(FiberTotal.bags.is_overridden, 0, _outside(FiberBought.over, FiberBought.most_over)),
        0 * FiberTotal.weight,
        tolerance,
    )
    curing = check(
        "Enough curing compound is bought",
        "gal",
        CURING_BOUGHT.off,
        0 * Curing.need,
        tolerance,
    )
    bonding = check(
        "Enough bonding agent is bought",
        "gal",
        BONDING_BOUGHT.off,
        0 * Bonding.need,
        tolerance,
    )
    sealer = check(
        "Enough sealer is bought",
        "gal",
        SEALER_BOUGHT.off,
        0 * Sealer.need,
        tolerance,
    )
    dug_deep_enough = check(
        "The dig holds slab and base",
        "yd3",
        largest(0, total(Excavation.slab_and_base) - total(Excavation.below_top)),
        0 * total(Excavation.volume),
        tolerance,
    )
    excavation = check(
        "Soil + old concrete = all that is dug or broken out",
        "yd3",
        total(DugOut.volume),
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
    order_sizes = list_check(
        "Order sizes fit their list", ORDER_SIZE, total(Shortage.sizes), total(BestOrder.listed), tolerance
    )
    load_rows = list_check(
        "Items to load fit their list", LOAD_ROW, LoadNeed.rows, smallest(LoadNeed.rows, row_count(LOAD_ROW)), tolerance
    )
    costs_listed = list_check(
        "Costs fit their list",
        COST_SHOWN,
        ListedCosts.count,
        smallest(ListedCosts.count, row_count(COST_SHOWN)),
        tolerance,
    )
    tasks_listed = list_check(
        "Tasks fit their list",
        TASK_SHOWN,
        ListedTasks.count,
        smallest(ListedTasks.count, row_count(TASK_SHOWN)),
        tolerance,
    )
    days = list_check("Days fit the calendar", DAY, CalendarRows.last, CalendarMarks.listed, tolerance)
    joints = list_check(
        "Joints fit their list",
        JOINT,
        total(MatchedJoints.joints) + total(Panel.joints_along),
        total(JointPlace.in_use) + total(JointLayout.listed_along),
        tolerance,
    )
    dowels = check(
        "Every dowel is on the cutting list once",
        "bar",
        total(DoweledEdge.dowels),
        total(CuttingList.before_spares),
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
        total(Task.hours),
        total(Task.composite_hours) + total(Task.laborer_hours) + total(Task.finisher_hours),
        Integrity.tolerance,
    )
    money = check(
        "Labor amounts = hours times rates, within rounding",
        "$",
        largest(
            0,
            abs_(
                total(Task.cost)
                - total(Task.composite_hours) * CrewRate.composite
                - total(Task.laborer_hours) * CrewRate.laborer
                - total(Task.finisher_hours) * CrewRate.finisher
            )
            - rounding_allowance,
        ),
        0 * total(Task.cost),
        Integrity.tolerance,
    )
    paid = check(
        "Paid hours = tasks, driving, sorting and time beyond them",
        "h",
        PaidTime.clock_hours + total(Visit.unpaid),
        CrewTime.on_tasks + CrewTime.beyond,
        Integrity.tolerance,
    )
    dug = check(
        "Dug once, loaded once",
        "yd3",
        PrepWork.excavated + PrepWork.loose,
        PrepWork.hand_excavated + PrepWork.machine_excavated + PrepWork.hand_loaded + PrepWork.machine_loaded,
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
        largest(0, largest(BaseNeeds.buy, BaseNeeds.tons) - RockBrought.weight)
        + when(
            both(BaseHaul.trips.count > 0, RockBrought.one_less >= BaseNeeds.buy),
            BaseHaul.payload,
            0,
        ),
        0 * BaseNeeds.buy,
        Integrity.tolerance,
    )
    rock_cost = check("Base rock = its rows of Costs", "$", BaseHaul.cost, cost_of(ROCK), Integrity.tolerance)
    forms_cost = check("Forms = their rows of Costs", "$", FormNeeds.charge, cost_of(FORMS), Integrity.tolerance)
    protection_cost = check(
        "Protection = its rows of Costs", "$", Protection.cost, cost_of(PROTECTION), Integrity.tolerance
    )
    equipment_cost = check(
        "Equipment = its rows of Costs", "$", Equipment.cost, cost_of(EQUIPMENT_ROWS), Integrity.tolerance
    )
    plant_cost = check(
        "Plant and pump charges = their rows of Costs, within rounding",
        "$",
        largest(0, abs_(PlantInvoice.charged - PlantInvoice.in_costs) - rounding_allowance),
        0 * PourCost.concrete,
        Integrity.tolerance,
    )
