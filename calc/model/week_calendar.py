"""The calendar of the week: what each job does on each day, and how many crews and people that takes.

A preparation or a pour takes a crew; stripping and sealing take a person. Pours that share a truck are one crew where
their visits fit one day.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from math import isnan

from calc.model.results import JobDays, JobValues, WeekCalendar, WeekDay, WorkDay
from calc.trade.cautions.locate import LocateTicket, UtilityLocate
from calc.trade.inputs.job import Job
from calc.trade.levels import DAY, VISIT
from calc.trade.work.calendar import Calendar, DayWork
from calc.trade.work.calendar import CalendarDay as DayOfJob
from calc.trade.work.calendar_length import CalendarRules
from calc.trade.work.paid_time import Visit
from calc.trade.work.visit_rules import VisitRules

_PREP, _POUR = VISIT.axis.words[:2]
_POUR_ROW = VISIT.axis.words.index(_POUR)


def job_days(job: JobValues) -> JobDays:
    """The days of a job, from its own calendar."""
    asks = float(job.of(UtilityLocate.ground_hours)) > 0 and not float(job.of(LocateTicket.known))
    return JobDays(
        job.job.id,
        not isnan(float(job.of(Job.pour_date))),
        tuple(_work_of(job)),
        float(job.of(Calendar.locate_by)) if asks else 0.0,
        float(job.of(Visit.time_on_site, _POUR_ROW)),
        float(job.of(VisitRules.short_day)),
        float(job.of(CalendarRules.crews)),
    )


def _work_of(job: JobValues) -> Iterator[WorkDay]:
    for row in range(job.count(DAY)):
        people = float(job.of(DayWork.people, row))
        if people:
            yield WorkDay(float(job.of(DayOfJob.on, row)), str(job.of(DayWork.visit, row)), people)


def week_calendar(jobs: Sequence[JobDays], sharing: Mapping[str, tuple[str, ...]]) -> WeekCalendar:
    """The calendar of the week; ``sharing`` gives for a job all the jobs of the truck that it shares."""
    known = sorted((each for each in jobs if each.days), key=lambda each: (each.days[0].day, each.job))
    work: dict[float, dict[str, WorkDay]] = {}
    ask: dict[float, list[str]] = {}
    for job in known:
        for each in job.days:
            work.setdefault(each.day, {})[job.job] = each
        if job.ask:
            ask.setdefault(job.ask, []).append(job.job)
    by_id = {each.job: each for each in known}
    return WeekCalendar(
        tuple(
            _week_day(day, work.get(day, {}), tuple(ask.get(day, ())), by_id, sharing) for day in sorted({*work, *ask})
        ),
        tuple(each.job for each in known),
        tuple(each.job for each in jobs if not each.has_date),
        tuple(each.job for each in jobs if each.has_date and not each.days),
        max((each.crews for each in jobs), default=1.0),
    )


def _week_day(
    day: float,
    work: Mapping[str, WorkDay],
    ask: tuple[str, ...],
    jobs: Mapping[str, JobDays],
    sharing: Mapping[str, tuple[str, ...]],
) -> WeekDay:
    """A day with its crews and people; jobs that are done by one crew in turn need the people of the largest once."""
    crews: dict[tuple[str, ...], float] = {}
    singles = 0.0
    for job, each in work.items():
        if each.visit in (_PREP, _POUR):
            key = _crew_of(job, work, jobs, sharing)
            crews[key] = max(crews.get(key, 0.0), each.people)
        else:
            singles += each.people
    return WeekDay(day, work, len(crews), sum(crews.values()) + singles, ask)


def _crew_of(
    job: str,
    work: Mapping[str, WorkDay],
    jobs: Mapping[str, JobDays],
    sharing: Mapping[str, tuple[str, ...]],
) -> tuple[str, ...]:
    """The jobs of the day that one crew does: those of a shared truck where they all pour, and fit the day."""
    truck = sharing.get(job, (job,))
    pour_all = all(each in jobs and each in work and work[each].visit == _POUR for each in truck)
    if pour_all and sum(jobs[each].pour_hours for each in truck) <= jobs[job].day_hours:
        return truck
    return (job,)
