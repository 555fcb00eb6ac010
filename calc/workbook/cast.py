"""A sheet cast once for all jobs of its shape: its rows as they stand in the file, with gaps for what a job puts in.

The rows are mark for mark those that the writer makes of the same cells, cell by cell, in four times the time; a test
holds one against the other. They are in the terms of the file format: ECMA-376 Part 1, 18.3.1 (rows and cells) and
22.9.2.19 (texts).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from itertools import groupby, pairwise
from math import isfinite
from operator import itemgetter

from calc.cells import column_letters
from calc.errors import Unreadable
from calc.workbook.looks import LINE_HEIGHT
from calc.workbook.page import Page, Shown
from calc.workbook.plan import Cell
from calc.workbook.values import JobValues

Look = tuple[str, str]
"""What decides how a cell looks: its role and its number format."""

Job = JobValues | None
"""None for a sheet that is of no one job."""

MAX_TEXT = 32_767
"""UTF-16 units of the text of a cell: the most that every spreadsheet program takes."""

_SPANNING = 16
"""Rows that say together which columns they span."""

_PIXELS, _UNSAID = 4 / 3, 20
"""Pixels of a point, and of a row that does not say how high it is."""

_CODED = re.compile(r"_(?=x[0-9a-fA-F]{4}_)")
_CONTROL = re.compile("[\x00-\x08\x0b-\x1f\ufffe\uffff]")
_MARKS = re.compile("[&<>]")


@dataclass(frozen=True, slots=True)
class _Pouring:
    """A job on its way into a sheet, the numbers of the strings of its workbook, and how high its rows become."""

    job: Job
    shared: Callable[[str], int]
    heights: dict[int, float] = field(default_factory=dict)


_Gap = Callable[[_Pouring], str]
_Piece = tuple[str, _Gap]
"""Text of the file, and the gap behind it."""


@dataclass(frozen=True)
class Poured:
    """The rows of a sheet for one job, and how high those are that hold words of its own."""

    rows: str
    heights: dict[int, float]


@dataclass(frozen=True)
class Cast:
    """The rows of a sheet without what a job puts in."""

    pieces: tuple[_Piece, ...]
    end: str
    cells: Sequence[Cell]
    numbers: dict[Look, int]
    """The number of each look among the formats of the workbook, in the order in which they are met."""
    corners: tuple[tuple[int, int], tuple[int, int]]
    """The first and the last cell of all that the sheet says something of."""

    @property
    def rows(self) -> int:
        """How many rows down its cells go."""
        return max((cell.row for cell in self.cells), default=0) + 1

    @property
    def cols(self) -> int:
        """How many columns to the right its cells go."""
        return max((cell.col for cell in self.cells), default=0) + 1

    @cached_property
    def by_place(self) -> dict[tuple[int, int], Cell]:
        """Its cells by row and column."""
        return {(cell.row, cell.col): cell for cell in self.cells}

    def pour(self, job: Job, shared: Callable[[str], int]) -> Poured:
        """The rows for a job; ``shared`` gives each text its number among the strings of the workbook.

        :raises Unreadable: for a value that no cell can hold.
        """
        to = _Pouring(job, shared)
        return Poured(_joined(self.pieces, to) + self.end, to.heights)


def _joined(pieces: Iterable[_Piece], to: _Pouring) -> str:
    text: list[str] = []
    for before, gap in pieces:
        text.append(before)
        text.append(gap(to))
    return "".join(text)


class _Mold:
    """Text and gaps while they are put together."""

    def __init__(self) -> None:
        self.pieces: list[_Piece] = []
        self.text: list[str] = []

    def gap(self, gap: _Gap) -> None:
        """A gap behind all the text so far."""
        self.pieces.append(("".join(self.text), gap))
        self.text = []


def cast(page: Page, cells: Iterable[Cell], number: Callable[[Look], int]) -> Cast:
    """The cast of a page with these cells; ``number`` is that of a look.

    :raises ValueError: when two cells stand in one place.
    """
    mold, ordered = _Mold(), in_order(cells)
    for cell, following in pairwise(ordered):
        if cell[:2] == following[:2]:
            raise ValueError(f"two cells of {page.name} stand in {column_letters(cell.col + 1)}{cell.row + 1}")
    numbers = {look: number(look) for look in dict.fromkeys((cell.role, cell.format) for cell in ordered)}
    by_row = {row: list(of_row) for row, of_row in groupby(ordered, itemgetter(0))}
    spans = _spans(by_row)
    for row in sorted(by_row.keys() | page.heights.keys()):
        of_row = by_row.get(row, [])
        if any(cell.own_words for cell in of_row):
            within = _Mold()
            _cast_cells(within, of_row, numbers, page)
            mold.gap(_own_row(row, spans[row], page.heights.get(row), within))
        elif of_row:
            mold.text.append(f"<row {_row(row, spans[row], page.heights.get(row))}>")
            _cast_cells(mold, of_row, numbers, page)
            mold.text.append("</row>")
        else:
            mold.text.append(f"<row {_row(row, spans.get(row, ''), page.heights[row])}/>")
    return Cast(tuple(mold.pieces), "".join(mold.text), ordered, numbers, _corners(page, ordered))


def _corners(page: Page, cells: Sequence[Cell]) -> tuple[tuple[int, int], tuple[int, int]]:
    rows = [*page.heights, *(cell.row for cell in cells)] or [0]
    cols = [cell.col for cell in cells] or [0]
    return (min(rows), 0 if page.heights else min(cols)), (max(rows), max(cols))


def in_order(cells: Iterable[Cell]) -> list[Cell]:
    """Cells from left to right and down, as they stand in the file."""
    return sorted(cells, key=itemgetter(0, 1))


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


def _own_row(row: int, span: str, height: float | None, mold: _Mold) -> _Gap:
    """A row that is as high as the job's own words in it ask."""
    pieces, end = tuple(mold.pieces), "".join(mold.text)

    def gap(to: _Pouring) -> str:
        cells = _joined(pieces, to)
        return f"<row {_row(row, span, to.heights.get(row, height))}>{cells}{end}</row>"

    return gap


