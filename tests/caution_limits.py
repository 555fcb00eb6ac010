"""For each caution the job just inside its limit and the job just past it: a new caution needs a row in ``LIMITS``."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from books import HOUSE, Rows

Tables = dict[str, Rows]

STANDING = {"Cautions.utilities", "Cautions.burns", "Cautions.wash"}
"""The notes that every pour earns, however well it is done."""


@dataclass(frozen=True)
class Limit:
    """Two jobs on either side of a limit, and the number that the caution shows past it.

    ``quiet_house`` and ``loud_house`` are house books where the limit hangs on what the house gives.
    """

    quiet: Tables
    loud: Tables
    number: float
    quiet_house: Mapping[str, Rows] | None = None
    loud_house: Mapping[str, Rows] | None = None


def a_job(*, slabs: Sequence[float] = (4,), forced: Sequence[Sequence[object]] = ()) -> Tables:
    """Slabs of 81 square feet, so that a 4 in one takes one cubic yard, and the rows of Overrides.

    Each slab is given by its thickness in inches, each override as line, value, reason and who.
    """
    return {
        "Jobs": [["job", "bid date"], ["one", "2026-04-13"]],
        "Areas": [["length ft", "width ft", "thickness in"], *([9, 9, inches] for inches in slabs)],
        "Overrides": [["line", "value", "reason", "who"], *forced],
    }


def ordered(yards: float) -> Tables:
    """A job whose order is forced."""
    return a_job(forced=[["Concrete to order", yards, "as agreed", "QZ"]])


def grooved(inches: float) -> Tables:
    """A job whose joints are made so deep."""
    return a_job() | {"Site conditions": [["fact", "value"], ["Joint depth", inches]]}


def accepted(tables: Tables, label: str, reason: str = "client signed for it", who: str = "QZ") -> Tables:
    """The job with a row more in Overrides, which accepts a stop by its name."""
    return tables | {"Overrides": [*tables["Overrides"], [label, None, reason or None, who or None]]}


def priced(*rows: Sequence[object]) -> Mapping[str, Rows]:
    """A house book whose only prices are these: item, price, unit, size."""
    return HOUSE | {"Prices": [["item", "price", "unit", "size"], *rows]}


def facts(**typed: float) -> Tables:
    """A job with facts of its site, each by its label with underscores for spaces."""
    rows = [[name.replace("_", " "), value] for name, value in typed.items()]
    return a_job() | {"Site conditions": [["fact", "value"], *rows]}


def over_a_footing(reinforced: str) -> Tables:
    """A job over a footing of 8 square feet that lies an inch too high."""
    row = [8, 1, 1, reinforced]
    return a_job() | {"Footings": [["length ft", "width ft", "top below in", "reinforced"], row]}


WELL = a_job()
"""A job with nothing wrong."""

LIMITS: dict[str, Limit] = {
    # a stop below 2 in, common practice, no source
    "Cautions.too_thin": Limit(a_job(slabs=[2]), a_job(slabs=[1.999]), 1.999),
    # a caution below 3.5 in, common practice, no source; the thinnest slab of the job decides
    "Cautions.thin": Limit(a_job(slabs=[6, 3.5]), a_job(slabs=[6, 3.499]), 3.499),
    # 1 yd3 in place and 3 % that is always lost make a need of 1.03 yd3
    "Cautions.short": Limit(ordered(1.03), ordered(1.0299), 0.0001),
    # a quarter of a 4 in slab is 1 in
    "Cautions.shallow": Limit(grooved(1), grooved(0.999), 0.001),
    # 81 ft2 over 200 ft2/gal: one way that can be bought is enough
    "Cautions.no_price": Limit(
        WELL,
        WELL,
        0.405,
        priced(["Curing compound, large pack", 88, "pack", 5]),
        priced(["Curing compound, large pack", 88, "pack", None]),
    ),
    # nothing is poured, so nothing is opened, burns or is washed out
    "Cautions.utilities": Limit(ordered(0), ordered(0.25), 81),
    "Cautions.burns": Limit(ordered(0), ordered(0.25), 0.25),
    "Cautions.wash": Limit(ordered(0), ordered(0.25), 1),
    # 8 ft2, an inch deep, in yards; who knows that there are bars, or none, is not asked
    "WorkCautions.bars": Limit(over_a_footing("yes"), over_a_footing("unknown"), 8 / 324),
    # two who place and one who finishes are three; a crew of three is enough for them
    "WorkCautions.hands": Limit(facts(Placing_crew=2), facts(Placing_crew=4), 2),
}
"""By the id of the caution."""
