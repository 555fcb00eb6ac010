"""The tasks of the pour and after it whose hours do not depend on the placing method."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import Edge
from calc.trade.inputs.job import Site
from calc.trade.levels import EDGE, LATER_TASK
from calc.trade.ordering.finish_window import FinishWindow
from calc.trade.takeoff.geometry import EdgeTakeoff, Slab
from calc.trade.takeoff.joints import JointNeeds, MatchedJoints
from calc.trade.takeoff.old_concrete import OldFooting
from calc.trade.work.task_rates import TaskRates, bare, task_hours

_SHEET = "Costs"
_ONE_EACH = exact(1, "each")


class OldWalk(Section, title="Adjacent old concrete", each=EDGE, sheet=_SHEET):
    """Concrete that stays is protected."""

    at_old_concrete = line(
        "Edge at old concrete",
        "",
        when(both(Edge.kind.is_("existing"), EdgeTakeoff.length > 0), 1, 0),
        source="1 for an edge at existing concrete",
        adds=True,
    )


class PourWork(Section, title="Quantities of the pour and after it", sheet=_SHEET):
    """Clean-up is once per job, not per area."""

    area_bonded = line(
        "Bonded face, all coats",
        "ft2",
        total(OldFooting.bonded_area) * Site.bond_coats.count,
        source="bonded face times coats",
    )
    protect = line(
        "Old walk to protect",
        "each",
        when(total(OldWalk.at_old_concrete) > 0, 1, 0),
        source="once per job, if any edge is at old concrete",
    )
    joints_tooled = line(
        "Joints to tool",
        "ft",
        when(Site.joint_method.is_("tooled"), total(MatchedJoints.length), 0),
        source="control joint length, if the joints are tooled",
    )
    area_sealed = line(
        "Area to seal, all coats", "ft2", total(Slab.net_area) * Site.sealer_coats.count, source="slab area times coats"
    )
    clean_up = line("Clean-up, per job", "each", _ONE_EACH, source="once per job")


_QUANTITIES = {
    "apply bonding agent": PourWork.area_bonded,
    "protect existing walk": PourWork.protect,
    "finish concrete": FinishWindow.finish_hours,
    "tool joints": PourWork.joints_tooled,
    "saw-cut joints": JointNeeds.saw_cut,
    "apply curing compound": total(Slab.net_area),
    "strip forms": total(EdgeTakeoff.formed),
    "clean up": PourWork.clean_up,
    "apply sealer": PourWork.area_sealed,
}
LATER_QUANTITIES = tuple(_QUANTITIES[word] for word in LATER_TASK.axis.words)
"""The quantity of each of these tasks, in the order of their level."""


class LaterTask(Section, title="Tasks of the pour and after it", each=LATER_TASK, sheet=_SHEET):
    """Hours of one person, without placing or mixing."""

    quantity = line(
        "Quantity of the later task",
        "",
        by_row(LATER_TASK, *(bare(each) for each in LATER_QUANTITIES)),
        source="from the takeoff, in the unit of the task",
    )
    hours = line(
        "Hours of the later task",
        "h",
        task_hours(
            quantity,
            look_up(TaskRates.usual, row_word(LATER_TASK)),
            look_up(TaskRates.minimum, row_word(LATER_TASK)),
        ),
        source="quantity times hours per unit, not below the minimum",
        adds=True,
    )


def _of(word: str) -> Expr:
    """Hours of a task."""
    return look_up(LaterTask.hours, word)


CURING, SAWING, SEALING = _of("apply curing compound"), _of("saw-cut joints"), _of("apply sealer")
"""Hours of curing, of sawing joints, of sealing."""


class PourHours(Section, title="Hours of the pour and after it", sheet=_SHEET):
    """Everybody on the pour finishes. Without forms nobody comes to strip them, and clean-up belongs to the pour."""

    formed = line("Forms to strip", "", when(total(EdgeTakeoff.formed) > 0, 1, 0), source="1 if there are forms")
    finishing = line(
        "Finishing and tooling hours", "h", _of("finish concrete") + _of("tool joints"), source="hours of one finisher"
    )
    shared = line(
        "Hours that the pour crew shares",
        "h",
        finishing + CURING + _of("apply bonding agent") + _of("protect existing walk") + (1 - formed) * _of("clean up"),
        source="finishing, joints tooled, curing, bonding agent, protection, and clean-up where nothing is formed",
    )
    stripping = line(
        "Hours to strip forms and clean up",
        "h",
        formed * (_of("strip forms") + _of("clean up")),
        source="tasks; none without forms",
    )
