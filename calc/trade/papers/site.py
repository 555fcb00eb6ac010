"""The papers of the crew and of the office: what is loaded, what the day of the pour needs, what it all costs.

The first two show no price. The last is never given out.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Company, Job
from calc.trade.inputs.papers import PaperFacts
from calc.trade.inputs.pour import Crew, Mixture
from calc.trade.inputs.work import OnSite
from calc.trade.levels import AREA, BOARD, GROUP, TOOL, TRUCK
from calc.trade.materials.base_rock import BaseNeeds
from calc.trade.materials.fiber import FiberTotal, TruckFiber
from calc.trade.materials.liquids import BONDING_PACKS, CURING_PACKS, SEALER_PACKS, Bonding, Curing
from calc.trade.money.cost_rows import ROWS
from calc.trade.money.costs import COST, CostTable
from calc.trade.money.price import BidPrice, Invoice, Subtotal
from calc.trade.ordering.finish_window import FinishWindow
from calc.trade.ordering.order import Balance, Order, TruckLoad
from calc.trade.ordering.pour import Pour, TruckTime
from calc.trade.papers.area_text import AreaWord
from calc.trade.papers.pour_text import COMES_AT, Arrival, BoardWord, PourWord
from calc.trade.takeoff.dowels import CuttingList, DowelNeeds
from calc.trade.takeoff.forms import FormNeeds, Stakes
from calc.trade.takeoff.geometry import MeanThickness, Slab
from calc.trade.takeoff.joint_list import JointPlace
from calc.trade.takeoff.joints import JointNeeds, MatchedJoints
from calc.trade.work.equipment import Tool
from calc.trade.work.labor import Labor
from calc.trade.work.protection import Protection

Column, Fact, Facts, Table = paper.Column, paper.Fact, paper.Facts, paper.Table

_JOB = (Fact(Job.client), Fact(Job.address), Fact(PaperFacts.contact), Fact(Job.pour_date))

LOAD_LIST = paper.Paper(
    "Load list",
    "for whoever loads the truck",
    Facts("Job", *_JOB),
    Facts(
        "Forms and dowels",
        *(Fact(BoardWord.feet, f"Board {word}", row=place, like="each") for place, word in enumerate(BOARD.axis.words)),
        Fact(Stakes.curved, "Hardboard for curves"),
        Fact(FormNeeds.stakes, "Stakes"),
        Fact(FormNeeds.release_agent, "Form oil"),
        Fact(CuttingList.bars, "Dowel bars, full length"),
        Fact(CuttingList.dowels_to_cut, "Dowels to cut from them"),
        Fact(DowelNeeds.bits, "Drill bits"),
        Fact(DowelNeeds.cartridges, "Tubes of epoxy"),
        Fact(JointNeeds.filler_strips, "Isolation strips"),
        Fact(Protection.sheet_area, "Slip sheet"),
        ticked=True,
    ),
    Facts(
        "For the concrete",
        Fact(PourWord.barrows, "Barrows"),
        Fact(FiberTotal.bags, "Fiber, in bags"),
        Fact(Order.bags, "Concrete, in bags"),
        *(
            Fact(count, f"{liquid}, {size} packs")
            for liquid, packs in (
                ("Bonding agent", BONDING_PACKS),
                ("Curing compound", CURING_PACKS),
                ("Sealer", SEALER_PACKS),
            )
            for size, count in (("small", packs.small), ("large", packs.large))
        ),
        Fact(BaseNeeds.buy, "Base rock"),
        Fact(Protection.washouts, "Wash-out box"),
        Fact(Protection.closed_days, "Barricades, days"),
        ticked=True,
    ),
    Table(
        "Machines",
        TOOL,
        Column("Hours booked", Tool.hours),
        Column("Rental days", Tool.days),
        Column("On the truck"),
        Column("Back"),
        head="Machine",
    ),
    Facts("Crew", Fact(OnSite.crew, "People"), Fact(Labor.days, "Days"), Fact(Labor.hours, "Hours of work, in all")),
)

POUR_DAY = paper.Paper(
    "Pour day",
    "for the foreman",
    Facts(
        "Job",
        Fact(Job.address, "Where"),
        Fact(PaperFacts.contact),
        Fact(Job.pour_date),
        Fact(Pour.method, "Placed by"),
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
        Column("Points", MeanThickness.depth_count),
        Column("Again"),
        Column("Joint depth", AreaWord.joint_depth),
        Column("Joints", MatchedJoints.joints),
    ),
    Table(
        "Trucks",
        TRUCK,
        Column("Yards", TruckLoad.yards),
        Column("On site at", COMES_AT),
        Column("Unload, min", TruckTime.unloading),
        Column("Free, min", TruckTime.allowance),
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
        Fact(Balance.last_load, "On the last truck, as ordered"),
        Fact(FinishWindow.with_admixtures, "Time to finish, from batching"),
        Fact(FinishWindow.required, "Time that the largest truck takes"),
        Fact(FinishWindow.short_by, "Time to finish lacks"),
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

JOB_COST = paper.Paper(
    "Job cost",
    "for the office; not given out",
    Table(
        "",
        COST,
        Column("Quantity", CostTable.quantity, like="ft"),
        Column("Unit", words=tuple(row.unit_text or "-" for row in ROWS)),
        Column("Rate", CostTable.rate, like="$"),
        Column("Amount", CostTable.amount),
        Column("Actual"),
        Column("Difference"),
        Column("Receipt"),
        Column("From cell", points_to=CostTable.amount),
        head="Cost",
        sums=True,
    ),
    Table("Subtotals", GROUP, Column("Amount", Subtotal.amount), Column("Actual"), head="Group", sums=True),
    Facts(
        "From cost to price",
        Fact(BidPrice.taxed),
        Fact(BidPrice.tax),
        Fact(BidPrice.direct),
        Fact(BidPrice.contingency),
        Fact(BidPrice.overhead),
        Fact(BidPrice.break_even),
        Fact(BidPrice.margin),
        Fact(BidPrice.unrounded),
        Fact(BidPrice.price, loud=True),
        Fact(BidPrice.per_ft2),
        Fact(BidPrice.actual_margin),
        Fact(BidPrice.markup),
        Fact(Invoice.changes),
        Fact(Invoice.billed),
        Fact(Invoice.unsigned),
        Fact(BidPrice.unpriced),
    ),
    Facts("Job", Fact(Company.name, "Firm"), *_JOB),
)
