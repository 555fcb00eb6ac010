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
from calc.trade.papers.pour_text import BoardText, PourText
from calc.trade.takeoff.dowels import CuttingList, DowelNeeds
from calc.trade.takeoff.forms import FormNeeds, Stakes
from calc.trade.takeoff.joints import JointNeeds
from calc.trade.work.equipment import Tool
from calc.trade.work.paid_time import PaidTime
from calc.trade.work.protection import Protection

Column, Fact, Facts, Table = paper.Column, paper.Fact, paper.Facts, paper.Table

LOAD_LIST = paper.Paper(
    "Load list",
    "for whoever loads the truck",
    Facts("Job", Fact(Job.client), Fact(Job.address), Fact(PaperFacts.contact), Fact(Job.pour_date)),
    Facts(
        "Forms and dowels",
        *(
            Fact(BoardText.feet, f"Form lumber {word}", row=place, like="each")
            for place, word in enumerate(BOARD.axis.words)
        ),
        Fact(Stakes.curved, "Bender board"),
        Fact(FormNeeds.stakes, "Form stakes"),
        Fact(FormNeeds.release_agent, "Form release agent"),
        Fact(CuttingList.bars, "Dowel stock, full length"),
        Fact(CuttingList.dowels_to_cut, "Dowels to cut"),
        Fact(DowelNeeds.bits, "Drill bits"),
        Fact(DowelNeeds.cartridges, "Epoxy tubes"),
        Fact(JointNeeds.filler_strips, "Isolation-joint filler"),
        Fact(Protection.sheet_area, "Bond breaker"),
        ticked=True,
    ),
    Facts(
        "Concrete",
        Fact(PourText.wheelbarrows, "Wheelbarrows"),
        Fact(FiberTotal.bags, "Fiber bags"),
        Fact(Order.bags, "Bagged concrete"),
        *(
            Fact(count, f"{liquid}, {size} containers")
            for liquid, packs in (
                ("Bonding agent", BONDING_PACKS),
                ("Curing compound", CURING_PACKS),
                ("Sealer", SEALER_PACKS),
            )
            for size, count in (("small", packs.small), ("large", packs.large))
        ),
        Fact(BaseNeeds.buy, "Base rock"),
        Fact(Protection.washouts, "Concrete washout"),
        Fact(Protection.closed_days, "Barricades (days)"),
        ticked=True,
    ),
    Table(
        "Equipment",
        TOOL,
        Column("Hours planned", Tool.hours),
        Column("Rental days", Tool.days),
        Column("Loaded"),
        Column("Returned"),
        head="Item",
    ),
    Facts(
        "Crew",
        Fact(OnSite.crew, "Crew size"),
        Fact(PaidTime.crew_visits, "Crew visits"),
        Fact(PaidTime.clock_hours, "Paid hours"),
    ),
)
