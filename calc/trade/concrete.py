"""Concrete: what lies in place, what is needed, what is ordered, and how it rides on the trucks."""

from __future__ import annotations

from calc.declare import (
    FT3_PER_YD3,
    IN_PER_FT,
    PERCENT,
    Section,
    both,
    count_of,
    equals,
    factor,
    if_given,
    line,
    per_one,
    round_down,
    round_up,
    row_number,
    total,
    when,
)
from calc.trade.geometry import Border, Depth, Slab
from calc.trade.inputs import Site
from calc.trade.levels import AREA, TRUCK
from calc.trade.old_concrete import OldFooting


class Concrete(Section, title="Concrete in place", each=AREA, sheet="Takeoff"):
    """The exact volume, before any loss."""

    slab = line(
        "Slab",
        "yd3",
        Slab.net_area * Depth.mean / IN_PER_FT / FT3_PER_YD3,
        source="geometry: area times mean thickness",
        adds=True,
    )
    thickened = line("Thickened edges", "yd3", total(Border.thickened, AREA), source="sum of the edges", adds=True)
    displaced = line(
        "Displaced by old footings", "yd3", total(OldFooting.displaced, AREA), source="sum of the footings", adds=True
    )
    in_place = line(
        "Concrete in place",
        "yd3",
        slab + thickened - displaced,
        source="slab and thickened edges, less what old footings displace",
        adds=True,
    )


class Order(Section, title="Order", sheet="Order and placing"):
    """What is phoned to the plant. Waste is applied once: the percent rule takes the volume in place, not the need."""

    loss = factor(
        "Loss",
        "%",
        3,
        low=2,
        high=5,
        source="spill, drum residue, spread of forms, hardening: two estimating textbooks, as quoted, 3 on ground, 5 "
        "in foundations; NRMCA CIP 8, seen in print, about 2 on hardening alone",
    )
    allowance = factor(
        "Allowance of the percent rule",
        "%",
        8,
        low=4,
        high=10,
        source="NRMCA CIP 8, from memory: order 4 to 10 % over the plan dimensions",
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

    need = line(
        "Concrete needed",
        "yd3",
        total(Concrete.in_place) * (1 + loss / PERCENT),
        source="in place plus the loss that always happens",
    )
    by_percent = line(
        "Order by the percent rule",
        "yd3",
        round_up(total(Concrete.in_place) * (1 + allowance / PERCENT), to=step),
        source="house rule: add the allowance, then round up once",
    )
    by_fixed = line(
        "Order as fixed",
        "yd3",
        round_up(if_given(Site.fixed_order, 0), to=step),
        source="typed, taken to the next step of the plant",
    )
    quantity = line(
        "Concrete to order",
        "yd3",
        when(Site.order_rule.is_("fixed"), by_fixed, by_percent),
        source="the order rule of the job",
        may_be_forced=True,
    )
    spare = line("Order over need", "yd3", quantity - need, source="what should be left over; negative is short")
    trucks = line("Trucks", "truck", round_up(quantity / truck_capacity), source="whole trucks, by capacity")
    steps = line(
        "Whole steps in the order",
        "step",
        count_of(round_down(quantity / step), "step"),
        source="whole steps of the plant",
    )
    rest = line(
        "Rest below a step",
        "yd3",
        quantity - per_one(steps) * step,
        source="only where the order was forced between two steps",
    )


class Load(Section, title="Trucks", each=TRUCK, sheet="Order and placing", slots_for=Order.trucks):
    """The order split as evenly as the plant's step allows; the first trucks take the odd steps."""

    rides = line(
        "Rides",
        "truck",
        when(row_number(TRUCK) <= per_one(Order.trucks), count_of(1, "truck"), 0),
        source="1 for a truck that is needed",
        adds=True,
    )
    even_steps = line(
        "Even share",
        "step",
        when(rides > 0, count_of(round_down(per_one(Order.steps) / per_one(Order.trucks)), "step"), 0),
        source="whole steps that every truck carries",
    )
    odd_steps = line(
        "Odd step",
        "step",
        when(
            both(
                rides > 0,
                row_number(TRUCK) <= per_one(Order.steps) - per_one(even_steps) * per_one(Order.trucks),
            ),
            count_of(1, "step"),
            0,
        ),
        source="one step more for the first trucks, until the order is used up",
    )
    yards = line(
        "Concrete on the truck",
        "yd3",
        per_one(even_steps + odd_steps) * Order.step
        + when(equals(row_number(TRUCK), per_one(Order.trucks)), Order.rest, 0),
        source="steps times the step of the plant; a rest below a step rides on the last",
        adds=True,
    )
