"""The nodes that find rows by a key: a number, or one of the program's own words."""

from __future__ import annotations

from dataclasses import dataclass

from calc.formula.levels import Level
from calc.formula.tree import Expr, Named, Names
from calc.formula.value_types import ValueType
from calc.formula.words import Phrase, Rank
from calc.units.algebra import PLAIN, Unit


@dataclass(frozen=True, eq=False)
class LookupByKey(Expr):
    """The row of ``part`` whose ``key`` is ``wanted``; or, where they ascend, the last whose key is not above it."""

    part: Named
    key: Named
    wanted: Expr
    ascending: bool

    @property
    def value_type(self) -> ValueType:
        return self.part.value_type

    @property
    def unit(self) -> Unit:
        return self.part.unit

    @property
    def parts(self) -> tuple[Expr, ...]:
        return (self.part, self.key, self.wanted)

    @property
    def level(self) -> Level:
        return self.wanted.level

    def said(self, names: Names) -> Phrase:
        value, key = names(self.part).text, names(self.key).text
        wanted = self.wanted.said(names).inside(Rank.SUM)
        if self.ascending:
            return Phrase(f"{value} in the last row where {key} ≤ {wanted}", Rank.LISTED)
        return Phrase(f"{value} where {key} = {wanted}", Rank.LISTED)


@dataclass(frozen=True, eq=False)
class SumIf(Expr):
    """The total of ``part`` over the rows of the job whose ``key`` is the word, or the whole number, ``wanted``."""

    part: Named
    key: Named
    wanted: Expr

    @property
    def unit(self) -> Unit:
        return self.part.unit

    @property
    def parts(self) -> tuple[Expr, ...]:
        return (self.part, self.key, self.wanted)

    @property
    def level(self) -> Level:
        return self.wanted.level

    def said(self, names: Names) -> Phrase:
        value, key = names(self.part).text, names(self.key).text
        relation = "is" if self.wanted.value_type is ValueType.TEXT else "="
        return Phrase(
            f"total of {value} where {key} {relation} {self.wanted.said(names).inside(Rank.SUM)}", Rank.LISTED
        )


@dataclass(frozen=True, eq=False)
class GroupSum(Expr):
    """Over the rows whose ``key`` is the same number as this row's: the total of ``part``, or the first such row's
    number where there is no part."""

    key: Named
    part: Named | None

    @property
    def unit(self) -> Unit:
        return self.part.unit if self.part is not None else PLAIN

    @property
    def parts(self) -> tuple[Expr, ...]:
        return (self.key,) if self.part is None else (self.key, self.part)

    @property
    def level(self) -> Level:
        return self.key.level

    def said(self, names: Names) -> Phrase:
        what = "first row" if self.part is None else f"total of {names(self.part).text}"
        return Phrase(f"{what} with the same {names(self.key).text}", Rank.PICKED)
