"""Shared loads: which small pours of a week could share a truck, and what that would save.

Nothing is changed automatically: the pairs are listed by saving, with the conditions.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations, islice
from math import isnan

from calc.declare import Section, given, line, money
from calc.intake.spelling import normalize
from calc.model.evaluate import evaluate_section
from calc.model.results import JobValues, SharedTruck, SmallPour
from calc.trade.inputs.job import Job
from calc.trade.levels import TIER
from calc.trade.money.week import WeekComparison
from calc.trade.ordering.method_choice import Placing
from calc.trade.ordering.method_cost import MethodCost
from calc.trade.ordering.methods import TruckSplit
from calc.trade.ordering.order import Order
from calc.trade.ordering.order_candidates import Risk
from calc.trade.ordering.plant import ChosenMix, DischargePrice, PlantCharges, ShortLoadTier
from calc.trade.ordering.pour import PourCost
from calc.trade.ordering.trucks import ONE_TRUCK, free_minutes, plant_charge, short_load_fee, standby
from calc.trade.ordering.weather import DischargeLimit
from calc.trade.papers.mix import MIX

AT_ONCE = 20_000
"""So many pairs are priced in one go."""


class SharedLoad(Section, title="Two pours on one truck"):
    """What the plant charges for both, by its terms for the dearer yard: the rule of any order, for one truck."""

    yards = given("Yards of both", "yd3")
    yard = given("Price of the dearer yard", "$/yd3")
    on_site = given("From the first yard to the last", "min/truck", help="Both unloaded, and the way between.")
    minute = given("A minute of waiting", "$/min")
    plant = line(
        "The plant charges",
        "$",
        plant_charge(yards, yard, short_load_fee(ONE_TRUCK, yards / ONE_TRUCK), ONE_TRUCK),
        source="as for any order",
    )
    waiting = line(
        "Waiting of the truck",
        "$",
        money(
            ONE_TRUCK
            * standby(
                on_site, free_minutes(TruckSplit.allowance_per_truck, TruckSplit.allowance_per_yard, yards / ONE_TRUCK)
            )
            * minute
        ),
        source="as for any truck",
    )
    together = line("Both on one truck", "$", plant + waiting, source="the plant, and its truck that waits")


def small_pour(job: JobValues) -> SmallPour:
    """What the search for shared trucks needs to know of one job."""
    row = int(float(job.of(Placing.discharge))) - 1
    return SmallPour(
        job.job.id,
        float(job.of(Job.pour_date)),
        float(job.of(Order.quantity)),
        sum(float(job.of(each)) for each in (PourCost.concrete, PourCost.fees, PourCost.delivery)),
        float(job.of(PourCost.standby)),
        float(job.of(ChosenMix.psi)) if float(job.of(ChosenMix.known)) else 0.0,
        float(job.of(DischargePrice.yard, row)),
        tuple(_in_words(job.of(each.named)) for each in MIX),
        tuple(
            (float(job.of(ShortLoadTier.start, each)), float(job.of(ShortLoadTier.fee, each)))
            for each in range(len(TIER.axis.words))
        ),
        float(job.of(PlantCharges.least_order)),
        float(job.of(PlantCharges.delivery)),
        float(job.of(Risk.truck_capacity)),
        float(job.of(PourCost.longest_unloading)),
        float(job.of(DischargeLimit.time_left)),
        (float(job.of(TruckSplit.allowance_per_truck)), float(job.of(TruckSplit.allowance_per_yard))),
        float(job.of(MethodCost.standby_rate)),
        float(job.of(WeekComparison.travel_between)),
    )


def _in_words(value: float | str) -> str:
    """A property of a mix as it is compared: numbers to the millionth, as everywhere."""
    return normalize(value) if isinstance(value, str) else f"{value:.6f}"


_NONE_OF_IT = {"none", "no", _in_words(0.0)}


def shared_trucks(pours: Sequence[SmallPour]) -> list[SharedTruck]:
    """Every pair that could share a truck and saves by it, the best first."""
    by_day: dict[float, list[SmallPour]] = {}
    for pour in pours:
        if not isnan(pour.day):
            by_day.setdefault(pour.day, []).append(pour)
    together = (two for day in by_day.values() for two in combinations(day, 2))
    found = _priced(stops for one, another in together for stops in _stops(one, another))
    return sorted((pair for pair in found if pair.saving > 0), key=lambda pair: (-pair.saving, pair.first.job))


def _stops(one: SmallPour, another: SmallPour) -> Iterator[tuple[SmallPour, SmallPour]]:
    """Two pours of one day in the order of their stops, if all holds that it takes: mix, room on the truck, time."""
    if min(one.yards, another.yards) <= 0 or min(one.psi, another.psi) <= 0:
        return
    if one.yards + another.yards > min(one.capacity, another.capacity) or not _one_mix(one, another):
        return
    if _on_site(one, another) > min(one.time_left, another.time_left):
        return
    yield (one, another) if _bare(one) or not _bare(another) else (another, one)


def _one_mix(one: SmallPour, another: SmallPour) -> bool:
    """Whether one truck can bring what both ask for."""
    off = [each for each, mine, other in zip(MIX, one.mix, another.mix, strict=True) if mine != other]
    return all(each.more_serves or (each.added_later and (_bare(one) or _bare(another))) for each in off)


def _bare(pour: SmallPour) -> bool:
    """Whether it takes nothing that can be added later: it may be the first stop before one that does."""
    return all(value in _NONE_OF_IT for each, value in zip(MIX, pour.mix, strict=True) if each.added_later)


def _on_site(one: SmallPour, another: SmallPour) -> float:
    """Minutes on site: both unloaded, and the drive between."""
    return one.unloading + another.unloading + max(one.between, another.between)


def _priced(found: Iterator[tuple[SmallPour, SmallPour]]) -> Iterator[SharedTruck]:
    """The pairs with what both cost on one truck."""
    while some := list(islice(found, AT_ONCE)):
        for (first, second), together in zip(some, _together(some), strict=True):
            yield SharedTruck(first, second, together)


def _together(stops: Sequence[tuple[SmallPour, SmallPour]]) -> list[float]:
    """What both cost on one truck, the dearer yard for both: the stronger mix, and what is in it."""
    terms = [max(two, key=lambda pour: (pour.yard, pour.psi)) for two in stops]
    batch = evaluate_section(
        SharedLoad,
        len(stops),
        {
            SharedLoad.yards: [one.yards + another.yards for one, another in stops],
            SharedLoad.yard: [each.yard for each in terms],
            SharedLoad.on_site: [_on_site(one, another) for one, another in stops],
            ShortLoadTier.start: [start for each in terms for start, _ in each.fees],
            ShortLoadTier.fee: [fee for each in terms for _, fee in each.fees],
            PlantCharges.least_order: [each.least for each in terms],
            PlantCharges.delivery: [each.delivery for each in terms],
            TruckSplit.allowance_per_truck: [each.free[0] for each in terms],
            TruckSplit.allowance_per_yard: [each.free[1] for each in terms],
            SharedLoad.minute: [each.minute for each in terms],
        },
    )
    return [float(each) for each in batch.columns[SharedLoad.together]]
