"""Row templates: the rows of a sheet as text of the file, with placeholders for the values of a job.

A template is built once for all jobs of one shape, and rendered for each job. The rendered rows are byte for byte those
that xlsxwriter writes for the same cells, which takes three times as long; a test compares the two. They are in the
terms of the file format: ECMA-376 Part 1, 18.3.1 (rows and cells).
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
from calc.layout.page import CellValue, Page, default_height, details_of
from calc.layout.workbook import Cell, Style
from calc.model.results import JobValues

_SPANNING = 16
"""The number of rows in a block that states its columns together (the attribute ``spans``)."""

_PIXELS_PER_POINT, _DEFAULT_PIXELS = 4 / 3, 20
"""Pixels of a point, and the height in pixels of a row that sets none."""


class _VariableRow(NamedTuple):
    """A row whose height depends on the job's own words in it."""

    row: int
    span: str
    pieces: tuple[_Piece, ...]
    end: str


_Piece = tuple[str, str | Cell | _VariableRow]
"""Text of the file, and the placeholder after it: fixed words (by their string number), a cell, or a row."""


@dataclass(frozen=True)
class Rendered:
    """The rows of a sheet for one job, and the heights of the rows that set one, in points."""

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
    """The number of each style among the formats of the workbook, in the order in which the cells use them."""

    @cached_property
    def rows(self) -> int:
        """The number of rows down to its last cell."""
        return max((cell.row for cell in self.cells), default=0) + 1

    @cached_property
    def cols(self) -> int:
        """The number of columns to its rightmost cell."""
        return max((cell.col for cell in self.cells), default=0) + 1

    @cached_property
    def by_place(self) -> dict[tuple[int, int], Cell]:
        """Its cells by row and column."""
        return {(cell.row, cell.col): cell for cell in self.cells}

    def render(self, job: JobValues | None, shared: Callable[[str], int]) -> Rendered:
        """The rows for a job; ``shared`` gives each text its number among the shared strings of the workbook.

        :raises Unreadable: for a value that a cell cannot have.
        """
        to = _Rendering(self.page, job, shared, dict(self.page.heights))
        return Rendered(to.render(self.pieces, self.end), to.heights)


def sheet_template(page: Page, cells: Iterable[Cell], number: Callable[[Style], int]) -> SheetTemplate:
    """The row template of a page with these cells; ``number`` gives the format number of a style.

    :raises ValueError: when two cells have the same address.
    """
    template, ordered = _RowTemplate(), in_order(cells)
    for cell, following in pairwise(ordered):
        if cell[:2] == following[:2]:
            raise ValueError(f"two cells of {page.name} have the address {column_letters(cell.col + 1)}{cell.row + 1}")
    numbers = {look: number(look) for look in dict.fromkeys(cell.style for cell in ordered)}
    by_row = {row: list(of_row) for row, of_row in groupby(ordered, itemgetter(0))}
    spans, details = _spans(by_row), details_of(page)
    for row in sorted(by_row.keys() | page.heights.keys()):
        of_row, span, height = by_row.get(row, []), spans.get(row, ""), page.heights.get(row)
        detail = row in details
        if any(cell.own_words for cell in of_row):
            within = _RowTemplate()
            within.cells(of_row, numbers)
            template.placeholder(_VariableRow(row, span, tuple(within.pieces), within.end))
        elif of_row:
            template.text.append(f"<row {_row_attributes(row, span, height, detail)}>")
            template.cells(of_row, numbers)
            template.text.append("</row>")
        else:
            template.text.append(f"<row {_row_attributes(row, span, height, detail)}/>")
    return SheetTemplate(page, tuple(template.pieces), template.end, ordered, numbers)


class StreamedRow(NamedTuple):
    """A row of a streamed sheet: its number from 0, its number of columns, and its text."""

    number: int
    cols: int
    text: str


def streamed_rows(
    page: Page, cells: Iterable[Cell], number: Callable[[Style], int], shared: Callable[[str], int]
) -> Iterator[StreamedRow]:
    """The rows of a sheet that belongs to no one job, one at a time, from cells that come row by row."""
    to, usual = _Rendering(page, None, shared, dict(page.heights)), default_height(page)
    for row, of_row in groupby(cells, itemgetter(0)):
        ordered = in_order(of_row)
        text = "".join(_cell_start(cell, number(cell.style)) + to.cell_content(cell) for cell in ordered)
        yield StreamedRow(
            row, ordered[-1].col + 1, f"<row {_row_attributes(row, '', to.heights.get(row, usual))}>{text}</row>"
        )


def in_order(cells: Iterable[Cell]) -> list[Cell]:
    """Cells in the order of the file: row by row, each from left to right."""
    return sorted(cells, key=itemgetter(0, 1))


