"""Tables of the house book whose rows have names, and facts that name one of those rows."""

from __future__ import annotations

from collections.abc import Iterable

from calc.cells import Book, Sheet
from calc.errors import Finding, InputRefused, Place, Severity
from calc.formula.levels import Level
from calc.intake.facts import origin_of
from calc.intake.records import REFUSED, CompanyBook, Entry, Row
from calc.intake.schema import NAMED_TABLES, TABLES, facts_of
from calc.intake.spelling import did_you_mean, normalize
from calc.intake.tables import TableRow, read_table
from calc.intake.values import read_given, read_id


def read_named_rows(company: CompanyBook, book: Book, sheet: Sheet, name: str) -> list[Finding]:
    """Reads a table of the house book, a row a name."""
    table = TABLES[name]
    rows, findings = read_table(book, sheet, table)
    listed = company.rows.setdefault(table.level, [])
    for row in rows:
        findings += _read_row(row, name, table.level, listed)
    return findings


def _read_row(row: TableRow, name: str, level: Level, listed: list[Row]) -> list[Finding]:
    key = level.axis.name
    try:
        word = read_id(row.cells[key], f"name of the {key}") if key in row.cells else ""
    except InputRefused as refused:
        return [Finding(Severity.STOP, row.place, refused.found, refused.remedy)]
    known = level.axis.words
    if word and known and normalize(word) not in map(normalize, known):
        return [Finding(Severity.STOP, row.place, f'There is no {key} "{word}".', did_you_mean(word, known))]
    if not word or normalize(word) in {normalize(each.word) for each in listed}:
        text = f'The {key} "{word}" stands twice.' if word else f"A {key} without a name."
        return [Finding(Severity.STOP, row.place, text, "Give it a name of its own.")]
    made = Row(word, row.place, refs=row.refs)
    findings = []
    for given in facts_of(name):
        cell = row.cells.get(given.header)
        if cell is None:
            made.entries[given] = Entry.not_typed(given)
            continue
        try:
            unit = row.units.get(given.header) or given.unit_text
            made.entries[given], asks, notes = read_given(given, cell, unit, origin_of(row, cell, company=True))
            findings += [Finding(Severity.ASK, row.at(cell), f"{word}: {ask}") for ask in asks]
            findings += [Finding(Severity.NOTE, row.at(cell), f"{word}: {note}") for note in notes]
        except InputRefused as refused:
            made.entries[given] = Entry.not_typed(given, REFUSED)
            findings.append(Finding(Severity.STOP, row.at(cell), f"{word}: {refused.found}", refused.remedy))
    listed.append(made)
    return findings


def complete(company: CompanyBook) -> None:
    """Gives every table with a row for each word of the trade those rows, in order, blank where none was typed."""
    for name in NAMED_TABLES:
        level = TABLES[name].level
        if level.axis.words:
            typed = {normalize(row.word): row for row in company.rows.get(level, [])}
            company.rows[level] = [typed.get(normalize(word)) or _blank(name, word) for word in level.axis.words]


def _blank(name: str, word: str) -> Row:
    return Row(word, Place("", name), entries={given: Entry.not_typed(given) for given in facts_of(name)})


def row_named(typed: str, rows: Iterable[Row], what: str) -> float:
    """The number of the row that goes by a name, or that has the typed number. Raises InputRefused for others."""
    words = [row.word for row in rows]
    for place, word in enumerate(words, start=1):
        if normalize(word) == normalize(typed):
            return float(place)
    raise InputRefused(f'There is no {what} "{typed}" in the house book.', did_you_mean(typed, words))
