"""The functions of the rule language that work within a row. Each builds a node of the tree; none computes."""

from __future__ import annotations

from collections.abc import Callable
from math import pi

from calc.formula.tree import (
    Apply,
    Exact,
    Expr,
    Operand,
    Term,
    UnitCast,
    apply,
    expression,
)
from calc.formula.value_types import FormulaError
from calc.units.algebra import COUNTS, DATE, PLAIN, unit

DIVISORS = (1, 2, 3, 6, 12, 27, 60, 100, 144, 1000, 2000)
"""The only numbers allowed in a formula without a declaration: exact by definition."""


def exact(value: int, unit_text: str = "") -> Exact:
    """A number that is exact by definition, such as 12 ``in/ft``. Raises FormulaError for any that is not listed."""
    if value not in DIVISORS:
        raise FormulaError(f"{value} is not one of the exact numbers {DIVISORS}; declare a factor with a source")
    return Exact(float(value), unit(unit_text), f"{value:,}", str(value))


PI = Exact(pi, PLAIN, "pi", "PI()")
"""The ratio of a circle's circumference to its diameter."""


def when(condition: Expr, yes: Operand, no: Operand) -> Expr:
    """``yes`` where the condition holds, else ``no``; both of one unit."""
    return apply("when", condition, yes, no)


def both(*conditions: Expr) -> Expr:
    """Whether all the conditions hold."""
    return apply("both", *conditions)


def either(*conditions: Expr) -> Expr:
    """Whether any of the conditions holds."""
    return apply("either", *conditions)


def not_(condition: Expr) -> Expr:
    """Whether the condition does not hold."""
    return apply("not_", condition)


def equals(one: Operand, another: Operand) -> Expr:
    """Whether two numbers agree to the millionth."""
    return apply("equals", one, another)


def is_word(value: Expr, word: str) -> Expr:
    """Whether ``value`` is that word."""
    return apply("is_word", value, word)


def same_word(one: Expr, another: Expr) -> Expr:
    """Whether two of the program's own words are equal."""
    return apply("is_word", one, another)


def is_given(value: Expr) -> Expr:
    """Whether an optional number was given."""
    return apply("given", value)


def if_given(value: Expr, otherwise: Operand) -> Expr:
    """An optional number where it was given, else ``otherwise``."""
    return apply("if_given", value, otherwise)


def largest(*values: Operand) -> Expr:
    """The largest of several numbers of one unit."""
    return apply("largest", *values)


def smallest(*values: Operand) -> Expr:
    """The smallest of several numbers of one unit."""
    return apply("smallest", *values)


def round_up(value: Expr, to: Expr | None = None) -> Expr:
    """``value`` rounded up to a whole number, or to a whole number of ``to``; below a millionth is ignored."""
    if to is None:
        return apply("round_up", value)
    return apply("round_up_to", value, to)


def round_down(value: Expr) -> Expr:
    """``value`` rounded down to a whole number."""
    return apply("round_down", value)


def rounded(value: Expr, digits: int) -> Expr:
    """``value`` to 0, 2 or 3 decimal places, half away from zero."""
    return apply("rounded", value, exact({0: 1, 2: 100, 3: 1000}[digits]))


def money(value: Expr) -> Expr:
    """An amount to the cent, halves away from zero."""
    return apply("money", value)


def abs_(value: Expr) -> Expr:
    """``value`` without its sign."""
    return apply("abs_", value)


def square_root(value: Expr) -> Expr:
    """The square root; its unit is the root of the unit."""
    return apply("square_root", value)


def exponential(value: Expr) -> Expr:
    """e to the power of a plain number."""
    return apply("exponential", value)


def logarithm(value: Expr) -> Expr:
    """The natural logarithm of a plain number."""
    return apply("logarithm", value)


def normal_cdf(value: Expr) -> Expr:
    """The cumulative distribution function of the standard normal distribution at ``value``."""
    return apply("normal_cdf", value)


def normal_inv(share: Expr) -> Expr:
    """The quantile of the standard normal distribution for the probability ``share``."""
    return apply("normal_inv", share)


def normal_pdf(z: Expr) -> Expr:
    """The density of the standard normal distribution at ``z``."""
    density = exponential(-square(z) / exact(2)) / square_root(exact(2) * PI)
    return Term(density, PLAIN, "normal density at", z)


def joined(*parts: Operand) -> Expr:
    """Concatenates words and counts to a sentence. Any other number needs a cell of its own."""
    return apply("joined", *parts)


def date_words(day: Expr) -> Expr:
    """A date in words, such as Mon Apr 27."""
    return apply("date_words", day)


def day_of_week(day: Expr) -> Expr:
    """The weekday of a date, from 1 for Sunday to 7 for Saturday."""
    return apply("weekday", day)


def count_of(value: Operand, thing: str) -> Expr:
    """A plain number as a count of ``thing``, which must be a unit of counts."""
    node = expression(value)
    if thing not in COUNTS or not node.unit.plain:
        raise FormulaError(f"cannot count {node.words} [{node.unit}] as {thing}: only a plain number can be counted")
    return UnitCast(node, unit(thing))


def correlation(result_unit: str, formula: Callable[..., Expr], *inputs: Expr, source: str) -> Expr:
    """An empirical formula for plain numbers: the units of the inputs are dropped, the result is in ``result_unit``.

    Nowhere else may the unit of a measured number be dropped, so the source must state the units of the inputs.
    """
    if not source:
        raise FormulaError("a correlation needs a source")
    return UnitCast(formula(*(UnitCast(each, PLAIN) for each in inputs)), unit(result_unit))


def square(value: Expr) -> Apply:
    """``value`` times itself."""
    return apply("multiply", value, value)


def days_between(earlier: Expr, later: Expr) -> Expr:
    """The days from one date to another. A date is a number of days, as spreadsheet programs count them."""
    return correlation("days", lambda start, end: end - start, earlier, later, source="calendar")


def days_after(start: Expr, days: Expr) -> Expr:
    """The date ``days`` after ``start``."""
    return correlation(DATE, lambda date, more: date + more, start, days, source="calendar")
