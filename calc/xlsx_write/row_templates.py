"""A sheet cast once for all jobs of its shape: its rows as they stand in the file, with gaps for what a job puts in.

The rows are mark for mark those that the writer makes of the same cells, cell by cell, in three times the time; a test
holds one against the other. They are in the terms of the file format: ECMA-376 Part 1, 18.3.1 (rows and cells).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import groupby, pairwise
from math import isfinite
from operator import itemgetter
from typing import NamedTuple

from calc.cell_text import MAX_TEXT, escape_control, rich_text_run, too_long, xml_escape
from calc.cells import column_letters
from calc.errors import Unreadable
from calc.layout.page import Page, Shown
from calc.layout.workbook import Cell, Style
from calc.model.results import JobValues

_SPANNING = 16
"""Rows that say together which columns they span."""

_PIXELS, _UNSAID = 4 / 3, 20
"""Pixels of a point, and of a row that does not say how high it is."""


class _OwnRow(NamedTuple):
    """A row that is as high as the job's own words in it ask."""

    row: int
    span: str
    pieces: tuple[_Piece, ...]
    end: str


_Piece = tuple[str, str | Cell | _OwnRow]
"""Text of the file, and what comes in the gap behind it: the number of fixed words, what a cell shows, or a row."""


@dataclass(frozen=True)
class Rendered:
    """The rows of a sheet for one job, and how high those are that say so, in points."""

    rows: str
    heights: dict[int, float]


@dataclass(frozen=True)
class SheetTemplate:
    """The rows of a sheet without what a job puts in."""

    page: Page
    pieces: tuple[_Piece, ...]
    end: str
    cells: Sequence[Cell]
    numbers: dict[Style, int]
    """The number of each look among the formats of the workbook, in the order in which they are met."""

    @cached_property
    def rows(self) -> int:
        """How many rows down its cells go."""
        return max((cell.row for cell in self.cells), default=0) + 1

    @cached_property
    def cols(self) -> int:
        """How many columns to the right its cells go."""
        return max((cell.col for cell in self.cells), default=0) + 1

    @cached_property
    def by_place(self) -> dict[tuple[int, int], Cell]:
        """Its cells by row and column."""
        return {(cell.row, cell.col): cell for cell in self.cells}

    def render(self, job: JobValues | None, shared: Callable[[str], int]) -> Rendered:
        """The rows for a job; ``shared`` gives each text its number among the strings of the workbook.

        :raises Unreadable: for a value that no cell can hold.
        """
        to = _Rendering(self.page, job, shared, dict(self.page.heights))
        return Rendered(to.joined(self.pieces, self.end), to.heights)


def sheet_template(page: Page, cells: Iterable[Cell], number: Callable[[Style], int]) -> SheetTemplate:
    """The cast of a page with these cells; ``number`` is that of a look.

    :raises ValueError: when two cells stand in one place.
    """
    mold, ordered = _RowTemplate(), in_order(cells)
    for cell, following in pairwise(ordered):
        if cell[:2] == following[:2]:
            raise ValueError(f"two cells of {page.name} stand in {column_letters(cell.col + 1)}{cell.row + 1}")
    numbers = {look: number(look) for look in dict.fromkeys(cell.look for cell in ordered)}
    by_row = {row: list(of_row) for row, of_row in groupby(ordered, itemgetter(0))}
    spans = _spans(by_row)
    for row in sorted(by_row.keys() | page.heights.keys()):
        of_row, span, height = by_row.get(row, []), spans.get(row, ""), page.heights.get(row)
        if any(cell.own_words for cell in of_row):
            within = _RowTemplate()
            within.cells(of_row, numbers)
            mold.gap(_OwnRow(row, span, tuple(within.pieces), within.end))
        elif of_row:
            mold.text.append(f"<row {_row(row, span, height)}>")
            mold.cells(of_row, numbers)
            mold.text.append("</row>")
        else:
            mold.text.append(f"<row {_row(row, span, height)}/>")
    return SheetTemplate(page, tuple(mold.pieces), mold.end, ordered, numbers)


class StreamedRow(NamedTuple):
    """A row of a sheet that grows: its number from 0, the columns that its cells go to, and its text."""

    number: int
    cols: int
    text: str


def streamed(
    page: Page, cells: Iterable[Cell], number: Callable[[Style], int], shared: Callable[[str], int]
) -> Iterator[StreamedRow]:
    """The rows of a sheet that is of no one job, one at a time: its cells come row by row."""
    to = _Rendering(page, None, shared, dict(page.heights))
    for row, of_row in groupby(cells, itemgetter(0)):
        ordered = in_order(of_row)
        text = "".join(_opened(cell, number(cell.look)) + to.filled(cell) for cell in ordered)
        yield StreamedRow(row, ordered[-1].col + 1, f"<row {_row(row, '', to.heights.get(row))}>{text}</row>")


