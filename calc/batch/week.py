"""What looking across the jobs of a run finds, for the workbook of the run."""

from __future__ import annotations

from collections.abc import Sequence

from calc.layout.week import UnwrittenJob, Week, WeekRow, week_row
from calc.model.outliers import outliers
from calc.model.rental_sharing import rental_days, rentals_of
from calc.model.results import JobValues, jobs_that_share
from calc.model.truck_sharing import refused_loads, shared_trucks, small_pour
from calc.model.week_calendar import job_days, week_calendar


def row_of(job: JobValues, file: str) -> WeekRow:
    """The row of a job whose workbook is ``file``."""
    days = job_days(job)
    return week_row(job, file, small_pour(job), days, tuple(rentals_of(job, days)))


def week_of(jobs: Sequence[WeekRow | UnwrittenJob]) -> Week:
    """The week of these jobs, in their order: those that were written, and those that were not."""
    rows = [each for each in jobs if isinstance(each, WeekRow)]
    pours = [row.pour for row in rows]
    shared = shared_trucks(pours)
    return Week(
        jobs,
        outliers(rows),
        shared,
        refused_loads(pours, shared),
        week_calendar([row.days for row in rows], jobs_that_share(shared)),
        rental_days(use for row in rows for use in row.rentals),
    )
