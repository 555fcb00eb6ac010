"""Arithmetic as it is worked on paper: ``"ceil(3.2 / 0.25) * 0.25"`` to 3.25, exactly, with nothing of the program.

Numbers are fractions, so 0.1 is a tenth and what rounds up is what a pencil rounds up: no float noise decides.
"""

from __future__ import annotations

import ast
import math
import operator
from collections.abc import Callable
from fractions import Fraction

Worked = Fraction | str
"""What an expression comes to: a number, or the words that it quotes."""


class NotArithmetic(ValueError):
    """An expression holds something other than numbers, quoted words, + - * / **, parentheses and the few names."""


def worked(expression: str) -> Worked:
    """The value of an expression. Raises :class:`NotArithmetic` with the expression and what is wrong in it."""
    try:
        return _value(ast.parse(expression.strip(), mode="eval").body)
    except (SyntaxError, ArithmeticError, TypeError, NotArithmetic) as wrong:
        raise NotArithmetic(f"{expression!r}: {wrong}") from wrong


def round_half_up_cents(amount: Fraction) -> Fraction:
    """Money on a line: to the cent, half a cent up."""
    return Fraction(math.floor(amount * 100 + Fraction(1, 2)), 100)


def _whole(rounded: Callable[[Fraction], int]) -> Callable[[Fraction], Fraction]:
    return lambda number: Fraction(rounded(number))


def _root(number: Fraction) -> Fraction:
    return Fraction(math.sqrt(number))


def _power(base: Fraction, exponent: Fraction) -> Fraction:
    """Exact for a whole exponent, else as good as a float."""
    return base**exponent.numerator if exponent.denominator == 1 else Fraction(float(base) ** float(exponent))


_NAMES = {"pi": Fraction(math.pi)}
_CALLS: dict[str, Callable[..., Fraction]] = {
    "ceil": _whole(math.ceil),
    "floor": _whole(math.floor),
    "sqrt": _root,
    "max": max,
    "min": min,
    "round_half_up_cents": round_half_up_cents,
}
_SIGNS: dict[type[ast.operator], Callable[[Fraction, Fraction], Fraction]] = {
    ast.Add: operator.add,
    ast.Sub: operator.sub,
    ast.Mult: operator.mul,
    ast.Div: operator.truediv,
    ast.Pow: _power,
}


def _value(node: ast.expr) -> Worked:
    match node:
        case ast.Constant(value=str(words)):
            return words
        case _:
            return _number(node)


def _number(node: ast.expr) -> Fraction:
    match node:
        case ast.Constant(value=int(number) | float(number)) if not isinstance(number, bool):
            return Fraction(repr(number))
        case ast.Name(id=name) if name in _NAMES:
            return _NAMES[name]
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            return -_number(operand)
        case ast.BinOp(left=left, op=sign, right=right) if type(sign) in _SIGNS:
            return _SIGNS[type(sign)](_number(left), _number(right))
        case ast.Call(func=ast.Name(id=name), args=parts, keywords=[]) if name in _CALLS:
            return _CALLS[name](*map(_number, parts))
        case _:
            raise NotArithmetic(f"{ast.unparse(node)!r} is not arithmetic")
