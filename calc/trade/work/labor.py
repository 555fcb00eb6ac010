"""Labor: hours and cost of each task. Driver hours are part of the haul and are not counted here."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import LATER_TASK, PREP_TASK, TASK
from calc.trade.prices.wage_rates import FINISHER, LABORER, CrewRate
from calc.trade.takeoff.geometry import Slab
from calc.trade.work.pour_work import LATER_QUANTITIES, PourHours
from calc.trade.work.prep import LOADING, PREP_QUANTITIES, ROCK, PrepTask
from calc.trade.work.task_rates import TaskRates, bare, task_hours
from calc.trade.work.tasks import Work

_SHEET = "Costs"
_PLACED = {"place concrete": Work.placing_hours, "mix bags": Work.mixing_hours}
_QUANTITIES = {
    **dict(zip(PREP_TASK.axis.words, PREP_QUANTITIES, strict=True)),
    **_PLACED,
    **dict(zip(LATER_TASK.axis.words, LATER_QUANTITIES, strict=True)),
}
TASK_QUANTITIES = tuple(_QUANTITIES[word] for word in TASK.axis.words)
"""The quantity of each task, in the order of their level."""
CLEAN_UP = "clean up"


class Task(Section, title="Tasks", each=TASK, sheet=_SHEET):
    """Quantity, labor hours per unit, hours and cost of each task; costs to the cent, task by task."""

    quantity = line(
        "Task quantity",
        "",
        by_row(TASK, *(bare(each) for each in TASK_QUANTITIES)),
        source="from the takeoff, in the unit beside it",
    )
    quantity_unit = fixed(
        "Unit", TASK, *(str(each.unit) for each in TASK_QUANTITIES), source="unit of the task quantity"
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
        when(
            either(
                equals(TaskRates.labor_class, LABORER),
                both(is_word(row_word(TASK), CLEAN_UP), PourHours.formed > 0),
            ),
            1,
            0,
        ),
        source="1 if the labor class is laborer, and for clean-up on a strip visit",
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
    """Hours on tasks. What is paid beyond them stands with the visits."""

    hours_per_ft2 = line(
        "Labor hours per ft2",
        "h/ft2",
        when(total(Slab.net_area) > 0, total(Task.hours) / total(Slab.net_area), 0),
        source="labor hours over slab area",
    )
    known = line(
        "Wages are known",
        "",
        when(both(CrewRate.laborer > 0, CrewRate.finisher > 0), 1, 0),
        source="1 if the company book has the wages of laborer and finisher",
    )
