"""What a machine costs to rent: for half a day, a day, a week."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import TOOL


class Rental(Section, title="Rental prices", each=TOOL, sheet="Costs"):
    """From the house book; a price that it does not give cannot win."""

    half_price = prices("Rental for half a day", "$/each", TOOL, help="Up to half a day of that machine.")
    day_price = prices("Rental for a day", "$/each", TOOL, help="A day of that machine.")
    week_price = prices("Rental for a week", "$/each", TOOL, help="A week of that machine.")
    half_day = factor("Half a day of rental", "h", 4, low=3, high=5, source="common practice, no source")
    day = factor("Day of rental", "h", 8, low=6, high=24, source="common practice, no source")
    week = factor("Week of rental", "", 5, low=3, high=7, source="common practice, no source: days")

    taxed = line("Machine is taxed", "", by_row(TOOL, *day_price.taxed), source="Prices, row of the day")
