"""What the author of a rule may write by mistake, and what the refusal has to say of it."""

from __future__ import annotations

import math
from collections.abc import Callable

from calc import declare
from calc.declare import (
    IN_PER_FT,
    Section,
    Severity,
    at,
    both,
    caution,
    check,
    choice,
    correlation,
    count_of,
    equals,
    exact,
    factor,
    factors,
    fixed,
    is_given,
    is_word,
    joined,
    largest,
    least,
    line,
    look_up,
    money,
    named_rows,
    price,
    round_up,
    square_root,
    total,
    typed_rows,
    when,
)

AREA = typed_rows("area")
KIND = named_rows("kind", "fine", "coarse")


class Bid(Section, title="Bid"):
    """Numbers of the job."""

    shape = choice("Shape", "strip", "circle", default="strip")
    note = declare.text("Note")
    reach = declare.given("Reach", "ft")
    loads = declare.given("Loads", "load")
    bags = declare.given("Bags", "bag")
    rate = price("Rate", "$/yd3", pack="yd3/pack")
    tolerance = factor("Tolerance", "", 0.001, low=0, high=1, source="house rule")


class Area(Section, title="Areas", each=AREA):
    """Numbers of an area."""

    area = declare.given("Plan area", "ft2")
    thickness = declare.given("Thickness", "in")
    yards = declare.given("Yards", "yd3")


class Kind(Section, title="Kinds", each=KIND):
    """Numbers of named rows."""

    dose = factors("Dose", "lb/yd3", 1, 2, source="house rule")


def declared(formula: declare.Expr, unit: str = "") -> Callable[[], object]:
    """A line of that formula, to be declared later."""
    return lambda: line("Sought", unit, formula, source="test")


