"""The sheet By day of the week: what each day takes, rentals that jobs share, and what to have on hand."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import isnan, nan

from calc.layout import week_front, week_ledger
from calc.layout.arial import on_lines
from calc.layout.week_dates import CLOCK, NO_DATE
from calc.layout.week_grid import DASH, FIRST, NUMBER_WIDTH, Steps, WeekPage
from calc.layout.week_names import SHEETS
from calc.layout.week_rows import Week, WeekRow
from calc.layout.week_visits import VISITS, visits_of
from calc.trade.money.price import BidPrice
from calc.trade.money.week import FIRST_DAY, ON_HAND, POUR_DAY, SEAL_DAY
from calc.trade.ordering.order import Order

WIDTHS = (NUMBER_WIDTH, 14.0, *(8.5,) * 12)


class DAYS_TABLE:
    """The table of quantities by day: its name, and its columns."""

    TABLE = "days"
    DAY, POURS, YARDS, TRUCKS, ARRIVES, LOADS, TONS, ROCK, HOURS, FINISHERS, DOWELS, FIBER, PRICE = range(FIRST, 14)


_HEAD_AND_SUM = 40.0
"""Points of the head of a table and of its sum."""

ALL_DAYS, RENTALS = "all days", "rentals"

_TWO, _ONE, _WHOLE = (f'{each};-{each};"{DASH}"' for each in ("#,##0.00", "#,##0.0", "#,##0"))
_FORMATS = {
    DAYS_TABLE.POURS: _WHOLE, DAYS_TABLE.YARDS: _TWO, DAYS_TABLE.TRUCKS: _WHOLE, DAYS_TABLE.LOADS: _WHOLE,
    DAYS_TABLE.TONS: _ONE, DAYS_TABLE.ROCK: _ONE, DAYS_TABLE.HOURS: _TWO, DAYS_TABLE.FINISHERS: _TWO,
    DAYS_TABLE.DOWELS: _WHOLE, DAYS_TABLE.FIBER: _WHOLE, DAYS_TABLE.PRICE: _WHOLE,
}  # fmt: skip
_HEADS = {
    DAYS_TABLE.DAY: ("Day", "l"),
    DAYS_TABLE.POURS: ("Pours", "r"),
    DAYS_TABLE.YARDS: ("Concrete,\nyd3", "r"),
    DAYS_TABLE.TRUCKS: ("Trucks", "r"),
    DAYS_TABLE.ARRIVES: ("First\ntruck", "r"),
    DAYS_TABLE.LOADS: ("Spoil,\nloads", "r"),
    DAYS_TABLE.TONS: ("Spoil,\ntons", "r"),
    DAYS_TABLE.ROCK: ("Rock,\ntons", "r"),
    DAYS_TABLE.HOURS: ("Hours\npaid", "r"),
    DAYS_TABLE.FINISHERS: ("of these\nfinishers", "r"),
    DAYS_TABLE.DOWELS: ("Dowels", "r"),
    DAYS_TABLE.FIBER: ("Fiber,\nbags", "r"),
    DAYS_TABLE.PRICE: ("Pours,\n$", "r"),
}
_FROM_FRONT = {
    DAYS_TABLE.YARDS: week_front.YARDS,
    DAYS_TABLE.TRUCKS: week_front.TRUCKS,
    DAYS_TABLE.PRICE: week_front.PRICE,
}
_FROM_VISITS = {
    DAYS_TABLE.LOADS: VISITS.LOADS, DAYS_TABLE.TONS: VISITS.TONS, DAYS_TABLE.ROCK: VISITS.ROCK,
    DAYS_TABLE.HOURS: VISITS.HOURS, DAYS_TABLE.FINISHERS: VISITS.FINISHERS, DAYS_TABLE.DOWELS: VISITS.DOWELS,
    DAYS_TABLE.FIBER: VISITS.FIBER,
}  # fmt: skip
_OF_A_JOB = {DAYS_TABLE.YARDS: Order.quantity, DAYS_TABLE.TRUCKS: Order.trucks, DAYS_TABLE.PRICE: BidPrice.price}


def lay_days(page: WeekPage, week: Week) -> Steps:
    """The whole sheet."""
    page.open(SHEETS, "what each day takes")
    yield from _lay_quantities(page, week)
    yield from _lay_rentals(page, week)
    yield from _lay_on_hand(page, week)


def _lay_quantities(page: WeekPage, week: Week) -> Steps:
    page.section(
        "Quantities by day",
        "concrete and fiber on the pour day; spoil, rock and dowels on the first day of the job; hours on each visit",
    )
    page.heads(_HEADS)
    sums = _Sums(week)
    first = page.row
    for day in sums.days:
        _lay_day(page, week, day, sums)
        yield
    week.places.put(DAYS_TABLE.TABLE, page.name, first, page.row - 1)
    page.value(DAYS_TABLE.DAY, "All days", "sumwords")
    for col, format_text in _FORMATS.items():
        total = sum(sums.of(day, col) for day in sums.days)
        page.formula(col, f"SUM([{DAYS_TABLE.TABLE}.{col}])", total, "sumright", format_text)
    page.ruled("sumwords")
    week.places.put(ALL_DAYS, page.name, page.row, page.row)
    page.done(13.0)
    yield


def _lay_day(page: WeekPage, week: Week, day: float, sums: _Sums) -> None:
    """What one day takes; of jobs without a day where it is NaN."""
    page.value(DAYS_TABLE.DAY, NO_DATE if isnan(day) else day, "plain", week.dates.day)
    key = page.at(DAYS_TABLE.DAY)
    poured = f"COUNTIFS([{week_front.TABLE}.{week_front.POUR}],{key})"
    page.formula(DAYS_TABLE.POURS, poured, sums.of(day, DAYS_TABLE.POURS), "plainright", _WHOLE)
    for asked, table, of_day in (
        (_FROM_FRONT, week_front.TABLE, week_front.POUR),
        (_FROM_VISITS, VISITS.TABLE, VISITS.DAY),
    ):
        for col, column in asked.items():
            text = f"SUMIFS([{table}.{column}],[{table}.{of_day}],{key})"
            page.formula(col, text, sums.of(day, col), "plainright", _FORMATS[col])
    arrives = sums.arrives(day)
    page.value(DAYS_TABLE.ARRIVES, DASH if arrives is None else arrives / 24, "plainright", CLOCK)
    page.done(13.0)


class _Sums:
    """The values of the quantities of each day, grouped once; the jobs without a day come last."""

    def __init__(self, week: Week) -> None:
        self._arrivals: dict[float | None, list[float]] = {}
        for row in week.rows:
            self._arrivals.setdefault(_key(row.pour_date), []).append(row.pour.arrives)
        self._poured = _grouped([(row.pour_date, *(row.of(each) for each in _OF_A_JOB.values())) for row in week.rows])
        self._visits = _grouped([(each.day, *each.numbers) for row in week.rows for each in visits_of(week, row)])
        every = {*self._poured, *self._visits}
        self.days: list[float] = sorted(day for day in every if day is not None) + ([nan] if None in every else [])

    def arrives(self, day: float) -> float | None:
        """The hour at which the first truck of a day is asked for; None where nobody typed it."""
        return min((each for each in self._arrivals.get(_key(day), []) if not isnan(each)), default=None)

    def of(self, day: float, col: int) -> float:
        """The value of a column of the table on a day."""
        if col == DAYS_TABLE.POURS:
            return float(len(self._arrivals.get(_key(day), [])))
        if col in _OF_A_JOB:
            sums, place = self._poured.get(_key(day)), list(_OF_A_JOB).index(col)
        else:
            sums, place = self._visits.get(_key(day)), _FROM_VISITS[col] - VISITS.PEOPLE
        return sums[place] if sums else 0.0


def _grouped(rows: Sequence[tuple[float, ...]]) -> dict[float | None, Sequence[float]]:
    """The sums of rows of numbers by the first of them, a day."""
    days = {_key(day) for day, *_ in rows}
    if len(days) == len(rows):
        return {_key(day): numbers for day, *numbers in rows}
    import pandas as pd  # the import takes as long as three jobs, and one job has no two rows of a day

    sums = pd.DataFrame(rows).groupby(0, dropna=False).sum()
    return {_key(float(day)): [float(each) for each in numbers] for day, *numbers in sums.itertuples()}


def _key(day: float) -> float | None:
    """A day as a key: two that are not known are the same."""
    return None if isnan(day) else day


_DAY, _TOOL, _HOURS, _BIDS, _ONE_FOR_ALL, _SAVES, _BY = 1, 2, 4, 5, 6, 7, 8


def _lay_rentals(page: WeekPage, week: Week) -> Steps:
    keep = 13.0 * len(week.rentals) + _HEAD_AND_SUM
    page.section("Rentals by day", "one machine may serve two jobs; no price counts on it", keep)
    page.heads(
        {
            _DAY: ("Day", "l"),
            _TOOL: ("Machine", "l"),
            _HOURS: ("Hours", "r"),
            _BIDS: ("In the\nbids, $", "r"),
            _ONE_FOR_ALL: ("One for\nall, $", "r"),
            _SAVES: ("Saves, $", "r"),
            _BY: ("Jobs", "i"),
        }
    )
    first = page.row
    for each in week.rentals:
        page.value(_DAY, each.day, "plain", week.dates.day)
        page.value(_TOOL, each.tool, "plain")
        page.value(_HOURS, sum(use.hours for use in each.uses), "plainright", _ONE)
        page.value(_BIDS, each.in_bids, "plainright", _TWO)
        page.value(_ONE_FOR_ALL, each.one_for_all, "plainright", _TWO)
        bids, one = page.at(_BIDS), page.at(_ONE_FOR_ALL)
        page.formula(_SAVES, f"{bids}-{one}", each.in_bids - each.one_for_all, "plainright", _TWO)
        _lay_names(page, _BY, [use.job for use in each.uses])
        yield
    if not week.rentals:
        page.value(_DAY, "none", "quiet")
        page.done()
        return
    week.places.put(RENTALS, page.name, first, page.row - 1)
    page.value(_DAY, "All days", "sumwords")
    for col, value in (
        (_BIDS, sum(each.in_bids for each in week.rentals)),
        (_ONE_FOR_ALL, sum(each.one_for_all for each in week.rentals)),
        (_SAVES, sum(each.in_bids - each.one_for_all for each in week.rentals)),
    ):
        page.formula(col, f"SUM([{RENTALS}.{col}])", value, "sumright", _TWO)
    page.ruled("sumwords")
    page.done(13.0)
    yield


def _lay_names(page: WeekPage, col: int, names: Sequence[str]) -> None:
    """Names of jobs to the end of the row, and on in rows below."""
    for number, line in enumerate(on_lines(", ".join(names), page.room(col) - 10)):
        page.value(col, line, "quietindent")
        page.done(13.0 if number == 0 else None)


_WHEN, _ITEM, _QUANTITY, _UNIT, _WHO = 1, 2, 6, 7, 8


def _lay_on_hand(page: WeekPage, week: Week) -> Steps:
    items = _on_hand(week)
    keep = 13.0 * len(items) + _HEAD_AND_SUM
    page.section("To have on hand", "as the jobs count it, by the first day it is wanted", keep)
    page.heads(
        {
            _WHEN: ("First day", "l"),
            _ITEM: ("Item", "l"),
            _QUANTITY: ("Quantity", "r"),
            _UNIT: ("Unit", "i"),
            _WHO: ("Jobs", "i"),
        }
    )
    for item in items:
        page.value(_WHEN, NO_DATE if isnan(item.day) else item.day, "plain", week.dates.day)
        page.value(_ITEM, item.label, "plain")
        shown = _WHOLE if item.quantity == int(item.quantity) else _ONE
        if item.label in ON_HAND:
            ledger, amount, name = week_ledger.TABLE, week_ledger.QUANTITY, week_ledger.LINE
            text = f"SUMIFS([{ledger}.{amount}],[{ledger}.{name}],{page.at(_ITEM)})"
            page.formula(_QUANTITY, text, item.quantity, "plainright", shown)
        else:
            page.value(_QUANTITY, item.quantity, "plainright", shown)
        page.value(_UNIT, item.unit, "quietindent")
        _lay_names(page, _WHO, item.jobs)
        yield
    if not items:
        page.value(_WHEN, "none", "quiet")
        page.done()
        yield


@dataclass(slots=True)
class _Item:
    """Something to have on hand: how much of it, for which jobs, and the first day on which it is wanted."""

    label: str
    unit: str
    day: float
    quantity: float
    jobs: list[str]


def _on_hand(week: Week) -> list[_Item]:
    items: dict[str, _Item] = {}
    for row in week.rows:
        bought = ((each.label, each.quantity, each.unit) for each in row.ledger if each.label in ON_HAND)
        for label, quantity, unit in (*bought, *row.lent):
            day = _wanted(row, ON_HAND.get(label, FIRST_DAY))
            item = items.setdefault(label, _Item(label, unit, nan, 0.0, []))
            item.quantity += quantity
            item.jobs.append(row.job)
            item.day = day if isnan(item.day) else min(item.day, item.day if isnan(day) else day)
    return sorted(items.values(), key=lambda each: (isnan(each.day), each.day if not isnan(each.day) else 0.0))


def _wanted(row: WeekRow, when: str) -> float:
    """The day on which a job first wants something; NaN where its days are not known."""
    visits = {POUR_DAY: "pour", SEAL_DAY: "seal"}
    days: Iterable[float] = (each.day for each in row.days.days if when == FIRST_DAY or each.visit == visits[when])
    return min(days, default=nan)
