"""Haul plans: which piles are hauled separately, in which order they are hauled, and the sorting that takes."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.piles import (
    HAS_CONCRETE,
    HAS_GREEN,
    HAS_SOIL,
    NUMBER_OF_CONCRETE,
    NUMBER_OF_GREEN,
    NUMBER_OF_SOIL,
)
from calc.trade.inputs.hauling import Fleet
from calc.trade.levels import HAUL_PLACE, PLAN, PLANT
from calc.trade.takeoff.dig import GreenSpoil

_SHEET = "Dig and haul"


class HaulOrder(Section, title="Order of the piles", each=HAUL_PLACE, sheet=_SHEET):
    """Green waste first, the mixed pile last."""

    number = line("Number of the place", "", row_number(HAUL_PLACE), source="row number")


GREEN_PLACE, CONCRETE_PLACE, SOIL_PLACE, MIXED_PLACE = (
    at(HaulOrder.number, row_called(HAUL_PLACE, word)) for word in HAUL_PLACE.axis.words
)
"""The numbers of the places in which piles are hauled."""


class GreenPlan(Section, title="Green waste of the plans", each=PLAN, sheet=_SHEET, needs=PLANT):
    """The plans that haul green waste separately."""

    separate = fixed("Green waste separate", PLAN, 0, 1, 0, 1, 1, 0, source="1 if the plan hauls it separately")
    mixed = line("Green waste mixed", "", (1 - separate) * HAS_GREEN, source="1 if there is any and it is mixed")


class PlanSplit(Section, title="Haul plans", each=PLAN, sheet=_SHEET):
    """The piles that each plan hauls separately; the rest is mixed. A plan that equals an earlier one drops out."""

    soil = fixed("Soil separate", PLAN, 0, 0, 0, 1, 0, 1, source="1 if the plan hauls it separately")
    concrete = fixed("Concrete debris separate", PLAN, 0, 0, 1, 1, 1, 0, source="1 if the plan hauls it separately")
    code = line(
        "Separate piles, as a code",
        "",
        (GreenPlan.separate * HAS_GREEN * TWO + soil * HAS_SOIL) * TWO + concrete * HAS_CONCRETE,
        source="binary digits for green waste, soil and concrete debris: equal for plans that come to the same piles",
    )
    repeats = line(
        "Same as an earlier plan",
        "",
        when(equals(first_in_group(code), row_number(PLAN)), 0, 1),
        source="1 if, for lack of a pile, the plan is the same as one above",
    )
    chosen = line(
        "Chosen by hand",
        "",
        when(same_word(row_word(PLAN), Fleet.plan), 1, 0),
        source="haul plan of the job",
        adds=True,
    )
    number = line("Plan number", "", row_number(PLAN), source="row number")
    mixed_pile = line(
        "Number of the mixed pile",
        "",
        NUMBER_OF_CONCRETE + number,
        source="the mixed piles follow those of one material, in the order of the plans",
    )
    mixed_concrete = line(
        "Concrete debris mixed", "", (1 - concrete) * HAS_CONCRETE, source="1 if there is any and it is mixed"
    )
    mixed_soil = line("Soil mixed", "", (1 - soil) * HAS_SOIL, source="1 if there is any and it is mixed")
    mixed_place = line(
        "Place of the mixed pile",
        "",
        when(
            equals(GreenPlan.mixed + mixed_concrete + mixed_soil, 1),
            GreenPlan.mixed * GREEN_PLACE + mixed_concrete * CONCRETE_PLACE + mixed_soil * SOIL_PLACE,
            MIXED_PLACE,
        ),
        source="a mixed pile of one material keeps that one's place",
    )


class Sorting(Section, title="Sorting the piles", each=PLAN, sheet=_SHEET, needs=PLANT):
    """Labor to keep green waste separate: a disposal cost, not part of the crew hours."""

    rate = factor("Sorting out green waste", "h/yd3", 0.25, low=0.1, high=0.5, source="common practice, no source")
    needed = line(
        "Piles are sorted by hand",
        "",
        when(
            both(HAS_GREEN > 0, HAS_SOIL + HAS_CONCRETE > 0, either(GreenPlan.separate > 0, PlanSplit.soil > 0)), 1, 0
        ),
        source="1 if green waste is kept separate from another pile",
    )
    hours = line(
        "Sorting hours of the plan",
        "h",
        needed * GreenSpoil.loose * rate,
        source="loose volume of green waste times hours per yard, if green waste is sorted out",
    )


def _in_place(separate: Expr, number: Expr, place: Expr) -> Expr:
    """The number of the pile of a material that is hauled separately, else of a mixed pile that has its place."""
    return when(separate > 0, number, when(equals(PlanSplit.mixed_place, place), PlanSplit.mixed_pile, 0))


class GreenInOrder(Section, title="Pile in the place of green waste", each=PLAN, sheet=_SHEET, needs=PLANT):
    """Green waste, or the mixed pile where it is nothing else."""

    pile = line(
        "Pile hauled first",
        "",
        _in_place(GreenPlan.separate, NUMBER_OF_GREEN, GREEN_PLACE),
        source="number of the pile in this place; 0 for none",
    )


class PilesInOrder(Section, title="Piles in their places", each=PLAN, sheet=_SHEET):
    """The pile that each plan hauls in each place: of one material, or the mixed one where it is nothing else."""

    concrete = line(
        "Pile in the place of concrete debris",
        "",
        _in_place(PlanSplit.concrete, NUMBER_OF_CONCRETE, CONCRETE_PLACE),
        source="number of the pile in this place; 0 for none",
    )
    soil = line(
        "Pile in the place of soil",
        "",
        _in_place(PlanSplit.soil, NUMBER_OF_SOIL, SOIL_PLACE),
        source="number of the pile in this place; 0 for none",
    )
    mixed = line(
        "Pile in the last place",
        "",
        when(equals(PlanSplit.mixed_place, MIXED_PLACE), PlanSplit.mixed_pile, 0),
        source="number of the pile in this place; 0 for none",
    )
