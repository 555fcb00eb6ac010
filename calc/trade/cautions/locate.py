"""The locate ticket: whether the work needs one, how far ahead it is asked for, and how long it is good."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Job
from calc.trade.inputs.site import Permissions
from calc.trade.work.calendar import Calendar
from calc.trade.work.calendar_length import CalendarRules
from calc.trade.work.labor import Task

_SHEET = "Costs"


class UtilityLocate(Section, title="Utility locate", sheet=_SHEET):
    """Utilities are marked before the ground is opened; the ticket is good for a time that the state sets."""

    ground_hours = line(
        "Hours of digging, chipping and drilling",
        "h",
        look_up(Task.hours, "grub roots")
        + look_up(Task.hours, "break out slab")
        + look_up(Task.hours, "chip footings")
        + look_up(Task.hours, "dig by hand")
        + look_up(Task.hours, "dig by machine")
        + look_up(Task.hours, "drill dowels"),
        source="labor",
    )
    days_expired = line(
        "Locate expires before the last preparation day, by",
        "days",
        when(
            both(is_given(Job.pour_date), is_given(Permissions.locate_ends)),
            largest(
                0,
                days_between(
                    Permissions.locate_ends, when(Calendar.last_prep_day > 0, Calendar.last_prep_day, Job.pour_date)
                ),
            ),
            0,
        ),
        source="last preparation day, or the pour date where that is not known, less the last day of the ticket; 0 "
        "where no date is known",
    )


class LocateTicket(Section, title="Locate ticket", sheet=_SHEET):
    """What is asked for until a ticket is typed, and the ticket with its last day from then on."""

    known = line(
        "Locate ticket is typed", "", when(is_word(Permissions.locate, NONE), 0, 1), source="1 with a ticket number"
    )
    days_good = line(
        "Locate ticket is good for, from the bid date",
        "days",
        when(
            both(known > 0, is_given(Permissions.locate_ends)),
            largest(0, days_between(Job.bid_date, if_given(Permissions.locate_ends, Job.bid_date))),
            0,
        ),
        source="last day of the ticket less the bid date; 0 where either is not typed",
    )
    days_shown = line(
        "Days of the locate note",
        "days",
        when(known > 0, days_good, CalendarRules.notice),
        source="days that the ticket is good for, or the notice for it",
    )
    ticket = line(
        "Locate ticket text",
        "",
        joined(
            "Locate ticket ",
            Permissions.locate,
            when(
                is_given(Permissions.locate_ends),
                joined(": its last day is ", count_of(days_good.count, "each"), " days after the bid date."),
                ": its last day is not typed.",
            ),
        ),
        source="locate ticket and its last day, as typed",
    )
    found = line(
        "Locate text",
        "",
        when(
            known > 0,
            ticket,
            joined(
                "Ground is dug, chipped or drilled: call 811 at least ",
                count_of(CalendarRules.notice.count, "each"),
                " working days ahead.",
            ),
        ),
        source="locate ticket and its last day, as typed",
    )
