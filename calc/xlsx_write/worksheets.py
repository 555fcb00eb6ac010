"""The worksheets that a plan is written to: from a row template, as a stream of rows, or cell by cell.

The first two hand xlsxwriter rows that are rendered already, which it does not promise to take
(:mod:`calc.xlsx_write.xlsxwriter_internals`); the third uses its documented methods only. Each has a worksheet of
xlsxwriter and is none itself, so that no name here can take the place of one of its own.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from contextlib import ExitStack
from dataclasses import dataclass
from io import StringIO
from tempfile import TemporaryFile
from typing import Any
from weakref import WeakKeyDictionary

from calc.cell_text import escape_control, rich_text_run
from calc.errors import Unreadable
from calc.layout.page import CellValue, default_height, details_of
from calc.layout.styles import properties
from calc.layout.workbook import Cell, SheetPlan, Style
from calc.model.results import JobValues
from calc.xlsx_write.row_templates import SheetTemplate, in_order, sheet_template, streamed_rows
from calc.xlsx_write.xlsxwriter_internals import RawFormulaSheet, RenderedRowsSheet, format_number, string_numbers


class FormatCache:
    """The formats of a workbook, each made once for its style; ``properties_of`` gives the properties of a style."""

    def __init__(self, book: Any, properties_of: Callable[[str, str], dict[str, Any]] = properties) -> None:
        self.book, self.properties_of = book, properties_of
        self.made: dict[Style, Any] = {}

    def of(self, style: Style) -> Any:
        """The format of a style: of a role with a number format."""
        if style not in self.made:
            self.made[style] = self.book.add_format(self.properties_of(*style))
        return self.made[style]

    def number(self, style: Style) -> int:
        """The number of its format in the file."""
        return format_number(self.of(style))


@dataclass(frozen=True, slots=True)
class Extent:
    """How many rows and columns of a sheet have cells, and the heights of the rows that set one, in points."""

    rows: int
    cols: int
    heights: dict[int, float]


class CellSheet:
    """A worksheet that is written cell by cell, through documented methods of xlsxwriter."""

    def __init__(self, book: Any, name: str) -> None:
        self.worksheet: Any = book.add_worksheet(name, RawFormulaSheet)

    def write_plan(self, plan: SheetPlan, formats: FormatCache, job: JobValues | None) -> Extent:
        """Writes every cell of a plan, with the values of ``job`` where the sheet belongs to one."""
        heights = dict(plan.page.heights)
        for row, height in heights.items():
            self._set_row(plan, row, height)
        rows, cols = 1, 1
        usual, begun = default_height(plan.page), -1
        for cell in self._ordered(plan.cells):
            if usual is not None and cell.row != begun and cell.row not in heights:
                self.worksheet.set_row(cell.row, usual)
            begun = cell.row
            rows, cols = max(rows, cell.row + 1), max(cols, cell.col + 1)
            value = self._write_cell(cell, formats, job)
            if cell.own_words and isinstance(value, str):
                plan.page.fit_height(heights, cell.row, value, cell.col)
                self._set_row(plan, cell.row, heights[cell.row])
        return Extent(rows, cols, heights)

    def _set_row(self, plan: SheetPlan, row: int, height: float) -> None:
        self.worksheet.set_row(row, height, None, {"level": 1} if row in details_of(plan.page) else {})

    def rows_were_written(self) -> bool:
        """Whether its rows are in the file, after the workbook was closed: xlsxwriter has every cell."""
        return True

    def _ordered(self, cells: Iterable[Cell]) -> Iterable[Cell]:
        return in_order(cells)

    def _write_cell(self, cell: Cell, formats: FormatCache, job: JobValues | None) -> CellValue:
        value, made = cell.shows(job), formats.of(cell.style)
        formula = cell.formula_for(job)
        if formula:
            result = escape_control(value) if isinstance(value, str) else value
            code = self.worksheet.write_formula(cell.row, cell.col, f"={formula}", made, result)
            check_code(code, self.worksheet.name)
        else:
            write_value(self.worksheet, cell.row, cell.col, value, made)
        return value


class RowByRowSheet(CellSheet):
    """The same for cells that come row by row, of which a workbook in constant memory keeps one row at a time."""

    def _ordered(self, cells: Iterable[Cell]) -> Iterable[Cell]:
        return cells


def write_value(sheet: Any, row: int, col: int, value: CellValue, made: Any) -> None:
    """Writes a value with its format; a blank cell has its format too."""
    if value is None or value == "":
        code = sheet.write_blank(row, col, None, made)
    elif isinstance(value, str):
        code = sheet.write_string(row, col, rich_text_run(value), made)
    else:
        code = sheet.write_number(row, col, float(value), made)
    check_code(code, sheet.name)


def check_code(code: Any, sheet: str) -> None:
    """Raises Unreadable for a cell that was not written: xlsxwriter returns a code instead of raising."""
    if code:
        raise Unreadable(f"a cell of {sheet} could not be written (code {code})")


_TEMPLATES: WeakKeyDictionary[SheetPlan, SheetTemplate] = WeakKeyDictionary()
"""The row templates of the plans that are in use."""


def _template_of(plan: SheetPlan, formats: FormatCache) -> SheetTemplate:
    """The row template of a plan, for a workbook whose formats have these numbers."""
    known = _TEMPLATES.get(plan)
    if known is not None and [formats.number(style) for style in known.numbers] == list(known.numbers.values()):
        return known
    _TEMPLATES[plan] = made = sheet_template(plan.page, plan.cells, formats.number)
    return made


class _RenderedSheet:
    """A worksheet whose rows are rendered by this program."""

    def __init__(self, book: Any, name: str) -> None:
        self.worksheet: Any = book.add_worksheet(name, RenderedRowsSheet)

    def rows_were_written(self) -> bool:
        """Whether its rows are in the file, after the workbook was closed."""
        return bool(self.worksheet.rows_were_written())


class TemplateSheet(_RenderedSheet):
    """A sheet of a job, rendered from its row template."""

    def write_plan(self, plan: SheetPlan, formats: FormatCache, job: JobValues | None) -> Extent:
        """Renders the rows of a plan for a job."""
        template = _template_of(plan, formats)
        if details := details_of(plan.page):
            self.worksheet.set_row(min(details), None, None, {"level": 1})  # states how deep the outline is
        rendered = template.render(job, string_numbers(self.worksheet))
        if plan.page.charts:  # charts are placed over rows, so xlsxwriter must know how high those are
            for row, height in rendered.heights.items():
                self.worksheet.set_row(row, height)
        extent = Extent(template.rows, template.cols, rendered.heights)
        last = max(extent.rows, *(row + 1 for row in rendered.heights), 1)
        _set_size(self.worksheet, last, extent.cols, formats.of(template.cells[0].style))

        def values(first_row: int, first_col: int, last_row: int, last_col: int) -> Sequence[Any]:
            places = ((row, col) for row in range(first_row, last_row + 1) for col in range(first_col, last_col + 1))
            cells = (template.by_place.get(place) for place in places)
            return [None if cell is None else cell.shows(job) for cell in cells]

        self.worksheet.use_rendered_rows(StringIO(rendered.rows), values)
        return extent


class StreamSheet(_RenderedSheet):
    """A sheet that grows with the number of jobs: its rows go to a temporary file, one after the other."""

    def write_plan(self, plan: SheetPlan, formats: FormatCache, job: JobValues | None) -> Extent:
        """Renders the rows of a plan."""
        with ExitStack() as on_error:
            file = on_error.enter_context(TemporaryFile("w+", encoding="utf-8", newline=""))
            rows, cols = 1, 1
            for row in streamed_rows(plan.page, plan.cells, formats.number, string_numbers(self.worksheet)):
                rows, cols = row.number + 1, max(cols, row.cols)
                file.write(row.text)
            file.seek(0)
            _set_size(self.worksheet, rows, cols, formats.of(("words", "")))
            on_error.pop_all()
        self.worksheet.use_rendered_rows(file, lambda *_: ())
        return Extent(rows, cols, dict(plan.page.heights))


def _set_size(sheet: Any, rows: int, cols: int, made: Any) -> None:
    """Tells xlsxwriter how far a sheet goes, whose cells it does not know."""
    for row, col in ((0, 0), (rows - 1, cols - 1)):
        check_code(sheet.write_blank(row, col, None, made), sheet.name)


Sheet = CellSheet | TemplateSheet | StreamSheet
"""A worksheet that a plan can be written to."""
