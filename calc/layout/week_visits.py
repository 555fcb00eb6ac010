"""The sheet Visits of the week: a row a day of each job, which the days and the calendar add up."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import isnan, nan

from calc.layout.week_dates import NO_DATE
from calc.layout.week_grid import DASH, FIRST, NUMBER_WIDTH, Steps, WeekPage
from calc.layout.week_names import SHEETS
from calc.layout.week_rows import Week, WeekRow
from calc.trade.hauling.loads import Hauled
from calc.trade.materials.base_rock import BaseNeeds
from calc.trade.materials.fiber import FiberTotal
from calc.trade.takeoff.dowels import DowelNeeds
from calc.trade.work.paid_time import PaidTime

WIDTHS = (NUMBER_WIDTH, 11.0, 10.0, *(8.5,) * 11)
_TWO, _ONE, _WHOLE = (f'{each};-{each};"{DASH}"' for each in ("#,##0.00", "#,##0.0", "#,##0"))


class VISITS:
    """The table of visits: its name among the places, and its columns."""

    TABLE = "visits"
    DAY, JOB, VISIT, PEOPLE, CREWS, PEOPLE_COUNTED, HOURS, FINISHERS, LOADS, TONS, ROCK, DOWELS, FIBER = range(
        FIRST, 14
    )


@dataclass(frozen=True, slots=True)
class VisitRow:
    """A visit of a job on one day, or a job without days: the day is NaN then, and all hours are in one row."""

    day: float
    job: str
    visit: str
    numbers: tuple[float, ...]
    """Its numbers in the order of the columns, from the people on."""


def visits_of(week: Week, row: WeekRow) -> Iterator[VisitRow]:
    """The visits of a job: hauling, rock and dowels on its first day, fiber on the day of the pour."""
    hauled = tuple(row.of(each) for each in (Hauled.loads, Hauled.tons, BaseNeeds.buy, DowelNeeds.dowels))
    fiber = row.of(FiberTotal.bags)
    if not row.days.days:
        yield VisitRow(nan, row.job, DASH, (0.0, 0.0, 0.0, row.of(PaidTime.clock_hours), 0.0, *hauled, fiber))
    for place, each in enumerate(row.days.days):
        takes = (each.people, *map(float, week.counts[row.job, each.day]), each.hours, each.finisher_hours)
        brought = hauled if place == 0 else (0.0,) * len(hauled)
        yield VisitRow(each.day, row.job, each.visit, (*takes, *brought, fiber if each.visit == "pour" else 0.0))


class Visits:
    """Where each visit stands in the table of visits: its row by job and day, and the rows of each job."""

    def __init__(self, week: Week) -> None:
        self.row_of: dict[tuple[str, float], int] = {}
        self.rows_of: dict[str, tuple[int, int]] = {}
        row = 0
        for job in week.rows:
            first = row
            for each in job.days.days:
                self.row_of[job.job, each.day] = row
                row += 1
            row = max(row, first + 1)
            self.rows_of[job.job] = first, row - 1


_HEADS = {
    VISITS.DAY: ("Day", "l"),
    VISITS.JOB: ("Job", "l"),
    VISITS.VISIT: ("Visit", "l"),
    VISITS.PEOPLE: ("People", "r"),
    VISITS.CREWS: ("Crews\ncounted", "r"),
    VISITS.PEOPLE_COUNTED: ("People\ncounted", "r"),
    VISITS.HOURS: ("Hours\npaid", "r"),
    VISITS.FINISHERS: ("of these\nfinishers", "r"),
    VISITS.LOADS: ("Spoil,\nloads", "r"),
    VISITS.TONS: ("Spoil,\ntons", "r"),
    VISITS.ROCK: ("Rock,\ntons", "r"),
    VISITS.DOWELS: ("Dowels", "r"),
    VISITS.FIBER: ("Fiber,\nbags", "r"),
}
_FORMATS = (_WHOLE, _WHOLE, _WHOLE, _TWO, _TWO, _WHOLE, _ONE, _ONE, _WHOLE, _WHOLE)


def lay_visits(page: WeekPage, week: Week) -> Steps:
    """The whole sheet: its head is in row 3."""
    page.open(SHEETS, "a row a day of each job, as its workbook has it; By day and Calendar add these up")
    page.heads(_HEADS)
    first = page.row
    for row in week.rows:
        for visit in visits_of(week, row):
            page.value(VISITS.DAY, NO_DATE if isnan(visit.day) else visit.day, "plain", week.dates.day)
            page.value(VISITS.JOB, visit.job, "shrunk")
            page.value(VISITS.VISIT, visit.visit, "plain")
            for col, (value, format_text) in enumerate(zip(visit.numbers, _FORMATS, strict=True), start=VISITS.PEOPLE):
                page.value(col, value, "plainright", format_text)
            page.done()
        yield
    week.places.put(VISITS.TABLE, page.name, first, page.row - 1)
    yield
