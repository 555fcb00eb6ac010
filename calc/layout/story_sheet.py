"""A sheet of the story: its sections, each in the form that its declaration gives it."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import singledispatch

from calc.declared import Declared, Line, story
from calc.formula.keys import LookupByKey
from calc.formula.levels import Level
from calc.formula.tree import nodes_of
from calc.layout.addresses import Shown, span
from calc.layout.drawings import lay_plans
from calc.layout.grid import ITEM, VALUE
from calc.layout.key_cells import block_below, key_cell, used_keys
from calc.layout.page import CellValue, FixedText, JobText, Jump, Linked
from calc.layout.row_keys import RowKey, row_names
from calc.layout.sheet_layout import SheetLayout
from calc.layout.shown import cell_value
from calc.layout.step_formats import is_words, step_format, unit_of
from calc.model.results import JobValues, Shape

_WORDS = VALUE + 2
"""The column in which words begin."""

_UNIT, _RUNNER_UP, _MORE, _PAIR_WORDS = VALUE + 1, VALUE + 3, VALUE + 4, VALUE + 5
"""The columns of a pair, beside what was chosen."""


def told_lines(part: story.Part) -> tuple[Line, ...]:
    """The lines that have their place in a section; others are brought to it from their own cell."""
    match part:
        case story.Lines():
            return part.lines
        case story.Table():
            return tuple(step.named for step in part.steps if isinstance(step.named, Line))
        case story.Pair():
            named = [each for row in part.rows for each in (row.chosen, row.runner_up, row.more)]
            return tuple(each for each in named if isinstance(each, Line))
    return ()


def has_rows(part: story.Part, counts: Mapping[Level, int]) -> bool:
    """Whether a section has anything to tell: a table of typed rows without any is left out."""
    return not isinstance(part, story.Table) or counts[part.level] > 0


def lay_story(sheet: SheetLayout, part: story.Part, shape: Shape) -> None:
    """A section of the sheet."""
    _lay(part, sheet, shape)


@singledispatch
def _lay(part: object, sheet: SheetLayout, shape: Shape) -> None:
    raise TypeError(f"no layout for {type(part).__name__}")


@_lay.register
def _(part: story.Plans, sheet: SheetLayout, shape: Shape) -> None:
    sheet.section(part.title, part.note)
    lay_plans(sheet.page, sheet.places, shape)


@_lay.register
def _(part: story.Lines, sheet: SheetLayout, shape: Shape) -> None:
    sheet.section(part.title, part.note)
    page = sheet.page
    for line in part.lines:
        strong = line in part.strong
        sheet.places.put_cell(line, sheet.name, page.row, VALUE)
        sheet.number_row()
        top, last = page.row, sheet.label(line.label, "itemstrong" if strong else "item")
        sheet.value(line, 0, VALUE, "stepstrong" if strong else "step")
        sheet.unit(line, VALUE + 1)
        if (source := _source_of(line)) is not None:
            page.put(Jump(page.row, sheet.grid.last, "jump", _place_of(sheet, source)))
        sheet.told(line, 0, _WORDS, "told", sheet.grid.last - 1)
        sheet.close_label(top, last)


def _source_of(line: Line) -> Line | None:
    """The first line of its formula: where a reader goes on."""
    return next((leaf for leaf in line.formula.leaves() if isinstance(leaf, Line)), None)


def _place_of(sheet: SheetLayout, named: Declared) -> Callable[[], tuple[str, int, int]]:
    def place() -> tuple[str, int, int]:
        location = sheet.places.locations[named]
        block = location.block
        row, col = (location.position, block.first) if block.across else (block.first, location.position)
        return block.sheet, row, col

    return place


@_lay.register
def _(part: story.Table, sheet: SheetLayout, shape: Shape) -> None:
    counts, page, level = dict(shape), sheet.page, part.level
    sheet.section(part.title, part.note)
    keys, key_col = used_keys(sheet, level, counts), VALUE + len(part.steps)
    _lay_heads(sheet, part.called, part.steps, keys)
    block = block_below(sheet, level, counts, keys, key_col)
    for place, step in enumerate(part.steps):
        if isinstance(step.named, Line):
            sheet.places.put_range(step.named, block, VALUE + place)
    for index, name in enumerate(row_names(level, counts)):
        sheet.number_row()
        page.put(JobText(page.row, ITEM, "item", name, wraps=False))
        for place, step in enumerate(part.steps):
            _lay_step(sheet, step.named, index, VALUE + place)
        for place, key in enumerate(keys):
            key_cell(sheet, key, index, key_col + place)
        sheet.end_row()
    _lay_total(sheet, part.total, part.steps)
    _lay_notes(sheet, part.steps)


def _lay_heads(sheet: SheetLayout, called: str, steps: Sequence[story.Step], keys: Sequence[RowKey] = ()) -> None:
    heads = {ITEM: (called, "", True)}
    heads |= {
        VALUE + place: (step.heading, unit_of(step.named), is_words(step.named)) for place, step in enumerate(steps)
    }
    heads |= {VALUE + len(steps) + place: (str(key.of).capitalize(), "no.", False) for place, key in enumerate(keys)}
    sheet.column_heads(heads, max(heads))


def _lay_step(sheet: SheetLayout, named: Declared, index: int, col: int) -> None:
    """A line in its own place; an input is brought from where it is typed."""
    if isinstance(named, Line):
        sheet.value(named, index, col)
        return
    places, name = sheet.places, sheet.name
    sheet.page.put(
        Linked(
            sheet.page.row,
            col,
            "stepwords" if is_words(named) else "step",
            lambda: places.one(named, index, name),
            lambda job: cell_value(job.of(named, index)),
            step_format(named, True),
        )
    )


def _lay_total(sheet: SheetLayout, total: str, steps: Sequence[story.Step]) -> None:
    """The totals of the columns that add; one without a name for them has none."""
    sums = {
        VALUE + place: step.named.all_rows
        for place, step in enumerate(steps)
        if isinstance(step.named, Line) and step.named.all_rows is not None
    }
    if not total:
        return
    sheet.number_row()
    for col in range(ITEM, VALUE + len(steps)):
        line = sums.get(col)
        if line is None:
            sheet.page.put(FixedText(sheet.page.row, col, "steptotalwords", total if col == ITEM else ""))
            continue
        sheet.places.put_cell(line, sheet.name, sheet.page.row, col)
        sheet.value(line, 0, col, "steptotal")
    sheet.end_row()


def _lay_notes(sheet: SheetLayout, steps: Sequence[story.Step]) -> None:
    for place, step in enumerate(steps):
        if isinstance(step.named, Line):
            sheet.column_note(step.named, VALUE + place)


@_lay.register
def _(part: story.Found, sheet: SheetLayout, shape: Shape) -> None:
    """The rows that are found by their running number; the sums and the words stand where the rows come from."""
    counts = dict(shape)
    source = next((step.named for step in part.steps if isinstance(step.named, Line)), None)
    sheet.section(part.title, part.note, None if source is None else _place_of(sheet, source))
    _lay_heads(sheet, part.called, part.steps)
    first = sheet.page.row
    for index in range(counts[part.row.level]):
        sheet.number_row()
        for place, step in enumerate(part.steps):
            _lay_found(sheet, part.row, index, step, VALUE + place)
        _lay_found_name(sheet, part, index)
        sheet.end_row()
    last = sheet.page.row - 1
    if part.total:
        _lay_found_total(sheet, part, first)
    _record_shown(sheet, part, first, last)


def _record_shown(sheet: SheetLayout, part: story.Found, first: int, last: int) -> None:
    """Where its columns stand, for the proof that they show what they are found from."""
    place = next(node.key for node in nodes_of(part.row.formula) if isinstance(node, LookupByKey))
    columns: list[tuple[int, Declared | None]] = [(ITEM, None)]
    columns += [(VALUE + at, None if is_words(step.named) else step.named) for at, step in enumerate(part.steps)]
    for col, named in columns:
        adds = bool(part.total) and isinstance(named, Line) and named.all_rows is not None
        total = (last + 1, col) if adds else None
        sheet.places.shown.append(Shown(part.title, sheet.name, (first, col), (last, col), named, place, total))


def _lay_found(sheet: SheetLayout, row: Line, index: int, step: story.Step, col: int) -> None:
    """A value of the row that stands in a slot; nothing in a slot that is not in use."""
    places, name, named = sheet.places, sheet.name, step.named

    def text() -> str:
        number, found = places.one(row, index, name, "c"), places.locations[named]
        cells = places.range_of(found.block, found.position, name, headed=True)
        pick = f"INDEX({cells},1,{number}+1)" if found.block.across else f"INDEX({cells},{number}+1)"
        return f'IF({number}=0,"",{pick})'

    def value(job: JobValues) -> CellValue:
        number = int(job.of(row, index))
        return cell_value(job.of(named, number - 1)) if number else ""

    role = "stepwords" if is_words(named) else "step"
    sheet.page.put(Linked(sheet.page.row, col, role, text, value, step_format(named, True, step.like)))


def _lay_found_name(sheet: SheetLayout, part: story.Found, index: int) -> None:
    places, name, row = sheet.places, sheet.name, part.row
    of = next(step.named for step in part.steps if isinstance(step.named, Line))

    def text() -> str:
        number, block = places.one(row, index, name, "c"), places.locations[of].block
        keys, position = places.key(block, block.level, "word")
        cells = places.range_of(keys, position, name, headed=True)
        return f'IF({number}=0,"",INDEX({cells},{number}+1))'

    def value(job: JobValues) -> CellValue:
        number = int(job.of(row, index))
        return of.level.axis.words_of(job.counts)[number - 1] if number else ""

    sheet.page.put(Linked(sheet.page.row, ITEM, "item", text, value))


def _lay_found_total(sheet: SheetLayout, part: story.Found, first: int) -> None:
    """What the rows that are shown add up to, from row ``first`` on."""
    page, row = sheet.page, sheet.page.row
    sheet.number_row()
    page.put(FixedText(row, ITEM, "steptotalwords", part.total))
    for place, step in enumerate(part.steps):
        line, col = step.named, VALUE + place
        if not isinstance(line, Line) or line.all_rows is None:
            page.put(FixedText(row, col, "steptotal", ""))
            continue
        cells = span(sheet.name, (first, col), (row - 1, col), sheet.name)
        page.put(_sum_shown(part.row, line, cells, row, col))
    sheet.end_row()


def _sum_shown(row: Line, line: Line, cells: str, at: int, col: int) -> Linked:
    def value(job: JobValues) -> CellValue:
        numbers = [int(job.of(row, index)) for index in range(job.count(row.level))]
        return float(sum(float(job.of(line, number - 1)) for number in numbers if number))

    return Linked(at, col, "steptotal", lambda: f"SUM({cells})", value, step_format(line, True))


@_lay.register
def _(part: story.Pair, sheet: SheetLayout, shape: Shape) -> None:
    sheet.section(part.title, part.note)
    page, last = sheet.page, sheet.grid.last
    heads = {VALUE: "Chosen", _RUNNER_UP: "Runner-up", _MORE: "Adds", _PAIR_WORDS: "Worked as"}
    for col in range(ITEM, last + 1):
        page.put(FixedText(page.row, col, "group" if col == _PAIR_WORDS else "pairhead", heads.get(col, "")))
    sheet.end_row()
    for row in part.rows:
        _lay_beside(sheet, row)


def _lay_beside(sheet: SheetLayout, row: story.Beside) -> None:
    page, strong = sheet.page, "stepstrong" if row.strong else "step"
    sheet.number_row()
    top, last = page.row, sheet.label(row.label, "itemstrong" if row.strong else "item")
    for named, col in ((row.chosen, VALUE), (row.runner_up, _RUNNER_UP), (row.more, _MORE)):
        if isinstance(named, Line):
            sheet.places.put_cell(named, sheet.name, page.row, col)
            sheet.value(named, 0, col, strong)
    sheet.unit(row.chosen, _UNIT)
    if isinstance(row.chosen, Line):
        sheet.told(row.chosen, 0, _PAIR_WORDS, "told", below=_RUNNER_UP)
    else:
        sheet.end_row()
    sheet.close_label(top, last)
