"""Reading a run: the jobs books and the company book become jobs with entries, and findings."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import chain

from calc.cells import Book, Sheet
from calc.errors import Finding, Place, Severity
from calc.intake.company_book import read_company_book
from calc.intake.cross_checks import cross_checks
from calc.intake.defaults import fill_defaults
from calc.intake.jobs_book import JobsBook, duplicate_job, open_jobs_book
from calc.intake.overrides import read_overrides
from calc.intake.records import CompanyBook, Intake, JobInput
from calc.intake.rows import read_areas, read_rows_of_job, read_rows_within_areas
from calc.intake.schema import AREAS, CHANGES, COMPANY_TABLES, OVERRIDES, PLANTS
from calc.intake.sheets import company_sheets, known_sheets
from calc.intake.spelling import normalize
from calc.intake.unused import unused_cells
from calc.trade.levels import CHANGE, PLANT


@dataclass
class CompanyIntake:
    """The company data of a run with the findings so far; its jobs are read afterwards, one book after another."""

    company: CompanyBook
    findings: list[Finding]


def read_run(books: Sequence[Book], company_book: Book | None, bid_date: float | None = None) -> Intake:
    """All the jobs of ``books`` with the findings, jobs with errors included: see :func:`has_error`."""
    intake = read_company(books, company_book)
    jobs = [job for jobs_of_book in read_jobs(intake, books, bid_date) for job in jobs_of_book]
    return Intake(intake.company, jobs, intake.findings)


def read_company(books: Iterable[Book], company_book: Book | None) -> CompanyIntake:
    """The data of the company; any book may have a company table. Books without one are not kept in memory."""
    findings: list[Finding] = []
    with_tables = []
    for book in chain([company_book] if company_book else [], books):
        tables, found = known_sheets(book)
        findings += found
        if any(name in tables for name in COMPANY_TABLES):
            with_tables.append((book, tables))
    sheets, found = company_sheets(with_tables)
    findings += found
    company_books = [company_book] if company_book else []
    of_company = company_books or list({book.name: book for book, _ in sheets.values()}.values())
    company, found = read_company_book(sheets, of_company, apart=bool(company_books))
    return CompanyIntake(company, findings + found)


def read_jobs(intake: CompanyIntake, books: Iterable[Book], bid_date: float | None = None) -> Iterator[list[JobInput]]:
    """The jobs of each book in turn; their findings are added to ``intake``.

    A job id that is in an earlier book too is an error of both jobs.
    """
    places: dict[str, Place] = {}
    for book in books:
        jobs_book = read_jobs_book(book, known_sheets(book)[0], intake.company, bid_date)
        intake.findings += jobs_book.findings
        jobs = []
        for job in jobs_book.jobs.values():
            first = places.setdefault(normalize(job.id), job.place)
            if first is job.place:
                jobs.append(job)
            else:
                intake.findings.append(duplicate_job(job.id, job.place, first, job.id))
        yield jobs


def read_jobs_book(book: Book, tables: dict[str, Sheet], company: CompanyBook, bid_date: float | None) -> JobsBook:
    """All jobs of one book; an error in one job does not affect the others."""
    jobs_book = open_jobs_book(book, tables, company, bid_date)
    read_rows_within_areas(jobs_book, tables, read_areas(jobs_book, tables.get(AREAS)))
    read_rows_of_job(jobs_book, tables.get(PLANTS), PLANTS, PLANT)
    read_rows_of_job(jobs_book, tables.get(CHANGES), CHANGES, CHANGE)
    for job in jobs_book.jobs.values():
        fill_defaults(jobs_book, job)
        jobs_book.findings += cross_checks(job)
        jobs_book.findings += unused_cells(job)
    read_overrides(jobs_book, tables.get(OVERRIDES))
    return jobs_book


def has_error(job: JobInput, findings: Sequence[Finding]) -> bool:
    """Whether the job cannot be written: it, its whole book or the company book has an error."""
    return any(
        each.severity is Severity.ERROR
        and (
            normalize(each.job) == normalize(job.id)
            or (not each.job and each.place.book in {job.place.book, *job.company.books})
        )
        for each in findings
    )
