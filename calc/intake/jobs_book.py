"""The jobs book: its jobs, and the site conditions that differ from the company's usual ones."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from calc.cells import Book, Cell, Sheet
from calc.declared import Input
from calc.errors import Finding, FindingKind, InputRefused, Place
from calc.intake.facts import origin_of, read_facts
from calc.intake.records import REFUSED, CompanyBook, Entry, JobInput
from calc.intake.schema import EXAMPLE, JOBS, SITE, TABLES, Heading, facts_of
from calc.intake.spelling import MAX_EDITS, edit_distance, normalize
from calc.intake.tables import TableRow, read_table
from calc.intake.values import day_of, read_id, read_input

NO_ID = "(no job id)"
"""The job of a finding about a row without a job id: an error that keeps no other job from being written."""

RENAME = "Give one of the two another id."
"""The remedy for two rows with one id."""

_JOBS_TABLE = replace(
    TABLES[JOBS],
    headings=(
        *TABLES[JOBS].headings,
        *(Heading(given.label.lower(), given.unit_text, given.help, given) for given in facts_of(SITE)),
    ),
)
"""The sheet Jobs with every fact of Site conditions as an optional column."""


@dataclass
class JobsBook:
    """The jobs of one book while it is read, by normalized id; ``rows_without_id`` counts such rows of Jobs."""

    book: Book
    jobs: dict[str, JobInput] = field(default_factory=dict)
    findings: list[Finding] = field(default_factory=list)
    rows_without_id: int = 0

    def add(self, kind: FindingKind, place: Place, found: str, remedy: str = "", job: str = "") -> None:
        """Adds a finding."""
        self.findings.append(Finding(kind, place, found, remedy, job))

    def refuse(self, row: TableRow, cell: Cell | None, refused: InputRefused, job: str) -> None:
        """Adds the finding about a cell whose value was refused."""
        self.findings.append(row.refused(cell, refused, job))


def open_jobs_book(book: Book, sheets: dict[str, Sheet], company: CompanyBook, bid_date: float | None) -> JobsBook:
    """The jobs of a book with their own facts; their areas and other rows are read afterwards."""
    jobs_book = JobsBook(book)
    if JOBS not in sheets:
        remedy = "Add one, or write a blank book with: flatwork blank FILE.xlsx"
        jobs_book.add(FindingKind.MISSING_JOBS_SHEET, Place(book.name), "There is no sheet Jobs.", remedy)
        return jobs_book
    _read_jobs(jobs_book, sheets[JOBS], company, bid_date)
    _read_site(jobs_book, sheets.get(SITE), company)
    return jobs_book


def _read_jobs(jobs_book: JobsBook, sheet: Sheet, company: CompanyBook, bid_date: float | None) -> None:
    rows, findings = read_table(jobs_book.book, sheet, _JOBS_TABLE)
    jobs_book.findings += findings
    for row in rows:
        id_ = id_of(jobs_book, row, "job", "job id", NO_ID)
        if not id_:
            jobs_book.rows_without_id += 1
            if id_ is not None:
                found, remedy = "A row of Jobs without a job id.", "Type the job id, or clear the row."
                jobs_book.add(FindingKind.MISSING_JOB_ID, row.place, found, remedy, NO_ID)
        elif normalize(id_) == EXAMPLE:
            continue
        elif normalize(id_) in jobs_book.jobs:
            first = jobs_book.jobs[normalize(id_)]
            jobs_book.findings.append(duplicate_job(id_, row.at(row.cells["job"]), first.place, first.id))
        else:
            jobs_book.jobs[normalize(id_)] = _read_job(jobs_book, row, id_, company, bid_date)
    if rows and not jobs_book.jobs and not findings and not jobs_book.findings:
        remedy = "Type a row for each job below it: its id and its bid date."
        found = "Jobs has only the example row: there is nothing to bid."
        jobs_book.add(FindingKind.EXAMPLE_ROW, rows[0].place, found, remedy)
    if not rows and not findings:
        remedy = "Type a row for each job: its id and its bid date."
        jobs_book.add(FindingKind.MISSING_JOB, Place(jobs_book.book.name, JOBS), "There is no job in Jobs.", remedy)


def duplicate_job(id_: str, place: Place, first: Place, job: str) -> Finding:
    """The finding about a second row with the same job id."""
    found = f'The job id "{id_}" is used twice. The other row is {first}.'
    return Finding(FindingKind.DUPLICATE_JOB, place, found, RENAME, job)


def _read_job(jobs_book: JobsBook, row: TableRow, id_: str, company: CompanyBook, bid_date: float | None) -> JobInput:
    job = JobInput(id_, row.at(row.cells["job"]), company, jobs_book.book.sha256, refs=row.refs)
    job.rows |= company.rows
    job.entries |= dict(entries_of(jobs_book, row, (*facts_of(JOBS), *facts_of(SITE)), id_))
    _read_bid_date(jobs_book, row, job, bid_date)
    return job


def _read_bid_date(jobs_book: JobsBook, row: TableRow, job: JobInput, bid_date: float | None) -> None:
    """Fills a blank bid date from ``--bid-date``; without it the blank cell is an error."""
    for given in facts_of(JOBS):
        if given.required and given.header not in row.cells:
            if bid_date is not None:
                job.entries[given] = Entry(bid_date, "", day_of(bid_date).isoformat(), "--bid-date")
            else:
                place = Place(row.place.book, row.place.sheet, row.refs.get(given.header, row.cells["job"].ref))
                remedy = "Type it as year-month-day, or give --bid-date for the whole run."
                jobs_book.add(FindingKind.MISSING_INPUT, place, f"{given.label} is blank.", remedy, job.id)


def id_of(jobs_book: JobsBook, row: TableRow, label: str, what: str, job: str = "") -> str | None:
    """The id in a column, blank when the cell is; None when it cannot be read, which is an error of ``job``.

    A row whose job id cannot be read may belong to any job: without ``job`` the error is one of the whole book.
    """
    cell = row.cells.get(label)
    if cell is None:
        return ""
    try:
        return read_id(cell, what)
    except InputRefused as refused:
        jobs_book.refuse(row, cell, refused, job)
        return None


def entries_of(
    jobs_book: JobsBook, row: TableRow, inputs: tuple[Input, ...], job: str
) -> Iterator[tuple[Input, Entry]]:
    """The entries of a row; a cell that cannot be read is a finding, and its entry is marked as refused."""
    for given in inputs:
        unit = row.units.get(given.header) or given.unit_text
        entry = read_entry(jobs_book, row, given, row.cells.get(given.header), unit, job)
        if entry is not None:
            yield given, entry


def read_entry(
    jobs_book: JobsBook, row: TableRow, given: Input, cell: Cell | None, unit: str, job: str
) -> Entry | None:
    """One entry with its questions and notes; None for a blank cell."""
    if cell is None:
        return None
    try:
        entry, remarks = read_input(given, cell, unit, origin_of(row, cell))
    except InputRefused as refused:
        jobs_book.refuse(row, cell, refused, job)
        return Entry.not_typed(given, REFUSED)
    for each in remarks:
        jobs_book.add(each.kind, row.at(cell), each.text, "", job)
    return entry


def _read_site(jobs_book: JobsBook, sheet: Sheet | None, company: CompanyBook) -> None:
    typed = {(job.id, given): "in Jobs too" for job in jobs_book.jobs.values() for given in job.entries}
    for job in jobs_book.jobs.values():
        job.entries = {**company.facts, **company.site, **job.entries}
    if sheet is None:
        return
    both = jobs_book.book.name in company.books
    facts, findings = read_facts(jobs_book.book, sheet, TABLES[SITE], facts_of(SITE), both=both)
    jobs_book.findings += findings
    for (id_, given), entry in facts.items():
        place = Place(jobs_book.book.name, SITE, entry.origin.partition("!")[2])
        job_input = job_of(jobs_book, id_, place)
        if job_input is None:
            continue
        if (job_input.id, given) in typed:
            found = f"{given.label} of job {job_input.id} is typed {typed[job_input.id, given]}."
            jobs_book.add(FindingKind.DUPLICATE_FACT, place, found, "Delete one of the two.", job_input.id)
        else:
            typed[job_input.id, given] = "twice"
            job_input.entries[given] = entry


def job_of(jobs_book: JobsBook, id_: str, place: Place) -> JobInput | None:
    """The job that a row belongs to. In a book with one job the id may be blank.

    A row of an unknown job is an error of every job with a similar id, since it may be a row of that job.
    """
    if not id_ and len(jobs_book.jobs) + jobs_book.rows_without_id == 1:
        return next(iter(jobs_book.jobs.values()), None)
    job = jobs_book.jobs.get(normalize(id_))
    if job is None and normalize(id_) != EXAMPLE:
        kind = FindingKind.UNKNOWN_JOB if id_ else FindingKind.MISSING_JOB_ID
        found = f'There is no job "{id_}" in Jobs.' if id_ else "The job id is blank, and the book has several jobs."
        distances = {job.id: edit_distance(normalize(id_), normalize(job.id)) for job in jobs_book.jobs.values()}
        similar = [each for each in sorted(distances, key=distances.__getitem__) if distances[each] <= MAX_EDITS]
        similar = similar if id_ else []
        remedy = f'Did you mean "{similar[0]}"?' if similar else "Type the id as it is in Jobs."
        for job_id in similar or [id_ or NO_ID]:
            jobs_book.add(kind, place, found, remedy, job_id)
    return job
