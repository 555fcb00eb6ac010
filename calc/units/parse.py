"""Parsing of typed numbers and dimensions, as people write them: 10'-6 1/2", 3.2 m, 120 sf, 22 C, 1/4" per ft.

    quantity = [sign] ( number foot ["-"] number [inch] | whole "-" number [inch] | number [unit] | "$" number [unit] )
    slope    = number ["%"] | number ":" number | number unit ("per" | "/") [number] unit
    number   = whole | decimal | whole "/" whole | whole ["-"] whole "/" whole

The arithmetic of a typed dimension is kept: a reading has its number and a formula with exactly that value.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from calc.errors import FindingKind, InputRefused
from calc.units.tokens import TokenReader, tidy
from calc.units.typed_units import (
    DOLLAR,
    FOOT,
    INCH,
    PERCENT,
    TON,
    TONNE,
    YARD,
    Measure,
    TracedNumber,
    as_wanted,
    convert,
    find,
    kinds,
    measure,
    nearest,
    plain_name,
)

__all__ = ["Reading", "looks_like_inches_after_point", "read_quantity", "read_slope", "tidy"]


@dataclass(frozen=True, slots=True)
class Reading:
    """The result of parsing a typed text.

    ``value`` is in the column's unit, computed with the same float arithmetic as ``formula`` (a spreadsheet formula
    without its ``=``, blank for a bare number in the column's unit); ``exact`` is the value without rounding. ``note``
    is information for the user, ``ask`` a question that does not stop the job; both are mostly blank.
    ``feet_and_inches`` is whether both feet and inches were typed.
    """

    value: float
    exact: Fraction
    formula: str
    note: str = ""
    ask: str = ""
    feet_and_inches: bool = False


_NOUNS = {
    ("length",): "a length",
    ("area",): "an area",
    ("volume",): "a volume",
    ("weight",): "a weight",
    ("time",): "a time",
    ("temperature",): "a temperature",
    ("percentage",): "a percentage",
    ("money",): "an amount of money",
    ("length", "time"): "a speed",
    ("force", "area"): "a pressure",
}
_EXAMPLES = {
    "ft": "10.5 or 10'-6\"",
    "in": "4.5 or 4 1/2",
    "ft2": "120 or 11.1 m2",
    "ft3": "54 or 1.5 m3",
    "yd3": "2.5 or 1.9 m3",
    "lb": "94 or 42.6 kg",
    "ton": "3 or 2.7 tonnes",
    "gal": "5 or 19 L",
    "h": "1.5 or 90 min",
    "mile": "8 or 13 km",
    "F": "72 or 22 C",
    "mph": "10 or 16 km/h",
    "psi": "3500 or 24 MPa",
    "$": "12.50 or $12.50",
    "lb/yd3": "1.5 or 0.9 kg/m3",
    "ft2/gal": "200 or 4.9 m2/L",
}
_SLOPE_REMEDY = 'Type a slope such as 2%, 1:48 or 1/4" per ft.'
_ONE_TO_ONE = {"%": "100", "ratio": "1"}


def looks_like_inches_after_point(text: str) -> bool:
    """Whether a bare decimal such as ``10.6`` may be feet and inches: 1 to 11 after the point, but not a half.

    10'-6" typed as 10.6 comes out 1.2 in too long, so it is worth a question beside lengths in feet and inches.
    """
    decimal = re.fullmatch(r"[-+]?[0-9]*\.([0-9]{1,2})", tidy(text))
    return decimal is not None and 1 <= int(decimal[1]) <= 11 and int(decimal[1]) != 5


def read_quantity(text: str, unit: str, *, signed: bool = False) -> Reading:
    """Parses the number ``text`` into ``unit``, the unit of its column.

    A bare number is in the column's unit; a typed unit of the same kind is converted exactly. ``signed`` allows a
    number below zero. Raises InputRefused with what was found and what to type instead.
    """
    column = _column(unit)
    if column.name == "h" and (time := _TIME.fullmatch(tidy(text).lower())) is not None:
        return _time_of_day(text, time, column)
    line = TokenReader(text, column.wanted, column.remedy)
    negative = line.take("-")
    if negative and not signed:
        raise line.refused("has a minus sign, and nothing below zero can stand here", kind=FindingKind.OUT_OF_RANGE)
    if not negative:
        line.take("+")
    in_dollars = line.take("$")
    number = line.number()
    if line.inches_follow() and not in_dollars:
        return _feet_and_inches(line, number, column, negative)
    typed = _typed_measure(line, "$" if in_dollars else "", column)
    worked = convert(number.negative() if negative else number, typed, column.measure)
    return Reading(
        worked.value, worked.exact, worked.formula, _tonnes_note(number, typed), _yard_question(number, typed)
    )


def _yard_question(number: TracedNumber, typed: Measure) -> str:
    """Whether a length in yards is meant: by the yard people mean concrete."""
    feet = float(number.exact * 3)
    return f"Is a length of {feet:g} ft meant? It was taken so." if typed == (YARD,) else ""


_TIME = re.compile(r"(\d{1,2})(?::(\d{2})(?::00)?)?\s*(am|pm|a\.m\.|p\.m\.|a|p)?(?<=[\dmp.a])(?<!^\d)(?<!^\d\d)")
"""A time of day or a length of time: 7am, 7:30 AM, 8:30, 13:00:00; no bare number."""


def _time_of_day(text: str, time: re.Match[str], column: _Column) -> Reading:
    """A time in hours: ``7:30 PM`` is 19.5."""
    hour, minute, half = int(time[1]), int(time[2] or 0), (time[3] or "")[:1]
    if hour > (12 if half else 24) or minute > 59 or (half and hour == 0):
        raise InputRefused(FindingKind.NOT_A_NUMBER, f'"{text}" is no time of day.', "Type it as 7:30 AM or 7.5.")
    hour = hour % 12 + (12 if half == "p" else 0) if half else hour
    worked = TracedNumber.number(str(hour))
    if minute:
        worked = worked.then("+", TracedNumber.number(str(minute)).then("/", TracedNumber.number("60")))
    return Reading(worked.value, worked.exact, worked.formula)


def read_slope(text: str, unit: str = "%") -> Reading:
    """Parses the slope ``text`` into percent, or into a ratio of rise to run when ``unit`` is ``ratio``.

    2%, 1:48, and a rise per run such as 1/4" per ft. A bare number of 0.5 or more is percent, a smaller one a ratio;
    the note tells which. Raises InputRefused with what was found and what to type instead.
    """
    one = TracedNumber.number(_ONE_TO_ONE[unit])
    line = TokenReader(text, "a slope", _SLOPE_REMEDY)
    if line.take("-"):
        raise line.refused("has a minus sign, and a slope is never below zero", kind=FindingKind.OUT_OF_RANGE)
    line.take("+")
    rise = line.number()
    if line.at_end:
        return _bare_slope(line, rise, one)
    worked = _slope(line, rise, one)
    if not line.at_end:
        raise line.refused()
    return Reading(worked.value, worked.exact, worked.formula)


@dataclass(frozen=True, slots=True)
class _Column:
    """The unit of a column: its name and measure, and the texts for messages: what is expected, what to type."""

    name: str
    measure: Measure
    wanted: str
    remedy: str


@cache
def _column(unit: str) -> _Column:
    parts = measure(unit)
    noun = _NOUNS.get(kinds(parts))
    number = f"a number of {unit}" if noun else f"a number in the unit {unit}" if unit else "a plain number"
    more = ", or feet and inches" if parts == (FOOT,) else ""
    remedy = f"Type {number}{more}, for example {_EXAMPLES.get(unit, '12')}."
    return _Column(plain_name(unit), parts, f"{noun} in {unit}" if noun else number, remedy)


def _feet_and_inches(line: TokenReader, feet: TracedNumber, column: _Column, negative: bool) -> Reading:
    """Parses the rest of 10'-6", 10 ft 6 or 10-6 after the feet."""
    by_dash = line.take("-")
    is_length = kinds(column.measure) == ("length",)
    if by_dash and column.measure != (FOOT,):
        advice = "With marks, as in 10'-6\", feet and inches can stand here." if is_length else ""
        raise line.refused(
            "has a dash between two numbers, which is read as feet and inches in a column of ft only", advice
        )
    if not is_length:
        raise line.refused(f"is a length, and {column.wanted} is wanted", kind=FindingKind.WRONG_UNIT)
    if not by_dash:
        line.word()
        line.take("-")
    three_digits = len(line.peek().text.partition(".")[0]) > 2  # 1'000 is a thousand to some
    inches = line.number()
    if three_digits or [token.scale for token in line.rest()] not in ([], [INCH]):
        raise line.refused()
    if feet.exact.denominator != 1:
        raise line.refused("has a part of a foot, and inches as well")
    if by_dash and inches.exact >= 12:
        raise line.refused("has 12 or more after the dash, where inches would stand")
    worked = convert(feet, (FOOT,), column.measure).then("+", convert(inches, (INCH,), column.measure))
    worked = worked.negative() if negative else worked
    written = f"{feet.text} ft {inches.text.replace('+', ' ')} in"
    note = f"read as {written}" if by_dash else ""
    ask = (
        f"Is {written} meant, which is {_feet_and_inches_text(feet.exact * 12 + inches.exact)}?"
        if inches.exact >= 12
        else ""
    )
    return Reading(worked.value, worked.exact, worked.formula, note, ask, feet_and_inches=True)


