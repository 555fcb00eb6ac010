"""What is bought by the piece and has no rule of its own, and the trucks that pay each fee of the plant."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import TIER, TRUCK
from calc.trade.ordering.order import Load, Order
from calc.trade.ordering.trucks import ONE_TRUCK, of_tier

_SHEET = "Costs"
FIRST, SECOND, THIRD = (exact(row) for row in (1, 2, 3))
"""The rows of the fees."""


class PieceGoods(Section, title="Bought by the piece", sheet=_SHEET):
    """Prices of small things; how many there are of them is worked out where they are used."""

    micro_price = price("Micro fiber", "$/bag", help="A bag of it, as big as its factor says.")
    macro_price = price("Macro fiber", "$/bag", help="A bag of it, as big as its factor says.")
    bar_price = price("Dowel bar", "$/bar", help="A stock bar, uncut.")
    bit_price = price("Drill bit", "$/each", help="One bit for the hole that is drilled.")
    tube_price = price("Tube of epoxy", "$/each", help="One tube, with its nozzle.")
    strip_price = price("Isolation strip", "$/each", help="One strip, as long as its factor says.")
    caulk_price = price("Cap and caulk", "$/ft", help="A foot of cap and caulk over an isolation strip.")


class TierStart(Section, title="Rows of the fees", each=TIER, sheet=_SHEET):
    """To count the trucks that pay each fee."""

    number = line("Row of the fee", "", row_number(TIER), source="to find it again")


class TruckFee(Section, title="Fee of each truck", each=TRUCK, sheet=_SHEET, slots_for=Order.trucks):
    """Which of the plant's fees a truck pays, by its load."""

    row = line(
        "Fee that it pays",
        "",
        when(
            Load.rides > 0,
            of_tier(TierStart.number, Load.yards / ONE_TRUCK),
            0,
        ),
        source="the last row of the fees that starts at or below its load",
    )
    first = line(
        "Pays the first",
        "truck",
        when(equals(row, FIRST), 1, 0),
        source="1 for such a truck",
        adds=True,
    )
    second = line(
        "Pays the second",
        "truck",
        when(equals(row, SECOND), 1, 0),
        source="1 for such a truck",
        adds=True,
    )
    third = line(
        "Pays the third",
        "truck",
        when(equals(row, THIRD), 1, 0),
        source="1 for such a truck",
        adds=True,
    )
