"""Holds a written workbook against the rules that a reader, a printer and other spreadsheet programs rely on.

``lint(path)`` gives a :class:`Fault` for each place that breaks a :class:`Rule`. It knows the file only: what the
numbers should be is the business of the witnesses, and of the tests of the trade's rules.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path
from typing import Any

from openpyxl.styles.numbers import is_datetime
from openpyxl.utils import coordinate_to_tuple

from formula_lint import formula_faults
from formula_text import area
from written_book import Book, Fault, Rule, Standard

__all__ = ["JOB", "Fault", "Rule", "Standard", "lint"]

JOB = Standard()
"""The standard for a job's workbook."""

FOREIGN_PARTS = re.compile(r"vbaProject|externalLink|connections|queryTable|activeX|oleObj|embeddings|customUI|webext")
"""Names of the parts of a file that run something, or reach out of it."""

FORBIDDEN_IN_NAMES = re.compile(r"[\[\]:*?/\\]|^'|'$")
LONGEST_NAME = 31
_FIXED = "fixed at issue"
FIXED = "fixed for each row"
"""How a row of a table is worked whose numbers are no result: which piles a plan keeps apart, what a pump is."""
TITLE_SIZE = 11
"""Points of the title of a block."""

ROWS_IN_SIGHT = 20
ROWS_ON_A_PAGE = 45
NAMESPACES = {
    "book": "http://schemas.openxmlformats.org/spreadsheetml/2006/main",
    "dc": "http://purl.org/dc/elements/1.1/",
    "dcterms": "http://purl.org/dc/terms/",
}


def lint(path: Path, standard: Standard = JOB) -> list[Fault]:
    """Every fault of a written workbook, in no order that means anything; an empty list is what is wanted."""
    book = Book(path, standard)
    faults: list[Fault] = []
    for check in (_sheets, _parts, _names, _settings, _identity, _hidden, _printing, _typed_numbers, _dates, _digits):
        faults.extend(check(book))
    faults.extend(formula_faults(book))
    return faults


def _sheets(book: Book) -> Iterator[Fault]:
    names = book.written.sheetnames
    expected = book.standard.sheets
    if expected and tuple(names) != expected:
        sentence = f"The sheets are {', '.join(names)}; they should be {', '.join(expected)}."
        yield Fault(Rule.SHEET_ORDER, "workbook", sentence)
    for sheet in book.written.worksheets:
        name = sheet.title
        if len(name) > LONGEST_NAME or FORBIDDEN_IN_NAMES.search(name) or name.casefold() == "history":
            yield Fault(Rule.SHEET_NAME, name, "Not every spreadsheet program takes this name.")
        if not isinstance(sheet["A1"].value, str):
            yield Fault(Rule.SHEET_TITLE, f"{name}!A1", "There is no title.")
        for merged in sheet.merged_cells.ranges:
            yield Fault(Rule.NOTHING_MERGED, f"{name}!{merged}", "These cells are merged.")
        if sheet.protection.password or sheet.protection.hashValue:
            yield Fault(Rule.NO_PASSWORD, name, "The sheet is locked with a password.")


def _parts(book: Book) -> Iterator[Fault]:
    for name in book.parts:
        if FOREIGN_PARTS.search(name):
            yield Fault(Rule.NOTHING_FOREIGN, name, "This part runs something or reaches out of the file.")
        if not name.endswith(".rels"):
            continue
        for relation in book.part(name):
            if relation.get("TargetMode") == "External":
                yield Fault(Rule.NOTHING_FOREIGN, name, f"A link leads to {relation.get('Target')}.")


def _names(book: Book) -> Iterator[Fault]:
    for holder in (book.written, *book.written.worksheets):
        for name, defined in holder.defined_names.items():
            meant = area(defined.attr_text, "")
            if meant is None or not meant.one_cell or not meant.sheet:
                yield Fault(Rule.ONE_CELL_NAMES, name, f"The name stands for {defined.attr_text}, not for one cell.")


def _settings(book: Book) -> Iterator[Fault]:
    """Read from the file itself: openpyxl fills in what is not there."""
    root = book.part("xl/workbook.xml")
    calculation = root.find("book:calcPr", NAMESPACES)
    settings = {} if calculation is None else calculation.attrib
    if not _on(settings.get("fullCalcOnLoad")):
        yield Fault(Rule.RECALCULATED_ON_LOAD, "workbook", "It does not ask to be recalculated on opening.")
    if _on(settings.get("iterate")):
        yield Fault(Rule.CIRCLE, "workbook", "Circular formulas are allowed.")
    properties = root.find("book:workbookPr", NAMESPACES)
    if properties is not None and _on(properties.get("date1904")):
        yield Fault(Rule.PLAIN_DATES, "workbook", "Dates count from 1904.")
    security = root.find("book:workbookProtection", NAMESPACES)
    if security is not None and {"workbookPassword", "workbookHashValue"} & set(security.attrib):
        yield Fault(Rule.NO_PASSWORD, "workbook", "The workbook is locked with a password.")


