"""The Job cost, for the office: every cost, the price that follows from them, and room for the actual amounts.

It is not given out.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Company, Job
from calc.trade.inputs.papers import PaperFacts
from calc.trade.levels import GROUP
from calc.trade.money.cost_rows import ROWS
from calc.trade.money.costs import COST, CostTable
from calc.trade.money.price import BidPrice, Invoice

Column, Fact, Facts, Table = paper.Column, paper.Fact, paper.Facts, paper.Table

JOB_COST = paper.Paper(
    "Job cost",
    "for the office only",
    Table(
        "",
        COST,
        Column("Quantity", CostTable.quantity, like="ft"),
        Column("Unit", words=tuple(row.unit_text or "-" for row in ROWS)),
        Column("Rate", CostTable.rate, like="$"),
        Column("Estimate", CostTable.amount),
        Column("Actual", box=True),
        Column("Difference", over=CostTable.amount),
        Column("Account", CostTable.account),
        Column("From cell", points_to=CostTable.amount),
        head="Cost",
    ),
    paper.Actuals(
        "Totals: a blank is not known, and its estimate is kept",
        CostTable.amount,
        CostTable.group,
        GROUP,
        (
            paper.Earned("Price; with signed changes", BidPrice.price, Invoice.billed, 1),
            paper.Earned("Less costs", CostTable.amount, None, -1),
            paper.Earned("Less tax, as estimated", BidPrice.tax, BidPrice.tax, -1),
            paper.Earned("Less overhead, as estimated", BidPrice.overhead, BidPrice.overhead, -1),
        ),
    ),
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
        Fact(BidPrice.price, prominent=True),
        Fact(BidPrice.per_ft2),
        Fact(BidPrice.actual_margin),
        Fact(BidPrice.markup),
        Fact(Invoice.changes),
        Fact(Invoice.billed),
        Fact(Invoice.unsigned),
        Fact(BidPrice.unpriced),
    ),
    Facts(
        "Job",
        Fact(Company.name, "Company"),
        Fact(Job.client),
        Fact(Job.address),
        Fact(PaperFacts.contact),
        Fact(Job.pour_date),
    ),
)
