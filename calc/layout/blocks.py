"""Blocks: the rows of a level on a sheet, side by side from the first column of values, or one below another."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import TypeVar

from calc.formula.levels import Level, level_of
from calc.intake.records import JobInput
from calc.layout.addresses import Block
from calc.layout.page import CellValue, FixedText, JobText, Number, Page

BAND = 6
"""Columns of values beside the row numbers; more go in a band below."""

Each = TypeVar("Each")


def bands(columns: Sequence[Each]) -> list[Sequence[Each]]:
    """The columns of a block in bands that fit a page."""
    return [columns[start : start + BAND] for start in range(0, len(columns), BAND)]


def block_below(page: Page, level: Level, counts: Mapping[Level, int], first_col: int) -> tuple[Block, int]:
    """A block of rows one below another that starts in the next row, and the first column free for its values.

    The current row is its head: the number of each row, the number of the row it is within, and its name.
    """
    if level.crossed:
        return _crossed_below(page, level, counts, first_col)
    count = counts[level]
    above = [level_of(axis) for axis in level.axes if axis is not level.axis]
    numbers = {each: first_col + place for place, each in enumerate([level, *above])}
    words = first_col + len(numbers) if level.axis.named else None
    sure = {each: level.rows_above(each, counts) for each in above if level.is_contiguous_in(each)}
    block = Block(page.name, level, page.row + 1, count, False, numbers, words, sure)
    for each, col in numbers.items():
        head(page, page.row, col, "No." if each == level else f"{each} No.")
        for index in range(count):
            page.put(_number(block.first + index, col, index, each, level, counts))
    if words is not None:
        _list_words(page, block, level, words, range(count))
    return block, first_col + len(numbers) + (words is not None)


def _crossed_below(page: Page, level: Level, counts: Mapping[Level, int], first_col: int) -> tuple[Block, int]:
    """Every pair (or triple) of rows: its number, and the word or the number of each row that it is a pair of."""
    uppers = [upper for upper in counts if upper.axes and upper < level and {*upper.leaves} <= {*level.leaves}]
    above = {upper: level.rows_above(upper, counts) for upper in uppers}
    leaves = [level_of(leaf) for leaf in level.leaves]
    columns = {leaf: first_col + 1 + place for place, leaf in enumerate(leaves)}
    named = {leaf: col for leaf, col in columns.items() if leaf.axis.named}
    numbers = {level: first_col} | {leaf: col for leaf, col in columns.items() if leaf not in named}
    block = Block(page.name, level, page.row + 1, counts[level], False, numbers, None, above, named)
    head(page, page.row, first_col, "No.")
    for index in range(block.count):
        page.put(Number(block.first + index, first_col, "number", index + 1))
    for leaf, col in columns.items():
        if leaf in named:
            _list_words(page, block, leaf, col, above[leaf])
            continue
        head(page, page.row, col, f"{leaf} No.")
        for index, row in enumerate(above[leaf]):
            page.put(Number(block.first + index, col, "number", row + 1))
    return block, first_col + 1 + len(leaves)


def _list_words(page: Page, block: Block, level: Level, col: int, rows: Iterable[int]) -> None:
    """The names of the rows of ``level`` down a column, one for each of ``rows``."""
    head(page, page.row, col, f"{level}")
    for index, row in enumerate(rows):
        page.put(JobText(block.first + index, col, "words", word_of(level, row)))
        page.heights[block.first + index] = 26


def _number(row: int, col: int, index: int, of: Level, level: Level, counts: Mapping[Level, int]) -> Number | JobText:
    """The number of a row, or of the row it is within: reserved rows are shared evenly, the rest is typed."""
    if of == level:
        return Number(row, col, "number", index + 1)
    if level.axis.slots:
        return Number(row, col, "number", index // (counts[level] // counts[of]) + 1)
    return JobText(row, col, "number", lambda job: float(job.rows[level][index].within + 1), "0")


def word_of(level: Level, index: int) -> Callable[[JobInput], CellValue]:
    """The name of a row: the program's own, or as typed."""
    words = level.axis.words
    if words:
        return lambda _job: words[index]
    return lambda job: job.rows[level][index].word


def head(page: Page, row: int, col: int, text: str) -> None:
    """The head of a column of values."""
    page.put(FixedText(row, col, "head", text))
    page.fit(text, col, row)


def block_across(page: Page, level: Level, count: int, first_col: int, words_row: int) -> Block:
    """A block of rows side by side: their names are in ``words_row``, their numbers in the row below it."""
    block = Block(page.name, level, first_col, count, True, {level: words_row + 1}, words_row)
    for index in range(count):
        col = first_col + index
        page.put(Number(words_row + 1, col, "number", index + 1))
        page.put(JobText(words_row, col, "word", word_of(level, index)))
        if level.axis.words:
            page.fit(level.axis.words[index], col, words_row)
    return block