def _identity(book: Book) -> Iterator[Fault]:
    core = book.part("docProps/core.xml")
    for tag in ("dc:title", "dc:creator", "dcterms:created"):
        if core is None or not core.findtext(tag, namespaces=NAMESPACES):
            yield Fault(Rule.IDENTITY, "document properties", f"The property {tag.partition(':')[2]} is empty.")
    custom = {each.name: each.value for each in book.written.custom_doc_props.props}
    for name in ("input_sha256", "program_version"):
        if not custom.get(name):
            yield Fault(Rule.IDENTITY, "document properties", f"The property {name} is not there.")


def _hidden(book: Book) -> Iterator[Fault]:
    for sheet in book.written.worksheets:
        if sheet.sheet_state != "visible":
            yield Fault(Rule.NOTHING_HIDDEN, sheet.title, f"The sheet is {sheet.sheet_state}.")
        for number, row in sheet.row_dimensions.items():
            if row.hidden or row.collapsed or row.height == 0:
                yield Fault(Rule.NOTHING_HIDDEN, f"{sheet.title}!{number}", "The row is hidden.")
        for letter, column in sheet.column_dimensions.items():
            if column.hidden or column.collapsed or column.width == 0:
                yield Fault(Rule.NOTHING_HIDDEN, f"{sheet.title}!{letter}", "The column is hidden.")


def _printing(book: Book) -> Iterator[Fault]:
    for sheet in book.written.worksheets:
        # a pane that is frozen above the first row shows as A1
        frozen = coordinate_to_tuple(sheet.freeze_panes)[0] > 1 if sheet.freeze_panes else False
        if sheet.max_row > ROWS_IN_SIGHT and not frozen:
            yield Fault(Rule.FROZEN_HEADER, sheet.title, "The header scrolls away.")
        if sheet.max_row > ROWS_ON_A_PAGE and not sheet.print_title_rows:
            yield Fault(Rule.REPEATED_HEADER, sheet.title, "The header is printed on the first page only.")
        setup = sheet.sheet_properties.pageSetUpPr
        fitted = setup is not None and setup.fitToPage and sheet.page_setup.fitToWidth in (None, 1)
        full_size = not (setup is not None and setup.fitToPage) and sheet.page_setup.scale in (None, 100)
        if not (full_size if sheet.title in book.standard.full_size else fitted):
            yield Fault(Rule.PAGE_WIDTH, sheet.title, "The sheet is not printed as the workbook has it.")


def _typed_numbers(book: Book) -> Iterator[Fault]:
    allowed = book.standard.typed | book.standard.as_issued
    for sheet, cell in book.cells:
        if sheet.title not in allowed and cell.data_type in ("n", "d") and not _declared(sheet, cell):
            place = f"{sheet.title}!{cell.coordinate}"
            yield Fault(Rule.TYPED_NUMBER, place, f"The number {cell.value} is typed here; a formula should be.")


def _declared(sheet: Any, cell: Any) -> bool:
    """Does the nearest text above the cell, or left of it, or the title of its block allow a typed number?"""
    above = [sheet.cell(row, cell.column) for row in range(cell.row - 1, 0, -1)]
    left = [sheet.cell(cell.row, column) for column in range(cell.column - 1, 0, -1)]
    row = (sheet.cell(cell.row, column).value for column in range(1, sheet.max_column + 1))
    if any(isinstance(each, str) and each.casefold() in (FIXED, _FIXED) for each in row):
        return True
    headings = (next((each.value for each in cells if each.data_type == "s"), "") for cells in (above, left))
    if any(heading.casefold().endswith("no.") or _FIXED in heading.casefold() for heading in headings):
        return True
    return _FIXED in _block_title(sheet, cell.row).casefold() or _note_of_column(sheet, cell) == FIXED


def _note_of_column(sheet: Any, cell: Any) -> str:
    """How the column of a cell is worked, in small letters: behind its letter in the notes below its table."""
    for row in sheet.iter_rows(min_row=cell.row + 1, values_only=True):
        texts = [each.strip() for each in row if isinstance(each, str)]
        for letter, told in pairwise(texts):
            if letter.startswith(f"{cell.column_letter}  "):
                return told.casefold()
    return ""


def _block_title(sheet: Any, row: int) -> str:
    """The nearest row above that has text in its first cell and nothing beside it, or the large type of a title."""
    for above in range(row - 1, 0, -1):
        first, *beside = (sheet.cell(above, column) for column in range(1, sheet.max_column + 1))
        alone = not any(each.value for each in beside)
        if isinstance(first.value, str) and (alone or first.font.sz == TITLE_SIZE):
            return first.value
    return ""


def _dates(book: Book) -> Iterator[Fault]:
    for sheet, cell in book.cells:
        if is_datetime(cell.number_format) in ("date", "datetime") and cell.number_format not in book.standard.dates:
            place = f"{sheet.title}!{cell.coordinate}"
            yield Fault(Rule.PLAIN_DATES, place, f"The date is shown as {cell.number_format}.")


def _digits(book: Book) -> Iterator[Fault]:
    for sheet, cell in book.cells:
        if "General" in cell.number_format and ";" in cell.number_format:
            place = f"{sheet.title}!{cell.coordinate}"
            yield Fault(Rule.DIGITS_FIT, place, f"The number is shown as {cell.number_format}.")


def _on(attribute: str | None) -> bool:
    return attribute in ("1", "true")
