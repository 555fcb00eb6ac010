"""The work on a slice of jobs: what was typed goes in, the bytes of their workbooks come out, and nothing else happens.

It touches no file and no screen, so anything may run it that runs a function on a value: this process, another one, or
one on another machine.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from calc.batch.run import CHUNK
from calc.batch.serialize import unpacked
from calc.errors import Finding, Place, Severity
from calc.intake.records import JobInput
from calc.intake.schema import PRICES
from calc.layout.checks_sheet import failed, open_stops
from calc.layout.week import WeekRow, week_row
from calc.model.evaluate import evaluate
from calc.model.results import JobValues, each_job
from calc.model.sensitivity import all_with_sensitivity, with_sensitivity
from calc.model.truck_sharing import small_pour
from calc.trade.money.cost_rows import ROWS
from calc.trade.money.costs import CostTable
from calc.xlsx_write.write import Identity, identity_of, job_workbook


@dataclass(frozen=True, slots=True)
class JobRequest:
    """One job that is asked for: its place among the ready jobs of its chunk, its file, its notes, and whether its
    workbook is to be made."""

    place: int
    file: str
    notes: tuple[Finding, ...]
    make: bool


@dataclass(frozen=True, slots=True)
class Slice:
    """Some jobs of a chunk. The whole chunk goes along, less those that are held back: it is evaluated together."""

    chunk: bytes
    ready: tuple[int, ...]
    asked: tuple[JobRequest, ...]


@dataclass(frozen=True, slots=True)
class JobResult:
    """What came of one job: its workbook if it was asked for, or why there is none; its row of the week; what the
    rules found."""

    file: str
    data: bytes | None
    failure: str
    row: WeekRow
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class SliceResult:
    """What came of a slice, and the identity that the week's workbook takes from its first job."""

    made: tuple[JobResult, ...]
    identity: Identity


def work(each: Slice) -> SliceResult:
    """Makes the workbooks of a slice. Same slice, same bytes, wherever it runs."""
    values = _chunk(each.chunk, each.ready)
    jobs = _with_moves({asked.place: values[asked.place] for asked in each.asked if asked.make})
    made = tuple(_made(jobs.get(asked.place, values[asked.place]), asked) for asked in each.asked)
    return SliceResult(made, identity_of(values[each.asked[0].place], "Week"))


@lru_cache(maxsize=1)
def _chunk(chunk: bytes, ready: tuple[int, ...]) -> tuple[JobValues, ...]:
    """A chunk, evaluated; the next slice is most often of the same one."""
    jobs: list[JobInput] = unpacked(chunk)
    return tuple(evaluated([jobs[place] for place in ready]))


def _with_moves(jobs: dict[int, JobValues]) -> dict[int, JobValues]:
    """The jobs that are to be made, with what moves their prices, asked together."""
    try:
        return dict(zip(jobs, all_with_sensitivity(list(jobs.values())), strict=True))
    except Exception:  # whatever is wrong with one job is said when each is asked alone, as its workbook is made
        return jobs


def _made(values: JobValues, asked: JobRequest) -> JobResult:
    values = replace(values, job=replace(values.job, notes=list(asked.notes)))
    data, failure = None, ""
    if asked.make:
        try:
            data = job_workbook(with_sensitivity(values))
        except Exception as reason:  # whatever is wrong with one job, the others have their workbooks
            failure = f"{asked.file}: it could not be made: {type(reason).__name__}: {reason}"
    return JobResult(
        asked.file, data, failure, week_row(values, asked.file, small_pour(values)), tuple(job_findings(values))
    )


def evaluated(jobs: Sequence[JobInput]) -> Iterator[JobValues]:
    """The values of every job, evaluated in chunks."""
    for start in range(0, len(jobs), CHUNK):
        chunk = list(jobs[start : start + CHUNK])
        yield from each_job(evaluate(chunk), chunk)


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
    if failed(job):
        place = Place(job.job.place.book, "Checks")
        findings.append(
            Finding(
                Severity.STOP,
                place,
                f"{failed(job)} check(s) of job {job.job.id} miss.",
                "See the sheet Checks of its workbook.",
                job.job.id,
            )
        )
    return findings + _unpriced(job)


def _unpriced(job: JobValues) -> list[Finding]:
    """What the job needs and the house book has no price for: the price is not complete."""
    lacking = [row.label for place, row in enumerate(ROWS) if float(job.of(CostTable.unpriced, place))]
    if not lacking:
        return []
    place = Place(job.job.company.name or job.job.place.book, PRICES)
    text = f"No price is given for: {'; '.join(lacking)}."
    return [Finding(Severity.NOTE, place, text, "The price is not complete: fill the rows on Prices.", job.job.id)]
