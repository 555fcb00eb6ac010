"""How much concrete to order, worked out plainly: written only to hold the program's rules against.

Nothing here comes from the program. Only the normal distribution and what hangs on it are floats; volumes are in
cubic yards, money in dollars.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import erfc, exp, log, pi, sqrt

from reference_pour import (
    PER_CENT,
    ZERO,
    CompanyBook,
    Job,
    Plant,
    cents,
    charge,
    crew_hour,
    millionths,
    mix,
    price_of_a_yard,
    second_truck,
    split,
    spread_parts,
    up,
    volume,
)


def tail(z: float) -> float:
    """The share of a normal distribution above ``z``; never one less the share below, which has no digits left."""
    return erfc(z / sqrt(2)) / 2


def density(z: float) -> float:
    """The height of the normal curve at ``z``."""
    return exp(-z * z / 2) / sqrt(2 * pi)


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
class OrderCandidate:
    """One order that is tried."""

    order: Fraction
    off: float
    chance: float
    short: float
    left: float
    loads: tuple[Fraction, ...]
    charge: Fraction
    expected: Fraction


def miss(company: CompanyBook, job: Job, *, pump: bool) -> Miss:
    """Need and spread, and what it costs to be off to either side."""
    price = price_of_a_yard(company, job, pump=pump)
    lump = (
        second_truck(company.plant)
        + company.plant.least * price
        + crew_hour(company, job) * company.wait
        + company.repair
    )
    return Miss(
        volume(job) * (1 + company.loss * PER_CENT) + (company.prime if pump else ZERO),
        sqrt(sum(part**2 for part in spread_parts(company, job))),
        lump,
        price,
        price + company.left_over,
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


def try_order(company: CompanyBook, order: Fraction, against: Miss) -> OrderCandidate:
    """One rung: what the order costs, and what the miss should cost."""
    chance, short = chance_of(order, against), short_of(order, against)
    left = float(order - against.need) + short
    loads = split(company.plant, order)
    asked = charge(company.plant, order, against.price, loads)
    expected = float(asked) + float(company.left_over) * left + float(against.lump) * chance
    return OrderCandidate(order, off_of(order, against), chance, short, left, loads, asked, cents(expected))


def at_least(plant: Plant) -> Fraction:
    """The least that the plant sells, in whole steps: no order is smaller."""
    return up(plant.least / plant.step) * plant.step


def reach(company: CompanyBook, against: Miss) -> tuple[Fraction, int]:
    """The first rung, two steps below the need, and how many are needed to end beyond every spread that counts."""
    step = company.plant.step
    first = max(at_least(company.plant), up(against.need / step) * step - 2 * step)
    last = float(against.need + company.more) + float(company.reach) * against.spread
    return first, up((last - float(first)) / float(step)) + 1


def ladder(company: CompanyBook, job: Job, *, pump: bool) -> list[OrderCandidate]:
    """Every order that is tried, from just below the need up."""
    against = miss(company, job, pump=pump)
    first, rungs = reach(company, against)
    return [try_order(company, first + place * company.plant.step, against) for place in range(rungs)]


def best(rungs: Sequence[OrderCandidate]) -> OrderCandidate:
    """The least expected cost; of equals the least order."""
    return min(rungs, key=lambda rung: (rung.expected, rung.order))


def quick(against: Miss) -> tuple[float, float]:
    """Spreads above the need, and the order, where a lump falls due however little is lacking; fees left aside."""
    a_spread_too_much = float(against.yard) * against.spread * sqrt(2 * pi)
    odds = float(against.lump) / a_spread_too_much if a_spread_too_much else 0.0
    off = sqrt(2 * log(odds)) if odds > 1 else 0.0
    return off, float(against.need) + off * against.spread


def by_percent(company: CompanyBook, job: Job, *, pump: bool) -> Fraction:
    """In place and the allowance, and what a pump keeps, rounded up once; never below the least order."""
    wanted = volume(job) * (1 + company.allowance * PER_CENT) + (company.prime if pump else ZERO)
    return max(at_least(company.plant), up(wanted / company.plant.step) * company.plant.step)


def ordered(company: CompanyBook, job: Job) -> Fraction:
    """From the truck: by risk where the mix has a price and the job does not say otherwise."""
    if job.rule == "risk" and mix(company, job) is not None:
        return best(ladder(company, job, pump=False)).order
    return by_percent(company, job, pump=False)


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


def bags(company: CompanyBook, job: Job) -> tuple[int, bool]:
    """Bags for the need, and whether they may do it."""
    bag = company.bag
    if bag is None:
        return 0, False
    count = up(volume(job) * (1 + company.loss * PER_CENT) * 27 / bag.yields)
    return count, millionths(volume(job)) <= millionths(bag.largest)