def _feet_and_inches_text(inches: Fraction) -> str:
    """Inches as feet and inches with a fraction: 134 1/2 is 11 ft 2 1/2 in."""
    feet, rest = divmod(inches, 12)
    whole, part = divmod(rest, 1)
    return f"{feet} ft {whole} {part} in" if part else f"{feet} ft {whole} in"


def _typed_measure(line: TokenReader, sign: str, column: _Column) -> Measure:
    """Parses the unit at the end, after ``sign`` ($ or blank); the unit of the column when there is none."""
    rest = line.rest()
    name = plain_name(sign + "".join("/" if token.name == "per" else token.text for token in rest))
    if name.startswith("/") and column.measure[0] == DOLLAR:
        name = f"${name}"
    if name in ("", column.name) or (name == "$" and column.measure[0] == DOLLAR):
        return column.measure
    if any(token.text in ("T", "T.") for token in rest):
        raise line.refused("may be short tons or metric tonnes", "Write ton or tonne.", kind=FindingKind.WRONG_UNIT)
    if any(not token.fits_unit for token in rest):
        raise line.refused()
    try:
        typed = as_wanted(measure(name, column.name.split("/")), column.measure)
    except KeyError as unknown:
        raise _unknown_unit(line, unknown.args[0], column) from None
    if kinds(typed) != kinds(column.measure):
        found = _NOUNS.get(kinds(typed), f"a number in the unit {name}")
        raise line.refused(f"is {found}, and {column.wanted} is wanted", kind=FindingKind.WRONG_UNIT)
    return typed


