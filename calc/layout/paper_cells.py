"""Cells of a paper: a number or text brought from its own cell, and what is shown where there is none."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from calc.declared import Declared, Input, Kind, Line, paper
from calc.declared.paper import DASH
from calc.formula.functions import NONE
from calc.formula.levels import Level
from calc.formula.value_types import ValueType
from calc.intake.records import JobInput
from calc.layout.addresses import CellMap, span
from calc.layout.arial import pixels
from calc.layout.checks_sheet import ChecksPage
from calc.layout.page import CellValue, FixedText, FullSizePage, Linked, Page
from calc.layout.row_keys import row_word
from calc.layout.shown import cell_value, format_of
from calc.layout.styles import COUNT_FORMAT, dashed, number_format
from calc.layout.text_width import wrapped
from calc.layout.week_dates import COMPANY_DATE
from calc.model.results import JobValues
from calc.trade.levels import AREA
from calc.units.algebra import COUNTS, DATE

LABEL, VALUE, UNIT = 0, 1, 2
"""The first columns of every paper."""

WIDE = 30.0
"""A column is for wrapped text that is at least so wide."""

GRIDS = {
    paper.Columns.EVEN: (21.4, 11.0, *(8.7,) * 7),
    paper.Columns.WORDS: (20.0, 44.2, 6.6, 7.2, 11.0, 6.6),
    paper.Columns.SUMS: (21.0, 33.0, 10.2, 10.2, 11.0, 10.2),
}
"""The column widths of a paper: they fit across it at full size, and a date fits where a fact may show one."""

ROW = 12.7
"""Points of a line of text on a paper."""

AS_IT_IS = "as it is"
"""In place of a unit: as many digits as the number has, for a column of many units."""

_LINE = 12.5
"""Points of each further line of a text that is wrapped."""

SURE = 0.86
"""The share of a column that a text may fill: it is measured in the letters of a sheet to work on, which are smaller,
and no two programs break lines alike."""

_FORMATS = {"yd3": "#,##0.00#", "psi": "#,##0", "min": "#,##0.0", "h": "#,##0.0", "%": "#,##0.0"}
"""Formats of a paper where a sheet of lines shows more digits."""


@dataclass(frozen=True)
class PaperContext:
    """What the layout of papers uses: all cell addresses, row counts, and the sheet Checks."""

    places: CellMap
    counts: Mapping[Level, int]
    checks: ChecksPage
    caution_slots: int

    @property
    def areas(self) -> int:
        """How many areas the job has."""
        return self.counts[AREA]

    def shows(self, part: paper.Part) -> bool:
        """Whether a part has any rows: a list of typed rows without any is left out."""
        match part:
            case paper.Table():
                return self.counts[part.level] > 0
            case paper.CompanyText():
                return self.counts[part.words.level] > 0
            case paper.Facts(only_with=Level() as level):
                return self.counts[level] > 0
            case paper.Facts(only_without=Level() as level):
                return self.counts[level] == 0
        return True

    def word(self, level: Level, index: int) -> Callable[[JobInput], CellValue]:
        """The name of a row."""
        return row_word(level, index, self.counts)

    def row_of(self, fact: paper.Fact) -> int | None:
        """The row (from 0) that a fact shows of a line with named rows; None in a job that does not have it."""
        if fact.named is None or fact.row is None or not fact.named.level.axis.words:
            return fact.row or 0
        places = fact.named.level.axis.places(self.counts)
        return places.index(fact.row) if fact.row in places else None

    def text_of(self, named: Declared, index: int, seen_from: str, otherwise: str = "") -> Callable[[], str]:
        """The formula that refers to one row, with ``otherwise`` where nothing was typed."""

        def text() -> str:
            if named in self.places.left_out:
                return self.places.one(named, index, seen_from)
            location = self.places.locations[named]
            cell = self.places.one(
                named, index, seen_from, "c" if location.block.level.axes and not location.block.across else "cr"
            )
            return f'IF({cell}="{NONE}","{otherwise}",{cell})' if otherwise and may_be_none(named) else cell

        return text

    def value_of(self, named: Declared, index: int, otherwise: str = "") -> Callable[[JobValues], CellValue]:
        """What that formula gives."""

        def value(job: JobValues) -> CellValue:
            found = cell_value(job.of(named, index))
            return otherwise if otherwise and found == NONE and may_be_none(named) else found

        return value


@dataclass(frozen=True)
class Boxes:
    """The boxes of a table in which a person types: their rows, their column, and that of the estimate beside them."""

    first: int
    last: int
    box: int
    estimate: int
    group: int
    """The column of the group of each row."""

    def span(self, col: int, sheet: str) -> str:
        """The range of a column of the table."""
        return span(sheet, (self.first, col), (self.last, col), sheet)


@dataclass
class PaperPage(FullSizePage):
    """A sheet in larger type, for a person who holds it in the hand. ``boxes`` are those of its table."""

    boxes: Boxes | None = None

    def height_of(self, text: str, col: int) -> float:
        """How high a row must be to show ``text`` wrapped in its column; no program takes more than 409 points."""
        room = pixels(self.widths[min(col, len(self.widths) - 1)]) * SURE
        lines = sum(len(wrapped(part, room)) for part in text.split("\n"))
        return min(409.0, (lines - 1) * _LINE + ROW)

    def fit(self, text: str, col: int, row: int | None = None) -> None:
        """Makes the row high enough to show ``text`` wrapped in its column."""
        place = self.row if row is None else row
        self.heights[place] = max(self.heights.get(place, ROW), self.height_of(text, col))


def may_be_none(named: Declared) -> bool:
    """Whether it may be left blank, so that its cell shows none."""
    return isinstance(named, Input) and (named.optional or named.kind is Kind.TEXT)


def is_words(named: Declared) -> bool:
    """Whether it is shown as text: a sentence, a choice, a name."""
    return named.value_type is ValueType.TEXT


def paper_format(named: Declared, like: str = "") -> str:
    """The number format on a paper: no more digits than are useful by hand, a dash for zero, a date as a date."""
    if is_words(named):
        return ""
    if named.unit_text == DATE:
        return COMPANY_DATE
    if like == AS_IT_IS:
        return dashed(COUNT_FORMAT)
    unit_text = like or named.unit_text
    return dashed(_FORMATS.get(unit_text) or (number_format(unit_text) if like else format_of(named)))


def unit_beside(named: Declared) -> str:
    """The unit beside a number; none for text and money, and none for a count, which its label names."""
    bare = is_words(named) or named.unit_shown.startswith("$") or named.unit_shown in COUNTS
    return "" if bare else named.unit_shown


def total_of(fact: paper.Fact, context: PaperContext) -> tuple[Declared, int]:
    """What a fact shows, and its row: the total of a line that has one, unless a row of it is named."""
    named = fact.named
    assert named is not None
    if fact.row is None and isinstance(named, Line) and named.all_rows is not None:
        return named.all_rows, 0
    return named, context.row_of(fact) or 0


NOTHING = frozenset({0.0, DASH, NONE, ""})
"""What a fact shows that there is none of."""


UNTIL_READY = "NOT READY"
"""What stands in place of the price of a bid that may not be sent."""


def put_fact(
    page: Page,
    context: PaperContext,
    fact: paper.Fact,
    flush: bool,
    col: int = VALUE,
    unless: tuple[str, Callable[[JobValues], bool]] | None = None,
) -> None:
    """The value of a fact: flush left with its unit behind it, or to the right with its unit in the next column.

    ``unless`` is a condition, as a formula and of a job, that holds it back: NOT READY stands in its place.
    """
    named, row = total_of(fact, context)
    if fact.if_any and named in context.places.left_out:
        return
    format_text, unit = paper_format(named, fact.like), unit_beside(named)
    if flush and unit and format_text != COMPANY_DATE:
        format_text = ";".join(part if part == '"-"' else f'{part} "{unit}"' for part in format_text.split(";"))
    role = _role(fact.prominent, flush, is_words(named))
    wraps = role == "paperline" and page.widths[col] >= WIDE and is_words(named)
    otherwise = "" if fact.if_any else fact.otherwise
    text, value = context.text_of(named, row, page.name, otherwise), context.value_of(named, row, otherwise)
    if unless is not None:
        text, value = _held_back(text, value, *unless)
    if fact.if_any:
        text, value = _only_if_any(text, value, is_words(named))
    role = "papersentence" if wraps else role
    page.put(Linked(page.row, col, role, text, value, format_text, wraps=wraps, optional=fact.if_any))
    if unit and not flush:
        page.put(FixedText(page.row, col + 1, "paperunit", unit))


def _role(prominent: bool, flush: bool, words: bool) -> str:
    """The style of a fact: a number shrinks before it would show ###, words run over to the right."""
    if flush and words:
        return "paperlarge" if prominent else "paperline"
    side = "left" if flush else ""
    return f"paperlargefigure{side}" if prominent else f"paperfigure{side}"


def _only_if_any(
    text: Callable[[], str], value: Callable[[JobValues], CellValue], words: bool
) -> tuple[Callable[[], str], Callable[[JobValues], CellValue]]:
    """The same, and nothing where there is none of it."""

    def found(job: JobValues) -> CellValue:
        shown = value(job)
        return "" if shown in NOTHING else shown

    def shown_text() -> str:
        cell = text()
        nothing = f'OR({cell}="",{cell}="{DASH}",{cell}="{NONE}")' if words else f'OR({cell}="",{cell}=0)'
        return f'IF({nothing},"",{cell})'

    return shown_text, found


def _held_back(
    text: Callable[[], str], value: Callable[[JobValues], CellValue], condition: str, holds: Callable[[JobValues], bool]
) -> tuple[Callable[[], str], Callable[[JobValues], CellValue]]:
    return (
        lambda: f'IF({condition},"{UNTIL_READY}",{text()})',
        lambda job: UNTIL_READY if holds(job) else value(job),
    )
