"""Houses and jobs drawn by chance, the same every time, with limits met exactly far more often than chance would."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from random import Random
from typing import TypeVar

from books import Rows, line
from reference_haul import MOISTURES, SOILS, CompanyBook, Edge, Job, Pack, Vehicle

Choice = TypeVar("Choice")
AREA_COLUMNS = (
    *("length ft", "width ft", "thickness in", "height above grade in", "base in"),
    *("quantity", "old slab ft2", "old slab thickness in"),
)
EDGE_COLUMNS = (
    *("length ft", "quantity", "dowel spacing in", "end distance in", "embedment in"),
    *("projection in", "bar diameter in", "drill diameter in"),
)
LIQUIDS = {"Bonding": "Bonding agent", "Curing": "Curing compound", "Sealing": "Sealer"}
"""What the three liquids are called in the program and on Prices."""


def random_company(chance: Random) -> CompanyBook:
    """A company book."""
    return CompanyBook(
        tuple(_vehicle(chance, f"vehicle {number}") for number in range(1, 4)),
        {liquid: _packs(chance) for liquid in LIQUIDS},
        spare=Fraction(chance.choice([0, 5, 10])),
        stock=Fraction(chance.choice([120, 240, 240])),
        holes_a_bit=Fraction(chance.choice([20, 40])),
        dowels_a_tube=Fraction(chance.choice([10, 18])),
        curing_coverage=Fraction(chance.choice([150, 200, 300])),
    )


def _vehicle(chance: Random, name: str) -> Vehicle:
    return Vehicle(
        name,
        _perhaps(chance, 0.9, [Fraction(2), Fraction(5, 2), Fraction(4), Fraction(5)]),
        chance.choice([Fraction(1), Fraction(1), Fraction(11, 10), Fraction(23, 20)]),
        _perhaps(chance, 0.9, [Fraction(1), Fraction(5, 4), Fraction(9, 4), Fraction(9, 2)]),
        _perhaps(chance, 0.8, [(Fraction(8), Fraction(5)), (Fraction(12), Fraction(6))]),
    )


def _packs(chance: Random) -> tuple[Pack, Pack]:
    """Two sizes; often the large one costs just what its small ones do, or a dollar more or less."""
    small_holds = chance.choice([Fraction(1, 2), Fraction(1), Fraction(1), Fraction(5, 4), Fraction(2), Fraction(2)])
    large_holds = chance.choice([Fraction(5, 2), Fraction(3), Fraction(4), Fraction(5), Fraction(5)])
    small = Fraction(chance.choice([2400, 3150, 4400]), 100)
    large = small * chance.choice([Fraction(5, 2), Fraction(5, 2), Fraction(3), Fraction(4)]) + chance.choice(
        [-8, -1, 0, 0, 1]
    )
    return _pack(chance, small, small_holds), _pack(chance, large, large_holds)


def _pack(chance: Random, price: Fraction, holds: Fraction) -> Pack:
    """A pack that may lack its price, or both: a price without a size is refused."""
    known, sized = chance.random() < 0.88, chance.random() < 0.95
    return Pack(price if known and sized else None, holds if sized else None)


def drawn_job(chance: Random, company: CompanyBook) -> Job:
    """A job that the rules take as it is: a footing no larger than its area, a root ball no larger than its hole."""
    length, width = _tenths(chance, 6, 60), _tenths(chance, 2, 20)
    if chance.random() < 0.4:
        length, width = Fraction(chance.choice([20, 25, 30, 40])), Fraction(chance.choice([5, 10, 15, 25]))
    return Job(
        chance.choice(company.vehicles),
        length,
        width,
        Fraction(chance.choice([7, 8, 8, 8, 10, 12]), 2),
        Fraction(chance.choice([-1, 0, 0, 0, 2, 8])),
        Fraction(chance.choice([0, 0, 2, 4])),
        chance.choice([1, 1, 2, 3]),
        # at 4 in, 40 ft2 weigh a ton and 101 1/4 ft2 fill two loose yards
        chance.choice([Fraction(0), Fraction(40 * chance.randint(1, 9)), Fraction(405, 4), Fraction(405, 2)]),
        Fraction(4),
        chance.choice(list(SOILS)),
        chance.choice(list(MOISTURES)),
        _plants(chance),
        _footing(chance, length, width),
        chance.choice([0, 1, 2, 3]),
        chance.choice([0, 1, 2]),
        tuple(_edge(chance) for _ in range(chance.randint(1, 4))),
    )


def _plants(chance: Random) -> tuple[int, Fraction, Fraction, Fraction, Fraction, Fraction]:
    """Nine bushes of 3 by 3 by 4 ft are three loose yards, with or without their roots."""
    ball = chance.choice([Fraction(0), Fraction(0), Fraction(3, 2)])
    return chance.choice([0, 0, 3, 6, 9, 12]), Fraction(3), Fraction(3), Fraction(4), ball, Fraction(1)


def _footing(chance: Random, length: Fraction, width: Fraction) -> tuple[Fraction, Fraction, Fraction, int]:
    return length, width / 2, Fraction(chance.choice([-1, 0, 1, 2, 3, 6])), chance.choice([0, 1, 2])


def _edge(chance: Random) -> Edge:
    if chance.random() < 0.3:
        return Edge("form", _tenths(chance, 1, 60), chance.choice([1, 2]))
    spacing = Fraction(chance.choice([12, 18, 24]))
    clearance = Fraction(chance.choice([3, 6, 9]))
    spaces = spacing * chance.randint(0, 30) / 12
    # between the end dowels: whole spaces, about the least for two dowels, or anything
    usable = chance.choice([spaces, Fraction(1, 2), Fraction(49, 100), _tenths(chance, 0, 40)])
    length = chance.choice([usable + 2 * clearance / 12] * 3 + [Fraction(1), Fraction(99, 100)])
    return Edge(
        "existing",
        length,
        chance.choice([1, 1, 2]),
        spacing if chance.random() < 0.85 else None,
        clearance,
        embed=chance.choice([Fraction(6), Fraction(6), Fraction(7)]),
        projection=chance.choice([Fraction(6), Fraction(6), Fraction(7), Fraction(8)]),
        bar=chance.choice([Fraction(3, 8), Fraction(3, 8), Fraction(1, 2)]),
        hole=chance.choice([None, Fraction(3, 8), Fraction(1, 2), Fraction(5, 8)]),
    )


def _tenths(chance: Random, low: int, high: int) -> Fraction:
    return Fraction(chance.randint(low * 10, high * 10), 10)


def _perhaps(chance: Random, share: float, choices: Sequence[Choice]) -> Choice | None:
    return chance.choice(choices) if chance.random() < share else None


def company_tables(company: CompanyBook) -> dict[str, Rows]:
    """The sheets of a company book."""
    vehicles: list[list[object]] = [
        [
            each.name,
            *_cells([each.box, each.heap, each.payload]),
            *_cells(each.bed or (None, None)),
        ]
        for each in company.vehicles
    ]
    factors = {
        "CuttingList.spare_share": company.spare,
        "CuttingList.stock_length": company.stock,
        "DowelNeeds.holes_per_bit": company.holes_a_bit,
        "DowelNeeds.dowels_per_cartridge": company.dowels_a_tube,
        "Curing.coverage": company.curing_coverage,
    }
    return {
        "Vehicles": [
            ["vehicle", "struck bed capacity yd3", "heaped factor", "payload ton", "bed length ft", "bed width ft"],
            *vehicles,
        ],
        "Prices": [
            ["item", "price", "unit", "size"],
            *(
                [f"{LIQUIDS[liquid]}, {size} pail", _typed(pack.price), "pack", _typed(pack.holds)]
                for liquid, both in company.packs.items()
                for size, pack in zip(("small", "5-gal"), both, strict=True)
            ),
        ],
        "Factors": [["factor", "value"], *([line(name).label, _typed(value)] for name, value in factors.items())],
    }


def week_tables(jobs: Sequence[tuple[str, Job]]) -> dict[str, Rows]:
    """The sheets of a jobs book for jobs with their ids."""
    date = "2026-04-13"
    return {
        "Jobs": [["job", "bid date", "soil"], *([name, date, job.soil] for name, job in jobs)],
        "Site conditions": [
            ["job", "fact", "value"],
            *([name, fact, value] for name, job in jobs for fact, value in _facts(job)),
        ],
        "Areas": [
            ["job", *AREA_COLUMNS],
            *([name, *_cells(_measures(job))] for name, job in jobs),
        ],
        "Plants": [
            ["job", "quantity", "width ft", "depth ft", "height ft", "root ball ft", "ball height ft"],
            *([name, *_cells(job.plants)] for name, job in jobs),
        ],
        "Footings": [
            ["job", "length ft", "width ft", "depth to top of footing in", "exposed sides"],
            *([name, *_cells(job.footing)] for name, job in jobs),
        ],
        "Edges": [
            ["job", "kind", *EDGE_COLUMNS],
            *([name, edge.kind, *_cells(_edge_measures(edge))] for name, job in jobs for edge in job.edges),
        ],
    }


def _facts(job: Job) -> list[tuple[str, object]]:
    return [
        ("Allowed vehicle 1", job.vehicle.name),
        ("Moisture", job.moisture),
        ("Bonding coats", job.bond_coats),
        ("Sealer coats", job.sealer_coats),
    ]


def _measures(job: Job) -> list[Fraction | int]:
    return [
        *(job.length, job.width, job.thickness, job.above, job.base),
        *(job.copies, job.old_slab, job.old_thickness),
    ]


def _edge_measures(edge: Edge) -> list[Fraction | int | None]:
    return [
        *(edge.length, edge.repeats, edge.spacing, edge.clearance, edge.embed),
        *(edge.projection, edge.bar, edge.hole),
    ]


def _cells(numbers: Iterable[Fraction | int | None]) -> list[float | None]:
    return [_typed(each) for each in numbers]


def _typed(number: Fraction | int | None) -> float | None:
    """As the cell holds it: the nearest float, which the program reads as the decimals that it shows."""
    return None if number is None else float(number)
