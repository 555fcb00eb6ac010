"""Checks that two routes to a number agree, and cautions."""

from __future__ import annotations

from collections.abc import Iterator
from enum import Enum

from calc.declared.inputs import Factor, Override
from calc.declared.line import Line
from calc.declared.section import Declared
from calc.formula.build import abs_, both, correlation, is_given, not_, when
from calc.formula.levels import Level
from calc.formula.tree import Expr
from calc.formula.value_types import FormulaError, ValueType


class Severity(Enum):
    """The severity of a caution. A stop keeps the bid from being ready until a person acknowledges it by name."""

    STOP = "stop"
    CAUTION = "caution"
    NOTE = "note"


LIST_FULL = "List full: run flatwork rebid on this file, then flatwork bid."
"""What a person is told to do when an edit needs more rows than a list has."""


class Check(Declared):
    """Two routes to one number. ``failed`` is 1 when they differ by more than the tolerance.

    ``compared`` says what the two numbers are, ``remedy`` what to do when they differ. ``of_list`` is the level of the
    list that it watches, whose length follows from values.
    """

    def __init__(
        self,
        label: str,
        unit_text: str,
        one: Expr,
        another: Expr,
        tolerance: Factor,
        compared: str,
        remedy: str,
        of_list: Level | None = None,
    ) -> None:
        super().__init__(label, unit_text)
        self.compared, self.remedy, self.of_list = compared, remedy, of_list
        self.one = Line(f"{label}: one route", unit_text, one, "check")
        self.another = Line(f"{label}: second route", unit_text, another, "check")
        self.tolerance = tolerance
        plain_difference = abs_(_bare(self.one) - _bare(self.another))
        self.failed = Line(
            f"{label}: failed",
            "",
            when(plain_difference > (_bare(tolerance) if tolerance.unit_text else tolerance), 1, 0),
            "check",
        )

    def members(self) -> Iterator[tuple[str, Declared]]:
        yield "_one", self.one
        yield "_another", self.another
        yield "_failed", self.failed


def _bare(value: Expr) -> Expr:
    return correlation("", lambda bare: bare, value, source="a tolerance is a plain number")


class Caution(Declared):
    """A caution: ``fires`` is 1 when it is active, ``found`` and ``number`` are what was found.

    ``do`` is what to do, ``brief`` the same in some ten words, for the front page.
    """

    def __init__(
        self,
        label: str,
        severity: Severity,
        fires: Expr,
        found: Expr,
        number: Expr,
        unit_text: str,
        usual: str,
        do: str,
        source: str,
        brief: str = "",
    ) -> None:
        super().__init__(label)
        if fires.value_type is not ValueType.FLAG:
            raise FormulaError(
                f"{label!r}: a caution fires on a yes or no, and {fires.words} is {fires.value_type.value}"
            )
        self.severity, self.usual, self.do, self.source = severity, usual, do, source
        self.brief = brief or do
        self.acknowledged = Override(f"Acknowledged: {label}", "") if severity is Severity.STOP else None
        self.fires = Line(f"{label}: active", "", when(fires, 1, 0), source)
        self.found = Line(f"{label}: found", "", found, source)
        self.number = Line(f"{label}: number", unit_text, number, source)
        self.open = self._open()

    def _open(self) -> Line | None:
        """For a stop: 1 when it is active and nobody acknowledged it."""
        if self.acknowledged is None:
            return None
        is_open = both(self.fires > 0, not_(is_given(self.acknowledged)))
        return Line(f"{self.label}: not acknowledged", "", when(is_open, 1, 0), self.source)

    def members(self) -> Iterator[tuple[str, Declared]]:
        if self.acknowledged is not None:
            yield "_acknowledged", self.acknowledged
        yield "_fires", self.fires
        yield "_found", self.found
        yield "_number", self.number
        if self.open is not None:
            yield "_open", self.open
