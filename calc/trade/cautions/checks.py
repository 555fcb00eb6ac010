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
from calc.trade.materials.base_rock import BaseHaul
from calc.trade.materials.fiber import TruckFiber
from calc.trade.materials.fiber_dose import FiberDose
from calc.trade.money.cost_list import COST_SHOWN, TASK_SHOWN, ListedCosts, ListedTasks
from calc.trade.money.cost_rows import EQUIPMENT_ROWS, FORMS, PROTECTION, ROCK
from calc.trade.ordering.order import Order, TruckLoad
from calc.trade.ordering.order_candidates import BestOrder, Shortage
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

UNDO = "A formula was typed over: undo it, or run flatwork verify on this file."
"""What to do where two routes part though nothing that may be edited can make them."""


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
    loads = check(
        "Loads = order",
        "yd3",
        Order.quantity,
        total(TruckLoad.yards),
        tolerance,
        compared="The order, the loads of its trucks added up",
        remedy=UNDO,
    )
    fiber = check(
        "No truck short of fiber",
        "lb",
        total(TruckFiber.bags) * FiberDose.bag,
        total(TruckFiber.bags) * FiberDose.bag + largest(0, -least(TruckFiber.spare)),
        tolerance,
        compared="What the bags of the trucks hold, the same plus what the shortest truck lacks",
        remedy=UNDO,
    )
    fiber_over = check(
        "No bag of fiber too many",
        "lb",
        greatest(TruckFiber.spare),
        when(greatest(TruckFiber.spare) >= ONE_BAG, 0, greatest(TruckFiber.spare)),
        tolerance,
        compared="Most fiber beyond the dose in a truck, the same if it is less than a bag",
        remedy=UNDO,
    )
    fiber_bought = check(
        "Fiber bought = the dose",
        "lb",
        FiberBought.over,
        FiberBought.within,
        tolerance,
        compared="Fiber over the dose, the same from 0 to a bag a truck, unless overridden",
        remedy=UNDO,
    )
    curing = check(
        "Curing compound bought",
        "gal",
        CURING_BOUGHT.held,
        CURING_BOUGHT.within,
        tolerance,
        compared="What the pails hold, the same if it covers the need and no pail is too many",
        remedy=UNDO,
    )
    bonding = check(
        "Bonding agent bought",
        "gal",
        BONDING_BOUGHT.held,
        BONDING_BOUGHT.within,
        tolerance,
        compared="What the pails hold, the same if it covers the need and no pail is too many",
        remedy=UNDO,
    )
    sealer = check(
        "Sealer bought",
        "gal",
        SEALER_BOUGHT.held,
        SEALER_BOUGHT.within,
        tolerance,
        compared="What the pails hold, the same if it covers the need and no pail is too many",
        remedy=UNDO,
    )
    dug_deep_enough = check(
        "Dig holds slab and base",
        "yd3",
        total(Excavation.below_top),
        largest(total(Excavation.below_top), total(Excavation.slab_and_base)),
        tolerance,
        compared="Top of slab to bottom of dig, the same or slab and base if that is more",
        remedy="Check the height above grade of each area, or undo a formula typed over.",
    )
    excavation = check(
        "Soil + old concrete = hole",
        "yd3",
        total(DugOut.volume),
        total(Excavation.bank) + total(Excavation.old_concrete),
        tolerance,
        compared="All that is dug or broken out, soil plus old concrete",
        remedy=UNDO,
    )
    overweight = check(
        "No load over the payload",
        "ton",
        greatest(Hauled.tons_per_load) * ONE_LOAD,
        when(
            HaulVehicle.payload > 0,
            smallest(greatest(Hauled.tons_per_load) * ONE_LOAD, HaulVehicle.payload),
            greatest(Hauled.tons_per_load) * ONE_LOAD,
        ),
        tolerance,
        compared="The heaviest load, the same but not above the payload",
        remedy="Haul with another vehicle, or type its payload as weighed.",
    )
    hauled = check(
        "Everything hauled once",
        "ton",
        total(Pile.tons),
        total(Hauled.tons),
        tolerance,
        compared="All piles, the piles of the chosen haul",
        remedy=UNDO,
    )
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
        "Every dowel cut once",
        "bar",
        total(DoweledEdge.dowels),
        total(CuttingList.before_spares),
        tolerance,
        compared="The dowels of all edges, those on the cutting list",
        remedy=UNDO,
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
        "Every hour has one rate",
        "h",
        total(Task.hours),
        total(Task.composite_hours) + total(Task.laborer_hours) + total(Task.finisher_hours),
        Integrity.tolerance,
        compared="Hours of all tasks, hours at the crew mix, laborer and finisher rates",
        remedy=UNDO,
    )
    money = check(
        "Labor = hours × rates",
        "$",
        total(Task.cost),
        total(Task.composite_hours) * CrewRate.composite
        + total(Task.laborer_hours) * CrewRate.laborer
        + total(Task.finisher_hours) * CrewRate.finisher,
        rounding_allowance,
        compared="Amounts of all tasks, hours by rate times the rates, within rounding",
        remedy=UNDO,
    )
    by_visit = check(
        "Hours by task = by visit",
        "h",
        CrewTime.on_tasks,
        total(Visit.task_hours),
        Integrity.tolerance,
        compared="Tasks, own driving and sorting, the hours of the visits on them",
        remedy=UNDO,
    )
    paid = check(
        "Paid hours = tasks + rest",
        "h",
        PaidTime.clock_hours + total(Visit.unpaid),
        CrewTime.on_tasks + CrewTime.beyond,
        Integrity.tolerance,
        compared="Paid hours of all visits, tasks, driving, sorting and time beyond them",
        remedy=UNDO,
    )
    dug = check(
        "Dug once, loaded once",
        "yd3",
        PrepWork.excavated + PrepWork.loose,
        PrepWork.hand_excavated + PrepWork.machine_excavated + PrepWork.hand_loaded + PrepWork.machine_loaded,
        Integrity.tolerance,
        compared="What is dug and what is loaded, the same by hand and by machine",
        remedy=UNDO,
    )
    forms = check(
        "Every form has a board",
        "ft",
        total(Board.length) + total(Stakes.curved),
        total(EdgeTakeoff.formed),
        Integrity.tolerance,
        compared="Boards and bender boards, the formed edges",
        remedy=UNDO,
    )
    rock = check(
        "All base rock is brought",
        "ton",
        RockBrought.weight,
        RockBrought.within,
        Integrity.tolerance,
        compared="What is brought, the same if it covers the need and no trip is too many",
        remedy=UNDO,
    )
    rock_cost = check(
        "Base rock = its cost lines",
        "$",
        BaseHaul.cost,
        cost_of(ROCK),
        Integrity.tolerance,
        compared="Cost of the base rock, its rows of the table of costs",
        remedy=UNDO,
    )
    forms_cost = check(
        "Forms = their cost lines",
        "$",
        FormNeeds.charge,
        cost_of(FORMS),
        Integrity.tolerance,
        compared="Charge for forms, their rows of the table of costs",
        remedy=UNDO,
    )
    protection_cost = check(
        "Protection = its cost lines",
        "$",
        Protection.cost,
        cost_of(PROTECTION),
        Integrity.tolerance,
        compared="Cost of protection, its rows of the table of costs",
        remedy=UNDO,
    )
    equipment_cost = check(
        "Equipment = its cost lines",
        "$",
        Equipment.cost,
        cost_of(EQUIPMENT_ROWS),
        Integrity.tolerance,
        compared="Cost of equipment, its rows of the table of costs",
        remedy=UNDO,
    )
    plant_cost = check(
        "Plant and pump = cost lines",
        "$",
        PlantInvoice.charged,
        PlantInvoice.in_costs,
        rounding_allowance,
        compared="Charges of plant and pump, their rows of the table of costs, within rounding",
        remedy=UNDO,
    )
