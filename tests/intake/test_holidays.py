"""Holidays of the company book: read as dates, and asked about rather than dropped in silence."""

from __future__ import annotations

from pathlib import Path

import pytest

from books import COMPANY, Rows, intake_from, jobs_of
from calc.trade.levels import HOLIDAY

WEEK: dict[str, Rows] = {
    "Jobs": [["job", "bid date"], ["one", "2026-04-13"]],
    "Areas": [["length ft", "width ft", "thickness in"], [12, 3, 4]],
}
HEADS = ["holiday", "date"]


def found(folder: Path, *rows: list[object], **company: Rows) -> list[str]:
    """The findings of a company book with these holidays."""
    return [
        str(each) for each in intake_from(folder, WEEK, {**COMPANY, **company, "Holidays": [HEADS, *rows]}).findings
    ]


def test_a_company_book_without_the_sheet_has_no_holidays(tmp_path: Path) -> None:
    intake = intake_from(tmp_path, WEEK)
    (job,) = jobs_of(intake)
    assert (intake.findings, job.count(HOLIDAY)) == ([], 0)


def test_holidays_are_read_with_their_names(tmp_path: Path) -> None:
    row = ["Memorial Day 2026", "2026-05-25"]
    intake = intake_from(tmp_path, WEEK, {**COMPANY, "Holidays": [HEADS, row]})
    (job,) = jobs_of(intake)
    assert (intake.findings, job.count(HOLIDAY)) == ([], 1)
    assert [row.word for row in job.job.company.rows[HOLIDAY]] == ["Memorial Day 2026"]


@pytest.mark.parametrize(
    ("row", "says"),
    [
        (["Memorial Day 2026", None], "Holidays!B2: error: Date is blank. Type date."),
        (["Memorial Day 2026", "in May"], '"in May" is not a date'),
        ([None, "2026-05-25"], "A holiday without a name."),
        (["memorial day 2026", "2027-05-31"], 'The holiday "memorial day 2026" is listed twice.'),
    ],
    ids=["no date", "no such date", "no name", "the same name again"],
)
def test_a_holiday_that_cannot_be_read_is_an_error_at_its_cell(row: list[object], says: str, tmp_path: Path) -> None:
    first = [] if row[0] == "Memorial Day 2026" else [["Memorial Day 2026", "2026-05-25"]]
    (message,) = found(tmp_path, *first, row)
    assert says in message
    assert "Holidays" in message
    assert "error" in message


@pytest.mark.parametrize(("typed", "says"), [("0", "below 1"), ("1.5", "whole"), ("many", "number")])
def test_half_a_crew_is_refused(typed: str, says: str, tmp_path: Path) -> None:
    facts: Rows = [["fact", "value"], ["Company", "Gravelly Bend Flatwork"], ["Crews", typed]]
    (message,) = found(tmp_path, ["Memorial Day 2026", "2026-05-25"], Company=facts)
    assert "Crews" in message
    assert says in message
