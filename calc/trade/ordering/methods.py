"""Ways of placing: by chute, by barrow, by pump, by bags. Each with its own order, its time and its cost.

A truck that is emptied late is charged for waiting, and concrete that waits too long in it is lost; so a way must
empty every truck in time. The cheapest of the ways that fit is taken, unless a person names another.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.placing import Access, WheelbarrowRoute
from calc.trade.inputs.pour import Ordering
from calc.trade.levels import METHOD, POURING
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.order_candidates import BestOrder, Risk, RuleOfThumb
from calc.trade.ordering.plant import ChosenMix
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


class OrderByRule(Section, title="Order by the rule of the job", each=POURING, sheet=_SHEET):
    """A pump wants more concrete than a chute, so each way of pouring has its order."""

    by_rule = line(
        "By risk, or by percent without a price",
        "yd3",
        when(both(Ordering.rule.is_("risk"), ChosenMix.known > 0), BestOrder.order, RuleOfThumb.by_percent),
        source="without a price for the mix nobody knows what a miss costs",
    )
    by_fixed = line(
        "As fixed",
        "yd3",
        round_up(if_given(Ordering.fixed, 0), to=Risk.step),
        source="typed, taken to the next step of the plant",
    )
    quantity = line(
        "Order of this way of pouring",
        "yd3",
        when(Ordering.rule.is_("fixed"), by_fixed, by_rule),
        source="the order rule of the job",
    )


class PlacingRate(Section, title="How fast it is placed", sheet=_SHEET):
    """Yards an hour, with the people who place and screed keeping up."""

    chute = factor("By chute", "yd3/h", 12, low=8, high=20, source="common practice, no source")
    pump = factor("By pump", "yd3/h", 14, low=8, high=25, source="common practice, no source: a small line pump")
    filling = factor(
        "Barrow filled, dumped and turned",
        "min",
        1.1,
        low=0.75,
        high=2,
        source="common practice, no source; a handbook of 1908, from memory: 3/4 min",
    )
    walking = factor(
        "Barrow walked",
        "ft/min",
        150,
        low=100,
        high=200,
        source="common practice, no source; a handbook of 1908, partly seen in print: 200 both ways",
    )
    holds = factor(
        "A barrow of concrete",
        "ft3",
        2.75,
        low=2,
        high=4,
        source="common practice, no source; a handbook of 1908, partly seen in print: 3 on the level, 2 on a slope",
    )
    busy = factor("Barrows on the move", "%", 80, low=50, high=100, source="common practice, no source: of each hour")
    hard = factor(
        "Pace on a wet or steep way", "%", 70, low=50, high=100, source="common practice, no source: once for both"
    )
    steep = factor("Steep for a barrow, above", "%", 5, low=3, high=10, source="common practice, no source")
    least_time = factor("Least time to place", "h", 0.5, low=0.25, high=1, source="common practice, no source")

    trip = line(
        "One trip of a barrow",
        "min",
        filling + TWO * WheelbarrowRoute.distance / walking,
        source="filled, dumped and turned, and the way there and back",
    )
    on_the_way = line(
        "Pace for the way",
        "",
        when(either(Access.muddy.is_("yes"), Access.grade > steep), hard / PERCENT, 1),
        source="less once, be it wet, steep or both",
    )
    barrow = line(
        "By barrow",
        "yd3/h",
        when(trip > 0, Access.wheelbarrows * holds / FT3_PER_YD3 * MIN_PER_H / trip * busy / PERCENT * on_the_way, 0),
        source="barrows, what one holds, trips an hour, and the share of the hour that they are on the move",
    )


class Method(Section, title="Ways of placing", each=METHOD, sheet=_SHEET):
    """Each way with its own order: a pump keeps some of it, bags are counted."""

    name = line("Way", "", row_word(METHOD), source="the four ways")
    bags = line("By bags", "", by_row(METHOD, 0, 0, 0, 1), source="1 for bags")
    piped = line("Through a pump", "", by_row(METHOD, 0, 0, 1, 0), source="1 for a pump")
    pouring = line(
        "Row of its pouring",
        "",
        by_row(METHOD, FROM_TRUCK, FROM_TRUCK, THROUGH_PUMP, FROM_TRUCK),
        source="chute and barrow take it from the truck",
    )
    order = line(
        "Its order",
        "yd3",
        by_row(
            METHOD,
            at(OrderByRule.quantity, FROM_TRUCK),
            at(OrderByRule.quantity, FROM_TRUCK),
            at(OrderByRule.quantity, THROUGH_PUMP),
            Bags.bags * Bags.yields / FT3_PER_YD3,
        ),
        source="by the order rule; for bags what they yield",
    )
    pace = line(
        "Its pace",
        "yd3/h",
        by_row(METHOD, PlacingRate.chute, PlacingRate.barrow, PlacingRate.pump, 0),
        source="0 for bags: they are mixed",
    )
    placed = line(
        "Order over pace",
        "h",
        when(pace > 0, largest(PlacingRate.least_time, order / pace), 0),
        source="half an hour at least",
    )
    hours = line(
        "Its hours",
        "h",
        by_row(METHOD, placed, placed, placed, Bags.hours),
        source="time to place; for bags the time to mix them",
    )


class TruckSplit(Section, title="Trucks of each way", each=METHOD, sheet=_SHEET):
    """The order split as evenly as the step of the plant allows; free time, and what goes beyond it, by the truck."""

    free_time = factor("Free time of a truck", "min/truck", 30, low=20, high=60, source="common practice, no source")
    free_yard = factor(
        "Free time for a yard",
        "min/yd3",
        6,
        low=4,
        high=10,
        source="common practice, no source; ready-mix practice, from memory: 5 to 10 min a yard",
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
        source="whole trucks, by capacity; none for bags",
    )
    steps = line("Steps", "step", whole_steps(Method.order, Risk.step), source="steps of the plant")
    even = line(
        "Steps on each truck",
        "step",
        when(trucks > 0, even_share(steps, trucks), 0),
        source="split evenly",
    )
    odd = line(
        "Trucks with one more",
        "truck",
        when(trucks > 0, with_one_more(steps, even, trucks), 0),
        source="what does not split evenly",
    )
    load = line("Load of a truck", "yd3/truck", truck_load(even, Risk.step), source="its steps")
    more = line(
        "Load of the fullest truck",
        "yd3/truck",
        when(odd > 0, truck_load(even + ONE_STEP, Risk.step), load),
        source="one step more, where it does not split evenly",
    )
    unloaded = line(
        "Unloading a truck",
        "min/truck",
        when(Method.pace > 0, load / Method.pace * MIN_PER_H, 0),
        source="load over pace",
    )
    longest = line(
        "Unloading the fullest truck",
        "min/truck",
        when(Method.pace > 0, more / Method.pace * MIN_PER_H, 0),
        source="load over pace",
    )
    waits = line(
        "Waiting of a truck",
        "min/truck",
        standby(unloaded, free_minutes(free_time, free_yard, load)),
        source="beyond its free time: by the truck or by its yards, whichever is more",
    )
    waits_most = line(
        "Waiting of the fullest truck",
        "min/truck",
        standby(longest, free_minutes(free_time, free_yard, more)),
        source="beyond its free time",
    )
    waiting = line(
        "Waiting of all trucks", "min", (trucks - odd) * waits + odd * waits_most, source="by the load of each truck"
    )
