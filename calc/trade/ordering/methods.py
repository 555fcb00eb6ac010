"""Placing methods: chute, wheelbarrow, pump, bags, each with its own order, placing time and trucks.

A truck that is unloaded slowly is charged for standby, and concrete that waits too long is rejected, so a method must
empty every truck in time. The cheapest method that fits is chosen, unless the job names another.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.placing import Access, BarrowWay
from calc.trade.inputs.pour import Ordering
from calc.trade.levels import METHOD, POURING
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.order_candidates import ONE_TRUCK, BestOrder, Risk, RuleOfThumb
from calc.trade.ordering.plant import ChosenMix

_SHEET = "Order and placing"
FROM_TRUCK, THROUGH_PUMP = exact(1), TWO
"""Row numbers of the ways of discharge."""


class OrderByRule(Section, title="Order quantity by discharge", each=POURING, sheet=_SHEET):
    """A pump needs more concrete than a chute, so each way of discharge has its own order."""

    by_rule = line(
        "Order by risk, or by percent without a mix price",
        "yd3",
        when(both(Ordering.rule.is_("risk"), ChosenMix.known > 0), BestOrder.order, RuleOfThumb.by_percent),
        source="risk rule; percent rule without a mix price, since the cost of a shortage is then not known",
    )
    by_fixed = line(
        "Fixed order, rounded up",
        "yd3",
        round_up(if_given(Ordering.fixed, 0), to=Risk.step),
        source="input, rounded up to the order increment",
    )
    quantity = line(
        "Order by discharge",
        "yd3",
        when(Ordering.rule.is_("fixed"), by_fixed, by_rule),
        source="by the order rule of the job",
    )


class PlacingRate(Section, title="Placing rates", sheet=_SHEET):
    """Yards per hour, with a crew that can place and screed at that rate."""

    chute = factor("Placing rate, chute", "yd3/h", 12, low=8, high=20, source="common practice, no source")
    pump = factor(
        "Placing rate, pump", "yd3/h", 14, low=8, high=25, source="common practice, no source: a small line pump"
    )
    filling = factor(
        "Wheelbarrow fill, dump and turn time",
        "min",
        1.1,
        low=0.75,
        high=2,
        source="common practice, no source; a cost handbook of 1908, from memory: 3/4 min",
    )
    walking = factor(
        "Wheelbarrow travel speed",
        "ft/min",
        150,
        low=100,
        high=200,
        source="common practice, no source; a cost handbook of 1908, partly seen in print: 200 both ways",
    )
    holds = factor(
        "Concrete per wheelbarrow",
        "ft3",
        2.75,
        low=2,
        high=4,
        source="common practice, no source; a cost handbook of 1908, partly seen in print: 3 on the level, 2 uphill",
    )
    busy = factor(
        "Wheelbarrow working time, share of the hour", "%", 80, low=50, high=100, source="common practice, no source"
    )
    hard = factor(
        "Rate on a muddy or steep route", "%", 70, low=50, high=100, source="common practice, no source: applied once"
    )
    steep = factor("Steep route, grade above", "%", 5, low=3, high=10, source="common practice, no source")
    least_time = factor("Minimum placing time", "h", 0.5, low=0.25, high=1, source="common practice, no source")

    trip = line(
        "Wheelbarrow cycle time",
        "min",
        filling + TWO * BarrowWay.feet / walking,
        source="fill, dump and turn time, plus both ways at travel speed",
    )
    on_the_way = line(
        "Route factor",
        "",
        when(either(Access.wet.is_("yes"), Access.slope > steep), hard / PERCENT, 1),
        source="reduced once if the route is muddy, steep or both",
    )
    barrow = line(
        "Placing rate, wheelbarrow",
        "yd3/h",
        when(trip > 0, Access.barrows * holds / FT3_PER_YD3 * MIN_PER_H / trip * busy / PERCENT * on_the_way, 0),
        source="wheelbarrows times volume times trips per hour times working time times route factor",
    )


class Method(Section, title="Placing methods", each=METHOD, sheet=_SHEET):
    """Each method with its own order: pump residue is added, bags are whole."""

    name = line("Method", "", row_word(METHOD), source="placing methods")
    bags = line("Method is bags", "", by_row(METHOD, 0, 0, 0, 1), source="1 for bags")
    piped = line("Method is pump", "", by_row(METHOD, 0, 0, 1, 0), source="1 for a pump")
    pouring = line(
        "Row of the discharge",
        "",
        by_row(METHOD, FROM_TRUCK, FROM_TRUCK, THROUGH_PUMP, FROM_TRUCK),
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
            Bags.bags * Bags.yields / FT3_PER_YD3,
        ),
        source="by the order rule; for bags, bags times yield",
    )
    pace = line(
        "Placing rate",
        "yd3/h",
        by_row(METHOD, PlacingRate.chute, PlacingRate.barrow, PlacingRate.pump, 0),
        source="by method; 0 for bags",
    )
    placed = line(
        "Placing time, from the rate",
        "h",
        when(pace > 0, largest(PlacingRate.least_time, order / pace), 0),
        source="order over placing rate, not below the minimum placing time",
    )
    hours = line(
        "Placing time",
        "h",
        by_row(METHOD, placed, placed, placed, Bags.hours),
        source="order over placing rate; for bags the mixing hours",
    )


class TruckSplit(Section, title="Trucks by placing method", each=METHOD, sheet=_SHEET):
    """The order split evenly by order increments; unloading allowance and standby per truck."""

    free_time = factor(
        "Unloading allowance per truck", "min/truck", 30, low=20, high=60, source="common practice, no source"
    )
    free_yard = factor(
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
            round_up(Method.order / Risk.truck_capacity),
            round_up(Method.order / Risk.truck_capacity),
            round_up(Method.order / Risk.truck_capacity),
            0,
        ),
        source="order over truck capacity, rounded up; none for bags",
    )
    steps = line("Order increments", "step", round_down(Method.order / Risk.step), source="order over order increment")
    even = line(
        "Increments per truck",
        "step",
        when(trucks > 0, round_down(steps.count / trucks.count), 0),
        source="order increments over trucks, rounded down",
    )
    odd = line(
        "Trucks with one extra increment",
        "truck",
        when(trucks > 0, steps.count - even.count * trucks.count, 0),
        source="order increments less the even split",
    )
    load = line(
        "Base load",
        "yd3/truck",
        even.count * Risk.step / ONE_TRUCK,
        source="increments per truck times order increment",
    )
    more = line(
        "Largest load",
        "yd3/truck",
        when(odd > 0, (even + 1).count * Risk.step / ONE_TRUCK, load),
        source="base load plus one increment, if the order does not split evenly",
    )
    unloaded = line(
        "Unloading time, base load",
        "min/truck",
        when(Method.pace > 0, load / Method.pace * MIN_PER_H, 0),
        source="load over placing rate",
    )
    longest = line(
        "Unloading time, largest load",
        "min/truck",
        when(Method.pace > 0, more / Method.pace * MIN_PER_H, 0),
        source="load over placing rate",
    )
    waits = line(
        "Truck standby, base load",
        "min/truck",
        largest(0, unloaded - largest(free_time, free_yard * load)),
        source="unloading time beyond the larger of the allowances per truck and per yard",
    )
    waits_most = line(
        "Truck standby, largest load",
        "min/truck",
        largest(0, longest - largest(free_time, free_yard * more)),
        source="unloading time beyond the allowance",
    )
    waiting = line(
        "Standby, all trucks",
        "min",
        (trucks - odd) * waits + odd * waits_most,
        source="trucks times standby of their load",
    )
