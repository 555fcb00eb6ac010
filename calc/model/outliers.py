"""Outliers among the jobs of the week: typing errors, and work that was bid twice."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from statistics import median
from typing import Protocol

from calc.formula.functions import NONE
from calc.intake.spelling import normalize

ENOUGH = 3
"""Priced jobs needed for a median."""


class JobToCompare(Protocol):
    """What of a job is compared."""

    @property
    def job(self) -> str:
        """Its id."""

    @property
    def address(self) -> str:
        """Where it is."""

    @property
    def by_area(self) -> float:
        """The price of a square foot."""

    @property
    def usual(self) -> tuple[float, float]:
        """The range over the median of the week that is not remarked on."""


def outliers(rows: Sequence[JobToCompare]) -> dict[str, str]:
    """For each job what is unusual among the jobs of the week, in words; a dash for nothing."""
    priced = sorted(row.by_area for row in rows if row.by_area > 0)
    middle = median(priced) if len(priced) >= ENOUGH else 0.0
    places: dict[str, list[str]] = {}
    for row in rows:
        places.setdefault(normalize(row.address), []).append(row.job)
    return {row.job: "; ".join(_remarks(row, middle, places)) or "-" for row in rows}


def _remarks(row: JobToCompare, middle: float, places: dict[str, list[str]]) -> Iterator[str]:
    low, high = row.usual
    if middle and row.by_area and not middle * low <= row.by_area <= middle * high:
        yield f"price per ft2 is {row.by_area / middle:.1f} times the median of the jobs: is a unit or a column wrong?"
    others = [job for job in places[normalize(row.address)] if job != row.job]
    if row.address not in ("", NONE) and others:
        yield f"same address as {', '.join(others)}"
