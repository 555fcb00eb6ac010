"""What can be wrong with an input, and how it is said: where, what was found, what to type instead.

Every stage takes values and returns values with findings; only the command prints them.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntEnum
from typing import Final

MAX_LINE: Final = 4_000
"""Letters of a line that is printed."""


def one_line(text: str, most: int = MAX_LINE) -> str:
    """The text on one line that a person can read: what was typed in a cell may hold anything, at any length."""
    line = " ".join("".join(letter if letter.isprintable() else " " for letter in text[:most]).split())
    return line if len(text) <= most else f"{line}..."


class Severity(IntEnum):
    """How far a finding reaches: a stop holds its job back, an ask and a note do not."""

    STOP = 0
    ASK = 1
    NOTE = 2

    @property
    def word(self) -> str:
        """The word that is printed: ``stop``, ``ask`` or ``note``."""
        return self.name.lower()


@dataclass(frozen=True)
class Place:
    """A place in an input workbook: the book's file name, and the sheet and the cell where they are known."""

    book: str = ""
    sheet: str = ""
    cell: str = ""

    def __str__(self) -> str:
        inside = f"{self.sheet}!{self.cell}" if self.sheet and self.cell else self.sheet
        return " ".join(part for part in (self.book, inside) if part)


@dataclass(frozen=True)
class Finding:
    """One thing a person has to know about an input.

    ``found`` says what stands there, ``remedy`` what to type instead; both are whole sentences. ``job`` is the
    id of the one job it belongs to, or blank when it holds for the whole book (a stop then holds every job of it).
    """

    severity: Severity
    place: Place
    found: str
    remedy: str = ""
    job: str = ""

    def __str__(self) -> str:
        text = " ".join(part for part in (self.found, self.remedy) if part)
        place = f"{self.place}: " if str(self.place) else ""
        return one_line(f"{place}{self.severity.word}: {text}")


class InputRefused(Exception):
    """A typed text that cannot be read: what was found, and what to type instead."""

    def __init__(self, found: str, remedy: str) -> None:
        super().__init__(f"{found} {remedy}")
        self.found = found
        self.remedy = remedy


class Unreadable(Exception):
    """A file that cannot be read or written at all; the message is one plain line."""
