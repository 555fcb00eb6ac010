"""Jobs of the small trade: what is typed for them, what is computed, and some that are known to be awkward."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np
from hypothesis import strategies as st

from calc.declare import JOB, Factor, Input, Level, Line, Price
from calc.declared import Account, PriceDay, Taxed
from calc.formula.compute import Batch
from calc.formula.functions import Column
from calc.formula.tree import Named
from calc.formula.value_types import ValueType
from small_trade import AREA, EDGE, MIX, PLAN, SECTIONS, VEHICLE, Area, Bid, Edge, Plan, Slab, Vehicle

NOT_GIVEN = float("nan")
Value = float | str


@dataclass
class Row:
    """A typed row: its id, the row of its job that it lies in (from 0), and its values."""

    word: str
    values: Mapping[Named, Value]
    within: int = 0


@dataclass
class Job:
    """A job as it is typed: values of the job, rows of each level, and forced lines by row (from 0)."""

    values: Mapping[Named, Value] = field(default_factory=dict)
    rows: Mapping[Level, Sequence[Row]] = field(default_factory=dict)
    overrides: Mapping[tuple[Line, int], float] = field(default_factory=dict)


def evaluate(jobs: Sequence[Job]) -> Batch:
    """Every number of every job of a chunk."""
    frame = Batch(len(jobs))
    for level in (AREA, EDGE, PLAN, VEHICLE):
        _add_typed(frame, jobs, level)
    for section in SECTIONS:
        if section.slots_for is not None:
            _add_slots(frame, section.level, frame.columns[section.slots_for])
        for member in section.members:
            frame.columns[member] = _column(frame, jobs, member)
    return frame


def of_job(frame: Batch, named: Named, job: int = 0) -> list[Value]:
    """The values of one job, row by row."""
    return [
        value if isinstance(value, str) else float(value)
        for value in frame.columns[named][frame.rows_of(named.level).job == job]
    ]


def _add_typed(frame: Batch, jobs: Sequence[Job], level: Level) -> None:
    listed = [(place, row) for place, job in enumerate(jobs) for row in job.rows.get(level, ())]
    above = level.axis.within
    starts = np.zeros(len(jobs), dtype=int)
    if above is not None:
        starts = np.searchsorted(frame.rows_of(AREA).job, np.arange(len(jobs)))
    within = [int(starts[place]) + row.within for place, row in listed]
    frame.add_rows(level, (place for place, _ in listed), within, (row.word for _, row in listed))


def _add_slots(frame: Batch, level: Level, needed: Column) -> None:
    """Two slots, doubled until a job fits: jobs whose needs are a little apart have one shape."""
    counts = []
    for need in needed:
        slots = 2
        while slots < need:
            slots *= 2
        counts.append(slots)
    frame.add_rows(level, np.repeat(np.arange(len(counts)), counts), (), [""] * sum(counts))


def _column(frame: Batch, jobs: Sequence[Job], member: Named) -> Column:
    if isinstance(member, Line):
        return frame.value(member.formula, member.level)
    if isinstance(member, Factor):
        return np.tile(member.values, len(jobs))
    if isinstance(member, Input | Price):
        values = [value for job in jobs for value in _typed(job, member)]
        return np.array(values, dtype=object if member.value_type is ValueType.TEXT else float)
    if isinstance(member, Account):
        return np.array(["none"] * len(jobs), dtype=object)
    if isinstance(member, Taxed | PriceDay):
        blank = member.default if isinstance(member, Taxed) else NOT_GIVEN
        return np.array([blank] * len(jobs), dtype=object if isinstance(member, Taxed) else float)
    rows = frame.rows_of(member.level)
    override = [
        jobs[job].overrides.get((_used(member), int(number) - 1), NOT_GIVEN)
        for job, number in zip(rows.job, rows.number, strict=True)
    ]
    return np.array(override, dtype=float)


def _typed(job: Job, member: Input | Price) -> list[Value]:
    blank = getattr(member, "default", None)
    otherwise = NOT_GIVEN if blank is None else blank
    if member.level == JOB:
        return [job.values.get(member, otherwise)]
    return [row.values.get(member, otherwise) for row in job.rows.get(member.level, ())]


def _used(override: Named) -> Line:
    """The line that ``override`` forces."""
    return next(
        each for section in SECTIONS for each in section.members if isinstance(each, Line) and each.override is override
    )


def area(word: str, length: float, width: float, thickness: float = 4.0) -> Row:
    """A typed area."""
    return Row(word, {Area.length: length, Area.width: width, Area.thickness: thickness})


def edge(within: int, run: float, railed: str = "no") -> Row:
    """A typed edge of the area ``within``, from 0."""
    return Row("", {Edge.run: run, Edge.railed: railed}, within)


def plan(word: str, soil: float) -> Row:
    """A typed plan."""
    return Row(word, {Plan.soil: soil})


def vehicle(word: str, payload: float, rate: float) -> Row:
    """A typed vehicle."""
    return Row(word, {Vehicle.payload: payload, Vehicle.rate: rate})


AWKWARD = Job(
    {Bid.mix: "red", Bid.spare: 4.5, Bid.pump: 149.25, Bid.client: '="<5"'},
    {
        AREA: [area("1", 12.5, 4, 3.5), area("001", 10 + 6 / 12, 3.25), area("<5", 8, 5, 6)],
        EDGE: [edge(2, 7.5, "yes"), edge(0, 12.5), edge(0, 4, "yes"), edge(2, 8)],
        PLAN: [plan("A*", 7), plan("1E3", 2.25)],
        VEHICLE: [vehicle("big", 2.25, 41.255), vehicle("BIG", 1.1, 30), vehicle("?", 0.7, 30)],
    },
    {(Slab.volume, 1): 1.25},
)
"""Ids that spreadsheet programs take for one another, an area without edges, edges out of order, a forced line."""

ONE_OF_EACH = Job(
    {Bid.mix: "white", Bid.pump: 12.345},
    {
        AREA: [area("only", 9, 3)],
        EDGE: [edge(0, 9)],
        PLAN: [plan("only", 3)],
        VEHICLE: [vehicle("only", 3, 55)],
    },
)
"""Every range is of one cell."""

NO_EDGES = Job({Bid.spare: 0}, {AREA: [area("a", 20, 10, 5), area("b", 20, 10, 5)], PLAN: [plan("a", 3)]})
"""Levels without a row, so pairs without a row; two areas that are alike."""

EIGHTHS = st.integers(1, 800).map(lambda eighths: eighths / 8)


@st.composite
def jobs(draw: st.DrawFn) -> Job:
    """A job with a few areas, and a few rows of each other level or none."""
    words = st.sampled_from(["1", "001", "<5", "1E3", "a"])
    areas = draw(st.lists(st.builds(area, words, EIGHTHS, EIGHTHS, EIGHTHS), min_size=1, max_size=3))
    edges = st.builds(edge, st.integers(0, len(areas) - 1), EIGHTHS, st.sampled_from(["yes", "no"]))
    rows = {
        AREA: areas,
        EDGE: draw(st.lists(edges, max_size=3)),
        PLAN: draw(st.lists(st.builds(plan, words, EIGHTHS), max_size=2)),
        VEHICLE: draw(st.lists(st.builds(vehicle, words, EIGHTHS, EIGHTHS), max_size=2)),
    }
    mix, pump = draw(st.sampled_from(MIX.axis.words)), draw(EIGHTHS | st.just(NOT_GIVEN))
    override = draw(st.dictionaries(st.integers(0, 2).map(lambda row: (Slab.volume, row)), EIGHTHS, max_size=1))
    return Job({Bid.mix: mix, Bid.pump: pump}, rows, override)
