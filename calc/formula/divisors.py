"""Which cells, typed as 0, would make a formula divide by 0."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cache

from calc.formula.aggregate import RowAt
from calc.formula.keys import LookupByKey
from calc.formula.tree import Apply, Exact, Expr, Literal, Named, UnitCast

DIVIDING = ("divide", "round_up_to")
"""The functions that divide by their second argument."""

_FIRST_ONLY = ("divide", "round_up", "round_down", "rounded", "abs_", "square_root", "round_up_to")
"""Functions that are 0 where their first argument is."""

_ANY = ("multiply", "smallest")
"""Functions that are 0 where any of their arguments is, of numbers that are not below 0."""


def zero_makers(node: Expr) -> Iterator[Named]:
    """What a person types that makes ``node`` 0 when it is 0 itself, in this formula or in a line that it names."""
    parts: Sequence[Expr]
    match node:
        case Named():
            if node.typed:
                yield node
            formula = None if node.typed else node.worked_by
            parts = () if formula is None else (formula,)
        case UnitCast():
            parts = (node.part,)
        case Apply() if node.function.name in _ANY:
            parts = node.arguments
        case Apply() if node.function.name == "when":
            parts = node.arguments[1:]
        case Apply() if node.function.name in _FIRST_ONLY:
            parts = node.arguments[:1]
        case LookupByKey() | RowAt():
            parts = (node.part,)
        case _:
            return
    for part in parts:
        yield from zero_makers(part)


@cache
def may_be_zero(named: Named) -> bool:
    """Whether its cells may be 0, whatever a person types."""
    formula = named.worked_by
    return named.typed if formula is None else can_be_zero(formula)


def can_be_zero(node: Expr) -> bool:
    """Whether ``node`` may be 0, whatever a person types; where that cannot be told, it may."""
    match node:
        case Named():
            return may_be_zero(node)
        case Literal(value=value) | Exact(value=value):
            return value == 0
        case UnitCast():
            return can_be_zero(node.part)
        case Apply():
            return _result_can_be_zero(node)
    return True


def _result_can_be_zero(node: Apply) -> bool:
    name, parts = node.function.name, node.arguments
    if name in ("add", "largest"):
        return all(map(can_be_zero, parts))
    if name in ("multiply", "smallest"):
        return any(map(can_be_zero, parts))
    if name == "when":
        return any(map(can_be_zero, parts[1:]))
    if name in ("divide", "round_up", "round_up_to", "square_root", "abs_"):
        return can_be_zero(parts[0])
    return True


def divisors(node: Expr) -> Iterator[Named]:
    """What a person types that ``node`` divides by, at once or through other lines."""
    if isinstance(node, Apply) and node.function.name in DIVIDING:
        yield from zero_makers(node.arguments[1])
    for part in node.parts:
        yield from divisors(part)
