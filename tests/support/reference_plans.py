"""Haul plans worked out plainly, in exact fractions: written only to hold the program's choice against.

Nothing here comes from the program. Every plan goes with every vehicle of the fleet, each pile of it to the site of its
kind that is cheapest by gate, surcharge and trips; money is rounded once a plan. Weights are in short tons, volumes in
loose cubic yards, times in hours but for the minutes of a road and a gate.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cached_property

from reference_haul import Job, Pile, millionth, piles, up

STREAMS = ("green waste", "soil", "concrete debris")
PLANS = {
    "all mixed": (),
    "green waste separated": ("green waste",),
    "concrete debris separated": ("concrete debris",),
    "all separated": STREAMS,
    "green waste and concrete debris separated": ("green waste", "concrete debris"),
    "soil separated": ("soil",),
}
"""What each plan hauls by itself; what is left goes as one mixed pile."""
TURF_CHANCE, ROOT_CHANCE = Fraction(1), Fraction(1, 4)
PARTING_HOURS = Fraction(1, 4)
WASH_MONEY, WASH_SHARE = Fraction(25), Fraction(2, 100)
PLACING, FINISHING = 2, 1
"""People on the pour, of whom an hour of crew mix is made."""


def cents(amount: Fraction) -> Fraction:
    """To the cent, halves up."""
    return Fraction(int(millionth(amount) * 100 + Fraction(1, 2)), 100)


@dataclass(frozen=True)
class Vehicle:
    """What hauls; ``None`` is what the company book does not say."""

    name: str
    room: Fraction | None
    payload: Fraction | None
    hourly: Fraction | None
    mile: Fraction
    hired: bool
    least_hours: Fraction


@dataclass(frozen=True)
class Site:
    """What takes a pile; ``None`` is what the company book does not say."""

    name: str
    kind: str
    per_ton: Fraction | None
    per_yard: Fraction | None
    per_load: Fraction | None
    least: Fraction
    dirty: Fraction
    minutes: Fraction | None
    miles: Fraction | None
    dwell: Fraction
    opens: Fraction | None
    closes: Fraction | None
    wet: bool
    roots: bool

    @property
    def known(self) -> bool:
        """Whether it has a rate, and a road that is known."""
        rated = any(rate is not None for rate in (self.per_ton, self.per_yard, self.per_load))
        return rated and self.minutes is not None and self.miles is not None

    @property
    def trip(self) -> Fraction:
        """Hours there and back, and at the gate."""
        return (2 * (self.minutes or 0) + self.dwell) / 60


@dataclass(frozen=True)
class CompanyBook:
    """A company book; ``None`` is a wage that it does not give."""

    vehicles: tuple[Vehicle, ...]
    sites: tuple[Site, ...]
    laborer: Fraction | None
    finisher: Fraction | None
    driver: Fraction | None

    @property
    def driving(self) -> Fraction:
        """An hour of a driver, who costs what a laborer does where he has no wage of his own."""
        return self.driver or self.laborer or Fraction(0)

    @property
    def crew(self) -> Fraction:
        """An hour of one person of the pour."""
        return ((self.laborer or 0) * PLACING + (self.finisher or 0) * FINISHING) / Fraction(PLACING + FINISHING)


@dataclass(frozen=True)
class Task:
    """A job with what is said of its hauling: the fleet (none named is all), a plan and a vehicle chosen by hand."""

    job: Job
    turf: bool
    fleet: tuple[Vehicle, ...] = ()
    plan: str | None = None
    by: Vehicle | None = None

    @cached_property
    def piles(self) -> dict[str, Pile]:
        """What is hauled away, by stream."""
        return dict(zip(STREAMS, piles(self.job), strict=True))

    @property
    def balls(self) -> bool:
        """Whether a root ball comes out."""
        count, *_, ball, height = self.job.plants
        return count * ball * height > 0

    @property
    def chance(self) -> Fraction:
        """That a load of soil is charged as dirty."""
        return TURF_CHANCE if self.turf else ROOT_CHANCE if self.balls else Fraction(0)


@dataclass(frozen=True)
class TruckSplit:
    """A pile on a vehicle to a site, or to none."""

    kind: str
    pile: Pile
    by_room: int
    by_weight: int
    site: Site | None = None
    tipping: Fraction = Fraction(0)
    dirty: Fraction = Fraction(0)
    trips: Fraction = Fraction(0)

    @property
    def loads(self) -> int:
        """By room or by weight, whichever asks for more."""
        return max(self.by_room, self.by_weight)

    @property
    def hours(self) -> Fraction:
        """Of all its trips."""
        return self.loads * self.site.trip if self.site else Fraction(0)


@dataclass(frozen=True)
class PlanCost:
    """A plan on a vehicle."""

    plan: str
    vehicle: Vehicle
    rides: tuple[TruckSplit, ...]
    known: bool
    topped: Fraction
    parting: Fraction

    @cached_property
    def loads(self) -> int:
        """Of all its piles."""
        return sum(ride.loads for ride in self.rides)

    @cached_property
    def hours(self) -> Fraction:
        """Of all its trips."""
        return sum((ride.hours for ride in self.rides), Fraction(0))

    @cached_property
    def cost(self) -> Fraction:
        """Rounded once."""
        rides = sum((ride.tipping + ride.dirty + ride.trips for ride in self.rides), Fraction(0))
        return cents(rides + self.topped + self.parting)


def heaps(plan: str, task: Task) -> Iterator[tuple[str, tuple[str, ...]]]:
    """The piles of a plan that are not empty: the kind of site, and the streams that lie in it."""
    there = [stream for stream in STREAMS if task.piles[stream].tons > 0]
    for stream in there:
        if stream in PLANS[plan]:
            yield stream, (stream,)
    mixed = tuple(stream for stream in there if stream not in PLANS[plan])
    if mixed:
        yield "mixed", mixed


def takes(site: Site, kind: str, streams: Sequence[str], task: Task) -> bool:
    """Whether a pile may go to a site."""
    roots = ("soil" in streams and (task.turf or task.balls)) or ("green waste" in streams and task.balls)
    wet = "soil" in streams and task.job.moisture == "wet"
    return site.known and site.kind == kind and (site.roots or not roots) and (site.wet or not wet)


def ride(kind: str, streams: Sequence[str], vehicle: Vehicle, task: Task, company: CompanyBook) -> TruckSplit:
    """A pile on a vehicle to the site that is cheapest for it, the first of those that cost the same."""
    lying = [task.piles[stream] for stream in streams]
    pile = Pile(sum((each.loose for each in lying), Fraction(0)), sum((each.tons for each in lying), Fraction(0)))
    by_room = up(pile.loose / vehicle.room) if vehicle.room else 0
    by_weight = up(pile.tons / vehicle.payload) if vehicle.payload else 0
    empty = TruckSplit(kind, pile, by_room, by_weight)
    sites = [site for site in company.sites if takes(site, kind, streams, task)] if empty.loads else []
    ways = [_to(site, empty, vehicle, task, company) for site in sites]
    return min(ways, key=lambda way: cents(way.tipping + way.dirty + way.trips), default=empty)


def _to(site: Site, empty: TruckSplit, vehicle: Vehicle, task: Task, company: CompanyBook) -> TruckSplit:
    loads = empty.loads
    one_load = max(
        site.least,
        site.per_load or Fraction(0),
        (site.per_ton or 0) * empty.pile.tons / loads,
        (site.per_yard or 0) * empty.pile.loose / loads,
    )
    hour = (vehicle.hourly or 0) + (0 if vehicle.hired else company.driving)
    return replace(
        empty,
        site=site,
        tipping=loads * one_load,
        dirty=loads * site.dirty * task.chance if site.kind == "soil" else Fraction(0),
        trips=loads * (site.trip * hour + 2 * (site.miles or 0) * vehicle.mile),
    )


def offer(plan: str, vehicle: Vehicle, task: Task, company: CompanyBook) -> PlanCost:
    """A plan on a vehicle."""
    rides = tuple(ride(kind, streams, vehicle, task, company) for kind, streams in heaps(plan, task))
    hours = sum((each.hours for each in rides), Fraction(0))
    short = max(Fraction(0), vehicle.least_hours - hours) if vehicle.hired and any(each.loads for each in rides) else 0
    green = task.piles["green waste"]
    sorted_out = "green waste" in PLANS[plan] or "soil" in PLANS[plan]
    kept_apart = sorted_out and green.tons > 0 and any(task.piles[each].tons > 0 for each in STREAMS[1:])
    figures = bool(vehicle.room and vehicle.payload and vehicle.hourly is not None)
    paid = (vehicle.hired or company.driving > 0) and (not kept_apart or company.crew > 0)
    known = not rides or (figures and paid and all(each.site for each in rides))
    parting = PARTING_HOURS * green.loose * company.crew if kept_apart else Fraction(0)
    return PlanCost(plan, vehicle, rides, known, Fraction(short * (vehicle.hourly or 0)), parting)


@dataclass(frozen=True)
class Chosen:
    """The haul that is taken, out of every plan on every vehicle, and the runner-up where there is one."""

    every: tuple[PlanCost, ...]
    rivals: tuple[PlanCost, ...]
    """Those that are compared: they can be done, by the fleet, and no earlier plan is the same."""
    taken: PlanCost
    compared: bool
    runner_up: PlanCost | None

    @property
    def wash(self) -> bool:
        """Whether the runner-up costs nearly the same."""
        if self.runner_up is None or not self.taken.loads:
            return False
        apart = abs(self.runner_up.cost - self.taken.cost)
        return apart <= max(WASH_MONEY, WASH_SHARE * self.taken.cost)


def chosen(task: Task, company: CompanyBook) -> Chosen:
    """Least cost, then fewer trips, then the order of the plans and of the vehicles; or what a person chose."""
    every = tuple(offer(plan, vehicle, task, company) for plan in PLANS for vehicle in company.vehicles)
    fleet = task.fleet or company.vehicles
    firsts: dict[tuple[tuple[str, tuple[str, ...]], ...], str] = {}
    for plan in PLANS:
        firsts.setdefault(tuple(heaps(plan, task)), plan)
    rivals = tuple(each for each in every if each.known and each.vehicle in fleet and each.plan in firsts.values())
    by = (task.by,) if task.by else fleet
    wanted = tuple(each for each in every if each.known and each.vehicle in by and each.plan == task.plan)
    may_win = wanted if task.plan else rivals
    if not may_win:
        first = task.by if task.plan and task.by else fleet[0]
        return Chosen(every, rivals, offer(task.plan or "all separated", first, task, company), False, None)
    best = min(may_win, key=lambda each: (each.cost, each.loads))
    # another name of the plan that is taken is no rival to it
    name = firsts[tuple(heaps(best.plan, task))]
    others = [each for each in rivals if (each.plan, each.vehicle) != (name, best.vehicle)]
    return Chosen(every, rivals, best, True, min(others, key=lambda each: each.cost, default=None))
