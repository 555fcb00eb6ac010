"""Cells with addresses: the content of a workbook as it was read."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import Enum, auto
from functools import cache
from pathlib import Path

Value = float | int | str | bool | datetime | None
"""The value of a cell."""


class Kind(Enum):
    """The type of a cell's value; blank cells are left out."""

    NUMBER = auto()
    """``value`` is an int or a float."""
    TEXT = auto()
    """``value`` is the text exactly as it was typed; that of a formula may be empty."""
    DATE = auto()
    """``value`` is a datetime, whatever the date system of the book."""
    BOOLEAN = auto()
    """``value`` is True or False."""
    ERROR = auto()
    """``value`` is the error code, such as ``#N/A``; ``#VALUE!`` for a date number outside the calendar."""
    UNCOMPUTED = auto()
    """A formula whose value was never stored; ``value`` is the formula."""
    DURATION = auto()
    """A time of day or a length of time; ``value`` is its text in hours, minutes and seconds, such as ``7:30:00``."""


@dataclass(frozen=True, slots=True)
class Cell:
    """A cell with a value; row and column count from 1."""

    sheet: str
    row: int
    column: int
    kind: Kind
    value: Value
    formula: str = ""
    """The formula with its ``=``, if any; ``value`` is then its stored result."""
    merged: str = ""
    """The merged range that the cell is in, such as ``B2:C4``."""
    number_format: str = "General"
    hidden: bool = False
    """Whether it is in a hidden or filtered row, a hidden column or a hidden sheet. It is read like any other."""
    struck: bool = False
    """Whether its text is struck through. It is read like any other."""

    @property
    def ref(self) -> str:
        """The address of the cell in its sheet, such as ``D7``."""
        return f"{column_letters(self.column)}{self.row}"


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet: the rows that are not blank, each with its number and its cells by column."""

    name: str
    rows: tuple[tuple[int, dict[int, Cell]], ...]
    hidden: bool = False
    merged_ranges: tuple[str, ...] = ()
    """All merged ranges, those without a value too."""


@dataclass(frozen=True, slots=True)
class Book:
    """A workbook as it was read; ``notes`` are sentences about content that was ignored or converted."""

    path: Path
    name: str
    sheets: dict[str, Sheet]
    sha256: str
    notes: tuple[str, ...] = ()


@cache
def column_number(letters: str) -> int:
    """The number of a column, counting from 1: A is 1, AB is 28."""
    number = 0
    for letter in letters:
        number = number * 26 + ord(letter) - ord("A") + 1
    return number


@cache
def column_letters(column: int) -> str:
    """The letters of a column number, counting from 1: 1 is A, 28 is AB."""
    letters = ""
    while column:
        column, rest = divmod(column - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters
