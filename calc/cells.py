"""Cells with addresses: what a workbook held, before anything is made of it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import Enum, auto
from functools import cache
from pathlib import Path

Value = float | int | str | bool | datetime | None
"""What a cell holds."""


class Kind(Enum):
    """What a cell holds; a blank cell is no cell."""

    NUMBER = auto()
    """``value`` is an int or a float."""
    TEXT = auto()
    """``value`` is the text exactly as it was typed; a formula may give an empty one."""
    DATE = auto()
    """``value`` is a datetime, whichever epoch the book counts from."""
    BOOLEAN = auto()
    """``value`` is True or False."""
    ERROR = auto()
    """``value`` is the error as it is shown, such as ``#N/A``; ``#VALUE!`` for a date that no calendar has."""
    UNCOMPUTED = auto()
    """A formula whose value was never stored; ``value`` is the formula."""
    DURATION = auto()
    """A time of day or a length of time; ``value`` is its text in hours, minutes and seconds, such as ``7:30:00``."""


@dataclass(frozen=True, slots=True)
class Cell:
    """A cell that holds something; row and column count from 1."""

    sheet: str
    row: int
    column: int
    kind: Kind
    value: Value
    formula: str = ""
    """The formula with its ``=`` when the cell holds one; ``value`` is then what was stored of it."""
    merged: str = ""
    """The merged range that the cell lies in, such as ``B2:C4``."""
    number_format: str = "General"
    hidden: bool = False
    """In a hidden or filtered row, a hidden column or a hidden sheet: it is read all the same."""

    @property
    def ref(self) -> str:
        """The address of the cell in its sheet, such as ``D7``."""
        return f"{column_letters(self.column)}{self.row}"


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet: the rows that hold something, each with its number and its cells by column."""

    name: str
    rows: tuple[tuple[int, dict[int, Cell]], ...]
    hidden: bool = False
    merged_ranges: tuple[str, ...] = ()
    """All merged ranges, those without a cell too."""


@dataclass(frozen=True, slots=True)
class Book:
    """A workbook as it was read; ``notes`` are whole sentences about what was left aside or read in a special way."""

    path: Path
    name: str
    sheets: dict[str, Sheet]
    sha256: str
    notes: tuple[str, ...] = ()


@cache
def column_number(letters: str) -> int:
    """The number of a column, which counts from 1: A is 1, AB is 28."""
    number = 0
    for letter in letters:
        number = number * 26 + ord(letter) - ord("A") + 1
    return number


@cache
def column_letters(column: int) -> str:
    """The letters of a column that counts from 1: 1 is A, 28 is AB."""
    letters = ""
    while column:
        column, rest = divmod(column - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters
