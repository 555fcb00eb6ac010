"""Evaluates the rules over a chunk of jobs: a batch of columns of plain floats in the declared units."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

import numpy as np

from calc.declared import Account, Declared, Factor, Input, Line, Override, Pack, Price, PriceDay, Section, Taxed
from calc.formula.compute import Batch
from calc.formula.functions import NONE, Column
from calc.formula.levels import JOB, Level, level_of
from calc.formula.value_types import ValueType, nothing
from calc.intake.records import NOT_GIVEN, JobInput
from calc.intake.schema import TABLES
from calc.trade.catalog import SECTIONS

LEAST_ROOM = 2
"""The least number of rows that a list has beyond the need of the job; most have half of the need."""

SHOWN_ROOM = 4
"""The rows beyond the need of the job in a list that only shows what stands elsewhere."""

MOST_SLOTS = 2048
"""The most rows reserved for a list; a job that needs more fails the check of that list."""


def evaluate(
    jobs: Sequence[JobInput], only: Collection[Declared] | None = None, lists: Mapping[Level, int] | None = None
) -> Batch:
    """Every number of every job of a chunk, by the rules in the order of the catalog.

    With ``only``, no more than those, which must include everything they depend on. With ``lists``, each list has so
    many rows instead of what the job needs, as in a workbook that is written and then edited.
    """
    batch = Batch(len(jobs))
    for table in TABLES.values():
        if table.level != JOB:
            _add_rows(batch, jobs, table.level)
    with np.errstate(all="ignore"):
        for section in SECTIONS:
            members = [each for each in section.members if only is None or each in only]
            if section.slots_for is not None and members:
                _add_slots(batch, section.level, section.slots_for, lists)
            for member in members:
                batch.columns[member] = _column(batch, jobs, member)
                if section.needs != JOB and isinstance(member, Line):
                    batch.columns[member] = _where_needed(batch, member)
    return batch


def _where_needed(batch: Batch, line: Line) -> Column:
    """The values of a line in the jobs that have what its section needs; nothing in the others."""
    column, job_of_row = batch.columns[line], batch.rows_of(line.level).job
    has = np.bincount(batch.rows_of(line.section.needs).job, minlength=batch.jobs) > 0
    return np.where(has[job_of_row], column, nothing(line.value_type))


def evaluate_section(section: type[Section], rows: int, facts: Mapping[Declared, Sequence[float]]) -> Batch:
    """The lines of one section for facts that are given outright, ``rows`` of them side by side as so many jobs.

    ``facts`` has a column for everything that the lines follow from; one of a level of named rows holds all rows of the
    first, then of the second.
    """
    batch = Batch(rows)
    for named, values in facts.items():
        batch.rows_of(named.level)
        batch.columns[named] = np.array(values, dtype=float)
    for member in section.members:
        if isinstance(member, Line):
            batch.columns[member] = batch.value(member.formula, member.level)
    return batch


def _add_rows(batch: Batch, jobs: Sequence[JobInput], level: Level) -> None:
    """The typed rows of a level; each with its job and, over the whole chunk, the row it is within."""
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
    batch.add_rows(level, places, within, words)


def _add_slots(batch: Batch, level: Level, needed: Declared, lists: Mapping[Level, int] | None) -> None:
    """The rows reserved for each row above: what the one that needs most needs, and room for edits."""
    if level in batch.rows:
        return
    job_of_row = batch.rows_of(needed.level).job
    most = np.zeros(batch.jobs)
    np.maximum.at(most, job_of_row, np.nan_to_num(batch.columns[needed]))
    slots = slots_of(most, level.axis.shown)
    if lists is not None:
        slots = lists[level] // np.maximum(1, np.bincount(job_of_row, minlength=batch.jobs))
    counts = slots[job_of_row]
    within = np.repeat(np.arange(len(job_of_row)), counts)
    batch.add_rows(level, np.repeat(job_of_row, counts), within, ("" for _ in within))


def slots_of(need: Column, shown: bool = False) -> Column:
    """The rows reserved for a need: half as many again, and at least two more; four more in a list that only shows."""
    rows = np.ceil(np.clip(need, 0, MOST_SLOTS))
    room = np.full(len(rows), SHOWN_ROOM) if shown else np.maximum(LEAST_ROOM, np.ceil(rows / 2))
    return np.asarray(np.minimum(rows + room, MOST_SLOTS), dtype=int)


def _column(batch: Batch, jobs: Sequence[JobInput], member: Declared) -> Column:
    match member:
        case Line():
            return batch.value(member.formula, member.level)
        case Factor():
            return _of_factor(batch, jobs, member)
        case Price() | Pack():
            return np.array([_price(job, member) for job in jobs], dtype=float)
        case Taxed():
            return np.array([job.company.taxed.get(member, member.default) for job in jobs], dtype=object)
        case Account():
            return np.array([job.company.accounts.get(member, NONE) for job in jobs], dtype=object)
        case PriceDay():
            return np.array([job.company.days.get(member, NOT_GIVEN) for job in jobs], dtype=float)
        case Override():
            return _of_override(batch, jobs, member)
        case Input():
            return _of_given(jobs, member)
    raise TypeError(f"no column for {type(member).__name__}")


def _of_given(jobs: Sequence[JobInput], given: Input) -> Column:
    if given.level == JOB:
        values = [job.entries[given].value for job in jobs]
    else:
        values = [row.entries[given].value for job in jobs for row in job.rows.get(given.level, [])]
    return np.array(values, dtype=object if given.value_type is ValueType.TEXT else float)


def _of_factor(batch: Batch, jobs: Sequence[JobInput], factor: Factor) -> Column:
    values = [
        float(entry.value) if (entry := job.company.factors.get((factor, place))) else value
        for job in jobs
        for place, value in enumerate(factor.values)
    ]
    batch.rows_of(factor.level)
    return np.array(values, dtype=float)


def _price(job: JobInput, price: Price | Pack) -> float:
    entry = job.company.prices.get(price)
    return float(entry.value) if entry else NOT_GIVEN


def _of_override(batch: Batch, jobs: Sequence[JobInput], override: Override) -> Column:
    rows = batch.rows_of(override.level)
    values = [
        float(entry.value) if (entry := jobs[job].overrides.get((override, int(number) - 1))) else NOT_GIVEN
        for job, number in zip(rows.job, rows.number, strict=True)
    ]
    return np.array(values, dtype=float)
