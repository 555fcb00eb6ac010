"""What the week's workbook shows of each job, and the limits by which it compares jobs."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.loads import Hauled
from calc.trade.materials.base_rock import BaseNeeds
from calc.trade.materials.fiber import FiberTotal
from calc.trade.materials.liquids import Curing
from calc.trade.money.price import BidPrice
from calc.trade.ordering.order import Order
from calc.trade.takeoff.dowels import DowelNeeds
from calc.trade.takeoff.geometry import Slab
from calc.trade.work.paid_time import PaidTime


class WeekComparison(Section, title="Compared with the other jobs of the week"):
    """Used in ``week.xlsx`` only, so a job that is bid alone gives the same workbook."""

    travel_between = factor(
        "Travel time between jobs, shared truck", "min", 15, low=5, high=40, source="common practice, no source"
    )
    low = factor(
        "Price per ft2 over the median, review below",
        "",
        0.5,
        low=0.25,
        high=0.75,
        source="common practice, no source: to find a typing error",
    )
    high = factor(
        "Price per ft2 over the median, review above",
        "",
        2,
        low=1.5,
        high=4,
        source="common practice, no source: to find a typing error",
    )


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
    PaidTime.clock_hours,
    BidPrice.direct,
    BidPrice.break_even,
    BidPrice.price,
)
"""Quantities and amounts of a job that the week totals, each for the whole job."""

BEYOND_COSTS: tuple[Line, ...] = (BidPrice.tax,)
"""What the ledger books in addition to the cost table, so that it adds up to the direct cost."""
