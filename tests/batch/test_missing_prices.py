"""What a company book lacks is told by the row and the cell to fill in, and a bid is never cheaper or dearer for it."""

from __future__ import annotations

from pathlib import Path

import pytest

from books import Rows, intake_from, jobs_of, value
from calc.batch.worker import job_findings
from calc.layout.caution_table import active_cautions
from priced_company import PRICED

WEEK: dict[str, Rows] = {
    "Jobs": [
        ["job", "bid date", "fiber", "strength", "wage table"],
        ["7", "2026-04-13", "macro", "3500", "private"],
    ],
    "Areas": [
        [
            "job", "length ft", "width ft", "base in", "formed ft", "doweled edge ft", "wall ft",
            "old slab ft2", "old slab thickness in",
        ],
        ["7", "24", "5", "4", "24", "5", "5", "40", "4"],
    ],
}  # fmt: skip
"""A job that asks for most of what a company book holds."""


def company(sheet: str = "", row: str = "", column: str = "", typed: object = None) -> dict[str, Rows]:
    """The priced company book with one cell typed otherwise, blank unless said."""
    book = {name: [list(cells) for cells in rows] for name, rows in PRICED.items()}
    if sheet:
        (changed,) = (cells for cells in book[sheet] if cells[0] == row)
        changed[list(book[sheet][0]).index(column)] = typed
    return book  # type: ignore[return-value]


def lacking(folder: Path, book: dict[str, Rows], week: dict[str, Rows] = WEEK) -> list[str]:
    """The notes about missing prices of the one job."""
    (job,) = jobs_of(intake_from(folder, week, book))
    return [str(each) for each in job_findings(job) if each.kind.code == "missing-price"]


def cell_of(item: str) -> str:
    """The cell of a price."""
    return f"B{[row[0] for row in PRICED['Prices']].index(item) + 1}"


NEEDED = (
    "Concrete delivery", "Short-load fee, tier 1", "Base rock", "Macro fiber",
    "Form lumber, 2x4", "Form stake", "Form release agent", "Isolation-joint filler", "Joint cap and sealant",
    "Concrete washout", "Barricades, per day", "Caution tape and signs", "Mobilization, crew visit",
    "Mobilization, one-person visit",
)  # fmt: skip


@pytest.mark.parametrize("item", NEEDED)
def test_a_missing_price_is_told_by_its_own_name_and_cell(item: str, tmp_path: Path) -> None:
    (told,) = lacking(tmp_path, company("Prices", item, "price"))
    assert told.startswith(f"company.xlsx Prices!{cell_of(item)}: note: 1 cost has no price: {item} ({cell_of(item)}).")


@pytest.mark.parametrize(
    ("sheet", "row", "column", "what"),
    [
        ("Wages", "laborer", "private $/h", "Wages!B2: note: 10 costs have no price: laborer, private (B2)."),
        ("Wages", "finisher", "private $/h", "Wages!B3: note: 3 costs have no price: finisher, private (B3)."),
        ("Wages", "", "", "Wages: note: 22 costs have no price: laborer, private; finisher, private."),
        ("Vehicles", "", "", "Vehicles: note: 1 cost has no price: no vehicle takes the spoil."),
        ("Disposal sites", "", "", "Disposal sites: note: 3 costs have no price: no site takes soil or concrete"),
        ("Prices", "", "", "Rental for a day, demolition hammer; Rental for a day, plate compactor"),
    ],
)
def test_wages_vehicles_and_sites_are_told_by_what_is_blank(
    sheet: str, row: str, column: str, what: str, tmp_path: Path
) -> None:
    book = company(sheet, row, column) if row else {name: rows for name, rows in company().items() if name != sheet}
    (told,) = lacking(tmp_path, book)
    assert what in told


@pytest.mark.parametrize(
    ("sheet", "column", "what"),
    [
        ("Vehicles", "payload ton", "dump trailer, payload (C2); flatbed, payload (C3)."),
        ("Vehicles", "hourly rate $/h", "dump trailer, hourly rate (F2); flatbed, hourly rate (F3)."),
        ("Disposal sites", "one-way time min", "transfer, one-way time (E2); brush yard, one-way time (E3)"),
        ("Disposal sites", "per ton $/ton", "transfer, per ton (C2); brush yard, per ton (C3)"),
    ],
)
def test_a_blank_column_of_vehicles_or_sites_is_told_by_its_cells(
    sheet: str, column: str, what: str, tmp_path: Path
) -> None:
    book = company()
    place = list(book[sheet][0]).index(column)
    book[sheet] = [book[sheet][0], *([*row[:place], None, *row[place + 1 :]] for row in book[sheet][1:])]
    (told,) = lacking(tmp_path, book)
    assert what in told


def test_nothing_is_told_of_a_company_that_has_every_price(tmp_path: Path) -> None:
    assert lacking(tmp_path, company()) == []


def test_a_blank_price_of_the_mix_orders_a_dearer_one_only_with_a_caution(tmp_path: Path) -> None:
    (job,) = jobs_of(intake_from(tmp_path, WEEK, company("Prices", "Ready-mix, 3500 psi", "price")))
    assert value(job, "ChosenMix.psi") == 4000
    assert "A stronger mix is priced" in {each.label for each in active_cautions(job)}
    (usual,) = jobs_of(intake_from(tmp_path, WEEK, company()))
    assert "A stronger mix is priced" not in {each.label for each in active_cautions(usual)}


@pytest.mark.parametrize("item", ["Short-load fee, tier 1", "Concrete bag", "Curing compound, small pail"])
def test_a_price_without_its_size_stops(item: str, tmp_path: Path) -> None:
    read = intake_from(tmp_path, WEEK, company("Prices", item, "size"))
    (error,) = (str(each) for each in read.findings if each.severity.word == "error")
    assert error.startswith(f"company.xlsx Prices!{cell_of(item).replace('B', 'D')}: error: {item} has a price and no")
    assert not jobs_of(read)


def test_a_price_of_nothing_is_asked_about_and_taken(tmp_path: Path) -> None:
    read = intake_from(tmp_path, WEEK, company("Prices", "Concrete delivery", "price", 0))
    (asked,) = (str(each) for each in read.findings if each.severity.word == "question")
    assert "Concrete delivery: its price is $0. Is 0 meant?" in asked
    assert lacking(tmp_path, company("Prices", "Concrete delivery", "price", 0)) == []
