"""Hauling: every plan of piles and sites with every vehicle, in money and by the clock."""

from dataclasses import dataclass, field

from .facts import Job, Site, Vehicle
from .labor import Tasks, load_out_hours
from .pay import job_rates
from .prep import prep_day, prep_people, prep_visits
from .rounding import at_most, cents, less, millionths, up
from .takeoff import Takeoff

ORDER = ("green", "concrete", "soil")
PLANS = {
    "A": ((("green", "concrete", "soil"), "mixed"),),
    "B": ((("green",), "green"), (("concrete", "soil"), "mixed")),
    "C": ((("concrete",), "concrete"), (("green", "soil"), "mixed")),
    "D": ((("green",), "green"), (("concrete",), "concrete"), (("soil",), "soil")),
    "E": ((("green",), "green"), (("concrete",), "concrete"), (("soil",), "mixed")),
    "F": ((("soil",), "soil"), (("green", "concrete"), "mixed")),
}
SEPARATING = frozenset("BDEF")


@dataclass
class Pile:
    """What goes to one site: loose yards, tons, hours of the pile's own people and of a machine."""

    streams: tuple[str, ...]
    kind: str
    loose: float
    tons: float
    hand_hours: float
    machine_hours: float
    loads: int = 0
    governs: str = ""
    trip: float = 0.0
    site: Site | None = None
    first_leaves: float = 0.0
    back: float = 0.0
    returns: list = field(default_factory=list)
    arrivals: list = field(default_factory=list)


@dataclass
class HaulPlan:
    """One plan with one vehicle, all worked out."""

    letter: str
    vehicle: Vehicle
    piles: list[Pile]
    separating_hours: float
    driving_hours: float
    prep_hours: float
    visits: int
    people: int
    last_day: int = 1
    wait_hours: float = 0.0
    top_up_hours: float = 0.0
    tip: float = 0.0
    truck: float = 0.0
    driver: float = 0.0
    separating: float = 0.0

    @property
    def total(self) -> float:
        """Dump fees, trips and separating."""
        return self.tip + self.truck + self.driver + self.separating

    @property
    def trips(self) -> int:
        """Loads of all piles."""
        return sum(p.loads for p in self.piles)


def _stream(job: Job, t: Takeoff, tasks: Tasks, name: str) -> Pile:
    """One stream as a pile of its own: removal and loading hours, by hand and by machine."""
    prep = tasks.prep
    loose, tons, hand, dig = {
        "green": (t.green_loose, t.green_tons, prep["cut_brush"] + prep["grub"], 0.0),
        "concrete": (
            t.old_concrete_loose,
            t.old_concrete_tons,
            prep["saw_cut"] + prep["break_slab"] + prep["chip"],
            0.0,
        ),
        "soil": (t.soil_loose, t.soil_tons, 0.0, prep["dig"]),
    }[name]
    by_tool = dig + load_out_hours(job, loose)
    if job.machine_digging:
        return Pile((name,), "", loose, tons, hand, by_tool)
    return Pile((name,), "", loose, tons, hand + by_tool, 0.0)


def streams(job: Job, t: Takeoff, tasks: Tasks) -> dict[str, Pile]:
    """The streams that weigh anything."""
    every = {name: _stream(job, t, tasks, name) for name in ORDER}
    return {name: s for name, s in every.items() if millionths(s.tons) > 0}


def _join(parts: list[Pile], kind: str) -> Pile:
    """Several streams in one pile."""
    return Pile(
        streams=tuple(p.streams[0] for p in parts),
        kind=kind,
        loose=sum(p.loose for p in parts),
        tons=sum(p.tons for p in parts),
        hand_hours=sum(p.hand_hours for p in parts),
        machine_hours=sum(p.machine_hours for p in parts),
    )


def _place_in_order(pile: Pile) -> int:
    """Green, concrete, soil, then mixed; a pile of one stream keeps that stream's place."""
    return ORDER.index(pile.streams[0]) if len(pile.streams) == 1 else len(ORDER)


def plans(parts: dict[str, Pile]) -> dict[str, list[Pile]]:
    """Plans by letter, without empty piles; a plan like an earlier one is dropped."""
    seen, kept = set(), {}
    for letter, rule in PLANS.items():
        split = [([parts[s] for s in names if s in parts], kind) for names, kind in rule]
        split = [(found, kind) for found, kind in split if found]
        key = frozenset((tuple(p.streams[0] for p in found), kind) for found, kind in split)
        if split and key not in seen:
            seen.add(key)
            kept[letter] = sorted((_join(found, kind) for found, kind in split), key=_place_in_order)
    return kept


