"""The types that the nodes and the functions of a formula share."""

from __future__ import annotations

from enum import Enum
from typing import Protocol

from calc.units.algebra import Unit

NONE = "none"
"""What a sheet shows where a number could be given and was not."""

NOTHING = "-"
"""What a sheet shows for a text of a level without rows."""


class FormulaError(Exception):
    """A formula that makes no sense, found when it is declared."""


class ValueType(Enum):
    """The type of the values of a node: a number with a unit, a flag, or a text."""

    NUMBER = "a number"
    FLAG = "a yes or no"
    TEXT = "words"


def nothing(value_type: ValueType) -> float | str:
    """The value of what a job does not have: 0, or a dash for words."""
    return NOTHING if value_type is ValueType.TEXT else 0.0


class Argument(Protocol):
    """What a unit rule needs to know of an argument."""

    @property
    def words(self) -> str:
        """The argument in words."""

    @property
    def value_type(self) -> ValueType:
        """The type of its values."""

    @property
    def unit(self) -> Unit:
        """The unit of its values."""

    @property
    def zero(self) -> bool:
        """Whether it is the bare 0, which is 0 of any unit."""

    @property
    def is_one(self) -> bool:
        """Whether it is the bare 1, which counts as one of what it is combined with."""
