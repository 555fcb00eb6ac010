"""The nodes that work across rows: aggregates, one row out of many, running totals, row numbers and names.

The functions in ``across`` build them; the nodes that operators build are in ``tree``.
"""

from __future__ import annotations

from dataclasses import dataclass

from calc.formula import words
from calc.formula.levels import JOB, Level
from calc.formula.tree import Exact, Expr, Named, Names, RowCalled
from calc.formula.value_types import ValueType
from calc.formula.words import Phrase, Rank
from calc.units.algebra import PLAIN, Unit

_AGGREGATES = {
    "total": "total of",
    "least": "lowest",
    "greatest": "highest",
    "place of least": "first row with the lowest",
}


def within(level: Level) -> str:
    """To which rows a phrase is confined: those of the same row of ``level``."""
    return f" within the {level}" if level.axes else ""


@dataclass(frozen=True, eq=False)
class Aggregate(Expr):
    """Many rows into one: the total, the least, the greatest, or the number of the row with the least (argmin).

    That number counts the rows that belong to the one row of ``to``; the first row wins a tie.
    """

    how: str
    part: Named
    to: Level

    @property
    def unit(self) -> Unit:
        return PLAIN if self.how == "place of least" else self.part.unit

    @property
    def parts(self) -> tuple[Expr, ...]:
        return (self.part,)

    @property
    def level(self) -> Level:
        return self.to

    def said(self, names: Names) -> Phrase:
        return Phrase(f"{_AGGREGATES[self.how]} {names(self.part).text}{within(self.to)}", Rank.PICKED)


@dataclass(frozen=True, eq=False)
class RowAt(Expr):
    """One row out of many: by its number among the rows or, where ``by`` is a text, by its name.

    The number counts the rows that belong to one row of the higher level ``of``.
    """

    part: Named
    by: Expr
    of: Level = JOB

    @property
    def value_type(self) -> ValueType:
        return self.part.value_type

    @property
    def unit(self) -> Unit:
        return self.part.unit

    @property
    def parts(self) -> tuple[Expr, ...]:
        return (self.part, self.by)

    @property
    def level(self) -> Level:
        return self.by.level * self.of

    def said(self, names: Names) -> Phrase:
        value, row_name = names(self.part).text, self._row_name()
        if row_name:
            return words.named_row(value, row_name)
        return Phrase(f"{value} {self._place(names)}{within(self.of)}", Rank.PICKED)

    def _row_name(self) -> str:
        """The name of a row that is always the same one, where the rows have names."""
        if isinstance(self.by, RowCalled):
            return self.by.row_name
        axes = self.part.level.axes - self.of.axes
        row_words = self.part.level.leaves[-1].words if len(axes) == 1 else ()
        return row_words[int(self.by.value) - 1] if isinstance(self.by, Exact) and row_words else ""

    def _place(self, names: Names) -> str:
        """Which row it is."""
        by = self.by.said(names)
        if self.by.value_type is ValueType.TEXT:
            return f"for {by.inside(Rank.ATOM)}"
        return (
            f"in {by.text}" if by.text.startswith("Row ") and by.rank is Rank.ATOM else f"in row {by.inside(Rank.ATOM)}"
        )


@dataclass(frozen=True, eq=False)
class ByRow(Expr):
    """A table: a formula for each of the named rows of a level, all of one unit."""

    of: Level
    cases: tuple[Expr, ...]

    @property
    def value_type(self) -> ValueType:
        return self.cases[0].value_type

    @property
    def unit(self) -> Unit:
        return self.cases[0].unit

    @property
    def parts(self) -> tuple[Expr, ...]:
        return self.cases

    @property
    def level(self) -> Level:
        level = self.of
        for case in self.cases:
            level = level * case.level
        return level

    def said(self, names: Names) -> Phrase:
        return words.by_row(self.of.axis.words, [case.said(names) for case in self.cases])


@dataclass(frozen=True, eq=False)
class Before(Expr):
    """The row before, where it belongs to the same row of the higher level ``of``; else ``otherwise``."""

    part: Named
    of: Level
    otherwise: Expr

    @property
    def unit(self) -> Unit:
        return self.part.unit

    @property
    def parts(self) -> tuple[Expr, ...]:
        return (self.part, self.otherwise)

    @property
    def level(self) -> Level:
        return self.part.level * self.otherwise.level

    def said(self, names: Names) -> Phrase:
        first_row = self.otherwise.said(names).inside(Rank.CONDITIONAL)
        return Phrase(f"previous {names(self.part).text}{within(self.of)} (first: {first_row})", Rank.PICKED)


@dataclass(frozen=True, eq=False)
class _WithinRow(Expr):
    """A number gathered from the rows that belong to the same row of the higher level ``of``."""

    part: Named
    of: Level

    @property
    def unit(self) -> Unit:
        return self.part.unit

    @property
    def parts(self) -> tuple[Expr, ...]:
        return (self.part,)

    @property
    def level(self) -> Level:
        return self.part.level


class First(_WithinRow):
    """The first of the rows that belong to the same row of the higher level ``of``."""

    def said(self, names: Names) -> Phrase:
        return Phrase(f"first {names(self.part).text}{within(self.of)}", Rank.PICKED)


class Running(_WithinRow):
    """The total of the rows down to this one, within the same row of the higher level ``of``."""

    def said(self, names: Names) -> Phrase:
        return Phrase(f"running total of {names(self.part).text}{within(self.of)}", Rank.PICKED)


@dataclass(frozen=True, eq=False)
class RowNumber(Expr):
    """The number that the program gives to a row of a level: from 1, in the order of the rows.

    It is counted anew in each row of the higher level ``within``.
    """

    of: Level
    within: Level = JOB

    @property
    def level(self) -> Level:
        return self.of

    def said(self, names: Names) -> Phrase:
        return Phrase(f"number of the {self.of}{within(self.within)}", Rank.PICKED)


@dataclass(frozen=True, eq=False)
class RowCount(Expr):
    """How many rows of a level there are for each row of the higher level ``within``, those not in use among them."""

    of: Level
    within: Level = JOB

    @property
    def level(self) -> Level:
        return self.within

    def said(self, names: Names) -> Phrase:
        return Phrase(f"rows of the {self.of}{within(self.within)}", Rank.PICKED)


@dataclass(frozen=True, eq=False)
class RowWord(Expr):
    """The name of a row: one of the names of its level, or the one that was typed."""

    of: Level

    @property
    def value_type(self) -> ValueType:
        return ValueType.TEXT

    @property
    def level(self) -> Level:
        return self.of

    def said(self, names: Names) -> Phrase:
        return Phrase(f"name of the {self.of}", Rank.PICKED)
