"""The Job cost, for the office: every cost, the price that follows from them, and room for the actual amounts.

It is not given out.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import GROUP
from calc.trade.money.cost_list import CostRow
from calc.trade.money.cost_rows import LABOR, ROWS
from calc.trade.money.costs import COST, CostTable
from calc.trade.money.price import BidPrice, Invoice, Subtotal

Column, Fact, Facts, Table = paper.Column, paper.Fact, paper.Facts, paper.Table

JOB_COST = paper.Paper(
    "Job cost",
    "for the office only",
    paper.JobCosts(
        "",
        CostRow.row,
        COST.axis.words,
        tuple(row.unit_text or "-" for row in ROWS),
        CostTable.quantity,
        CostTable.rate,
        CostTable.amount,
        CostTable.group,
        CostTable.account,
        LABOR,
        Subtotal.amount,
    ),
    paper.Actuals(
        "Totals: a blank is not known, and its estimate is kept",
        CostTable.amount,
        CostTable.group,
        LABOR,
        GROUP,
        (
            paper.Earned("Price; with signed changes", BidPrice.price, Invoice.billed, 1),
            paper.Earned("Less costs", CostTable.amount, None, -1),
            paper.Earned("Less tax, as estimated", BidPrice.tax, BidPrice.tax, -1),
            paper.Earned("Less overhead, as estimated", BidPrice.overhead, BidPrice.overhead, -1),
        ),
    ),
)
