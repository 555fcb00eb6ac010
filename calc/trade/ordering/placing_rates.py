"""How fast concrete is placed by chute, wheelbarrow and pump."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.placing import Access
from calc.trade.work.carrying import Carrying

_SHEET = "Order and placing"


class PlacingRate(Section, title="Placing rates", sheet=_SHEET):
    """Yards per hour, with a crew that can place and screed at that rate."""

    chute = factor("Placing rate, chute", "yd3/h", 12, low=8, high=20, source="common practice, no source")
    pump = factor(
        "Placing rate, pump", "yd3/h", 14, low=8, high=25, source="common practice, no source: a small line pump"
    )
    fill_time = factor(
        "Wheelbarrow fill, dump and turn time",
        "min",
        1.1,
        low=0.75,
        high=2,
        source="common practice, no source; a cost handbook of 1908, from memory: 3/4 min",
    )
    working_share = factor(
        "Wheelbarrow working time, share of the hour", "%", 80, low=50, high=100, source="common practice, no source"
    )
    min_time = factor("Minimum placing time", "h", 0.5, low=0.25, high=1, source="common practice, no source")

    cycle_time = line(
        "Wheelbarrow cycle time",
        "min",
        fill_time + TWO * Carrying.distance / Carrying.travel_speed,
        source="fill, dump and turn time, plus both ways at travel speed",
    )
    wheelbarrow = line(
        "Placing rate, wheelbarrow",
        "yd3/h",
        when(
            cycle_time > 0,
            Access.wheelbarrows
            * Carrying.barrow_volume
            / FT3_PER_YD3
            * MIN_PER_H
            / cycle_time
            * working_share
            / PERCENT
            * Carrying.route_factor,
            0,
        ),
        source="wheelbarrows times volume times trips per hour times working time times route factor",
    )
