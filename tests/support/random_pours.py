"""Pours drawn by chance, the same every time, with limits met exactly far more often than chance would."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from random import Random
from typing import TypeVar

from books import COMPANY, Rows, line
from reference_placing import METHODS, CompanyBook, Job

Choice = TypeVar("Choice")


def random_company(chance: Random) -> CompanyBook:
    """A company book of prices and wages, some of it not filled."""
    fees = [(Fraction(2), Fraction(160)), (Fraction(4), Fraction(110)), (Fraction(6), Fraction(60))]
    return CompanyBook(
        mix=_perhaps(chance, 0.85, [Fraction(172), Fraction("148.75")]),
        pump_mix=Fraction(chance.choice([0, 9])),
        delivery=Fraction(chance.choice([0, 24, 85])),
        fees=tuple(chance.choice([fees, fees, []])),
        waiting=_perhaps(chance, 0.8, [Fraction(0), Fraction(2), Fraction("2.75")]),
        pump=(
            _perhaps(chance, 0.9, [Fraction(0), Fraction(40), Fraction(250)]),
            _perhaps(chance, 0.9, [Fraction(20), Fraction(165)]),
            Fraction(chance.choice([0, 4])),
            Fraction(chance.choice([0, 45])),
        ),
        bag=_perhaps(chance, 0.85, [(Fraction("6.45"), Fraction("0.6")), (Fraction("2.5"), Fraction("0.45"))]),
        mixer=Fraction(chance.choice([0, 75])),
        clean=Fraction(chance.choice([0, 30])),
        laborer=Fraction(chance.choice([0, 31, 46])),
        finisher=Fraction(58),
        tie=chance.choice([1, 150]),
    )


def drawn_job(chance: Random) -> Job:
    """A slab of a quarter of a yard to some twenty."""
    # 81 ft2 at 4 in are one yard, the largest pour by bags
    length, width = chance.choice(
        [(Fraction(9), Fraction(9)), (Fraction(12), Fraction(3)), (Fraction(10), Fraction(chance.randint(2, 15)))]
        + [(Fraction(chance.randint(200, 900), 10), Fraction(chance.randint(20, 160), 10))] * 3
    )
    weather = chance.random() < 0.7
    return Job(
        length,
        width,
        Fraction(chance.choice([4, 4, 4, 5, 6])),
        chance.choice(["risk", "percent", "percent", "fixed"]),
        Fraction(chance.choice([2, 6, 9, 18, 36]), chance.choice([1, 1, 1, 4, 8])),
        Fraction(chance.choice([10, 15, 25, 25, 45, 45, 45, 60, 85, 90, 110])),
        frozenset(name for name, share in zip(METHODS, (0.7, 0.7, 0.5), strict=False) if chance.random() < share),
        chance.choice([0, 1, 2, 2, 3, 3, 6]),
        # at 27 1/2 ft three barrows take just the free time of a yard
        chance.choice([Fraction(55, 2), Fraction(55, 2), Fraction(50), Fraction(0), Fraction(120), Fraction(250)]),
        chance.random() < 0.2,
        Fraction(chance.choice([0, 0, 5, 6])),
        chance.choice(["cheapest"] * 8 + list(METHODS)),
        chance.choice([1, 2, 2, 3]),
        chance.choice([1, 1, 2]),
        chance.choice(["", "", "accelerator", "retarder"]),
        Fraction(chance.choice([-5, 38, 70, 84, 85, 96])) if weather else None,
        _perhaps(chance, 0.9, [Fraction(each) for each in (42, 50, 55, 60, 78, 90, 97)]) if weather else None,
        _perhaps(chance, 0.9, [Fraction(each) for each in (20, 50, 100)]) if weather else None,
        _perhaps(chance, 0.9, [Fraction(each) for each in (0, 5, 12, 25)]) if weather else None,
    )


def _perhaps(chance: Random, share: float, choices: Sequence[Choice]) -> Choice | None:
    return chance.choice(choices) if chance.random() < share else None


def company_tables(company: CompanyBook) -> dict[str, Rows]:
    """The sheets of a company book."""
    set_up, hour, yard, pack = company.pump
    prices: list[tuple[str, Fraction | None, Fraction | None]] = [
        ("Ready-mix, 3500 psi", company.mix, None),
        ("Pea-gravel pump mix, added cost", company.pump_mix, None),
        ("Concrete delivery", company.delivery, None),
        ("Truck standby (wait time)", company.waiting, None),
        ("Pump set-up charge", set_up, None),
        ("Pump, per hour", hour, None),
        ("Pump, per yard", yard, None),
        ("Pump primer", pack, None),
        ("Rental for half a day, mixer", company.mixer, None),
        ("Rental for a day, mixer", company.mixer, None),
        ("Clean-up after bagged concrete", company.clean, None),
    ]
    for tier, (limit, dollars) in zip((1, 2, 3), company.fees, strict=False):
        prices.append((f"Short-load fee, tier {tier}", dollars, limit))
    if company.bag:
        prices.append(("Concrete bag", *company.bag))
    return {
        "Company": COMPANY["Company"],
        "Prices": [
            ["item", "price", "size"],
            *([item, float(price), size and float(size)] for item, price, size in prices if price is not None),
        ],
        "Wages": [
            ["role", "private $/h"],
            ["laborer", float(company.laborer)],
            ["finisher", float(company.finisher)],
        ],
        "Factors": [["factor", "value"], [line("MethodFit.tie").label, company.tie]],
    }


def week_tables(jobs: Sequence[tuple[str, Job]]) -> dict[str, Rows]:
    """The sheets of a jobs book for jobs with their ids."""
    return {
        "Jobs": [
            ["job", "bid date", "wheelbarrow distance ft"],
            *([name, "2026-04-13", float(job.feet)] for name, job in jobs),
        ],
        "Areas": [
            ["job", "length ft", "width ft", "thickness in"],
            *([name, float(job.length), float(job.width), float(job.thickness)] for name, job in jobs),
        ],
        "Site conditions": [
            ["job", "fact", "value"],
            *([name, fact, value] for name, job in jobs for fact, value in _facts(job)),
        ],
    }


def _facts(job: Job) -> list[tuple[str, object]]:
    reasons: list[tuple[str, object]] = []
    if job.rule == "fixed":
        reasons += [("Fixed order", float(job.fixed)), ("Order reason", "as agreed")]
    if job.named != "cheapest":
        reasons.append(("Placing reason", "as agreed"))
    if job.admixture:
        reasons.append((job.admixture.capitalize(), "yes"))
    weather = {
        "Air temperature": job.air,
        "Concrete temperature": job.concrete,
        "Humidity": job.humidity,
        "Wind": job.wind,
    }
    return [
        ("Order rule", job.rule),
        ("Drive time from plant", float(job.drive)),
        ("Chute access", _said("chute" in job.allowed)),
        ("Wheelbarrow access", _said("wheelbarrow" in job.allowed)),
        ("Pump access", _said("pump" in job.allowed)),
        ("Wheelbarrows", job.barrows),
        ("Muddy route", _said(job.wet)),
        ("Route grade", float(job.slope)),
        ("Placing method", job.named),
        ("Placing crew", job.placers),
        ("Finishers", job.finishers),
        ("Crew", job.placers + job.finishers),
        *reasons,
        *((fact, float(value)) for fact, value in weather.items() if value is not None),
    ]


def _said(yes: bool) -> str:
    return "yes" if yes else "no"
