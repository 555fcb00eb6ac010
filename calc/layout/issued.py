"""What every box held when the workbook was written, and how many boxes hold something else now.

The values at issue stand to the right of the printed columns, each in the row of its box and as many columns over. The
boxes of a block are counted in one formula: what differs is found by operators alone, since not every spreadsheet
program works out a function for each cell of a range. A value that was typed as arithmetic stands there as the same
arithmetic: programs differ in the last digits of its result.

``changed_boxes`` and ``price_at_issue`` are what other sheets show of it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from calc.layout.addresses import CellMap, cell, span
from calc.layout.grid import ITEM, VALUE, Grid
from calc.layout.page import Content, FixedText, Issued, IssueValue, Linked, Typed
from calc.layout.sheet_layout import SheetLayout
from calc.layout.styles import COUNT_FORMAT, number_format
from calc.model.results import JobValues
from calc.trade.money.price import BidPrice

CHANGED, PRICE = "boxes changed since issue", "price at issue"
"""The names of the two cells in :attr:`CellMap.issued`."""

COUNT, EACH, ALL, TOLD = "issuedcount", "sinceissue", "sinceissueall", "sinceissuewords"
SINCE_ISSUE = frozenset({COUNT, EACH, ALL, TOLD})
"""The roles of the cells that count changed boxes: unlike any other formula, they tell an edit from a fresh bid."""

TITLE = "Changed since issue"
_ABOUT = "At issue: what each box held. Above: boxes that differ now"
_GAP = 1
"""Columns between the printed ones and the counts."""


_BESIDE = VALUE + 2
"""The column in which the counts of the sheets begin."""


@dataclass(frozen=True)
class _Run:
    """Boxes one below another in one column; a cell between them may be empty."""

    first: int
    last: int
    left: int
    right: int


def aside(grid: Grid) -> int:
    """How many columns to the right of a box its value at issue stands."""
    return grid.last + _GAP


def count_column(grid: Grid) -> int:
    """The column of the counts of the blocks of a sheet."""
    return aside(grid) + ITEM


def lay_issued(sheet: SheetLayout) -> None:
    """The value at issue of every box of the sheet, and a count for each block of boxes. Ends the sheet."""
    page, grid = sheet.page, sheet.grid
    boxes = [put for put in page.contents if isinstance(put, Typed)]
    shift, counts = aside(grid), count_column(grid)
    widths = [*page.widths[: grid.last + 1], 2.0 * _GAP, *page.widths[ITEM + _GAP : grid.last + 1]]
    page.widths = tuple(widths)
    page.put(FixedText(1, counts, "issued", _ABOUT))
    for box in boxes:
        page.put(Issued(box.row, box.col + shift, "issued", box.named, box.index, box.format))
    row = 2
    for run in _runs(boxes, page.contents):
        row = max(row, run.first)
        now = span(sheet.name, (run.first, run.left), (run.last, run.right), sheet.name)
        then = span(sheet.name, (run.first, run.left + shift), (run.last, run.right + shift), sheet.name)
        page.put(_count(row, counts, differing(now, then)))
        row += 1
    sheet.places.issued[sheet.name] = sheet.name, row - 1, counts


def differing(now: str, then: str) -> str:
    """How many cells of a range differ from those of another: a number, a text, a blank or an error in place of them.

    Where one holds an error nothing can be compared, and at least that one is counted.
    """
    differs = f'({now}<>{then})+(({now}="")<>({then}=""))'
    return f"IFERROR(SUMPRODUCT(--(({differs})>0)),MAX(1,COUNT({then})-COUNT({now})))"


def lay_changed(sheet: SheetLayout, boxed: tuple[str, ...]) -> None:
    """How many boxes of each of these sheets were changed since issue, of all of them, and the price at issue."""
    page, places = sheet.page, sheet.places
    sheet.section(TITLE, "compared with the values at issue, to the right of the printed columns of each sheet")
    sheet.number_row()
    page.put(FixedText(page.row, ITEM, "itemstrong", "Boxes changed since issue"))
    counts = [_sum_of(places, name, sheet.name) for name in boxed]
    places.issued[CHANGED] = sheet.name, page.row, VALUE
    page.put(Linked(page.row, VALUE, ALL, lambda: "+".join(each() for each in counts), _none_changed, COUNT_FORMAT))
    col = _BESIDE
    for name, count in zip(boxed, counts, strict=True):
        page.put(FixedText(page.row, col, "told", f"{name}:"))
        page.put(Linked(page.row, col + 1, EACH, count, _none_changed, COUNT_FORMAT))
        col += 2
    sheet.end_row()
    sheet.number_row()
    page.put(FixedText(page.row, ITEM, "item", "Price at issue"))
    places.issued[PRICE] = sheet.name, page.row, VALUE
    page.put(IssueValue(page.row, VALUE, "issuedcount", price_value, number_format("$")))
    sheet.end_row()


def changed_boxes(places: CellMap, sheet: str) -> str:
    """The number of boxes changed since issue, as the text of a formula on ``sheet``; its value at issue is 0."""
    return cell(*places.issued[CHANGED], sheet, "cr")


def price_at_issue(places: CellMap, sheet: str) -> str:
    """The price at issue, in $, as the text of a formula on ``sheet``; its value is :func:`price_value`."""
    return cell(*places.issued[PRICE], sheet, "cr")


def changed_place(places: CellMap) -> Callable[[], tuple[str, int, int]]:
    """Where the number of changed boxes stands, for a jump."""
    return lambda: places.issued[CHANGED]


def price_value(job: JobValues) -> float:
    """The price of a job when its workbook is written, in $."""
    return float(job.of(BidPrice.price))


def _none_changed(_job: JobValues) -> float:
    return 0.0


def _count(row: int, col: int, text: str) -> Linked:
    return Linked(row, col, COUNT, lambda: text, _none_changed, COUNT_FORMAT)


def _sum_of(places: CellMap, name: str, seen_from: str) -> Callable[[], str]:
    """The sum of the counts of a sheet."""

    def text() -> str:
        sheet, last, col = places.issued[name]
        return f"SUM({span(sheet, (2, col), (last, col), seen_from)})"

    return text


def _runs(boxes: list[Typed], contents: list[Content]) -> list[_Run]:
    """The blocks of boxes: runs down a column, side by side where they are as long."""
    taken = {(put.row, put.col) for put in contents if not isinstance(put, Typed)}
    alike: dict[tuple[int, int], list[int]] = {}
    for col in sorted({box.col for box in boxes}):
        rows = sorted(box.row for box in boxes if box.col == col)
        for first, last in _stretches(rows, {row for row, at in taken if at == col}):
            alike.setdefault((first, last), []).append(col)
    return sorted((each for (first, last), cols in alike.items() for each in _abreast(first, last, cols)), key=_place)


def _place(run: _Run) -> tuple[int, int]:
    return run.first, run.left


def _stretches(rows: list[int], taken: set[int]) -> Iterator[tuple[int, int]]:
    """Rows without anything but boxes between them: the first and the last of each stretch."""
    first = rows[0]
    for row, following in pairwise([*rows, rows[-1] + 2]):
        ends = following > rows[-1] or not taken.isdisjoint(range(row + 1, following))
        if ends:
            yield first, row
            first = following


def _abreast(first: int, last: int, cols: list[int]) -> Iterator[_Run]:
    run = _Run(first, last, cols[0], cols[0])
    for col in cols[1:]:
        if col > run.right + 1:
            yield run
            run = _Run(first, last, col, col)
        else:
            run = replace(run, right=col)
    yield run
