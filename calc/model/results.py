"""The result types: the values of one job, its price sensitivity, and what is compared across the jobs of a run.

The layout and the writer know these types and nothing else of the model: they show values and compute none.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from math import nan

import numpy as np

from calc.declared import Declared
from calc.formula.compute import Batch
from calc.formula.levels import Level
from calc.intake.records import JobInput

Shape = tuple[tuple[Level, int], ...]
"""How many rows each level has for a job: all that a layout may depend on."""

SENSITIVITIES = 8
"""The most that are kept for a job, those with the largest effect on the price: the front page has so many rows."""


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


@dataclass(frozen=True, slots=True)
class OtherDigging:
    """The job dug the other way, by machine or by hand: its whole price, in $, and how many prices it lacks."""

    word: str
    price: float
    unpriced: int


@dataclass(frozen=True)
class SmallPour:
    """The pour of one job, as the search for shared trucks compares it with others.

    Volumes are in yd3, times in minutes, amounts in $; ``day`` is NaN for a job without a pour date.
    """

    job: str
    day: float
    yards: float
    charge: float
    waiting: float
    psi: float
    yard: float
    mix: tuple[str, ...]
    fees: tuple[tuple[float, float], ...]
    least: float
    by_load: float
    """Delivery and the fees that the plant adds for each load."""
    capacity: float
    unloading: float
    time_left: float
    free: tuple[float, float]
    minute: float
    between: float
    plant_fiber: bool = False
    """Whether the plant puts fiber into it."""
    arrives: float = nan
    """Hour of the day at which the first truck is asked for; NaN where nobody typed it."""


@dataclass(frozen=True, slots=True)
class WorkDay:
    """What a job does on a day: a visit, how many people it takes, and their paid hours.

    ``finisher_hours`` are those of ``hours`` that are paid at the rate of the finishers.
    """

    day: float
    visit: str
    people: float
    hours: float = 0.0
    finisher_hours: float = 0.0

    @property
    def words(self) -> str:
        """The visit with its people, as in: prep 2."""
        return f"{self.visit} {self.people:g}"


@dataclass(frozen=True, slots=True)
class JobDays:
    """The days of one job, as the calendar of the week shows them.

    ``ask`` is the last day to ask for its locate ticket, 0 where there is none to ask; ``pour_hours`` are the hours on
    site of the longest person of its pour, ``day_hours`` those of a day; ``crews`` and ``people_had`` are those that
    the company has, NaN for people that are not counted.
    """

    job: str
    has_date: bool
    days: tuple[WorkDay, ...]
    ask: float
    pour_hours: float
    day_hours: float
    crews: float
    people_had: float = nan


@dataclass(frozen=True, slots=True)
class WeekDay:
    """One day of the week: what each job does, the crews and the people that it takes, and what to ask 811 for.

    ``counted`` gives for each job the crews and the people that are counted with it: none for a job that is done by the
    crew of another, whose truck it shares.
    """

    day: float
    work: Mapping[str, WorkDay]
    counted: Mapping[str, tuple[int, float]]
    ask: tuple[str, ...]

    @property
    def crews(self) -> int:
        """The crews that it takes."""
        return sum(crews for crews, _ in self.counted.values())

    @property
    def people(self) -> float:
        """The people that it takes."""
        return sum(people for _, people in self.counted.values())


@dataclass(frozen=True)
class WeekCalendar:
    """The working days of a week on which there is something to do, the jobs that are in them, and those that are not.

    ``undated`` have no pour date; of ``unknown`` the days reach beyond the calendar of the job.
    """

    days: tuple[WeekDay, ...]
    jobs: tuple[str, ...]
    undated: tuple[str, ...]
    unknown: tuple[str, ...]
    crews: float
    people_had: float = nan

    @property
    def over(self) -> tuple[WeekDay, ...]:
        """The days that need more crews or more people than the company has."""
        return tuple(each for each in self.days if each.crews > self.crews or each.people > self.people_had)


@dataclass(frozen=True)
class SharedTruck:
    """Two or three jobs that one truck could serve, in the order of its stops.

    ``together`` is what the plant charges for all of them on one truck, ``waiting`` the part of it for a truck that
    stands, in $; ``best`` says that it is one of the set that saves most and takes no job twice.
    """

    stops: tuple[SmallPour, ...]
    together: float
    best: bool = False
    waiting: float = 0.0

    @property
    def day(self) -> float:
        """The day of the pours."""
        return self.stops[0].day

    @property
    def yards(self) -> float:
        """The concrete of all stops, in yd3."""
        return sum(each.yards for each in self.stops)

    @property
    def apart(self) -> float:
        """What the plant charges when each has a truck of its own, in $."""
        return sum(each.charge + each.waiting for each in self.stops)

    @property
    def saving(self) -> float:
        """What sharing one truck saves, in $."""
        return self.apart - self.together


def minutes_on_site(stops: Sequence[SmallPour]) -> float:
    """Minutes of a shared truck on site: all unloaded, and the drive from one stop to the next."""
    return sum(each.unloading for each in stops) + (len(stops) - 1) * max(each.between for each in stops)


@dataclass(frozen=True, slots=True)
class RefusedLoad:
    """Jobs that cannot share a truck, or save nothing by it, and why.

    ``jobs`` is one job that can share with none, or two; ``day`` is NaN where they have no day in common.
    """

    jobs: tuple[str, ...]
    day: float
    yards: float
    holds: float
    """What one truck may bring, in yd3."""
    reason: str


@dataclass(frozen=True, slots=True)
class RentalUse:
    """A machine that a job rents on one day: its hours, and what it costs in the bid, in $."""

    day: float
    tool: str
    job: str
    hours: float
    cost: float
    terms: tuple[float, ...]
    """Prices for half a day, a day and a week ($, NaN where there is none), and the hours and days that those are."""


@dataclass(frozen=True, slots=True)
class RentalDay:
    """A machine on one day: every job that rents it, and what one machine for all of them would cost, in $."""

    day: float
    tool: str
    uses: tuple[RentalUse, ...]
    one_for_all: float

    @property
    def in_bids(self) -> float:
        """What it costs in the bids of the jobs, in $."""
        return sum(each.cost for each in self.uses)


def jobs_that_share(found: Iterable[SharedTruck]) -> Mapping[str, tuple[str, ...]]:
    """The jobs of the best set, each with all the jobs of its truck in the order of the stops."""
    return {stop.job: tuple(each.job for each in truck.stops) for truck in found if truck.best for stop in truck.stops}


@dataclass(frozen=True)
class JobValues:
    """One job of an evaluated chunk."""

    job: JobInput
    frame: Batch
    starts: Mapping[Level, int]
    counts: Mapping[Level, int]
    sensitivity: tuple[Sensitivity, ...] | None = None
    """The price sensitivity, fixed at issue; None until :mod:`calc.model.sensitivity` has computed it."""
    other_digging: OtherDigging | None = None
    """The job dug the other way, fixed at issue with the sensitivity."""

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
