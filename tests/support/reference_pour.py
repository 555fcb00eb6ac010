"""A pour and what a plant charges for it, worked out plainly: written only to hold the program's rules against.

Nothing here comes from the program. What is typed or paid is an exact fraction, only roots are floats. Lengths are in
feet, depths in inches, volumes in cubic yards, money in dollars. Every count is rounded to a millionth before it is
rounded up or down, and money is rounded to the cent line by line.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import sqrt

FT2_IN_PER_YD3 = 324
PER_CENT = Fraction(1, 100)
ZERO = Fraction(0)
MILLION = 1_000_000


def millionths(number: Fraction | float) -> int:
    """Whole millionths of a number, halves up."""
    above, below = number.as_integer_ratio()
    return (2 * MILLION * above + below) // (2 * below)


def up(number: Fraction | float) -> int:
    """The next whole number."""
    return -(-millionths(number) // MILLION)


def down(number: Fraction | float) -> int:
    """The whole number below."""
    return millionths(number) // MILLION


def cents(amount: Fraction | float) -> Fraction:
    """To the cent, half a cent up."""
    return Fraction((millionths(amount) + 5000) // 10_000, 100)


@dataclass(frozen=True)
class Plant:
    """What the plant charges; ``tiers`` are limits with the fee of a load that is less, from the least limit up."""

    mixes: dict[int, Fraction]
    """Dollars a yard, by strength in psi."""
    additions: dict[str, Fraction]
    """More dollars a yard for air, accelerator, retarder, hot water."""
    pump_mix: Fraction
    delivery: Fraction
    tiers: tuple[tuple[Fraction, Fraction], ...]
    least: Fraction = Fraction(1)
    step: Fraction = Fraction(1, 4)
    capacity: Fraction = Fraction(9)


@dataclass(frozen=True)
class Bag:
    """A bag of concrete, and what a pour by bags costs besides."""

    price: Fraction
    yields: Fraction
    mixer: Fraction
    clean: Fraction
    largest: Fraction = Fraction(1)


@dataclass(frozen=True)
class CompanyBook:
    """A company book: plant, wages by table as (laborer, finisher), bags, and what a miss costs."""

    plant: Plant
    wages: dict[str, tuple[Fraction, Fraction]]
    bag: Bag | None
    loss: Fraction = Fraction(3)
    prime: Fraction = Fraction(1, 5)
    wait: Fraction = Fraction(5, 4)
    repair: Fraction = Fraction(250)
    left_over: Fraction = Fraction(65)
    few: Fraction = Fraction(3, 8)
    string: Fraction = Fraction(1, 8)
    tape: Fraction = Fraction(1)
    plant_yield: Fraction = Fraction(1)
    allowance: Fraction = Fraction(8)
    reach: Fraction = Fraction(4)
    more: Fraction = Fraction(1)


@dataclass(frozen=True)
class Area:
    """A strip, its copies, and the depths that were taken."""

    length: Fraction
    width: Fraction
    thickness: Fraction
    copies: int = 1
    depths: tuple[Fraction, ...] = ()

    @property
    def ft2(self) -> Fraction:
        """Of all copies."""
        return self.length * self.width * self.copies

    @property
    def mean(self) -> Fraction:
        """Thickness that concrete goes by: of the depths where any were taken."""
        return sum(self.depths, ZERO) / len(self.depths) if self.depths else self.thickness


@dataclass(frozen=True)
class Job:
    """What is poured, with what and by whom; ``rule`` is how its order is found."""

    areas: tuple[Area, ...]
    psi: int = 3500
    additions: tuple[str, ...] = ()
    placing: int = 2
    finishing: int = 1
    wages: str = "private"
    rule: str = "risk"


def volume(job: Job) -> Fraction:
    """Concrete in place."""
    return sum((area.ft2 * area.mean for area in job.areas), ZERO) / FT2_IN_PER_YD3


def points_spread(depths: Sequence[Fraction]) -> float:
    """Sample standard deviation."""
    mean = sum(depths, ZERO) / len(depths)
    return sqrt(sum(((each - mean) ** 2 for each in depths), ZERO) / (len(depths) - 1))


def mean_spread(company: CompanyBook, area: Area) -> float:
    """How far the mean depth of an area may be off: with four depths or more by the depths, else by the house."""
    points = len(area.depths)
    if points < 4:
        return float(company.few)
    return points_spread(area.depths) * sqrt((points - 1) / (points - 3)) / sqrt(points)


def spread_parts(company: CompanyBook, job: Job) -> tuple[float, ...]:
    """Spreads of the volume: of each area by its depths, by the string line, by the tape, by the plant's yield."""
    ft2 = sum((area.ft2 for area in job.areas), ZERO)
    return (
        *(float(area.ft2) * mean_spread(company, area) / FT2_IN_PER_YD3 for area in job.areas),
        float(ft2 * company.string / FT2_IN_PER_YD3),
        float(volume(job) * company.tape * PER_CENT),
        float(volume(job) * company.plant_yield * PER_CENT),
    )


def mix(company: CompanyBook, job: Job) -> int | None:
    """The strength that is ordered: the weakest that is strong enough and has a price."""
    return min((psi for psi in company.plant.mixes if psi >= job.psi), default=None)


def price_of_a_yard(company: CompanyBook, job: Job, *, pump: bool) -> Fraction:
    """The mix, what goes into it, and small aggregate for a pump."""
    strength = mix(company, job)
    plain = company.plant.mixes[strength] if strength is not None else ZERO
    added = sum((company.plant.additions.get(each, ZERO) for each in job.additions), ZERO)
    return plain + added + (company.plant.pump_mix if pump else ZERO)


def fee(plant: Plant, load: Fraction) -> Fraction:
    """Of one truck: of the least limit that the load is less than; a load of the limit itself has the cheaper fee."""
    return next((fee for limit, fee in plant.tiers if load < limit), ZERO)


def second_truck(plant: Plant) -> Fraction:
    """A truck with the least order, without its concrete."""
    return fee(plant, plant.least) + plant.delivery


def crew_hour(company: CompanyBook, job: Job) -> Fraction:
    """All people of the pour for an hour: the placing crew as laborers, the finishers as such."""
    laborer, finisher = company.wages[job.wages]
    return job.placing * laborer + job.finishing * finisher


def split(plant: Plant, order: Fraction) -> tuple[Fraction, ...]:
    """The loads: as many trucks as the order fills, as even as the step allows, the odd steps on the first."""
    trucks = up(order / plant.capacity)
    even, odd = divmod(down(order / plant.step), trucks)
    return tuple((even + (truck < odd)) * plant.step for truck in range(trucks))


def charge(plant: Plant, order: Fraction, price: Fraction, loads: Sequence[Fraction]) -> Fraction:
    """What the plant asks: the least order at least, and a fee and a delivery for every truck."""
    fees = {load: fee(plant, load) + plant.delivery for load in (loads[0], loads[-1])}
    return cents(max(order, plant.least) * price) + cents(sum((fees[load] for load in loads), ZERO))
