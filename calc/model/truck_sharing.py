"""Two small pours on one truck: which jobs of a week could share one, and what that would save.

Nothing is applied by itself: the pairs are listed by saving, with what must hold.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations
from math import isnan

from calc.formula.functions import FUNCTIONS
from calc.intake.spelling import normalize
from calc.model.results import JobValues
from calc.trade.inputs.job import Job
from calc.trade.inputs.pour import Mixture
from calc.trade.levels import TIER
from calc.trade.money.week import WeekComparison
from calc.trade.ordering.method_choice import Placing
from calc.trade.ordering.method_cost import MethodCost
from calc.trade.ordering.methods import TruckSplit
from calc.trade.ordering.order import Order
from calc.trade.ordering.order_candidates import Risk
from calc.trade.ordering.plant import ChosenMix, DischargePrice, PlantCharges, ShortLoadTier
from calc.trade.ordering.pour import PourCost
from calc.trade.ordering.weather import DischargeLimit


@dataclass(frozen=True)
class SmallPour:
    """What the pair rule asks of a job."""

    job: str
    day: float
    yards: float
    charge: float
    waiting: float
    psi: float
    yard: float
    mix: tuple[str, ...]
    fees: tuple[tuple[float, float], ...]
    least: float
    delivery: float
    capacity: float
    unloading: float
    time_left: float
    free: tuple[float, float]
    minute: float
    between: float


@dataclass(frozen=True)
class SharedTruck:
    """Two jobs that one truck could serve, and what each way costs."""

    first: SmallPour
    second: SmallPour
    together: float

    @property
    def apart(self) -> float:
        """What the plant charges when each has a truck of its own."""
        return self.first.charge + self.second.charge + self.first.waiting + self.second.waiting

    @property
    def saving(self) -> float:
        """What sharing saves."""
        return self.apart - self.together


def small_pour(job: JobValues) -> SmallPour:
    """The facts of one job."""
    row = int(float(job.of(Placing.discharge))) - 1
    words = (Job.fiber, Mixture.air, Mixture.accelerator, Mixture.retarder, Mixture.hot_water)
    return SmallPour(
        job.job.id,
        float(job.of(Job.pour_date)),
        float(job.of(Order.quantity)),
        sum(float(job.of(each)) for each in (PourCost.concrete, PourCost.fees, PourCost.delivery)),
        float(job.of(PourCost.standby)),
        float(job.of(ChosenMix.psi)) if float(job.of(ChosenMix.known)) else 0.0,
        float(job.of(DischargePrice.yard, row)),
        tuple(normalize(str(job.of(each))) for each in words),
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


def pairs(pours: Sequence[SmallPour]) -> list[SharedTruck]:
    """Every pair that could share a truck and saves by it, the best first."""
    by_day: dict[float, list[SmallPour]] = {}
    for pour in pours:
        if not isnan(pour.day):
            by_day.setdefault(pour.day, []).append(pour)
    together = (two for day in by_day.values() for two in combinations(day, 2))
    found = [pair for one, another in together for pair in _shared(one, another)]
    return sorted((pair for pair in found if pair.saving > 0), key=lambda pair: (-pair.saving, pair.first.job))


def _shared(one: SmallPour, another: SmallPour) -> Iterator[SharedTruck]:
    """Two pours of one day as a pair, if all else that it takes holds: mix, room on the truck, time."""
    if min(one.yards, another.yards) <= 0 or min(one.psi, another.psi) <= 0:
        return
    if one.yards + another.yards > min(one.capacity, another.capacity) or not _one_mix(one, another):
        return
    if _on_site(one, another) > min(one.time_left, another.time_left):
        return
    first, second = (one, another) if _bare(one) or not _bare(another) else (another, one)
    yield SharedTruck(first, second, _charge(first, second))


def _one_mix(one: SmallPour, another: SmallPour) -> bool:
    return one.mix == another.mix or _bare(one) or _bare(another)


def _bare(pour: SmallPour) -> bool:
    """Whether nothing goes into its mix: it may be the first stop of any truck."""
    return set(pour.mix) <= {"none", "no"}


def _on_site(one: SmallPour, another: SmallPour) -> float:
    """Minutes from the first yard to the last: both unloaded, and the way between."""
    return one.unloading + another.unloading + max(one.between, another.between)


def _charge(one: SmallPour, another: SmallPour) -> float:
    """Both on one truck, the dearer yard for both: the stronger mix, and what is in it."""
    stronger = max(one, another, key=lambda pour: (pour.yard, pour.psi))
    yards = one.yards + another.yards
    fee = [fee for start, fee in stronger.fees if start <= yards + 1e-9][-1]
    waits = max(0.0, _on_site(one, another) - max(stronger.free[0], stronger.free[1] * yards))
    plant = _cents(max(yards, stronger.least) * stronger.yard) + _cents(fee + stronger.delivery)
    return plant + _cents(waits * stronger.minute)


def _cents(amount: float) -> float:
    return float(FUNCTIONS["money"].numbers(amount))
