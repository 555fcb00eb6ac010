"""Tables that list facts down the page: one fact a row, with its value and perhaps the unit of its value."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from calc.cells import Book, Cell, Sheet
from calc.declared import Input
from calc.errors import Finding, InputRefused, Place, Severity
from calc.intake.records import REFUSED, CompanyBook, Entry
from calc.intake.schema import EVERY_JOB, EXAMPLE, Table
from calc.intake.spelling import did_you_mean, normalize
from calc.intake.tables import TableRow, read_table
from calc.intake.values import as_read, read_given, read_id, read_words

Facts = dict[tuple[str, Input], Entry]
"""The entries by job id (as first typed; blank where there is no such column) and fact."""


def read_facts(
    book: Book, sheet: Sheet, table: Table, known: tuple[Input, ...], company: bool = False, both: bool = True
) -> tuple[Facts, list[Finding]]:
    """The facts of a table: those of the single jobs, or those of the ``company``, which hold for every job.

    ``both`` says that the other rows of the sheet are read too; else each is a finding, since nothing comes of it.
    """
    rows, findings = read_table(book, sheet, table)
    facts: Facts = {}
    ids: dict[str, str] = {}
    for row in rows:
        job, found = _job_of(row)
        findings += found
        of_company = normalize(job) == EVERY_JOB or not table.has("job")
        if found or normalize(job) == EXAMPLE:
            continue
        if of_company != company:
            findings += [] if both else [_misplaced(row, "" if of_company else job, company)]
            continue
        findings += _read_fact(row, "" if company else ids.setdefault(normalize(job), job), known, facts, company)
    return facts, findings


def _misplaced(row: TableRow, job: str, company: bool) -> Finding:
    """A row of one job in the house book, or one of every job beside a house book."""
    if company:
        found, remedy = f"A house book holds for every job, and this row for {job or 'none'}.", f"Type {EVERY_JOB}"
        return Finding(
            Severity.STOP, row.at(row.cells.get("job")), found, f"{remedy}, or move it to the week's book.", job
        )
    found = f"A row for every job ({EVERY_JOB}) is read from the house book only."
    return Finding(Severity.STOP, row.at(row.cells.get("job")), found, "Move it there, or type the id of its job.")


def _job_of(row: TableRow) -> tuple[str, list[Finding]]:
    cell = row.cells.get("job")
    if cell is None:
        return "", []
    try:
        return read_id(cell, "job id"), []
    except InputRefused as refused:
        return "", [Finding(Severity.STOP, row.at(cell), refused.found, refused.remedy)]


@cache
def _by_name(known: tuple[Input, ...]) -> dict[str, Input]:
    """The facts by their label and by their header."""
    return {normalize(each.label): each for each in known} | {normalize(each.header): each for each in known}


def _read_fact(row: TableRow, job: str, known: tuple[Input, ...], facts: Facts, company: bool) -> list[Finding]:
    name, cell = row.cells.get("fact"), row.cells.get("value")
    if name is None:
        text = "A value without a fact." if cell is not None else "A row without a fact."
        return [Finding(Severity.STOP, row.at(cell), text, "Type the fact, or clear the row.", job)]
    if cell is None:
        return []
    given = _by_name(known).get(normalize(str(name.value)))
    if given is None:
        return [
            Finding(
                Severity.STOP,
                row.at(name),
                f'There is no fact "{name.value}".',
                did_you_mean(str(name.value), [each.label for each in known]),
                job,
            )
        ]
    if (job, given) in facts:
        return [Finding(Severity.STOP, row.at(name), f"{given.label} stands twice.", "Leave one of the rows.", job)]
    unit = row.cells.get("unit")
    origin = origin_of(row, cell, company)
    try:
        entry, asks, notes = read_given(given, cell, str(unit.value).strip() if unit else given.unit_text, origin)
    except InputRefused as refused:
        facts[job, given] = Entry.not_typed(given, REFUSED)
        return [Finding(Severity.STOP, row.at(cell), refused.found, refused.remedy, job)]
    try:
        facts[job, given] = replace(entry, notes=notes_beside(row))
    except InputRefused as refused:
        facts[job, given] = entry
        return [Finding(Severity.STOP, row.at(row.cells["notes"]), refused.found, refused.remedy, job)]
    read = as_read(given.label, cell)
    return [
        *(Finding(Severity.ASK, row.at(cell), ask, "", job) for ask in asks),
        *(Finding(Severity.NOTE, row.at(cell), note, "", job) for note in [*notes, *([read] if read else [])]),
    ]


def notes_beside(row: TableRow) -> str:
    """What was noted in the row. Raises InputRefused when it is too long."""
    cell = row.cells.get("notes")
    return "" if cell is None else read_words(cell)


def origin_of(row: TableRow, cell: Cell, company: bool = False) -> str:
    """Where a value was typed: sheet and cell, and the book when it is the house's."""
    place = f"{cell.sheet}!{cell.ref}"
    return f"{row.place.book} {place}" if company else place


def place_of(entry: Entry, otherwise: Place, company: CompanyBook) -> Place:
    """The cell that an entry of a job was typed in; ``otherwise`` for one that no cell holds."""
    origin, book = entry.origin, otherwise.book
    for name in company.books:
        if origin.startswith(f"{name} "):
            origin, book = origin.removeprefix(f"{name} "), name
    sheet, _, cell = origin.partition("!")
    return Place(book, sheet, cell) if cell else otherwise
