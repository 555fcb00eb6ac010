"""The work of a job worked out plainly, in exact fractions: written only to hold the program's rules against.

Nothing here comes from the program. Lengths are in feet, thicknesses and spacings in inches, volumes in cubic yards,
weights in short tons, times in hours, money in dollars. Every count is rounded to a millionth before it is rounded up.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from functools import cache
from math import floor, pi

from reference_haul import BULKING, CONCRETE_LB, FT2_IN_PER_YD3, MOISTURES, SOILS, millionth, up

ZERO = Fraction(0)
PI = Fraction(pi)
RATES = {
    "layout": "0.004", "cap lines": "0.6", "cut brush": "0.9", "grub roots": "0.6", "demolition saw cut": "0.03",
    "break out slab": "1.6", "chip footings": "7", "dig by hand": "1.7", "dig by machine": "0.45",
    "load by hand": "0.667", "lay bond breaker": "0.010",
    "load by machine": "0.10", "place base rock": "0.55", "set forms": "0.045", "drill dowels": "0.06",
    "install isolation joints": "0.015",
    "apply bonding agent": "0.010", "protect existing walk": "0.25", "place concrete": "1", "mix bags": "1",
    "tool joints": "0.02",
    "saw-cut joints": "0.03", "apply curing compound": "0.002", "strip forms": "0.012", "clean up": "1.5",
    "apply sealer": "0.004", "unforeseen conditions": "1", "lay vapor retarder": "0.002",
    "place reinforcing bars": "0.011", "place wire mesh": "0.007",
}  # fmt: skip
"""Hours for one; finishing is 80 square feet an hour."""
FINISHED_IN_AN_HOUR = 80
LEAST_LAYOUT = Fraction(3, 4)
PAID = {"place concrete": "laborer", "mix bags": "laborer", "finish concrete": "finisher", "tool joints": "finisher",
        "saw-cut joints": "finisher", "strip forms": "laborer", "apply sealer": "laborer"}  # fmt: skip
"""All else is paid at crew mix."""
PACE = {"chute": Fraction(12), "pump": Fraction(14)}
"""Yards an hour."""
PRIME = Fraction(1, 5)
ALLOWANCE, LOSS = Fraction(108, 100), Fraction(103, 100)


def cents(amount: Fraction) -> Fraction:
    """To the cent, halves up."""
    return Fraction(floor(millionth(amount) * 100 + Fraction(1, 2)), 100)


@dataclass(frozen=True)
class Rental:
    """What a machine costs for half a day, a day and a week; ``None`` where the company book does not say."""

    half: Fraction | None
    day: Fraction | None
    week: Fraction | None


@dataclass(frozen=True)
class CompanyBook:
    """One own trailer, one site that takes everything, wages, and machines by name."""

    laborer: Fraction
    finisher: Fraction
    payload: Fraction
    box: Fraction
    rentals: dict[str, Rental]


@dataclass(frozen=True)
class Edge:
    """An edge of the area."""

    kind: str
    length: Fraction
    repeats: int
    curved: bool
    spacing: Fraction | None


@dataclass(frozen=True)
class Job:
    """One strip with its edges, over a footing, with an old slab and a row of plants in its way."""

    length: Fraction
    width: Fraction
    thickness: Fraction
    other_thickness: Fraction
    base: Fraction
    copies: int
    old_slab: Fraction
    plants: tuple[int, Fraction]
    """How many bushes of 3 by 3 by 4 ft, and the diameter of their root balls, a foot high."""
    footing: tuple[Fraction, Fraction, Fraction, str, str]
    """Length, width, depth of its top below the new top, reinforced, what it is treated with; cover wanted is 2 in."""
    soil: str
    keep_backfill: bool
    machine: bool
    power: bool
    crew: int
    placing: int
    finishing: int
    method: str
    caps: int
    saw_cut: Fraction
    unknown: Fraction
    bond_coats: int
    sealer_coats: int
    sawn: bool
    edges: tuple[Edge, ...] = field(default=())

    @property
    def area(self) -> Fraction:
        """Of all copies."""
        return self.length * self.width * self.copies

    @property
    def mean(self) -> Fraction:
        """Mean thickness: the strip is as wide at one end as at the other."""
        return (self.thickness + self.other_thickness) / 2

    @property
    def cover(self) -> Fraction:
        """Over the footing, after chipping."""
        return max(self.footing[2], Fraction(2))

    def along(self, *kinds: str) -> Fraction:
        """The length of the edges of some kinds, all repeats and copies."""
        return sum((each.length * each.repeats for each in self.edges if each.kind in kinds), ZERO) * self.copies


def in_place(job: Job) -> Fraction:
    """Cubic yards of new concrete."""
    length, width, *_ = job.footing
    displaced = length * width * job.copies * max(ZERO, job.mean - job.cover)
    return (job.area * job.mean - displaced) / FT2_IN_PER_YD3


def ordered(job: Job) -> Fraction:
    """By the percent rule, to the next quarter yard."""
    prime = PRIME if job.method == "pump" else ZERO
    return Fraction(up((in_place(job) * ALLOWANCE + prime) * 4), 4)


def elapsed(job: Job) -> Fraction:
    """Hours to place, or to mix bags that yield 0.6 ft3 each, four minutes a bag."""
    if job.method == "bags":
        return max(Fraction(1, 2), Fraction(up(in_place(job) * LOSS * 27 / Fraction(6, 10)) * 4, 60))
    return max(Fraction(1, 2), ordered(job) / PACE[job.method])


def balls(job: Job) -> Fraction:
    """Root balls in the bank: bowls."""
    count, across = job.plants
    return count * PI / 4 * across**2 * Fraction(67, 100) / 27


def brush(job: Job) -> Fraction:
    """A bush is 36 ft3, stomped to a quarter."""
    return Fraction(job.plants[0] * 36, 4 * 27)


def dug(job: Job) -> Fraction:
    """Soil in the bank, less the root balls in it; what goes back along the forms is dug all the same.

    A taper is dug by the mean of its ends.
    """
    depth = job.mean + job.base
    length, width, top, *_ = job.footing
    footing = length * width * job.copies * max(ZERO, depth - max(ZERO, top))
    hole = (job.area + job.along("form") / 4) * depth
    return max(ZERO, max(ZERO, hole - job.old_slab * job.copies * 4 - footing) / FT2_IN_PER_YD3 - balls(job))


def hauled_soil(job: Job) -> Fraction:
    """Soil in the bank that leaves."""
    back = job.along("form") / 4 * (job.mean + job.base) / FT2_IN_PER_YD3
    return max(ZERO, dug(job) - back) if job.keep_backfill else dug(job)


def old_slab(job: Job) -> Fraction:
    """Solid; it is 4 in thick."""
    return job.old_slab * job.copies * 4 / FT2_IN_PER_YD3


def chipped(job: Job) -> Fraction:
    """Solid, off the footing."""
    length, width, top, *_ = job.footing
    return length * width * job.copies * max(ZERO, 2 - top) / FT2_IN_PER_YD3


def loose(job: Job) -> Fraction:
    """Everything that leaves, as it lies on a vehicle."""
    swell = 1 + Fraction(SOILS[job.soil][1], 100)
    green = brush(job) + Fraction(11, 10) * balls(job)
    return green + hauled_soil(job) * swell + (old_slab(job) + chipped(job)) * BULKING


def tons(job: Job) -> Fraction:
    """Everything that leaves, by weight, damp."""
    green = brush(job) * 350 + balls(job) * 1100
    soil = hauled_soil(job) * SOILS[job.soil][0] * MOISTURES["damp"]
    return (green + soil + (old_slab(job) + chipped(job)) * CONCRETE_LB) / 2000


def loads(job: Job, company: CompanyBook) -> int:
    """All mixed, on the one trailer."""
    return max(up(loose(job) / company.box), up(tons(job) / company.payload))


def rock(job: Job) -> tuple[Fraction, Fraction]:
    """Tons needed, and tons bought by the half ton; over a footing lies only what fits between it and the slab."""
    length, width, *_ = job.footing
    missing = job.base - max(ZERO, min(job.base, job.cover - job.mean))
    needed = (
        (job.area * job.base - length * width * job.copies * missing)
        / FT2_IN_PER_YD3
        * Fraction(19, 10)
        * Fraction(105, 100)
    )
    return needed, Fraction(up(needed * 2), 2)


def rock_trips(job: Job, company: CompanyBook) -> int:
    """Up to three tons are fetched; more is delivered."""
    bought = rock(job)[1]
    return up(bought / company.payload) if bought <= 3 else 0


def joints(job: Job) -> Fraction:
    """Length of all joints, both ways: no panel longer or wider than thickness allows, nor long for its width."""
    run, width = max(job.length, job.width), min(job.length, job.width)
    limit = min(30 * (job.thickness + job.other_thickness) / 2 / 12, Fraction(15))
    along = up(width / limit) - 1
    apart = min(limit, max(Fraction(3, 2) * width / (along + 1), Fraction(4)))
    return ((up(run / apart) - 1) * width + along * run) * job.copies


def dowels(job: Job) -> int:
    """End clearance 6 in: two at the ends and as many between as the spacing asks; one on a short piece."""
    count = 0
    for edge in job.edges:
        if edge.spacing is None or edge.length < 1:
            continue
        usable = edge.length - 1
        each = up(usable * 12 / edge.spacing) + 1 if usable >= Fraction(1, 2) else 1
        count += each * edge.repeats * job.copies
    return count


def bonded(job: Job) -> Fraction:
    """The top of a footing that the slab is bonded to, all coats; none at or below the slab's underside."""
    length, width, _, _, treated = job.footing
    lies_within = treated == "bonding agent" and job.cover < job.mean
    return length * width * job.copies * job.bond_coats if lies_within else ZERO


