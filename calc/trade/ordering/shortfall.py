"""Shortfall of an order when the required volume is uncertain: normal distribution and normal loss function."""

from __future__ import annotations

from calc.declare import *
from calc.trade.takeoff.uncertainty import VolumeUncertainty


def std_devs_above(over: Expr) -> Expr:
    """Overage (negative: shortage), in yd3, as standard deviations of the required volume; 0 if it is certain."""
    return when(VolumeUncertainty.std_dev > 0, over / VolumeUncertainty.std_dev, 0)


def risk_short(over: Expr, z: Expr) -> Expr:
    """Probability that the order runs short: upper tail, so that small probabilities keep their digits."""
    return when(VolumeUncertainty.std_dev > 0, normal_cdf(-z), when(over < 0, 1, 0))


def normal_loss(std_dev: Expr, z: Expr, risk: Expr, density_at_z: Expr) -> Expr:
    """Normal loss function: expected excess over a limit ``z`` standard deviations above the mean."""
    return std_dev * (density_at_z - z * risk)


def expected_shortfall(over: Expr, z: Expr, risk: Expr, density_at_z: Expr) -> Expr:
    """Expected shortfall, in yd3, of an order that is ``over`` above the required volume."""
    uncertain = normal_loss(VolumeUncertainty.std_dev, z, risk, density_at_z)
    return when(VolumeUncertainty.std_dev > 0, uncertain, largest(0, -over))
