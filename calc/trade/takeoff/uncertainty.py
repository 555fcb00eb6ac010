"""How far the true need may lie from what was measured: the spread of the mean depth, and of the volume."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import AREA, CROSS_SECTION
from calc.trade.takeoff.concrete import Concrete
from calc.trade.takeoff.geometry import MeanThickness, Slab, StationStrip


class PointMean(Section, title="Mean of the depth points", each=AREA, sheet="Takeoff"):
    """Of the points alone, also where the mean thickness is forced."""

    mean = line(
        "Mean of the points",
        "in",
        when(MeanThickness.points > 0, MeanThickness.point_sum / MeanThickness.points, 0),
        source="0 where none was taken",
    )


class PointOff(Section, title="Depth points about their mean", each=CROSS_SECTION, sheet="Takeoff"):
    """Each point by itself."""

    off = line(
        "Off the mean",
        "in",
        when(StationStrip.has_depth > 0, StationStrip.depth - PointMean.mean, 0),
        source="depth less the mean",
    )
    off_squared = line("Its square", "in2", square(off), source="for the spread")


class DepthSpread(Section, title="Spread of the mean depth", each=AREA, sheet="Takeoff"):
    """What matters is how far the mean may be off, not the single points. Copies of an area err together."""

    few = factor(
        "Spread of the mean with fewer than four points",
        "in",
        0.375,
        low=0.125,
        high=0.75,
        source="common practice, no source: 3/8 in dug by hand, 1/4 in on a base checked with a string",
    )

    points_spread = line(
        "Spread of the points",
        "in",
        when(
            MeanThickness.points > 1,
            square_root(total(PointOff.off_squared, AREA) / (MeanThickness.points - 1)),
            0,
        ),
        source="sample standard deviation",
    )
    wider = line(
        "Wider for few points",
        "",
        when(MeanThickness.points > THREE, square_root((MeanThickness.points - 1) / (MeanThickness.points - THREE)), 1),
        source="statistics: spread of Student's t with one degree of freedom less than there are points",
    )
    mean_spread = line(
        "Spread of the mean",
        "in",
        when(MeanThickness.points > THREE, points_spread * wider / square_root(MeanThickness.points), few),
        source="statistics: spread of the points over the root of their number; a house figure below four points",
    )
    volume = line(
        "Spread of its volume",
        "yd3",
        Slab.net_area * mean_spread / IN_PER_FT / FT3_PER_YD3,
        source="area times the spread of its mean",
    )
    volume_squared = line("Square of that", "yd6", square(volume), source="spreads add by their squares", adds=True)


class VolumeSpread(Section, title="Spread of the volume", sheet="Takeoff"):
    """Depth sampled, a string line that is off everywhere alike, areas as measured, yards as sent."""

    string = factor(
        "String line off by", "in", 0.125, low=0, high=0.25, source="common practice, no source: an eighth of an inch"
    )
    tape = factor("Area off by", "%", 1, low=0, high=3, source="common practice, no source")
    plant_yield = factor(
        "Yield of the plant off by",
        "%",
        1,
        low=0,
        high=2,
        source="common practice, from memory: ASTM C94 yield is checked by unit weight within about 1 %",
    )

    by_depth = line(
        "By the depths", "yd3", square_root(total(DepthSpread.volume_squared)), source="root of the squares"
    )
    by_string = line(
        "By the string line",
        "yd3",
        total(Slab.net_area) * string / IN_PER_FT / FT3_PER_YD3,
        source="all areas together",
    )
    by_tape = line("By the tape", "yd3", total(Concrete.in_place) * tape / PERCENT, source="share of the volume")
    by_yield = line(
        "By the plant", "yd3", total(Concrete.in_place) * plant_yield / PERCENT, source="share of the volume"
    )
    all_of_it = line(
        "Spread of the need",
        "yd3",
        square_root(square(by_depth) + square(by_string) + square(by_tape) + square(by_yield)),
        source="statistics: independent errors add by their squares",
    )
