"""The numbers of the whole job on a sheet of workings: label, value and unit, then words, formula and source."""

from __future__ import annotations

from collections.abc import Sequence

from calc.declared import Line, Section
from calc.layout.grid import ITEM, VALUE
from calc.layout.sheet_layout import SheetLayout
from calc.layout.step_formats import is_words
from calc.layout.text_flow import TextFlow


def lay_job(sheet: SheetLayout, sections: Sequence[tuple[type[Section], Sequence[Line]]]) -> None:
    """The numbers of the whole job, those of a section together."""
    sheet.section("Numbers of the whole job")
    for section, lines in sections:
        sheet.group(section.title, section.heading)
        for line in lines:
            _lay_line(sheet, line)


def _lay_line(sheet: SheetLayout, line: Line) -> None:
    """A line; a text has the rest of its first row to itself. What goes on below begins under a label of one row."""
    top, grid = sheet.page.row, sheet.grid
    sheet.places.put_cell(line, sheet.name, top, VALUE)
    sheet.number_row()
    last = sheet.label(line.label)
    sheet.value(line, 0, VALUE)
    sheet.unit(line, VALUE + 1)
    first = grid.last + 1 if is_words(line) else sheet.behind_unit(line, VALUE + 1)
    flow = TextFlow(grid, first, ITEM if last == top else VALUE, grid.last)
    sheet.close(max(last, sheet.flow(line, flow)))
