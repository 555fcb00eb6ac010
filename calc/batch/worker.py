"""The work on a slice of jobs as a pure function: packed jobs in, the bytes of their workbooks out.

It reads and writes no file and prints nothing, so it can run in this process, in another, or on another machine.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from calc.batch.run import CHUNK
from calc.batch.serialize import unpack
from calc.batch.week import row_of
from calc.declared.cost import Cost
from calc.errors import Finding, FindingKind, Place
from calc.intake.records import JobInput
from calc.intake.schema import PRICES, SITE
from calc.layout.caution_table import open_stops
from calc.layout.checks_sheet import failed
from calc.layout.week import WeekRow
from calc.model.evaluate import evaluate
from calc.model.results import JobValues, each_job
from calc.model.sensitivity import all_with_sensitivity, with_sensitivity
from calc.trade.money.cost_rows import DISPOSAL, FEES, LABOR, ROWS, WITHOUT_VEHICLE
from calc.trade.money.costs import CostTable
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
    """The result of one job: its workbook if requested or the failure, its row of the run, the rules' findings."""

    file: str
    data: bytes | None
    failure: str
    row: WeekRow
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class SliceResult:
    """The results of a slice, and the identity that the run's workbook takes from its first job."""

    jobs: tuple[JobResult, ...]
    identity: Identity


def work(each: Slice) -> SliceResult:
    """Writes the workbooks of a slice. The same slice gives the same bytes in any process."""
    values = _evaluate_chunk(each.chunk, each.ready)
    jobs = _with_sensitivity({request.index: values[request.index] for request in each.requests if request.write})
    results = tuple(_result(jobs.get(request.index, values[request.index]), request) for request in each.requests)
    return SliceResult(results, identity_of(values[each.requests[0].index], "Week"))


@lru_cache(maxsize=1)
def _evaluate_chunk(chunk: bytes, ready: tuple[int, ...]) -> tuple[JobValues, ...]:
    """The values of a chunk; kept for the next slice, which is usually of the same chunk."""
    jobs: list[JobInput] = unpack(chunk)
    return tuple(evaluated([jobs[index] for index in ready]))


def _with_sensitivity(jobs: dict[int, JobValues]) -> dict[int, JobValues]:
    """The jobs to write with their price sensitivity, computed together."""
    try:
        return dict(zip(jobs, all_with_sensitivity(list(jobs.values())), strict=True))
    except Exception:  # an error of one job is reported when its own workbook is written, without the others
        return jobs


def _result(values: JobValues, request: JobRequest) -> JobResult:
    values = replace(values, job=replace(values.job, findings=list(request.findings)))
    data, failure = None, ""
    if request.write:
        try:
            data = job_workbook(with_sensitivity(values))
        except Exception as reason:  # an error of one job must not cost the others their workbooks
            failure = f"{request.file}: it could not be written: {type(reason).__name__}: {reason}"
    return JobResult(request.file, data, failure, row_of(values, request.file), tuple(job_findings(values)))


def evaluated(jobs: Sequence[JobInput]) -> Iterator[JobValues]:
    """The values of every job, evaluated in chunks."""
    for start in range(0, len(jobs), CHUNK):
        chunk = list(jobs[start : start + CHUNK])
        yield from each_job(evaluate(chunk), chunk)


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
    return findings + _missing_prices(job)


def _missing_prices(job: JobValues) -> list[Finding]:
    """A note for each sheet of the company book that lacks what costs of the job need, with what to type there."""
    lacking: dict[str, list[Cost]] = {}
    for index, row in enumerate(ROWS):
        if float(job.of(CostTable.unpriced, index)):
            lacking.setdefault(_sheet_of(row), []).append(row)
    found = []
    for sheet, rows in lacking.items():
        count = "1 cost has no price" if len(rows) == 1 else f"{len(rows)} costs have no price"
        names = "; ".join(dict.fromkeys(row.price.label if row.price is not None else row.label for row in rows))
        place = Place(job.job.company.name or job.job.place.book, sheet)
        text = f"{count}: {names}."
        remedy = f"The price of the job is not complete. {_TO_TYPE[sheet]}"
        found.append(Finding(FindingKind.MISSING_PRICE, place, text, remedy, job.job.id))
    return found


_TO_TYPE = {
    PRICES: "Type each in its row of Prices, with the size of a pack where it comes in packs.",
    "Wages": "Type the wages of the laborer and the finisher, and of a driver where one is hired.",
    "Vehicles": "List a vehicle with its payload and its rates, or the hired truck that takes the spoil.",
    "Disposal sites": "List a disposal site with what it charges, and the vehicle's rates.",
    SITE: "Type the permit as a fact of the job; 0 if none is needed.",
}
"""What to type on each sheet that lacks something."""


def _sheet_of(row: Cost) -> str:
    """The sheet on which the price of a cost is typed."""
    if row.price is None and row.group == LABOR:
        return "Wages"
    if row.group == DISPOSAL and row.price is None:
        return "Vehicles" if row.label == WITHOUT_VEHICLE else "Disposal sites"
    return SITE if row.group == FEES else PRICES
