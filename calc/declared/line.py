"""What follows from others: lines, and the papers that show them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from calc.declared.given import Forced
from calc.declared.section import Declared
from calc.formula.build import is_given
from calc.formula.gather import Gather
from calc.formula.kinds import FormulaError
from calc.formula.levels import JOB
from calc.formula.tree import Expr


class Line(Declared):
    """A number (or a sentence) that follows from others.

    ``all_rows`` is its total over the rows of its level, where that means something.
    """

    def __init__(self, label: str, unit_text: str, formula: Expr, source: str, adds: bool = False) -> None:
        super().__init__(label, unit_text, formula.sort)
        self.formula, self.source = formula, source
        self.computed: Line | None = None
        self.forced: Forced | None = None
        self.all_rows: Line | None = None
        if adds:
            self.all_rows = Line(label, unit_text, Gather("total", self, JOB), "sum of the rows")
            self.all_rows._level = JOB

    def members(self) -> Iterator[tuple[str, Declared]]:
        if self.computed is not None and self.forced is not None:
            yield "_computed", self.computed
            yield "_forced", self.forced
        yield "", self
        if self.all_rows is not None:
            yield "_all", self.all_rows

    @property
    def is_forced(self) -> Expr:
        """Whether a person forced it. Raises FormulaError for a line that may not be forced."""
        if self.forced is None:
            raise FormulaError(f"{self.label!r} may not be forced")
        return is_given(self.forced)

    def check_level(self) -> None:
        """Its formula has no more than one value for each row of its level."""
        if not self.formula.level <= self.level:
            raise FormulaError(
                f"{self.label!r} is given once for each {self.level}, and its formula goes by {self.formula.level}: "
                "bring the lower level up with total(), least() or at()"
            )


PaperRow = Declared | tuple[Declared, Line]
"""A row of a paper."""


@dataclass(frozen=True)
class Paper:
    """A sheet for one reader: blocks of a heading and the rows that stand under it.

    A row is a declaration, or a declaration with the line that says in words why it is so.
    """

    title: str
    blocks: tuple[tuple[str, tuple[PaperRow, ...]], ...]

    def __init__(self, title: str, *blocks: tuple[str, tuple[PaperRow, ...]]) -> None:
        object.__setattr__(self, "title", title)
        object.__setattr__(self, "blocks", blocks)
