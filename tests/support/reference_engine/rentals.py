"""Rental of tools and whole packs of liquids."""

from .facts import Factors, Pack, Rental
from .rounding import at_most, cents, down, millionths, up


def rental_money(hours: float, rental: Rental, factors: Factors, least_days: int = 0) -> float:
    """Nothing for no hours, half a day up to four hours, else days, or the week where that is cheaper.

    `least_days` keeps a machine on hire; one day of it may still be half a day.
    """
    if millionths(hours) <= 0:
        return 0.0
    if at_most(hours, factors.rental_half) and least_days <= 1:
        return rental.half_day
    days = max(up(hours / factors.rental_day), least_days) * rental.day
    return days if rental.week is None else min(days, rental.week)


def cheapest_packs(need: float, packs: tuple[Pack, ...]) -> tuple[list[int], float, float]:
    """Counts by size (small first), money and gallons left; all small, all large, or large with small for the rest."""
    if millionths(need) <= 0 or not packs:
        return [0] * len(packs), 0.0, 0.0
    sizes = sorted(packs, key=lambda p: p.gallons)
    if len(sizes) == 1:
        tries = [[up(need / sizes[0].gallons)]]
    else:
        small, large = sizes
        full = down(need / large.gallons)
        rest = up(max(0.0, need - full * large.gallons) / small.gallons)
        tries = [[up(need / small.gallons), 0], [0, up(need / large.gallons)], [rest, full]]

    def judged(counts: list[int]) -> tuple[int, int]:
        price = sum(n * p.price for n, p in zip(counts, sizes, strict=True))
        gallons = sum(n * p.gallons for n, p in zip(counts, sizes, strict=True))
        return cents(price), millionths(gallons - need)

    best = min(tries, key=judged)
    price, left = judged(best)
    return best, price / 100, left / 1_000_000
