"""Net concrete volume of each area, before waste."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import AREA
from calc.trade.takeoff.geometry import EdgeTakeoff, MeanThickness, Slab
from calc.trade.takeoff.old_concrete import OldFooting


class Concrete(Section, title="Net concrete volume", each=AREA, sheet="Takeoff"):
    """The exact volume of the slab in place, before any waste."""

    slab = line(
        "Slab volume",
        "yd3",
        Slab.net_area * MeanThickness.mean / IN_PER_FT / FT3_PER_YD3,
        source="geometry: net area times mean thickness",
        adds=True,
    )
    thickened = line(
        "Thickened-edge volume", "yd3", total(EdgeTakeoff.thickened, AREA), source="sum of the edges", adds=True
    )
    displaced = line(
        "Volume displaced by old footings",
        "yd3",
        total(OldFooting.displaced, AREA),
        source="sum of the footings",
        adds=True,
    )
    in_place = line(
        "Net concrete volume",
        "yd3",
        slab + thickened - displaced,
        source="slab plus thickened edges, less the volume that old footings displace",
        adds=True,
    )
