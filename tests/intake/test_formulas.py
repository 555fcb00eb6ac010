"""A formula in an input cell is said, in whatever table and column: only its stored value was read."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from books import book_of
from calc.cells import Book
from calc.errors import FindingKind
from calc.intake.read_run import read_run
from calc.intake.schema import TABLES
from whole_job import whole_company, whole_week


def with_formulas(book: Book) -> Book:
    """The book with a formula in every cell below the headers."""
    sheets = {}
    for name, sheet in book.sheets.items():
        header, *rows = sheet.rows
        typed = [(row, {at: replace(cell, formula="=B1*2") for at, cell in cells.items()}) for row, cells in rows]
        sheets[name] = replace(sheet, rows=(header, *typed))
    return replace(book, sheets=sheets)


def test_a_formula_in_any_column_of_any_table_is_noted_at_its_cell(tmp_path: Path) -> None:
    week = with_formulas(book_of(tmp_path / "week.xlsx", whole_week(("walk",))))
    company = with_formulas(book_of(tmp_path / "company.xlsx", whole_company()))
    intake = read_run([week], company)
    noted = {
        (each.place.book, each.place.sheet, each.place.cell)
        for each in intake.findings
        if each.kind is FindingKind.FORMULA_READ and "=B1*2; its stored value" in each.found
    }
    typed = {
        (book.name, name, cell.ref)
        for book in (week, company)
        for name, sheet in book.sheets.items()
        for _, cells in sheet.rows[1:]
        for cell in cells.values()
    }
    assert {sheet for _, sheet, _ in typed} == set(TABLES)
    assert typed - noted == set()
