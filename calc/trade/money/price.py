"""From costs to the price: subtotals, tax, contingency, overhead, margin, the price and how it falls due."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Company
from calc.trade.inputs.money import Change, Terms
from calc.trade.levels import CHANGE, DRAW, GROUP
from calc.trade.money.costs import CostTable
from calc.trade.takeoff.geometry import Slab

_SHEET = "Costs"


class Subtotal(Section, title="Subtotals", each=GROUP, sheet=_SHEET):
    """Sums of the cents that are shown."""

    amount = line(
        "Subtotal", "$", total_where(CostTable.amount, CostTable.group, row_word(GROUP)), source="sum", adds=True
    )


class BidPrice(Section, title="Price", sheet=_SHEET):
    """Rounded sums all the way; the price alone goes up to the step. A markup is not a margin: both are shown."""

    tax_rate = factor(
        "Sales tax",
        "%",
        0,
        low=0,
        high=12,
        source="none until the house says: in most places the contractor pays it on "
        "what he buys and adds none for the client; ask an accountant",
    )
    contingency_rate = factor(
        "Contingency", "%", 5, low=0, high=15, source="common practice, no source: for prices and hours, not for volume"
    )
    overhead_rate = factor("Overhead", "%", 12, low=5, high=35, source="common practice, no source")
    margin_rate = factor("Margin", "%", 18, low=5, high=45, source="common practice, no source: part of the price")
    least_price = factor("Minimum job", "$", 0, low=0, high=5000, source="none until the house says")
    step = factor("Step of the price", "$", 5, low=1, high=100, source="house rule")

    taxed = line(
        "Taxed purchases", "$", total_where(CostTable.amount, CostTable.taxed, "yes"), source="costs marked yes"
    )
    tax = line(
        "Tax", "$", money(taxed * if_given(Terms.tax, tax_rate) / PERCENT), source="on what is bought, never on labor"
    )
    direct = line("Direct cost", "$", total(CostTable.amount) + tax, source="all costs and the tax")
    contingency = line(
        "Contingency, amount",
        "$",
        money(direct * if_given(Terms.contingency, contingency_rate) / PERCENT),
        source="on direct cost",
    )
    overhead = line(
        "Overhead, amount",
        "$",
        money((direct + contingency) * if_given(Terms.overhead, overhead_rate) / PERCENT),
        source="on direct cost and contingency",
    )
    full = line("Full cost", "$", direct + contingency + overhead, source="rounded sums")
    margin = line("Margin taken", "%", if_given(Terms.margin, margin_rate), source="of the job, else of the house")
    exact_price = line(
        "Price before rounding", "$", full / (1 - margin / PERCENT), source="full cost over what is not margin"
    )
    to_cent = line("Price to the cent", "$", money(exact_price), source="halves away from zero")
    least = line(
        "Minimum", "$", if_given(Terms.minimum, least_price), source="of the job, else of the house; once a job"
    )
    price = line(
        "Price",
        "$",
        round_up(largest(to_cent, least), to=step),
        source="the price or the minimum, up to the step",
        may_be_overridden=True,
    )
    by_area = line(
        "Price by area",
        "$/ft2",
        when(total(Slab.net_area) > 0, price / total(Slab.net_area), 0),
        source="price over slab",
    )
    kept = line(
        "Margin kept", "%", when(price > 0, (price - full) / price * PERCENT, 0), source="after rounding and minimum"
    )
    markup = line(
        "The markup it equals", "%", when(full > 0, (price - full) / full * PERCENT, 0), source="on full cost"
    )
    at_least = line(
        "At the minimum", "", when(both(least > 0, to_cent <= least), 1, 0), source="1 when the minimum decides"
    )
    foots = line("Costs that have no price", "", total(CostTable.unpriced), source="0 when every cost is known")


class PriceParts(Section, title="Parts of the price", sheet=_SHEET):
    """The parts add to the price to the cent; the part on completion takes the odd one."""

    deposit_rate = factor("Deposit", "%", 10, low=0, high=50, source="common practice, no source; local law may cap it")
    pour_rate = factor("Due on the day of the pour", "%", 50, low=0, high=90, source="common practice, no source")

    deposit = line(
        "Deposit of the price",
        "$",
        money(smallest(BidPrice.price * deposit_rate / PERCENT, if_given(Company.deposit_cap, BidPrice.price))),
        source="share of the price, capped where the firm says so",
    )
    held = line("Held back", "$", money(BidPrice.price * Terms.retainage / PERCENT), source="retention")
    poured = line(
        "Due when poured",
        "$",
        money(smallest(BidPrice.price * pour_rate / PERCENT, BidPrice.price - deposit - held)),
        source="share of the price, and no more than deposit and retention leave of it",
    )
    completed = line("Due on completion", "$", BidPrice.price - deposit - poured - held, source="what is left")


class PaymentSchedule(Section, title="How it falls due", each=DRAW, sheet=_SHEET):
    """In the order in which it is asked for."""

    amount = line(
        "Falls due",
        "$",
        by_row(DRAW, PriceParts.deposit, PriceParts.poured, PriceParts.completed, PriceParts.held),
        source="parts of the price",
        adds=True,
    )


class ChangeAmount(Section, title="Change orders", each=CHANGE, sheet=_SHEET):
    """Beside the bid, which stays what it was."""

    amount = line(
        "Amount of the change", "$", money(Change.quantity * Change.rate), source="quantity times rate", adds=True
    )
    counts = line("Signed, amount", "$", when(Change.signed.is_("yes"), amount, 0), source="what was signed", adds=True)


class Invoice(Section, title="Price with its changes", sheet=_SHEET):
    """What is billed in the end."""

    changes = line("Signed changes", "$", total(ChangeAmount.counts), source="sum of the signed change orders")
    billed = line(
        "Price and signed changes", "$", BidPrice.price + changes, source="the bid, and what was signed after it"
    )
    unsigned = line("Changes not signed", "$", total(ChangeAmount.amount) - changes, source="not billed until they are")
