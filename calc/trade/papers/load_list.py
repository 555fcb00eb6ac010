"""The Load list, for whoever loads the truck: what this job takes, with a box to check. It shows no price."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Job
from calc.trade.inputs.papers import PaperFacts
from calc.trade.inputs.work import OnSite
from calc.trade.papers.load_items import LOAD_ROW, LoadRow
from calc.trade.work.paid_time import PaidTime

Column, Fact, Facts, Table = paper.Column, paper.Fact, paper.Facts, paper.Table

LOAD_LIST = paper.Paper(
    "Load list",
    "for whoever loads the truck",
    Facts(
        "Job and crew",
        Fact(Job.client),
        Fact(Job.address),
        Fact(PaperFacts.contact),
        Fact(Job.pour_date),
        Fact(OnSite.crew, "Crew size"),
        Fact(PaidTime.crew_visits, "Crew visits"),
        Fact(PaidTime.clock_hours, "Paid hours"),
        abreast=True,
    ),
    Table(
        "To load",
        LOAD_ROW,
        Column("Quantity", LoadRow.quantity, like="as it is"),
        Column("Unit", LoadRow.unit_of_measure),
        Column("Loaded"),
        Column("Back"),
        Column("Item", LoadRow.name, wide=True),
        names=LoadRow.use,
        head="For",
        used=LoadRow.quantity,
        note="empty rows are for what else goes along",
    ),
    columns=paper.Columns.WORDS,
)
