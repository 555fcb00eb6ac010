"""What a person says of the price: terms of this job, and changes that were ordered after the bid."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import CHANGE


class Terms(Section, title="Price", table="Site conditions"):
    """Terms of this job; blank takes the house's own factors."""

    permit = given(
        "Permit", "$", low=0, ask_high=2000, example="85", help="What the permit costs; blank is not asked yet."
    )
    margin = given(
        "Margin of this job",
        "%",
        low=0,
        high=90,
        ask_low=5,
        ask_high=45,
        example="20",
        help="Part of the price that is kept.",
    )
    overhead = given("Overhead of this job", "%", low=0, high=60, example="12", help="On direct cost and contingency.")
    contingency = given(
        "Contingency of this job", "%", low=0, high=50, example="8", help="On direct cost: for prices, not for volume."
    )
    tax = given("Tax of this job", "%", low=0, high=30, example="7.5", help="Sales tax on what is bought for it.")
    least = given("Minimum of this job", "$", low=0, example="900", help="The least that this job is done for.")
    retention = given(
        "Retention", "%", default=0, low=0, high=20, ask_high=10, example="5", help="Part of the price held back."
    )


class Change(Section, title="Changes", each=CHANGE, table="Changes"):
    """Change orders beside an unchanged bid: numbered in this order, signed before they count."""

    what = text("What", help="What is changed.", example="two more feet at the gate")
    day = date("Day", help="The day it was agreed.", example="2026-04-28")
    quantity = given(
        "Quantity", "", default=1, low=0, example="8", help="How much of it; with the rate it makes the amount."
    )
    counted_in = text("Counted as", help="What the quantity counts.", example="panel")
    rate = given(
        "Rate",
        "$",
        required=True,
        signed=True,
        example="22.5",
        help="The price of one, margin included; less than 0 is a credit.",
    )
    signed = yes_no("Signed", help="Whether the client has signed it.")
    notes = text("Notes", help="Anything else.", example="by telephone first")
