"""Writing a workbook with xlsxwriter: the plans of its sheets and the values of a job become the bytes of a file."""

from __future__ import annotations

import warnings
from collections.abc import Sequence
from copy import deepcopy
from dataclasses import dataclass
from datetime import datetime, timedelta
from io import BytesIO
from typing import Any

import xlsxwriter

from calc._version import __version__
from calc.formula.functions import NONE
from calc.layout.addresses import CellMap
from calc.layout.bid_cautions import slots_for
from calc.layout.charts import draw
from calc.layout.checks_sheet import NAME as CHECKS
from calc.layout.log_sheet import log_page
from calc.layout.page import FullSizePage, Page
from calc.layout.sheets import SAFETY
from calc.layout.styles import FONT, LINE_HEIGHT
from calc.layout.validations import validations_of
from calc.layout.workbook import SheetPlan, papers_of, plan_of, resolve
from calc.model.results import JobValues
from calc.trade.inputs.job import Company, Job
from calc.xlsx_write.worksheets import (
    CellSheet,
    FormatCache,
    RowByRowSheet,
    Sheet,
    StreamSheet,
    TemplateSheet,
    check_code,
)
from calc.xlsx_write.xlsxwriter_internals import supports_rendered_rows

_OPTIONS = {
    "in_memory": True,
    "strings_to_formulas": False,
    "strings_to_urls": False,
    "strings_to_numbers": False,
    # a column width counts digits of the workbook's default font: one that every machine has, or a metric twin of it
    "default_format_properties": {"font_name": FONT, "font_size": 10},
}
_ON_DISK = {**_OPTIONS, "in_memory": False}
"""For a workbook that grows with the number of jobs: its parts are temporary files."""

_ROW_BY_ROW = {**_ON_DISK, "constant_memory": True}
"""For such a workbook when it is written cell by cell: xlsxwriter keeps one row of cells in memory."""

_PAPERS = {"letter": 1, "A4": 9}
_INCH = 72.0
_POINTS = {"letter": (612.0, 792.0), "A4": (595.3, 841.9)}
_MARGINS = (28.8, 28.8, 28.8, 43.2)
"""Points of a sheet of paper, and of its margins: left, right, top, bottom."""

_SMALL_MARGINS = (25.2, 25.2, 28.8, 32.4)
"""The same of a sheet that is printed at full size."""

_A4_MARGINS = {True: (16.5, 16.5, 28.8, 32.4), False: (25.2, 25.2, 20.3, 23.8)}
"""The same on A4, upright or not: it is less wide than letter, and the same columns and rows fit it."""

_FOOT_MARGIN = {"letter": 0.3, "A4": 0.19}
"""Inches below the foot of a page."""

_DIGIT, _PADDING = 5.25, 3.75
"""Points of a unit of a column's width, and of what each column has beside them."""


@dataclass(frozen=True)
class Identity:
    """The document properties of a workbook. Every date in them comes from the bid date, never from the clock.

    A workbook that is sent to outsiders is ``bare``: it has neither the fingerprints of its inputs nor defined names.
    """

    title: str
    author: str
    created: float
    paper: str
    input_sha256: str = ""
    company_sha256: str = ""
    bare: bool = False


def job_workbook(job: JobValues) -> bytes:
    """The workbook of one job, its price sensitivity included. Same job, same bytes.

    :raises ValueError: for a job whose price sensitivity was not computed: the writer computes nothing.
    """
    if job.sensitivity is None:
        raise ValueError(f"job {job.job.id} has no price sensitivity yet: calc.model.sensitivity computes it")
    shape = job.shape, slots_for(job), str(job.of(Company.dates))
    pages = plan_of(*shape)
    behind = next(place for place, each in enumerate(pages, 1) if each.page.name == CHECKS)
    log = resolve(log_page(job.job), CellMap())
    sheets = [*pages[:behind], *papers_of(*shape), *pages[behind:], log]
    return workbook_bytes(sheets, job, identity_of(job, f"Bid {job.job.id}"))


def identity_of(job: JobValues, title: str) -> Identity:
    """The document properties that follow from a job and its company book."""
    return Identity(
        title,
        str(job.of(Company.name)),
        float(job.of(Job.bid_date)),
        str(job.of(Company.paper)),
        job.job.sha256,
        job.job.company.sha256 or NONE,
    )


def workbook_bytes(sheets: Sequence[SheetPlan], job: JobValues | None, identity: Identity) -> bytes:
    """The bytes of a workbook of these sheets; ``job`` is None for a workbook that belongs to no one job.

    Rows are rendered by this program where xlsxwriter supports that, and written cell by cell where it does not.

    :raises Unreadable: for a value that a cell cannot have.
    """
    streamed = job is None and not identity.bare
    if supports_rendered_rows():
        kind, options = (StreamSheet, _ON_DISK) if streamed else (TemplateSheet, _OPTIONS)
        data = _written(sheets, job, identity, options, kind)
        if data is not None:
            return data
    cells, options = (RowByRowSheet, _ROW_BY_ROW) if streamed else (CellSheet, _OPTIONS)
    data = _written(sheets, job, identity, options, cells)
    assert data is not None, "every cell was given to xlsxwriter"
    return data


