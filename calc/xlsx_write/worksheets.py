"""Worksheets: one is rendered from a template, one grows row by row, and one takes its cells one by one.

The first two give the writer finished rows. A release of the writer may not use them: the third is for that case.
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
from calc.layout.page import CellValue
from calc.layout.styles import properties
from calc.layout.workbook import Cell, SheetPlan, Style
from calc.model.results import JobValues
from calc.xlsx_write.row_templates import SheetTemplate, in_order, sheet_template, streamed


class FormatCache:
    """The formats of a workbook, each made once; ``properties_of`` gives those of a role with a number format."""

    def __init__(self, book: Any, properties_of: Callable[[str, str], dict[str, Any]] = properties) -> None:
        self.book, self.properties_of = book, properties_of
        self.made: dict[Style, Any] = {}

    def of(self, style: Style) -> Any:
        """The format of a style."""
        if style not in self.made:
            self.made[style] = self.book.add_format(self.properties_of(*style))
        return self.made[style]

    def number(self, style: Style) -> int:
        """Its number in the file."""
        return int(_part_of(self.of(style), "_get_xf_index")())


@dataclass(frozen=True, slots=True)
class Extent:
    """How many rows and columns of a sheet have cells, and the row heights that are set, in points."""

    rows: int
    cols: int
    heights: dict[int, float]


class UnsupportedWriter(Exception):
    """This release of the writer assembles a file in another way, and cannot use rows from a template."""


def _part_of(thing: Any, name: str) -> Any:
    """A private part of the writer, which a release may drop."""
    try:
        return getattr(thing, name)
    except AttributeError as reason:
        raise UnsupportedWriter from reason


class Sheet(Worksheet, ABC):  # type: ignore[misc]  # the writer has no type hints
    """A worksheet that takes the cells of a sheet plan."""

    @abstractmethod
    def take(self, plan: SheetPlan, formats: FormatCache, job: JobValues | None) -> Extent:
        """Takes the cells of a plan, for a job where it is of one."""

    @abstractmethod
    def finish(self) -> bool:
        """Releases its rows when the file is made: whether all of them were written."""


class CellSheet(Sheet):
    """A worksheet that takes its cells one by one, and every formula unchanged.

    The writer searches each formula for some thirty functions that are newer than the file format, to mark them, which
    took half of its time. The table of functions has none of them, and a test checks what is written. A release of the
    writer that searches elsewhere never calls this, and is only slower.
    """

    def _prepare_formula(self, formula: str, expand_future_functions: bool = False) -> str:
        return formula.removeprefix("=")

    def take(self, plan: SheetPlan, formats: FormatCache, job: JobValues | None) -> Extent:
        """Takes every cell of a plan."""
        heights = dict(plan.page.heights)
        for row, height in heights.items():
            self.set_row(row, height)
        rows, cols = 1, 1
        for cell in plan.cells if self.constant_memory else in_order(plan.cells):
            rows, cols = max(rows, cell.row + 1), max(cols, cell.col + 1)
            value = self._take_cell(cell, formats, job)
            if cell.own_words and isinstance(value, str):
                plan.page.fit_height(heights, cell.row, value, cell.col)
                self.set_row(cell.row, heights[cell.row])
        return Extent(rows, cols, heights)

    def finish(self) -> bool:
        """The writer itself took every cell."""
        return True

    def _take_cell(self, cell: Cell, formats: FormatCache, job: JobValues | None) -> CellValue:
        value, cell_format = cell.shows(job), formats.of(cell.style)
        formula = cell.formula_for(job)
        if formula:
            result = escape_control(value) if isinstance(value, str) else value
            done(self.write_formula(cell.row, cell.col, f"={formula}", cell_format, result), self.name)
        else:
            put(self, cell.row, cell.col, value, cell_format)
        return value


def put(sheet: Any, row: int, col: int, value: CellValue, cell_format: Any) -> None:
    """Puts a value into a cell; a blank cell has its format all the same."""
    if value is None or value == "":
        code = sheet.write_blank(row, col, None, cell_format)
    elif isinstance(value, str):
        code = sheet.write_string(row, col, rich_text_run(value), cell_format)
    else:
        code = sheet.write_number(row, col, float(value), cell_format)
    done(code, sheet.name)


def done(code: Any, sheet: str) -> None:
    """Raises Unreadable for the code that the writer returns for a cell it did not write."""
    if code:
        raise Unreadable(f"a cell of {sheet} could not be written (code {code})")


_TEMPLATES: WeakKeyDictionary[SheetPlan, SheetTemplate] = WeakKeyDictionary()
"""The templates of the sheet plans in memory."""


def _template_of(plan: SheetPlan, formats: FormatCache) -> SheetTemplate:
    """The template of a sheet plan for a workbook whose formats have these numbers."""
    cached = _TEMPLATES.get(plan)
    if cached is not None and [formats.number(style) for style in cached.numbers] == list(cached.numbers.values()):
        return cached
    _TEMPLATES[plan] = made = sheet_template(plan.page, plan.cells, formats.number)
    return made


class _RenderedSheet(Sheet):
    """A worksheet whose finished rows wait until the writer assembles the file.

    :meth:`finish` detects a release of the writer that does not use them.
    """

    _rows: IO[str]

    def finish(self) -> bool:
        """Releases its rows: whether the writer used them."""
        used = self._rows.tell() > 0
        self._rows.close()
        return used

    def _wait(self, rows: IO[str], size: tuple[int, int], cell_format: Any) -> None:
        """Keeps the rows from their start, and gives the writer the size of the sheet."""
        rows.seek(0)
        self._rows = rows
        for row, col in ((0, 0), (size[0] - 1, size[1] - 1)):
            done(self.write_blank(row, col, None, cell_format), self.name)

    def _shared(self) -> Callable[[str], int]:
        """The function that gives a text its number among the strings of the workbook."""
        shared: Callable[[str], int] = _part_of(_part_of(self, "str_table"), "_get_shared_string_index")
        return shared

    def _write_rows(self) -> None:
        copyfileobj(self._rows, self.fh)


class TemplateSheet(_RenderedSheet):
    """A sheet of a job, rendered from its template."""

    def take(self, plan: SheetPlan, formats: FormatCache, job: JobValues | None) -> Extent:
        """Takes the rows of a plan."""
        self._template, self._job = _template_of(plan, formats), job
        rendered = self._template.render(job, self._shared())
        if plan.page.charts:  # their size follows the row heights
            for row, height in rendered.heights.items():
                self.set_row(row, height)
        extent = Extent(self._template.rows, self._template.cols, rendered.heights)
        far = max(extent.rows, *(row + 1 for row in rendered.heights), 1)
        self._wait(StringIO(rendered.rows), (far, extent.cols), formats.of(self._template.cells[0].style))
        return extent

    def _get_range_data(self, first_row: int, first_col: int, last_row: int, last_col: int) -> Sequence[Any]:
        """The cells that a chart is drawn from, as the writer keeps them beside it."""
        places = ((row, col) for row in range(first_row, last_row + 1) for col in range(first_col, last_col + 1))
        cells = (self._template.by_place.get(place) for place in places)
        return [None if cell is None else cell.shows(self._job) for cell in cells]


class StreamSheet(_RenderedSheet):
    """A sheet that grows with the jobs: its rows wait in a file, one after another."""

    def take(self, plan: SheetPlan, formats: FormatCache, job: JobValues | None) -> Extent:
        """Takes the rows of a plan."""
        with ExitStack() as unless_taken:
            file = unless_taken.enter_context(TemporaryFile("w+", encoding="utf-8", newline=""))
            rows, cols = 1, 1
            for row in streamed(plan.page, plan.cells, formats.number, self._shared()):
                rows, cols = row.number + 1, max(cols, row.cols)
                file.write(row.text)
            self._wait(file, (rows, cols), formats.of(("words", "")))
            unless_taken.pop_all()
        return Extent(rows, cols, dict(plan.page.heights))
