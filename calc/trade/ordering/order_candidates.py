"""The ladder of orders: for each order what it costs, what running short would cost, and what would be left over.

Running short costs a lump, whatever is lacking: another truck, a crew that waits, a joint where none should be. What
is left over costs by the yard. The order with the least expected cost is taken, with every fee of the plant in it.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import ORDER_SIZE, POURING
from calc.trade.ordering.plant import DischargePrice, PlantCharges
from calc.trade.ordering.shortfall import expected_shortfall, risk_short, std_devs_above
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
from calc.trade.takeoff.uncertainty import VolumeUncertainty

_SHEET = "Order and placing"


class Risk(Section, title="Cost of shortage and surplus", sheet=_SHEET):
    """A lump sum for running short, a price per yard for surplus concrete."""

    waste = factor(
        "Waste factor",
        "%",
        3,
        low=2,
        high=5,
        source="spill, drum residue, form bulge, settling: two estimating textbooks, as quoted, 3 on ground, "
        "5 in foundations; NRMCA CIP 8 (Concrete Yield), seen in print, about 2 for hardening alone",
    )
    pump_residue = factor(
        "Pump and hose residue", "yd3", 0.2, low=0.1, high=0.3, source="common practice, no source: hose and hopper"
    )
    increment = factor(
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
    second_truck_wait = factor(
        "Wait for a second truck", "h", 1.25, low=0.75, high=3, source="common practice, no source"
    )
    cold_joint_repair = factor(
        "Cold joint repair", "$", 250, low=0, high=1000, source="common practice, no source: an allowance"
    )
    surplus_disposal = factor(
        "Surplus concrete, disposal per yard",
        "$/yd3",
        65,
        low=0,
        high=150,
        source="common practice, no source: plant charge for returned concrete, or cost of disposal",
    )
    std_devs_tried = factor(
        "Standard deviations covered by the sizes tried",
        "",
        4,
        low=3,
        high=6,
        source="company policy: short once in 30,000",
    )
    extra_yards = factor(
        "Extra yards tried", "yd3", 1, low=0.5, high=3, source="company policy: past the next short-load tier"
    )

    least = line(
        "Least order",
        "yd3",
        round_up(PlantCharges.least_order, to=increment),
        source="minimum order, rounded up to the order increment",
    )
    second_truck_fees = line(
        "Fees of a second truck",
        "$",
        short_load_fee(ONE_TRUCK, PlantCharges.least_order / ONE_TRUCK) + ONE_TRUCK * PlantCharges.by_load,
        source="short-load fee of the minimum order, plus delivery and added fees of a truck",
    )
    crew_standby = line(
        "Crew standby",
        "$",
        CrewRate.people.count * second_truck_wait * CrewRate.composite,
        source="pour crew times wait at the composite crew rate",
    )


class Shortage(Section, title="Required volume and cost of shortage", each=POURING, sheet=_SHEET):
    """A pump keeps some concrete in the line, and needs a more expensive mix."""

    pump_residue = line("Pump residue", "yd3", by_row(POURING, 0, Risk.pump_residue), source="with a pump only")
    required = line(
        "Required volume",
        "yd3",
        total(Concrete.in_place) * (1 + Risk.waste / PERCENT) + pump_residue,
        source="net concrete volume plus waste, applied once, plus pump residue",
    )
    shortage_cost = line(
        "Cost of running short",
        "$",
        Risk.second_truck_fees
        + PlantCharges.least_order * DischargePrice.yard
        + Risk.crew_standby
        + Risk.cold_joint_repair,
        source="second truck with the minimum order, crew standby and cold joint repair",
    )
    surplus_cost = line(
        "Cost of a surplus yard",
        "$/yd3",
        DischargePrice.yard + Risk.surplus_disposal,
        source="price per yard plus disposal",
    )
    smallest_order = line(
        "Smallest order tried",
        "yd3",
        largest(Risk.least, round_up(required, to=Risk.increment) - TWO * Risk.increment),
        source="two increments below the required volume, not below the least order",
    )
    sizes = line(
        "Order sizes needed",
        "",
        round_up(
            (required + Risk.std_devs_tried * VolumeUncertainty.std_dev + Risk.extra_yards - smallest_order)
            / Risk.increment
        )
        + 1,
        source="up to the standard deviations covered and the extra yards",
    )


class OrderCandidate(Section, title="Order sizes tried", each=ORDER_SIZE, sheet=_SHEET, slots_for=Shortage.sizes):
    """One row per order size. Probabilities are from the normal distribution."""

    order = line(
        "Order",
        "yd3",
        Shortage.smallest_order + (smallest(row_number(ORDER_SIZE, POURING), Shortage.sizes) - 1) * Risk.increment,
        source="one increment more than the previous row; the rows beyond the sizes needed repeat the largest",
    )
    z_score = line(
        "Standard deviations above the required volume",
        "",
        std_devs_above(order - Shortage.required),
        source="order less required volume, over the standard deviation",
    )
    risk = line(
        "Risk of running short",
        "",
        risk_short(order - Shortage.required, z_score),
        source="statistics: upper tail of the normal distribution",
    )
    shortfall = line(
        "Expected shortfall",
        "yd3",
        expected_shortfall(order - Shortage.required, z_score, risk, normal_pdf(z_score)),
        source="statistics: normal loss function, expected requirement above the order",
    )
    surplus = line(
        "Expected surplus",
        "yd3",
        order - Shortage.required + shortfall,
        source="order less required volume, plus shortfall",
    )
    trucks = line(
        "Trucks", "truck", whole_trucks(order, Risk.truck_capacity), source="order over truck capacity, rounded up"
    )
    increments = line(
        "Order increments", "step", whole_steps(order, Risk.increment), source="order over order increment"
    )
    increments_per_truck = line(
        "Increments per truck",
        "step",
        even_share(increments, trucks),
        source="order increments over trucks, rounded down",
    )
    extra_trucks = line(
        "Trucks with one extra increment",
        "truck",
        with_one_more(increments, increments_per_truck, trucks),
        source="order increments less the even split",
    )
    fees = line(
        "Short-load fees",
        "$",
        split_fees(
            trucks,
            truck_load(increments_per_truck, Risk.increment),
            extra_trucks,
            truck_load(increments_per_truck + ONE_STEP, Risk.increment),
        ),
        source="by the load of each truck, from the fee table",
    )
    plant_charges = line(
        "Plant charges",
        "$",
        plant_charge(order, DischargePrice.yard, fees, trucks),
        source="yards, not below the minimum order, plus short-load fees, delivery and added fees per truck",
    )
    expected_cost = line(
        "Expected cost",
        "$",
        money(plant_charges + Risk.surplus_disposal * surplus + Shortage.shortage_cost * risk),
        source="plant charges, plus disposal of surplus, plus risk times cost of running short",
    )


class BestOrder(Section, title="Cheapest order size", each=POURING, sheet=_SHEET):
    """The lowest expected cost, first row on a tie."""

    row = line(
        "Row of the cheapest order",
        "",
        argmin(OrderCandidate.expected_cost, POURING),
        source="lowest cost, first row on a tie",
    )
    order = line("Order by risk", "yd3", at(OrderCandidate.order, row, of=POURING), source="looked up by row")
    expected_cost = line(
        "Expected cost, cheapest order",
        "$",
        at(OrderCandidate.expected_cost, row, of=POURING),
        source="looked up by row",
    )
    listed = line(
        "Order sizes in the list",
        "",
        smallest(Shortage.sizes, row_count(ORDER_SIZE, POURING)),
        source="sizes needed, as far as the list has rows",
    )


class OtherOrderRules(Section, title="Other order rules", each=POURING, sheet=_SHEET):
    """For comparison: the order by the percent rule, and how often it runs short."""

    allowance = factor(
        "Percent rule allowance",
        "%",
        8,
        low=4,
        high=10,
        source="NRMCA CIP 8 (Concrete Yield), from memory: order 4 to 10 % over the plan dimensions",
    )

    by_percent = line(
        "Order by the percent rule",
        "yd3",
        largest(
            Risk.least,
            round_up(total(Concrete.in_place) * (1 + allowance / PERCENT) + Shortage.pump_residue, to=Risk.increment),
        ),
        source="company policy: net volume plus allowance plus residue, rounded up once, not below the least order",
    )
    percent_risk = line(
        "Percent rule: risk of running short",
        "",
        risk_short(by_percent - Shortage.required, (by_percent - Shortage.required) / VolumeUncertainty.std_dev),
        source="statistics: normal distribution",
    )
