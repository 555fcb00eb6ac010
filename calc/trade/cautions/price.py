"""Cautions of the price: missing and expired prices, the margin, the minimum charge."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.pour import Mixture
from calc.trade.materials.liquids import CURING_PACKS, Curing
from calc.trade.money.costs import CostTable
from calc.trade.money.price import BidPrice
from calc.trade.ordering.plant import ChosenMix, Mix


class PriceCautions(Section, title="Price cautions", sheet="Checks"):
    """What was found, the number, the usual practice with its source, and what to do."""

    min_margin = factor("Margin, caution below", "%", 10, low=5, high=15, source="common practice, no source")
    max_margin = factor("Margin, caution above", "%", 40, low=30, high=50, source="common practice, no source")

    unpriced_costs = caution(
        "Costs without a price",
        Severity.CAUTION,
        total(CostTable.unpriced) > 0,
        joined(
            "The price is not complete: ",
            count_of(total(CostTable.unpriced), "each"),
            when(equals(total(CostTable.unpriced), 1), " cost has no price.", " costs have no price."),
        ),
        total(CostTable.unpriced),
        "",
        usual="a price for everything that is needed; 0 where it costs nothing",
        do="Fill their rows in the company book; Costs lists them.",
        source="house rule",
    )
    no_curing_price = caution(
        "Curing compound has no price",
        Severity.CAUTION,
        both(CURING_PACKS.can_win <= 0, Curing.need > 0),
        "The company book has no price with a container size for it; the number is what is needed.",
        Curing.need,
        "gal",
        usual="a price for each container size that is bought",
        do="Fill the rows of curing compound in Prices.",
        source="house rule",
    )
    dearer_mix = caution(
        "A stronger mix is priced",
        Severity.CAUTION,
        both(
            ChosenMix.known > 0,
            ChosenMix.psi >= largest(Mixture.strength, least(Mix.psi)) + at(Mix.psi, exact(2)) - at(Mix.psi, exact(1)),
        ),
        "The strength that was asked for has no price: the next stronger mix that has one is in the price.",
        ChosenMix.psi,
        "psi",
        usual="the mix that was specified",
        do="Type the price of the mix that was specified.",
        source="house rule",
    )
    expired_prices = caution(
        "Expired prices",
        Severity.CAUTION,
        total(CostTable.expired) > 0,
        joined(
            count_of(total(CostTable.expired), "each"),
            when(
                equals(total(CostTable.expired), 1),
                " price has expired or is too old.",
                " prices have expired or are too old.",
            ),
        ),
        total(CostTable.expired),
        "",
        usual="plants and suppliers quote for a month",
        do="Ask for new quotes, and date the rows of Prices.",
        source="common practice, no source",
    )
    margin = caution(
        "Unusual margin",
        Severity.CAUTION,
        both(BidPrice.break_even > 0, either(BidPrice.actual_margin < min_margin, BidPrice.actual_margin > max_margin)),
        "The actual margin is outside the usual range.",
        BidPrice.actual_margin,
        "%",
        usual="10 to 40 % of the price",
        do="Check that a margin was typed, and not a markup.",
        source="common practice, no source",
    )
    minimum_charge = caution(
        "Minimum job charge applied",
        Severity.NOTE,
        BidPrice.minimum_applied > 0,
        "The price is the company's minimum for a job.",
        BidPrice.minimum,
        "$",
        usual="a minimum for each job",
        do="Nothing; the client may want to add work.",
        source="house rule",
    )
