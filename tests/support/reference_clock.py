"""The clock of a haul worked out plainly: when the last load of a pile is at the gate. Nothing is the program's."""

from __future__ import annotations

from fractions import Fraction

from reference_plans import PREP_DAY, SET_OUT, Chosen, TruckSplit, clock, day_of


def last_loads(chosen: Chosen) -> dict[str, tuple[int, Fraction]]:
    """Day and hour of the day at which the last load of each pile is at the gate; none where no plan is known."""
    if not chosen.compared:
        return {}
    gates = {each.kind: each.last_at_gate for each in clock(chosen.taken.rides, chosen.taken.people)}
    return {kind: (day_of(at), SET_OUT + at - (day_of(at) - 1) * PREP_DAY) for kind, at in gates.items()}


def last_day(chosen: Chosen) -> int:
    """The day of the last load; 0 where there is none."""
    if not chosen.compared:
        return 0
    backs = [back for each in clock(chosen.taken.rides, chosen.taken.people) for back in each.loads]
    return day_of(max(backs)) if backs else 0


def too_late(each: TruckSplit, arrives: Fraction | None) -> Fraction:
    """Hours by which the last load of a pile misses the gate."""
    if arrives is None or each.site is None or not each.site.closes:
        return Fraction(0)
    return max(Fraction(0), arrives - each.site.closes)
