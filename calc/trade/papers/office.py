"""The papers that go out: who reads each, and what stands on it.

The Proposal shows no cost, hour, overhead, margin or rate; the papers for the site and the plant show no price. A
number stands here only by the line that computes it.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.choice import Choice
from calc.trade.hauling.loads import Hauled, HaulVehicle
from calc.trade.inputs.job import Company, Job, Wording
from calc.trade.inputs.money import Change
from calc.trade.inputs.papers import PaperFacts
from calc.trade.inputs.pour import Mixture
from calc.trade.inputs.work import OnSite
from calc.trade.levels import AREA, CHANGE, DRAW, HAULED, TRUCK
from calc.trade.materials.fiber import FiberDose, FiberTotal, TruckFiber
from calc.trade.money.price import BidPrice, ChangeAmount, Invoice, PaymentSchedule
from calc.trade.ordering.order import Balance, Order, TruckLoad
from calc.trade.ordering.pour import Pour, TruckTime
from calc.trade.papers.area_text import AreaWord
from calc.trade.papers.pour_text import COMES_AT, Arrival, HaulWord, MixWord, PourWord
from calc.trade.papers.site import JOB_COST, LOAD_LIST, POUR_DAY
from calc.trade.takeoff.geometry import Slab
from calc.trade.takeoff.old_concrete import OldFooting

Column, Fact, Facts, Table = paper.Column, paper.Fact, paper.Facts, paper.Table

PROPOSAL = paper.Paper(
    "Proposal",
    "for the client",
    Facts(
        "",
        Fact(Company.name, "From", loud=True),
        Fact(Company.address, "Address"),
        Fact(Company.phone, "Phone"),
        Fact(Company.licence, "Licence"),
    ),
    Facts(
        "For",
        Fact(Job.client),
        Fact(Job.address, "Where the work is"),
        Fact(Job.bid_date, "Date"),
        Fact(PaperFacts.revision, otherwise=paper.DASH),
    ),
    Table(
        "What is built",
        AREA,
        Column("Slab, ft2", Slab.net_area),
        Column("Thick", AreaWord.thickness),
        Column("Rock base", AreaWord.base),
        Column("Dug", AreaWord.dig),
        Column("Shape, dowels, joints", AreaWord.described, wide=True),
        sums=True,
    ),
    Facts(
        "With it",
        Fact(Mixture.strength, "Strength of the mix"),
        Fact(PourWord.fiber, "Fiber"),
        Fact(AreaWord.old_slab, "Old slab taken out"),
        Fact(OldFooting.plan_area, "Old footings passed over"),
        Fact(PourWord.plants, "Plants taken out"),
        Fact(PourWord.water, "Water"),
        Fact(OnSite.closed, "Days closed to walking"),
        Fact(PaperFacts.exclusions, "Not in this price", otherwise=paper.DASH),
    ),
    Facts("Price", Fact(BidPrice.price, "Price of all of it", loud=True)),
    Table("How it falls due", DRAW, Column("Amount", PaymentSchedule.amount), head="When", sums=True),
    Table(
        "Changes",
        CHANGE,
        Column("Amount", ChangeAmount.amount),
        Column("Agreed", Change.day),
        Column("Signed", Change.signed),
        Column("What is changed", Change.what, wide=True),
        called="CO-",
        head="Change order",
    ),
    Facts(
        "", Fact(Invoice.changes, "Changes signed so far"), Fact(Invoice.billed, "Price with them"), only_with=CHANGE
    ),
    paper.CompanyText("Terms", Wording.words),
    paper.SignatureLines("Signed", "For the client", "For the contractor"),
    describes=True,
    stands=BidPrice.price,
)

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
        Fact(Pour.method, "Placed by"),
    ),
    Table(
        "Trucks",
        TRUCK,
        Column("Yards", TruckLoad.yards),
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
        Fact(Balance.last_load, "On the last truck, as ordered"),
        Fact(PourWord.gap, "Between trucks"),
    ),
    Facts("To write down", Fact(None, "Taken by"), Fact(None, "Ticket number"), Fact(None, "Date and time")),
)

DUMP_PLAN = paper.Paper(
    "Dump plan",
    "for the driver",
    Facts(
        "Job",
        Fact(Job.address, "From"),
        Fact(PaperFacts.contact),
        Fact(Choice.vehicle_name, "Vehicle"),
        Fact(HaulVehicle.payload, "Most on it"),
        Fact(Choice.plan_name, "Plan"),
    ),
    Table(
        "In this order, from the top",
        HAULED,
        Column("Loads", Hauled.loads),
        Column("Fill line", HaulWord.fill),
        Column("Tons, all loads", Hauled.tons),
        Column("Gate fee expected", Hauled.dump_fee),
        Column("Opens", HaulWord.opens),
        Column("Closes", HaulWord.closes),
        Column("First leaves", HaulWord.leaves),
        Column("Last is there", HaulWord.there),
        head="Pile",
        sums=True,
    ),
    Facts(
        "Where each goes, and what must stay out of it",
        *(
            fact
            for place, word in enumerate(HAULED.axis.words)
            for fact in (
                Fact(HaulWord.goes, f"{word.capitalize()} goes to", row=place),
                Fact(HaulWord.spoils, "Keep out of it", row=place),
            )
        ),
    ),
    Table(
        "Written down at the gate",
        HAULED,
        Column("Tons weighed"),
        Column("Fee paid"),
        Column("Loads"),
        Column("Tickets"),
        head="Pile",
    ),
    paper.Sentences(
        "Rules",
        "Never above the fill line: there the payload of the vehicle is reached. Wet soil is heavier: go by the scale.",
        "One shovel of turf in clean soil makes the whole load a mixed one. Cover the load.",
    ),
)

PAPERS = (PROPOSAL, PLANT_ORDER, LOAD_LIST, DUMP_PLAN, POUR_DAY, JOB_COST)
"""Every paper, in the order in which they stand in a workbook."""
