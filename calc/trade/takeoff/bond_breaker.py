"""Bond breakers: a slip sheet over an old footing, which lets the slab move."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.removal import Footing
from calc.trade.levels import FOOTING
from calc.trade.takeoff.geometry import MeanThickness
from calc.trade.takeoff.old_concrete import OldFooting


class BondBreaker(Section, title="Bond breakers", each=FOOTING, sheet="Order and placing"):
    """A bond breaker, a slip sheet over a footing, lets the slab move."""

    area = line(
        "Bond breaker area",
        "ft2",
        when(
            both(Footing.treatment.is_("bond breaker"), OldFooting.cover < MeanThickness.mean), OldFooting.plan_area, 0
        ),
        source="plan area of the footing; none at or below the bottom of the slab",
        adds=True,
    )
