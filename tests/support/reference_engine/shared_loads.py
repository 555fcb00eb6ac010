"""Two or three small pours of one day on one truck: what each group saves, and the best set of groups."""

from dataclasses import dataclass
from datetime import date
from itertools import combinations

from .facts import Job
from .placing import standby, truck_limit_minutes
from .ready_mix import added_prices, fees_by_load, fees_by_yard, mix_price, order_cost, short_load_fee, wants_fiber
from .rounding import at_most, cents, millionths, money


@dataclass
class Stop:
    """One job's ready-mix pour as a stop of a truck."""

    job: Job
    method: str
    order: float
    unload: float
    time_on_site: float

    @property
    def day(self) -> date | None:
        """The day of the pour."""
        return self.job.pour_date

    @property
    def additives(self) -> frozenset:
        """Fiber and whatever is priced by the yard in the mix."""
        extra = [(self.job.fiber, self.job.fiber_dose)] if wants_fiber(self.job) else []
        return frozenset([*added_prices(self.job, self.method), *extra])


def make_stop(job: Job, results: dict) -> Stop | None:
    """A stop of a job that is placed from one truck on a known day; a pour from bags is never on a truck."""
    if results["method"] == "bags" or job.pour_date is None or len(results["trucks"]) != 1:
        return None
    longest = max(results["placer_time_on_site"], results["finisher_time_on_site"], results["saw_time_on_site"])
    minutes = results["place_hours"] * 60
    return Stop(job, results["method"], results["order_yards"], minutes, longest)


def _alone(stop: Stop) -> float:
    """A stop's own truck: concrete, fees and standby."""
    wait = standby(stop.job, stop.order, stop.unload) * stop.job.prices.standby_minute
    return order_cost(stop.job, stop.method, stop.order) + wait


def _minutes(stops: tuple[Stop, ...]) -> float:
    """Unloading at every stop and the way between the stops."""
    return sum(s.unload for s in stops) + stops[0].job.factors.between_stops * (len(stops) - 1)


def _together(stops: tuple[Stop, ...]) -> float:
    """One truck for all stops: the strongest mix for everybody, additives for those who take them, one set of fees."""
    first = stops[0].job
    yards = sum(s.order for s in stops)
    billed = max(yards, first.factors.minimum_order)
    cost = billed * max(mix_price(s.job) for s in stops)
    cost += sum(s.order * sum(added_prices(s.job, s.method).values()) for s in stops)
    cost += sum(s.order * sum(fees_by_yard(s.job).values()) for s in stops)
    cost += short_load_fee(first, yards)
    cost += max(sum(fees_by_load(s.job).values()) for s in stops)
    return cost + standby(first, yards, _minutes(stops)) * first.prices.standby_minute


def may_share(stops: tuple[Stop, ...]) -> bool:
    """Same day, one kind of additives or none, within one truck and within the time limit on the truck."""
    if len({s.day for s in stops}) != 1:
        return False
    kinds = {s.additives for s in stops} - {frozenset()}
    room = stops[0].job.factors.truck_capacity
    limit = min(truck_limit_minutes(s.job) for s in stops)
    fits = at_most(sum(s.order for s in stops), room) and at_most(_minutes(stops), limit)
    return len(kinds) <= 1 and fits


def saving(stops: tuple[Stop, ...]) -> float:
    """What one truck saves over a truck for each stop, to the cent."""
    return money(sum(_alone(s) for s in stops) - _together(stops))


def groups(stops: list[Stop]) -> list[tuple[float, tuple[Stop, ...]]]:
    """Every pair and triple that may share a truck, by saving."""
    found = [g for size in (2, 3) for g in combinations(stops, size) if may_share(g)]
    return sorted(((saving(g), g) for g in found), key=lambda row: -cents(row[0]))


def best_set(rows: list[tuple[float, tuple[Stop, ...]]]) -> tuple[float, list[tuple[Stop, ...]]]:
    """The set of groups that saves most and uses no job twice."""
    best: tuple[float, list] = (0.0, [])
    for i, (amount, group) in enumerate(rows):
        if cents(amount) <= 0:
            continue
        used = {id(s) for s in group}
        rest = [r for r in rows[i + 1 :] if not used & {id(s) for s in r[1]}]
        more, others = best_set(rest)
        if cents(amount + more) > cents(best[0]):
            best = (money(amount + more), [group, *others])
    return best


def one_crew_is_enough(group: tuple[Stop, ...]) -> bool:
    """The visits of a group fit one day of one crew."""
    f = group[0].job.factors
    hours = sum(s.time_on_site for s in group) + f.visit_fixed
    return millionths(hours) <= millionths(f.day_hours)
