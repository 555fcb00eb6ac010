"""Labor: hours of every task, what they cost, and how many days they make.

A driver's hours are part of the haul and never stand here. Whoever mixes bags places by bags, and is paid like it.
"""

from __future__ import annotations

from dataclasses import dataclass

from calc.declare import *
from calc.trade.hauling.choice import Choice
from calc.trade.hauling.loads import Clock
from calc.trade.inputs.work import OnSite
from calc.trade.levels import TASK
from calc.trade.materials.base_rock import BaseHaul, BaseNeeds
from calc.trade.ordering.finish_window import FinishWindow
from calc.trade.ordering.order import Order
from calc.trade.prices.wage_rates import FINISHER, LABOURER, CrewRate
from calc.trade.takeoff.dowels import DowelNeeds
from calc.trade.takeoff.joints import JointNeeds
from calc.trade.work.tasks import Work

_SHEET = "Costs"
AS_MIX, AS_LABOURER, AS_FINISHER = 0, 1, 2
"""Who is paid for a task: the crew as it is mixed, or the row of a role."""


@dataclass(frozen=True)
class TaskRate:
    """A task as a handbook lists it: how much there is of it, hours for one (least, usual, most), and who is paid."""

    amount: Line
    least: float
    usual: float
    most: float
    paid: int = AS_MIX
    at_least: float = 0
    """Hours that it takes however little there is of it."""


def _by_pace(hours: Line, pace: Factor, paid: int) -> TaskRate:
    """A task whose usual hours follow from a pace: a good and a bad day are the ends of the range of that pace."""
    (usual,) = pace.values
    return TaskRate(hours, usual / (pace.high or usual), 1, usual / (pace.low or usual), paid)


_CHORES = {
    "layout": TaskRate(Work.area, 0.003, 0.004, 0.006, at_least=0.75),
    "cap lines": TaskRate(Work.caps, 0.3, 0.6, 1.5),
    "cut brush": TaskRate(Work.brush, 0.5, 0.9, 1.5),
    "grub roots": TaskRate(Work.roots, 0.25, 0.6, 2),
    "demolition saw cut": TaskRate(Work.saw_cut, 0.02, 0.03, 0.05),
    "break out slab": TaskRate(Work.old_slab, 1, 1.6, 3),
    "chip footings": TaskRate(Work.chipping, 4, 7, 12),
    "dig by hand": TaskRate(Work.hand_dug, 1.2, 1.7, 2.8),
    "dig by machine": TaskRate(Work.machine_dug, 0.3, 0.45, 0.8),
    "load by hand": TaskRate(Work.hand_loaded, 0.3, 0.45, 1.5),
    "load by machine": TaskRate(Work.machine_loaded, 0.05, 0.1, 0.2),
    "place base rock": TaskRate(BaseNeeds.tons, 0.35, 0.55, 0.9),
    "set forms": TaskRate(Work.forms, 0.03, 0.045, 0.08),
    "drill dowels": TaskRate(DowelNeeds.dowels, 0.04, 0.06, 0.1),
    "install isolation joints": TaskRate(JointNeeds.isolation, 0.01, 0.015, 0.03),
    "apply bonding agent": TaskRate(Work.bonded, 0.006, 0.01, 0.015),
    "protect existing walk": TaskRate(Work.protect, 0.15, 0.25, 0.5),
    "place concrete": TaskRate(Work.placing, 1, 1, 1, AS_LABOURER),
    "mix bags": TaskRate(Work.mixing, 0.5, 1, 2, AS_LABOURER),
    "finish concrete": _by_pace(Work.finishing, FinishWindow.pace, AS_FINISHER),
    "tool joints": TaskRate(Work.tooled, 0.012, 0.02, 0.04, AS_FINISHER),
    "saw-cut joints": TaskRate(JointNeeds.saw, 0.02, 0.03, 0.05),
    "apply curing compound": TaskRate(Work.area, 0.001, 0.002, 0.004),
    "strip forms": TaskRate(Work.forms, 0.008, 0.012, 0.02),
    "clean up": TaskRate(Work.once, 0.75, 1.5, 3),
    "apply sealer": TaskRate(Work.sealed, 0.002, 0.004, 0.008),
    "unforeseen conditions": TaskRate(Work.unknown, 1, 1, 1),
}
CHORES = tuple(_CHORES[word] for word in TASK.axis.words)
"""The tasks in the order of their level."""


def _bare(amount: Line) -> Expr:
    return correlation(
        "", lambda plain: plain, amount, source="hours for one are for one of what the task is counted in"
    )


def _worked(amount: Expr, for_one: Expr, at_least: Expr) -> Expr:
    """The hours of a task: none where there is none of it, and never less than it takes to begin."""
    return when(amount > 0, largest(at_least, amount * for_one), 0)


