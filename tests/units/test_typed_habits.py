"""What the trade writes by habit is read as it is meant, or refused with words that say what to type."""

from __future__ import annotations

from datetime import date
from fractions import Fraction

import pytest

from calc.cells import Cell, Kind
from calc.errors import InputRefused
from calc.intake.values import date_note, date_of, read_number, share_of_money
from calc.units.parse import read_quantity
from typed_habits import AMBIGUOUS_DATES, DATES, HABITS, NO_DATES, NO_HABITS


def number_cell(value: float, number_format: str = "General") -> Cell:
    """A cell with a number in it."""
    return Cell("Company", 2, 2, Kind.NUMBER, value, number_format=number_format)


def text_cell(text: str) -> Cell:
    """A cell with a text in it."""
    return Cell("Company", 2, 2, Kind.TEXT, text)


@pytest.mark.parametrize(("typed", "unit", "exact"), HABITS)
def test_a_habit_of_the_trade_is_read_as_it_is_meant(typed: str, unit: str, exact: str) -> None:
    read = read_quantity(typed, unit)
    assert read.exact == Fraction(exact)
    assert read.value == pytest.approx(float(Fraction(exact)), rel=1e-12)
    assert not read.formula or eval(read.formula) == read.value


@pytest.mark.parametrize(("typed", "unit"), NO_HABITS)
def test_a_habit_in_the_wrong_column_is_refused_with_a_word_about_that_column(typed: str, unit: str) -> None:
    with pytest.raises(InputRefused) as refused:
        read_quantity(typed, unit)
    assert typed in refused.value.found and refused.value.remedy


def test_a_length_in_yards_is_asked_about() -> None:
    assert read_quantity("5 yd", "ft").ask == "Is a length of 15 ft meant? It was taken so."
    assert read_quantity("5 yd", "yd3").ask == ""


@pytest.mark.parametrize(("typed", "day"), DATES)
def test_a_date_is_read_with_the_month_first(typed: str, day: str) -> None:
    assert date_of(typed) == date.fromisoformat(day)


@pytest.mark.parametrize("typed", NO_DATES)
def test_what_is_no_date_is_not_guessed_at(typed: str) -> None:
    assert date_of(typed) is None


def test_a_date_that_could_be_meant_the_other_way_round_is_told() -> None:
    told = {typed: date_note(text_cell(typed)) for typed, _ in DATES}
    assert {typed for typed, note in told.items() if note} == {*AMBIGUOUS_DATES, " 5/4/2026 "}
    assert told["5/4/2026"] == "5/4/2026 was read with the month first: May 4, 2026."


@pytest.mark.parametrize(
    ("cell", "percent", "asked"),
    [
        (number_cell(8.25), 8.25, False),
        (number_cell(0.0825), 8.25, True),
        (number_cell(0.0825, "0.00%"), 8.25, False),
        (number_cell(0.5, "0%"), 50, False),
        (number_cell(0.07, "0.0 %"), 7, False),
        (number_cell(0), 0, False),
        (number_cell(1), 1, False),
        (text_cell(".0825"), 8.25, True),
        (text_cell("8.25 %"), 8.25, False),
        (text_cell("8.25"), 8.25, False),
        (text_cell("0.5 %"), 0.5, False),
        (text_cell("0.5 percent"), 0.5, False),
        (text_cell("18"), 18, False),
        (text_cell("0.18"), 18, True),
    ],
)
def test_percent_is_percent_however_it_was_stored(cell: Cell, percent: float, asked: bool) -> None:
    """8.25 % sales tax typed as .0825 would otherwise cost the contractor a hundred times less than the state asks."""
    read = share_of_money(read_number(cell, "%", "%", False, False, "Company!B2"), cell)
    assert read.entry.value == pytest.approx(percent, rel=1e-12)
    assert bool(read.remarks) is asked
    if asked:
        assert f"was taken as {percent:g} %" in read.remarks[-1].text
