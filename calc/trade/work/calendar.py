"""The calendar of a job: its working days before and after the pour, and the last day to ask for the locate ticket.

Working days are Monday to Friday, Saturday too where the company works on it, less its holidays. Without a pour date
no day is known: the dates are 0, and their words say so.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Company, Holiday, Job
from calc.trade.levels import DAY, DAYS_BEFORE, HOLIDAY, LAST_NEAR_DAY, POUR_DAY, VISIT
from calc.trade.work.paid_time import Visit

_SHEET = "Costs"
_ONE_DAY, _SUNDAY = exact(1, "days"), exact(1)
_PREP, _POUR, _STRIP, _SEAL = VISIT.axis.words
_NUMBER = row_number(DAY)
_POUR_ROW, _LAST_NEAR = row_called(DAY, POUR_DAY), row_called(DAY, LAST_NEAR_DAY)
_FIRST_ROW, _ROW_BEFORE = row_called(DAY, f"{DAYS_BEFORE} days before"), row_called(DAY, "1 days before")
_LAST_ROW = row_called(DAY, DAY.axis.words[-1])
_NOT_KNOWN = "not known"


class CalendarRules(Section, title="Calendar rules", sheet=_SHEET):
    """What the days of a job are counted by."""

    seal_wait = factor(
        "Days from the pour to sealing",
        "days",
        28,
        low=7,
        high=60,
        source="common practice, no source: sealers ask for 28 days of curing; the product data sheet governs",
    )
    notice = factor(
        "Notice for a locate ticket, working days",
        "days",
        2,
        low=1,
        high=10,
        source="local law, often 2 or 3 working days; 811, the one-call center",
    )
    known = line("Pour date is typed", "", when(is_given(Job.pour_date), 1, 0), source="1 with a pour date")
    middle = line(
        "Day that the calendar is counted from",
        "day",
        if_given(Job.pour_date, Job.bid_date),
        source="pour date; the bid date where none is typed, for nothing but a calendar to look at",
    )


class DayOff(Section, title="Holidays", each=HOLIDAY, sheet=_SHEET):
    """Days on which the company does not work."""

    counted = line("Holiday counts", "", when(is_given(Holiday.day), 1, 0), source="1 with a date")


_FROM_POUR = count_of(
    when(
        _NUMBER > _LAST_NEAR,
        _NUMBER - _LAST_NEAR - 1 + round_up(CalendarRules.seal_wait.count),
        _NUMBER - _POUR_ROW,
    ),
    "days",
)
"""The days of a row from the pour: one by one around it, and then from the first on which it may be sealed."""


class CalendarDay(Section, title="Calendar days", each=DAY, sheet=_SHEET):
    """Every day around the pour, and from the first day on which the slab may be sealed."""

    on = line(
        "Date", "day", days_after(CalendarRules.middle, _FROM_POUR), source="day of the pour, plus the days to this row"
    )
    is_working = line(
        "Working day",
        "",
        when(
            either(
                equals(day_of_week(on), _SUNDAY),
                both(equals(day_of_week(days_after(on, _ONE_DAY)), _SUNDAY), Company.saturday_work.is_("no")),
                total_on(DayOff.counted, Holiday.day, on) > 0,
            ),
            0,
            1,
        ),
        source="no Sunday, no Saturday unless the company works on it, no holiday",
    )
    count = line("Working days so far", "", running(is_working, JOB), source="running count")


_PREP_DAYS, _STRIP_DAYS, _SEAL_DAYS = (look_up(Visit.visits, kind) for kind in (_PREP, _STRIP, _SEAL))
"""The days of each kind of visit: a visit is a day."""
_BEFORE_POUR, _TO_POUR = at(CalendarDay.count, _ROW_BEFORE), at(CalendarDay.count, _POUR_ROW)
_NEAR, _ALL_DAYS = at(CalendarDay.count, _LAST_NEAR), at(CalendarDay.count, _LAST_ROW)
"""Working days before the pour and to it, before the first day of sealing, and in the calendar."""


class CalendarMarks(Section, title="Visits in the calendar", sheet=_SHEET):
    """The working days, by count, that the visits begin on, and whether the calendar reaches them."""

    first_prep = line("First preparation day, by count", "", _BEFORE_POUR - _PREP_DAYS + 1, source="counted back")
    locate = line(
        "Day to ask for the locate ticket, by count",
        "",
        first_prep - round_up(CalendarRules.notice.count),
        source="notice before the first day of work",
    )
    fits = line(
        "Working days are enough",
        "",
        when(
            both(
                CalendarRules.known > 0,
                locate > 0,
                _TO_POUR + _STRIP_DAYS <= _NEAR,
                _NEAR + _SEAL_DAYS <= _ALL_DAYS,
            ),
            1,
            0,
        ),
        source="1 if a pour date is known and the calendar reaches every day of work",
    )
    pour_works = line(
        "Pour is on a working day",
        "",
        when(CalendarRules.known > 0, at(CalendarDay.is_working, _POUR_ROW), 1),
        source="calendar; 1 without a pour date",
    )


_WORKING = CalendarMarks.fits > 0, CalendarDay.is_working > 0
"""A working day of a calendar that holds all visits."""


class DayWork(Section, title="Work by day", each=DAY, sheet=_SHEET):
    """What is done on each day, and by how many people."""

    is_prep = line(
        "Preparation",
        "",
        when(both(*_WORKING, _NUMBER < _POUR_ROW, CalendarDay.count >= CalendarMarks.first_prep), 1, 0),
        source="working days before the pour",
    )
    is_strip = line(
        "Stripping",
        "",
        when(
            both(
                *_WORKING,
                _NUMBER > _POUR_ROW,
                _NUMBER <= _LAST_NEAR,
                CalendarDay.count - _TO_POUR <= _STRIP_DAYS,
            ),
            1,
            0,
        ),
        source="working days after the pour",
    )
    is_seal = line(
        "Sealing",
        "",
        when(both(*_WORKING, _NUMBER > _LAST_NEAR, CalendarDay.count - _NEAR <= _SEAL_DAYS), 1, 0),
        source="working days from the first on which the slab may be sealed",
    )
    visit_row = line(
        "Row of the visit",
        "",
        is_prep
        + TWO * CalendarMarks.fits * when(equals(_NUMBER, _POUR_ROW), 1, 0)
        + THREE * is_strip
        + TWO * TWO * is_seal,
        source="row of the visits and paid time; 0 on a day without a visit",
    )
    visit = line(
        "Visit",
        "",
        when(visit_row > 0, at(Visit.name, largest(1, visit_row)), "-"),
        source="prep before the pour, strip after it, seal when it may be sealed",
    )
    people = line(
        "People of the day",
        "",
        when(visit_row > 0, at(Visit.people, largest(1, visit_row)), 0),
        source="people of the visit",
    )


def _on_day(count: Expr) -> Expr:
    """The date of the working day with this count; 0 where it is not known."""
    return when(
        CalendarMarks.fits > 0,
        lookup_by_key(CalendarDay.on, CalendarDay.count, smallest(_ALL_DAYS, largest(1, count))),
        0,
    )


def _words(day: Expr) -> Expr:
    """A date in words, or that it is not known."""
    return when(day > 0, date_words(day), _NOT_KNOWN)


class Calendar(Section, title="Calendar", sheet=_SHEET):
    """Days of the job; 0 without a pour date, or where there is no such visit."""

    pour_day = line("Day of the pour", "day", if_given(Job.pour_date, 0), source="pour date")
    day_if_shared = line(
        "Day of the pour, if the days are enough",
        "day",
        when(CalendarMarks.fits > 0, pour_day, 0),
        source="the first day of work where the pour shares its preparation",
    )
    first_prep_day = line(
        "First day of work",
        "day",
        when(_PREP_DAYS > 0, _on_day(CalendarMarks.first_prep), day_if_shared),
        source="first preparation day; the day of the pour where that is the first",
    )
    last_prep_day = line(
        "Last preparation day",
        "day",
        when(_PREP_DAYS > 0, _on_day(_BEFORE_POUR), day_if_shared),
        source="last preparation day; the day of the pour where they are one visit",
    )
    strip_day = line(
        "Day of stripping",
        "day",
        when(_STRIP_DAYS > 0, _on_day(_TO_POUR + 1), 0),
        source="next working day after the pour",
    )
    seal_day = line(
        "Day of sealing",
        "day",
        when(_SEAL_DAYS > 0, _on_day(_NEAR + 1), 0),
        source="first working day on which it may be sealed",
    )
    locate_by = line(
        "Last day to ask for the locate ticket",
        "day",
        _on_day(CalendarMarks.locate),
        source="working days of notice before the first day of work",
    )
    days_off = line(
        "Days from a pour on a day off to the next working day",
        "days",
        when(
            CalendarMarks.pour_works > 0,
            0,
            days_between(
                CalendarRules.middle,
                lookup_by_key(CalendarDay.on, CalendarDay.count, smallest(_ALL_DAYS, _TO_POUR + 1)),
            ),
        ),
        source="calendar; 0 for a pour on a working day",
    )
    start_words = line("Start, in words", "", _words(first_prep_day), source="first day of work")
    pour_words = line("Pour, in words", "", _words(pour_day), source="day of the pour")
    strip_date = line("Day of stripping, in words", "", _words(strip_day), source="day of stripping")
    strip_words = line(
        "Strip, in words",
        "",
        when(both(equals(_STRIP_DAYS, 0), CalendarMarks.fits > 0), "no visit", strip_date),
        source="day of stripping",
    )
    seal_date = line("Day of sealing, in words", "", _words(seal_day), source="day of sealing")
    seal_words = line(
        "Seal, in words",
        "",
        when(both(equals(_SEAL_DAYS, 0), CalendarMarks.fits > 0), "no visit", seal_date),
        source="day of sealing",
    )
    locate_words = line("Ask 811 by, in words", "", _words(locate_by), source="last day to ask for the locate ticket")
    summary = line(
        "Days of the job, in words",
        "",
        when(
            CalendarMarks.fits > 0,
            joined(
                "pour ",
                pour_words,
                ", start ",
                start_words,
                ", strip ",
                strip_words,
                ", seal ",
                seal_words,
                ", ask 811 by ",
                locate_words,
            ),
            when(
                CalendarRules.known > 0,
                "not known: the job takes more working days than the calendar reaches",
                "not known: no pour date is typed",
            ),
        ),
        source="working days of the company",
    )
