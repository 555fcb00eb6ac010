"""The input and the results of one run."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from calc.batch.outcome import JobOutcome
from calc.errors import Finding, Place, Severity
from calc.files import Saved, safe_name
from calc.intake.spelling import normalize
from calc.layout.week_rows import READY

CHUNK = 200
"""Jobs that are evaluated together: it bounds the memory that a run needs."""

WEEK_FILE = "week.xlsx"
"""The workbook of the whole run."""

COMPANY_BOOK = "company.xlsx"
"""The company book of a run that names none, if it is in the folder of the jobs book."""


class Progress:
    """Receives the progress of a run; this class ignores it."""

    def begin(self, label: str, steps: int) -> None:
        """Starts a part of the run that has so many steps."""

    def step(self, name: str = "") -> None:
        """Completes one step; ``name`` is the book or the job that it was."""

    def end(self) -> None:
        """Ends the part."""


@dataclass(frozen=True, slots=True)
class JobRef:
    """The part of a job that stays in memory; the rest is packed. ``fingerprint`` is that of what was typed."""

    id: str
    place: Place
    fingerprint: str

    @property
    def file(self) -> str:
        """The file name of its workbook."""
        return f"{safe_name(self.id)}.xlsx"


class FindingIndex:
    """Looks up the findings of a job in constant time."""

    def __init__(self, findings: Sequence[Finding]) -> None:
        self._findings = findings
        self._of_job: dict[str, list[int]] = defaultdict(list)
        self._of_book: dict[str, list[int]] = defaultdict(list)
        for number, each in enumerate(findings):
            if each.job:
                self._of_job[normalize(each.job)].append(number)
            else:
                self._of_book[each.place.book].append(number)

    def of(self, job: JobRef, company_books: Sequence[str]) -> tuple[Finding, ...]:
        """The findings of a job, of its whole book and of ``company_books``, in their order."""
        of_books = (self._of_book.get(book, []) for book in {job.place.book, *company_books, ""})
        numbers = sorted({*self._of_job.get(normalize(job.id), []), *(each for found in of_books for each in found)})
        return tuple(self._findings[number] for number in numbers)


@dataclass
class Run:
    """One run: its jobs in order, packed in chunks, with the findings and the results."""

    findings: list[Finding] = field(default_factory=list)
    failures: list[str] = field(default_factory=list)
    """One line for each file that could not be read or written."""
    written: list[tuple[str, Path, Saved]] = field(default_factory=list)
    """The job id (blank for the workbook of the run), the file, and how it was saved."""
    not_written: list[str] = field(default_factory=list)
    """The ids of the jobs with errors."""
    company: str = ""
    company_books: tuple[str, ...] = ()
    """The names of all books with a company table."""
    company_fingerprint: str = ""
    input_folder: Path = Path()
    """The folder of the first book: results go to a folder in it when none is named."""
    folder: Path | None = None
    """The folder of the results; None for a run that writes none."""
    jobs: list[JobRef] = field(default_factory=list)
    chunks: list[bytes] = field(default_factory=list)
    """The jobs in packed chunks of :data:`CHUNK`."""
    outcomes: list[JobOutcome] = field(default_factory=list)
    """What came of each job, in the order of the jobs; empty for a run that was stopped."""

    @property
    def code(self) -> int:
        """The exit code: 3 when a file could not be read or written, 1 when there is an error or a bid is NOT READY."""
        if self.failures:
            return 3
        errors = any(each.severity is Severity.ERROR for each in self.findings)
        return 1 if errors or any(each.state != READY for each in self.outcomes) else 0

    @property
    def numbered_copies(self) -> list[Path]:
        """The workbooks written under a numbered name, since what has the name of the job's is kept."""
        file_names = {job.id: job.file for job in self.jobs} | {"": WEEK_FILE}
        return [path for job, path, _ in self.written if path.name != file_names[job]]

    def ready_chunks(self) -> Iterator[tuple[int, list[int]]]:
        """For each chunk its number, and the indices of its jobs without errors among all jobs."""
        not_written = {normalize(each) for each in self.not_written}
        for number in range(len(self.chunks)):
            indices = range(number * CHUNK, min((number + 1) * CHUNK, len(self.jobs)))
            yield number, [index for index in indices if normalize(self.jobs[index].id) not in not_written]
