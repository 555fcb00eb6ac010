"""Thousands of books with something else in them, by chance: none is a stack trace, none hangs, none loses a cell."""

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
from calc.intake.read_run import is_stopped, take_in
from calc.xlsx_read.read import read_book
from changed_books import book_of, change, change_bytes, change_part, grid_of
from intake_ledger import lost
from missing_text import unsaid
from whole_job import whole_company, whole_week

pytestmark = pytest.mark.slow

BOOKS = int(os.environ.get("FLATWORK_FUZZ", "150"))
"""Books of each kind that are tried, the changed bytes four times as often: some 1,000; more for a longer run."""

A_BOOK = 12
"""Cells that are changed in a book."""

SECONDS = 20
"""Of processor time for one book: one that takes longer hangs."""


@contextmanager
def in_time(what: object) -> Iterator[None]:
    """Fails with ``what`` when the processor was at it for too long."""

    def give_up(*_: object) -> None:
        pytest.fail(f"it hangs: {what}")

    before = signal.signal(signal.SIGPROF, give_up)
    signal.setitimer(signal.ITIMER_PROF, SECONDS)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)


@pytest.fixture(scope="module")
def right(tmp_path_factory: pytest.TempPathFactory) -> tuple[Book, Book]:
    """The books of the job that fills every column."""
    folder = tmp_path_factory.mktemp("right")
    week = read_book(write_book(folder / "week.xlsx", whole_week()))
    return week, read_book(write_book(folder / "company.xlsx", whole_company()))


def test_nothing_of_the_right_books_is_lost(right: tuple[Book, Book]) -> None:
    intake = take_in([right[0]], right[1])
    assert lost(right[0], intake) == lost(right[1], intake) == []


def test_whatever_stands_in_a_cell_is_taken_as_typed_or_named(right: tuple[Book, Book]) -> None:
    chance = Random(20260413)
    for number in range(BOOKS):
        at = number % 4 == 0  # one in four changes the house book
        grid = grid_of(right[at])
        said = [change(chance, grid) for _ in range(A_BOOK)]
        changed = book_of(grid, right[at])
        with in_time(said):
            intake = take_in([right[0]], changed) if at else take_in([changed], right[1])
        assert not lost(changed, intake), (number, said, lost(changed, intake))


def test_a_job_that_is_let_through_has_a_workbook_that_says_what_was_typed(
    right: tuple[Book, Book], tmp_path: Path
) -> None:
    chance = Random(20260414)
    books, through = BOOKS // 16, 0  # a workbook takes ten times as long as taking a book in
    for number in range(books):
        at = number % 4 == 0
        grid = grid_of(right[at])
        said = change(chance, grid)
        changed = book_of(grid, right[at])
        with in_time(said):
            intake = take_in([right[0]], changed) if at else take_in([changed], right[1])
            jobs = [job for job in intake.jobs if not is_stopped(job, intake.findings)]
            for job in evaluated(jobs):
                assert unsaid(job, written(job, tmp_path / "one.xlsx")) == [], (number, said)
        through += bool(jobs)
    assert through > books / 5


@pytest.fixture(scope="module")
def files(tmp_path_factory: pytest.TempPathFactory) -> list[bytes]:
    """A book with two jobs as two writers save it, one of which keeps its words in one table."""
    folder = tmp_path_factory.mktemp("files")
    week = {name: list(rows) for name, rows in whole_week(("walk",)).items()}
    week["Jobs"].append(["other", *week["Jobs"][1][1:]])
    week["Slab areas"].append(["other", *week["Slab areas"][1][1:]])
    one = write_book(folder / "one.xlsx", week)
    book = openpyxl.load_workbook(one)
    book.save(folder / "two.xlsx")
    return [one.read_bytes(), (folder / "two.xlsx").read_bytes()]


def read_or_refused(content: bytes, path: Path, said: object) -> Book | None:
    """The book in a file, or None when it was refused in one plain line."""
    path.write_bytes(content)
    with in_time(said):
        try:
            return read_book(path)
        except Unreadable as reason:
            line = str(reason)
            assert line.startswith(f"{path.name}: ") and line.isprintable() and len(line) < 600, (said, line)
            return None


def test_whatever_stands_in_a_part_of_the_file_is_read_or_refused(
    files: list[bytes], right: tuple[Book, Book], tmp_path: Path
) -> None:
    chance = Random(20260415)
    read = 0
    for number in range(BOOKS):
        content = files[number % len(files)]
        with ZipFile(BytesIO(content)) as file:
            parts = {name: file.read(name) for name in file.namelist()}
        said = [change_part(chance, parts) for _ in range(chance.choice([1, 1, 2, 4])) if parts]
        made = BytesIO()
        with ZipFile(made, "w", ZIP_DEFLATED) as file:
            for name, part in parts.items():
                file.writestr(name, part, compresslevel=1)
        book = read_or_refused(made.getvalue(), tmp_path / "changed.xlsx", said)
        if book is not None:
            read += 1
            with in_time(said):
                intake = take_in([book], right[1])
            assert not lost(book, intake), (number, said, lost(book, intake))
    assert BOOKS / 10 < read < BOOKS


def test_a_file_with_other_bytes_is_refused_or_holds_what_it_held(files: list[bytes], tmp_path: Path) -> None:
    chance = Random(20260416)
    whole = read_or_refused(files[0], tmp_path / "whole.xlsx", "nothing")
    assert whole is not None
    for number in range(4 * BOOKS):
        book = read_or_refused(change_bytes(chance, files[0]), tmp_path / "changed.xlsx", number)
        assert book is None or book.sheets == whole.sheets, number


def test_random_bytes_are_refused_whatever_they_begin_with(tmp_path: Path) -> None:
    chance = Random(20260417)
    for number in range(BOOKS):
        mark = chance.choice([b"", b"PK\x03\x04", b"\xd0\xcf\x11\xe0", b"<?xml", b"PK\x05\x06" + bytes(18), b"%PDF"])
        content = mark + chance.randbytes(chance.choice([0, 1, 30, 4000]))
        assert read_or_refused(content, tmp_path / "random.xlsx", number) is None
