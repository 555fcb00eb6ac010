"""What the lint takes a formula apart into."""

from __future__ import annotations

import pytest

from formula_text import Area, Formula, area

FORMULA = Formula("=IF(B3>0,ROUNDUP(ROUND(SUM('Dig and haul'!$B$2:B9)/27,6),0)*Prices!C4,\"B3, (27)\")")


def test_calls_literals_and_references_are_told_from_the_text_in_quotes() -> None:
    assert [call.name for call in FORMULA.calls] == ["IF", "ROUNDUP", "ROUND", "SUM"]
    assert FORMULA.literals == [0, 27, 6, 0]
    assert FORMULA.references == ["B3", "'Dig and haul'!$B$2:B9", "Prices!C4"]
    assert FORMULA.operations == len(FORMULA.calls) + len((">", "/", "*"))


@pytest.mark.parametrize(
    ("text", "whole"),
    [
        ("=ROUNDUP(ROUND(B3/(2+1),6),0)", True),
        ("=ROUNDUP(ROUND(B3,6)/2,0)", False),
        ("=ROUNDUP((ROUND(B3,6)),0)", False),
        ("=ROUNDUP(B3,0)", False),
        ("=ROUNDUP()", False),
    ],
)
def test_an_argument_that_only_begins_with_rounding_does_not_pass_for_rounded(text: str, whole: bool) -> None:
    assert Formula(text).calls[0].first_is("ROUND", whole=True) is whole


@pytest.mark.parametrize("text", ["B:B", "3:3", "1+Factors!$B$2", "[1]Bid!B2", "rate", "Table[Area]", "B0", "#REF!"])
def test_what_is_no_bounded_range_is_not_taken_for_one(text: str) -> None:
    assert area(text, "Takeoff") is None


def test_a_reference_means_the_sheet_it_names_or_its_own() -> None:
    assert area("$B$2:C9", "Takeoff") == Area("Takeoff", row=2, column=2, last_row=9, last_column=3)
    assert area("'Joe''s yard'!B2", "Takeoff") == Area("Joe's yard", row=2, column=2, last_row=2, last_column=2)


@pytest.mark.parametrize(
    ("one", "other", "alike"),
    [
        ("=B3*$C$1", "=B4*$C$1", True),
        ("=B3*$C$1", "=B4*C1", False),
        ("='Dig and haul'!B3", "='Dig and haul'!B4", True),
        ("='Dig and haul'!B3", "=Takeoff!B4", False),
        ("=SUM(B$3:B3)", "=SUM(B$3:B4)", True),
        ('=IF(B3="B3",1,0)', '=IF(B4="B4",1,0)', False),
    ],
)
def test_a_formula_copied_down_keeps_its_shape(one: str, other: str, alike: bool) -> None:
    assert (Formula(one).shape(3, 5) == Formula(other).shape(4, 5)) is alike
