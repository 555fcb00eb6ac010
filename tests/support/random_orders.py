"""Company books and pours drawn by chance, the same every time,
with limits met exactly more often than chance would."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from random import Random

from books import Rows, line
from reference_pour import Area, Bag, CompanyBook, Job, Plant

ADDITIONS = ("Entrained air", "Accelerator", "Retarder", "Winter heat")
"""What may go into a mix, by what it is called on Prices and among the site conditions."""
FACTORS = {
    "Risk.waste": "loss",
    "Risk.pump_residue": "prime",
    "Risk.second_truck_wait": "wait",
    "Risk.cold_joint_repair": "repair",
    "Risk.surplus_disposal": "left_over",
    "Risk.std_devs_tried": "reach",
    "Risk.extra_yards": "more",
    "DepthUncertainty.default_std_dev": "few",
    "VolumeUncertainty.string_line_error": "string",
    "VolumeUncertainty.area_error": "tape",
    "VolumeUncertainty.yield_error": "plant_yield",
    "OtherOrderRules.allowance": "allowance",
}
"""The factors of a house by their ids, and what the plain calculation calls them."""
PLANT_FACTORS = {"Risk.increment": "step", "Risk.truck_capacity": "capacity", "PlantCharges.least_order": "least"}
TIERS = (1, 2, 3)


def random_company(chance: Random) -> CompanyBook:
    """A company book; one in three knows its volumes to the drop, and has no spread but by depths."""
    exact = chance.random() < 0.33
    return CompanyBook(
        _exact_plant(chance) if exact else _plant(chance),
        {"private": (Fraction(46), Fraction(58)), "prevailing": (Fraction(71), Fraction(173, 2))},
        chance.choice([None, _bag(chance), _bag(chance)]),
        loss=Fraction(chance.choice([0, 2, 3, 3, 5])),
        prime=Fraction(chance.choice([10, 20, 25]), 100),
        wait=chance.choice([Fraction(3, 4), Fraction(5, 4), Fraction(3)]),
        repair=Fraction(chance.choice([0, 250, 1000])),
        left_over=Fraction(65) if exact else Fraction(chance.choice([0, 65, 65, 150])),
        few=Fraction(0) if exact else chance.choice([Fraction(1, 4), Fraction(3, 8), Fraction(3, 8)]),
        string=Fraction(0) if exact else chance.choice([Fraction(0), Fraction(1, 8), Fraction(1, 4)]),
        tape=Fraction(0) if exact else Fraction(chance.choice([1, 1, 3])),
        plant_yield=Fraction(0) if exact else Fraction(chance.choice([1, 1, 2])),
        allowance=Fraction(chance.choice([4, 8, 10])),
        reach=Fraction(chance.choice([3, 4, 6])),
        more=Fraction(chance.choice([1, 1, 3])),
    )


def _exact_plant(chance: Random) -> Plant:
    """At 175 dollars and 65 for a yard left over a quarter yard costs 60, which is what its tiers save."""
    tiers = tuple((Fraction(limit), Fraction(fee)) for limit, fee in ((2, 180), (4, 120), (6, 60)))
    mixes = {psi: Fraction(175) for psi in (3000, 3500, 4000, 5000)}
    return Plant(mixes, {}, Fraction(8), Fraction(chance.choice([24, 45])), tiers)


def _plant(chance: Random) -> Plant:
    """A plant that may lack a strength or the price of an addition."""
    price = Fraction(chance.choice([172, 175, 189]))
    mixes = {2500: price - 12, 3000: price - 6, 3500: price, 4000: price + 7, 4500: price + 15, 5000: price + 24}
    kept = {psi: cost for psi, cost in mixes.items() if chance.random() < 0.8}
    tiers = [
        ((2, 160), (4, 110), (6, 60)),
        ((2, 180), (4, 120), (6, 60)),
        ((3, 120), (5, 60)),
        ((1, 240), (2, 180), (Fraction(7, 2), 120)),
        (),
    ]
    return Plant(
        kept,
        {each: Fraction(chance.choice([4, 5, 9]), 2) for each in ADDITIONS if chance.random() < 0.8},
        Fraction(chance.choice([0, 0, 8])),
        Fraction(chance.choice([0, 24, 45])),
        tuple((Fraction(limit), Fraction(fee)) for limit, fee in chance.choice(tiers)),
        least=Fraction(chance.choice([1, 1, 1, 2])),
        step=chance.choice([Fraction(1, 4), Fraction(1, 4), Fraction(1, 2), Fraction(1)]),
        capacity=Fraction(chance.choice([8, 9, 9, 10])),
    )


def _bag(chance: Random) -> Bag:
    return Bag(
        Fraction(chance.choice([675, 725, 950]), 100),
        Fraction(chance.choice([45, 60, 75]), 100),
        Fraction(chance.choice([0, 58])),
        Fraction(chance.choice([0, 25])),
    )


def drawn_job(chance: Random) -> Job:
    """A pour of one to three areas; half are so large that their volume is a whole number of quarter yards."""
    areas = tuple(_area(chance) for _ in range(chance.choice([1, 1, 2, 3])))
    if chance.random() < 0.1:
        areas = (Area(Fraction(120), Fraction(27), Fraction(4)),)  # forty rungs do not reach over its spread
    return Job(
        areas,
        psi=chance.choice([2000, 2500, 3000, 3500, 3500, 3600, 4000, 4500, 5000, 6000]),
        additions=_additions(chance),
        placing=chance.choice([1, 2, 3]),
        finishing=chance.choice([1, 2]),
        wages=chance.choice(["private", "private", "prevailing"]),
        rule=chance.choice(["risk", "risk", "risk", "percent"]),
    )


def _area(chance: Random) -> Area:
    """At 4 in, 20 1/4 ft2 are a quarter yard."""
    quarters, width = chance.randint(1, 30), chance.choice([Fraction(9, 4), Fraction(27, 8), Fraction(9)])
    length = Fraction(81, 4) * quarters / width if chance.random() < 0.5 else Fraction(chance.randint(60, 600), 10)
    thickness = chance.choice([Fraction(4), Fraction(4), Fraction(9, 2), Fraction(5)])
    return Area(length, width, thickness, chance.choice([1, 1, 1, 2]), _depths(chance, thickness))


def _depths(chance: Random, thickness: Fraction) -> tuple[Fraction, ...]:
    """None, or up to nine to the eighth of an inch; some all alike, as over forms that were set with care."""
    points = chance.choice([0, 0, 1, 2, 3, 4, 4, 5, 6, 9])
    if chance.random() < 0.4:
        return (thickness,) * points
    return tuple(thickness + Fraction(chance.randint(-4, 6), 8) for _ in range(points))


def _additions(chance: Random) -> tuple[str, ...]:
    """Never an accelerator with a retarder."""
    setting = chance.choice([(), (), ("Accelerator",), ("Retarder",)])
    return (*setting, *(each for each in ("Entrained air", "Winter heat") if chance.random() < 0.3))


def company_tables(company: CompanyBook) -> dict[str, Rows]:
    """The sheets of a company book."""
    factors = {line(name).label: getattr(company, each) for name, each in FACTORS.items()}
    factors |= {line(name).label: getattr(company.plant, each) for name, each in PLANT_FACTORS.items()}
    return {
        "Prices": [["item", "price", "unit", "size"], *_prices(company.plant), *_bag_prices(company.bag)],
        "Wages": [
            ["role", "private $/h", "prevailing $/h"],
            *([role, *(float(company.wages[table][place]) for table in ("private", "prevailing"))]
              for place, role in enumerate(("laborer", "finisher"))),
        ],
        "Factors": [["factor", "value"], *([label, float(value)] for label, value in factors.items())],
    }  # fmt: skip


def _prices(plant: Plant) -> Iterator[Sequence[object]]:
    yield from ([f"Ready-mix, {psi} psi", float(cost), "yd3"] for psi, cost in plant.mixes.items())
    yield from (
        [name.replace("Winter heat", "Winter heat"), float(cost), "yd3"] for name, cost in plant.additions.items()
    )
    yield ["Pea-gravel pump mix, added cost", float(plant.pump_mix), "yd3"]
    yield ["Concrete delivery", float(plant.delivery), "truck"]
    for tier, (limit, fee) in zip(TIERS, plant.tiers, strict=False):
        yield [f"Short-load fee, tier {tier}", float(fee), "truck", float(limit)]


def _bag_prices(bag: Bag | None) -> Iterator[Sequence[object]]:
    if bag is not None:
        yield ["Concrete bag", float(bag.price), "bag", float(bag.yields)]
        yield ["Rental for half a day, mixer", float(bag.mixer), "each"]
        yield ["Rental for a day, mixer", float(bag.mixer), "each"]
        yield ["Clean-up after bagged concrete", float(bag.clean), "each"]


def week_tables(jobs: Sequence[tuple[str, Job]]) -> dict[str, Rows]:
    """The sheets of a jobs book for jobs with their ids."""
    named = [(name, f"A{place}", area) for name, job in jobs for place, area in enumerate(job.areas, start=1)]
    return {
        "Jobs": [["job", "bid date"], *([name, "2026-04-13"] for name, _ in jobs)],
        "Site conditions": [["job", "fact", "value"], *([name, *fact] for name, job in jobs for fact in _facts(job))],
        "Areas": [["job", "area", "length ft", "width ft", "thickness in", "quantity"], *map(_area_row, named)],
        "Cross-sections": [
            ["job", "area", "station ft", "depth in"],
            *([name, area, place, float(depth)] for name, area, strip in named
              for place, depth in enumerate(strip.depths)),
        ],
    }  # fmt: skip


def _area_row(named: tuple[str, str, Area]) -> list[object]:
    name, id_, area = named
    return [name, id_, *map(float, (area.length, area.width, area.thickness)), area.copies]


def _facts(job: Job) -> Iterator[tuple[str, object]]:
    """From the chute, whatever it costs: which way of placing is taken is no business of the ladder."""
    yield from (("Placing method", "chute"), ("Placing reason", "the truck stands beside the forms"))
    yield "Strength", job.psi
    yield from ((each, "yes") for each in job.additions)
    yield "Placing crew", job.placing
    yield "Finishers", job.finishing
    yield "Crew", job.placing + job.finishing
    yield "Wage table", job.wages
    yield "Order rule", job.rule
