"""Units that may be typed: their names, their exact sizes, and the short arithmetic from one to another.

The arithmetic is kept as the text of a spreadsheet formula, and computed in float and in exact fractions at the same
time, so that the program, the cell and the tests agree.
"""

from __future__ import annotations

from collections.abc import Callable, Collection
from dataclasses import dataclass
from decimal import Context, Decimal
from difflib import get_close_matches
from fractions import Fraction
from functools import lru_cache
from operator import add, mul, sub, truediv
from typing import Any

_SUM, _PRODUCT, _NUMBER = range(3)  # how tightly the last step of a text binds
_STEPS: dict[str, tuple[int, Callable[[Any, Any], Any]]] = {
    "+": (_SUM, add),
    "-": (_SUM, sub),
    "*": (_PRODUCT, mul),
    "/": (_PRODUCT, truediv),
}


@dataclass(frozen=True, slots=True)
class TracedNumber:
    """A number with the arithmetic that led to it: its float ``value``, its ``exact`` value, and ``text`` for a cell.

    Every step is done in all three, in the order of the text, so that evaluating the text gives exactly ``value``.
    """

    value: float
    exact: Fraction
    text: str
    precedence: int = _NUMBER

    @classmethod
    def number(cls, text: str) -> TracedNumber:
        """The plain decimal number ``text``, such as ``12`` or ``0.3048``."""
        return cls(float(text), Fraction(text), text)

    def then(self, sign: str, other: TracedNumber) -> TracedNumber:
        """This, then one step more: ``sign`` is one of ``+ - * /``. Parentheses are put where the order needs them."""
        precedence, step = _STEPS[sign]
        left = f"({self.text})" if self.precedence < precedence else self.text
        right = f"({other.text})" if other.precedence <= precedence else other.text
        return TracedNumber(
            step(self.value, other.value), step(self.exact, other.exact), left + sign + right, precedence
        )

    def negative(self) -> TracedNumber:
        """The negative of this; 0 stays 0, since no cell should have a negative zero."""
        if self.exact == 0:
            return self
        text, precedence = (
            (f"-({self.text})", _PRODUCT) if self.precedence == _SUM else (f"-{self.text}", self.precedence)
        )
        return TracedNumber(-self.value, -self.exact, text, precedence)

    @property
    def formula(self) -> str:
        """The arithmetic as a formula without its ``=``; blank for a plain number, which needs none."""
        return "" if self.precedence == _NUMBER else self.text


@dataclass(frozen=True, slots=True)
class Scale:
    """One unit: the ``kind`` of thing it measures, its ``size`` in the kind's base unit, and where it starts there."""

    kind: str
    size: Fraction = Fraction(1)
    start: Fraction = Fraction(0)


Measure = tuple[Scale, ...]
"""A unit as written: the first part is above the line, every further part below it (``lb/yd3`` has two parts)."""

# Kind, exact size in the kind's base unit (m, m2, m3, kg, N, s, F), names. Sizes are definitions, not measurements:
# the inch is 25.4 mm and the pound 0.45359237 kg (international yard and pound, 1959), the gallon is 231 in3, the pound
# of force is a pound under 9.80665 m/s2 (standard gravity, 1901). A + goes before the start of a scale: 0 C is 32 F.
# A name is lower case, without blanks and dots.
_UNITS: tuple[tuple[str, str, str], ...] = (
    ("length", "0.0254", 'in inch inches "'),
    ("length", "0.3048", "ft foot feet lf lft linft linearft linearfeet '"),
    ("length", "0.9144", "yd yds yard yards"),
    ("length", "1609.344", "mile miles mi"),
    ("length", "0.001", "mm millimeter millimeters millimetre millimetres"),
    ("length", "0.01", "cm centimeter centimeters centimetre centimetres"),
    ("length", "1", "m meter meters metre metres"),
    ("length", "1000", "km kilometer kilometers kilometre kilometres"),
    ("area", "0.09290304", "sf"),
    ("area", "0.83612736", "sy"),
    ("volume", "0.028316846592", "cf"),
    ("volume", "0.764554857984", "cy"),
    ("volume", "0.003785411784", "gal gals gallon gallons"),
    ("volume", "0.000946352946", "qt qts quart quarts"),
    ("volume", "0.001", "l liter liters litre litres"),
    ("weight", "0.028349523125", "oz ounce ounces"),
    ("weight", "0.45359237", "lb lbs pound pounds"),
    ("weight", "907.18474", "ton tons shortton shorttons"),
    ("weight", "0.001", "g gram grams"),
    ("weight", "1", "kg kgs kilogram kilograms"),
    ("weight", "1000", "t tonne tonnes metricton metrictons"),
    ("force", "4.4482216152605", "lbf"),
    ("force", "1", "n"),
    ("force", "1000", "kn"),
    ("time", "1", "s sec secs second seconds"),
    ("time", "60", "min mins minute minutes"),
    ("time", "3600", "h hr hrs hour hours"),
    ("days", "1", "day days"),  # a kind of its own: a day is 24 h of curing, but 8 h or so of work
    ("temperature", "1", "f degf fahrenheit deg degree degrees degreesf"),
    ("temperature", "1.8+32", "c degc degreec degreesc celsius"),
    ("percentage", "1", "% percent pct"),
    ("money", "1", "$ dollar dollars"),
)
_BY_NAME = {
    name: Scale(kind, *(Fraction(part) for part in size.split("+")))
    for kind, size, names in _UNITS
    for name in names.split()
}
_ABBREVIATIONS = {
    "mph": "mile/h",
    "kph": "km/h",
    "kmh": "km/h",
    "pcf": "lb/ft3",
    "psi": "lbf/in2",
    "mpa": "n/mm2",
    "kpa": "kn/m2",
}
_COUNTED_AS = {
    "person": ("men", "man", "people", "persons", "workers", "worker", "hands", "guys"),
    "each": ("ea", "pc", "pcs", "piece", "pieces", "line", "lines"),
}
"""Words that people write for what is counted, by the unit."""

