"""What the week's workbook shows of each job, and what goes into its ledger."""

from __future__ import annotations

from calc.declare import Line, Price
from calc.trade.base import BaseNeeds
from calc.trade.dowels import Cut, DowelNeeds
from calc.trade.fiber import FiberTotal
from calc.trade.geometry import Slab
from calc.trade.haul import Hauled
from calc.trade.joints import JointNeeds
from calc.trade.order import Order
from calc.trade.surface import BONDING_PACKS, CURING_PACKS, SEALER_PACKS, Bonding, Curing, Sealer

COLUMNS: tuple[Line, ...] = (
    Slab.net_area,
    Order.quantity,
    Order.trucks,
    FiberTotal.bags,
    DowelNeeds.dowels,
    BaseNeeds.buy,
    Hauled.tons,
    Hauled.loads,
    Curing.need,
)
"""The quantities of a job that the week adds up: each for the whole job."""

Entered = tuple[Line, Price | None, str]
"""A line of the ledger: its quantity, its price row where it has one, and its group."""

LEDGER: tuple[Entered, ...] = (
    (Order.quantity, None, "concrete"),
    (FiberTotal.bags, None, "concrete"),
    (Cut.bars, None, "dowels"),
    (DowelNeeds.bits, None, "dowels"),
    (DowelNeeds.tubes, None, "dowels"),
    (JointNeeds.strips, None, "joints"),
    (BaseNeeds.buy, None, "base"),
    (Hauled.loads, None, "haul"),
    *(
        (packs, price, "liquids")
        for chosen, small, large in (
            (BONDING_PACKS, Bonding.small, Bonding.large),
            (CURING_PACKS, Curing.small, Curing.large),
            (SEALER_PACKS, Sealer.small, Sealer.large),
        )
        for packs, price in ((chosen.small, small), (chosen.large, large))
    ),
)
"""What a job buys. The amount is the quantity times the rate of its price row, to the cent, where there is one."""
