"""The tables of the sheet Measured: the rows of a level in their boxes, and the same rows as they were typed.

A table has as many panels as its columns need. What was typed stands below the boxes of a panel, in the same columns;
where few columns leave room for it, beside them.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from calc.declared import Declared, Input, Kind, Override, Section
from calc.formula.levels import Level
from calc.formula.value_types import ValueType
from calc.intake.records import Entry, JobInput
from calc.layout.addresses import NUMBER, Block
from calc.layout.as_typed import column_of, format_row, row_of, shows_itself
from calc.layout.grid import ITEM, VALUE
from calc.layout.issued import aside
from calc.layout.key_cells import block_below, key_cell
from calc.layout.page import CellValue, FixedText, JobText, Typed
from calc.layout.row_keys import RowKey, RowText, known_rows_above, row_keys, row_names
from calc.layout.sheet_layout import SheetLayout
from calc.layout.shown import format_of
from calc.layout.step_formats import unit_of
from calc.layout.styles import ID_FORMAT, PLAIN_FORMAT

Place = tuple[int, int]


@dataclass
class TypedPlaces:
    """Where Measured says what was typed for a box: row and column, counting from 0."""

    cells: dict[tuple[Declared, int], Place] = field(default_factory=dict)
    """A cell and what was typed there, or what was typed for a value of a row."""
    origins: dict[tuple[Declared, int], Place] = field(default_factory=dict)
    """Whether words or a day were typed: the cell in which they were, or, of a row, that they were."""
    notes: dict[Declared, Place] = field(default_factory=dict)
    """The notes of a fact."""


@dataclass(frozen=True)
class _Panel:
    """Some of the columns of a table: numbers and choices, then texts."""

    narrow: tuple[Input, ...]
    texts: tuple[Input, ...]
    first: int
    """The column of its first box."""
    beside: bool
    """Whether what was typed stands beside the boxes."""

    def columns(self, last: int) -> list[tuple[Input, int, int]]:
        """Each input with the first and the last column of its box."""
        found = [(given, self.first + at, self.first + at) for at, given in enumerate(self.narrow)]
        start = self.first + len(self.narrow)
        if self.texts:
            room = (last - start + 1 - self.beside * len(self.narrow)) // len(self.texts)
            found += [(given, start + at * room, start + (at + 1) * room - 1) for at, given in enumerate(self.texts)]
        return found


def put_box(sheet: SheetLayout, named: Input | Override, index: int, col: int, role: str = "") -> None:
    """A box in the current row: what is edited."""
    page = sheet.page
    is_words = named.value_type is ValueType.TEXT
    offered = named.words_offered(sheet.places.counts) if isinstance(named, Input) and named.names is not None else ()
    page.put(Typed(page.row, col, role or ("boxwords" if is_words else "box"), named, index, _format(named), offered))


def _format(named: Input | Override) -> str:
    """As many digits as were typed; a text stays a text, and a day is shown as a day."""
    if isinstance(named, Input) and named.kind is Kind.DATE:
        return format_of(named)
    return PLAIN_FORMAT if named.value_type is ValueType.NUMBER else ID_FORMAT


def lay_table(
    sheet: SheetLayout,
    sections: Sequence[type[Section]],
    level: Level,
    counts: Mapping[Level, int],
    typed: TypedPlaces | None = None,
) -> None:
    """The rows of a level, in as many panels as their columns need; without ``typed`` in their boxes only."""
    givens = [each for section in sections for each in section.declarations if isinstance(each, Input)]
    title = sections[0].title
    keys = [key for key in row_keys(level, counts) if key.kind == NUMBER]
    panels = _panels(givens, len(keys), sheet.grid.last, typed is not None)
    sheet.section(title, sections[0].heading.rstrip("."))
    main: Block | None = None
    for panel in panels:
        if main is not None:
            sheet.starts.append(sheet.page.row)
            sheet.group(f"{title}: left as usual unless typed" if typed is not None else f"{title}, continued", "")
        main = _lay_panel(sheet, panel, level, counts, keys, main, typed)


def _panels(givens: Sequence[Input], keys: int, last: int, told: bool) -> list[_Panel]:
    narrow = [each for each in givens if not shows_itself(each)]
    texts = tuple(each for each in givens if shows_itself(each))
    room, panels = last - VALUE + 1 - keys, []
    first = VALUE
    needed = next(cols * len(texts) for cols in (3, 2, 1) if cols * len(texts) <= last - VALUE + 1)
    while True:
        part, rest = tuple(narrow[:room]), narrow[room:]
        fits = not rest and len(part) + needed <= room
        of_part = texts if fits else ()
        beside = told and len(part) * 2 + (needed if fits else 0) <= room and len(part) > 0
        panels.append(_Panel(part, of_part, first, beside))
        if fits:
            return panels
        narrow, room = rest, last - VALUE + 1


def _lay_panel(
    sheet: SheetLayout,
    panel: _Panel,
    level: Level,
    counts: Mapping[Level, int],
    keys: Sequence[RowKey],
    main: Block | None,
    typed: TypedPlaces | None,
) -> Block:
    """A panel; the first has the numbers of its rows at its right end. Gives the block that has them."""
    last = sheet.grid.last
    own_keys = keys if main is None else ()
    columns = panel.columns(last - len(own_keys))
    key_col = last + 1 - len(own_keys)
    _lay_heads(sheet, panel, level, columns, own_keys, key_col)
    if main is None:
        main = block = block_below(sheet, level, counts, keys, key_col)
    else:
        above = known_rows_above(level, counts)
        block = Block(sheet.name, level, sheet.page.row, counts[level], False, above=above, keyed_by=main)
    names = row_names(level, counts)
    for given, col, _ in columns:
        sheet.places.put_range(given, block, col)
    for index, name in enumerate(names):
        for at, key in enumerate(own_keys):
            key_cell(sheet, key, index, key_col + at)
        if panel.beside and typed is not None:
            _lay_typed(sheet, panel.narrow, level, index, _beside_col(panel, key_col), typed)
        called = _in_row(name, level, index) if panel.beside else name
        _lay_boxes(sheet, called, columns, level, index, typed)
    if not panel.beside and panel.narrow and typed is not None:
        _lay_typed_rows(sheet, panel, level, names, typed)
    return main


def _lay_boxes(
    sheet: SheetLayout,
    called: RowText,
    columns: Sequence[tuple[Input, int, int]],
    level: Level,
    index: int,
    typed: TypedPlaces | None,
) -> None:
    """The boxes of a row, with its name. Ends the row."""
    page = sheet.page
    sheet.number_row()
    page.put(JobText(page.row, ITEM, "itemname", called, wraps=False))
    for given, col, end in columns:
        put_box(sheet, given, index, col, "boxtext" if shows_itself(given) else "")
        for rest in range(col + 1, end + 1):
            page.put(FixedText(page.row, rest, "boxline", ""))
        if shows_itself(given) and typed is not None:
            _mark_typed(sheet, given, level, index, end, typed)
    sheet.end_row()


def _beside_col(panel: _Panel, after: int) -> int:
    """The first column of what was typed, where it ends at the column ``after``."""
    return after - len(panel.narrow)


def _lay_heads(
    sheet: SheetLayout,
    panel: _Panel,
    level: Level,
    columns: Sequence[tuple[Input, int, int]],
    keys: Sequence[RowKey],
    key_col: int,
) -> None:
    heads = {ITEM: (str(level).capitalize(), "", True)}
    heads |= {col: (_head(given), unit_of(given), given.value_type is ValueType.TEXT) for given, col, _ in columns}
    if panel.beside:
        start = _beside_col(panel, key_col)
        heads |= {start + at: (_head(given), "as typed", False) for at, given in enumerate(panel.narrow)}
    heads |= {key_col + at: (str(key.of).capitalize(), "no.", False) for at, key in enumerate(keys)}
    sheet.column_heads(heads, sheet.grid.last)


_SHORT = {
    "Thickness": "Thick", "Other thickness": "Other thick", "Old slab thickness": "Old slab thick",
    "Reinforcement": "Rein- forced", "Accessible route": "Access route", "Thickened width": "Thick width",
    "Embedment": "Embed", "Projection": "Project", "Slopes toward a building": "To a building",
    "Vertical change in level": "Level change", "Length for joint layout": "Joint layout",
    "Vehicles": "Traffic", "Perimeter": "Perim.", "Isolation": "Isolate",
    "Contamination surcharge": "Sur- charge", "Account": "Acct.", "Minimum charge": "Least charge",
    "Minimum hours": "Least hours", "Combined rating": "Comb. rating", "Turnaround time": "Turn time",
    "Accepts wet soil": "Takes wet soil", "Accepts roots and turf": "Takes roots", "Prevailing": "Pre- vailing",
}  # fmt: skip
"""Heads of columns whose labels have a word that is wider than the column."""


def _head(given: Input) -> str:
    return _SHORT.get(given.label, given.label)


def _lay_typed_rows(
    sheet: SheetLayout, panel: _Panel, level: Level, names: Sequence[RowText], typed: TypedPlaces
) -> None:
    """What was typed, below the boxes: the letter of each column, and the number of each row."""
    page = sheet.page
    page.put(FixedText(page.row, ITEM, "typedheadleft", "As typed"))
    for at, given in enumerate(panel.narrow):
        page.put(JobText(page.row, panel.first + at, "typedhead", _column(given, level), wraps=False))
    sheet.end_row(sheet.grid.quiet)
    for index, name in enumerate(names):
        page.put(JobText(page.row, ITEM, "typedname", _in_row(name, level, index), wraps=False))
        _lay_typed(sheet, panel.narrow, level, index, panel.first, typed)
        sheet.end_row(sheet.grid.quiet)


def _lay_typed(
    sheet: SheetLayout, givens: Sequence[Input], level: Level, index: int, first: int, typed: TypedPlaces
) -> None:
    page = sheet.page
    for at, given in enumerate(givens):
        page.put(JobText(page.row, first + at, "typed", _typed(given, level, index), wraps=False))
        typed.cells[given, index] = page.row, first + at


def _typed(given: Input, level: Level, index: int) -> RowText:
    return lambda job: format_row(job.rows[level][index].entries[given])


def _mark_typed(sheet: SheetLayout, given: Input, level: Level, index: int, end: int, typed: TypedPlaces) -> None:
    """Whether words or a day were typed, to the right of the printed columns, beside what they were at issue."""
    at = end + aside(sheet.grid)

    def mark(job: JobInput) -> CellValue:
        return "typed" if job.rows[level][index].entries[given].typed else ""

    sheet.page.put(JobText(sheet.page.row, at, "issued", mark, wraps=False))
    typed.origins[given, index] = sheet.page.row, at


def _column(given: Input, level: Level) -> RowText:
    return lambda job: column_of((row.entries[given] for row in job.rows[level]), given.section.table)


def _in_row(name: RowText, level: Level, index: int) -> RowText:
    """The name of a row, with its number in the input book."""

    def text(job: JobInput) -> CellValue:
        where = row_of(_entries(job, level, index), _table_of(job, level, index))
        return f"{name(job)}, {where}" if where else name(job)

    return text


def _entries(job: JobInput, level: Level, index: int) -> list[Entry]:
    return list(job.rows[level][index].entries.values())


def _table_of(job: JobInput, level: Level, index: int) -> str:
    return next(iter(job.rows[level][index].entries)).section.table
