"""The grid of the week's workbook: sheets printed at full size, whose rows come one after the other.

A sheet is laid by a generator that stops after every row or so: the cells of thousands of jobs never stand in memory
together. It is gone through twice, first for the heights of its rows and the places of its tables, then for its cells.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from operator import itemgetter

from calc.cells import column_letters
from calc.layout.addresses import CellMap
from calc.layout.arial import on_lines, pixels, width_of
from calc.layout.page import CellValue, Constant, FullSizePage, Linked
from calc.layout.workbook import Cell, SheetPlan, resolve

FIRST = 1
"""The first column of a sheet; the one ahead of it has the numbers of the rows."""

NUMBER_WIDTH = 3.6
ROOM_ACROSS = 905
"""Pixels that the columns of a sheet may take on paper that lies across, at full size, without that of the numbers:
fewer than the paper has, since programs that lack the font make every column a little wider."""

_ROOM_DOWN = 515.0
"""Points that the rows of one page may take, on either size of paper."""

_HEADS, _SECTION, _GAP, _TITLE = 25.0, 16.0, 6.0, 22.0

DASH = "\u2013"

Steps = Iterator[None]
"""The steps of a sheet: rows that are done and may be written."""


_PLACE = re.compile(r"\[([a-z ]+)\.(\d+)(?:@(\d+)|:(\d+)-(\d+))?\]")


class Places:
    """Where each table of the workbook stands: known when every sheet was gone through once.

    A formula names what it asks as ``[table.column]`` for the range of a column, ``[table.column@row]`` for one cell
    and ``[table.column:first-last]`` for some rows of it; rows count from 0 within the table.
    """

    def __init__(self) -> None:
        self._rows: dict[str, tuple[str, int, int]] = {}

    def put(self, table: str, sheet: str, first: int, last: int) -> None:
        """Keeps the rows of a table, from 0."""
        self._rows[table] = sheet, first, last

    def filled(self, text: str, seen_from: str) -> str:
        """The text of a formula with the addresses of all that it names."""
        return _PLACE.sub(lambda found: self._address(found, seen_from), text)

    def _address(self, found: re.Match[str], seen_from: str) -> str:
        table, col, row, start, end = found.groups()
        sheet, first, last = self._rows[table]
        other, letters = _prefix(sheet, seen_from), column_letters(int(col) + 1)
        if row is not None:
            return f"{other}{letters}{first + int(row) + 1}"
        if start is not None:
            return f"{other}{letters}{first + int(start) + 1}:{letters}{first + int(end) + 1}"
        return f"{other}${letters}${first + 1}:${letters}${last + 1}"


def _prefix(sheet: str, seen_from: str) -> str:
    if sheet == seen_from:
        return ""
    return f"{sheet}!" if sheet.isalnum() else f"'{sheet}'!"


class WeekPage(FullSizePage):
    """A sheet of the week while it is laid."""

    used: float = 0.0
    """Points of the page that is being filled."""
    pages: int = 1
    """The pages so far."""
    places: Places

    def value(self, col: int, value: CellValue, role: str = "plain", format_text: str = "") -> None:
        """A value that is fixed at issue, in the current row."""
        self.put(Constant(self.row, col, role, value, format_text))

    def formula(self, col: int, text: str, value: CellValue, role: str = "plain", format_text: str = "") -> None:
        """A formula in the current row, with its value; it may name cells of any table (:class:`Places`)."""
        filled = partial(self.places.filled, text, self.name)
        self.put(Linked(self.row, col, role, filled, lambda _job: value, format_text))

    def link(self, col: int, target: str, shown: str, role: str = "jump") -> None:
        """A link to a file beside this one, or to a cell; its target may be anybody's words."""
        text = f"HYPERLINK({quoted(target)},{quoted(shown)})"
        self.put(Linked(self.row, col, role, lambda: text, lambda _job: shown))

    def jump(self, col: int, sheet: str, role: str = "jump", row: int = 0) -> None:
        """A jump to a row of another sheet; its words name the sheet, so that it says where on paper too."""
        self.link(col, jump_to(sheet, row), sheet, role)

    def at(self, col: int) -> str:
        """The cell in a column of the current row."""
        return f"{column_letters(col + 1)}{self.row + 1}"

    def done(self, height: float | None = None, numbered: bool = True) -> None:
        """Ends the current row."""
        if numbered:
            self.value(0, str(self.row + 1), "rownumber")
        high = self.row_height if height is None else height
        if height is not None:
            self.heights[self.row] = height
        if not self.contents or self.contents[-1].row != self.row:
            self.value(0, None)  # a row without a cell would lose its height
        if self.used + high > _ROOM_DOWN:
            self.pages, self.used = self.pages + 1, self.used_by_heads
        self.used += high
        self.next()

    def keep(self, height: float) -> None:
        """Begins a new page where so many points do not fit the present one, but would fit a page of their own."""
        if self.used + height > _ROOM_DOWN and height <= _ROOM_DOWN - self.used_by_heads:
            self.breaks.append(self.row)
            self.pages, self.used = self.pages + 1, self.used_by_heads

    def repeat_if_long(self, head: int, pages: int) -> None:
        """Has the head of a table printed on its other pages, where it began on page ``pages`` and takes more."""
        if self.pages > pages:
            self.repeated_from, self.repeated_rows = head, 1

    @property
    def used_by_heads(self) -> float:
        """Points of the rows that every page begins with."""
        rows = range(self.repeated_from, self.repeated_from + self.repeated_rows)
        return sum(self.heights.get(row, self.row_height) for row in rows)

    def room(self, first: int, last: int | None = None) -> float:
        """Pixels from one column to another, the last that there is when None, less a small margin."""
        return sum(pixels(each) for each in self.widths[first : None if last is None else last + 1]) - _GAP

    def column_after(self, first: int, room: float) -> int:
        """The first column that begins so many pixels to the right of another, or more; the last when none does."""
        col = first
        while sum(pixels(each) for each in self.widths[first:col]) < room and col < len(self.widths) - 1:
            col += 1
        return col

    def ruled(self, role: str, first: int = FIRST) -> None:
        """Fills the blank cells of the current row, so that its rule goes all the way across."""
        taken = {each.col for each in self.contents if each.row == self.row}
        for col in range(first, len(self.widths)):
            if col not in taken:
                self.value(col, None, role)

    def section(self, title: str, note: str = "", keep: float = 60.0) -> None:
        """The head of a block, with a rule across; a block of so many points is not begun at the foot of a page."""
        self.keep(keep + _GAP + _SECTION)
        self.done(_GAP, numbered=False)
        self.value(FIRST, title, "sectionhead")
        if note:
            col = self.column_after(FIRST, width_of(title, 11, bold=True) + 2 * _GAP)
            self.value(col, note, "sectionnote")
        self.ruled("sectionnote", 0)
        self.done(_SECTION, numbered=False)

    def heads(self, heads: Mapping[int, tuple[str, str]]) -> None:
        """The heads of a table: for a column its words, broken by hand, and l, r or i: left, right, or indented."""
        for col, (words, side) in heads.items():
            role = {"l": "columnhead", "r": "columnheadright", "i": "columnheadindent"}[side]
            self.value(col, words, role if "\n" in words else f"{role}line")
        self.ruled("columnhead")
        self.done(_HEADS if any("\n" in words for words, _ in heads.values()) else 14.0)

    def sentence(self, col: int, words: str, role: str = "quiet") -> None:
        """Words from a column to the end of the row, and on in rows below it when they are longer. Ends the rows."""
        for line in on_lines(words, self.room(col)):
            self.value(col, line, role)
            self.done()

    def open(self, sheets: Sequence[str], note: str) -> None:
        """Title and bar of jumps: the first two rows."""
        self.value(0, self.title, "pagetitle")
        self.value(len(self.widths) - 1, note, "pagenote")
        self.done(_TITLE, numbered=False)
        self.value(FIRST, "Go to", "quiet")
        right = width_of("Go to") + 2 * _GAP
        for sheet in sheets:
            col = self.column_after(FIRST, right)
            if sheet == self.name:
                self.value(col, sheet, "plainstrong")
            else:
                self.jump(col, sheet, "jumpbar")
            begins = sum(pixels(each) for each in self.widths[FIRST:col])
            right = begins + max(width_of(sheet, bold=True) + 2 * _GAP, pixels(self.widths[col]))
        self.done(numbered=False)


