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
from calc.trade.papers.area_text import AreaText
from calc.trade.papers.letterhead import CLIENT_AND_SITE, FIRM_CONTACT
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
        *FIRM_CONTACT,
    ),
    Facts(
        "For",
        *CLIENT_AND_SITE,
        Fact(Job.bid_date, "Date"),
        Fact(PaperFacts.revision, otherwise=paper.DASH),
    ),
    Table(
        "Scope of work",
        AREA,
        Column("Slab, ft2", Slab.net_area),
        Column("Thickness", AreaText.thickness),
        Column("Rock base", AreaText.base),
        Column("Excavation", AreaText.dig),
        Column("Shape, dowels, joints", AreaText.description, wide=True),
        sums=True,
    ),
    Facts(
        "Included",
        Fact(Mixture.strength, "Concrete strength"),
        Fact(PourText.fiber, "Fiber"),
        Fact(AreaText.old_slab, "Old slab removed"),
        Fact(OldFooting.plan_area, "Old footings under the slab"),
        Fact(PourText.plants, "Plants removed"),
        Fact(PourText.shutoff, "Water shutoff"),
        Fact(OnSite.days_closed, "Days closed to traffic"),
    ),
    Facts(
        "Exclusions",
        Fact(ProposalText.permit, "Permit"),
        Fact(PaperFacts.exclusions, "Not included", otherwise=paper.DASH),
    ),
    Facts("Price", Fact(BidPrice.price, "Total price", prominent=True)),
    Table("Payment schedule", DRAW, Column("Amount", PaymentSchedule.amount), head="When", sums=True),
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
        Fact(Invoice.billed, "Price with signed change orders"),
        only_with=CHANGE,
    ),
    paper.CompanyText("Terms", Wording.words),
    paper.SignatureLines("Signed", "For the client", "For the contractor"),
    describes=True,
    status_beside=BidPrice.price,
)
