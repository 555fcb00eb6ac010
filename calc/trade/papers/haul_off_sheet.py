"""The Haul-off sheet, for the driver: piles in order, disposal sites with their hours, loads and scale tickets."""

from __future__ import annotations

from calc.declare import *
from calc.trade.cautions.hauling import HaulCautions
from calc.trade.cautions.safety import SafetyCautions
from calc.trade.cautions.site import SiteCautions
from calc.trade.hauling.choice import Choice
from calc.trade.hauling.loads import Hauled, HaulVehicle
from calc.trade.inputs.job import Job
from calc.trade.inputs.papers import PaperFacts
from calc.trade.levels import HAULED
from calc.trade.papers.pour_text import PileText

Column, Fact, Facts, Table = paper.Column, paper.Fact, paper.Facts, paper.Table

_MOST_CAUTIONS = 6
"""So that it stays on one page."""

HAUL_OFF_SHEET = paper.Paper(
    "Haul-off sheet",
    "for the driver",
    Facts(
        "Job",
        Fact(Job.address, "From"),
        Fact(PaperFacts.contact),
        Fact(Choice.vehicle_name, "Vehicle"),
        Fact(HaulVehicle.payload, "Payload limit"),
        Fact(Choice.plan_name, "Haul plan"),
    ),
    Table(
        "Loads, in this order",
        HAULED,
        Column("Loads", Hauled.loads),
        Column("Load line (how full)", PileText.load_line),
        Column("Tons, total", Hauled.tons),
        Column("Expected dump fee", Hauled.dump_fee),
        Column("Opens", PileText.opens),
        Column("Closes", PileText.closes),
        Column("First leaves", PileText.first_leaves),
        Column("Last arrives", PileText.last_arrives),
        head="Pile",
        sums=True,
        used=Hauled.loads,
    ),
    Facts(
        "Disposal site of each pile",
        *(
            fact
            for place, word in enumerate(HAULED.axis.words)
            for fact in (
                Fact(PileText.destination, f"{word.capitalize()} goes to", row=place, if_any=True),
                Fact(PileText.not_accepted, "Not accepted", row=place, if_any=True),
            )
        ),
    ),
    Table(
        "Scale tickets",
        HAULED,
        Column("Tons weighed"),
        Column("Fee paid"),
        Column("Loads"),
        Column("Ticket no."),
        head="Pile",
        used=Hauled.loads,
        note="written down at the gate",
    ),
    paper.Sentences(
        "Rules",
        "Never load above the load line. It keeps some payload free, since soil weighs more or less: go by the scale.",
        "One shovel of turf in clean soil makes the whole load mixed. Cover the load.",
    ),
    paper.CautionList(
        "Cautions of digging and hauling",
        only=(
            HaulCautions.overweight,
            HaulCautions.contaminated_soil,
            HaulCautions.site_closed,
            HaulCautions.no_site,
            HaulCautions.waiting,
            SiteCautions.utilities,
            SiteCautions.locate_expired,
            SiteCautions.shutoffs,
            SafetyCautions.commercial_license,
            SafetyCautions.backing,
            SafetyCautions.roots,
        ),
        most=_MOST_CAUTIONS,
    ),
)
