"""The Proposal as a workbook of its own, values only, to send to the client.

It is laid out again from the texts and numbers on the sheet, so that nothing else of the workbook is in it: no formula,
no text of another sheet, no defined name, no author and no source file in its properties.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from datetime import datetime
from pathlib import Path

from calc.audit.written_workbook import WrittenWorkbook, read_written
from calc.cells import Cell, Kind, Sheet, column_letters
from calc.declared import Declared, paper
from calc.formula.levels import Level
from calc.layout.addresses import CellMap
from calc.layout.caution_table import CautionTable
from calc.layout.checks_sheet import ChecksPage
from calc.layout.page import CellValue, Linked, Page
from calc.layout.paper_cells import PaperContext
from calc.layout.paper_sheet import NOT_READY, paper_page
from calc.layout.proof import UNPLACED
from calc.layout.sheets import SHEETS_OF_LINES
from calc.layout.week_dates import COMPANY_DATE, STYLES
from calc.layout.workbook import Cell as Planned
from calc.layout.workbook import SheetPlan
from calc.model.results import JobValues
from calc.trade.inputs.job import Company, Job
from calc.trade.levels import WORDING
from calc.trade.papers.proposal import PROPOSAL
from calc.xlsx_read.read import read_book
from calc.xlsx_write.write import Identity, workbook_bytes

NAME = PROPOSAL.title
_REFERENCE = re.compile(
    r"=(?:IF\([^,]+,\"NOT READY\",)?\$?'?(?P<sheet>[^'!.\[\]\"]+)'?!\$?(?P<column>[A-Z]{1,3})\$?(?P<row>\d+)\)?$"
)
"""A formula that brings one cell, the price among them, which stands behind whether the bid is ready."""
_RECALCULATE = "Open the workbook in a spreadsheet program, save it, and run again"
_OF_THE_COMPANY: tuple[Declared, ...] = (Company.paper, Company.dates, Job.bid_date)
"""What the page is set up by."""
_FIRST_DAY = datetime(1899, 12, 30)
"""Day 0 of spreadsheet date numbers."""


def proposal_workbook(path: Path) -> bytes:
    """The bytes of a workbook with only the Proposal of the job workbook at ``path``.

    :raises Unreadable: with one plain line for a file that the program did not write, for formulas that were edited or
        not recalculated, and for a Proposal that is not ready.
    """
    job = read_written(path)
    sheets = read_book(path, (NAME, "Measured", "Prices", *SHEETS_OF_LINES)).sheets
    if NAME not in sheets:
        raise job.refused(f"it has no sheet {NAME}. Write it again with flatwork bid")
    cells = dict(_by_place(sheets[NAME]))
    page = _layout(job)
    _check_ready(job, cells)
    _check_formulas(job, sheets, cells, page)
    typed = {each.named: _value(each.cell) for each in job.inputs() if each.named in _OF_THE_COMPANY}
    _check_added(job, cells, page)
    plan = SheetPlan(page, tuple(_values(page, cells, STYLES[str(typed[Company.dates])].full)))
    return workbook_bytes([plan], None, _identity(typed))


def _layout(job: WrittenWorkbook) -> Page:
    counts: dict[Level, int] = {**job.counts, WORDING: len(job.names(WORDING))}
    checks = ChecksPage(CellMap(), UNPLACED, CautionTable(None), 0, str)
    return paper_page(PROPOSAL, PaperContext(CellMap(), _with_named(counts), checks, 0))


def _with_named(counts: Mapping[Level, int]) -> dict[Level, int]:
    """The number of rows of the levels that the Proposal shows: typed rows, and rows with fixed names."""
    levels = [part.level for part in PROPOSAL.parts if isinstance(part, paper.Table)]
    return {level: len(level.axis.places(counts)) for level in levels} | dict(counts)


def _by_place(sheet: Sheet) -> Iterator[tuple[tuple[int, int], Cell]]:
    return (((row - 1, col - 1), cell) for row, cells in sheet.rows for col, cell in cells.items())


def _check_formulas(
    job: WrittenWorkbook, sheets: Mapping[str, Sheet], cells: Mapping[tuple[int, int], Cell], page: Page
) -> None:
    """Refuses a number that is typed over its formula, or differs from the cell that the formula refers to."""
    for put in page.contents:
        if not isinstance(put, Linked):
            continue
        ref, cell = f"{NAME}!{column_letters(put.col + 1)}{put.row + 1}", cells.get((put.row, put.col))
        if cell is None and put.optional:
            continue
        if cell is None or (not cell.formula and cell.kind is not Kind.TEXT):
            raise job.refused(
                f"{ref} was typed over. Change the input on Measured or override the line there, and recalculate"
            )
        if cell.kind is Kind.ERROR or (cell.kind is Kind.UNCOMPUTED and not put.optional):
            raise job.refused(f"{ref} has a formula that was not calculated. {_RECALCULATE}")
        source = _source(sheets, cell)
        if source is not None and source.value != cell.value:
            raise job.refused(f"{ref} differs from {source.sheet}!{source.ref}. {_RECALCULATE}")


def _check_added(job: WrittenWorkbook, cells: Mapping[tuple[int, int], Cell], page: Page) -> None:
    """Refuses a formula that somebody added and no program calculated: the client would see a blank there."""
    in_layout = {(put.row, put.col) for put in page.contents}
    for (row, col), cell in cells.items():
        if (row, col) not in in_layout and cell.kind in (Kind.UNCOMPUTED, Kind.ERROR):
            raise job.refused(
                f"{NAME}!{column_letters(col + 1)}{row + 1} has a formula that was added, and no value. {_RECALCULATE}"
            )


def _source(sheets: Mapping[str, Sheet], cell: Cell) -> Cell | None:
    """The cell that a formula refers to, when the formula is a single reference."""
    found = _REFERENCE.match(cell.formula)
    if found is None or found["sheet"] not in sheets:
        return None
    rows = dict(sheets[found["sheet"]].rows)
    return next(
        (each for each in rows.get(int(found["row"]), {}).values() if column_letters(each.column) == found["column"]),
        None,
    )


def _check_ready(job: WrittenWorkbook, cells: Mapping[tuple[int, int], Cell]) -> None:
    if NOT_READY in {cell.value for cell in cells.values()}:
        raise job.refused(
            f"its {NAME} is marked NOT READY. The sheet Bid says why: a stop that is open, a cost without a price, or "
            "a check that fails"
        )


def _values(page: Page, cells: Mapping[tuple[int, int], Cell], date_format: str) -> Iterator[Planned]:
    """Every cell of the layout with its current value, then cells that were added by hand."""
    for put in page.contents:
        cell = cells.get((put.row, put.col))
        number_format = getattr(put, "format", "").replace(COMPANY_DATE, date_format)
        yield Planned(
            put.row,
            put.col,
            put.role,
            number_format,
            "",
            _constant(_value(cell)),
            own_words=getattr(put, "wraps", False),
        )
    in_layout = {(put.row, put.col) for put in page.contents}
    for (row, col), cell in cells.items():
        if (row, col) not in in_layout and col < len(page.widths):
            yield Planned(row, col, "paperline", "", "", _constant(_value(cell)))


def _value(cell: Cell | None) -> CellValue:
    if cell is None or cell.kind is Kind.UNCOMPUTED:
        return ""
    if isinstance(cell.value, datetime):
        return float((cell.value - _FIRST_DAY).days)
    return cell.value if isinstance(cell.value, str) else float(cell.value or 0)


def _constant(value: CellValue) -> Callable[[JobValues], CellValue]:
    return lambda _job: value


def _identity(typed: Mapping[Declared, CellValue]) -> Identity:
    """The title, the paper size and the bid date, without author and source file."""
    day = typed[Job.bid_date]
    assert isinstance(day, float)
    return Identity(NAME, "", day, str(typed[Company.paper]), bare=True)
