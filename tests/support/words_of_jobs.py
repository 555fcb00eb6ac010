"""The numbers of real jobs, for the reader of words: the rows of every level, and the values of every name."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from calc.declared import Declared, Line, Section
from calc.formula.levels import JOB, Axis, Level, level_of
from calc.intake.schema import everything
from calc.model.results import JobValues
from words_reader import Calculator, Name, Node, Parser, Row, Unreadable, Value

DECLARED: Sequence[Declared] = [each for each in everything() if not each.sums_rows]
"""Whatever has a name; the total of a line is said as a total."""

_LEVELS = {each.level for each in everything()}
LEVELS: Mapping[str, Level] = {
    str(level): level for level in _LEVELS | {level_of(axis) for each in _LEVELS for axis in each.axes}
}


def parser() -> Parser:
    """A reader who knows the names of the program."""
    return Parser(frozenset(each.label for each in DECLARED), frozenset(LEVELS))


class Names:
    """What each name stands for in a line, as the page of the reader has it."""

    def __init__(self) -> None:
        self._labeled: dict[str, list[Declared]] = defaultdict(list)
        for each in DECLARED:
            self._labeled[each.label].append(each)

    def meaning(self, name: Name, section: type[Section], level: Level) -> Declared:
        """The declaration that ``name`` means in a line of this section and level; one, or :class:`Unreadable`."""
        candidates = self._labeled[name.label]
        if name.section:
            chosen = [each for each in candidates if each.section.title == name.section]
        else:
            own = [each for each in candidates if each.section is section]
            near = [each for each in candidates if each.level == level]
            chosen = own or (near if len(near) == 1 else candidates)
        if len(chosen) != 1:
            raise Unreadable(f"{name} in {section.title} is {len(chosen)} declarations: {chosen}")
        return chosen[0]


NAMES = Names()


@dataclass(frozen=True)
class Column:
    """The values of one declaration in one job."""

    axes: tuple[str, ...]
    rows: Sequence[Row]
    values: Sequence[Value]


class Job:
    """One evaluated job, by rows."""

    def __init__(self, values: JobValues) -> None:
        self._values = values
        self._number = values.starts[JOB]
        self._columns: dict[Declared, Column] = {}

    def has(self, line: Line) -> bool:
        """Whether the job has the section of ``line``: what it has no rows for is left out and counts as 0."""
        return not line.section.is_left_out(self._values.counts)

    @cached_property
    def rows(self) -> Mapping[str, Sequence[Row]]:
        """The rows of every level."""
        return {name: self._rows_of(level) for name, level in LEVELS.items()}

    def _rows_of(self, level: Level) -> Sequence[Row]:
        table = self._values.frame.rows_of(level)
        here = [place for place, job in enumerate(table.job) if job == self._number]
        return [
            Row(
                {axis.name: int(table.of_axis[axis][place]) for axis in level.axes},
                {axis.name: self._name_of(axis, int(table.of_axis[axis][place])) for axis in level.axes},
            )
            for place in here
        ]

    def _name_of(self, axis: Axis, place: int) -> str:
        return str(self._values.frame.rows_of(level_of(axis)).words[place])

    def column(self, declared: Declared) -> Column:
        """All the values of ``declared``."""
        if declared not in self._columns:
            rows = self.rows[str(declared.level)]
            values = [self._values.of(declared, index) for index in range(len(rows))]
            self._columns[declared] = Column(axes_of(declared.level), rows, values)
        return self._columns[declared]

    def calculated(self, line: Line, phrase: Node, index: int) -> Value:
        """What ``phrase``, the words of ``line``, comes to in its row ``index``."""
        calculator = Calculator(
            lambda name: self.column(NAMES.meaning(name, line.section, line.level)),
            {name: axes_of(level) for name, level in LEVELS.items()},
            self.rows,
            self.rows[str(line.level)][index],
            lambda axis: LEVELS[axis].axis.words,
        )
        return calculator.value(phrase)


def axes_of(level: Level) -> tuple[str, ...]:
    """The axes of a level that have no other below them."""
    return tuple(axis.name for axis in level.leaves)


def agrees(one: Value, other: Value) -> bool:
    """Whether two values are the same, but for the last digits; a blank one counts as 0."""
    if isinstance(one, str) or isinstance(other, str):
        return one == other
    return bool(np.isclose(_plain(one), _plain(other), rtol=1e-9, atol=1e-9))


def _plain(value: float) -> float:
    return 0.0 if np.isnan(value) else float(value)


def chosen_rows(count: int, wanted: Collection[int] = (), most: int = 12) -> Sequence[int]:
    """Rows to try, spread over all of them."""
    step = max(1, -(-count // most))
    return sorted({*range(0, count, step), *(each for each in wanted if each < count)})
