"""A job workbook that the program wrote, as it stands now: every input with what was typed and what its cell holds.

Where each cell is follows from how many rows were typed, by the same layout that wrote it. Every word of ours on the
sheet Measured must stand where that layout has it; else the workbook is none of ours, or one of another version.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from calc.cells import Book, Cell, Kind, Sheet, column_letters
from calc.declared import Declared, Input, Override, Section
from calc.errors import Unreadable, one_line
from calc.formula.levels import JOB, Level
from calc.intake.schema import NAMED_TABLES, WEEK_TABLES
from calc.layout.addresses import Block, CellMap
from calc.layout.as_typed import AsTyped, parse_cell, parse_lines
from calc.layout.line_sheets import FIGURES, ITEM
from calc.layout.measured_sheet import NAME, ORIGIN, TYPED, WHY, measured_page, override_name
from calc.layout.page import FixedText, Page, Typed
from calc.trade.catalog import SECTIONS
from calc.xlsx_read.read import read_book

PROGRAM = "flatwork-calc "
"""What the row Program of the Log begins with."""

_SHEETS = ("Bid", NAME, "Prices", "Log", *WEEK_TABLES, "Ledger")
"""What is read: the sheets that say what a job was, and those by which other books are known."""

Cells = Mapping[tuple[int, int], Cell]
"""The cells of a sheet by row and column, which count from 0."""


@dataclass(frozen=True)
class WrittenInput:
    """One input: what it is, its row, the cell that holds it now (None when that is blank), and what was typed."""

    named: Declared
    index: int
    ref: str
    cell: Cell | None
    told: AsTyped | None
    beside: str
    """What stands in the column of reasons and notes, for an input of the whole job."""


@dataclass(frozen=True)
class Written:
    """A job workbook that the program wrote."""

    book: Book
    id: str
    version: str
    counts: Mapping[Level, int]
    page: Page
    places: CellMap
    cells: Cells

    def inputs(self) -> Iterator[WrittenInput]:
        """Everything that a person may edit on Measured, in the order of the sheet."""
        for put in self.page.contents:
            if isinstance(put, Typed):
                yield WrittenInput(
                    put.named, put.index, f"{column_letters(put.col + 1)}{put.row + 1}",
                    self.cells.get((put.row, put.col)), self._told(put), self.text(put.row, WHY),
                )  # fmt: skip

    def _told(self, put: Typed) -> AsTyped | None:
        typed, origins = self.text(put.row, TYPED), self.text(put.row, ORIGIN)
        if put.named.level == JOB:
            return AsTyped(typed, origins) if origins else None
        if isinstance(put.named, Override):
            return parse_lines(typed, origins).get(override_name(put.named, put.index))
        if put.named.level.across:
            return parse_cell(self.text(put.row + 1, put.col))
        return parse_lines(typed, origins).get(put.named.header) if isinstance(put.named, Input) else None

    def text(self, row: int, col: int) -> str:
        """The words of a cell of Measured; blank when it holds none."""
        return _words(self.cells.get((row, col)))

    def within(self, level: Level, index: int, above: Level) -> int:
        """The place of the row of ``above`` that a row lies within."""
        block = self._block(level)
        cell = self.cells.get((block.first + index, block.numbers[above]))
        number = cell.value if cell is not None else None
        if not isinstance(number, int | float) or not 1 <= number <= self.counts[above]:
            raise self.refused(f"a row of {level} does not say in which {above} it lies")
        return int(number) - 1

    def words(self, level: Level) -> list[str]:
        """The words that the rows of a level go by, side by side on Measured."""
        block = self._block(level)
        assert block.words is not None
        return [self.text(block.words, block.first + index) for index in range(block.count)]

    def _block(self, level: Level) -> Block:
        locations = self.places.locations.items()
        return next(spot.block for named, spot in locations if isinstance(named, Input) and named.level == level)

    def names(self, level: Level) -> list[str]:
        """The names that the rows of a table of the house go by, on Prices."""
        rows = _by_place(self.book.sheets["Prices"])
        head = next((row for row, col in rows if col == 0 and _words(rows[row, 0]) == level.axis.name), -1)
        found: list[str] = []
        while head >= 0 and (head + 1 + len(found), 1) in rows:
            found.append(_words(rows.get((head + 1 + len(found), 0))))
        return found

    def log(self, title: str) -> list[list[str]]:
        """The rows of a block of the Log, as words."""
        return _log_rows(self.book.sheets["Log"], title)

    def at(self, each: WrittenInput) -> str:
        """Where an input stands, as a note begins."""
        return f"{self.book.name} {NAME}!{each.ref}"

    def refused(self, why: str) -> Unreadable:
        """The plain line that refuses the workbook."""
        return _refused(self.book.name, why)


def read_written(path: Path) -> Written:
    """The workbook at ``path``. Raises Unreadable with one plain line for a file that the program did not write."""
    book = read_book(path, _SHEETS)
    if not {"Bid", NAME, "Prices", "Log"} <= set(book.sheets):
        raise _refused(path.name, f"it is not the workbook of a job that flatwork wrote.{_instead(book)}")
    identity = {row[0]: row[1] for row in _log_rows(book.sheets["Log"], "Identity")}
    version = identity.get("Program", "").removeprefix(PROGRAM)
    if not version:
        raise _refused(path.name, "its sheet Log does not say that flatwork wrote it")
    cells = _by_place(book.sheets[NAME])
    counts = {section.level: _count(cells, section) for section in SECTIONS if _is_typed(section)}
    places = CellMap()
    page = measured_page(places, tuple({**_fixed_counts(), **counts}.items()))
    for put in page.contents:
        found = _words(cells.get((put.row, put.col)))
        if isinstance(put, FixedText) and found != put.text:
            ref = f"{column_letters(put.col + 1)}{put.row + 1}"
            raise _refused(
                path.name,
                f'{NAME}!{ref} says "{found}" and not "{put.text}": version {version} of the program wrote it, '
                "or its rows were moved. Take the input book that it was made from",
            )
    title = _words(_by_place(book.sheets["Bid"]).get((0, 0)))
    return Written(book, title.removeprefix("Bid "), version, counts, page, places, cells)


def _is_typed(section: type[Section]) -> bool:
    return bool(section.table) and section.table not in NAMED_TABLES and section.level != JOB


def _fixed_counts() -> dict[Level, int]:
    """The levels whose rows nobody types."""
    return {section.level: len(section.level.axis.words) for section in SECTIONS if len(section.level.axes) == 1}


def _count(cells: Cells, section: type[Section]) -> int:
    """How many rows of a level the sheet has."""
    level = section.level
    columns = {cell: row for row, col in cells if col == ITEM and (cell := _words(cells[row, col]))}
    count = 0
    if not level.across:
        while f"{level.axis.name} {count + 1}" in columns:
            count += 1
        return count
    row = columns.get(section.heading, -1)
    while (row, FIGURES + count) in cells:
        count += 1
    return count


def _log_rows(sheet: Sheet, title: str) -> list[list[str]]:
    """The rows of a block of the Log, which lie below its title without a blank one between."""
    rows = {number: [_words(cells.get(col)) for col in range(1, 7)] for number, cells in sheet.rows}
    below = next((number + 1 for number, words in rows.items() if words[0].startswith(f"{title} (")), 0)
    found: list[list[str]] = []
    while below + len(found) in rows:
        found.append(rows[below + len(found)])
    return found


def _by_place(sheet: Sheet) -> dict[tuple[int, int], Cell]:
    return {(row - 1, col - 1): cell for row, cells in sheet.rows for col, cell in cells.items()}


def _words(cell: Cell | None) -> str:
    return str(cell.value) if cell is not None and cell.kind is Kind.TEXT else ""


def _instead(book: Book) -> str:
    """What the file may be, where it is another of the program's own."""
    if set(WEEK_TABLES) & set(book.sheets):
        return " It is an input book: give it to flatwork bid"
    return " It is the workbook of a week: name those of its jobs" if "Ledger" in book.sheets else ""


def _refused(name: str, why: str) -> Unreadable:
    return Unreadable(one_line(f"{name}: {why.removesuffix('.')}."))
