"""The front page: what is ordered and bought, what was decided, and why."""

from __future__ import annotations

from calc.declare import Paper, Section, count_of, joined, line, when
from calc.trade.base import BaseNeeds
from calc.trade.concrete import Concrete
from calc.trade.dowels import DowelNeeds
from calc.trade.fiber import FiberTotal
from calc.trade.geometry import Slab
from calc.trade.haul import Choice, RunnerUp
from calc.trade.haul_piles import Pile
from calc.trade.hauled import Hauled, Hauler
from calc.trade.inputs import Company, Job
from calc.trade.joints import JointNeeds, Matched
from calc.trade.order import Order
from calc.trade.pour_inputs import Ordering
from calc.trade.surface import CURING_PACKS, Bonding, Curing


class Decisions(Section, title="What was decided, and why", sheet="Bid"):
    """In words, from the live numbers."""

    order = line(
        "Why this order",
        "",
        when(
            Order.quantity.is_forced,
            "forced by hand; see Measured for the reason",
            when(
                Ordering.rule.is_("fixed"),
                "fixed for this job, taken to the next step of the plant",
                Order.rule,
            ),
        ),
        source="order rule",
    )
    trucks = line(
        "Why so many trucks",
        "",
        joined("by capacity, ", Order.trucks, " truck(s), loaded as evenly as the step of the plant allows"),
        source="truck capacity",
    )
    fiber = line(
        "Why so much fiber",
        "",
        when(
            Job.fiber.is_("none"),
            "no fiber on this job",
            joined(Job.fiber, " fiber, dosed by the yard ordered, whole bags in each of ", Order.trucks, " truck(s)"),
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
    curing = line(
        "Why these packs",
        "",
        when(
            CURING_PACKS.can_win > 0,
            joined(
                CURING_PACKS.way,
                ": the cheapest of ",
                count_of(CURING_PACKS.can_win, "each"),
                " way(s) that have a price",
            ),
            "not chosen: the house book gives no price and size of a pack",
        ),
        source="pack rule",
    )


BID = Paper(
    "Bid",
    ("Firm", (Company.name, Company.address, Company.phone, Company.licence)),
    ("Job", (Job.client, Job.address, Job.bid_date, Job.pour_date)),
    (
        "Key quantities",
        (
            Slab.net_area,
            Concrete.in_place,
            Order.need,
            Order.spare,
            Pile.loose,
            Pile.tons,
            BaseNeeds.buy,
            DowelNeeds.dowels,
            Matched.length,
            JointNeeds.isolation,
            Bonding.need,
            Curing.need,
        ),
    ),
    (
        "What was decided, and why",
        (
            (Order.quantity, Decisions.order),
            (Order.trucks, Decisions.trucks),
            (FiberTotal.bags, Decisions.fiber),
            (Hauled.loads, Decisions.loads),
            (Choice.cost, RunnerUp.words),
            (CURING_PACKS.small, Decisions.curing),
            CURING_PACKS.large,
            CURING_PACKS.cost,
        ),
    ),
)
