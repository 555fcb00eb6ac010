"""The table of functions: for each its spreadsheet text, its computation, its unit rule and its words.

Nothing else in the program knows the name of a spreadsheet function. The functions are those that every
spreadsheet program has had since 2007 and computes alike. Computations are in ``rounding``, unit rules in
``unit_rules``.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from calc.formula import dates, rounding, unit_rules
from calc.formula.rounding import Column, millionths
from calc.formula.value_types import NONE, NOTHING, Argument, ValueType
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
    "PHRASE",
    "Column",
    "Function",
    "millionths",
]

PHRASE, COMPARISON, JOINING, ADDING, MULTIPLYING, CALL = range(6)
"""The precedence of a text, lowest for a phrase; an argument of lower precedence than required is put in brackets."""


@dataclass(frozen=True)
class Function:
    """One row of the table.

    ``sheet`` and ``words`` make a text from the texts of the arguments, ``rank`` is the precedence of that text and
    ``argument_ranks`` the precedence required of each argument (the last one is for all that follow).
    """

    name: str
    sheet: Callable[..., str]
    numbers: Callable[..., Column]
    unit: Callable[[str, Sequence[Argument]], Unit]
    words: Callable[..., str]
    rank: int = CALL
    argument_ranks: tuple[int, ...] = (COMPARISON,)
    words_rank: int = COMPARISON
    value_type: ValueType | None = ValueType.NUMBER

    def argument_rank(self, place: int) -> int:
        """The precedence required of the argument at ``place``."""
        return self.argument_ranks[place] if place < len(self.argument_ranks) else self.argument_ranks[-1]


def _list_words(name: str, parts: Sequence[str]) -> str:
    return f"the {name} of {', '.join(parts[:-1])} and {parts[-1]}"


def _compare(name: str, sign: str, phrase: str, numbers: Callable[[Column, Column], Column]) -> Function:
    def sheet(a: str, b: str) -> str:
        return f"{_millionths_text(a)}{sign}{_millionths_text(b)}"

    def compare(a: Column, b: Column) -> Column:
        with np.errstate(invalid="ignore"):
            return numbers(millionths(a), millionths(b))

    def words(a: str, b: str) -> str:
        return f"{a} {phrase} {b}"

    return Function(
        name,
        sheet,
        compare,
        unit_rules.compared,
        words,
        rank=COMPARISON,
        words_rank=COMPARISON,
        value_type=ValueType.FLAG,
    )


def _millionths_text(text: str) -> str:
    return text if text.isdigit() else f"ROUND({text},6)"


_ROWS: tuple[Function, ...] = (
    Function(
        "add",
        lambda a, b: f"{a}+{b}",
        np.add,
        unit_rules.amounts,
        lambda a, b: f"{a} + {b}",
        ADDING,
        (ADDING, ADDING),
        ADDING,
    ),
    Function(
        "subtract",
        lambda a, b: f"{a}-{b}",
        np.subtract,
        unit_rules.amounts,
        lambda a, b: f"{a} - {b}",
        ADDING,
        (ADDING, MULTIPLYING),
        ADDING,
    ),
    Function(
        "multiply",
        lambda a, b: f"{a}*{b}",
        np.multiply,
        unit_rules.product,
        lambda a, b: f"{a} x {b}",
        MULTIPLYING,
        (MULTIPLYING, MULTIPLYING),
        MULTIPLYING,
    ),
    Function(
        "divide",
        lambda a, b: f"{a}/{b}",
        rounding.divide,
        unit_rules.quotient,
        lambda a, b: f"{a} / {b}",
        MULTIPLYING,
        (MULTIPLYING, CALL),
        MULTIPLYING,
    ),
    _compare("more", ">", "is more than", np.greater),
    _compare("not_less", ">=", "is at least", np.greater_equal),
    _compare("less", "<", "is less than", np.less),
    _compare("not_more", "<=", "is at most", np.less_equal),
    _compare("equals", "=", "is", np.equal),
    Function(
        "is_word",
        lambda a, b: f"{a}={b}",
        lambda a, b: np.asarray(a == b),
        unit_rules.words_only,
        lambda a, b: f"{a} is {b}",
        COMPARISON,
        (CALL, CALL),
        value_type=ValueType.FLAG,
    ),
    Function(
        "given",
        lambda a: f"ISNUMBER({a})",
        lambda a: ~np.isnan(a),
        unit_rules.one_number,
        lambda a: f"{a} is given",
        words_rank=COMPARISON,
        value_type=ValueType.FLAG,
    ),
    Function(
        "both",
        lambda *a: f"AND({','.join(a)})",
        lambda *a: np.logical_and.reduce(np.broadcast_arrays(*a)),
        unit_rules.flags,
        lambda *a: " and ".join(a),
        words_rank=PHRASE,
        value_type=ValueType.FLAG,
    ),
    Function(
        "either",
        lambda *a: f"OR({','.join(a)})",
        lambda *a: np.logical_or.reduce(np.broadcast_arrays(*a)),
        unit_rules.flags,
        lambda *a: " or ".join(a),
        words_rank=PHRASE,
        value_type=ValueType.FLAG,
    ),
    Function(
        "not_",
        lambda a: f"NOT({a})",
        np.logical_not,
        unit_rules.flags,
        lambda a: f"not ({a})",
        value_type=ValueType.FLAG,
        words_rank=CALL,
    ),
    Function(
        "when",
        lambda c, a, b: f"IF({c},{a},{b})",
        rounding.select,
        unit_rules.branches,
        lambda c, a, b: f"{a} if {c}, else {b}",
        words_rank=PHRASE,
        value_type=None,
    ),
    Function(
        "if_given",
        lambda a, b: f"IF(ISNUMBER({a}),{a},{b})",
        lambda a, b: np.asarray(np.where(np.isnan(a), b, a)),
        unit_rules.same,
        lambda a, b: f"{a} (or {b} when none)",
    ),
    Function(
        "largest",
        lambda *a: f"MAX({','.join(a)})",
        lambda *a: np.asarray(np.maximum.reduce(np.broadcast_arrays(*a))),
        unit_rules.same,
        lambda *a: _list_words("largest", a),
    ),
    Function(
        "smallest",
        lambda *a: f"MIN({','.join(a)})",
        lambda *a: np.asarray(np.minimum.reduce(np.broadcast_arrays(*a))),
        unit_rules.same,
        lambda *a: _list_words("smallest", a),
    ),
    Function(
        "round_up",
        lambda a: f"ROUNDUP(ROUND({a},6),0)",
        rounding.up,
        unit_rules.first,
        lambda a: f"{a}, rounded up to a whole",
    ),
    Function(
        "round_down",
        lambda a: f"ROUNDDOWN(ROUND({a},6),0)",
        rounding.down,
        unit_rules.first,
        lambda a: f"{a}, rounded down to a whole",
    ),
    Function(
        "round_up_to",
        lambda a, b: f"ROUNDUP(ROUND({a}/{b},6),0)*{b}",
        lambda a, b: rounding.up(rounding.divide(a, b)) * b,
        unit_rules.stepped,
        lambda a, b: f"{a}, rounded up to the next {b}",
        MULTIPLYING,
        (MULTIPLYING, CALL),
    ),
    Function(
        "rounded",
        lambda a, n: f"ROUND(ROUND({a}*{n},6),0)/{n}",
        rounding.rounded,
        unit_rules.first,
        lambda a, n: f"{a}, to the nearest {n}th",
        MULTIPLYING,
        (MULTIPLYING, CALL),
    ),
    Function(
        "money", lambda a: f"ROUND(ROUND({a},6),2)", rounding.cents, unit_rules.dollars, lambda a: f"{a}, to the cent"
    ),
    Function("abs_", lambda a: f"ABS({a})", np.abs, unit_rules.first, lambda a: f"the size of {a}"),
    Function("square_root", lambda a: f"SQRT({a})", np.sqrt, unit_rules.root, lambda a: f"the square root of {a}"),
    Function("exponential", lambda a: f"EXP({a})", np.exp, unit_rules.plain, lambda a: f"e to the power {a}"),
    Function("logarithm", lambda a: f"LN({a})", np.log, unit_rules.plain, lambda a: f"the natural logarithm of {a}"),
    Function(
        "normal_cdf",
        lambda a: f"NORMSDIST({a})",
        rounding.normal_cdf,
        unit_rules.plain,
        lambda a: f"the normal share below {a}",
    ),
    Function(
        "normal_inv",
        lambda a: f"NORMSINV({a})",
        rounding.normal_inv,
        unit_rules.plain,
        lambda a: f"the normal place of {a}",
    ),
    Function(
        "date_words",
        dates.sheet_text,
        dates.date_words,
        unit_rules.one_date,
        lambda a: f"{a} in words",
        JOINING,
        (CALL,),
        value_type=ValueType.TEXT,
    ),
    Function(
        "weekday",
        lambda a: f"WEEKDAY({a})",
        dates.weekday,
        unit_rules.one_date,
        lambda a: f"the weekday of {a}",
    ),
    Function(
        "joined",
        lambda *a: "&".join(a),
        rounding.joined,
        unit_rules.joinable,
        lambda *a: " & ".join(a),
        JOINING,
        (ADDING,),
        JOINING,
        value_type=ValueType.TEXT,
    ),
)

FUNCTIONS = {row.name: row for row in _ROWS}
"""The whole table, by name."""
