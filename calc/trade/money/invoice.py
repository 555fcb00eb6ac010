"""The invoice: the contract to date, what is due now, and what was billed before and is to come.

Each of the three adds up, and the last comes to the first.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.money import Billing, Change
from calc.trade.levels import CONTRACT_PART, DRAW, INVOICE_PART
from calc.trade.money.price import BidPrice, ChangeAmount, Invoice, PaymentSchedule, PriceParts

_SHEET = "Costs"


class InvoiceDraw(Section, title="Payment billed", sheet=_SHEET):
    """Retainage is held from the balance on completion, and released as the last payment."""

    row = line(
        "Number of the payment billed",
        "",
        largest(1, look_up(PaymentSchedule.number, Billing.draw)),
        source="input of the job; the deposit if nothing was typed",
    )
    held = line(
        "Retainage held by this invoice",
        "$",
        when(Billing.draw.is_("balance on completion"), PriceParts.retainage, 0),
        source="retainage, on the invoice of the balance",
    )
    released = line(
        "Retainage released by this invoice",
        "$",
        when(Billing.draw.is_("release of retainage"), PriceParts.retainage, 0),
        source="retainage, on the last invoice",
    )


class Billed(Section, title="Billed and to come", each=DRAW, sheet=_SHEET):
    """Each payment with the change orders that are billed with it; payments are billed in their order."""

    changes = line(
        "Change orders billed with it",
        "$",
        total_where(ChangeAmount.signed_amount, Change.billed_with, row_word(DRAW)),
        source="signed change orders that are billed with the payment",
        adds=True,
    )
    amount = line(
        "Payment with change orders",
        "$",
        PaymentSchedule.amount + changes,
        source="payment of the schedule plus its change orders",
        adds=True,
    )
    place = line(
        "Place after the payment billed",
        "",
        row_number(DRAW) - InvoiceDraw.row,
        source="number of the payment less the number of the one billed: 0 for the one billed, negative before it",
    )
    earlier = line("Billed before", "$", when(place < 0, amount, 0), source="payments before it", adds=True)
    now = line("This invoice", "$", when(equals(place, 0), amount, 0), source="the payment billed", adds=True)
    later = line("To come", "$", when(place > 0, amount, 0), source="payments after it", adds=True)
    by_place = line(
        "State of the payment, by its place",
        "",
        when(
            place < 0,
            "billed before",
            when(
                equals(place, 0),
                "this invoice",
                by_row(DRAW, "to come", "to come", "to come", "held until it is released"),
            ),
        ),
        source="by its place among the payments",
    )
    state = line(
        "State of the payment",
        "",
        when(equals(amount, 0), by_row(DRAW, "none", "none", "none", "none by this contract"), by_place),
        source="by its amount and its place",
    )


class ContractSum(Section, title="Contract to date", each=CONTRACT_PART, sheet=_SHEET):
    """The first block of the invoice."""

    amount = line(
        "Contract amount",
        "$",
        by_row(CONTRACT_PART, BidPrice.price, Invoice.changes),
        source="price, and signed change orders",
        adds=True,
    )
    note = line(
        "Note to the contract amount",
        "",
        by_row(
            CONTRACT_PART,
            "the price of the proposal",
            when(
                total(ChangeAmount.is_signed) > 0,
                joined(count_of(total(ChangeAmount.is_signed), "each"), " signed; those not signed are not billed"),
                "none",
            ),
        ),
        source="how many are signed",
    )


class InvoicePart(Section, title="This invoice", each=INVOICE_PART, sheet=_SHEET):
    """What is due now. The payment on completion is shown in full, less the retainage that is held from it."""

    amount = line(
        "Amount of the part",
        "$",
        by_row(
            INVOICE_PART,
            at(PaymentSchedule.amount, InvoiceDraw.row) + InvoiceDraw.held - InvoiceDraw.released,
            at(Billed.changes, InvoiceDraw.row),
            0 - InvoiceDraw.held,
            InvoiceDraw.released,
        ),
        source="payment billed, its change orders, retainage held from it or released",
        adds=True,
    )
    note = line(
        "Note to the part",
        "",
        by_row(
            INVOICE_PART,
            Billing.draw,
            "in full, once signed",
            when(
                PriceParts.retainage <= 0,
                "none by this contract",
                when(InvoiceDraw.held > 0, "held until it is released", "held from the balance on completion"),
            ),
            when(PriceParts.retainage <= 0, "none by this contract", "billed last"),
        ),
        source="by the payment billed",
    )


class InvoiceDue(Section, title="Due", sheet=_SHEET):
    """The sum of the parts, which is the payment billed with its change orders."""

    due = line("Due on this invoice", "$", total(InvoicePart.amount), source="sum of the parts of this invoice")


INVOICING = (InvoiceDraw, Billed, ContractSum, InvoicePart, InvoiceDue)
"""The sections of an invoice, in order."""
