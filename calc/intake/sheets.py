"""Which sheet of a book is which table."""

from __future__ import annotations

from collections.abc import Iterable

from calc.cells import Book, Sheet
from calc.errors import Finding, Place, Severity
from calc.intake.schema import COMPANY_TABLES, LISTS, READ_ME, TABLES
from calc.intake.spelling import near, normalize

Sheets = dict[str, tuple[Book, Sheet]]
"""The sheets of a run by the table they are."""


def known_sheets(book: Book) -> tuple[dict[str, Sheet], list[Finding]]:
    """The sheets of ``book`` by table; a sheet that is nearly one stops the book, others are passed over."""
    tables = {normalize(name): name for name in TABLES}
    found = {tables[normalize(name)]: sheet for name, sheet in book.sheets.items() if normalize(name) in tables}
    findings = [Finding(Severity.NOTE, Place(book.name), note) for note in book.notes]
    for name, sheet in book.sheets.items():
        if normalize(name) in tables:
            if sheet.hidden:
                findings.append(Finding(Severity.NOTE, Place(book.name, name), "The sheet is hidden; it was read."))
            continue
        if normalize(name) in (normalize(READ_ME), normalize(LISTS)):
            continue
        meant = next((table for table in TABLES if table not in found and near(name, table)), "")
        if meant:
            findings.append(
                Finding(
                    Severity.STOP,
                    Place(book.name, name),
                    f'The sheet "{name}" is not known.',
                    f'Did you mean "{meant}"? Rename the sheet.',
                )
            )
        elif sheet.rows:
            findings.append(
                Finding(
                    Severity.NOTE,
                    Place(book.name, name),
                    f'The sheet "{name}" is not an input table, so it is passed over.',
                )
            )
    return found, findings


def company_sheets(company: Iterable[tuple[Book, dict[str, Sheet]]]) -> tuple[Sheets, list[Finding]]:
    """The house tables of a run; one that stands in two books is a stop."""
    sheets: Sheets = {}
    findings = []
    for book, tables in company:
        for name in COMPANY_TABLES:
            if name not in tables:
                continue
            if name in sheets:
                first = sheets[name][0].name
                findings.append(
                    Finding(
                        Severity.STOP,
                        Place(book.name, name),
                        f"{name} stands in {first} too.",
                        "Leave it in one of the two books.",
                    )
                )
            else:
                sheets[name] = (book, tables[name])
    return sheets, findings
