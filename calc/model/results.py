"""The values of one job out of a chunk, by declaration and row."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from calc.declared import Declared
from calc.formula.compute import Batch
from calc.formula.levels import Level
from calc.intake.records import JobInput

Shape = tuple[tuple[Level, int], ...]
"""How many rows each level has for a job: all that a layout may depend on."""


@dataclass(frozen=True, slots=True)
class RangeEnd:
    """One end of a usual range: the value there, and how much more the price would be, in $."""

    value: float | str
    more: float


@dataclass(frozen=True, slots=True)
class Sensitivity:
    """The sensitivity of the price to an assumed input, from one end of its usual range to the other."""

    label: str
    assumed: float | str
    unit_text: str
    ends: tuple[RangeEnd, ...]
    """The ends that can be priced, the cheapest first."""

    @property
    def effect(self) -> float:
        """The largest change of the price, in $."""
        return max(abs(end.more) for end in self.ends)


@dataclass(frozen=True)
class JobValues:
    """One job of an evaluated chunk."""

    job: JobInput
    frame: Batch
    starts: Mapping[Level, int]
    counts: Mapping[Level, int]
    sensitivity: tuple[Sensitivity, ...] | None = None
    """The sensitivities of the price, fixed at issue; None until they are worked out."""

    def of(self, named: Declared, index: int = 0) -> float | str:
        """The value of ``named`` in its row ``index``: words, or a number (NaN when it was not given)."""
        value = self.frame.columns[named][self.starts[named.level] + index]
        return value if isinstance(value, str) else float(value)

    def count(self, level: Level) -> int:
        """How many rows of ``level`` the job has."""
        return self.counts[level]

    @property
    def shape(self) -> Shape:
        """What the job's layout depends on."""
        return tuple(sorted(self.counts.items(), key=lambda each: str(each[0])))


def each_job(frame: Batch, jobs: list[JobInput]) -> list[JobValues]:
    """The jobs of a chunk, each with its own rows."""
    bounds = {level: np.searchsorted(rows.job, np.arange(len(jobs) + 1)) for level, rows in frame.rows.items()}
    return [
        JobValues(
            job,
            frame,
            {level: int(bound[place]) for level, bound in bounds.items()},
            {level: int(bound[place + 1] - bound[place]) for level, bound in bounds.items()},
        )
        for place, job in enumerate(jobs)
    ]
