"""Units as names that cancel: no numbers, no registry, so a unit is right only when its factor is exactly 1.

``ft2 * in / (in/ft) / (ft3/yd3)`` leaves ``yd3``: the same names, hence the factor 1. Forget the division by
12 and what is left is ``ft*in*yd3/ft3``: the dimension of a volume, but not yd3, and refused.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

COUNTS = frozenset(
    {"area", "bag", "bar", "check", "coat", "days", "each", "load", "pack", "person", "step", "truck", "trip"}
)
"""Things that are counted. Each is a dimension of its own: loads never add to bags."""

DATE = "day"
"""The unit of a date, which is a day number of spreadsheet programs; a time between dates is in ``days``."""

_NAMES = COUNTS | {"$", "%", "F", DATE, "ft", "gal", "h", "in", "lb", "min", "mile", "mph", "psi", "ton", "yd"}
_FACTOR = re.compile(r"([A-Za-z$%]+)(\d*)")


@dataclass(frozen=True)
class Unit:
    """A product of powers of unit names, such as ``lb/yd3``; no names at all is a plain number."""

    powers: tuple[tuple[str, int], ...] = ()

    @property
    def plain(self) -> bool:
        """Whether this is the unit of a plain number."""
        return not self.powers

    def __mul__(self, other: Unit) -> Unit:
        return _product(self.powers, other.powers)

    def __truediv__(self, other: Unit) -> Unit:
        return _product(self.powers, ((name, -power) for name, power in other.powers))

    def __pow__(self, exponent: int) -> Unit:
        return _product((name, power * exponent) for name, power in self.powers)

    def __str__(self) -> str:
        above = [_power(name, power) for name, power in self.powers if power > 0]
        below = [_power(name, -power) for name, power in self.powers if power < 0]
        if not below:
            return "*".join(above) or "plain number"
        return f"{'*'.join(above) or '1'}/{'/'.join(below)}"


def _power(name: str, power: int) -> str:
    return name if power == 1 else f"{name}{power}"


def _product(*factors: Iterable[tuple[str, int]]) -> Unit:
    sums: dict[str, int] = {}
    for factor in factors:
        for name, power in factor:
            sums[name] = sums.get(name, 0) + power
    return Unit(tuple(sorted((name, power) for name, power in sums.items() if power)))


PLAIN = Unit()
"""The unit of a plain number, such as a ratio."""


@cache
def unit(text: str) -> Unit:
    """Parses the unit ``text``: names with whole powers, ``*`` between factors, ``/`` before each divisor.

    Raises ValueError for a name that is not in use here, so that a typing error such as ``ft/2`` is found.
    """
    above, *below = text.replace(" ", "").split("/")
    result = PLAIN
    for place, group in enumerate([above, *below]):
        for factor in [] if group == "1" or text == "" else group.split("*"):
            found = _FACTOR.fullmatch(factor)
            if not found or found[1] not in _NAMES:
                raise ValueError(f"{text!r} is not a unit: {factor!r} is not one of {', '.join(sorted(_NAMES))}")
            part = Unit(((found[1], int(found[2] or 1)),))
            result = result / part if place else result * part
    return result