def _unknown_unit(line: TokenReader, word: str, column: _Column) -> InputRefused:
    if not word:
        return line.refused()
    near = nearest(word, kinds(column.measure))
    return line.refused(
        f"has the unit {word}, which is not known", f"Did you mean {near}?" if near else "", FindingKind.WRONG_UNIT
    )


def _tonnes_note(number: TracedNumber, typed: Measure) -> str:
    """The note on metric tonnes, which a reader may mistake for short tons."""
    if TONNE not in typed:
        return ""
    tons = number.exact * TONNE.size / TON.size
    return f"read as metric tonnes: {float(tons):.3f} short tons" if typed == (TONNE,) else "t read as metric tonnes"


def _bare_slope(line: TokenReader, rise: TracedNumber, one: TracedNumber) -> Reading:
    if "/" in rise.text:
        raise line.refused("does not say what it is a part of")
    is_ratio = 0 < rise.exact < Fraction(1, 2)
    worked = _scaled(rise, one) if is_ratio else _percent(rise, one)
    note = f"read as a ratio, {float(rise.exact * 100):g} %" if is_ratio else f"read as {float(rise.exact):g} %"
    return Reading(worked.value, worked.exact, worked.formula, note)


def _percent(rise: TracedNumber, one: TracedNumber) -> TracedNumber:
    return rise if one.exact == 100 else rise.then("/", TracedNumber.number("100"))


def _scaled(rise: TracedNumber, one: TracedNumber) -> TracedNumber:
    """``rise`` in the unit in which a slope of 1:1 is ``one``, without steps that change nothing."""
    if one.exact == 1:
        return rise
    return one if rise.text == "1" else rise.then("*", one)


def _slope(line: TokenReader, rise: TracedNumber, one: TracedNumber) -> TracedNumber:
    """Parses the rest of 2%, 1:48 or 1/4" per ft after the first number."""
    if line.take(":"):
        return _scaled(rise, one).then("/", _run(line))
    above = find(line.word())
    if above == PERCENT:
        return _percent(rise, one)
    if above is None or above.kind != "length":
        raise line.refused()
    if not (line.take("/") or line.take("per")):
        raise line.refused("does not say over what run it rises")
    run = _run(line) if line.peek().kind == "number" else None
    below = find(line.word())
    if below is None or below.kind != "length":
        raise line.refused()
    worked = convert(_scaled(rise, one), (above,), (below,))
    return worked.then("/", run) if run else worked


def _run(line: TokenReader) -> TracedNumber:
    run = line.number()
    if run.exact == 0:
        raise line.refused("has a run of 0")
    return run
