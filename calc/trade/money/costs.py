"""The cost table: one row for each purchase, charge, rental, haul, labor task and permit.

Each row is a quantity times a rate, to the cent; a row of $0 stays, with the reason. The rows are in
``cost_rows``.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Job
from calc.trade.levels import GROUP
from calc.trade.money.accounts import GroupAccount
from calc.trade.money.cost_rows import ROWS

COST = named_rows("cost", *(row.label for row in ROWS))
"""The rows of the cost table."""

_ONE_DOLLAR = exact(1, "$")


def _account_of(row: Cost) -> Expr:
    """The account of a cost: its own, else that of its group."""
    of_group = at(GroupAccount.account, row_called(GROUP, row.group))
    own = row.own_account
    return of_group if own is None else when(is_word(own, "none"), of_group, own)


class CostTable(Section, title="Costs", each=COST, sheet="Costs"):
    """Every cost once. Amounts are rounded to the cent here; all later totals add rounded amounts."""

    quantity = line(
        "Quantity",
        "",
        by_row(COST, *(row.bare_quantity for row in ROWS)),
        source="from the takeoff, in the unit beside it",
    )
    rate = line("Rate", "", by_row(COST, *(row.bare_rate for row in ROWS)), source="$ per unit; 0 if not known")
    amount = line(
        "Amount", "$", money(quantity * rate * _ONE_DOLLAR), source="quantity times rate, to the cent", adds=True
    )
    taxed = line("Taxed", "", by_row(COST, *(row.taxed for row in ROWS)), source="Prices; no without a price")
    group = fixed("Cost group", COST, *(row.group for row in ROWS), source="by cost")
    account = line(
        "Account",
        "",
        by_row(COST, *(_account_of(row) for row in ROWS)),
        source="of its price, wage, vehicle or disposal site, else of its cost group",
    )
    known = line(
        "Rate is known", "", by_row(COST, *(row.known for row in ROWS)), source="1 if it has a price; $0 is a price"
    )
    unpriced = line(
        "No price",
        "",
        when(both(quantity > 0, known <= 0), 1, 0),
        source="1 if the quantity is above 0 and there is no rate",
        adds=True,
    )
    last_day = line(
        "Price valid until",
        "day",
        by_row(COST, *(Job.bid_date if row.last_day is None else row.last_day for row in ROWS)),
        source="Prices; the bid date for a rate that is not a price",
    )
    expired = line(
        "Price has expired",
        "",
        when(both(quantity > 0, last_day < Job.bid_date), 1, 0),
        source="1 if the quantity is above 0 and the price has expired",
        adds=True,
    )
    zero_reason = line(
        "Reason for 0",
        "",
        when(
            abs_(amount) > 0,
            "-",
            when(unpriced > 0, "0: the company book has no price", by_row(COST, *(f"0: {row.none}" for row in ROWS))),
        ),
        source="the reason for an amount of $0",
    )
