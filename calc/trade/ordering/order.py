"""The order: by risk, by a percentage or as fixed, and how it rides on the trucks."""

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
from calc.trade.ordering.trucks import even_share, volume, whole_steps, whole_trucks, with_one_more
from calc.trade.takeoff.uncertainty import VolumeSpread

_SHEET = "Order and placing"


class Order(Section, title="Order", sheet=_SHEET):
    """What is phoned to the plant. Waste is applied once: the percent rule takes the volume in place, not the need."""

    need = line(
        "Concrete needed",
        "yd3",
        at(Shortage.need, Placing.pouring),
        source="in place and the loss, and what a pump keeps where one is taken",
    )
    by_risk = line("Order by risk", "yd3", at(BestOrder.order, Placing.pouring), source="the best rung of the ladder")
    by_percent = line(
        "Order by the percent rule", "yd3", at(RuleOfThumb.by_percent, Placing.pouring), source="percent rule"
    )
    by_fixed = line(
        "Order as fixed", "yd3", at(OrderByRule.by_fixed, Placing.pouring), source="typed, to the next step"
    )
    by_rule = line(
        "Order by risk, or by percent without a price",
        "yd3",
        at(OrderByRule.by_rule, Placing.pouring),
        source="for the way of placing that is taken",
    )
    by_plant = line(
        "Order rule at the plant",
        "",
        when(
            both(Ordering.rule.is_("risk"), ChosenMix.known > 0),
            "by risk: the order with the least expected cost, fees and all",
            when(
                Ordering.rule.is_("risk"),
                "percent rule, for want of a price for the mix",
                "percent rule: in place and the allowance, rounded up once",
            ),
        ),
        source="order rule",
    )
    rule = line(
        "Order rule in words",
        "",
        when(Placing.bags > 0, "nothing from the plant: bags are mixed on the site", by_plant),
        source="way of placing and order rule",
    )
    quantity = line(
        "Concrete to order",
        "yd3",
        when(Placing.bags > 0, 0, at(OrderByRule.quantity, Placing.pouring)),
        source="the order rule of the job; none where bags are mixed",
        may_be_overridden=True,
    )
    bags = line(
        "Bags to mix",
        "bag",
        when(both(Placing.bags > 0, quantity <= 0), Bags.bags, 0),
        source="where bags are taken, unless concrete was ordered by hand",
    )
    placed = line(
        "Ordered or mixed", "yd3", quantity + bags * Bags.yields / FT3_PER_YD3, source="from the plant, and from bags"
    )
    spare = line("Order over need", "yd3", placed - need, source="what should be left over; negative is short")
    off = line(
        "Spreads above the need",
        "",
        spreads_off(spare),
        source="order less need, in spreads",
    )
    chance = line(
        "Chance of running short",
        "",
        chance_short(spare, off),
        source="normal distribution",
    )
    left = line(
        "Expected left over",
        "yd3",
        spare + expected_short(spare, off, chance, density(off)),
        source="order less need, and what is short",
    )
    trucks = line("Trucks", "truck", whole_trucks(quantity, Risk.truck_capacity), source="whole trucks, by capacity")
    steps = line(
        "Whole steps in the order",
        "step",
        whole_steps(quantity, Risk.step),
        source="whole steps of the plant",
    )
    rest = line(
        "Rest below a step",
        "yd3",
        quantity - volume(steps, Risk.step),
        source="only where the order was forced between two steps",
    )


class Load(Section, title="Trucks", each=TRUCK, sheet="Order and placing", slots_for=Order.trucks):
    """The order split as evenly as the plant's step allows; the first trucks take the odd steps."""

    rides = line(
        "Rides",
        "truck",
        when(row_number(TRUCK) <= Order.trucks.count, 1, 0),
        source="1 for a truck that is needed",
        adds=True,
    )
    even_steps = line(
        "Even share",
        "step",
        when(rides > 0, even_share(Order.steps, Order.trucks), 0),
        source="whole steps that every truck carries",
    )
    odd_steps = line(
        "Odd step",
        "step",
        when(
            both(
                rides > 0,
                row_number(TRUCK) <= with_one_more(Order.steps, even_steps, Order.trucks),
            ),
            1,
            0,
        ),
        source="one step more for the first trucks, until the order is used up",
    )
    yards = line(
        "Concrete on the truck",
        "yd3",
        volume(even_steps + odd_steps, Risk.step) + when(equals(row_number(TRUCK), Order.trucks.count), Order.rest, 0),
        source="steps times the step of the plant; a rest below a step rides on the last",
        adds=True,
    )


class Balance(Section, title="Balance call", sheet=_SHEET):
    """With several trucks the last one is held: the forms that are left are measured again, and it brings the rest."""

    last = line(
        "On the last truck",
        "yd3",
        when(Order.trucks > 1, at(Load.yards, Order.trucks.count), 0),
        source="0 for one truck: there is no call to make",
    )
    spread = line(
        "Spread of what it must bring",
        "yd3",
        when(Order.quantity > 0, VolumeSpread.all_of_it * last / Order.quantity, 0),
        source="the spread shrinks with the volume that is left",
    )
    odds = line(
        "Lump over what a spread left over costs",
        "",
        when(
            both(spread > 0, at(Shortage.yard, Placing.pouring) > 0),
            at(Shortage.lump, Placing.pouring) / (at(Shortage.yard, Placing.pouring) * spread * square_root(TWO * PI)),
            0,
        ),
        source="the two costs at the middle of the normal distribution",
    )
    off = line(
        "Spreads above what is left",
        "",
        when(odds > 1, square_root(TWO * logarithm(odds)), 0),
        source="the quick formula, for what is left",
    )
    chance = line(
        "Chance of running short with the call",
        "",
        when(spread > 0, normal_cdf(-off), Order.chance),
        source="normal distribution; without a call as ordered",
    )
    left = line(
        "Expected left over with the call",
        "yd3",
        when(
            spread > 0,
            spread * off + excess(spread, off, chance, density(off)),
            Order.left,
        ),
        source="the spreads above, and what is short; without a call as ordered",
    )
    saves = line(
        "The call should save",
        "$",
        money(
            largest(
                0,
                at(Shortage.lump, Placing.pouring) * (Order.chance - chance)
                + at(Shortage.yard, Placing.pouring) * (Order.left - left),
            )
        ),
        source="chances of a lump, and yards left over, with and without it",
    )
