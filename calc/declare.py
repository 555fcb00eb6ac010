"""The words that rules are written in: what is given, what is assumed, what is bought, and what follows.

A number is declared once, in the body of a :class:`Section`. From that one place come its spreadsheet formula,
its value, the words that explain it, its column in the blank input, its check and its row in the manual. The order
of definition is the order of evaluation.
"""

from __future__ import annotations

from typing import Any

from calc.declared import (
    Caution,
    Check,
    Factor,
    Fixed,
    Input,
    Kind,
    Limits,
    Line,
    Override,
    Price,
    PriceLine,
    Section,
    Severity,
    paper,
    story,
)
from calc.declared.checks import LIST_FULL
from calc.declared.cost import Cost
from calc.declared.unit_check import check_unit
from calc.formula.across import (
    argmin,
    at,
    before,
    by_row,
    first,
    first_in_group,
    greatest,
    group_total,
    least,
    look_up,
    lookup_at_or_below,
    lookup_by_key,
    row_called,
    row_count,
    row_number,
    row_word,
    running,
    total,
    total_on,
    total_where,
)
from calc.formula.build import (
    PI,
    abs_,
    both,
    correlation,
    count_of,
    date_words,
    day_of_week,
    days_after,
    days_between,
    either,
    equals,
    exact,
    exponential,
    if_given,
    is_given,
    is_word,
    joined,
    largest,
    logarithm,
    money,
    normal_cdf,
    normal_inv,
    normal_pdf,
    not_,
    round_down,
    round_up,
    rounded,
    same_word,
    smallest,
    square,
    square_root,
    when,
)
from calc.formula.functions import NONE
from calc.formula.levels import JOB, Level, named_rows, slot_rows, typed_rows
from calc.formula.tree import Exact, Expr, Literal, Operand, expression
from calc.formula.value_types import FormulaError

__all__ = [
    "FT3_PER_YD3",
    "IN_PER_FT",
    "JOB",
    "LB_PER_TON",
    "MIN_PER_H",
    "NONE",
    "PERCENT",
    "PI",
    "THREE",
    "TWO",
    "Caution",
    "Check",
    "Cost",
    "Expr",
    "Factor",
    "Fixed",
    "FormulaError",
    "Input",
    "Kind",
    "Level",
    "Limits",
    "Line",
    "Override",
    "Price",
    "PriceLine",
    "Section",
    "Severity",
    "abs_",
    "argmin",
    "at",
    "before",
    "both",
    "by_row",
    "caution",
    "check",
    "choice",
    "correlation",
    "count_of",
    "date",
    "date_words",
    "day_of_week",
    "days_after",
    "days_between",
    "either",
    "equals",
    "exact",
    "exponential",
    "factor",
    "factors",
    "first",
    "first_in_group",
    "fixed",
    "given",
    "greatest",
    "group_total",
    "if_given",
    "is_given",
    "is_word",
    "joined",
    "largest",
    "least",
    "line",
    "list_check",
    "logarithm",
    "look_up",
    "lookup_at_or_below",
    "lookup_by_key",
    "money",
    "named_rows",
    "normal_cdf",
    "normal_inv",
    "normal_pdf",
    "not_",
    "paper",
    "price",
    "prices",
    "round_down",
    "round_up",
    "rounded",
    "row_called",
    "row_count",
    "row_number",
    "row_of",
    "row_word",
    "running",
    "same_word",
    "slope",
    "slot_rows",
    "smallest",
    "square",
    "square_root",
    "story",
    "text",
    "total",
    "total_on",
    "total_where",
    "typed_rows",
    "when",
    "yes_no",
]


def given(label: str, unit_text: str, **facts: Any) -> Input:
    """A number that a person types; see :class:`Input` for its limits."""
    return Input(label, unit_text, Kind.NUMBER, **facts)


def slope(label: str, **facts: Any) -> Input:
    """A slope that a person types as a percentage, a ratio or inches in a foot."""
    return Input(label, "%", Kind.SLOPE, **facts)


def choice(label: str, *words: str, default: str, **facts: Any) -> Input:
    """One of a few words, with the word that a blank cell means."""
    if default not in words:
        raise FormulaError(f"{label!r}: the default {default!r} is not one of its words")
    return Input(label, "", Kind.CHOICE, words=words, default=default, **facts)


def yes_no(label: str, *, default: str = "no", **facts: Any) -> Input:
    """Yes or no."""
    return choice(label, "yes", "no", default=default, **facts)


def row_of(label: str, rows: Level, **facts: Any) -> Input:
    """One of the rows of a table of the company book, by its name; blank is 0, none of them."""
    return Input(label, "", Kind.ROW, rows=rows, default=0.0, **facts)


def text(label: str, **facts: Any) -> Input:
    """Words that no formula asks."""
    return Input(label, "", Kind.TEXT, default=NONE, **facts)


def date(label: str, **facts: Any) -> Input:
    """A day, as the number of days that spreadsheet programs count; ``none`` when blank."""
    return Input(label, "day", Kind.DATE, **facts)


