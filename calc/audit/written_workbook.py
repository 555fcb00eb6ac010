"""A job workbook that the program wrote, read back: every input with what was typed and the current cell.

The Log says how many rows were typed, and the addresses follow from that by the layout that wrote the workbook. Every
fixed text of the sheet Measured must be where the layout has it; else another program or another version wrote it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from calc.cells import Book, Cell, Kind, Sheet, column_letters
from calc.declared import Declared, Input, Override
from calc.declared import Kind as GivenKind
from calc.errors import Unreadable, one_line
from calc.formula.levels import JOB, Level
from calc.intake.records import EDGE_COLUMN
from calc.intake.schema import NAMED_TABLES, WEEK_TABLES
from calc.intake.values import day_of
from calc.layout.addresses import Block, CellMap
from calc.layout.as_typed import AS_USUAL, AsTyped, parse_cell
from calc.layout.grid import ITEM, ROW_NO, STORY, VALUE
from calc.layout.issued import aside
from calc.layout.log_sheet import EXACT, IDENTITY, LAYOUT, LAYOUT_ROW, TYPED_LEVELS, WHERE, rows_label
from calc.layout.measured_sheet import NAME, REASON
from calc.layout.measured_tables import TypedPlaces
from calc.layout.page import FixedText, Page, Typed
from calc.layout.prices_sheet import PRICES
from calc.layout.workbook import measured_page, prices_page
from calc.trade.catalog import SECTIONS
from calc.xlsx_read.read import read_book

PROGRAM = "flatwork-calc "
"""The start of the text on the Log that says which version wrote the workbook."""

_SHEETS = ("Bid", NAME, "Prices", "Log", *WEEK_TABLES, "Ledger")
"""The sheets that are read: those with the inputs, and those that identify other books of the program."""

OLDEST = (0, 4, 0)
"""The first version whose workbooks are read: what was typed stood elsewhere before it."""

_MOST_ROWS = 100_000
"""More typed rows than any workbook has."""

_BELOW = 2
"""Rows from the title of a block of the Log to its first row."""

_WEEK_LEVELS = tuple(
    dict.fromkeys(
        section.level
        for section in SECTIONS
        if section.table and section.table not in NAMED_TABLES and section.level != JOB
    )
)
"""The levels whose rows are typed in the jobs book."""


@dataclass(frozen=True)
class LogRow:
    """A row of the Log: what, value, where; of an override why, who and its notes."""

    what: str
    value: object
    where: str
    reason: str
    who: str
    notes: str


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
    """The notes beside a fact, or the reason beside an override."""


@dataclass(frozen=True)
class WrittenWorkbook:
    """A job workbook that the program wrote."""

    book: Book
    id: str
    version: str
    counts: Mapping[Level, int]
    page: Page
    typed: TypedPlaces
    cell_map: CellMap
    cells: Cells

    def inputs(self) -> Iterator[WrittenInput]:
        """Every input cell of Measured, in the order of the sheet."""
        for put in self.page.contents:
            if isinstance(put, Typed):
                yield WrittenInput(
                    put.named, put.index, f"{column_letters(put.col + 1)}{put.row + 1}",
                    self.cells.get((put.row, put.col)), self._as_typed(put), self._remark(put),
                )  # fmt: skip

    def _remark(self, put: Typed) -> str:
        if isinstance(put.named, Override):
            return self.text(put.row, REASON)
        return self.text(*self.typed.notes[put.named]) if put.named in self.typed.notes else ""

    def _as_typed(self, put: Typed) -> AsTyped | None:
        """What was typed: told beside the box, or, for words and days, what the box held at issue."""
        issued = self._issued(put)
        if (place := self.typed.cells.get((put.named, put.index))) is not None:
            told = self.text(*place)
            if put.named.level == JOB or isinstance(put.named, Override):
                return parse_cell(told)
            if told == EDGE_COLUMN:
                return AsTyped(issued, EDGE_COLUMN)
            return AsTyped(told, "") if told else None
        origin = self.text(*self.typed.origins[put.named, put.index])
        return None if origin in ("", AS_USUAL) else AsTyped(issued, origin)

    def _issued(self, put: Typed) -> str:
        """The words or the day that a box held at issue, as text; blank for any other number."""
        cell = self.cells.get((put.row, put.col + aside(STORY)))
        if cell is None or not isinstance(put.named, Input):
            return ""
        if put.named.kind is not GivenKind.DATE:
            return _text(cell)
        if isinstance(cell.value, datetime):
            return cell.value.date().isoformat()
        return day_of(float(cell.value)).isoformat() if isinstance(cell.value, int | float) else ""

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
        """The ids of the rows of a level on Measured."""
        block = self._block(level)
        assert block.words is not None
        return [self.text(block.first + index, block.words) for index in range(block.count)]

    def _block(self, level: Level) -> Block:
        """The block of the rows of a level that has their numbers and their names."""
        locations = self.cell_map.locations.items()
        return next(
            location.block.keys for named, location in locations if isinstance(named, Input) and named.level == level
        )

    def names(self, level: Level) -> list[str]:
        """The names of the rows of a company table, on Prices."""
        block, cells = self._block(level), _by_place(self.book.sheets[PRICES])
        assert block.words is not None
        return [_text(cells.get((block.first + index, block.words))) for index in range(block.count)]

    def log(self, title: str) -> list[LogRow]:
        """The rows of a block of the Log."""
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
    log = book.sheets["Log"]
    version = _version(log)
    if not version:
        raise _refused(path.name, "its sheet Log does not name flatwork as the program that wrote it")
    if _numbers(version) < OLDEST:
        raise _refused(
            path.name,
            f"version {version} of the program wrote it, and workbooks are read from {'.'.join(map(str, OLDEST))} on. "
            "Bid the job again from the jobs book that it was made from",
        )
    counts = _counts(path.name, version, log)
    cells, places = _by_place(book.sheets[NAME]), CellMap()
    page, typed = measured_page(places, tuple(counts.items()))
    prices_page(places, tuple(counts.items()))
    _check_texts(path.name, version, page, cells)
    title = _text(_by_place(book.sheets["Bid"]).get((0, 0)))
    of_job = {level: count for level, count in counts.items() if level in _WEEK_LEVELS}
    return WrittenWorkbook(book, title.removeprefix("Bid "), version, of_job, page, typed, places, cells)


def _version(log: Sheet) -> str:
    """The version that the Log names, wherever that version had it; blank when it names none."""
    texts = (_text(cell) for _, cells in log.rows for cell in cells.values())
    return next((text.removeprefix(PROGRAM) for text in texts if text.startswith(PROGRAM)), "")


def _counts(name: str, version: str, log: Sheet) -> dict[Level, int]:
    """The number of rows of each level that is typed. Raises Unreadable when the Log does not say."""
    found = {row.what: row.value for row in _log_rows(log, IDENTITY)}
    if found.get(LAYOUT_ROW) != LAYOUT:
        raise _refused(name, f"version {version} of the program laid it out otherwise. Use that version to read it")
    counts: dict[Level, int] = {}
    for level in TYPED_LEVELS:
        count = found.get(rows_label(level))
        if not isinstance(count, int | float) or count != int(count) or not 0 <= count <= _MOST_ROWS:
            raise _refused(name, f'its sheet Log does not say how many rows of "{level}" were typed')
        counts[level] = int(count)
    return counts


def _check_texts(name: str, version: str, page: Page, cells: Cells) -> None:
    """Raises Unreadable for the first fixed text of Measured that is not where the layout has it."""
    for put in page.contents:
        found = _text(cells.get((put.row, put.col)))
        if isinstance(put, FixedText) and found != put.text:
            ref = f"{column_letters(put.col + 1)}{put.row + 1}"
            raise _refused(
                name,
                f'{NAME}!{ref} is "{found}" instead of "{put.text}": version {version} of the program wrote it, '
                "or its rows were moved. Use the input book that it was made from",
            )


def _numbers(version: str) -> tuple[int, ...]:
    """The numbers of a version; a version that somebody wrote over counts as none."""
    return tuple(int(part) for part in version.split(".") if part.isdecimal() and part.isascii())


def _log_rows(sheet: Sheet, title: str) -> list[LogRow]:
    """The rows of a block of the Log: those below its title, up to the gap above the next."""
    rows = {number - 1: {col - 1: cell for col, cell in cells.items()} for number, cells in sheet.rows}
    starts = (row for row, cells in rows.items() if _text(cells.get(ITEM)).startswith(f"{title} ("))
    row = next(starts, -_BELOW) + _BELOW
    found: list[LogRow] = []
    while row in rows:
        cells = rows[row]
        if ROW_NO in cells:  # the rows below it go on with its words
            value = cells[VALUE].value if VALUE in cells else None
            exact = (_text(cells.get(EXACT + place)) for place in range(3))
            found.append(LogRow(_text(cells.get(ITEM)), value, _text(cells.get(WHERE)), *exact))
        row += 1
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
