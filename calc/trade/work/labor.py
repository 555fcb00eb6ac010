"""Labor: hours and cost of each task, and crew days.

Driver hours are part of the haul and are not counted here. The mixing crew also places the bagged concrete.
"""

from __future__ import annotations

from dataclasses import dataclass

from calc.declare import *
from calc.trade.hauling.choice import Choice
from calc.trade.hauling.loads import Workday
from calc.trade.inputs.work import OnSite
from calc.trade.levels import TASK
from calc.trade.materials.base_rock import BaseHaul, BaseNeeds
from calc.trade.ordering.finish_window import FinishWindow
from calc.trade.ordering.order import Order
from calc.trade.prices.wage_rates import FINISHER, LABORER, CrewRate
from calc.trade.takeoff.dowels import DowelNeeds
from calc.trade.takeoff.joints import JointNeeds
from calc.trade.work.tasks import Work

_SHEET = "Costs"
COMPOSITE, AS_LABORER, AS_FINISHER = 0, 1, 2
"""Labor class of a task: the composite crew rate, or the row of a role."""


@dataclass(frozen=True)
class TaskRate:
    """A task: its quantity, labor hours per unit (low, usual, high), and its labor class."""

    amount: Line
    low: float
    usual: float
    high: float
    labor_class: int = COMPOSITE
    minimum: float = 0
    """Minimum hours of the task, whatever its quantity."""


def _by_rate(hours: Line, rate: Factor, labor_class: int) -> TaskRate:
    """A task whose hours follow from a production rate; its low and high are the ends of the range of that rate."""
    (usual,) = rate.values
    return TaskRate(hours, usual / (rate.high or usual), 1, usual / (rate.low or usual), labor_class)


_TASK_RATES = {
    "layout": TaskRate(Work.area, 0.003, 0.004, 0.006, minimum=0.75),
    "cap lines": TaskRate(Work.caps, 0.3, 0.6, 1.5),
    "cut brush": TaskRate(Work.brush, 0.5, 0.9, 1.5),
    "grub roots": TaskRate(Work.roots, 0.25, 0.6, 2),
    "demolition saw cut": TaskRate(Work.saw_cut, 0.02, 0.03, 0.05),
    "break out slab": TaskRate(Work.old_slab, 1, 1.6, 3),
    "chip footings": TaskRate(Work.chipping, 4, 7, 12),
    "dig by hand": TaskRate(Work.hand_excavated, 1.2, 1.7, 2.8),
    "dig by machine": TaskRate(Work.machine_excavated, 0.3, 0.45, 0.8),
    "load by hand": TaskRate(Work.hand_loaded, 0.3, 0.45, 1.5),
    "load by machine": TaskRate(Work.machine_loaded, 0.05, 0.1, 0.2),
    "place base rock": TaskRate(BaseNeeds.tons, 0.35, 0.55, 0.9),
    "set forms": TaskRate(Work.forms, 0.03, 0.045, 0.08),
    "drill dowels": TaskRate(DowelNeeds.dowels, 0.04, 0.06, 0.1),
    "install isolation joints": TaskRate(JointNeeds.isolation_length, 0.01, 0.015, 0.03),
    "lay bond breaker": TaskRate(Work.bond_breaker, 0.005, 0.01, 0.02),
    "unforeseen conditions": TaskRate(Work.unforeseen, 1, 1, 1),
    "apply bonding agent": TaskRate(Work.area_bonded, 0.006, 0.01, 0.015),
    "protect existing walk": TaskRate(Work.protect, 0.15, 0.25, 0.5),
    "place concrete": TaskRate(Work.placing_hours, 1, 1, 1, AS_LABORER),
    "mix bags": TaskRate(Work.mixing_hours, 0.5, 1, 2, AS_LABORER),
    "finish concrete": _by_rate(Work.finishing_hours, FinishWindow.rate, AS_FINISHER),
    "tool joints": TaskRate(Work.joints_tooled, 0.012, 0.02, 0.04, AS_FINISHER),
    "saw-cut joints": TaskRate(JointNeeds.saw_cut, 0.02, 0.03, 0.05),
    "apply curing compound": TaskRate(Work.area, 0.001, 0.002, 0.004),
    "strip forms": TaskRate(Work.forms, 0.008, 0.012, 0.02),
    "clean up": TaskRate(Work.clean_up, 0.75, 1.5, 3),
    "apply sealer": TaskRate(Work.area_sealed, 0.002, 0.004, 0.008),
}
TASK_RATES = tuple(_TASK_RATES[word] for word in TASK.axis.words)
"""The tasks, in the order of their level."""


def _bare(amount: Line) -> Expr:
    return correlation("", lambda plain: plain, amount, source="labor hours per unit are per unit of the task quantity")


def _task_hours(amount: Expr, per_unit: Expr, minimum: Expr) -> Expr:
    """Hours of a task: 0 without quantity, and not below its minimum."""
    return when(amount > 0, largest(minimum, amount * per_unit), 0)


