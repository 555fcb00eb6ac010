"""Text on the sheet Measured of what was typed and in which cell, written and parsed.

Where rows are side by side a cell has both: ``Areas!D2: 20' 6"``. Where they are one below another, a line for each
cell has its header, ``depth in: 5 1/4``, in one column, and its cell on the same line of another column.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from calc.declared import Input
from calc.intake.records import DEFAULT, Entry

_COLON = ": "


@dataclass(frozen=True)
class AsTyped:
    """What was typed for a value, and in which cell."""

    typed: str
    origin: str


def format_cell(entry: Entry) -> str:
    """The text of one value, where rows are side by side."""
    return f"{entry.origin}{_COLON}{entry.typed}" if entry.typed else DEFAULT


def parse_cell(text: str) -> AsTyped | None:
    """Parses the text of :func:`format_cell`; None for a default."""
    origin, colon, typed = text.partition(_COLON)
    return AsTyped(typed, origin) if colon else None


def format_typed(entries: Iterable[tuple[str, Entry]]) -> str:
    """What was typed for some values of a row, a line each, after the name of each where it has one."""
    return "\n".join(
        f"{name}{_COLON if name else ''}{on_one_line(entry.typed)}" for name, entry in entries if entry.typed
    )


def format_origins(entries: Iterable[tuple[str, Entry]]) -> str:
    """The cells where it was typed, on the same lines."""
    return "\n".join(entry.origin for _, entry in entries if entry.typed)


def parse_lines(typed: str, origins: str) -> dict[str, AsTyped]:
    """Parses the texts of :func:`format_typed` and :func:`format_origins`, by the name of each value."""
    parsed = {}
    for line, origin in zip(typed.split("\n"), origins.split("\n"), strict=False):
        name, colon, text = line.partition(_COLON)
        if colon:
            parsed[name] = AsTyped(text, origin)
    return parsed


def entries_of(band: Sequence[Input], found: Mapping[Input, Entry]) -> list[tuple[str, Entry]]:
    """The values of a row in a band of columns, by their headers."""
    return [(given.header, found[given]) for given in band]


def on_one_line(text: str) -> str:
    """A text without its line breaks."""
    return re.sub(r"[\r\n]+", " ", text)
