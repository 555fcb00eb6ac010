"""The rock base under the slab: the word base means nothing else here."""

from __future__ import annotations

from calc.declare import (
    FT3_PER_YD3,
    IN_PER_FT,
    PERCENT,
    Section,
    factor,
    line,
    round_up,
    total,
)
from calc.trade.geometry import Slab
from calc.trade.levels import AREA
from calc.trade.site_inputs import Measured


class Base(Section, title="Rock base", each=AREA, sheet="Order and placing"):
    """Compacted rock under the slab."""

    compacted = line(
        "Base, compacted",
        "yd3",
        Slab.net_area * Measured.base / IN_PER_FT / FT3_PER_YD3,
        source="area times depth",
        adds=True,
    )


class BaseNeeds(Section, title="Base to buy", sheet="Order and placing"):
    """Weighed and bought by the half ton."""

    weight = factor(
        "Base per compacted yard",
        "ton/yd3",
        1.9,
        low=1.85,
        high=2.05,
        source="common practice, no source, for crushed rock; a textbook has compacted sand and gravel at 3,650 "
        "lb/yd3, from memory",
    )
    waste = factor("Waste of base", "%", 5, low=0, high=10, source="common practice, no source")
    step = factor("Step of the rock yard", "ton", 0.5, low=0.25, high=1, source="common practice, no source")

    tons = line(
        "Base needed", "ton", total(Base.compacted) * weight * (1 + waste / PERCENT), source="volume, weight and waste"
    )
    buy = line("Base to buy", "ton", round_up(tons, to=step), source="up to the step of the rock yard")
