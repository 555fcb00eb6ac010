"""Taking in a run: the books that were named and the house book become jobs with entries, and findings."""

from __future__ import annotations

from collections.abc import Sequence

from calc.cells import Book, Sheet
from calc.errors import Finding, Severity
from calc.intake.defaults import fill
from calc.intake.house import read_house
from calc.intake.overrides import read_overrides
from calc.intake.records import House, Intake, JobInput
from calc.intake.rows import read_areas, read_listed, read_by_job
from calc.intake.schema import AREAS, CHANGES, OVERRIDES, PLANTS
from calc.intake.sense import nonsense
from calc.intake.sheets import house_sheets, known_sheets
from calc.intake.week import Week, open_week
from calc.intake.words import same
from calc.trade.levels import CHANGE, PLANT


def take_in(books: Sequence[Book], house_book: Book | None, bid_date: float | None = None) -> Intake:
    """All the jobs of ``books`` with the findings; jobs that a stop holds back are among them, see :func:`held`."""
    findings: list[Finding] = []
    known = []
    for book in ([house_book] if house_book else []) + list(books):
        tables, found = known_sheets(book)
        known.append((book, tables))
        findings += found
    sheets, found = house_sheets(known)
    findings += found
    house_books = [house_book] if house_book else []
    of_house = house_books or list({book.name: book for book, _ in sheets.values()}.values())
    house, found = read_house(sheets, of_house, apart=bool(house_books))
    findings += found
    intake = Intake(house)
    for book, tables in known:
        if house_book is not None and book is house_book:
            continue
        week = read_week(book, tables, house, bid_date)
        findings += week.findings
        _join(intake, list(week.jobs.values()), findings)
    intake.findings = findings
    return intake


def read_week(book: Book, tables: dict[str, Sheet], house: House, bid_date: float | None) -> Week:
    """All of one book: a finding stops its job, not the others."""
    week = open_week(book, tables, house, bid_date)
    read_listed(week, tables, read_areas(week, tables.get(AREAS)))
    read_by_job(week, tables.get(PLANTS), PLANTS, PLANT)
    read_by_job(week, tables.get(CHANGES), CHANGES, CHANGE)
    for job in week.jobs.values():
        fill(week, job)
        week.findings += nonsense(job)
    read_overrides(week, tables.get(OVERRIDES))
    return week


def _join(intake: Intake, jobs: Sequence[JobInput], findings: list[Finding]) -> None:
    """Adds the jobs of one book; an id that an earlier book has too is a stop for both."""
    taken = {same(job.id): job for job in intake.jobs}
    for job in jobs:
        first = taken.get(same(job.id))
        if first is not None:
            text = f'The job id "{job.id}" stands in {first.place.book} too.'
            findings.append(Finding(Severity.STOP, job.place, text, "Give one of them another id.", job.id))
        else:
            intake.jobs.append(job)


def held(job: JobInput, findings: Sequence[Finding]) -> bool:
    """Whether a stop holds the job back: one of its own, or one of its whole book or of the house book."""
    return any(
        each.severity is Severity.STOP
        and (same(each.job) == same(job.id) or (not each.job and each.place.book in {job.place.book, *job.house.books}))
        for each in findings
    )
