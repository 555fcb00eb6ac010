"""Houses with vehicles and disposal sites, and jobs to haul for, drawn by chance, the same every time.

In half of the houses roads take no time, and gates charge by the load in steps of $25 or all the same by the ton: so
that whole plans cost the same or $25 more, and so that loads break a tie, which chance alone would not bring about.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from random import Random
from typing import TypeVar

from books import Rows
from reference_haul import MOISTURES, SOILS, Job
from reference_haul import Vehicle as Bare
from reference_plans import PLANS, CompanyBook, Site, Task, Vehicle

Choice = TypeVar("Choice")
ROADS = ("far", "near, by the load", "far", "near, by the ton")
"""What the houses are like, by turns."""
NOBODY = Bare("nobody", None, Fraction(1), None, None)
BID_DATE = "2026-04-13"


def random_company(chance: Random, roads: str) -> CompanyBook:
    """A company book; now and then one without wages."""
    near = roads != "far"
    waged = near or chance.random() < 0.8
    vehicles = [_vehicle(chance, f"vehicle {number}", near) for number in range(1, 3)]
    twin = chance.choice(vehicles)
    vehicles.append(replace(twin, name="twin"))
    kinds = [
        "mixed",
        "mixed",
        "green waste",
        "soil",
        "soil",
        "concrete debris",
        chance.choice(["green waste", "mixed", "concrete debris"]),
    ]
    sites = [_site(chance, f"site {number}", kind, roads) for number, kind in enumerate(kinds)]
    twin_site = chance.choice(sites)
    sites.append(replace(twin_site, name="twin site"))
    return CompanyBook(
        tuple(vehicles),
        tuple(sites),
        Fraction(46) if waged else None,
        Fraction(58) if waged else None,
        Fraction(40) if waged and chance.random() < 0.5 else None,
    )


def _vehicle(chance: Random, name: str, near: bool) -> Vehicle:
    """Now and then one that nobody measured, which must not win with no load at all."""
    hired = chance.random() < 0.4
    measured = chance.random() < 0.9
    return Vehicle(
        name,
        _perhaps(chance, 0.95 * measured, [Fraction(5, 2), Fraction(4), Fraction(5), Fraction(10)]),
        _perhaps(chance, 0.95 * measured, [Fraction(5, 4), Fraction(9, 4), Fraction(9, 2), Fraction(9)]),
        Fraction(0) if near else _perhaps(chance, 0.75, [Fraction(26), Fraction(38), Fraction(110)]),
        Fraction(0) if near else chance.choice([Fraction(0), Fraction(9, 10)]),
        hired,
        chance.choice([Fraction(0), Fraction(2), Fraction(4)]) if hired else Fraction(0),
    )


def _site(chance: Random, name: str, kind: str, roads: str) -> Site:
    minutes, miles, dwell = chance.choice([8, 20, 45, 75]), chance.randint(2, 20), 15
    if roads != "far":
        minutes = miles = dwell = 0
    known = chance.random() < 0.9
    by_ton = roads == "near, by the ton"
    ton, yard, load = _rates(chance, roads) if known else (None, None, None)
    return Site(
        name,
        kind,
        per_ton=ton,
        per_yard=yard,
        per_load=load,
        least=Fraction(0) if by_ton else chance.choice([Fraction(0), Fraction(25), Fraction(45)]),
        dirty=Fraction(0) if by_ton else chance.choice([Fraction(0), Fraction(25), Fraction(150)]),
        minutes=Fraction(minutes) if known or chance.random() < 0.5 else None,
        miles=Fraction(miles),
        dwell=Fraction(dwell),
        opens=chance.choice([None, Fraction(7), Fraction(10)]),
        closes=chance.choice([None, Fraction(11), Fraction(31, 2)]),
        wet=chance.random() < 0.8,
        roots=chance.random() < 0.8,
    )


def _rates(chance: Random, roads: str) -> tuple[Fraction | None, Fraction | None, Fraction | None]:
    """For a ton, a yard, a load: one of them."""
    rate = Fraction(18)
    if roads == "near, by the load":
        return None, None, Fraction(chance.choice([50, 75, 100]))
    if roads == "near, by the ton":
        return rate, None, None
    return chance.choice([(rate, None, None), (rate, None, None), (None, rate, None), (None, None, rate)])


def drawn_task(chance: Random, company: CompanyBook) -> Task:
    """A job with any of the three piles empty, and with a fleet or a plan named by hand."""
    length, width = Fraction(chance.choice([9, 18, 27, 54])), Fraction(chance.choice([6, 12, 15]))
    by_hand = chance.random() < 0.25
    return Task(
        Job(
            NOBODY,
            length,
            width,
            thickness=Fraction(4),
            above=Fraction(chance.choice([0, 0, 0, 4])),
            base=Fraction(0),
            copies=1,
            old_slab=min(length * width, chance.choice([Fraction(0), Fraction(0), Fraction(80), Fraction(1000)])),
            old_thickness=Fraction(4),
            soil=chance.choice(list(SOILS)),
            moisture=chance.choice(list(MOISTURES)),
            plants=(
                *(chance.choice([0, 3, 9]), Fraction(3), Fraction(3), Fraction(4)),
                *(chance.choice([Fraction(0), Fraction(3, 2)]), Fraction(1)),
            ),
            footing=(Fraction(0), Fraction(0), Fraction(6), 0),
            bond_coats=0,
            sealer_coats=0,
        ),
        chance.random() < 0.25,
        chance.choice([(), (), (company.vehicles[1],), company.vehicles[::2]]),
        chance.choice(list(PLANS)) if by_hand else None,
        chance.choice(company.vehicles) if by_hand and chance.random() < 0.5 else None,
    )


def _perhaps(chance: Random, share: float, choices: Sequence[Choice]) -> Choice | None:
    return chance.choice(choices) if chance.random() < share else None


def company_tables(company: CompanyBook) -> dict[str, Rows]:
    """The sheets of a company book."""
    return {
        "Vehicles": [
            [
                "vehicle",
                "struck bed capacity yd3",
                "payload ton",
                "hourly rate $/h",
                "mileage rate $/mile",
                "hired",
                "minimum hours h",
            ],
            *(
                [
                    *(each.name, *_cells(each.room, each.payload, each.hourly, each.mile)),
                    *(_said(each.hired), *_cells(each.least_hours)),
                ]
                for each in company.vehicles
            ),
        ],
        "Disposal sites": [
            [
                *("site", "kind", "per ton $/ton", "per yard $/yd3", "per load $/load", "minimum charge $/load"),
                *(
                    "contamination surcharge $/load",
                    "one-way time min",
                    "one-way distance mile",
                    "turnaround time min",
                    "opens h",
                    "closes h",
                ),
                *("accepts wet soil", "accepts roots and turf"),
            ],
            *(
                [each.name, each.kind, *_cells(*_figures(each)), *map(_said, (each.wet, each.roots))]
                for each in company.sites
            ),
        ],
        "Wages": [
            ["role", "private $/h"],
            ["laborer", *_cells(company.laborer)],
            ["finisher", *_cells(company.finisher)],
            ["driver", *_cells(company.driver)],
        ],
    }


def _figures(site: Site) -> list[Fraction | None]:
    return [
        *(site.per_ton, site.per_yard, site.per_load, site.least, site.dirty),
        *(site.minutes, site.miles, site.dwell, site.opens, site.closes),
    ]


def week_tables(tasks: Sequence[tuple[str, Task]]) -> dict[str, Rows]:
    """The sheets of a jobs book for jobs with their ids."""
    return {
        "Jobs": [["job", "bid date", "soil"], *([name, BID_DATE, task.job.soil] for name, task in tasks)],
        "Site conditions": [
            ["job", "fact", "value"],
            *([name, fact, said] for name, task in tasks for fact, said in _facts(task).items()),
        ],
        "Areas": [
            [
                "job",
                "length ft",
                "width ft",
                "thickness in",
                "height above grade in",
                "old slab ft2",
                "old slab thickness in",
            ],
            *([name, *_cells(*_measures(task.job))] for name, task in tasks),
        ],
        "Plants": [
            ["job", "quantity", "width ft", "depth ft", "height ft", "root ball ft", "ball height ft"],
            *([name, *_cells(*task.job.plants)] for name, task in tasks),
        ],
    }


def _measures(job: Job) -> list[Fraction]:
    return [job.length, job.width, job.thickness, job.above, job.old_slab, job.old_thickness]


def _facts(task: Task) -> dict[str, str]:
    facts = {"Moisture": task.job.moisture, "Turf in the dig": _said(task.turf)}
    facts |= {
        fact: vehicle.name
        for fact, vehicle in zip(("Allowed vehicle 1", "Allowed vehicle 2"), task.fleet, strict=False)
    }
    if task.plan:
        facts |= {"Haul plan": task.plan, "Haul reason": "drawn by lot"}
    if task.by:
        facts["Haul with"] = task.by.name
    return facts


def _said(answer: bool) -> str:
    return "yes" if answer else "no"


def _cells(*numbers: Fraction | int | None) -> list[float | None]:
    """As cells hold them."""
    return [None if each is None else float(each) for each in numbers]
