"""Cells that do nothing because of what stands, or does not stand, in others: each is told at its place."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from math import isnan

from calc.declared import Input
from calc.declared.inputs import Condition
from calc.errors import Finding, FindingKind
from calc.formula.levels import JOB, Level
from calc.intake.facts import place_of
from calc.intake.records import DEFAULT, EDGE_COLUMN, REFUSED, Entry, JobInput, Row
from calc.intake.schema import AREAS, INPUTS, TABLES
from calc.intake.spelling import one_of
from calc.trade.inputs.areas import SHORT_EDGES, Edge
from calc.trade.levels import AREA, EDGE

Entries = Mapping[Input, Entry]

EDGE_COLUMNS = {given: label.lower() for kind, columns in SHORT_EDGES if kind == "existing" for label, given in columns}
"""What the columns of Areas for a doweled edge are called."""


def unused_cells(job: JobInput) -> Iterator[Finding]:
    """A note for each cell of a job that does nothing for want of what it needs.

    Facts of the company are no cells of the job, and a cell that says what a blank one means needs nothing.
    """
    for given in (each for each in INPUTS if each.needs):
        for row in [job] if given.level == JOB else job.rows.get(given.level, []):
            entry = row.entries[given]
            place = place_of(entry, row.place, job.company)
            if entry.origin in (DEFAULT, REFUSED) or entry.value == given.default or place.book != job.place.book:
                continue
            lacking = (why for each in given.needs if (why := _lacking(each, job, _around(job, row))))
            if reason := next(lacking, ""):
                label = given.label
                if place.sheet == AREAS and given in EDGE_COLUMNS:
                    label, reason = EDGE_COLUMNS[given].capitalize(), f"without {EDGE_COLUMNS[Edge.length]}"
                yield Finding(FindingKind.UNUSED_INPUT, place, f"{label} is not used {reason}.", "", job.id)
    yield from _edges_without_dowels(job)


def _edges_without_dowels(job: JobInput) -> Iterator[Finding]:
    """The lengths in the column for doweled edges without a spacing beside them."""
    for row in job.rows.get(EDGE, []):
        kind, length, spacing = (row.entries[each] for each in (Edge.kind, Edge.length, Edge.spacing))
        if kind.origin == EDGE_COLUMN and kind.value == "existing" and _is_typed(length) and spacing.origin == DEFAULT:
            found = "Doweled edge has no dowels without dowel spacing."
            yield Finding(FindingKind.UNUSED_INPUT, place_of(length, row.place, job.company), found, "", job.id)


def _around(job: JobInput, row: JobInput | Row) -> Sequence[Entries]:
    """The entries of a row, of the area that it is within, and of its job."""
    areas = job.rows.get(AREA, [])
    above = [areas[row.within].entries] if isinstance(row, Row) and row.within < len(areas) else []
    return (row.entries, *above, job.entries)


def _lacking(condition: Condition, job: JobInput, around: Sequence[Entries]) -> str:
    """Why a condition is not met, as it follows the words is not used; blank when it is met, or cannot be told."""
    if isinstance(condition, Level):
        return "" if job.rows.get(condition) else f"without rows in {_table_of(condition)}"
    given, *words = condition if isinstance(condition, tuple) else (condition,)
    assert isinstance(given, Input)
    entry = next(entries[given] for entries in around if given in entries)
    if entry.origin == REFUSED:
        return ""
    if words:
        return "" if entry.value in words else f"when {given.label.lower()} is {entry.value}"
    return "" if _is_typed(entry) else f"without {given.label.lower()}"


def _is_typed(entry: Entry) -> bool:
    """Whether something was typed, or is the default, that is not 0."""
    return isinstance(entry.value, str) or (entry.value != 0 and not isnan(entry.value))


def _table_of(level: Level) -> str:
    return next(name for name, table in TABLES.items() if table.level == level)


def words_of(condition: Condition) -> str:
    """A condition in words, such as ``with dowel spacing`` or ``where shape is circle``, for the manual."""
    if isinstance(condition, Level):
        return f"with rows in {_table_of(condition)}"
    if isinstance(condition, tuple):
        given, *words = condition
        assert isinstance(given, Input)
        return f"where {given.label.lower()} is {one_of(words)}"
    return f"with {condition.label.lower()}"
