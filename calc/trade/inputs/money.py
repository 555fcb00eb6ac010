"""What a person types about the price: terms of this job, and change orders after the bid."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import CHANGE, DRAW


class Terms(Section, title="Price", table="Site conditions"):
    """Terms of this job; blank is the company's own factor."""

    permit = given(
        "Permit", "$", low=0, ask_high=2000, example="85", help="Cost of the permit; blank if not known yet."
    )
    margin = given(
        "Job margin",
        "%",
        low=0,
        high=90,
        ask_low=5,
        ask_high=45,
        example="20",
        help="Profit as a share of the price.",
    )
    overhead = given("Job overhead", "%", low=0, high=60, example="12", help="Overhead on direct cost and contingency.")
    contingency = given(
        "Job contingency",
        "%",
        low=0,
        high=50,
        example="8",
        help="Contingency on direct cost, for prices rather than volume.",
    )
    tax = given("Job sales tax", "%", low=0, high=30, example="7.5", help="Sales tax on what is bought for this job.")
    minimum = given("Job minimum", "$", low=0, example="900", help="Minimum price of this job.")
    retainage = given(
        "Retainage",
        "%",
        default=0,
        low=0,
        high=20,
        ask_high=10,
        example="5",
        help="Share of the price that the client retains until the end.",
    )


class Billing(Section, title="Invoice", table="Site conditions"):
    """What the next invoice bills; it bills the signed change orders that are billed with that payment too."""

    draw = choice(
        "Invoice bills",
        *DRAW.axis.words,
        default="deposit on signing",
        help="Payment that the invoice bills; the payments before it count as billed.",
    )
    day = date("Invoice date", help="Date of the invoice; blank is filled in by hand.", example="2026-04-27")
    due = date("Invoice due", help="Date on which it is due; blank is filled in by hand.", example="2026-05-07")
    contract_day = date(
        "Contract signed on", help="Date on which the client signed; blank is filled in by hand.", example="2026-04-15"
    )


class Change(Section, title="Changes", each=CHANGE, table="Changes"):
    """Change orders, numbered in this order. The bid does not change, and a change counts once it is signed."""

    what = text("What", help="Description of the change.", example="two more feet at the gate")
    reason = text("Reason", help="Why the work changes.", example="the gate was moved after the bid")
    day = date("Day", help="Date it was agreed.", example="2026-04-28")
    quantity = given("Quantity", "", default=1, low=0, example="8", help="Quantity; quantity times rate is the amount.")
    unit_of_measure = text("Unit", help="Unit of the quantity.", example="panel")
    rate = given(
        "Rate",
        "$",
        required=True,
        signed=True,
        example="22.5",
        help="Price per unit, margin included; negative is a credit.",
    )
    days_added = given(
        "Days added",
        "",
        default=0,
        low=0,
        high=60,
        whole=True,
        example="1",
        help="Working days that it adds to the job.",
    )
    signed = yes_no("Signed", help="Whether the client has signed it.")
    billed_with = choice(
        "Billed with",
        *DRAW.axis.words,
        default="balance on completion",
        needs=((signed, "yes"),),
        help="Payment with which it is billed in full, once it is signed.",
    )
    notes = text("Notes", help="Anything else.", example="agreed by phone first")
