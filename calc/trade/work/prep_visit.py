"""The preparation visits of the haul plan chosen: how many, with how many people, for how long."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.choice import Choice
from calc.trade.hauling.plan_hours import prep_people, prep_visits
from calc.trade.materials.base_rock import BaseHaul
from calc.trade.work.prep import PrepTask
from calc.trade.work.visit_rules import beyond_day, paid_hours


class PrepVisit(Section, title="Preparation visits", sheet="Costs"):
    """A visit is a day. Where the last load needs more days than the hours do, fewer people may do."""

    hours = line(
        "Preparation hours, with driving",
        "h",
        total(PrepTask.hours) + BaseHaul.hours + Choice.sorting_hours + Choice.own_hours,
        source="tasks, base rock trips, sorting, and own trips to the disposal sites",
    )
    visits = line(
        "Preparation visits",
        "",
        largest(prep_visits(hours), Choice.last_day),
        source="hours over crew times hours on site, rounded up, and at least to the day of the last load",
    )
    people = line(
        "People on a preparation visit", "", prep_people(hours, visits), source="as many as the hours ask for"
    )
    time_on_site = line(
        "Hours on site, preparation",
        "h",
        when(visits > 0, hours / largest(1, people) / largest(1, visits), 0),
        source="preparation hours over people and visits",
    )
    paid = line(
        "Paid hours of a person, preparation",
        "h",
        when(visits > 0, paid_hours(time_on_site), 0),
        source="visit rules; of each visit",
    )
    clock_hours = line("Paid hours, preparation", "h", people * visits * paid, source="people, visits and their hours")
    beyond = line(
        "Time beyond tasks, preparation", "h", largest(0, clock_hours - hours), source="paid hours less hours on tasks"
    )
    long_hours = line(
        "Hours beyond a day, preparation", "h", people * visits * beyond_day(paid), source="paid hours beyond a day"
    )
