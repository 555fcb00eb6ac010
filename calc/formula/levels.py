"""Levels: what a number has a value for each of - the job, each area, each truck, each packing of each product.

A level is a set of axes. The job is above everything: it has none. A level is above another when its axes are
among the other's, and a value of a higher level can be used at a lower one as it is.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from itertools import count

_declaration_order = count()


@dataclass(frozen=True)
class Axis:
    """One dimension of rows.

    ``within`` is the parent axis: each row belongs to one row of it (an edge to an area). Rows are typed in an input
    table, or fixed and named (``words``), or are ``slots``: what the job needs of them, and room for edits.
    """

    name: str
    within: Axis | None = None
    words: tuple[str, ...] = ()
    needs: tuple[Level, ...] = ()
    """For each of ``words`` the level of typed rows without which a job does not have it; the job itself for one that
    every job has."""
    slots: bool = False
    shown: bool = False
    """Whether it only shows what stands elsewhere, so that a few slots more than the job needs are enough."""
    titled: bool = False
    """Whether a person types a name for each row."""
    across: bool = False
    """Whether a sheet shows its rows side by side, a column each, rather than one below the other."""
    order: int = field(default_factory=lambda: next(_declaration_order), compare=False)
    """When it was declared: where levels are crossed, the axis that was declared last runs fastest."""

    @property
    def named(self) -> bool:
        """Whether each row has a name: one of the program's, or one that is typed."""
        return bool(self.words) or self.titled

    @property
    def ragged(self) -> bool:
        """Whether it depends on what was typed which of its named rows a job has."""
        return bool(self.needs)

    def places(self, counts: Mapping[Level, int]) -> tuple[int, ...]:
        """Which of ``words`` a job with so many rows of each level has, from 0."""
        if not self.needs:
            return self._all_places
        return tuple(place for place, needed in enumerate(self.needs) if counts.get(needed, 1) > 0)

    @cached_property
    def _all_places(self) -> tuple[int, ...]:
        return tuple(range(len(self.words)))

    def words_of(self, counts: Mapping[Level, int]) -> tuple[str, ...]:
        """The names of the rows that a job with so many rows of each level has."""
        return tuple(self.words[place] for place in self.places(counts))

    @property
    def typed(self) -> bool:
        """Whether a person types the rows of this axis."""
        return not self.words and not self.slots


@dataclass(frozen=True)
class Level:
    """A set of axes, closed under ``within``."""

    axes: frozenset[Axis] = field(default_factory=frozenset)

    def __le__(self, other: Level) -> bool:
        return self.axes <= other.axes

    def __mul__(self, other: Level) -> Level:
        """The level that has a row for every pair of rows."""
        return Level(self.axes | other.axes)

    @cached_property
    def leaves(self) -> tuple[Axis, ...]:
        """The axes that are not the parent of another axis of this level, in the order in which they were declared."""
        inner = {axis.within for axis in self.axes}
        return tuple(sorted((axis for axis in self.axes if axis not in inner), key=lambda axis: axis.order))

    @property
    def crossed(self) -> bool:
        """Whether it has a row for every pair (or triple) of rows of other levels."""
        return len(self.leaves) > 1

    def is_contiguous_in(self, upper: Level) -> bool:
        """Whether the rows that belong to one row of ``upper`` are always contiguous."""
        if upper in {JOB, self}:
            return True
        if self.crossed:
            return upper.leaves == self.leaves[: len(upper.leaves)]
        return upper < self and self.axis.slots

    def __lt__(self, other: Level) -> bool:
        return self.axes < other.axes

    def rows_above(self, upper: Level, counts: Mapping[Level, int]) -> tuple[int, ...]:
        """For each row, from 0, its row of ``upper``, where that follows from the numbers of rows alone.

        It does for slots, and for the levels that are crossed in this one.
        """
        if not self.crossed:
            share = counts[self] // max(1, counts[upper])
            return tuple(row // share for row in range(counts[self]))
        sizes = [counts[level_of(leaf)] for leaf in self.leaves]
        return tuple(_row_above(row, self.leaves, sizes, upper.leaves) for row in range(counts[self]))

    @cached_property
    def axis(self) -> Axis:
        """The one leaf of a level that has only one."""
        (leaf,) = self.leaves
        return leaf

    @property
    def across(self) -> bool:
        """Whether a sheet shows its rows side by side."""
        return len(self.leaves) == 1 and self.axis.across

    def __str__(self) -> str:
        return " and ".join(axis.name for axis in self.leaves) or "job"


def _row_above(row: int, leaves: tuple[Axis, ...], sizes: list[int], upper: tuple[Axis, ...]) -> int:
    """A row's places along its axes, the last running fastest, and out of them its row of ``upper``."""
    places: dict[Axis, tuple[int, int]] = {}
    for leaf, size in zip(reversed(leaves), reversed(sizes), strict=True):
        row, place = divmod(row, size)
        places[leaf] = place, size
    above = 0
    for leaf in upper:
        place, size = places[leaf]
        above = above * size + place
    return above


_MAX_ACROSS = 6
"""The most named rows that are shown side by side."""

JOB = Level()
"""The level of the whole job: one row."""


def level_of(axis: Axis) -> Level:
    """The level that has a row for each row of ``axis``."""
    axes = {axis}
    while axis.within is not None:
        axis = axis.within
        axes.add(axis)
    return Level(frozenset(axes))


def typed_rows(name: str, within: Level = JOB, across: bool = False, titled: bool = False) -> Level:
    """A level whose rows are typed in an input table, each within one row of ``within``."""
    return level_of(Axis(name, within.axis if within.axes else None, across=across, titled=titled))


def named_rows(name: str, *words: str, only_with: Mapping[str, Level] | None = None) -> Level:
    """A level whose rows are the same for every job, named by ``words``.

    ``only_with`` gives for a word the level of typed rows without which a job does not have that row: the rows that it
    has are numbered among themselves.
    """
    needs = tuple(only_with.get(word, JOB) for word in words) if only_with else ()
    return level_of(Axis(name, words=words, needs=needs, across=len(words) <= _MAX_ACROSS))


def slot_rows(name: str, within: Level = JOB, shown: bool = False) -> Level:
    """A level whose rows follow from values: as many as the job needs, and room for edits of its workbook.

    Within a level, each of its rows has as many as the one that needs most. ``shown`` is for a list that only shows
    what stands elsewhere, such as one on a paper: it has little room.
    """
    return level_of(Axis(name, within.axis if within.axes else None, slots=True, shown=shown))
