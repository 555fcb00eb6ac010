"""Bagged concrete instead of a truck: small pours only."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.work import OnSite
from calc.trade.ordering.order_candidates import Risk
from calc.trade.ordering.placing_rates import PlacingRate
from calc.trade.takeoff.concrete import Concrete

_ONE_EACH = exact(1, "each")


class Bags(Section, title="Bagged concrete", sheet="Order and placing"):
    """Whole bags for the required volume, mixed by two people, or by one who takes twice as long."""

    bag_price = price("Concrete bag", "$/bag", pack="ft3/bag", help="Price per bag of concrete, and its yield.")
    cleanup_price = price(
        "Clean-up after bagged concrete", "$/each", help="Price per job: dust, empty bags and washing out the mixer."
    )
    minutes_per_bag = factor(
        "Minutes to mix a bag",
        "min/bag",
        4,
        low=2,
        high=8,
        source="common practice, no source: one mixer and two people",
    )
    crew = factor("Mixing crew", "person", 2, low=1, high=4, source="common practice, no source")
    shown_above = factor(
        "Bags shown above the maximum pour",
        "%",
        25,
        low=0,
        high=100,
        source="common practice, no source: so near the limit the price of bags is asked about",
    )
    max_pour = factor(
        "Maximum pour from bags",
        "yd3",
        1,
        low=0.25,
        high=2,
        source="common practice, no source: a larger pour risks cold joints",
    )

    bag_yield = line("Yield per bag", "ft3/bag", if_given(bag_price.size, 0), source="Prices")
    bags = line(
        "Bags",
        "bag",
        when(
            bag_yield > 0,
            round_up(total(Concrete.in_place) * (1 + Risk.waste / PERCENT) * FT3_PER_YD3 / bag_yield),
            0,
        ),
        source="net concrete volume plus waste, over yield per bag, rounded up",
    )
    time_for_two = line(
        "Mixing time, two people",
        "h",
        largest(PlacingRate.min_time, bags * minutes_per_bag / MIN_PER_H),
        source="bags times minutes to mix one, not below the minimum placing time",
    )
    hours = line(
        "Mixing time",
        "h",
        time_for_two * when(OnSite.crew.count > 1, 1, TWO),
        source="elapsed; one person alone takes twice as long",
    )
    task_hours = line(
        "Mixing labor hours",
        "h",
        when(OnSite.crew.count > 1, crew.count * time_for_two, hours),
        source="mixing crew times mixing time; of one person alone, the time once",
    )
    cost = line("Bags, cost", "$", money(bags * if_given(bag_price, 0)), source="bags times price")
    clean_up = line("Clean-up after bags", "$", money(_ONE_EACH * if_given(cleanup_price, 0)), source="Prices")
    volume = line(
        "Concrete mixed, for fiber",
        "yd3",
        total(Concrete.in_place) * (1 + Risk.waste / PERCENT),
        source="net concrete volume plus waste",
    )
    possible = line(
        "Bags are possible",
        "",
        when(both(is_given(bag_price), bag_yield > 0, total(Concrete.in_place) <= max_pour), 1, 0),
        source="1 if the pour is small enough and a bag has a price and a yield",
    )
    is_shown = line(
        "Bags just above the maximum pour",
        "",
        when(
            both(
                is_given(bag_price),
                bag_yield > 0,
                total(Concrete.in_place) > max_pour,
                total(Concrete.in_place) <= max_pour * (1 + shown_above / PERCENT),
            ),
            1,
            0,
        ),
        source="1 if the pour is above the maximum by no more than the share shown",
    )