def payload_limit(job: Job, vehicle: Vehicle) -> float:
    """Tons planned on a load: a share of the payload, because soil weights scatter."""
    return vehicle.payload * job.factors.payload_share


def loads(job: Job, pile: Pile, vehicle: Vehicle) -> tuple[int, str]:
    """The greater of loads by volume and loads by weight, and which of the two governs."""
    by_volume = up(pile.loose / (vehicle.bed * vehicle.heaped))
    by_weight = up(pile.tons / payload_limit(job, vehicle))
    return max(by_volume, by_weight), "weight" if by_weight >= by_volume else "volume"


def chance_dirty(job: Job, t: Takeoff) -> float:
    """Chance that the scale house calls a soil load contaminated."""
    if job.turf:
        return job.factors.dirty_turf
    return job.factors.dirty_roots if t.root_balls else 0.0


def accepts(job: Job, t: Takeoff, site: Site) -> bool:
    """A site that does not take wet soil, or roots and turf, is no candidate for a job that has them."""
    wet = job.moisture == "wet" and not site.takes_wet
    roots = (job.turf or t.root_balls > 0) and not site.takes_roots
    return not wet and not roots


def trip_hours(site: Site) -> float:
    """There and back, and the turnaround."""
    return (2 * site.minutes + site.turnaround) / 60


def tip_money(pile: Pile, site: Site, dirty: float) -> float:
    """Dump fees: the dearest rule of the site a load, never under its minimum; contamination at a soil site."""
    n = pile.loads
    if n == 0:
        return 0.0
    fee = max(site.minimum, site.per_ton * pile.tons / n, site.per_yard * pile.loose / n, site.per_load)
    surcharge = site.contamination * dirty if site.kind == "soil" else 0.0
    return n * (fee + surcharge)


def trip_money(job: Job, pile: Pile, site: Site, vehicle: Vehicle) -> tuple[float, float]:
    """Truck and driver of a pile's trips; a hired truck brings its driver."""
    driver = 0.0 if vehicle.hired else job_rates(job).driver
    hours = pile.loads * trip_hours(site)
    return hours * vehicle.per_hour + pile.loads * 2 * site.miles * vehicle.per_mile, hours * driver


def choose_site(job: Job, t: Takeoff, pile: Pile, vehicle: Vehicle) -> Site | None:
    """The cheapest site of the pile's kind by fees and trips; the first of equals."""
    best, least = None, 0.0
    for site in job.sites:
        if site.kind != pile.kind or not accepts(job, t, site):
            continue
        cost = tip_money(pile, site, chance_dirty(job, t)) + sum(trip_money(job, pile, site, vehicle))
        if best is None or less(cost, least):
            best, least = site, cost
    return best


def day_of(hours: float, length: float) -> int:
    """Which working day an hour of hauling falls in; a day's last moment still belongs to it."""
    return max(1, up(hours / length))


def _run_the_clock(job: Job, plan: HaulPlan) -> None:
    """One vehicle hauls pile after pile while the crew fills the next load."""
    ready = back = 0.0
    people = max(1, plan.people)
    length = prep_day(job.factors)
    for pile in plan.piles:
        if pile.loads == 0:
            continue
        own = pile.hand_hours / people + pile.machine_hours
        pile.first_leaves = max(ready + own / pile.loads, back)
        for k in range(1, pile.loads + 1):
            leaves = max(ready + own * k / pile.loads, pile.first_leaves + (k - 1) * pile.trip)
            pile.returns.append(leaves + pile.trip)
            pile.arrivals.append(leaves + pile.site.minutes / 60)
        ready += own
        pile.back = back = max(ready, pile.first_leaves + (pile.loads - 1) * pile.trip) + pile.trip
    plan.last_day = day_of(back, length)


