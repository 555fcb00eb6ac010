"""Loads, dowels and packs worked out plainly, in exact fractions: written only to hold the program's rules against.

Nothing here comes from the program. Lengths are in feet, thicknesses, spacings and bars in inches, volumes in cubic
yards, weights in short tons, liquids in gallons, money in dollars. Every count is rounded to a millionth before it is
rounded up or down.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import product
from math import ceil, floor, pi

SOILS = {
    "topsoil": (2500, 25),
    "loam": (2900, 25),
    "clay": (3300, 33),
    "sand": (3000, 12),
    "gravelly": (3200, 12),
}
"""Pounds in a bank yard, and swell in percent."""
MOISTURES = {"dry": Fraction(92, 100), "damp": Fraction(1), "wet": Fraction(115, 100)}
CONCRETE_LB = 4050
BULKING = Fraction(8, 5)
FT2_IN_PER_YD3 = 324
KERF = Fraction(1, 8)
PLANNED = Fraction(9, 10)
"""The share of its payload that a vehicle is loaded to, since the weight of soil scatters."""
BOND_COVERAGE, SEALER_COVERAGE = 200, 250
PI = Fraction(pi)


def millionth(number: Fraction) -> Fraction:
    """To the nearest millionth, halves up."""
    return Fraction(floor(number * 1_000_000 + Fraction(1, 2)), 1_000_000)


def up(number: Fraction) -> int:
    """The next whole number."""
    return ceil(millionth(number))


def down(number: Fraction) -> int:
    """The whole number below."""
    return floor(millionth(number))


@dataclass(frozen=True)
class Vehicle:
    """What hauls; ``None`` is what the company book does not say."""

    name: str
    box: Fraction | None
    heap: Fraction
    payload: Fraction | None
    bed: tuple[Fraction, Fraction] | None


@dataclass(frozen=True)
class Pack:
    """One size of a liquid: what it costs and what it holds, ``None`` where the company book does not say."""

    price: Fraction | None
    holds: Fraction | None

    @property
    def known(self) -> bool:
        """Whether it can be bought at all."""
        return self.price is not None and self.holds is not None


@dataclass(frozen=True)
class CompanyBook:
    """A company book: vehicles, packs (small, large) by liquid, and the factors that it takes otherwise than usual."""

    vehicles: tuple[Vehicle, ...]
    packs: dict[str, tuple[Pack, Pack]]
    spare: Fraction = Fraction(5)
    stock: Fraction = Fraction(240)
    holes_a_bit: Fraction = Fraction(40)
    dowels_a_tube: Fraction = Fraction(18)
    curing_coverage: Fraction = Fraction(200)


@dataclass(frozen=True)
class Edge:
    """An edge of the area: formed, or an old walk that it is doweled to."""

    kind: str
    length: Fraction
    repeats: int = 1
    spacing: Fraction | None = None
    clearance: Fraction = Fraction(6)
    embed: Fraction = Fraction(6)
    projection: Fraction = Fraction(6)
    bar: Fraction = Fraction(3, 8)
    hole: Fraction | None = None


@dataclass(frozen=True)
class Job:
    """One strip, perhaps over a footing, with its edges and a row of plants."""

    vehicle: Vehicle
    length: Fraction
    width: Fraction
    thickness: Fraction
    above: Fraction
    base: Fraction
    copies: int
    old_slab: Fraction
    old_thickness: Fraction
    soil: str
    moisture: str
    plants: tuple[int, Fraction, Fraction, Fraction, Fraction, Fraction]
    """How many, brush width, depth and height, ball diameter and height."""
    footing: tuple[Fraction, Fraction, Fraction, int]
    """Length, width, depth of its top below the new top, exposed sides; the cover wanted is 2 in."""
    bond_coats: int
    sealer_coats: int
    edges: tuple[Edge, ...] = field(default=())

    @property
    def area(self) -> Fraction:
        """Of all copies."""
        return self.length * self.width * self.copies


@dataclass(frozen=True)
class Pile:
    """What goes to one place."""

    loose: Fraction
    tons: Fraction


def piles(job: Job) -> tuple[Pile, Pile, Pile]:
    """Green, soil and old concrete."""
    count, width, depth, height, ball, ball_height = job.plants
    brush = count * width * depth * height / 27 * Fraction(1, 4)
    balls = count * PI / 4 * ball**2 * ball_height * Fraction(67, 100) / 27
    green = Pile(brush + Fraction(11, 10) * balls, (brush * 350 + balls * 1100) / 2000)
    bank = max(Fraction(0), _dug(job) - balls)
    pounds, swell = SOILS[job.soil]
    soil = Pile(bank * (1 + Fraction(swell, 100)), bank * pounds * MOISTURES[job.moisture] / 2000)
    old = job.old_slab * job.copies * job.old_thickness / FT2_IN_PER_YD3 + _chipped(job)
    return green, soil, Pile(old * BULKING, old * CONCRETE_LB / 2000)


def _dug(job: Job) -> Fraction:
    """Soil in the bank: the hole, less the old slab and the footing that lie in it."""
    floor_depth = job.thickness + job.base
    depth = max(Fraction(0), floor_depth - job.above)
    formed = sum((edge.length * edge.repeats for edge in job.edges if edge.kind == "form"), Fraction(0)) * job.copies
    hole = (job.area + formed / 4) * depth
    length, width, top, _ = job.footing
    footing = length * width * job.copies * max(Fraction(0), floor_depth - max(job.above, top))
    return max(Fraction(0), hole - job.old_slab * job.copies * job.old_thickness - footing) / FT2_IN_PER_YD3


def _chipped(job: Job) -> Fraction:
    length, width, top, _ = job.footing
    return length * width * job.copies * max(Fraction(0), 2 - top) / FT2_IN_PER_YD3


def loads(pile: Pile, vehicle: Vehicle) -> tuple[int, int]:
    """Loads by room and by weight; the more of the two are driven."""
    by_room = up(pile.loose / (vehicle.box * vehicle.heap)) if vehicle.box else 0
    by_weight = up(pile.tons / (vehicle.payload * PLANNED)) if vehicle.payload else 0
    return by_room, by_weight


def fill_line(pile: Pile, vehicle: Vehicle) -> Fraction:
    """How many loose yards may ride at once; 0 where there is no pile or no payload to say so."""
    if not pile.tons or not vehicle.payload:
        return Fraction(0)
    by_weight = vehicle.payload * PLANNED / (pile.tons / pile.loose)
    return min(by_weight, vehicle.box * vehicle.heap) if vehicle.box else by_weight


def on_one_piece(edge: Edge) -> int:
    """Dowels on one piece of an edge."""
    if edge.spacing is None:
        return 0
    usable = edge.length - 2 * edge.clearance / 12
    if usable >= Fraction(1, 2):
        return up(usable * 12 / edge.spacing) + 1
    return 1 if edge.length >= 1 else 0


def dowels(edge: Edge, job: Job) -> int:
    """Dowels on all pieces and copies of an edge."""
    return on_one_piece(edge) * edge.repeats * job.copies


def real_spacing(edge: Edge) -> Fraction:
    """Between dowels as they are set out, in inches; 0 where there are fewer than two."""
    count = on_one_piece(edge)
    return (edge.length * 12 - 2 * edge.clearance) / (count - 1) if count > 1 else Fraction(0)


def glued(edge: Edge) -> bool:
    """A hole larger than its bar is filled."""
    return edge.hole is not None and edge.hole > edge.bar


def ring(edge: Edge) -> Fraction:
    """Epoxy for one glued dowel, in cubic inches."""
    assert edge.hole is not None
    return PI / 4 * (edge.hole**2 - edge.bar**2) * edge.embed


def cutting_list(job: Job, company: CompanyBook) -> dict[tuple[Fraction, Fraction], tuple[int, int]]:
    """Pieces to cut and bars to buy, for each length and bar that the job has dowels of."""
    wanted: dict[tuple[Fraction, Fraction], int] = {}
    for edge in job.edges:
        kind = edge.embed + edge.projection, edge.bar
        wanted[kind] = wanted.get(kind, 0) + dowels(edge, job)
    cut = {}
    for (length, bar), count in wanted.items():
        pieces = up(count * (1 + company.spare / 100))
        cut[length, bar] = pieces, up(Fraction(pieces, down((company.stock + KERF) / (length + KERF))))
    return cut


def needs(job: Job, company: CompanyBook) -> dict[str, Fraction]:
    """Gallons of each liquid."""
    length, width, top, sides = job.footing
    cover = max(top, Fraction(2))
    touched = length * width + sides * length * (job.thickness - cover) / 12 if cover < job.thickness else Fraction(0)
    return {
        "Bonding": touched * job.copies * job.bond_coats / BOND_COVERAGE,
        "Curing": job.area / company.curing_coverage,
        "Sealing": job.area * job.sealer_coats / SEALER_COVERAGE,
    }


PieceGoods = tuple[int, int]
"""Small packs and large packs."""


def candidates(need: Fraction, small: Pack, large: Pack) -> list[PieceGoods]:
    """All small; all large; as many full large as the need holds and the rest small."""
    ways = []
    if small.known and small.holds:
        ways.append((up(need / small.holds), 0))
    if large.known and large.holds:
        ways.append((0, up(need / large.holds)))
    if small.known and large.known and small.holds and large.holds:
        full = down(need / large.holds)
        ways.append((up(max(Fraction(0), need - full * large.holds) / small.holds), full))
    return ways


def cost(bought: PieceGoods, small: Pack, large: Pack) -> Fraction:
    """What the packs cost."""
    return bought[0] * (small.price or Fraction(0)) + bought[1] * (large.price or Fraction(0))


def held(bought: PieceGoods, small: Pack, large: Pack) -> Fraction:
    """What the packs hold."""
    return bought[0] * (small.holds or Fraction(0)) + bought[1] * (large.holds or Fraction(0))


def cheapest(ways: Sequence[PieceGoods], small: Pack, large: Pack) -> PieceGoods:
    """The least cost, then the least held, then the first."""
    return min(ways, key=lambda each: (cost(each, small, large), held(each, small, large)))


def every_way(need: Fraction, small: Pack, large: Pack) -> Iterator[PieceGoods]:
    """All numbers of both packs, up to what the need could take of either, that hold the need."""
    most_small = up(need / small.holds) if small.known and small.holds else 0
    most_large = up(need / large.holds) if large.known and large.holds else 0
    for each in product(range(most_small + 1), range(most_large + 1)):
        if millionth(held(each, small, large)) >= millionth(need):
            yield each


def is_true_optimum(small: Pack, large: Pack) -> bool:
    """Whether the large pack is a whole number of small ones and no dearer by the gallon."""
    if small.price is None or large.price is None or not small.holds or not large.holds:
        return False
    times = large.holds / small.holds
    return times.denominator == 1 and large.price <= times * small.price
