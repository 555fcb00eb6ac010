"""Wild numbers: one that would give an infinity is refused at its cell, one that is merely odd is asked about."""

from __future__ import annotations

from collections.abc import Iterator
from copy import copy
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from books import Rows, book_of, intake_from, line
from calc.declared import LEAST, MOST, Factor, Input, Kind, Limits, Pack, Price
from calc.errors import FindingKind, Severity
from calc.formula.levels import JOB
from calc.intake.read_run import read_run
from calc.intake.records import Entry, JobInput
from calc.intake.schema import FACTOR_LIST, INPUTS, OVERRIDDEN, PRICE_LIST
from calc.model.evaluate import evaluate
from whole_job import whole_company, whole_week

FAR = (0.0, 1e-9, LEAST, 1e-4, 0.01, 1.0, 100.0, 1e4, MOST, 1e300)
"""What somebody may type for a factor, by slip or to see what happens."""


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> JobInput:
    """A job of one area with something in every column."""
    intake = intake_from(tmp_path_factory.mktemp("whole"), whole_week(("walk",)), whole_company())
    return intake.jobs[0]


def taken(factor: Factor, typed: float) -> dict[tuple[Factor, int], Entry]:
    """What a company book gives for a factor in which this number is typed for every kind; nothing when refused."""
    kinds = factor.level.axis.words if factor.level.axes else (None,)
    rows: Rows = [["factor", "for", "value"], *([factor.label, kind, typed] for kind in kinds)]
    intake = read_run([], book_of(Path("company.xlsx"), {"Factors": rows}))
    errors = [each for each in intake.findings if each.severity is Severity.ERROR]
    assert all(each.place.cell.startswith("C") and each.remedy and factor.label in each.found for each in errors)
    return {} if errors else intake.company.factors


def with_factors(job: JobInput, factors: dict[tuple[Factor, int], Entry]) -> JobInput:
    company = copy(job.company)
    company.factors = company.factors | factors
    return replace(job, company=company)


def ends(limits: Limits, signed: bool) -> Iterator[float]:
    """The ends of what may be typed."""
    step = 1.0 if limits.whole else LEAST
    low = limits.low if limits.low is not None else None if limits.over is None else limits.over + step
    yield low if low is not None else -MOST if signed else 0.0
    yield MOST if limits.high is None else limits.high


def extremes(job: JobInput) -> Iterator[tuple[str, JobInput]]:
    """The job with one number at an end of what may be typed: a factor, an input, an override, a price, a pack."""
    for factor in FACTOR_LIST:
        for typed in FAR:
            if factors := taken(factor, typed):
                yield f"{factor.label} {typed:g}", with_factors(job, factors)
    for given in INPUTS:
        if given.kind in (Kind.NUMBER, Kind.SLOPE):
            for value in ends(given.limits, given.signed):
                yield f"{given.id} {value:g}", with_input(job, given, Entry(value, origin="typed"))
    for override in OVERRIDDEN:
        for value in ends(override.limits, False):
            count = 1 if override.level == JOB else len(job.rows[override.level])
            forced = {(override, place): Entry(value) for place in range(count)}
            yield f"{override.label} {value:g}", replace(job, overrides=job.overrides | forced)
    for price in PRICE_LIST:
        for named, value in ((price, 0.0), (price, MOST), (price.pack, LEAST), (price.pack, MOST)):
            if named is not None:
                yield f"{named.label} {value:g}", with_price(job, named, Entry(value))


def with_input(job: JobInput, given: Input, entry: Entry) -> JobInput:
    if given.level == JOB:
        return replace(job, entries=job.entries | {given: entry})
    rows = [replace(row, entries=row.entries | {given: entry}) for row in job.rows.get(given.level, [])]
    return replace(job, rows=job.rows | {given.level: rows})


def with_price(job: JobInput, named: Price | Pack, entry: Entry) -> JobInput:
    company = copy(job.company)
    company.prices = company.prices | {named: entry}
    return replace(job, company=company)


def test_no_number_that_may_be_typed_makes_an_infinity(whole: JobInput) -> None:
    names, jobs = zip(*extremes(whole), strict=True)
    assert len(jobs) > 1000
    wild = {}
    for start in range(0, len(jobs), 200):
        frame = evaluate(jobs[start : start + 200])
        for named, column in frame.columns.items():
            for row in np.flatnonzero(np.isinf(column)) if column.dtype == float else ():
                wild.setdefault(names[start + frame.rows_of(named.level).job[row]], named.id)
    assert wild == {}


@pytest.mark.parametrize(
    "factor", ["Panel.by_thickness", "Panel.max_spacing", "Stakes.curved_spacing", "FiberKind.bag", "Risk.increment"]
)
def test_a_factor_that_is_divided_by_through_another_line_is_refused_when_it_is_0(factor: str) -> None:
    named = line(factor)
    assert isinstance(named, Factor)
    assert taken(named, named.values[-1]) and not taken(named, 0.0)


def forced(line_: str, value: object, tmp_path: Path) -> list[FindingKind]:
    """The findings about the value that a line is forced to."""
    week: dict[str, Rows] = {
        "Jobs": [["job", "bid date"], ["24-031", "2026-04-13"]],
        "Areas": [["job", "length ft", "width ft"], ["24-031", 12, 3]],
        "Overrides": [["job", "line", "value", "reason", "who"], ["24-031", line_, value, "so", "MK"]],
    }
    found = intake_from(tmp_path, week).findings
    assert all(each.place.cell == "C2" and line_ in each.found for each in found)
    return [each.kind for each in found]


@pytest.mark.parametrize(
    ("line_", "value", "kind"),
    [
        ("Concrete to order", 900, FindingKind.UNUSUAL_VALUE),
        ("Concrete to order", 2000, FindingKind.OUT_OF_RANGE),
        ("Mean thickness", 0, FindingKind.OUT_OF_RANGE),
        ("Mean thickness", 30, FindingKind.OUT_OF_RANGE),
        ("Mean thickness", 12, FindingKind.UNUSUAL_VALUE),
        ("Dowels, total", 7.5, FindingKind.NOT_A_WHOLE_NUMBER),
        ("Price", 1e300, FindingKind.OUT_OF_RANGE),
        ("Price", 12, FindingKind.UNUSUAL_VALUE),
        ("Net area", "about 40", FindingKind.NOT_A_NUMBER),
    ],
)
def test_a_forced_line_is_read_like_an_input(line_: str, value: object, kind: FindingKind, tmp_path: Path) -> None:
    assert forced(line_, value, tmp_path) == [kind]
    assert forced("Concrete to order", 3, tmp_path) == []
