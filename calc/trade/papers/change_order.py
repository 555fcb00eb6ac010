"""The Change order, for the client: what changes and why, its price, the contract from now on, days, signatures.

Every change order of the job is on it, each with the contract sum that it leads to. It shows no cost, hour,
overhead, margin or rate.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Company, Job
from calc.trade.inputs.money import Billing, Change
from calc.trade.levels import CHANGE
from calc.trade.money.price import BidPrice, ChangeAmount, Invoice
from calc.trade.papers.letterhead import CLIENT_AND_SITE, FIRM_CONTACT

Column, Fact, Facts, Table = paper.Column, paper.Fact, paper.Facts, paper.Table

CHANGE_ORDER = paper.Paper(
    "Change order",
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
        Fact(Job.pour_date, "Pour date"),
        abreast=True,
    ),
    Facts("Contract", Fact(BidPrice.price, "Price as signed", prominent=True)),
    Table(
        "What changes",
        CHANGE,
        Column("Price", ChangeAmount.amount),
        Column("Contract from now on", ChangeAmount.contract),
        Column("Days added", ChangeAmount.days),
        Column("Signed", Change.signed),
        Column("What and why", ChangeAmount.what_and_why, wide=True),
        called="CO-",
        head="Change order",
        total="All change orders",
    ),
    Facts(
        "What changes",
        Fact(None, "Number"),
        Fact(None, "What is done"),
        Fact(None, "Why"),
        Fact(None, "Price"),
        Fact(None, "Contract from now on"),
        Fact(None, "Working days added"),
        only_without=CHANGE,
    ),
    Facts(
        "Contract from now on",
        Fact(Invoice.changes, "Signed change orders"),
        Fact(Invoice.billed, "Price with signed change orders"),
        Fact(Invoice.unsigned, "Change orders not signed"),
        only_with=CHANGE,
    ),
    paper.Sentences(
        "Terms",
        "All other terms of the proposal stay as signed. Work on a change order begins when both have signed it.",
    ),
    paper.SignatureLines("Signed", "For the client", "For the contractor"),
    columns=paper.Columns.SUMS,
    status_beside=BidPrice.price,
    ready="before change orders",
)
