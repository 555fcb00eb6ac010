"""The Proposal, for the client: scope of work, exclusions, price and payment schedule.

It shows no cost, hour, overhead, margin or rate.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.piles import Pile
from calc.trade.inputs.job import Company, Job, Wording
from calc.trade.inputs.money import Change
from calc.trade.inputs.papers import PaperFacts
from calc.trade.inputs.pour import Mixture
from calc.trade.inputs.work import OnSite
from calc.trade.levels import AREA, CHANGE, DRAW
from calc.trade.money.price import BidPrice, ChangeAmount, Invoice, PaymentSchedule
from calc.trade.papers.area_text import AreaText
from calc.trade.papers.letterhead import CLIENT_AND_SITE
from calc.trade.papers.pour_text import PourText
from calc.trade.papers.proposal_text import ProposalText
from calc.trade.takeoff.geometry import Slab
from calc.trade.takeoff.old_concrete import OldFooting

Column, Fact, Facts, Table = paper.Column, paper.Fact, paper.Facts, paper.Table

PROPOSAL = paper.Paper(
    "Proposal",
    "for the client",
    Facts(
        "",
        Fact(Company.name, "From", prominent=True),
        Fact(Company.address, "Address"),
        *CLIENT_AND_SITE,
        Fact(Company.phone, "Phone"),
        Fact(Company.license, "License"),
        Fact(Job.bid_date, "Date"),
        Fact(PaperFacts.revision, otherwise=paper.DASH, if_any=True),
        abreast=True,
    ),
    Table(
        "Scope of work",
        AREA,
        Column("ft2", Slab.net_area),
        Column("Thick", AreaText.thickness),
        Column("Base", AreaText.base),
        Column("Dig", AreaText.dig),
        Column("Shape, dowels, joints", AreaText.description, wide=True),
        sums=True,
    ),
    Facts(
        "Included, and not included",
        Fact(PourText.shutoff, "Water shutoff"),
        Fact(PourText.fiber, "Fiber", if_any=True),
        Fact(AreaText.old_slab, "Old slab removed", if_any=True),
        Fact(PourText.plants, "Plants removed", if_any=True),
        Fact(PaperFacts.exclusions, "Not included", if_any=True),
        Fact(Mixture.strength, "Strength"),
        Fact(OnSite.days_closed, "Days closed"),
        Fact(Pile.tons, "Hauled away", if_any=True),
        Fact(OldFooting.plan_area, "Old footings", if_any=True),
        Fact(ProposalText.permit, "Permit"),
        abreast=True,
    ),
    Facts("Price and payment schedule", Fact(BidPrice.price, "Total price", prominent=True)),
    Table(
        "",
        DRAW,
        Column("Amount", PaymentSchedule.amount, wide=True),
        head="When",
        sums=True,
        used=PaymentSchedule.amount,
    ),
    Table(
        "Change orders",
        CHANGE,
        Column("Amount", ChangeAmount.amount),
        Column("Date", Change.day),
        Column("Signed", Change.signed),
        Column("Change", Change.what, wide=True),
        called="CO-",
        head="Change order",
    ),
    Facts(
        "",
        Fact(Invoice.changes, "Signed change orders"),
        Fact(Invoice.billed, "New price"),
        only_with=CHANGE,
        abreast=True,
    ),
    paper.CompanyText("Terms", Wording.words),
    paper.SignatureLines("Signed", "For the client", "For the contractor"),
    columns=paper.Columns.WORDS,
    status_beside=BidPrice.price,
)
