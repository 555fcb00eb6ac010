"""Equipment rental prices: half day, day and week."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import TOOL


class Rental(Section, title="Rental prices", each=TOOL, sheet="Costs"):
    """From the company book; a period without a price is never chosen."""

    half_price = prices("Rental for half a day", "$/each", TOOL, help="Price for up to half a day of that machine.")
    day_price = prices("Rental for a day", "$/each", TOOL, help="Price per day of that machine.")
    week_price = prices("Rental for a week", "$/each", TOOL, help="Price per week of that machine.")
    half_day = factor("Rental half day", "h", 4, low=3, high=5, source="common practice, no source")
    day = factor("Rental day", "h", 8, low=6, high=24, source="common practice, no source")
    week = factor("Rental week, days", "", 5, low=3, high=7, source="common practice, no source")

    taxed = line("Rental is taxed", "", by_row(TOOL, *day_price.taxed), source="Prices, row of the day rental")
