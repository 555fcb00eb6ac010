"""The names of the rows of a level, and the numbers and words by which formulas find them."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from calc.formula.levels import Level, level_of
from calc.intake.records import JobInput
from calc.layout.addresses import NUMBER, WORD
from calc.layout.page import CellValue

RowText = Callable[[JobInput], CellValue]


@dataclass(frozen=True)
class RowKey:
    """A number or a word of every row of a level: those of the level itself, or of one above it."""

    of: Level
    kind: str
    head: str
    texts: tuple[RowText, ...]
    numbers: tuple[int, ...] = ()
    """The numbers, where they are the same for every job."""


def row_keys(level: Level, counts: Mapping[Level, int]) -> list[RowKey]:
    """Every key that the rows of ``level`` may be found by: the number of each, then those of the levels above."""
    own = RowKey(level, NUMBER, "No.", (), tuple(range(1, counts[level] + 1)))
    if level.crossed:
        return [own, *(_crossed_key(level, level_of(leaf), counts) for leaf in level.leaves)]
    above = [level_of(axis) for axis in level.axes if axis is not level.axis]
    keys = [own, *(_key_of_above(level, upper, counts) for upper in above)]
    if level.axis.named:
        texts = tuple(row_word(level, index, counts) for index in range(counts[level]))
        keys.append(RowKey(level, WORD, str(level), texts))
    return keys


def _crossed_key(level: Level, leaf: Level, counts: Mapping[Level, int]) -> RowKey:
    """The word, or the number, of the row that each pair of rows has of one of its levels."""
    rows = level.rows_above(leaf, counts)
    if leaf.axis.named:
        return RowKey(leaf, WORD, str(leaf), tuple(row_word(leaf, row, counts) for row in rows))
    return RowKey(leaf, NUMBER, f"{leaf} No.", (), tuple(row + 1 for row in rows))


def _key_of_above(level: Level, upper: Level, counts: Mapping[Level, int]) -> RowKey:
    """The number of the row of ``upper`` that each is within: reserved rows are shared evenly, the rest is typed."""
    head = f"{upper} No."
    if level.axis.slots:
        return RowKey(upper, NUMBER, head, (), tuple(row + 1 for row in level.rows_above(upper, counts)))
    return RowKey(upper, NUMBER, head, tuple(_number_within(level, index) for index in range(counts[level])))


def _number_within(level: Level, index: int) -> RowText:
    return lambda job: float(job.rows[level][index].within + 1)


def known_rows_above(level: Level, counts: Mapping[Level, int]) -> dict[Level, tuple[int, ...]]:
    """For each level above, the row that each row belongs to, where that follows from the numbers of rows alone."""
    if level.crossed:
        uppers = [upper for upper in counts if upper.axes and upper < level and {*upper.leaves} <= {*level.leaves}]
        return {upper: level.rows_above(upper, counts) for upper in uppers}
    above = [level_of(axis) for axis in level.axes if axis is not level.axis]
    return {upper: level.rows_above(upper, counts) for upper in above if level.is_contiguous_in(upper)}


def row_word(level: Level, index: int, counts: Mapping[Level, int]) -> RowText:
    """The name of a row by which formulas find it: the program's own, or as typed."""
    if level.axis.words:
        word = level.axis.words_of(counts)[index]
        return lambda _job: word
    return lambda job: job.rows[level][index].word


def row_names(level: Level, counts: Mapping[Level, int]) -> list[RowText]:
    """What a person calls each row: its name, or what it is within and its number there."""
    if level.crossed:
        return _pair_names(level, counts)
    axis, count = level.axis, counts[level]
    if axis.named:
        return [row_word(level, index, counts) for index in range(count)]
    if axis.within is None:
        return [_numbered(axis.name, index) for index in range(count)]
    upper = level_of(axis.within)
    if not axis.slots:
        return [_within(level, upper, index, counts) for index in range(count)]
    names, each = row_names(upper, counts), count // max(1, counts[upper])
    return [_slot(names[index // each], index % each + 1) for index in range(count)]


def _pair_names(level: Level, counts: Mapping[Level, int]) -> list[RowText]:
    """The names of the rows that each pair is made of."""
    leaves = [level_of(leaf) for leaf in level.leaves]
    parts = [[row_names(leaf, counts)[row] for row in level.rows_above(leaf, counts)] for leaf in leaves]
    return [_joined(names) for names in zip(*parts, strict=True)]


def _joined(names: tuple[RowText, ...]) -> RowText:
    return lambda job: ", ".join(str(name(job)) for name in names)


def _numbered(name: str, index: int) -> RowText:
    return lambda _job: f"{name} {index + 1}"


def _slot(name: RowText, number: int) -> RowText:
    return lambda job: f"{name(job)}, {number}"


def _within(level: Level, upper: Level, index: int, counts: Mapping[Level, int]) -> RowText:
    names = row_names(upper, counts)
    return lambda job: _name_within(job, level, names, index)


def _name_within(job: JobInput, level: Level, names: Sequence[RowText], index: int) -> str:
    """The row that it is within, what it is, and its place there."""
    within = job.rows[level][index].within
    place = sum(1 for row in job.rows[level][: index + 1] if row.within == within)
    return f"{names[within](job)}, {level.axis.name} {place}"
