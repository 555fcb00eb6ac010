"""Visits to the job and paid time: who comes how often, what they are paid for, and what of it is beyond the tasks."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import VISIT
from calc.trade.prices.wage_rates import CrewRate
from calc.trade.work.pour_visit import POUR
from calc.trade.work.pour_work import SEALING, PourHours
from calc.trade.work.prep_visit import PrepVisit
from calc.trade.work.visit_rules import VisitRules, beyond_day, paid_hours

_SHEET = "Costs"
_ALONE = 1 - POUR.is_shared
PREP, ON_POUR, STRIP, SEAL = VISIT.axis.words


class SingleVisit(Section, title="Strip and seal visits", each=VISIT, sheet=_SHEET):
    """Visits of one person after the pour; none where there is nothing to do."""

    hours = line(
        "Hours of the visit",
        "h",
        by_row(VISIT, 0, 0, PourHours.stripping, SEALING),
        source="tasks; preparation and the pour are worked out by themselves",
    )
    visits = line(
        "One-person visits",
        "",
        round_up(hours / (VisitRules.single_people.count * VisitRules.short_day)),
        source="hours over people times hours on site, rounded up",
    )
    time_on_site = line(
        "Hours on site, one-person visit",
        "h",
        when(visits > 0, hours / VisitRules.single_people.count / largest(1, visits), 0),
        source="hours over people and visits",
    )
    paid = line(
        "Paid hours of a person, one-person visit",
        "h",
        when(visits > 0, paid_hours(time_on_site), 0),
        source="visit rules",
    )


class Visit(Section, title="Visits and paid time", each=VISIT, sheet=_SHEET):
    """A pour that shares the preparation visit stands under the pour, with the hours of both."""

    name = line("Kind of visit", "", row_word(VISIT), source="visits")
    visits = line(
        "Visits",
        "",
        by_row(VISIT, _ALONE * PrepVisit.visits, 1, SingleVisit.visits, SingleVisit.visits),
        source="preparation, pour, strip, seal",
        adds=True,
    )
    people = line(
        "People",
        "",
        when(
            visits > 0,
            by_row(
                VISIT, PrepVisit.people, POUR.people, VisitRules.single_people.count, VisitRules.single_people.count
            ),
            0,
        ),
        source="on each of these visits",
    )
    time_on_site = line(
        "Hours on site, longest person",
        "h",
        by_row(
            VISIT, _ALONE * PrepVisit.time_on_site, POUR.longest, SingleVisit.time_on_site, SingleVisit.time_on_site
        ),
        source="of each visit",
    )
    laborer_hours = line(
        "Paid hours at the laborer rate",
        "h",
        by_row(
            VISIT,
            _ALONE * PrepVisit.clock_hours,
            POUR.laborer_paid,
            people * visits * SingleVisit.paid,
            people * visits * SingleVisit.paid,
        ),
        source="people times visits times paid hours",
        adds=True,
    )
    finisher_hours = line(
        "Paid hours at the finisher rate", "h", by_row(VISIT, 0, POUR.finisher_paid, 0, 0), source="pour", adds=True
    )
    clock_hours = line(
        "Paid hours", "h", laborer_hours + finisher_hours, source="at the laborer and the finisher rate", adds=True
    )
    task_hours = line(
        "Hours on tasks",
        "h",
        by_row(VISIT, _ALONE * PrepVisit.hours, POUR.task_hours, SingleVisit.hours, SingleVisit.hours),
        source="with own driving and sorting, which are paid with hauling and base",
        adds=True,
    )
    beyond = line(
        "Time beyond tasks",
        "h",
        largest(0, clock_hours - task_hours),
        source="paid hours less hours on tasks",
        adds=True,
    )
    unpaid = line(
        "Hours on tasks that nobody is there for",
        "h",
        largest(0, task_hours - clock_hours),
        source="where more people are typed for a task than the crew has; they are paid with the task",
        adds=True,
    )
    long_laborer = line(
        "Hours beyond a day at the laborer rate",
        "h",
        by_row(
            VISIT,
            _ALONE * PrepVisit.long_hours,
            POUR.long_laborer,
            people * visits * beyond_day(SingleVisit.paid),
            people * visits * beyond_day(SingleVisit.paid),
        ),
        source="paid hours of a person beyond a working day",
        adds=True,
    )
    long_finisher = line(
        "Hours beyond a day at the finisher rate",
        "h",
        by_row(VISIT, 0, POUR.long_finisher, 0, 0),
        source="pour",
        adds=True,
    )


class PaidTime(Section, title="Paid time", sheet=_SHEET):
    """What is paid beyond the tasks: the way there and back, setting out, minimum hours, waiting for the concrete."""

    clock_hours = line("Paid hours, all visits", "h", total(Visit.clock_hours), source="sum of the visits")
    share = line(
        "Hours on tasks, share of paid hours",
        "%",
        when(clock_hours > 0, total(Visit.task_hours) / clock_hours * PERCENT, 0),
        source="the rest is beyond tasks",
    )
    crew_visits = line(
        "Visits of the crew",
        "",
        look_up(Visit.visits, PREP) + look_up(Visit.visits, ON_POUR),
        source="preparation and pour",
    )
    single_visits = line(
        "Visits of one person", "", look_up(Visit.visits, STRIP) + look_up(Visit.visits, SEAL), source="strip and seal"
    )
    visits = line("Visits, all", "", crew_visits + single_visits, source="of the crew and of one person")
    laborer_premium = line(
        "Overtime premium, laborers",
        "h",
        (VisitRules.overtime - 1) * total(Visit.long_laborer),
        source="hours beyond a day times what overtime adds to the rate",
    )
    finisher_premium = line(
        "Overtime premium, finishers",
        "h",
        (VisitRules.overtime - 1) * total(Visit.long_finisher),
        source="hours beyond a day times what overtime adds to the rate",
    )
    laborer_cost = line(
        "Time beyond tasks and overtime, laborers",
        "$",
        money(look_up(Visit.beyond, PREP) * CrewRate.laborer)
        + money(POUR.beyond_laborer * CrewRate.laborer)
        + money(look_up(Visit.beyond, STRIP) * CrewRate.laborer)
        + money(look_up(Visit.beyond, SEAL) * CrewRate.laborer)
        + money(laborer_premium * CrewRate.laborer),
        source="hours at the laborer rate, each to the cent",
    )
    cost = line(
        "Time beyond tasks and overtime, cost",
        "$",
        laborer_cost + money(POUR.beyond_finisher * CrewRate.finisher) + money(finisher_premium * CrewRate.finisher),
        source="laborers, and hours at the finisher rate, each to the cent",
    )
