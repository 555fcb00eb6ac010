"""What a mix is made of, listed once: the rows of the plant order, and what pours on one truck must agree in."""

from __future__ import annotations

from dataclasses import dataclass

from calc.declare import *
from calc.trade.inputs.job import Job
from calc.trade.inputs.papers import PaperFacts
from calc.trade.inputs.pour import ADDITIONS, Addition, Mixture
from calc.trade.materials.fiber import FiberTotal
from calc.trade.materials.fiber_dose import FiberDose
from calc.trade.papers.pour_text import MixText, PourText

Fact = paper.Fact


@dataclass(frozen=True)
class MixProperty:
    """Something that a mix is specified by: the number or the word, and the rows of the plant order that tell it.

    Pours share a truck only where it is the same in all. The exceptions: where ``more_serves``, the mix that has
    more of it serves both; what can be ``added_later`` may go in after the first stop, which then takes none of it.
    """

    named: Input | Line
    facts: tuple[paper.Fact, ...]
    more_serves: bool = False
    added_later: bool = False


def _of_addition(addition: Addition) -> MixProperty:
    """What the plant is told of an addition: yes or no, but for air how much."""
    fact = Fact(PourText.air, "Entrained air") if addition is Mixture.air else Fact(addition)
    return MixProperty(addition, (fact,), added_later=addition.added_later)


MIX = (
    MixProperty(Mixture.strength, (Fact(Mixture.strength, "Strength"),), more_serves=True),
    MixProperty(PaperFacts.slump, (Fact(MixText.slump, "Slump"),)),
    MixProperty(PourText.aggregate, (Fact(MixText.aggregate, "Maximum aggregate size"),)),
    *(_of_addition(each) for each in ADDITIONS),
    MixProperty(Job.fiber, (Fact(PourText.fiber, "Fiber"),), added_later=True),
    MixProperty(
        FiberDose.per_yard,
        (Fact(FiberDose.per_yard, "Fiber dose"), Fact(FiberTotal.bags, "Fiber bags")),
        added_later=True,
    ),
)
"""Every property of a mix, in the order in which the plant is told. An addition is in it by its entry in Mixture."""
