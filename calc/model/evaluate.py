"""Jobs to columns: a chunk of jobs becomes a frame of bare floats in declared units, ready for the rules."""

from __future__ import annotations

from collections.abc import Collection, Sequence

import numpy as np

from calc.declared import Declared, Factor, Input, Line, Override, Pack, Price, PriceDay, Taxed
from calc.formula.compute import Batch
from calc.formula.functions import Column
from calc.formula.levels import JOB, Level, level_of
from calc.formula.value_types import ValueType
from calc.intake.records import NOT_GIVEN, JobInput
from calc.intake.schema import TABLES
from calc.trade.catalog import SECTIONS

MOST_SLOTS = 2048
"""Slots that a list has at most; a job that needs more misses the check of that list, and is no small job."""


def evaluate(jobs: Sequence[JobInput], only: Collection[Declared] | None = None) -> Batch:
    """Every number of every job of a chunk, by the rules in the order of the catalog.

    With ``only``, no more than those: they must hold everything that they follow from.
    """
    frame = Batch(len(jobs))
    for table in TABLES.values():
        if table.level != JOB:
            _lay_rows(frame, jobs, table.level)
    with np.errstate(all="ignore"):
        for section in SECTIONS:
            members = [each for each in section.members if only is None or each in only]
            if section.slots_for is not None and members:
                _lay_slots(frame, section.level, section.slots_for)
            for member in members:
                frame.columns[member] = _column(frame, jobs, member)
    return frame


def _lay_rows(frame: Batch, jobs: Sequence[JobInput], level: Level) -> None:
    """The typed rows of a level; each knows its job and, over the whole chunk, the row that it lies within."""
    above = level_of(level.axis.within) if level.axis.within is not None else JOB
    places: list[int] = []
    within: list[int] = []
    words: list[str] = []
    start = 0
    for place, job in enumerate(jobs):
        rows = job.rows.get(level, [])
        places += [place] * len(rows)
        within += [start + row.within for row in rows]
        words += [row.word for row in rows]
        start += len(job.rows.get(above, []))
    frame.add_rows(level, places, within, words)


def _lay_slots(frame: Batch, level: Level, needed: Declared) -> None:
    """So many slots for each row above as the axis has at issue, doubled until every one of the job's fits."""
    if level in frame.rows:
        return
    above = needed.level
    job_of_row = frame.rows_of(above).job
    slots = np.full(frame.jobs, level.axis.slots)
    for job, need in zip(job_of_row, frame.columns[needed], strict=True):
        while slots[job] < min(need, MOST_SLOTS):
            slots[job] *= 2
    counts = slots[job_of_row]
    within = np.repeat(np.arange(len(job_of_row)), counts)
    frame.add_rows(level, np.repeat(job_of_row, counts), within, ("" for _ in within))


def _column(frame: Batch, jobs: Sequence[JobInput], member: Declared) -> Column:
    match member:
        case Line():
            return frame.value(member.formula, member.level)
        case Factor():
            return _of_factor(frame, jobs, member)
        case Price() | Pack():
            return np.array([_price(job, member) for job in jobs], dtype=float)
        case Taxed():
            return np.array([job.company.taxed.get(member, member.default) for job in jobs], dtype=object)
        case PriceDay():
            return np.array([job.company.days.get(member, NOT_GIVEN) for job in jobs], dtype=float)
        case Override():
            return _of_override(frame, jobs, member)
        case Input():
            return _of_given(jobs, member)
    raise TypeError(f"no column for {type(member).__name__}")


def _of_given(jobs: Sequence[JobInput], given: Input) -> Column:
    if given.level == JOB:
        values = [job.entries[given].value for job in jobs]
    else:
        values = [row.entries[given].value for job in jobs for row in job.rows.get(given.level, [])]
    return np.array(values, dtype=object if given.value_type is ValueType.TEXT else float)


def _of_factor(frame: Batch, jobs: Sequence[JobInput], factor: Factor) -> Column:
    values = [
        float(entry.value) if (entry := job.company.factors.get((factor, place))) else value
        for job in jobs
        for place, value in enumerate(factor.values)
    ]
    frame.rows_of(factor.level)
    return np.array(values, dtype=float)


def _price(job: JobInput, price: Price | Pack) -> float:
    entry = job.company.prices.get(price)
    return float(entry.value) if entry else NOT_GIVEN


def _of_override(frame: Batch, jobs: Sequence[JobInput], override: Override) -> Column:
    rows = frame.rows_of(override.level)
    values = [
        float(entry.value) if (entry := jobs[job].overrides.get((override, int(number) - 1))) else NOT_GIVEN
        for job, number in zip(rows.job, rows.number, strict=True)
    ]
    return np.array(values, dtype=float)
