"""How wide the words that a line may come to are, as far as its formula tells."""

from __future__ import annotations

from functools import lru_cache

from calc.declared import Input, Line
from calc.declared.inputs import Taxed
from calc.formula.aggregate import ByRow, RowAt, RowWord
from calc.formula.keys import LookupByKey
from calc.formula.tree import Apply, Expr, Literal, Named
from calc.formula.value_types import ValueType
from calc.layout.text_width import text_width

_LONG, _NUMBER = 250.0, 30.0
"""Pixels of words of which nothing is known, and of a number within words."""


@lru_cache(maxsize=4096)
def words_width(line: Line) -> float:
    """The pixels of the widest words that the line may come to; a guess where they are typed."""
    return _width(line.formula)


def _width(node: Expr) -> float:
    match node:
        case Literal(value=str() as words):
            return text_width(words)
        case ByRow():
            return max(_width(case) for case in node.cases)
        case RowWord():
            return max((text_width(word) for word in node.of.axis.words), default=_LONG)
        case Input() if node.words_allowed:
            return max(text_width(word) for word in node.words_allowed)
        case Taxed():
            return max(text_width("yes"), text_width("no"))
        case RowAt() | LookupByKey():
            return _width(node.part)
        case Line():
            return words_width(node) if node.value_type is ValueType.TEXT else _NUMBER
        case Named():
            return _LONG / 4 if node.value_type is ValueType.TEXT else _NUMBER
        case Apply() if node.value_type is not ValueType.TEXT:
            return _NUMBER
        case Apply() if node.function.name == "joined":
            return sum(_width(part) for part in node.arguments)
    texts = [part for part in node.parts if part.value_type is ValueType.TEXT]
    return max((_width(part) for part in texts), default=_LONG / 4)
