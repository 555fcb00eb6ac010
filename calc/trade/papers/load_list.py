"""The Load list, for whoever loads the truck: a box to check behind each item. It shows no price."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Job
from calc.trade.inputs.papers import PaperFacts
from calc.trade.inputs.work import OnSite
from calc.trade.levels import BOARD, TOOL
from calc.trade.materials.base_rock import BaseNeeds
from calc.trade.materials.fiber import FiberTotal
from calc.trade.materials.liquids import BONDING_PACKS, CURING_PACKS, SEALER_PACKS
from calc.trade.ordering.order import Order
from calc.trade.papers.pour_text import BoardWord, PourWord
from calc.trade.takeoff.dowels import CuttingList, DowelNeeds
from calc.trade.takeoff.forms import FormNeeds, Stakes
from calc.trade.takeoff.joints import JointNeeds
from calc.trade.work.equipment import Tool
from calc.trade.work.labor import Labor
from calc.trade.work.protection import Protection

Column, Fact, Facts, Table = paper.Column, paper.Fact, paper.Facts, paper.Table

LOAD_LIST = paper.Paper(
    "Load list",
    "for whoever loads the truck",
    Facts("Job", Fact(Job.client), Fact(Job.address), Fact(PaperFacts.contact), Fact(Job.pour_date)),
    Facts(
        "Forms and dowels",
        *(Fact(BoardWord.feet, f"Board {word}", row=place, like="each") for place, word in enumerate(BOARD.axis.words)),
        Fact(Stakes.curved, "Hardboard for curves"),
        Fact(FormNeeds.stakes, "Stakes"),
        Fact(FormNeeds.oil, "Form oil"),
        Fact(CuttingList.bars, "Dowel bars, full length"),
        Fact(CuttingList.pieces, "Dowels to cut from them"),
        Fact(DowelNeeds.bits, "Drill bits"),
        Fact(DowelNeeds.tubes, "Tubes of epoxy"),
        Fact(JointNeeds.strips, "Isolation strips"),
        Fact(Protection.sheeted, "Slip sheet"),
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
        Fact(Protection.washed, "Wash-out box"),
        Fact(Protection.closed, "Barricades, days"),
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
