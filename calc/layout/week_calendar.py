"""The sheet Calendar of the week: a row a working day, a column a job, and the days over in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import isnan

from calc.layout.arial import on_lines
from calc.layout.week_dates import DateStyle, monday_of
from calc.layout.week_grid import DASH, FIRST, NUMBER_WIDTH, Steps, WeekPage
from calc.layout.week_names import CALENDAR, SHEETS
from calc.layout.week_rows import Week
from calc.layout.week_visits import VISITS, Visits
from calc.model.results import WeekCalendar, WeekDay

DAY, CREWS, CREWS_HAD, SHORT, PEOPLE, PEOPLE_HAD = range(FIRST, 7)
PANEL = 7
"""So many jobs stand side by side; more stand in a panel below."""

_JOBS = PEOPLE_HAD + 1
_ASK = _JOBS + PANEL
WIDTHS = (NUMBER_WIDTH, 12.5, 7.3, 7.3, 7.0, 7.3, 7.3, *(8.0,) * PANEL, 14.2)
TABLE = "working days"

OVER = "OVER"
_NAMED = 40
"""So many jobs or days are named in a sentence or a list; the others are counted."""

_COUNTED = f'0;-0;"{DASH}"'
_HEADS = {
    DAY: ("Day", "l"),
    CREWS: ("Crews\nneeded", "r"),
    CREWS_HAD: ("Crews\nhad", "r"),
    SHORT: ("Short", "r"),
    PEOPLE: ("People\nneeded", "r"),
    PEOPLE_HAD: ("People\nhad", "r"),
}
_KEY = (
    (
        "Crews",
        "A prep or a pour takes a crew, strip and seal a person. A shared truck is one crew where its pours fit a day.",
    ),
    ("Short", f"{OVER} when more crews are needed than had, or more people."),
    ("Jobs", "What the job does on the day and with how many people, as its workbook has it; see the sheet Visits."),
    ("Marks", "bold: the day of the concrete; prep: dig, base, forms, dowels; grey: strip and seal, one person each"),
)


def had_words(calendar: WeekCalendar) -> str:
    """What the company has, in words."""
    crews = "1 crew" if calendar.crews == 1 else f"{calendar.crews:g} crews"
    if isnan(calendar.people_had):
        return f"{crews} on Company"
    return f"{crews} and {'1 person' if calendar.people_had == 1 else f'{calendar.people_had:g} people'} on Company"


def days_over(calendar: WeekCalendar, dates: DateStyle) -> Iterator[tuple[str, str, str]]:
    """Each day that needs more crews or people than the company has: the day, what it needs, and what is done on it."""
    for day in calendar.over[:_NAMED]:
        done = ", ".join(f"{job} {work.words}" for job, work in list(day.work.items())[:_NAMED])
        more = f" and {len(day.work) - _NAMED} more" if len(day.work) > _NAMED else ""
        crews = f"{day.crews} {'crew' if day.crews == 1 else 'crews'} needed, {calendar.crews:g} had"
        need = f"{crews}; {day.people:g} people needed"
        had = "" if isnan(calendar.people_had) else f", {calendar.people_had:g} had"
        yield dates.day_words(day.day), need + had, f"{done}{more}"
    if len(calendar.over) > _NAMED:
        yield "and", f"{len(calendar.over) - _NAMED} more days", f"see {CALENDAR}"


def lay_calendar(page: WeekPage, week: Week) -> Steps:
    """The whole sheet."""
    calendar = week.calendar
    page.open(SHEETS, "a row a working day, what each job does on it")
    visits = Visits(week)
    page.section(
        "Working days", "Monday to Friday, Saturday as the company has it, no company holidays; the number is people"
    )
    _lay_heads(page, _HEADS, calendar.jobs[:PANEL], "Ask 811 for")
    yield from _lay_days(page, week, visits)
    for start in range(PANEL, len(calendar.jobs), PANEL):
        yield from _lay_panel(page, week, visits, calendar.jobs[start : start + PANEL])
    page.keep(60.0)
    for label, words in _KEY:
        page.value(DAY, label, "quietindent")
        page.sentence(CREWS, words)
    yield
    page.section("In words", "the same days as on the front")
    for label, sentence in _in_words(week):
        page.value(DAY, label, "plainstrong")
        page.sentence(CREWS, sentence, "plain")
        yield


def _lay_heads(page: WeekPage, heads: dict[int, tuple[str, str]], jobs: Sequence[str], ask: str = "") -> None:
    for col, job in enumerate(jobs, start=_JOBS):
        page.value(col, job, "shrunkhead")
    page.heads({**heads, **({_ASK: (ask, "i")} if ask else {})})


def _lay_days(page: WeekPage, week: Week, visits: Visits) -> Steps:
    """The rows of all days with the first jobs, a dotted rule between two weeks, and the sum of the people."""
    calendar, places, first, pages = week.calendar, week.places, page.row, page.pages
    for place, day in enumerate(calendar.days):
        if place and monday_of(day.day) != monday_of(calendar.days[place - 1].day):
            page.ruled("weekrule")
            page.done(5.0, numbered=False)
        _lay_needs(page, week, day)
        _lay_work(page, visits, day, calendar.jobs[:PANEL])
        words = ", ".join(day.ask[:_NAMED]) + (f" and {len(day.ask) - _NAMED} more" if len(day.ask) > _NAMED else "")
        _lay_asked(page, words)
        yield
    page.repeat_if_long(first - 1, pages)
    places.put(TABLE, page.name, first, max(first, page.row - 1))
    if calendar.days:
        _lay_people_days(page, week, visits, calendar.jobs[:PANEL], of_all=True)
    else:
        page.value(DAY, "none", "quiet")
        page.done()
    yield


def _lay_asked(page: WeekPage, words: str) -> None:
    """What to ask 811 for, at the end of the row of its day and in rows below."""
    lines = list(on_lines(words, page.room(_ASK) - 10)) or [""]
    for number, line in enumerate(lines):
        if line:
            page.value(_ASK, line, "quietindent")
        page.done(14.0 if number == 0 else None)


def _lay_needs(page: WeekPage, week: Week, day: WeekDay) -> None:
    """What a day needs of crews and people, beside what the company has."""
    calendar = week.calendar
    over = day in calendar.over
    strong = "plainstrongright" if over else "plainright"
    page.value(DAY, day.day, "plainstrong" if over else "plain", week.dates.day)
    of_day = page.at(DAY)
    for col, counted, value in ((CREWS, VISITS.CREWS, float(day.crews)), (PEOPLE, VISITS.PEOPLE_COUNTED, day.people)):
        text = f"SUMIFS([{VISITS.TABLE}.{counted}],[{VISITS.TABLE}.{VISITS.DAY}],{of_day})"
        page.formula(col, text, value, strong, _COUNTED)
    page.value(CREWS_HAD, calendar.crews, "quietright", "0")
    known = not isnan(calendar.people_had)
    page.value(PEOPLE_HAD, calendar.people_had if known else DASH, "quietright", "0")
    crews, had, people, people_had = (page.at(col) for col in (CREWS, CREWS_HAD, PEOPLE, PEOPLE_HAD))
    also = f"+({people}>{people_had})" if known else ""
    text = f'IF(({crews}>{had}){also}>0,"{OVER}","{DASH}")'
    page.formula(SHORT, text, OVER if over else DASH, strong)


def _lay_work(page: WeekPage, visits: Visits, day: WeekDay, jobs: Sequence[str]) -> None:
    """What each job does on a day, from the table of visits."""
    for col, job in enumerate(jobs, start=_JOBS):
        work = day.work.get(job)
        if work is None:
            page.value(col, "·", "faintright")
            continue
        row = visits.row_of[job, day.day]
        role = {"pour": "plainstrongright", "prep": "plainright"}.get(work.visit, "quietright")
        text = f'[{VISITS.TABLE}.{VISITS.VISIT}@{row}]&" "&[{VISITS.TABLE}.{VISITS.PEOPLE}@{row}]'
        page.formula(col, text, work.words, role)


def _lay_people_days(page: WeekPage, week: Week, visits: Visits, jobs: Sequence[str], of_all: bool) -> None:
    """The sums of the people over the days, of the week and of each job."""
    page.value(DAY, "People-days", "sumwords")
    if of_all:
        people = sum(day.people for day in week.calendar.days)
        page.formula(PEOPLE, f"SUM([{TABLE}.{PEOPLE}])", people, "sumright", _COUNTED)
    for col, job in enumerate(jobs, start=_JOBS):
        first, last = visits.rows_of[job]
        worked = sum(day.work[job].people for day in week.calendar.days if job in day.work)
        page.formula(col, f"SUM([{VISITS.TABLE}.{VISITS.PEOPLE}:{first}-{last}])", worked, "sumright", _COUNTED)
    page.ruled("sumwords")
    page.done(14.0)


def _lay_panel(page: WeekPage, week: Week, visits: Visits, jobs: Sequence[str]) -> Steps:
    """More jobs, with the days on which one of them works."""
    days = [day for day in week.calendar.days if any(job in day.work for job in jobs)]
    page.section("Working days, continued", "more jobs", keep=min(300.0, 14.0 * (len(days) + 3)))
    _lay_heads(page, {DAY: _HEADS[DAY]}, jobs)
    for day in days:
        page.value(DAY, day.day, "plain", week.dates.day)
        _lay_work(page, visits, day, jobs)
        page.done(14.0)
        yield
    _lay_people_days(page, week, visits, jobs, of_all=False)
    yield


def _in_words(week: Week) -> Iterator[tuple[str, str]]:
    """The days over, and the jobs that are on no day."""
    calendar = week.calendar
    for day, need, done in days_over(calendar, week.dates):
        yield day, f"{need}: {done}."
    for label, jobs in (
        ("No pour date", calendar.undated),
        ("Not known", calendar.unknown),
        ("Not written", [each.job for each in week.unwritten]),
    ):
        if jobs:
            more = f" and {len(jobs) - _NAMED} more" if len(jobs) > _NAMED else ""
            yield label, ", ".join(jobs[:_NAMED]) + more
    if not calendar.over:
        yield "None", "No day needs more than the company has."
