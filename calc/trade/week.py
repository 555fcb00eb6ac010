"""What the week's workbook shows of each job."""

from __future__ import annotations

from calc.declare import Line
from calc.trade.base import BaseNeeds
from calc.trade.dowels import DowelNeeds
from calc.trade.fiber import FiberTotal
from calc.trade.geometry import Slab
from calc.trade.hauled import Hauled
from calc.trade.labor import Labor
from calc.trade.money import Price
from calc.trade.order import Order
from calc.trade.surface import Curing

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
    Labor.hours,
    Price.direct,
    Price.full,
    Price.price,
)
"""The quantities and amounts of a job that the week adds up: each for the whole job."""

BEYOND_COSTS: tuple[Line, ...] = (Price.tax,)
"""What the ledger books beside the table of costs, so that it adds up to the direct cost."""
