"""Cautions of the concrete order: below the requirement, likely to run short, surplus."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import METHOD
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.method_cost import MethodCost
from calc.trade.ordering.order import Order


class OrderCautions(Section, title="Order cautions", sheet="Checks"):
    """What was found, the number, the usual practice with its source, and what to do."""

    max_shortage_chance = factor(
        "Chance of running short, caution above", "", 0.1, low=0.05, high=0.25, source="house rule"
    )
    max_surplus = factor("Surplus concrete, note above", "yd3", 0.75, low=0.25, high=1.5, source="house rule")

    below_requirement = caution(
        "Order below the requirement",
        Severity.CAUTION,
        Order.overage < 0,
        "The order is less than the required volume; the number is the shortfall.",
        largest(0, Order.required - Order.quantity),
        "yd3",
        usual="the net volume plus 2 to 5 % waste",
        do="Order more, or have bags on site.",
        source="NRMCA CIP 8, from memory: 4 to 10 % over plan dimensions",
    )
    may_run_short = caution(
        "Order may run short",
        Severity.CAUTION,
        both(Order.quantity > 0, Order.risk > max_shortage_chance),
        "The order is likely to run short; the number is the chance.",
        Order.risk,
        "",
        usual="fewer than one pour in ten",
        do="Order more, measure more depths, or have bags on site.",
        brief="Order more, measure more depths, or have bags.",
        source="house rule",
    )
    bags_considered = caution(
        "Bags just above their limit",
        Severity.NOTE,
        Bags.is_shown > 0,
        "The pour is a little more than is mixed from bags; the number is what bags would cost.",
        at(MethodCost.cost, row_called(METHOD, "bags")),
        "$",
        usual="up to 1 yd3 from bags",
        do="Ask whether two can mix that much in one go; if so, choose bags by hand.",
        brief="Ask whether two can mix it; then choose bags.",
        source="common practice, no source",
    )
    surplus = caution(
        "Large surplus expected",
        Severity.NOTE,
        Order.surplus > max_surplus,
        "A large surplus of concrete is expected; the number is how much.",
        Order.surplus,
        "yd3",
        usual="a planned use for it: stepping stones, a post hole, a pad",
        do="Have forms ready for it.",
        source="common practice, no source",
    )
