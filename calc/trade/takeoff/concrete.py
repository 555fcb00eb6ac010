"""Concrete in place: the exact volume of every area."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import AREA
from calc.trade.takeoff.geometry import EdgeTakeoff, MeanThickness, Slab
from calc.trade.takeoff.old_concrete import OldFooting


class Concrete(Section, title="Concrete in place", each=AREA, sheet="Takeoff"):
    """The exact volume, before any loss."""

    slab = line(
        "Slab",
        "yd3",
        Slab.net_area * MeanThickness.mean / IN_PER_FT / FT3_PER_YD3,
        source="geometry: area times mean thickness",
        adds=True,
    )
    thickened = line("Thickened edges", "yd3", total(EdgeTakeoff.thickened, AREA), source="sum of the edges", adds=True)
    displaced = line(
        "Displaced by old footings", "yd3", total(OldFooting.displaced, AREA), source="sum of the footings", adds=True
    )
    in_place = line(
        "Concrete in place",
        "yd3",
        slab + thickened - displaced,
        source="slab and thickened edges, less what old footings displace",
        adds=True,
    )
