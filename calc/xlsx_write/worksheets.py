"""The worksheets of the writer: one is poured from a cast, one grows row by row, and one takes its cells one by one.

The first two give the writer rows that are ready. It does not promise to ask for them: the third is for that case.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Callable, Sequence
from contextlib import ExitStack
from dataclasses import dataclass
from io import StringIO
from shutil import copyfileobj
from tempfile import TemporaryFile
from typing import IO, Any
from weakref import WeakKeyDictionary

from xlsxwriter.worksheet import Worksheet

from calc.cell_text import escape_control, rich_text_run
from calc.errors import Unreadable
from calc.layout.page import Shown
from calc.layout.styles import properties
from calc.layout.workbook import Cell, SheetPlan, Style
from calc.model.results import JobValues
from calc.xlsx_write.row_templates import SheetTemplate, in_order, sheet_template, streamed


class FormatCache:
    """The formats of a workbook, each made once; ``face`` says what a role and a number format look like."""

    def __init__(self, book: Any, face: Callable[[str, str], dict[str, Any]] = properties) -> None:
        self.book, self.face = book, face
        self.made: dict[Style, Any] = {}

    def of(self, look: Style) -> Any:
        """The face of a role with a number format."""
        if look not in self.made:
            self.made[look] = self.book.add_format(self.face(*look))
        return self.made[look]

    def number(self, look: Style) -> int:
        """Its number in the file."""
        return int(_part_of(self.of(look), "_get_xf_index")())


@dataclass(frozen=True, slots=True)
class Extent:
    """How many rows and columns of a sheet hold cells, and how high those rows are that say so, in points."""

    rows: int
    cols: int
    heights: dict[int, float]


class UnsupportedWriter(Exception):
    """The writer is a release that puts a file together in another way, and has no use for rows from a cast."""


def _part_of(thing: Any, name: str) -> Any:
    """A part of the writer that it does not promise to keep."""
    try:
        return getattr(thing, name)
    except AttributeError as reason:
        raise UnsupportedWriter from reason


class Sheet(Worksheet, ABC):  # type: ignore[misc]  # the writer says nothing of its types
    """A worksheet that takes all that a plan puts on it."""

    @abstractmethod
    def take(self, plan: SheetPlan, faces: FormatCache, job: JobValues | None) -> Extent:
        """Takes the cells of a plan, for a job where it is of one."""

    @abstractmethod
    def finish(self) -> bool:
        """Lets go of what it held, when the file is made: whether all of it got there."""


class CellSheet(Sheet):
    """A worksheet that takes its cells one by one, and every formula as it stands.

    The writer looks in each formula for some thirty functions that are younger than the file format, to mark them, and
    that took half of its time. None of ours is: the table of functions has none, and a test looks at what is written. A
    release of the writer that looks elsewhere never asks this, and is only slower.
    """

    def _prepare_formula(self, formula: str, expand_future_functions: bool = False) -> str:
        return formula.removeprefix("=")

    def take(self, plan: SheetPlan, faces: FormatCache, job: JobValues | None) -> Extent:
        """Takes every cell of a plan."""
        heights = dict(plan.page.heights)
        for row, height in heights.items():
            self.set_row(row, height)
        rows, cols = 1, 1
        for cell in plan.cells if self.constant_memory else in_order(plan.cells):
            rows, cols = max(rows, cell.row + 1), max(cols, cell.col + 1)
            value = self._take_cell(cell, faces, job)
            if cell.own_words and isinstance(value, str):
                plan.page.stretch(heights, cell.row, value, cell.col)
                self.set_row(cell.row, heights[cell.row])
        return Extent(rows, cols, heights)

    def finish(self) -> bool:
        """The writer itself took every cell."""
        return True

    def _take_cell(self, cell: Cell, faces: FormatCache, job: JobValues | None) -> Shown:
        value, face = cell.shows(job), faces.of(cell.look)
        formula = cell.formula_for(job)
        if formula:
            result = escape_control(value) if isinstance(value, str) else value
            done(self.write_formula(cell.row, cell.col, f"={formula}", face, result), self.name)
        else:
            put(self, cell.row, cell.col, value, face)
        return value


def put(sheet: Any, row: int, col: int, value: Shown, face: Any) -> None:
    """Puts a value into a cell; a blank one has its face all the same."""
    if value is None or value == "":
        code = sheet.write_blank(row, col, None, face)
    elif isinstance(value, str):
        code = sheet.write_string(row, col, rich_text_run(value), face)
    else:
        code = sheet.write_number(row, col, float(value), face)
    done(code, sheet.name)


def done(code: Any, sheet: str) -> None:
    """The writer answers a cell that it did not write with a code: that is never passed over."""
    if code:
        raise Unreadable(f"a cell of {sheet} could not be written (code {code})")


_CASTS: WeakKeyDictionary[SheetPlan, SheetTemplate] = WeakKeyDictionary()
"""The casts of the plans that live."""


def _template_of(plan: SheetPlan, faces: FormatCache) -> SheetTemplate:
    """The cast of a plan for a workbook whose formats have these numbers."""
    there = _CASTS.get(plan)
    if there is not None and [faces.number(look) for look in there.numbers] == list(there.numbers.values()):
        return there
    _CASTS[plan] = made = sheet_template(plan.page, plan.cells, faces.number)
    return made


class _RenderedSheet(Sheet):
    """A worksheet whose rows are ready, and wait to be asked for when the writer puts the file together.

    A release of the writer that does not ask is found out by :meth:`finish`.
    """

    _rows: IO[str]

    def finish(self) -> bool:
        """Lets go of its rows: whether the writer asked for them."""
        asked = self._rows.tell() > 0
        self._rows.close()
        return asked

    def _wait(self, rows: IO[str], size: tuple[int, int], face: Any) -> None:
        """Has rows wait from their start, and tells the writer how far the sheet goes."""
        rows.seek(0)
        self._rows = rows
        for row, col in ((0, 0), (size[0] - 1, size[1] - 1)):
            done(self.write_blank(row, col, None, face), self.name)

    def _shared(self) -> Callable[[str], int]:
        """What gives a text its number among the strings of the workbook."""
        shared: Callable[[str], int] = _part_of(_part_of(self, "str_table"), "_get_shared_string_index")
        return shared

    def _write_rows(self) -> None:
        copyfileobj(self._rows, self.fh)


class TemplateSheet(_RenderedSheet):
    """A sheet of a job, poured from its cast."""

    def take(self, plan: SheetPlan, faces: FormatCache, job: JobValues | None) -> Extent:
        """Takes the rows of a plan."""
        self._cast, self._job = _template_of(plan, faces), job
        poured = self._cast.render(job, self._shared())
        if plan.page.charts:  # they lie over rows, and are as high as those
            for row, height in poured.heights.items():
                self.set_row(row, height)
        extent = Extent(self._cast.rows, self._cast.cols, poured.heights)
        far = max(extent.rows, *(row + 1 for row in poured.heights), 1)
        self._wait(StringIO(poured.rows), (far, extent.cols), faces.of(self._cast.cells[0].look))
        return extent

    def _get_range_data(self, first_row: int, first_col: int, last_row: int, last_col: int) -> Sequence[Any]:
        """The cells that a chart is drawn from, as the writer keeps them beside it."""
        places = ((row, col) for row in range(first_row, last_row + 1) for col in range(first_col, last_col + 1))
        cells = (self._cast.by_place.get(place) for place in places)
        return [None if cell is None else cell.shows(self._job) for cell in cells]


class StreamSheet(_RenderedSheet):
    """A sheet that grows with the jobs: its rows wait in a file, one after the other."""

    def take(self, plan: SheetPlan, faces: FormatCache, job: JobValues | None) -> Extent:
        """Takes the rows of a plan."""
        with ExitStack() as unless_taken:
            file = unless_taken.enter_context(TemporaryFile("w+", encoding="utf-8", newline=""))
            rows, cols = 1, 1
            for row in streamed(plan.page, plan.cells, faces.number, self._shared()):
                rows, cols = row.number + 1, max(cols, row.cols)
                file.write(row.text)
            self._wait(file, (rows, cols), faces.of(("words", "")))
            unless_taken.pop_all()
        return Extent(rows, cols, dict(plan.page.heights))
