"""Gathering a run: books become jobs, packed away in chunks, with everything that was found in them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path

from calc.batch.input_files import named_files, unique_names
from calc.batch.run import CHUNK, COMPANY_BOOK, FindingIndex, JobRef, Progress, Run
from calc.batch.serialize import company_fingerprint, job_fingerprint, packed, unpacked
from calc.cells import Book
from calc.errors import Finding, Severity, Unreadable
from calc.files import same_file
from calc.intake.read_run import Opened, jobs_of, open_books
from calc.intake.records import JobInput
from calc.intake.spelling import normalize
from calc.xlsx_read.read import read_book


def take(
    paths: Sequence[Path],
    company: Path | None,
    bid_date: float | None,
    only: str = "",
    progress: Progress | None = None,
) -> Run:
    """Reads the books of a run. A book that cannot be read is a failure of its own; the others go on.

    ``paths`` are books, folders of them, or patterns; ``only`` leaves one job of all. No more than one book's jobs are
    in the air at a time.
    """
    progress = progress or Progress()
    run = Run()
    files, run.findings, run.failures = named_files(paths, company)
    if not files:
        run.failures = run.failures or ["No workbook was named that can be read: name the week's book."]
        return run
    run.beside = files[0].parent
    company_path = company or _company_book_beside(files)
    company_book = _read(run, company_path) if company_path is not None else None
    run.company = company_book.name if company_book else ""
    shelf: list[Book | bytes] = []
    opened = open_books(_read_all(run, files, shelf, progress), company_book)
    if company_path is None or company_book is not None:
        _take_in(run, opened, shelf, bid_date, only, progress)
    return run


def _company_book_beside(files: Sequence[Path]) -> Path | None:
    beside = files[0].parent / COMPANY_BOOK
    return beside if beside.is_file() and beside.resolve() not in {path.resolve() for path in files} else None


def _read_all(run: Run, files: Sequence[Path], shelf: list[Book | bytes], progress: Progress) -> Iterator[Book]:
    """Every book that can be read; each is then put on the shelf, packed when there are others."""
    progress.begin("Reading", len(files))
    for path, name in zip(files, unique_names(files), strict=True):
        book = _read(run, path)
        if book is not None:
            book = replace(book, name=name)
            shelf.append(book if len(files) == 1 else packed(book))
            yield book
        progress.step()
    progress.end()


def _read(run: Run, path: Path) -> Book | None:
    try:
        return read_book(path)
    except Unreadable as reason:
        run.failures.append(str(reason))
        return None


def _take_in(
    run: Run, opened: Opened, shelf: list[Book | bytes], bid_date: float | None, only: str, progress: Progress
) -> None:
    """Takes in one book after another, and packs its jobs away before the next."""
    progress.begin("Taking in", len(shelf))
    books = (unpacked(each) if isinstance(each, bytes) else each for each in shelf)
    waiting: list[JobInput] = []
    for jobs in jobs_of(opened, books, bid_date):
        waiting += [job for job in jobs if not only or normalize(job.id) == normalize(only)]
        while len(waiting) >= CHUNK:
            _pack(run, waiting[:CHUNK])
            del waiting[:CHUNK]
        progress.step()
    if waiting:
        _pack(run, waiting)
    progress.end()
    run.findings += opened.findings
    run.findings += _same_names(run.cards)
    run.company_books, run.company_print = (
        tuple(sorted(opened.company.books)),
        company_fingerprint(opened.company),
    )
    concerns = FindingIndex([each for each in run.findings if each.severity is Severity.STOP])
    run.held = [card.id for card in run.cards if concerns.of(card, run.company_books)]


def _pack(run: Run, jobs: list[JobInput]) -> None:
    run.cards += [JobRef(job.id, job.place, job_fingerprint(job)) for job in jobs]
    run.chunks.append(packed(jobs))


def _same_names(cards: Sequence[JobRef]) -> list[Finding]:
    """Two ids whose workbooks would have the same file name: neither is written."""
    names: dict[str, list[JobRef]] = {}
    for card in cards:
        names.setdefault(same_file(card.file), []).append(card)
    return [
        Finding(
            Severity.STOP,
            card.place,
            f"The job ids {' and '.join(each.id for each in group)} would give the same file, {card.file}.",
            "Give one of them another id.",
            card.id,
        )
        for group in names.values()
        if len(group) > 1
        for card in group
    ]


def ready(run: Run) -> list[JobInput]:
    """The jobs that no stop holds back, each with the findings that its Log shows."""
    return list(_ready(run))


def _ready(run: Run) -> Iterator[JobInput]:
    concerns = FindingIndex(run.findings)
    for number, cards in run.ready():
        jobs: list[JobInput] = unpacked(run.chunks[number])
        for card in cards:
            yield replace(jobs[card - number * CHUNK], notes=list(concerns.of(run.cards[card], run.company_books)))
