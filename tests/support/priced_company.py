"""A house book in which everything that a job may ask has a price, so that a bid is whole."""

from __future__ import annotations

from collections.abc import Mapping

from books import COMPANY, Rows
from calc.intake.schema import PRICE_LIST

PLANT = {
    "Ready-mix, 2500 psi": 158, "Ready-mix, 3000 psi": 164, "Ready-mix, 3500 psi": 171, "Ready-mix, 4000 psi": 179,
    "Ready-mix, 4500 psi": 188, "Ready-mix, 5000 psi": 198, "Concrete delivery": 28, "Short-load fee, tier 1": 155,
    "Short-load fee, tier 2": 105, "Short-load fee, tier 3": 55, "Truck standby (wait time)": 2.25, "Pump set-up charge": 240,
    "Pump, per hour": 135, "Concrete bag": 7.4,
}  # fmt: skip
SIZES = {"Short-load fee, tier 1": 2, "Short-load fee, tier 2": 4, "Short-load fee, tier 3": 6, "Concrete bag": 0.6}
LAST = "Caution tape and signs"
"""The last row: what every job takes, once."""


def _prices() -> Rows:
    own = {str(row[0]): row for row in COMPANY["Prices"][1:]}
    rows = []
    for place, price in enumerate(PRICE_LIST):
        row = own.get(price.label, [price.label, PLANT.get(price.label, 5 + place % 9), None, None])
        size = row[3] if row[3] is not None else SIZES.get(price.label, 3 if price.pack is not None else None)
        rows.append([row[0], row[1], None, size, None])
    rows.sort(key=lambda row: row[0] == LAST)
    return [["item", "price", "unit", "size", "valid until"], *rows]


PRICED: Mapping[str, Rows] = COMPANY | {
    "Prices": _prices(),
    "Wages": [["role", "private $/h"], ["labourer", 46], ["finisher", 58]],
    "Vehicles": [
        ["vehicle", "box yd3", "payload ton", "bed length ft", "bed width ft", "hourly rate $/h", "mile rate $/mile"],
        ["dump trailer", 5, 4.5, 10, 6, 38, 0.9],
        ["flatbed", 3, 1.75, 9, 6, 75, 0.7],
    ],
    "Disposal sites": [
        ["site", "kind", "per ton $/ton", "least charge $/load", "one way min", "miles one way mile"],
        ["transfer", "mixed", 92, 45, 22, 11],
        ["brush yard", "green", 31, 20, 14, 6],
        ["quarry fill", "soil", 14, 25, 26, 14],
        ["crusher", "concrete", 22, 30, 19, 9],
    ],
}
"""Prices, wages, vehicles that can be compared, and a site of each kind."""


def without(what: str) -> Mapping[str, Rows]:
    """The priced house without one of its sheets, or without the price of one item."""
    if what in PRICED:
        return {name: rows for name, rows in PRICED.items() if name != what}
    return {**PRICED, "Prices": [row for row in PRICED["Prices"] if row[0] != what]}
