"""Which cells, typed as 0, would make a formula divide by 0."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from calc.formula.tree import Apply, Exact, Expr, Literal, Named, UnitCast

DIVIDING = ("divide", "round_up_to")
"""The functions that divide by their second argument."""

_FIRST_ONLY = ("divide", "round_up", "round_down", "rounded", "abs_", "square_root", "round_up_to")
"""Functions that are 0 where their first argument is."""


def zero_makers(node: Expr) -> Iterator[Named]:
    """What a person types that makes ``node`` 0 when it is 0 itself."""
    match node:
        case Named():
            if node.typed:
                yield node
        case UnitCast():
            yield from zero_makers(node.part)
        case Apply() if node.function.name == "multiply":
            for part in node.arguments:
                yield from zero_makers(part)
        case Apply() if node.function.name == "when":
            for part in node.arguments[1:]:
                yield from zero_makers(part)
        case Apply() if node.function.name in _FIRST_ONLY:
            yield from zero_makers(node.arguments[0])
        case _:
            return


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
    """What a person types that ``node`` divides by: 0 is no value for it."""
    if isinstance(node, Apply) and node.function.name in DIVIDING:
        yield from zero_makers(node.arguments[1])
    for part in node.parts:
        yield from divisors(part)
