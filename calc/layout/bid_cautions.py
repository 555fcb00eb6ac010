"""The cautions of the sheet Bid: the most severe ones, in rows that follow the numbers."""

from __future__ import annotations

from collections.abc import Callable
from math import ceil

from calc.declared import Caution
from calc.layout.addresses import cell
from calc.layout.caution_table import CautionTable, active_cautions
from calc.layout.front_page import (
    BESIDE,
    FIGURE,
    FIGURE_UNIT,
    LABEL,
    NAME,
    NO_TEXT,
    NUMBER_FORMAT,
    SMALL_LINE,
    TEXT,
    TWO_SMALL_LINES,
    UNIT,
    VALUE,
    column_heads,
    gap_below,
    section_head,
)
from calc.layout.page import CellValue, Linked, Number, Page
from calc.model.results import JobValues

SLOTS = 24
"""Cautions that the usual draft of a layout has room for."""

_TOGETHER = 4
"""Rows of cautions come in so many, so that few jobs need a layout of their own."""

SHOWN = 8
"""Cautions that the front page shows, the most severe ones; all of them stand on Checks."""


def slots_for(job: JobValues) -> int:
    """How many cautions Checks and the papers have room for: those that are active at issue, rounded up."""
    active = max(SHOWN, sum(1 for _ in active_cautions(job)))
    return ceil(active / _TOGETHER) * _TOGETHER


def lay_cautions(page: Page, cautions: CautionTable) -> None:
    """The most severe of the active cautions, and how many more there are."""
    section_head(page, "Cautions, most severe first")
    column_heads(
        page,
        {
            LABEL: "Caution",
            VALUE: "Number",
            TEXT: "What was found",
            BESIDE: "What to do",
            FIGURE: "Severity",
            FIGURE_UNIT: "No.",
        },
    )
    for place in range(SHOWN):
        _lay_caution(page, cautions, place)
        page.next()
    active = cautions.count(NAME)
    shown = cell(NAME, page.row - 1, FIGURE_UNIT, NAME, "cr")
    more = f'IF({active}>{shown},"and "&{active}-{shown}&" more, with their sources: see Checks","sources: see Checks")'

    def value(job: JobValues) -> str:
        left = sum(1 for _ in active_cautions(job)) - SHOWN
        return f"and {left} more, with their sources: see Checks" if left > 0 else "sources: see Checks"

    page.put(Linked(page.row, TEXT, "small", lambda: more, value))
    page.heights[page.row] = SMALL_LINE
    page.next()
    gap_below(page)


def _lay_caution(page: Page, cautions: CautionTable, place: int) -> None:
    """A caution: what was found and what to do, each in two lines of small text."""
    row = page.row
    page.put(Number(row, FIGURE_UNIT, "number", place + 1))
    number = cell(NAME, row, FIGURE_UNIT, NAME, "c")
    columns: tuple[tuple[int, str, Callable[[JobValues, Caution], CellValue], CellValue, str, str], ...] = (
        (LABEL, "label", lambda _job, each: each.label, NO_TEXT, "label", ""),
        (VALUE, "formula", lambda job, each: job.of(each.number), 0.0, "number", NUMBER_FORMAT),
        (UNIT, "unit", lambda _job, each: each.number.unit_text or NO_TEXT, NO_TEXT, "unit", ""),
        (TEXT, "finding", lambda job, each: job.of(each.found), NO_TEXT, "found", ""),
        (BESIDE, "finding", lambda _job, each: each.do, NO_TEXT, "do", ""),
        (FIGURE, "figure", lambda _job, each: each.severity.value, NO_TEXT, "severity", ""),
    )
    for col, role, value_of, empty, column, format_text in columns:
        text, value = _listed(cautions, number, column, empty), _in_slot(place, value_of, empty)
        page.put(Linked(row, col, role, text, value, format_text))
    page.heights[row] = TWO_SMALL_LINES


def _listed(cautions: CautionTable, number: str, column: str, empty: CellValue) -> Callable[[], str]:
    """The formula that finds a column of the active caution with that number."""
    otherwise = "0" if empty == 0.0 else f'"{NO_TEXT}"'
    return lambda: f"IF({number}>{cautions.count(NAME)},{otherwise},{cautions.picked(column, number, NAME)})"


def _in_slot(
    place: int, value_of: Callable[[JobValues, Caution], CellValue], empty: CellValue
) -> Callable[[JobValues], CellValue]:
    def value(job: JobValues) -> CellValue:
        cautions = list(active_cautions(job))
        return value_of(job, cautions[place]) if place < len(cautions) else empty

    return value
