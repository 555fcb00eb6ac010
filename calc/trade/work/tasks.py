"""Quantities of the tasks of the pour and after it."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import Edge
from calc.trade.inputs.job import Site
from calc.trade.inputs.pour import Crew
from calc.trade.levels import EDGE
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.finish_window import FinishWindow
from calc.trade.ordering.order import Order
from calc.trade.ordering.pour import Pour
from calc.trade.takeoff.geometry import EdgeTakeoff
from calc.trade.takeoff.joints import MatchedJoints
from calc.trade.takeoff.old_concrete import OldFooting
from calc.trade.work.prep import PrepWork

_SHEET = "Costs"
_ONE_EACH, _ONE_PERSON = exact(1, "each"), exact(1, "person")


class OldWalk(Section, title="Adjacent old concrete", each=EDGE, sheet=_SHEET):
    """Concrete that stays is protected."""

    at_old_concrete = line(
        "Edge at old concrete",
        "",
        when(both(Edge.kind.is_("existing"), EdgeTakeoff.length > 0), 1, 0),
        source="1 for an edge at existing concrete",
        adds=True,
    )


class Work(Section, title="Quantities of the pour", sheet=_SHEET):
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
    placing_hours = line(
        "Placing crew hours",
        "h",
        when(Order.bags > 0, 0, Pour.hours * Crew.placing.count),
        source="placing time times placing crew",
    )
    mix_time = line("Mixing time", "h", when(Order.bags > 0, Pour.hours, 0), source="elapsed time, if bags are chosen")
    mixing_hours = line("Mixing crew hours", "h", mix_time * Bags.crew.count, source="mixing time times mixing crew")
    finishing_hours = line(
        "Finishing crew hours",
        "h",
        PrepWork.area / FinishWindow.rate / _ONE_PERSON,
        source="slab area over finishing rate, the same rate as for the finishing window",
    )
    joints_tooled = line(
        "Joints to tool",
        "ft",
        when(Site.joint_method.is_("tooled"), total(MatchedJoints.length), 0),
        source="control joint length, if the joints are tooled",
    )
    area_sealed = line(
        "Area to seal, all coats", "ft2", PrepWork.area * Site.sealer_coats.count, source="slab area times coats"
    )
    clean_up = line("Clean-up, per job", "each", _ONE_EACH, source="once per job")
