"""Reading of a workbook file with openpyxl, which only this module imports: cells with addresses, or a plain error.

Every value is as in the file: texts are not trimmed, numbers are not guessed from texts, errors are not hidden. The
caller decides what a cell may contain.
"""

from __future__ import annotations

import hashlib
import math
import warnings
from collections.abc import Collection, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import replace
from datetime import date, datetime, time, timedelta
from io import BytesIO
from pathlib import Path
from typing import Any, Final

from openpyxl import load_workbook
from openpyxl.cell.read_only import EMPTY_CELL
from openpyxl.worksheet.formula import ArrayFormula, DataTableFormula

from calc.cell_text import MAX_TEXT, too_long, unescape_control
from calc.cells import Book, Cell, Kind, Sheet, Value
from calc.errors import Unreadable, one_line
from calc.xlsx_read.limits import Limits, scan_strings
from calc.xlsx_read.package import SAVE_AGAIN, BoundedZip, load
from calc.xlsx_read.package_parts import Entry, PackageParts, minimal_package, read_package_parts
from calc.xlsx_read.sheet_prescan import SheetFacts, Span, scan_sheet

MAX_REFUSAL: Final = 500
"""Characters of an error message."""


def read_book(path: Path, only: Collection[str] | None = None) -> Book:
    """Read a workbook, or ``only`` the sheets with these names: all of a job workbook takes half a second.

    :raises Unreadable: with one plain line: the file, what is wrong with it, and what to do.
    """
    try:
        return _read(path, only)
    except Unreadable as reason:
        message = str(reason)
        cause: BaseException = reason
    except Exception as reason:  # an error of a library becomes one plain line too
        message = f"it cannot be read: it is damaged, or not written as a standard workbook. {SAVE_AGAIN}"
        cause = reason
    raise Unreadable(one_line(f"{path.name or path}: {message}", MAX_REFUSAL)) from cause


def _read(path: Path, only: Collection[str] | None) -> Book:
    content = load(path)
    sha256 = hashlib.sha256(content).hexdigest()
    package_zip = BoundedZip(content)
    structure = read_package_parts(package_zip)
    if only is not None:
        structure = replace(structure, sheets=tuple(sheet for sheet in structure.sheets if sheet.name in only))
    package, facts = _minimal_package(package_zip, structure)
    package_zip.close()
    if not structure.sheets:
        return Book(path, path.name, {}, sha256, structure.notes)
    formulas: list[dict[tuple[int, int], str]] = [{} for _ in facts]
    if any(found.formulas for found in facts):
        with _opened(package, values=False) as sheets:
            formulas = [_formulas(sheet, found) for sheet, found in zip(sheets, facts, strict=True)]
    with _opened(package, values=True) as sheets:
        strikes = any(structure.struck)
        read = [_sheet(*each, strikes) for each in zip(structure.sheets, sheets, facts, formulas, strict=True)]
    return Book(path, path.name, {sheet.name: sheet for sheet in read}, sha256, structure.notes)


def _minimal_package(package_zip: BoundedZip, structure: PackageParts) -> tuple[BytesIO, list[SheetFacts]]:
    """The package for openpyxl, and the facts of its sheets: all of it was counted against the limits."""
    limits = Limits()
    scanned = [scan_sheet(package_zip.take(entry.part), entry.name, limits) for entry in structure.sheets]
    strings = package_zip.take(structure.strings) if structure.strings else b""
    scan_strings(strings, limits)
    return minimal_package(structure, [rows for _, rows in scanned], strings), [found for found, _ in scanned]


@contextmanager
def _opened(package: BytesIO, values: bool) -> Iterator[list[Any]]:
    """The sheets as openpyxl streams them, with the stored values or with the formulas.

    Its warnings are about styles, and about dates outside the calendar: those become errors, see :class:`Kind`.
    """
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        book = load_workbook(package, read_only=True, data_only=values, keep_links=False)
        try:
            yield book.worksheets
        finally:
            book.close()


