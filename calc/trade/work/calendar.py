"""The calendar of a job: its working days before and after the pour, and the last day to ask for the locate ticket.

Working days are Monday to Friday, Saturday too where the company works on it, less its holidays. Without a pour date
no day is known: the dates are 0, and their words say so.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Holiday, Job
from calc.trade.levels import DAY
from calc.trade.work.calendar_length import CalendarRows, CalendarRules, DayOff
from calc.trade.work.paid_time import Visit

_SHEET = "Costs"
_ONE_DAY, _SUNDAY = exact(1, "days"), exact(1)
_NUMBER = row_number(DAY)
_NOT_KNOWN = "not known"
_POUR_ROW, _LAST_NEAR = CalendarRows.pour, CalendarRows.last_near


class CalendarDay(Section, title="Calendar days", each=DAY, sheet=_SHEET, slots_for=CalendarRows.last):
    """Every day around the pour, and from the first day on which the slab may be sealed."""

    offset = line(
        "Days from the pour",
        "days",
        count_of(
            when(
                _NUMBER > _LAST_NEAR,
                _NUMBER - _LAST_NEAR - 1 + round_up(CalendarRules.seal_wait.count),
                _NUMBER - _POUR_ROW,
            ),
            "days",
        ),
        source="number of the row",
    )
    on = line(
        "Date",
        "day",
        when(CalendarRows.last >= _NUMBER, days_after(CalendarRules.middle, offset), 0),
        source="calendar; 0 in the rows that are not needed",
    )
    is_holiday = line(
        "Holiday", "", when(total_on(DayOff.counted, Holiday.day, on) > 0, 1, 0), source="1 if the company book has it"
    )
    is_working = line(
        "Working day",
        "",
        when(
            either(
                on <= 0,
                equals(day_of_week(on), _SUNDAY),
                both(equals(day_of_week(days_after(on, _ONE_DAY)), _SUNDAY), equals(CalendarRules.saturdays, 0)),
                equals(is_holiday, 1),
            ),
            0,
            1,
        ),
        source="no Sunday, no Saturday unless the company works on it, no holiday",
    )
    count = line("Working days so far", "", running(is_working, JOB), source="running count")


class CalendarMarks(Section, title="Visits in the calendar", sheet=_SHEET):
    """How many days each kind of visit takes, and the working days that they are counted from."""

    listed = line(
        "Rows of the calendar, as far as it has them",
        "",
        smallest(CalendarRows.last, row_count(DAY)),
        source="rows needed, as far as there are any",
    )
    before_pour = line(
        "Working days before the pour, in the calendar",
        "",
        at(CalendarDay.count, smallest(listed, _POUR_ROW - 1)),
        source="running count on the day before",
    )
    to_pour = line(
        "Working days to the pour, in the calendar",
        "",
        at(CalendarDay.count, smallest(listed, _POUR_ROW)),
        source="running count on the day of the pour",
    )
    near = line(
        "Working days before sealing, in the calendar",
        "",
        at(CalendarDay.count, smallest(listed, _LAST_NEAR)),
        source="running count on the last day around the pour",
    )
    all_days = line(
        "Working days in the calendar", "", at(CalendarDay.count, listed), source="running count on the last day"
    )
    first_prep = line(
        "First preparation day, by count", "", before_pour - CalendarRules.prep + 1, source="counted back"
    )
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
                equals(listed, CalendarRows.last),
                locate > 0,
                to_pour + CalendarRules.strip <= near,
                near + CalendarRules.seal <= all_days,
            ),
            1,
            0,
        ),
        source="1 if a pour date is known and the calendar reaches every day of work",
    )
    pour_works = line(
        "Pour is on a working day",
        "",
        when(CalendarRules.known > 0, at(CalendarDay.is_working, smallest(listed, _POUR_ROW)), 1),
        source="calendar; 1 without a pour date",
    )


class DayWork(Section, title="Work by day", each=DAY, sheet=_SHEET, slots_for=CalendarRows.last):
    """What is done on each day, and by how many people."""

    usable = line(
        "Working day, if the days are enough",
        "",
        CalendarMarks.fits * CalendarDay.is_working,
        source="1 for a working day of a calendar that holds all visits",
    )
    is_prep = line(
        "Preparation",
        "",
        when(both(usable > 0, _NUMBER < _POUR_ROW, CalendarDay.count >= CalendarMarks.first_prep), 1, 0),
        source="working days before the pour",
    )
    is_pour = line(
        "Pour", "", CalendarMarks.fits * when(equals(_NUMBER, _POUR_ROW), 1, 0), source="the day that is typed"
    )
    is_strip = line(
        "Stripping",
        "",
        when(
            both(
                usable > 0,
                _NUMBER > _POUR_ROW,
                _NUMBER <= _LAST_NEAR,
                CalendarDay.count - CalendarMarks.to_pour <= CalendarRules.strip,
            ),
            1,
            0,
        ),
        source="working days after the pour",
    )
    is_seal = line(
        "Sealing",
        "",
        when(
            both(usable > 0, _NUMBER > _LAST_NEAR, CalendarDay.count - CalendarMarks.near <= CalendarRules.seal), 1, 0
        ),
        source="working days from the first on which the slab may be sealed",
    )
    visit_row = line(
        "Row of the visit",
        "",
        is_prep + TWO * is_pour + THREE * is_strip + TWO * TWO * is_seal,
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
        lookup_by_key(CalendarDay.on, CalendarDay.count, smallest(CalendarMarks.all_days, largest(1, count))),
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
        when(CalendarRules.prep > 0, _on_day(CalendarMarks.first_prep), day_if_shared),
        source="first preparation day; the day of the pour where that is the first",
    )
    last_prep_day = line(
        "Last preparation day",
        "day",
        when(CalendarRules.prep > 0, _on_day(CalendarMarks.before_pour), day_if_shared),
        source="last preparation day; the day of the pour where they are one visit",
    )
    strip_day = line(
        "Day of stripping",
        "day",
        when(CalendarRules.strip > 0, _on_day(CalendarMarks.to_pour + 1), 0),
        source="next working day after the pour",
    )
    seal_day = line(
        "Day of sealing",
        "day",
        when(CalendarRules.seal > 0, _on_day(CalendarMarks.near + 1), 0),
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
                lookup_by_key(
                    CalendarDay.on, CalendarDay.count, smallest(CalendarMarks.all_days, CalendarMarks.to_pour + 1)
                ),
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
        when(both(equals(CalendarRules.strip, 0), CalendarMarks.fits > 0), "no visit", strip_date),
        source="day of stripping",
    )
    seal_date = line("Day of sealing, in words", "", _words(seal_day), source="day of sealing")
    seal_words = line(
        "Seal, in words",
        "",
        when(both(equals(CalendarRules.seal, 0), CalendarMarks.fits > 0), "no visit", seal_date),
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
