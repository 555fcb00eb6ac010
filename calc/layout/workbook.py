"""The layout of a job workbook: every sheet with every cell, and the text of every formula.

A layout depends on how many rows were typed, never on what is in them, so jobs of one shape share it.
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
from calc.layout.bid_sheet import bid_page, price_parts
from calc.layout.charts import Cells
from calc.layout.checks_sheet import ChecksPage
from calc.layout.costs_sheet import COST_WIDTHS, lay_costs
from calc.layout.drawings import lay_money, lay_plans
from calc.layout.factors_prices_sheets import factors_page, prices_page
from calc.layout.front_page import FrontPage
from calc.layout.line_sheets import WIDTHS, cell_value, lay_section, open_page
from calc.layout.measured_sheet import measured_page
from calc.layout.page import (
    AddressText,
    CellValue,
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
    "Takeoff": "Takeoff: areas, edges, concrete in place, joints and dowels",
    "Dig and haul": "Dig and haul: excavation, demolition and hauling",
    "Order and placing": "Order and placing: concrete order, placing method and materials",
    "Costs": "Costs: labor rates, rentals, costs and price",
}
"""The sheets of lines, in order, with their titles."""


SHAPES = 8
"""How many shapes of jobs are cached: each takes some thirty megabytes."""


Style = tuple[str, str]
"""The style of a cell: its role and its number format."""


class Cell(NamedTuple):
    """A cell ready to be written: row and column, style, its formula if it has one, and its value for a job."""

    row: int
    col: int
    role: str
    format: str
    formula: str
    value: Callable[[JobValues], CellValue]
    arithmetic: Callable[[JobValues], str] | None = None
    """For a typed cell: the arithmetic of what was typed, which is the job's own."""
    own_words: bool = False
    """Whether its text is the job's own, so that the row height is set when it is written."""
    fixed: bool = False
    """Whether it shows the same for every job."""

    def shows(self, job: JobValues | None) -> CellValue:
        """Its value for a job; the cells of the week's workbook need no job."""
        return self.value(cast("JobValues", job))

    @property
    def style(self) -> Style:
        """Its role and its number format."""
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
    """The sheets before the Log, in order, for every job of one shape."""
    places, pages, _ = _layout(shape, caution_slots)
    return tuple(resolve(page, places) for page in pages)


@lru_cache(maxsize=SHAPES)
def papers_of(shape: Shape, caution_slots: int) -> tuple[SheetPlan, ...]:
    """The papers, which follow the Log, in order, for every job of one shape."""
    places, _, papers = _layout(shape, caution_slots)
    return tuple(resolve(page, places) for page in papers)


@lru_cache(maxsize=SHAPES)
def addresses(shape: Shape, caution_slots: int) -> dict[tuple[str, int], tuple[str, str]]:
    """The sheet and the cell of every row (from 0) of every declaration, by its id, in workbooks of one shape."""
    places, _, _ = _layout(shape, caution_slots)
    return {
        (named.id, index): (location.block.sheet, places.one(named, index, location.block.sheet))
        for named, location in places.locations.items()
        if isinstance(named, Declared)
        for index in range(location.block.count)
    }


@lru_cache(maxsize=SHAPES)
def _layout(shape: Shape, caution_slots: int) -> tuple[CellMap, tuple[Page, ...], tuple[Page, ...]]:
    places = CellMap()
    measured = measured_page(places, shape)
    front: list[FrontPage] = []  # laid out last, and the chart on Costs is drawn from it
    lines = [_lines_page(name, places, shape, lambda: price_parts(front[0])) for name in LINE_SHEETS]
    factors, prices = factors_page(places), prices_page(places, shape)
    checks = ChecksPage(places)
    bid = bid_page(places, checks, caution_slots)
    front.append(bid)
    context = PaperContext(places, dict(shape), checks, caution_slots)
    papers = tuple(paper_page(paper, context) for paper in PAPERS)
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
    """Writes the text of every formula of a page, now that every cell has its address."""
    return SheetPlan(page, tuple(_resolved(put, page, places) for put in page.contents))


def _resolved(put: Content, page: Page, places: CellMap) -> Cell:
    match put:
        case FixedText():
            return _fixed(put, put.text)
        case Constant():
            return _fixed(put, put.value, put.format)
        case Number():
            return _fixed(put, float(put.value), "0")
        case JobText():
            return Cell(put.row, put.col, put.role, put.format, "", _job_value(put.value), own_words=put.wraps)
        case IssueValue():
            return Cell(put.row, put.col, put.role, put.format, "", put.value, own_words=put.wraps)
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
            text = f"={formula_text(put.line, put.index, places)}"
            page.fit(text, put.col, put.row)
            return _fixed(put, text)


def formula_text(line: Line, index: int, places: CellMap) -> str:
    """The formula of one row of a line, without its ``=``, as it is in its own cell."""
    if (line, index) not in places.texts:
        block = places.locations[line].block
        places.texts[line, index] = sheet_text(line.formula, RefFrom(places, block.sheet, block, index))
    return places.texts[line, index]


def _fixed(put: Content, value: CellValue, format_text: str = "") -> Cell:
    return Cell(put.row, put.col, put.role, format_text, "", lambda _job: value, fixed=True)


def _job_value(value: Callable[[JobInput], CellValue]) -> Callable[[JobValues], CellValue]:
    return lambda job: value(job.job)


def _value_of(named: Declared, index: int) -> Callable[[JobValues], CellValue]:
    return lambda job: cell_value(job.of(named, index))


def _typed(put: Typed) -> Cell:
    """A cell to edit: its value, kept as the arithmetic that was typed where there is one."""

    def arithmetic(job: JobValues) -> str:
        entry = entry_of(job, put.named, put.index)
        return entry.formula if entry else ""

    return Cell(put.row, put.col, put.role, put.format, "", _value_of(put.named, put.index), arithmetic, own_words=True)


def entry_of(job: JobValues, named: Declared, index: int) -> Entry | None:
    """What was typed for an input or an override; factors and prices are plain numbers."""
    if isinstance(named, Override):
        return job.job.overrides.get((named, index))
    if not isinstance(named, Input):
        return None
    if named.level == JOB:
        return job.job.entries[named]
    return job.job.rows[named.level][index].entries[named]
