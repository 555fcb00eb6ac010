"""The Haul-off sheet, for the driver: piles in order, disposal sites with their hours, loads and scale tickets."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.choice import Choice
from calc.trade.hauling.loads import Hauled, Hauler
from calc.trade.inputs.job import Job
from calc.trade.inputs.papers import PaperFacts
from calc.trade.levels import HAULED
from calc.trade.papers.pour_text import HaulWord

Column, Fact, Facts, Table = paper.Column, paper.Fact, paper.Facts, paper.Table

HAUL_OFF_SHEET = paper.Paper(
    "Dump plan",
    "for the driver",
    Facts(
        "Job",
        Fact(Job.address, "From"),
        Fact(PaperFacts.contact),
        Fact(Choice.vehicle_name, "Vehicle"),
        Fact(Hauler.payload, "Most on it"),
        Fact(Choice.plan_name, "Plan"),
    ),
    Table(
        "In this order, from the top",
        HAULED,
        Column("Loads", Hauled.loads),
        Column("Fill line", HaulWord.fill),
        Column("Tons, all loads", Hauled.tons),
        Column("Gate fee expected", Hauled.tipping),
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
