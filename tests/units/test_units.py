"""A number in the wrong unit cannot be declared: units cancel by name, and an independent registry bears them out."""

from __future__ import annotations

import re
from fractions import Fraction
from itertools import permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc import declare
from calc.declare import FT3_PER_YD3, IN_PER_FT, FormulaError, Line, Section, exact, line
from calc.formula.value_types import ValueType
from calc.trade.catalog import SECTIONS
from calc.units.algebra import COUNTS, PLAIN, Unit, unit
from calc.units.registry import factor_between

MEASURES = ("$", "%", "F", "day", "ft", "gal", "h", "in", "lb", "min", "mile", "mph", "psi", "ton", "yd")
NAMES = sorted({*MEASURES, *COUNTS})

POWERS = st.lists(st.tuples(st.sampled_from(NAMES), st.integers(-3, 3)), max_size=4)


def made(powers: list[tuple[str, int]]) -> Unit:
    """The product of powers of names."""
    result = PLAIN
    for name, power in powers:
        result = result * unit(name) ** power
    return result


UNITS = POWERS.map(made)


class StationStrip(Section, title="Walk"):
    """Something measured in every unit that a slip could mix."""

    area = declare.given("Area", "ft2")
    length = declare.given("Length", "ft")
    thickness = declare.given("Thickness", "in")
    heat = declare.given("Heat", "F")
    wind = declare.given("Wind", "mph")


def test_the_concrete_of_a_slab_comes_out_in_cubic_yards_by_cancelling_names() -> None:
    assert unit("ft2") * unit("in") / unit("in/ft") / unit("ft3/yd3") == unit("yd3")
    assert unit("ft2") * unit("in") / unit("ft3/yd3") != unit("yd3")
    assert unit("$/yd3") * unit("yd3") == unit("$")
    assert unit("lb/yd3") * unit("yd3") / unit("lb/bag") == unit("bag")


@given(UNITS, UNITS, UNITS)
def test_units_multiply_and_divide_as_numbers_do(one: Unit, two: Unit, three: Unit) -> None:
    assert one * two == two * one
    assert (one * two) * three == one * (two * three)
    assert one * two / two == one
    assert (one / one).plain
    assert one**2 == one * one
    assert one**-1 == PLAIN / one


@given(UNITS)
def test_a_unit_reads_back_as_it_is_written(one: Unit) -> None:
    assert unit("" if one.plain else str(one)) == one


@settings(max_examples=40)
@given(UNITS, UNITS)
def test_the_registry_knows_no_other_factor_than_1_between_units_of_the_same_names(one: Unit, two: Unit) -> None:
    assert factor_between(one * two / two, one) == 1
    there, back = factor_between(one, two), factor_between(two, one)
    assert (there is None) == (back is None)
    assert there is None or back is None or there * back == 1


@pytest.mark.parametrize(
    "text",
    ["yards", "feet", "FT", "Ft2", "cy", "sf", "ft/2", "2", "ft^2", "ft-1", "ft2.5", "ft*", "*ft", "ft ft", "m", "kg"],
)
def test_a_name_that_is_not_in_use_is_refused_with_those_that_are(text: str) -> None:
    with pytest.raises(ValueError, match=r"is not one of .*\bft\b.*\byd\b") as refused:
        unit(text)
    assert repr(text) in str(refused.value)


@pytest.mark.parametrize(
    ("one", "other", "factor"),
    [
        ("ft", "in", 12),
        ("yd", "ft", 3),
        ("yd3", "ft3", 27),
        ("ft2", "in2", 144),
        ("mile", "ft", 5280),
        ("ton", "lb", 2000),
        ("h", "min", 60),
        ("day", "h", 24),
        ("gal", "in3", 231),
        ("mph", "mile/h", 1),
        ("ft2*in", "yd3", Fraction(1, 324)),
        ("$/ft2", "$/yd2", 9),
        ("psi", "psi", 1),
    ],
)
def test_a_conversion_is_exact(one: str, other: str, factor: Fraction) -> None:
    found = factor_between(unit(one), unit(other))
    assert isinstance(found, Fraction)
    assert found == factor


