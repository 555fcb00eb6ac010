"""A company book in which everything that a job may ask has a price, so that a bid is whole."""

from __future__ import annotations

from collections.abc import Mapping

from books import COMPANY, Rows
from calc.intake.schema import PRICE_LIST

BY_NAME = {
    "Ready-mix, 2500 psi": 158, "Ready-mix, 3000 psi": 164, "Ready-mix, 3500 psi": 171, "Ready-mix, 4000 psi": 179,
    "Ready-mix, 4500 psi": 188, "Ready-mix, 5000 psi": 198, "Concrete delivery": 28, "Short-load fee, tier 1": 155,
    "Short-load fee, tier 2": 105, "Short-load fee, tier 3": 55, "Truck standby (wait time)": 2.25,
    "Pump set-up charge": 240,
    "Pump, per hour": 135, "Concrete bag": 7.4,
}  # fmt: skip
"""What the plant and the pump ask, where a made-up price would make a bid that nobody believes."""

SIZES = {"Short-load fee, tier 1": 2, "Short-load fee, tier 2": 4, "Short-load fee, tier 3": 6, "Concrete bag": 0.6}
UNPRICED = {"Fiber put in at the plant"}
"""What a company pays only where it does not buy something else: bags of fiber."""
A_PACK = 3
EVERY_JOB = "Caution tape and signs"
"""What every job takes, once."""


def _price_of(label: str) -> float:
    """From $5 to $13, by the letters of its name: another price for the next one, and the same wherever it stands."""
    return BY_NAME.get(label, 5 + len(label) % 9)


def _prices() -> Rows:
    own = {str(row[0]): row for row in COMPANY["Prices"][1:]}
    strangers = (own.keys() | BY_NAME.keys() | SIZES.keys()) - {price.label for price in PRICE_LIST}
    assert not strangers, f"no price goes by the name {', '.join(sorted(strangers))}"
    rows: list[list[object]] = []
    for price in PRICE_LIST:
        if price.label in UNPRICED:
            continue
        _, asked, _, size = own.get(price.label, (price.label, _price_of(price.label), None, None))
        a_pack = A_PACK if price.pack is not None else None
        rows.append([price.label, asked, None, SIZES.get(price.label, a_pack) if size is None else size, None])
    return [["item", "price", "unit", "size", "valid until"], *rows]


PRICED: Mapping[str, Rows] = COMPANY | {
    "Prices": _prices(),
    "Wages": [["role", "private $/h"], ["laborer", 46], ["finisher", 58]],
    "Vehicles": [
        [
            "vehicle",
            "struck bed capacity yd3",
            "payload ton",
            "bed length ft",
            "bed width ft",
            "hourly rate $/h",
            "mileage rate $/mile",
        ],
        ["dump trailer", 5, 4.5, 10, 6, 38, 0.9],
        ["flatbed", 3, 1.75, 9, 6, 75, 0.7],
    ],
    "Disposal sites": [
        ["site", "kind", "per ton $/ton", "minimum charge $/load", "one-way time min", "one-way distance mile"],
        ["transfer", "mixed", 92, 45, 22, 11],
        ["brush yard", "green waste", 31, 20, 14, 6],
        ["quarry fill", "soil", 14, 25, 26, 14],
        ["crusher", "concrete debris", 22, 30, 19, 9],
    ],
}
"""Prices, wages, vehicles that can be compared, and a site of each kind."""


def without(what: str) -> Mapping[str, Rows]:
    """The priced house without one of its sheets, or without the price of one item."""
    if what in PRICED:
        return {name: rows for name, rows in PRICED.items() if name != what}
    return {**PRICED, "Prices": [row for row in PRICED["Prices"] if row[0] != what]}


def good_until(label: str, day: str) -> Mapping[str, Rows]:
    """The priced house whose price of one item is good until a day."""
    return {**PRICED, "Prices": [[*row[:-1], day] if row[0] == label else row for row in PRICED["Prices"]]}
