"""The Plant order, for the ready-mix dispatcher: quantity, mix, trucks and times. It shows no price."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Company, Job
from calc.trade.inputs.papers import PaperFacts
from calc.trade.levels import TRUCK
from calc.trade.materials.fiber import TruckFiber
from calc.trade.ordering.order import Balance, Order, TruckLoad
from calc.trade.ordering.pour import Pour, TruckTime
from calc.trade.papers.mix import MIX
from calc.trade.papers.pour_text import ARRIVES_AT, Arrival, PourText

Column, Fact, Facts, Table = paper.Column, paper.Fact, paper.Facts, paper.Table

PLANT_ORDER = paper.Paper(
    "Plant order",
    "for the dispatcher",
    Facts(
        "Order",
        Fact(Company.name, "Ordered by"),
        Fact(Company.phone),
        Fact(Job.address, "Deliver to"),
        Fact(PaperFacts.contact),
        Fact(Job.pour_date),
        Fact(ARRIVES_AT, "First truck on site at"),
    ),
    Facts(
        "Mix",
        Fact(Order.quantity, "Concrete", prominent=True),
        Fact(Order.trucks, "Trucks"),
        *(fact for each in MIX for fact in each.facts),
        Fact(Pour.method, "Placing method"),
    ),
    Table(
        "Trucks",
        TRUCK,
        Column("Yards", TruckLoad.yards),
        Column("On site at", ARRIVES_AT),
        Column("After first, min", Arrival.after_first),
        Column("Unload, min", TruckTime.unloading),
        Column("Fiber bags", TruckFiber.bags),
        Column("Hold", Arrival.hold),
        called="Truck ",
        head="Truck",
        sums=True,
        used=TruckLoad.yards,
        note="empty rows are for trucks added on the phone",
    ),
    Facts(
        "Balance (clean-up) load",
        Fact(PourText.balance, "Instruction"),
        Fact(Balance.last_load, "Last truck, as ordered", if_any=True),
        Fact(PourText.truck_spacing, "Time between trucks", if_any=True),
    ),
    Facts("Confirmation", Fact(None, "Taken by"), Fact(None, "Confirmation number"), Fact(None, "Date and time")),
    paper.BlankLines("Changes on the phone", 3),
)
