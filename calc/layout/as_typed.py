"""How the sheet Measured says what was typed and where, and how that is understood again when it is read back.

A cell of a row side by side says both: ``Areas!D2: 20' 6"``. A row one below the other has a line for each cell, with
its header: ``depth in: 5 1/4`` in one column, and the cell that it stood in on the same line of another.
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
    """What a workbook says of one value: what was typed for it, and where."""

    typed: str
    origin: str


def format_cell(entry: Entry) -> str:
    """One value of a row side by side."""
    return f"{entry.origin}{_COLON}{entry.typed}" if entry.typed else DEFAULT


def parse_cell(said: str) -> AsTyped | None:
    """What :func:`format_cell` said; None for a default."""
    origin, colon, typed = said.partition(_COLON)
    return AsTyped(typed, origin) if colon else None


def format_typed(entries: Iterable[tuple[str, Entry]]) -> str:
    """What was typed for some values of a row, a line each, behind what each is called, where it has a name."""
    return "\n".join(
        f"{name}{_COLON if name else ''}{on_one_line(entry.typed)}" for name, entry in entries if entry.typed
    )


def format_origins(entries: Iterable[tuple[str, Entry]]) -> str:
    """Where it was typed, on the same lines."""
    return "\n".join(entry.origin for _, entry in entries if entry.typed)


def parse_lines(typed: str, origins: str) -> dict[str, AsTyped]:
    """What :func:`format_typed` and :func:`format_origins` said, by what each value is called."""
    told = {}
    for line, origin in zip(typed.split("\n"), origins.split("\n"), strict=False):
        name, colon, text = line.partition(_COLON)
        if colon:
            told[name] = AsTyped(text, origin)
    return told


def entries_of(band: Sequence[Input], found: Mapping[Input, Entry]) -> list[tuple[str, Entry]]:
    """The values of a row in a band of columns, by their headers."""
    return [(given.header, found[given]) for given in band]


def on_one_line(text: str) -> str:
    """A text without its line breaks."""
    return re.sub(r"[\r\n]+", " ", text)
