"""For every input column, each thing that its declaration rules out: refused at its cell, and only its job waits.

The cases are made from the declarations, so that a new column is tried as soon as it is declared.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import Any, NamedTuple

import pytest
from openpyxl import Workbook

from calc.cells import Book, Sheet, column_letters
from calc.declared import Input, Kind
from calc.errors import Severity
from calc.intake.read_run import has_error, read_run
from calc.intake.schema import COMPANY_TABLES, TABLES
from calc.xlsx_read.read import read_book
from whole_job import ID, whole_company, whole_week

OTHER = "26-900"
SHEETS = 50
"""Of one book: a book may have a few more."""


class Bad(NamedTuple):
    """Something that may not stand in a column."""

    table: str
    given: Input
    what: str
    typed: Any


def bad_cells() -> Iterator[Bad]:
    """Every kind of badness of every column that has a declaration."""
    for table in TABLES.values():
        for given in (heading.given for heading in table.headings if heading.given is not None):
            for what, typed in _ruled_out(given):
                yield Bad(table.name, given, what, typed)


def _ruled_out(given: Input) -> Iterator[tuple[str, Any]]:
    if given.kind in (Kind.TEXT, Kind.ROW):
        yield "an error", "#N/A"
        yield "a formula that was never computed", "=1+1"
        return
    yield "a logical value", True
    yield "an error", "#REF!"
    yield "a formula that was never computed", "=12+8"
    if given.kind is Kind.DATE:
        yield "words", "next week"
        yield "a day out of range", datetime(1985, 5, 1)
        return
    yield "a date", datetime(2026, 1, 2)
    if given.kind is Kind.CHOICE:
        yield "a word of another list", "elsewhere"
        return
    yield "words", "about ten"
    yield "to be decided", "TBD"
    if given.low is not None:
        yield "below the least", given.low - 0.5
    if given.over is not None:
        yield "at the limit that must be exceeded", given.over
    if given.high is not None:
        yield "above the most", given.high + 0.5
    if given.whole:
        yield "a part of one", (given.low or 0) + 0.5
    if not given.signed and given.low is None:
        yield "negative", -3
    if given.unit_text == "ft":
        yield "a unit of another kind", "3 gal"


def book(tables: dict[str, list[list[Any]]], path: Path) -> Path:
    """A workbook out of tables."""
    made = Workbook()
    made.remove(made.active)
    for name, rows in tables.items():
        sheet = made.create_sheet(name)
        for row in rows:
            sheet.append(row)
    made.save(path)
    return path


def with_bad(bad: Bad, tables: dict[str, list[list[Any]]]) -> str:
    """Puts the bad value in the first row of its column; gives its cell."""
    header, first = tables[bad.table][0], tables[bad.table][1]
    column = header.index(next(h.header for h in TABLES[bad.table].headings if h.given is bad.given))
    first[column] = bad.typed
    return f"{column_letters(column + 1)}2"


def copied(tables: Any) -> dict[str, list[list[Any]]]:
    """Tables that may be changed, with another job that is always right."""
    week = {name: [list(row) for row in rows] for name, rows in tables.items()}
    for name, extra in (("Jobs", {"job": OTHER, "bid date": "2026-04-13"}),
                        ("Areas", {"job": OTHER, "length ft": 12, "width ft": 3})):  # fmt: skip
        if name in week:
            week[name].append([extra.get(header) for header in week[name][0]])
    return week


def with_sheet(right: Book, sheet: Sheet) -> Book:
    """A book with another sheet in the place of its own."""
    return replace(right, sheets=right.sheets | {sheet.name: sheet})


CASES = list(bad_cells())


@pytest.fixture(scope="module")
def right(tmp_path_factory: pytest.TempPathFactory) -> tuple[Book, Book]:
    """The jobs book and the company book with nothing wrong in them."""
    folder = tmp_path_factory.mktemp("right")
    week = read_book(book(copied(whole_week(("walk",))), folder / "week.xlsx"))
    return week, read_book(book(copied(whole_company()), folder / "company.xlsx"))


@pytest.mark.parametrize("table", TABLES)
def test_what_a_column_rules_out_is_refused_at_its_cell(table: str, right: tuple[Book, Book], tmp_path: Path) -> None:
    cases = [bad for bad in CASES if bad.table == table]
    wrong = [said for bad, cell, sheet in typed_in(cases, tmp_path) for said in let_through(bad, cell, sheet, right)]
    assert not wrong, "\n".join([f"{len(wrong)} of {len(cases)}", *wrong])


def typed_in(cases: Sequence[Bad], folder: Path) -> Iterator[tuple[Bad, str, Sheet]]:
    """Each case with its cell and its table as it is read, from books in which each case has a sheet."""
    for start in range(0, len(cases), SHEETS):
        cells, sheets = [], {}
        for number, bad in enumerate(some := cases[start : start + SHEETS]):
            tables = copied(whole_company() if bad.table in COMPANY_TABLES else whole_week(("walk",)))
            cells.append(with_bad(bad, tables))
            sheets[f"case {number}"] = tables[bad.table]
        read = read_book(book(sheets, folder / f"wrong {start}.xlsx")).sheets.values()
        for bad, cell, sheet in zip(some, cells, read, strict=True):
            yield bad, cell, replace(sheet, name=bad.table)


def let_through(bad: Bad, cell: str, sheet: Sheet, right: tuple[Book, Book]) -> Iterator[str]:
    """What is wrong with how a bad cell is read: not named there, not by its label, or other jobs have an error."""
    week, company = right
    what = f"{bad.given.header}, {bad.what}: {bad.typed!r} in {cell}"
    of_company = bad.table in COMPANY_TABLES
    intake = (
        read_run([week], with_sheet(company, sheet)) if of_company else read_run([with_sheet(week, sheet)], company)
    )
    stops = [each for each in intake.findings if each.severity is Severity.ERROR and each.place.sheet == bad.table]
    here = [each for each in stops if each.place.cell == cell]
    if not here:
        yield f"{what} was let through: {[str(each) for each in intake.findings][:5]}"
    elif bad.given.label not in here[0].found or not here[0].remedy:
        yield f"{what} is not called by its label, or nobody is told what to type: {here[0]}"
    waiting = {job.id for job in intake.jobs if has_error(job, intake.findings)}
    if waiting != ({ID, OTHER} if of_company else {ID}):
        yield f"{what} keeps {sorted(waiting)} waiting"


def test_there_are_hundreds_of_things_that_may_not_be_typed() -> None:
    assert len(CASES) > 400