def _cast_cells(mold: _Mold, cells: Iterable[Cell], numbers: Mapping[Look, int], page: Page) -> None:
    for cell in cells:
        mold.text.append(f'<c r="{column_letters(cell.col + 1)}{cell.row + 1}" s="{numbers[cell.role, cell.format]}"')
        if cell.fixed:
            _cast_fixed(mold, cell.value(None))  # type: ignore[arg-type]  # it is the same for every job
        else:
            value = _valued(cell, page)
            mold.gap(_result(cell.formula, value) if cell.formula else _own(cell, value))


def _cast_fixed(mold: _Mold, value: Shown) -> None:
    if isinstance(value, str) and value:
        mold.text.append(' t="s"><v>')
        mold.gap(_words(_held(value)))
    else:
        mold.text.append(_blank_or_number(value))


def _words(words: str) -> _Gap:
    """The number of fixed words."""
    run = as_run(words)
    return lambda to: f"{to.shared(run)}</v></c>"


def _valued(cell: Cell, page: Page) -> Callable[[_Pouring], Shown]:
    """What a cell shows for a job; its row is made high enough where the words are the job's own."""

    def value(to: _Pouring) -> Shown:
        return cell.value(to.job)  # type: ignore[arg-type]  # the cells of a sheet that is of no one job ask none

    def value_with_room(to: _Pouring) -> Shown:
        shown = value(to)
        if isinstance(shown, str):
            least = to.heights.get(cell.row) or page.heights.get(cell.row, LINE_HEIGHT)
            to.heights[cell.row] = max(least, page.height_of(shown, cell.col))
        return shown

    return value_with_room if cell.own_words else value


def _result(formula: str, value: Callable[[_Pouring], Shown]) -> _Gap:
    """A formula and what it comes to."""
    number, words = (f"{kind}><f>{_marked(formula)}</f><v>" for kind in ("", ' t="str"'))

    def gap(to: _Pouring) -> str:
        result = value(to)
        if isinstance(result, str):
            return f"{words if result else number}{_marked(spelled(_held(result)))}</v></c>"
        return f"{number}{_finite(result)}</v></c>"

    return gap


def _own(cell: Cell, value: Callable[[_Pouring], Shown]) -> _Gap:
    """A cell that each job has of its own: the arithmetic that was typed, a number, words, or nothing."""

    def gap(to: _Pouring) -> str:
        if cell.arithmetic is not None and to.job is not None:
            formula = cell.arithmetic(to.job)
            if formula:
                return _result(formula, value)(to)
        shown = value(to)
        if isinstance(shown, str) and shown:
            return f' t="s"><v>{to.shared(as_run(_held(shown)))}</v></c>'
        return _blank_or_number(shown)

    return gap


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
    if len(words) > MAX_TEXT // 2 and len(words.encode("utf-16-le")) > 2 * MAX_TEXT:
        raise Unreadable(f"a cell would hold more than {MAX_TEXT:,} letters")
    return words


def _marked(text: str) -> str:
    """Text between two tags."""
    if _MARKS.search(text):
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
    return text


def as_run(words: str) -> str:
    """Words for the writer's table of strings, which passes on as it stands whatever looks like runs of rich text."""
    if words.startswith("<r>") and words.endswith("</r>"):
        return f'<r><t xml:space="preserve">{_marked(words)}</t></r>'
    return words


def spelled(words: str) -> str:
    """Words with what XML cannot carry spelled as ``_x0001_``, and what looks like that spelled apart from it."""
    if "_x" in words:
        words = _CODED.sub("_x005F_", words)
    return _CONTROL.sub(lambda found: f"_x{ord(found[0]):04X}_", words)
