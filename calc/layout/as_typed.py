"""Text on the sheet Measured of what was typed and in which cell, written and parsed.

A value of the whole job has both: ``Site conditions!C4: 20' 6"``. Below a table the text stands alone, under the letter
of its column and beside the number of its row.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from calc.declared import Input, Kind
from calc.intake.records import EDGE_COLUMN, Entry, JobInput

_COLON = ": "
_CELL = re.compile(r"(.*)!([A-Z]+)(\d+)")

AS_USUAL = "as usual"
"""What stands in place of what was typed where nothing was."""

OF_COMPANY = "co. "
"""The start of the cell of a value that was typed in the company book."""


@dataclass(frozen=True)
class AsTyped:
    """What was typed for a value, and in which cell."""

    typed: str
    origin: str


def shows_itself(given: Input) -> bool:
    """Whether what was typed is what its box shows: words and days are not repeated beside it."""
    return given.kind in (Kind.TEXT, Kind.DATE)


def format_cell(entry: Entry | None, job: JobInput) -> str:
    """What was typed for a value of the job, after its cell."""
    if entry is None or not entry.typed:
        return ""
    return f"{format_origin(entry, job)}{_COLON}{on_one_line(entry.typed)}"


def parse_cell(text: str) -> AsTyped | None:
    """Parses the text of :func:`format_cell`; None where nothing was typed."""
    origin, colon, typed = text.partition(_COLON)
    return AsTyped(typed, origin) if colon else None


def format_origin(entry: Entry, job: JobInput) -> str:
    """The cell in which a value was typed; for one of the company book it says so."""
    book = job.company.name
    return (
        f"{OF_COMPANY}{entry.origin.removeprefix(f'{book} ')}"
        if book and entry.origin.startswith(f"{book} ")
        else entry.origin
    )


def format_row(entry: Entry) -> str:
    """What was typed for a value of a row; of the kind of an edge, that it was a column of Areas."""
    if entry.origin == EDGE_COLUMN:
        return EDGE_COLUMN
    return on_one_line(entry.typed)


def row_of(entries: Iterable[Entry], table: str) -> str:
    """Where the values of a row were typed: its number in its table, or the cells in another."""
    found = [match for entry in entries if entry.typed and (match := _CELL.fullmatch(entry.origin))]
    if all(match[1] == table for match in found):
        return f"row {found[0][3]}" if found else ""
    first = found[0]
    return f"{first[1]} {' '.join(f'{match[2]}{match[3]}' for match in found)}"


def column_of(entries: Iterable[Entry], table: str) -> str:
    """The letter of the column of a table in which a value was typed."""
    matches = (_CELL.fullmatch(entry.origin) for entry in entries if entry.typed)
    return next((f"column {match[2]}" for match in matches if match and match[1] == table), "")


def on_one_line(text: str) -> str:
    """A text without its line breaks."""
    return re.sub(r"[\r\n]+", " ", text)
