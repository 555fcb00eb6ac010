"""Production rates of the labor tasks, and who is paid for each."""

from __future__ import annotations

from dataclasses import dataclass

from calc.declare import *
from calc.trade.levels import TASK

COMPOSITE, AS_LABORER, AS_FINISHER = 0, 1, 2
"""Labor class of a task: the composite crew rate, or the row of a role."""


@dataclass(frozen=True)
class TaskRate:
    """Labor hours per unit of a task's quantity (low, usual, high), its labor class and its minimum hours."""

    low: float
    usual: float
    high: float
    labor_class: int = COMPOSITE
    minimum: float = 0


_RATES = {
    "layout": TaskRate(0.003, 0.004, 0.006, minimum=0.75),
    "cap lines": TaskRate(0.3, 0.6, 1.5),
    "cut brush": TaskRate(0.5, 0.9, 1.5),
    "grub roots": TaskRate(0.25, 0.6, 2),
    "demolition saw cut": TaskRate(0.02, 0.03, 0.05),
    "break out slab": TaskRate(1, 1.6, 3),
    "chip footings": TaskRate(4, 7, 12),
    "dig by hand": TaskRate(1.2, 1.7, 2.8),
    "dig by machine": TaskRate(0.3, 0.45, 0.8),
    "load by hand": TaskRate(0.45, 0.667, 1.5),
    "load by machine": TaskRate(0.05, 0.1, 0.2),
    "place base rock": TaskRate(0.35, 0.55, 0.9),
    "set forms": TaskRate(0.03, 0.045, 0.08),
    "drill dowels": TaskRate(0.04, 0.06, 0.1),
    "install isolation joints": TaskRate(0.01, 0.015, 0.03),
    "lay bond breaker": TaskRate(0.005, 0.01, 0.02),
    "lay vapor retarder": TaskRate(0.001, 0.002, 0.004),
    "place reinforcing bars": TaskRate(0.007, 0.011, 0.02),
    "place wire mesh": TaskRate(0.004, 0.007, 0.012),
    "unforeseen conditions": TaskRate(1, 1, 1),
    "apply bonding agent": TaskRate(0.006, 0.01, 0.015),
    "protect existing walk": TaskRate(0.15, 0.25, 0.5),
    "place concrete": TaskRate(1, 1, 1, AS_LABORER),
    "mix bags": TaskRate(0.5, 1, 2, AS_LABORER),
    "finish concrete": TaskRate(80 / 120, 1, 80 / 40, AS_FINISHER),
    "tool joints": TaskRate(0.012, 0.02, 0.04, AS_FINISHER),
    "saw-cut joints": TaskRate(0.02, 0.03, 0.05, AS_FINISHER),
    "apply curing compound": TaskRate(0.001, 0.002, 0.004),
    "strip forms": TaskRate(0.008, 0.012, 0.02, AS_LABORER),
    "clean up": TaskRate(0.75, 1.5, 3),
    "apply sealer": TaskRate(0.002, 0.004, 0.008, AS_LABORER),
}
"""By task. The ends of the finishing rate are those of its own range, from 40 to 120 ft2 an hour around 80."""
_TASK_RATES = tuple(_RATES[word] for word in TASK.axis.words)


class TaskRates(Section, title="Task rates", each=TASK, sheet="Costs"):
    """What a task takes per unit of its quantity, in the unit beside it."""

    usual = factors(
        "Hours per unit",
        "h",
        *(each.usual for each in _TASK_RATES),
        source="common practice, no source: hand excavation is 1.2 to 2.8 h/yd3, 1.2 to 2.0 by the labor-based "
        "norms of ILO/ASIST (1998), from memory; three people load 1.5 loose yd3 an hour each by a published "
        "estimating lecture, and loading loose soil is faster than the 1 to 1.5 h that a book of 1921 has for sand",
    )
    low = factors("Hours per unit, low", "h", *(each.low for each in _TASK_RATES), source="common practice, no source")
    high = factors(
        "Hours per unit, high", "h", *(each.high for each in _TASK_RATES), source="common practice, no source"
    )
    minimum = factors(
        "Minimum hours per task",
        "h",
        *(each.minimum for each in _TASK_RATES),
        source="common practice, no source: layout takes that long however small the job is",
    )
    labor_class = factors(
        "Labor class",
        "",
        *(each.labor_class for each in _TASK_RATES),
        source="company policy: 0 composite crew rate, 1 laborer, 2 finisher; never a driver",
    )


def bare(amount: Expr) -> Expr:
    """A task's quantity as a plain number, for rates that are per unit of it."""
    return correlation("", lambda plain: plain, amount, source="labor hours per unit are per unit of the task quantity")


def task_hours(quantity: Expr, per_unit: Expr, minimum: Expr) -> Expr:
    """Hours of a task: 0 without quantity, and not below its minimum."""
    return when(quantity > 0, largest(minimum, quantity * per_unit), 0)
