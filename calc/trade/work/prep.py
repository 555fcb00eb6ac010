"""Preparation: what there is of each task before the pour, its hours, and the hours of each material."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Job, Site
from calc.trade.inputs.removal import Footing, Plant
from calc.trade.inputs.work import Digging, Removal
from calc.trade.levels import FOOTING, PLANT, PREP_TASK, STREAM
from calc.trade.materials.base_rock import BaseNeeds
from calc.trade.takeoff.bond_breaker import BondBreaker
from calc.trade.takeoff.dig import Excavation, GreenSpoil, GreenWaste, Spoil
from calc.trade.takeoff.dowels import DowelNeeds
from calc.trade.takeoff.geometry import EdgeTakeoff, Slab
from calc.trade.takeoff.joints import JointNeeds
from calc.trade.takeoff.old_concrete import ConcreteDebris, OldFooting, OldSlab
from calc.trade.takeoff.reinforcement import BarMat, Reinforcement
from calc.trade.work.carrying import Carrying
from calc.trade.work.task_rates import TaskRates, bare, task_hours

_SHEET = "Costs"


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


class PrepWork(Section, title="Preparation quantities", sheet=_SHEET):
    """Set-up is once per job, not per area."""

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
        GreenSpoil.loose + Spoil.loose + ConcreteDebris.loose,
        source="green waste, soil and concrete debris",
    )
    hand_loaded = line("Hand loading", "yd3", when(Digging.by.is_("hand"), loose, 0), source="if excavated by hand")
    machine_loaded = line(
        "Machine loading", "yd3", when(Digging.by.is_("machine"), loose, 0), source="if excavated by machine: all piles"
    )


_QUANTITIES = {
    "layout": total(Slab.net_area),
    "cap lines": count_of(Job.lines_to_cap, "each"),
    "cut brush": total(GreenWaste.brush),
    "grub roots": total(Roots.balls),
    "demolition saw cut": Removal.saw_cut,
    "break out slab": total(OldSlab.solid),
    "chip footings": total(Chipping.unreinforced_equivalent),
    "dig by hand": PrepWork.hand_excavated,
    "dig by machine": PrepWork.machine_excavated,
    "load by hand": PrepWork.hand_loaded,
    "load by machine": PrepWork.machine_loaded,
    "place base rock": BaseNeeds.tons,
    "set forms": total(EdgeTakeoff.formed),
    "drill dowels": DowelNeeds.dowels,
    "install isolation joints": JointNeeds.isolation_length,
    "lay bond breaker": total(BondBreaker.area),
    "lay vapor retarder": total(Reinforcement.vapor_area),
    "place reinforcing bars": total(BarMat.weight),
    "place wire mesh": total(Reinforcement.mesh_area),
    "unforeseen conditions": Removal.unforeseen,
}
PREP_QUANTITIES = tuple(_QUANTITIES[word] for word in PREP_TASK.axis.words)
"""The quantity of each task of the preparation, in the order of their level."""
LOADING, ROCK = "load by hand", "place base rock"
"""The tasks that carry."""


class PrepTask(Section, title="Preparation tasks", each=PREP_TASK, sheet=_SHEET):
    """Hours of one person, without driving and without sorting at the piles."""

    quantity = line(
        "Preparation quantity",
        "",
        by_row(PREP_TASK, *(bare(each) for each in PREP_QUANTITIES)),
        source="from the takeoff, in the unit of the task",
    )
    carrying = line(
        "Hours of carrying far",
        "h",
        when(
            is_word(row_word(PREP_TASK), LOADING),
            PrepWork.hand_loaded * Carrying.hours_per_yard,
            when(is_word(row_word(PREP_TASK), ROCK), BaseNeeds.tons * Carrying.rock_per_ton, 0),
        ),
        source="loose spoil and base rock times carrying time",
    )
    hours = line(
        "Preparation hours",
        "h",
        task_hours(quantity, at(TaskRates.usual, row_number(PREP_TASK)), at(TaskRates.minimum, row_number(PREP_TASK)))
        + carrying,
        source="quantity times hours per unit, not below the minimum, plus carrying far",
        adds=True,
    )


def _of(*words: str) -> Expr:
    """Hours of these tasks together."""
    first_task, *others = words
    hours: Expr = look_up(PrepTask.hours, first_task)
    for word in others:
        hours = hours + look_up(PrepTask.hours, word)
    return hours


class StreamHours(Section, title="Hours of each material", each=STREAM, sheet=_SHEET):
    """What it takes to loosen a material and load it: of people, who share it, and of the machine."""

    share = line(
        "Share of all that is loaded",
        "",
        when(
            PrepWork.loose > 0, by_row(STREAM, GreenSpoil.loose, Spoil.loose, ConcreteDebris.loose) / PrepWork.loose, 0
        ),
        source="by loose volume",
    )
    by_hand = line(
        "Hours by hand",
        "h",
        by_row(
            STREAM,
            _of("cut brush", "grub roots"),
            _of("dig by hand"),
            _of("demolition saw cut", "break out slab", "chip footings"),
        )
        + share * _of("load by hand"),
        source="its tasks, and its share of loading by hand",
    )
    by_machine = line(
        "Hours by machine",
        "h",
        by_row(STREAM, 0, _of("dig by machine"), 0) + share * _of("load by machine"),
        source="its tasks, and its share of loading by machine",
    )


LOADING_BY_HAND, LOADING_BY_MACHINE = _of("load by hand"), _of("load by machine")
"""Hours of loading out: of people with carrying far, and of the machine."""