def _hired_hours(job: Job, plan: HaulPlan) -> None:
    """A hired truck is paid while it is loaded, and for its minimum on each day that it brings a load away."""
    if not plan.vehicle.hired:
        return
    for pile in plan.piles:
        if job.machine_digging:
            plan.wait_hours += load_out_hours(job, pile.loose)
        elif plan.people:
            plan.wait_hours += load_out_hours(job, pile.loose) / plan.people
    length = prep_day(job.factors)
    days = {day_of(r, length) for p in plan.piles for r in p.returns}
    least = len(days) * plan.vehicle.minimum_hours
    plan.top_up_hours = max(0.0, least - plan.driving_hours - plan.wait_hours)


def _money(job: Job, t: Takeoff, plan: HaulPlan) -> None:
    """Dump fees, truck, driver and separating of a plan."""
    for pile in plan.piles:
        truck, driver = trip_money(job, pile, pile.site, plan.vehicle)
        plan.tip += tip_money(pile, pile.site, chance_dirty(job, t))
        plan.truck += truck
        plan.driver += driver
    plan.truck += (plan.wait_hours + plan.top_up_hours) * plan.vehicle.per_hour
    plan.separating = plan.separating_hours * job_rates(job).crew_mix


def _work_out(job: Job, t: Takeoff, letter: str, piles: list[Pile], vehicle: Vehicle, hours: float) -> HaulPlan | None:
    """One plan with one vehicle; none when a pile has no site."""
    piles = [Pile(**_fresh(p)) for p in piles]
    for pile in piles:
        pile.loads, pile.governs = loads(job, pile, vehicle)
        pile.site = choose_site(job, t, pile, vehicle)
        if pile.site is None:
            return None
        pile.trip = trip_hours(pile.site)
    present = {s for p in piles for s in p.streams}
    apart = letter in SEPARATING and "green" in present and len(present) > 1
    separating = job.factors.separating_hours * t.green_loose if apart else 0.0
    driving = sum(p.loads * p.trip for p in piles)
    prep = hours + separating + (0.0 if vehicle.hired else driving)
    visits = prep_visits(job, prep)
    plan = HaulPlan(letter, vehicle, piles, separating, driving, prep, visits, prep_people(job, prep, visits))
    _run_the_clock(job, plan)
    _hired_hours(job, plan)
    _money(job, t, plan)
    return plan


def _fresh(pile: Pile) -> dict:
    """The facts of a pile that do not depend on a vehicle."""
    names = ("streams", "kind", "loose", "tons", "hand_hours", "machine_hours")
    return {name: getattr(pile, name) for name in names}


def haul_plans(job: Job, t: Takeoff, tasks: Tasks, base_driving: float) -> list[HaulPlan]:
    """Every plan with every vehicle, in the order of letters and of the fleet."""
    hours = sum(tasks.prep.values()) + base_driving
    rows = []
    for letter, piles in plans(streams(job, t, tasks)).items():
        for vehicle in job.fleet:
            plan = _work_out(job, t, letter, piles, vehicle, hours)
            if plan is not None:
                rows.append(plan)
    return rows


def rank(rows: list[HaulPlan]) -> list[HaulPlan]:
    """Least total to the cent, then fewer trips, then the order of the table."""
    return sorted(rows, key=lambda p: (cents(p.total), p.trips))


def near_tie(job: Job, ranked: list[HaulPlan]) -> bool:
    """The runner-up is within the dollars or the share of the winner's total, whichever is more."""
    if len(ranked) < 2:
        return False
    f = job.factors
    limit = max(f.near_tie_dollars, f.near_tie_share * ranked[0].total)
    return at_most((cents(ranked[1].total) - cents(ranked[0].total)) / 100, limit)


@dataclass
class BaseHaul:
    """How the base rock comes."""

    trips: int = 0
    hours: float = 0.0
    truck: float = 0.0
    driver: float = 0.0
    delivered: bool = False


def base_haul(job: Job, t: Takeoff) -> BaseHaul:
    """Little rock comes by the first own vehicle at its full payload; more, or without a vehicle, is delivered."""
    f = job.factors
    if millionths(t.base_bought) == 0:
        return BaseHaul()
    own = next((v for v in job.fleet if not v.hired), None)
    if own is None or not at_most(t.base_bought, f.base_delivery_above):
        return BaseHaul(delivered=True)
    trips = up(t.base_bought / own.payload)
    hours = trips * (2 * f.rock_yard_minutes + f.rock_yard_turnaround) / 60
    truck = hours * own.per_hour + trips * 2 * f.rock_yard_miles * own.per_mile
    return BaseHaul(trips, hours, truck, hours * job_rates(job).driver)
