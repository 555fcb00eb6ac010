"""The Proposal alone, values only: what may leave the house.

It is laid out anew from the words and numbers that stand on the sheet, so that nothing else of the workbook goes with
it: no formula, no other sheet's words, no name, no property that says who made it or out of what.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from datetime import datetime
from pathlib import Path

from calc.audit.written_workbook import Written, read_written
from calc.cells import Cell, Kind, Sheet, column_letters
from calc.declared import paper
from calc.formula.levels import Level
from calc.layout.addresses import CellMap
from calc.layout.checks_sheet import ChecksPage
from calc.layout.page import CellValue, Linked, Page
from calc.layout.paper_cells import PaperContext
from calc.layout.paper_sheet import NOT_COMPLETE, NOT_READY, paper_page
from calc.layout.workbook import LINE_SHEETS, SheetPlan
from calc.layout.workbook import Cell as Planned
from calc.model.results import JobValues
from calc.trade.inputs.job import Company, Job
from calc.trade.levels import WORDING
from calc.trade.papers.proposal import PROPOSAL
from calc.xlsx_read.read import read_book
from calc.xlsx_write.write import Identity, workbook_bytes

NAME = PROPOSAL.title
_REFERENCE = re.compile(r"=\$?'?(?P<sheet>[^'!.\[\]]+)'?!\$?(?P<column>[A-Z]{1,3})\$?(?P<row>\d+)$")
_RECALCULATE = "Open the workbook in a spreadsheet program, save it, and hand it out again"
_FIRST_DAY = datetime(1899, 12, 30)
"""The day from which spreadsheet programs count."""


def proposal_workbook(path: Path) -> bytes:
    """The bytes of a workbook that has nothing but the Proposal of the job workbook at ``path``.

    :raises Unreadable: with one plain line for a file that the program did not write, for one whose formulas were
        edited and not recalculated, and for a Proposal that is not ready.
    """
    job = read_written(path)
    sheets = read_book(path, (NAME, "Measured", "Prices", *LINE_SHEETS)).sheets
    if NAME not in sheets:
        raise job.refused(f"it has no sheet {NAME}. Write it again with flatwork bid")
    cells = dict(_by_place(sheets[NAME]))
    page = _laid_out(job)
    _follows(job, sheets, cells, page)
    _is_ready(job, cells)
    plan = SheetPlan(page, tuple(_values(page, cells)))
    return workbook_bytes([plan], None, _identity(job))


def _laid_out(job: Written) -> Page:
    counts: dict[Level, int] = {**job.counts, WORDING: len(job.names(WORDING))}
    return paper_page(PROPOSAL, PaperContext(CellMap(), _with_named(counts), ChecksPage(CellMap()), 0))


def _with_named(counts: Mapping[Level, int]) -> dict[Level, int]:
    """The counts of the levels that the Proposal shows: those that are typed, and those with names of their own."""
    levels = [part.level for part in PROPOSAL.parts if isinstance(part, paper.Table)]
    return {level: len(level.axis.words) for level in levels} | dict(counts)


def _by_place(sheet: Sheet) -> Iterator[tuple[tuple[int, int], Cell]]:
    return (((row - 1, col - 1), cell) for row, cells in sheet.rows for col, cell in cells.items())


def _follows(job: Written, sheets: Mapping[str, Sheet], cells: Mapping[tuple[int, int], Cell], page: Page) -> None:
    """Every number is still brought by its formula, and is what stands where the formula points."""
    for put in page.contents:
        if not isinstance(put, Linked):
            continue
        ref, cell = f"{NAME}!{column_letters(put.col + 1)}{put.row + 1}", cells.get((put.row, put.col))
        if cell is None or (not cell.formula and cell.kind is not Kind.TEXT):
            raise job.refused(f"{ref} was typed over. Type on Measured, or force the line there, and recalculate")
        if cell.kind in (Kind.UNCOMPUTED, Kind.ERROR):
            raise job.refused(f"{ref} holds a formula that nobody computed. {_RECALCULATE}")
        source = _source(sheets, cell)
        if source is not None and source.value != cell.value:
            raise job.refused(f"{ref} is not what stands on {source.sheet}!{source.ref}. {_RECALCULATE}")


def _source(sheets: Mapping[str, Sheet], cell: Cell) -> Cell | None:
    """The cell that a formula brings, where it brings one and no more."""
    found = _REFERENCE.match(cell.formula)
    if found is None or found["sheet"] not in sheets:
        return None
    rows = dict(sheets[found["sheet"]].rows)
    return next(
        (each for each in rows.get(int(found["row"]), {}).values() if column_letters(each.column) == found["column"]),
        None,
    )


def _is_ready(job: Written, cells: Mapping[tuple[int, int], Cell]) -> None:
    said = {cell.value for cell in cells.values()}
    for reason, do in ((NOT_READY, "Accept them by name, or mend the job"), (NOT_COMPLETE, "Fill the house book")):
        if reason in said:
            raise job.refused(f"its {NAME} says {reason}. {do}")


def _values(page: Page, cells: Mapping[tuple[int, int], Cell]) -> Iterator[Planned]:
    """Every cell of the layout with what stands there now, and then what was typed beside it."""
    for put in page.contents:
        cell = cells.get((put.row, put.col))
        face = getattr(put, "format", "")
        yield Planned(
            put.row, put.col, put.role, face, "", _always(_value(cell)), own_words=getattr(put, "wraps", False)
        )
    laid = {(put.row, put.col) for put in page.contents}
    for (row, col), cell in cells.items():
        if (row, col) not in laid and col < len(page.widths):
            yield Planned(row, col, "line", "", "", _always(_value(cell)))


def _value(cell: Cell | None) -> CellValue:
    if cell is None:
        return ""
    if isinstance(cell.value, datetime):
        return float((cell.value - _FIRST_DAY).days)
    return cell.value if isinstance(cell.value, str) else float(cell.value or 0)


def _always(value: CellValue) -> Callable[[JobValues], CellValue]:
    return lambda _job: value


def _identity(job: Written) -> Identity:
    """Its title, its paper and the day of the bid; no author, no file that it came from."""
    holds = {each.named: each.cell for each in job.inputs() if each.named in (Company.paper, Job.bid_date)}
    day, size = _value(holds[Job.bid_date]), _value(holds[Company.paper])
    assert isinstance(day, float)
    return Identity(NAME, "", day, str(size), bare=True)