def in_order(cells: Iterable[Cell]) -> list[Cell]:
    """Cells from left to right and down, as they stand in the file."""
    return sorted(cells, key=itemgetter(0, 1))


class _RowTemplate:
    """Text and gaps while they are put together."""

    def __init__(self) -> None:
        self.pieces: list[_Piece] = []
        self.text: list[str] = []

    @property
    def end(self) -> str:
        """The text behind the last gap."""
        return "".join(self.text)

    def gap(self, gap: str | Cell | _OwnRow) -> None:
        """A gap behind all the text so far."""
        self.pieces.append((self.end, gap))
        self.text = []

    def cells(self, cells: Iterable[Cell], numbers: Mapping[Style, int]) -> None:
        """The cells of a row."""
        for cell in cells:
            self.text.append(_opened(cell, numbers[cell.look]))
            if not cell.fixed:
                self.gap(cell)
                continue
            value = cell.shows(None)
            if isinstance(value, str) and value:
                self.text.append(' t="s"><v>')
                self.gap(_held(value))
            else:
                self.text.append(_blank_or_number(value))


@dataclass(frozen=True, slots=True)
class _Rendering:
    """A job on its way into a sheet, the numbers of the strings of its workbook, and how high its rows become."""

    page: Page
    job: JobValues | None
    shared: Callable[[str], int]
    heights: dict[int, float]

    def joined(self, pieces: Iterable[_Piece], end: str) -> str:
        """Text with its gaps filled."""
        text: list[str] = []
        for before, gap in pieces:
            text.append(before)
            if isinstance(gap, str):
                text.append(f"{self.shared(rich_text_run(gap))}</v></c>")
            else:
                text.append(self.filled(gap) if isinstance(gap, Cell) else self._own_row(gap))
        return "".join([*text, end])

    def _own_row(self, own: _OwnRow) -> str:
        cells = self.joined(own.pieces, own.end)
        return f"<row {_row(own.row, own.span, self.heights.get(own.row))}>{cells}</row>"

    def filled(self, cell: Cell) -> str:
        """What stands in a cell: a formula and what it comes to, a number, words, or nothing."""
        value = cell.shows(self.job)
        if cell.own_words and isinstance(value, str):
            self.page.stretch(self.heights, cell.row, value, cell.col)
        formula = cell.formula_for(self.job)
        if formula:
            if isinstance(value, str):
                kind, result = ' t="str"' if value else "", xml_escape(escape_control(_held(value)))
            else:
                kind, result = "", str(_finite(value))
            return f"{kind}><f>{xml_escape(formula)}</f><v>{result}</v></c>"
        if isinstance(value, str) and value:
            return f' t="s"><v>{self.shared(rich_text_run(_held(value)))}</v></c>'
        return _blank_or_number(value)


def _opened(cell: Cell, number: int) -> str:
    """The beginning of a cell with the number of its look."""
    return f'<c r="{column_letters(cell.col + 1)}{cell.row + 1}" s="{number}"'


def _spans(by_row: Mapping[int, Sequence[Cell]]) -> dict[int, str]:
    """The columns that the rows of each band span, from 1, by row."""
    spans: dict[int, str] = {}
    last = max(by_row, default=-1)
    for start in range(0, last + 1, _SPANNING):
        band = [by_row[row] for row in range(start, start + _SPANNING) if row in by_row]
        if band:
            span = f"{min(row[0].col for row in band) + 1}:{max(row[-1].col for row in band) + 1}"
            spans |= dict.fromkeys(range(start, start + _SPANNING), span)
    return spans


def _row(row: int, span: str, height: float | None) -> str:
    """The attributes of a row."""
    spanned = f' spans="{span}"' if span else ""
    pixels = _UNSAID if height is None else int(height * _PIXELS + 0.5)
    high = f' ht="{pixels * 0.75:.16g}" customHeight="1"' if pixels != _UNSAID else ""
    return f'r="{row + 1}"{spanned}{high}'


def _blank_or_number(value: Shown) -> str:
    if value is None or isinstance(value, str):
        return "/>"
    return f"><v>{_finite(value):.16G}</v></c>"


def _finite(value: float | None) -> float:
    if value is None or not isfinite(value):
        raise Unreadable(f"a cell would hold {value}, which is no number")
    return value


def _held(words: str) -> str:
    """Words that a cell can hold."""
    if too_long(words):
        raise Unreadable(f"a cell would hold more than {MAX_TEXT:,} letters")
    return words
