"""The Plant order, for the ready-mix dispatcher: quantity, mix, trucks and times. It shows no price."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Company, Job
from calc.trade.inputs.papers import PaperFacts
from calc.trade.inputs.pour import Mixture
from calc.trade.levels import TRUCK
from calc.trade.materials.fiber import FiberDose, FiberTotal, TruckFiber
from calc.trade.ordering.order import Balance, Load, Order
from calc.trade.ordering.pour import Pour, TruckTime
from calc.trade.papers.pour_text import COMES_AT, Arrival, MixWord, PourWord

Column, Fact, Facts, Table = paper.Column, paper.Fact, paper.Facts, paper.Table

PLANT_ORDER = paper.Paper(
    "Plant order",
    "for the dispatcher",
    Facts(
        "Who and where",
        Fact(Company.name, "Ordered by"),
        Fact(Company.phone),
        Fact(Job.address, "Deliver to"),
        Fact(PaperFacts.contact),
        Fact(Job.pour_date),
        Fact(COMES_AT, "First truck on site at"),
    ),
    Facts(
        "What",
        Fact(Order.quantity, "Concrete", loud=True),
        Fact(Order.trucks, "Trucks"),
        Fact(Mixture.strength, "Strength"),
        Fact(MixWord.slump, "Slump"),
        Fact(MixWord.stone, "Largest stone"),
        Fact(PourWord.air, "Entrained air"),
        Fact(PourWord.fiber, "Fiber"),
        Fact(FiberDose.per_yard, "Fiber in a yard"),
        Fact(FiberTotal.bags, "Fiber bags"),
        Fact(Mixture.accelerator),
        Fact(Mixture.retarder),
        Fact(Mixture.hot_water),
        Fact(Pour.way, "Placed by"),
    ),
    Table(
        "Trucks",
        TRUCK,
        Column("Yards", Load.yards),
        Column("On site at", COMES_AT),
        Column("After, min", Arrival.after),
        Column("Unload, min", TruckTime.unloading),
        Column("Fiber bags", TruckFiber.bags),
        Column("Hold", Arrival.held),
        called="Truck ",
        head="Truck",
        sums=True,
    ),
    Facts(
        "Balance call",
        Fact(PourWord.hold, "Balance"),
        Fact(Balance.last, "On the last truck, as ordered"),
        Fact(PourWord.gap, "Between trucks"),
    ),
    Facts("To write down", Fact(None, "Taken by"), Fact(None, "Ticket number"), Fact(None, "Date and time")),
)
