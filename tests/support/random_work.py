"""Houses and jobs with work in them, drawn by chance, the same every time; limits are met exactly far more often."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from random import Random

from books import Rows
from calc.trade.levels import TOOL
from reference_haul import SOILS
from reference_work import CompanyBook, Edge, Job, Rental

FIRM = "dump trailer"


def random_company(chance: Random) -> CompanyBook:
    """A company book; some machines lack a price or all of them."""
    return CompanyBook(
        Fraction(chance.choice([4600, 3875]), 100),
        Fraction(chance.choice([5800, 4750]), 100),
        Fraction(chance.choice([1, 2, 4])),
        Fraction(chance.choice([2, 5])),
        {tool: _rental(chance) for tool in TOOL.axis.words},
    )


def _rental(chance: Random) -> Rental:
    """Often two days cost just what a week does, and half a day what a day does."""
    day = Fraction(chance.choice([60, 75, 90]))
    half = chance.choice([day, day * 2 / 3, None])
    week = chance.choice([day * 2, day * 3, day * 4, None])
    return Rental(half, day if chance.random() < 0.85 else None, week)


def drawn_job(chance: Random) -> Job:
    """A job that the rules take as it is: a footing no larger than its area, a root ball no larger than its hole."""
    length, width = Fraction(chance.choice([12, 20, 27, 36, 60, 81])), Fraction(chance.choice([3, 4, 6, 10]))
    method = chance.choice(["chute", "chute", "pump", "bags"])
    copies = chance.choice([1, 1, 1, 2])
    thickness, other = (Fraction(chance.choice([7, 8, 8, 9, 12, 13]), 2) for _ in range(2))
    placing, finishing = chance.choice([1, 2, 3]), chance.choice([1, 2])
    # at 4 in, 202 1/2 ft2 take four hours to break, 405 take eight
    return Job(
        length,
        width,
        thickness,
        other,
        Fraction(chance.choice([0, 0, 2, 4])),
        copies,
        chance.choice([Fraction(0), Fraction(405, 2), Fraction(405), Fraction(chance.randint(1, 60))]),
        (chance.choice([0, 0, 3, 6]), chance.choice([Fraction(0), Fraction(3, 2)])),
        (
            chance.choice([length, length / 2]),
            width / 2,
            Fraction(chance.choice([-1, 0, 1, 2, 3, 6])),
            chance.choice(["yes", "no", "unknown"]),
            chance.choice(["bonding agent", "bond breaker", "nothing"]),
        ),
        chance.choice(list(SOILS)),
        chance.random() < 0.3,
        chance.random() < 0.4,
        chance.random() < 0.4,
        placing + finishing + chance.choice([0, 1]),
        placing,
        finishing,
        method,
        chance.choice([0, 0, 1, 3]),
        Fraction(chance.choice([0, 0, 12, 25])),
        Fraction(chance.choice([0, 0, 2, 5])),
        chance.choice([0, 1, 2]),
        chance.choice([0, 0, 1, 2]),
        chance.random() < 0.4,
        tuple(_edge(chance) for _ in range(chance.randint(1, 4))),
    )


def _edge(chance: Random) -> Edge:
    kind = chance.choice(["form", "form", "existing", "wall", "building"])
    spacing = Fraction(chance.choice([12, 18, 24])) if kind == "existing" and chance.random() < 0.8 else None
    length = chance.choice(
        [Fraction(0), Fraction(3, 4), Fraction(1), Fraction(12), Fraction(chance.randint(10, 400), 10)]
    )
    return Edge(kind, length, chance.choice([1, 1, 2]), kind == "form" and chance.random() < 0.3, spacing)


def company_tables(company: CompanyBook) -> dict[str, Rows]:
    """The sheets of a company book: one own trailer, one site that takes everything, wages and machines."""
    rentals = [
        [f"Rental for {way}, {tool}", float(price), "each", None]
        for tool, each in company.rentals.items()
        for way, price in (("half a day", each.half), ("a day", each.day), ("a week", each.week))
        if price is not None
    ]
    return {
        "Vehicles": [
            ["vehicle", "struck bed capacity yd3", "payload ton", "hourly rate $/h", "mileage rate $/mile"],
            [FIRM, float(company.box), float(company.payload), 38, 0.9],
        ],
        "Disposal sites": [
            ["site", "kind", "per ton $/ton", "one-way time min", "one-way distance mile", "turnaround time min"],
            ["transfer yard", "mixed", 40, 18, 9, 15],
        ],
        "Wages": [
            ["role", "private $/h"],
            ["laborer", float(company.laborer)],
            ["finisher", float(company.finisher)],
        ],
        "Prices": [["item", "price", "unit", "size"], ["Concrete bag", 6.5, "bag", 0.6], *rentals],
    }


def week_tables(jobs: Sequence[tuple[str, Job]]) -> dict[str, Rows]:
    """The sheets of a jobs book for jobs with their ids."""
    date = "2026-04-13"
    return {
        "Jobs": [
            ["job", "bid date", "soil", "dug by", "irrigation lines to cap"],
            *([name, date, job.soil, "machine" if job.machine else "hand", job.caps] for name, job in jobs),
        ],
        "Site conditions": [
            ["job", "fact", "value"],
            *([name, fact, value] for name, job in jobs for fact, value in _facts(job)),
        ],
        "Areas": [
            [
                *("job", "length ft", "width ft", "thickness in", "other thickness in", "base in", "quantity"),
                *("old slab ft2", "old slab thickness in"),
            ],
            *(
                [
                    name,
                    *map(float, (job.length, job.width, job.thickness, job.other_thickness, job.base, job.copies)),
                    float(job.old_slab),
                    4,
                ]
                for name, job in jobs
            ),
        ],
        "Plants": [
            ["job", "quantity", "width ft", "depth ft", "height ft", "root ball ft", "ball height ft"],
            *([name, job.plants[0], 3, 3, 4, float(job.plants[1]), 1] for name, job in jobs),
        ],
        "Footings": [
            ["job", "length ft", "width ft", "depth to top of footing in", "reinforced", "treated with"],
            *([name, *map(float, job.footing[:3]), *job.footing[3:]] for name, job in jobs),
        ],
        "Edges": [
            ["job", "kind", "length ft", "quantity", "curved", "dowel spacing in"],
            *([name, *_cells(edge)] for name, job in jobs for edge in job.edges),
        ],
    }


def _cells(edge: Edge) -> list[object]:
    spacing = None if edge.spacing is None else float(edge.spacing)
    return [edge.kind, float(edge.length), edge.repeats, "yes" if edge.curved else "no", spacing]


def _facts(job: Job) -> list[tuple[str, object]]:
    yes_no = {True: "yes", False: "no"}
    return [
        ("Order rule", "percent"),
        ("Placing method", job.method),
        ("Placing reason", "drawn by chance"),
        ("Haul plan", "all mixed"),
        ("Haul with", FIRM),
        ("Haul reason", "drawn by chance"),
        ("Keep backfill on site", yes_no[job.keep_backfill]),
        ("Power on site", yes_no[job.power]),
        ("Crew", job.crew),
        ("Placing crew", job.placing),
        ("Finishers", job.finishing),
        ("Demolition saw cut", float(job.saw_cut)),
        ("Unforeseen-conditions allowance", float(job.unknown)),
        ("Bonding coats", job.bond_coats),
        ("Sealer coats", job.sealer_coats),
        ("Control joints", "saw-cut" if job.sawn else "tooled"),
    ]
