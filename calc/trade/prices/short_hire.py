"""A machine hired for so many hours, at the cheapest period that has a price: to compare before anything is chosen."""

from __future__ import annotations

from dataclasses import dataclass

from calc.declare import *
from calc.trade.prices.rental import Rental


@dataclass(frozen=True)
class ShortHire:
    """What hiring a machine for some hours costs."""

    section: type[Section]
    cost: Line


def short_hire(called: str, title: str, tool: str, needed: Expr) -> ShortHire:
    """The hire of ``tool`` for ``needed`` hours: half a day where that is enough, else days or weeks."""

    class Hire(Section, title=title, sheet="Order and placing", called=called):
        """The cheapest period with a price; none without hours."""

        hours = line("Hours of hire", "h", needed, source="hours of its tasks")
        days = line("Days of hire", "each", round_up(hours / Rental.day), source="hours over a rental day, rounded up")
        weeks = line(
            "Weeks of hire", "each", round_up(days.count / Rental.week), source="days over a rental week, rounded up"
        )
        by_day = line("Hire by the day", "$", money(days * look_up(Rental.day_price, tool)), source="0 without a price")
        by_week = line(
            "Hire by the week", "$", money(weeks * look_up(Rental.week_price, tool)), source="0 without a price"
        )
        longer = line(
            "Hire by days or weeks",
            "$",
            when(both(by_day > 0, by_week > 0), smallest(by_day, by_week), by_day + by_week),
            source="the cheaper of those that have a price",
        )
        half_day = line(
            "Hire for half a day",
            "$",
            when(hours <= Rental.half_day, money(exact(1, "each") * look_up(Rental.half_price, tool)), 0),
            source="0 if it is too short, or has no price",
        )
        cost = line(
            "Cost of the hire",
            "$",
            when(
                hours > 0,
                when(both(half_day > 0, longer > 0), smallest(half_day, longer), half_day + longer),
                0,
            ),
            source="the cheaper of those that have a price",
        )

    return ShortHire(Hire, Hire.cost)
