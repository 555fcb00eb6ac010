"""The work on a slice of jobs as a pure function: packed jobs in, the bytes of their workbooks out.

It reads and writes no file and prints nothing, so it can run in this process, in another, or on another machine.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from calc.batch.missing_prices import missing_prices
from calc.batch.run import CHUNK
from calc.batch.serialize import unpack
from calc.batch.week import row_of
from calc.declared import Line
from calc.errors import Finding, FindingKind, Place
from calc.intake.records import JobInput
from calc.layout.caution_table import open_stops
from calc.layout.checks_sheet import failed
from calc.layout.week import UnwrittenJob, WeekRow
from calc.model.evaluate import evaluate
from calc.model.infinities import cell_behind, infinite_line, infinite_lines
from calc.model.results import JobValues, each_job
from calc.model.sensitivity import all_with_sensitivity, with_sensitivity
from calc.xlsx_write.write import Identity, identity_of, job_workbook


@dataclass(frozen=True, slots=True)
class JobRequest:
    """One requested job: its index among the ready jobs of its chunk, its file name and its findings.

    ``write`` says whether its workbook is needed, or only its row of the run's workbook.
    """

    index: int
    file: str
    findings: tuple[Finding, ...]
    write: bool


@dataclass(frozen=True, slots=True)
class Slice:
    """Some jobs of a chunk, with the whole chunk: its jobs without errors, ``ready``, are evaluated together."""

    chunk: bytes
    ready: tuple[int, ...]
    requests: tuple[JobRequest, ...]


@dataclass(frozen=True, slots=True)
class JobResult:
    """The result of one job: its workbook if requested or the failure, its row of the run, the rules' findings.

    A job that could not be worked out is a row of the jobs that were not written.
    """

    file: str
    data: bytes | None
    failure: str
    row: WeekRow | UnwrittenJob
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class SliceResult:
    """The results of a slice, and the identity that the run's workbook takes from its first job that was worked out."""

    jobs: tuple[JobResult, ...]
    identity: Identity | None


@dataclass(frozen=True, slots=True)
class NotWorked:
    """A job that could not be worked out: why, as a finding where a typed number made it, else as a failure."""

    job: JobInput
    failure: str
    finding: Finding | None = None

    @property
    def row(self) -> UnwrittenJob:
        """Its row of the run."""
        reason = f"{self.finding.place}: {self.finding.found}" if self.finding is not None else self.failure
        return UnwrittenJob(self.job.id, reason)

    @property
    def findings(self) -> tuple[Finding, ...]:
        """Its finding, if it has one."""
        return () if self.finding is None else (self.finding,)


def work(each: Slice) -> SliceResult:
    """Writes the workbooks of a slice. The same slice gives the same bytes in any process."""
    values = _evaluate_chunk(each.chunk, each.ready)
    worked_out = {
        request.index: job for request in each.requests if isinstance(job := values[request.index], JobValues)
    }
    jobs = _with_sensitivity({request.index: worked_out[request.index] for request in each.requests
                              if request.write and request.index in worked_out})  # fmt: skip
    results = tuple(_result(jobs.get(request.index, values[request.index]), request) for request in each.requests)
    first = next(iter(worked_out.values()), None)
    return SliceResult(results, None if first is None else identity_of(first, "Week"))


@lru_cache(maxsize=1)
def _evaluate_chunk(chunk: bytes, ready: tuple[int, ...]) -> tuple[JobValues | NotWorked, ...]:
    """The values of a chunk; kept for the next slice, which is usually of the same chunk."""
    jobs: list[JobInput] = unpack(chunk)
    return tuple(worked([jobs[index] for index in ready]))


def _with_sensitivity(jobs: dict[int, JobValues]) -> dict[int, JobValues]:
    """The jobs to write with their price sensitivity, computed together."""
    try:
        return dict(zip(jobs, all_with_sensitivity(list(jobs.values())), strict=True))
    except Exception:  # an error of one job is reported when its own workbook is written, without the others
        return jobs


def _result(values: JobValues | NotWorked, request: JobRequest) -> JobResult:
    if isinstance(values, NotWorked):
        return JobResult(request.file, None, values.failure, values.row, values.findings)
    values = replace(values, job=replace(values.job, findings=list(request.findings)))
    try:
        row, findings = row_of(values, request.file), tuple(job_findings(values))
    except Exception as reason:  # an error of one job must not cost the week
        failed = _failed(values.job, reason)
        return JobResult(request.file, None, failed.failure, failed.row, ())
    data, failure = None, ""
    if request.write:
        try:
            data = job_workbook(with_sensitivity(values))
        except Exception as reason:  # an error of one job must not cost the others their workbooks
            failure = f"{request.file}: it could not be written: {type(reason).__name__}: {reason}"
    return JobResult(request.file, data, failure, row, findings)


def evaluated(jobs: Sequence[JobInput]) -> Iterator[JobValues]:
    """The values of every job, evaluated in chunks."""
    for start in range(0, len(jobs), CHUNK):
        chunk = list(jobs[start : start + CHUNK])
        yield from each_job(evaluate(chunk), chunk)


def worked(jobs: Sequence[JobInput]) -> Iterator[JobValues | NotWorked]:
    """The values of every job, evaluated in chunks; one that fails, or has a number without an end, costs no other."""
    for start in range(0, len(jobs), CHUNK):
        chunk = list(jobs[start : start + CHUNK])
        try:
            frame = evaluate(chunk)
            together = each_job(frame, chunk)
        except Exception:  # each is tried by itself, and the one that fails says why
            yield from map(_alone, chunk)
        else:
            lines = infinite_lines(frame)
            yield from (_with_an_end(values, lines) for values in together)


def _alone(job: JobInput) -> JobValues | NotWorked:
    try:
        frame = evaluate([job])
        (values,) = each_job(frame, [job])
    except Exception as reason:
        return _failed(job, reason)
    return _with_an_end(values, infinite_lines(frame))


def _failed(job: JobInput, reason: Exception) -> NotWorked:
    return NotWorked(job, f"{job.id}: it could not be worked out: {type(reason).__name__}: {reason}")


def _with_an_end(values: JobValues, lines: Sequence[Line]) -> JobValues | NotWorked:
    """The values of a job; one with an infinity, which is in one of ``lines``, is told with the cell that made it."""
    line = infinite_line(values, lines)
    if line is None:
        return values
    label, typed, place = cell_behind(line, values.job)
    found = f"{line.label} of job {values.job.id} has no end."
    remedy = f"It follows from {label}, {typed}: type a number nearer to the usual." if label else ""
    return NotWorked(values.job, "", Finding(FindingKind.INFINITE_NUMBER, place, found, remedy, values.job.id))


def job_findings(job: JobValues) -> list[Finding]:
    """The findings of the rules: stop cautions that are not acknowledged, failed checks, missing prices."""
    id_, place = job.job.id, job.job.place
    findings = []
    for each in open_stops(job):
        number = f" {float(job.of(each.number)):g} {each.unit_text}." if each.unit_text else ""
        found = f"{each.label}: {job.of(each.found)}{number}"
        findings.append(Finding(FindingKind.UNACKNOWLEDGED_STOP, place, found, each.do, id_))
    count = failed(job)
    if count:
        found = f"{count} {'check of job ' + id_ + ' fails' if count == 1 else 'checks of job ' + id_ + ' fail'}."
        remedy = "See the sheet Checks of its workbook."
        findings.append(Finding(FindingKind.FAILED_CHECK, Place(place.book, "Checks"), found, remedy, id_))
    return findings + missing_prices(job)
