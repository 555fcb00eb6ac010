"""Uncertainty of the concrete volume: standard deviation of the mean depth, and of the volume."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import Area
from calc.trade.levels import AREA, CROSS_SECTION
from calc.trade.takeoff.concrete import Concrete
from calc.trade.takeoff.geometry import MeanThickness, Slab, StationStrip


class PointMean(Section, title="Mean of the depth measurements", each=AREA, sheet="Takeoff", needs=CROSS_SECTION):
    """The mean of the measurements alone, also if the mean thickness is overridden."""

    mean = line(
        "Mean measured depth",
        "in",
        when(MeanThickness.depth_count > 0, MeanThickness.depth_sum / MeanThickness.depth_count, 0),
        source="sum of the measured depths over their number; 0 if there are none",
    )


class DepthDeviation(Section, title="Deviations of the depth measurements", each=CROSS_SECTION, sheet="Takeoff"):
    """One row per depth measurement."""

    deviation = line(
        "Deviation from the mean",
        "in",
        when(StationStrip.has_depth > 0, StationStrip.depth - PointMean.mean, 0),
        source="depth less mean measured depth",
    )
    squared_deviation = line("Squared deviation", "in2", square(deviation), source="deviation times itself")


class DepthUncertainty(Section, title="Uncertainty of the mean depth", each=AREA, sheet="Takeoff"):
    """Standard deviation of the mean depth, not of single measurements. Copies of an area err together."""

    default_std_dev = factor(
        "Default depth uncertainty, fewer than 4 depths",
        "in",
        0.375,
        low=0.125,
        high=0.75,
        source="common practice, no source: 3/8 in on dirt, however it is dug",
    )
    default_on_base = factor(
        "Default depth uncertainty on base rock, fewer than 4 depths",
        "in",
        0.25,
        low=0.125,
        high=0.5,
        source="common practice, no source: 1/4 in on base rock that is checked with a string line",
    )
    base_from = factor(
        "Base rock that evens out the dig, from", "in", 2, low=1, high=4, source="common practice, no source"
    )

    assumed = line(
        "Depth uncertainty, if too few depths are measured",
        "in",
        when(Area.base >= base_from, default_on_base, default_std_dev),
        source="less on base rock than on dirt",
    )

    sample_std_dev = line(
        "Standard deviation of the depths",
        "in",
        when(
            MeanThickness.depth_count > 1,
            square_root(total(DepthDeviation.squared_deviation, AREA) / (MeanThickness.depth_count - 1)),
            0,
        ),
        source="sample standard deviation",
    )
    small_sample_factor = line(
        "Small-sample factor",
        "",
        when(
            MeanThickness.depth_count > THREE,
            square_root((MeanThickness.depth_count - 1) / (MeanThickness.depth_count - THREE)),
            1,
        ),
        source="statistics: standard deviation of Student's t with n - 1 degrees of freedom, root of (n - 1)/(n - 3)",
    )
    mean_std_dev = line(
        "Standard deviation of the mean depth",
        "in",
        when(
            MeanThickness.depth_count > THREE,
            sample_std_dev * small_sample_factor / square_root(MeanThickness.depth_count),
            assumed,
        ),
        source="statistics: standard deviation over the root of the number of depths; the default below four depths",
    )
    volume_std_dev = line(
        "Standard deviation of volume, from depth",
        "yd3",
        Slab.net_area * mean_std_dev / IN_PER_FT / FT3_PER_YD3,
        source="net area times standard deviation of the mean depth",
    )
    volume_variance = line(
        "Variance of volume, from depth", "yd6", square(volume_std_dev), source="statistics: variances add", adds=True
    )


class VolumeUncertainty(Section, title="Uncertainty of the volume", sheet="Takeoff"):
    """From sampled depths, one string-line error for all areas, measured areas, and plant yield."""

    string_line_error = factor(
        "String line error", "in", 0.125, low=0, high=0.25, source="common practice, no source: an eighth of an inch"
    )
    area_error = factor("Area measurement error", "%", 1, low=0, high=3, source="common practice, no source")
    yield_error = factor(
        "Plant yield error",
        "%",
        1,
        low=0,
        high=2,
        source="common practice, from memory: ASTM C94, Basis of Purchase, with yield by ASTM C138 within about 1 %",
    )

    from_depth = line(
        "Volume error from depth",
        "yd3",
        square_root(total(DepthUncertainty.volume_variance)),
        source="root of the sum of the variances",
    )
    from_string_line = line(
        "Volume error from the string line",
        "yd3",
        total(Slab.net_area) * string_line_error / IN_PER_FT / FT3_PER_YD3,
        source="net area of all areas times string line error",
    )
    from_area = line(
        "Volume error from area",
        "yd3",
        total(Concrete.in_place) * area_error / PERCENT,
        source="share of the net concrete volume",
    )
    from_yield = line(
        "Volume error from plant yield",
        "yd3",
        total(Concrete.in_place) * yield_error / PERCENT,
        source="share of the net concrete volume",
    )
    std_dev = line(
        "Standard deviation of the required volume",
        "yd3",
        square_root(square(from_depth) + square(from_string_line) + square(from_area) + square(from_yield)),
        source="statistics: independent errors add by their squares",
    )
