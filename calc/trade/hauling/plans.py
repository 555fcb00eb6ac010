"""Haul plans: which piles are hauled separately, in which order they are hauled, and the sorting that takes."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.piles import CONCRETE, GREEN, SOIL, Pile
from calc.trade.inputs.hauling import Fleet
from calc.trade.levels import PLAN, PLANT
from calc.trade.takeoff.dig import Spoil

_SHEET = "Dig and haul"
MIXED_LAST = TWO * TWO


class Sorting(Section, title="Sorting the piles", sheet=_SHEET, needs=PLANT):
    """Labor to keep green waste separate: a disposal cost, not part of the crew hours."""

    rate = factor("Sorting out green waste", "h/yd3", 0.25, low=0.1, high=0.5, source="common practice, no source")
    hours = line(
        "Sorting hours", "h", Spoil.green_loose * rate, source="loose volume of green waste times hours per yard"
    )


class PlanSplit(Section, title="Haul plans", each=PLAN, sheet=_SHEET):
    """The piles that each plan hauls separately; the rest is mixed. A plan that equals an earlier one drops out."""

    green = fixed("Green waste separate", PLAN, 0, 1, 0, 1, 1, 0, source="1 if the plan hauls it separately")
    soil = fixed("Soil separate", PLAN, 0, 0, 0, 1, 0, 1, source="1 if the plan hauls it separately")
    concrete = fixed("Concrete debris separate", PLAN, 0, 0, 1, 1, 1, 0, source="1 if the plan hauls it separately")
    code = line(
        "Separate piles, as a code",
        "",
        (green * at(Pile.not_empty, GREEN) * TWO + soil * at(Pile.not_empty, SOIL)) * TWO
        + concrete * at(Pile.not_empty, CONCRETE),
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
    needs_sorting = line(
        "Piles are sorted by hand",
        "",
        when(
            both(
                at(Pile.not_empty, GREEN) > 0,
                at(Pile.not_empty, SOIL) + at(Pile.not_empty, CONCRETE) > 0,
                either(green > 0, soil > 0),
            ),
            1,
            0,
        ),
        source="1 if green waste is kept separate from another pile",
    )
    number = line("Plan number", "", row_number(PLAN), source="row number")
    mixed_green = line(
        "Green waste mixed", "", (1 - green) * at(Pile.not_empty, GREEN), source="1 if there is any and it is mixed"
    )
    mixed_concrete = line(
        "Concrete debris mixed",
        "",
        (1 - concrete) * at(Pile.not_empty, CONCRETE),
        source="1 if there is any and it is mixed",
    )
    mixed_soil = line(
        "Soil mixed", "", (1 - soil) * at(Pile.not_empty, SOIL), source="1 if there is any and it is mixed"
    )
    mixed_place = line(
        "Place of the mixed pile",
        "",
        when(
            equals(mixed_green + mixed_concrete + mixed_soil, 1),
            mixed_green + TWO * mixed_concrete + THREE * mixed_soil,
            MIXED_LAST,
        ),
        source="1 green waste, 2 concrete debris, 3 soil, 4 mixed: a mixed pile of one material keeps that one's place",
    )
