"""Uncertainty of the concrete volume: standard deviation of the mean depth, and of the volume."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import AREA, STATION
from calc.trade.takeoff.concrete import Concrete
from calc.trade.takeoff.geometry import MeanThickness, Slab, StationStrip


class PointMean(Section, title="Mean of the depth measurements", each=AREA, sheet="Takeoff"):
    """The mean of the measurements alone, also if the mean thickness is overridden."""

    mean = line(
        "Mean measured depth",
        "in",
        when(MeanThickness.points > 0, MeanThickness.point_sum / MeanThickness.points, 0),
        source="sum of the measured depths over their number; 0 if there are none",
    )


class PointOff(Section, title="Deviations of the depth measurements", each=STATION, sheet="Takeoff"):
    """One row per depth measurement."""

    off = line(
        "Deviation from the mean",
        "in",
        when(StationStrip.has_depth > 0, StationStrip.depth - PointMean.mean, 0),
        source="depth less mean measured depth",
    )
    off_squared = line("Squared deviation", "in2", square(off), source="deviation times itself")


class DepthSpread(Section, title="Uncertainty of the mean depth", each=AREA, sheet="Takeoff"):
    """Standard deviation of the mean depth, not of single measurements. Copies of an area err together."""

    few = factor(
        "Default depth uncertainty, fewer than 4 depths",
        "in",
        0.375,
        low=0.125,
        high=0.75,
        source="common practice, no source: 3/8 in for hand excavation, 1/4 in for a base checked with a string line",
    )

    points_spread = line(
        "Standard deviation of the depths",
        "in",
        when(
            MeanThickness.points > 1,
            square_root(total(PointOff.off_squared, AREA) / (MeanThickness.points - 1)),
            0,
        ),
        source="sample standard deviation",
    )
    wider = line(
        "Small-sample factor",
        "",
        when(MeanThickness.points > THREE, square_root((MeanThickness.points - 1) / (MeanThickness.points - THREE)), 1),
        source="statistics: standard deviation of Student's t with n - 1 degrees of freedom, root of (n - 1)/(n - 3)",
    )
    mean_spread = line(
        "Standard deviation of the mean depth",
        "in",
        when(MeanThickness.points > THREE, points_spread * wider / square_root(MeanThickness.points), few),
        source="statistics: standard deviation over the root of the number of depths; the default below four depths",
    )
    volume = line(
        "Standard deviation of volume, from depth",
        "yd3",
        Slab.net_area * mean_spread / IN_PER_FT / FT3_PER_YD3,
        source="net area times standard deviation of the mean depth",
    )
    volume_squared = line(
        "Variance of volume, from depth", "yd6", square(volume), source="statistics: variances add", adds=True
    )


class VolumeSpread(Section, title="Uncertainty of the volume", sheet="Takeoff"):
    """From sampled depths, one string-line error for all areas, measured areas, and plant yield."""

    string = factor(
        "String line error", "in", 0.125, low=0, high=0.25, source="common practice, no source: an eighth of an inch"
    )
    tape = factor("Area measurement error", "%", 1, low=0, high=3, source="common practice, no source")
    plant_yield = factor(
        "Plant yield error",
        "%",
        1,
        low=0,
        high=2,
        source="common practice, from memory: ASTM C94, Basis of Purchase, with yield by ASTM C138 within about 1 %",
    )

    by_depth = line(
        "Volume error from depth",
        "yd3",
        square_root(total(DepthSpread.volume_squared)),
        source="root of the sum of the variances",
    )
    by_string = line(
        "Volume error from the string line",
        "yd3",
        total(Slab.net_area) * string / IN_PER_FT / FT3_PER_YD3,
        source="net area of all areas times string line error",
    )
    by_tape = line(
        "Volume error from area",
        "yd3",
        total(Concrete.in_place) * tape / PERCENT,
        source="share of the net concrete volume",
    )
    by_yield = line(
        "Volume error from plant yield",
        "yd3",
        total(Concrete.in_place) * plant_yield / PERCENT,
        source="share of the net concrete volume",
    )
    all_of_it = line(
        "Standard deviation of the required volume",
        "yd3",
        square_root(square(by_depth) + square(by_string) + square(by_tape) + square(by_yield)),
        source="statistics: independent errors add by their squares",
    )
