"""The order compared with another rule: both among the order sizes tried, so both have an expected cost."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import POURING
from calc.trade.ordering.method_choice import Placing
from calc.trade.ordering.order import Order
from calc.trade.ordering.order_candidates import BestOrder, OrderCandidate, OtherOrderRules, Risk, Shortage
from calc.trade.ordering.plant import ChosenMix

_SHEET = "Order and placing"


def _row_of(order: Expr) -> Expr:
    return rounded((order - Shortage.smallest_order) / Risk.increment, 0) + 1


def _cost_of(row: Expr) -> Expr:
    """Expected cost of an order size, in $; 0 for one that was not tried."""
    bounded = largest(1, smallest(row, BestOrder.listed))
    return when(both(row >= 1, row <= BestOrder.listed), at(OrderCandidate.expected_cost, bounded, of=POURING), 0)


class CandidateCosts(Section, title="Orders among the sizes tried", each=POURING, sheet=_SHEET):
    """Row of the order, and of the percent rule, among the order sizes tried."""

    percent_row = line(
        "Row of the percent-rule order",
        "",
        _row_of(OtherOrderRules.by_percent),
        source="increments above the smallest order tried, plus 1",
    )
    percent_cost = line(
        "Expected cost, percent-rule order", "$", _cost_of(percent_row), source="looked up by row; 0 if not tried"
    )
    order_row = line(
        "Row of the order",
        "",
        _row_of(Order.quantity),
        source="the nearest, if the order is overridden between two increments",
    )
    cost = line("Expected cost, order as placed", "$", _cost_of(order_row), source="looked up by row; 0 if not tried")


class RuleComparison(Section, title="Order compared with another rule", sheet=_SHEET):
    """The cheapest order size is compared with the percent rule, and any other order with the cheapest size."""

    is_best = line(
        "Order is the cheapest size",
        "",
        when(equals(Order.quantity, at(BestOrder.order, Placing.discharge)), 1, 0),
        source="1 if no order size has a lower expected cost",
    )
    cost = line(
        "Expected cost of the order", "$", at(CandidateCosts.cost, Placing.discharge), source="looked up by discharge"
    )
    other_cost = line(
        "Expected cost of the other order",
        "$",
        when(
            is_best > 0,
            at(CandidateCosts.percent_cost, Placing.discharge),
            at(BestOrder.expected_cost, Placing.discharge),
        ),
        source="of the percent rule, if the order is the cheapest size; else of the cheapest size",
    )
    known = line(
        "Comparison is possible",
        "",
        when(both(ChosenMix.known > 0, cost > 0, other_cost > 0), 1, 0),
        source="1 if the mix has a price and both orders are among the sizes tried",
    )
    other_name = line(
        "Name of the other order",
        "",
        when(is_best > 0, "percent rule", "cheapest order size"),
        source="the rule that was not chosen",
    )
    costs_more = line(
        "Other order costs more by",
        "$",
        when(known > 0, other_cost - cost, 0),
        source="other less order; can be negative if the order does not follow the risk rule",
    )
    by_cost = line(
        "Other order by cost",
        "",
        when(
            costs_more > 0,
            ": higher expected cost by",
            when(costs_more < 0, ": lower expected cost, by", ": same expected cost"),
        ),
        source="difference of the expected costs",
    )
