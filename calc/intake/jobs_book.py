"""The week's book: its jobs, their areas, and what differs from the house's usual site conditions."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from calc.cells import Book, Cell, Sheet
from calc.declared import Input
from calc.errors import Finding, InputRefused, Place, Severity
from calc.intake.facts import origin_of, read_facts
from calc.intake.records import REFUSED, CompanyBook, Entry, JobInput
from calc.intake.schema import EXAMPLE, JOBS, SITE, TABLES, Heading, facts_of
from calc.intake.spelling import LETTERS, letters_apart, normalize
from calc.intake.tables import TableRow, read_table
from calc.intake.values import as_read, day_of, read_given, read_id

NO_ID = "(no job id)"
"""The job of a finding about a row that names none: it is a stop, and holds no other job back."""

_JOBS_TABLE = replace(
    TABLES[JOBS],
    headings=(
        *TABLES[JOBS].headings,
        *(Heading(given.label.lower(), given.unit_text, given.help, given) for given in facts_of(SITE)),
    ),
)
"""The sheet Jobs as it may be typed: every fact of Site conditions may be a column of it."""


@dataclass
class JobsBook:
    """The jobs of one book while they are read, by id as it is compared; ``nameless`` rows of Jobs have no id."""

    book: Book
    jobs: dict[str, JobInput] = field(default_factory=dict)
    findings: list[Finding] = field(default_factory=list)
    nameless: int = 0

    def stop(self, row: TableRow, cell: Cell | None, found: str, remedy: str, job: str) -> None:
        """Notes that a job cannot be bid as typed."""
        self.findings.append(Finding(Severity.STOP, row.at(cell), found, remedy, job))


def open_jobs_book(book: Book, sheets: dict[str, Sheet], company: CompanyBook, bid_date: float | None) -> JobsBook:
    """The jobs of a book with their own facts; their rows are read after."""
    week = JobsBook(book)
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
    _read_jobs(week, sheets[JOBS], company, bid_date)
    _read_site(week, sheets.get(SITE), company)
    return week


def _read_jobs(week: JobsBook, sheet: Sheet, company: CompanyBook, bid_date: float | None) -> None:
    rows, found = read_table(week.book, sheet, _JOBS_TABLE)
    week.findings += found
    for row in rows:
        id_ = id_of(week, row, "job", "job id", NO_ID)
        if not id_:
            week.nameless += 1
            if id_ is not None:
                week.stop(row, None, "A row of Jobs without a job id.", "Type the job id, or clear the row.", NO_ID)
        elif normalize(id_) == EXAMPLE:
            found_example = f'The rows of the job "{EXAMPLE}" are passed over.'
            week.findings.append(Finding(Severity.NOTE, row.at(row.cells["job"]), found_example))
        elif normalize(id_) in week.jobs:
            first = week.jobs[normalize(id_)]
            text = f'The job id "{id_}" stands twice: {first.place} has it too.'
            week.stop(row, row.cells["job"], text, "Give one of them another id.", first.id)
        else:
            week.jobs[normalize(id_)] = _read_job(week, row, id_, company, bid_date)
    if not rows and not found:
        remedy = "Type a row for each job: its id and its bid date."
        week.findings.append(Finding(Severity.STOP, Place(week.book.name, JOBS), "There is no job in Jobs.", remedy))


def _read_job(week: JobsBook, row: TableRow, id_: str, company: CompanyBook, bid_date: float | None) -> JobInput:
    job = JobInput(id_, row.at(row.cells["job"]), company, week.book.sha256, refs=row.refs)
    job.rows |= company.rows
    job.entries |= dict(entries_of(week, row, (*facts_of(JOBS), *facts_of(SITE)), id_))
    _date_the_bid(week, row, job, bid_date)
    return job


def _date_the_bid(week: JobsBook, row: TableRow, job: JobInput, bid_date: float | None) -> None:
    for given in facts_of(JOBS):
        if given.required and given.header not in row.cells:
            if bid_date is not None:
                job.entries[given] = Entry(bid_date, "", day_of(bid_date).isoformat(), "--bid-date")
            else:
                place = Place(row.place.book, row.place.sheet, row.refs.get(given.header, row.cells["job"].ref))
                remedy = "Type it as year-month-day, or give --bid-date for the whole run."
                week.findings.append(Finding(Severity.STOP, place, f"{given.label} is blank.", remedy, job.id))


def id_of(week: JobsBook, row: TableRow, label: str, what: str, job: str = "") -> str | None:
    """The id in a column, blank when the cell is; None when it cannot be read, which then stops ``job``.

    A row of a job that cannot be read may be anybody's: without ``job`` it stops the whole book.
    """
    cell = row.cells.get(label)
    if cell is None:
        return ""
    try:
        return read_id(cell, what)
    except InputRefused as refused:
        week.stop(row, cell, refused.found, refused.remedy, job)
        return None


def entries_of(week: JobsBook, row: TableRow, givens: tuple[Input, ...], job: str) -> Iterator[tuple[Input, Entry]]:
    """The entries of a row; a cell that cannot be read is a finding, and its entry is marked as refused."""
    for given in givens:
        unit = row.units.get(given.header) or given.unit_text
        entry = read_entry(week, row, given, row.cells.get(given.header), unit, job)
        if entry is not None:
            yield given, entry


def read_entry(week: JobsBook, row: TableRow, given: Input, cell: Cell | None, unit: str, job: str) -> Entry | None:
    """One entry with its questions and notes; None for a blank cell."""
    if cell is None:
        return None
    try:
        entry, asks, notes = read_given(given, cell, unit, origin_of(row, cell))
    except InputRefused as refused:
        week.stop(row, cell, refused.found, refused.remedy, job)
        return Entry.not_typed(given, REFUSED)
    read = as_read(given.label, cell)
    week.findings += [Finding(Severity.ASK, row.at(cell), ask, "", job) for ask in asks]
    week.findings += [Finding(Severity.NOTE, row.at(cell), note, "", job) for note in [*notes, read] if note]
    return entry


def _read_site(week: JobsBook, sheet: Sheet | None, company: CompanyBook) -> None:
    typed = {(job.id, given): "in Jobs too" for job in week.jobs.values() for given in job.entries}
    for job in week.jobs.values():
        job.entries = {**company.facts, **company.site, **job.entries}
    if sheet is None:
        return
    facts, found = read_facts(week.book, sheet, TABLES[SITE], facts_of(SITE), both=week.book.name in company.books)
    week.findings += found
    for (id_, given), entry in facts.items():
        place = Place(week.book.name, SITE, entry.origin.partition("!")[2])
        found_job = job_of(week, id_, place)
        if found_job is not None and (found_job.id, given) in typed:
            text = f"{given.label} of job {found_job.id} stands {typed[found_job.id, given]}."
            week.findings.append(Finding(Severity.STOP, place, text, "Leave one of the two.", found_job.id))
        elif found_job is not None:
            typed[found_job.id, given] = "twice"
            found_job.entries[given] = entry


def job_of(week: JobsBook, id_: str, place: Place) -> JobInput | None:
    """The job that a row belongs to. In a book with one job the id may be blank.

    A row of an unknown job stops every job whose id is within two letters, since it may be that one's.
    """
    if not id_ and len(week.jobs) + week.nameless == 1:
        return next(iter(week.jobs.values()), None)
    found = week.jobs.get(normalize(id_))
    if found is None and normalize(id_) != EXAMPLE:
        text = f'There is no job "{id_}" in Jobs.' if id_ else "The job id is blank, and the book has several jobs."
        apart = {job.id: letters_apart(normalize(id_), normalize(job.id)) for job in week.jobs.values()}
        close = sorted((id_ for id_ in apart if apart[id_] <= LETTERS), key=lambda each: apart[each]) if id_ else []
        remedy = f'Did you mean "{close[0]}"?' if close else "Type the id as it stands in Jobs."
        for is_stopped in close or [id_ or NO_ID]:
            week.findings.append(Finding(Severity.STOP, place, text, remedy, is_stopped))
    return found
