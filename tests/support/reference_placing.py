"""Ways of placing worked out plainly, but for what each costs: written only to hold the program's rules against.

Nothing here comes from the program. Volumes are in cubic yards, distances in feet, times in minutes or hours as named,
temperatures in degrees F, money in dollars. All is in exact fractions but for the normal distribution of the order by
risk and the power in the drying formula.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import erfc, exp, fsum, pi, sqrt

from reference_haul import down, millionth, up

METHODS = ("chute", "wheelbarrow", "pump", "bags")
STEP, TRUCK, LEAST_ORDER = Fraction(1, 4), 9, 1
FREE, FREE_A_YARD = 30, 6
LARGEST_BAG_POUR = 1


def cents(amount: Fraction) -> Fraction:
    """To the cent, halves up."""
    return Fraction(int(millionth(amount) * 100 + Fraction(1, 2)), 100)


def next_step(yards: Fraction) -> Fraction:
    """Up to what the plant sells."""
    return up(yards / STEP) * STEP


@dataclass(frozen=True)
class CompanyBook:
    """What the company book gives; ``None`` is what it does not say."""

    mix: Fraction | None
    pump_mix: Fraction
    delivery: Fraction
    fees: tuple[tuple[Fraction, Fraction], ...]
    """Limit in yards and fee, the smallest load first; empty where the plant has none."""
    waiting: Fraction | None
    pump: tuple[Fraction | None, Fraction | None, Fraction, Fraction]
    """Set-up, an hour, a yard, the prime pack."""
    bag: tuple[Fraction, Fraction] | None
    """Price and yield in ft3."""
    mixer: Fraction
    clean: Fraction
    laborer: Fraction
    finisher: Fraction
    tie: int
    """Dollars within which two ways cost the same."""


@dataclass(frozen=True)
class Job:
    """One slab, how it may be placed, and the weather."""

    length: Fraction
    width: Fraction
    thickness: Fraction
    rule: str
    fixed: Fraction
    drive: Fraction
    allowed: frozenset[str]
    """Which of chute, barrow and pump can get there."""
    barrows: int
    feet: Fraction
    wet: bool
    slope: Fraction
    named: str
    placers: int
    finishers: int
    admixture: str
    air: Fraction | None
    concrete: Fraction | None
    humidity: Fraction | None
    wind: Fraction | None

    @property
    def area(self) -> Fraction:
        """In square feet."""
        return self.length * self.width

    @property
    def in_place(self) -> Fraction:
        """The exact volume."""
        return self.area * self.thickness / 324


@dataclass(frozen=True)
class Way:
    """One way of placing, with all that it is judged by."""

    name: str
    order: Fraction
    pace: Fraction
    hours: Fraction
    trucks: int
    longest: Fraction
    waiting: Fraction
    waiting_fee: Fraction
    pump: Fraction
    can: bool
    lacking: int
    late: bool

    @property
    def fits(self) -> bool:
        """Whether it may win."""
        return self.can and not self.lacking and not self.late

    @property
    def against(self) -> tuple[bool, int, bool]:
        """What speaks against it, what weighs most first: it cannot be done, is not priced, is too slow."""
        return not self.can, self.lacking, self.late


def yard_price(company: CompanyBook, pumped: bool) -> Fraction:
    """A yard at the plant."""
    return (company.mix or Fraction(0)) + (company.pump_mix if pumped else 0)


def fee(company: CompanyBook, load: Fraction) -> Fraction:
    """The short-load fee of a truck: of the first limit that its load stays below."""
    return next((dollars for limit, dollars in company.fees if load < limit), Fraction(0))


def loads(order: Fraction) -> list[Fraction]:
    """The trucks, as even as the step of the plant allows."""
    trucks, steps = up(order / TRUCK), down(order / STEP)
    return [(steps // trucks + (place < steps % trucks)) * STEP for place in range(trucks)]


def charge(company: CompanyBook, order: Fraction, pumped: bool) -> Fraction:
    """What the plant charges for an order."""
    by_truck = sum((fee(company, load) + company.delivery for load in loads(order)), Fraction(0))
    return cents(max(order, Fraction(LEAST_ORDER)) * yard_price(company, pumped)) + cents(by_truck)


def prime(pumped: bool) -> Fraction:
    """What a pump keeps."""
    return Fraction(1, 5) if pumped else Fraction(0)


def by_percent(job: Job, pumped: bool) -> Fraction:
    """8 % over what is in place, once; no plant sells less than its least."""
    return max(Fraction(LEAST_ORDER), next_step(job.in_place * Fraction(108, 100) + prime(pumped)))


def by_risk(job: Job, company: CompanyBook, pumped: bool) -> Fraction:
    """The order with the least expected cost, the first of equals."""
    need = job.in_place * Fraction(103, 100) + prime(pumped)
    by_depth, by_string = float(job.area) * 0.375 / 324, float(job.area) * 0.125 / 324
    spread = sqrt(by_depth**2 + by_string**2 + 2 * (0.01 * float(job.in_place)) ** 2)
    crew = job.placers * company.laborer + job.finishers * company.finisher
    lump = fee(company, Fraction(1)) + company.delivery + yard_price(company, pumped) + crew * Fraction(5, 4) + 250
    first = max(Fraction(LEAST_ORDER), next_step(need) - 2 * STEP)
    best: tuple[Fraction, Fraction] | None = None
    for rung in range(40):
        order = first + rung * STEP
        off = float(order - need) / spread
        short = erfc(off / sqrt(2)) / 2
        left = float(order - need) + spread * (exp(-off * off / 2) / sqrt(2 * pi) - off * short)
        expected = cents(charge(company, order, pumped) + Fraction(65 * left) + lump * Fraction(short))
        if best is None or expected < best[0]:
            best = expected, order
    assert best is not None
    return best[1]


def order_of(job: Job, company: CompanyBook, pumped: bool) -> Fraction:
    """By the rule of the job; without a price for the mix nobody knows what a miss costs."""
    if job.rule == "fixed":
        return max(Fraction(LEAST_ORDER), next_step(job.fixed))
    if job.rule == "risk" and company.mix is not None:
        return by_risk(job, company, pumped)
    return by_percent(job, pumped)


def barrow_pace(job: Job) -> Fraction:
    """Yards an hour."""
    trip = Fraction(11, 10) + 2 * job.feet / 150
    pace = job.barrows * Fraction(275, 100) / 27 * 60 / trip * Fraction(8, 10)
    return pace * Fraction(7, 10) if job.wet or job.slope > 5 else pace


def minutes_left(job: Job) -> Fraction:
    """Of 90 minutes, or 60 in heat, what the drive leaves."""
    limit = 60 if job.air is not None and job.air >= 85 else 90
    return max(Fraction(0), Fraction(limit) - job.drive)


def bags_needed(job: Job, company: CompanyBook) -> int:
    """Whole bags for what is in place and the loss."""
    return up(job.in_place * Fraction(103, 100) * 27 / company.bag[1]) if company.bag else 0


def hired_pump(company: CompanyBook, hours: Fraction, order: Fraction) -> Fraction:
    """Set-up, hours, yards, prime pack, each to the cent."""
    set_up, hour, yard, pack = company.pump
    hired = max(Fraction(3), hours + Fraction(3, 4))
    return cents(set_up or Fraction(0)) + cents(hired * (hour or 0)) + cents(order * yard) + cents(pack)


def beyond_free_time(minutes: Fraction, load: Fraction) -> Fraction:
    """What a truck stands beyond half an hour, or six minutes a yard if that is more."""
    return max(Fraction(0), minutes - max(Fraction(FREE), FREE_A_YARD * load))


def from_truck(job: Job, company: CompanyBook, name: str) -> Way:
    """Chute, barrow or pump."""
    pumped = name == "pump"
    pace = {"chute": Fraction(12), "wheelbarrow": barrow_pace(job), "pump": Fraction(14)}[name]
    order = order_of(job, company, pumped)
    hours = max(Fraction(1, 2), order / pace) if pace else Fraction(0)
    stands = [(load / pace * 60 if pace else Fraction(0), load) for load in loads(order)]
    waiting = sum((beyond_free_time(time, load) for time, load in stands), Fraction(0))
    waiting_fee = cents(waiting * (company.waiting or 0))
    pump = hired_pump(company, hours, order) if pumped else Fraction(0)
    lacking = (
        (company.mix is None)
        + (pumped and None in company.pump[:2])
        + (millionth(waiting) > 0 and company.waiting is None)
    )
    longest = max(time for time, _ in stands)
    return Way(
        name,
        order,
        pace,
        hours,
        len(stands),
        longest,
        waiting,
        waiting_fee,
        pump,
        pace > 0 and (name in job.allowed or name == job.named),
        int(lacking),
        millionth(longest) > millionth(minutes_left(job)),
    )


def from_bags(job: Job, company: CompanyBook) -> Way:
    """Two people and a mixer, 4 minutes a bag; never where the order from the plant is fixed."""
    bags = bags_needed(job, company)
    _, holds = company.bag or (Fraction(0), Fraction(0))
    hours = max(Fraction(1, 2), Fraction(bags * 4, 60))
    small = millionth(job.in_place) <= LARGEST_BAG_POUR and job.rule != "fixed"
    can = company.bag is not None and (small or job.named == "bags")
    none = Fraction(0)
    return Way("bags", bags * holds / 27, none, hours, 0, none, none, none, none, can, not company.bag, False)


def ways(job: Job, company: CompanyBook) -> list[Way]:
    """All four, in the order of methods."""
    return [*(from_truck(job, company, name) for name in METHODS[:3]), from_bags(job, company)]


def best(every: list[Way], cost: dict[str, Fraction], tie: int) -> Way:
    """What has least against it, then costs least; of what costs the same what takes least time, then the first."""
    least_against = min(way.against for way in every)
    as_good = [way for way in every if way.against == least_against]
    cheapest = min(cost[way.name] for way in as_good)
    tied = [way for way in as_good if cost[way.name] <= cheapest + tie]
    return min(tied, key=lambda way: (int(millionth(way.hours * 1000) + Fraction(1, 2)), METHODS.index(way.name)))


def taken(job: Job, every: list[Way], cost: dict[str, Fraction], tie: int) -> tuple[Way, Way]:
    """The way that is taken, and the one that comes next, with what each costs."""
    by_hand = [way for way in every if way.name == job.named and (way.pace or (way.name == "bags" and way.can))]
    first = by_hand[0] if by_hand else best(every, cost, tie)
    return first, best([way for way in every if way is not first], cost, tie)


def drying(job: Job) -> float:
    """Pounds a square foot and hour; 0 where the weather is not known or the air wets the slab."""
    if job.air is None or job.concrete is None or job.humidity is None or job.wind is None:
        return 0.0
    concrete, air, damp = float(job.concrete), max(0.0, float(job.air)), float(job.humidity) / 100
    pull = fsum([concrete**2.5, -damp * air**2.5])
    return max(0.0, pull * (1 + 0.4 * float(job.wind)) * 1e-6)
