"""Computed lines."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from calc.declared.inputs import Override, Price
from calc.declared.section import Declared
from calc.formula.across import by_row
from calc.formula.aggregate import Aggregate, ByRow
from calc.formula.build import if_given, is_given
from calc.formula.functions import Function
from calc.formula.levels import JOB, Level
from calc.formula.tree import Apply, Exact, Expr, Literal, Names, Operand, UnitCast
from calc.formula.value_types import FormulaError
from calc.formula.words import Phrase

FIXED = "fixed for each row"
"""How a line of fixed words or numbers is worked."""


class Line(Declared):
    """A number (or a text) computed from other declarations.

    ``all_rows`` is its total over the rows of its level, where that means something. ``own_words`` say how it is worked
    where the words that follow from its formula would be too long to read.
    """

    def __init__(
        self, label: str, unit_text: str, formula: Expr, source: str, adds: bool = False, own_words: str = ""
    ) -> None:
        super().__init__(label, unit_text, formula.value_type)
        self.formula, self.source, self.own_words = formula, source, own_words
        self.computed: Line | None = None
        self.override: Override | None = None
        self.all_rows: Line | None = None
        if adds:
            self.all_rows = RowsTotal(label, unit_text, self)

    @property
    def worked_by(self) -> Expr:
        """Its formula."""
        return self.formula

    def held(self, index: int, counts: Mapping[Level, int]) -> float | str | None:
        """The word of one of its rows (from 0) where its formula says nothing but that word; else None.

        ``counts`` are the numbers of rows of the job.
        """
        case = self._case(index, counts)
        return case.value if isinstance(case, Literal) and isinstance(case.value, str) else None

    def _case(self, index: int, counts: Mapping[Level, int]) -> Expr:
        """Its formula in one of its rows; a bare 0 among numbers with a unit is that 0."""
        case = formula = self.formula
        if isinstance(formula, ByRow) and formula.of == self.level:
            case = formula.cases[self.level.axis.places(counts)[index]]
        return case.part if isinstance(case, UnitCast) else case

    def members(self) -> Iterator[tuple[str, Declared]]:
        if self.computed is not None and self.override is not None:
            yield "_computed", self.computed
            yield "_override", self.override
        yield "", self
        if self.all_rows is not None:
            yield "_all", self.all_rows

    @property
    def is_overridden(self) -> Expr:
        """Whether a person overrode it. Raises FormulaError for a line that cannot be overridden."""
        if self.override is None:
            raise FormulaError(f"{self.label!r} cannot be overridden")
        return is_given(self.override)

    @property
    def is_flag(self) -> bool:
        """Whether its formula is 1 where a condition holds, and else 0."""
        match self.formula:
            case Apply(function=Function(name="when"), arguments=(_, yes, no)):
                return yes.is_one and no.zero
        return False

    def check_level(self) -> None:
        """Its formula has no more than one value for each row of its level."""
        if not self.formula.level <= self.level:
            raise FormulaError(
                f"{self.label!r} is given once for each {self.level}, and its formula has a value for each "
                f"{self.formula.level}: bring the lower level up with total(), least() or at()"
            )


class Fixed(Line):
    """A word or a number that each of the named rows of a level has for good: its cells hold it, and no formula."""

    def __init__(self, label: str, level: Level, values: tuple[Operand, ...], source: str) -> None:
        super().__init__(label, "", by_row(level, *values), source)

    def held(self, index: int, counts: Mapping[Level, int]) -> float | str | None:
        case = self._case(index, counts)
        return case.value if isinstance(case, (Literal, Exact)) else None


class RowsTotal(Line):
    """The total of a line over its rows."""

    sums_rows = True

    def __init__(self, label: str, unit_text: str, summed: Line) -> None:
        super().__init__(label, unit_text, Aggregate("total", summed, JOB), "sum of the rows")
        self._level = JOB

    def said(self, names: Names) -> Phrase:
        """It has the label of its line, so another formula says what it is."""
        return self.formula.said(names)


class PriceLine(Line):
    """Prices of things of one kind, one for each of the named rows of its level; 0 for one that is not given."""

    def __init__(self, label: str, level: Level, prices: tuple[Price, ...]) -> None:
        self.prices = prices
        formula = by_row(level, *(if_given(each, 0) for each in prices))
        super().__init__(label, prices[0].unit_text, formula, "Prices; 0 where none is given")

    @property
    def taxed(self) -> tuple[Expr, ...]:
        """Whether each of the things is taxed."""
        return tuple(each.taxed for each in self.prices)

    @property
    def accounts(self) -> tuple[Expr, ...]:
        """The account of each of the things."""
        return tuple(each.account for each in self.prices)

    def members(self) -> Iterator[tuple[str, Declared]]:
        for number, each in enumerate(self.prices, start=1):
            for suffix, member in each.members():
                yield f"_{number}{suffix}", member
        yield "", self
