"""Visits and paid hours: what a person is paid for coming to the job, and how long a day is."""

from __future__ import annotations

from calc.declare import *

ONE_VISIT = exact(1)


class VisitRules(Section, title="Visits", sheet="Costs"):
    """Hours are of one person unless elapsed time is said."""

    day = factor("Working day", "h", 8, low=6, high=12, source="common practice, no source")
    fixed_hours = factor(
        "Fixed hours per visit",
        "h",
        1,
        low=0.5,
        high=2,
        below=day,
        source="common practice, no source: load up, drive, set out and put away",
    )
    prep_stretch = factor(
        "Stretch of a preparation day",
        "h",
        0.5,
        low=0,
        high=1,
        source="common practice, no source: half an hour more rather than another visit",
    )
    minimum_paid = factor(
        "Minimum paid hours per visit", "h", 4, low=0, high=8, source="common practice, no source: half a day"
    )
    least_people = factor(
        "Minimum crew on a preparation visit",
        "person",
        2,
        low=1,
        high=3,
        source="common practice, no source: nobody digs and lifts alone",
    )
    single_people = factor(
        "People to strip forms or seal", "person", 1, low=1, high=2, source="common practice, no source"
    )
    overtime = factor(
        "Overtime rate, times the hourly rate",
        "",
        1.5,
        low=1,
        high=2,
        source="29 CFR 778.107 for hours over 40 a week; hours over a day by state law or custom",
    )
    pour_stop = factor(
        "Longest pour visit", "h", 12, low=9, high=14, source="common practice, no source: two pours, or more people"
    )
    share_note = factor(
        "Hours on tasks, share of paid hours, low",
        "%",
        40,
        low=0,
        high=80,
        source="common practice, no source: below it a note says where the rest goes",
    )

    prep_day = line(
        "Hours on site, preparation day",
        "h",
        day - fixed_hours + prep_stretch,
        source="working day less fixed hours, plus the stretch",
    )
    short_day = line(
        "Hours on site, other day", "h", day - fixed_hours, source="working day less fixed hours: strip and seal visits"
    )


def paid_hours(time_on_site: Expr) -> Expr:
    """The hours that a person is paid who is on the site for so long on one visit."""
    return largest(time_on_site + VisitRules.fixed_hours, VisitRules.minimum_paid)


def beyond_day(paid: Expr) -> Expr:
    """Those of the paid hours of a person that are beyond a working day."""
    return largest(0, paid - VisitRules.day)
