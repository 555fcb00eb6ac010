"""The plan of a job workbook: every sheet with every cell, and the text of every formula.

A plan depends on how many rows were typed, never on what is in them, so jobs of one shape share it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple, cast

from calc.declared import Declared, Input, Line, Override
from calc.formula.levels import JOB
from calc.formula.sheet_text import sheet_text
from calc.intake.records import Entry, JobInput
from calc.layout.addresses import CellMap, RefFrom
from calc.layout.bid_sheet import FrontPage, bid_page, made_of
from calc.layout.charts import Cells
from calc.layout.checks_sheet import ChecksPage
from calc.layout.costs_sheet import COST_WIDTHS, lay_costs
from calc.layout.drawings import lay_money, lay_plans
from calc.layout.factors_prices_sheets import factors_page, prices_page
from calc.layout.line_sheets import WIDTHS, lay_section, open_page, shown
from calc.layout.measured_sheet import measured_page
from calc.layout.page import (
    AddressText,
    Computed,
    Constant,
    Content,
    FixedText,
    FormulaText,
    IssueValue,
    JobText,
    Linked,
    Number,
    Page,
    Shown,
    Typed,
)
from calc.layout.paper_cells import PaperContext
from calc.layout.paper_sheet import paper_page
from calc.model.results import JobValues, Shape
from calc.trade.catalog import SECTIONS
from calc.trade.money.costs import CostTable
from calc.trade.papers.catalog import PAPERS
from calc.trade.takeoff.drawing import OutlinePoint

LINE_SHEETS = {
    "Takeoff": "Takeoff: areas and what lies in place",
    "Dig and haul": "Dig and haul: what is dug, cut and broken out, and how it leaves",
    "Order and placing": "Order and placing: what is ordered, how it comes, and what goes with it",
    "Costs": "Costs: what an hour costs, and what the job costs",
}
"""The sheets of lines, in order, with their titles."""


SHAPES = 8
"""So many shapes of jobs are kept: each takes some thirty megabytes."""


Style = tuple[str, str]
"""What decides how a cell looks: its role and its number format."""


class Cell(NamedTuple):
    """A cell ready to be written: where, how it looks, its formula if it has one, and what it shows for a job."""

    row: int
    col: int
    role: str
    format: str
    formula: str
    value: Callable[[JobValues], Shown]
    arithmetic: Callable[[JobValues], str] | None = None
    """For a typed cell: the arithmetic of what was typed, which is the job's own."""
    own_words: bool = False
    """Whether its words are the job's own, so that the row must be made high enough for them when it is written."""
    fixed: bool = False
    """Whether it shows the same for every job."""

    def shows(self, job: JobValues | None) -> Shown:
        """What it shows for a job; the cells of a sheet that is of no one job ask none."""
        return self.value(cast("JobValues", job))

    @property
    def look(self) -> Style:
        """What decides how it looks."""
        return self.role, self.format

    def formula_for(self, job: JobValues | None) -> str:
        """Its formula, without its ``=``; that of a typed cell is the arithmetic that was typed."""
        return self.formula or (self.arithmetic(job) if self.arithmetic is not None and job is not None else "")


@dataclass(frozen=True, eq=False)
class SheetPlan:
    """A sheet ready to be written."""

    page: Page
    cells: Iterable[Cell]
    """May be gone through more than once."""


@lru_cache(maxsize=SHAPES)
def plan_of(shape: Shape, caution_slots: int) -> tuple[SheetPlan, ...]:
    """The sheets of every job of one shape that stand before the Log, in order."""
    places, pages, _ = _laid_out(shape, caution_slots)
    return tuple(resolve(page, places) for page in pages)


@lru_cache(maxsize=SHAPES)
def papers_of(shape: Shape, caution_slots: int) -> tuple[SheetPlan, ...]:
    """The papers of every job of one shape, which stand behind the Log, in order."""
    places, _, papers = _laid_out(shape, caution_slots)
    return tuple(resolve(page, places) for page in papers)


@lru_cache(maxsize=SHAPES)
def addresses(shape: Shape, caution_slots: int) -> dict[tuple[str, int], tuple[str, str]]:
    """The sheet and the cell of every row (from 0) of every declaration, by its id, in workbooks of one shape."""
    places, _, _ = _laid_out(shape, caution_slots)
    return {
        (named.id, index): (spot.block.sheet, places.one(named, index, spot.block.sheet))
        for named, spot in places.locations.items()
        if isinstance(named, Declared)
        for index in range(spot.block.count)
    }


