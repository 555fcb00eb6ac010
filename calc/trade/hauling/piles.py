"""Piles to haul: each material by itself, and what each plan leaves mixed."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Site
from calc.trade.levels import PILE, PLANT, STREAM
from calc.trade.takeoff.dig import GreenSpoil, GreenWaste, Spoil
from calc.trade.takeoff.old_concrete import ConcreteDebris
from calc.trade.work.prep import StreamHours

_SHEET = "Dig and haul"
GREEN, SOIL, CONCRETE = (row_called(PILE, word) for word in STREAM.axis.words)
"""The piles that can be hauled separately. The mixed piles of the plans follow them, in the order of the plans."""
_GREEN, _SOIL, _CONCRETE = (row_called(STREAM, word) for word in STREAM.axis.words)


class Pile(Section, title="Spoil piles", each=STREAM, sheet=_SHEET):
    """Material to haul, before a haul plan is chosen."""

    loose = line(
        "Spoil, loose volume",
        "yd3",
        by_row(STREAM, GreenSpoil.loose, Spoil.loose, ConcreteDebris.loose),
        source="from the takeoff, by material",
        adds=True,
    )
    tons = line(
        "Spoil, tons",
        "ton",
        by_row(STREAM, GreenSpoil.tons, Spoil.tons, ConcreteDebris.tons),
        source="from the takeoff, by material",
        adds=True,
    )
    not_empty = line("Pile is not empty", "", when(tons > 0, 1, 0), source="1 if the pile has weight")


HAS_GREEN, HAS_SOIL, HAS_CONCRETE = (at(Pile.not_empty, row) for row in (_GREEN, _SOIL, _CONCRETE))
"""1 where there is anything of the material, else 0."""


class SoilContamination(Section, title="Soil contamination", sheet=_SHEET):
    """A disposal site may charge a surcharge for soil with turf or roots, or refuse the load."""

    turf_probability = factor(
        "Surcharge probability, soil with turf",
        "%",
        100,
        low=50,
        high=100,
        source="common practice, no source",
    )
    root_probability = factor(
        "Surcharge probability, soil with root balls",
        "%",
        25,
        low=0,
        high=100,
        source="common practice, no source",
    )

    has_root_balls = line(
        "Root balls present", "", when(total(GreenWaste.root_balls) > 0, 1, 0), source="1 if a root ball is removed"
    )
    has_roots = line(
        "Roots or turf in the soil",
        "",
        when(both(Spoil.tons > 0, either(Site.turf.is_("yes"), has_root_balls > 0)), 1, 0),
        source="1 if turf is excavated or a root ball is removed",
    )
    is_wet = line(
        "Wet soil",
        "",
        when(both(Site.moisture.is_("wet"), Spoil.tons > 0), 1, 0),
        source="1 if there is soil and it is wet",
    )
    surcharge_probability = line(
        "Surcharge probability",
        "%",
        when(Site.turf.is_("yes"), turf_probability, when(has_root_balls > 0, root_probability, 0)),
        source="per load of soil at a soil site",
    )


def _present(hours: Line, row: Expr) -> Expr:
    """Hours of a material; none of one that weighs nothing, since no load waits for it."""
    return at(hours, row) * at(Pile.not_empty, row)


class GreenMix(Section, title="Green waste in the piles", each=PILE, sheet=_SHEET, needs=PLANT):
    """The piles that hold green waste."""

    green = fixed("Green waste in the pile", PILE, 1, 0, 0, 1, 0, 1, 0, 0, 1, source="1 if the pile holds it")


class LoadMix(Section, title="Piles that can be loaded", each=PILE, sheet=_SHEET):
    """Each material by itself, and what each plan leaves mixed."""

    soil = fixed("Soil in the pile", PILE, 0, 1, 0, 1, 1, 1, 0, 1, 0, source="1 if the pile holds it")
    concrete = fixed("Concrete debris in the pile", PILE, 0, 0, 1, 1, 1, 0, 0, 0, 1, source="1 if the pile holds it")

    number = line("Pile number", "", row_number(PILE), source="row number")
    loose = line(
        "Loose volume of the pile",
        "yd3",
        GreenMix.green * GreenSpoil.loose + soil * Spoil.loose + concrete * ConcreteDebris.loose,
        source="sum of the materials in the pile",
    )
    tons = line(
        "Tons in the pile",
        "ton",
        GreenMix.green * GreenSpoil.tons + soil * Spoil.tons + concrete * ConcreteDebris.tons,
        source="sum of the materials in the pile",
    )
    kind = line(
        "Kind of disposal site",
        "",
        when(number > at(number, CONCRETE), "mixed", row_word(PILE)),
        source="a mixed pile goes to a site for mixed waste",
    )
    by_hand = line(
        "Hours by hand of the pile",
        "h",
        GreenMix.green * _present(StreamHours.by_hand, _GREEN)
        + soil * _present(StreamHours.by_hand, _SOIL)
        + concrete * _present(StreamHours.by_hand, _CONCRETE),
        source="sum of the materials in the pile that weigh anything",
    )
    by_machine = line(
        "Hours by machine of the pile",
        "h",
        GreenMix.green * _present(StreamHours.by_machine, _GREEN)
        + soil * _present(StreamHours.by_machine, _SOIL)
        + concrete * _present(StreamHours.by_machine, _CONCRETE),
        source="sum of the materials in the pile that weigh anything",
    )


NUMBER_OF_GREEN, NUMBER_OF_SOIL, NUMBER_OF_CONCRETE = (at(LoadMix.number, row) for row in (GREEN, SOIL, CONCRETE))
"""The numbers of the piles of one material. The mixed piles follow the last of them."""
