"""The table of functions: for each its sheet text, its numbers, its unit rule and its words.

Nothing else in the program knows the name of a spreadsheet function. The functions are those that every
spreadsheet program has had since 2007 and computes alike. Numbers are whole columns; a value that was not given
is NaN there and the word ``none`` in a sheet.

Rounding is the same on both faces. A number is first taken to whole millionths, halves away from zero, and all
further rounding counts in those; so dust in the sixteenth digit neither buys a bag nor moves a cent. Every
comparison compares whole millionths too.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import erfc, sqrt
from statistics import NormalDist
from typing import Any

import numpy as np

from calc.formula.kinds import Argument, FormulaError, Sort
from calc.units.algebra import COUNTS, PLAIN, Unit

Column = np.ndarray[Any, np.dtype[Any]]
COMPARISON, JOINING, ADDING, MULTIPLYING, CALL = range(5)
"""How tightly a text binds; an argument that binds less than it must stands in brackets."""

NONE = "none"
"""What a sheet shows where a number could be given and was not."""

_MILLION = 1_000_000.0
_PER_CENT = 10_000.0  # millionths in a hundredth


@dataclass(frozen=True)
class Function:
    """One row of the table.

    ``sheet`` and ``words`` make a text from the texts of the arguments, ``rank`` says how tightly that text binds
    and ``needs`` how tightly each argument must (the last one goes for all that follow).
    """

    name: str
    sheet: Callable[..., str]
    numbers: Callable[..., Column]
    unit: Callable[[str, Sequence[Argument]], Unit]
    words: Callable[..., str]
    rank: int = CALL
    needs: tuple[int, ...] = (COMPARISON,)
    words_rank: int = COMPARISON
    sort: Sort | None = Sort.NUMBER

    def need(self, place: int) -> int:
        """How tightly the argument at ``place`` must bind."""
        return self.needs[min(place, len(self.needs) - 1)]


def millionths(x: Column) -> Column:
    """Whole millionths of ``x``, halves away from zero, as ROUND(x,6) has them; NaN stays NaN.

    A product such as 1.0000005 x 1,000,000 comes out a hair under its half. Spreadsheet programs differ in how much
    of that they forgive; here the last bits are forgiven, so that the product counts as it does on paper. The limit
    keeps a number so large that its bits are whole millionths from being moved to the next one.
    """
    scaled = np.abs(np.asarray(x, dtype=float)) * _MILLION
    forgiven = np.minimum(scaled * 4e-16, 0.1)
    return _signed(np.floor(scaled + 0.5 + forgiven), x)


def _signed(magnitude: Column, like: Column) -> Column:
    """``magnitude`` with the sign of ``like``; zero has none, or a sentence would say -0 where a sheet says 0."""
    return np.asarray(np.copysign(magnitude, like) + 0.0)


def _up(x: Column) -> Column:
    whole = millionths(x)
    return _signed(np.ceil(np.abs(whole) / _MILLION), whole)


def _down(x: Column) -> Column:
    whole = millionths(x)
    return _signed(np.floor(np.abs(whole) / _MILLION), whole)


def _cents(x: Column) -> Column:
    whole = millionths(x)
    return _signed(np.floor((np.abs(whole) + _PER_CENT / 2) / _PER_CENT), whole) / 100.0


def _rounded(x: Column, scale: Column) -> Column:
    whole = millionths(x * scale)
    return _signed(np.floor((np.abs(whole) + _MILLION / 2) / _MILLION), whole) / scale


def spoken_number(x: float) -> str:
    """A count as a spreadsheet joins it to words."""
    return NONE if x != x else f"{x:.15g}"


def _text(column: Column) -> Column:
    if column.dtype == object:
        return column
    return np.array([spoken_number(value) for value in np.ravel(column)], dtype=object).reshape(column.shape)


def _joined(*parts: Column) -> Column:
    whole = _text(np.asarray(parts[0]))
    for part in parts[1:]:
        whole = whole + _text(np.asarray(part))
    return np.asarray(whole, dtype=object)


def _chosen(condition: Column, yes: Column, no: Column) -> Column:
    if np.asarray(yes).dtype == object or np.asarray(no).dtype == object:
        return np.where(condition, np.asarray(yes, dtype=object), np.asarray(no, dtype=object))
    return np.where(condition, yes, no)


def _divide(above: Column, below: Column) -> Column:
    with np.errstate(divide="ignore", invalid="ignore"):
        return np.asarray(above / below)


def _normal(z: Column) -> Column:
    return np.vectorize(lambda each: erfc(-each / sqrt(2.0)) / 2.0, otypes=[float])(z)


def _normal_inverse(p: Column) -> Column:
    return np.vectorize(NormalDist().inv_cdf, otypes=[float])(p)


# The unit rules: what comes out, or what is wrong with what goes in.


def _numbers_only(verb: str, parts: Sequence[Argument]) -> None:
    for part in parts:
        if part.sort is not Sort.NUMBER:
            raise FormulaError(f"cannot {verb} {part.words}: it is {part.sort.value}, not a number")


def _shown(part: Argument) -> str:
    return f"{part.words} [{part.unit}]"


def _same(verb: str, parts: Sequence[Argument]) -> Unit:
    _numbers_only(verb, parts)
    measured = [part for part in parts if not part.zero]
    for part in measured[1:]:
        if part.unit != measured[0].unit:
            raise FormulaError(f"cannot {verb} {_shown(measured[0])} and {_shown(part)}")
    return measured[0].unit if measured else PLAIN


def _product_unit(verb: str, parts: Sequence[Argument]) -> Unit:
    _numbers_only(verb, parts)
    return parts[0].unit * parts[1].unit


def _quotient_unit(verb: str, parts: Sequence[Argument]) -> Unit:
    _numbers_only(verb, parts)
    return parts[0].unit / parts[1].unit


def _compared(_verb: str, parts: Sequence[Argument]) -> Unit:
    _same("compare", parts)
    return PLAIN


def _first(verb: str, parts: Sequence[Argument]) -> Unit:
    _numbers_only(verb, parts)
    return parts[0].unit


def _stepped(verb: str, parts: Sequence[Argument]) -> Unit:
    _numbers_only(verb, parts)
    value, step = parts
    if value.unit != step.unit:
        raise FormulaError(f"cannot round {_shown(value)} to steps of {_shown(step)}")
    return value.unit


def _root_unit(verb: str, parts: Sequence[Argument]) -> Unit:
    _numbers_only(verb, parts)
    odd = [name for name, power in parts[0].unit.powers if power % 2]
    if odd:
        raise FormulaError(f"cannot {verb} {_shown(parts[0])}: the root of {odd[0]} has no unit")
    return Unit(tuple((name, power // 2) for name, power in parts[0].unit.powers))


def _plain(verb: str, parts: Sequence[Argument]) -> Unit:
    _numbers_only(verb, parts)
    for part in parts:
        if not part.unit.plain:
            raise FormulaError(f"cannot {verb} {_shown(part)}: it takes plain numbers, inside a correlation")
    return PLAIN


def _dollars(verb: str, parts: Sequence[Argument]) -> Unit:
    if str(_first(verb, parts)) != "$":
        raise FormulaError(f"cannot {verb} {_shown(parts[0])}: money is in $")
    return parts[0].unit


def _branches(verb: str, parts: Sequence[Argument]) -> Unit:
    condition, yes, no = parts
    if condition.sort is not Sort.FLAG:
        raise FormulaError(f"cannot {verb} {condition.words}: it is {condition.sort.value}, not a yes or no")
    if yes.sort is not no.sort:
        raise FormulaError(f"the two answers of when({condition.words}) are {yes.sort.value} and {no.sort.value}")
    if yes.sort is not Sort.NUMBER:
        return PLAIN
    if not yes.zero and not no.zero and yes.unit != no.unit:
        answers = f"{_shown(yes)} and {_shown(no)}"
        raise FormulaError(f"when({condition.words}): the two answers differ in unit, {answers}")
    return no.unit if yes.zero else yes.unit


def _flags(verb: str, parts: Sequence[Argument]) -> Unit:
    for part in parts:
        if part.sort is not Sort.FLAG:
            raise FormulaError(f"cannot {verb} {part.words}: it is {part.sort.value}, not a yes or no")
    return PLAIN


def _any(_verb: str, _parts: Sequence[Argument]) -> Unit:
    return PLAIN


def _spoken(verb: str, parts: Sequence[Argument]) -> Unit:
    for part in parts:
        if part.sort is Sort.FLAG:
            raise FormulaError(f"cannot {verb} {part.words}: it is a yes or no; say it with when()")
        if part.sort is Sort.NUMBER and any(name not in COUNTS for name, _ in part.unit.powers):
            raise FormulaError(
                f"cannot {verb} {_shown(part)} into a sentence: spreadsheet programs show other digits of it; "
                "give it a cell of its own, and join only counts"
            )
    return PLAIN


def _listed(name: str, parts: Sequence[str]) -> str:
    return f"the {name} of {', '.join(parts[:-1])} and {parts[-1]}"


def _compare(name: str, sign: str, said: str, numbers: Callable[[Column, Column], Column]) -> Function:
    def sheet(a: str, b: str) -> str:
        return f"{_millionths_text(a)}{sign}{_millionths_text(b)}"

    def compare(a: Column, b: Column) -> Column:
        with np.errstate(invalid="ignore"):
            return numbers(millionths(a), millionths(b))

    def words(a: str, b: str) -> str:
        return f"{a} {said} {b}"

    return Function(name, sheet, compare, _compared, words, rank=COMPARISON, words_rank=COMPARISON, sort=Sort.FLAG)


def _millionths_text(text: str) -> str:
    return text if text in ("0", "1") else f"ROUND({text},6)"


def _table() -> dict[str, Function]:
    rows = [
        Function(
            "add", lambda a, b: f"{a}+{b}", np.add, _same, lambda a, b: f"{a} + {b}", ADDING, (ADDING, ADDING), ADDING
        ),
        Function(
            "subtract",
            lambda a, b: f"{a}-{b}",
            np.subtract,
            _same,
            lambda a, b: f"{a} - {b}",
            ADDING,
            (ADDING, MULTIPLYING),
            ADDING,
        ),
        Function(
            "multiply",
            lambda a, b: f"{a}*{b}",
            np.multiply,
            _product_unit,
            lambda a, b: f"{a} x {b}",
            MULTIPLYING,
            (MULTIPLYING, MULTIPLYING),
            MULTIPLYING,
        ),
        Function(
            "divide",
            lambda a, b: f"{a}/{b}",
            _divide,
            _quotient_unit,
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
            _any,
            lambda a, b: f"{a} is {b}",
            COMPARISON,
            (CALL, CALL),
            sort=Sort.FLAG,
        ),
        Function(
            "given",
            lambda a: f"ISNUMBER({a})",
            lambda a: ~np.isnan(a),
            _any,
            lambda a: f"{a} is given",
            words_rank=COMPARISON,
            sort=Sort.FLAG,
        ),
        Function(
            "both",
            lambda *a: f"AND({','.join(a)})",
            lambda *a: np.logical_and.reduce(np.broadcast_arrays(*a)),
            _flags,
            lambda *a: " and ".join(a),
            words_rank=COMPARISON,
            sort=Sort.FLAG,
        ),
        Function(
            "either",
            lambda *a: f"OR({','.join(a)})",
            lambda *a: np.logical_or.reduce(np.broadcast_arrays(*a)),
            _flags,
            lambda *a: " or ".join(a),
            words_rank=COMPARISON,
            sort=Sort.FLAG,
        ),
        Function(
            "opposite",
            lambda a: f"NOT({a})",
            np.logical_not,
            _flags,
            lambda a: f"not ({a})",
            sort=Sort.FLAG,
            words_rank=CALL,
        ),
        Function(
            "when",
            lambda c, a, b: f"IF({c},{a},{b})",
            _chosen,
            _branches,
            lambda c, a, b: f"{a} if {c}, else {b}",
            sort=None,
        ),
        Function(
            "if_given",
            lambda a, b: f"IF(ISNUMBER({a}),{a},{b})",
            lambda a, b: np.where(np.isnan(a), b, a),
            _same,
            lambda a, b: f"{a} (or {b} when none)",
        ),
        Function(
            "largest",
            lambda *a: f"MAX({','.join(a)})",
            lambda *a: np.maximum.reduce(np.broadcast_arrays(*a)),
            _same,
            lambda *a: _listed("largest", a),
        ),
        Function(
            "smallest",
            lambda *a: f"MIN({','.join(a)})",
            lambda *a: np.minimum.reduce(np.broadcast_arrays(*a)),
            _same,
            lambda *a: _listed("smallest", a),
        ),
        Function(
            "round_up", lambda a: f"ROUNDUP(ROUND({a},6),0)", _up, _first, lambda a: f"{a}, rounded up to a whole"
        ),
        Function(
            "round_down",
            lambda a: f"ROUNDDOWN(ROUND({a},6),0)",
            _down,
            _first,
            lambda a: f"{a}, rounded down to a whole",
        ),
        Function(
            "round_up_to",
            lambda a, b: f"ROUNDUP(ROUND({a}/{b},6),0)*{b}",
            lambda a, b: _up(_divide(a, b)) * b,
            _stepped,
            lambda a, b: f"{a}, rounded up to the next {b}",
            MULTIPLYING,
            (MULTIPLYING, CALL),
        ),
        Function(
            "round_down_to",
            lambda a, b: f"ROUNDDOWN(ROUND({a}/{b},6),0)*{b}",
            lambda a, b: _down(_divide(a, b)) * b,
            _stepped,
            lambda a, b: f"{a}, rounded down to the {b} below",
            MULTIPLYING,
            (MULTIPLYING, CALL),
        ),
        Function(
            "rounded",
            lambda a, n: f"ROUND(ROUND({a}*{n},6),0)/{n}",
            _rounded,
            _first,
            lambda a, n: f"{a}, to the nearest {n}th",
            MULTIPLYING,
            (MULTIPLYING, CALL),
        ),
        Function("money", lambda a: f"ROUND(ROUND({a},6),2)", _cents, _dollars, lambda a: f"{a}, to the cent"),
        Function("size", lambda a: f"ABS({a})", np.abs, _first, lambda a: f"the size of {a}"),
        Function("square_root", lambda a: f"SQRT({a})", np.sqrt, _root_unit, lambda a: f"the square root of {a}"),
        Function("power", lambda a, b: f"POWER({a},{b})", np.power, _plain, lambda a, b: f"{a} to the power {b}"),
        Function("exponential", lambda a: f"EXP({a})", np.exp, _plain, lambda a: f"e to the power {a}"),
        Function("logarithm", lambda a: f"LN({a})", np.log, _plain, lambda a: f"the natural logarithm of {a}"),
        Function("normal_below", lambda a: f"NORMSDIST({a})", _normal, _plain, lambda a: f"the normal share below {a}"),
        Function(
            "normal_place", lambda a: f"NORMSINV({a})", _normal_inverse, _plain, lambda a: f"the normal place of {a}"
        ),
        Function(
            "joined",
            lambda *a: "&".join(a),
            _joined,
            _spoken,
            lambda *a: " & ".join(a),
            JOINING,
            (ADDING,),
            JOINING,
            sort=Sort.TEXT,
        ),
    ]
    return {row.name: row for row in rows}


FUNCTIONS = _table()
"""The whole table, by name."""
