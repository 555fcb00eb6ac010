"""Messages about wrong books: the whole sentence, at its cell, and which jobs are not written for it."""

from __future__ import annotations

from pathlib import Path

import pytest
from openpyxl import Workbook

from calc.cells import Book
from calc.intake.read_run import has_error, read_run
from calc.xlsx_read.read import read_book
from wrong_books import CORRECT, WRONG
from wrong_books_messages import EXPECTED


def book_of(name: str, folder: Path) -> Book:
    """The wrong book of that name, or the correct one."""
    book = Workbook()
    book.remove(book.active)
    for sheet, rows in {**CORRECT, **WRONG.get(name, {})}.items():
        page = book.create_sheet(sheet)
        for row in rows:
            page.append(row)
    book.save(folder / "jobs.xlsx")
    return read_book(folder / "jobs.xlsx")


@pytest.mark.parametrize("name", ["correct", *WRONG])
def test_a_mistake_is_reported_at_its_cell_with_what_to_type(name: str, tmp_path: Path) -> None:
    not_written, messages = EXPECTED[name]
    intake = read_run([book_of(name, tmp_path)], None)
    found = [str(each).removeprefix("jobs.xlsx ") for each in intake.findings]
    assert list(dict.fromkeys(found)) == messages
    assert [job.id for job in intake.jobs if has_error(job, intake.findings)] == not_written


def test_every_error_says_what_to_type_instead(tmp_path: Path) -> None:
    for name in WRONG:
        for each in read_run([book_of(name, tmp_path)], None).findings:
            assert each.severity.word != "error" or each.remedy, f"{name}: {each}"


def test_every_wrong_book_has_its_expected_messages() -> None:
    assert set(EXPECTED) == {"correct", *WRONG}
    assert len(WRONG) >= 25
