"""The unit rules of the functions: the unit of the result, or a FormulaError for arguments that do not fit.

Each rule takes the verb for its error message and the arguments.
"""

from __future__ import annotations

from collections.abc import Sequence

from calc.formula.value_types import Argument, FormulaError, ValueType
from calc.units.algebra import COUNTS, DATE, PLAIN, Unit, unit

_DATE = unit(DATE)

VERBS = {
    "largest": "take the largest of",
    "smallest": "take the smallest of",
    "when": "ask",
    "both": "ask both of",
    "either": "ask either of",
    "not_": "ask the opposite of",
    "joined": "join",
    "is_word": "ask for a word of",
    "given": "ask whether there is",
    "if_given": "fall back from",
    "round_up": "round up",
    "money": "count as money",
    "abs_": "take the size of",
    "square_root": "take the square root of",
    "exponential": "take the exponential of",
    "logarithm": "take the logarithm of",
}
"""The verbs of functions for error messages; others use the name of the function."""


def _numbers_only(verb: str, parts: Sequence[Argument]) -> None:
    for part in parts:
        if part.value_type is not ValueType.NUMBER:
            raise FormulaError(f"cannot {verb} {part.words}: it is {part.value_type.value}, not a number")


def _with_unit(part: Argument) -> str:
    return f"{part.words} [{part.unit}]"


def _is_count(unit: Unit) -> bool:
    """Whether a unit counts things: loads, trucks, people."""
    return not unit.plain and all(name in COUNTS for name, _ in unit.powers)


def _unit_bearing(parts: Sequence[Argument]) -> list[Argument]:
    """The parts whose unit matters: the bare 0 is 0 of any unit, and the bare 1 beside a count has its unit."""
    unit_bearing = [part for part in parts if not part.zero]
    others = [part for part in unit_bearing if not part.is_one]
    return others if others and all(_is_count(part.unit) for part in others) else unit_bearing


def same(verb: str, parts: Sequence[Argument]) -> Unit:
    """All of one unit, which is that of the result."""
    _numbers_only(verb, parts)
    unit_bearing = _unit_bearing(parts)
    for part in unit_bearing[1:]:
        if part.unit != unit_bearing[0].unit:
            raise FormulaError(f"cannot {verb} {_with_unit(unit_bearing[0])} and {_with_unit(part)}")
    return unit_bearing[0].unit if unit_bearing else PLAIN


def amounts(verb: str, parts: Sequence[Argument]) -> Unit:
    """All of one unit, which is that of the result; a date is no amount, though it is a number."""
    found = same(verb, parts)
    if found == _DATE:
        named = " and ".join(part.words for part in parts)
        raise FormulaError(f"cannot {verb} {named}: dates are no amounts; take days_between or days_after")
    return found


def product(verb: str, parts: Sequence[Argument]) -> Unit:
    """The units multiply."""
    _numbers_only(verb, parts)
    return parts[0].unit * parts[1].unit


def quotient(verb: str, parts: Sequence[Argument]) -> Unit:
    """The units divide."""
    _numbers_only(verb, parts)
    return parts[0].unit / parts[1].unit


def compared(_verb: str, parts: Sequence[Argument]) -> Unit:
    """Both of one unit; the result is a flag."""
    same("compare", parts)
    return PLAIN


def first(verb: str, parts: Sequence[Argument]) -> Unit:
    """The result has the unit of the first."""
    _numbers_only(verb, parts)
    return parts[0].unit


def stepped(verb: str, parts: Sequence[Argument]) -> Unit:
    """A number and the step it is rounded to, both of one unit."""
    _numbers_only(verb, parts)
    value, step = parts
    if value.unit != step.unit:
        raise FormulaError(f"cannot round {_with_unit(value)} to steps of {_with_unit(step)}")
    return value.unit


def root(verb: str, parts: Sequence[Argument]) -> Unit:
    """The root of the unit, where it has one."""
    _numbers_only(verb, parts)
    odd = [name for name, power in parts[0].unit.powers if power % 2]
    if odd:
        raise FormulaError(f"cannot {verb} {_with_unit(parts[0])}: the root of {odd[0]} has no unit")
    return Unit(tuple((name, power // 2) for name, power in parts[0].unit.powers))


def plain(verb: str, parts: Sequence[Argument]) -> Unit:
    """Plain numbers in, a plain number out."""
    _numbers_only(verb, parts)
    for part in parts:
        if not part.unit.plain:
            raise FormulaError(f"cannot {verb} {_with_unit(part)}: it takes plain numbers, inside a correlation")
    return PLAIN


def dollars(verb: str, parts: Sequence[Argument]) -> Unit:
    """Money in, money out."""
    if str(first(verb, parts)) != "$":
        raise FormulaError(f"cannot {verb} {_with_unit(parts[0])}: money is in $")
    return parts[0].unit


def branches(verb: str, parts: Sequence[Argument]) -> Unit:
    """A flag, then two answers of one type and one unit."""
    condition, yes, no = parts
    if condition.value_type is not ValueType.FLAG:
        raise FormulaError(f"cannot {verb} {condition.words}: it is {condition.value_type.value}, not a yes or no")
    if yes.value_type is not no.value_type:
        raise FormulaError(
            f"the two answers of when({condition.words}) are {yes.value_type.value} and {no.value_type.value}"
        )
    if yes.value_type is not ValueType.NUMBER:
        return PLAIN
    unit_bearing = _unit_bearing((yes, no))
    if len({part.unit for part in unit_bearing}) > 1:
        answers = f"{_with_unit(yes)} and {_with_unit(no)}"
        raise FormulaError(f"when({condition.words}): the two answers differ in unit, {answers}")
    return unit_bearing[0].unit if unit_bearing else PLAIN


def flags(verb: str, parts: Sequence[Argument]) -> Unit:
    """Every part is a flag."""
    for part in parts:
        if part.value_type is not ValueType.FLAG:
            raise FormulaError(f"cannot {verb} {part.words}: it is {part.value_type.value}, not a yes or no")
    return PLAIN


def words_only(verb: str, parts: Sequence[Argument]) -> Unit:
    """Texts only; the result is a flag."""
    for part in parts:
        if part.value_type is not ValueType.TEXT:
            raise FormulaError(f"cannot {verb} {part.words}: it is {part.value_type.value}, not words")
    return PLAIN


def one_number(verb: str, parts: Sequence[Argument]) -> Unit:
    """Numbers only; the result is a flag."""
    _numbers_only(verb, parts)
    return PLAIN


def one_date(verb: str, parts: Sequence[Argument]) -> Unit:
    """A date, and nothing else."""
    _numbers_only(verb, parts)
    if parts[0].unit != _DATE:
        raise FormulaError(f"cannot {verb} {_with_unit(parts[0])}: it is no date")
    return PLAIN


def joinable(verb: str, parts: Sequence[Argument]) -> Unit:
    """Texts and counts; spreadsheet programs show other numbers with different digits."""
    for part in parts:
        if part.value_type is ValueType.FLAG:
            raise FormulaError(f"cannot {verb} {part.words}: it is a yes or no; say it with when()")
        if part.value_type is ValueType.NUMBER and (
            part.unit.plain or any(name not in COUNTS for name, _ in part.unit.powers)
        ):
            raise FormulaError(
                f"cannot {verb} {_with_unit(part)} into a sentence: spreadsheet programs show other digits of it; "
                "give it a cell of its own, and join only counts"
            )
    return PLAIN
