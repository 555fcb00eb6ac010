"""The length of the calendar of a job: the days that its visits need, and no more.

Before the pour, after it and from the first day of sealing on, it has so many days: the working days that the visits
take, the weekends that may fall among so many, and a day for each holiday near them.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Company, Holiday, Job
from calc.trade.levels import HOLIDAY, VISIT
from calc.trade.work.paid_time import Visit

_SHEET = "Costs"
_FIVE = TWO + THREE
"""The working days of a week, but for a Saturday."""
_PREP, _POUR, _STRIP, _SEAL = VISIT.axis.words


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
    saturdays = line(
        "Saturday is a working day", "", when(Company.saturday_work.is_("yes"), 1, 0), source="1 if the company says so"
    )
    days_off = line("Days off in a week", "", TWO - saturdays, source="Sunday, and Saturday unless it is worked")
    prep = line("Preparation days", "", look_up(Visit.visits, _PREP), source="preparation visits, a day each")
    strip = line("Strip days", "", look_up(Visit.visits, _STRIP), source="strip visits, a day each")
    seal = line("Seal days", "", look_up(Visit.visits, _SEAL), source="seal visits, a day each")
    before_pour = line(
        "Working days needed before the pour", "", prep + round_up(notice.count), source="preparation and notice"
    )
    after_pour = line(
        "Working days needed after the pour",
        "",
        largest(1, strip),
        source="stripping, and at least the next working day",
    )
    first_seal_day = line(
        "First day on which it may be sealed",
        "day",
        days_after(middle, count_of(round_up(seal_wait.count), "days")),
        source="wait after the pour",
    )


def _days_that_hold(working_days: Expr) -> Expr:
    """Days that hold so many working days wherever they begin: with the days off of so many weeks, begun ones too."""
    off = CalendarRules.days_off
    return working_days + off * round_up(working_days / (_FIVE + CalendarRules.saturdays))


class DayOff(Section, title="Holidays", each=HOLIDAY, sheet=_SHEET):
    """Days on which the company does not work."""

    counted = line("Holiday counts", "", when(is_given(Holiday.day), 1, 0), source="1 with a date")


class CalendarReach(Section, title="Length of the calendar", sheet=_SHEET):
    """The most days that each kind of visit takes, if all holidays fell among them: where to look for holidays."""

    holidays = line("Holidays with a date", "", total(DayOff.counted), source="as typed in the company book")
    before_pour = line(
        "Days before the pour, at most",
        "",
        _days_that_hold(CalendarRules.before_pour + holidays),
        source="working days needed and all holidays, with days off",
    )
    after_pour = line(
        "Days after the pour, at most",
        "",
        _days_that_hold(CalendarRules.after_pour + holidays),
        source="working days needed and all holidays, with days off",
    )
    seal = line(
        "Days of sealing, at most",
        "",
        _days_that_hold(CalendarRules.seal + holidays),
        source="working days needed and all holidays, with days off",
    )


def _is_within(start: Expr, end: Expr) -> Expr:
    """1 for a holiday from one day to another, both included."""
    return when(both(DayOff.counted > 0, Holiday.day >= start, Holiday.day <= end), 1, 0)


def _days_from(day: Expr, days: Expr) -> Expr:
    return days_after(day, count_of(days, "days"))


class HolidayNear(Section, title="Holidays among the days of the job", each=HOLIDAY, sheet=_SHEET):
    """Each takes a working day from the visits that it may fall among."""

    before_pour = line(
        "Before the pour",
        "",
        _is_within(_days_from(CalendarRules.middle, -CalendarReach.before_pour), CalendarRules.middle),
        source="1 within the days before the pour",
    )
    after_pour = line(
        "After the pour",
        "",
        _is_within(CalendarRules.middle, _days_from(CalendarRules.middle, CalendarReach.after_pour)),
        source="1 within the days after the pour",
    )
    seal = line(
        "From the first day of sealing",
        "",
        _is_within(CalendarRules.first_seal_day, _days_from(CalendarRules.first_seal_day, CalendarReach.seal)),
        source="1 within the days of sealing",
    )


class CalendarRows(Section, title="Rows of the calendar", sheet=_SHEET):
    """Where each part of the calendar begins and ends."""

    pour = line(
        "Row of the pour",
        "",
        _days_that_hold(CalendarRules.before_pour + total(HolidayNear.before_pour)) + 1,
        source="days before the pour, plus 1",
    )
    last_near = line(
        "Row of the last day around the pour",
        "",
        pour + _days_that_hold(CalendarRules.after_pour + total(HolidayNear.after_pour)),
        source="days after the pour",
    )
    last = line(
        "Rows of the calendar needed",
        "",
        last_near + when(CalendarRules.seal > 0, _days_that_hold(CalendarRules.seal + total(HolidayNear.seal)), 0),
        source="days of sealing, if there are any",
    )
