"""Arithmetic as it is worked on paper: ``"ceil(3.2 / 0.25) * 0.25"`` to 3.25, exactly, with nothing of the program.

Numbers are fractions, so 0.1 is a tenth and what rounds up is what a pencil rounds up: no float noise decides. Roots,
logarithms and the normal curve come from the standard library, as they would from a table. A sheet of paper may keep
intermediate figures by name (:func:`side_figures`).
"""

from __future__ import annotations

import ast
import math
import operator
from collections.abc import Callable, Mapping
from fractions import Fraction

Worked = Fraction | str
"""What an expression comes to: a number, or the words that it quotes."""
_NO_FIGURES: Mapping[str, Fraction] = {}


class NotArithmetic(ValueError):
    """An expression holds something other than numbers, quoted words, + - * / **, parentheses and the few names."""


def worked(expression: str, figures: Mapping[str, Fraction] = _NO_FIGURES) -> Worked:
    """The value of an expression, in which ``figures`` may stand by name.

    Raises :class:`NotArithmetic` with the expression and what is wrong in it.
    """
    try:
        return _value(ast.parse(expression.strip(), mode="eval").body, figures)
    except (SyntaxError, ArithmeticError, TypeError, ValueError) as wrong:
        raise NotArithmetic(f"{expression!r}: {wrong}") from wrong


def side_figures(work: Mapping[str, str]) -> dict[str, Fraction]:
    """Figures that are worked out on the side, each from numbers and from those above it.

    Raises :class:`NotArithmetic` for one that is no number.
    """
    figures: dict[str, Fraction] = {}
    for name, expression in work.items():
        figure = worked(expression, figures)
        if isinstance(figure, str):
            raise NotArithmetic(f"{expression!r}: {name} must be a number")
        figures[name] = figure
    return figures


def round_half_up_cents(amount: Fraction) -> Fraction:
    """Money on a line: to the cent, half a cent up."""
    return Fraction(math.floor(amount * 100 + Fraction(1, 2)), 100)


def _whole(rounded: Callable[[Fraction], int]) -> Callable[[Fraction], Fraction]:
    return lambda number: Fraction(rounded(number))


def _float(function: Callable[[float], float]) -> Callable[[Fraction], Fraction]:
    return lambda number: Fraction(function(float(number)))


def _power(base: Fraction, exponent: Fraction) -> Fraction:
    """Exact for a whole exponent, else as good as a float."""
    return base**exponent.numerator if exponent.denominator == 1 else Fraction(float(base) ** float(exponent))


_NAMES = {"pi": Fraction(math.pi)}
_CALLS: dict[str, Callable[..., Fraction]] = {
    "ceil": _whole(math.ceil),
    "floor": _whole(math.floor),
    "sqrt": _float(math.sqrt),
    "exp": _float(math.exp),
    "ln": _float(math.log),
    "tail": _float(lambda z: math.erfc(z / math.sqrt(2)) / 2),
    "curve": _float(lambda z: math.exp(-z * z / 2) / math.sqrt(2 * math.pi)),
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


def _value(node: ast.expr, figures: Mapping[str, Fraction]) -> Worked:
    match node:
        case ast.Constant(value=str(words)):
            return words
        case _:
            return _number(node, figures)


def _number(node: ast.expr, figures: Mapping[str, Fraction]) -> Fraction:
    match node:
        case ast.Constant(value=int(number) | float(number)) if not isinstance(number, bool):
            return Fraction(repr(number))
        case ast.Name(id=name) if name in figures:
            return figures[name]
        case ast.Name(id=name) if name in _NAMES:
            return _NAMES[name]
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            return -_number(operand, figures)
        case ast.BinOp(left=left, op=sign, right=right) if type(sign) in _SIGNS:
            return _SIGNS[type(sign)](_number(left, figures), _number(right, figures))
        case ast.Call(func=ast.Name(id=name), args=parts, keywords=[]) if name in _CALLS:
            return _CALLS[name](*(_number(part, figures) for part in parts))
        case _:
            raise NotArithmetic(f"{ast.unparse(node)!r} is not arithmetic")
