"""The sheet Shared loads of the week: small pours that could share a truck, those that cannot, the stops in order."""

from __future__ import annotations

from math import isnan

from calc.layout.week_dates import CLOCK
from calc.layout.week_grid import DASH, FIRST, NUMBER_WIDTH, Steps, WeekPage
from calc.layout.week_names import SHEETS
from calc.layout.week_rows import Week
from calc.model.results import RefusedLoad, SharedTruck, minutes_on_site

JOBS, DAY, STOPS, YARDS, HOLDS, APART, TOGETHER, WAIT, SAVES, MINUTES, ALLOWED, RESULT = range(FIRST, 13)
WIDTHS = (NUMBER_WIDTH, 22.5, 10.0, 6.0, 8.5, 9.0, 9.0, 9.5, 9.0, 8.5, 7.5, 7.0, 13.8)
_TWO, _WHOLE = f'#,##0.00;-#,##0.00;"{DASH}"', f'0;-0;"{DASH}"'
BEST = "BEST SET"
_OTHERS_LISTED = 500
"""So many of the other choices are listed: what saves less than so many is not worth a call."""

_HEADS = {
    JOBS: ("Jobs", "l"),
    DAY: ("Day", "r"),
    STOPS: ("Stops", "r"),
    YARDS: ("Yards\ntogether", "r"),
    HOLDS: ("One truck\nholds", "r"),
    APART: ("Trucks\napart, $", "r"),
    TOGETHER: ("One\ntruck, $", "r"),
    WAIT: ("It waits, $", "r"),
    SAVES: ("Saves, $", "r"),
    MINUTES: ("Minutes\non site", "r"),
    ALLOWED: ("Within,\nmin", "r"),
    RESULT: ("Result", "i"),
}
_KEY = (
    ("Trucks apart", "What the plant charges each job on its own truck: concrete, fees, delivery, waiting."),
    ("One truck", "The same for all their yards on one truck: the strongest mix and its admixtures for all."),
    ("It waits", "Minutes past the allowance of the plant, with the drive between the stops."),
    ("Minutes on site", "All unloaded, with the drive between the stops, within what the discharge limit leaves."),
    ("Saves", "Trucks apart less one truck less its waiting; what cannot be shows a dash and why."),
)  # fmt: skip


def lay_shared_loads(page: WeekPage, week: Week) -> Steps:
    """The whole sheet."""
    page.open(SHEETS, "two or three stops on one truck")
    page.section("Pairs and triples", "same pour day, one mix, within one truck; the best set takes no job twice")
    page.heads(_HEADS)
    best, others = ([each for each in week.shared if each.best is which] for which in (True, False))
    first = page.row
    for truck in best:
        _lay_truck(page, truck, week)
        yield
    if best:
        _lay_sum(page, best, first)
    for truck in others[:_OTHERS_LISTED]:
        _lay_truck(page, truck, week)
        yield
    if len(others) > _OTHERS_LISTED:
        page.sentence(JOBS, f"{len(others) - _OTHERS_LISTED} more choices save less than these.")
    for refused in week.refused:
        _lay_refused(page, refused, week)
        yield
    if not week.shared:
        page.sentence(JOBS, "No pours of this week would save by sharing a truck.")
    page.keep(60.0)
    for label, words in _KEY:
        page.value(JOBS, label, "quietindent")
        page.sentence(DAY, words)
    yield
    if best:
        yield from _lay_stops(page, best, week)
    page.done(6.0, numbered=False)
    page.sentence(
        JOBS,
        "The saving is in no price: each bid has its own truck. If the plant agrees, it is the company's.",
    )
    yield


def _lay_truck(page: WeekPage, truck: SharedTruck, week: Week) -> None:
    strong = "plainstrong" if truck.best else "plain"
    page.value(JOBS, " + ".join(stop.job for stop in truck.stops), "shrunkstrong" if truck.best else "shrunk")
    page.value(DAY, truck.day, "plainright", week.dates.day)
    page.value(STOPS, float(len(truck.stops)), "plainright", "0")
    page.value(YARDS, truck.yards, "plainright", _TWO)
    page.value(HOLDS, min(stop.capacity for stop in truck.stops), "plainright", _TWO)
    page.value(APART, truck.apart, "plainright", _TWO)
    page.value(TOGETHER, truck.together - truck.waiting, "plainright", _TWO)
    page.value(WAIT, truck.waiting, "plainright", _TWO)
    apart, together, wait = (page.at(col) for col in (APART, TOGETHER, WAIT))
    page.formula(SAVES, f"{apart}-{together}-{wait}", truck.saving, f"{strong}right", _TWO)
    page.value(MINUTES, minutes_on_site(truck.stops), "plainright", "0")
    page.value(ALLOWED, min(stop.time_left for stop in truck.stops), "plainright", "0")
    page.value(RESULT, BEST if truck.best else "another choice", f"{strong}indent")
    page.done(13.0)


