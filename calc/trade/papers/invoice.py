"""The Invoice, for the client: the contract to date, what is due now, and what was billed and is to come.

Each of the three adds up, and the last comes to the first. It shows no cost, hour, overhead, margin or rate.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Company
from calc.trade.inputs.money import Billing, Change
from calc.trade.levels import CHANGE, CONTRACT_PART, DRAW, INVOICE_PART
from calc.trade.money.invoice import Billed, ContractSum, InvoiceDue, InvoicePart
from calc.trade.money.price import ChangeAmount
from calc.trade.papers.letterhead import CLIENT_AND_SITE, FIRM_CONTACT

Column, Fact, Facts, Table = paper.Column, paper.Fact, paper.Facts, paper.Table

INVOICE = paper.Paper(
    "Invoice",
    "for the client",
    Facts(
        "From",
        Fact(Company.name, "Company", prominent=True),
        *FIRM_CONTACT,
        abreast=True,
    ),
    Facts(
        "To",
        *CLIENT_AND_SITE,
        Fact(Billing.contract_day, "Contract signed on"),
        Fact(None, "Invoice number"),
        Fact(Billing.day, "Invoice date"),
        abreast=True,
    ),
    Table(
        "Contract to date",
        CONTRACT_PART,
        Column("Amount", ContractSum.amount),
        Column("", ContractSum.note, wide=True),
        head="What",
        total="Contract to date",
    ),
    Table(
        "Change orders in it, once signed",
        CHANGE,
        Column("Amount", ChangeAmount.signed_amount),
        Column("Signed", Change.signed),
        Column("Change", Change.what, wide=True),
        called="CO-",
        head="Change order",
        total="Signed change orders",
    ),
    Table(
        "This invoice",
        INVOICE_PART,
        Column("Amount", InvoicePart.amount),
        Column("", InvoicePart.note, wide=True),
        head="What",
        total="Due on this invoice",
    ),
    Table(
        "Billed and to come, with change orders",
        DRAW,
        Column("Amount", Billed.amount),
        Column("Before", Billed.earlier),
        Column("Now", Billed.now),
        Column("To come", Billed.later),
        Column("", Billed.state, wide=True),
        head="Payment",
        total="Contract to date",
    ),
    Facts(
        "Payment",
        Fact(InvoiceDue.due, "Due", prominent=True),
        Fact(Billing.due, "Due on"),
        Fact(Company.name, "Pay to"),
    ),
    Facts("Received", Fact(None, "Date and amount"), Fact(None, "Check or transfer number")),
    columns=paper.Columns.SUMS,
    status_beside=InvoiceDue.due,
    ready="for the work above",
)
