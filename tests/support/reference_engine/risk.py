"""How much concrete to order: the spread of the need, and the ladder of orders with what each risks."""

import math
from dataclasses import dataclass

from .facts import Area, Factors, Job
from .geometry import net_area
from .pay import heads_on_pour, job_rates
from .ready_mix import at_least_minimum, fees_by_load, fees_by_yard, order_cost, short_load_fee, yard_price
from .rounding import less, millionths, up
from .takeoff import Takeoff


def depth_spread(area: Area, factors: Factors) -> float:
    """Spread of the mean depth in inches: from enough measured points, else by what lies under the slab."""
    n = len(area.depths)
    if n >= factors.points_needed:
        mean = sum(area.depths) / n
        sample = math.sqrt(sum((d - mean) ** 2 for d in area.depths) / (n - 1))
        return sample * math.sqrt((n - 1) / (n - 3)) / math.sqrt(n)
    rock = not less(area.base, factors.spread_base_inches)
    return factors.spread_base if rock else factors.spread_dirt


def volume_spread(job: Job, t: Takeoff) -> float:
    """Spread of the volume in yards: depth, string line, area and yield. Copies of an area err together."""
    f = job.factors
    depth = sum((net_area(a) * a.copies * depth_spread(a, f) / 324) ** 2 for a in job.areas)
    bias = (t.slab_area * f.common_bias / 324) ** 2
    share = (f.area_error * t.net_yards) ** 2 + (f.yield_error * t.net_yards) ** 2
    return math.sqrt(depth + bias + share)


def expected_need(job: Job, net: float, method: str) -> float:
    """Net volume with the waste factor, once, and the prime of a pump."""
    prime = job.factors.pump_prime_yards if method == "pump" else 0.0
    return net * (1 + job.factors.waste) + prime


def short_lump(job: Job, method: str) -> float:
    """What running short costs: a least load with its fees, the crew standing, and a repair."""
    f = job.factors
    least = f.minimum_order
    load = short_load_fee(job, least) + sum(fees_by_load(job).values())
    concrete = least * (yard_price(job, method) + sum(fees_by_yard(job).values()))
    crew = heads_on_pour(job) * f.short_hours * job_rates(job).crew_mix
    return load + concrete + crew + f.repair_allowance


def surplus_cost(job: Job, method: str) -> float:
    """What a yard left over costs: its price and getting rid of it."""
    return yard_price(job, method) + sum(fees_by_yard(job).values()) + job.factors.surplus_yard


@dataclass
class Rung:
    """One order of the ladder and what it risks."""

    order: float
    z: float
    chance_short: float
    expected_short: float
    expected_left: float
    concrete_cost: float
    expected_cost: float


def rung(order: float, need: float, spread: float, cost: float, surplus: float, lump: float) -> Rung:
    """Risk of one order. With no spread the order is either short or not."""
    if spread == 0:
        is_short = less(order, need)
        z, chance, short = 0.0, float(is_short), max(0.0, need - order)
    else:
        z = (order - need) / spread
        chance = math.erfc(z / math.sqrt(2)) / 2
        density = math.exp(-z * z / 2) / math.sqrt(2 * math.pi)
        short = spread * (density - z * chance)
    left = order - need + short
    return Rung(order, z, chance, short, left, cost, cost + surplus * left + lump * chance)


def job_rung(job: Job, method: str, need: float, spread: float, order: float) -> Rung:
    """A rung at the job's prices."""
    cost = order_cost(job, method, order)
    return rung(order, need, spread, cost, job.factors.surplus_yard, short_lump(job, method))


def first_order(job: Job, need: float) -> float:
    """Where the ladder starts: two increments under the need, never under the plant's minimum."""
    step = job.factors.order_increment
    return max(step, up(need, step) - 2 * step, up(job.factors.minimum_order, step))


def ladder(job: Job, method: str, need: float, spread: float) -> list[Rung]:
    """Orders one increment apart, each with its risk."""
    start, step = first_order(job, need), job.factors.order_increment
    return [job_rung(job, method, need, spread, start + i * step) for i in range(job.factors.ladder_rows)]


def best_rung(rungs: list[Rung]) -> Rung:
    """Least expected cost; the first of equals."""
    best = rungs[0]
    for row in rungs[1:]:
        if millionths(row.expected_cost) < millionths(best.expected_cost):
            best = row
    return best


def quick_order(need: float, spread: float, lump: float, surplus: float) -> float:
    """The closed answer shown beside the ladder."""
    if spread == 0:
        return need
    inside = lump / (surplus * spread * math.sqrt(2 * math.pi))
    return need + spread * math.sqrt(max(0.0, 2 * math.log(inside)))


def percent_order(job: Job, net: float, method: str) -> float:
    """Net volume with a plain percentage, and the prime of a pump."""
    prime = job.factors.pump_prime_yards if method == "pump" else 0.0
    return at_least_minimum(job, net * (1 + job.factors.percent_rule) + prime)


def choose_order(job: Job, method: str, net: float, spread: float) -> Rung:
    """The order by the job's rule, with what it risks."""
    need = expected_need(job, net, method)
    if job.order_rule == "risk":
        return best_rung(ladder(job, method, need, spread))
    fixed = job.order_rule == "fixed"
    order = at_least_minimum(job, job.fixed_order) if fixed else percent_order(job, net, method)
    return job_rung(job, method, need, spread, order)