def _lay_sum(page: WeekPage, best: list[SharedTruck], first: int) -> None:
    """What the best set saves on all days."""
    page.value(JOBS, "Best set, all days", "sumwords")
    letters = page.at(SAVES).rstrip("0123456789")
    cells = f"{letters}{first + 1}:{letters}{page.row}"
    page.formula(SAVES, f"SUM({cells})", sum(each.saving for each in best), "sumright", _TWO)
    page.ruled("sumwords")
    page.done(14.0)


def _lay_refused(page: WeekPage, refused: RefusedLoad, week: Week) -> None:
    """Jobs that share no truck, and why; what cannot be has no dollars."""
    page.value(JOBS, " + ".join((*refused.jobs, *(["any"] if len(refused.jobs) == 1 else []))), "shrunk")
    same_day = not isnan(refused.day)
    page.value(
        DAY, refused.day if same_day else ("two days" if len(refused.jobs) > 1 else DASH), "plainright", week.dates.day
    )
    page.value(STOPS, float(len(refused.jobs)) if len(refused.jobs) > 1 else DASH, "plainright", "0")
    page.value(YARDS, refused.yards, "plainright", _TWO)
    page.value(HOLDS, refused.holds, "plainright", _TWO)
    for col in range(APART, RESULT):
        page.value(col, DASH, "quietright")
    page.value(RESULT, f"no: {refused.reason}", "plainindent")
    page.done(13.0)


STOP, STOP_YARDS, DRIVE, UNLOAD, FROM, UNTIL, ON_SITE, EMPTY, CREW = FIRST, 2, 4, 5, 6, 7, 8, 9, 10


def _lay_stops(page: WeekPage, best: list[SharedTruck], week: Week) -> Steps:
    """The best set stop by stop; a time of day where one was typed for the first stop."""
    page.section("The best set, stop by stop", "to say to the dispatcher; minutes from the arrival at the first stop")
    page.heads(
        {
            STOP: ("Truck and stop", "l"),
            STOP_YARDS: ("Yards", "r"),
            DRIVE: ("Drive on,\nmin", "r"),
            UNLOAD: ("Unload,\nmin", "r"),
            FROM: ("From,\nmin", "r"),
            UNTIL: ("Until,\nmin", "r"),
            ON_SITE: ("On site", "r"),
            EMPTY: ("Empty", "r"),
            CREW: ("Crew", "i"),
        }
    )
    people = {(job, day.day): work.people for day in week.calendar.days for job, work in day.work.items()}
    for truck in best:
        between = max(stop.between for stop in truck.stops)
        minute = 0.0
        for number, stop in enumerate(truck.stops):
            drive = between if number else 0.0
            page.value(STOP, f"{week.dates.day_words(truck.day)}: {stop.job}", "shrunk")
            page.value(STOP_YARDS, stop.yards, "plainright", _TWO)
            page.value(DRIVE, drive, "plainright", _WHOLE)
            page.value(UNLOAD, stop.unloading, "plainright", "0.0")
            minute = _lay_minutes(page, minute + drive, stop.unloading, first=not number)
            _lay_clock(page, truck, minute - stop.unloading, minute, number)
            crew = people.get((stop.job, truck.day))
            own = week.counts.get((stop.job, truck.day), (1, 0.0))[0]
            words = DASH if crew is None else f"{crew:g} people" + ("" if own else ", the crew of the stop before")
            page.value(CREW, words, "quietindent")
            page.done(13.0)
        yield


def _lay_minutes(page: WeekPage, start: float, unloading: float, first: bool) -> float:
    """From when until when a stop takes, in minutes; gives the latter."""
    before = f"{page.at(UNTIL).rstrip('0123456789')}{page.row}"
    drive, unload, begins = page.at(DRIVE), page.at(UNLOAD), page.at(FROM)
    text = drive if first else f"{before}+{drive}"
    page.formula(FROM, text, start, "plainright", "0.0")
    page.formula(UNTIL, f"{begins}+{unload}", start + unloading, "plainright", "0.0")
    return start + unloading


def _lay_clock(page: WeekPage, truck: SharedTruck, start: float, end: float, number: int) -> None:
    """The times of day of a stop, where the arrival at the first one is known."""
    arrives = truck.stops[0].arrives
    if isnan(arrives):
        page.value(ON_SITE, DASH, "plainright")
        page.value(EMPTY, DASH, "plainright")
        return
    first = f"{page.at(ON_SITE).rstrip('0123456789')}{page.row + 1 - number}"
    begins, ends = page.at(FROM), page.at(UNTIL)
    if number:
        page.formula(ON_SITE, f"{first}+{begins}/60/12/2", (arrives + start / 60) / 24, "plainright", CLOCK)
    else:
        page.value(ON_SITE, arrives / 24, "plainright", CLOCK)
    page.formula(EMPTY, f"{first}+{ends}/60/12/2", (arrives + end / 60) / 24, "plainright", CLOCK)
