"""How long a price is valid: until its last day, or for a number of days from its date."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Job


class PriceAge(Section, title="Price age", sheet="Costs"):
    """Applies to a price that has no last day."""

    validity = factor(
        "Price validity",
        "days",
        30,
        low=14,
        high=90,
        source="common practice, no source: ready-mix plants quote for 30 days",
    )


def last_day(price: Price) -> Expr:
    """Last valid day of a price, a date: its own, else its date (or the bid date) plus the price validity."""
    return if_given(price.valid, days_after(if_given(price.dated, Job.bid_date), PriceAge.validity))
