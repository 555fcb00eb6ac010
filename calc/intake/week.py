"""The week's book: its jobs, their areas, and what differs from the house's usual site conditions."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from calc.cells import Book, Cell, Sheet
from calc.declared import Given
from calc.errors import Finding, InputRefused, Place, Severity
from calc.intake.facts import origin_of, read_facts
from calc.intake.records import Entry, House, JobInput
from calc.intake.schema import EXAMPLE, JOBS, SITE, TABLES, facts_of
from calc.intake.tables import TableRow, read_table
from calc.intake.values import as_read, read_given, read_id
from calc.intake.words import near, same


@dataclass
class Week:
    """The jobs of one book while they are read, by id as it is compared."""

    book: Book
    jobs: dict[str, JobInput] = field(default_factory=dict)
    findings: list[Finding] = field(default_factory=list)

    def stop(self, row: TableRow, cell: Cell | None, found: str, remedy: str, job: str) -> None:
        """Notes that a job cannot be bid as typed."""
        self.findings.append(Finding(Severity.STOP, row.at(cell), found, remedy, job))


def open_week(book: Book, sheets: dict[str, Sheet], house: House, bid_date: float | None) -> Week:
    """The jobs of a book with their own facts; their rows are read after."""
    week = Week(book)
    if JOBS not in sheets:
        week.findings.append(
            Finding(
                Severity.STOP,
                Place(book.name),
                "There is no sheet Jobs.",
                "Add one, or write a blank with: flatwork blank FILE.xlsx",
            )
        )
        return week
    _read_jobs(week, sheets[JOBS], house, bid_date)
    _read_site(week, sheets.get(SITE), house)
    return week


def _read_jobs(week: Week, sheet: Sheet, house: House, bid_date: float | None) -> None:
    rows, found = read_table(week.book, sheet, TABLES[JOBS])
    week.findings += found
    for row in rows:
        id_ = id_of(week, row, "job", "job id")
        if id_ is None or same(id_) == EXAMPLE:
            continue
        if not id_:
            week.stop(row, None, "A row of Jobs without a job id.", "Type the job id, or clear the row.", "")
            continue
        if same(id_) in week.jobs:
            first = week.jobs[same(id_)]
            week.stop(
                row,
                row.cells["job"],
                f'The job id "{id_}" stands twice: {first.place} has it too.',
                "Give one of them another id.",
                first.id,
            )
            continue
        job = JobInput(id_, row.at(row.cells["job"]), house, week.book.sha256)
        week.jobs[same(id_)] = job
        job.rows |= house.rows
        job.entries |= dict(entries_of(week, row, facts_of(JOBS), id_))
        _date_the_bid(week, row, job, bid_date)


def _date_the_bid(week: Week, row: TableRow, job: JobInput, bid_date: float | None) -> None:
    for given in facts_of(JOBS):
        if given.required and given not in job.entries:
            if bid_date is not None:
                job.entries[given] = Entry(bid_date, "", "", "--bid-date")
            else:
                week.stop(
                    row,
                    row.cells["job"],
                    f"{given.label} is blank.",
                    "Type it as year-month-day, or give --bid-date for the whole run.",
                    job.id,
                )


def id_of(week: Week, row: TableRow, label: str, what: str) -> str | None:
    """The id in a column, blank when the cell is; None when it cannot be read, which is then a finding."""
    cell = row.cells.get(label)
    if cell is None:
        return ""
    try:
        return read_id(cell, what)
    except InputRefused as refused:
        week.stop(row, cell, refused.found, refused.remedy, "")
        return None


def entries_of(week: Week, row: TableRow, givens: tuple[Given, ...], job: str) -> Iterator[tuple[Given, Entry]]:
    """The entries of a row; a cell that cannot be read is a finding."""
    for given in givens:
        unit = row.units.get(given.header) or given.unit_text
        entry = read_entry(week, row, given, row.cells.get(given.header), unit, job)
        if entry is not None:
            yield given, entry


def read_entry(week: Week, row: TableRow, given: Given, cell: Cell | None, unit: str, job: str) -> Entry | None:
    """One entry with its questions and notes; None for a blank cell and for one that cannot be read."""
    if cell is None:
        return None
    try:
        entry, asks, notes = read_given(given, cell, unit, origin_of(row, cell))
    except InputRefused as refused:
        week.stop(row, cell, refused.found, refused.remedy, job)
        return None
    read = as_read(cell, f"{cell.sheet}!{cell.ref}")
    week.findings += [Finding(Severity.ASK, row.at(cell), ask, "", job) for ask in asks]
    week.findings += [Finding(Severity.NOTE, row.at(cell), note, "", job) for note in [*notes, read] if note]
    return entry


def _read_site(week: Week, sheet: Sheet | None, house: House) -> None:
    for job in week.jobs.values():
        job.entries = {**house.company, **house.site, **job.entries}
    if sheet is None:
        return
    facts, found = read_facts(week.book, sheet, TABLES[SITE], facts_of(SITE))
    week.findings += found
    for (id_, given), entry in facts.items():
        found_job = job_of(week, id_, Place(week.book.name, SITE, entry.origin.partition("!")[2]))
        if found_job is not None:
            found_job.entries[given] = entry


def job_of(week: Week, id_: str, place: Place) -> JobInput | None:
    """The job that a row belongs to. In a book with one job the id may be blank."""
    if not id_ and len(week.jobs) == 1:
        return next(iter(week.jobs.values()))
    found = week.jobs.get(same(id_))
    if found is None and same(id_) != EXAMPLE:
        text = f'There is no job "{id_}" in Jobs.' if id_ else "The job id is blank, and the book has several jobs."
        close = [job.id for job in week.jobs.values() if near(id_, job.id)]
        remedy = f'Did you mean "{close[0]}"?' if close else "Type the id as it stands in Jobs."
        for held in close or [id_]:
            week.findings.append(Finding(Severity.STOP, place, text, remedy, held or "(no job id)"))
    return found
