"""What is bought by the piece and has no rule of its own, and the trucks that pay each fee of the plant."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import TIER, TRUCK
from calc.trade.ordering.order import Order, TruckLoad
from calc.trade.ordering.trucks import ONE_TRUCK, of_tier

_SHEET = "Costs"
FIRST, SECOND, THIRD = (exact(row) for row in (1, 2, 3))
"""The rows of the fees."""


class PieceGoods(Section, title="Piece goods", sheet=_SHEET):
    """Prices of small items; their quantities are computed where they are used."""

    micro_price = price("Micro fiber", "$/bag", help="Price per bag of the size on Factors.")
    macro_price = price("Macro fiber", "$/bag", help="Price per bag of the size on Factors.")
    bar_price = price("Dowel bar", "$/bar", help="Price per stock bar, uncut.")
    bit_price = price("Drill bit", "$/each", help="Price per bit of the drill diameter.")
    cartridge_price = price("Epoxy cartridge", "$/each", help="Price per cartridge, with its nozzle.")
    filler_price = price("Isolation-joint filler", "$/each", help="Price per strip of the length on Factors.")
    sealant_price = price("Joint cap and sealant", "$/ft", help="Price per foot of joint cap and sealant.")


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
