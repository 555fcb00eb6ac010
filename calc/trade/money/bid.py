"""The front page: the price and what it is made of, what is ordered and bought, what was decided, and why."""

from __future__ import annotations

from dataclasses import dataclass

from calc.declare import *
from calc.trade.hauling.choice import Choice, RunnerUp
from calc.trade.hauling.loads import Hauled, Hauler
from calc.trade.hauling.piles import Pile
from calc.trade.inputs.job import Job
from calc.trade.inputs.pour import Ordering
from calc.trade.materials.base_rock import BaseNeeds
from calc.trade.materials.fiber import FiberTotal
from calc.trade.materials.liquids import BONDING_PACKS, CURING_PACKS, SEALER_PACKS, Bonding, Curing, Sealer
from calc.trade.materials.packs import Packs
from calc.trade.money.price import BidPrice, PriceParts
from calc.trade.ordering.method_choice import Placing, PlacingWords, RunnerUpMethod
from calc.trade.ordering.order import Balance, Order
from calc.trade.ordering.rule_comparison import RuleComparison
from calc.trade.takeoff.concrete import Concrete
from calc.trade.takeoff.dowels import DowelNeeds
from calc.trade.takeoff.geometry import Slab
from calc.trade.takeoff.joints import Matched
from calc.trade.work.labor import Labor

_SHEET = "Bid"


class PriceSummary(Section, title="What the price is made of", sheet=_SHEET):
    """What stands between the full cost and the price, and whether every cost has a price."""

    margin = line("Margin and rounding", "$", BidPrice.price - BidPrice.full, source="price less full cost")
    complete = line(
        "Whether the price is complete",
        "",
        when(
            BidPrice.foots > 0,
            joined("NOT COMPLETE: ", count_of(BidPrice.foots, "each"), " costs have no price, see Costs"),
            "complete: every cost has a price",
        ),
        source="costs that have no price",
    )


def _packs(need: Line, packs: Packs) -> Expr:
    """Why these packs."""
    return when(
        need > 0,
        when(
            packs.can_win > 0,
            joined(packs.way, ", of ", count_of(packs.can_win, "each"), " ways with a price"),
            "not chosen: no price and size of a pack",
        ),
        "none is needed",
    )


def _other_packs(packs: Packs) -> Expr:
    """What the next packs are."""
    return when(packs.next_known > 0, joined("next: ", packs.next_way), "no other packs")


class Decisions(Section, title="What was decided, and why", sheet=_SHEET):
    """In words, from the live numbers."""

    order = line(
        "Why this order",
        "",
        when(
            Order.quantity.is_overridden,
            "forced by hand; see Measured for the reason",
            when(
                Ordering.rule.is_("fixed"),
                "fixed for this job, taken to the next step of the plant",
                Order.rule,
            ),
        ),
        source="order rule",
    )
    other_order = line(
        "What the other order is",
        "",
        when(
            RuleComparison.known > 0,
            joined(
                RuleComparison.named,
                when(abs_(RuleComparison.more) > 0, ", which should cost more by", ", which should cost the same"),
            ),
            "nothing that can be compared",
        ),
        source="the order beside another",
    )
    trucks = line(
        "Why so many trucks",
        "",
        when(
            Order.trucks > 0,
            "by capacity, loaded as evenly as the step of the plant allows",
            "nothing comes from the plant",
        ),
        source="truck capacity",
    )
    call = line(
        "What calling the balance does",
        "",
        when(
            Balance.saves > 0,
            "hold the last one and call the balance: it should save",
            when(Order.trucks.count > 1, "calling the balance would save nothing", "no balance to call"),
        ),
        source="balance call",
    )
    fiber = line(
        "Why so much fiber",
        "",
        when(
            Job.fiber.is_("none"),
            "no fiber on this job",
            joined(Job.fiber, ", by the yard, whole bags in each truck"),
        ),
        source="dose by the yard ordered",
    )
    loads = line(
        "Why so many loads",
        "",
        when(
            Hauler.payload > 0,
            joined(Choice.plan_name, ", on the ", Choice.vehicle_name, Choice.why),
            "not known: the house book gives no vehicle; the piles stand in yd3 and tons",
        ),
        source="haul plans",
    )
    curing = line("Why these packs of curing compound", "", _packs(Curing.need, CURING_PACKS), source="pack rule")
    bonding = line("Why these packs of bonding agent", "", _packs(Bonding.need, BONDING_PACKS), source="pack rule")
    sealer = line("Why these packs of sealer", "", _packs(Sealer.need, SEALER_PACKS), source="pack rule")
    other_curing = line("Other packs of curing compound", "", _other_packs(CURING_PACKS), source="pack rule")
    other_bonding = line("Other packs of bonding agent", "", _other_packs(BONDING_PACKS), source="pack rule")
    other_sealer = line("Other packs of sealer", "", _other_packs(SEALER_PACKS), source="pack rule")


@dataclass(frozen=True)
class Decision:
    """What was decided: what came of it, why in words, what comes next in words, and what that would cost more."""

    what: str
    came_to: Line
    why: Line
    beside: Line | None = None
    more: Line | None = None
    wordy: bool = False
    """Whether its words take two lines."""


DECISIONS = (
    Decision(
        "Concrete to order", Order.quantity, Decisions.order, Decisions.other_order, RuleComparison.more, wordy=True
    ),
    Decision("Trucks", Order.trucks, Decisions.trucks, Decisions.call, Balance.saves, wordy=True),
    Decision("Placing", Placing.name, PlacingWords.why, PlacingWords.next_way, RunnerUpMethod.more, wordy=True),
    Decision(
        "Loads, and how they leave", Hauled.loads, Decisions.loads, RunnerUp.words, RunnerUp.difference, wordy=True
    ),
    Decision("Fiber", FiberTotal.bags, Decisions.fiber),
    Decision("Curing compound", CURING_PACKS.cost, Decisions.curing, Decisions.other_curing, CURING_PACKS.next_more),
    Decision("Bonding agent", BONDING_PACKS.cost, Decisions.bonding, Decisions.other_bonding, BONDING_PACKS.next_more),
    Decision("Sealer", SEALER_PACKS.cost, Decisions.sealer, Decisions.other_sealer, SEALER_PACKS.next_more),
)
"""What was decided for the job, in the order in which it matters."""

ADDED = (
    ("Tax", BidPrice.tax),
    ("Contingency", BidPrice.contingency),
    ("Overhead", BidPrice.overhead),
    ("Margin and rounding", PriceSummary.margin),
)
"""What comes to the subtotals of the costs, and makes the price."""

FALLS_DUE = (PriceParts.deposit, PriceParts.poured, PriceParts.completed, PriceParts.held)
"""How the price falls due."""

KEY = (
    Slab.net_area,
    Concrete.in_place,
    Order.need,
    Order.chance,
    Order.left,
    Labor.days,
    Labor.hours,
    Pile.tons,
    BaseNeeds.buy,
    DowelNeeds.dowels,
    Matched.length,
)
"""What a foreman asks first. A line by area is shown for all of them."""
