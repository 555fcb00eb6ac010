"""Order sizes tried: for each, its plant charges, its risk of running short and its expected surplus.

A shortage of any size costs a lump sum: another truck, crew standby, a cold joint. A surplus
costs by the yard. The order with the lowest expected cost is chosen, every plant fee included.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import POURING, RUNG
from calc.trade.ordering.plant import DischargePrice, PlantCharges, ShortLoadTier
from calc.trade.ordering.shortfall import chance_short, density, expected_short, spreads_off
from calc.trade.prices.wage_rates import CrewRate
from calc.trade.takeoff.concrete import Concrete
from calc.trade.takeoff.uncertainty import VolumeSpread

_SHEET = "Order and placing"
ONE_TRUCK = exact(1, "truck")


class Risk(Section, title="Cost of shortage and surplus", sheet=_SHEET):
    """A lump sum for running short, a price per yard for surplus concrete."""

    loss = factor(
        "Waste factor",
        "%",
        3,
        low=2,
        high=5,
        source="spill, drum residue, form bulge, settling: two estimating textbooks, as quoted, 3 on ground, 5 "
        "in foundations; NRMCA CIP 8 (Concrete Yield), seen in print, about 2 for hardening alone",
    )
    prime = factor(
        "Pump and hose residue", "yd3", 0.2, low=0.1, high=0.3, source="common practice, no source: hose and hopper"
    )
    step = factor(
        "Order increment",
        "yd3",
        0.25,
        low=0.25,
        high=1,
        source="common practice, from memory: plants sell by the quarter or half yard",
    )
    truck_capacity = factor(
        "Truck capacity",
        "yd3/truck",
        9,
        low=6,
        high=11,
        source="common practice, no source: a full-size ready-mix truck",
    )
    wait = factor("Wait for a second truck", "h", 1.25, low=0.75, high=3, source="common practice, no source")
    repair = factor("Cold joint repair", "$", 250, low=0, high=1000, source="common practice, no source: an allowance")
    left_over = factor(
        "Surplus concrete, disposal per yard",
        "$/yd3",
        65,
        low=0,
        high=150,
        source="common practice, no source: plant charge for returned concrete, or cost of disposal",
    )
    reach = factor(
        "Standard deviations covered by the sizes tried",
        "",
        4,
        low=3,
        high=6,
        source="company policy: short once in 30,000",
    )
    more = factor(
        "Extra yards tried", "yd3", 1, low=0.5, high=3, source="company policy: past the next short-load tier"
    )

    second_truck = line(
        "Fees of a second truck",
        "$",
        ONE_TRUCK
        * (
            lookup_at_or_below(ShortLoadTier.fee, ShortLoadTier.start, rounded(PlantCharges.least_order / ONE_TRUCK, 3))
            + PlantCharges.delivery
        ),
        source="short-load fee of the minimum order, plus delivery",
    )
    waiting = line(
        "Crew standby",
        "$",
        CrewRate.people.count * wait * CrewRate.mix,
        source="pour crew times wait at the composite crew rate",
    )


class Shortage(Section, title="Required volume and cost of shortage", each=POURING, sheet=_SHEET):
    """A pump keeps some concrete in the line, and needs a more expensive mix."""

    prime = line("Pump residue", "yd3", by_row(POURING, 0, Risk.prime), source="with a pump only")
    need = line(
        "Required volume",
        "yd3",
        total(Concrete.in_place) * (1 + Risk.loss / PERCENT) + prime,
        source="net concrete volume plus waste, applied once, plus pump residue",
    )
    lump = line(
        "Cost of running short",
        "$",
        Risk.second_truck + PlantCharges.least_order * DischargePrice.yard + Risk.waiting + Risk.repair,
        source="second truck with the minimum order, crew standby and cold joint repair",
    )
    yard = line(
        "Cost of a surplus yard",
        "$/yd3",
        DischargePrice.yard + Risk.left_over,
        source="price per yard plus disposal",
    )
    first = line(
        "Smallest order tried",
        "yd3",
        largest(Risk.step, round_up(need, to=Risk.step) - TWO * Risk.step),
        source="two increments below the required volume, at least one increment",
    )
    rungs = line(
        "Order sizes needed",
        "",
        round_up((need + Risk.reach * VolumeSpread.all_of_it + Risk.more - first) / Risk.step) + 1,
        source="up to the standard deviations covered and the extra yards",
    )


class OrderCandidate(Section, title="Order sizes tried", each=RUNG, sheet=_SHEET, slots_for=Shortage.rungs):
    """One row per order size. Probabilities are from the normal distribution."""

    order = line(
        "Order",
        "yd3",
        Shortage.first + (row_number(RUNG, POURING) - 1) * Risk.step,
        source="one increment more than the previous row",
    )
    off = line(
        "Standard deviations above the required volume",
        "",
        spreads_off(order - Shortage.need),
        source="order less required volume, over the standard deviation",
    )
    chance = line(
        "Risk of running short",
        "",
        chance_short(order - Shortage.need, off),
        source="statistics: upper tail of the normal distribution",
    )
    height = line("Normal density", "", density(off), source="statistics: normal distribution")
    short = line(
        "Expected shortfall",
        "yd3",
        expected_short(order - Shortage.need, off, chance, height),
        source="statistics: normal loss function, expected requirement above the order",
    )
    left = line(
        "Expected surplus", "yd3", order - Shortage.need + short, source="order less required volume, plus shortfall"
    )
    trucks = line(
        "Trucks", "truck", round_up(order / Risk.truck_capacity), source="order over truck capacity, rounded up"
    )
    steps = line("Order increments", "step", round_down(order / Risk.step), source="order over order increment")
    even = line(
        "Increments per truck",
        "step",
        round_down(steps.count / trucks.count),
        source="order increments over trucks, rounded down",
    )
    odd = line(
        "Trucks with one extra increment",
        "truck",
        steps.count - even.count * trucks.count,
        source="order increments less the even split",
    )
    fees = line(
        "Short-load fees",
        "$",
        odd
        * lookup_at_or_below(
            ShortLoadTier.fee, ShortLoadTier.start, rounded((even + 1).count * Risk.step / ONE_TRUCK, 3)
        )
        + (trucks - odd)
        * lookup_at_or_below(ShortLoadTier.fee, ShortLoadTier.start, rounded(even.count * Risk.step / ONE_TRUCK, 3)),
        source="by the load of each truck, from the fee table",
    )
    charge = line(
        "Plant charges",
        "$",
        money(largest(order, PlantCharges.least_order) * DischargePrice.yard)
        + money(fees + trucks * PlantCharges.delivery),
        source="yards, not below the minimum order, plus fees and delivery per truck",
    )
    expected = line(
        "Expected cost",
        "$",
        money(charge + Risk.left_over * left + Shortage.lump * chance),
        source="plant charges, plus disposal of surplus, plus risk times cost of running short",
    )


class BestOrder(Section, title="Cheapest order size", each=POURING, sheet=_SHEET):
    """The lowest expected cost, first row on a tie."""

    place = line(
        "Row of the cheapest order",
        "",
        argmin(OrderCandidate.expected, POURING),
        source="lowest cost, first row on a tie",
    )
    order = line("Order by risk", "yd3", at(OrderCandidate.order, place, of=POURING), source="looked up by row")
    chance = line(
        "Risk of running short, cheapest order",
        "",
        at(OrderCandidate.chance, place, of=POURING),
        source="looked up by row",
    )
    short = line(
        "Expected shortfall, cheapest order",
        "yd3",
        at(OrderCandidate.short, place, of=POURING),
        source="looked up by row",
    )
    left = line(
        "Expected surplus, cheapest order", "yd3", at(OrderCandidate.left, place, of=POURING), source="looked up by row"
    )
    charge = line(
        "Plant charges, cheapest order", "$", at(OrderCandidate.charge, place, of=POURING), source="looked up by row"
    )
    expected = line(
        "Expected cost, cheapest order", "$", at(OrderCandidate.expected, place, of=POURING), source="looked up by row"
    )


class RuleOfThumb(Section, title="Other order rules", each=POURING, sheet=_SHEET):
    """For comparison: the order by a closed-form rule and by the percent rule."""

    allowance = factor(
        "Percent rule allowance",
        "%",
        8,
        low=4,
        high=10,
        source="NRMCA CIP 8 (Concrete Yield), from memory: order 4 to 10 % over the plan dimensions",
    )

    even_odds = line(
        "Shortage cost ratio",
        "",
        when(
            both(VolumeSpread.all_of_it > 0, Shortage.yard > 0),
            Shortage.lump / (Shortage.yard * VolumeSpread.all_of_it * square_root(TWO * PI)),
            0,
        ),
        source="cost of a shortage over cost of one standard deviation of surplus, times the root of 2 pi",
    )
    lump_off = line(
        "Standard deviations above, closed-form rule",
        "",
        when(even_odds > 1, square_root(TWO * logarithm(even_odds)), 0),
        source="calculus: where one more yard costs what it saves, plant fees left out",
    )
    lump_order = line(
        "Order by the closed-form rule",
        "yd3",
        Shortage.need + lump_off * VolumeSpread.all_of_it,
        source="required volume plus standard deviations",
    )
    by_percent = line(
        "Order by the percent rule",
        "yd3",
        round_up(total(Concrete.in_place) * (1 + allowance / PERCENT) + Shortage.prime, to=Risk.step),
        source="company policy: net volume plus allowance plus pump residue, rounded up once",
    )
    percent_off = line(
        "Percent rule: standard deviations above",
        "",
        spreads_off(by_percent - Shortage.need),
        source="order less required volume, over the standard deviation",
    )
    percent_chance = line(
        "Percent rule: risk of running short",
        "",
        chance_short(by_percent - Shortage.need, percent_off),
        source="statistics: normal distribution",
    )
    percent_short = line(
        "Percent rule: expected shortfall",
        "yd3",
        expected_short(by_percent - Shortage.need, percent_off, percent_chance, density(percent_off)),
        source="as for the order sizes tried",
    )
    percent_left = line(
        "Percent rule: expected surplus",
        "yd3",
        by_percent - Shortage.need + percent_short,
        source="as for the order sizes tried",
    )
    percent_risks = line(
        "Percent rule: expected cost of shortage and surplus",
        "$",
        money(Shortage.lump * percent_chance + Risk.left_over * percent_left),
        source="risk times cost of running short, plus expected surplus times disposal",
    )
