"""Inputs of a job that are missing from its workbook: every value must be in its own cell, and as it was typed."""

from __future__ import annotations

import math
from collections.abc import Iterator
from pathlib import Path

from calc.cell_text import escape_control
from calc.cells import column_letters
from calc.declared import Input
from calc.formula.levels import JOB
from calc.intake.records import Entry, JobInput
from calc.intake.schema import NAMED_TABLES
from calc.layout.addresses import CellMap
from calc.layout.as_typed import format_cell, format_row
from calc.layout.bid_cautions import slots_for
from calc.layout.measured_sheet import NAME as MEASURED
from calc.layout.measured_tables import TypedPlaces
from calc.layout.workbook import addresses, measured_page
from calc.model.results import JobValues
from sheet_cells import Held, read_cells


def missing_from_workbook(job: JobValues, workbook: Path) -> list[str]:
    """The inputs of a job that are not in its workbook, as a value in their own cell or as they were typed."""
    cells = read_cells(workbook)
    where = addresses(job.shape, slots_for(job))
    shown = {ref for (sheet, ref), held in cells.items() if sheet == MEASURED and held.value not in (None, "")}
    told = _told_places(job)
    found = []
    for given, index, entry in entries_of(job.job):
        named = f"{given.id}[{index}] {entry.origin} {entry.typed!r}"
        cell = cells.get(where[given.id, index], Held(None))
        if not has_value(entry.value, cell):
            found.append(f"{named} is {cell.value!r} in its cell")
        if not entry.typed or given.section.table in NAMED_TABLES:
            continue
        if (given, index) in told.origins:
            if _ref(told.origins[given, index]) not in shown:
                found.append(f"{named} is not said to be typed")
            continue
        typed = format_cell(entry, job.job) if given.level == JOB else format_row(entry)
        held = cells.get((MEASURED, _ref(told.cells[given, index])), Held(None)).value
        if held != escape_control(typed):
            found.append(f"{named} is not shown as it was typed, but as {held!r}")
    return found


def _told_places(job: JobValues) -> TypedPlaces:
    """Where Measured says what was typed."""
    return measured_page(CellMap(), job.shape)[1]


def _ref(place: tuple[int, int]) -> str:
    return f"{column_letters(place[1] + 1)}{place[0] + 1}"


def entries_of(job: JobInput) -> Iterator[tuple[Input, int, Entry]]:
    """Every value of a job, with its row."""
    for given, entry in job.entries.items():
        yield given, 0, entry
    for rows in job.rows.values():
        for index, row in enumerate(rows):
            for given, entry in row.entries.items():
                yield given, index, entry


def has_value(value: float | str, held: Held) -> bool:
    """Whether a cell has a value: texts as they are escaped, numbers to sixteen digits."""
    if isinstance(value, str):
        return held.value == (escape_control(value) or None)
    if math.isnan(value):
        return held.value == "none"
    return isinstance(held.value, float) and math.isclose(held.value, value, rel_tol=1e-15)