class Task(Section, title="Tasks", each=TASK, sheet=_SHEET):
    """How much there is of each task, hours for one, and what they come to: to the cent, task by task."""

    usual = factors(
        "Hours for one",
        "h",
        *(each.usual for each in CHORES),
        source="common practice, no source: digging by hand is 1.2 to 2.8 h a yard, 1.2 to 2.0 by the labour-based "
        "norms of ILO/ASIST (1998), from memory; loading loose soil is quicker than the 1 to 1.5 h that a book of 1921 "
        "has for sand, and a finisher does in an hour what a process plant handbook gives ten for",
    )
    least = factors(
        "Hours for one, least", "h", *(each.least for each in CHORES), source="common practice, no source: a good day"
    )
    most = factors(
        "Hours for one, most", "h", *(each.most for each in CHORES), source="common practice, no source: a bad day"
    )
    at_least = factors(
        "Least time of a task",
        "h",
        *(each.at_least for each in CHORES),
        source="common practice, no source: laying out takes so long however small the job is",
    )
    role = factors(
        "Paid as",
        "",
        *(each.paid for each in CHORES),
        source="house rule: 0 is the crew as it is mixed, 1 a labourer, 2 a finisher; never a driver",
    )

    amount = line("How much of it", "", by_row(TASK, *(_bare(each.amount) for each in CHORES)), source="what there is")
    counted_in = line(
        "Counted in", "", by_row(TASK, *(each.amount.unit_text for each in CHORES)), source="as what there is"
    )
    hours = line("Hours", "h", _worked(amount, usual, at_least), source="how much times hours for one", adds=True)
    low_hours = line("Hours, at least", "h", _worked(amount, least, at_least), source="on a good day", adds=True)
    high_hours = line("Hours, at most", "h", _worked(amount, most, at_least), source="on a bad day", adds=True)
    as_labourer = line("Is a labourer's", "", when(equals(role, LABOURER), 1, 0), source="1 for one; placing")
    as_finisher = line("Is a finisher's", "", when(equals(role, FINISHER), 1, 0), source="1 for one; finishing")
    rate = line(
        "An hour of it",
        "$/h",
        when(as_labourer > 0, CrewRate.labourer, when(as_finisher > 0, CrewRate.finisher, CrewRate.mix)),
        source="rates of the crew: of the role, else the crew mix",
    )
    cost = line("Cost of the task", "$", money(hours * rate), source="hours times rate", adds=True)
    by_labourer = line("Hours of labourers", "h", hours * as_labourer, source="tasks that are theirs", adds=True)
    by_mix = line(
        "Hours at crew mix",
        "h",
        when(both(as_labourer <= 0, as_finisher <= 0), hours, 0),
        source="tasks that are nobody's own",
        adds=True,
    )
    by_finisher = line("Hours of finishers", "h", hours * as_finisher, source="tasks that are theirs", adds=True)


class Labor(Section, title="Labor", sheet=_SHEET):
    """Days are whole; what the crew does with the rest of the last one is charged only as far as the house says."""

    least_poured = factor(
        "Least days with ready-mix", "", 2, low=1, high=3, source="common practice, no source: forms, then the pour"
    )
    least_bagged = factor("Least days with bags", "", 1, low=1, high=2, source="common practice, no source")
    idle_share = factor(
        "Unfilled crew time that is charged", "%", 0, low=0, high=100, source="house rule: none, unless the house says"
    )

    hours = line("Labor, in all", "h", total(Task.hours), source="sum of the tasks")
    low_hours = line("Labor, at least", "h", total(Task.low_hours), source="on a good day in every task")
    high_hours = line("Labor, at most", "h", total(Task.high_hours), source="on a bad day in every task")
    by_area = line("Labor by area", "h/ft2", when(Work.area > 0, hours / Work.area, 0), source="hours over the slab")
    driven = line(
        "Hours of own drivers",
        "h",
        Choice.own_hours + BaseHaul.hours,
        source="haul and rock: they take crew time, and are paid with the haul",
    )
    a_day = line("Crew time of a day", "h", OnSite.crew.count * Clock.day, source="people on the site times the day")
    days = line(
        "Days of the crew",
        "",
        largest(
            when(Order.bags > 0, least_bagged, least_poured), when(a_day > 0, round_up((hours + driven) / a_day), 0)
        ),
        source="labor and own driving over a day of the crew, whole days, and never fewer than a pour takes",
    )
    idle = line(
        "Unfilled crew time",
        "h",
        largest(0, days * a_day - hours - driven) * idle_share / PERCENT,
        source="what is left of the days, as far as it is charged",
    )
    idle_cost = line("Unfilled crew time, cost", "$", money(idle * CrewRate.mix), source="at crew mix")
    cost = line("Labor, cost", "$", total(Task.cost) + idle_cost, source="sum of the tasks, and unfilled crew time")
    known = line(
        "Wages are known",
        "",
        when(both(CrewRate.labourer > 0, CrewRate.finisher > 0), 1, 0),
        source="1 when the house book gives the wages of labourer and finisher",
    )
