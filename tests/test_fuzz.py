"""Thousands of books with something else in them, by chance: none is a stack trace, none hangs, none loses a cell."""

from __future__ import annotations

import os
import re
import signal
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from datetime import datetime
from io import BytesIO
from pathlib import Path
from random import Random
from zipfile import ZIP_DEFLATED, ZipFile

import openpyxl
import pytest

from accounted import lost
from books import write_book, written
from calc.batch import evaluated
from calc.cells import Book, Cell, Kind, Sheet, column_letters
from calc.errors import Unreadable
from calc.intake.records import JobInput
from calc.intake.schema import NAMED_TABLES
from calc.intake.take import held, take_in
from calc.workbook.as_typed import on_one_line, say_cell
from calc.workbook.cast import spelled
from calc.workbook.read import read_book
from sheet_cells import read_cells
from whole_job import whole_house, whole_week

BOOKS = int(os.environ.get("FLATWORK_FUZZ", "400"))
"""Books of each kind that are tried, the changed bytes four times as often: some 2,800; more for a longer run."""

A_BOOK = 8
"""Cells that are changed in a book."""

SECONDS = 20
"""Of processor time for one book: one that takes longer hangs."""

TEXTS = (
    "", " ", "none", "all", "example", "default", "1/2", "10-6", "10'-6 1/2\"", "3.2 m", "3 gal", "½", "\uff11\uff12",
    "1,5", "1e3", "=1+1", "#N/A", "TRUE", "-3", "+3", "0", "007", "yes", "N", "strip", "job", "length ft", "lenght",
    "2026-04-13", "31.12.2026", "tbd", "?", "\u200b", "a\nb", "a\rb", "\u202egnp", "🙂", "\x01", "<5", "A*", "((((((",
    "1" + " " * 50 + "2", "1//2", "1/0", "0/0", "5%", "$5", "1:48", "'", '"', "nan", "inf", "1_000", "\ud7ff",
    "x" * 61, "x" * 2001, "9" * 400, "<r>x</r>", "_x0041_", "a\x0bb", "]]>", "&lt;", "<v>", "\ufffe", "\x85", "\u2028",
)  # fmt: skip
NUMBERS = (0, -1, 1, 2, 5, 12.5, 0.1 + 0.2, 1e-9, -1e-9, 1e15, 1e300, 46125, 2**53, 3.0000001, 400)
DAYS = (datetime(2026, 1, 2), datetime(1900, 1, 1), datetime(2026, 4, 13, 12, 30), datetime(9999, 12, 31))


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


# --- cells ----------------------------------------------------------------------------------------------------------

Grid = dict[str, dict[tuple[int, int], Cell]]
"""The cells of a book by sheet, row and column."""


def grid_of(book: Book) -> Grid:
    """The cells of a book, to be changed."""
    return {
        name: {(row, column): cell for row, cells in sheet.rows for column, cell in cells.items()}
        for name, sheet in book.sheets.items()
    }


def book_of(grid: Grid, like: Book) -> Book:
    """A book of these cells, as the reader would give it."""
    sheets = {}
    for name, cells in grid.items():
        rows: dict[int, dict[int, Cell]] = {}
        for (row, column), cell in sorted(cells.items()):
            rows.setdefault(row, {})[column] = replace(cell, sheet=name, row=row, column=column)
        merged = dict.fromkeys(cell.merged for cell in cells.values() if cell.merged)
        sheets[name] = Sheet(name, tuple(rows.items()), merged_ranges=tuple(merged))
    return replace(like, sheets=sheets)


def _value(chance: Random, cell: Cell) -> Cell:
    value = chance.choice(NUMBERS)
    return replace(cell, kind=Kind.NUMBER, value=value, formula="")


def _text(chance: Random, cell: Cell) -> Cell:
    return replace(cell, kind=Kind.TEXT, value=chance.choice(TEXTS), formula="")


def _slip(chance: Random, cell: Cell) -> Cell:
    """A letter more, less or other than was typed."""
    text = str(cell.value)
    at = chance.randrange(len(text) + 1)
    return replace(
        cell,
        kind=Kind.TEXT,
        value=text[:at] + chance.choice(["", "x", "7", " ", "'", "/"]) + text[at + chance.randrange(2) :],
    )


