"""The unit rules of the functions: the unit that comes out, or what is wrong with what goes in.

Each rule takes the verb that a refusal says and the arguments, and raises FormulaError for what cannot be meant.
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
"""What a function does to its arguments, for messages; others go by their name."""


def _numbers_only(verb: str, parts: Sequence[Argument]) -> None:
    for part in parts:
        if part.sort is not ValueType.NUMBER:
            raise FormulaError(f"cannot {verb} {part.words}: it is {part.sort.value}, not a number")


def _shown(part: Argument) -> str:
    return f"{part.words} [{part.unit}]"


def _counts(unit: Unit) -> bool:
    """Whether a unit counts things: loads, trucks, people."""
    return not unit.plain and all(name in COUNTS for name, _ in unit.powers)


def _measured(parts: Sequence[Argument]) -> list[Argument]:
    """The parts whose unit matters: the bare 0 is 0 of any unit, and the bare 1 beside a count is one of it."""
    measured = [part for part in parts if not part.zero]
    others = [part for part in measured if not part.is_one]
    return others if others and all(_counts(part.unit) for part in others) else measured


def same(verb: str, parts: Sequence[Argument]) -> Unit:
    """All of one unit, which is what comes out."""
    _numbers_only(verb, parts)
    measured = _measured(parts)
    for part in measured[1:]:
        if part.unit != measured[0].unit:
            raise FormulaError(f"cannot {verb} {_shown(measured[0])} and {_shown(part)}")
    return measured[0].unit if measured else PLAIN


def amounts(verb: str, parts: Sequence[Argument]) -> Unit:
    """All of one unit, which is what comes out; a date is no amount, though it is a number."""
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
    """Both of one unit; a yes or no comes out."""
    same("compare", parts)
    return PLAIN


def first(verb: str, parts: Sequence[Argument]) -> Unit:
    """The unit of the first comes out."""
    _numbers_only(verb, parts)
    return parts[0].unit


def stepped(verb: str, parts: Sequence[Argument]) -> Unit:
    """A number and the step it is rounded to, both of one unit."""
    _numbers_only(verb, parts)
    value, step = parts
    if value.unit != step.unit:
        raise FormulaError(f"cannot round {_shown(value)} to steps of {_shown(step)}")
    return value.unit


def root(verb: str, parts: Sequence[Argument]) -> Unit:
    """The root of the unit, where it has one."""
    _numbers_only(verb, parts)
    odd = [name for name, power in parts[0].unit.powers if power % 2]
    if odd:
        raise FormulaError(f"cannot {verb} {_shown(parts[0])}: the root of {odd[0]} has no unit")
    return Unit(tuple((name, power // 2) for name, power in parts[0].unit.powers))


def plain(verb: str, parts: Sequence[Argument]) -> Unit:
    """Plain numbers in, a plain number out."""
    _numbers_only(verb, parts)
    for part in parts:
        if not part.unit.plain:
            raise FormulaError(f"cannot {verb} {_shown(part)}: it takes plain numbers, inside a correlation")
    return PLAIN


def dollars(verb: str, parts: Sequence[Argument]) -> Unit:
    """Money in, money out."""
    if str(first(verb, parts)) != "$":
        raise FormulaError(f"cannot {verb} {_shown(parts[0])}: money is in $")
    return parts[0].unit


def branches(verb: str, parts: Sequence[Argument]) -> Unit:
    """A yes or no, then two answers of one sort and one unit."""
    condition, yes, no = parts
    if condition.sort is not ValueType.FLAG:
        raise FormulaError(f"cannot {verb} {condition.words}: it is {condition.sort.value}, not a yes or no")
    if yes.sort is not no.sort:
        raise FormulaError(f"the two answers of when({condition.words}) are {yes.sort.value} and {no.sort.value}")
    if yes.sort is not ValueType.NUMBER:
        return PLAIN
    measured = _measured((yes, no))
    if len({part.unit for part in measured}) > 1:
        answers = f"{_shown(yes)} and {_shown(no)}"
        raise FormulaError(f"when({condition.words}): the two answers differ in unit, {answers}")
    return measured[0].unit if measured else PLAIN


def flags(verb: str, parts: Sequence[Argument]) -> Unit:
    """Every part is a yes or no."""
    for part in parts:
        if part.sort is not ValueType.FLAG:
            raise FormulaError(f"cannot {verb} {part.words}: it is {part.sort.value}, not a yes or no")
    return PLAIN


def words_only(verb: str, parts: Sequence[Argument]) -> Unit:
    """Words in; a yes or no comes out."""
    for part in parts:
        if part.sort is not ValueType.TEXT:
            raise FormulaError(f"cannot {verb} {part.words}: it is {part.sort.value}, not words")
    return PLAIN


def one_number(verb: str, parts: Sequence[Argument]) -> Unit:
    """Numbers in; a yes or no comes out."""
    _numbers_only(verb, parts)
    return PLAIN


def spoken(verb: str, parts: Sequence[Argument]) -> Unit:
    """Words and counts; any other number would show other digits elsewhere."""
    for part in parts:
        if part.sort is ValueType.FLAG:
            raise FormulaError(f"cannot {verb} {part.words}: it is a yes or no; say it with when()")
        if part.sort is ValueType.NUMBER and (
            part.unit.plain or any(name not in COUNTS for name, _ in part.unit.powers)
        ):
            raise FormulaError(
                f"cannot {verb} {_shown(part)} into a sentence: spreadsheet programs show other digits of it; "
                "give it a cell of its own, and join only counts"
            )
    return PLAIN
