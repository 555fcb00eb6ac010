"""The Proposal, for the client: scope of work, exclusions, price and payment schedule.

It shows no cost, hour, overhead, margin or rate.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Company, Job, Wording
from calc.trade.inputs.money import Change
from calc.trade.inputs.papers import PaperFacts
from calc.trade.inputs.pour import Mixture
from calc.trade.inputs.work import OnSite
from calc.trade.levels import AREA, CHANGE, DRAW
from calc.trade.money.price import BidPrice, ChangeAmount, Invoice, PaymentSchedule
from calc.trade.papers.area_text import AreaWord
from calc.trade.papers.pour_text import PourWord
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
        Fact(OldFooting.plan, "Old footings passed over"),
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
