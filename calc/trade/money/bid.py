"""The Bid sheet: price and price parts, quantities, decisions and their reasons."""

from __future__ import annotations

from dataclasses import dataclass

from calc.declare import *
from calc.trade.hauling.choice import Choice, RunnerUp
from calc.trade.hauling.loads import Hauled, HaulVehicle
from calc.trade.hauling.piles import Pile
from calc.trade.inputs.pour import Ordering
from calc.trade.materials.base_rock import BaseNeeds
from calc.trade.materials.liquids import BONDING_PACKS, CURING_PACKS, SEALER_PACKS
from calc.trade.materials.packs import Packs
from calc.trade.money.price import BidPrice, PriceParts
from calc.trade.ordering.method_choice import Placing, PlacingWords, RunnerUpMethod
from calc.trade.ordering.order import Balance, Order
from calc.trade.ordering.rule_comparison import RuleComparison
from calc.trade.takeoff.concrete import Concrete
from calc.trade.takeoff.dowels import DowelNeeds
from calc.trade.takeoff.geometry import Slab
from calc.trade.takeoff.joints import MatchedJoints
from calc.trade.work.calendar import Calendar
from calc.trade.work.paid_time import PaidTime

_SHEET = "Bid"


class PriceSummary(Section, title="Price breakdown", sheet=_SHEET):
    """Margin and rounding, and whether every cost has a price."""

    margin = line("Margin and rounding", "$", BidPrice.price - BidPrice.break_even, source="price less break-even cost")
    complete = line(
        "Price completeness",
        "",
        when(
            BidPrice.unpriced > 0,
            joined("NOT COMPLETE: costs without a price: ", count_of(BidPrice.unpriced, "each"), ", see Costs"),
            "complete: every cost has a price",
        ),
        source="costs without a price",
    )


def _other_packs(packs: Packs) -> Expr:
    """The runner-up pails, in words."""
    return when(packs.next_known > 0, joined("runner-up: ", packs.next_way), "no other pails")


class Decisions(Section, title="Decisions", sheet=_SHEET):
    """Decisions and reasons in words, from the live numbers."""

    order = line(
        "Reason for the order",
        "",
        when(
            Order.quantity.is_overridden,
            "overridden; see Measured for the reason",
            when(
                Ordering.rule.is_("fixed"),
                "fixed for this job, rounded up to the order increment",
                Order.rule,
            ),
        ),
        source="order rule",
    )
    other_order = line(
        "Runner-up order",
        "",
        when(
            RuleComparison.known > 0,
            joined(
                RuleComparison.other_name,
                RuleComparison.by_cost,
            ),
            "no order to compare",
        ),
        source="order compared with another rule",
    )
    call = line(
        "Balance load",
        "",
        when(
            Balance.saving > 0,
            "hold the last truck and order the balance: expected saving",
            when(Order.trucks.count > 1, "a balance load would save nothing", "no balance load"),
        ),
        source="balance (clean-up) load",
    )
    loads = line(
        "Reason for the loads",
        "",
        when(
            HaulVehicle.payload > 0,
            joined(Choice.plan_name, ", on the ", Choice.vehicle_name, Choice.reason),
            "not known: the company book has no vehicle; piles are in yd3 and tons",
        ),
        source="haul plans",
    )
    other_curing = line("Runner-up curing compound pails", "", _other_packs(CURING_PACKS), source="pail rule")
    other_bonding = line("Runner-up bonding agent pails", "", _other_packs(BONDING_PACKS), source="pail rule")
    other_sealer = line("Runner-up sealer pails", "", _other_packs(SEALER_PACKS), source="pail rule")


@dataclass(frozen=True)
class Decision:
    """A decision: its result, the next best in words, what that adds, and why, in words, where that is not plain."""

    what: str
    came_to: Line
    beside: Line
    more: Line
    why: Line | None = None


DECISIONS = (
    Decision("Concrete to order", Order.quantity, Decisions.other_order, RuleComparison.costs_more, Decisions.order),
    Decision("Trucks", Order.trucks, Decisions.call, Balance.saving),
    Decision("Placing", Placing.name, PlacingWords.runner_up, RunnerUpMethod.costs_more, PlacingWords.reason),
    Decision("Haul plan and loads", Hauled.loads, RunnerUp.words, RunnerUp.difference, Decisions.loads),
    Decision("Curing compound", CURING_PACKS.cost, Decisions.other_curing, CURING_PACKS.next_more),
    Decision("Bonding agent", BONDING_PACKS.cost, Decisions.other_bonding, BONDING_PACKS.next_more),
    Decision("Sealer", SEALER_PACKS.cost, Decisions.other_sealer, SEALER_PACKS.next_more),
)
"""The decisions of the job, most important first."""

DAYS = Calendar.summary
"""The days of the job, in words."""

ADDED = (
    ("Tax", BidPrice.tax),
    ("Contingency", BidPrice.contingency),
    ("Overhead", BidPrice.overhead),
    ("Margin and rounding", PriceSummary.margin),
)
"""What is added to the subtotals of the costs to make the price."""

FALLS_DUE = (PriceParts.deposit, PriceParts.on_pour_day, PriceParts.on_completion, PriceParts.retainage)
"""The payment schedule."""

KEY = (
    (Slab.net_area, "Slab area"),
    (Concrete.in_place, "Concrete in place"),
    (Order.risk, "Risk of running short"),
    (Order.surplus, "Expected surplus"),
    (PaidTime.visits, "Visits"),
    (PaidTime.clock_hours, "Paid hours"),
    (PaidTime.share, "Share on tasks"),
    (Pile.tons, "Spoil hauled away"),
    (BaseNeeds.buy, "Base rock"),
    (DowelNeeds.dowels, "Dowels"),
    (MatchedJoints.length, "Control joints"),
)
"""The job in numbers, each with its short name. A line by area is shown in total."""
