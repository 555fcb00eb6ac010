"""The layout of a job workbook: every sheet with every cell, and the text of every formula.

A layout depends on how many rows were typed, never on what is in them, so jobs of one shape share it.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from typing import NamedTuple, cast

from calc.cells import column_letters
from calc.declared import Declared, Input, Line, Override
from calc.declared.story import StorySheet
from calc.formula.levels import JOB, Axis, Level, level_of
from calc.formula.sheet_text import sheet_text
from calc.intake.records import Entry, JobInput
from calc.layout.addresses import CellMap, RefFrom
from calc.layout.bid_cautions import SLOTS
from calc.layout.bid_sheet import bid_page
from calc.layout.caution_table import CautionTable
from calc.layout.checks_sheet import ChecksPage
from calc.layout.factors_sheet import ABOUT as ABOUT_FACTORS
from calc.layout.factors_sheet import NAME as FACTORS_SHEET
from calc.layout.factors_sheet import lay_factors
from calc.layout.grid import A4_ROOM
from calc.layout.grid import FACTORS as FACTORS_GRID
from calc.layout.grid import PRICES as PRICES_GRID
from calc.layout.grid import STORY as STORY_GRID
from calc.layout.grid import WORKINGS as WORKINGS_GRID
from calc.layout.issued import lay_changed, lay_issued
from calc.layout.measured_sheet import ABOUT as ABOUT_MEASURED
from calc.layout.measured_sheet import NAME as MEASURED_SHEET
from calc.layout.measured_sheet import lay_measured
from calc.layout.measured_tables import TypedPlaces
from calc.layout.page import (
    AddressText,
    CellValue,
    Computed,
    Constant,
    Content,
    FixedText,
    FormulaText,
    FullSizePage,
    Issued,
    IssueValue,
    JobText,
    Jump,
    Linked,
    Number,
    Page,
    Typed,
)
from calc.layout.paper_cells import PaperContext
from calc.layout.paper_sheet import estimates, paper_page
from calc.layout.prices_sheet import ABOUT as ABOUT_PRICES
from calc.layout.prices_sheet import PRICES as PRICES_SHEET
from calc.layout.prices_sheet import lay_prices
from calc.layout.proof import lay_proof
from calc.layout.sheet_layout import Draft, SheetLayout
from calc.layout.sheets import SHORT_NAMES, WORKINGS, open_sheet, paged
from calc.layout.shown import cell_value
from calc.layout.story_places import lines_left_out, upright_lines, workings_of
from calc.layout.story_sheet import has_rows, lay_story
from calc.layout.text_width import wrapped_code
from calc.layout.week_dates import COMPANY_DATE, STYLES, WORDS
from calc.layout.workings_sheet import Group, lay_workings
from calc.model.results import JobValues, Shape
from calc.trade.catalog import SECTIONS
from calc.trade.papers.catalog import PAPERS
from calc.trade.story.catalog import STORY
from calc.units.algebra import DATE

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
def plan_of(shape: Shape, caution_slots: int, dates: str = WORDS) -> tuple[SheetPlan, ...]:
    """The sheets before the Log, in order, for every job of one shape; ``dates`` is how the company writes them."""
    places, pages, _ = _layout(shape, caution_slots)
    return tuple(resolve(page, places, dates) for page in pages)


@lru_cache(maxsize=SHAPES)
def papers_of(shape: Shape, caution_slots: int, dates: str = WORDS) -> tuple[SheetPlan, ...]:
    """The papers, which follow the Checks, in order, for every job of one shape."""
    places, _, papers = _layout(shape, caution_slots)
    return tuple(resolve(page, places, dates) for page in papers)


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
def _layout(shape: Shape, caution_slots: int) -> Laid:
    """Laid out by the usual draft; twice where the job needs a number of rows that the usual draft leaves out."""
    laid = _laid(shape, caution_slots, _usual_draft())
    try:
        _write_formulas(laid)
    except LookupError:
        laid = _laid(shape, caution_slots, _found_out(_laid(shape, caution_slots, Draft())))
    return laid


_FEW, _MORE = 3, 9
"""The rows of the usual draft: those that are typed, and those that follow from values."""


@cache
def _usual_draft() -> Draft:
    """What is found out once for every job: how long formulas are, and which numbers of rows they refer to.

    It is that of a job with some rows of everything, so that a job is laid out alike whatever jobs were before it.
    """
    levels = {member.level for section in SECTIONS for member in section.members}
    every = levels | {level_of(axis) for level in levels for axis in level.axes}
    return _found_out(_laid(tuple((level, _usual_rows(level)) for level in sorted(every, key=str)), SLOTS, Draft()))


def _usual_rows(level: Level) -> int:
    """How many rows a level has in the usual draft."""
    rows = 1
    for leaf in level.leaves:
        axis: Axis | None = leaf
        while axis is not None:
            rows *= len(axis.words) or (_MORE if axis.slots else _FEW)
            axis = axis.within
    return rows


class Laid(NamedTuple):
    """The addresses of all cells, the sheets before the papers, the papers, the workings and what follows them."""

    places: CellMap
    pages: tuple[Page, ...]
    papers: tuple[Page, ...]


def _laid(shape: Shape, caution_slots: int, draft: Draft) -> Laid:
    counts = dict(shape)
    places = CellMap(counts=counts)
    measured = measured_page(places, shape)[0]
    workings = workings_of(counts)
    places.left_out |= lines_left_out(counts)
    story = [_story_page(sheet, places, shape, draft) for sheet in STORY]
    steps = [_workings_sheet(name, about, workings[name], places, shape, draft) for name, about in WORKINGS.items()]
    factors, prices = _factors_page(places, draft), prices_page(places, shape)
    told = [(sheet.short, page) for sheet, page in zip(STORY, story, strict=True)]
    front: list[Page] = []
    proof = lay_proof(steps[-1], (measured, factors, prices), told, lambda: front[0])
    papers: list[Page] = []
    checks = ChecksPage(places, proof, CautionTable(steps[-1]), caution_slots, lambda: estimates(papers))
    bid = bid_page(places, checks)
    front.append(bid)
    context = PaperContext(places, counts, checks, caution_slots)
    papers += [paper_page(paper, context) for paper in PAPERS]
    return Laid(places, (bid, measured, *story, checks.page, *map(paged, steps), factors, prices), tuple(papers))


def _write_formulas(laid: Laid) -> None:
    """Writes the formula of every line. Raises LookupError for a number of rows that is not there."""
    for page in laid.pages:
        for put in page.contents:
            if isinstance(put, Computed) and put.line.held(put.index, laid.places.counts) is None:
                formula_text(put.line, put.index, laid.places)


def _found_out(draft: Laid) -> Draft:
    """What the pages of a draft tell about their formulas."""
    texts: dict[Line, str] = {}
    _write_formulas(draft)
    for page in (*draft.pages, *draft.papers):
        for put in page.contents:
            if isinstance(put, Linked):
                put.text()
            elif isinstance(put, FormulaText):
                texts[put.line] = shown_text(put.line, put.index, draft.places)
    return Draft(texts, frozenset(draft.places.keys_used))


def measured_page(places: CellMap, shape: Shape) -> tuple[Page, TypedPlaces]:
    """The sheet Measured, and where it says what was typed for each box."""
    sheet = open_sheet(MEASURED_SHEET, STORY_GRID, places, Draft(), ABOUT_MEASURED, MEASURED_SHEET)
    typed = lay_measured(sheet, shape)
    lay_changed(sheet, (MEASURED_SHEET, FACTORS_SHEET, PRICES_SHEET))
    lay_issued(sheet)
    return paged(sheet, A4_ROOM), typed


def prices_page(places: CellMap, shape: Shape) -> Page:
    """The sheet Prices."""
    sheet = open_sheet(PRICES_SHEET, PRICES_GRID, places, Draft(), ABOUT_PRICES, PRICES_SHEET)
    lay_prices(sheet, shape)
    lay_issued(sheet)
    return paged(sheet, A4_ROOM)


def _story_page(story: StorySheet, places: CellMap, shape: Shape, draft: Draft) -> Page:
    sheet = open_sheet(story.name, STORY_GRID, places, draft, story.about, story.short)
    for part in story.parts:
        if has_rows(part, dict(shape)):
            lay_story(sheet, part, shape)
    return paged(sheet)


def _workings_sheet(
    name: str,
    about: str,
    levels: Mapping[Level, Sequence[Group]],
    places: CellMap,
    shape: Shape,
    draft: Draft,
) -> SheetLayout:
    sheet = open_sheet(name, WORKINGS_GRID, places, draft, about, "Workings")
    sheet.airy = False
    for level, groups in levels.items():
        lay_workings(sheet, level, groups, shape, upright_lines(dict(shape)))
    return sheet


def _factors_page(places: CellMap, draft: Draft) -> Page:
    sheet = open_sheet(FACTORS_SHEET, FACTORS_GRID, places, draft, ABOUT_FACTORS, "Factors")
    lay_factors(sheet)
    lay_issued(sheet)
    return paged(sheet)


def resolve(page: Page, places: CellMap, dates: str = WORDS) -> SheetPlan:
    """Writes the text of every formula of a page, now that every cell has its address."""
    return SheetPlan(page, tuple(_resolved(put, page, places, dates) for put in page.contents))


def _resolved(put: Content, page: Page, places: CellMap, dates: str) -> Cell:
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
            shown = STYLES[dates].full if put.format == COMPANY_DATE else put.format
            return Cell(put.row, put.col, put.role, shown, put.text(), put.value, own_words=put.wraps)
        case AddressText():
            return _fixed(put, places.one(put.named, put.index, page.name))
        case Typed():
            return _typed(put, dates, wraps=not isinstance(page, FullSizePage))
        case Issued():
            return _typed(put, dates, wraps=False)
        case Computed() if (word := put.line.held(put.index, places.counts)) is not None:
            return _fixed(put, word, put.format)
        case Computed():
            text = formula_text(put.line, put.index, places)
            if _ONLY_WORDS.fullmatch(text):
                return _fixed(put, text[1:-1])
            return Cell(put.row, put.col, put.role, put.format, text, _value_of(put.line, put.index))
        case FormulaText():
            return _fixed(put, _shown_formula(put, places))
        case Jump():
            return _jump(put)


_ONLY_WORDS = re.compile(r'"[^"]*"')
"""A formula that only says a word, where the job lacks what it would follow from: its cell is that word."""


def _shown_formula(put: FormulaText, places: CellMap) -> str:
    """The text of a formula, or the part of it that stands in one of several rows."""
    text = shown_text(put.line, put.index, places)
    if put.parts == 1:
        return text
    rows = wrapped_code(text, put.room, put.first)
    if put.part < put.parts - 1:
        return rows[put.part] if put.part < len(rows) else ""
    return "".join(rows[put.part :])


def shown_text(line: Line, index: int, places: CellMap) -> str:
    """The formula of a row as it is shown; of the next that has one, where the row only says a word."""
    count = places.locations[line].block.count
    if not count:
        return "no rows"
    row = next((row for row in range(index, count) if line.held(row, places.counts) is None), None)
    return "no formula" if row is None else f"={formula_text(line, row, places)}"


def _jump(put: Jump) -> Cell:
    """A link whose text names the sheet and the row, which works on paper too."""
    sheet, row, col = put.target()
    text = put.called or f"{SHORT_NAMES.get(sheet, sheet)} {row + 1}"
    link = f'HYPERLINK("#\'{sheet}\'!{column_letters(col + 1)}{row + 1}","{text}")'
    return Cell(put.row, put.col, put.role, "", link, lambda _job: text)


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


def _typed(put: Typed | Issued, dates: str, wraps: bool) -> Cell:
    """A cell to edit, or what it held at issue: its value, as the arithmetic that was typed where there is any."""

    def arithmetic(job: JobValues) -> str:
        entry = entry_of(job, put.named, put.index)
        return entry.formula if entry else ""

    shown = STYLES[dates].full if put.named.unit_text == DATE else put.format
    value = _value_of(put.named, put.index)
    return Cell(put.row, put.col, put.role, shown, "", value, arithmetic, own_words=wraps)


def entry_of(job: JobValues, named: Declared, index: int) -> Entry | None:
    """What was typed for an input or an override; factors and prices are plain numbers."""
    if isinstance(named, Override):
        return job.job.overrides.get((named, index))
    if not isinstance(named, Input):
        return None
    if named.level == JOB:
        return job.job.entries[named]
    return job.job.rows[named.level][index].entries[named]
