"""Shortfall of an order when the required volume is uncertain: normal distribution and normal loss function."""

from __future__ import annotations

from calc.declare import *
from calc.trade.takeoff.uncertainty import VolumeSpread


def density(off: Expr) -> Expr:
    """Standard normal density at ``off`` standard deviations from the mean."""
    return exponential(-square(off) / TWO) / square_root(TWO * PI)


def spreads_off(over: Expr) -> Expr:
    """Overage (negative: shortage), in yd3, as standard deviations of the required volume; 0 if it is certain."""
    return when(VolumeSpread.all_of_it > 0, over / VolumeSpread.all_of_it, 0)


def chance_short(over: Expr, off: Expr) -> Expr:
    """Probability that the order runs short: upper tail, so that small probabilities keep their digits."""
    return when(VolumeSpread.all_of_it > 0, normal_cdf(-off), when(over < 0, 1, 0))


def excess(spread: Expr, off: Expr, chance: Expr, height: Expr) -> Expr:
    """Normal loss function: expected excess over a limit ``off`` standard deviations above the mean."""
    return spread * (height - off * chance)


def expected_short(over: Expr, off: Expr, chance: Expr, height: Expr) -> Expr:
    """Expected shortfall, in yd3, of an order that is ``over`` above the required volume."""
    uncertain = excess(VolumeSpread.all_of_it, off, chance, height)
    return when(VolumeSpread.all_of_it > 0, uncertain, largest(0, -over))