class Task(Section, title="Tasks", each=TASK, sheet=_SHEET):
    """Quantity, labor hours per unit, hours and cost of each task; costs to the cent, task by task."""

    hours_per_unit = factors(
        "Hours per unit",
        "h",
        *(each.usual for each in TASK_RATES),
        source="common practice, no source: hand excavation is 1.2 to 2.8 h/yd3, 1.2 to 2.0 by the labor-based "
        "norms of ILO/ASIST (1998), from memory; loading loose soil is faster than the 1 to 1.5 h that a book of 1921 "
        "has for sand, and a finisher does in an hour what a process plant handbook has ten hours for",
    )
    hours_per_unit_low = factors(
        "Hours per unit, low", "h", *(each.low for each in TASK_RATES), source="common practice, no source"
    )
    hours_per_unit_high = factors(
        "Hours per unit, high", "h", *(each.high for each in TASK_RATES), source="common practice, no source"
    )
    min_hours = factors(
        "Minimum hours per task",
        "h",
        *(each.minimum for each in TASK_RATES),
        source="common practice, no source: layout takes that long however small the job is",
    )
    labor_class = factors(
        "Labor class",
        "",
        *(each.labor_class for each in TASK_RATES),
        source="company policy: 0 composite crew rate, 1 laborer, 2 finisher; never a driver",
    )

    quantity = line(
        "Task quantity",
        "",
        by_row(TASK, *(_bare(each.amount) for each in TASK_RATES)),
        source="from the takeoff, in the unit beside it",
    )
    quantity_unit = line(
        "Unit", "", by_row(TASK, *(each.amount.unit_text for each in TASK_RATES)), source="unit of the task quantity"
    )
    hours = line(
        "Labor hours",
        "h",
        _task_hours(quantity, hours_per_unit, min_hours),
        source="quantity times hours per unit, not below the minimum",
        adds=True,
    )
    low_hours = line(
        "Labor hours, low",
        "h",
        _task_hours(quantity, hours_per_unit_low, min_hours),
        source="quantity times low hours per unit",
        adds=True,
    )
    high_hours = line(
        "Labor hours, high",
        "h",
        _task_hours(quantity, hours_per_unit_high, min_hours),
        source="quantity times high hours per unit",
        adds=True,
    )
    as_laborer = line(
        "Paid as laborer", "", when(equals(labor_class, LABORER), 1, 0), source="1 if the labor class is laborer"
    )
    as_finisher = line(
        "Paid as finisher", "", when(equals(labor_class, FINISHER), 1, 0), source="1 if the labor class is finisher"
    )
    rate = line(
        "Labor rate",
        "$/h",
        when(as_laborer > 0, CrewRate.laborer, when(as_finisher > 0, CrewRate.finisher, CrewRate.composite)),
        source="crew rates: by labor class",
    )
    cost = line("Labor cost of the task", "$", money(hours * rate), source="labor hours times labor rate", adds=True)
    laborer_hours = line("Laborer hours", "h", hours * as_laborer, source="tasks paid as laborer", adds=True)
    composite_hours = line(
        "Composite crew hours",
        "h",
        when(both(as_laborer <= 0, as_finisher <= 0), hours, 0),
        source="tasks paid at the composite crew rate",
        adds=True,
    )
    finisher_hours = line("Finisher hours", "h", hours * as_finisher, source="tasks paid as finisher", adds=True)


class Labor(Section, title="Labor", sheet=_SHEET):
    """Crew days are whole; idle crew time of the last day is charged only as far as company policy has it."""

    min_days_ready_mix = factor(
        "Minimum crew days, ready-mix",
        "",
        2,
        low=1,
        high=3,
        source="common practice, no source: a day for forms, then the pour",
    )
    min_days_bags = factor(
        "Minimum crew days, bagged concrete", "", 1, low=1, high=2, source="common practice, no source"
    )
    idle_share = factor("Idle crew time charged", "%", 0, low=0, high=100, source="company policy: none unless set")

    hours = line("Labor hours, total", "h", total(Task.hours), source="sum of the tasks")
    low_hours = line("Labor hours, total, low", "h", total(Task.low_hours), source="sum of the tasks")
    high_hours = line("Labor hours, total, high", "h", total(Task.high_hours), source="sum of the tasks")
    hours_per_ft2 = line(
        "Labor hours per ft2", "h/ft2", when(Work.area > 0, hours / Work.area, 0), source="labor hours over slab area"
    )
    driver_hours = line(
        "Driver hours, own drivers",
        "h",
        Choice.own_hours + BaseHaul.hours,
        source="hauling plus base rock: they take crew time, and are paid with the haul",
    )
    crew_hours_per_day = line(
        "Crew hours per day", "h", OnSite.crew.count * Workday.day, source="crew on site times working day"
    )
    days = line(
        "Crew days",
        "",
        largest(
            when(Order.bags > 0, min_days_bags, min_days_ready_mix),
            when(crew_hours_per_day > 0, round_up((hours + driver_hours) / crew_hours_per_day), 0),
        ),
        source="labor plus own driver hours over crew hours per day, rounded up, not below the minimum crew days",
    )
    idle = line(
        "Idle crew time",
        "h",
        largest(0, days * crew_hours_per_day - hours - driver_hours) * idle_share / PERCENT,
        source="crew days times crew hours per day, less hours worked, times the share charged",
    )
    idle_cost = line("Idle crew time, cost", "$", money(idle * CrewRate.composite), source="at the composite crew rate")
    cost = line("Labor, total cost", "$", total(Task.cost) + idle_cost, source="sum of the tasks plus idle crew time")
    known = line(
        "Wages are known",
        "",
        when(both(CrewRate.laborer > 0, CrewRate.finisher > 0), 1, 0),
        source="1 if the company book has the wages of laborer and finisher",
    )
