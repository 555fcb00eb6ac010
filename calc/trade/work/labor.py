"""Labor: hours and cost of each task, and crew days.

Driver hours are part of the haul and are not counted here. The mixing crew also places the bagged concrete.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.choice import Choice
from calc.trade.inputs.work import OnSite
from calc.trade.levels import TASK
from calc.trade.materials.base_rock import BaseHaul
from calc.trade.ordering.order import Order
from calc.trade.prices.wage_rates import FINISHER, LABORER, CrewRate
from calc.trade.takeoff.joints import JointNeeds
from calc.trade.work.prep import LOADING, PREP_QUANTITIES, ROCK, PrepTask, PrepWork
from calc.trade.work.task_rates import TaskRates, bare, task_hours
from calc.trade.work.tasks import Work
from calc.trade.work.visit_rules import VisitRules

_SHEET = "Costs"
_LATER = {
    "apply bonding agent": Work.area_bonded,
    "protect existing walk": Work.protect,
    "place concrete": Work.placing_hours,
    "mix bags": Work.mixing_hours,
    "finish concrete": Work.finishing_hours,
    "tool joints": Work.joints_tooled,
    "saw-cut joints": JointNeeds.saw_cut,
    "apply curing compound": PrepWork.area,
    "strip forms": PrepWork.forms,
    "clean up": Work.clean_up,
    "apply sealer": Work.area_sealed,
}
"""The quantity of each task of the pour and after it."""
TASK_QUANTITIES = (*PREP_QUANTITIES, *(_LATER[word] for word in TASK.axis.words[len(PREP_QUANTITIES) :]))
"""The quantity of each task, in the order of their level."""


class Task(Section, title="Tasks", each=TASK, sheet=_SHEET):
    """Quantity, labor hours per unit, hours and cost of each task; costs to the cent, task by task."""

    quantity = line(
        "Task quantity",
        "",
        by_row(TASK, *(bare(each) for each in TASK_QUANTITIES)),
        source="from the takeoff, in the unit beside it",
    )
    quantity_unit = line(
        "Unit", "", by_row(TASK, *(each.unit_text for each in TASK_QUANTITIES)), source="unit of the task quantity"
    )
    carrying = line(
        "Carrying far",
        "h",
        when(
            is_word(row_word(TASK), LOADING),
            look_up(PrepTask.carrying, LOADING),
            when(is_word(row_word(TASK), ROCK), look_up(PrepTask.carrying, ROCK), 0),
        ),
        source="of the preparation task",
    )
    hours = line(
        "Labor hours",
        "h",
        task_hours(quantity, TaskRates.usual, TaskRates.minimum) + carrying,
        source="quantity times hours per unit, not below the minimum",
        adds=True,
    )
    low_hours = line(
        "Labor hours, low",
        "h",
        task_hours(quantity, TaskRates.low, TaskRates.minimum) + carrying,
        source="quantity times low hours per unit",
        adds=True,
    )
    high_hours = line(
        "Labor hours, high",
        "h",
        task_hours(quantity, TaskRates.high, TaskRates.minimum) + carrying,
        source="quantity times high hours per unit",
        adds=True,
    )
    as_laborer = line(
        "Paid as laborer",
        "",
        when(equals(TaskRates.labor_class, LABORER), 1, 0),
        source="1 if the labor class is laborer",
    )
    as_finisher = line(
        "Paid as finisher",
        "",
        when(equals(TaskRates.labor_class, FINISHER), 1, 0),
        source="1 if the labor class is finisher",
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
        "Labor hours per ft2",
        "h/ft2",
        when(PrepWork.area > 0, hours / PrepWork.area, 0),
        source="labor hours over slab area",
    )
    driver_hours = line(
        "Driver hours, own drivers",
        "h",
        Choice.own_hours + BaseHaul.hours,
        source="hauling plus base rock: they take crew time, and are paid with the haul",
    )
    crew_hours_per_day = line(
        "Crew hours per day", "h", OnSite.crew.count * VisitRules.day, source="crew on site times working day"
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
