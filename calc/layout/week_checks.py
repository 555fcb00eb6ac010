"""The sheet Checks of the week: the ledger of each job is its direct cost, and the totals are those of the jobs."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from calc.layout import week_calendar, week_days, week_front, week_ledger
from calc.layout.week_grid import FIRST, NUMBER_WIDTH, Steps, WeekPage
from calc.layout.week_names import CALENDAR, SHEETS
from calc.layout.week_rows import NOT_READY, NOT_WRITTEN, READY, Week
from calc.trade.money.price import BidPrice
from calc.trade.money.week import WeekComparison
from calc.trade.ordering.order import Order
from calc.trade.work.paid_time import PaidTime

CHECK, ONE, OTHER, UNIT, RESULT, COMPARED = range(FIRST, 7)
WIDTHS = (NUMBER_WIDTH, 24.0, 10.5, 10.5, 6.5, 8.0, *(8.0,) * 7)
OK, FAIL = "ok", "FAIL"
_HEADS = {
    CHECK: ("Check", "l"),
    ONE: ("One route", "r"),
    OTHER: ("Other route", "r"),
    UNIT: ("Unit", "i"),
    RESULT: ("Result", "l"),
    COMPARED: ("What is compared", "l"),
}
_TWO, _WHOLE = "#,##0.00", "#,##0"
_JOB_CHECKS = "job checks"


class _Tie(NamedTuple):
    """A check of the totals: two formulas that share as little as they can, and what they come to."""

    name: str
    one: str
    other: str
    value: float
    unit: str
    compared: str
    format: str = _TWO


def lay_checks(page: WeekPage, week: Week) -> Steps:
    """The whole sheet."""
    page.open(SHEETS, "what ties the week to its jobs")
    page.section("Checks", "a check that fails shows FAIL here, and on the front")
    page.heads(_HEADS)
    first = page.row
    start = 0
    for row in week.rows:
        _lay_job(page, row.job, (start, start + len(row.ledger) - 1), row.of(BidPrice.direct))
        start += len(row.ledger)
        yield
    week.places.put(_JOB_CHECKS, page.name, first, page.row - 1)
    for tie in _ties(week):
        _lay_tie(page, tie)
    week.places.put(week_front.CHECK_ROWS, page.name, first, page.row - 1)
    yield
    _lay_shown(page, week)
    yield


def _lay_job(page: WeekPage, job: str, rows: tuple[int, int], direct: float) -> None:
    """The ledger of a job against its direct cost when the week was written."""
    page.value(CHECK, f"Ledger = job, {job}", "shrunk")
    booked = f"SUM([{week_ledger.TABLE}.{week_ledger.AMOUNT}:{rows[0]}-{rows[1]}])"
    page.formula(ONE, booked, direct, "plainright", _TWO)
    page.value(OTHER, direct, "plainright", _TWO)
    _lay_result(page, "$", "Ledger rows of the job; direct cost in its workbook when the week was written")


def _lay_tie(page: WeekPage, tie: _Tie) -> None:
    page.value(CHECK, tie.name, "plain")
    page.formula(ONE, tie.one, tie.value, "plainright", tie.format)
    page.formula(OTHER, tie.other, tie.value, "plainright", tie.format)
    _lay_result(page, tie.unit, tie.compared)


def _lay_result(page: WeekPage, unit: str, compared: str) -> None:
    one, other = page.at(ONE), page.at(OTHER)
    page.value(UNIT, unit, "quietindent")
    page.formula(RESULT, f'IF(ABS(ROUND({one}-{other},6))>0,"{FAIL}","{OK}")', OK, "plainstrong")
    page.value(COMPARED, compared, "quiet")
    page.done(13.0)


def _ties(week: Week) -> Iterator[_Tie]:
    """The checks of the totals."""
    rows, front, days = week.rows, week_front, week_days.DAYS_TABLE
    ledger = f"SUM([{week_ledger.TABLE}.{week_ledger.AMOUNT}])"
    direct = sum(row.of(BidPrice.direct) for row in rows)
    yield _Tie(
        "Ledger = all jobs",
        ledger,
        f"SUM([{_JOB_CHECKS}.{OTHER}])",
        direct,
        "$",
        "Sum of the ledger; sum of the direct costs of the jobs",
    )
    by_state = (
        f'SUMIFS([{front.TABLE}.{front.PRICE}],[{front.TABLE}.{front.STATE}],"{state}")' for state in (READY, NOT_READY)
    )
    yield _Tie(
        "Prices = total",
        "+".join(by_state),
        f"[{front.TOTALS}.{front.PRICE}@0]",
        sum(row.of(BidPrice.price) for row in rows),
        "$",
        "Prices of the jobs by their state; total on the front",
    )
    for name, on_front, on_days, line, unit in (
        ("Prices by day = jobs", front.PRICE, days.PRICE, BidPrice.price, "$"),
        ("Concrete by day = jobs", front.YARDS, days.YARDS, Order.quantity, "yd3"),
        ("Hours by day = jobs", front.HOURS, days.HOURS, PaidTime.clock_hours, "h"),
    ):
        one, other = f"[{week_days.ALL_DAYS}.{on_days}@0]", f"[{front.TOTALS}.{on_front}@0]"
        total = sum(row.of(line) for row in rows)
        yield _Tie(name, one, other, total, unit, "Sum of By day; total on the front")
    yield from _ledger_ties(float(sum(len(row.ledger) for row in rows)))


def _ledger_ties(entries: float) -> Iterator[_Tie]:
    """Every row of the ledger has what its readers look for."""
    amounts, keys, accounts = (
        f"[{week_ledger.TABLE}.{col}]" for col in (week_ledger.AMOUNT, week_ledger.KEY, week_ledger.ACCOUNT)
    )
    for what, other in (
        ("a key", f"COUNTA({keys})"),
        ("an account", f'COUNTA({accounts})-COUNTIF({accounts},"none")-COUNTIF({accounts},"-")'),
    ):
        compared = f"Rows of the ledger with an amount; rows with {what}"
        yield _Tie(f"Every row has {what}", f"COUNT({amounts})", other, entries, "row", compared, _WHOLE)


def _lay_shown(page: WeekPage, week: Week) -> None:
    """What is told beside the checks."""
    front, days = week_front, week_calendar
    page.section("Shown, not checked")
    unwritten = f'COUNTIF([{front.TABLE}.{front.STATE}],"{NOT_WRITTEN}")'
    over = f'COUNTIF([{days.TABLE}.{days.SHORT}],"{days.OVER}")'
    for name, text, value, unit, words in (
        ("Jobs not written", unwritten, len(week.unwritten), "job", "in no total; each has its reason on the front"),
        ("Days over", over, len(week.calendar.over), "day", f"see {CALENDAR}"),
    ):
        page.value(CHECK, name)
        page.formula(OTHER, text, float(value), "plainright", "0")
        _lay_unit(page, unit, words)
    page.value(CHECK, WeekComparison.travel_between.label)
    page.value(OTHER, max(row.pour.between for row in week.rows), "plainright", "0")
    _lay_unit(page, "min", "Factors; the drive from one stop of a shared truck to the next")


def _lay_unit(page: WeekPage, unit: str, words: str) -> None:
    page.value(UNIT, unit, "quietindent")
    page.value(COMPARED, words, "quiet")
    page.done(13.0)
