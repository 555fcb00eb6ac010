"""The sheet Calendar of the week, and the days over in words for its front sheet. All of it is as of issue."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from calc.formula.dates import words_of
from calc.layout.page import Constant, Linked, Page
from calc.layout.styles import DATE_FORMAT, LINE_HEIGHT
from calc.model.results import WeekCalendar, WeekDay

CALENDAR = "Calendar"
CALENDAR_TITLE = "Calendar: one row per day with work, and what each job does on it"
PANEL = 7
"""So many jobs stand side by side; more stand in a panel below."""
CALENDAR_WIDTHS = (12.0, 8.0, 8.0, 8.0, 8.0, 8.0, *(10.0,) * PANEL, 1.5, 28.0)
_HEADS = ("Day", "Weekday", "Crews needed", "Crews had", "Crews short", "People needed")
_NEEDED, _HAD, _SHORT, _PEOPLE = range(2, 6)
_ASK = len(_HEADS) + PANEL + 1
_DASHED = '0;-0;"-"'
_WEEK_DAYS, _MONDAY = 7, 2
_NAMED = 40
"""So many jobs or days are named in a sentence or a list; the others are counted."""
_NOTES = (
    "A prep or a pour takes a crew; strip and seal take a person. The number is people.",
    "Pours that share a truck are one crew where their hours fit one day, with the people of the largest.",
    "Days are fixed at issue: a job workbook that is edited later is not followed here.",
)


def lay_calendar(page: Page, calendar: WeekCalendar) -> None:
    """All days with the first jobs, then the other jobs with the days on which they work."""
    first = calendar.jobs[:PANEL]
    _lay_heads(page, _HEADS, first, "Ask 811 for")
    if calendar.days:
        _lay_days(page, calendar, first)
    for start in range(PANEL, len(calendar.jobs), PANEL):
        jobs = calendar.jobs[start : start + PANEL]
        page.next()
        _lay_heads(page, _HEADS[:2], jobs)
        for day in calendar.days:
            if any(job in day.work for job in jobs):
                _lay_day(page, day)
                _lay_work(page, day, jobs)
                page.next()
    page.next()
    for label, sentence in _below(calendar):
        page.put(Constant(page.row, 0, "strong", label))
        page.put(Constant(page.row, _NEEDED, "issueline", sentence))
        page.next()
    for note in _NOTES:
        page.put(Constant(page.row, _NEEDED, "meaning", note))
        page.next()


def days_over(calendar: WeekCalendar) -> Iterator[tuple[str, str]]:
    """Each day that needs more crews than the company has, with what is done on it, in words."""
    for day in calendar.over[:_NAMED]:
        done = ", ".join(f"{job} {work.words}" for job, work in list(day.work.items())[:_NAMED])
        more = f" and {len(day.work) - _NAMED} more" if len(day.work) > _NAMED else ""
        needed = f"{day.crews} crews needed, {calendar.crews:g} had; {day.people:g} people needed"
        yield words_of(day.day), f"{needed}: {done}{more}."
    if len(calendar.over) > _NAMED:
        yield "and", f"{len(calendar.over) - _NAMED} more days; see the sheet {CALENDAR}."


def _lay_heads(page: Page, facts: Sequence[str], jobs: Sequence[str], ask: str = "") -> None:
    for col, text in enumerate((*facts, *(None,) * (len(_HEADS) - len(facts)), *jobs)):
        page.put(Constant(page.row, col, "rowhead" if col > 1 else "head", text))
    if ask:
        for col in range(len(_HEADS) + len(jobs), _ASK):
            page.put(Constant(page.row, col, "head", None))
        page.put(Constant(page.row, _ASK, "head", ask))
    for col, text in enumerate(jobs, start=len(_HEADS)):
        page.fit(text, col)
    page.heights[page.row] = max(page.heights.get(page.row, 0.0), 30.0)
    page.next()


def _lay_days(page: Page, calendar: WeekCalendar, jobs: Sequence[str]) -> None:
    """The rows of all days, a narrow row between two weeks, and the sum of the people."""
    first, week = page.row, _week_of(calendar.days[0].day)
    for day in calendar.days:
        if _week_of(day.day) != week:
            page.heights[page.row] = 6
            page.next()
            week = _week_of(day.day)
        _lay_day(page, day)
        row = page.row + 1
        page.put(Constant(page.row, _NEEDED, "issuefigure", float(day.crews), _DASHED))
        page.put(Constant(page.row, _HAD, "issuefigure", calendar.crews, "0"))
        _formula(page, _SHORT, "sum", f"MAX(0,C{row}-D{row})", max(0.0, day.crews - calendar.crews), _DASHED)
        page.put(Constant(page.row, _PEOPLE, "issuefigure", day.people, _DASHED))
        _lay_work(page, day, jobs)
        words = ", ".join(day.ask[:_NAMED]) + (f" and {len(day.ask) - _NAMED} more" if len(day.ask) > _NAMED else "")
        page.put(Constant(page.row, _ASK, "issueline", words or "-"))
        page.next()
    page.put(Constant(page.row, 0, "strong", "Person-days"))
    people = sum(day.people for day in calendar.days)
    _formula(page, _PEOPLE, "sum", f"SUM(F{first + 1}:F{page.row})", people, "0")
    page.next()


def _lay_day(page: Page, day: WeekDay) -> None:
    page.heights[page.row] = LINE_HEIGHT
    page.put(Constant(page.row, 0, "issueline", day.day, DATE_FORMAT))
    page.put(Constant(page.row, 1, "issueline", words_of(day.day)[:3]))


def _lay_work(page: Page, day: WeekDay, jobs: Sequence[str]) -> None:
    for col, job in enumerate(jobs, start=len(_HEADS)):
        work = day.work.get(job)
        pours = work is not None and work.visit == "pour"
        page.put(Constant(page.row, col, "issuestrong" if pours else "issuefigure", work.words if work else "-"))


def _below(calendar: WeekCalendar) -> Iterator[tuple[str, str]]:
    """What stands below the days, in words: the days over, and the jobs that are on no day."""
    for label, sentence in days_over(calendar):
        yield label, sentence
    for label, jobs in (("No pour date", calendar.undated), ("Not known", calendar.unknown)):
        if jobs:
            more = f" and {len(jobs) - _NAMED} more" if len(jobs) > _NAMED else ""
            yield label, ", ".join(jobs[:_NAMED]) + more


def _formula(page: Page, col: int, role: str, text: str, value: float, format_text: str) -> None:
    page.put(Linked(page.row, col, role, lambda: text, lambda _job: value, format_text))


def _week_of(day: float) -> int:
    """The number of the week of a day, from Monday to Sunday."""
    return int((day - _MONDAY) // _WEEK_DAYS)