def slip_sheet(job: Job) -> Fraction:
    """The top of a footing that the slab slides on."""
    length, width, _, _, treated = job.footing
    return length * width * job.copies if treated == "bond breaker" and job.cover < job.mean else ZERO


def amounts(job: Job) -> dict[str, Fraction]:
    """How much there is of each task."""
    by, other = ("machine", "hand") if job.machine else ("hand", "machine")
    bags = job.method == "bags"
    formed = job.along("form")
    return {
        "layout": job.area,
        "cap lines": Fraction(job.caps),
        "cut brush": brush(job),
        "grub roots": Fraction(job.plants[0] if job.plants[1] else 0),
        "demolition saw cut": job.saw_cut,
        "break out slab": old_slab(job),
        "chip footings": chipped(job) * (2 if job.footing[3] == "yes" else 1),
        f"dig by {by}": dug(job),
        f"dig by {other}": ZERO,
        f"load by {by}": loose(job),
        f"load by {other}": ZERO,
        "place base rock": rock(job)[0],
        "set forms": formed,
        "drill dowels": Fraction(dowels(job)),
        "install isolation joints": job.along("wall", "building"),
        "lay bond breaker": slip_sheet(job),
        "lay vapor retarder": ZERO,
        "place reinforcing bars": ZERO,
        "place wire mesh": ZERO,
        "apply bonding agent": bonded(job),
        "protect existing walk": Fraction(1 if job.along("existing") else 0),
        "place concrete": ZERO if bags else elapsed(job) * job.placing,
        "mix bags": elapsed(job) * 2 if bags else ZERO,
        "tool joints": ZERO if job.sawn else joints(job),
        "saw-cut joints": joints(job) if job.sawn else ZERO,
        "apply curing compound": job.area,
        "strip forms": formed,
        "clean up": Fraction(1),
        "apply sealer": job.area * job.sealer_coats,
        "unforeseen conditions": job.unknown,
    }


