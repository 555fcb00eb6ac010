"""Checks of money: from the lines of the costs to the price and its payments, each step by two routes."""

from __future__ import annotations

from calc.declare import *
from calc.trade.cautions.checks import UNDO, Integrity, WorkIntegrity
from calc.trade.inputs.money import Terms
from calc.trade.materials.liquids import Bonding, Curing, Sealer
from calc.trade.money.bid import PriceSummary
from calc.trade.money.costs import CostTable
from calc.trade.money.price import BidPrice, PaymentSchedule, Subtotal
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.plant import PlantCharges
from calc.trade.takeoff.reinforcement import ReinforcementNeeds

_IN_PACKS = (
    PlantCharges.first_fee,
    PlantCharges.second_fee,
    PlantCharges.third_fee,
    Bags.bag_price,
    Bonding.small,
    Bonding.large,
    Curing.small,
    Curing.large,
    Sealer.small,
    Sealer.large,
    ReinforcementNeeds.vapor_price,
)
"""The prices that say nothing without the size of what they are for."""

IN_PACKS = named_rows("price with a size", *(each.label for each in _IN_PACKS))


class PackSizes(Section, title="Prices with a size", each=IN_PACKS, sheet="Costs"):
    """What is priced by the pack, and the fee of a load below a size."""

    priced = line(
        "Has a price",
        "",
        by_row(IN_PACKS, *(when(is_given(each), 1, 0) for each in _IN_PACKS)),
        source="1 if Prices has its price",
        adds=True,
    )
    sized = line(
        "Has a price and a size",
        "",
        by_row(IN_PACKS, *(when(both(is_given(each), is_given(each.size)), 1, 0) for each in _IN_PACKS)),
        source="1 if Prices has both",
        adds=True,
    )


class PriceSteps(Section, title="The price by a second route", sheet="Costs"):
    """From the groups up, and from the price down."""

    untaxed = line(
        "Costs that are not taxed",
        "$",
        total_where(CostTable.amount, CostTable.taxed, "no"),
        source="amounts of the costs marked as not taxed",
    )
    tax = line(
        "Tax on all costs but those",
        "$",
        (total(CostTable.amount) - untaxed) * if_given(Terms.tax, BidPrice.tax_rate) / PERCENT,
        source="all costs less those not taxed, times sales tax",
    )
    direct = line("Groups plus tax", "$", total(Subtotal.amount) + BidPrice.tax, source="sum of the groups, plus tax")
    with_contingency = line(
        "Groups and tax with contingency",
        "$",
        direct * (1 + if_given(Terms.contingency, BidPrice.contingency_rate) / PERCENT),
        source="groups plus tax, times 1 plus contingency",
    )
    break_even = line(
        "Groups and tax with contingency and overhead",
        "$",
        with_contingency * (1 + if_given(Terms.overhead, BidPrice.overhead_rate) / PERCENT),
        source="with contingency, times 1 plus overhead",
    )
    least_price = line(
        "Least price",
        "$",
        largest(break_even / (1 - BidPrice.margin / PERCENT), BidPrice.minimum),
        source="break-even cost over 1 less margin, not below the minimum",
    )
    parts = line(
        "Sum of the parts of the price",
        "$",
        total(Subtotal.amount) + BidPrice.tax + BidPrice.contingency + BidPrice.overhead + PriceSummary.margin,
        source="groups, tax, contingency, overhead, and margin and rounding",
    )
    payments = line("Sum of the payments", "$", total(PaymentSchedule.amount), source="payments, by due date")


class MoneyIntegrity(Section, title="Checks of money", sheet="Checks"):
    """No cost is lost between its line and the price, and none is counted twice."""

    pack_sizes = check(
        "Prices in packs have sizes",
        "",
        total(PackSizes.priced),
        total(PackSizes.sized),
        Integrity.tolerance,
        compared="Prices that need a size, those that have it",
        remedy="Type the size of the pack on Prices, or clear its price.",
    )
    groups = check(
        "Cost lines = groups",
        "$",
        total(CostTable.amount),
        total(Subtotal.amount),
        Integrity.tolerance,
        compared="All cost lines, their groups",
        remedy="A group was renamed or an amount typed over: undo it.",
    )
    tax = check(
        "Tax by line = tax",
        "$",
        BidPrice.tax,
        PriceSteps.tax,
        WorkIntegrity.rounding_allowance,
        compared="Tax on taxed lines, tax on all but the untaxed lines, within rounding",
        remedy="Whether a line is taxed is yes or no: undo what was typed over.",
    )
    direct = check(
        "Groups + tax = direct cost",
        "$",
        BidPrice.direct,
        PriceSteps.direct,
        Integrity.tolerance,
        compared="Direct cost, the groups plus tax",
        remedy=UNDO,
    )
    break_even = check(
        "Direct cost to break-even",
        "$",
        BidPrice.break_even,
        PriceSteps.break_even,
        WorkIntegrity.rounding_allowance,
        compared="Break-even, groups and tax with contingency and overhead, within rounding",
        remedy=UNDO,
    )
    price = check(
        "Break-even to price",
        "$",
        BidPrice.price,
        when(
            BidPrice.price.is_overridden,
            BidPrice.price,
            largest(
                PriceSteps.least_price - WorkIntegrity.rounding_allowance,
                smallest(BidPrice.price, PriceSteps.least_price + BidPrice.rounding),
            ),
        ),
        WorkIntegrity.rounding_allowance,
        compared="Price, the same from the least to one rounding step above it",
        remedy=UNDO,
    )
    parts = check(
        "Parts on Bid = price",
        "$",
        BidPrice.price,
        PriceSteps.parts,
        Integrity.tolerance,
        compared="Price, the groups, tax, contingency, overhead, margin and rounding added up",
        remedy=UNDO,
    )
    payments = check(
        "Payments = price",
        "$",
        BidPrice.price,
        PriceSteps.payments,
        Integrity.tolerance,
        compared="Price, its payments added up",
        remedy=UNDO,
    )
