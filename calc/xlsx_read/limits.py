"""Limits on XML parts, counted in one streaming pass before a reader loads them.

A part takes many times its size on disk in memory, so the limits are of elements, characters and cells, and of what a
reader must buffer at one time.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final
from xml.parsers import expat

from calc.errors import Unreadable
from calc.xlsx_read.package import CHUNK_SIZE, SAVE_AGAIN, doctype_error

MAX_CELLS: Final = 200_000
"""Cells with a value in a book; each becomes an object of about 300 bytes."""

MAX_CHARACTERS: Final = 5_000_000
"""Characters of all texts, numbers and formulas of a book; a shared formula counts in each cell that uses it."""

MAX_ELEMENTS: Final = 1_000_000
"""XML elements of all sheets and of the shared strings: two to four for each cell."""

MAX_DEPTH: Final = 50
"""Nesting depth of XML elements; a sheet needs seven levels."""

MAX_NAMES: Final = 2000
"""Different names of XML elements and attributes in a part; a sheet uses about fifty."""

MAX_BUFFERED: Final = 1_000_000
"""Bytes of one row, one string or one tag: a reader buffers these whole, at many times their size."""

MAIN: Final = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
"""The namespace of workbooks."""

STRICT: Final = "http://purl.oclc.org/ooxml/spreadsheetml/main"
"""The namespace of Strict Open XML workbooks, which openpyxl would read as empty."""

TRUE: Final = frozenset({"1", "true", "on"})
"""The values of a true XML attribute."""

_STRING, _TEXT = f"{MAIN} si", f"{MAIN} t"


@dataclass
class Limits:
    """The counts of all parts of a book so far; the limits are per book."""

    cells: int = 0
    characters: int = 0
    elements: int = 0

    def check(self) -> None:
        """Refuse the book when it is over a limit."""
        for count, limit, what in (
            (self.cells, MAX_CELLS, "cells"),
            (self.characters, MAX_CHARACTERS, "characters"),
            (self.elements, MAX_ELEMENTS, "XML elements"),
        ):
            if count > limit:
                raise Unreadable(
                    f"the book has more than {limit:,} {what}. Split it, or clear cells and formats that are no input."
                )


class LimitedParser:
    """A streaming pass over one XML part, which refuses XML that no spreadsheet program writes."""

    root = ""
    """The required name of the outermost element."""

    buffered = ""
    """The name of the elements that a reader buffers whole."""

    def __init__(self, part: str, limits: Limits) -> None:
        self.part = part
        self.limits = limits
        self.depth = 0
        self.text_length = 0
        """Characters since the start of the last element."""
        self._in_buffered = False
        self._buffer_start = self._offset = 0
        self._names: dict[str, str] = {}
        self.parser = expat.ParserCreate(None, " ", intern=self._names)
        self.parser.buffer_text = True
        self.parser.StartElementHandler = self._start
        self.parser.EndElementHandler = self._end
        self.parser.CharacterDataHandler = self._characters
        self.parser.StartDoctypeDeclHandler = self._doctype

    def parse(self, content: bytes) -> None:
        """Parse the whole part."""
        view = memoryview(content)
        try:
            for start in range(0, len(content), CHUNK_SIZE):
                self._offset = start
                self.parser.Parse(bytes(view[start : start + CHUNK_SIZE]), False)
                self._check(start + CHUNK_SIZE)
            self.parser.Parse(b"", True)
        except expat.ExpatError as reason:
            raise Unreadable(f"{self.part} is damaged ({reason}). {SAVE_AGAIN}") from reason
        self.limits.check()

    def starts(self, name: str, attributes: dict[str, str]) -> None:
        """Handle the start of an element; overridden for each kind of part."""

    def ends(self, name: str) -> None:
        """Handle the end of an element; overridden for each kind of part."""

    def damaged(self, found: str) -> Unreadable:
        """The error for a part with contradictory content."""
        return Unreadable(f"{self.part} is damaged: {found}. {SAVE_AGAIN}")

    def _start(self, name: str, attributes: dict[str, str]) -> None:
        if not self.depth and name != self.root:
            raise Unreadable(wrong_root_error(name.partition(" ")[0], self.part))
        self.depth += 1
        self.limits.elements += 1
        if not self._in_buffered:
            self._buffer_start = self._offset
            self._in_buffered = name == self.buffered
        self.text_length = 0
        self.starts(name, attributes)

    def _end(self, name: str) -> None:
        self.ends(name)
        self.depth -= 1
        if name == self.buffered:
            self._in_buffered = False

    def _characters(self, text: str) -> None:
        self.text_length += len(text)

    def _doctype(self, *_: object) -> None:
        raise Unreadable(doctype_error(self.part))

    def _check(self, parsed: int) -> None:
        self.limits.check()
        if self.depth > MAX_DEPTH or len(self._names) > MAX_NAMES:
            raise self.damaged("no spreadsheet program writes its tags")
        if parsed - self._buffer_start > MAX_BUFFERED + CHUNK_SIZE:
            raise self.damaged(f"one of its rows or texts takes more than {MAX_BUFFERED // 1_000_000} MB")


class _StringsParser(LimitedParser):
    root = f"{MAIN} sst"
    buffered = _STRING

    def ends(self, name: str) -> None:
        if name == _TEXT:
            self.limits.characters += self.text_length


def scan_strings(content: bytes, limits: Limits) -> None:
    """Count the shared strings, if there are any, and refuse them when they are damaged or over a limit."""
    if content:
        _StringsParser("its table of shared strings", limits).parse(content)


def wrong_root_error(namespace: str, part: str) -> str:
    """The error message for a part whose outermost element is not that of an ordinary workbook."""
    if namespace == STRICT:
        return "it is a Strict Open XML workbook. Save it again as an ordinary workbook (.xlsx)."
    return f"{part} is not a part of a workbook. {SAVE_AGAIN}"
