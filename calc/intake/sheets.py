"""Which sheet of a book is which input table."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from calc.cells import Book, Sheet
from calc.errors import Finding, FindingKind, Place
from calc.intake.schema import COMPANY_TABLES, LISTS, READ_ME, TABLES
from calc.intake.spelling import is_similar, normalize
from calc.intake.tables import likeness

Sheets = dict[str, tuple[Book, Sheet]]
"""The sheets of a run by table name."""


def known_sheets(book: Book) -> tuple[dict[str, Sheet], list[Finding]]:
    """The sheets of ``book`` by table; a misspelled name is an error of the book, any other sheet is ignored."""
    tables = {normalize(name): name for name in TABLES}
    found = {tables[normalize(name)]: sheet for name, sheet in book.sheets.items() if normalize(name) in tables}
    findings = [Finding(FindingKind.WORKBOOK_FEATURE, Place(book.name), note) for note in book.notes]
    for name, sheet in book.sheets.items():
        place = Place(book.name, name)
        if normalize(name) in tables:
            if sheet.hidden:
                findings.append(Finding(FindingKind.HIDDEN_SHEET, place, "The sheet is hidden. It was read."))
        elif normalize(name) not in (normalize(READ_ME), normalize(LISTS)):
            findings += _unknown_sheet(place, sheet, [table for table in TABLES if table not in found])
    return found, findings


def _unknown_sheet(place: Place, sheet: Sheet, absent: Sequence[str]) -> list[Finding]:
    """What is said of a sheet that is no input table: a table on it is not passed over with a note."""
    if not sheet.rows:
        return []
    like = max(TABLES, key=lambda name: likeness(sheet, TABLES[name]))
    like = like if likeness(sheet, TABLES[like]) else ""
    similar = next((table for table in absent if is_similar(sheet.name, table)), "")
    similar = like if like in absent else similar
    if similar:
        found, remedy = f'The sheet "{sheet.name}" is not known.', f'Did you mean "{similar}"? Rename the sheet.'
        return [Finding(FindingKind.MISSPELLED_SHEET, place, found, remedy)]
    if like:
        found = f'The sheet "{sheet.name}" has a table like {like}. It is ignored. Is that meant?'
        return [Finding(FindingKind.UNREAD_TABLE, place, found)]
    found = f'The sheet "{sheet.name}" is not an input table. It is ignored.'
    return [Finding(FindingKind.UNKNOWN_SHEET, place, found)]


def company_sheets(books: Iterable[tuple[Book, dict[str, Sheet]]]) -> tuple[Sheets, list[Finding]]:
    """The company tables of a run; a table that is in two books is an error."""
    sheets: Sheets = {}
    findings = []
    for book, tables in books:
        for name in COMPANY_TABLES:
            if name not in tables:
                continue
            if name not in sheets:
                sheets[name] = (book, tables[name])
                continue
            found = f"The sheet {name} is in {sheets[name][0].name} too."
            remedy = "Keep it in one of the two books."
            findings.append(Finding(FindingKind.DUPLICATE_TABLE, Place(book.name, name), found, remedy))
    return sheets, findings
