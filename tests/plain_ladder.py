"""How much concrete to order, worked out plainly: written only to hold the program's rules against.

Nothing here comes from the program. What is typed or paid is an exact fraction; only the normal distribution and the
roots are floats. Lengths are in feet, depths in inches, volumes in cubic yards, money in dollars. Every count is
rounded to a millionth before it is rounded up or down, and money is rounded to the cent line by line.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import erfc, exp, log, pi, sqrt
from statistics import NormalDist

FT2_IN_PER_YD3 = 324
PER_CENT = Fraction(1, 100)
RUNGS = 40
"""Rows of the ladder; doubled until it reaches as far as it must."""
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


def tail(z: float) -> float:
    """The share of a normal distribution above ``z``; never one less the share below, which has no digits left."""
    return erfc(z / sqrt(2)) / 2


def density(z: float) -> float:
    """The height of the normal curve at ``z``."""
    return exp(-z * z / 2) / sqrt(2 * pi)


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
class House:
    """A house book: plant, wages by table as (labourer, finisher), bags, and what a miss costs."""

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


@dataclass(frozen=True)
class Miss:
    """What an order stands against: the need and its spread, a lump when it is short, a price for a yard too much."""

    need: Fraction
    spread: float
    lump: Fraction
    price: Fraction
    """Of a yard, with all that goes into it."""
    yard: Fraction


@dataclass(frozen=True)
class Rung:
    """One order that is tried."""

    order: Fraction
    off: float
    chance: float
    short: float
    left: float
    loads: tuple[Fraction, ...]
    charge: Fraction
    expected: Fraction


def volume(job: Job) -> Fraction:
    """Concrete in place."""
    return sum((area.ft2 * area.mean for area in job.areas), ZERO) / FT2_IN_PER_YD3


def points_spread(depths: Sequence[Fraction]) -> float:
    """Sample standard deviation."""
    mean = sum(depths, ZERO) / len(depths)
    return sqrt(sum(((each - mean) ** 2 for each in depths), ZERO) / (len(depths) - 1))


def mean_spread(house: House, area: Area) -> float:
    """How far the mean depth of an area may be off: with four depths or more by the depths, else by the house."""
    points = len(area.depths)
    if points < 4:
        return float(house.few)
    return points_spread(area.depths) * sqrt((points - 1) / (points - 3)) / sqrt(points)


def spread_parts(house: House, job: Job) -> tuple[float, ...]:
    """Spreads of the volume: of each area by its depths, by the string line, by the tape, by the plant's yield."""
    ft2 = sum((area.ft2 for area in job.areas), ZERO)
    return (
        *(float(area.ft2) * mean_spread(house, area) / FT2_IN_PER_YD3 for area in job.areas),
        float(ft2 * house.string / FT2_IN_PER_YD3),
        float(volume(job) * house.tape * PER_CENT),
        float(volume(job) * house.plant_yield * PER_CENT),
    )


def mix(house: House, job: Job) -> int | None:
    """The strength that is ordered: the weakest that is strong enough and has a price."""
    return min((psi for psi in house.plant.mixes if psi >= job.psi), default=None)


def price_of_a_yard(house: House, job: Job, *, pump: bool) -> Fraction:
    """The mix, what goes into it, and small aggregate for a pump."""
    strength = mix(house, job)
    plain = house.plant.mixes[strength] if strength is not None else ZERO
    added = sum((house.plant.additions.get(each, ZERO) for each in job.additions), ZERO)
    return plain + added + (house.plant.pump_mix if pump else ZERO)


def fee(plant: Plant, load: Fraction) -> Fraction:
    """Of one truck: of the least limit that the load is less than; a load of the limit itself has the cheaper fee."""
    return next((fee for limit, fee in plant.tiers if load < limit), ZERO)


def second_truck(plant: Plant) -> Fraction:
    """A truck with the least order, without its concrete."""
    return fee(plant, plant.least) + plant.delivery


def crew_hour(house: House, job: Job) -> Fraction:
    """All people of the pour for an hour: the placing crew as labourers, the finishers as such."""
    labourer, finisher = house.wages[job.wages]
    return job.placing * labourer + job.finishing * finisher


def miss(house: House, job: Job, *, pump: bool) -> Miss:
    """Need and spread, and what it costs to be off to either side."""
    price = price_of_a_yard(house, job, pump=pump)
    lump = second_truck(house.plant) + house.plant.least * price + crew_hour(house, job) * house.wait + house.repair
    return Miss(
        volume(job) * (1 + house.loss * PER_CENT) + (house.prime if pump else ZERO),
        sqrt(sum(part**2 for part in spread_parts(house, job))),
        lump,
        price,
        price + house.left_over,
    )


def off_of(order: Fraction, against: Miss) -> float:
    """Spreads that an order lies above the need."""
    return float(order - against.need) / against.spread if millionths(against.spread) else 0.0


def chance_of(order: Fraction, against: Miss) -> float:
    """That the need is more than the order; certain or impossible where nothing spreads."""
    if not millionths(against.spread):
        return float(millionths(order) < millionths(against.need))
    return tail(off_of(order, against))


def short_of(order: Fraction, against: Miss) -> float:
    """Yards that are lacking, expected."""
    if not millionths(against.spread):
        return max(0.0, float(against.need - order))
    off = off_of(order, against)
    return against.spread * (density(off) - off * tail(off))


def left_of(order: Fraction, against: Miss) -> float:
    """Yards that are left over, expected."""
    return float(order - against.need) + short_of(order, against)


