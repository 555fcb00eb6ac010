"""How the number or the words of a declaration are shown in a cell."""

from __future__ import annotations

from math import isnan

from calc.declared import Declared
from calc.formula.functions import NONE
from calc.formula.value_types import ValueType
from calc.layout.page import CellValue
from calc.layout.styles import number_format


def format_of(named: Declared) -> str:
    """The number format of a declaration; none for words."""
    return number_format(named.unit_text) if named.value_type is ValueType.NUMBER else ""


def cell_value(value: float | str) -> CellValue:
    """A value as a cell shows it: the word none for a number that was not given."""
    return NONE if isinstance(value, float) and isnan(value) else value
