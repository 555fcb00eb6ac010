"""Numbers without an end: none may leave the rules, and one that does is told with the cell that made it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import isnan, log10

from calc.declared import Declared, Factor, Input, Line, Override, Pack, Price
from calc.errors import Place
from calc.formula.compute import Batch
from calc.formula.levels import JOB
from calc.formula.tree import Expr, Named
from calc.intake.facts import place_of
from calc.intake.records import DEFAULT, Entry, JobInput
from calc.intake.schema import everything
from calc.model.results import JobValues


def infinite_lines(frame: Batch) -> tuple[Line, ...]:
    """The lines of a chunk that have no end in some job, in order of evaluation."""
    return tuple(named for named in everything() if isinstance(named, Line) and frame.is_infinite(named))


def infinite_line(values: JobValues, lines: Sequence[Line]) -> Line | None:
    """The first of these lines that has no end in some row of a job; None when every number has one."""
    for named in lines:
        start = values.starts[named.level]
        if values.frame.is_infinite(named, start, start + values.counts[named.level]):
            return named
    return None


def cell_behind(line: Line, job: JobInput) -> tuple[str, str, Place]:
    """Of all that was typed and that ``line`` follows from, the number farthest from 1: its label, what was typed, and
    its cell; blank where nothing was typed."""
    found = [(entry, named) for named in _typed_behind(line.formula, set()) for entry in _entries(named, job)]
    if not found:
        return "", "", job.place
    entry, named = max(found, key=lambda each: _distance(each[0]))
    return named.label, entry.typed, place_of(entry, job.place, job.company)


def _typed_behind(node: Expr, seen: set[Named]) -> Iterator[Declared]:
    """What a person types that a formula follows from, through all the lines that it names."""
    if isinstance(node, Named):
        if node in seen:
            return
        seen.add(node)
        if isinstance(node, Input | Factor | Override | Price | Pack):
            yield node
        elif node.worked_by is not None:
            yield from _typed_behind(node.worked_by, seen)
    for part in node.parts:
        yield from _typed_behind(part, seen)


def _entries(named: Declared, job: JobInput) -> Iterator[Entry]:
    """What was typed for a declaration: numbers only."""
    company = job.company
    entries: list[Entry | None] = []
    if isinstance(named, Input):
        rows = [job.entries] if named.level == JOB else [row.entries for row in job.rows.get(named.level, [])]
        entries += [row.get(named) for row in rows]
    elif isinstance(named, Factor):
        entries += [company.factors.get((named, place)) for place in range(len(named.values))]
    elif isinstance(named, Override):
        entries += [entry for (override, _), entry in job.overrides.items() if override is named]
    elif isinstance(named, Price | Pack):
        entries.append(company.prices.get(named))
    for entry in entries:
        if entry is not None and entry.origin != DEFAULT and isinstance(entry.value, float) and not isnan(entry.value):
            yield entry


def _distance(entry: Entry) -> float:
    """How many powers of ten a number is from 1; 0 and an infinity are farther than any other."""
    size = abs(float(entry.value))
    return abs(log10(size)) if 0 < size < float("inf") else float("inf")
