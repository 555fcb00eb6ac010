"""The cells of the numbers and the words by which formulas find the rows of a block: those that are referred to."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from calc.formula.levels import Level
from calc.layout.addresses import NUMBER, WORD, Block
from calc.layout.grid import ITEM, VALUE
from calc.layout.page import FixedText, JobText, Number
from calc.layout.row_keys import RowKey, known_rows_above, row_keys
from calc.layout.sheet_layout import SheetLayout


def used_keys(sheet: SheetLayout, level: Level, counts: Mapping[Level, int]) -> list[RowKey]:
    """The keys of the rows of ``level`` that some formula refers to on this sheet, but for their own names.

    The names of rows stand beside them, or above them, in any case.
    """
    return [
        key
        for key in row_keys(level, counts)
        if (key.of, key.kind) != (level, WORD) and sheet.draft.uses((sheet.name, level, key.of, key.kind))
    ]


def block_below(
    sheet: SheetLayout, level: Level, counts: Mapping[Level, int], keys: Sequence[RowKey], first_col: int
) -> Block:
    """The rows from the current one down, with their keys in the columns from ``first_col`` on."""
    return _block(sheet, level, counts, sheet.page.row, False, keys, first_col, ITEM)


def block_abreast(sheet: SheetLayout, level: Level, counts: Mapping[Level, int], keys: Sequence[RowKey]) -> Block:
    """The rows side by side from the first column of values on, with their keys in the rows from the current one on.

    Their names stand in the row above.
    """
    return _block(sheet, level, counts, VALUE, True, keys, sheet.page.row, sheet.page.row - 1)


def _block(
    sheet: SheetLayout,
    level: Level,
    counts: Mapping[Level, int],
    first: int,
    across: bool,
    keys: Sequence[RowKey],
    at: int,
    names: int,
) -> Block:
    numbers = {key.of: at + place for place, key in enumerate(keys) if key.kind == NUMBER}
    words = {key.of: at + place for place, key in enumerate(keys) if key.kind != NUMBER}
    above = known_rows_above(level, counts)
    own = names if not level.crossed and level.axis.named else None
    return Block(sheet.name, level, first, counts[level], across, numbers, own, above, words)


def key_row(sheet: SheetLayout, key: RowKey) -> None:
    """A key of rows that stand side by side."""
    sheet.page.put(FixedText(sheet.page.row, ITEM, "quiet", key.head))
    for index in range(max(len(key.numbers), len(key.texts))):
        key_cell(sheet, key, index, VALUE + index)
    sheet.end_row()


def key_cell(sheet: SheetLayout, key: RowKey, index: int, col: int) -> None:
    """A key of one row."""
    row = sheet.page.row
    if key.numbers:
        sheet.page.put(Number(row, col, "rowkey", key.numbers[index]))
    else:
        format_text = "0" if key.kind == NUMBER else ""
        sheet.page.put(JobText(row, col, "rowkey", key.texts[index], format_text, wraps=False))
