"""The sheet Week: the price of all jobs, what is over, a row a job, and what is worth a look."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import islice, zip_longest
from math import isnan

from calc.declared import Line
from calc.layout.arial import on_lines, shortened, width_of
from calc.layout.week_calendar import days_over, had_words
from calc.layout.week_dates import NO_DATE
from calc.layout.week_grid import DASH, FIRST, NUMBER_WIDTH, Steps, WeekPage, jump_to, quoted
from calc.layout.week_names import CALENDAR, CHECKS, DAYS, SHARED_LOADS, SHEETS
from calc.layout.week_rows import NOT_READY, NOT_WRITTEN, READY, UnwrittenJob, Week, WeekRow
from calc.trade.hauling.loads import Hauled
from calc.trade.money.price import BidPrice
from calc.trade.ordering.order import Order
from calc.trade.takeoff.geometry import Slab
from calc.trade.work.paid_time import PaidTime, Visit

JOB, STATE, POUR, AREA, YARDS, TRUCKS, LOADS, HOURS, ON_TASKS, PRICE, BY_AREA, CAUTION, JUMP = range(FIRST, 14)
"""The columns of the table of jobs."""

WIDTHS = (NUMBER_WIDTH, 25.6, 10.6, 9.2, 5.6, 5.6, 6.0, 5.6, 6.6, 5.8, 7.2, 5.6, 19.3, 7.4)

TABLE, TOTALS = "jobs", "totals"
"""The names of its places: the rows of the jobs, and the two rows of their totals."""

_QUANTITIES = {
    AREA: (Slab.net_area, "#,##0"),
    YARDS: (Order.quantity, "#,##0.00"),
    TRUCKS: (Order.trucks, "#,##0"),
    LOADS: (Hauled.loads, "#,##0"),
    HOURS: (PaidTime.clock_hours, "#,##0.00"),
    PRICE: (BidPrice.price, "#,##0"),
}
_SHARE, _PER_FT2 = "0.0%", "0.00"
CHECK_ROWS, CHECK_RESULT, CHECKS_OF_TOTALS = "checks", 5, 7
"""The table of checks, the column of their results, and how many follow those of the jobs."""

_STATES = f"[{TABLE}.{STATE}]"
_INDENT, _BOLD_ROOM = 10, 0.9
"""Pixels of an indent, and the share of the room that bold words may take."""

_LISTED = 12
"""So many are told of each thing that is worth a look; the others are counted."""

_HEADS = {
    JOB: ("Job", "l"),
    STATE: ("State", "l"),
    POUR: ("Pour", "r"),
    AREA: ("Area,\nft2", "r"),
    YARDS: ("Order,\nyd3", "r"),
    TRUCKS: ("Trucks", "r"),
    LOADS: ("Loads", "r"),
    HOURS: ("Hours\npaid", "r"),
    ON_TASKS: ("On\ntasks", "r"),
    PRICE: ("Price, $", "r"),
    BY_AREA: ("$ per\nft2", "r"),
    CAUTION: ("Most severe caution", "i"),
}


def lay_front(page: WeekPage, week: Week) -> Steps:
    """The whole sheet."""
    page.open(SHEETS, week.rows[0].company)
    _lay_price(page, week)
    yield
    yield from _lay_days_over(page, week)
    page.section("Jobs", "one row a job, whose name opens its workbook; what is not READY has its reason under it")
    page.heads(_HEADS)
    first, pages = page.row, page.pages
    yield
    for job in week.jobs:
        if isinstance(job, UnwrittenJob):
            _lay_unwritten(page, job)
        else:
            _lay_job(page, job, week)
        yield
    page.repeat_if_long(first - 1, pages)
    week.places.put(TABLE, page.name, first, page.row - 1)
    week.places.put(TOTALS, page.name, page.row, page.row + 1)
    _lay_totals(page, week)
    yield
    yield from _lay_worth_a_look(page, week)


def _lay_price(page: WeekPage, week: Week) -> None:
    """The price of all jobs, how many may be sent, and whether every check passes."""
    count = {state: sum(row.state == state for row in week.rows) for state in (READY, NOT_READY)}
    page.formula(FIRST, f"[{TOTALS}.{PRICE}@0]", _sum_of(week.rows, BidPrice.price), "heroprice", '"$"#,##0')
    page.formula(
        STATE,
        f'COUNTIF({_STATES},"{READY}")&" of "&COUNTA([{TABLE}.{JOB}])&" {READY} TO SEND"',
        f"{count[READY]} of {len(week.jobs)} {READY} TO SEND",
        "bandstrong",
    )
    page.formula(
        TRUCKS,
        f'COUNTIF({_STATES},"{NOT_READY}")&" {NOT_READY}, "&COUNTIF({_STATES},"{NOT_WRITTEN}")&" {NOT_WRITTEN}"',
        f"{count[NOT_READY]} {NOT_READY}, {len(week.unwritten)} {NOT_WRITTEN}",
        "band",
    )
    checks, results = len(week.rows) + CHECKS_OF_TOTALS, f"[{CHECK_ROWS}.{CHECK_RESULT}]"
    passing, every = f'COUNTIF({results},"ok")', f"COUNTA({results})"
    said = f'IF({passing}={every},"all ","CHECKS FAIL: ")&{passing}&" of "&{every}&" checks ok"'
    page.formula(
        PRICE, f"HYPERLINK({quoted(jump_to(CHECKS))},{said})", f"all {checks} of {checks} checks ok", "bandjump"
    )
    page.ruled("band", STATE)
    page.done(34.0, numbered=False)
    _lay_parts(page, week)


def _lay_parts(page: WeekPage, week: Week) -> None:
    """How many jobs have a price, how much of it is not ready, and which jobs are in no total."""
    prices = f"[{TABLE}.{PRICE}]"
    page.formula(FIRST, f'COUNT({prices})&" jobs with a price"', f"{len(week.rows)} jobs with a price", "quiet")
    waiting = _sum_of([row for row in week.rows if row.state == NOT_READY], BidPrice.price)
    page.formula(STATE, f'SUMIFS({prices},{_STATES},"{NOT_READY}")', waiting, "quiet", '"$"#,##0')
    page.value(POUR, f"of it is {NOT_READY}", "quiet")
    names = ", ".join(each.job for each in week.unwritten)
    if names:
        no_total = f"{names} {'is' if len(week.unwritten) == 1 else 'are'} in no total"
        page.value(TRUCKS, shortened(no_total, page.room(TRUCKS)), "quiet")
    page.done()


def _sum_of(rows: Iterable[WeekRow], line: Line) -> float:
    return sum(row.of(line) for row in rows)


def _lay_days_over(page: WeekPage, week: Week) -> Steps:
    """The days that need more crews or people than the company has, in words."""
    page.section("Days that need more than the company has", f"{had_words(week.calendar)}; move a job, or hire")
    over = list(days_over(week.calendar, week.dates))
    for day, need, done in over:
        page.value(FIRST, day, "plainstrong")
        page.value(STATE, need, "plainstrong")
        page.jump(JUMP, CALENDAR)
        beside = page.column_after(STATE, width_of(need, bold=True) + _INDENT)
        for number, line in enumerate(on_lines(done, page.room(beside, CAUTION))):
            page.value(beside, line)
            page.done(13.0 if number == 0 else None)
        yield
    if not over:
        page.value(FIRST, "none", "quiet")
        page.done(13.0)
        yield


def _lay_job(page: WeekPage, row: WeekRow, week: Week) -> None:
    page.keep(40.0)
    page.link(JOB, row.file, _named(page, row), "joblink")
    page.value(STATE, row.state, "plainstrong" if row.state == NOT_READY else "plain")
    page.value(POUR, NO_DATE if isnan(row.pour_date) else row.pour_date, "plainright", week.dates.day)
    for col, (line, format_text) in _QUANTITIES.items():
        role = "plainstrongright" if col == PRICE else "plainright"
        page.value(col, row.of(line), role, _dashed(format_text))
    hours = row.of(PaidTime.clock_hours)
    page.value(ON_TASKS, row.of(Visit.task_hours) / hours if hours else 0.0, "plainright", _SHARE)
    area, price = page.at(AREA), page.at(PRICE)
    page.formula(BY_AREA, f"IF({area}>0,{price}/{area},0)", row.by_area, "quietright", _PER_FT2)
    stop = row.caution.startswith("STOP")
    said = list(on_lines(row.caution, page.room(CAUTION) * (_BOLD_ROOM if stop else 1) - _INDENT))
    page.value(CAUTION, said[0], "plainstrongindent" if stop else "plainindent")
    page.done(13.0)
    reasons = on_lines(row.reason, page.room(STATE, BY_AREA))
    for reason, more in zip_longest(reasons, said[1:]):
        page.value(STATE, reason, "quietitalic")
        page.value(CAUTION, more, "plainindent")
        page.done()


def _named(page: WeekPage, job: WeekRow | UnwrittenJob) -> str:
    """A job with its client, as far as there is room."""
    return shortened(f"{job.job}  {job.client}".rstrip(), page.room(JOB, JOB))


def _lay_unwritten(page: WeekPage, job: UnwrittenJob) -> None:
    page.keep(40.0)
    page.value(JOB, _named(page, job))
    page.value(STATE, NOT_WRITTEN, "plainstrong")
    for col in range(POUR, CAUTION):
        page.value(col, DASH, "quietright")
    page.done(13.0)
    page.sentence(STATE, job.reason, "quietitalic")


def _lay_totals(page: WeekPage, week: Week) -> None:
    """The sums of all jobs with a price, and of those of them that may be sent."""
    page.value(JOB, "All jobs with a price", "sumwords")
    for col, (line, format_text) in _QUANTITIES.items():
        page.formula(col, f"SUM([{TABLE}.{col}])", _sum_of(week.rows, line), "sumright", _dashed(format_text))
    _lay_shares(page, week.rows, "", "sumright")
    page.ruled("sumwords", JOB)
    page.done(13.0)
    ready = [row for row in week.rows if row.state == READY]
    page.value(JOB, f"of these {READY}")
    for col, (line, format_text) in _QUANTITIES.items():
        text = f'SUMIFS([{TABLE}.{col}],{_STATES},"{READY}")'
        page.formula(col, text, _sum_of(ready, line), "plainright", _dashed(format_text))
    _lay_shares(page, ready, f'--({_STATES}="{READY}"),', "plainright")
    page.done(13.0)


def _lay_shares(page: WeekPage, rows: Sequence[WeekRow], which: str, role: str) -> None:
    """The share of the hours on tasks, and the price by area, of the totals of the current row."""
    hours, tasks, price, area = (
        _sum_of(rows, line) for line in (PaidTime.clock_hours, Visit.task_hours, BidPrice.price, Slab.net_area)
    )
    total, priced, size = page.at(HOURS), page.at(PRICE), page.at(AREA)
    on_tasks = f"SUMPRODUCT({which}[{TABLE}.{HOURS}],[{TABLE}.{ON_TASKS}])"
    page.formula(ON_TASKS, f"IF({total}>0,{on_tasks}/{total},0)", tasks / hours if hours else 0.0, role, _SHARE)
    page.formula(BY_AREA, f"IF({size}>0,{priced}/{size},0)", price / area if area else 0.0, role, _PER_FT2)


def _lay_worth_a_look(page: WeekPage, week: Week) -> Steps:
    """What looking across the jobs found; nothing of it is in a price."""
    page.section("Worth a look", "across jobs; none of it is in a price")
    anything = False
    for words, sheet, found in _worth_a_look(week):
        listed = list(islice(found, _LISTED + 1))
        for number, (saves, sentence) in enumerate(listed[:_LISTED]):
            page.value(JOB, words if number == 0 else None, "plain")
            if saves is not None:
                page.value(STATE, saves, "plain", '"$"#,##0.00')
            if sheet:
                page.jump(JUMP, sheet)
            for line in on_lines(sentence, page.room(POUR, CAUTION)):
                page.value(POUR, line)
                page.done(13.0)
            anything = True
            yield
        if len(listed) > _LISTED:
            page.value(POUR, f"and more; see {sheet or 'the jobs'}", "quiet")
            page.done()
    if not anything:
        page.value(JOB, "nothing", "quiet")
        page.done()
    yield


def _worth_a_look(week: Week) -> Iterator[tuple[str, str, Iterator[tuple[float | None, str]]]]:
    """Each thing with the sheet that shows it, and what it saves and a sentence for each case."""
    dates = week.dates
    shared = (
        (truck.saving, f"{_and(stop.job for stop in truck.stops)} on one truck, {dates.day_words(truck.day)}")
        for truck in week.shared
        if truck.best
    )
    yield "Shared loads", SHARED_LOADS, shared
    rentals = (
        (
            each.in_bids - each.one_for_all,
            f"one {each.tool} for {_and(use.job for use in each.uses)}, {dates.day_words(each.day)}",
        )
        for each in week.rentals
        if each.in_bids > each.one_for_all
    )
    yield "Rentals on one day", DAYS, rentals
    tickets = "; ".join(f"{_and(day.ask)} by {dates.day_words(day.day)}" for day in week.calendar.days if day.ask)
    yield "Locate tickets to ask for", CALENDAR, iter([(None, tickets)] if tickets else [])
    unusual = (
        (None, f"{row.job}: {week.review[row.job]}") for row in week.rows if week.review.get(row.job, "-") != "-"
    )
    yield "Unusual", "", unusual


def _and(names: Iterable[str]) -> str:
    *most, last = names
    return f"{', '.join(most)} and {last}" if most else last


def _dashed(format_text: str) -> str:
    return f'{format_text};-{format_text};"{DASH}"'
