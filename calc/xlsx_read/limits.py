"""One pass over each XML part that a reader will hold, before it gets it: counted, in pieces, and nothing kept.

What a part takes in memory is many times what it takes on the disk, so the limits here are of elements, letters and
cells, and of what a reader must hold at one time.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final
from xml.parsers import expat

from calc.errors import Unreadable
from calc.xlsx_read.package import PIECE, SAVE_AGAIN, doctype_in

MAX_CELLS: Final = 200_000
"""Cells of a book that may hold something; each becomes an object of some 300 bytes."""

MAX_LETTERS: Final = 5_000_000
"""Letters of all texts, numbers and formulas of a book, a shared formula counted in each cell that uses it."""

MAX_ELEMENTS: Final = 1_000_000
"""XML elements of all sheets and of the table of strings: two to four for each cell."""

MAX_DEPTH: Final = 50
"""How deep XML elements may stand in each other; a sheet needs seven levels."""

MAX_NAMES: Final = 2000
"""Different names of XML elements and attributes in a part; a sheet uses some fifty."""

MAX_HELD: Final = 1_000_000
"""Bytes of one row, of one string, or of one tag: a reader holds these whole, at many times their size."""

MAIN: Final = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
"""The namespace of workbooks."""

STRICT: Final = "http://purl.oclc.org/ooxml/spreadsheetml/main"
"""The namespace of the strict variant of workbooks, which openpyxl would read as a book with nothing in it."""

TRUE: Final = frozenset({"1", "true", "on"})
"""How XML says yes."""

_STRING, _TEXT = f"{MAIN} si", f"{MAIN} t"


@dataclass
class Limits:
    """What all parts of a book took so far; the limits hold for the book."""

    cells: int = 0
    letters: int = 0
    elements: int = 0

    def check(self) -> None:
        """Refuse the book when it went over a limit."""
        for count, limit, what in (
            (self.cells, MAX_CELLS, "cells"),
            (self.letters, MAX_LETTERS, "letters"),
            (self.elements, MAX_ELEMENTS, "cells and marks"),
        ):
            if count > limit:
                raise Unreadable(
                    f"the book holds more than {limit:,} {what}. Split it, or clear what is no input and its formats."
                )


class LimitedParser:
    """A pass over one XML part in pieces, which refuses what no spreadsheet program writes."""

    root = ""
    """The name that the outermost element must have."""

    held = ""
    """The name of the elements that a reader holds whole."""

    def __init__(self, what: str, tally: Limits) -> None:
        self.what = what
        self.tally = tally
        self.depth = 0
        self.run = 0
        """Letters since the last element began."""
        self._holding = False
        self._held_since = self._fed = 0
        self._names: dict[str, str] = {}
        self.parser = expat.ParserCreate(None, " ", intern=self._names)
        self.parser.buffer_text = True
        self.parser.StartElementHandler = self._start
        self.parser.EndElementHandler = self._end
        self.parser.CharacterDataHandler = self._letters
        self.parser.StartDoctypeDeclHandler = self._doctype

    def go(self, content: bytes) -> None:
        """Read the part to its end."""
        view = memoryview(content)
        try:
            for start in range(0, len(content), PIECE):
                self._fed = start
                self.parser.Parse(bytes(view[start : start + PIECE]), False)
                self._check(start + PIECE)
            self.parser.Parse(b"", True)
        except expat.ExpatError as reason:
            raise Unreadable(f"{self.what} is damaged ({reason}). {SAVE_AGAIN}") from reason
        self.tally.check()

    def starts(self, name: str, attributes: dict[str, str]) -> None:
        """An element begins; overridden by the passes over a kind of part."""

    def ends(self, name: str) -> None:
        """An element ends; overridden by the passes over a kind of part."""

    def damaged(self, found: str) -> Unreadable:
        """The refusal of a part that says what it cannot mean."""
        return Unreadable(f"{self.what} is damaged: {found}. {SAVE_AGAIN}")

    def _start(self, name: str, attributes: dict[str, str]) -> None:
        if not self.depth and name != self.root:
            raise Unreadable(strict_or_foreign(name.partition(" ")[0], self.what))
        self.depth += 1
        self.tally.elements += 1
        if not self._holding:
            self._held_since = self._fed
            self._holding = name == self.held
        self.run = 0
        self.starts(name, attributes)

    def _end(self, name: str) -> None:
        self.ends(name)
        self.depth -= 1
        if name == self.held:
            self._holding = False

    def _letters(self, letters: str) -> None:
        self.run += len(letters)

    def _doctype(self, *_: object) -> None:
        raise Unreadable(doctype_in(self.what))

    def _check(self, fed: int) -> None:
        self.tally.check()
        if self.depth > MAX_DEPTH or len(self._names) > MAX_NAMES:
            raise self.damaged("its tags are none that a spreadsheet program writes")
        if fed - self._held_since > MAX_HELD + PIECE:
            raise self.damaged(f"one row or text of it takes more than {MAX_HELD // 1_000_000} MB")


class _StringsParser(LimitedParser):
    root = f"{MAIN} sst"
    held = _STRING

    def ends(self, name: str) -> None:
        if name == _TEXT:
            self.tally.letters += self.run


def scan_strings(content: bytes, tally: Limits) -> None:
    """Count the table of strings, if there is one, and refuse it when it is damaged or over a limit."""
    if content:
        _StringsParser("its table of strings", tally).go(content)


def strict_or_foreign(namespace: str, what: str) -> str:
    """The refusal of a part whose outermost element is not the one that a workbook has there."""
    if namespace == STRICT:
        return "it is a Strict Open XML workbook. Save it again as an ordinary workbook (.xlsx)."
    return f"{what} is not what a workbook has there. {SAVE_AGAIN}"
