"""What there is to do: how much of each task the job has."""

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
from calc.trade.takeoff.dig import Dig, Green, Spoil
from calc.trade.takeoff.geometry import EdgeTakeoff, Slab
from calc.trade.takeoff.joints import Matched
from calc.trade.takeoff.old_concrete import OldFooting, OldSlab, Rubble

_SHEET = "Costs"
ONE_EACH, ONE_PERSON = exact(1, "each"), exact(1, "person")


class Roots(Section, title="Root balls", each=PLANT, sheet=_SHEET):
    """Each is grubbed out by itself."""

    balls = line(
        "Root balls to grub",
        "each",
        when(Plant.ball > 0, Plant.quantity, 0),
        source="plants that have one",
        adds=True,
    )


class Chipping(Section, title="Chipping", each=FOOTING, sheet=_SHEET):
    """Bars in a footing make it slow; where nobody knows of bars, none are counted on, and that is asked."""

    barred = factor(
        "Chipping with bars over without", "", 2, low=1.5, high=3, source="common practice, no source: bars are cut"
    )
    plain = line(
        "Chipping, as if without bars",
        "yd3",
        OldFooting.chipped * when(Footing.reinforced.is_("yes"), barred, 1),
        source="chipped out, more of it where there are bars",
        adds=True,
    )
    guessed = line(
        "Chipping where nobody knows of bars",
        "yd3",
        when(Footing.reinforced.is_("unknown"), OldFooting.chipped, 0),
        source="counted as if without bars",
        adds=True,
    )


class OldWalk(Section, title="Old concrete beside", each=EDGE, sheet=_SHEET):
    """What stays is kept clean."""

    meets = line(
        "Meets old concrete",
        "",
        when(both(Edge.kind.is_("existing"), EdgeTakeoff.length > 0), 1, 0),
        source="1 for an edge at an old walk",
        adds=True,
    )


class Work(Section, title="What there is to do", sheet=_SHEET):
    """Set-up and cleaning are once a job, never once an area."""

    area = line("Slab to lay out, finish and cure", "ft2", total(Slab.net_area), source="all areas")
    caps = line("Lines to cap", "each", Job.lines_to_cap, source="as typed")
    brush = line("Brush to cut", "yd3", total(Green.brush), source="loose, all plants")
    roots = line("Roots to grub", "each", total(Roots.balls), source="all plants")
    saw_cut = line("Saw cut for removal", "ft", Removal.saw_cut, source="as typed")
    old_slab = line("Old slab to break", "yd3", total(OldSlab.solid), source="solid, all areas")
    chipping = line("Footings to chip", "yd3", total(Chipping.plain), source="all footings, more where there are bars")
    dug = line(
        "Soil to dig",
        "yd3",
        when(
            Spoil.bank.is_overridden,
            Spoil.bank + when(Site.keep_backfill.is_("yes"), total(Dig.backfill), 0),
            largest(0, total(Dig.bank) - total(Green.balls)),
        ),
        source="in the bank, less root balls; what goes back along the forms is dug too",
    )
    hand_dug = line("Dug by hand", "yd3", when(Digging.by.is_("hand"), dug, 0), source="how it is dug")
    machine_dug = line("Dug by machine", "yd3", when(Digging.by.is_("machine"), dug, 0), source="how it is dug")
    loose = line(
        "To load, loose",
        "yd3",
        Spoil.green_loose + Spoil.loose + Rubble.loose,
        source="green, soil and old concrete, as they leave",
    )
    hand_loaded = line("Loaded by hand", "yd3", when(Digging.by.is_("hand"), loose, 0), source="as it is dug")
    machine_loaded = line(
        "Loaded by machine", "yd3", when(Digging.by.is_("machine"), loose, 0), source="a machine loads every pile"
    )
    forms = line("Forms to set and strip", "ft", total(EdgeTakeoff.formed), source="all edges that are formed")
    bonded = line(
        "Faces to bond, all coats",
        "ft2",
        total(OldFooting.bonded) * Site.bond_coats.count,
        source="faces times coats",
    )
    protect = line(
        "Old walk to protect", "each", when(total(OldWalk.meets) > 0, ONE_EACH, 0), source="once, beside any old walk"
    )
    placing = line(
        "Hours of those who place",
        "h",
        when(Order.bags > 0, 0, Pour.hours * Crew.placing.count),
        source="time to place times the placing crew",
    )
    mix_time = line(
        "Time to mix bags", "h", when(Order.bags > 0, Pour.hours, 0), source="elapsed, where bags are taken"
    )
    mixing = line(
        "Hours of those who mix", "h", mix_time * Bags.people.count, source="time to mix times the people who mix"
    )
    finishing = line(
        "Hours of those who finish",
        "h",
        area / FinishWindow.pace / ONE_PERSON,
        source="area over the finishing pace, which says too whether it is done before the concrete is hard",
    )
    tooled = line(
        "Joints to tool",
        "ft",
        when(Site.joint_method.is_("tooled"), total(Matched.length), 0),
        source="all joints, where they are tooled",
    )
    sealed = line("Slab to seal, all coats", "ft2", area * Site.sealer_coats.count, source="area times coats")
    once = line("Once a job", "each", ONE_EACH, source="clean-up")
    unknown = line("Allowed for the unknown", "h", Removal.unforeseen, source="as typed")