def split(plant: Plant, order: Fraction) -> tuple[Fraction, ...]:
    """The loads: as many trucks as the order fills, as even as the step allows, the odd steps on the first."""
    trucks = up(order / plant.capacity)
    even, odd = divmod(down(order / plant.step), trucks)
    return tuple((even + (truck < odd)) * plant.step for truck in range(trucks))


def charge(plant: Plant, order: Fraction, price: Fraction, loads: Sequence[Fraction]) -> Fraction:
    """What the plant asks: the least order at least, and a fee and a delivery for every truck."""
    fees = {load: fee(plant, load) + plant.delivery for load in (loads[0], loads[-1])}
    return cents(max(order, plant.least) * price) + cents(sum((fees[load] for load in loads), ZERO))


def try_order(house: House, order: Fraction, against: Miss) -> Rung:
    """One rung: what the order costs, and what the miss should cost."""
    chance, short = chance_of(order, against), short_of(order, against)
    left = float(order - against.need) + short
    loads = split(house.plant, order)
    asked = charge(house.plant, order, against.price, loads)
    expected = float(asked) + float(house.left_over) * left + float(against.lump) * chance
    return Rung(order, off_of(order, against), chance, short, left, loads, asked, cents(expected))


def reach(house: House, against: Miss) -> tuple[Fraction, int]:
    """The first rung, two steps below the need, and how many are needed to end beyond every spread that counts."""
    step = house.plant.step
    first = max(step, up(against.need / step) * step - 2 * step)
    last = float(against.need + house.more) + float(house.reach) * against.spread
    return first, up((last - float(first)) / float(step)) + 1


def ladder(house: House, job: Job, *, pump: bool) -> list[Rung]:
    """Every order that is tried, from just below the need up."""
    ways = {way: miss(house, job, pump=way) for way in (False, True)}
    needed = max(reach(house, against)[1] for against in ways.values())
    rungs = RUNGS
    while rungs < needed:
        rungs *= 2
    first, _ = reach(house, ways[pump])
    return [try_order(house, first + place * house.plant.step, ways[pump]) for place in range(rungs)]


def best(rungs: Sequence[Rung]) -> Rung:
    """The least expected cost; of equals the least order."""
    return min(rungs, key=lambda rung: (rung.expected, rung.order))


def quick(against: Miss) -> tuple[float, float]:
    """Spreads above the need, and the order, where a lump falls due however little is lacking; fees left aside."""
    a_spread_too_much = float(against.yard) * against.spread * sqrt(2 * pi)
    odds = float(against.lump) / a_spread_too_much if a_spread_too_much else 0.0
    off = sqrt(2 * log(odds)) if odds > 1 else 0.0
    return off, float(against.need) + off * against.spread


def yard_of_bags(bag: Bag) -> Fraction:
    """What a yard of bags costs."""
    return 27 / bag.yields * bag.price


def topped_up(house: House, against: Miss) -> tuple[float, float]:
    """Where each yard that is lacking is made from bags: the share of pours that are enough, and the order."""
    if house.bag is None or not against.yard:
        return 0.0, 0.0
    ratio = yard_of_bags(house.bag) / (yard_of_bags(house.bag) + against.yard)
    return float(ratio), float(against.need) + NormalDist().inv_cdf(float(ratio)) * against.spread


def by_percent(house: House, job: Job, *, pump: bool) -> Fraction:
    """In place and the allowance, and what a pump keeps, rounded up once."""
    wanted = volume(job) * (1 + house.allowance * PER_CENT) + (house.prime if pump else ZERO)
    return up(wanted / house.plant.step) * house.plant.step


def miss_of(house: House, order: Fraction, against: Miss) -> Fraction:
    """What an order should cost beside what the plant charges."""
    return cents(float(against.lump) * chance_of(order, against) + float(house.left_over) * left_of(order, against))


def ordered(house: House, job: Job) -> Fraction:
    """From the truck: by risk where the mix has a price and the job does not say otherwise."""
    if job.rule == "risk" and mix(house, job) is not None:
        return best(ladder(house, job, pump=False)).order
    return by_percent(house, job, pump=False)


@dataclass(frozen=True)
class Call:
    """The last truck held until the forms that are left have been measured again."""

    last: Fraction
    chance: float
    left: float
    saves: Fraction


def balance_call(plant: Plant, order: Fraction, against: Miss) -> Call:
    """The spread shrinks with what is left to pour, and the quick formula sizes the last truck."""
    loads = split(plant, order)
    chance, left = chance_of(order, against), left_of(order, against)
    last = loads[-1] if len(loads) > 1 else ZERO
    remaining = replace(against, need=ZERO, spread=against.spread * float(last / order))
    if not millionths(remaining.spread):
        return Call(last, chance, left, ZERO)
    off, _ = quick(remaining)
    held, held_left = tail(off), remaining.spread * (off + density(off) - off * tail(off))
    gain = float(against.lump) * (chance - held) + float(against.yard) * (left - held_left)
    return Call(last, held, held_left, cents(max(0.0, gain)))


def bags(house: House, job: Job) -> tuple[int, bool, Fraction]:
    """Bags for the need, whether they may do it, and the yards below which they are cheaper than a truck's fees."""
    bag = house.bag
    if bag is None:
        return 0, False, ZERO
    count = up(volume(job) * (1 + house.loss * PER_CENT) * 27 / bag.yields)
    saved = second_truck(house.plant) - bag.mixer - bag.clean
    return count, millionths(volume(job)) <= millionths(bag.largest), max(ZERO, saved) / yard_of_bags(bag)