def _other_kind(chance: Random, cell: Cell) -> Cell:
    kind, value = chance.choice(
        [
            (Kind.BOOLEAN, True), (Kind.BOOLEAN, False), (Kind.ERROR, "#DIV/0!"), (Kind.ERROR, "#N/A"),
            (Kind.UNCOMPUTED, "=A1*2"), (Kind.DURATION, "7:30:00"), (Kind.DATE, chance.choice(DAYS)),
        ]
    )  # fmt: skip
    return replace(cell, kind=kind, value=value)


def _formula(_: Random, cell: Cell) -> Cell:
    return replace(cell, formula="=B1*2")


def _merge(_: Random, cell: Cell) -> Cell:
    return replace(cell, merged=f"{cell.ref}:{column_letters(cell.column + 1)}{cell.row + 1}")


KINDS: tuple[Callable[[Random, Cell], Cell], ...] = (_value, _text, _text, _slip, _other_kind, _formula, _merge)


def change(chance: Random, grid: Grid) -> str:
    """Changes one thing in a book, and says what."""
    name = chance.choice(sorted(grid))
    cells = grid[name]
    if not cells:
        return "nothing"
    place = chance.choice(sorted(cells))
    what = chance.randrange(12)
    if what == 0:
        del cells[place]
        return f"{name}{place} cleared"
    if what == 1:
        return _swap_columns(chance, name, cells)
    if what == 2:
        other = chance.choice(sorted(cells))
        cells[place], cells[other] = cells[other], cells[place]
        return f"{name}{place} and {other} swapped"
    if what == 3:
        other = (place[0] + chance.randrange(3), place[1] + chance.randrange(3))
        cells[other] = replace(cells[place])
        return f"{name}{place} copied to {other}"
    cells[place] = chance.choice(KINDS)(chance, cells[place])
    return f"{name}{place} is {cells[place].kind.name} {cells[place].value!r:.60}"


def _swap_columns(chance: Random, name: str, cells: dict[tuple[int, int], Cell]) -> str:
    """Swaps two columns, or two headers only."""
    columns = sorted({column for _, column in cells})
    one, other = chance.choice(columns), chance.choice(columns)
    rows = [1] if chance.random() < 0.5 else sorted({row for row, _ in cells})
    for row in rows:
        a, b = cells.pop((row, one), None), cells.pop((row, other), None)
        if a is not None:
            cells[row, other] = a
        if b is not None:
            cells[row, one] = b
    return f"{name} columns {one} and {other} swapped in {len(rows)} rows"


@pytest.fixture(scope="module")
def right(tmp_path_factory: pytest.TempPathFactory) -> tuple[Book, Book]:
    """The books of the job that fills every column."""
    folder = tmp_path_factory.mktemp("right")
    week = read_book(write_book(folder / "week.xlsx", whole_week()))
    return week, read_book(write_book(folder / "house.xlsx", whole_house()))


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
            jobs = [job for job in intake.jobs if not held(job, intake.findings)]
            for job in evaluated(jobs):
                assert unsaid(job.job, written(job, tmp_path / "one.xlsx")) == [], (number, said)
        through += bool(jobs)
    assert through > books / 5


def unsaid(job: JobInput, workbook: Path) -> list[str]:
    """What was typed for a job and does not stand in its workbook, with the cell that it was typed in."""
    words = {held.value for held in read_cells(workbook).values()}
    lines = {line for each in words if isinstance(each, str) for line in each.split("\n")}
    entries = [
        *job.entries.items(),
        *(pair for rows in job.rows.values() for row in rows for pair in row.entries.items()),
    ]
    assert len(entries) > 100
    return [
        f"{entry.origin} {entry.typed!r}"
        for given, entry in entries
        if entry.typed
        and not {spelled(entry.typed), spelled(say_cell(entry))} & words
        and spelled(f"{given.header}: {on_one_line(entry.typed)}") not in lines
        and not (given.section.table in NAMED_TABLES and _in_a_file(entry.value) in words)  # as numbers, on Prices
    ]


def _in_a_file(value: float | str) -> float | str:
    """A value with the digits that a workbook keeps of it."""
    return value if isinstance(value, str) else float(f"{value:.16g}")


