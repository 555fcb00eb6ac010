"""Bids drawn at random, seeded: everything that money hangs on, priced and taxed one way or another."""

from __future__ import annotations

import random
from collections.abc import Iterator
from pathlib import Path

from books import Rows, intake_from, jobs_of
from calc.model.results import JobValues
from priced_company import PRICED

WEEKS, JOBS_A_WEEK = 10, 30


def drawn_bids(folder: Path) -> Iterator[JobValues]:
    """Three hundred jobs, thirty to a company book whose factors and taxes differ from book to book."""
    for seed in range(WEEKS):
        draw = random.Random(seed)
        place = folder / str(seed)
        place.mkdir()
        yield from jobs_of(intake_from(place, _week(draw), PRICED | _company(draw)))


def _company(draw: random.Random) -> dict[str, Rows]:
    prices = [[*row, None] for row in PRICED["Prices"]]
    prices[0][-1] = "taxable"
    for row in prices[1:]:
        row[1] = round(draw.uniform(0.5, 250), 2)
        row[-1] = draw.choice(["yes", "no", None])
    factors = [
        ["factor", "value"],
        ["Sales tax", draw.choice([0, 6.5, 8.875])],
        ["Contingency", draw.choice([0, 5, 7.5])],
        ["Overhead", draw.choice([10, 12, 18.5])],
        ["Margin", draw.choice([10, 18, 33])],
        ["Minimum job charge", draw.choice([0, 950, 20000])],
        ["Price rounding", draw.choice([1, 5, 25])],
    ]
    company: Rows = [["fact", "value"], ["Deposit cap", draw.choice([500, 1000, 1e6])]]
    return {"Prices": prices, "Factors": factors, "Company": company}


def _week(draw: random.Random) -> dict[str, Rows]:
    names = [f"J{number}" for number in range(JOBS_A_WEEK)]
    areas: list[list[object]] = [
        ["job", "area", "length ft", "width ft", "thickness in", "base in", "quantity", "formed ft", "wall ft",
         "doweled edge ft", "doweled edges", "dowel spacing in", "old slab ft2", "old slab thickness in"]
    ]  # fmt: skip
    for name in names:
        for area in range(draw.randint(1, 3)):
            length = round(draw.uniform(3, 60), 2)
            areas.append([
                name, f"A{area}", length, round(draw.uniform(2, 12), 2), draw.choice([3.5, 4, 5, 6]),
                draw.choice([0, 2, 4]), draw.choice([1, 1, 2]), length, draw.choice([0, 4]), length,
                draw.choice([1, 1, 2]), 24, draw.choice([0, 10]), 4,
            ])  # fmt: skip
    facts: list[list[object]] = [["job", "fact", "value"]]
    changes: list[list[object]] = [["job", "what", "quantity", "rate $", "signed"]]
    for name in names:
        facts.append([name, "Permit", draw.choice([0, 85, 140.55])])
        facts.append([name, "Retainage", draw.choice([0, 5, 10])])
        facts.append([name, "Sealer coats", draw.choice([0, 1])])
        if draw.random() < 0.3:
            facts.append([name, "Job margin", draw.choice([12, 25])])
        if draw.random() < 0.5:
            changes.append(
                [name, "more", draw.randint(1, 9), round(draw.uniform(-90, 90), 2), draw.choice(["yes", "no"])]
            )
    return {
        "Jobs": [
            ["job", "bid date", "fiber"],
            *([name, "2026-04-13", draw.choice(["none", "micro"])] for name in names),
        ],
        "Areas": areas,
        "Site conditions": facts,
        "Changes": changes,
    }
