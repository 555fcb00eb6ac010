"""Number formats of the story and the workings: a dash for zero, and as many digits as matter.

A small number keeps its digits (0.004 h is not 0.00), a large one loses its decimals before it loses its column.
"""

from __future__ import annotations

from calc.declared import Declared, Line
from calc.formula.value_types import ValueType
from calc.layout.styles import PLAIN_FORMAT
from calc.units.algebra import COUNTS, DATE

_DASH = '"\N{EN DASH}"'
_COUNT = f"#,##0;-#,##0;{_DASH}"
_SMALL = f"[=0]{_DASH};[<0.095]0.0000;#,##0.00"
_NARROW = f"[=0]{_DASH};[>=9999.995]#,##0;#,##0.00"
_WIDE = f"#,##0.00;-#,##0.00;{_DASH}"
_DAY = f"m/d/yy;-;{_DASH}"
_SMALL_UNITS = ("yd3", "h", "ton", "gal", "in", "%")


def step_format(named: Declared, narrow: bool, like: str = "") -> str:
    """The format of a line or an input; ``narrow`` for the columns of steps, which have room for seven digits.

    ``like`` is a unit whose format is used instead of its own.
    """
    if named.value_type is not ValueType.NUMBER:
        return ""
    unit = like or named.unit_text
    if unit == DATE:
        return _DAY
    if unit in COUNTS:
        return _COUNT
    if not unit:
        return PLAIN_FORMAT
    if unit in _SMALL_UNITS or ("/" in unit and unit != "$"):
        return _SMALL
    return _NARROW if narrow else _WIDE


def is_words(named: Declared) -> bool:
    """Whether it is shown as text, flush left."""
    return named.value_type is ValueType.TEXT


def unit_of(named: Declared) -> str:
    """The unit beside its number."""
    return named.unit_shown if isinstance(named, Line) or not is_words(named) else ""
