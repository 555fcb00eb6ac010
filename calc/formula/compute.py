"""Evaluation of a tree with numpy: a column over all jobs of a chunk, of floats in declared units.

The rows of every level are sorted by job. Texts are object columns; a number that was not given is NaN.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from calc.formula.aggregate import Aggregate, Before, ByRow, First, RowAt, RowCount, RowNumber, RowWord, Running
from calc.formula.functions import NOTHING, Column
from calc.formula.keys import GroupSum, LookupByKey, SumIf
from calc.formula.levels import JOB, Axis, Level, level_of
from calc.formula.tree import Apply, Exact, Expr, Literal, Named, RowCalled, UnitCast
from calc.formula.value_types import ValueType

_RELATIVE_TOLERANCE = 4e-15
"""The relative difference below which a spreadsheet program takes two numbers as equal."""


@dataclass(frozen=True)
class Rows:
    """The rows of one level: the job of each, its number within the job, and its row of each axis of the level.

    ``places`` says for named rows which of the names of the level each has, from 0.
    """

    job: Column
    number: Column
    of_axis: Mapping[Axis, Column]
    words: Column
    places: Column = field(default_factory=lambda: np.array([], dtype=int))

    def __len__(self) -> int:
        return len(self.job)


@dataclass
class Batch:
    """A chunk of jobs: the rows of every level used so far, and the columns computed so far."""

    jobs: int
    rows: dict[Level, Rows] = field(default_factory=dict)
    columns: dict[Named, Column] = field(default_factory=dict)

    def __post_init__(self) -> None:
        every = np.arange(self.jobs)
        self.rows[JOB] = Rows(every, np.ones(self.jobs), {}, np.full(self.jobs, "", dtype=object))

    def add_rows(self, level: Level, jobs: Iterable[int], within: Iterable[int], words: Iterable[str]) -> None:
        """Gives ``level`` its rows, in order of job: the job of each, its row of the level above, its name."""
        job = np.fromiter(jobs, dtype=int)
        axis = level.axis
        of_axis = {axis: np.arange(len(job))}
        if axis.within is not None:
            parent = np.fromiter(within, dtype=int)
            upper = next(rows for other, rows in self.rows.items() if other.axes and other.leaves == (axis.within,))
            of_axis |= {above: rows[parent] for above, rows in upper.of_axis.items()}
        self.rows[level] = Rows(job, _numbered(job), of_axis, np.array(list(words), dtype=object))

    def rows_of(self, level: Level) -> Rows:
        """The rows of ``level``; a crossed level and a level of named rows are made at first use."""
        if level not in self.rows:
            self.rows[level] = self._named(level) if len(level.leaves) == 1 else self._crossed(level)
        return self.rows[level]

    def _named(self, level: Level) -> Rows:
        axis = level.axis
        if not axis.words:
            raise KeyError(f"the {axis.name} rows were not given")
        job, places = np.nonzero(self._has_rows(axis))
        words = np.array(axis.words, dtype=object)[places]
        return Rows(job, _numbered(job), {axis: np.arange(len(job))}, words, places)

    def _has_rows(self, axis: Axis) -> Column:
        """For each job (down) which of the named rows of ``axis`` it has (across)."""
        has = np.ones((self.jobs, len(axis.words)), dtype=bool)
        for place, needed in enumerate(axis.needs):
            if needed in self.rows:
                has[:, place] = np.bincount(self.rows[needed].job, minlength=self.jobs) > 0
        return has

    def _number_called(self, node: RowCalled) -> Column:
        """For each job the number of the row with a name; 0 where it has no such row."""
        has = self._has_rows(node.of.axis)
        place = node.of.axis.words.index(node.row_name)
        return np.asarray(np.where(has[:, place], np.cumsum(has, axis=1)[:, place], 0), dtype=float)

    def _crossed(self, level: Level) -> Rows:
        """Every pair, triple and so on of rows of one job, the last axis running fastest."""
        single = [self.rows_of(level_of(axis)) for axis in level.leaves]
        jobs: list[int] = []
        indexes: list[list[int]] = [[] for _ in single]
        by_job = [_by_job(rows, self.jobs) for rows in single]
        for job in range(self.jobs):
            grids = np.meshgrid(*(part[job] for part in by_job), indexing="ij")
            jobs.extend([job] * grids[0].size)
            for mine, grid in zip(indexes, grids, strict=True):
                mine.extend(grid.ravel().tolist())
        job_column = np.array(jobs, dtype=int)
        of_axis: dict[Axis, Column] = {}
        words = np.full(len(jobs), "", dtype=object)
        for rows, mine in zip(single, indexes, strict=True):
            index = np.array(mine, dtype=int)
            of_axis |= {axis: column[index] for axis, column in rows.of_axis.items()}
            words = words + np.where(words == "", "", ", ") + rows.words[index]
        return Rows(job_column, _numbered(job_column), of_axis, words)

    def above(self, lower: Level, upper: Level) -> Column:
        """For each row of ``lower`` the row of ``upper`` that it belongs to."""
        rows = self.rows_of(lower)
        if upper == JOB:
            return rows.job
        if lower == upper:
            return np.arange(len(rows))
        if len(upper.leaves) == 1:
            return rows.of_axis[upper.axis]
        key, sought = _keys(self.rows_of(upper), rows, upper)
        order = np.argsort(key, kind="stable")
        return order[np.searchsorted(key[order], sought)]

    def is_infinite(self, named: Named, start: int = 0, end: int | None = None) -> bool:
        """Whether a number has no end in some row, of all or of those from ``start`` to before ``end``."""
        column = self.columns[named]
        return column.dtype == float and bool(np.isinf(column[start:end]).any())

    def broadcast(self, column: Column, upper: Level, lower: Level) -> Column:
        """A column of ``upper`` with a value for each row of ``lower``."""
        return column if upper == lower else column[self.above(lower, upper)]

    def value(self, node: Expr, level: Level) -> Column:
        """The values of ``node`` for each row of ``level``: numbers, texts or flags."""
        match node:
            case Named():
                return self.broadcast(self.columns[node], node.level, level)
            case Apply():
                return np.asarray(node.function.numbers(*(self.value(part, level) for part in node.arguments)))
            case RowCalled():
                return self.broadcast(self._number_called(node), JOB, level)
            case Literal(value=value) | Exact(value=value):
                kind = object if isinstance(value, str) else float
                return np.full(len(self.rows_of(level)), value, dtype=kind)
            case UnitCast():
                return self.value(node.part, level)
            case Aggregate():
                return self.broadcast(self._aggregated(node), node.to, level)
            case RowAt():
                return self._row_at(node, level)
            case Before():
                return self._before(node, level)
            case First():
                return self.broadcast(self._first(node), node.level, level)
            case Running():
                return self.broadcast(self._running(node), node.level, level)
            case LookupByKey():
                return self._lookup_by_key(node, level)
            case SumIf():
                return self._sum_if(node, level)
            case GroupSum():
                return self.broadcast(self._group_sum(node), node.level, level)
            case RowNumber():
                return self.broadcast(self._row_number(node), node.of, level)
            case RowCount():
                return self.broadcast(self._row_count(node), node.within, level)
            case ByRow():
                return self._by_row(node, level)
            case RowWord():
                return self.broadcast(self.rows_of(node.of).words, node.of, level)
        raise TypeError(f"no numbers for {type(node).__name__}")

    def _aggregated(self, node: Aggregate) -> Column:
        lower, column = node.part.level, self.columns[node.part]
        group = self.above(lower, node.to)
        groups = len(self.rows_of(node.to))
        if node.how == "total":
            return np.bincount(group, weights=column, minlength=groups)
        if node.how == "greatest":
            return _least(-column, group, groups) * -1.0 + 0.0
        least = _least(column, group, groups)
        if node.how == "least":
            return least
        near = np.abs(column - least[group]) <= _RELATIVE_TOLERANCE * np.abs(least[group])
        first = np.where(near, np.arange(1.0, len(column) + 1), np.inf)
        start = np.searchsorted(group, np.arange(groups))
        return np.where(_least(first, group, groups) > 0, _least(first, group, groups) - start, 0.0)

    def _row_at(self, node: RowAt, level: Level) -> Column:
        column = self.columns[node.part]
        if not len(column):
            nothing = 0.0 if node.value_type is ValueType.NUMBER else NOTHING
            return np.full(len(self.rows_of(level)), nothing, dtype=float if nothing == 0.0 else object)
        by = self.value(node.by, level)
        if node.by.value_type is ValueType.TEXT:
            return column[self._places_of_words(node, level, by)]
        group = self.above(node.part.level, node.of)
        mine = self.above(level, node.of)
        start, end = np.searchsorted(group, mine), np.searchsorted(group, mine, side="right")
        place = np.minimum(start + by.astype(int) - 1, len(column) - 1)
        found = (end > start) & (by > 0) if isinstance(node.by, RowCalled) else end > start
        return np.where(found, column[place], 0.0 if node.value_type is ValueType.NUMBER else NOTHING)

    def _places_of_words(self, node: RowAt, level: Level, by: Column) -> list[int]:
        """The row of each word of ``by``, in the job that asks for it."""
        job = self.rows_of(level).job
        words = node.part.level.axis.words if len(node.part.level.leaves) == 1 else ()
        if words:
            places = {word: place for place, word in enumerate(words)}
            return [mine * len(words) + places[key] for mine, key in zip(job.tolist(), by, strict=True)]
        rows = self.rows_of(node.part.level)
        keys: dict[Any, int] = {}
        for place, key in enumerate(zip(rows.job.tolist(), rows.words, strict=True)):
            keys.setdefault(key, place)
        return [keys[key] for key in zip(job.tolist(), by, strict=True)]

    def _row_number(self, node: RowNumber) -> Column:
        group = self.above(node.of, node.within)
        return np.asarray(np.arange(len(group)) - np.searchsorted(group, group) + 1, dtype=float)

    def _row_count(self, node: RowCount) -> Column:
        groups = len(self.rows_of(node.within))
        return np.bincount(self.above(node.of, node.within), minlength=groups).astype(float)

    def _by_row(self, node: ByRow, level: Level) -> Column:
        row = self.broadcast(self.rows_of(node.of).places, node.of, level)
        # a case is computed for its own rows and then broadcast: a table of costs has a hundred cases
        cases = [self.broadcast(self.value(case, case.level), case.level, level) for case in node.cases]
        return np.stack(cases)[row, np.arange(len(row))] if len(row) else cases[0]

    def _before(self, node: Before, level: Level) -> Column:
        column, group = self.columns[node.part], self.above(node.part.level, node.of)
        previous = np.roll(column, 1)
        starts = np.ones(len(column), dtype=bool)
        starts[1:] = group[1:] != group[:-1]
        shifted = self.broadcast(previous, node.part.level, level)
        return np.where(self.broadcast(starts, node.part.level, level), self.value(node.otherwise, level), shifted)

    def _first(self, node: First) -> Column:
        column, group = self.columns[node.part], self.above(node.part.level, node.of)
        _, first, place = np.unique(group, return_index=True, return_inverse=True)
        return column[first[place]]

    def _running(self, node: Running) -> Column:
        column, group = self.columns[node.part], self.above(node.part.level, node.of)
        order = np.argsort(group, kind="stable")
        sums = np.cumsum(column[order])
        starts = np.searchsorted(group[order], group[order])
        result = np.empty(len(column))
        result[order] = sums - np.where(starts > 0, sums[starts - 1], 0.0)
        return result

    def _lookup_by_key(self, node: LookupByKey, level: Level) -> Column:
        """Keys of all jobs in one order: job first, then key, so that one search finds every row."""
        column, keys = self.columns[node.part], self.columns[node.key]
        wanted, job = self.value(node.wanted, level), self.rows_of(level).job
        nothing = (
            np.zeros(len(job)) if node.value_type is ValueType.NUMBER else np.full(len(job), NOTHING, dtype=object)
        )
        if not len(column):
            return nothing
        span = 1.0 + max(np.max(np.abs(keys)), np.max(np.abs(wanted), initial=0.0))
        listed = self.rows_of(node.key.level).job * span + keys
        sought = job * span + wanted
        order = np.argsort(listed, kind="stable")
        if node.ascending:
            place = np.searchsorted(listed[order], sought, side="right") - 1
            found = (place >= 0) & (self.rows_of(node.key.level).job[order][np.maximum(place, 0)] == job)
        else:
            place = np.minimum(np.searchsorted(listed[order], sought), len(listed) - 1)
            found = listed[order][place] == sought
        return np.where(found, column[order][np.maximum(place, 0)], nothing)

    def _sum_if(self, node: SumIf, level: Level) -> Column:
        rows, job = self.rows_of(node.part.level), self.rows_of(level).job
        wanted = self.value(node.wanted, level)
        result = np.zeros(len(job))
        if wanted.dtype != object:
            return self._sum_on(node, job, wanted)
        for word in set(wanted):
            sums = np.bincount(
                rows.job,
                weights=np.where(self.columns[node.key] == word, self.columns[node.part], 0.0),
                minlength=self.jobs,
            )
            result = np.where(wanted == word, sums[job], result)
        return result

    def _sum_on(self, node: SumIf, job: Column, wanted: Column) -> Column:
        """By number: the sum of the rows of each job and key, found for the job and number of each row."""
        jobs = np.concatenate([self.rows_of(node.part.level).job, job]).astype(float)
        keys = np.concatenate([self.columns[node.key], wanted])
        _, place = np.unique(np.stack([jobs, keys]), axis=1, return_inverse=True)
        group, rows = np.ravel(place), len(self.columns[node.key])
        sums = np.bincount(group[:rows], weights=self.columns[node.part], minlength=int(group.max(initial=0)) + 1)
        return np.asarray(sums[group[rows:]])

    def _group_sum(self, node: GroupSum) -> Column:
        rows = self.rows_of(node.key.level)
        pairs = np.stack([rows.job.astype(float), self.columns[node.key]])
        _, first, place = np.unique(pairs, axis=1, return_index=True, return_inverse=True)
        if node.part is None:
            return rows.number[first[np.ravel(place)]]
        group = np.ravel(place)
        return np.asarray(np.bincount(group, weights=self.columns[node.part])[group])


def _numbered(job: Column) -> Column:
    """1, 2, 3, ... within each job."""
    return np.asarray(np.arange(len(job)) - np.searchsorted(job, job) + 1, dtype=float)


def _by_job(rows: Rows, jobs: int) -> list[Column]:
    bounds = np.searchsorted(rows.job, np.arange(jobs + 1))
    return [np.arange(bounds[job], bounds[job + 1]) for job in range(jobs)]


def _keys(upper: Rows, lower: Rows, level: Level) -> tuple[Column, Column]:
    """One whole number for each row of ``upper``, and for each row of ``lower`` that of the row it belongs to."""
    key, sought = np.zeros(len(upper), dtype=np.int64), np.zeros(len(lower), dtype=np.int64)
    for axis in level.leaves:
        one, another = upper.of_axis[axis], lower.of_axis[axis]
        span = int(max(one.max(initial=0), another.max(initial=0))) + 1
        key, sought = key * span + one, sought * span + another
    return key, sought


def _least(column: Column, group: Column, groups: int) -> Column:
    """The least of each group; 0 for a group without rows, as MIN gives it."""
    result = np.full(groups, np.inf)
    np.minimum.at(result, group, column)
    return np.where(np.isinf(result), 0.0, result)
