"""Bidding a run: workbooks that are not current are written, each is saved at once, the run's own workbook last."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from concurrent.futures import Executor
from dataclasses import dataclass, replace
from itertools import islice
from pathlib import Path

from calc.batch.load import ready_jobs
from calc.batch.outcome import JobOutcome, outcome_of
from calc.batch.pool import make_executor, map_slices, worker_count
from calc.batch.run import CHUNK, WEEK_FILE, FindingIndex, Progress, Run
from calc.batch.serialize import fingerprint, program_fingerprint, unpack
from calc.batch.week import row_of, week_of
from calc.batch.worker import JobRequest, NotWorked, Slice, SliceResult, job_findings, work, worked
from calc.errors import Finding, FindingKind, Place, Severity, Unreadable
from calc.files import Results, Saved, same_file
from calc.formula.functions import NONE
from calc.intake.records import JobInput
from calc.layout.week import UnwrittenJob, WeekRow, title_of, week_sheets
from calc.model.results import JobValues
from calc.trade.inputs.job import Job
from calc.xlsx_write.write import Identity, workbook_bytes

MAX_PER_SLICE = 20
"""Workbooks per slice: a run that is stopped loses no more than these for each worker."""

_SLICES_PER_WORKER = 4
"""The fewest slices for each worker, so that all workers finish at about the same time."""


@dataclass(frozen=True, slots=True)
class _PlannedJob:
    """A job without errors: the fingerprint of everything that its workbook depends on, and the current file if any."""

    index: int
    findings: tuple[Finding, ...]
    made_from: str
    current: Path | None


def bid(
    run: Run, folder: Path, workers: int | None = None, progress: Progress | None = None, pool: Executor | None = None
) -> None:
    """Writes the workbook of every job without errors; a file that cannot be written does not stop the others.

    A workbook that the program wrote from the same input is left as it is, so an interrupted run continues where it
    stopped. ``workers`` is the number of processes, one per core when None; ``pool`` is used instead when given.
    """
    try:
        bidding = _Bidding(run, Results(folder, [*(job.file for job in run.jobs), WEEK_FILE]))
    except Unreadable as reason:
        run.failures.append(str(reason))
        return
    progress = progress or Progress()
    count = worker_count(bidding.to_write, workers)
    executor = pool or make_executor(count)
    progress.begin("Bidding", len(bidding.jobs))
    try:
        for result in map_slices(bidding.slices(count), work, executor, count, bidding.worker_lost):
            bidding.save_slice(result, progress)
        bidding.save_week()
        run.not_written += bidding.without_end
        bidding.note_older_workbooks()
        run.outcomes = [outcome_of(each) for each in bidding.all_rows()]
    except KeyboardInterrupt:
        run.failures.append(
            f"Stopped after {len(bidding.rows)} of {len(bidding.jobs)} jobs. Run the same command again to continue."
        )
    finally:
        progress.end()
        bidding.results.sync()
        if pool is None:
            executor.shutdown(wait=bidding.is_complete, cancel_futures=True)


def check(run: Run) -> None:
    """Adds the findings of the rules for every job without errors and what came of each job; writes nothing."""
    read = list(run.findings)
    bids: dict[str, JobOutcome] = {}
    for each in worked(ready_jobs(run)):
        bids[each.job.id] = outcome_of(row_of(each, "") if isinstance(each, JobValues) else each.row)
        run.findings += job_findings(each) if isinstance(each, JobValues) else each.findings
        if isinstance(each, NotWorked):
            run.failures += [each.failure] if each.failure else []
            run.not_written += [each.job.id] if each.finding else []
    index = FindingIndex(read)
    run.outcomes = [
        bids.get(job.id) or outcome_of(UnwrittenJob(job.id, _first_error(index.of(job, run.company_books))))
        for job in run.jobs
    ]


class _Bidding:
    """A run in progress: the planned jobs, and the rows of the run's workbook so far."""

    def __init__(self, run: Run, results: Results) -> None:
        self.run, self.results = run, results
        self.jobs = list(self._planned_jobs())
        self.to_write = sum(each.current is None for each in self.jobs)
        self.rows: list[WeekRow | UnwrittenJob] = []
        self.without_end: list[str] = []
        """The ids of the jobs that the rules gave a number without an end."""
        self.identity: Identity | None = None

    @property
    def is_complete(self) -> bool:
        """Whether every job is done."""
        return len(self.rows) == len(self.jobs)

    def _planned_jobs(self) -> Iterator[_PlannedJob]:
        index = FindingIndex(self.run.findings)
        common = fingerprint(self.run.company_fingerprint, program_fingerprint())
        for _, places in self.run.ready_chunks():
            for place in places:
                job = self.run.jobs[place]
                findings = index.of(job, self.run.company_books)
                made_from = fingerprint(common, job.fingerprint, findings)
                yield _PlannedJob(place, findings, made_from, self.results.current(job.file, made_from))

    def slices(self, workers: int) -> Iterator[Slice]:
        """The jobs of each chunk in order, in slices with a limited number of workbooks to write."""
        limit = min(MAX_PER_SLICE, max(1, self.to_write // (_SLICES_PER_WORKER * workers)))
        planned = iter(self.jobs)
        for number, places in self.run.ready_chunks():
            ready = tuple(place - number * CHUNK for place in places)
            requests: list[JobRequest] = []
            for index, job in enumerate(islice(planned, len(places))):
                file = self.run.jobs[job.index].file
                requests.append(JobRequest(index, file, job.findings, write=job.current is None))
                if sum(each.write for each in requests) == limit:
                    yield Slice(self.run.chunks[number], ready, tuple(requests))
                    requests = []
            if requests:
                yield Slice(self.run.chunks[number], ready, tuple(requests))

    def save_slice(self, result: SliceResult, progress: Progress) -> None:
        """Saves the results of the next slice."""
        self.identity = self.identity or result.identity
        for each in result.jobs:
            planned = self.jobs[len(self.rows)]
            self.run.findings += each.findings
            job = self.run.jobs[planned.index].id
            path = planned.current
            if path is not None:
                self.run.written.append((job, path, Saved.UNCHANGED))
            elif each.failure:
                self.run.failures.append(each.failure)
            elif each.data is not None:
                path = self._save(job, each.file, each.data, planned.made_from)
            if isinstance(each.row, UnwrittenJob):
                self.rows.append(each.row)
            elif path is None:
                self.rows.append(UnwrittenJob(job, self.run.failures[-1], each.row.client))
            else:
                self.rows.append(replace(each.row, file=path.name))
            if isinstance(each.row, UnwrittenJob) and not each.failure:
                self.without_end.append(job)
            progress.step(job)

    def save_week(self) -> None:
        """Writes the workbook of the run, unless it was written from the same jobs before."""
        rows = self.all_rows()
        if self.identity is None or all(isinstance(each, UnwrittenJob) for each in rows):
            return
        shown = [each if isinstance(each, UnwrittenJob) else each.file for each in rows]
        made_from = fingerprint("week", [each.made_from for each in self.jobs], shown)
        current = self.results.current(WEEK_FILE, made_from)
        if current is not None:
            self.run.written.append(("", current, Saved.UNCHANGED))
            return
        try:
            week = week_of(rows)
            data = workbook_bytes(week_sheets(week), None, replace(self.identity, title=title_of(week)))
        except Exception as reason:  # the workbooks of the jobs are written, and the run says what became of each
            self.run.failures.append(f"{WEEK_FILE}: it could not be written: {type(reason).__name__}: {reason}")
        else:
            self._save("", WEEK_FILE, data, made_from)

    def all_rows(self) -> list[WeekRow | UnwrittenJob]:
        """A row for every job of the run in its order; of one with errors its first error."""
        done = {planned.index: row for planned, row in zip(self.jobs, self.rows, strict=True)}
        index = FindingIndex(self.run.findings)
        return [
            done[place]
            if place in done
            else UnwrittenJob(job.id, _first_error(index.of(job, self.run.company_books)), self._client_of(place))
            for place, job in enumerate(self.run.jobs)
        ]

    def note_older_workbooks(self) -> None:
        """Names each workbook of an earlier run that has the name of one that this run did not write."""
        now = {same_file(path.name) for _, path, _ in self.run.written}
        done = {job for job, _, _ in self.run.written}
        files = [(job.file, job.place, job.id) for job in self.run.jobs] + [(WEEK_FILE, Place(), "")]
        for name, place, job in files:
            if job not in done and same_file(name) not in now and (self.results.folder / name).is_file():
                found = f"{name} in {self.results.folder} is of an earlier run: this run did not write it."
                remedy = "Do not send it, or mend what keeps the job from being written and bid again."
                self.run.findings.append(Finding(FindingKind.OLDER_WORKBOOK, place, found, remedy, job))

    def _client_of(self, place: int) -> str:
        """The client of a job that was not written, as far as it was read."""
        jobs: list[JobInput] = unpack(self.run.chunks[place // CHUNK])
        entry = jobs[place % CHUNK].entries.get(Job.client)
        return "" if entry is None or entry.value in (None, NONE) else str(entry.value)

    def _save(self, job: str, name: str, data: bytes, made_from: str) -> Path | None:
        """Saves one workbook and gives its path; one that cannot be saved is a failure."""
        try:
            path, saved = self.results.save(name, data, made_from)
        except Unreadable as reason:
            self.run.failures.append(str(reason))
            return None
        self.run.written.append((job, path, saved))
        return path

    def worker_lost(self) -> None:
        """Adds the note that a worker process ended early."""
        found = "A worker process was ended by the system, perhaps for lack of memory. Its jobs were done without it."
        remedy = "If it happens again, use fewer --workers."
        self.run.findings.append(Finding(FindingKind.WORKER_LOST, Place(), found, remedy))


def _first_error(findings: Sequence[Finding]) -> str:
    """The first error of a job, in words: its place, what was found and what to type."""
    for each in findings:
        if each.severity is Severity.ERROR:
            place = f"{each.place}: " if str(each.place) else ""
            return f"{place}{each.found} {each.remedy}".strip()
    return "It has an error."
