"""The functions of the rule language that work across rows: aggregates, lookups, running totals, row names."""

from __future__ import annotations

from calc.formula.aggregate import Aggregate, Before, ByRow, First, RowAt, RowCount, RowNumber, RowWord, Running
from calc.formula.keys import GroupSum, LookupByKey, SumIf
from calc.formula.levels import JOB, Level
from calc.formula.tree import Exact, Expr, Literal, Named, Operand, RowCalled, UnitCast, expression
from calc.formula.value_types import FormulaError, ValueType
from calc.units.algebra import PLAIN


def total(value: Named, to: Level = JOB) -> Expr:
    """The sum of ``value`` over its rows, for each row of the higher level ``to``."""
    summed = getattr(value, "all_rows", None)
    return summed if to == JOB and summed is not None else _aggregate("total", value, to)


def least(value: Named, to: Level = JOB) -> Expr:
    """The least of ``value`` over its rows, for each row of the higher level ``to``."""
    return _aggregate("least", value, _require_contiguous(value, to))


def greatest(value: Named, to: Level = JOB) -> Expr:
    """The greatest of ``value`` over its rows, for each row of the higher level ``to``."""
    return _aggregate("greatest", value, _require_contiguous(value, to))


def argmin(value: Named, to: Level = JOB) -> Expr:
    """The number of the first row with the least ``value`` (argmin): the first row wins a tie.

    For a higher level ``to`` the number counts the rows that belong to one row of it; ``at(..., of=to)`` picks by it.
    """
    return _aggregate("place of least", value, _require_contiguous(value, to))


def _require_contiguous(value: Named, to: Level) -> Level:
    """No spreadsheet function takes the least of a group, so the rows of a group must be contiguous."""
    resolved_level = value.resolved_level if isinstance(value, Named) else None
    if resolved_level is not None and to <= resolved_level and not resolved_level.is_contiguous_in(to):
        raise FormulaError(f"the rows of {value.label} of one {to} are not contiguous, so it has no least there")
    return to


def _aggregate(how: str, value: Named, to: Level) -> Aggregate:
    if not isinstance(value, Named):
        raise FormulaError(f"the {how} of {expression(value).words} needs a line of its own to be taken over")
    if value.value_type is not ValueType.NUMBER:
        raise FormulaError(f"the {how} of {value.label} cannot be taken: it is {value.value_type.value}")
    if getattr(value, "optional", False):
        raise FormulaError(f"the {how} of {value.label} cannot be taken: it may be none; use if_given()")
    resolved_level = value.resolved_level if isinstance(value, Named) else None
    if resolved_level is not None and not to <= resolved_level:
        raise FormulaError(
            f"the {how} of {value.label} cannot be taken for each {to}: it has a value for each {resolved_level}"
        )
    return Aggregate(how, value, to)


def look_up(value: Named, by: Operand) -> RowAt:
    """``value`` of the row with the name ``by``, for a level of named rows."""
    by = expression(by)
    if by.value_type is not ValueType.TEXT:
        raise FormulaError(f"{value.label} is looked up by a word, and {by.words} is {by.value_type.value}; use at()")
    resolved_level = value.resolved_level if isinstance(value, Named) else None
    if resolved_level is not None and not (resolved_level.axes and resolved_level.axis.words):
        raise FormulaError(f"{value.label} is not on a level of named rows, so no word finds it; use at()")
    if resolved_level is not None and resolved_level.axis.ragged:
        raise FormulaError(f"{value.label} does not have every row in every job; use at() with row_called()")
    return RowAt(value, by)


def at(value: Named, place: Expr, of: Level = JOB) -> RowAt:
    """``value`` of the row whose number is ``place``, counted among the rows of one row of the higher level ``of``."""
    if place.value_type is not ValueType.NUMBER:
        raise FormulaError(f"{value.label} is picked by a row number, and {place.words} is {place.value_type.value}")
    level = value.resolved_level if isinstance(value, Named) else None
    fixed = isinstance(place, Exact) and not isinstance(place, RowCalled)
    if level is not None and level.axes and fixed and level.leaves[-1].ragged:
        raise FormulaError(f"{value.label} does not have every row in every job; name the row by row_called()")
    return RowAt(value, place, _require_contiguous(value, of))


