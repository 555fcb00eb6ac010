"""What the plant charges: the mix by its strength, what goes into it, short loads, delivery."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.pour import ADDITIONS, Mixture
from calc.trade.levels import POURING, STRENGTH, TIER
from calc.trade.prices.price_age import last_day

_SHEET = "Order and placing"
ADDITION = named_rows("addition", *(each.price.lower() for each in ADDITIONS))
"""Something that the plant may put into the mix."""


class MixAddition(Section, title="What goes into the mix", each=ADDITION, sheet=_SHEET):
    """Charged by the yard, where the job asks for it."""

    cost = PriceLine(
        "Addition to the mix", ADDITION, tuple(price(each.price, "$/yd3", help=each.price_help) for each in ADDITIONS)
    )
    by_yard = line(
        "Added by the yard",
        "$/yd3",
        by_row(ADDITION, *(when(each.is_("yes"), 1, 0) for each in ADDITIONS)) * cost,
        source="its price where the job asks for it",
        adds=True,
    )


class PlantCharges(Section, title="What the plant adds", sheet=_SHEET):
    """By the yard for small aggregate, by the truck for its way and for a short load."""

    pump_mix_price = price("Small aggregate for a pump", "$/yd3", help="More for a yard that a small pump can take.")
    delivery_price = price(
        "Delivery of concrete", "$/truck", taxed=False, help="What a truck costs that comes, full or not."
    )
    first_fee = price(
        "Short load, first fee",
        "$/truck",
        pack="yd3/truck",
        taxed=False,
        help="For a load below its size, the least of the three.",
    )
    second_fee = price(
        "Short load, second fee",
        "$/truck",
        pack="yd3/truck",
        taxed=False,
        help="For a load below its size, and not below the first.",
    )
    third_fee = price(
        "Short load, third fee",
        "$/truck",
        pack="yd3/truck",
        taxed=False,
        help="For a load below its size, and not below the second.",
    )
    least_order = factor(
        "Least order of the plant", "yd3", 1, low=0.5, high=3, source="common practice, no source: a yard is charged"
    )

    delivery = line("Delivery of one truck", "$/truck", if_given(delivery_price, 0), source="Prices")
    first_limit = line(
        "First limit of a short load",
        "yd3/truck",
        rounded(if_given(first_fee.size, 0), 3),
        source="Prices, to a thousandth: a load of the size itself has the cheaper fee",
    )
    second_limit = line(
        "Second limit of a short load",
        "yd3/truck",
        largest(first_limit, rounded(if_given(second_fee.size, 0), 3)),
        source="Prices, never below the first",
    )
    third_limit = line(
        "Third limit of a short load",
        "yd3/truck",
        largest(second_limit, rounded(if_given(third_fee.size, 0), 3)),
        source="Prices, never below the second",
    )


class ShortLoadTier(Section, title="Short loads", each=TIER, sheet=_SHEET):
    """A load takes the fee of the last row that starts at or below it: less than a limit, not at it."""

    start = line(
        "Loads from",
        "yd3/truck",
        by_row(TIER, 0, PlantCharges.first_limit, PlantCharges.second_limit, PlantCharges.third_limit),
        source="limits of the plant",
    )
    fee = line(
        "Fee of one truck",
        "$/truck",
        by_row(
            TIER,
            if_given(PlantCharges.first_fee, 0),
            if_given(PlantCharges.second_fee, 0),
            if_given(PlantCharges.third_fee, 0),
            0,
        ),
        source="Prices",
    )


class Mix(Section, title="Mixes with a price", each=STRENGTH, sheet=_SHEET):
    """The weakest mix that is strong enough and has a price is taken."""

    psi = factors(
        "Strength of the priced mix", "psi", 2500, 3000, 3500, 4000, 4500, 5000, source="names of the rows: no choice"
    )
    cost = prices("Ready-mix", "$/yd3", STRENGTH, help="A yard of that strength at the plant.")
    taxed = line("Mix is taxed", "", by_row(STRENGTH, *cost.taxed), source="Prices")
    last_day = line("Mix is good until", "day", by_row(STRENGTH, *map(last_day, cost.prices)), source="Prices")
    fit = line(
        "Strength when it fits",
        "psi",
        when(both(psi >= Mixture.strength, cost > 0), psi, greatest(psi) + exact(1, "psi")),
        source="a mix that is too weak or has no price is put behind the strongest",
    )


class ChosenMix(Section, title="The mix that is ordered", sheet=_SHEET):
    """By the strength that the job asks, and what goes into it."""

    row = line("Row of the mix", "", argmin(Mix.fit), source="the weakest that fits")
    known = line(
        "A mix has a price", "", when(least(Mix.fit) <= greatest(Mix.psi), 1, 0), source="1 when one fits and is priced"
    )
    psi = line("Strength ordered", "psi", when(known > 0, at(Mix.psi, row), Mixture.strength), source="of that row")
    cost = line("Price of the mix", "$/yd3", when(known > 0, at(Mix.cost, row), 0), source="of that row")
    taxed = line("The mix is taxed", "", at(Mix.taxed, row), source="of that row")
    last_day = line("The mix is good until", "day", at(Mix.last_day, row), source="of that row")
    added = line("What goes into it", "$/yd3", total(MixAddition.by_yard), source="by the yard")


class DischargePrice(Section, title="Price of a yard", each=POURING, sheet=_SHEET):
    """A pump wants small aggregate."""

    aggregate = line(
        "Small aggregate",
        "$/yd3",
        by_row(POURING, 0, if_given(PlantCharges.pump_mix_price, 0)),
        source="for a pump only",
    )
    yard = line(
        "Price of a yard",
        "$/yd3",
        ChosenMix.cost + ChosenMix.added + aggregate,
        source="mix, what goes in it, aggregate",
    )
