"""The costs and the tasks that a job has: those with an amount, or without a price that they need."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import TASK
from calc.trade.money.cost_rows import LABOR
from calc.trade.money.costs import COST, CostTable
from calc.trade.work.labor import Task

COST_SHOWN = slot_rows("cost of the job", shown=True)
"""A row of the list of costs."""

TASK_SHOWN = slot_rows("task of the job", shown=True)
"""A row of the list of tasks."""


class CostOfJob(Section, title="Costs of the job", each=COST, sheet="Costs"):
    """Which costs the job has: labor stands with the tasks, and what comes to nothing is left out."""

    number = line("Number of the cost", "", row_number(COST), source="its place among all costs")
    is_shown = line(
        "Cost is listed",
        "",
        when(
            both(not_(is_word(CostTable.group, LABOR)), either(abs_(CostTable.amount) > 0, CostTable.unpriced > 0)),
            1,
            0,
        ),
        source="1 if it has an amount, or needs a price; labor stands by task",
        adds=True,
    )
    place = line(
        "Place in the list of costs",
        "",
        when(is_shown > 0, running(is_shown, JOB), 0),
        source="in the order of the costs; 0 if it is not listed",
    )


class ListedCosts(Section, title="Costs listed", sheet="Costs"):
    """How long the list is."""

    count = line("Costs listed, number", "", total(CostOfJob.is_shown), source="sum of the costs that are listed")


class CostRow(Section, title="List of costs", each=COST_SHOWN, sheet="Costs", slots_for=ListedCosts.count):
    """The costs that are listed, one below another without gaps."""

    row = line(
        "Number of the cost listed",
        "",
        when(
            row_number(COST_SHOWN) <= ListedCosts.count,
            lookup_by_key(CostOfJob.number, CostOfJob.place, row_number(COST_SHOWN)),
            0,
        ),
        source="in the order of the costs; 0 in a row that is not used",
    )


class TaskOfJob(Section, title="Tasks of the job", each=TASK, sheet="Costs"):
    """Which tasks the job has."""

    number = line("Number of the task", "", row_number(TASK), source="its place among all tasks")
    is_shown = line("Task is listed", "", when(Task.hours > 0, 1, 0), source="1 if it takes any time", adds=True)
    place = line(
        "Place in the list of tasks",
        "",
        when(is_shown > 0, running(is_shown, JOB), 0),
        source="in the order of the tasks; 0 if it is not listed",
    )


class ListedTasks(Section, title="Tasks listed", sheet="Costs"):
    """How long the list is."""

    count = line("Tasks listed, number", "", total(TaskOfJob.is_shown), source="sum of the tasks that are listed")


class TaskRow(Section, title="List of tasks", each=TASK_SHOWN, sheet="Costs", slots_for=ListedTasks.count):
    """The tasks that are listed, one below another without gaps."""

    row = line(
        "Number of the task listed",
        "",
        when(
            row_number(TASK_SHOWN) <= ListedTasks.count,
            lookup_by_key(TaskOfJob.number, TaskOfJob.place, row_number(TASK_SHOWN)),
            0,
        ),
        source="in the order of the tasks; 0 in a row that is not used",
    )
