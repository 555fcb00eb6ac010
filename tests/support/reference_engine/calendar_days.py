"""Working days of a job, counted from the pour date."""

from datetime import date, timedelta

from .facts import Factors


def is_working_day(day: date, factors: Factors) -> bool:
    """Monday to Friday, Saturday where the house says so, and no house holiday."""
    last = 5 if factors.works_saturdays else 4
    return day.weekday() <= last and day not in factors.holidays


def step_days(day: date, count: int, factors: Factors) -> date:
    """The working day that lies `count` working days after (or before, when negative) a date."""
    step = timedelta(days=1 if count > 0 else -1)
    for _ in range(abs(count)):
        day += step
        while not is_working_day(day, factors):
            day += step
    return day


def days_before(day: date, count: int, factors: Factors) -> list[date]:
    """The last `count` working days before a date, in order."""
    return [step_days(day, -k, factors) for k in range(count, 0, -1)]


def days_after(day: date, count: int, factors: Factors) -> list[date]:
    """The first `count` working days after a date."""
    return [step_days(day, k, factors) for k in range(1, count + 1)]


def seal_days(pour: date, count: int, factors: Factors) -> list[date]:
    """The first working day on or after the end of the sealer's waiting time, and the working days that follow."""
    if count == 0:
        return []
    first = pour + timedelta(days=factors.seal_days)
    if not is_working_day(first, factors):
        first = step_days(first, 1, factors)
    return [first, *days_after(first, count - 1, factors)]


def job_days(pour: date | None, prep: int, shared: bool, strip: int, seal: int, factors: Factors) -> dict[str, object]:
    """Dates of every visit, and the last date to ask for the locate ticket; nothing without a pour date."""
    if pour is None:
        return {}
    prep_dates = [pour] if shared else days_before(pour, prep, factors)
    first = prep_dates[0] if prep_dates else pour
    return {
        "prep_dates": prep_dates,
        "pour_date": pour,
        "strip_dates": days_after(pour, strip, factors),
        "seal_dates": seal_days(pour, seal, factors),
        "locate_by": step_days(first, -factors.locate_days, factors),
        "locate_valid_through": prep_dates[-1] if prep_dates else pour,
        "pour_on_working_day": is_working_day(pour, factors),
    }
