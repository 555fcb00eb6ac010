"""What the blocks of the sheet Bid share: its columns, the heads of blocks, and links to other sheets.

It prints on one page at full size, upright, so its rows are low and no text is wrapped.
"""

from __future__ import annotations

from collections.abc import Callable

from calc.declared import Declared, Line
from calc.formula.value_types import ValueType
from calc.layout.addresses import CellMap
from calc.layout.grid import Grid
from calc.layout.page import Computed, FixedText, FullSizePage, Jump, Linked
from calc.layout.shown import cell_value, format_of
from calc.layout.styles import dashed

NAME = "Bid"
LABEL, VALUE, UNIT, NEXT, BESIDE, KEY_LABEL, FIGURE, FIGURE_UNIT, ADDS, LAST = range(10)
"""The columns: a label with its number and unit; words beside them; a second label from KEY_LABEL on, with its number
and unit; what something adds; a date or a jump."""

GRID = Grid((22.4, 11.0, *(7.0,) * 7, 11.0), row=11.0, quiet=11.0, split=NEXT, source=NEXT)
NO_TEXT = "-"
"""Shown where there is no text."""

NUMBER_FORMAT = '#,##0.00;-#,##0.00;"-"'
_GAP, _HEAD = 4.5, 15.0


def end_row(page: FullSizePage, height: float = GRID.row) -> None:
    """Ends a row."""
    page.heights[page.row] = height
    page.next()


def put(page: FullSizePage, col: int, text: str, role: str = "told") -> None:
    """Fixed text in the current row."""
    page.put(FixedText(page.row, col, role, text))


def section_head(page: FullSizePage, title: str, note: str = "", note_at: int = VALUE) -> None:
    """The title of a block, with a note from a column on, over a rule as wide as the page."""
    end_row(page, _GAP)
    for col in range(LAST + 1):
        text = title if col == LABEL else note if col == note_at else ""
        put(page, col, text, "storysection" if col == LABEL else "sectionnote")
    end_row(page, _HEAD)


def column_heads(
    page: FullSizePage, words: dict[int, str], right: tuple[int, ...], indented: tuple[int, ...] = ()
) -> None:
    """The column heads of a block, those of numbers to the right."""
    for col in range(LAST + 1):
        role = "quietheadright" if col in right else "quietheadindent" if col in indented else "quiethead"
        put(page, col, words.get(col, ""), role)
    end_row(page)


def jump_to(places: CellMap, named: Declared, index: int = 0) -> Callable[[], tuple[str, int, int]]:
    """Where a declaration stands."""

    def place() -> tuple[str, int, int]:
        location = places.locations[named]
        block = location.block
        at = (location.position, block.first + index) if block.across else (block.first + index, location.position)
        return block.sheet, *at

    return place


def put_jump(page: FullSizePage, places: CellMap, named: Declared, col: int = LAST, index: int = 0) -> None:
    """A link to where a number is worked; none for what is worked on this page, or left out of the job."""
    if named in places.left_out or (isinstance(named, Line) and named.section.sheet == NAME):
        return
    page.put(Jump(page.row, col, "jump", jump_to(places, named, index)))


def bring(
    page: FullSizePage, places: CellMap, named: Declared, col: int, role: str, index: int = 0, form: str | None = None
) -> None:
    """A number or a fact from its own cell; a line of this sheet is worked here."""
    shown = format_of(named) if form is None else form
    if isinstance(named, Line) and named.section.sheet == NAME and named not in places.locations:
        places.put_cell(named, NAME, page.row, col)
        page.put(Computed(page.row, col, role, named, 0, shown))
        return
    if named.value_type is ValueType.NUMBER and form is None:
        shown = dashed(shown)
    page.put(
        Linked(
            page.row,
            col,
            role,
            lambda: places.one(named, index, NAME, "cr"),
            lambda job: cell_value(job.of(named, index)),
            shown,
        )
    )
