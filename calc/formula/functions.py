"""The table of functions: for each its spreadsheet text, its computation, its unit rule and its words.

Nothing else in the program knows the name of a spreadsheet function. The functions are those that every
spreadsheet program has had since 2007 and computes alike. Computations are in ``rounding``, unit rules in
``unit_rules``.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from calc.formula import dates, rounding, unit_rules, words
from calc.formula.rounding import Column, millionths
from calc.formula.value_types import NONE, NOTHING, Argument, ValueType
from calc.formula.words import Rank, Wording
from calc.units.algebra import Unit

__all__ = [
    "ADDING",
    "CALL",
    "COMPARISON",
    "FUNCTIONS",
    "JOINING",
    "MULTIPLYING",
    "NONE",
    "NOTHING",
    "Column",
    "Function",
    "millionths",
]

COMPARISON, JOINING, ADDING, MULTIPLYING, CALL = range(5)
"""The precedence of a sheet text; an argument of lower precedence than required is put in brackets."""


@dataclass(frozen=True)
class Function:
    """One row of the table.

    ``sheet`` makes a text from the texts of the arguments, ``rank`` is the precedence of that text and
    ``argument_ranks`` the precedence required of each argument (the last one is for all that follow). ``words`` makes a
    phrase from the phrases of the arguments, with the brackets that it needs.
    """

    name: str
    sheet: Callable[..., str]
    numbers: Callable[..., Column]
    unit: Callable[[str, Sequence[Argument]], Unit]
    words: Wording
    rank: int = CALL
    argument_ranks: tuple[int, ...] = (COMPARISON,)
    value_type: ValueType | None = ValueType.NUMBER

    def argument_rank(self, place: int) -> int:
        """The precedence required of the argument at ``place``."""
        return self.argument_ranks[place] if place < len(self.argument_ranks) else self.argument_ranks[-1]


def _compare(name: str, sign: str, wording: Wording, numbers: Callable[[Column, Column], Column]) -> Function:
    def sheet(a: str, b: str) -> str:
        return f"{_millionths_text(a)}{sign}{_millionths_text(b)}"

    def compare(a: Column, b: Column) -> Column:
        with np.errstate(invalid="ignore"):
            return numbers(millionths(a), millionths(b))

    return Function(name, sheet, compare, unit_rules.compared, wording, rank=COMPARISON, value_type=ValueType.FLAG)


def _millionths_text(text: str) -> str:
    return text if text.isdigit() else f"ROUND({text},6)"


_ROWS: tuple[Function, ...] = (
    Function(
        "add",
        lambda a, b: f"{a}+{b}",
        np.add,
        unit_rules.amounts,
        words.addition,
        ADDING,
        (ADDING, ADDING),
    ),
    Function(
        "subtract",
        lambda a, b: f"{a}-{b}",
        np.subtract,
        unit_rules.amounts,
        words.difference,
        ADDING,
        (ADDING, MULTIPLYING),
    ),
    Function(
        "multiply",
        lambda a, b: f"{a}*{b}",
        np.multiply,
        unit_rules.product,
        words.product,
        MULTIPLYING,
        (MULTIPLYING, MULTIPLYING),
    ),
    Function(
        "divide",
        lambda a, b: f"{a}/{b}",
        rounding.divide,
        unit_rules.quotient,
        words.quotient,
        MULTIPLYING,
        (MULTIPLYING, CALL),
    ),
    _compare("more", ">", words.above, np.greater),
    _compare("not_less", ">=", words.compared("≥"), np.greater_equal),
    _compare("less", "<", words.compared("<"), np.less),
    _compare("not_more", "<=", words.compared("≤"), np.less_equal),
    _compare("equals", "=", words.compared("=", opposite="≠"), np.equal),
    Function(
        "is_word",
        lambda a, b: f"{a}={b}",
        lambda a, b: np.asarray(a == b),
        unit_rules.words_only,
        words.compared("is", opposite="is not"),
        COMPARISON,
        (CALL, CALL),
        value_type=ValueType.FLAG,
    ),
    Function(
        "given",
        lambda a: f"ISNUMBER({a})",
        lambda a: ~np.isnan(a),
        unit_rules.one_number,
        words.given,
        value_type=ValueType.FLAG,
    ),
    Function(
        "both",
        lambda *a: f"AND({','.join(a)})",
        lambda *a: np.logical_and.reduce(np.broadcast_arrays(*a)),
        unit_rules.flags,
        words.conditions("and", Rank.BOTH),
        value_type=ValueType.FLAG,
    ),
    Function(
        "either",
        lambda *a: f"OR({','.join(a)})",
        lambda *a: np.logical_or.reduce(np.broadcast_arrays(*a)),
        unit_rules.flags,
        words.conditions("or", Rank.EITHER),
        value_type=ValueType.FLAG,
    ),
    Function(
        "not_",
        lambda a: f"NOT({a})",
        np.logical_not,
        unit_rules.flags,
        words.opposite,
        value_type=ValueType.FLAG,
    ),
    Function(
        "when",
        lambda c, a, b: f"IF({c},{a},{b})",
        rounding.select,
        unit_rules.branches,
        words.conditional,
        value_type=None,
    ),
    Function(
        "if_given",
        lambda a, b: f"IF(ISNUMBER({a}),{a},{b})",
        lambda a, b: np.asarray(np.where(np.isnan(a), b, a)),
        unit_rules.same,
        words.defaulted,
    ),
    Function(
        "largest",
        lambda *a: f"MAX({','.join(a)})",
        lambda *a: np.asarray(np.maximum.reduce(np.broadcast_arrays(*a))),
        unit_rules.same,
        words.largest,
    ),
    Function(
        "smallest",
        lambda *a: f"MIN({','.join(a)})",
        lambda *a: np.asarray(np.minimum.reduce(np.broadcast_arrays(*a))),
        unit_rules.same,
        words.listed("smaller", "smallest"),
    ),
    Function(
        "round_up",
        lambda a: f"ROUNDUP(ROUND({a},6),0)",
        rounding.up,
        unit_rules.first,
        words.suffix("rounded up"),
    ),
    Function(
        "round_down",
        lambda a: f"ROUNDDOWN(ROUND({a},6),0)",
        rounding.down,
        unit_rules.first,
        words.suffix("rounded down"),
    ),
    Function(
        "round_up_to",
        lambda a, b: f"ROUNDUP(ROUND({a}/{b},6),0)*{b}",
        lambda a, b: rounding.up(rounding.divide(a, b)) * b,
        unit_rules.stepped,
        words.rounded_up_to,
        MULTIPLYING,
        (MULTIPLYING, CALL),
    ),
    Function(
        "rounded",
        lambda a, n: f"ROUND(ROUND({a}*{n},6),0)/{n}",
        rounding.rounded,
        unit_rules.first,
        words.rounded,
        MULTIPLYING,
        (MULTIPLYING, CALL),
    ),
    Function(
        "money", lambda a: f"ROUND(ROUND({a},6),2)", rounding.cents, unit_rules.dollars, words.suffix("to the cent")
    ),
    Function("abs_", lambda a: f"ABS({a})", np.abs, unit_rules.first, words.prefix("absolute value of")),
    Function("square_root", lambda a: f"SQRT({a})", np.sqrt, unit_rules.root, words.prefix("square root of")),
    Function("exponential", lambda a: f"EXP({a})", np.exp, unit_rules.plain, words.prefix("e to the power of")),
    Function("logarithm", lambda a: f"LN({a})", np.log, unit_rules.plain, words.prefix("natural logarithm of")),
    Function(
        "normal_cdf",
        lambda a: f"NORMSDIST({a})",
        rounding.normal_cdf,
        unit_rules.plain,
        words.prefix("normal probability below"),
    ),
    Function(
        "normal_inv",
        lambda a: f"NORMSINV({a})",
        rounding.normal_inv,
        unit_rules.plain,
        words.prefix("normal quantile of"),
    ),
    Function(
        "date_words",
        dates.sheet_text,
        dates.date_words,
        unit_rules.one_date,
        words.suffix("as a date"),
        JOINING,
        (CALL,),
        value_type=ValueType.TEXT,
    ),
    Function(
        "weekday",
        lambda a: f"WEEKDAY({a})",
        dates.weekday,
        unit_rules.one_date,
        words.prefix("weekday of"),
    ),
    Function(
        "joined",
        lambda *a: "&".join(a),
        rounding.joined,
        unit_rules.joinable,
        words.joined,
        JOINING,
        (ADDING,),
        value_type=ValueType.TEXT,
    ),
)

FUNCTIONS = {row.name: row for row in _ROWS}
"""The whole table, by name."""
