"""What a cell of a paper holds: a number or words brought from their own cell, and what stands where there are none."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from math import isnan

from calc.declared import Declared, Given, Kind, Line, paper
from calc.formula.functions import NONE
from calc.formula.kinds import Sort
from calc.formula.levels import Level
from calc.intake.records import JobInput
from calc.trade.levels import AREA
from calc.workbook.blocks import word_of
from calc.workbook.checks import ChecksPage
from calc.workbook.lines import format_of, shown
from calc.workbook.looks import COUNT_FORMAT, dashed
from calc.workbook.page import Linked, Page, Shown, Words, lines_of
from calc.workbook.places import Places
from calc.workbook.values import JobValues

LABEL, VALUE, UNIT = 0, 1, 2
"""The first columns of every paper."""

_DATE = "yyyy-mm-dd"


@dataclass(frozen=True)
class Desk:
    """What papers are laid from: where everything stands, how many rows there are, and the sheet of cautions."""

    places: Places
    counts: Mapping[Level, int]
    checks: ChecksPage
    caution_slots: int

    @property
    def areas(self) -> int:
        """How many areas the job has."""
        return self.counts[AREA]

    def shows(self, part: paper.Part) -> bool:
        """Whether a part has anything to say: a list of typed rows without any is left out."""
        match part:
            case paper.Table():
                return self.counts[part.level] > 0
            case paper.HouseWords():
                return self.counts[part.words.level] > 0
            case paper.Facts(only_with=Level() as level):
                return self.counts[level] > 0
        return True

    def word(self, level: Level, index: int) -> Callable[[JobInput], Shown]:
        """The name that a row goes by."""
        return word_of(level, index)

    def text_of(self, named: Declared, index: int, seen_from: str, otherwise: str = "") -> Callable[[], str]:
        """The formula that brings one row, with ``otherwise`` where nobody typed it."""

        def text() -> str:
            spot = self.places.spots[named]
            cell = self.places.one(named, index, seen_from, "c" if spot.block.level.axes and not spot.block.across else "cr")
            return f'IF({cell}="{NONE}","{otherwise}",{cell})' if otherwise and may_be_none(named) else cell

        return text

    def value_of(self, named: Declared, index: int, otherwise: str = "") -> Callable[[JobValues], Shown]:
        """What that formula gives."""

        def value(job: JobValues) -> Shown:
            found = shown(job.of(named, index))
            return otherwise if otherwise and found == NONE and may_be_none(named) else found

        return value


def may_be_none(named: Declared) -> bool:
    """Whether a person may leave it blank, so that its cell says none."""
    return isinstance(named, Given) and (named.optional or named.kind is Kind.TEXT)


def is_words(named: Declared) -> bool:
    """Whether it is shown as words: a sentence, a choice, a name."""
    return named.sort is Sort.TEXT


def face_of(named: Declared, whole: bool = False) -> str:
    """The number format on a paper: a dash for zero, and a date as a date."""
    if is_words(named):
        return ""
    if isinstance(named, Given) and named.kind is Kind.DATE:
        return _DATE
    return dashed(COUNT_FORMAT if whole else format_of(named))


def bring(page: Page, desk: Desk, fact: paper.Fact, wordy: bool) -> None:
    """The value of a fact, its unit, and what is said beside it."""
    named, row = fact.named, fact.row or 0
    assert named is not None
    if fact.row is None and isinstance(named, Line) and named.all_rows is not None:
        named = named.all_rows
    face = face_of(named, fact.whole)
    plain = is_words(named) or face == _DATE
    unit = "" if plain or named.unit_text.startswith("$") else named.unit_text
    if wordy and unit:
        face = ";".join(part if part == '"-"' else f'{part} "{unit}"' for part in face.split(";"))
    role = "loud" if fact.loud else "sentence" if wordy else "line" if plain else "figure"
    text = desk.text_of(named, row, page.name, fact.otherwise)
    page.put(Linked(page.row, VALUE, role, text, desk.value_of(named, row, fact.otherwise), face, wraps=wordy))
    if unit and not wordy:
        page.words(UNIT, unit, "unit")
    _say_beside(page, desk, fact.beside)


def _say_beside(page: Page, desk: Desk, beside: Declared | str) -> None:
    if isinstance(beside, str):
        if beside:
            page.put(Words(page.row, UNIT + 1, "line", beside))
        return
    page.put(Linked(page.row, UNIT + 1, "line", desk.text_of(beside, 0, page.name), desk.value_of(beside, 0)))


def spread_words(text: str, width: float) -> list[str]:
    """A fixed sentence in as many lines as it takes across ``width``."""
    lines: list[str] = []
    for word in text.split(" "):
        if lines and lines_of(f"{lines[-1]} {word}", width) == 1:
            lines[-1] = f"{lines[-1]} {word}"
        else:
            lines.append(word)
    return lines
