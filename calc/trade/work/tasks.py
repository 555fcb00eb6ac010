"""Task quantities of the job."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import Edge
from calc.trade.inputs.job import Job, Site
from calc.trade.inputs.pour import Crew
from calc.trade.inputs.removal import Footing, Plant
from calc.trade.inputs.work import Digging, Removal
from calc.trade.levels import EDGE, FOOTING, PLANT
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.finish_window import FinishWindow
from calc.trade.ordering.order import Order
from calc.trade.ordering.pour import Pour
from calc.trade.takeoff.dig import Excavation, GreenWaste, Spoil
from calc.trade.takeoff.geometry import EdgeTakeoff, Slab
from calc.trade.takeoff.joints import MatchedJoints
from calc.trade.takeoff.old_concrete import ConcreteDebris, OldFooting, OldSlab
from calc.trade.work.protection import BondBreaker

_SHEET = "Costs"
_ONE_EACH, _ONE_PERSON = exact(1, "each"), exact(1, "person")


class Roots(Section, title="Root balls to grub", each=PLANT, sheet=_SHEET):
    """Grubbed one by one."""

    stump_from = factor(
        "Trunk that leaves a stump, above",
        "in",
        6,
        low=4,
        high=12,
        source="common practice, no source: a thinner one is grubbed with its roots",
    )
    balls = line(
        "Root balls",
        "each",
        when(Plant.ball > 0, Plant.quantity, 0),
        source="number of plants, if they have a root ball",
        adds=True,
    )
    stumps = line(
        "Stumps",
        "each",
        when(Plant.trunk > stump_from, Plant.quantity, 0),
        source="plants with a thicker trunk",
        adds=True,
    )


class Chipping(Section, title="Chipping", each=FOOTING, sheet=_SHEET):
    """Reinforcement slows chipping. If it is not known, none is assumed, and a question is raised."""

    reinforced_factor = factor(
        "Chipping time factor, reinforced", "", 2, low=1.5, high=3, source="common practice, no source: bars are cut"
    )
    unreinforced_equivalent = line(
        "Chipping quantity, unreinforced equivalent",
        "yd3",
        OldFooting.chipped_volume * when(Footing.reinforced.is_("yes"), reinforced_factor, 1),
        source="chipped volume, times the factor if reinforced",
        adds=True,
    )
    unknown_reinforcement = line(
        "Chipping quantity, reinforcement unknown",
        "yd3",
        when(Footing.reinforced.is_("unknown"), OldFooting.chipped_volume, 0),
        source="chipped volume, counted as unreinforced",
        adds=True,
    )


class OldWalk(Section, title="Adjacent old concrete", each=EDGE, sheet=_SHEET):
    """Concrete that stays is protected."""

    at_old_concrete = line(
        "Edge at old concrete",
        "",
        when(both(Edge.kind.is_("existing"), EdgeTakeoff.length > 0), 1, 0),
        source="1 for an edge at existing concrete",
        adds=True,
    )


class Work(Section, title="Task quantities", sheet=_SHEET):
    """Set-up and clean-up are once per job, not per area."""

    area = line("Slab area, all areas", "ft2", total(Slab.net_area), source="sum of the net areas")
    caps = line("Irrigation lines to cap", "each", Job.lines_to_cap, source="input")
    brush = line("Brush to cut", "yd3", total(GreenWaste.brush), source="loose volume, all plants")
    roots = line("Root balls to grub", "each", total(Roots.balls), source="sum of the plants")
    saw_cut = line("Demolition saw cut", "ft", Removal.saw_cut, source="input")
    old_slab = line("Old slab to break", "yd3", total(OldSlab.solid), source="solid volume, all areas")
    chipping = line(
        "Footings to chip",
        "yd3",
        total(Chipping.unreinforced_equivalent),
        source="sum of the footings, unreinforced equivalent",
    )
    excavated = line(
        "Soil to excavate",
        "yd3",
        when(
            Spoil.bank.is_overridden,
            Spoil.bank + when(Site.keep_backfill.is_("yes"), total(Excavation.backfill), 0),
            largest(0, total(Excavation.bank) - total(GreenWaste.root_balls)),
        ),
        source="bank volume less root balls; backfill along forms is excavated too",
    )
    hand_excavated = line(
        "Hand excavation", "yd3", when(Digging.by.is_("hand"), excavated, 0), source="if excavated by hand"
    )
    machine_excavated = line(
        "Machine excavation", "yd3", when(Digging.by.is_("machine"), excavated, 0), source="if excavated by machine"
    )
    loose = line(
        "Spoil to load, loose volume",
        "yd3",
        Spoil.green_loose + Spoil.loose + ConcreteDebris.loose,
        source="green waste, soil and concrete debris",
    )
    hand_loaded = line("Hand loading", "yd3", when(Digging.by.is_("hand"), loose, 0), source="if excavated by hand")
    machine_loaded = line(
        "Machine loading", "yd3", when(Digging.by.is_("machine"), loose, 0), source="if excavated by machine: all piles"
    )
    forms = line("Forms to set and strip", "ft", total(EdgeTakeoff.formed), source="sum of the formed edges")
    bond_breaker = line("Bond breaker to lay", "ft2", total(BondBreaker.area), source="sum of the footings")
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
        area / FinishWindow.rate / _ONE_PERSON,
        source="slab area over finishing rate, the same rate as for the finishing window",
    )
    joints_tooled = line(
        "Joints to tool",
        "ft",
        when(Site.joint_method.is_("tooled"), total(MatchedJoints.length), 0),
        source="control joint length, if the joints are tooled",
    )
    area_sealed = line("Area to seal, all coats", "ft2", area * Site.sealer_coats.count, source="slab area times coats")
    clean_up = line("Clean-up, per job", "each", _ONE_EACH, source="once per job")
    unforeseen = line("Unforeseen-conditions allowance", "h", Removal.unforeseen, source="input")
