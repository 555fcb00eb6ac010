"""Taking in a run: the books that were named and the house book become jobs with entries, and findings."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import chain

from calc.cells import Book, Sheet
from calc.errors import Finding, Place, Severity
from calc.intake.company_book import read_company_book
from calc.intake.cross_checks import cross_checks
from calc.intake.defaults import fill
from calc.intake.jobs_book import JobsBook, open_jobs_book
from calc.intake.overrides import read_overrides
from calc.intake.records import CompanyBook, Intake, JobInput
from calc.intake.rows import read_areas, read_by_job, read_listed
from calc.intake.schema import AREAS, CHANGES, COMPANY_TABLES, OVERRIDES, PLANTS
from calc.intake.sheets import company_sheets, known_sheets
from calc.intake.spelling import normalize
from calc.trade.levels import CHANGE, PLANT


@dataclass
class Opened:
    """A run whose books were all looked through for the house: its jobs are still to be taken in, book after book."""

    company: CompanyBook
    findings: list[Finding]


def take_in(books: Sequence[Book], company_book: Book | None, bid_date: float | None = None) -> Intake:
    """All the jobs of ``books`` with the findings; jobs that a stop holds back are among them, see :func:`is_stopped`."""
    opened = open_books(books, company_book)
    jobs = [job for some in jobs_of(opened, books, bid_date) for job in some]
    return Intake(opened.company, jobs, opened.findings)


def open_books(books: Iterable[Book], company_book: Book | None) -> Opened:
    """What holds for every job of a run: a sheet of the house may stand in any of its books. No other is kept."""
    findings: list[Finding] = []
    known = []
    for book in chain([company_book] if company_book else [], books):
        tables, found = known_sheets(book)
        findings += found
        if any(name in tables for name in COMPANY_TABLES):
            known.append((book, tables))
    sheets, found = company_sheets(known)
    findings += found
    company_books = [company_book] if company_book else []
    of_company = company_books or list({book.name: book for book, _ in sheets.values()}.values())
    company, found = read_company_book(sheets, of_company, apart=bool(company_books))
    return Opened(company, findings + found)


def jobs_of(opened: Opened, books: Iterable[Book], bid_date: float | None = None) -> Iterator[list[JobInput]]:
    """The jobs of the same books, one after another. What is found is added to ``opened``.

    An id that an earlier book has too is a stop for both.
    """
    places: dict[str, Place] = {}
    for book in books:
        week = read_jobs_book(book, known_sheets(book)[0], opened.company, bid_date)
        opened.findings += week.findings
        jobs = []
        for job in week.jobs.values():
            first = places.setdefault(normalize(job.id), job.place)
            if first is job.place:
                jobs.append(job)
            else:
                text = f'The job id "{job.id}" stands twice: {first} has it too.'
                finding = Finding(Severity.STOP, job.place, text, "Give one of them another id.", job.id)
                opened.findings.append(finding)
        yield jobs


def read_jobs_book(book: Book, tables: dict[str, Sheet], company: CompanyBook, bid_date: float | None) -> JobsBook:
    """All of one book: a finding stops its job, not the others."""
    week = open_jobs_book(book, tables, company, bid_date)
    read_listed(week, tables, read_areas(week, tables.get(AREAS)))
    read_by_job(week, tables.get(PLANTS), PLANTS, PLANT)
    read_by_job(week, tables.get(CHANGES), CHANGES, CHANGE)
    for job in week.jobs.values():
        fill(week, job)
        week.findings += cross_checks(job)
    read_overrides(week, tables.get(OVERRIDES))
    return week


def is_stopped(job: JobInput, findings: Sequence[Finding]) -> bool:
    """Whether a stop holds the job back: one of its own, or one of its whole book or of the house book."""
    return any(
        each.severity is Severity.STOP
        and (
            normalize(each.job) == normalize(job.id)
            or (not each.job and each.place.book in {job.place.book, *job.company.books})
        )
        for each in findings
    )
