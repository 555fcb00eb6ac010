"""What the nodes and the functions of a formula both speak of."""

from __future__ import annotations

from enum import Enum
from typing import Protocol

from calc.units.algebra import Unit

NONE = "none"
"""What a sheet shows where a number could be given and was not."""

NOTHING = "-"
"""What a sheet shows for the words of a row that there is none of."""


class FormulaError(Exception):
    """A formula that cannot be meant, found when it is declared."""


class ValueType(Enum):
    """What a node gives: a number with a unit, a yes or no, or words."""

    NUMBER = "a number"
    FLAG = "a yes or no"
    TEXT = "words"


class Argument(Protocol):
    """What a function asks of its arguments before it takes them."""

    @property
    def words(self) -> str:
        """The argument as it is said."""

    @property
    def sort(self) -> ValueType:
        """What it gives."""

    @property
    def unit(self) -> Unit:
        """The unit of what it gives."""

    @property
    def zero(self) -> bool:
        """Whether it is the bare 0, which is 0 of any unit."""

    @property
    def is_one(self) -> bool:
        """Whether it is the bare 1, which is one of whatever is counted beside it."""
