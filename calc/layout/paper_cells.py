"""What a cell of a paper holds: a number or words brought from their own cell, and what stands where there are none."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from calc.declared import Declared, Input, Kind, Line, paper
from calc.formula.functions import NONE
from calc.formula.levels import Level
from calc.formula.value_types import ValueType
from calc.intake.records import JobInput
from calc.layout.addresses import CellMap
from calc.layout.blocks import word_of
from calc.layout.checks_sheet import ChecksPage
from calc.layout.line_sheets import format_of, shown
from calc.layout.page import FixedText, Linked, Page, Shown, lines_of
from calc.layout.styles import dashed, number_format
from calc.model.results import JobValues
from calc.trade.levels import AREA
from calc.units.algebra import COUNTS

LABEL, VALUE, UNIT = 0, 1, 2
"""The first columns of every paper."""

PLAIN_GRID = (28.0, *(10.5,) * 8)
WORDY_GRID = (23.0, 54.0, 11.0, 10.0, 10.0, 10.0)
"""The widths of a paper's columns: of even columns for numbers, or with a wide one for words beside the first."""

ROW = 12.0
"""Points of a line on a paper, which is closer set than a sheet to work on."""

_SET_CLOSE = 1.1
"""How much more stands in a column of a paper than on a sheet to work on, whose estimate has more in hand."""

_FACES = {"yd3": "#,##0.00#", "psi": "#,##0", "min": "#,##0.0", "h": "#,##0.0", "%": "#,##0.0"}
"""Formats of a paper where a sheet of lines shows more digits."""


@dataclass(frozen=True)
class PaperContext:
    """What papers are laid from: where everything stands, how many rows there are, and the sheet of cautions."""

    places: CellMap
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
            case paper.CompanyText():
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
            spot = self.places.locations[named]
            cell = self.places.one(
                named, index, seen_from, "c" if spot.block.level.axes and not spot.block.across else "cr"
            )
            return f'IF({cell}="{NONE}","{otherwise}",{cell})' if otherwise and may_be_none(named) else cell

        return text

    def value_of(self, named: Declared, index: int, otherwise: str = "") -> Callable[[JobValues], Shown]:
        """What that formula gives."""

        def value(job: JobValues) -> Shown:
            found = shown(job.of(named, index))
            return otherwise if otherwise and found == NONE and may_be_none(named) else found

        return value


class PaperPage(Page):
    """A sheet whose lines are closer set, so that more of them fit on a page."""

    def height_of(self, text: str, col: int) -> float:
        """How high a row must be to show ``text`` wrapped in its column; no program takes more than 409 points."""
        return min(409.0, lines_of(text, self.widths[min(col, len(self.widths) - 1)] * _SET_CLOSE) * ROW)

    def room(self, text: str, col: int, row: int | None = None) -> None:
        """Makes the row high enough to show ``text`` wrapped in its column."""
        place = self.row if row is None else row
        self.heights[place] = max(self.heights.get(place, ROW), self.height_of(text, col))


def may_be_none(named: Declared) -> bool:
    """Whether a person may leave it blank, so that its cell says none."""
    return isinstance(named, Input) and (named.optional or named.kind is Kind.TEXT)


def is_words(named: Declared) -> bool:
    """Whether it is shown as words: a sentence, a choice, a name."""
    return named.value_type is ValueType.TEXT


def face_of(named: Declared, like: str = "") -> str:
    """The number format on a paper: no more digits than a hand needs, a dash for zero, a date as a date."""
    if is_words(named):
        return ""
    unit_text = like or named.unit_text
    return dashed(_FACES.get(unit_text) or (number_format(unit_text) if like else format_of(named)))


def unit_beside(named: Declared) -> str:
    """The unit that stands beside a number; none for words and money, and none for a count, which its label names."""
    bare = is_words(named) or named.unit_shown.startswith("$") or named.unit_shown in COUNTS
    return "" if bare else named.unit_shown


def whole_of(fact: paper.Fact) -> tuple[Declared, int]:
    """What a fact shows, and its row: the total of a line that has one, unless a row of it is named."""
    named = fact.named
    assert named is not None
    if fact.row is None and isinstance(named, Line) and named.all_rows is not None:
        return named.all_rows, 0
    return named, fact.row or 0


def bring(page: Page, desk: PaperContext, fact: paper.Fact, flush: bool, col: int = VALUE) -> None:
    """The value of a fact: flush left with its unit behind it, or to the right with its unit in the next column."""
    named, row = whole_of(fact)
    face, unit = face_of(named, fact.like), unit_beside(named)
    if flush and unit:
        face = ";".join(part if part == '"-"' else f'{part} "{unit}"' for part in face.split(";"))
    role = ("loud" if flush else "loudfigure") if fact.loud else "line" if flush else "figure"
    wraps = flush and len(page.widths) == len(WORDY_GRID) and is_words(named)
    text = desk.text_of(named, row, page.name, fact.otherwise)
    value = desk.value_of(named, row, fact.otherwise)
    page.put(Linked(page.row, col, "sentence" if wraps and not fact.loud else role, text, value, face, wraps=wraps))
    if unit and not flush:
        page.put(FixedText(page.row, col + 1, "unit", unit))


def spread_words(text: str, width: float) -> list[str]:
    """A fixed sentence in as many lines as it takes across ``width``."""
    lines: list[str] = []
    for word in text.split(" "):
        if lines and lines_of(f"{lines[-1]} {word}", width) == 1:
            lines[-1] = f"{lines[-1]} {word}"
        else:
            lines.append(word)
    return lines
