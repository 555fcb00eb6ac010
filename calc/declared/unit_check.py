"""A formula must come out in the unit of its line, with a factor of exactly 1."""

from __future__ import annotations

from typing import NoReturn

from calc.formula.tree import Expr
from calc.formula.value_types import FormulaError, ValueType
from calc.units.algebra import COUNTS, Unit, unit
from calc.units.registry import factor_between


def check_unit(label: str, unit_text: str, formula: Expr, source: str) -> None:
    """Raises FormulaError, with the labels in words, where the formula of a line is not in its unit."""
    if not label or not source:
        raise FormulaError(f"{label!r} needs a label and a source")
    if formula.value_type is ValueType.FLAG:
        raise FormulaError(f"{label!r} is a yes or no; count it with when(..., 1, 0)")
    if formula.value_type is ValueType.NUMBER and not _matches(formula.unit, unit(unit_text)):
        _refuse_unit(label, unit_text, formula)


def _matches(found: Unit, wanted: Unit) -> bool:
    """Whether a formula is in the unit of its line; a plain number may be declared as a count."""
    counted = len(wanted.powers) == 1 and wanted.powers[0][1] == 1 and wanted.powers[0][0] in COUNTS
    return found == wanted or (found.plain and counted)


def _refuse_unit(label: str, unit_text: str, formula: Expr) -> NoReturn:
    result = f"{label!r}: {formula.words} comes out in {formula.unit}"
    times = factor_between(formula.unit, unit(unit_text))
    if times is None:
        raise FormulaError(f"{result}, not {unit_text or 'a plain number'}")
    if times == 1:
        raise FormulaError(
            f"{result}, which is a true {unit_text} but not by cancelling: divide by the named constants"
        )
    inverse = 1 / times
    ratio = f"{inverse.numerator:,} times" if inverse.denominator == 1 else f"{float(inverse):.6g} times"
    raise FormulaError(f"{result}, so its number would be {ratio} the true {unit_text}")