def jump_to(sheet: str, row: int = 0) -> str:
    """The target of a jump to a row of a sheet."""
    return f"#'{sheet}'!A{row + 1}"


def quoted(text: str) -> str:
    """Text quoted for a formula. The writer takes a name before a parenthesis for a function, in quotes too: a job may
    be called SORT(1), so the text before a parenthesis is quoted by itself."""
    doubled = text.replace('"', '""').replace("(", '"&"(')
    return f'"{doubled}"'


@dataclass(frozen=True)
class _Cells:
    """The cells of a sheet, made each time they are gone through."""

    opened: Callable[[], WeekPage]
    lay: Callable[[WeekPage], Steps]

    def __iter__(self) -> Iterator[Cell]:
        page, places = self.opened(), CellMap()
        for _ in self.lay(page):
            yield from _ready(page, places)
        yield from _ready(page, places)


def _ready(page: WeekPage, places: CellMap) -> Iterator[Cell]:
    """The cells that were laid since the last time, row by row."""
    yield from sorted(resolve(page, places).cells, key=itemgetter(0, 1))
    page.contents.clear()


def sheet_plan(opened: Callable[[], WeekPage], lay: Callable[[WeekPage], Steps]) -> SheetPlan:
    """A sheet that was gone through once: its heights, its breaks and the places of its tables are known."""
    page = opened()
    for _ in lay(page):
        page.contents.clear()
    page.contents.clear()
    return SheetPlan(page, _Cells(opened, lay))
