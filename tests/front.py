"""A job that is priced throughout, and its front page: the shared bench of the tests of pages and pictures."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

import openpyxl

from books import HOUSE, Rows, only_job, written_sheet
from calc.intake.schema import PRICE_LIST
from calc.workbook.values import JobValues

LABEL, VALUE, UNIT, TEXT, BESIDE, FIGURE = range(6)
"""The columns of the front page."""

Row = tuple[object, ...]

_PRICES = {
    "Ready-mix, 3500 psi": (172, "yd3", None),
    "Delivery of concrete": (24, "truck", None),
    "Short load, first fee": (160, "truck", 2),
    "Short load, second fee": (110, "truck", 4),
    "Short load, third fee": (60, "truck", 6),
    "Curing compound, small pack": (24, "pack", 1),
    "Curing compound, large pack": (88, "pack", 5),
}

PRICED: dict[str, Rows] = HOUSE | {
    "Prices": [
        ["item", "price", "unit", "size"],
        *([label, *facts] for label, facts in _PRICES.items()),
        *([each.label, 5, None, None if each.pack is None else 3] for each in PRICE_LIST if each.label not in _PRICES),
    ],
    "Wages": [["role", "private $/h"], ["labourer", 46], ["finisher", 58]],
    "Vehicles": [
        ["vehicle", "box yd3", "heap", "payload ton", "hourly rate $/h", "mile rate $/mile"],
        ["dump trailer", 5, 1, 4.5, 38, 0.9],
        ["pickup", 2.5, 1.1, 1.25, 26, 0.7],
    ],
    "Disposal sites": [
        ["site", "kind", "per ton $/ton", "least charge $/load", "one way min", "miles one way mile"],
        ["Sedge", "mixed", 92, 45, 22, 11],
        ["Fill", "soil", 14, 25, 26, 14],
    ],
}
"""A house book with every price, two vehicles and two sites."""

WALK: dict[str, Rows] = {
    "Jobs": [["job", "bid date"], ["one", "2026-04-13"]],
    "Areas": [["length ft", "width ft", "formed ft"], [100, 3, 60]],
    "Site conditions": [["fact", "value"], ["Permit", 0]],
}
"""A walk of 300 ft2, dug by hand."""


def walk(
    folder: Path,
    facts: Sequence[Sequence[object]] = (),
    house: Mapping[str, Rows] = PRICED,
    length: float = 100,
) -> JobValues:
    """The walk, with other facts of its site, or of another length."""
    site, (heads, (_, *sizes)) = [*WALK["Site conditions"], *facts], WALK["Areas"]
    return only_job(folder, WALK | {"Site conditions": site, "Areas": [heads, [length, *sizes]]}, house)


def front_page(folder: Path, job: JobValues) -> list[Row]:
    """The rows of its front page as they open."""
    book = openpyxl.load_workbook(written_sheet(job, "Bid", folder / "bid.xlsx"), read_only=True, data_only=True)
    rows = [tuple(row) for row in book["Bid"].iter_rows(values_only=True)]
    book.close()
    return rows


def row_of(rows: Sequence[Row], label: str) -> Row:
    """The row with that label."""
    return next(row for row in rows if row[LABEL] == label)


def number(value: object) -> float:
    """A number of a page."""
    assert isinstance(value, int | float), f"{value!r} is no number"
    return float(value)
