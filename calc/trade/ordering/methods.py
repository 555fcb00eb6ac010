"""Ways of placing: by chute, by barrow, by pump, by bags. Each with its own order, its time and its cost.

A truck that is emptied late is charged for waiting, and concrete that waits too long in it is lost; so a way must
empty every truck in time. The cheapest of the ways that fit is taken, unless a person names another.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.pour import Ordering
from calc.trade.levels import METHOD, POURING
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.order_candidates import BestOrder, OtherOrderRules, Risk, Shortage
from calc.trade.ordering.placing_rates import PlacingRate
from calc.trade.ordering.plant import ChosenMix
from calc.trade.ordering.shortfall import expected_shortfall, risk_short, std_devs_above
from calc.trade.ordering.trucks import (
    ONE_STEP,
    even_share,
    free_minutes,
    standby,
    truck_load,
    whole_steps,
    whole_trucks,
    with_one_more,
)

_SHEET = "Order and placing"
FROM_TRUCK, THROUGH_PUMP = exact(1), TWO
"""The rows of the ways of pouring."""


class OrderByRule(Section, title="Order quantity by discharge", each=POURING, sheet=_SHEET):
    """A pump needs more concrete than a chute, so each way of discharge has its own order."""

    by_rule = line(
        "Order by risk, or by percent without a mix price",
        "yd3",
        when(both(Ordering.rule.is_("risk"), ChosenMix.known > 0), BestOrder.order, OtherOrderRules.by_percent),
        source="risk rule; percent rule without a mix price, since the cost of a shortage is then not known",
    )
    by_fixed = line(
        "Fixed order, whole increments",
        "yd3",
        largest(Risk.least, round_up(if_given(Ordering.fixed, 0), to=Risk.increment)),
        source="input, rounded up to the order increment, not below the least order",
    )
    quantity = line(
        "Order by discharge",
        "yd3",
        when(Ordering.rule.is_("fixed"), by_fixed, by_rule),
        source="by the order rule of the job",
    )
    overage = line("Overage by discharge", "yd3", quantity - Shortage.required, source="order less required volume")
    z_score = line(
        "Standard deviations above, by discharge", "", std_devs_above(overage), source="overage over standard deviation"
    )
    risk = line(
        "Risk of running short, by discharge",
        "",
        risk_short(overage, z_score),
        source="statistics: normal distribution",
    )
    surplus = line(
        "Expected surplus by discharge",
        "yd3",
        overage + expected_shortfall(overage, z_score, risk, normal_pdf(z_score)),
        source="overage plus expected shortfall",
    )


class Method(Section, title="Placing methods", each=METHOD, sheet=_SHEET):
    """Each method with its own order: pump residue is added, bags are whole."""

    name = line("Method", "", row_word(METHOD), source="placing methods")
    is_bags = fixed("Method is bags", METHOD, 0, 0, 0, 1, source="1 for bags")
    is_pump = fixed("Method is pump", METHOD, 0, 0, 1, 0, source="1 for a pump")
    discharge = fixed(
        "Row of the discharge",
        METHOD,
        FROM_TRUCK,
        FROM_TRUCK,
        THROUGH_PUMP,
        FROM_TRUCK,
        source="chute and wheelbarrow discharge from the truck",
    )
    order = line(
        "Order",
        "yd3",
        by_row(
            METHOD,
            at(OrderByRule.quantity, FROM_TRUCK),
            at(OrderByRule.quantity, FROM_TRUCK),
            at(OrderByRule.quantity, THROUGH_PUMP),
            Bags.bags * Bags.bag_yield / FT3_PER_YD3,
        ),
        source="by the order rule; for bags, bags times yield",
    )
    rate = line(
        "Placing rate",
        "yd3/h",
        by_row(METHOD, PlacingRate.chute, PlacingRate.wheelbarrow, PlacingRate.pump, 0),
        source="by method; 0 for bags",
    )
    time_from_rate = line(
        "Placing time, from the rate",
        "h",
        when(rate > 0, largest(PlacingRate.min_time, order / rate), 0),
        source="order over placing rate, not below the minimum placing time",
    )
    hours = line(
        "Placing time",
        "h",
        by_row(METHOD, time_from_rate, time_from_rate, time_from_rate, Bags.hours),
        source="order over placing rate; for bags the mixing hours",
    )


class TruckSplit(Section, title="Trucks by placing method", each=METHOD, sheet=_SHEET):
    """The order split evenly by order increments; unloading allowance and standby per truck."""

    allowance_per_truck = factor(
        "Unloading allowance per truck", "min/truck", 30, low=20, high=60, source="common practice, no source"
    )
    allowance_per_yard = factor(
        "Unloading allowance per yard",
        "min/yd3",
        6,
        low=4,
        high=10,
        source="common practice, no source; ready-mix practice, from memory: 5 to 10 min/yd3",
    )

    trucks = line(
        "Trucks",
        "truck",
        by_row(
            METHOD,
            whole_trucks(Method.order, Risk.truck_capacity),
            whole_trucks(Method.order, Risk.truck_capacity),
            whole_trucks(Method.order, Risk.truck_capacity),
            0,
        ),
        source="order over truck capacity, rounded up; none for bags",
    )
    increments = line(
        "Order increments", "step", whole_steps(Method.order, Risk.increment), source="order over order increment"
    )
    increments_per_truck = line(
        "Increments per truck",
        "step",
        when(trucks > 0, even_share(increments, trucks), 0),
        source="order increments over trucks, rounded down",
    )
    extra_trucks = line(
        "Trucks with one extra increment",
        "truck",
        when(trucks > 0, with_one_more(increments, increments_per_truck, trucks), 0),
        source="order increments less the even split",
    )
    base_load = line(
        "Base load",
        "yd3/truck",
        truck_load(increments_per_truck, Risk.increment),
        source="increments per truck times order increment",
    )
    largest_load = line(
        "Largest load",
        "yd3/truck",
        when(extra_trucks > 0, truck_load(increments_per_truck + ONE_STEP, Risk.increment), base_load),
        source="base load plus one increment, if the order does not split evenly",
    )
    base_unloading = line(
        "Unloading time, base load",
        "min/truck",
        when(Method.rate > 0, base_load / Method.rate * MIN_PER_H, 0),
        source="load over placing rate",
    )
    longest_unloading = line(
        "Unloading time, largest load",
        "min/truck",
        when(Method.rate > 0, largest_load / Method.rate * MIN_PER_H, 0),
        source="load over placing rate",
    )
    base_standby = line(
        "Truck standby, base load",
        "min/truck",
        standby(base_unloading, free_minutes(allowance_per_truck, allowance_per_yard, base_load)),
        source="unloading time beyond the larger of the allowances per truck and per yard",
    )
    longest_standby = line(
        "Truck standby, largest load",
        "min/truck",
        standby(longest_unloading, free_minutes(allowance_per_truck, allowance_per_yard, largest_load)),
        source="unloading time beyond the allowance",
    )
    standby = line(
        "Standby, all trucks",
        "min",
        (trucks - extra_trucks) * base_standby + extra_trucks * longest_standby,
        source="trucks times standby of their load",
    )
