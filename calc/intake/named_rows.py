"""Tables of the company book whose rows have names, and facts that refer to such a row."""

from __future__ import annotations

from collections.abc import Iterable

from calc.cells import Book, Sheet
from calc.errors import Finding, FindingKind, InputRefused, Place
from calc.formula.levels import Level
from calc.intake.facts import origin_of
from calc.intake.records import REFUSED, CompanyBook, Entry, Row
from calc.intake.schema import EXAMPLE, NAMED_TABLES, TABLES, facts_of
from calc.intake.spelling import did_you_mean, normalize
from calc.intake.tables import TableRow, read_table
from calc.intake.values import read_id, read_input


def read_named_rows(company: CompanyBook, book: Book, sheet: Sheet, name: str) -> list[Finding]:
    """Reads a table of the company book with one named row per entry."""
    table = TABLES[name]
    rows, findings = read_table(book, sheet, table)
    read = company.rows.setdefault(table.level, [])
    for row in rows:
        if not _is_example(row, table.level):
            findings += _read_row(row, name, table.level, read)
    return findings


def _is_example(row: TableRow, level: Level) -> bool:
    """Whether it is the example row of a blank book, which is passed over; a table with fixed names has none."""
    cell = row.cells.get(level.axis.name)
    return not level.axis.words and cell is not None and normalize(str(cell.value)) == EXAMPLE


def _read_row(row: TableRow, name: str, level: Level, read: list[Row]) -> list[Finding]:
    """Reads one row and adds it to the rows that were ``read`` before."""
    key = level.axis.name
    try:
        word = read_id(row.cells[key], f"name of the {key}") if key in row.cells else ""
    except InputRefused as refused:
        return [row.refused(None, refused)]
    error = _name_error(word, level, read)
    if error is not None:
        return [row.refused(None, error)]
    new = Row(word, row.place, refs=row.refs)
    read.append(new)
    findings = []
    for given in facts_of(name):
        new.entries[given] = Entry.not_typed(given)
        cell = row.cells.get(given.header)
        if cell is None:
            continue
        try:
            unit = row.units.get(given.header) or given.unit_text
            new.entries[given], remarks = read_input(given, cell, unit, origin_of(row, cell, company=True))
            findings += [Finding(each.kind, row.at(cell), f"{word}: {each.text}") for each in remarks]
        except InputRefused as refused:
            new.entries[given] = Entry.not_typed(given, REFUSED)
            findings.append(Finding(refused.kind, row.at(cell), f"{word}: {refused.found}", refused.remedy))
    return findings


def _name_error(word: str, level: Level, read: Iterable[Row]) -> InputRefused | None:
    key, known = level.axis.name, level.axis.words
    unique = "Give it a name of its own."
    if not word:
        return InputRefused(FindingKind.MISSING_ROW_NAME, f"A {key} without a name.", unique)
    if known and normalize(word) not in map(normalize, known):
        found = f'There is no {key} "{word}".'
        return InputRefused(FindingKind.UNKNOWN_ROW_NAME, found, did_you_mean(word, known))
    if normalize(word) in {normalize(each.word) for each in read}:
        return InputRefused(FindingKind.DUPLICATE_ROW_NAME, f'The {key} "{word}" is listed twice.', unique)
    return None


def complete(company: CompanyBook) -> None:
    """Gives each table with a fixed list of names all its rows in order, blank where nothing was typed."""
    for name in NAMED_TABLES:
        level = TABLES[name].level
        if level.axis.words:
            typed = {normalize(row.word): row for row in company.rows.get(level, [])}
            company.rows[level] = [typed.get(normalize(word)) or _blank(name, word) for word in level.axis.words]


def _blank(name: str, word: str) -> Row:
    return Row(word, Place("", name), entries={given: Entry.not_typed(given) for given in facts_of(name)})


def row_named(typed: str, rows: Iterable[Row], what: str) -> float:
    """The number of the row with the typed name, counting from 1. Raises InputRefused when there is none."""
    words = [row.word for row in rows]
    for number, word in enumerate(words, start=1):
        if normalize(word) == normalize(typed):
            return float(number)
    found = f'There is no {what} "{typed}" in the company book.'
    raise InputRefused(FindingKind.UNKNOWN_ROW_NAME, found, did_you_mean(typed, words))
