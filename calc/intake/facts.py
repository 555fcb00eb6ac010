"""Tables of facts: one fact per row, with its value and an optional unit."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from calc.cells import Book, Cell, Sheet
from calc.declared import Input, Kind
from calc.errors import Finding, FindingKind, InputRefused, Place
from calc.intake.records import REFUSED, CompanyBook, Entry
from calc.intake.schema import EVERY_JOB, EXAMPLE, Table
from calc.intake.spelling import did_you_mean, normalize
from calc.intake.tables import TableRow, read_table
from calc.intake.values import read_id, read_input, read_text

Facts = dict[tuple[str, Input], Entry]
"""The entries by job id (as first typed; blank in a table without a job column) and fact."""


def read_facts(
    book: Book, sheet: Sheet, table: Table, known: tuple[Input, ...], company: bool = False, both: bool = True
) -> tuple[Facts, list[Finding]]:
    """The facts of a table: those of single jobs, or those of the ``company``, which apply to every job.

    ``both`` says that the other rows of the sheet are read in another call; else each of them is an error.
    """
    rows, findings = read_table(book, sheet, table)
    facts: Facts = {}
    ids: dict[str, str] = {}
    for row in rows:
        job, errors = _job_of(row)
        findings += errors
        of_company = normalize(job) == EVERY_JOB or not table.has("job")
        if errors or normalize(job) == EXAMPLE:
            continue
        if of_company != company:
            findings += [] if both else [_misplaced(row, "" if of_company else job, company)]
            continue
        findings += _read_fact(row, "" if company else ids.setdefault(normalize(job), job), known, facts, company)
    return facts, findings


def _misplaced(row: TableRow, job: str, company: bool) -> Finding:
    """A row of one job in the company book, or a row of every job in a jobs book."""
    place = row.at(row.cells.get("job"))
    if company:
        found = f"The company book applies to every job, and this row is for {job or 'no job'}."
        remedy = f"Type {EVERY_JOB}, or move the row to the jobs book."
        return Finding(FindingKind.MISPLACED_FACT, place, found, remedy, job)
    found = f"Rows for every job ({EVERY_JOB}) are read from the company book only."
    return Finding(FindingKind.MISPLACED_FACT, place, found, "Move the row there, or type the id of its job.")


def _job_of(row: TableRow) -> tuple[str, list[Finding]]:
    cell = row.cells.get("job")
    if cell is None:
        return "", []
    try:
        return read_id(cell, "job id"), []
    except InputRefused as refused:
        return "", [row.refused(cell, refused)]


@cache
def _by_name(known: tuple[Input, ...]) -> dict[str, Input]:
    """The facts by their label and by their header."""
    return {normalize(each.label): each for each in known} | {normalize(each.header): each for each in known}


def _read_fact(row: TableRow, job: str, known: tuple[Input, ...], facts: Facts, company: bool) -> list[Finding]:
    name, cell = row.cells.get("fact"), row.cells.get("value")
    if name is None:
        found = "A value without a fact." if cell is not None else "A row without a fact."
        remedy = "Type the fact, or clear the row."
        return [Finding(FindingKind.MISSING_FACT, row.at(cell), found, remedy, job)]
    if cell is None:
        return _unused(row, "notes", f"Notes on {name.value} are not kept without a value.", job)
    given = _by_name(known).get(normalize(str(name.value)))
    if given is None:
        found, remedy = f'There is no fact "{name.value}".', did_you_mean(str(name.value), [x.label for x in known])
        return [Finding(FindingKind.UNKNOWN_FACT, row.at(name), found, remedy, job)]
    if (job, given) in facts:
        found, remedy = f"{given.label} is typed twice.", "Delete one of the two rows."
        return [Finding(FindingKind.DUPLICATE_FACT, row.at(name), found, remedy, job)]
    unit = row.cells.get("unit")
    counted = given.kind in (Kind.NUMBER, Kind.SLOPE)
    idle = [] if counted else _unused(row, "unit", f"{given.label} has no unit.", job)
    try:
        typed_unit = str(unit.value).strip() if unit else given.unit_text
        entry, remarks = read_input(given, cell, typed_unit, origin_of(row, cell, company))
    except InputRefused as refused:
        facts[job, given] = Entry.not_typed(given, REFUSED)
        return [*idle, row.refused(cell, refused, job)]
    try:
        facts[job, given] = replace(entry, notes=notes_text(row))
    except InputRefused as refused:
        facts[job, given] = entry
        return [row.refused(row.cells["notes"], refused, job)]
    return [*idle, *(Finding(each.kind, row.at(cell), each.text, "", job) for each in remarks)]


def _unused(row: TableRow, column: str, found: str, job: str) -> list[Finding]:
    """A note that a cell beside a value does nothing; none where it is blank."""
    cell = row.cells.get(column)
    return [] if cell is None else [Finding(FindingKind.UNUSED_INPUT, row.at(cell), f"{found} It is ignored.", "", job)]


def notes_text(row: TableRow) -> str:
    """The text of the column notes. Raises InputRefused when it cannot be used."""
    cell = row.cells.get("notes")
    return "" if cell is None else read_text(cell)


def origin_of(row: TableRow, cell: Cell, company: bool = False) -> str:
    """Where a value was typed: sheet and cell, with the book in front when it is the company's."""
    place = f"{cell.sheet}!{cell.ref}"
    return f"{row.place.book} {place}" if company else place


def place_of(entry: Entry, otherwise: Place, company: CompanyBook) -> Place:
    """The cell that an entry of a job was typed in; ``otherwise`` for an entry that was not typed."""
    origin, book = entry.origin, otherwise.book
    for name in company.books:
        if origin.startswith(f"{name} "):
            origin, book = origin.removeprefix(f"{name} "), name
    sheet, _, cell = origin.partition("!")
    return Place(book, sheet, cell) if cell else otherwise
