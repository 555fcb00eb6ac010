"""The table of costs: a row for everything that is bought, paid, rented, hauled, worked and permitted.

Each row is a quantity times a rate, to the cent; a row that comes to nothing stays, and says why. The rows stand in
``cost_rows``.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Job
from calc.trade.money.cost_rows import ROWS

COST = named_rows("cost", *(row.label for row in ROWS))
"""The rows of the table."""

ONE_DOLLAR = exact(1, "$")


class CostTable(Section, title="Costs", each=COST, sheet="Costs"):
    """Every cost once; amounts are rounded to the cent here, and everything after adds rounded amounts."""

    quantity = line("How much", "", by_row(COST, *(row.bare_quantity for row in ROWS)), source="in the unit beside it")
    rate = line("Rate", "", by_row(COST, *(row.bare_rate for row in ROWS)), source="$ for one; 0 where it is not known")
    amount = line(
        "Amount", "$", money(quantity * rate * ONE_DOLLAR), source="how much times rate, to the cent", adds=True
    )
    taxed = line("Taxed", "", by_row(COST, *(row.taxed for row in ROWS)), source="Prices; nothing without a price is")
    group = line("Group", "", by_row(COST, *(row.group for row in ROWS)), source="where it is booked")
    known = line(
        "Rate is known", "", by_row(COST, *(row.known for row in ROWS)), source="1 with a price; $0 is a price"
    )
    unpriced = line(
        "Lacks a price",
        "",
        when(both(quantity > 0, known <= 0), 1, 0),
        source="1 where there is some of it and no rate",
        adds=True,
    )
    last_day = line(
        "Good until",
        "day",
        by_row(COST, *(Job.bid_date if row.last_day is None else row.last_day for row in ROWS)),
        source="Prices; the day of the bid for a rate that is no price",
    )
    stale = line(
        "Price is stale",
        "",
        when(both(quantity > 0, last_day < Job.bid_date), 1, 0),
        source="1 where it is needed and its price is past",
        adds=True,
    )
    remark = line(
        "Why 0",
        "",
        when(
            abs_(amount) > 0,
            "-",
            when(unpriced > 0, "0: the house book has no price", by_row(COST, *(f"0: {row.none}" for row in ROWS))),
        ),
        source="a cost that came to nothing says why",
    )
