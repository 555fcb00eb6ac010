"""The trucks that pay each short-load fee of the plant."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import TIER, TRUCK
from calc.trade.ordering.order import Order, TruckLoad
from calc.trade.ordering.trucks import ONE_TRUCK, of_tier

_SHEET = "Costs"
FIRST, SECOND, THIRD = (exact(row) for row in (1, 2, 3))
"""The rows of the fees."""


class TierStart(Section, title="Short-load tier numbers", each=TIER, sheet=_SHEET):
    """To count the trucks in each tier."""

    number = line("Tier number", "", row_number(TIER), source="row number")


class TruckFee(Section, title="Short-load tier of each truck", each=TRUCK, sheet=_SHEET, slots_for=Order.trucks):
    """The short-load fee that a truck pays, by its load."""

    tier = line(
        "Short-load tier",
        "",
        when(
            TruckLoad.in_use > 0,
            of_tier(TierStart.number, TruckLoad.yards / ONE_TRUCK),
            0,
        ),
        source="last tier whose limit is at or below the load",
    )
    in_tier_1 = line(
        "Truck in tier 1",
        "truck",
        when(equals(tier, FIRST), 1, 0),
        source="1 if the truck is in that tier",
        adds=True,
    )
    in_tier_2 = line(
        "Truck in tier 2",
        "truck",
        when(equals(tier, SECOND), 1, 0),
        source="1 if the truck is in that tier",
        adds=True,
    )
    in_tier_3 = line(
        "Truck in tier 3",
        "truck",
        when(equals(tier, THIRD), 1, 0),
        source="1 if the truck is in that tier",
        adds=True,
    )
