"""Ways of placing: rates, hours, trucks, standby and bags."""

from dataclasses import dataclass, field

from .facts import Job
from .labor import route_is_bad
from .ready_mix import fiber_bags, fiber_price, job_trucks, order_lines
from .rentals import rental_money
from .risk import Rung, choose_order
from .rounding import at_most, less, up
from .takeoff import Takeoff


@dataclass
class Way:
    """One way of placing with its order, hours and the cost lines that depend on it."""

    method: str
    order: float
    trucks: list[float]
    elapsed: float
    task_hours: float
    fits: bool
    competes: bool = True
    rung: Rung | None = None
    unload_minutes: list[float] = field(default_factory=list)
    standby_minutes: float = 0.0
    bags: int = 0
    mixer_hours: float = 0.0
    lines: dict = field(default_factory=dict)
    cost: float = 0.0


def barrow_rate(job: Job) -> float:
    """Yards an hour of the wheelbarrows over their way; slower once when the way is wet or steep."""
    f = job.factors
    way = f.barrow_default if job.barrow_distance is None else job.barrow_distance
    cycle = f.barrow_fixed_minutes + 2 * way / f.barrow_speed
    rate = job.barrows * f.barrow_feet3 / 27 * 60 / cycle * f.barrow_efficiency
    return rate * f.bad_way if route_is_bad(job) else rate


def place_rate(job: Job, method: str) -> float:
    """Yards an hour of a ready-mix way."""
    if method == "barrow":
        return barrow_rate(job)
    return job.factors.chute_rate if method == "chute" else job.factors.pump_rate


def truck_limit_minutes(job: Job) -> float:
    """Minutes from batching to the last concrete out, less the drive; shorter in hot air."""
    f = job.factors
    hot = job.air_temperature is not None and not less(job.air_temperature, f.hot_air)
    return (f.truck_limit_hot if hot else f.truck_limit) - job.plant_drive


def standby(job: Job, yards: float, minutes: float) -> float:
    """Minutes of a truck beyond its unloading allowance."""
    f = job.factors
    return max(0.0, minutes - max(f.unload_minimum, f.unload_per_yard * yards))


def _pump_lines(job: Job, order: float, elapsed: float) -> dict[str, float]:
    """A pump: set-up, hours with a minimum, yards and the prime pack."""
    p, f = job.prices, job.factors
    hours = max(f.pump_minimum_hours, elapsed + f.pump_extra_hours)
    return {
        "pump_set_up": p.pump_set_up,
        "pump_hours": hours * p.pump_hour,
        "pump_yards": order * p.pump_yard,
        "pump_prime": p.pump_prime,
    }


def _tool_lines(job: Job, other_hours: float, mixer_hours: float) -> dict[str, float]:
    """Mixer, and a generator for all electric tools where the site has no power."""
    p, f = job.prices, job.factors
    generator = 0.0 if job.power else other_hours + mixer_hours
    return {
        "mixer": rental_money(mixer_hours, p.mixer, f),
        "generator": rental_money(generator, p.generator, f),
    }


def truck_way(job: Job, t: Takeoff, method: str, spread: float, electric_hours: float) -> Way:
    """A way of placing by ready-mix truck."""
    rung = choose_order(job, method, t.net_yards, spread)
    order = rung.order
    trucks = job_trucks(job, order)
    elapsed = max(job.factors.place_minimum, order / place_rate(job, method))
    minutes = [elapsed * 60 * yards / order for yards in trucks]
    waiting = sum(standby(job, y, m) for y, m in zip(trucks, minutes, strict=True))
    lines = order_lines(job, method, order)
    if "plant_fiber" not in lines:
        lines["fiber"] = fiber_bags(job, trucks) * fiber_price(job)
    lines |= {"standby": waiting * job.prices.standby_minute, "washout": job.prices.washout}
    lines |= _tool_lines(job, electric_hours, 0.0)
    if method == "pump":
        lines |= _pump_lines(job, order, elapsed)
    return Way(
        method=method,
        order=order,
        trucks=trucks,
        elapsed=elapsed,
        task_hours=job.placers * elapsed,
        fits=at_most(max(minutes), truck_limit_minutes(job)),
        rung=rung,
        unload_minutes=minutes,
        standby_minutes=waiting,
        lines=lines,
    )


def bag_count(job: Job, net: float) -> int:
    """Whole bags for the net volume with the waste factor."""
    return up(net * (1 + job.factors.waste) * 27 / job.factors.bag_yield)


def bag_way(job: Job, t: Takeoff, electric_hours: float) -> Way | None:
    """Placing from bags, for small pours only; a little above the cap it is shown but does not compete."""
    f = job.factors
    if job.order_rule == "fixed" or not at_most(t.net_yards, f.bag_cap * (1 + f.bag_shown)):
        return None
    bags = bag_count(job, t.net_yards)
    alone = job.crew == 1
    elapsed = max(f.place_minimum, bags * f.bag_minutes / 60) * (2 if alone else 1)
    lines = {
        "bags": bags * job.prices.bag,
        "bag_clean_up": job.prices.bag_clean_up,
        "fiber": fiber_bags(job, [t.net_yards * (1 + f.waste)]) * fiber_price(job),
    }
    return Way(
        method="bags",
        order=t.net_yards * (1 + f.waste),
        trucks=[],
        elapsed=elapsed,
        task_hours=elapsed * (1 if alone else f.bag_crew),
        fits=True,
        competes=at_most(t.net_yards, f.bag_cap),
        bags=bags,
        mixer_hours=elapsed,
        lines=lines | _tool_lines(job, electric_hours, elapsed),
    )


def ways(job: Job, t: Takeoff, spread: float, electric_hours: float) -> list[Way]:
    """The ways that the job allows, in its own order, and bags."""
    rows = [truck_way(job, t, m, spread, electric_hours) for m in job.methods if m != "bags"]
    bags = bag_way(job, t, electric_hours)
    return rows + ([bags] if bags else [])
