"""What the week's workbook shows of each job, and the limits by which it compares jobs."""

from __future__ import annotations

from collections.abc import Mapping

from calc.declare import *
from calc.trade.hauling.loads import Hauled
from calc.trade.materials.base_rock import BaseNeeds
from calc.trade.materials.fiber import FiberTotal
from calc.trade.money.cost_rows import CONCRETE, MATERIALS, ROWS
from calc.trade.money.price import BidPrice
from calc.trade.ordering.order import Order
from calc.trade.takeoff.dowels import DowelNeeds
from calc.trade.takeoff.forms import Board, Stakes
from calc.trade.takeoff.geometry import Slab
from calc.trade.work.paid_time import PaidTime, Visit


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
    Hauled.loads,
    PaidTime.clock_hours,
    Visit.task_hours,
    BidPrice.price,
    BidPrice.direct,
    Hauled.tons,
    BaseNeeds.buy,
    DowelNeeds.dowels,
    FiberTotal.bags,
)
"""Quantities and amounts of a job that the week compares and adds up, each for the whole job."""

FIRST_DAY, POUR_DAY, SEAL_DAY = "first day", "pour day", "seal day"

_POURED_WITH = ("Bonding agent", "Curing compound")
_BY_THE_PIECE = (
    "Wire mesh sheets",
    "Drill bits for dowels",
    "Epoxy cartridges for dowels",
    "Isolation-joint filler strips, bought",
    "Bar supports",
)


def _wanted_on(row: Cost) -> str:
    """The day on which what a cost buys is first wanted."""
    if row.label.startswith("Sealer"):
        return SEAL_DAY
    return POUR_DAY if row.group == CONCRETE or row.label.startswith(_POURED_WITH) else FIRST_DAY


ON_HAND: Mapping[str, str] = {
    row.label: _wanted_on(row)
    for row in ROWS
    if row.group in (CONCRETE, MATERIALS) and (row.unit_text in ("bag", "bar", "pack") or row.label in _BY_THE_PIECE)
}
"""The costs that buy what the crew brings, each with the day on which it is first wanted."""

LENT: tuple[Line, ...] = (Board.length, Stakes.stakes)
"""What is brought and taken home again: of its cost a job has a share only."""