@lru_cache(maxsize=SHAPES)
def _laid_out(shape: Shape, caution_slots: int) -> tuple[CellMap, tuple[Page, ...], tuple[Page, ...]]:
    places = CellMap()
    measured = measured_page(places, shape)
    front: list[FrontPage] = []  # it is laid last, and the picture on Costs is drawn from it
    lines = [_lines_page(name, places, shape, lambda: made_of(front[0])) for name in LINE_SHEETS]
    factors, prices = factors_page(places), prices_page(places, shape)
    checks = ChecksPage(places)
    bid = bid_page(places, checks, caution_slots)
    front.append(bid)
    desk = PaperContext(places, dict(shape), checks, caution_slots)
    papers = tuple(paper_page(paper, desk) for paper in PAPERS)
    return places, (bid, measured, *lines, factors, prices, checks.page), papers


def _lines_page(name: str, places: CellMap, shape: Shape, parts: Callable[[], tuple[Cells, Cells]]) -> Page:
    page = open_page(name, LINE_SHEETS[name], COST_WIDTHS if name == CostTable.sheet else WIDTHS)
    if name == OutlinePoint.sheet:
        lay_plans(page, places, shape)
    if name == CostTable.sheet:
        lay_money(page, parts)
    for section in SECTIONS:
        if section.sheet == name and section is CostTable:
            lay_costs(page, places)
        elif section.sheet == name:
            lay_section(page, places, section, shape)
    return page


def resolve(page: Page, places: CellMap) -> SheetPlan:
    """Writes the text of every formula of a page, now that every place is known."""
    return SheetPlan(page, tuple(_resolved(put, page, places) for put in page.puts))


def _resolved(put: Content, page: Page, places: CellMap) -> Cell:
    match put:
        case FixedText():
            return _fixed(put, put.text)
        case Constant():
            return _fixed(put, put.value, put.format)
        case Number():
            return _fixed(put, float(put.value), "0")
        case JobText():
            return Cell(put.row, put.col, put.role, put.format, "", _saying(put.say), own_words=put.wraps)
        case IssueValue():
            return Cell(put.row, put.col, put.role, put.format, "", put.say, own_words=put.wraps)
        case Linked():
            return Cell(put.row, put.col, put.role, put.format, put.text(), put.value, own_words=put.wraps)
        case AddressText():
            return _fixed(put, places.one(put.named, put.index, page.name))
        case Typed():
            return _typed(put)
        case Computed():
            text = formula_text(put.line, put.index, places)
            return Cell(put.row, put.col, put.role, put.format, text, _value_of(put.line, put.index))
        case FormulaText():
            text = f"={formula_text(put.line, put.index, places)}" if _has_rows(put.line, places) else "no rows"
            page.room(text, put.col, put.row)
            return _fixed(put, text)


def _has_rows(line: Line, places: CellMap) -> bool:
    return places.locations[line].block.count > 0


def formula_text(line: Line, index: int, places: CellMap) -> str:
    """The formula of one row of a line, without its ``=``, as it stands in its own cell."""
    if (line, index) not in places.texts:
        block = places.locations[line].block
        places.texts[line, index] = sheet_text(line.formula, RefFrom(places, block.sheet, block, index))
    return places.texts[line, index]


def _fixed(put: Content, value: Shown, format_text: str = "") -> Cell:
    return Cell(put.row, put.col, put.role, format_text, "", lambda _job: value, fixed=True)


def _saying(say: Callable[[JobInput], Shown]) -> Callable[[JobValues], Shown]:
    return lambda job: say(job.job)


def _value_of(named: Declared, index: int) -> Callable[[JobValues], Shown]:
    return lambda job: shown(job.of(named, index))


def _typed(put: Typed) -> Cell:
    """A cell to edit: its value, kept as the arithmetic that was typed where there is one."""

    def arithmetic(job: JobValues) -> str:
        entry = entry_of(job, put.named, put.index)
        return entry.formula if entry else ""

    return Cell(put.row, put.col, put.role, put.format, "", _value_of(put.named, put.index), arithmetic, own_words=True)


def entry_of(job: JobValues, named: Declared, index: int) -> Entry | None:
    """What was typed for a given or a forced line; factors and prices stand as plain numbers."""
    if isinstance(named, Override):
        return job.job.overrides.get((named, index))
    if not isinstance(named, Input):
        return None
    if named.level == JOB:
        return job.job.entries[named]
    return job.job.rows[named.level][index].entries[named]
