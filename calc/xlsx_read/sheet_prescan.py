"""One pass over a sheet before cells are built from it: which rows have values, what is hidden, what is merged.

The pass keeps counts, not cells, so that a stray cell in the last row of a sheet, a wrong declared size, or a million
blank rows cost neither time nor memory. It also cuts the sheet down to the rows with values: what follows them (blank
formatted rows, drop-downs, conditional formats) is no input, and programs differ most in how they write it.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Final

from calc.cells import column_letters, column_number
from calc.errors import Unreadable
from calc.xlsx_read.limits import MAIN, TRUE, LimitedParser, Limits

MAX_ROWS: Final = 20_000
"""The last row of a sheet that may have a value."""

MAX_COLUMNS: Final = 200
"""The last column of a sheet that may have a value."""

MAX_MERGED: Final = 500
"""Merged ranges of a sheet."""

MAX_FORMULA: Final = 8192
"""Characters of a formula: the limit of spreadsheet programs."""

_REFERENCE = re.compile(r"([A-Z]{1,3})([1-9][0-9]{0,6})")
_ROW, _CELL, _VALUE, _FORMULA, _TEXT = (f"{MAIN} {name}" for name in ("row", "c", "v", "f", "t"))
_DATA, _COLUMN, _MERGED = (f"{MAIN} {name}" for name in ("sheetData", "col", "mergeCell"))


@dataclass(frozen=True, slots=True)
class Span:
    """A merged range: its reference (``B2:C4``) and its first and last row and column."""

    ref: str
    top: int
    left: int
    bottom: int
    right: int


@dataclass
class SheetFacts:
    """The result of the pass over a sheet."""

    rows: set[int] = field(default_factory=set)
    """The rows with a value."""
    last_row: int = 0
    last_column: int = 0
    formulas: int = 0
    hidden_rows: set[int] = field(default_factory=set)
    hidden_columns: set[int] = field(default_factory=set)
    merged: list[Span] = field(default_factory=list)
    blank_results: set[tuple[int, int]] = field(default_factory=set)
    """Cells whose formula gives an empty text: calculated, though they have no stored value."""


class _SheetParser(LimitedParser):
    root = f"{MAIN} worksheet"
    buffered = _ROW

    def __init__(self, sheet: str, limits: Limits) -> None:
        super().__init__(f"sheet {sheet}", limits)
        self.sheet = sheet
        self.facts = SheetFacts()
        self._row = self._column = 0
        self._kind = ""
        self._filled = self._valued = self._formula = False
        self._shared = ""
        self._formula_lengths: dict[str, int] = {}
        self._head = self._data = self._tail = self._data_close = self._data_end = self._close = -1

    def starts(self, name: str, attributes: dict[str, str]) -> None:
        if name == _CELL:
            self._start_cell(attributes)
        elif name == _VALUE:
            self._valued = True
        elif name == _FORMULA:
            self._formula = True
            self._shared = attributes.get("si", "") if attributes.get("t") == "shared" else ""
        elif name == _ROW:
            self._start_row(attributes)
        elif self.depth == 2:
            self._start_block(name)
        elif name == _COLUMN:
            self._hide_columns(attributes)
        elif name == _MERGED:
            self._merge(attributes.get("ref", ""))

    def ends(self, name: str) -> None:
        if name in (_VALUE, _TEXT):
            self.limits.characters += self.text_length
            self._filled = self._filled or self.text_length > 0
        elif name == _FORMULA:
            self._end_formula()
        elif name == _CELL:
            if self._filled or self._formula:
                self._end_cell()
        elif name == _DATA:
            self._data_close = self.parser.CurrentByteIndex
            if self.facts.last_row == self._row:
                self._tail = self._data_close
        elif self.depth == 1:
            self._start_block("")
            self._close = self.parser.CurrentByteIndex

    def cut(self, content: bytes) -> bytes:
        """The XML of the sheet with only the rows with values, which are not changed."""
        if self._data < 0:
            raise self.damaged("it has no rows")
        head, rows = content[: self._head], content[self._data : self._tail]
        return head + self._size(head) + rows + content[self._data_close : self._data_end] + content[self._close :]

    def _size(self, head: bytes) -> bytes:
        """The true size of the sheet as an XML element: openpyxl reads a sheet without it twice."""
        if b"\0" in head:  # UTF-16, which no spreadsheet program writes: it may be read twice
            return b""
        corner = f"{column_letters(self.facts.last_column or 1)}{self.facts.last_row or 1}"
        return f'<dimension xmlns="{MAIN}" ref="A1:{corner}"/>'.encode()

    def _start_block(self, name: str) -> None:
        """Record the offset of a child of the root, or of the end of the root, for :meth:`cut`."""
        offset = self.parser.CurrentByteIndex
        if self._head < 0:
            self._head = offset
        if self._data >= 0 and self._data_end < 0:
            self._data_end = offset
        if name == _DATA:
            if self._data >= 0:
                raise self.damaged("it has two blocks of rows")
            self._data = offset

    def _start_row(self, attributes: dict[str, str]) -> None:
        row = int(attributes.get("r", self._row + 1))
        if row <= self._row:
            raise self.damaged(f"row {row} is repeated, or follows row {self._row}")
        if self.facts.last_row == self._row:
            self._tail = self.parser.CurrentByteIndex
        self._row, self._column = row, 0
        if row <= MAX_ROWS and (attributes.get("hidden") in TRUE or _is_zero(attributes.get("ht"))):
            self.facts.hidden_rows.add(row)

    def _start_cell(self, attributes: dict[str, str]) -> None:
        column = self._column + 1
        if ref := attributes.get("r"):
            match = _REFERENCE.fullmatch(ref)
            if match is None or int(match[2]) != self._row or column_number(match[1]) < column:
                raise self.damaged(f"cell {ref} is repeated or misplaced in row {self._row}")
            column = column_number(match[1])
        self._column = column
        self._kind = attributes.get("t", "n")
        self._filled = self._valued = self._formula = False

    def _end_formula(self) -> None:
        length = self.text_length
        if self._shared:
            length = self._formula_lengths.setdefault(self._shared, length)
        if length > MAX_FORMULA:
            raise self.damaged(f"a formula in row {self._row} has more than {MAX_FORMULA:,} characters")
        self.limits.characters += length
        self.facts.formulas += 1

    def _end_cell(self) -> None:
        facts, row, column = self.facts, self._row, self._column
        if row > MAX_ROWS or column > MAX_COLUMNS:
            raise Unreadable(
                f"there is a value in {column_letters(column)}{row} of sheet {self.sheet}, far outside the table. "
                f"Clear it: the limit is {MAX_ROWS:,} rows and {MAX_COLUMNS} columns."
            )
        self.limits.cells += 1
        facts.rows.add(row)
        facts.last_row = row
        facts.last_column = max(facts.last_column, column)
        if self._formula and self._valued and not self._filled and self._kind == "str":
            facts.blank_results.add((row, column))

    def _hide_columns(self, attributes: dict[str, str]) -> None:
        if attributes.get("hidden") in TRUE or _is_zero(attributes.get("width")):
            first, last = max(int(attributes["min"]), 1), min(int(attributes["max"]), MAX_COLUMNS)
            self.facts.hidden_columns.update(range(first, last + 1))

    def _merge(self, ref: str) -> None:
        first, _, last = ref.partition(":")
        corners = [_REFERENCE.fullmatch(corner) for corner in (first, last or first)]
        if None in corners or len(self.facts.merged) >= MAX_MERGED:
            raise self.damaged(f"it has more than {MAX_MERGED} merged ranges, or an invalid one ({ref[:20]})")
        (left, top), (right, bottom) = ((column_number(c[1]), int(c[2])) for c in corners if c)
        self.facts.merged.append(Span(ref, top, left, bottom, right))


def scan_sheet(content: bytes, sheet: str, limits: Limits) -> tuple[SheetFacts, bytes]:
    """The facts of a sheet, and its XML cut down to the rows with values.

    :raises Unreadable: when it is damaged, over a limit, or has a value far outside the table.
    """
    parser = _SheetParser(sheet, limits)
    parser.parse(content)
    return parser.facts, parser.cut(content)


def _is_zero(size: str | None) -> bool:
    return size is not None and float(size) == 0
