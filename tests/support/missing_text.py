"""Inputs of a job that are missing from its workbook: every value must be in its own cell, and as it was typed."""

from __future__ import annotations

import math
from collections.abc import Iterator
from pathlib import Path

from calc.cell_text import escape_control
from calc.declared import Input
from calc.intake.records import Entry, JobInput
from calc.intake.schema import NAMED_TABLES
from calc.layout.as_typed import format_cell, on_one_line
from calc.layout.bid_cautions import slots_for
from calc.layout.measured_sheet import NAME as MEASURED
from calc.layout.workbook import addresses
from calc.model.results import JobValues
from sheet_cells import Held, read_cells


def missing_from_workbook(job: JobValues, workbook: Path) -> list[str]:
    """The inputs of a job that are not in its workbook, as a value in their own cell or as they were typed."""
    cells = read_cells(workbook)
    where = addresses(job.shape, slots_for(job))
    words = {held.value for (sheet, _), held in cells.items() if sheet == MEASURED}
    lines = {line for each in words if isinstance(each, str) for line in each.split("\n")}
    found = []
    for given, index, entry in entries_of(job.job):
        named = f"{given.id}[{index}] {entry.origin} {entry.typed!r}"
        cell = cells.get(where[given.id, index], Held(None))
        if not has_value(entry.value, cell):
            found.append(f"{named} is {cell.value!r} in its cell")
        typed = {escape_control(entry.typed), escape_control(format_cell(entry))}
        line = escape_control(f"{given.header}: {on_one_line(entry.typed)}")
        if entry.typed and given.section.table not in NAMED_TABLES and not typed & words and line not in lines:
            found.append(f"{named} is not shown as it was typed")
    return found


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