def _rows(sheet: Any, facts: SheetFacts) -> Iterator[tuple[Any, ...]]:
    """The rows up to the last with a value; the declared size of the sheet is not used."""
    if facts.last_row:
        yield from sheet.iter_rows(max_row=facts.last_row, max_col=facts.last_column)


def _formulas(sheet: Any, facts: SheetFacts) -> dict[tuple[int, int], str]:
    """The formulas of a sheet by row and column."""
    if not facts.formulas:
        return {}
    cells = (cell for row in _rows(sheet, facts) for cell in row if cell.data_type == "f")
    return {(cell.row, cell.column): _formula_text(cell.value) for cell in cells}


def _formula_text(formula: Any) -> str:
    if isinstance(formula, ArrayFormula):
        return str(formula.text)
    if isinstance(formula, DataTableFormula):
        return f"=TABLE({formula.r1 or ''},{formula.r2 or ''})"
    return str(formula)


def _sheet(
    entry: Entry, sheet: Any, facts: SheetFacts, formulas: Mapping[tuple[int, int], str], strikes: bool
) -> Sheet:
    """The cells of a sheet; ``strikes`` says that the book has a style that strikes through."""
    rows = []
    for number, row in enumerate(_rows(sheet, facts), start=1):
        if number not in facts.rows:
            continue
        spans = [span for span in facts.merged if span.top <= number <= span.bottom]
        row_hidden = entry.hidden or number in facts.hidden_rows
        cells: dict[int, Cell] = {}
        for column, cell in enumerate(row, start=1):
            if cell is EMPTY_CELL:
                continue
            formula = formulas.get((number, column), "")
            if cell.value is None and not formula:
                continue
            kind, value = _value(cell, formula, (number, column) in facts.blank_results)
            if value == "" and not formula:
                continue
            hidden = row_hidden or column in facts.hidden_columns
            merged = _merged(spans, column)
            struck = strikes and bool(cell.font.strike)
            cells[column] = Cell(
                entry.name, number, column, kind, value, formula, merged, cell.number_format, hidden, struck
            )
            _check(cells[column])
        if cells:
            rows.append((number, cells))
    return Sheet(entry.name, tuple(rows), entry.hidden, tuple(span.ref for span in facts.merged))


def _value(cell: Any, formula: str, empty_result: bool) -> tuple[Kind, Value]:
    """The kind and the value of a cell."""
    value = cell.value
    if value is None:
        return (Kind.TEXT, "") if empty_result else (Kind.UNCOMPUTED, formula)
    if cell.data_type == "e":
        return Kind.ERROR, str(value)
    if isinstance(value, str):
        return Kind.TEXT, unescape_control(value)
    if isinstance(value, time | timedelta):
        return Kind.DURATION, _clock(value)
    if isinstance(value, date):
        return Kind.DATE, value if isinstance(value, datetime) else datetime.combine(value, time())
    return (Kind.BOOLEAN if isinstance(value, bool) else Kind.NUMBER), value


def _clock(value: time | timedelta) -> str:
    """Hours, minutes and seconds, as in 7:30:00."""
    if isinstance(value, time):
        value = timedelta(hours=value.hour, minutes=value.minute, seconds=value.second, microseconds=value.microsecond)
    seconds = round(value.total_seconds())
    minutes, second = divmod(abs(seconds), 60)
    hour, minute = divmod(minutes, 60)
    return f"{'-' if seconds < 0 else ''}{hour}:{minute:02}:{second:02}"


def _merged(spans: list[Span], column: int) -> str:
    return next((span.ref for span in spans if span.left <= column <= span.right), "")


def _check(cell: Cell) -> None:
    """Refuse a value that no spreadsheet program can store in a cell."""
    if isinstance(cell.value, str) and too_long(cell.value):
        raise Unreadable(
            f"the text in {cell.ref} of sheet {cell.sheet} has more than {MAX_TEXT:,} characters. Shorten it."
        )
    if cell.kind is Kind.NUMBER and isinstance(cell.value, int | float) and not math.isfinite(cell.value):
        raise Unreadable(f"the number in {cell.ref} of sheet {cell.sheet} is too large. Type it again.")
