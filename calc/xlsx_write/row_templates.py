"""Row templates: the rows of a sheet as XML, made once for all jobs of its shape, with gaps for the values of a job.

The rows are the same characters that the writer makes of the same cells, cell by cell, in three times the time; a
test compares the two. The names are those of the file format: ECMA-376 Part 1, 18.3.1 (rows and cells).
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
from calc.layout.page import CellValue, Page
from calc.layout.workbook import Cell, Style
from calc.model.results import JobValues

_SPANNING = 16
"""Rows that share one span of columns."""

_PIXELS, _DEFAULT_PIXELS = 4 / 3, 20
"""Pixels of a point, and of a row without a height."""


class _OwnRow(NamedTuple):
    """A row whose height depends on the text of the job."""

    row: int
    span: str
    pieces: tuple[_Piece, ...]
    end: str


_Piece = tuple[str, str | Cell | _OwnRow]
"""Text of the file, and the gap after it: a fixed text by its number, the value of a cell, or a row."""


@dataclass(frozen=True)
class Rendered:
    """The rows of a sheet for one job, and the heights that are set, in points."""

    rows: str
    heights: dict[int, float]


@dataclass(frozen=True)
class SheetTemplate:
    """The rows of a sheet without the values of a job."""

    page: Page
    pieces: tuple[_Piece, ...]
    end: str
    cells: Sequence[Cell]
    numbers: dict[Style, int]
    """The number of each style among the formats of the workbook, in order of first use."""

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

        :raises Unreadable: for a value that no cell can have.
        """
        to = _Rendering(self.page, job, shared, dict(self.page.heights))
        return Rendered(to.joined(self.pieces, self.end), to.heights)


def sheet_template(page: Page, cells: Iterable[Cell], number: Callable[[Style], int]) -> SheetTemplate:
    """The template of a page with these cells; ``number`` gives the number of a style.

    :raises ValueError: when two cells have one address.
    """
    template, ordered = _RowTemplate(), in_order(cells)
    for cell, following in pairwise(ordered):
        if cell[:2] == following[:2]:
            raise ValueError(f"two cells of {page.name} have the address {column_letters(cell.col + 1)}{cell.row + 1}")
    numbers = {style: number(style) for style in dict.fromkeys(cell.style for cell in ordered)}
    by_row = {row: list(of_row) for row, of_row in groupby(ordered, itemgetter(0))}
    spans = _spans(by_row)
    for row in sorted(by_row.keys() | page.heights.keys()):
        of_row, span, height = by_row.get(row, []), spans.get(row, ""), page.heights.get(row)
        if any(cell.own_words for cell in of_row):
            within = _RowTemplate()
            within.cells(of_row, numbers)
            template.gap(_OwnRow(row, span, tuple(within.pieces), within.end))
        elif of_row:
            template.text.append(f"<row {_row(row, span, height)}>")
            template.cells(of_row, numbers)
            template.text.append("</row>")
        else:
            template.text.append(f"<row {_row(row, span, height)}/>")
    return SheetTemplate(page, tuple(template.pieces), template.end, ordered, numbers)


class StreamedRow(NamedTuple):
    """A row of a sheet that grows: its number from 0, its count of columns, and its text."""

    number: int
    cols: int
    text: str


def streamed(
    page: Page, cells: Iterable[Cell], number: Callable[[Style], int], shared: Callable[[str], int]
) -> Iterator[StreamedRow]:
    """The rows of a sheet of the week's workbook, one at a time; its cells come row by row."""
    to = _Rendering(page, None, shared, dict(page.heights))
    for row, of_row in groupby(cells, itemgetter(0)):
        ordered = in_order(of_row)
        text = "".join(_cell_start(cell, number(cell.style)) + to.filled(cell) for cell in ordered)
        yield StreamedRow(row, ordered[-1].col + 1, f"<row {_row(row, '', to.heights.get(row))}>{text}</row>")


def in_order(cells: Iterable[Cell]) -> list[Cell]:
    """Cells from left to right and down, the order of the file."""
    return sorted(cells, key=itemgetter(0, 1))


class _RowTemplate:
    """Text and gaps of a template in the making."""

    def __init__(self) -> None:
        self.pieces: list[_Piece] = []
        self.text: list[str] = []

    @property
    def end(self) -> str:
        """The text after the last gap."""
        return "".join(self.text)

    def gap(self, gap: str | Cell | _OwnRow) -> None:
        """Adds a gap after the text so far."""
        self.pieces.append((self.end, gap))
        self.text = []

    def cells(self, cells: Iterable[Cell], numbers: Mapping[Style, int]) -> None:
        """The cells of a row."""
        for cell in cells:
            self.text.append(_cell_start(cell, numbers[cell.style]))
            if not cell.fixed:
                self.gap(cell)
                continue
            value = cell.shows(None)
            if isinstance(value, str) and value:
                self.text.append(' t="s"><v>')
                self.gap(_checked_text(value))
            else:
                self.text.append(_blank_or_number(value))


@dataclass(frozen=True, slots=True)
class _Rendering:
    """The rendering of one job: the numbers of the strings of its workbook, and the row heights."""

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
        """The content of a cell: a formula with its value, a number, text, or nothing."""
        value = cell.shows(self.job)
        if cell.own_words and isinstance(value, str):
            self.page.fit_height(self.heights, cell.row, value, cell.col)
        formula = cell.formula_for(self.job)
        if formula:
            if isinstance(value, str):
                kind, result = ' t="str"' if value else "", xml_escape(escape_control(_checked_text(value)))
            else:
                kind, result = "", str(_finite(value))
            return f"{kind}><f>{xml_escape(formula)}</f><v>{result}</v></c>"
        if isinstance(value, str) and value:
            return f' t="s"><v>{self.shared(rich_text_run(_checked_text(value)))}</v></c>'
        return _blank_or_number(value)


def _cell_start(cell: Cell, number: int) -> str:
    """The start of a cell, with the number of its style."""
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
    pixels = _DEFAULT_PIXELS if height is None else int(height * _PIXELS + 0.5)
    high = f' ht="{pixels * 0.75:.16g}" customHeight="1"' if pixels != _DEFAULT_PIXELS else ""
    return f'r="{row + 1}"{spanned}{high}'


def _blank_or_number(value: CellValue) -> str:
    if value is None or isinstance(value, str):
        return "/>"
    return f"><v>{_finite(value):.16G}</v></c>"


def _finite(value: float | None) -> float:
    if value is None or not isfinite(value):
        raise Unreadable(f"a cell would have the value {value}, which is not a number")
    return value


def _checked_text(words: str) -> str:
    """Text that fits in a cell."""
    if too_long(words):
        raise Unreadable(f"a cell would have more than {MAX_TEXT:,} characters")
    return words
