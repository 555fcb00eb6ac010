"""The Pour day, for the foreman: depths, trucks, joints, finishing and curing. It shows no price."""

from __future__ import annotations

from calc.declare import *
from calc.trade.cautions.crew import CrewCautions
from calc.trade.cautions.hauling import HaulCautions
from calc.trade.cautions.order import OrderCautions
from calc.trade.cautions.pour_day import PourCautions
from calc.trade.cautions.price import PriceCautions
from calc.trade.cautions.site import SiteCautions
from calc.trade.cautions.slab import SlabCautions
from calc.trade.inputs.job import Job
from calc.trade.inputs.papers import PaperFacts
from calc.trade.inputs.pour import Crew, Mixture
from calc.trade.levels import AREA, TRUCK
from calc.trade.materials.fiber import TruckFiber
from calc.trade.materials.liquids import CURING_PACKS, Bonding, Curing
from calc.trade.ordering.order import Balance, Order, TruckLoad
from calc.trade.ordering.pour import Pour, TruckTime
from calc.trade.papers.area_text import AreaText
from calc.trade.papers.pour_text import ARRIVES_AT, Arrival, PourText
from calc.trade.takeoff.geometry import MeanThickness, Slab
from calc.trade.takeoff.joint_list import JointPlace
from calc.trade.takeoff.joints import MatchedJoints
from calc.trade.work.pour_visit import FinishersNeeded
from calc.trade.work.protection import Protection

Column, Fact, Facts, Table = paper.Column, paper.Fact, paper.Facts, paper.Table

_MOST_CAUTIONS = 8
"""So that a job of six areas stays on one page."""

POUR_DAY = paper.Paper(
    "Pour day",
    "for the foreman",
    Facts(
        "Job and order",
        Fact(Order.quantity, "Concrete ordered", prominent=True),
        Fact(Job.address, "Job address"),
        Fact(PaperFacts.contact),
        Fact(Job.pour_date),
        Fact(Mixture.strength, "Concrete strength"),
        Fact(Pour.method, "Placing method"),
        Fact(Crew.placing, "Placing crew"),
        Fact(Crew.finishing, "Finishers"),
        abreast=True,
    ),
    Table(
        "Depths",
        AREA,
        Column("Slab, ft2", Slab.net_area),
        Column("Specified", AreaText.thickness),
        Column("Mean depth", AreaText.mean_thickness),
        Column("Depth points", MeanThickness.depth_count),
        Column("Rechecked"),
        Column("Joint depth", AreaText.joint_depth),
        Column("Joints across", MatchedJoints.joints),
        Column("Joints along", AreaText.joints_along),
        note="measure again before the truck comes; write on the line",
    ),
    Table(
        "Trucks",
        TRUCK,
        Column("Yards", TruckLoad.yards),
        Column("On site at", ARRIVES_AT),
        Column("Unload, min", TruckTime.unloading),
        Column("Allowed, min", TruckTime.allowance),
        Column("Fiber bags", TruckFiber.bags),
        Column("Batched at"),
        Column("Water added"),
        Column("Hold", Arrival.hold),
        called="Truck ",
        head="Truck",
        sums=True,
        used=TruckLoad.yards,
        note="batched at and water added are written at the chute",
    ),
    Facts(
        "Balance load, finishing and curing",
        Fact(Balance.last_load, "Last truck, as ordered"),
        Fact(PourText.finish_window, "Finishing window"),
        Fact(FinishersNeeded.last_load_time, "Last load: place, finish"),
        Fact(Curing.need, "Curing compound"),
        Fact(CURING_PACKS.small, "In small containers"),
        Fact(CURING_PACKS.large, "In large containers"),
        Fact(Bonding.need, "Bonding agent"),
        Fact(Protection.water, "Washout water to contain"),
        abreast=True,
    ),
    Facts("", Fact(PourText.balance, "Balance load")),
    paper.RunningList(
        "Control joints across: running measurements from where each slab begins", AREA, JointPlace.shown
    ),
    paper.CautionList(
        f"Cautions, the {_MOST_CAUTIONS} most severe; all are on Checks",
        without=(
            PriceCautions,
            SiteCautions.permits,
            SiteCautions.licensed_trade,
            SiteCautions.shutoffs,
            SlabCautions.without_joints,
            SlabCautions.driven_unreinforced,
            PourCautions.weather_unknown,
            CrewCautions,
            OrderCautions.bags_considered,
            OrderCautions.below_requirement,
            HaulCautions,
        ),
        one_line=True,
        most=_MOST_CAUTIONS,
    ),
    paper.BlankLines("Notes", 2),
)
