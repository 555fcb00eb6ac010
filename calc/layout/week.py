"""The workbook of the week: a row a job, the calendar, quantities by day, shared loads, the ledger, and checks.

It has values of the job workbooks, since no workbook links into another; all that follows from them here is a formula.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from calc.layout import week_calendar, week_checks, week_days, week_front, week_ledger, week_loads, week_visits
from calc.layout.week_dates import monday_of
from calc.layout.week_grid import Places, Steps, WeekPage, sheet_plan
from calc.layout.week_names import CALENDAR, CHECKS, DAYS, JOBS, LEDGER_SHEET, SHARED_LOADS, VISITS_SHEET
from calc.layout.week_rows import LedgerRow, UnwrittenJob, Week, WeekRow, week_row
from calc.layout.workbook import SheetPlan

__all__ = [
    "CALENDAR",
    "CHECKS",
    "DAYS",
    "JOBS",
    "LEDGER_SHEET",
    "SHARED_LOADS",
    "VISITS_SHEET",
    "LedgerRow",
    "UnwrittenJob",
    "Week",
    "WeekRow",
    "title_of",
    "week_row",
    "week_sheets",
]

_LAID: tuple[tuple[str, tuple[float, ...], Callable[[WeekPage, Week], Steps]], ...] = (
    (JOBS, week_front.WIDTHS, week_front.lay_front),
    (CALENDAR, week_calendar.WIDTHS, week_calendar.lay_calendar),
    (DAYS, week_days.WIDTHS, week_days.lay_days),
    (SHARED_LOADS, week_loads.WIDTHS, week_loads.lay_shared_loads),
    (VISITS_SHEET, week_visits.WIDTHS, week_visits.lay_visits),
    (LEDGER_SHEET, week_ledger.WIDTHS, week_ledger.lay_ledger),
    (CHECKS, week_checks.WIDTHS, week_checks.lay_checks),
)


def title_of(week: Week) -> str:
    """The title of the workbook: the week of the first bid."""
    first = min(row.bid_date for row in week.rows)
    return f"Week of {week.dates.full_words(monday_of(first))}"


def week_sheets(week: Week) -> list[SheetPlan]:
    """The sheets of a week with at least one job that was written."""
    label = title_of(week)
    return [
        sheet_plan(partial(_opened, name, widths, label, week.places), partial(_laid, lay=lay, week=week))
        for name, widths, lay in _LAID
    ]


def _opened(name: str, widths: tuple[float, ...], label: str, places: Places) -> WeekPage:
    """A sheet before anything is laid on it."""
    titled = label if name == JOBS else name
    of_rows = name in (VISITS_SHEET, LEDGER_SHEET)
    heads, repeated = (3, 3) if of_rows else (2, 1)
    page = WeekPage(name, widths, titled, frozen_rows=heads, frozen_cols=0, repeated_rows=repeated, label=label)
    page.places = places
    return page


def _laid(page: WeekPage, lay: Callable[[WeekPage, Week], Steps], week: Week) -> Steps:
    return lay(page, week)
