"""Loading a run: books become jobs, packed in chunks, with their findings."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path

from calc.batch.input_files import named_files, unique_names
from calc.batch.run import CHUNK, COMPANY_BOOK, FindingIndex, JobRef, Progress, Run
from calc.batch.serialize import company_fingerprint, job_fingerprint, pack, unpack
from calc.cells import Book
from calc.errors import Finding, FindingKind, Severity, Unreadable
from calc.files import same_file
from calc.intake.read_run import CompanyIntake, read_company, read_jobs
from calc.intake.records import JobInput
from calc.intake.spelling import normalize
from calc.xlsx_read.read import read_book

_BookCache = list[Book | bytes]
"""The jobs books of a run, packed when there are several."""


def load_run(
    paths: Sequence[Path],
    company: Path | None,
    bid_date: float | None,
    only: str = "",
    progress: Progress | None = None,
) -> Run:
    """Reads the books of a run. A book that cannot be read is a failure; the others are read all the same.

    ``paths`` are books, folders or patterns; ``bid_date`` fills blank bid dates; ``only`` selects one job by its id.
    The jobs of one book at a time are unpacked in memory.
    """
    progress = progress or Progress()
    run = Run()
    files, run.findings, run.failures = named_files(paths, company)
    if not files:
        run.failures = run.failures or ["No workbook was named that can be read. Name the jobs book."]
        return run
    run.input_folder = files[0].parent
    company_path = company or _default_company_book(files)
    company_book = _read(run, company_path) if company_path is not None else None
    run.company = company_book.name if company_book else ""
    cache: _BookCache = []
    intake = read_company(_read_all(run, files, cache, progress), company_book)
    if company_path is None or company_book is not None:
        _read_jobs(run, intake, cache, bid_date, only, progress)
    return run


def _default_company_book(files: Sequence[Path]) -> Path | None:
    """The company book in the folder of the first file, if there is one."""
    path = files[0].parent / COMPANY_BOOK
    return path if path.is_file() and path.resolve() not in {each.resolve() for each in files} else None


def _read_all(run: Run, files: Sequence[Path], cache: _BookCache, progress: Progress) -> Iterator[Book]:
    """Every book that can be read; each is added to ``cache``."""
    progress.begin("Reading books", len(files))
    for path, name in zip(files, unique_names(files), strict=True):
        book = _read(run, path)
        if book is not None:
            book = replace(book, name=name)
            cache.append(book if len(files) == 1 else pack(book))
            yield book
        progress.step(name)
    progress.end()


def _read(run: Run, path: Path) -> Book | None:
    try:
        return read_book(path)
    except Unreadable as reason:
        run.failures.append(str(reason))
        return None


def _read_jobs(
    run: Run, intake: CompanyIntake, cache: _BookCache, bid_date: float | None, only: str, progress: Progress
) -> None:
    """Reads the jobs of one book after another and packs them in chunks."""
    progress.begin("Reading jobs", len(cache))
    books = (unpack(each) if isinstance(each, bytes) else each for each in cache)
    pending: list[JobInput] = []
    for jobs in read_jobs(intake, books, bid_date):
        pending += [job for job in jobs if not only or normalize(job.id) == normalize(only)]
        while len(pending) >= CHUNK:
            _add_chunk(run, pending[:CHUNK])
            del pending[:CHUNK]
        progress.step()
    if pending:
        _add_chunk(run, pending)
    progress.end()
    run.findings += [each for each in intake.findings if not only or _concerns(each, only)]
    run.findings += _duplicate_file_names(run.jobs)
    run.company_books = tuple(sorted(intake.company.books))
    run.company_fingerprint = company_fingerprint(intake.company)
    errors = FindingIndex([each for each in run.findings if each.severity is Severity.ERROR])
    run.not_written = [job.id for job in run.jobs if errors.of(job, run.company_books)]


def _concerns(finding: Finding, job: str) -> bool:
    """Whether a finding is one of the job with this id, or of its whole book."""
    return not finding.job or normalize(finding.job) == normalize(job)


def _add_chunk(run: Run, jobs: list[JobInput]) -> None:
    run.jobs += [JobRef(job.id, job.place, job_fingerprint(job)) for job in jobs]
    run.chunks.append(pack(jobs))


def _duplicate_file_names(jobs: Sequence[JobRef]) -> list[Finding]:
    """The errors of jobs whose ids give the same file name: none of them is written."""
    by_name: dict[str, list[JobRef]] = {}
    for job in jobs:
        by_name.setdefault(same_file(job.file), []).append(job)
    return [
        Finding(
            FindingKind.DUPLICATE_FILE_NAME,
            job.place,
            f"The job ids {' and '.join(each.id for each in same)} give the same file name, {job.file}.",
            "Give one of them another id.",
            job.id,
        )
        for same in by_name.values()
        if len(same) > 1
        for job in same
    ]


def ready_jobs(run: Run) -> list[JobInput]:
    """The jobs without errors, each with the findings that its Log lists."""
    return list(_ready_jobs(run))


def _ready_jobs(run: Run) -> Iterator[JobInput]:
    index = FindingIndex(run.findings)
    for number, places in run.ready_chunks():
        jobs: list[JobInput] = unpack(run.chunks[number])
        for place in places:
            findings = list(index.of(run.jobs[place], run.company_books))
            yield replace(jobs[place - number * CHUNK], findings=findings)
