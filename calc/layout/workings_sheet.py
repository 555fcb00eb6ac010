"""A sheet of workings: every line that no story tells, all those of one level together.

Up to seven rows of a level stand side by side with a line a row; more stand one below another with a column a line, in
panels of as many columns as fit the page, and the words of each column below.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace

from calc.cells import column_letters
from calc.declared import Line, Section
from calc.formula.levels import JOB, Level, level_of
from calc.layout.addresses import NUMBER, Block
from calc.layout.grid import ITEM, VALUE
from calc.layout.job_lines import lay_job
from calc.layout.key_cells import block_abreast, block_below, key_cell, key_row, used_keys
from calc.layout.page import Computed, FixedText, JobText
from calc.layout.row_keys import RowKey, RowText, row_names
from calc.layout.sheet_layout import SheetLayout
from calc.layout.step_formats import is_words, unit_of
from calc.layout.text_flow import TextFlow
from calc.layout.text_width import text_width
from calc.layout.words_width import words_width
from calc.model.results import Shape

MOST_ABREAST = 7
"""The most rows of a level that stand side by side."""


@dataclass(frozen=True)
class Group:
    """Lines of one section."""

    section: type[Section]
    lines: tuple[Line, ...]


def lay_workings(
    sheet: SheetLayout, level: Level, groups: Sequence[Group], shape: Shape, upright: Collection[Line]
) -> None:
    """All lines of one level: first the numbers, then the words, which take more room.

    The ``upright`` ones stand one row below another, however few rows there are.
    """
    counts = dict(shape)
    if level == JOB:
        lay_job(sheet, [(group.section, group.lines) for group in groups])
    else:
        sheet.section(f"By {level}")
        abreast, below = _parted(groups, upright) if counts[level] <= MOST_ABREAST else ([], groups)
        lines = [line for group in below for line in group.lines]
        if abreast:
            block = _lay_abreast(sheet, level, abreast, counts)
            texts = [] if level.crossed else [line for line in lines if line not in upright and _is_short(sheet, line)]
            for line in texts:
                _lay_text(sheet, line, block, row_names(level, counts))
            lines = [line for line in lines if line not in texts]
        if lines:
            _lay_below(sheet, level, lines, counts)


_WIDEST = 7
"""The most columns that a text takes, where the rows of a level stand one below another."""


def _columns_of(sheet: SheetLayout, line: Line) -> int:
    """The columns that a line takes: one for a number, as many as its words need for a text."""
    if not is_words(line):
        return 1
    wide = words_width(line)
    return next((count for count in range(1, _WIDEST) if sheet.grid.room(VALUE, VALUE + count - 1) >= wide), _WIDEST)


def _parted(groups: Sequence[Group], upright: Collection[Line]) -> tuple[list[Group], list[Group]]:
    """The lines whose rows stand side by side, and those whose rows stand below one another, all words among them."""
    parts: tuple[list[Group], list[Group]] = ([], [])
    for group in groups:
        for part, wanted in zip(parts, (False, True), strict=True):
            lines = tuple(line for line in group.lines if (is_words(line) or line in upright) is wanted)
            if lines:
                part.append(Group(group.section, lines))
    return parts


def _lay_abreast(sheet: SheetLayout, level: Level, groups: Sequence[Group], counts: Mapping[Level, int]) -> Block:
    """The rows side by side, a line a row, with the total and the words behind them."""
    page, count = sheet.page, counts[level]
    adds = any(line.all_rows is not None for group in groups for line in group.lines)
    unit = VALUE + count + adds
    _names_abreast(sheet, level, counts, adds)
    keys = used_keys(sheet, level, counts)
    block = block_abreast(sheet, level, counts, keys)
    for key in keys:
        key_row(sheet, key)
    for group in groups:
        for line in group.lines:
            sheet.places.put_range(line, block, page.row)
            sheet.number_row()
            last = sheet.label(line.label)
            for index in range(count):
                sheet.value(line, index, VALUE + index)
            if line.all_rows is not None:
                sheet.places.put_cell(line.all_rows, sheet.name, page.row, VALUE + count)
                sheet.value(line.all_rows, 0, VALUE + count, "stepsum")
            sheet.unit(line, unit)
            flow = TextFlow(
                sheet.grid, sheet.behind_unit(line, unit), ITEM if last == page.row else VALUE, sheet.grid.last
            )
            sheet.close(max(last, sheet.flow(line, flow)))
    return block


_LEAST_BESIDE = 5
"""The columns but one that words need beside a text."""


def _is_short(sheet: SheetLayout, line: Line) -> bool:
    """Whether a text is sure to end where its columns do."""
    return _columns_of(sheet, line) < _WIDEST


def _lay_text(sheet: SheetLayout, line: Line, rows: Block, names: Sequence[RowText]) -> None:
    """A text of every row, one below another behind the names of the rows; its words beside it, or below all."""
    page, grid, top = sheet.page, sheet.grid, sheet.page.row
    block = replace(rows, first=top, across=False, numbers={}, words=None, keyed_by=rows)
    value = VALUE + _columns_of_name(sheet, rows.level, VALUE)
    sheet.places.put_range(line, block, value)
    sheet.number_row()
    labels = sheet.label(line.label) - top + 1
    for index, name in enumerate(names):
        page.put(JobText(top + index, value - 1, "rowkey", name, wraps=False))
        page.put(Computed(top + index, value, "stepwords", line, index, ""))
    behind = value + _columns_of(sheet, line)
    beside = TextFlow(grid, behind, behind, grid.last)
    below = TextFlow(grid, VALUE, VALUE, grid.last, len(names))
    for flow in (beside, below):
        sheet.told_in(line, flow, top)
    if behind <= grid.last - _LEAST_BESIDE and beside.row <= below.row:
        below = TextFlow(grid, behind, behind, grid.last)
    else:
        below = TextFlow(grid, VALUE, VALUE, grid.last, len(names))
    for put in sheet.told_in(line, below, top):
        page.put(put)
    sheet.close(top + max(len(names), labels, below.row + 1) - 1)


def _names_abreast(sheet: SheetLayout, level: Level, counts: Mapping[Level, int], adds: bool) -> None:
    """The names of the rows above their columns, each broken to its width when it is written."""
    page, count = sheet.page, counts[level]
    page.put(FixedText(page.row, ITEM, "stepheadleft", "Step"))
    for col, name in enumerate(row_names(level, counts), start=VALUE):
        page.put(JobText(page.row, col, "stepheadname", name))
    rest = VALUE + count
    if adds:
        page.put(FixedText(page.row, rest, "stephead", "All"))
        rest += 1
    page.put(FixedText(page.row, rest, "stepheadleft", "Unit"))
    page.put(FixedText(page.row, rest + 1, "group", "Worked as"))
    sheet.end_row(_NAME_ROWS * 11.25)


_NAME_ROWS = 2
"""The rows of text that the names of rows have above their columns."""


def _lay_below(sheet: SheetLayout, level: Level, lines: Sequence[Line], counts: Mapping[Level, int]) -> None:
    """The rows one below another, a column a line; more lines than fit go on in a panel below."""
    names, start = _name_columns(sheet, level)
    keys: Sequence[RowKey] = [key for key in used_keys(sheet, level, counts) if key.of not in names]
    first: Block | None = None
    while lines:
        columns = _columns(sheet, lines, start + len(keys))
        panel = _Panel(level, columns, keys, names, start, sheet.grid.last)
        block = _lay_panel(sheet, panel, first, counts)
        lines, first = lines[len(columns) :], first or block
        names, keys, start = _shorter(sheet, level, names, counts) if names else (names, (), start)


def _shorter(
    sheet: SheetLayout, level: Level, names: Mapping[Level, int], counts: Mapping[Level, int]
) -> tuple[dict[Level, int], list[RowKey], int]:
    """The names of a panel that goes on below another: that of the last of a pair, and the numbers of the others."""
    *others, last = names
    keys = [
        RowKey(leaf, NUMBER, "No.", (), tuple(row + 1 for row in level.rows_above(leaf, counts))) for leaf in others
    ]
    return {last: ITEM}, keys, ITEM + _columns_of_name(sheet, last, ITEM)


def _columns(sheet: SheetLayout, lines: Sequence[Line], first: int) -> dict[int, Line]:
    """The columns of as many lines as fit from ``first`` on; one at least."""
    columns: dict[int, Line] = {}
    col = first
    for line in lines:
        wide = _columns_of(sheet, line)
        if columns and col + wide - 1 > sheet.grid.last:
            break
        columns[col] = line
        col += wide
    return columns


_TYPED_NAME = 3
"""The columns of a name that a person types."""


def _name_columns(sheet: SheetLayout, level: Level) -> tuple[dict[Level, int], int]:
    """The columns of the names of the rows that a pair is made of, and the first column behind all names.

    A level whose rows have one name has none of its own: the name stands where every item does.
    """
    leaves = [level_of(leaf) for leaf in level.leaves]
    columns: dict[Level, int] = {}
    col = ITEM
    for leaf in leaves:
        columns[leaf] = col
        col += _columns_of_name(sheet, leaf, col)
    return (columns if level.crossed else {}), col


def _columns_of_name(sheet: SheetLayout, leaf: Level, first: int) -> int:
    """The columns from ``first`` on that the longest name of a row takes."""
    grid, words = sheet.grid, leaf.axis.words
    if not words:
        return 1 if first == ITEM else _TYPED_NAME
    longest, last = max(map(text_width, words)), first
    while grid.room(first, last) < longest and last < grid.last:
        last += 1
    return last - first + 1


@dataclass(frozen=True)
class _Panel:
    """Columns that stand side by side: the keys begin at ``start`` and the lines behind them."""

    level: Level
    columns: Mapping[int, Line]
    keys: Sequence[RowKey]
    names: Mapping[Level, int]
    start: int
    last: int


def _lay_panel(sheet: SheetLayout, panel: _Panel, keyed_by: Block | None, counts: Mapping[Level, int]) -> Block:
    """A panel: the heads, the rows, the totals, and how each column is worked."""
    level, columns = panel.level, panel.columns
    through = min(panel.last, max(columns) + _columns_of(sheet, columns[max(columns)]) - 1)
    heads = {ITEM: (str(level if not panel.names else next(iter(panel.names))).capitalize(), "", True)}
    heads |= {col: (str(leaf).capitalize(), "", True) for leaf, col in panel.names.items() if col != ITEM}
    heads |= {panel.start + place: (str(key.of).capitalize(), "no.", False) for place, key in enumerate(panel.keys)}
    heads |= {col: (line.label, unit_of(line), is_words(line)) for col, line in columns.items()}
    sheet.column_heads(heads, through)
    block = replace(
        block_below(sheet, level, counts, panel.keys, panel.start), keyed_by=keyed_by, named=_named(panel.names)
    )
    for col, line in columns.items():
        sheet.places.put_range(line, block, col)
    names = _names(panel, counts)
    for index in range(counts[level]):
        _lay_row(sheet, panel, index, names)
    _totals(sheet, columns, through)
    _notes(sheet, columns)
    return block


_SECOND_NOTE = 8
"""The first column in which a second note may begin in a row."""


def _notes(sheet: SheetLayout, columns: Mapping[int, Line]) -> None:
    """How each column is worked, below its table: letter and label, words, formula. Short ones share a row."""
    beside, last = sheet.grid.last + 1, sheet.page.row - 1
    for col, line in columns.items():
        label = f"  {column_letters(col + 1)}  {line.label}"
        start = max(beside, _SECOND_NOTE)
        if start < sheet.grid.last and sheet.fits_beside(line, label, start):
            flow = TextFlow(sheet.grid, start, start, sheet.grid.last)
        else:
            sheet.close(last)
            flow = TextFlow(sheet.grid, ITEM, VALUE, sheet.grid.last)
        last = max(last, sheet.flow(line, flow, label))
        beside = flow.col if not flow.row else sheet.grid.last + 1
    sheet.close(last)


def _named(names: Mapping[Level, int]) -> dict[Level, int]:
    """The columns of names by which formulas may find rows."""
    return {leaf: col for leaf, col in names.items() if leaf.axis.named}


def _names(panel: _Panel, counts: Mapping[Level, int]) -> dict[int, list[RowText]]:
    """The names of the rows by their columns: one, or that of each row that a pair is made of."""
    if not panel.names:
        return {ITEM: row_names(panel.level, counts)}
    return {
        col: [row_names(leaf, counts)[row] for row in panel.level.rows_above(leaf, counts)]
        for leaf, col in panel.names.items()
    }


def _lay_row(sheet: SheetLayout, panel: _Panel, index: int, names: Mapping[int, Sequence[RowText]]) -> None:
    row = sheet.page.row
    sheet.number_row()
    for col, of_rows in names.items():
        sheet.page.put(JobText(row, col, "item", of_rows[index], wraps=False))
    for place, key in enumerate(panel.keys):
        key_cell(sheet, key, index, panel.start + place)
    for col, line in panel.columns.items():
        sheet.value(line, index, col)
    sheet.end_row()


def _totals(sheet: SheetLayout, columns: Mapping[int, Line], through: int) -> None:
    """The totals of the columns that add."""
    if not any(line.all_rows is not None for line in columns.values()):
        return
    sheet.number_row()
    for col in range(ITEM, through + 1):
        total = columns[col].all_rows if col in columns else None
        if total is not None:
            sheet.places.put_cell(total, sheet.name, sheet.page.row, col)
            sheet.value(total, 0, col, "steptotal")
        else:
            sheet.page.put(FixedText(sheet.page.row, col, "steptotalwords", "All" if col == ITEM else ""))
    sheet.end_row()
