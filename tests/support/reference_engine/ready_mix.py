"""What a ready-mix order costs: yards, fees a load, fiber; and how an order is split into trucks."""

import math

from .facts import Job
from .rounding import down, less, millionths, up


def mix_price(job: Job) -> float:
    """Price a yard of the next strength listed at or above the one asked for."""
    rows = sorted(r for r in job.prices.concrete if not less(r[0], job.mix_psi))
    if not rows:
        raise ValueError(f"job {job.name}: no price for {job.mix_psi} psi")
    return rows[0][1]


def added_prices(job: Job, method: str) -> dict[str, float]:
    """Admixtures, air, winter heat, and pea gravel for a pump, each a price a yard."""
    p = job.prices
    asked = {
        "air": (job.air, p.air),
        "pea_gravel": (method == "pump", p.pea_gravel),
        "accelerator": (job.accelerator, p.accelerator),
        "retarder": (job.retarder, p.retarder),
        "winter_heat": (job.winter_heat, p.winter_heat),
    }
    return {name: price for name, (wanted, price) in asked.items() if wanted}


def yard_price(job: Job, method: str) -> float:
    """A yard of concrete with everything that is priced by the yard in the mix."""
    return mix_price(job) + sum(added_prices(job, method).values())


def wants_fiber(job: Job) -> bool:
    """Fiber of some kind in a dose above zero."""
    return job.fiber != "none" and job.fiber_dose > 0


def is_saturday(job: Job) -> bool:
    """The pour date is a Saturday."""
    return job.pour_date is not None and job.pour_date.weekday() == 5


def fees_by_load(job: Job) -> dict[str, float]:
    """What the plant adds to each load."""
    p = job.prices
    fees = {"delivery": p.delivery, "environmental": p.environmental, "fuel": p.fuel}
    if job.after_hours:
        fees["after_hours"] = p.after_hours
    if is_saturday(job) and p.saturday_by == "load":
        fees["saturday"] = p.saturday
    return fees


def fees_by_yard(job: Job) -> dict[str, float]:
    """What the plant adds to each billed yard."""
    p = job.prices
    fees = {}
    if wants_fiber(job) and p.plant_fiber > 0:
        fees["plant_fiber"] = p.plant_fiber
    if is_saturday(job) and p.saturday_by == "yard":
        fees["saturday"] = p.saturday
    return fees


def short_load_fee(job: Job, yards: float) -> float:
    """Fee of the first tier that the truck is under; a truck at a boundary belongs to the cheaper tier."""
    for limit, fee in sorted(job.prices.short_load_tiers):
        if less(yards, limit):
            return fee
    return 0.0


def split_trucks(order: float, capacity: float, step: float) -> list[float]:
    """As few trucks as hold the order, as even as the plant's increment allows, the larger ones first."""
    count = up(order / capacity)
    if count == 0:
        return []
    low = down(order / count, step)
    spare = down((order - low * count) / step)
    trucks = [low + step] * spare + [low] * (count - spare)
    trucks[-1] += order - sum(trucks)
    return trucks


def job_trucks(job: Job, order: float) -> list[float]:
    """The job's order split into trucks."""
    return split_trucks(order, job.factors.truck_capacity, job.factors.order_increment)


def order_lines(job: Job, method: str, order: float) -> dict[str, float]:
    """Cost of an order line by line: yards billed at no less than the minimum, and the fees of each truck."""
    trucks = job_trucks(job, order)
    billed = max(order, job.factors.minimum_order)
    lines = {"concrete": billed * mix_price(job)}
    lines |= {name: billed * price for name, price in added_prices(job, method).items()}
    lines["short_load"] = sum(short_load_fee(job, yards) for yards in trucks)
    lines |= {name: len(trucks) * fee for name, fee in fees_by_load(job).items()}
    lines |= {name: billed * price for name, price in fees_by_yard(job).items()}
    return lines


def order_cost(job: Job, method: str, order: float) -> float:
    """What the plant charges for an order."""
    return math.fsum(order_lines(job, method, order).values())


def fiber_bags(job: Job, batches: list[float]) -> int:
    """Whole bags for each truck or batch."""
    if not wants_fiber(job):
        return 0
    pounds = job.prices.micro_fiber_pounds if job.fiber == "micro" else job.prices.macro_fiber_pounds
    return sum(up(yards * job.fiber_dose / pounds) for yards in batches)


def fiber_price(job: Job) -> float:
    """Price of a bag of the fiber asked for."""
    return job.prices.micro_fiber if job.fiber == "micro" else job.prices.macro_fiber


def at_least_minimum(job: Job, order: float) -> float:
    """An order brought up to the increment and to the plant's minimum."""
    step = job.factors.order_increment
    order, least = up(order, step), up(job.factors.minimum_order, step)
    return least if millionths(order) < millionths(least) else order
