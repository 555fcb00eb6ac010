"""The clock of a haul worked out plainly: trips in a day, the last load at the gate, days. Nothing is the program's."""

from __future__ import annotations

from fractions import Fraction

from reference_haul import down, up
from reference_plans import PlanCost, Site, TruckSplit

DAY, SET_UP, STARTS = Fraction(8), Fraction(3, 2), Fraction(7)


def trips_a_day(site: Site) -> int:
    """As many as the day holds after the set-up."""
    return down((DAY - SET_UP) / site.trip) if site.trip else 0


def last_load(each: TruckSplit) -> Fraction | None:
    """The hour of the day at which the last load of a day is at the gate; ``None`` where no trip fits the day."""
    site = each.site
    if site is None or not trips_a_day(site):
        return None
    way = (site.minutes or Fraction(0)) / 60
    leaves = max(STARTS + SET_UP, (site.opens or 0) - way)
    return leaves + (min(each.loads, trips_a_day(site)) - 1) * site.trip + way


def too_late(each: TruckSplit) -> Fraction:
    """Hours by which the last load of a day misses the gate."""
    last = last_load(each)
    if last is None or each.site is None or not each.site.closes:
        return Fraction(0)
    return max(Fraction(0), last - each.site.closes)


def haul_days(offer_taken: PlanCost) -> int:
    """Days of trips."""
    return up(offer_taken.hours / (DAY - SET_UP))
