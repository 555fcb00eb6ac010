"""The sheet Measured: every input as read and as typed, with its cell; and the lines that can be overridden."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from calc.declared import Input, Override, Section
from calc.formula.levels import JOB, Level
from calc.intake.records import DEFAULT, Entry, JobInput
from calc.intake.schema import FACT_TABLES, NAMED_TABLES
from calc.layout.addresses import Block, CellMap
from calc.layout.as_typed import entries_of, format_cell, format_origins, format_typed
from calc.layout.blocks import bands, block_across, block_below, head
from calc.layout.line_sheets import FIGURES, ITEM, WIDTHS, format_of, open_page
from calc.layout.page import CellValue, JobText, Page, Typed
from calc.layout.styles import ID_FORMAT
from calc.model.results import Shape
from calc.trade.catalog import SECTIONS

NAME = "Measured"
VALUE, UNIT, TYPED, ORIGIN, WHY = range(1, 6)
_HEADS = ("Item", "Value, as read", "Unit", "As typed", "From cell", "Reason, initials; notes")
_WIDTHS = (*WIDTHS[:1], 18.0, 7.5, 22.0, 24.0, 20.0, *WIDTHS[6:])


def measured_page(places: CellMap, shape: Shape) -> Page:
    """What was typed for the company, the job, its site and its areas, and every line that can be overridden."""
    page = open_page(NAME, "Measured: what was typed, and what may be edited", _WIDTHS, _HEADS)
    for section in SECTIONS:
        if section.table and section.table not in NAMED_TABLES:
            _lay_table(page, places, section, dict(shape))
    _lay_override(page, places, dict(shape))
    return page


def _lay_table(page: Page, places: CellMap, section: type[Section], counts: Mapping[Level, int]) -> None:
    givens = [each for each in section.declarations if isinstance(each, Input)]
    if section.is_left_out(counts):
        places.left_out |= set(section.members)
        return
    _lay_section_head(page, section.title, section.heading)
    level = section.level
    if level == JOB:
        for given in givens:
            _lay_label(page, given)
            _lay_job_given(page, places, given)
            page.next()
    elif level.across:
        page.row -= 1
        page.words(WHY, f"{level} No.", "number")
        block = block_across(page, level, counts[level], FIGURES, page.row - 1)
        page.next()
        for given in givens:
            _lay_label(page, given)
            _lay_row_givens(page, places, given, block)
            page.next()
    else:
        _lay_list(page, places, givens, level, counts)
    page.next()


def _lay_label(page: Page, given: Input) -> None:
    page.words(ITEM, given.label, "label")
    page.words(UNIT, given.unit_shown, "unit")


def _lay_section_head(page: Page, title: str, heading: str) -> None:
    page.words(ITEM, title, "section")
    for col in range(ITEM + 1, FIGURES):
        page.words(col, "", "section")
    page.next()
    page.words(ITEM, heading, "heading")
    page.next()


def _lay_list(page: Page, places: CellMap, givens: list[Input], level: Level, counts: Mapping[Level, int]) -> None:
    """Rows one below another: the values to the right, what was typed for them and where to the left."""
    page.row -= 1
    for band in bands(givens):
        block, first = block_below(page, level, counts, FIGURES)
        for col, given in enumerate(band, start=first):
            places.put_range(given, block, col)
            head(page, page.row, col, given.header)
        page.next()
        for index in range(block.count):
            _lay_row(page, band, level, index, first)
            page.next()
        page.next()


def _lay_row(page: Page, band: Sequence[Input], level: Level, index: int, first: int) -> None:
    page.words(ITEM, f"{level.axis.name} {index + 1}", "label")
    page.put(JobText(page.row, TYPED, "issue", _of_row(band, level, index, format_typed)))
    page.put(JobText(page.row, ORIGIN, "issue", _of_row(band, level, index, format_origins)))
    page.heights[page.row] = max(page.heights.get(page.row, 0), 27)
    for col, given in enumerate(band, start=first):
        page.put(Typed(page.row, col, "input", given, index, _format_text(given)))


def _of_row(
    band: Sequence[Input], level: Level, index: int, text_of: Callable[[list[tuple[str, Entry]]], str]
) -> Callable[[JobInput], CellValue]:
    return lambda job: text_of(entries_of(band, job.rows[level][index].entries)) or DEFAULT


def _format_text(given: Input) -> str:
    return format_of(given) or ID_FORMAT


def _lay_job_given(page: Page, places: CellMap, given: Input) -> None:
    places.put_cell(given, NAME, page.row, VALUE)
    page.put(Typed(page.row, VALUE, "input", given, 0, _format_text(given)))

    def entry(job: JobInput) -> Entry:
        return job.entries[given]

    page.put(JobText(page.row, TYPED, "issue", lambda job: entry(job).typed or DEFAULT))
    page.put(JobText(page.row, ORIGIN, "issue", lambda job: entry(job).origin if entry(job).typed else ""))
    if given.section.table in FACT_TABLES:
        page.put(JobText(page.row, WHY, "issue", lambda job: entry(job).notes))


def _lay_row_givens(page: Page, places: CellMap, given: Input, block: Block) -> None:
    """Values side by side, and below each its cell and what was typed there."""
    places.put_range(given, block, page.row)
    for index in range(block.count):
        page.put(Typed(page.row, block.first + index, "input", given, index, _format_text(given)))
    page.next()
    page.words(ITEM, "as typed", "note")
    page.heights[page.row] = 26
    for index in range(block.count):
        page.put(JobText(page.row, block.first + index, "issue", _typed_of(given, block.level, index)))


def _typed_of(given: Input, level: Level, index: int) -> Callable[[JobInput], CellValue]:
    return lambda job: format_cell(job.rows[level][index].entries[given])


def _lay_override(page: Page, places: CellMap, counts: Mapping[Level, int]) -> None:
    """A cell for every line that can be overridden, and for every stop that can be acknowledged."""
    page.words(ITEM, "Overridden lines and acknowledged stops", "section")
    for col in range(ITEM + 1, FIGURES):
        page.words(col, "", "section")
    page.next()
    page.words(
        ITEM,
        "Type a number to override a line (1 to acknowledge a stop), or none to let it be computed; "
        "type the reason and initials.",
        "heading",
    )
    page.next()
    for section in SECTIONS:
        for member in section.members:
            if isinstance(member, Override):
                _lay_override_row(page, places, member, counts)


def _lay_override_row(page: Page, places: CellMap, override: Override, counts: Mapping[Level, int]) -> None:
    page.words(ITEM, override.label, "label")
    page.words(UNIT, override.unit_text, "unit")
    across = override.level != JOB
    first, count = (FIGURES, counts[override.level]) if across else (VALUE, 1)
    if across:
        places.put_range(override, Block(NAME, override.level, FIGURES, count, True), page.row)
    else:
        places.put_cell(override, NAME, page.row, VALUE)
    for index in range(count):
        page.put(Typed(page.row, first + index, "override", override, index, format_of(override)))
    page.put(JobText(page.row, TYPED, "issue", lambda job: format_typed(_override_entries(job, override))))
    page.put(JobText(page.row, ORIGIN, "issue", lambda job: format_origins(_override_entries(job, override))))
    page.put(JobText(page.row, WHY, "issue", lambda job: _reasons(job, override)))
    page.heights[page.row] = 26
    page.next()


def override_name(override: Override, index: int) -> str:
    """The name of one row of an overridden line in the text of what was typed."""
    return f"{override.level} {index + 1}" if override.level != JOB else ""


def _override_entries(job: JobInput, override: Override) -> list[tuple[str, Entry]]:
    found = {index: entry for (each, index), entry in job.overrides.items() if each is override}
    return [(override_name(override, index), entry) for index, entry in sorted(found.items())]


def _reasons(job: JobInput, override: Override) -> CellValue:
    return "\n".join(f"{entry.reason} ({entry.who})" for _, entry in _override_entries(job, override))
