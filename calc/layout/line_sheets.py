"""The sheets of lines: item, total, unit, how it is worked, formula, source, and to the right the value of each row."""

from __future__ import annotations

from functools import cache
from math import isnan

from calc.declared import Declared, Line, Override, Section
from calc.formula.functions import NONE
from calc.formula.levels import JOB, Level
from calc.formula.value_types import ValueType
from calc.layout.addresses import Block, CellMap
from calc.layout.blocks import bands, block_across, block_below, head
from calc.layout.page import CellValue, Computed, FormulaText, Linked, Page
from calc.layout.styles import dashed, number_format
from calc.model.results import JobValues, Shape

ITEM, QUANTITY, UNIT, WORKED, CODE, SOURCE, FIGURES = range(7)
"""The columns of a sheet of lines. Each area keeps its column from FIGURES on, on every sheet."""

WIDTHS = (24.0, 10.0, 7.5, 32.0, 26.0, 19.0, *(9.5,) * 60)
HEADS = ("Item", "Total", "Unit", "How it is worked", "Formula", "Source")
SAFETY = "Check local code. This is not engineering. Licensed trades where the law asks."
"""Printed on every page."""

_LONG_WORD = "large packs, then small"


def open_page(name: str, title: str, widths: tuple[float, ...] = WIDTHS, heads: tuple[str, ...] = HEADS) -> Page:
    """A sheet with its title, the safety notice, and its header row."""
    page = Page(name, widths, title)
    page.words(ITEM, title, "title")
    page.heights[0] = 22
    page.next()
    page.words(ITEM, SAFETY, "subtitle")
    page.next()
    for col, title_of_col in enumerate(heads):
        page.words(col, title_of_col, "head")
    page.next()
    return page


def format_of(named: Declared) -> str:
    """The number format of a declaration; none for words."""
    return number_format(named.unit_text) if named.value_type is ValueType.NUMBER else ""


def lay_section(page: Page, places: CellMap, section: type[Section], shape: Shape) -> None:
    """A section of lines: one row per line, its values to the right; nothing for one without lines, or without rows."""
    members = [member for member in section.members if _has_a_row(member)]
    counts = dict(shape)
    if section.is_left_out(counts):
        places.left_out |= {member for member in section.members if isinstance(member, Line)}
        return
    if not members:
        return
    across = _open_section(page, section, counts)
    for member in members:
        _lay_line(page, places, member, across)
    if section.level != JOB and across is None:
        _lay_grid(page, places, [each for each in members if isinstance(each, Line)], counts)
    page.next()


def _has_a_row(member: Declared) -> bool:
    """Totals over the rows are in the row of their line."""
    return isinstance(member, Override) or (isinstance(member, Line) and not member.name.endswith("_all"))


def _open_section(page: Page, section: type[Section], counts: dict[Level, int]) -> Block | None:
    """The two rows above the lines of a section: its title and heading, and the names and numbers of its rows."""
    level = section.level
    page.words(ITEM, section.title, "section")
    for col in range(ITEM + 1, FIGURES):
        page.words(col, "", "section")
    page.next()
    page.words(ITEM, section.heading, "heading")
    if level == JOB:
        page.next()
        return None
    if not level.across:
        page.next()
        return None
    page.words(SOURCE, f"{level} No.", "number")
    block = block_across(page, level, counts[level], FIGURES, page.row - 1)
    page.next()
    return block


@cache
def _worked(line: Line) -> str:
    """The text of its formula, which is the same in every shape."""
    return line.formula.words


def _lay_line(page: Page, places: CellMap, member: Declared, block: Block | None) -> None:
    page.words(ITEM, member.label, "label")
    page.words(UNIT, member.unit_shown, "unit")
    if isinstance(member, Override):
        _lay_override(page, places, member, block)
    elif isinstance(member, Line):
        page.words(WORKED, _worked(member))
        page.put(FormulaText(page.row, CODE, "code", member, 0))
        page.words(SOURCE, member.source, "note")
        if block is not None:
            _lay_across(page, places, member, block)
        elif member.level == JOB:
            _lay_job_line(page, places, member)
        _lay_total(page, places, member)
    page.next()


def _lay_job_line(page: Page, places: CellMap, line: Line) -> None:
    places.put_cell(line, page.name, page.row, QUANTITY)
    page.put(Computed(page.row, QUANTITY, role_of(line), line, 0, format_of(line)))
    if line.value_type is ValueType.TEXT:
        page.fit(_LONG_WORD, QUANTITY)


def role_of(line: Line) -> str:
    """The role of its cell: a line that can be overridden shows the value used in bold."""
    if line.value_type is ValueType.TEXT:
        return "sentence"
    return "sum" if line.override is not None else "formula"


def _lay_across(page: Page, places: CellMap, line: Line, block: Block) -> None:
    places.put_range(line, block, page.row)
    for index in range(block.count):
        page.put(Computed(page.row, block.first + index, role_of(line), line, index, format_of(line)))
    if line.value_type is ValueType.TEXT:
        page.fit(_LONG_WORD, FIGURES)


def _lay_total(page: Page, places: CellMap, line: Line) -> None:
    if line.all_rows is not None:
        places.put_cell(line.all_rows, page.name, page.row, QUANTITY)
        page.put(Computed(page.row, QUANTITY, "sum", line.all_rows, 0, format_of(line)))


def _lay_override(page: Page, places: CellMap, override: Override, block: Block | None) -> None:
    """The override, brought from Measured, beside the computed value."""
    page.words(WORKED, "typed on Measured; none leaves the line as computed")
    for index in range(block.count if block else 1):
        col = block.first + index if block else QUANTITY

        def text(at: int = index) -> str:
            return places.one(override, at, page.name)

        def value(job: JobValues, at: int = index) -> CellValue:
            return cell_value(job.of(override, at))

        page.put(Linked(page.row, col, "override", text, value, format_of(override)))


def cell_value(value: float | str) -> CellValue:
    """A value as a cell shows it: the word none for a number that was not given."""
    return NONE if isinstance(value, float) and isnan(value) else value


def _lay_grid(page: Page, places: CellMap, lines: list[Line], counts: dict[Level, int]) -> None:
    """The rows one below another, one column per line, below the text; many lines go in bands."""
    for band in bands(lines):
        block, first = block_below(page, lines[0].level, counts, FIGURES)
        for col, line in enumerate(band, start=first):
            places.put_range(line, block, col)
            head(page, page.row, col, f"{line.label}, {line.unit_shown}" if line.unit_shown else line.label)
            role = "sentence" if line.value_type is ValueType.TEXT else "formula"
            for index in range(block.count):
                page.put(Computed(block.first + index, col, role, line, index, dashed_if(format_of(line))))
        page.next(block.count + 2)


def dashed_if(format_text: str) -> str:
    """A dash for zero, in a column of numbers."""
    return dashed(format_text) if format_text else ""
