"""The order: by risk, by percent or fixed, and its trucks."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.pour import Ordering
from calc.trade.levels import TRUCK
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.method_choice import Placing
from calc.trade.ordering.methods import OrderByRule
from calc.trade.ordering.order_candidates import BestOrder, Risk, RuleOfThumb, Shortage
from calc.trade.ordering.plant import ChosenMix
from calc.trade.ordering.shortfall import chance_short, density, excess, expected_short, spreads_off
from calc.trade.takeoff.uncertainty import VolumeSpread

_SHEET = "Order and placing"


class Order(Section, title="Order", sheet=_SHEET):
    """Quantity to order from the plant. Waste is applied once: the percent rule starts from the net volume."""

    need = line(
        "Concrete required",
        "yd3",
        at(Shortage.need, Placing.pouring),
        source="net concrete volume plus waste, plus pump residue if pumped",
    )
    by_risk = line("Order by risk", "yd3", at(BestOrder.order, Placing.pouring), source="the cheapest order size")
    by_percent = line(
        "Order by the percent rule",
        "yd3",
        at(RuleOfThumb.by_percent, Placing.pouring),
        source="net volume plus allowance, rounded up",
    )
    by_fixed = line(
        "Fixed order, rounded up",
        "yd3",
        at(OrderByRule.by_fixed, Placing.pouring),
        source="input, rounded up to the order increment",
    )
    by_rule = line(
        "Order by risk, or by percent without a mix price",
        "yd3",
        at(OrderByRule.by_rule, Placing.pouring),
        source="for the placing method chosen",
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
        "Order rule",
        "",
        when(Placing.bags > 0, "no ready-mix: bags are mixed on site", by_plant),
        source="placing method and order rule",
    )
    quantity = line(
        "Concrete to order",
        "yd3",
        when(Placing.bags > 0, 0, at(OrderByRule.quantity, Placing.pouring)),
        source="by the order rule of the job; none if bags are mixed",
        may_be_overridden=True,
    )
    bags = line(
        "Bags to mix",
        "bag",
        when(both(Placing.bags > 0, quantity <= 0), Bags.bags, 0),
        source="number of bags if bags are chosen, unless the order is overridden",
    )
    placed = line(
        "Concrete ordered or mixed",
        "yd3",
        quantity + bags * Bags.yields / FT3_PER_YD3,
        source="ready-mix plus bags times yield",
    )
    spare = line(
        "Overage", "yd3", placed - need, source="concrete ordered or mixed, less concrete required; negative is short"
    )
    off = line(
        "Standard deviations above the required volume",
        "",
        spreads_off(spare),
        source="overage over the standard deviation of the required volume",
    )
    chance = line(
        "Risk of running short",
        "",
        chance_short(spare, off),
        source="statistics: normal distribution",
    )
    left = line(
        "Expected surplus",
        "yd3",
        spare + expected_short(spare, off, chance, density(off)),
        source="overage plus expected shortfall",
    )
    trucks = line(
        "Trucks", "truck", round_up(quantity / Risk.truck_capacity), source="order over truck capacity, rounded up"
    )
    steps = line(
        "Order increments",
        "step",
        round_down(quantity / Risk.step),
        source="order over order increment, rounded down",
    )
    rest = line(
        "Remainder below an increment",
        "yd3",
        quantity - steps.count * Risk.step,
        source="only if the order is overridden between two increments",
    )


class Load(Section, title="Truck loads", each=TRUCK, sheet="Order and placing", slots_for=Order.trucks):
    """The order is split evenly by order increments; the first trucks take the extra increments."""

    rides = line(
        "Truck in use",
        "truck",
        when(row_number(TRUCK) <= Order.trucks.count, 1, 0),
        source="1 if the truck is needed",
        adds=True,
    )
    even_steps = line(
        "Base load, increments",
        "step",
        when(rides > 0, round_down(Order.steps.count / Order.trucks.count), 0),
        source="order increments over trucks, rounded down",
    )
    odd_steps = line(
        "Extra increment",
        "step",
        when(
            both(
                rides > 0,
                row_number(TRUCK) <= Order.steps.count - even_steps.count * Order.trucks.count,
            ),
            1,
            0,
        ),
        source="1 more for the first trucks, until the order is used up",
    )
    yards = line(
        "Load",
        "yd3",
        (even_steps + odd_steps).count * Risk.step + when(equals(row_number(TRUCK), Order.trucks.count), Order.rest, 0),
        source="increments times order increment; the last truck takes a remainder below an increment",
        adds=True,
    )


class Balance(Section, title="Balance (clean-up) load", sheet=_SHEET):
    """With several trucks the last one is held: what is left to fill is measured again, and it brings the balance."""

    last = line(
        "Load of the last truck",
        "yd3",
        when(Order.trucks > 1, at(Load.yards, Order.trucks.count), 0),
        source="0 for one truck: there is no balance load",
    )
    spread = line(
        "Standard deviation of the balance",
        "yd3",
        when(Order.quantity > 0, VolumeSpread.all_of_it * last / Order.quantity, 0),
        source="standard deviation of the required volume times last load over order",
    )
    odds = line(
        "Shortage cost ratio, balance",
        "",
        when(
            both(spread > 0, at(Shortage.yard, Placing.pouring) > 0),
            at(Shortage.lump, Placing.pouring) / (at(Shortage.yard, Placing.pouring) * spread * square_root(TWO * PI)),
            0,
        ),
        source="cost of a shortage over cost of one standard deviation of surplus, times the root of 2 pi",
    )
    off = line(
        "Standard deviations above the balance",
        "",
        when(odds > 1, square_root(TWO * logarithm(odds)), 0),
        source="closed-form order rule, for the balance",
    )
    chance = line(
        "Risk of running short with a balance load",
        "",
        when(spread > 0, normal_cdf(-off), Order.chance),
        source="statistics: normal distribution; without a balance load as ordered",
    )
    left = line(
        "Expected surplus with a balance load",
        "yd3",
        when(
            spread > 0,
            spread * off + excess(spread, off, chance, density(off)),
            Order.left,
        ),
        source="margin above the balance plus expected shortfall; without a balance load as ordered",
    )
    saves = line(
        "Expected saving of a balance load",
        "$",
        money(
            largest(
                0,
                at(Shortage.lump, Placing.pouring) * (Order.chance - chance)
                + at(Shortage.yard, Placing.pouring) * (Order.left - left),
            )
        ),
        source="change in risk times cost of a shortage, plus change in surplus times cost of a surplus yard",
    )
