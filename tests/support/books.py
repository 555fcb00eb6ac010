"""Input workbooks out of plain tables, and what the program makes of them: the shared bench of the tests."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from pathlib import Path

import xlsxwriter

from calc.batch import evaluated
from calc.cell_text import rich_text_run
from calc.cells import Book, Cell, Kind, Sheet
from calc.declared import Declared, Factor, Input
from calc.intake.read_run import has_error, read_run
from calc.intake.records import Intake, JobInput
from calc.intake.schema import everything
from calc.layout.bid_cautions import slots_for
from calc.layout.workbook import plan_of
from calc.model.evaluate import evaluate
from calc.model.results import JobValues, each_job
from calc.model.sensitivity import with_sensitivity
from calc.xlsx_write.write import identity_of, job_workbook, workbook_bytes

Rows = Sequence[Sequence[object]]
"""A table: its header, then its rows. Texts are written as text, numbers as numbers, None as nothing."""

COMPANY: dict[str, Rows] = {
    "Company": [["fact", "value"], ["Company", "Gravelly Bend Flatwork"]],
    "Vehicles": [
        ["vehicle", "struck bed capacity yd3", "heaped factor", "payload ton", "bed length ft", "bed width ft"],
        ["dump trailer", 5, 1, 4.5, 12, 6],
        ["pickup", 2.5, 1.1, 1.25, 8, 5],
    ],
    "Prices": [
        ["item", "price", "unit", "size"],
        ["Bonding agent, small pail", 31.5, "pack", 1],
        ["Bonding agent, 5-gal pail", 118, "pack", 5],
        ["Curing compound, small pail", 24, "pack", 1],
        ["Curing compound, 5-gal pail", 88, "pack", 5],
        ["Sealer, small pail", 36, "pack", 1],
        ["Sealer, 5-gal pail", 149, "pack", 5],
    ],
}
"""A company book with everything that a job may ask of it."""


MADE = {"strings_to_formulas": False, "strings_to_urls": False, "in_memory": True}
"""Words stay words; and no part of a file goes to the disk by itself first, which takes longer than all the rest."""

_COMPANIES: dict[str, Book] = {}


def write_book(path: Path, tables: Mapping[str, Rows]) -> Path:
    """Writes a workbook with a sheet a table."""
    book = xlsxwriter.Workbook(str(path), MADE)
    for name, rows in tables.items():
        sheet = book.add_worksheet(name)
        for row, cells in enumerate(rows):
            for col, value in enumerate(cells):
                if isinstance(value, str):
                    sheet.write_string(row, col, rich_text_run(value))
                elif value is not None:
                    sheet.write_number(row, col, value)
    book.close()
    return path


def book_of(path: Path, tables: Mapping[str, Rows]) -> Book:
    """The book that is read from a workbook with these tables, without the file: tests make thousands of them."""
    sheets = {sheet: Sheet(sheet, tuple(_typed_rows(sheet, rows))) for sheet, rows in tables.items()}
    return Book(path, path.name, sheets, "")


def _typed_rows(sheet: str, rows: Rows) -> Iterator[tuple[int, dict[int, Cell]]]:
    for row, values in enumerate(rows, start=1):
        cells = {
            col: Cell(sheet, row, col, Kind.TEXT if isinstance(value, str) else Kind.NUMBER, value)
            for col, value in enumerate(values, start=1)
            if value not in (None, "")
        }
        if cells:
            yield row, cells


def intake_from(folder: Path, week: Mapping[str, Rows], company: Mapping[str, Rows] | None = COMPANY) -> Intake:
    """The intake of a jobs book and a company book that say so, as if they stood in ``folder``."""
    return read_run([book_of(folder / "week.xlsx", week)], company_book(folder, company))


def company_book(folder: Path, company: Mapping[str, Rows] | None) -> Book | None:
    """A company book of these tables; one that says the same is made once, since most jobs have the same."""
    if not company:
        return None
    said = repr(company)
    if said not in _COMPANIES:
        _COMPANIES[said] = book_of(folder / "company.xlsx", company)
    return _COMPANIES[said]


def jobs_of(intake: Intake) -> list[JobValues]:
    """The values of every job that no stop holds back."""
    return list(evaluated([job for job in intake.jobs if not has_error(job, intake.findings)]))


def only_job(folder: Path, week: Mapping[str, Rows], company: Mapping[str, Rows] | None = COMPANY) -> JobValues:
    """The values of the one job of a book; the findings are shown when it is held back."""
    intake = intake_from(folder, week, company)
    jobs = jobs_of(intake)
    assert len(jobs) == 1, "\n".join(str(each) for each in intake.findings)
    return jobs[0]


def in_lists_of(written: JobValues, job: JobInput) -> JobValues:
    """The values of a job in lists as long as those of a workbook that is written already, as after an edit of it."""
    (values,) = each_job(evaluate([job], lists=written.counts), [job])
    return values


def line(name: str) -> Declared:
    """The declaration that goes by an id such as ``Order.quantity``."""
    return _named()[name]


def given(name: str) -> Input:
    """The input that goes by an id such as ``Area.length``."""
    found = line(name)
    assert isinstance(found, Input), f"{name} is nothing that is typed"
    return found


def usual(name: str, word: str = "") -> float:
    """What a factor such as ``Risk.waste`` is where a company book says nothing; of a named row, as in
    ``Soil.swell``."""
    found = line(name)
    assert isinstance(found, Factor), f"{name} is no factor"
    return found.values[found.level.axis.words.index(word) if word else 0]


@cache
def _named() -> dict[str, Declared]:
    return {each.id: each for each in everything()}


def value(job: JobValues, name: str, row: int = 0) -> float | str:
    """The value of a declaration by its id, in a row of its level."""
    return job.of(line(name), row)


def written(job: JobValues, path: Path) -> Path:
    """The workbook of a job, on disk."""
    path.write_bytes(job_workbook(with_sensitivity(job)))
    return path


def written_sheet(job: JobValues, name: str, path: Path) -> Path:
    """One sheet of the workbook of a job, as it is written there, in a file by itself."""
    job = with_sensitivity(job)
    sheets = [each for each in plan_of(job.shape, slots_for(job)) if each.page.name == name]
    path.write_bytes(workbook_bytes(sheets, job, identity_of(job, name)))
    return path
