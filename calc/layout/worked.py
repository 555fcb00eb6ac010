"""How each line of the catalog is worked, in words."""

from __future__ import annotations

from functools import cache

from calc.declared import Line
from calc.declared.formula_words import FormulaWords
from calc.trade.catalog import SECTIONS

FORMULA_WORDS = FormulaWords(SECTIONS)
"""The words of every line, with the names that the catalog has."""


@cache
def worked(line: Line) -> str:
    """How ``line`` is worked, which is the same in every shape."""
    return FORMULA_WORDS.of(line)
