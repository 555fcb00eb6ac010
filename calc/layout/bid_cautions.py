"""The cautions of the sheet Bid: the most severe ones, in rows that follow the numbers."""

from __future__ import annotations

from math import ceil

from calc.layout.addresses import cell
from calc.layout.caution_table import CautionTable, ShownOf, active_cautions, lay_place
from calc.layout.front_page import (
    BESIDE,
    KEY_LABEL,
    LABEL,
    LAST,
    NAME,
    NEXT,
    NUMBER_FORMAT,
    UNIT,
    column_heads,
    end_row,
    section_head,
)
from calc.layout.page import CellValue, FixedText, FullSizePage, Linked
from calc.model.results import JobValues

SLOTS = 24
"""Cautions that the usual draft of a layout has room for."""

_TOGETHER = 4
"""Rows of cautions come in so many, so that few jobs need a layout of their own."""

SHOWN = 8
"""Cautions that the front page shows, the most severe ones; all of them stand on Checks."""

_PLACE = LAST + 2
"""The column of the place of each, to the right of the printed ones."""

SEVERITY, NUMBER, OF, DO = UNIT, NEXT, BESIDE, KEY_LABEL
"""The columns behind the name, which runs over the second."""


def slots_for(job: JobValues) -> int:
    """How many cautions Checks and the papers have room for: those that are active at issue, rounded up."""
    active = max(SHOWN, sum(1 for _ in active_cautions(job)))
    return ceil(active / _TOGETHER) * _TOGETHER


def lay_cautions(page: FullSizePage, cautions: CautionTable) -> None:
    """The most severe of the active cautions, and how many more there are."""
    section_head(page, "Cautions", "most severe first; a stop holds the bid until it is acknowledged by name")
    _lay_more(page, cautions)
    heads = {LABEL: "What", SEVERITY: "Severity", NUMBER: "Number", OF: "Unit", DO: "What to do"}
    column_heads(page, heads, (NUMBER,), (OF,))
    top = page.row
    page.put(FixedText(top - 1, _PLACE, "rowkey", "Place"))
    for place in range(SHOWN):
        lay_place(page, top, _PLACE, place)
        _lay_caution(page, cautions, place)
        end_row(page)


def _lay_more(page: FullSizePage, cautions: CautionTable) -> None:
    """In the head of the block: how many are active beyond those that it shows."""
    row = page.row - 1
    last = cell(NAME, row + 1 + SHOWN, _PLACE, NAME, "cr")

    def text() -> str:
        sheet, first, _ = cautions.place
        count = cautions.count(NAME)
        link = f"\"#'{sheet}'!B{first + 1}\""
        return f'HYPERLINK({link},IF({count}>{last},"and "&{count}-{last}&" more on Checks","all rules"))'

    def value(job: JobValues) -> CellValue:
        left = sum(1 for _ in active_cautions(job)) - SHOWN
        return f"and {left} more on Checks" if left > 0 else "all rules"

    page.contents = [put for put in page.contents if (put.row, put.col) != (row, LAST)]
    page.put(Linked(row, LAST, "sectionjump", text, value))


def _lay_caution(page: FullSizePage, cautions: CautionTable, place: int) -> None:
    """A caution: what, how severe, its number, and what to do in brief."""
    number = cell(NAME, page.row, _PLACE, NAME, "cr")
    columns: tuple[tuple[int, str, ShownOf, str, str], ...] = (
        (LABEL, "item", lambda _job, each: each.label, "label", ""),
        (SEVERITY, "told", lambda _job, each: each.severity.value, "severity", ""),
        (NUMBER, "shrunkright", lambda job, each: job.of(each.number), "number", NUMBER_FORMAT),
        (OF, "shrunkunit", lambda _job, each: each.number.unit_text or "-", "unit", ""),
        (DO, "told", lambda _job, each: each.brief, "brief", ""),
    )
    for col, role, value_of, column, format_text in columns:
        text, value = cautions.in_slot(column, place, number, NAME, value_of)
        page.put(Linked(page.row, col, role, text, value, format_text))