MISUSES: dict[str, tuple[Callable[[], object], list[str]]] = {
    "feet and inches added": (lambda: Bid.reach + Area.thickness, ["cannot add Reach [ft] and Thickness [in]"]),
    "feet and inches subtracted": (
        lambda: Bid.reach - Area.thickness,
        ["cannot subtract Reach [ft] and Thickness [in]"],
    ),
    "a fixed row that follows from something": (
        lambda: fixed("Weight", KIND, Bid.reach, 1, source="test"),
        ["'Weight' is fixed", "a word, a 0, a 1 or an exact number"],
    ),
    "a fixed table that leaves a row out": (
        lambda: fixed("Weight", KIND, 1, source="test"),
        ["there are 1 cases for the 2 rows of kind"],
    ),
    "inches and square feet compared": (
        lambda: Area.thickness > Area.area,
        ["cannot compare Thickness [in] and Plan area [ft2]"],
    ),
    "inches and feet the same": (lambda: equals(Area.thickness, Bid.reach), ["cannot compare", "Thickness", "Reach"]),
    "loads added to bags": (lambda: Bid.loads + Bid.bags, ["cannot add Loads [load] and Bags [bag]"]),
    "loads and bags in one largest": (lambda: largest(Bid.loads, Bid.bags), ["Loads [load] and Bags [bag]"]),
    "1 added to feet": (lambda: Bid.reach + 1, ["cannot add Reach [ft] and 1 [plain number]"]),
    "words added": (lambda: Bid.reach + "1", ["cannot add “1”", "words, not a number"]),
    "two answers in two units": (
        lambda: when(Bid.reach > 0, Bid.reach, Area.thickness),
        ["Reach > 0", "Reach [ft] and Thickness [in]"],
    ),
    "a number or words": (
        lambda: when(Bid.reach > 0, Bid.reach, "none"),
        ["Reach > 0", "a number and words"],
    ),
    "a number for a condition": (lambda: when(Bid.reach, 1, 0), ["Reach", "not a yes or no"]),
    "both of a number": (lambda: both(Bid.reach, Bid.loads > 0), ["Reach", "not a yes or no"]),
    "if": (lambda: 1 if Bid.reach else 0, ["Reach has no value yet", "'if'", "use when()"]),
    "if of a comparison": (lambda: 1 if Bid.reach > 0 else 0, ["Reach > 0 has no value yet", "use when()"]),
    "and": (lambda: Bid.reach > 0 and Bid.loads > 0, ["Reach > 0 has no value yet", "both()"]),
    "or": (lambda: Bid.reach > 0 or Bid.loads > 0, ["Reach > 0 has no value yet", "either()"]),
    "not": (lambda: not Bid.reach > 0, ["Reach > 0 has no value yet", "use when()"]),
    "a chain of comparisons": (lambda: 0 < Bid.reach < 1, ["Reach > 0 has no value yet", "both()"]),
    "max()": (lambda: max(Bid.reach, 0), ["Reach", "has no value yet", "largest()"]),
    "min()": (lambda: min(Bid.loads, 0), ["Loads", "has no value yet", "smallest()"]),
    "math.ceil()": (lambda: math.ceil(Bid.reach), ["Reach has no value yet", "use round_up()"]),
    "math.floor()": (lambda: math.floor(Bid.reach), ["Reach has no value yet", "use round_down()"]),
    "round()": (lambda: round(Bid.reach, 2), ["Reach has no value yet", "use rounded() or money()"]),
    "float()": (lambda: float(Bid.reach), ["Reach has no value yet", "square_root()"]),
    "math.sqrt()": (lambda: math.sqrt(Area.area), ["Plan area has no value yet", "square_root()"]),
    "sum()": (lambda: sum(Area.area), ["Plan area has no value yet", "use total()"]),
    "for": (lambda: [each for each in Area.area], ["Plan area has no value yet", "use total()"]),
    "**": (lambda: Bid.reach**2, ["Reach", "'**' knows no units", "square()"]),
    "a bare number": (lambda: Bid.reach * 2, ["2 has no name", "a label, a unit and a source"]),
    "a bare fraction": (lambda: 0.5 * Bid.reach, ["0.5 has no name"]),
    "a truth": (lambda: when(Bid.reach > 0, True, 0), ["True has no name"]),
    "a number that is not exact": (lambda: exact(8), ["8 is not one of the exact numbers", "declare a factor"]),
    "a total of an expression": (
        lambda: total(Area.area * Area.thickness),
        ["Plan area × Thickness needs a line of its own"],
    ),
    "the least of an expression": (lambda: least(Area.area * Area.area), ["needs a line of its own"]),
    "looked up by a number": (
        lambda: look_up(Kind.dose, Bid.loads),
        ["Dose is looked up by a word", "Loads", "use at()"],
    ),
    "picked by words": (lambda: at(Kind.dose, Bid.shape), ["Dose is picked by a row number", "Shape is words"]),
    "an unknown word": (lambda: Bid.shape.is_("square"), ["Shape is never 'square'", "'strip', 'circle'"]),
    "a word of a number": (lambda: Bid.reach.is_("long"), ["Reach is never 'long'"]),
    "feet in a sentence": (lambda: joined("about ", Bid.reach), ["Reach [ft]", "a cell of its own"]),
    "yes or no in a sentence": (lambda: joined("is ", is_given(Bid.reach)), ["Reach is given", "say it with when()"]),
    "money of yards": (lambda: money(Area.yards), ["Yards [yd3]", "money is in $"]),
    "the root of feet": (lambda: square_root(Bid.reach), ["Reach [ft]", "the root of ft has no unit"]),
    "steps in another unit": (
        lambda: round_up(Bid.reach, to=Area.thickness),
        ["cannot round Reach [ft] to steps of Thickness [in]"],
    ),
    "an exponential of feet": (lambda: declare.exponential(Bid.reach), ["Reach [ft]", "inside a correlation"]),
    "a count of feet": (lambda: count_of(Bid.reach, "bag"), ["cannot count Reach [ft] as bag"]),
    "a count of what is not counted": (lambda: count_of(1, "ft"), ["cannot count 1", "as ft"]),
    "feet as a plain number": (lambda: Bid.reach.count, ["cannot drop the unit of Reach [ft]", "not a count"]),
    "a correlation without a source": (
        lambda: correlation("", lambda x: x, Bid.reach, source=""),
        ["needs a source"],
    ),
    "a factor without a source": (lambda: factor("Waste", "%", 5, source=""), ["'Waste' has no source"]),
    "a price that is not in dollars": (lambda: price("Sand", "yd3"), ["'Sand' is a price", "in $, not 'yd3'"]),
    "a default that is no word": (lambda: choice("Soil", "clay", default="sand"), ["'Soil'", "default 'sand'"]),
    "a line without a label": (lambda: line("", "ft", Bid.reach, source="test"), ["needs a label and a source"]),
    "a line without a source": (
        lambda: line("Sought", "ft", Bid.reach, source=""),
        ["'Sought' needs a label and a source"],
    ),
    "a line of yes or no": (declared(Bid.reach > 0), ["'Sought' is a yes or no", "when(..., 1, 0)"]),
    "a check in two units": (
        lambda: check("Agree", "ft", Bid.reach, Area.thickness, Bid.tolerance, compared="-", remedy="-"),
        ["'Agree'", "12 times the true ft"],
    ),
    "a caution that is a number": (
        lambda: caution("Deep", Severity.NOTE, Bid.reach, "found", Bid.reach, "ft", usual="u", do="d", source="s"),
        ["'Deep'", "Reach is a number"],
    ),
    "forced or not, of a line that may not be": (
        lambda: line("Sought", "ft", Bid.reach, source="test").is_overridden,
        ["'Sought' cannot be overridden"],
    ),
    "the division by 12 forgotten": (
        declared(Area.area * Area.thickness / declare.FT3_PER_YD3, "yd3"),
        ["'Sought'", "12 times the true yd3"],
    ),
    "the thickness forgotten": (
        declared(Area.area / IN_PER_FT / declare.FT3_PER_YD3, "yd3"),
        ["'Sought'", "Plan area", "not yd3"],
    ),
}
"""What a rule's author may write by mistake, and what the refusal has to say."""


def section_with_a_line_named_level() -> None:
    """The section's own level takes the place of the line, and nobody is told."""

    class Named(Section, title="Named"):
        level = line("Level", "ft", Bid.reach, source="test")


ACKNOWLEDGED: dict[str, Callable[[], object]] = {
    "factors without a source": lambda: factors("Doses", "lb", 1, 2, source=""),
    "a number asked for a word": lambda: is_word(Bid.reach, "long"),
    "words asked whether they were given": lambda: is_given(Bid.note),
    "a total of words": lambda: total(Bid.note),
    "a total for rows that it does not belong to": lambda: total(Area.area, KIND),
    "a look-up among words that a person types": lambda: look_up(Area.area, Bid.shape),
    "a ratio in a sentence": lambda: joined("a share of ", Bid.reach / Bid.reach),
    "a line that has a section's own name": section_with_a_line_named_level,
    "abs()": lambda: abs(Bid.reach),
    "int()": lambda: int(Bid.reach),
    "//": lambda: Bid.reach // Bid.reach,
}
"""Misuses that get through, or end in an error of Python's own without advice."""
