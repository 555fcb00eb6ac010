"""The bench of the order: a strip that is poured, and a company book that may differ in what it says of the order."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from books import Rows, line, only_job
from calc.model.results import JobValues

MIX, FEES = 172.0, ((2.0, 160.0), (4.0, 110.0), (6.0, 60.0))
"""Dollars a yard; limits of a short load, and the fee of a load that is less."""
DELIVERY = 24.0
CHUTE = {"Placing method": "chute", "Placing reason": "the truck stands beside the forms"}
"""Which way of placing is the cheapest is another matter."""


@dataclass(frozen=True)
class Pour:
    """A strip, the depths taken on it, and a company book that may differ in its factors and in what the plant asks."""

    length: float = 100
    width: float = 3
    depths: Sequence[float] = ()
    factors: Mapping[str, float] = field(default_factory=dict)
    mix: float = MIX
    fees: Sequence[tuple[float, float]] = FEES
    facts: dict[str, object] = field(default_factory=dict)
    bag: float | None = None

    def bid(self, folder: Path) -> JobValues:
        """The values of the job."""
        areas: Rows = [["length ft", "width ft", "thickness in"], [self.length, self.width, 4]]
        stops: Rows = [["station ft", "depth in"], *([10 * place, depth] for place, depth in enumerate(self.depths))]
        facts: Rows = [["fact", "value"], *([fact, said] for fact, said in (CHUTE | self.facts).items())]
        week = {"Jobs": [["job", "bid date"], ["one", "2026-04-13"]], "Areas": areas, "Cross-sections": stops}
        return only_job(folder, week | {"Site conditions": facts}, self._company())

    def _company(self) -> dict[str, Rows]:
        fees = [
            [f"Short-load fee, tier {tier}", fee, "truck", limit]
            for tier, (limit, fee) in zip((1, 2, 3), self.fees, strict=False)
        ]
        return {
            "Prices": [
                ["item", "price", "unit", "size"],
                ["Ready-mix, 3500 psi", self.mix, "yd3"],
                ["Concrete delivery", DELIVERY, "truck"],
                *fees,
                ["Concrete bag", self.bag, "bag", 0.6],
            ],
            "Wages": [["role", "private $/h"], ["laborer", 45], ["finisher", 70]],
            "Factors": [["factor", "value"], *([line(name).label, much] for name, much in self.factors.items())],
        }
