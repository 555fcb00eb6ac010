"""For each caution the job just inside its limit and the job just past it: a new caution needs a row in ``LIMITS``."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from books import COMPANY, Rows, usual

Tables = dict[str, Rows]

STANDING = {
    "SiteCautions.utilities",
    "SiteCautions.concrete_burns",
    "SiteCautions.washout",
    "SafetyCautions.backing",
    "PourCautions.surface_water",
}
"""The notes of every pour, however well it is done."""


@dataclass(frozen=True)
class Limit:
    """Two jobs on either side of a limit, and the number that the caution shows past it.

    ``inside_company`` and ``past_company`` are company books where the limit hangs on what the house gives.
    """

    inside: Tables
    past: Tables
    number: float
    inside_company: Mapping[str, Rows] | None = None
    past_company: Mapping[str, Rows] | None = None


def a_job(*, slabs: Sequence[float] = (4,), override: Sequence[Sequence[object]] = ()) -> Tables:
    """Slabs of 81 square feet, so that a 4 in one takes one cubic yard, and the rows of Overrides.

    Each slab is given by its thickness in inches, each override as line, value, reason and who.
    """
    return {
        "Jobs": [["job", "bid date"], ["one", "2026-04-13"]],
        "Areas": [["length ft", "width ft", "thickness in"], *([9, 9, inches] for inches in slabs)],
        "Overrides": [["line", "value", "reason", "who"], *override],
    }


def ordered(yards: float) -> Tables:
    """A job whose order is overridden."""
    return a_job(override=[["Concrete to order", yards, "as agreed", "QZ"]])


def grooved(inches: float) -> Tables:
    """A job whose joints are made so deep."""
    return a_job() | {"Site conditions": [["fact", "value"], ["Joint depth", inches]]}


def weathered(slabs: Sequence[float] = (4,), **facts: float | str) -> Tables:
    """A job on a day with such weather: facts of Site conditions by their labels, ``_`` for a space."""
    typed = [[fact.replace("_", " "), value] for fact, value in facts.items()]
    return a_job(slabs=slabs) | {"Site conditions": [["fact", "value"], *typed]}


def drying(humidity: float, **facts: str) -> Tables:
    """Air and concrete at 70 F, where 70 ** 2.5 is 40,996.3, and 10 mph of wind: dry air takes 0.205 lb/ft2/h."""
    return weathered(Air_temperature=70, Concrete_temperature=70, Wind=10, Humidity=humidity, **facts)


def acknowledged(tables: Tables, label: str, reason: str = "client signed for it", who: str = "QZ") -> Tables:
    """The job with a row more in Overrides, which acknowledges a stop by its name."""
    return tables | {"Overrides": [*tables["Overrides"], [label, None, reason or None, who or None]]}


def priced(*rows: Sequence[object]) -> Mapping[str, Rows]:
    """A company book whose only prices are these: item, price, unit, size."""
    return COMPANY | {"Prices": [["item", "price", "unit", "size"], *rows]}


def facts(**typed: float) -> Tables:
    """A job with facts of its site, each by its label with underscores for spaces."""
    rows = [[name.replace("_", " "), value] for name, value in typed.items()]
    return a_job() | {"Site conditions": [["fact", "value"], *rows]}


def over_a_footing(reinforced: str) -> Tables:
    """A job over a footing of 8 square feet that lies an inch too high."""
    row = [8, 1, 1, reinforced]
    return a_job() | {"Footings": [["length ft", "width ft", "depth to top of footing in", "reinforced"], row]}


def planted(trunk: float) -> Tables:
    """A job with two plants whose trunks are so thick, in inches."""
    return a_job() | {"Plants": [["what", "quantity", "trunk in"], ["maple", 2, trunk]]}


def hauled(*sites: Sequence[object], payload: float | None = 4.5, hired: str = "no") -> Mapping[str, Rows]:
    """A company book with one trailer that costs its driver only, and these sites: kind, $ a load, minutes, closes."""
    gates = [[f"site {row}", kind, rate, minutes, 0, closes] for row, (kind, rate, minutes, closes) in enumerate(sites)]
    return COMPANY | {
        "Vehicles": [
            ["vehicle", "struck bed capacity yd3", "payload ton", "hourly rate $/h", "hired"],
            ["trailer", 5, payload, 0, hired],
        ],
        "Wages": [["role", "private $/h"], ["laborer", 46], ["finisher", 58]],
        "Disposal sites": [
            [
                "site",
                "kind",
                "per load $/load",
                "one-way time min",
                "one-way distance mile",
                "closes h",
                "turnaround time min",
            ],
            *([*gate, 0] for gate in gates),
        ],
    }


def turfed(answer: str) -> Tables:
    """A job that digs a yard of loam, with turf in it or without."""
    return a_job() | {"Site conditions": [["fact", "value"], ["Turf in the dig", answer]]}


def selling_rock(company: Mapping[str, Rows]) -> Mapping[str, Rows]:
    """The company book with base rock for sale at its disposal sites."""
    head, *sites = company["Disposal sites"]
    return {**company, "Disposal sites": [[*head, "sells base rock"], *([*site, "yes"] for site in sites)]}


ON_ROCK: Tables = a_job() | {"Areas": [["length ft", "width ft", "thickness in", "base in"], [9, 9, 4, 4]]}
"""A slab on a yard of compacted rock."""

WELL = a_job()
"""A job with nothing wrong."""

NEED = 1 + usual("Risk.waste") / 100
"""Cubic yards of which one lies in place."""

LOAM = usual("Soil.density", "loam") / 2000
"""Tons of a yard of damp loam."""

ARRIVES = 9.5 + (usual("TaskRates.usual", "dig by hand") + 1.25 * usual("TaskRates.usual", "load by hand")) / 2
"""Hour of the day at which a yard of loam is at a site half an hour away."""

ALONE = {"Crew": 1, "Placing_crew": 1, "Finishers": 1}
"""One person for all."""

ALLOWANCE = "Unforeseen-conditions_allowance"
ON_TASKS = 0.75 + 1.7 + 1.25 * 0.667 + 2 * 0.5 + 81 / 80 + 81 * 0.002 + 1.5
"""Hours: layout, dig, load, place, finish, cure, clean up."""

FINISHER = 3.5 - 25 / 60 + 81 * 0.002 / 3 + 1
"""Paid hours of the finisher of a yard."""

LIMITS: dict[str, Limit] = {
    # a stop below 2 in, common practice, no source
    "SlabCautions.too_thin": Limit(a_job(slabs=[2]), a_job(slabs=[1.999]), 1.999),
    # a caution below 3.5 in, common practice, no source; the thinnest slab of the job decides
    "SlabCautions.thin": Limit(a_job(slabs=[6, 3.5]), a_job(slabs=[6, 3.499]), 3.499),
    # 1 yd3 in place and what is always lost
    "OrderCautions.below_requirement": Limit(ordered(NEED), ordered(NEED - 0.0001), 0.0001),
    # a quarter of a 4 in slab is 1 in
    "SlabCautions.shallow_joints": Limit(grooved(1), grooved(0.999), 0.001),
    # one way that can be bought is enough
    "PriceCautions.no_curing_price": Limit(
        WELL,
        WELL,
        81 / usual("Curing.coverage"),
        priced(["Curing compound, 5-gal pail", 88, "pack", 5]),
        priced(["Curing compound, 5-gal pail", None, "pack", 5]),
    ),
    # 3,500 psi is usual: with a price of it that is what is ordered
    "PriceCautions.dearer_mix": Limit(
        WELL,
        WELL,
        4000,
        priced(["Ready-mix, 3500 psi", 171, "yd3", None], ["Ready-mix, 4000 psi", 180, "yd3", None]),
        priced(["Ready-mix, 4000 psi", 180, "yd3", None]),
    ),
    # a slab that lies on the ground opens none of it; two working days are usual
    "SiteCautions.utilities": Limit(
        a_job() | {"Areas": [["length ft", "width ft", "thickness in", "height above grade in"], [9, 9, 4, 4]]}, WELL, 2
    ),
    # nothing is poured, so nothing burns, bleeds, backs up or is washed out
    "SiteCautions.concrete_burns": Limit(ordered(0), ordered(0.25), 0.25),
    "SiteCautions.washout": Limit(ordered(0), ordered(0.25), 1),
    "SafetyCautions.backing": Limit(ordered(0), ordered(0.25), 1),
    "PourCautions.surface_water": Limit(ordered(0), ordered(0.25), 0.25),
    # 8 ft2, an inch deep, in yards; who knows that there are bars, or none, is not asked
    "CrewCautions.unknown_bars": Limit(over_a_footing("yes"), over_a_footing("unknown"), 8 / 324),
    # two maples; a trunk of 6 in is grubbed with its roots
    "CrewCautions.stumps": Limit(planted(6), planted(6.01), 2),
    # two who place and one who finishes are three; a crew of three is enough for them
    "CrewCautions.crew_size": Limit(facts(Placing_crew=2), facts(Placing_crew=4), 2),
    # one load of just what a yard weighs, or one that nobody weighed
    "HaulCautions.overweight": Limit(WELL, WELL, LOAM, hauled(payload=LOAM), hauled(payload=None)),
    # the soil goes to the one site there is, which is for soil: a load of it, with turf or without
    "HaulCautions.contaminated_soil": Limit(
        turfed("no"), turfed("yes"), 1, hauled(["soil", 20, 0, None]), hauled(["soil", 20, 0, None])
    ),
    # at eight the site opens, an hour later work begins, two dig and load, and half an hour is on the way
    "HaulCautions.site_closed": Limit(
        WELL,
        WELL,
        ARRIVES - 10.76,
        hauled(["soil", 20, 30, 10.77]),
        hauled(["soil", 20, 30, 10.76]),
    ),
    # 2 or 2 3/4 yards of loam in one load, loose a quarter more, that two people load
    "HaulCautions.waiting": Limit(
        a_job(slabs=[4, 4]),
        a_job(slabs=[5.5, 5.5]),
        2.75 * 1.25 * usual("TaskRates.usual", "load by hand") / 2,
        hauled(["soil", 20, 0, None], hired="yes"),
        hauled(["soil", 20, 0, None], hired="yes"),
    ),
    # all that is hauled is a yard of soil
    "HaulCautions.no_site": Limit(
        WELL, WELL, LOAM, hauled(["soil", 20, 0, None]), hauled(["green waste", 20, 0, None])
    ),
    # two tons of rock are one trip of 55 minutes with a driver at $46; the soil goes to the one site there is
    "HaulCautions.back_haul": Limit(
        ON_ROCK, ON_ROCK, 42.17, hauled(["soil", 20, 0, None]), selling_rock(hauled(["soil", 20, 0, None]))
    ),
    # $25 is more than 2 % of $100; what is just at the limit is a wash
    "HaulCautions.near_tie": Limit(
        WELL,
        WELL,
        25,
        hauled(["mixed", 100, 0, None], ["soil", 125.01, 0, None]),
        hauled(["mixed", 100, 0, None], ["soil", 125, 0, None]),
    ),
    # 1.25 yd3 by chute take 6 1/4 minutes, and 90 less the drive are left
    "PourCautions.unloading_time": Limit(
        weathered(Drive_time_from_plant=83.75), weathered(Drive_time_from_plant=84), 0.25
    ),
    # above 0.1, and above 0.2 without a plan
    "PourCautions.evaporation": Limit(drying(52), drying(51), 70**2.5 * 0.49 * 5e-6),
    "PourCautions.evaporation_unplanned": Limit(drying(3), drying(2), 70**2.5 * 0.98 * 5e-6),
    # both temperatures, or a question about the yard and a quarter that is ordered
    "PourCautions.weather_unknown": Limit(
        weathered(Air_temperature=70, Concrete_temperature=70), weathered(Air_temperature=70), 1.25
    ),
    # 80 F and 95 F of California's rule
    "SafetyCautions.heat": Limit(weathered(Air_temperature=79), weathered(Air_temperature=80), 80),
    "SafetyCautions.high_heat": Limit(weathered(Air_temperature=94), weathered(Air_temperature=95), 95),
    # above 90 F, common practice, no source
    "PourCautions.hot_concrete": Limit(weathered(Concrete_temperature=90), weathered(Concrete_temperature=90.5), 90.5),
    # below 40 F, ACI 306R
    "PourCautions.cold_weather": Limit(
        weathered(Air_temperature=40, Night_low=40), weathered(Air_temperature=55, Night_low=39.5), 39.5
    ),
    "PourCautions.frozen_ground": Limit(weathered(), weathered(Ground_frozen="yes"), 81),
    # half an hour to place and 162 ft2 at 80 an hour are 2.525 h: on site, 25 minutes from the plant, concrete has
    # 2.56 h at 77 F and 2.48 h at 78 F; two finishers need 1.51 h
    "PourCautions.finishing_time": Limit(
        weathered((4, 4), Concrete_temperature=77), weathered((4, 4), Concrete_temperature=78), 2
    ),
    # one person alone: 7 3/4 or 8 3/4 yd3 at 12 an hour, finish, cure, clean up, and an hour there and back
    "PourCautions.pour_too_long": Limit(
        weathered((4,) * 7, **ALONE),
        weathered((4,) * 8, **ALONE),
        8.75 / 12 + 648 / 80 + 648 * 0.002 + 1.5 + 1 - 12,
    ),
    # just above the yard that is mixed from bags: 46.4 of them with what is lost, at $6
    "OrderCautions.bags_considered": Limit(
        WELL,
        a_job(slabs=[4.001]),
        47 * 6,
        priced(["Concrete bag", 6, "bag", 0.6]),
        priced(["Concrete bag", 6, "bag", 0.6]),
    ),
    # 6.96 h and the allowance are on tasks; paid are four hours each of two who prepare and two who place, and the
    # finisher, who stays for 3 1/2 h less the drive and his part of curing, and is an hour on the way
    "CrewCautions.much_beyond_tasks": Limit(
        facts(**{ALLOWANCE: 1.1}), facts(**{ALLOWANCE: 1.09}), (ON_TASKS + 1.09) / (16 + FINISHER) * 100
    ),
}
"""By the id of the caution."""
