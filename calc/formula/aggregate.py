"""The nodes that work across rows: aggregates, one row out of many, running totals, row numbers and names.

The functions in ``across`` build them; the nodes that operators build are in ``tree``.
"""

from __future__ import annotations

from dataclasses import dataclass

from calc.formula.levels import JOB, Level
from calc.formula.tree import Expr, Named
from calc.formula.value_types import ValueType
from calc.units.algebra import PLAIN, Unit


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

    @property
    def words(self) -> str:
        whose = "" if self.to.axes else "all "
        phrases = {
            "total": "total of",
            "least": f"least of {whose}".rstrip(),
            "greatest": f"greatest of {whose}".rstrip(),
        }
        return f"{phrases.get(self.how, 'row of the least')} {self.part.label}"


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

    @property
    def words(self) -> str:
        return f"{self.part.label} of {self.by.words}"


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

    @property
    def words(self) -> str:
        return "row by row: " + "; ".join(case.words for case in self.cases)


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

    @property
    def words(self) -> str:
        return f"{self.part.label} of the row before (the first: {self.otherwise.words})"


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

    @property
    def words(self) -> str:
        return f"{self.part.label} of the first row of the {self.of}"


class Running(_WithinRow):
    """The total of the rows down to this one, within the same row of the higher level ``of``."""

    @property
    def words(self) -> str:
        return f"total of {self.part.label} so far in the {self.of}"


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

    @property
    def words(self) -> str:
        return f"no. of the {self.of}" + (f" in its {self.within}" if self.within.axes else "")


@dataclass(frozen=True, eq=False)
class RowCount(Expr):
    """How many rows of a level there are for each row of the higher level ``within``, those not in use among them."""

    of: Level
    within: Level = JOB

    @property
    def level(self) -> Level:
        return self.within

    @property
    def words(self) -> str:
        return f"rows that there are for each {self.of}" + (f" in its {self.within}" if self.within.axes else "")


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

    @property
    def words(self) -> str:
        return f"name of the {self.of}"
