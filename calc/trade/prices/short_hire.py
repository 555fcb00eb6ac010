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


def _is_known(of_period: PriceLine, tool: str) -> Expr:
    """Whether the company book has that price of the machine."""
    return is_given(of_period.prices[of_period.level.axis.words.index(tool)])


def short_hire(called: str, title: str, tool: str, needed: Expr) -> ShortHire:
    """The hire of ``tool`` for ``needed`` hours: half a day where that is enough, else days or weeks."""

    class Hire(Section, title=title, sheet="Order and placing", called=called):
        """The cheapest period with a price; none without hours."""

        hours = line("Hours of hire", "h", needed, source="hours of its tasks")
        days = line("Days of hire", "each", round_up(hours / Rental.day), source="hours over a rental day, rounded up")
        by_day = line("Hire by the day", "$", money(days * look_up(Rental.day_price, tool)), source="0 without a price")
        by_week = line(
            "Hire by the week",
            "$",
            money(count_of(round_up(days.count / Rental.week), "each") * look_up(Rental.week_price, tool)),
            source="days over a rental week, rounded up; 0 without a price",
        )
        longer = line(
            "Hire by days or weeks",
            "$",
            when(
                both(_is_known(Rental.day_price, tool), _is_known(Rental.week_price, tool)),
                smallest(by_day, by_week),
                by_day + by_week,
            ),
            source="the cheaper of those that have a price",
        )
        half_day_fits = line(
            "Half a day is enough",
            "",
            when(both(hours <= Rental.half_day, _is_known(Rental.half_price, tool)), 1, 0),
            source="1 if it is long enough, and has a price",
        )
        shortest = line(
            "Hire for the shortest period",
            "$",
            when(half_day_fits > 0, money(exact(1, "each") * look_up(Rental.half_price, tool)), longer),
            source="half a day if it is enough, else days or weeks",
        )
        cost = line(
            "Cost of the hire",
            "$",
            when(
                hours > 0,
                when(
                    either(_is_known(Rental.day_price, tool), _is_known(Rental.week_price, tool)),
                    smallest(shortest, longer),
                    shortest,
                ),
                0,
            ),
            source="the cheaper of those that have a price; none without hours",
        )

    return ShortHire(Hire, Hire.cost)
