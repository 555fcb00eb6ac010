"""What to watch in the price: prices that are missing or old, the margin, the risk of the order."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.loads import Hauled
from calc.trade.inputs.areas import Area
from calc.trade.money.costs import CostTable
from calc.trade.money.price import BidPrice
from calc.trade.ordering.order import Order
from calc.trade.takeoff.geometry import Slab


class SpoilPerArea(Section, title="Weight hauled", sheet="Dig and haul"):
    """To find a slip of the pen."""

    by_area = line(
        "Hauled for a square foot",
        "ton/ft2",
        when(total(Slab.net_area) > 0, total(Hauled.tons) / total(Slab.net_area), 0),
        source="all piles over the slab",
    )


class MoneyCautions(Section, title="Cautions of the price", sheet="Checks"):
    """What was found, the number, the usual practice and who says so, and what to do."""

    least_margin = factor("Margin, caution below", "%", 10, low=5, high=15, source="common practice, no source")
    most_margin = factor("Margin, caution above", "%", 40, low=30, high=50, source="common practice, no source")
    most_chance = factor("Chance of running short, caution above", "", 0.1, low=0.05, high=0.25, source="house rule")
    most_left = factor("Left over, note above", "yd3", 0.75, low=0.25, high=1.5, source="house rule")
    deep = factor("Base, caution above", "in", 8, low=6, high=18, source="common practice, no source")
    heavy_limit = factor(
        "Hauled for a square foot, caution above", "ton/ft2", 0.15, low=0.1, high=0.3, source="house rule"
    )

    no_price = caution(
        "Costs without a price",
        Severity.CAUTION,
        total(CostTable.unpriced) > 0,
        "The price is not complete: so many costs have no rate.",
        total(CostTable.unpriced),
        "",
        usual="a price for everything that is needed; 0 where it costs nothing",
        do="Fill their rows in the house book; Costs names them.",
        source="house rule",
    )
    stale = caution(
        "Old prices",
        Severity.CAUTION,
        total(CostTable.expired) > 0,
        "So many prices have expired, or are too old to trust.",
        total(CostTable.expired),
        "",
        usual="plants and yards quote for a month",
        do="Ask again, and date the rows of Prices.",
        source="common practice, no source",
    )
    margin = caution(
        "Margin out of the usual",
        Severity.CAUTION,
        both(
            BidPrice.break_even > 0, either(BidPrice.actual_margin < least_margin, BidPrice.actual_margin > most_margin)
        ),
        "The margin that is kept is not a usual one.",
        BidPrice.actual_margin,
        "%",
        usual="10 to 40 % of the price",
        do="See that a margin was typed, and not a markup.",
        source="common practice, no source",
    )
    minimum = caution(
        "At the minimum",
        Severity.NOTE,
        BidPrice.minimum_applied > 0,
        "The price is the least that the firm works for.",
        BidPrice.minimum,
        "$",
        usual="a minimum for each job",
        do="Nothing; the client may like to add to it.",
        source="house rule",
    )
    short = caution(
        "Order may run short",
        Severity.CAUTION,
        both(Order.quantity > 0, Order.risk > most_chance),
        "The order is likely to run short; the number is the chance.",
        Order.risk,
        "",
        usual="fewer than one pour in ten",
        do="Order more, measure more depths, or have bags on the site.",
        source="house rule",
    )
    left = caution(
        "Much left over",
        Severity.NOTE,
        Order.surplus > most_left,
        "So much concrete is expected to be left over.",
        Order.surplus,
        "yd3",
        usual="a place for it: stepping stones, a post hole, a bed for bags",
        do="Have forms for it ready.",
        source="common practice, no source",
    )
    deep_base = caution(
        "Deep base",
        Severity.CAUTION,
        greatest(Area.base) > deep,
        "The base is deeper than usual: is a width typed as a depth?",
        greatest(Area.base),
        "in",
        usual="up to 8 in under flatwork",
        do="See the column base in of Areas.",
        source="common practice, no source: to find a slip of the pen",
    )
    heavy = caution(
        "Much to haul for its size",
        Severity.CAUTION,
        SpoilPerArea.by_area > heavy_limit,
        "More weight is hauled away than a slab of this size should leave.",
        SpoilPerArea.by_area,
        "ton/ft2",
        usual="below 0.15 ton a square foot",
        do="See depths, old slab and plants for a slip of the pen.",
        source="common practice, no source: to find a slip of the pen",
    )