def _written(
    sheets: Sequence[SheetPlan], job: JobValues | None, identity: Identity, options: dict[str, Any], kind: type[Sheet]
) -> bytes | None:
    """The bytes of a workbook whose sheets are of one kind; None when xlsxwriter did not take their rows."""
    buffer = BytesIO()
    with warnings.catch_warnings():
        warnings.simplefilter("error", UserWarning)  # xlsxwriter warns of what it leaves out; nothing may be left out
        book = xlsxwriter.Workbook(buffer, deepcopy(options))  # it writes into them: the next would differ
        formats = FormatCache(book)
        _set_properties(book, identity)
        made = [_write_sheet(book, formats, sheet, job, identity, kind) for sheet in sheets]
        book.close()
    return buffer.getvalue() if all([sheet.rows_were_written() for sheet in made]) else None


def _set_properties(book: Any, identity: Identity) -> None:
    created = datetime(1899, 12, 30) + timedelta(days=identity.created)
    book.set_properties({"title": identity.title, "author": identity.author, "created": created, "comments": SAFETY})
    if identity.bare:
        return
    book.set_custom_property("input_sha256", identity.input_sha256, "text")
    book.set_custom_property("house_sha256", identity.company_sha256, "text")
    book.set_custom_property("program_version", __version__, "text")


def _write_sheet(
    book: Any, formats: FormatCache, plan: SheetPlan, job: JobValues | None, identity: Identity, kind: type[Sheet]
) -> Sheet:
    page, paper = plan.page, identity.paper
    written = kind(book, page.name)
    extent, sheet = written.write_plan(plan, formats, job), written.worksheet
    for col, width in enumerate(page.widths[: extent.cols]):
        sheet.set_column(col, col, width)
    for cells, rule in validations_of(page):
        check_code(sheet.data_validation(*cells[0], *cells[0], {**rule, "other_cells": _spans(cells[1:])}), page.name)
    for chart in page.charts:
        check_code(draw(book, sheet, chart()), page.name)
    if isinstance(page, FullSizePage):
        _print_full_size(sheet, page, paper)
    else:
        height = sum(extent.heights.get(row, LINE_HEIGHT) for row in range(extent.rows))
        _set_up_printing(sheet, page, paper, 1 if page.one_page and _readable(page, paper, height, extent.cols) else 0)
    if not identity.bare:
        first, printed = (page.repeated_from, page.printed_cols) if isinstance(page, FullSizePage) else (0, 0)
        sheet.repeat_rows(first, first + (page.repeated_rows or page.frozen_rows) - 1)
        sheet.print_area(0, 0, extent.rows - 1, (printed or extent.cols) - 1)
    sheet.ignore_errors({"number_stored_as_text": f"A1:Z{extent.rows}"})
    return written


def _spans(cells: Sequence[tuple[int, int]]) -> list[list[int]]:
    """Cells as ranges: those that follow one another in a column or in a row together."""
    spans: list[list[int]] = []
    for row, col in cells:
        if spans and spans[-1][1] == spans[-1][3] == col and spans[-1][2] == row - 1:
            spans[-1][2] = row
        elif spans and spans[-1][0] == spans[-1][2] == row and spans[-1][3] == col - 1:
            spans[-1][3] = col
        else:
            spans.append([row, col, row, col])
    return spans


def _readable(page: Page, paper: str, height: float, cols: int) -> bool:
    """Whether all rows fit on one sheet of paper without becoming too small to read."""
    sides = _POINTS[paper] if page.portrait else _POINTS[paper][::-1]
    width = sum(digits * _DIGIT + _PADDING for digits in page.widths[:cols])
    left, right, top, bottom = _MARGINS
    return min((sides[0] - left - right) / width, (sides[1] - top - bottom) / height) >= page.least_scale


def _set_up_printing(sheet: Any, page: Page, paper: str, pages_tall: int) -> None:
    sheet.set_paper(_PAPERS[paper])
    if not page.portrait:
        sheet.set_landscape()
    left, right, top, bottom = (side / _INCH for side in _MARGINS)
    sheet.set_margins(left=left, right=right, top=top, bottom=bottom)
    sheet.fit_to_pages(1, pages_tall)
    sheet.freeze_panes(page.frozen_rows, page.frozen_cols)
    sheet.set_footer(f"&L&8{SAFETY}&R&8&F: &A, page &P of &N")
    sheet.hide_gridlines(2)


def _print_full_size(sheet: Any, page: FullSizePage, paper: str) -> None:
    """At 100 %, across the paper: the columns fit it, and nothing is made smaller."""
    sheet.set_paper(_PAPERS[paper])
    if not page.portrait:
        sheet.set_landscape()
    margins = _A4_MARGINS[page.portrait] if paper == "A4" else _SMALL_MARGINS
    left, right, top, bottom = (side / _INCH for side in margins)
    sheet.set_margins(left=left, right=right, top=top, bottom=bottom)
    sheet.set_print_scale(100)
    if page.breaks:
        sheet.set_h_pagebreaks(page.breaks)
    if page.details:
        sheet.outline_settings(symbols_below=False)
    sheet.freeze_panes(page.frozen_rows, page.frozen_cols)
    # a space after the size: the foot may begin with a digit, which would be read as part of it
    foot = f"&L&8 {SAFETY}&R&8 {page.label.replace('&', '&&') or '&F'}: &A, page &P of &N"
    sheet.set_footer(foot, {"margin": _FOOT_MARGIN[paper]})
    sheet.hide_gridlines(2)
