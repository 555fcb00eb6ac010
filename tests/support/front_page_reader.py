"""A walk that is priced throughout, and its front page: the shared bench of the tests of pages and pictures."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

import openpyxl

from books import Rows, only_job, written_sheet
from calc.model.results import JobValues
from priced_company import PRICED

LABEL, VALUE, UNIT, NEXT, FIGURE, ADDS = 0, 1, 2, 3, 6, 8
"""The columns of the front page: a label, its number and its unit; what is next best and what that adds."""

PRICES, CHANGES = (4, 7), (5, 8)
"""For both ends of a usual range, the columns of the price and of its change."""

Row = tuple[object, ...]

WALK: dict[str, Rows] = {
    "Jobs": [["job", "bid date"], ["one", "2026-04-13"]],
    "Areas": [["length ft", "width ft", "formed ft"], [100, 3, 60]],
    "Site conditions": [["fact", "value"], ["Permit", 0]],
}
"""A walk of 300 ft2, dug by hand."""


def walk(
    folder: Path,
    facts: Sequence[Sequence[object]] = (),
    company: Mapping[str, Rows] = PRICED,
    length: float = 100,
) -> JobValues:
    """The walk, with other facts of its site, or of another length."""
    site, (heads, (_, *sizes)) = [*WALK["Site conditions"], *facts], WALK["Areas"]
    return only_job(folder, WALK | {"Site conditions": site, "Areas": [heads, [length, *sizes]]}, company)


def front_page(folder: Path, job: JobValues) -> list[Row]:
    """The rows of its front page as they open."""
    book = openpyxl.load_workbook(written_sheet(job, "Bid", folder / "bid.xlsx"), read_only=True, data_only=True)
    rows = [tuple(row) for row in book["Bid"].iter_rows(values_only=True)]
    book.close()
    return rows


def row_of(rows: Sequence[Row], label: str) -> Row:
    """The row with that label."""
    return next(row for row in rows if row[LABEL] == label)


def below(rows: Sequence[Row], label: str) -> Row:
    """The row below the one with that label: why it was decided so."""
    return rows[next(place for place, row in enumerate(rows) if row[LABEL] == label) + 1]


def number(value: object) -> float:
    """A number of a page."""
    assert isinstance(value, int | float), f"{value!r} is no number"
    return float(value)