@cache
def hours(job: Job) -> dict[str, Fraction]:
    """Hours of each task."""
    worked = {task: amount * Fraction(RATES[task]) for task, amount in amounts(job).items()}
    worked["layout"] = max(LEAST_LAYOUT, worked["layout"])
    worked["finish concrete"] = job.area / FINISHED_IN_AN_HOUR
    return worked


def mix(job: Job, company: CompanyBook) -> Fraction:
    """An hour of the crew as it is mixed."""
    people = job.placing + job.finishing
    return (job.placing * company.laborer + job.finishing * company.finisher) / people


def cost(job: Job, company: CompanyBook) -> dict[str, Fraction]:
    """What each task costs, to the cent; where forms are stripped, who strips them cleans up."""
    paid = PAID | ({"clean up": "laborer"} if job.along("form") else {})
    rates = {"laborer": company.laborer, "finisher": company.finisher, "crew mix": mix(job, company)}
    return {task: cents(worked * rates[paid.get(task, "crew mix")]) for task, worked in hours(job).items()}


def machine_hours(job: Job) -> dict[str, Fraction]:
    """Each machine as long as its own tasks; the generator only where there is no power."""
    worked = hours(job)
    mixing = elapsed(job) if job.method == "bags" else ZERO
    plugged_in = worked["chip footings"] + worked["drill dowels"] + mixing
    return {
        "demolition hammer": worked["break out slab"],
        "chipping hammer": worked["chip footings"],
        "concrete saw": worked["demolition saw cut"] + worked["saw-cut joints"],
        "plate compactor": worked["place base rock"],
        "mixer": mixing,
        "generator": ZERO if job.power else plugged_in,
        "mini excavator": worked["dig by machine"] + worked["load by machine"],
    }


def rented(needed: Fraction, prices: Rental, least_days: int = 1) -> tuple[str, int, Fraction] | None:
    """How a machine is rented, how many of it, and what that costs; ``None`` where no price fits.

    A machine that loads stays until the last load has left.
    """
    if not needed:
        return "none", 0, ZERO
    days = max(up(needed / 8), least_days)
    ways = [
        ("half day", 1, prices.half if millionth(needed) <= 4 and least_days <= 1 else None),
        ("daily", days, prices.day),
        ("weekly", up(Fraction(days, 5)), prices.week),
    ]
    priced = [(way, count, cents(count * price)) for way, count, price in ways if price is not None]
    return min(priced, key=lambda way: way[2]) if priced else None


def board(job: Job) -> str:
    """By the thicker edge."""
    thicker = max(job.thickness, job.other_thickness)
    return "2x4" if thicker <= 4 else "2x6" if thicker <= 6 else "2x8"


def stakes(edge: Edge, job: Job) -> int:
    """A stake to start each run, and one for every three feet, or for every foot and a half of a curve."""
    if edge.kind != "form" or not edge.length:
        return 0
    return (up(edge.length / (Fraction(3, 2) if edge.curved else 3)) + 1) * edge.repeats * job.copies


def trucks(job: Job) -> int:
    """Of nine yards."""
    return 0 if job.method == "bags" else up(ordered(job) / 9)


def wash_water(job: Job) -> Fraction:
    """Gallons: ten a truck, 35 for a pump, eight for tools."""
    return Fraction(10 * trucks(job) + (35 if job.method == "pump" else 0) + 8)
