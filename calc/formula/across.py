"""The functions that rules go from row to row with: many rows into one, one out of many, and what a row is called."""

from __future__ import annotations

from calc.formula.aggregate import Aggregate, Before, ByRow, First, RowAt, RowNumber, RowWord, Running
from calc.formula.keys import GroupSum, LookupByKey, SumIf
from calc.formula.levels import JOB, Level
from calc.formula.tree import Exact, Expr, Literal, Named, Operand, UnitCast, expression
from calc.formula.value_types import FormulaError, ValueType
from calc.units.algebra import PLAIN


def total(value: Named, to: Level = JOB) -> Expr:
    """The sum of ``value`` over its rows, for each row of the higher level ``to``."""
    summed = getattr(value, "all_rows", None)
    return summed if to == JOB and summed is not None else _gather("total", value, to)


def least(value: Named, to: Level = JOB) -> Expr:
    """The least of ``value`` over its rows, for each row of the higher level ``to``."""
    return _gather("least", value, _together(value, to))


def greatest(value: Named, to: Level = JOB) -> Expr:
    """The greatest of ``value`` over its rows, for each row of the higher level ``to``."""
    return _gather("greatest", value, _together(value, to))


def argmin(value: Named, to: Level = JOB) -> Expr:
    """The place of the first row in which ``value`` is least: ties go by the order of the rows.

    For a higher level ``to`` it is counted among the rows that belong to one row of it; ``at(..., of=to)`` goes there.
    """
    return _gather("place of least", value, _together(value, to))


def _together(value: Named, to: Level) -> Level:
    """No spreadsheet program has a least by group, so the rows of a group must stand one after the other."""
    known_level = value.known_level if isinstance(value, Named) else None
    if known_level is not None and to <= known_level and not known_level.together(to):
        raise FormulaError(f"the rows of {value.label} of one {to} do not stand together, so it has no least there")
    return to


def _gather(how: str, value: Named, to: Level) -> Aggregate:
    if not isinstance(value, Named):
        raise FormulaError(f"the {how} of {expression(value).words} needs a line of its own to be taken over")
    if value.sort is not ValueType.NUMBER:
        raise FormulaError(f"the {how} of {value.label} cannot be taken: it is {value.sort.value}")
    if getattr(value, "optional", False):
        raise FormulaError(f"the {how} of {value.label} cannot be taken: it may be none; use if_given()")
    known_level = value.known_level if isinstance(value, Named) else None
    if known_level is not None and not to <= known_level:
        raise FormulaError(f"the {how} of {value.label} cannot go to each {to}: it stands for each {known_level}")
    return Aggregate(how, value, to)


def look_up(value: Named, by: Operand) -> RowAt:
    """``value`` of the row that goes by the word ``by``, for a level of named rows."""
    by = expression(by)
    if by.sort is not ValueType.TEXT:
        raise FormulaError(f"{value.label} is looked up by a word, and {by.words} is {by.sort.value}; use at()")
    known_level = value.known_level if isinstance(value, Named) else None
    if known_level is not None and not (known_level.axes and known_level.axis.words):
        raise FormulaError(f"{value.label} is not on a level of named rows, so no word finds it; use at()")
    return RowAt(value, by)


def at(value: Named, place: Expr, of: Level = JOB) -> RowAt:
    """``value`` of the row whose number is ``place``, counted among the rows of one row of the higher level ``of``."""
    if place.sort is not ValueType.NUMBER:
        raise FormulaError(f"{value.label} is picked by a row number, and {place.words} is {place.sort.value}")
    return RowAt(value, place, _together(value, of))


def row_called(level: Level, word: str) -> Exact:
    """The place of the named row that goes by ``word``, for :func:`at`. Raises FormulaError for an unknown word."""
    words = level.axis.words
    if word not in words:
        raise FormulaError(f"no row of {level} is called {word!r}; there are {words}")
    place = words.index(word) + 1
    return Exact(float(place), PLAIN, word, str(place))


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
    return _keyed(value, key, wanted, ascending=False)


def lookup_at_or_below(value: Named, key: Named, wanted: Expr) -> LookupByKey:
    """``value`` of the last row whose ``key`` is at most ``wanted``, where the keys ascend over all rows of the job."""
    return _keyed(value, key, wanted, ascending=True)


def _keyed(value: Named, key: Named, wanted: Expr, ascending: bool) -> LookupByKey:
    if key.unit != wanted.unit:
        raise FormulaError(f"{value.label} is not found by {key.label} [{key.unit}] and {wanted.words} [{wanted.unit}]")
    return LookupByKey(value, key, wanted, ascending)


def total_where(value: Named, key: Named, wanted: Operand) -> SumIf:
    """The sum of ``value`` over the rows of the job whose ``key``, a word of the program's own, is ``wanted``."""
    word = expression(wanted)
    if key.sort is not ValueType.TEXT or word.sort is not ValueType.TEXT:
        raise FormulaError(f"{value.label} is summed where one word is another, not by {key.label} and {word.words}")
    return SumIf(value, key, word)


def group_total(value: Named, key: Named) -> GroupSum:
    """The sum of ``value`` over all rows of the job whose ``key`` is the same number."""
    return GroupSum(key, value)


def first_in_group(key: Named) -> GroupSum:
    """The number of the first row whose ``key`` is the same number."""
    return GroupSum(key, None)


def by_row(level: Level, *cases: Operand) -> ByRow:
    """A table: for each of the named rows of ``level`` what stands there. Raises FormulaError unless they match."""
    nodes = tuple(expression(case) for case in cases)
    if len(nodes) != len(level.axis.words):
        raise FormulaError(f"there are {len(nodes)} cases for the {len(level.axis.words)} rows of {level}")
    zero = [node for node in nodes if not (isinstance(node, Literal) and node.value == 0)] or list(nodes)
    if any(node.unit != zero[0].unit or node.sort is not zero[0].sort for node in zero):
        raise FormulaError(f"the rows of {level} are not all of one unit: {', '.join(str(node.unit) for node in zero)}")
    return ByRow(level, tuple(UnitCast(node, zero[0].unit) if node not in zero else node for node in nodes))


def row_number(level: Level, within: Level = JOB) -> RowNumber:
    """The number of the row, from 1, counted anew in each row of the higher level ``within``."""
    if not level.together(within):
        raise FormulaError(f"the rows of {level} of one {within} do not stand together, so they are not counted there")
    return RowNumber(level, within)


def row_word(level: Level) -> RowWord:
    """The word the row goes by."""
    return RowWord(level)
