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

from reference_haul import BULKING, PLANNED, SOILS, Job, Pile, millionth, piles, up

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
IN_ORDER = ("green waste", "concrete debris", "soil")
"""In which piles are hauled; a mixed one comes last, or in the place of the only thing in it."""
TURF_CHANCE, ROOT_CHANCE = Fraction(1), Fraction(1, 4)
PARTING_HOURS = Fraction(1, 4)
WASH_MONEY, WASH_SHARE = Fraction(25), Fraction(2, 100)
PLACING, FINISHING = 2, 1
"""People on the pour, of whom an hour of crew mix is made; as many prepare."""
CREW, LEAST_PEOPLE = PLACING + FINISHING, 2
PREP_DAY = Fraction(15, 2)
"""Hours on site of a preparation day: eight, less one to load up and drive, and half an hour more."""
SET_OUT = 9
"""The hour of the day at which work begins: the site opens at eight."""
LAYOUT, LEAST_LAYOUT = Fraction("0.004"), Fraction("0.75")
CUT, GRUB, DIG, BREAK, LOAD = (Fraction(rate) for rate in ("0.9", "0.6", "1.7", "1.6", "0.667"))
"""Hours for a loose yard of brush, a root ball, a bank yard of soil, a yard of old slab, and a loose yard to load."""


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

    @cached_property
    def loosening(self) -> dict[str, Fraction]:
        """Hours to loosen and load each stream, of one person."""
        count, width, depth, height, ball, _ = self.job.plants
        green = count * width * depth * height / 108 * CUT + (count * GRUB if ball else 0)
        soil = self.piles["soil"].loose / (1 + Fraction(SOILS[self.job.soil][1], 100)) * DIG
        own = {
            "green waste": green,
            "soil": soil,
            "concrete debris": self.piles["concrete debris"].loose / BULKING * BREAK,
        }
        return {stream: hours + self.piles[stream].loose * LOAD for stream, hours in own.items()}

    @cached_property
    def preparing(self) -> Fraction:
        """Hours before the pour, without driving and sorting."""
        return max(LEAST_LAYOUT, self.job.area * LAYOUT) + sum(self.loosening.values())

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
    filling: Fraction = Fraction(0)
    """Hours of one person to loosen and load it."""
    place: int = 0
    """In the order of the piles."""

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
    hire: Fraction
    """While a hired vehicle is loaded, and up to its minimum."""
    topped: Fraction
    """Hours up to its minimum."""
    parting: Fraction
    people: int

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
        return cents(rides + self.hire + self.parting)


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
    by_weight = up(pile.tons / (vehicle.payload * PLANNED)) if vehicle.payload else 0
    filling = sum((task.loosening[stream] for stream in streams), Fraction(0))
    place = IN_ORDER.index(streams[0]) if len(streams) == 1 else len(IN_ORDER)
    empty = TruckSplit(kind, pile, by_room, by_weight, filling=filling, place=place)
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


def prep_people(hours: Fraction) -> int:
    """People on each preparation visit, as many as its days leave work for."""
    visits = up(hours / (CREW * PREP_DAY))
    return max(min(LEAST_PEOPLE, CREW), up(hours / (visits * PREP_DAY)))


def day_of(hours: Fraction) -> int:
    """The workday of an hour of work; its last moment belongs to it."""
    return max(1, up(hours / PREP_DAY))


@dataclass(frozen=True)
class Back:
    """When each load of a pile is back, in hours of work, and when the last is at the gate."""

    kind: str
    loads: tuple[Fraction, ...]
    last_at_gate: Fraction


def clock(rides: Sequence[TruckSplit], people: int) -> Iterator[Back]:
    """One vehicle hauls pile after pile while the crew fills the next load."""
    ready = free = Fraction(0)
    for each in sorted((each for each in rides if each.loads), key=lambda each: each.place):
        filling, trip = each.filling / people, each.site.trip if each.site else Fraction(0)
        first = max(ready + filling / each.loads, free)
        leaves = [max(ready + filling * (load + 1) / each.loads, first + load * trip) for load in range(each.loads)]
        ready += filling
        free = leaves[-1] + trip
        way = (each.site.minutes or Fraction(0)) / 60 if each.site else Fraction(0)
        yield Back(each.kind, tuple(out + trip for out in leaves), leaves[-1] + way)


def offer(plan: str, vehicle: Vehicle, task: Task, company: CompanyBook) -> PlanCost:
    """A plan on a vehicle."""
    rides = tuple(ride(kind, streams, vehicle, task, company) for kind, streams in heaps(plan, task))
    hours = sum((each.hours for each in rides), Fraction(0))
    green = task.piles["green waste"]
    sorted_out = "green waste" in PLANS[plan] or "soil" in PLANS[plan]
    kept_apart = sorted_out and green.tons > 0 and any(task.piles[each].tons > 0 for each in STREAMS[1:])
    sorting = PARTING_HOURS * green.loose if kept_apart else Fraction(0)
    people = prep_people(task.preparing + sorting + (0 if vehicle.hired else hours))
    figures = bool(vehicle.room and vehicle.payload and vehicle.hourly is not None)
    paid = (vehicle.hired or company.driving > 0) and (not kept_apart or company.crew > 0)
    known = not rides or (figures and paid and all(each.site for each in rides))
    waiting = topped = Fraction(0)
    if vehicle.hired and any(each.loads for each in rides):
        waiting = sum((pile.loose for pile in task.piles.values()), Fraction(0)) * LOAD / people
        days = {day_of(back) for each in clock(rides, people) for back in each.loads}
        topped = max(Fraction(0), len(days) * vehicle.least_hours - hours - waiting)
    hire = (waiting + topped) * (vehicle.hourly or 0)
    return PlanCost(plan, vehicle, rides, known, hire, topped, sorting * company.crew, people)


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
