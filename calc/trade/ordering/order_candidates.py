"""The ladder of orders: for each order what it costs, what running short would cost, and what would be left over.

Running short costs a lump, whatever is lacking: another truck, a crew that waits, a joint where none should be. What
is left over costs by the yard. The order with the least expected cost is taken, with every fee of the plant in it.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import ORDER_SIZE, POURING
from calc.trade.ordering.plant import DischargePrice, PlantCharges
from calc.trade.ordering.shortfall import chance_short, density, expected_short, spreads_off
from calc.trade.ordering.trucks import (
    ONE_STEP,
    ONE_TRUCK,
    even_share,
    plant_charge,
    short_load_fee,
    split_fees,
    truck_load,
    whole_steps,
    whole_trucks,
    with_one_more,
)
from calc.trade.prices.wage_rates import CrewRate
from calc.trade.takeoff.concrete import Concrete
from calc.trade.takeoff.uncertainty import VolumeSpread

_SHEET = "Order and placing"


class Risk(Section, title="What a miss costs", sheet=_SHEET):
    """A lump for running short, a price by the yard for what is left over."""

    loss = factor(
        "Loss",
        "%",
        3,
        low=2,
        high=5,
        source="spill, drum residue, spread of forms, hardening: two estimating textbooks, as quoted, 3 on ground, 5 "
        "in foundations; NRMCA CIP 8, seen in print, about 2 on hardening alone",
    )
    prime = factor(
        "Left in the pump", "yd3", 0.2, low=0.1, high=0.3, source="common practice, no source: hose and hopper"
    )
    step = factor(
        "Step of the plant",
        "yd3",
        0.25,
        low=0.25,
        high=1,
        source="common practice, from memory: plants sell by the quarter or half yard",
    )
    truck_capacity = factor(
        "Truck capacity", "yd3/truck", 9, low=6, high=11, source="common practice, no source: a full ready-mix truck"
    )
    wait = factor("Crew waits for a second truck", "h", 1.25, low=0.75, high=3, source="common practice, no source")
    repair = factor(
        "Repair of a cold joint", "$", 250, low=0, high=1000, source="common practice, no source: an allowance"
    )
    left_over = factor(
        "A yard left over",
        "$/yd3",
        65,
        low=0,
        high=150,
        source="common practice, no source: what the plant takes for concrete it takes back, or a place for it",
    )
    reach = factor(
        "Spreads that the ladder reaches", "", 4, low=3, high=6, source="house rule: short once in 30,000 pours"
    )
    more = factor("Yards beyond that", "yd3", 1, low=0.5, high=3, source="house rule: past the next fee")

    second_truck = line(
        "A second truck with the least order, its fees",
        "$",
        short_load_fee(ONE_TRUCK, PlantCharges.least_order / ONE_TRUCK) + ONE_TRUCK * PlantCharges.delivery,
        source="fee of the short load, and delivery",
    )
    waiting = line(
        "The crew waits", "$", CrewRate.people.count * wait * CrewRate.mix, source="people on the pour at crew mix"
    )


class Shortage(Section, title="Need and miss", each=POURING, sheet=_SHEET):
    """A pump keeps some of the concrete, and wants a dearer mix."""

    prime = line("Left in the pump", "yd3", by_row(POURING, 0, Risk.prime), source="with a pump only")
    need = line(
        "Expected need",
        "yd3",
        total(Concrete.in_place) * (1 + Risk.loss / PERCENT) + prime,
        source="in place and the loss that always happens, once; and what the pump keeps",
    )
    lump = line(
        "Running short costs",
        "$",
        Risk.second_truck + PlantCharges.least_order * DischargePrice.yard + Risk.waiting + Risk.repair,
        source="a second truck with the least order, the crew that waits, the repair",
    )
    yard = line(
        "A yard too much costs",
        "$/yd3",
        DischargePrice.yard + Risk.left_over,
        source="its price, and getting rid of it",
    )
    first = line(
        "First rung",
        "yd3",
        largest(Risk.step, round_up(need, to=Risk.step) - TWO * Risk.step),
        source="two steps below the need, one step at least",
    )
    rungs = line(
        "Rungs needed",
        "",
        round_up((need + Risk.reach * VolumeSpread.all_of_it + Risk.more - first) / Risk.step) + 1,
        source="up to the reach of the ladder",
    )


class OrderCandidate(Section, title="Ladder of orders", each=ORDER_SIZE, sheet=_SHEET, slots_for=Shortage.rungs):
    """A row for each order that is tried. Chances go by the normal distribution."""

    order = line(
        "Order",
        "yd3",
        Shortage.first + (row_number(ORDER_SIZE, POURING) - 1) * Risk.step,
        source="a step of the plant more than the rung before",
    )
    off = line(
        "Spreads above the need",
        "",
        spreads_off(order - Shortage.need),
        source="order less need, in spreads",
    )
    chance = line(
        "Chance of running short",
        "",
        chance_short(order - Shortage.need, off),
        source="normal distribution, from above so that small chances keep their digits",
    )
    height = line("Density there", "", density(off), source="normal distribution")
    short = line(
        "Expected short",
        "yd3",
        expected_short(order - Shortage.need, off, chance, height),
        source="statistics: expected excess of a normal need over the order",
    )
    left = line("Expected left over", "yd3", order - Shortage.need + short, source="order less need, and what is short")
    trucks = line("Trucks", "truck", whole_trucks(order, Risk.truck_capacity), source="whole trucks, by capacity")
    steps = line("Steps", "step", whole_steps(order, Risk.step), source="steps of the plant")
    even = line(
        "Steps on each truck",
        "step",
        even_share(steps, trucks),
        source="split evenly",
    )
    odd = line(
        "Trucks with one more",
        "truck",
        with_one_more(steps, even, trucks),
        source="what does not split evenly",
    )
    fees = line(
        "Short-load fees",
        "$",
        split_fees(trucks, truck_load(even, Risk.step), odd, truck_load(even + ONE_STEP, Risk.step)),
        source="by the load of each truck",
    )
    charge = line(
        "Plant charges",
        "$",
        plant_charge(order, DischargePrice.yard, fees, trucks),
        source="the yards, the least order at least; fees and delivery by the truck",
    )
    expected = line(
        "Expected cost",
        "$",
        money(charge + Risk.left_over * left + Shortage.lump * chance),
        source="the charge, what is left over, and the chance of running short",
    )


class BestOrder(Section, title="The best rung", each=POURING, sheet=_SHEET):
    """The least expected cost, the first row of equals."""

    place = line(
        "Its place on the ladder", "", argmin(OrderCandidate.expected, POURING), source="least, first row wins"
    )
    order = line("Order by risk", "yd3", at(OrderCandidate.order, place, of=POURING), source="of that rung")
    chance = line(
        "Its chance of running short", "", at(OrderCandidate.chance, place, of=POURING), source="of that rung"
    )
    short = line(
        "It runs short by", "yd3", at(OrderCandidate.short, place, of=POURING), source="of that rung, expected"
    )
    left = line("It leaves over", "yd3", at(OrderCandidate.left, place, of=POURING), source="of that rung, expected")
    charge = line("The plant charges for it", "$", at(OrderCandidate.charge, place, of=POURING), source="of that rung")
    expected = line("Its expected cost", "$", at(OrderCandidate.expected, place, of=POURING), source="of that rung")


class RuleOfThumb(Section, title="By other rules", each=POURING, sheet=_SHEET):
    """Beside the ladder: what a short formula, a rule of trade and topping up from bags would say."""

    allowance = factor(
        "Allowance of the percent rule",
        "%",
        8,
        low=4,
        high=10,
        source="NRMCA CIP 8, from memory: order 4 to 10 % over the plan dimensions",
    )

    even_odds = line(
        "Lump over what a spread left over costs",
        "",
        when(
            both(VolumeSpread.all_of_it > 0, Shortage.yard > 0),
            Shortage.lump / (Shortage.yard * VolumeSpread.all_of_it * square_root(TWO * PI)),
            0,
        ),
        source="the two costs at the middle of the normal distribution",
    )
    lump_off = line(
        "Spreads above the need, by the quick formula",
        "",
        when(even_odds > 1, square_root(TWO * logarithm(even_odds)), 0),
        source="calculus: where one yard more costs what it saves, fees left aside",
    )
    lump_order = line(
        "Order by the quick formula",
        "yd3",
        Shortage.need + lump_off * VolumeSpread.all_of_it,
        source="need and spreads",
    )
    by_percent = line(
        "Order by the percent rule",
        "yd3",
        round_up(total(Concrete.in_place) * (1 + allowance / PERCENT) + Shortage.prime, to=Risk.step),
        source="house rule: add the allowance, then round up once",
    )
    percent_off = line(
        "Spreads above the need, by the percent rule",
        "",
        spreads_off(by_percent - Shortage.need),
        source="order less need, in spreads",
    )
    percent_chance = line(
        "Percent rule: chance of running short",
        "",
        chance_short(by_percent - Shortage.need, percent_off),
        source="normal distribution",
    )
    percent_short = line(
        "Percent rule: expected short",
        "yd3",
        expected_short(by_percent - Shortage.need, percent_off, percent_chance, density(percent_off)),
        source="as on the ladder",
    )
    percent_left = line(
        "Percent rule: expected left over",
        "yd3",
        by_percent - Shortage.need + percent_short,
        source="as on the ladder",
    )
    percent_risks = line(
        "Percent rule: the miss costs",
        "$",
        money(Shortage.lump * percent_chance + Risk.left_over * percent_left),
        source="expected, beside what the plant charges",
    )