# --- parts and bytes ------------------------------------------------------------------------------------------------

MARKS = (
    '<c r="A1"><v>1</v></c>', "<row/>", "<v>7</v>", "<f>1+1</f>", "&#0;", "&amp;", "<", ">", '"', "&x;", "<!DOCTYPE x>",
    "<!--", "]]>", "\0", "\ufffe", "<is><t>x</t></is>", ' t="s"', ' t="str"', ' t="inlineStr"', ' t="e"', ' t="b"',
    ' t="d"', ' s="9"', ' r="XFD1048576"', ' r="A0"', ' r="Z1"', ' hidden="1"', '<mergeCell ref="A1:C3"/>', "1e999",
    "-0", "NaN", "9" * 30,
)  # fmt: skip
PIECE = re.compile(r"<(?:c|row|v|t|si|sheet|xf|Relationship)\b[^>]*>|[a-zA-Z]+=\"[^\"]*\"|>[^<>]+<")
"""What of a part is changed: a tag, an attribute, or what stands between two tags."""


def change_part(chance: Random, parts: dict[str, bytes]) -> str:
    """Changes one thing in a part of a workbook file, and says what."""
    name = chance.choice(sorted(parts))
    what = chance.randrange(14)
    if what == 0:
        del parts[name]
        return f"{name} is gone"
    if what == 1:
        other = chance.choice(sorted(parts))
        parts[name], parts[other] = parts[other], parts[name]
        return f"{name} and {other} swapped"
    if what == 2:
        parts[name] = parts[name][: chance.randrange(len(parts[name]) + 1)]
        return f"{name} cut short"
    text = parts[name].decode("utf-8", "replace")
    found = [each.span() for each in PIECE.finditer(text)] or [(0, len(text))]
    (start, end), (first, last) = chance.choice(found), chance.choice(found)
    new = chance.choice([chance.choice(MARKS), "", text[start:end] * 2, text[first:last]])
    parts[name] = (text[:start] + new + text[end:]).encode("utf-8", "replace")
    return f"{name} {text[start:end]!r:.60} becomes {new!r:.60}"


@pytest.fixture(scope="module")
def files(tmp_path_factory: pytest.TempPathFactory) -> list[bytes]:
    """A book with two jobs as two writers save it, one of which keeps its words in one table."""
    folder = tmp_path_factory.mktemp("files")
    week = {name: list(rows) for name, rows in whole_week(("walk",)).items()}
    week["Jobs"].append(["other", *week["Jobs"][1][1:]])
    week["Areas"].append(["other", *week["Areas"][1][1:]])
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


def _bytes(chance: Random, content: bytes) -> bytes:
    """The bytes of a file with a few others, a piece lost, a piece twice, or cut short."""
    start = chance.randrange(len(content))
    end = min(len(content), start + chance.choice([1, 2, 16, 512]))
    match chance.randrange(5):
        case 0:
            return content[:start] + chance.randbytes(end - start) + content[end:]
        case 1:
            return content[:start] + content[end:]
        case 2:
            return content[:end] + content[start:]
        case 3:
            return content[:start]
    return content[:start] + bytes(end - start) + content[end:]


def test_a_file_with_other_bytes_is_refused_or_holds_what_it_held(files: list[bytes], tmp_path: Path) -> None:
    chance = Random(20260416)
    whole = read_or_refused(files[0], tmp_path / "whole.xlsx", "nothing")
    assert whole is not None
    for number in range(4 * BOOKS):
        book = read_or_refused(_bytes(chance, files[0]), tmp_path / "changed.xlsx", number)
        assert book is None or book.sheets == whole.sheets, number


def test_random_bytes_are_refused_whatever_they_begin_with(tmp_path: Path) -> None:
    chance = Random(20260417)
    for number in range(BOOKS):
        mark = chance.choice([b"", b"PK\x03\x04", b"\xd0\xcf\x11\xe0", b"<?xml", b"PK\x05\x06" + bytes(18), b"%PDF"])
        content = mark + chance.randbytes(chance.choice([0, 1, 30, 4000]))
        assert read_or_refused(content, tmp_path / "random.xlsx", number) is None
