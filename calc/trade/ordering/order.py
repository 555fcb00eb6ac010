"""The order: by risk, by a percentage or as fixed, and how it rides on the trucks."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.pour import Ordering
from calc.trade.levels import TRUCK
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.method_choice import Placing
from calc.trade.ordering.methods import OrderByRule
from calc.trade.ordering.order_candidates import Risk, Shortage
from calc.trade.ordering.plant import ChosenMix
from calc.trade.ordering.shortfall import expected_shortfall, normal_loss, risk_short, std_devs_above
from calc.trade.ordering.trucks import even_share, volume, whole_steps, whole_trucks, with_one_more
from calc.trade.takeoff.uncertainty import VolumeUncertainty

_SHEET = "Order and placing"


class Order(Section, title="Order", sheet=_SHEET):
    """Quantity to order from the plant. Waste is applied once: the percent rule starts from the net volume."""

    required = line(
        "Concrete required",
        "yd3",
        at(Shortage.required, Placing.discharge),
        source="net concrete volume plus waste, plus pump residue if pumped",
    )
    by_plant = line(
        "Order rule, ready-mix",
        "",
        when(
            both(Ordering.rule.is_("risk"), ChosenMix.known > 0),
            "by risk: lowest expected cost",
            when(
                Ordering.rule.is_("risk"),
                "percent waste; no mix price given",
                "percent waste: net volume plus allowance, rounded up once",
            ),
        ),
        source="order rule",
    )
    rule = line(
        "Basis of the order",
        "",
        when(Placing.is_bags > 0, joined("nothing from the plant: mix ", Bags.bags, " bags on site"), by_plant),
        source="placing method and order rule",
    )
    quantity = line(
        "Concrete to order",
        "yd3",
        when(Placing.is_bags > 0, 0, at(OrderByRule.quantity, Placing.discharge)),
        source="the order rule of the job; none where bags are mixed",
        may_be_overridden=Limits(low=0, high=1_000, ask_high=72),
    )
    bags = line(
        "Bags to mix",
        "bag",
        when(both(Placing.is_bags > 0, quantity <= 0), Bags.bags, 0),
        source="number of bags if bags are chosen, unless the order is overridden",
    )
    placed = line(
        "Concrete ordered or mixed",
        "yd3",
        quantity + bags * Bags.bag_yield / FT3_PER_YD3,
        source="ready-mix plus bags times yield",
    )
    overage = line(
        "Overage",
        "yd3",
        placed - required,
        source="concrete ordered or mixed, less concrete required; negative is short",
    )
    z_score = line(
        "Standard deviations above the required volume",
        "",
        std_devs_above(overage),
        source="overage over the standard deviation of the required volume",
    )
    risk = line(
        "Risk of running short",
        "",
        risk_short(overage, z_score),
        source="statistics: normal distribution",
    )
    surplus = line(
        "Expected surplus",
        "yd3",
        overage + expected_shortfall(overage, z_score, risk, normal_pdf(z_score)),
        source="overage plus expected shortfall",
    )
    trucks = line(
        "Trucks", "truck", whole_trucks(quantity, Risk.truck_capacity), source="order over truck capacity, rounded up"
    )
    increments = line(
        "Order increments",
        "step",
        whole_steps(quantity, Risk.increment),
        source="order over order increment, rounded down",
    )
    remainder = line(
        "Remainder below an increment",
        "yd3",
        quantity - volume(increments, Risk.increment),
        source="only if the order is overridden between two increments",
    )


class TruckLoad(Section, title="Truck loads", each=TRUCK, sheet="Order and placing", slots_for=Order.trucks):
    """The order is split evenly by order increments; the first trucks take the extra increments."""

    in_use = line(
        "Truck in use",
        "truck",
        when(row_number(TRUCK) <= Order.trucks.count, 1, 0),
        source="1 if the truck is needed",
        adds=True,
    )
    base_increments = line(
        "Base load, increments",
        "step",
        when(in_use > 0, even_share(Order.increments, Order.trucks), 0),
        source="order increments over trucks, rounded down",
    )
    extra_increment = line(
        "Extra increment",
        "step",
        when(
            both(
                in_use > 0,
                row_number(TRUCK) <= with_one_more(Order.increments, base_increments, Order.trucks),
            ),
            1,
            0,
        ),
        source="1 more for the first trucks, until the order is used up",
    )
    yards = line(
        "Load",
        "yd3",
        volume(base_increments + extra_increment, Risk.increment)
        + when(equals(row_number(TRUCK), Order.trucks.count), Order.remainder, 0),
        source="increments times order increment; the last truck takes a remainder below an increment",
        adds=True,
    )


class Balance(Section, title="Balance (clean-up) load", sheet=_SHEET):
    """With several trucks the last one is held: what is left to fill is measured again, and it brings the balance."""

    last_truck = line(
        "Row of the last truck",
        "",
        smallest(Order.trucks.count, row_count(TRUCK)),
        source="trucks, as far as the list has rows",
    )
    last_load = line(
        "Load of the last truck",
        "yd3",
        when(Order.trucks > 1, at(TruckLoad.yards, last_truck), 0),
        source="0 for one truck: there is no balance load",
    )
    std_dev = line(
        "Standard deviation of the balance",
        "yd3",
        when(Order.quantity > 0, VolumeUncertainty.std_dev * last_load / Order.quantity, 0),
        source="standard deviation of the required volume times last load over order",
    )
    cost_ratio = line(
        "Shortage cost ratio, balance",
        "",
        when(
            both(std_dev > 0, at(Shortage.surplus_cost, Placing.discharge) > 0),
            at(Shortage.shortage_cost, Placing.discharge)
            / (at(Shortage.surplus_cost, Placing.discharge) * std_dev * square_root(TWO * PI)),
            0,
        ),
        source="cost of a shortage over cost of one standard deviation of surplus, times the root of 2 pi",
    )
    z_score = line(
        "Standard deviations above the balance",
        "",
        when(cost_ratio > 1, square_root(TWO * logarithm(cost_ratio)), 0),
        source="closed-form order rule, for the balance",
    )
    risk = line(
        "Risk of running short with a balance load",
        "",
        when(std_dev > 0, normal_cdf(-z_score), Order.risk),
        source="statistics: normal distribution; without a balance load as ordered",
    )
    surplus = line(
        "Expected surplus with a balance load",
        "yd3",
        when(
            std_dev > 0,
            std_dev * z_score + normal_loss(std_dev, z_score, risk, normal_pdf(z_score)),
            Order.surplus,
        ),
        source="margin above the balance plus expected shortfall; without a balance load as ordered",
    )
    saving = line(
        "Expected saving of a balance load",
        "$",
        money(
            largest(
                0,
                at(Shortage.shortage_cost, Placing.discharge) * (Order.risk - risk)
                + at(Shortage.surplus_cost, Placing.discharge) * (Order.surplus - surplus),
            )
        ),
        source="change in risk times cost of a shortage, plus change in surplus times cost of a surplus yard",
    )
