"""What an order may be short by, when the need is not known to the yard: the normal distribution, written once."""

from __future__ import annotations

from calc.declare import *
from calc.trade.takeoff.uncertainty import VolumeSpread


def density(off: Expr) -> Expr:
    """The normal density so many spreads from the middle."""
    return exponential(-square(off) / TWO) / square_root(TWO * PI)


def spreads_off(over: Expr) -> Expr:
    """An order over its need (negative: below it), in spreads; 0 where nothing is uncertain."""
    return when(VolumeSpread.all_of_it > 0, over / VolumeSpread.all_of_it, 0)


def chance_short(over: Expr, off: Expr) -> Expr:
    """The chance that the order runs short, from above, so that small chances keep their digits."""
    return when(VolumeSpread.all_of_it > 0, normal_cdf(-off), when(over < 0, 1, 0))


def excess(spread: Expr, off: Expr, chance: Expr, height: Expr) -> Expr:
    """The expected excess of a normal number over one ``off`` spreads above its middle, ``height`` there."""
    return spread * (height - off * chance)


def expected_short(over: Expr, off: Expr, chance: Expr, height: Expr) -> Expr:
    """What is expected to be lacking of the need."""
    uncertain = excess(VolumeSpread.all_of_it, off, chance, height)
    return when(VolumeSpread.all_of_it > 0, uncertain, largest(0, -over))
