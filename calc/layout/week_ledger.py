"""The sheet Ledger of the week: one row a cost of a job, with no other row between.

So it pivots, and stacks on the ledgers of other weeks.
"""

from __future__ import annotations

from math import isnan

from calc.formula.functions import NONE
from calc.layout.week_grid import FIRST, NUMBER_WIDTH, Steps, WeekPage
from calc.layout.week_names import SHEETS
from calc.layout.week_rows import LedgerRow, Week, WeekRow

KEY, BID_DATE, JOB, LINE, QUANTITY, UNIT, RATE, AMOUNT, TAXED, GROUP, ACCOUNT = range(FIRST, 12)
WIDTHS = (NUMBER_WIDTH, 12.5, 11.5, 8.0, 27.6, 9.0, 7.4, 9.0, 10.5, 7.0, 10.0, 8.4)
TABLE = "ledger"
_HEADS = {
    KEY: ("Key", "l"),
    BID_DATE: ("Bid date", "r"),
    JOB: ("Job", "i"),
    LINE: ("Line", "l"),
    QUANTITY: ("Quantity", "r"),
    UNIT: ("Unit", "i"),
    RATE: ("Rate, $", "r"),
    AMOUNT: ("Amount, $", "r"),
    TAXED: ("Taxed", "i"),
    GROUP: ("Group", "l"),
    ACCOUNT: ("Account", "r"),
}


def lay_ledger(page: WeekPage, week: Week) -> Steps:
    """The whole sheet: its head is in row 3, and everything below is a row of the ledger."""
    page.open(SHEETS, "a row a cost line, to pivot and to stack on other weeks")
    page.heads(_HEADS)
    first = page.row
    yield
    for row in week.rows:
        for number, entry in enumerate(row.ledger, start=1):
            _lay_entry(page, week, row, entry, f"{row.job}-{number:03d}")
        yield
    week.places.put(TABLE, page.name, first, max(first, page.row - 1))


def _lay_entry(page: WeekPage, week: Week, row: WeekRow, entry: LedgerRow, key: str) -> None:
    known = not isnan(entry.rate)
    page.value(KEY, key, "shrunk")
    page.value(BID_DATE, row.bid_date, "plainright", week.dates.full)
    page.value(JOB, row.job, "shrunkindent")
    page.value(LINE, entry.label, "shrunk")
    page.value(QUANTITY, entry.quantity, "plainright", "#,##0.00##")
    page.value(UNIT, entry.unit or "-", "plainindent")
    page.value(RATE, entry.rate if known else NONE, "plainright", "#,##0.00##")
    quantity, rate = page.at(QUANTITY), page.at(RATE)
    page.formula(
        AMOUNT,
        f"IF(ISNUMBER({rate}),ROUND(ROUND({quantity}*{rate},6),2),0)",
        entry.amount,
        "plainright",
        "#,##0.00",
    )
    page.value(TAXED, entry.taxed, "plainindent")
    page.value(GROUP, entry.group, "plain")
    page.value(ACCOUNT, entry.account, "shrunkright")
    page.done()
