"""The order beside what another rule would order: both on the ladder, so that both have an expected cost."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import POURING
from calc.trade.ordering.method_choice import Placing
from calc.trade.ordering.order import Order
from calc.trade.ordering.order_candidates import BestOrder, OrderCandidate, Risk, RuleOfThumb, Shortage
from calc.trade.ordering.plant import ChosenMix

_SHEET = "Order and placing"


def _rung_of(order: Expr) -> Expr:
    return rounded((order - Shortage.first) / Risk.step, 0) + 1


def _cost_of(rung: Expr) -> Expr:
    """The expected cost of a rung; 0 where the ladder does not reach."""
    held = largest(1, smallest(rung, Shortage.rungs))
    return when(both(rung >= 1, rung <= Shortage.rungs), at(OrderCandidate.expected, held, of=POURING), 0)


class CandidateCosts(Section, title="Orders on the ladder", each=POURING, sheet=_SHEET):
    """Where the order that is placed stands on the ladder, and where that of the percent rule does."""

    percent_rung = line(
        "Rung of the percent rule",
        "",
        _rung_of(RuleOfThumb.by_percent),
        source="steps of the plant above the first rung, and one",
    )
    percent_cost = line(
        "The percent rule is expected to cost", "$", _cost_of(percent_rung), source="of that rung; 0 off the ladder"
    )
    rung = line(
        "Rung of the order", "", _rung_of(Order.quantity), source="the nearest, where it was forced between two steps"
    )
    cost = line("The order is expected to cost", "$", _cost_of(rung), source="of that rung; 0 off the ladder")


class RuleComparison(Section, title="The order beside another", sheet=_SHEET):
    """The best rung is compared with the percent rule, and every other order with the best rung."""

    is_best = line(
        "The order is the best rung",
        "",
        when(equals(Order.quantity, Order.by_risk), 1, 0),
        source="1 where no rung is expected to cost less",
    )
    cost = line("Expected cost of the order", "$", at(CandidateCosts.cost, Placing.pouring), source="of its rung")
    other = line(
        "Expected cost of the other",
        "$",
        when(is_best > 0, at(CandidateCosts.percent_cost, Placing.pouring), at(BestOrder.expected, Placing.pouring)),
        source="of the percent rule beside the best rung, else of the best rung",
    )
    known = line(
        "The two can be compared",
        "",
        when(both(ChosenMix.known > 0, cost > 0, other > 0), 1, 0),
        source="1 when the mix has a price and both stand on the ladder",
    )
    named = line(
        "The other order is called",
        "",
        when(is_best > 0, "next comes the percent rule", "beside it the best rung"),
        source="whichever was not taken",
    )
    more = line(
        "The other is expected to cost more by",
        "$",
        when(known > 0, other - cost, 0),
        source="less than 0 where the order was not left to the ladder",
    )
