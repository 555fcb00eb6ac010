"""What the plant charges: the mix by its strength, what goes into it, short loads, delivery."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.pour import ADDITIONS, Mixture
from calc.trade.levels import POURING, STRENGTH, TIER
from calc.trade.ordering.plant_fees import PlantFees
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


class PlantCharges(Section, title="Plant charges", sheet=_SHEET):
    """By the yard for small aggregate, by the truck for its way and for a short load."""

    pump_mix_price = price("Pea-gravel pump mix, added cost", "$/yd3", help="Added charge per yard for a pump mix.")
    delivery_price = price("Concrete delivery", "$/truck", taxed=False, help="Charge per truck, full or not.")
    first_fee = price(
        "Short-load fee, tier 1",
        "$/truck",
        pack="yd3/truck",
        taxed=False,
        help="Fee per truck for a load below its size, the smallest of the three.",
    )
    second_fee = price(
        "Short-load fee, tier 2",
        "$/truck",
        pack="yd3/truck",
        taxed=False,
        help="Fee per truck for a load below its size, and not in tier 1.",
    )
    third_fee = price(
        "Short-load fee, tier 3",
        "$/truck",
        pack="yd3/truck",
        taxed=False,
        help="Fee per truck for a load below its size, and not in tier 1 or 2.",
    )
    least_order = factor(
        "Minimum order", "yd3", 1, low=0.5, high=3, source="common practice, no source: 1 yd3 is charged"
    )

    delivery = line("Delivery per truck", "$/truck", if_given(delivery_price, 0), source="Prices")
    by_load = line(
        "Delivery and added fees per truck",
        "$/truck",
        delivery + PlantFees.by_load,
        source="delivery, plus what the plant adds for each load",
    )
    first_limit = line(
        "Short load, tier 1 below",
        "yd3/truck",
        rounded(if_given(first_fee.size, 0), 3),
        source="Prices, to 3 decimals: a load of exactly that size has the cheaper fee",
    )
    second_limit = line(
        "Short load, tier 2 below",
        "yd3/truck",
        largest(first_limit, rounded(if_given(second_fee.size, 0), 3)),
        source="Prices, not below tier 1",
    )
    third_limit = line(
        "Short load, tier 3 below",
        "yd3/truck",
        largest(second_limit, rounded(if_given(third_fee.size, 0), 3)),
        source="Prices, not below tier 2",
    )


class ShortLoadTier(Section, title="Short-load fees", each=TIER, sheet=_SHEET):
    """A load takes the fee of the last row whose limit is at or below it."""

    start = line(
        "Load at least",
        "yd3/truck",
        by_row(TIER, 0, PlantCharges.first_limit, PlantCharges.second_limit, PlantCharges.third_limit),
        source="short-load limits",
    )
    fee = line(
        "Fee per truck",
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


class Mix(Section, title="Priced mixes", each=STRENGTH, sheet=_SHEET):
    """The lowest-strength mix that is strong enough and has a price is chosen."""

    psi = factors("Strength of the mix", "psi", 2500, 3000, 3500, 4000, 4500, 5000, source="by definition of the rows")
    cost = prices("Ready-mix", "$/yd3", STRENGTH, help="A yard of that strength at the plant.")
    taxed = line("Mix is taxed", "", by_row(STRENGTH, *cost.taxed), source="Prices")
    account = line("Mix account", "", by_row(STRENGTH, *cost.accounts), source="Prices")
    last_day = line("Mix price valid until", "day", by_row(STRENGTH, *map(last_day, cost.prices)), source="Prices")
    fit = line(
        "Strength compared",
        "psi",
        when(both(psi >= Mixture.strength, cost > 0), psi, greatest(psi) + exact(1, "psi")),
        source="strength if strong enough and priced, else behind the strongest",
    )


class ChosenMix(Section, title="Mix ordered", sheet=_SHEET):
    """By the strength specified, with its admixtures."""

    row = line("Row of the mix", "", argmin(Mix.fit), source="lowest strength that fits")
    known = line(
        "Mix price is known",
        "",
        when(least(Mix.fit) <= greatest(Mix.psi), 1, 0),
        source="1 if a mix fits and has a price",
    )
    psi = line(
        "Strength ordered", "psi", when(known > 0, at(Mix.psi, row), Mixture.strength), source="looked up by row"
    )
    cost = line("Mix price", "$/yd3", when(known > 0, at(Mix.cost, row), 0), source="looked up by row")


class DischargePrice(Section, title="Concrete price per yard", each=POURING, sheet=_SHEET):
    """A small pump needs a pea-gravel mix."""

    aggregate = line(
        "Pump mix, added cost",
        "$/yd3",
        by_row(POURING, 0, if_given(PlantCharges.pump_mix_price, 0)),
        source="Prices, with a pump only",
    )
    yard = line(
        "Concrete price per yard",
        "$/yd3",
        ChosenMix.cost + total(MixAddition.by_yard) + aggregate + PlantFees.by_yard,
        source="mix price plus admixtures, pump mix, and the fees that the plant adds per yard",
    )