_POWER_WORDS = {"square": 2, "sq": 2, "cubic": 3, "cu": 3}
_POWERS = {2: "area", 3: "volume"}

FOOT, INCH, TON, TONNE, PERCENT, DOLLAR, YARD, CUBIC_YARD = (
    _BY_NAME[name] for name in ("ft", "in", "ton", "t", "%", "$", "yd", "cy")
)


@lru_cache(maxsize=1024)
def find(name: str) -> Scale | None:
    """The unit of that name, or None. Any length may be squared or cubed: ``ft2``, ``sqft``, ``cubicyards``."""
    if scale := _BY_NAME.get(name):
        return scale
    stems = [(name.removeprefix(word), power) for word, power in _POWER_WORDS.items() if name.startswith(word)]
    stems += [(name[:-1], int(digit)) for digit in "23" if name.endswith(digit)]
    for stem, power in stems:
        length = _BY_NAME.get(stem)
        if length and length.kind == "length":
            return Scale(_POWERS[power], length.size**power)
    return None


@lru_cache(maxsize=1024)
def plain_name(text: str) -> str:
    """A unit's text brought to the one spelling that the tables use: ``Sq. Ft.`` is ``sqft``, ``yd^3`` is ``yd3``."""
    return "".join(text.casefold().translate({ord("."): None, ord("^"): None, ord("°"): "deg"}).split())


def measure(text: str, counted: Collection[str] | None = None) -> Measure:
    """The parts of a unit such as ``ft``, ``lb/yd3`` or ``$/bag``.

    A word that is no unit (``bag``, ``load``) counts things: it is a kind of its own, so bags never become loads.
    ``counted`` says which such words are allowed; None, for the unit of a column, allows any. Raises KeyError with
    the part that is not known.
    """
    first, *below = plain_name(text).split("/")
    parts = [*_ABBREVIATIONS.get(first, first).split("/"), *below]
    return tuple(find(part) or _count(part, counted) for part in parts)


def _count(word: str, counted: Collection[str] | None) -> Scale:
    for unit, words in _COUNTED_AS.items():
        if word in words and (counted is None or unit in counted):
            return Scale(unit)
    for singular in (word, word.removesuffix("s"), word.removesuffix("es")):
        if counted is None or (singular and singular in counted):
            return Scale(singular)
    raise KeyError(word)


def as_wanted(typed: Measure, column: Measure) -> Measure:
    """What was typed, with a cubic yard for a yard where the column has a volume: concrete is bought by the yard."""
    if len(typed) != len(column):
        return typed
    return tuple(
        CUBIC_YARD if part == YARD and wanted.kind == "volume" else part
        for part, wanted in zip(typed, column, strict=True)
    )


def kinds(parts: Measure) -> tuple[str, ...]:
    """What each part measures; a number in one unit can be given in another when their kinds are the same."""
    return tuple(scale.kind for scale in parts)


def convert(number: TracedNumber, typed: Measure, column: Measure) -> TracedNumber:
    """``number`` in the unit that was typed, given in the column's unit of the same kind, by short exact arithmetic."""
    for sign, factor in _steps(typed, column):
        number = number.then(sign, factor)
    return number


@lru_cache(maxsize=1024)
def _steps(typed: Measure, column: Measure) -> tuple[tuple[str, TracedNumber], ...]:
    steps = _factors(typed[0].size / column[0].size)
    for below, wanted in zip(typed[1:], column[1:], strict=True):
        steps += _factors(wanted.size / below.size)
    steps.sort(key=lambda step: step[0] == "/")  # first all that multiplies, as one would by hand
    if len(typed) == 1:  # only a temperature itself has a place where its scale starts, not one an hour
        start, end = typed[0].start, column[0].start
        steps = _shift("-", end - start) + steps + _shift("+", start - end)
    return tuple((sign, TracedNumber.number(text)) for sign, text in steps)


def _factors(ratio: Fraction) -> list[tuple[str, str]]:
    """The steps that multiply by ``ratio``, in exact decimals of at most 15 digits, which a spreadsheet can store."""
    if ratio == 1:
        return []
    ways = [("*", _decimal(ratio)), ("/", _decimal(1 / ratio))]
    for sign, text in ways if ratio > 1 else reversed(ways):
        if text:
            return [(sign, text)]
    return [("*", str(ratio.numerator)), ("/", str(ratio.denominator))]


def _shift(sign: str, amount: Fraction) -> list[tuple[str, str]]:
    return [(sign, str(amount))] if amount > 0 else []


def _decimal(ratio: Fraction) -> str:
    """The exact decimal text of ``ratio``, or blank when it has none of at most 15 digits."""
    text = format(Context(prec=15).divide(Decimal(ratio.numerator), Decimal(ratio.denominator)), "f")
    return text if Fraction(text) == ratio else ""


def nearest(name: str, wanted: Collection[str]) -> str:
    """The known name most like ``name``: of the kinds ``wanted`` if one is near, else of any that begins like it;
    blank when none is.
    """
    of_kind = [known for known, scale in _BY_NAME.items() if scale.kind in wanted]
    groups = (of_kind, [known for known in (*_BY_NAME, *_ABBREVIATIONS) if known[:1] == name[:1]])
    return next((near for group in groups for near in get_close_matches(name, group, n=1)), "")
