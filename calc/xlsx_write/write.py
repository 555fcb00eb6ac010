"""The one door to xlsxwriter: a plan and a job's values become the bytes of a workbook."""

from __future__ import annotations

import warnings
from collections.abc import Sequence
from copy import deepcopy
from dataclasses import dataclass
from datetime import datetime, timedelta
from io import BytesIO
from typing import Any

import xlsxwriter

from calc import __version__
from calc.formula.functions import NONE
from calc.layout.addresses import CellMap
from calc.layout.bid_sheet import slots_for
from calc.layout.charts import draw
from calc.layout.line_sheets import SAFETY
from calc.layout.log_sheet import log_page
from calc.layout.page import Page
from calc.layout.styles import FONT, LINE_HEIGHT
from calc.layout.workbook import SheetPlan, papers_of, plan_of, resolve
from calc.model.results import JobValues
from calc.model.sensitivity import with_sensitivity
from calc.trade.inputs.job import Company, Job
from calc.xlsx_write.worksheets import (
    CellSheet,
    FormatCache,
    Sheet,
    StreamSheet,
    TemplateSheet,
    UnsupportedWriter,
    done,
)

_OPTIONS = {
    "in_memory": True,
    "strings_to_formulas": False,
    "strings_to_urls": False,
    "strings_to_numbers": False,
    # the width of a column counts digits of the book's own font: one that every machine has, or has a twin of
    "default_format_properties": {"font_name": FONT, "font_size": 10},
}
_ON_DISK = {**_OPTIONS, "in_memory": False}
_CELL_BY_CELL = {**_ON_DISK, "constant_memory": True}
"""For a workbook that grows with the jobs: its parts are temporary files. Where its cells are taken one by one, no more
than a row of them is kept."""

_PAPERS = {"letter": 1, "A4": 9}
_INCH = 72.0
_POINTS = {"letter": (612.0, 792.0), "A4": (595.3, 841.9)}
_MARGINS = (28.8, 28.8, 36.0, 43.2)
"""Points of a sheet of paper, and of its margins: left, right, top, bottom."""

_DIGIT, _PADDING = 5.25, 3.75
"""Points of a unit of a column's width, and of what each column has beside them."""


@dataclass(frozen=True)
class Identity:
    """The properties of a workbook: every date in it comes from the bid date, never from the clock.

    One that leaves the company is ``bare``: it does not show who made it or from what, and no cell has a name.
    """

    title: str
    author: str
    created: float
    paper: str
    input_sha256: str = ""
    company_sha256: str = ""
    bare: bool = False


def job_workbook(job: JobValues) -> bytes:
    """The workbook of one job. Same job, same bytes."""
    job = with_sensitivity(job)
    shape = job.shape, slots_for(job)
    sheets = [*plan_of(*shape), resolve(log_page(job.job), CellMap()), *papers_of(*shape)]
    return written(sheets, job, identity_of(job, f"Bid {job.job.id}"))


def identity_of(job: JobValues, title: str) -> Identity:
    """The identity from a job and its company."""
    return Identity(
        title,
        str(job.of(Company.name)),
        float(job.of(Job.bid_date)),
        str(job.of(Company.paper)),
        job.job.sha256,
        job.job.company.sha256 or NONE,
    )


def written(sheets: Sequence[SheetPlan], job: JobValues | None, identity: Identity) -> bytes:
    """The bytes of a workbook of these sheets; a workbook of the week is of no one job.

    :raises Unreadable: for a value that no cell can hold.
    """
    grows = job is None and not identity.bare
    kind, plain = (StreamSheet, _CELL_BY_CELL) if grows else (TemplateSheet, _OPTIONS)
    try:
        return _made(sheets, job, identity, _ON_DISK if grows else _OPTIONS, kind)
    except UnsupportedWriter:
        return _made(sheets, job, identity, plain, CellSheet)


def _made(
    sheets: Sequence[SheetPlan], job: JobValues | None, identity: Identity, options: dict[str, Any], kind: type[Sheet]
) -> bytes:
    buffer = BytesIO()
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        book = xlsxwriter.Workbook(buffer, deepcopy(options))  # it writes into them: the next would differ
        formats = FormatCache(book)
        _identify(book, identity)
        made = [_write_sheet(book, formats, sheet, job, identity, kind) for sheet in sheets]
        book.close()
    if not all([sheet.finish() for sheet in made]):
        raise UnsupportedWriter
    return buffer.getvalue()


def _identify(book: Any, identity: Identity) -> None:
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
    sheet: Sheet = book.add_worksheet(page.name, kind)
    extent = sheet.take(plan, formats, job)
    for col, width in enumerate(page.widths[: extent.cols]):
        sheet.set_column(col, col, width)
    for row, col, words in page.choices:
        done(sheet.data_validation(row, col, row, col, {"validate": "list", "source": list(words)}), page.name)
    for chart in page.charts:
        done(draw(book, sheet, chart()), page.name)
    tall = sum(extent.heights.get(row, LINE_HEIGHT) for row in range(extent.rows))
    _print_well(sheet, page, paper, 1 if page.one_page and _readable(page, paper, tall, extent.cols) else 0)
    if not identity.bare:
        sheet.repeat_rows(0, (page.repeated_rows or page.frozen_rows) - 1)
        sheet.print_area(0, 0, extent.rows - 1, extent.cols - 1)
    sheet.ignore_errors({"number_stored_as_text": f"A1:Z{extent.rows}"})
    return sheet


def _readable(page: Page, paper: str, tall: float, cols: int) -> bool:
    """Whether one sheet of paper shows all rows without making them too small to read."""
    sides = _POINTS[paper] if page.portrait else _POINTS[paper][::-1]
    wide = sum(width * _DIGIT + _PADDING for width in page.widths[:cols])
    left, right, top, bottom = _MARGINS
    return min((sides[0] - left - right) / wide, (sides[1] - top - bottom) / tall) >= page.least_scale


def _print_well(sheet: Any, page: Page, paper: str, pages_tall: int) -> None:
    sheet.set_paper(_PAPERS[paper])
    if not page.portrait:
        sheet.set_landscape()
    left, right, top, bottom = (side / _INCH for side in _MARGINS)
    sheet.set_margins(left=left, right=right, top=top, bottom=bottom)
    sheet.fit_to_pages(1, pages_tall)
    sheet.freeze_panes(page.frozen_rows, page.frozen_cols)
    sheet.set_footer(f"&L&8{SAFETY}&R&8&F: &A, page &P of &N")
    sheet.hide_gridlines(2)
