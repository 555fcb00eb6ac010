"""Preparation visits: how many, with how many people."""

from .facts import Factors, Job
from .rounding import up


def prep_day(factors: Factors) -> float:
    """Working hours of a person on a preparation day: the day less the fixed hours, a little stretched."""
    return factors.day_hours - factors.visit_fixed + factors.prep_stretch


def prep_visits(job: Job, hours: float) -> int:
    """Days that the whole crew needs."""
    return up(hours / (job.crew * prep_day(job.factors)))


def prep_people(job: Job, hours: float, visits: int) -> int:
    """People who come: at least two where the crew has two, and as many as the hours ask for."""
    if visits == 0:
        return 0
    least = min(job.factors.prep_least_people, job.crew)
    return max(least, up(hours / (visits * prep_day(job.factors))))
