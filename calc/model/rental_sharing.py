"""Shared rentals: machines that two jobs of the week rent on one day, and what one machine for both would cost.

No price counts on it: each bid has its own machine.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from math import isnan

from calc.declare import Section, exact, given, line, money, round_up, smallest, when
from calc.declared import Declared
from calc.model.evaluate import evaluate_section
from calc.model.results import JobDays, JobValues, RentalDay, RentalUse
from calc.trade.levels import TOOL, VISIT
from calc.trade.prices.rental import Rental
from calc.trade.work.equipment import RentalChoice, Tool

_PREP, _POUR = VISIT.axis.words[:2]
_ON_THE_LAST_PREP_DAY, _ON_THE_POUR_DAY = ("plate compactor",), ("mixer",)
"""Base is compacted last, bags are mixed on the day of the pour; all other machines come on the first day."""

_NEVER = 1e9
"""Dollars that no machine costs: the price of a period that has none."""

ONE = exact(1, "each")


class SharedRental(Section, title="One machine for several jobs"):
    """The cheapest period that has a price and is long enough, as for the machine of one job."""

    hours = given("Machine hours of all jobs", "h")
    half_price = given("Price for half a day", "$/each")
    day_price = given("Price for a day", "$/each")
    week_price = given("Price for a week", "$/each")
    half_day = given("Hours of half a day", "h")
    day = given("Hours of a day", "h")
    week = given("Days of a week", "")
    days = line("Days of all jobs", "each", round_up(hours / day), source="hours over a rental day, rounded up")
    by_day = line("By the day", "$", money(days * day_price), source="days times price")
    by_week = line(
        "By the week",
        "$",
        money(round_up(days.count / week) * ONE * week_price),
        source="weeks, rounded up, times price",
    )
    by_half = line(
        "For half a day",
        "$",
        when(hours <= half_day, money(ONE * half_price), by_day),
        source="where that is long enough, else by the day",
    )
    cost = line("One machine for all", "$", smallest(by_half, by_day, by_week), source="the cheapest")


def rentals_of(job: JobValues, days: JobDays) -> Iterator[RentalUse]:
    """The machines that a job rents, each on the day on which its work begins; none without days."""
    for row, tool in enumerate(TOOL.axis.words):
        cost = float(job.of(RentalChoice.cost, row))
        day = _day_of(tool, days)
        if cost and day is not None:
            hours = float(job.of(Tool.hours, row))
            yield RentalUse(day, tool, days.job, hours, cost, _terms(job, row))


def _terms(job: JobValues, row: int) -> tuple[float, ...]:
    prices = (Rental.half_price, Rental.day_price, Rental.week_price)
    return (
        *(float(job.of(price.prices[row])) for price in prices),
        *(float(job.of(each)) for each in (Rental.half_day, Rental.day, Rental.week)),
    )


def _day_of(tool: str, days: JobDays) -> float | None:
    """The day on which the work of a machine begins."""
    work = [each.day for each in days.days if each.visit in (_PREP, _POUR)]
    prep = [each.day for each in days.days if each.visit == _PREP]
    if tool in _ON_THE_POUR_DAY:
        return work[-1] if work else None
    return prep[-1] if prep and tool in _ON_THE_LAST_PREP_DAY else work[0] if work else None


def rental_days(uses: Iterable[RentalUse]) -> list[RentalDay]:
    """The machines of each day, with what one for all the jobs that rent it on that day would cost."""
    together: dict[tuple[float, str], list[RentalUse]] = {}
    for use in uses:
        together.setdefault((use.day, use.tool), []).append(use)
    groups = [together[key] for key in sorted(together)]
    costs = _one_for_all(groups)
    return [
        RentalDay(group[0].day, group[0].tool, tuple(group), min(cost, sum(each.cost for each in group)))
        for group, cost in zip(groups, costs, strict=True)
    ]


def _one_for_all(groups: Sequence[Sequence[RentalUse]]) -> list[float]:
    if not groups:
        return []
    given_terms = (
        SharedRental.half_price, SharedRental.day_price, SharedRental.week_price,
        SharedRental.half_day, SharedRental.day, SharedRental.week,
    )  # fmt: skip
    columns: dict[Declared, Sequence[float]] = {
        each: [_NEVER if isnan(group[0].terms[place]) else group[0].terms[place] for group in groups]
        for place, each in enumerate(given_terms)
    }
    hours = [sum(each.hours for each in group) for group in groups]
    batch = evaluate_section(SharedRental, len(groups), {SharedRental.hours: hours, **columns})
    return [float(each) for each in batch.columns[SharedRental.cost]]
