"""Accounts: the bookkeeper finds every cost under the account of its own row, or of its group, in both workbooks."""

from __future__ import annotations

from pathlib import Path

from books import COMPANY, Rows, only_job, value, written
from calc.batch.week import row_of
from calc.trade.money.cost_rows import ROWS
from sheet_cells import read_cells

WEEK: dict[str, Rows] = {
    "Jobs": [["job", "bid date"], ["one", "2026-04-13"]],
    "Areas": [["length ft", "width ft", "thickness in"], [27, 6, 4]],
}
BOOK: dict[str, Rows] = COMPANY | {
    "Company": [["fact", "value"], ["Account, concrete", "Job materials: concrete"], ["Account, labor", 5500]],
    "Prices": [
        ["item", "price", "account"],
        ["Ready-mix, 3500 psi", 171, 5110],
        ["Concrete delivery", 28, None],
        ["Environmental fee", 12, "5115"],
        ["Form release agent", 9, None],
    ],
    "Wages": [["role", "private $/h", "account"], ["laborer", 46, None], ["finisher", 58, "05-20"]],
}
EXPECTED = {
    "Ready-mix concrete": "5110",
    "Concrete delivery, per truck": "Job materials: concrete",
    "Environmental fee of the plant": "5115",
    "Form release agent, per job": "Materials",
    "Labor: layout": "5500",
    "Labor: finish concrete": "05-20",
}


def test_every_cost_is_booked_to_its_own_account_else_to_that_of_its_group(tmp_path: Path) -> None:
    job = only_job(tmp_path, WEEK, BOOK)
    booked = {row.label: value(job, "CostTable.account", place) for place, row in enumerate(ROWS)}
    assert {label: booked[label] for label in EXPECTED} == EXPECTED


def test_the_ledger_of_the_week_and_the_costs_of_the_job_name_the_same_accounts(tmp_path: Path) -> None:
    job = only_job(tmp_path, WEEK, BOOK)
    ledger = {each.label: each.account for each in row_of(job, "one.xlsx").ledger}
    assert {label: ledger[label] for label in EXPECTED if label in ledger} == {
        label: account for label, account in EXPECTED.items() if label in ledger
    }
    assert {"Ready-mix concrete", "Environmental fee of the plant", "Labor: finish concrete"} <= set(ledger)
    cells = read_cells(written(job, tmp_path / "job.xlsx"))
    shown = {str(held.value) for (sheet, _), held in cells.items() if sheet in ("Costs", "Cost workings")}
    assert {"5110", "5115", "05-20", "Job materials: concrete"} <= shown


def test_without_a_company_book_every_cost_is_booked_to_the_name_of_its_group(tmp_path: Path) -> None:
    job = only_job(tmp_path, WEEK, COMPANY)
    booked = {row.group: value(job, "CostTable.account", place) for place, row in enumerate(ROWS)}
    assert booked == {group: group.capitalize() for group in booked}


def test_a_rental_is_booked_to_the_account_of_the_period_that_won(tmp_path: Path) -> None:
    """A short job takes half a day, where the day has another account."""
    prices: Rows = [
        ["item", "price", "account"],
        ["Rental for half a day, plate compactor", 40, "5311"],
        ["Rental for a day, plate compactor", 70, "5310"],
    ]
    areas: Rows = [["length ft", "width ft", "thickness in", "base in"], [27, 6, 4, 4]]
    job = only_job(tmp_path, WEEK | {"Areas": areas}, BOOK | {"Prices": prices})
    place = next(place for place, row in enumerate(ROWS) if row.label == "Rental: plate compactor")
    assert value(job, "CostTable.rate", place) == 40
    assert value(job, "CostTable.account", place) == "5311"
