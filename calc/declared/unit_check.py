"""A formula must come out in the unit of its line, with a factor of exactly 1."""

from __future__ import annotations

from typing import NoReturn

from calc.formula.tree import Expr
from calc.formula.value_types import FormulaError, ValueType
from calc.units.algebra import COUNTS, Unit, unit
from calc.units.registry import factor_between


def check_unit(label: str, unit_text: str, formula: Expr, source: str) -> None:
    """Raises FormulaError, in the words of the labels, where a formula does not come out in the unit of its line."""
    if not label or not source:
        raise FormulaError(f"{label!r} needs a label and a source")
    if formula.sort is ValueType.FLAG:
        raise FormulaError(f"{label!r} is a yes or no; count it with when(..., 1, 0)")
    if formula.sort is ValueType.NUMBER and not _comes_out(formula.unit, unit(unit_text)):
        _refuse_unit(label, unit_text, formula)


def _comes_out(found: Unit, wanted: Unit) -> bool:
    """Whether a formula is in the unit of its line; a plain number may count the things that the line counts."""
    counted = len(wanted.powers) == 1 and wanted.powers[0][1] == 1 and wanted.powers[0][0] in COUNTS
    return found == wanted or (found.plain and counted)


def _refuse_unit(label: str, unit_text: str, formula: Expr) -> NoReturn:
    comes = f"{label!r}: {formula.words} comes out in {formula.unit}"
    times = factor_between(formula.unit, unit(unit_text))
    if times is None:
        raise FormulaError(f"{comes}, not {unit_text or 'a plain number'}")
    if times == 1:
        raise FormulaError(f"{comes}, which is a true {unit_text} but not by cancelling: divide by the named constants")
    inverse = 1 / times
    said = f"{inverse.numerator:,} times" if inverse.denominator == 1 else f"{float(inverse):.6g} times"
    raise FormulaError(f"{comes}, so its number would be {said} the true {unit_text}")
