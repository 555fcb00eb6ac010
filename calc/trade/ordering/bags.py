"""Bags instead of a truck: small pours only, and what a yard of them costs."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import POURING
from calc.trade.ordering.order_candidates import Risk, Shortage
from calc.trade.prices.rental import Rental
from calc.trade.prices.wage_rates import CrewRate
from calc.trade.takeoff.concrete import Concrete
from calc.trade.takeoff.uncertainty import VolumeSpread

ONE_EACH = exact(1, "each")


class Bags(Section, title="Bags instead of a truck", sheet="Order and placing"):
    """Whole bags for the need; the mixer and the clean-up cost the same however few they are."""

    bag_price = price("Concrete bag", "$/bag", pack="ft3/bag", help="A bag of concrete, and what it yields.")
    clean_price = price("Clean-up after bags", "$/each", help="Dust, bags and the mixer washed out.")
    minutes = factor(
        "Mixing a bag", "min/bag", 4, low=2, high=8, source="common practice, no source: mixer and two people"
    )
    people = factor("People who mix", "person", 2, low=1, high=4, source="common practice, no source")
    most = factor(
        "Largest pour by bags", "yd3", 1, low=0.25, high=2, source="common practice, no source: cold joints beyond"
    )

    yields = line("A bag yields", "ft3/bag", if_given(bag_price.size, 0), source="Prices")
    bags = line(
        "Bags",
        "bag",
        when(
            yields > 0,
            round_up(total(Concrete.in_place) * (1 + Risk.loss / PERCENT) * FT3_PER_YD3 / yields),
            0,
        ),
        source="in place and the loss, once; whole bags",
    )
    hours = line("Mixing hours", "h", bags * minutes / MIN_PER_H, source="one bag after the other")
    yard = line(
        "A yard of bags", "$/yd3", when(yields > 0, FT3_PER_YD3 / yields * if_given(bag_price, 0), 0), source="Prices"
    )
    mixer_day = line(
        "Mixer by the day",
        "$",
        money(count_of(round_up(hours / Rental.day), "each") * look_up(Rental.day_price, "mixer")),
        source="whole days",
    )
    mixer = line(
        "Mixer",
        "$",
        when(
            both(hours <= Rental.half_day, look_up(Rental.half_price, "mixer") > 0),
            money(ONE_EACH * look_up(Rental.half_price, "mixer")),
            mixer_day,
        ),
        source="half a day where that is enough and has a price, else days",
    )
    fixed = line(
        "Mixer and clean-up",
        "$",
        mixer + money(ONE_EACH * if_given(clean_price, 0)),
        source="Prices",
    )
    cost = line(
        "Bags, mixer and clean-up",
        "$",
        money(bags * if_given(bag_price, 0)) + fixed,
        source="bags times price, and what does not depend on their number",
    )
    labor = line(
        "People who mix", "$", money(people.count * hours * CrewRate.labourer), source="mixing hours as labourers"
    )
    can = line(
        "Bags can do it",
        "",
        when(both(is_given(bag_price), yields > 0, total(Concrete.in_place) <= most), 1, 0),
        source="1 for a pour that is small enough, when a bag has a price and a yield",
    )
    truck_fixed = line(
        "One truck without its concrete",
        "$",
        Risk.second_truck,
        source="fee of a truck with the least order, and delivery",
    )
    break_even = line(
        "Bags are cheaper below",
        "yd3",
        when(yard > 0, largest(0, truck_fixed - fixed) / yard, 0),
        source="fees of one truck less mixer and clean-up, over a yard of bags: a rough mark, labor left aside",
    )


class BagTopUp(Section, title="Topped up from bags", each=POURING, sheet="Order and placing"):
    """Where bags stand ready, running short costs by the yard and not a lump: the order may be smaller."""

    ratio = line(
        "Share of pours that are enough",
        "",
        when(both(Bags.yard > 0, Shortage.yard > 0), Bags.yard / (Bags.yard + Shortage.yard), 0),
        source="newsvendor rule: a yard of bags over that and a yard left over",
    )
    order = line(
        "Order when topped up from bags",
        "yd3",
        when(ratio > 0, Shortage.need + normal_inv(ratio) * VolumeSpread.all_of_it, 0),
        source="need, and the spreads of that share",
    )
