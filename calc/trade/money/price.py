"""From costs to the price: subtotals, tax, contingency, overhead, margin, price and payment schedule."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Company
from calc.trade.inputs.money import Change, Terms
from calc.trade.levels import CHANGE, DRAW, GROUP
from calc.trade.money.costs import CostTable
from calc.trade.takeoff.geometry import Slab

_SHEET = "Costs"


class Subtotal(Section, title="Cost subtotals", each=GROUP, sheet=_SHEET):
    """Sums of the rounded amounts by cost group."""

    amount = line(
        "Subtotal",
        "$",
        total_where(CostTable.amount, CostTable.group, row_word(GROUP)),
        source="sum of the amounts of the group",
        adds=True,
    )


class BidPrice(Section, title="Price", sheet=_SHEET):
    """Each amount is rounded to the cent; only the price is rounded up further. Margin and markup are both shown."""

    tax_rate = factor(
        "Sales tax",
        "%",
        0,
        low=0,
        high=12,
        source="company policy: none unless set; in most states the contractor pays sales tax on "
        "materials and charges none to the client; ask an accountant",
    )
    contingency_rate = factor(
        "Contingency", "%", 5, low=0, high=15, source="common practice, no source: for prices and hours, not for volume"
    )
    overhead_rate = factor("Overhead", "%", 12, low=5, high=35, source="common practice, no source")
    margin_rate = factor("Margin", "%", 18, low=5, high=45, source="common practice, no source: a share of the price")
    minimum_price = factor("Minimum job charge", "$", 0, low=0, high=5000, source="company policy: none unless set")
    rounding = factor("Price rounding", "$", 5, low=1, high=100, source="company policy")

    taxed = line(
        "Taxed purchases",
        "$",
        total_where(CostTable.amount, CostTable.taxed, "yes"),
        source="amounts of the costs marked as taxed",
    )
    tax = line(
        "Tax",
        "$",
        money(taxed * if_given(Terms.tax, tax_rate) / PERCENT),
        source="taxed purchases times sales tax; none on labor",
    )
    direct = line("Direct cost", "$", total(CostTable.amount) + tax, source="all costs plus tax")
    contingency = line(
        "Contingency, amount",
        "$",
        money(direct * if_given(Terms.contingency, contingency_rate) / PERCENT),
        source="direct cost times contingency",
    )
    overhead = line(
        "Overhead, amount",
        "$",
        money((direct + contingency) * if_given(Terms.overhead, overhead_rate) / PERCENT),
        source="direct cost plus contingency, times overhead",
    )
    break_even = line(
        "Break-even cost", "$", direct + contingency + overhead, source="direct cost plus contingency plus overhead"
    )
    margin = line(
        "Margin used", "%", if_given(Terms.margin, margin_rate), source="input of the job, else company policy"
    )
    unrounded = line(
        "Price, unrounded", "$", break_even / (1 - margin / PERCENT), source="break-even cost over (1 - margin)"
    )
    to_cent = line("Price to the cent", "$", money(unrounded), source="unrounded price, halves away from zero")
    minimum = line(
        "Minimum price", "$", if_given(Terms.minimum, minimum_price), source="input of the job, else company policy"
    )
    price = line(
        "Price",
        "$",
        round_up(largest(to_cent, minimum), to=rounding),
        source="larger of price and minimum, rounded up to the price rounding",
        may_be_overridden=Limits(low=0, ask_low=100, ask_high=250_000),
    )
    per_ft2 = line(
        "Price per ft2",
        "$/ft2",
        when(total(Slab.net_area) > 0, price / total(Slab.net_area), 0),
        source="price over net area",
    )
    actual_margin = line(
        "Actual margin",
        "%",
        when(price > 0, (price - break_even) / price * PERCENT, 0),
        source="after rounding and minimum",
    )
    markup = line(
        "Equivalent markup",
        "%",
        when(break_even > 0, (price - break_even) / break_even * PERCENT, 0),
        source="on break-even cost",
    )
    minimum_applied = line(
        "Minimum job charge applied",
        "",
        when(both(minimum > 0, to_cent <= minimum), 1, 0),
        source="1 if the minimum governs",
    )
    unpriced = line("Costs without a price", "", total(CostTable.unpriced), source="0 if every cost has a price")


class PriceParts(Section, title="Payments", sheet=_SHEET):
    """The payments add up to the price to the cent; the payment on completion takes the rounding difference."""

    deposit_rate = factor(
        "Deposit, share of the price",
        "%",
        10,
        low=0,
        high=50,
        source="common practice, no source; local law may cap it",
    )
    pour_rate = factor(
        "Payment on the day of the pour, share of the price",
        "%",
        50,
        low=0,
        high=90,
        source="common practice, no source",
    )

    deposit = line(
        "Deposit on signing",
        "$",
        money(smallest(BidPrice.price * deposit_rate / PERCENT, if_given(Company.deposit_cap, BidPrice.price))),
        source="share of the price, not above the company's deposit cap",
    )
    retainage = line(
        "Retainage", "$", money(BidPrice.price * Terms.retainage / PERCENT), source="price times retainage"
    )
    on_pour_day = line(
        "Payment on the day of the pour",
        "$",
        money(smallest(BidPrice.price * pour_rate / PERCENT, BidPrice.price - deposit - retainage)),
        source="share of the price, not above the price less deposit and retainage",
    )
    on_completion = line(
        "Balance on completion",
        "$",
        BidPrice.price - deposit - on_pour_day - retainage,
        source="price less the other payments",
    )


class PaymentSchedule(Section, title="Payment schedule", each=DRAW, sheet=_SHEET):
    """Payments in the order in which they are due."""

    amount = line(
        "Payment due",
        "$",
        by_row(DRAW, PriceParts.deposit, PriceParts.on_pour_day, PriceParts.on_completion, PriceParts.retainage),
        source="payments, by due date",
        adds=True,
    )
    number = line("Number of the payment", "", row_number(DRAW), source="in the order in which they are due")


class ChangeAmount(Section, title="Change orders", each=CHANGE, sheet=_SHEET):
    """Changes are billed in addition to the bid, which stays as it was."""

    amount = line(
        "Change order amount", "$", money(Change.quantity * Change.rate), source="quantity times rate", adds=True
    )
    signed_amount = line(
        "Signed change order amount",
        "$",
        when(Change.signed.is_("yes"), amount, 0),
        source="amount, if it is signed",
        adds=True,
    )
    is_signed = line(
        "Change order is signed", "", when(Change.signed.is_("yes"), 1, 0), source="1 if it is signed", adds=True
    )
    contract = line(
        "Contract from this change order on",
        "$",
        BidPrice.price + running(signed_amount, JOB) - signed_amount + amount,
        source="price, signed change orders before it, and this one",
    )
    what_and_why = line(
        "Text of the change order",
        "",
        joined(
            when(is_word(Change.what, "none"), "-", Change.what),
            when(is_word(Change.reason, "none"), "", joined(". Reason: ", Change.reason)),
        ),
        source="as typed",
    )
    days = line(
        "Days added by the change order", "days", Change.days_added * exact(1, "days"), source="as typed", adds=True
    )


class Invoice(Section, title="Contract sum", sheet=_SHEET):
    """The price with signed change orders."""

    changes = line(
        "Signed change orders, total", "$", total(ChangeAmount.signed_amount), source="sum of the signed change orders"
    )
    billed = line(
        "Price with signed change orders", "$", BidPrice.price + changes, source="price plus signed change orders"
    )
    unsigned = line(
        "Change orders not signed", "$", total(ChangeAmount.amount) - changes, source="not billed until signed"
    )
