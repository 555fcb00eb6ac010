"""Rounding: whole millionths before any rounding up, rounding down or comparison; halves away from zero."""

import math

MILLION = 1_000_000


def millionths(x: float) -> int:
    """A number as whole millionths, halves away from zero."""
    whole = math.floor(abs(x) * MILLION + 0.5)
    return whole if x >= 0 else -whole


def up(x: float, step: float = 1) -> float:
    """The next whole step at or above x; an exact multiple stays."""
    count = -(-millionths(x / step) // MILLION)
    return count if step == 1 else count * step


def down(x: float, step: float = 1) -> float:
    """The last whole step at or below x; an exact multiple stays."""
    count = millionths(x / step) // MILLION
    return count if step == 1 else count * step


def at_most(a: float, b: float) -> bool:
    """True when a is no more than b, in whole millionths."""
    return millionths(a) <= millionths(b)


def less(a: float, b: float) -> bool:
    """True when a is less than b, in whole millionths."""
    return millionths(a) < millionths(b)


def cents(x: float) -> int:
    """Dollars as whole cents, half a cent away from zero."""
    whole = (abs(millionths(x)) + 5_000) // 10_000
    return whole if x >= 0 else -whole


def money(x: float) -> float:
    """Dollars rounded to the cent."""
    return cents(x) / 100


def add_money(amounts) -> float:
    """The sum of amounts that are each whole cents, exact to the cent."""
    return sum(cents(a) for a in amounts) / 100