class _RowTemplate:
    """A row template while it is built: text and placeholders."""

    def __init__(self) -> None:
        self.pieces: list[_Piece] = []
        self.text: list[str] = []

    @property
    def end(self) -> str:
        """The text after the last placeholder."""
        return "".join(self.text)

    def placeholder(self, hole: str | Cell | _VariableRow) -> None:
        """Adds a placeholder after all the text so far."""
        self.pieces.append((self.end, hole))
        self.text = []

    def cells(self, cells: Iterable[Cell], numbers: Mapping[Style, int]) -> None:
        """Adds the cells of a row."""
        for cell in cells:
            self.text.append(_cell_start(cell, numbers[cell.style]))
            if not cell.fixed:
                self.placeholder(cell)
                continue
            value = cell.shows(None)
            if isinstance(value, str) and value:
                self.text.append(' t="s"><v>')
                self.placeholder(_fitting(value))
            else:
                self.text.append(_blank_or_number(value))


@dataclass(frozen=True, slots=True)
class _Rendering:
    """The rendering of a sheet for one job: the numbers of its strings, and the heights of its rows so far."""

    page: Page
    job: JobValues | None
    shared: Callable[[str], int]
    heights: dict[int, float]

    def render(self, pieces: Iterable[_Piece], end: str) -> str:
        """Text with its placeholders filled in."""
        text: list[str] = []
        for before, hole in pieces:
            text.append(before)
            if isinstance(hole, str):
                text.append(f"{self.shared(rich_text_run(hole))}</v></c>")
            else:
                text.append(self.cell_content(hole) if isinstance(hole, Cell) else self._variable_row(hole))
        return "".join([*text, end])

    def _variable_row(self, own: _VariableRow) -> str:
        cells = self.render(own.pieces, own.end)
        detail = own.row in details_of(self.page)
        return f"<row {_row_attributes(own.row, own.span, self.heights.get(own.row), detail)}>{cells}</row>"

    def cell_content(self, cell: Cell) -> str:
        """The content of a cell: a formula with its value, a number, words, or nothing."""
        value = cell.shows(self.job)
        if cell.own_words and isinstance(value, str):
            self.page.fit_height(self.heights, cell.row, value, cell.col)
        formula = cell.formula_for(self.job)
        if formula:
            if isinstance(value, str):
                kind, result = ' t="str"' if value else "", xml_escape(escape_control(_fitting(value)))
            else:
                kind, result = "", str(_finite(value))
            return f"{kind}><f>{xml_escape(formula)}</f><v>{result}</v></c>"
        if isinstance(value, str) and value:
            return f' t="s"><v>{self.shared(rich_text_run(_fitting(value)))}</v></c>'
        return _blank_or_number(value)


def _cell_start(cell: Cell, number: int) -> str:
    """The start tag of a cell, with the number of its format."""
    return f'<c r="{column_letters(cell.col + 1)}{cell.row + 1}" s="{number}"'


def _spans(by_row: Mapping[int, Sequence[Cell]]) -> dict[int, str]:
    """The columns that the rows of each block span, from 1, by row."""
    spans: dict[int, str] = {}
    last = max(by_row, default=-1)
    for start in range(0, last + 1, _SPANNING):
        block = [by_row[row] for row in range(start, start + _SPANNING) if row in by_row]
        if block:
            span = f"{min(row[0].col for row in block) + 1}:{max(row[-1].col for row in block) + 1}"
            spans |= dict.fromkeys(range(start, start + _SPANNING), span)
    return spans


def _row_attributes(row: int, span: str, height: float | None, detail: bool = False) -> str:
    """The attributes of a row of so many points; None for the default height. An outline folds a ``detail`` away."""
    spanned = f' spans="{span}"' if span else ""
    pixels = _DEFAULT_PIXELS if height is None else int(height * _PIXELS_PER_POINT + 0.5)
    high = f' ht="{pixels * 0.75:.16g}" customHeight="1"' if pixels != _DEFAULT_PIXELS else ""
    folded = ' outlineLevel="1"' if detail else ""
    return f'r="{row + 1}"{spanned}{high}{folded}'


def _blank_or_number(value: CellValue) -> str:
    if value is None or isinstance(value, str):
        return "/>"
    return f"><v>{_finite(value):.16G}</v></c>"


def _finite(value: float | None) -> float:
    if value is None or not isfinite(value):
        raise Unreadable(f"a cell would have the value {value}, which is not a number")
    return value


def _fitting(words: str) -> str:
    """Words that fit a cell. Raises Unreadable for longer ones."""
    if too_long(words):
        raise Unreadable(f"a cell would have more than {MAX_TEXT:,} characters")
    return words