@pytest.mark.parametrize(
    ("one", "other"),
    [("ft2", "ft3"), ("F", ""), ("%", ""), ("$", ""), ("bag", ""), ("lb", "$"), ("psi", "lb"), ("h", "mph")],
)
def test_different_things_have_no_factor(one: str, other: str) -> None:
    assert factor_between(unit(one), unit(other)) is None


def test_every_unit_is_known_to_the_registry() -> None:
    assert [name for name in NAMES if factor_between(unit(name), unit(name)) != 1] == []
    counts = [name for name in NAMES if name in COUNTS]
    assert [(one, other) for one, other in permutations(counts, 2) if factor_between(unit(one), unit(other))] == []


def test_two_kinds_of_things_are_never_added_up() -> None:
    things = {name: declare.given(f"Some {name}", name) for name in COUNTS}
    for one, other in permutations(COUNTS, 2):
        said = f"cannot add Some {one} [{one}] and Some {other} [{other}]"
        with pytest.raises(FormulaError, match=re.escape(said)):
            things[one] + things[other]


def test_beside_a_count_a_bare_1_is_one_of_it_and_no_other_bare_number_is() -> None:
    trucks = declare.given("Truck loads", "truck")
    assert (trucks + 1).unit == (trucks - 1).unit == unit("truck")
    with pytest.raises(FormulaError, match="2 has no name in a formula"):
        trucks + 2
    with pytest.raises(FormulaError, match="cannot add"):
        declare.given("Length", "ft") + 1


def test_a_date_is_no_amount_and_the_days_between_two_are() -> None:
    """A number of days that goes by the unit of a date would be shown as one, in 1900."""
    start, end = declare.date("Start"), declare.date("End")
    with pytest.raises(FormulaError, match="cannot subtract End and Start: dates are no amounts; take days_between"):
        end - start
    assert declare.days_between(start, end).unit == unit("days")
    assert declare.days_after(start, declare.days_between(start, end)).unit == unit("day")


@pytest.mark.parametrize(
    ("unit_text", "formula", "said"),
    [
        ("yd3", StationStrip.area * StationStrip.thickness / FT3_PER_YD3, "its number would be 12 times the true yd3"),
        ("yd3", StationStrip.area * StationStrip.thickness / IN_PER_FT, "its number would be 27 times the true yd3"),
        ("yd3", StationStrip.area * StationStrip.thickness, "its number would be 324 times the true yd3"),
        ("ft", StationStrip.thickness / IN_PER_FT / IN_PER_FT, "its number would be 0.0833333 times the true ft"),
        ("in", StationStrip.length, "its number would be 0.0833333 times the true in"),
        ("ft2", StationStrip.area * exact(144, "in2/ft2"), "its number would be 144 times the true ft2"),
        ("mile/h", StationStrip.wind, "a true mile/h but not by cancelling"),
        ("yd3", StationStrip.area / FT3_PER_YD3, "not yd3"),
        ("", StationStrip.heat, "comes out in F, not a plain number"),
        ("F", StationStrip.heat * StationStrip.heat, "comes out in F2, not F"),
    ],
)
def test_a_line_in_the_wrong_unit_is_refused_with_how_wrong_it_would_be(
    unit_text: str, formula: declare.Expr, said: str
) -> None:
    with pytest.raises(FormulaError) as refused:
        line("Net concrete volume", unit_text, formula, source="geometry")
    assert str(refused.value).startswith("'Net concrete volume': ")
    assert formula.words in str(refused.value)
    assert said in str(refused.value)


def test_every_number_of_the_trade_comes_out_in_its_unit_with_factor_1() -> None:
    """The names cancel, and the registry finds no factor that they hid; a plain number may count things."""
    lines = [member for section in SECTIONS for member in section.members if isinstance(member, Line)]
    wrong = {
        member.id: f"{member.formula.unit}, declared {member.unit_text}"
        for member in lines
        if member.value_type is ValueType.NUMBER
        and not (member.formula.unit.plain and member.unit_text in COUNTS)
        and factor_between(member.formula.unit, unit(member.unit_text)) != 1
    }
    assert wrong == {}
    assert sum(member.value_type is ValueType.NUMBER for member in lines) > 50


def test_a_unit_that_is_left_over_is_said_as_such() -> None:
    assert str(unit("h") / unit("load") / unit("truck")) == "h/load/truck"
    assert (str(PLAIN), str(PLAIN / unit("h"))) == ("plain number", "1/h")
