"""A job workbook that the program wrote, read back: every input with what was typed and the current cell.

The addresses follow from the number of typed rows, by the layout that wrote the workbook. Every fixed text of the sheet
Measured must be where the layout has it; else another program or another version wrote the workbook.
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
"""The start of the value in the row Program of the Log."""

_SHEETS = ("Bid", NAME, "Prices", "Log", *WEEK_TABLES, "Ledger")
"""The sheets that are read: those with the inputs, and those that identify other books of the program."""

OLDEST = (0, 3, 0)
"""The first version whose workbooks are read: sheets, labels and the names of lines were others before it."""

Cells = Mapping[tuple[int, int], Cell]
"""The cells of a sheet by row and column, counting from 0."""


@dataclass(frozen=True)
class WrittenInput:
    """One input or override: its declaration, its row, its current cell (None when blank), and what was typed."""

    named: Declared
    index: int
    ref: str
    cell: Cell | None
    as_typed: AsTyped | None
    remark: str
    """The text in the column of reasons and notes, for an input of the whole job."""


@dataclass(frozen=True)
class WrittenWorkbook:
    """A job workbook that the program wrote."""

    book: Book
    id: str
    version: str
    counts: Mapping[Level, int]
    page: Page
    cell_map: CellMap
    cells: Cells

    def inputs(self) -> Iterator[WrittenInput]:
        """Every input cell of Measured, in the order of the sheet."""
        for put in self.page.contents:
            if isinstance(put, Typed):
                yield WrittenInput(
                    put.named, put.index, f"{column_letters(put.col + 1)}{put.row + 1}",
                    self.cells.get((put.row, put.col)), self._as_typed(put), self.text(put.row, WHY),
                )  # fmt: skip

    def _as_typed(self, put: Typed) -> AsTyped | None:
        typed, origins = self.text(put.row, TYPED), self.text(put.row, ORIGIN)
        if put.named.level == JOB:
            return AsTyped(typed, origins) if origins else None
        if isinstance(put.named, Override):
            return parse_lines(typed, origins).get(override_name(put.named, put.index))
        if put.named.level.across:
            return parse_cell(self.text(put.row + 1, put.col))
        return parse_lines(typed, origins).get(put.named.header) if isinstance(put.named, Input) else None

    def text(self, row: int, col: int) -> str:
        """The text of a cell of Measured; blank when it has none."""
        return _text(self.cells.get((row, col)))

    def row_above(self, level: Level, index: int, above: Level) -> int:
        """The index of the row of ``above`` that a row of ``level`` belongs to."""
        block = self._block(level)
        cell = self.cells.get((block.first + index, block.numbers[above]))
        number = cell.value if cell is not None else None
        if not isinstance(number, int | float) or not 1 <= number <= self.counts[above]:
            raise self.refused(f"a row of {level} does not have the number of its {above}")
        return int(number) - 1

    def words(self, level: Level) -> list[str]:
        """The ids of the rows of a level that has a column per row on Measured."""
        block = self._block(level)
        assert block.words is not None
        return [self.text(block.words, block.first + index) for index in range(block.count)]

    def _block(self, level: Level) -> Block:
        locations = self.cell_map.locations.items()
        return next(
            location.block for named, location in locations if isinstance(named, Input) and named.level == level
        )

    def names(self, level: Level) -> list[str]:
        """The names of the rows of a company table, on Prices."""
        rows = _by_place(self.book.sheets["Prices"])
        head = next((row for row, col in rows if col == 0 and _text(rows[row, 0]) == level.axis.name), -1)
        found: list[str] = []
        while head >= 0 and (head + 1 + len(found), 1) in rows:
            found.append(_text(rows.get((head + 1 + len(found), 0))))
        return found

    def log(self, title: str) -> list[list[str]]:
        """The rows of a block of the Log, as text."""
        return _log_rows(self.book.sheets["Log"], title)

    def place_of(self, each: WrittenInput) -> str:
        """The place of an input, as in ``24-031.xlsx Measured!D7``."""
        return f"{self.book.name} {NAME}!{each.ref}"

    def refused(self, why: str) -> Unreadable:
        """The error that refuses the workbook."""
        return _refused(self.book.name, why)


def read_written(path: Path) -> WrittenWorkbook:
    """The workbook at ``path``. Raises Unreadable with one plain line for a file that the program did not write."""
    book = read_book(path, _SHEETS)
    if not {"Bid", NAME, "Prices", "Log"} <= set(book.sheets):
        raise _refused(path.name, f"it is not a job workbook that flatwork wrote.{_instead(book)}")
    identity = {row[0]: row[1] for row in _log_rows(book.sheets["Log"], "Identity")}
    version = identity.get("Program", "").removeprefix(PROGRAM)
    if not version:
        raise _refused(path.name, "its sheet Log does not name flatwork as the program that wrote it")
    if _numbers(version) < OLDEST:
        raise _refused(
            path.name,
            f"version {version} of the program wrote it, and workbooks are read from {'.'.join(map(str, OLDEST))} on. "
            "Bid the job again from the jobs book that it was made from",
        )
    cells = _by_place(book.sheets[NAME])
    counts = {section.level: _count(cells, section) for section in SECTIONS if _is_typed(section)}
    places = CellMap()
    page = measured_page(places, tuple({**_fixed_counts(), **counts}.items()))
    for put in page.contents:
        found = _text(cells.get((put.row, put.col)))
        if isinstance(put, FixedText) and found != put.text:
            ref = f"{column_letters(put.col + 1)}{put.row + 1}"
            raise _refused(
                path.name,
                f'{NAME}!{ref} is "{found}" instead of "{put.text}": version {version} of the program wrote it, '
                "or its rows were moved. Use the input book that it was made from",
            )
    title = _text(_by_place(book.sheets["Bid"]).get((0, 0)))
    return WrittenWorkbook(book, title.removeprefix("Bid "), version, counts, page, places, cells)


def _numbers(version: str) -> tuple[int, ...]:
    """The numbers of a version; a version that somebody wrote over counts as none."""
    return tuple(int(part) for part in version.split(".") if part.isdecimal() and part.isascii())


def _is_typed(section: type[Section]) -> bool:
    return bool(section.table) and section.table not in NAMED_TABLES and section.level != JOB


def _fixed_counts() -> dict[Level, int]:
    """The number of rows of the levels with fixed rows."""
    return {section.level: len(section.level.axis.words) for section in SECTIONS if len(section.level.axes) == 1}


def _count(cells: Cells, section: type[Section]) -> int:
    """The number of rows of a level on the sheet."""
    level = section.level
    columns = {cell: row for row, col in cells if col == ITEM and (cell := _text(cells[row, col]))}
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
    """The rows of a block of the Log: those below its title, up to the first blank row."""
    rows = {number: [_text(cells.get(col)) for col in range(1, 7)] for number, cells in sheet.rows}
    first = next((number + 1 for number, words in rows.items() if words[0].startswith(f"{title} (")), 0)
    found: list[list[str]] = []
    while first + len(found) in rows:
        found.append(rows[first + len(found)])
    return found


def _by_place(sheet: Sheet) -> dict[tuple[int, int], Cell]:
    return {(row - 1, col - 1): cell for row, cells in sheet.rows for col, cell in cells.items()}


def _text(cell: Cell | None) -> str:
    return str(cell.value) if cell is not None and cell.kind is Kind.TEXT else ""


def _instead(book: Book) -> str:
    """The remedy, where the file is another workbook of the program."""
    if set(WEEK_TABLES) & set(book.sheets):
        return " It is an input book. Use it with flatwork bid"
    return " It is the workbook of a week. Name the workbooks of its jobs" if "Ledger" in book.sheets else ""


def _refused(name: str, why: str) -> Unreadable:
    return Unreadable(one_line(f"{name}: {why.removesuffix('.')}."))
