"""A suggestion is the right word, or there is none: a wrong one costs a contractor more than a list of the choices."""

from __future__ import annotations

from pathlib import Path

import pytest

from books import given, intake_from
from calc.declared import Kind
from calc.intake.schema import INPUTS
from calc.intake.spelling import OTHER_WORDS, did_you_mean
from calc.trade.levels import ROLE
from typed_shapes import ROLES, SUGGESTED


@pytest.mark.parametrize(("word", "name", "suggested"), SUGGESTED)
def test_what_people_write_for_a_choice_is_answered_with_the_right_one(word: str, name: str, suggested: str) -> None:
    choices = given(name).words_allowed
    listed = f"Type one of: {', '.join(choices)}."
    assert did_you_mean(word, choices) == (f'Did you mean "{suggested}"?' if suggested else listed)


@pytest.mark.parametrize(("word", "suggested"), ROLES)
def test_a_role_that_is_none_is_answered_with_the_right_one(word: str, suggested: str) -> None:
    company = {"Wages": [["role", "private $/h"], [word, 46]]}
    week = {"Jobs": [["job", "bid date"], ["7", "2026-04-13"]], "Areas": [["job", "length ft"], ["7", 1]]}
    (told,) = (each for each in intake_from(Path(), week, company).findings if "role" in each.found)
    listed = f"Type one of: {', '.join(ROLE.axis.words)}."
    assert told.remedy == (f'Did you mean "{suggested}"?' if suggested else listed)


def test_no_suggestion_is_a_word_that_no_list_has() -> None:

    known = {word for each in INPUTS if each.kind is Kind.CHOICE for word in each.words_allowed} | {*ROLE.axis.words}
    assert {word for words in OTHER_WORDS.values() for word in words} <= known
