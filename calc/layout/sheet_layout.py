"""A sheet of the story or of the workings during layout: its head, its sections, and words that go on over empty cells.

Words are never wrapped into a tall row: they run over the empty cells to the right, and go on in a second row when they
are longer.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from math import ceil

from calc.cells import column_letters
from calc.declared import Declared, Line
from calc.layout.addresses import CellMap, KeyUse
from calc.layout.grid import (
    BAR_HEIGHT,
    BELOW_SECTION,
    ITEM,
    ROW_NO,
    SECTION_GAP,
    SECTION_HEIGHT,
    TITLE_HEIGHT,
    VALUE,
    Grid,
)
from calc.layout.page import Computed, Content, FixedText, FormulaText, FullSizePage, JobText, Jump
from calc.layout.step_formats import is_words, step_format, unit_of
from calc.layout.text_flow import Placed, TextFlow
from calc.layout.text_width import heading, text_width, wrapped, wrapped_code
from calc.layout.worked import worked

_AUTHORITY = re.compile(r"\b[A-Z]{2,}\b|common practice|textbook|handbook|maker|from memory|company book")
"""A source that is more than plain geometry or arithmetic; the others repeat the formula, and are not shown."""

_TEXTS = "Words put together; the formula stands in the cell"
_LONG = "Differs by row; the formula stands in the cell"
_MOST_ROWS = 3
"""Words of a formula that would take more rows are left to the formula itself."""

_INDENT = 9.0
"""Pixels by which the head of a column of words is set in."""

_SLACK = 14.0
"""Pixels that a formula may grow, by two digits, between the draft of a layout and the layout."""


_INDENT = 9.0
"""Pixels by which units and the heads of texts are set in."""


_ROW = re.compile(r"(?<=[A-Z$])([4-9]\d\d?)\b")
"""The number of a row that may have one digit more in the layout than in its draft."""


def _grown(text: str) -> str:
    """A formula of the draft with as many digits as it may come to."""
    return _ROW.sub(r"\g<1>0", text)


@dataclass(frozen=True)
class Draft:
    """What the first layout of a shape found out: how long formulas are, and which numbers of rows they refer to."""

    texts: Mapping[Line, str] = field(default_factory=dict)
    keys: frozenset[KeyUse] | None = None
    """None: all of them may be."""

    def uses(self, key: KeyUse) -> bool:
        """Whether a formula refers to such a number or name."""
        return self.keys is None or key in self.keys

    def formula_width(self, line: Line) -> float:
        """The width of the text of its formula, in pixels, as far as is known."""
        return text_width(self.texts[line]) + _SLACK if line in self.texts else 0.0

    def formula_rows(self, line: Line, room: float) -> int:
        """The rows that its formula takes in so many pixels."""
        return len(self.formula_lines(line, room, room))

    def formula_lines(self, line: Line, first: float, room: float) -> list[str]:
        """The rows of its formula, in so many pixels: ``first`` in the first of them."""
        return wrapped_code(_grown(self.texts.get(line, "")), room - _SLACK, first - _SLACK)


def told_words(line: Line, room: float, first: float | None = None) -> list[str]:
    """How a line is worked, in rows of so many pixels; ``first``: those of the first row."""
    words = worked(line)
    rows = wrapped(f"{words[:1].upper()}{words[1:]}", room, first)
    if len(rows) <= _MOST_ROWS:
        return rows
    return [_TEXTS if is_words(line) else _LONG]


def told_source(line: Line) -> str:
    """Its source, where that is more than geometry or arithmetic."""
    return line.source if _AUTHORITY.search(line.source) else ""


@dataclass
class SheetLayout:
    """A page with its grid, the addresses of all cells, and what the draft found out."""

    page: FullSizePage
    grid: Grid
    places: CellMap
    draft: Draft
    starts: list[int] = field(default_factory=list)
    """The rows in which sections begin."""
    airy: bool = True
    """Whether the heads of sections have more space around them."""

    @property
    def name(self) -> str:
        """The name of the sheet."""
        return self.page.name

    def head(self, about: str, bar: Mapping[str, str], here: str) -> None:
        """The title with the job, and the bar of jumps: the sheet of each name, ``here`` is this one."""
        page, last = self.page, self.grid.last
        page.put(FixedText(0, 0, "sheettitle", page.title or page.name))
        page.put(JobText(0, last, "sheetnote", lambda job: f"Job {job.id}: {about}", wraps=False))
        page.heights[0], page.heights[1] = TITLE_HEIGHT, BAR_HEIGHT
        page.put(FixedText(1, ITEM, "quiet", "Go to"))
        for col, (short, sheet) in enumerate(bar.items(), start=2):
            if short == here:
                page.put(FixedText(1, col, "here", short))
            else:
                page.put(Jump(1, col, "barjump", _top_of(sheet), short))
        page.row = 2

    def section(self, title: str, note: str = "", jump: Callable[[], tuple[str, int, int]] | None = None) -> None:
        """The head of a section: a black line below it over the whole width."""
        page = self.page
        self.starts.append(page.row)
        page.heights[page.row] = SECTION_GAP if self.airy else SECTION_GAP / 2
        page.next()
        width = text_width(title, 11, bold=True)
        after = ITEM + 1
        while self.grid.room(ITEM, after - 1) < width + 8 and after < self.grid.last:
            after += 1
        for col in range(self.grid.last + 1):
            if col == ITEM:
                page.put(FixedText(page.row, col, "storysection", title))
            elif col == after and note:
                page.put(FixedText(page.row, col, "sectionnote", note))
            elif col == self.grid.last and jump is not None:
                page.put(Jump(page.row, col, "sectionjump", jump))
            else:
                page.put(FixedText(page.row, col, "sectionnote", ""))
        page.heights[page.row] = SECTION_HEIGHT if self.airy else SECTION_HEIGHT - 2.0
        page.next()
        if self.airy:
            page.heights[page.row] = BELOW_SECTION
            page.next()

    def group(self, title: str, note: str) -> None:
        """A light head within a section of the workings."""
        page = self.page
        page.put(FixedText(page.row, ITEM, "group", title))
        col = ITEM + 1
        while self.grid.room(ITEM, col - 1) < text_width(title, 9, bold=True) + 8 and col < self.grid.last:
            col += 1
        room = self.grid.room(col)
        if note and text_width(note) <= room:
            page.put(FixedText(page.row, col, "quiet", note))
        self.end_row()

    def number_row(self) -> None:
        """The number of the row at its left, as text, so that an address can be followed on paper."""
        self.page.put(FixedText(self.page.row, ROW_NO, "rowno", str(self.page.row + 1)))

    def end_row(self, height: float | None = None, detail: bool = False) -> None:
        """Ends a row, as high as the rows of the grid unless said."""
        page = self.page
        page.heights[page.row] = height if height is not None else self.grid.quiet if detail else self.grid.row
        if detail:
            page.details.add(page.row)
        page.next()

    def value(self, named: Line, index: int, col: int, role: str = "step") -> None:
        """The cell of a row of a line."""
        page = self.page
        told = f"{role}words" if is_words(named) else role
        page.put(Computed(page.row, col, told, named, index, step_format(named, col > 2)))

    def unit(self, named: Declared, col: int) -> None:
        """Its unit."""
        if unit := unit_of(named):
            self.page.put(FixedText(self.page.row, col, "stepunit", unit))

    def behind_unit(self, named: Declared, col: int) -> int:
        """The first column behind the unit in ``col``: a long one takes two."""
        return col + 1 if text_width(unit_of(named)) + _INDENT <= self.grid.room(col, col) else col + 2

    def told(
        self, line: Line, index: int, col: int, role: str, last: int | None = None, below: int | None = None
    ) -> None:
        """How a line is worked from ``col`` on, its formula as text and its source: in this row and, if need be, more.

        Ends the rows it takes. ``last`` is the last column of the words in the first row, ``below`` the first column of
        a formula that stands below them.
        """
        page, grid = self.page, self.grid
        end = grid.last if last is None else last
        words = told_words(line, grid.room(col, end))
        source, width = told_source(line), self.draft.formula_width(line)
        beside = grid.room(grid.split, end if not source else grid.source - 1)
        fits = col < grid.split and len(words) == 1 and text_width(words[0]) <= grid.room(col, grid.split - 1)
        if fits and 0 < width <= beside and text_width(source) <= grid.room(grid.source, end):
            page.put(FixedText(page.row, col, role, words[0]))
            page.put(FormulaText(page.row, grid.split, "quiet", line, index))
            if source:
                page.put(FixedText(page.row, grid.source, "origin", source))
            self.end_row()
            return
        for place, text in enumerate(words):
            page.put(FixedText(page.row, col, role, text))
            self.end_row(detail=place > 0)
        self._formula_below(line, index, col if below is None else below, source)

    def told_in(self, line: Line, flow: TextFlow, top: int, label: str = "") -> list[Content]:
        """How a line is worked, its formula as text and its source, each behind the other, from row ``top`` on.

        Nothing is put on the page yet. A ``label`` stands before all of it.
        """
        source, texts = told_source(line), self.draft.formula_lines
        put: list[Content] = []
        if label:
            put += _texts(flow.put(lambda first, room: wrapped(label, room, first)), top, "quiet")
            flow.col = max(flow.col, flow.below)
        put += _texts(flow.put(lambda first, room: told_words(line, room, first)), top, "quiet")
        placed = flow.put(lambda first, room: texts(line, first, room), lambda text: text_width(text) + _SLACK)
        rooms = placed[-1].room, placed[0].room
        for part, each in enumerate(placed):
            put.append(FormulaText(top + each.row, each.col, "quiet", line, 0, *rooms, part, len(placed)))
        if source:
            put += _texts(flow.put(lambda first, room: wrapped(source, room, first)), top, "origin")
        return put

    def flow(self, line: Line, flow: TextFlow, label: str = "") -> int:
        """Puts what ``told_in`` gives, from the current row on; the last row that it takes. No row is ended."""
        for each in self.told_in(line, flow, self.page.row, label):
            self.page.put(each)
        return self.page.row + flow.row

    def fits_beside(self, line: Line, label: str, col: int) -> bool:
        """Whether all that is told of a line fits behind ``col`` in one row."""
        words, source = told_words(line, self.grid.room(VALUE)), told_source(line)
        parts = [label, *words, source] if source else [label, *words]
        step = self.grid.room(VALUE, VALUE) + 6.0
        taken = sum(ceil((text_width(part) + 7.0) / step) for part in parts)
        taken += ceil((self.draft.formula_width(line) + 7.0) / step)
        return len(words) == 1 and col + taken - 1 <= self.grid.last

    def close(self, last: int) -> None:
        """Ends the rows from the current one to ``last``, all but the first of them details."""
        top = self.page.row
        while self.page.row <= last:
            self.end_row(detail=self.page.row > top)

    def _formula_below(self, line: Line, index: int, col: int, source: str) -> None:
        page, grid = self.page, self.grid
        room = grid.room(col)
        rows = self.draft.formula_rows(line, room)
        last = self.draft.formula_width(line) if rows == 1 else room
        for part in range(rows):
            page.put(FormulaText(page.row, col, "quiet", line, index, room, room, part, rows))
            beside = part == rows - 1 and last <= grid.room(col, grid.source - 1)
            if source and beside and text_width(source) <= grid.room(grid.source):
                page.put(FixedText(page.row, grid.source, "origin", source))
                source = ""
            self.end_row(detail=True)
        for text in wrapped(source, room) if source else ():
            page.put(FixedText(page.row, col, "origin", text))
            self.end_row(detail=True)

    def column_heads(self, heads: Mapping[int, tuple[str, str, bool]], through: int) -> None:
        """The heads of a table, broken by hand, and below them their units: text, unit, and whether flush left."""
        page, grid = self.page, self.grid
        lines = {
            col: heading(text, grid.room(col, col) - (_INDENT if left and col != ITEM else 0.0), 9)
            for col, (text, _, left) in heads.items()
        }
        page.put(FixedText(page.row, ROW_NO, "rowno", str(page.row + 1)))
        for col in range(ITEM, through + 1):
            text, _, left = heads.get(col, ("", "", False))
            role = "itemhead" if col == ITEM else "stepheadleft" if left else "stephead"
            page.put(FixedText(page.row, col, role, "\n".join(lines[col]) if text else ""))
        self.end_row(max((len(each) for each in lines.values()), default=1) * 11.25 + 1.5)
        for col in range(ITEM, through + 1):
            page.put(FixedText(page.row, col, "headunit", heads[col][1] if col in heads else ""))
        self.end_row()

    def label(self, text: str, role: str = "item", below: str = "") -> int:
        """The label of a line, which goes on in the rows below when it is long; the last row that it takes."""
        parts = wrapped(text, self.grid.room(ITEM, ITEM))
        for place, part in enumerate(parts):
            self.page.put(FixedText(self.page.row + place, ITEM, role, f"{below if place else ''}{part}"))
        return self.page.row + len(parts) - 1

    def close_label(self, top: int, last: int) -> None:
        """Makes room for the rest of a label that is longer than the words beside it."""
        while self.page.row <= last:
            self.end_row(detail=self.page.row > top)

    def column_note(self, line: Line, col: int) -> None:
        """How a column is worked, below its table: letter and label, the words, and the formula of its first row."""
        top = self.page.row
        last = self.label(f"  {column_letters(col + 1)}  {line.label}", "quiet", "       ")
        self.told(line, 0, VALUE, "quiet")
        self.close_label(top, last)


def _texts(placed: Sequence[Placed], top: int, role: str) -> list[Content]:
    return [FixedText(top + each.row, each.col, role, each.text) for each in placed]


def _top_of(sheet: str) -> Callable[[], tuple[str, int, int]]:
    return lambda: (sheet, 0, 0)