def row_called(level: Level, word: str) -> RowCalled:
    """The number of the row with the name ``word``, for :func:`at`, which gives nothing in a job without that row.

    Raises FormulaError for an unknown word.
    """
    words = level.axis.words
    if word not in words:
        raise FormulaError(f"no row of {level} is called {word!r}; there are {words}")
    place = words.index(word) + 1
    return RowCalled(float(place), PLAIN, str(place), str(place), word, level)


def before(value: Named, of: Level, otherwise: Operand) -> Before:
    """``value`` in the row before, within the same row of ``of``; ``otherwise`` in the first."""
    return Before(value, of, expression(otherwise))


def first(value: Named, of: Level) -> First:
    """``value`` in the first row of the same row of ``of``."""
    return First(value, of)


def running(value: Named, of: Level) -> Running:
    """The sum of ``value`` over the rows down to this one, within the same row of ``of``."""
    return Running(value, of)


def lookup_by_key(value: Named, key: Named, wanted: Expr) -> LookupByKey:
    """``value`` of the row whose ``key`` is exactly ``wanted``, both whole numbers; 0 when there are no rows at all.

    Guard it with when(): where no row has the key, a spreadsheet program shows an error.
    """
    return _lookup(value, key, wanted, ascending=False)


def lookup_at_or_below(value: Named, key: Named, wanted: Expr) -> LookupByKey:
    """``value`` of the last row whose ``key`` is at most ``wanted``, where the keys ascend over all rows of the job."""
    return _lookup(value, key, wanted, ascending=True)


def _lookup(value: Named, key: Named, wanted: Expr, ascending: bool) -> LookupByKey:
    if key.unit != wanted.unit:
        raise FormulaError(f"{value.label} is not found by {key.label} [{key.unit}] and {wanted.words} [{wanted.unit}]")
    return LookupByKey(value, key, wanted, ascending)


def total_where(value: Named, key: Named, wanted: Operand) -> SumIf:
    """The sum of ``value`` over the rows of the job whose ``key``, one of the program's own words, is ``wanted``."""
    word = expression(wanted)
    if key.value_type is not ValueType.TEXT or word.value_type is not ValueType.TEXT:
        raise FormulaError(f"{value.label} is summed where one word is another, not by {key.label} and {word.words}")
    return SumIf(value, key, word)


def total_on(value: Named, key: Named, wanted: Expr) -> SumIf:
    """The sum of ``value`` over the rows of the job whose ``key`` is the same whole number as ``wanted``, or date."""
    if key.unit != wanted.unit or wanted.value_type is not ValueType.NUMBER:
        raise FormulaError(f"{value.label} is not summed by {key.label} [{key.unit}] and {wanted.words}")
    return SumIf(value, key, wanted)


def group_total(value: Named, key: Named) -> GroupSum:
    """The sum of ``value`` over all rows of the job whose ``key`` is the same number."""
    return GroupSum(key, value)


def first_in_group(key: Named) -> GroupSum:
    """The number of the first row whose ``key`` is the same number."""
    return GroupSum(key, None)


def by_row(level: Level, *cases: Operand) -> ByRow:
    """A table with a formula for each of the named rows of ``level``. Raises FormulaError unless all have one unit."""
    nodes = tuple(expression(case) for case in cases)
    if len(nodes) != len(level.axis.words):
        raise FormulaError(f"there are {len(nodes)} cases for the {len(level.axis.words)} rows of {level}")
    zero = [node for node in nodes if not (isinstance(node, Literal) and node.value == 0)] or list(nodes)
    if any(node.unit != zero[0].unit or node.value_type is not zero[0].value_type for node in zero):
        raise FormulaError(f"the rows of {level} are not all of one unit: {', '.join(str(node.unit) for node in zero)}")
    return ByRow(level, tuple(UnitCast(node, zero[0].unit) if node not in zero else node for node in nodes))


def row_number(level: Level, within: Level = JOB) -> RowNumber:
    """The number of the row, from 1, counted anew in each row of the higher level ``within``."""
    if not level.is_contiguous_in(within):
        raise FormulaError(f"the rows of {level} of one {within} are not contiguous, so they cannot be numbered there")
    return RowNumber(level, within)


def row_count(level: Level, within: Level = JOB) -> RowCount:
    """How many rows a list has, those not in use among them, for each row of the higher level ``within``."""
    if not (level.axes and level.axis.slots and level.is_contiguous_in(within)):
        raise FormulaError(f"{level} is no list of the {within} whose length follows from values")
    return RowCount(level, within)


def row_word(level: Level) -> RowWord:
    """The name of the row."""
    return RowWord(level)
