"""The Pour day, for the foreman: depths, trucks, joints, finishing and curing. It shows no price."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Job
from calc.trade.inputs.papers import PaperFacts
from calc.trade.inputs.pour import Crew, Mixture
from calc.trade.levels import AREA, TRUCK
from calc.trade.materials.fiber import TruckFiber
from calc.trade.materials.liquids import CURING_PACKS, Bonding, Curing
from calc.trade.ordering.finish_window import FinishWindow
from calc.trade.ordering.order import Balance, Load, Order
from calc.trade.ordering.pour import Pour, TruckTime
from calc.trade.papers.area_text import AreaWord
from calc.trade.papers.pour_text import COMES_AT, Arrival, PourWord
from calc.trade.takeoff.geometry import MeanThickness, Slab
from calc.trade.takeoff.joint_list import JointPlace
from calc.trade.takeoff.joints import Matched
from calc.trade.work.protection import Protection

Column, Fact, Facts, Table = paper.Column, paper.Fact, paper.Facts, paper.Table

POUR_DAY = paper.Paper(
    "Pour day",
    "for the foreman",
    Facts(
        "Job",
        Fact(Job.address, "Where"),
        Fact(PaperFacts.contact),
        Fact(Job.pour_date),
        Fact(Pour.way, "Placed by"),
    ),
    Facts(
        "Order",
        Fact(Order.quantity, "Concrete ordered", loud=True),
        Fact(Mixture.strength, "Strength of the mix"),
        Fact(Crew.placing, "People who place"),
        Fact(Crew.finishing, "People who finish"),
        abreast=True,
    ),
    Table(
        "Depths",
        AREA,
        Column("Slab, ft2", Slab.net_area),
        Column("Wanted", AreaWord.thickness),
        Column("Mean depth", AreaWord.mean),
        Column("Points", MeanThickness.points),
        Column("Again"),
        Column("Joint depth", AreaWord.joint_depth),
        Column("Joints", Matched.joints),
    ),
    Table(
        "Trucks",
        TRUCK,
        Column("Yards", Load.yards),
        Column("On site at", COMES_AT),
        Column("Unload, min", TruckTime.unloading),
        Column("Free, min", TruckTime.free),
        Column("Fiber bags", TruckFiber.bags),
        Column("Batched at"),
        Column("Water added"),
        Column("Hold", Arrival.held),
        called="Truck ",
        head="Truck",
        sums=True,
    ),
    Facts(
        "Balance, finish and cure",
        Fact(Balance.last, "On the last truck, as ordered"),
        Fact(FinishWindow.by_mix, "Time to finish, from batching"),
        Fact(FinishWindow.needed, "Time that the largest truck takes"),
        Fact(FinishWindow.lacking, "Time to finish lacks"),
        Fact(Curing.need, "Curing compound"),
        Fact(CURING_PACKS.small, "Of it in small packs"),
        Fact(CURING_PACKS.large, "Of it in large packs"),
        Fact(Bonding.need, "Bonding agent"),
        Fact(Protection.water, "Wash water to hold"),
        abreast=True,
    ),
    Facts("", Fact(PourWord.hold, "Balance call")),
    paper.RunningList(
        "Joints: on the tape from one end of each area, never gap by gap", AREA, JointPlace.shown, "joints"
    ),
    paper.CautionList("What to watch"),
)
