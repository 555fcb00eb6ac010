"""Computations of the functions: columns in, columns out. A value that was not given is NaN.

Rounding is the same here as in a sheet. A number is first taken to whole millionths, halves away from zero, and all
further rounding counts in those, so that an error in the sixteenth digit neither buys a bag nor changes a cent. Every
comparison compares whole millionths too.
"""

from __future__ import annotations

from math import erfc, isnan, sqrt
from statistics import NormalDist
from typing import Any

import numpy as np

from calc.formula.value_types import NONE

Column = np.ndarray[Any, np.dtype[Any]]
"""A value for each row of a chunk of jobs."""

_MILLION = 1_000_000.0
_PER_CENT = 10_000.0  # millionths in a hundredth


def millionths(x: Column) -> Column:
    """Whole millionths of ``x``, halves away from zero, as ROUND(x,6) has them; NaN stays NaN.

    A product such as 1.0000005 x 1,000,000 comes out a hair under its half. Spreadsheet programs differ in how much
    of that they tolerate; here the last bits are tolerated, so that the product rounds as it does on paper. The limit
    keeps a number so large that its last bits are whole millionths from moving to the next one.
    """
    scaled = np.abs(np.asarray(x, dtype=float)) * _MILLION
    forgiven = np.minimum(scaled * 4e-16, 0.1)
    return _signed(np.floor(scaled + 0.5 + forgiven), x)


def _signed(magnitude: Column, like: Column) -> Column:
    """``magnitude`` with the sign of ``like``; zero has none, or a sentence would show -0 where a sheet shows 0."""
    return np.asarray(np.copysign(magnitude, like) + 0.0)


def up(x: Column) -> Column:
    """Up to a whole number, away from zero, counted in whole millionths."""
    whole = millionths(x)
    return _signed(np.ceil(np.abs(whole) / _MILLION), whole)


def down(x: Column) -> Column:
    """Down to a whole number, toward zero, counted in whole millionths."""
    whole = millionths(x)
    return _signed(np.floor(np.abs(whole) / _MILLION), whole)


def cents(x: Column) -> Column:
    """To the cent, halves away from zero, counted in whole millionths."""
    whole = millionths(x)
    return _signed(np.floor((np.abs(whole) + _PER_CENT / 2) / _PER_CENT), whole) / 100.0


def rounded(x: Column, scale: Column) -> Column:
    """To the nearest ``1 / scale``, halves away from zero, counted in whole millionths."""
    whole = millionths(x * scale)
    return _signed(np.floor((np.abs(whole) + _MILLION / 2) / _MILLION), whole) / scale


def count_text(x: float) -> str:
    """A count as text, as a spreadsheet concatenates it."""
    return NONE if isnan(x) else f"{x:.15g}"


def _text(column: Column) -> Column:
    if column.dtype == object:
        return column
    return np.array([count_text(value) for value in np.ravel(column)], dtype=object).reshape(column.shape)


def joined(*parts: Column) -> Column:
    """Words and counts as one text a row."""
    whole = _text(np.asarray(parts[0]))
    for part in parts[1:]:
        whole = whole + _text(np.asarray(part))
    return np.asarray(whole, dtype=object)


def select(condition: Column, yes: Column, no: Column) -> Column:
    """``yes`` where the condition holds, else ``no``: numbers or words."""
    if np.asarray(yes).dtype == object or np.asarray(no).dtype == object:
        return np.where(condition, np.asarray(yes, dtype=object), np.asarray(no, dtype=object))
    return np.where(condition, yes, no)


def divide(above: Column, below: Column) -> Column:
    """The quotient; a division by zero is guarded by a condition, or found by a check."""
    with np.errstate(divide="ignore", invalid="ignore"):
        return np.asarray(above / below)


def normal_cdf(z: Column) -> Column:
    """The cumulative distribution function of the standard normal distribution at ``z``."""
    return np.asarray(np.vectorize(lambda each: erfc(-each / sqrt(2.0)) / 2.0, otypes=[float])(z))


def normal_inv(p: Column) -> Column:
    """The quantile of the standard normal distribution for the probability ``p``."""
    return np.asarray(np.vectorize(_normal_quantile, otypes=[float])(p))


def _normal_quantile(share: float) -> float:
    return NormalDist().inv_cdf(share) if 0 < share < 1 else float("nan")
