"""The numbers of the whole job on a sheet of workings: a line in a row, or two beside each other where that is shorter.

Label, value and unit stand before the words, and what goes on below begins under the label.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from calc.declared import Line, Section
from calc.layout.grid import ITEM, ROW_NO, VALUE
from calc.layout.page import Computed, Content, FixedText
from calc.layout.sheet_layout import SheetLayout
from calc.layout.step_formats import is_words, step_format, unit_of
from calc.layout.text_flow import TextFlow
from calc.layout.text_width import wrapped


class _Strip(NamedTuple):
    """The columns of a line: its label, its value, and the last one."""

    label: int
    value: int
    last: int


class _Item(NamedTuple):
    """A line in a strip: what is put there, and the rows that it takes."""

    line: Line
    strip: _Strip
    puts: Sequence[Content]
    rows: int


_HALF = 8
"""The first column of the right half; its labels have three columns."""


def lay_job(sheet: SheetLayout, groups: Sequence[tuple[type[Section], Sequence[Line]]]) -> None:
    """The numbers of the whole job, those of a section together."""
    sheet.section("Numbers of the whole job")
    for section, lines in groups:
        sheet.group(section.title, section.heading)
        numbers: list[Line] = []
        for line in lines:
            if is_words(line):
                _lay_numbers(sheet, numbers)
                _lay_column(sheet, [_whole(sheet)], [[line]])
                numbers = []
            else:
                numbers.append(line)
        _lay_numbers(sheet, numbers)


def _whole(sheet: SheetLayout) -> _Strip:
    return _Strip(ITEM, VALUE, sheet.grid.last)


def _lay_numbers(sheet: SheetLayout, lines: Sequence[Line]) -> None:
    """Numbers in one column, or in two that are read downward, whichever takes fewer rows."""
    if not lines:
        return
    whole = _whole(sheet)
    halves = [_Strip(ITEM, VALUE, _HALF - 2), _Strip(_HALF, _HALF + 3, sheet.grid.last)]
    left, right = ([_item(sheet, line, half, 0).rows for line in lines] for half in halves)
    alone = sum(_item(sheet, line, whole, 0).rows for line in lines)
    rows, at = min((max(sum(left[:at]), sum(right[at:])), at) for at in range(1, len(lines) + 1))
    if rows < alone:
        _lay_column(sheet, halves, [lines[:at], lines[at:]])
    else:
        _lay_column(sheet, [whole], [lines])


def _lay_column(sheet: SheetLayout, strips: Sequence[_Strip], columns: Sequence[Sequence[Line]]) -> None:
    """Lines one below another in each strip, and the rows that they take together."""
    top = last = sheet.page.row
    numbered: set[int] = set()
    for strip, lines in zip(strips, columns, strict=True):
        row = top
        for line in lines:
            item = _item(sheet, line, strip, row)
            sheet.places.put_cell(line, sheet.name, row, strip.value)
            for put in item.puts:
                sheet.page.put(put)
            numbered.add(row)
            row += item.rows
        last = max(last, row)
    for row in sorted(numbered):
        sheet.page.put(FixedText(row, ROW_NO, "rowno", str(row + 1)))
    while sheet.page.row < last:
        sheet.end_row(detail=sheet.page.row not in numbered)


def _item(sheet: SheetLayout, line: Line, strip: _Strip, row: int) -> _Item:
    """A line that begins in ``row``; a text has the rest of its first row to itself."""
    text = is_words(line)
    room = sheet.grid.room(strip.label, strip.value - 1)
    labels = wrapped(line.label, room)
    puts: list[Content] = [FixedText(row + place, strip.label, "item", part) for place, part in enumerate(labels)]
    puts.append(Computed(row, strip.value, "stepwords" if text else "step", line, 0, step_format(line, False)))
    if unit := unit_of(line):
        puts.append(FixedText(row, strip.value + 1, "stepunit", unit))
    below = strip.label if len(labels) == 1 else strip.value
    flow = TextFlow(sheet.grid, strip.last + 1 if text else strip.value + 2, below, strip.last)
    puts += sheet.told_in(line, flow, row)
    return _Item(line, strip, puts, max(len(labels), flow.row + 1))
