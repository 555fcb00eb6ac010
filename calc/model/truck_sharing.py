"""Shared loads: which small pours of a week could share a truck, and what that would save.

Nothing is changed automatically: the set that saves most is listed with its conditions, and the other pairs and threes.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import combinations, islice
from math import isnan, nan

from calc.declare import Section, given, line, money
from calc.intake.spelling import normalize
from calc.model.evaluate import evaluate_section
from calc.model.results import JobValues, RefusedLoad, SharedTruck, SmallPour, minutes_on_site
from calc.trade.inputs.job import Job
from calc.trade.inputs.papers import PaperFacts
from calc.trade.levels import TIER
from calc.trade.money.week import WeekComparison
from calc.trade.ordering.method_choice import Placing
from calc.trade.ordering.method_cost import MethodCost
from calc.trade.ordering.methods import TruckSplit
from calc.trade.ordering.order import Order
from calc.trade.ordering.order_candidates import Risk
from calc.trade.ordering.plant import ChosenMix, DischargePrice, PlantCharges, ShortLoadTier
from calc.trade.ordering.plant_fees import PlantFees
from calc.trade.ordering.pour import PourCost
from calc.trade.ordering.trucks import ONE_TRUCK, free_minutes, plant_charge, short_load_fee, standby
from calc.trade.ordering.weather import DischargeLimit
from calc.trade.papers.mix import MIX

AT_ONCE = 20_000
"""So many shared trucks are priced in one go."""

MOST_IN_THREES = 60
"""Of a day with more pours only so many, the smallest, are tried in threes: the pours that pay the most fees."""

MOST_TRIED = 50_000
"""So many sets of a day are tried, more than a dozen pours need; of a busier day the best of those tried is taken."""

MOST_REFUSED = 60
"""So many pairs that do not share a truck are told, with the reason."""

DAYS_APART = 7
"""Pours that are so many days apart, or fewer, might be moved to one day."""

_PAIR = 2

_A_HAIR = 1e-6
"""Dollars by which one set has to save more than another."""

Stops = tuple[SmallPour, ...]
"""The pours of one truck in the order of its stops."""


class SharedLoad(Section, title="Pours that share a truck"):
    """What the plant charges for all, by its terms for the dearest yard: the rule of any order, for one truck."""

    yards = given("Yards of all stops", "yd3")
    yard = given("Price of the dearest yard", "$/yd3")
    on_site = given("From the first yard to the last", "min/truck", help="All unloaded, and the way between.")
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
    together = line("All on one truck", "$", plant + waiting, source="the plant, and its truck that waits")


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
        float(job.of(PlantCharges.by_load)),
        float(job.of(Risk.truck_capacity)),
        float(job.of(PourCost.longest_unloading)),
        float(job.of(DischargeLimit.time_left)),
        (float(job.of(TruckSplit.allowance_per_truck)), float(job.of(TruckSplit.allowance_per_yard))),
        float(job.of(MethodCost.standby_rate)),
        float(job.of(WeekComparison.travel_between)),
        float(job.of(PlantFees.puts_in_fiber)) > 0,
        float(job.of(PaperFacts.arrives)),
    )


def _in_words(value: float | str) -> str:
    """A property of a mix as it is compared: numbers to the millionth, as everywhere."""
    return normalize(value) if isinstance(value, str) else f"{value:.6f}"


_NONE_OF_IT = {"none", "no", _in_words(0.0)}


def shared_trucks(pours: Sequence[SmallPour]) -> list[SharedTruck]:
    """Every pair and every three that could share a truck and saves by it: the best set first, then by saving."""
    by_day: dict[float, list[SmallPour]] = {}
    for pour in pours:
        if not isnan(pour.day) and pour.yards > 0 and pour.psi > 0:
            by_day.setdefault(pour.day, []).append(pour)
    found = _priced(stops for day in by_day.values() for stops in _together_on_a_day(day))
    saving = sorted((each for each in found if each.saving > 0), key=lambda each: (-each.saving, each.stops[0].job))
    best = {id(each) for each in best_set(saving)}
    marked = [replace(each, best=id(each) in best) for each in saving]
    return sorted(marked, key=lambda each: not each.best)


def best_set(found: Iterable[SharedTruck]) -> list[SharedTruck]:
    """The shared trucks that save most together and take no pour twice; days have nothing to do with each other."""
    by_day: dict[float, list[SharedTruck]] = {}
    for each in found:
        by_day.setdefault(each.day, []).append(each)
    return [each for day in by_day.values() for each in _best_of_day(day)]


def _best_of_day(found: Sequence[SharedTruck]) -> list[SharedTruck]:
    """Tries the pours one after the other, each without a shared truck and with each of its trucks.

    A set is given up as soon as it could not save more than the best so far, even if every pour that is left took the
    part of a pour in the truck that saves it most.
    """
    trucks = sorted(found, key=lambda each: -each.saving / len(each.stops))
    of_pour: dict[str, list[SharedTruck]] = {}
    for truck in trucks:
        for stop in truck.stops:
            of_pour.setdefault(stop.job, []).append(truck)
    most = {job: of_it[0].saving / len(of_it[0].stops) for job, of_it in of_pour.items()}
    order = sorted(of_pour, key=lambda job: -most[job])
    best: list[SharedTruck] = []
    best_saving, tried = 0.0, 0
    stack: list[tuple[int, frozenset[str], float, tuple[SharedTruck, ...]]] = [(0, frozenset(), 0.0, ())]
    while stack and tried < MOST_TRIED:
        place, used, saving, taken = stack.pop()
        tried += 1
        if saving > best_saving + _A_HAIR:
            best, best_saving = list(taken), saving
        left = [job for job in order[place:] if job not in used]
        if not left or saving + sum(most[job] for job in left) <= best_saving + _A_HAIR:
            continue
        next_place = order.index(left[0]) + 1
        stack.append((next_place, used | {left[0]}, saving, taken))
        for truck in reversed(of_pour[left[0]]):
            jobs = {stop.job for stop in truck.stops}
            if not jobs & used:
                stack.append((next_place, used | jobs, saving + truck.saving, (*taken, truck)))
    return best


def _together_on_a_day(day: Sequence[SmallPour]) -> Iterator[Stops]:
    """The pairs and threes of a day that may share a truck. In a three, each pair of it may."""
    pairs = {(one, two) for one, two in combinations(range(len(day)), 2) if _may_share((day[one], day[two]))}
    yield from (_in_order((day[one], day[two])) for one, two in sorted(pairs))
    smallest = sorted(sorted(range(len(day)), key=lambda place: day[place].yards)[:MOST_IN_THREES])
    for one, two, three in combinations(smallest, 3):
        if {(one, two), (one, three), (two, three)} <= pairs and _may_share((day[one], day[two], day[three])):
            yield _in_order((day[one], day[two], day[three]))


def _may_share(stops: Stops) -> bool:
    """Whether all holds that one truck takes: room, time and mix."""
    return not _against(stops)


def _against(stops: Stops) -> str:
    """Why stops cannot share a truck, in words; nothing where they can."""
    if sum(each.yards for each in stops) > min(each.capacity for each in stops):
        return "more than one truck"
    if not all(_one_mix(one, another) for one, another in combinations(stops, 2)):
        return "other mixes"
    if minutes_on_site(stops) > min(each.time_left for each in stops):
        return "too long on site"
    return ""


def refused_loads(pours: Sequence[SmallPour], found: Iterable[SharedTruck]) -> list[RefusedLoad]:
    """Why the other pairs do not share a truck: first those of one day, then those that only the day keeps apart, then
    the jobs that can share with none. ``found`` are the trucks that save."""
    saving = {frozenset(stop.job for stop in truck.stops) for truck in found if len(truck.stops) == _PAIR}
    able = [each for each in pours if not _alone(each)]
    by_day: dict[float, list[SmallPour]] = {}
    for pour in able:
        by_day.setdefault(pour.day, []).append(pour)
    same_day = (pair for day in by_day.values() for pair in combinations(day, _PAIR))
    refused = [
        _refused(pair, _against(pair) or "saves nothing")
        for pair in islice(same_day, MOST_REFUSED)
        if frozenset(each.job for each in pair) not in saving
    ]
    apart = (pair for pair in combinations(able, _PAIR) if _only_days_apart(pair))
    refused += [_refused(pair, "other days") for pair in islice(apart, MOST_REFUSED - len(refused))]
    return refused + [_refused((each,), _alone(each)) for each in pours if _alone(each)]


def _alone(pour: SmallPour) -> str:
    """Why a pour shares a truck with no other, in words; nothing where it might."""
    if pour.yards <= 0:
        return "no ready-mix"
    if pour.yards >= pour.capacity:
        return "full trucks"
    if pour.psi <= 0:
        return "no price of the mix"
    return "no pour date" if isnan(pour.day) else ""


def _only_days_apart(pair: tuple[SmallPour, ...]) -> bool:
    """Whether nothing but a few days keeps two pours apart."""
    return 0 < abs(pair[0].day - pair[1].day) <= DAYS_APART and not _against(pair)


def _refused(stops: tuple[SmallPour, ...], reason: str) -> RefusedLoad:
    days = {each.day for each in stops}
    return RefusedLoad(
        tuple(each.job for each in stops),
        days.pop() if len(days) == 1 else nan,
        sum(each.yards for each in stops),
        min(each.capacity for each in stops),
        reason,
    )


def _in_order(stops: Stops) -> Stops:
    """The stops that take nothing which can be added later come first."""
    return tuple(sorted(stops, key=lambda each: not _bare(each)))


def _one_mix(one: SmallPour, another: SmallPour) -> bool:
    """Whether one truck can bring what both ask for. Fiber put in at the plant is there from the first stop."""
    off = [each for each, mine, other in zip(MIX, one.mix, another.mix, strict=True) if mine != other]
    return one.plant_fiber == another.plant_fiber and all(
        each.more_serves or (each.added_later and (_bare(one) or _bare(another))) for each in off
    )


def _bare(pour: SmallPour) -> bool:
    """Whether it takes nothing that can be added later: it may be a stop before one that does."""
    return all(value in _NONE_OF_IT for each, value in zip(MIX, pour.mix, strict=True) if each.added_later)


def _priced(found: Iterator[Stops]) -> Iterator[SharedTruck]:
    """The shared trucks with what all their stops cost on one."""
    while some := list(islice(found, AT_ONCE)):
        for stops, (together, waiting) in zip(some, _together(some), strict=True):
            yield SharedTruck(stops, together, waiting=waiting)


def _together(trucks: Sequence[Stops]) -> list[tuple[float, float]]:
    """What all stops cost on one truck, and the waiting in it: the dearest yard for all, and the dearest way to any of
    them."""
    terms = [max(stops, key=lambda pour: (pour.yard, pour.psi)) for stops in trucks]
    batch = evaluate_section(
        SharedLoad,
        len(trucks),
        {
            SharedLoad.yards: [sum(each.yards for each in stops) for stops in trucks],
            SharedLoad.yard: [each.yard for each in terms],
            SharedLoad.on_site: [minutes_on_site(stops) for stops in trucks],
            ShortLoadTier.start: [start for each in terms for start, _ in each.fees],
            ShortLoadTier.fee: [fee for each in terms for _, fee in each.fees],
            PlantCharges.least_order: [each.least for each in terms],
            PlantCharges.by_load: [max(each.by_load for each in stops) for stops in trucks],
            TruckSplit.allowance_per_truck: [each.free[0] for each in terms],
            TruckSplit.allowance_per_yard: [each.free[1] for each in terms],
            SharedLoad.minute: [each.minute for each in terms],
        },
    )
    columns = batch.columns[SharedLoad.together], batch.columns[SharedLoad.waiting]
    return [(float(together), float(waiting)) for together, waiting in zip(*columns, strict=True)]
