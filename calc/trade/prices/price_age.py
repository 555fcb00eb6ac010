"""How long a price is good for: to its last day, or for so many days from its own."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Job


class PriceAge(Section, title="Age of a price", sheet="Costs"):
    """How long a price is taken as one, where it says no last day."""

    most = factor(
        "Oldest price", "days", 30, low=14, high=90, source="common practice, no source: plants quote for a month"
    )


def last_day(price: Price) -> Expr:
    """The last day of a price: its own, or so many days after it was given; the bid's day goes for one without any."""
    return if_given(price.valid, days_after(if_given(price.dated, Job.bid_date), PriceAge.most))
