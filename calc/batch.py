"""A run: the books that were named become workbooks, a job at a time, and a word about each that is not."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from calc.cells import Book
from calc.errors import Finding, Place, Severity, Unreadable
from calc.files import Results, Saved, safe_name, same_file
from calc.intake.columns import evaluate
from calc.intake.records import Intake, JobInput
from calc.intake.take import held, take_in
from calc.intake.words import same
from calc.workbook.checks import missed, open_stops
from calc.workbook.read import read_book
from calc.workbook.values import JobValues, each_job
from calc.workbook.week import WeekRow, week_row, week_sheets
from calc.workbook.write import identity_of, job_workbook, written

CHUNK = 200
"""Jobs that are evaluated together: memory stays flat however many there are."""

WEEK_FILE = "week.xlsx"
"""The workbook of the whole run."""

HOUSE_BOOK = "house.xlsx"
"""The house book that is taken when none is named, if it stands beside the week's book."""


@dataclass
class Run:
    """What one run was given and what came of it."""

    intake: Intake | None = None
    findings: list[Finding] = field(default_factory=list)
    failures: list[str] = field(default_factory=list)
    written: list[tuple[str, Path, Saved]] = field(default_factory=list)
    held: list[str] = field(default_factory=list)
    house: str = ""

    @property
    def code(self) -> int:
        """The exit code: 3 when a file could not be read or written, 1 when a job has a stop, else 0."""
        if self.failures:
            return 3
        return 1 if any(each.severity is Severity.STOP for each in self.findings) else 0


def take(paths: Sequence[Path], house: Path | None, bid_date: float | None, only: str = "") -> Run:
    """Reads the books of a run. A book that cannot be read is a failure of its own; the others go on."""
    run = Run()
    books = [book for book in (_read(run, path) for path in paths) if book is not None]
    if house is None and paths:
        beside = paths[0].parent / HOUSE_BOOK
        house = beside if beside.is_file() and beside.resolve() not in {path.resolve() for path in paths} else None
    house_book = _read(run, house) if house is not None else None
    if house is not None and house_book is None:
        return run
    run.house = house_book.name if house_book else ""
    run.intake = take_in(books, house_book, bid_date)
    if only:
        run.intake.jobs = [job for job in run.intake.jobs if same(job.id) == same(only)]
    run.findings = run.intake.findings + _same_names(run.intake.jobs)
    run.held = [job.id for job in run.intake.jobs if held(job, run.findings)]
    _note(run)
    return run


def _read(run: Run, path: Path) -> Book | None:
    try:
        return read_book(path)
    except Unreadable as reason:
        run.failures.append(str(reason))
        return None


def _same_names(jobs: Sequence[JobInput]) -> list[Finding]:
    """Two ids whose workbooks would have the same file name: neither is written."""
    names: dict[str, list[JobInput]] = {}
    for job in jobs:
        names.setdefault(same_file(safe_name(job.id)), []).append(job)
    return [
        Finding(
            Severity.STOP,
            job.place,
            f"The job ids {' and '.join(each.id for each in group)} would give the "
            f"same file, {safe_name(job.id)}.xlsx.",
            "Give one of them another id.",
            job.id,
        )
        for group in names.values()
        if len(group) > 1
        for job in group
    ]


def _note(run: Run) -> None:
    """Gives every job the findings that its Log shows: its own, and those of the whole book and the house book."""
    assert run.intake is not None
    for job in run.intake.jobs:
        job.notes = [
            each
            for each in run.findings
            if same(each.job) == same(job.id)
            or (not each.job and each.place.book in {job.place.book, *job.house.books, ""})
        ]


def ready(run: Run) -> list[JobInput]:
    """The jobs that no stop holds back."""
    assert run.intake is not None
    names = {same(each) for each in run.held}
    return [job for job in run.intake.jobs if same(job.id) not in names]


def evaluated(jobs: Sequence[JobInput]) -> Iterator[JobValues]:
    """The values of every job, evaluated in chunks."""
    for start in range(0, len(jobs), CHUNK):
        chunk = list(jobs[start : start + CHUNK])
        yield from each_job(evaluate(chunk), chunk)


def bid(run: Run, folder: Path) -> None:
    """Writes the workbook of every job that is ready; a file that cannot be written does not stop the others."""
    try:
        results = Results(folder)
    except Unreadable as reason:
        run.failures.append(str(reason))
        return
    week: list[WeekRow] = []
    identity = None
    for job in evaluated(ready(run)):
        run.findings += job_findings(job)
        name = f"{safe_name(job.job.id)}.xlsx"
        identity = identity or identity_of(job, "Week")
        week.append(week_row(job, name))
        _save(run, results, job.job.id, name, job_workbook(job))
    if week and identity is not None:
        _save(run, results, "", WEEK_FILE, written(week_sheets(week), None, identity))


def _save(run: Run, results: Results, job: str, name: str, data: bytes) -> None:
    """Saves one workbook; one that cannot be saved is a failure of its own."""
    try:
        path, saved = results.save(name, data)
    except Unreadable as reason:
        run.failures.append(str(reason))
        return
    run.written.append((job, path, saved))


def job_findings(job: JobValues) -> list[Finding]:
    """What the rules themselves found: stops that nobody accepted, and checks that miss."""
    findings = [
        Finding(
            Severity.STOP,
            job.job.place,
            f"{each.label}: {job.of(each.found)} {float(job.of(each.number)):g} {each.unit_text}.".replace(" .", "."),
            each.do,
            job.job.id,
        )
        for each in open_stops(job)
    ]
    if missed(job):
        place = Place(job.job.place.book, "Checks")
        findings.append(
            Finding(
                Severity.STOP,
                place,
                f"{missed(job)} check(s) of job {job.job.id} miss.",
                "See the sheet Checks of its workbook.",
                job.job.id,
            )
        )
    return findings
