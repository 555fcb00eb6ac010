"""Hourly rates of a job and the composite crew rate."""

from dataclasses import dataclass

from .facts import Job


@dataclass
class Rates:
    """Loaded dollars an hour."""

    laborer: float
    finisher: float
    driver: float
    crew_mix: float


def heads_on_pour(job: Job) -> int:
    """Placing and finishing people as typed, never more than the crew."""
    return min(job.crew, job.placers + job.finishers)


def job_rates(job: Job) -> Rates:
    """Rates of the job's wage table; the crew rate is the mix of the heads on the pour unless the table has one."""
    pay = job.wages.prevailing if job.wage_table == "prevailing" else job.wages.private
    if pay is None:
        raise ValueError(f"job {job.name}: the prevailing wage table is blank")
    heads = heads_on_pour(job)
    finishers = min(job.finishers, heads)
    mix = ((heads - finishers) * pay.laborer + finishers * pay.finisher) / heads
    return Rates(
        laborer=pay.laborer,
        finisher=pay.finisher,
        driver=pay.laborer if pay.driver is None else pay.driver,
        crew_mix=mix if pay.crew_mix is None else pay.crew_mix,
    )