def factor(
    label: str,
    unit_text: str,
    value: float,
    *,
    low: float | None = None,
    high: float | None = None,
    below: Factor | None = None,
    source: str,
) -> Factor:
    """A number of the trade, with the range it is usually met in and where it comes from.

    It must stay ``below`` another factor, which the rules take it off.
    """
    if not source:
        raise FormulaError(f"{label!r} has no source; write 'common practice, no source' when there is none")
    return Factor(label, unit_text, (value,), low, high, source, below)


def factors(label: str, unit_text: str, *values: float, source: str) -> Factor:
    """A number of the trade for each of the named rows of its section's level, in their order."""
    if not source:
        raise FormulaError(f"{label!r} has no source; write 'common practice, no source' when there is none")
    return Factor(label, unit_text, values, None, None, source)


def price(label: str, unit_text: str, *, pack: str = "", taxed: bool = True, help: str = "") -> Price:
    """A price that only the company book gives; ``pack`` is the unit in which the size of a pack is typed.

    ``taxed`` says whether the purchase is usually taxed: materials and rentals are, fees and services are not.
    """
    if not unit_text.startswith("$"):
        raise FormulaError(f"{label!r} is a price, so it is in $, not {unit_text!r}")
    return Price(label, unit_text, pack, taxed, help)


def prices(label: str, unit_text: str, level: Level, *, help: str = "") -> PriceLine:
    """Prices of things of one kind, one for each of the named rows of ``level``, each with a row on Prices."""
    items = (f"{label}, {word}" for word in level.axis.words)
    return PriceLine(label, level, tuple(price(item, unit_text, help=help) for item in items))


def line(
    label: str,
    unit_text: str,
    formula: Expr,
    *,
    source: str,
    adds: bool = False,
    may_be_overridden: Limits | bool = False,
    words: str = "",
    words_because: str = "",
) -> Line:
    """A number that follows from others. Raises FormulaError unless the formula's unit is exactly the declared one.

    ``adds`` says that its rows may be added up. A line that ``may_be_overridden``, within limits, is three: computed,
    override, and the value used from here on. ``words`` say how it is worked, in place of those that follow from its
    formula, and ``words_because`` says why those will not do.
    """
    check_unit(label, unit_text, formula, source)
    if bool(words) is not bool(words_because):
        raise FormulaError(f"{label!r}: words of its own need a reason, and a reason words")
    if words and may_be_overridden:
        raise FormulaError(f"{label!r} can be overridden, so its formula is that of another line: it has no own words")
    if not may_be_overridden:
        return Line(label, unit_text, formula, source, adds, words)
    computed = Line(f"{label}: computed", unit_text, formula, source)
    limits = may_be_overridden if isinstance(may_be_overridden, Limits) else Limits(low=0)
    override = Override(f"{label}: override", unit_text, limits)
    used = Line(label, unit_text, if_given(override, computed), "override where one is typed, otherwise computed", adds)
    used.computed, used.override = computed, override
    return used


def fixed(label: str, level: Level, *values: Operand, source: str) -> Fixed:
    """A word, or a number, of each of the named rows of ``level``, in their order, that no job changes.

    It is a plain cell of the table, for formulas to look up or to match. Raises FormulaError unless each row has one.
    """
    if not all(isinstance(each, (Literal, Exact)) for each in map(expression, values)):
        raise FormulaError(f"{label!r} is fixed, so each of its rows is a word, a 0, a 1 or an exact number")
    return Fixed(label, level, values, source)


def check(
    label: str, unit_text: str, one: Expr, another: Expr, tolerance: Factor, *, compared: str, remedy: str
) -> Check:
    """Two routes to one number, which must agree within the tolerance.

    ``compared`` says what the two numbers are, ``remedy`` what to do when they differ.
    """
    check_unit(label, unit_text, one, "check")
    check_unit(label, unit_text, another, "check")
    return Check(label, unit_text, one, another, tolerance, compared, remedy)


def list_check(label: str, rows: Level, needed: Expr, listed: Expr, tolerance: Factor) -> Check:
    """Whether a list whose length follows from values has a row for all that is needed: it is short after an edit.

    ``rows`` is the level of the list, ``needed`` the rows that are needed, ``listed`` those of them that it has.
    """
    check_unit(label, "", needed, "check")
    check_unit(label, "", listed, "check")
    return Check(label, "", needed, listed, tolerance, "Rows needed, rows that the list has", LIST_FULL, rows)


def caution(
    label: str,
    severity: Severity,
    fires: Expr,
    found: Expr | str,
    number: Expr,
    unit_text: str,
    *,
    usual: str,
    do: str,
    source: str,
    brief: str = "",
) -> Caution:
    """A caution: what was found and its number, the usual practice with its source, and what to do.

    ``brief`` is what to do in some ten words for the front page, where ``do`` is longer than its room.
    """
    check_unit(label, unit_text, number, source)
    sentence = Literal(found) if isinstance(found, str) else found
    return Caution(label, severity, fires, sentence, number, unit_text, usual, do, source, brief)


IN_PER_FT = exact(12, "in/ft")
FT3_PER_YD3 = exact(27, "ft3/yd3")
MIN_PER_H = exact(60, "min/h")
LB_PER_TON = exact(2000, "lb/ton")
PERCENT = exact(100, "%")
"""Divides a percentage into a plain ratio."""
TWO = exact(2)
THREE = exact(3)
