"""Thousands of randomly changed books: none ends in a stack trace, none hangs, no cell is lost."""

from __future__ import annotations

import os
import signal
from collections.abc import Iterator
from contextlib import contextmanager
from io import BytesIO
from pathlib import Path
from random import Random
from zipfile import ZIP_DEFLATED, ZipFile

import openpyxl
import pytest

from books import write_book, written
from calc.batch import evaluated
from calc.cells import Book
from calc.errors import Unreadable
from calc.intake.read_run import has_error, read_run
from calc.xlsx_read.read import read_book
from changed_books import book_of, change, change_bytes, change_part, grid_of
from intake_ledger import unaccounted_cells
from missing_text import missing_from_workbook
from whole_job import whole_company, whole_week

pytestmark = pytest.mark.slow

BOOKS = int(os.environ.get("FLATWORK_FUZZ", "150"))
"""Books of each kind that are tried, the changed bytes four times as often: some 1,000; more for a longer run."""

A_BOOK = 12
"""Cells that are changed in a book."""

SECONDS = 20
"""Processor time for one book: one that takes longer hangs."""


@contextmanager
def time_limit(changes: object) -> Iterator[None]:
    """Fails with ``changes`` after too much processor time."""

    def give_up(*_: object) -> None:
        pytest.fail(f"it hangs: {changes}")

    before = signal.signal(signal.SIGPROF, give_up)
    signal.setitimer(signal.ITIMER_PROF, SECONDS)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)


@pytest.fixture(scope="module")
def right(tmp_path_factory: pytest.TempPathFactory) -> tuple[Book, Book]:
    """The jobs book and the company book of the job that fills every column."""
    folder = tmp_path_factory.mktemp("right")
    week = read_book(write_book(folder / "week.xlsx", whole_week()))
    return week, read_book(write_book(folder / "company.xlsx", whole_company()))


def test_no_cell_of_the_correct_books_is_unaccounted_cells(right: tuple[Book, Book]) -> None:
    intake = read_run([right[0]], right[1])
    assert unaccounted_cells(right[0], intake) == unaccounted_cells(right[1], intake) == []


def test_every_changed_cell_is_read_as_typed_or_reported(right: tuple[Book, Book]) -> None:
    chance = Random(20260413)
    for number in range(BOOKS):
        at = number % 4 == 0  # one in four changes the company book
        grid = grid_of(right[at])
        changes = [change(chance, grid) for _ in range(A_BOOK)]
        changed = book_of(grid, right[at])
        with time_limit(changes):
            intake = read_run([right[0]], changed) if at else read_run([changed], right[1])
        assert not unaccounted_cells(changed, intake), (number, changes, unaccounted_cells(changed, intake))


def test_every_typed_value_is_in_the_workbook_of_its_job(right: tuple[Book, Book], tmp_path: Path) -> None:
    chance = Random(20260414)
    books, bid = BOOKS // 16, 0  # writing a workbook takes ten times as long as reading a book
    for number in range(books):
        at = number % 4 == 0
        grid = grid_of(right[at])
        changes = change(chance, grid)
        changed = book_of(grid, right[at])
        with time_limit(changes):
            intake = read_run([right[0]], changed) if at else read_run([changed], right[1])
            jobs = [job for job in intake.jobs if not has_error(job, intake.findings)]
            for job in evaluated(jobs):
                assert missing_from_workbook(job, written(job, tmp_path / "one.xlsx")) == [], (number, changes)
        bid += bool(jobs)
    assert bid > books / 5


@pytest.fixture(scope="module")
def files(tmp_path_factory: pytest.TempPathFactory) -> list[bytes]:
    """A book with two jobs as two libraries save it, one of them with shared strings."""
    folder = tmp_path_factory.mktemp("files")
    week = {name: list(rows) for name, rows in whole_week(("walk",)).items()}
    week["Jobs"].append(["other", *week["Jobs"][1][1:]])
    week["Areas"].append(["other", *week["Areas"][1][1:]])
    one = write_book(folder / "one.xlsx", week)
    book = openpyxl.load_workbook(one)
    book.save(folder / "two.xlsx")
    return [one.read_bytes(), (folder / "two.xlsx").read_bytes()]


def read_or_refused(content: bytes, path: Path, changes: object) -> Book | None:
    """The book, or None when it was refused in one plain line."""
    path.write_bytes(content)
    with time_limit(changes):
        try:
            return read_book(path)
        except Unreadable as reason:
            line = str(reason)
            assert line.startswith(f"{path.name}: ") and line.isprintable() and len(line) < 600, (changes, line)
            return None


def test_a_file_with_a_changed_part_is_read_or_refused(
    files: list[bytes], right: tuple[Book, Book], tmp_path: Path
) -> None:
    chance = Random(20260415)
    read = 0
    for number in range(BOOKS):
        content = files[number % len(files)]
        with ZipFile(BytesIO(content)) as file:
            parts = {name: file.read(name) for name in file.namelist()}
        changes = [change_part(chance, parts) for _ in range(chance.choice([1, 1, 2, 4])) if parts]
        file_bytes = BytesIO()
        with ZipFile(file_bytes, "w", ZIP_DEFLATED) as file:
            for name, part in parts.items():
                file.writestr(name, part, compresslevel=1)
        book = read_or_refused(file_bytes.getvalue(), tmp_path / "changed.xlsx", changes)
        if book is not None:
            read += 1
            with time_limit(changes):
                intake = read_run([book], right[1])
            assert not unaccounted_cells(book, intake), (number, changes, unaccounted_cells(book, intake))
    assert BOOKS / 10 < read < BOOKS


def test_a_file_with_changed_bytes_is_refused_or_read_unchanged(files: list[bytes], tmp_path: Path) -> None:
    chance = Random(20260416)
    whole = read_or_refused(files[0], tmp_path / "whole.xlsx", "nothing")
    assert whole is not None
    for number in range(4 * BOOKS):
        book = read_or_refused(change_bytes(chance, files[0]), tmp_path / "changed.xlsx", number)
        assert book is None or book.sheets == whole.sheets, number


def test_random_bytes_are_refused_whatever_their_first_bytes(tmp_path: Path) -> None:
    chance = Random(20260417)
    for number in range(BOOKS):
        mark = chance.choice([b"", b"PK\x03\x04", b"\xd0\xcf\x11\xe0", b"<?xml", b"PK\x05\x06" + bytes(18), b"%PDF"])
        content = mark + chance.randbytes(chance.choice([0, 1, 30, 4000]))
        assert read_or_refused(content, tmp_path / "random.xlsx", number) is None
