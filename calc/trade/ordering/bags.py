"""Bagged concrete instead of a truck: small pours only."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import POURING
from calc.trade.ordering.order_candidates import Risk, Shortage
from calc.trade.prices.rental import Rental
from calc.trade.prices.wage_rates import CrewRate
from calc.trade.takeoff.concrete import Concrete
from calc.trade.takeoff.uncertainty import VolumeSpread

_ONE_EACH = exact(1, "each")


class Bags(Section, title="Bagged concrete", sheet="Order and placing"):
    """Whole bags for the required volume. The cost of mixer and clean-up does not depend on the number of bags."""

    bag_price = price("Concrete bag", "$/bag", pack="ft3/bag", help="Price per bag of concrete, and its yield.")
    clean_price = price(
        "Clean-up after bagged concrete", "$/each", help="Price per job: dust, empty bags and washing out the mixer."
    )
    minutes = factor(
        "Minutes to mix a bag",
        "min/bag",
        4,
        low=2,
        high=8,
        source="common practice, no source: one mixer and two people",
    )
    people = factor("Mixing crew", "person", 2, low=1, high=4, source="common practice, no source")
    most = factor(
        "Maximum pour from bags",
        "yd3",
        1,
        low=0.25,
        high=2,
        source="common practice, no source: a larger pour risks cold joints",
    )

    yields = line("Yield per bag", "ft3/bag", if_given(bag_price.size, 0), source="Prices")
    bags = line(
        "Bags",
        "bag",
        when(
            yields > 0,
            round_up(total(Concrete.in_place) * (1 + Risk.loss / PERCENT) * FT3_PER_YD3 / yields),
            0,
        ),
        source="net concrete volume plus waste, over yield per bag, rounded up",
    )
    hours = line("Mixing hours", "h", bags * minutes / MIN_PER_H, source="bags times minutes to mix one")
    yard = line(
        "Bags per yard, cost",
        "$/yd3",
        when(yields > 0, FT3_PER_YD3 / yields * if_given(bag_price, 0), 0),
        source="Prices",
    )
    mixer_day = line(
        "Mixer rental, by the day",
        "$",
        money(count_of(round_up(hours / Rental.day), "each") * look_up(Rental.day_price, "mixer")),
        source="mixing hours over a rental day, rounded up, times price",
    )
    mixer = line(
        "Mixer rental",
        "$",
        when(
            both(hours <= Rental.half_day, look_up(Rental.half_price, "mixer") > 0),
            money(_ONE_EACH * look_up(Rental.half_price, "mixer")),
            mixer_day,
        ),
        source="half-day price if the time is enough and it has a price, else by the day",
    )
    fixed = line(
        "Mixer and clean-up",
        "$",
        mixer + money(_ONE_EACH * if_given(clean_price, 0)),
        source="Prices",
    )
    cost = line(
        "Bags, mixer and clean-up",
        "$",
        money(bags * if_given(bag_price, 0)) + fixed,
        source="bags times price, plus mixer and clean-up",
    )
    labor = line(
        "Mixing labor",
        "$",
        money(people.count * hours * CrewRate.laborer),
        source="mixing crew times mixing hours at the laborer rate",
    )
    can = line(
        "Bags are possible",
        "",
        when(both(is_given(bag_price), yields > 0, total(Concrete.in_place) <= most), 1, 0),
        source="1 if the pour is small enough and a bag has a price and a yield",
    )
    truck_fixed = line(
        "Fees of one truck",
        "$",
        Risk.second_truck,
        source="short-load fee of a truck with the minimum order, plus delivery",
    )
    break_even = line(
        "Bags break-even volume",
        "yd3",
        when(yard > 0, largest(0, truck_fixed - fixed) / yard, 0),
        source="fees of one truck less mixer and clean-up, over cost per yard of bags: approximate, without labor",
    )


class BagTopUp(Section, title="Order topped up from bags", each=POURING, sheet="Order and placing"):
    """With bags on hand, running short costs per yard and not a lump sum, so the order may be smaller."""

    ratio = line(
        "Critical ratio",
        "",
        when(both(Bags.yard > 0, Shortage.yard > 0), Bags.yard / (Bags.yard + Shortage.yard), 0),
        source="newsvendor rule: cost per yard of bags, over that plus the cost of a surplus yard",
    )
    order = line(
        "Order when topped up from bags",
        "yd3",
        when(ratio > 0, Shortage.need + normal_inv(ratio) * VolumeSpread.all_of_it, 0),
        source="required volume plus the normal quantile of the critical ratio times the standard deviation",
    )
