"""What a person is told about a wrong book: the whole sentence, at the cell, and which jobs wait for it."""

from __future__ import annotations

from pathlib import Path

import pytest
from openpyxl import Workbook

from calc.cells import Book
from calc.intake.read_run import is_stopped, take_in
from calc.xlsx_read.read import read_book
from wrong_books import RIGHT, WRONG
from wrong_books_messages import SAID


def book_of(name: str, folder: Path) -> Book:
    """The wrong book of that name, or the right one."""
    book = Workbook()
    book.remove(book.active)
    for sheet, rows in {**RIGHT, **WRONG.get(name, {})}.items():
        page = book.create_sheet(sheet)
        for row in rows:
            page.append(row)
    book.save(folder / "week.xlsx")
    return read_book(folder / "week.xlsx")


@pytest.mark.parametrize("name", ["right", *WRONG])
def test_a_wrong_book_is_answered_at_its_cell_with_what_to_type(name: str, tmp_path: Path) -> None:
    waiting, said = SAID[name]
    intake = take_in([book_of(name, tmp_path)], None)
    found = [str(each).removeprefix("week.xlsx ") for each in intake.findings if "No price is given" not in each.found]
    assert list(dict.fromkeys(found)) == said
    assert [job.id for job in intake.jobs if is_stopped(job, intake.findings)] == waiting


def test_every_wrong_book_says_what_to_do_about_its_stop(tmp_path: Path) -> None:
    for name in WRONG:
        for each in take_in([book_of(name, tmp_path)], None).findings:
            assert each.severity.word != "stop" or each.remedy, f"{name}: {each}"


def test_no_wrong_book_is_left_without_its_words() -> None:
    assert set(SAID) == {"right", *WRONG}
    assert len(WRONG) >= 25
