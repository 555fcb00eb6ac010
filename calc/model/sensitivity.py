"""What moves the price: the job worked out anew with each thing that nobody measured at the ends of its usual range.

It is as of issue. A fact that was typed, and a factor that the house set, are known, and are left out. All that some
jobs ask is evaluated in one go, and no more of the rules than the price follows from.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cache

from calc.declared import Declared, Factor, Input, Kind, Line
from calc.formula.levels import JOB
from calc.intake.records import DEFAULT, Entry, JobInput
from calc.model.evaluate import evaluate
from calc.model.results import JobValues, RangeEnd, Sensitivity
from calc.trade.hauling.piles import SoilContamination
from calc.trade.inputs.areas import Area
from calc.trade.inputs.job import Job, Site
from calc.trade.inputs.placing import Access, BarrowWay
from calc.trade.inputs.work import Digging, OnSite, Removal
from calc.trade.levels import TASK
from calc.trade.money.price import BidPrice
from calc.trade.ordering.finish_window import FinishWindow
from calc.trade.ordering.order_candidates import Risk
from calc.trade.takeoff.dig import Excavation
from calc.trade.takeoff.forms import Board
from calc.trade.takeoff.uncertainty import DepthUncertainty
from calc.trade.work.labor import Task

SHOWN = 8
"""So many are shown, those that move the price most."""

TASKS = 3
"""So many tasks are asked: those whose good and bad day lie farthest apart in money."""

FACTS: tuple[Input, ...] = (
    Job.soil,
    Site.moisture,
    Site.turf,
    Digging.by,
    BarrowWay.feet,
    Access.chute,
    Access.wet,
    OnSite.power,
    Removal.unknown,
    Area.thickness,
    Area.base,
)
"""Facts of the site that move money. A number goes to the limits outside which the program asks, a choice to each of
its other words."""

FACTORS: tuple[Factor, ...] = (
    FinishWindow.rate,
    SoilContamination.root_probability,
    Excavation.overdig,
    DepthUncertainty.default_std_dev,
    Risk.waste,
    Board.reuses,
)
"""Factors of the site and of the crew that move money. How the firm prices is its own choice, and is not here."""

_CENT = 0.005


@dataclass(frozen=True, slots=True)
class _Trial:
    """The job as it would be with one thing at one end of its range."""

    label: str
    taken: float | str
    unit_text: str
    value: float | str
    job: JobInput


def with_sensitivity(values: JobValues) -> JobValues:
    """The job with what moves its price, unless somebody worked that out before. Same job, same moves."""
    return values if values.sensitivity is not None else all_with_sensitivity([values])[0]


def all_with_sensitivity(jobs: Sequence[JobValues]) -> list[JobValues]:
    """The jobs with what moves the price of each, asked in one go. Same job, same moves, whatever stands around it."""
    trials = [list(_trials(values)) for values in jobs]
    if not any(trials):
        return [replace(values, sensitivity=()) for values in jobs]
    frame = evaluate([trial.job for of_job in trials for trial in of_job], price_lines())
    changed, lacking = (iter(frame.columns[named].tolist()) for named in (BidPrice.to_cent, BidPrice.unpriced))
    return [
        replace(values, sensitivity=_moves(values, [(trial, next(changed), next(lacking)) for trial in of_job]))
        for values, of_job in zip(jobs, trials, strict=True)
    ]


def _moves(values: JobValues, tried: Sequence[tuple[_Trial, float, float]]) -> tuple[Sensitivity, ...]:
    """What moves the price most, the strongest first, out of what it came to and how many prices lacked in each trial.

    It is the price to the cent, before its step and its minimum.
    An end that asks for a price which the house book lacks cannot be compared, and is left out.
    """
    price, unpriced = float(values.of(BidPrice.to_cent)), float(values.of(BidPrice.unpriced))
    ends: dict[tuple[str, float | str, str], list[RangeEnd]] = {}
    for trial, changed, lacking in tried:
        more = round(changed - price, 2)
        if lacking <= unpriced and abs(more) > _CENT:
            ends.setdefault((trial.label, trial.taken, trial.unit_text), []).append(RangeEnd(trial.value, more))
    sensitivity = [Sensitivity(*named, ends=_outermost(found)) for named, found in ends.items()]
    return tuple(sorted(sensitivity, key=lambda move: -move.effect)[:SHOWN])


def _outermost(ends: list[RangeEnd]) -> tuple[RangeEnd, ...]:
    """The cheapest and the dearest end."""
    ordered = sorted(ends, key=lambda end: end.more)
    return (ordered[0], ordered[-1]) if len(ordered) > 1 else (ordered[0],)


@cache
def price_lines() -> frozenset[Declared]:
    """Everything that the price follows from."""
    found: set[Declared] = set()
    waiting: list[Declared] = [BidPrice.to_cent, BidPrice.unpriced]
    while waiting:
        named = waiting.pop()
        if named in found:
            continue
        found.add(named)
        if named.section.slots_for is not None:
            waiting.append(named.section.slots_for)
        if isinstance(named, Line):
            waiting += [each for each in named.formula.leaves() if isinstance(each, Declared)]
    return frozenset(found)


def _trials(values: JobValues) -> Iterator[_Trial]:
    for given in FACTS:
        yield from _of_fact(values.job, given)
    for factor in FACTORS:
        low, high = factor.low, factor.high
        yield from _of_factor(values, factor, 0, [end for end in (low, high) if end is not None])
    for place in _tasks(values):
        low_hours, high_hours = (
            float(values.of(Task.hours_per_unit_low, place)),
            float(values.of(Task.hours_per_unit_high, place)),
        )
        yield from _of_factor(values, Task.hours_per_unit, place, [low_hours, high_hours])


def _tasks(values: JobValues) -> list[int]:
    """The rows of the tasks that a good and a bad day would part most, in money."""

    def apart(place: int) -> float:
        hours = float(values.of(Task.high_hours, place)) - float(values.of(Task.low_hours, place))
        return hours * float(values.of(Task.rate, place))

    places = sorted(range(len(TASK.axis.words)), key=lambda place: -apart(place))
    return [place for place in places[:TASKS] if apart(place) > 0]


def _of_fact(job: JobInput, given: Input) -> Iterator[_Trial]:
    """The job with a fact that nobody typed at each of its ends; on every row where nobody typed it."""
    if given.level == JOB:
        if job.entries[given].origin == DEFAULT:
            for value in _ends(given):
                changed = replace(job, entries={**job.entries, given: Entry(value)})
                yield _Trial(given.label, _default(given), given.unit_text, value, changed)
        return
    rows = job.rows.get(given.level, [])
    if not any(row.entries[given].origin == DEFAULT for row in rows):
        return
    for value in _ends(given):
        moved = [
            replace(row, entries={**row.entries, given: Entry(value)}) if row.entries[given].origin == DEFAULT else row
            for row in rows
        ]
        yield _Trial(
            given.label, _default(given), given.unit_text, value, replace(job, rows={**job.rows, given.level: moved})
        )


def _default(given: Input) -> float | str:
    assert given.default is not None
    return given.default


def _ends(given: Input) -> list[float | str]:
    """Where a fact might lie: the other words of a choice, the limits of a number outside which the program asks."""
    if given.kind is Kind.CHOICE:
        return [word for word in given.words_allowed if word != given.default]
    low = given.ask_low if given.ask_low is not None else given.low
    high = given.ask_high if given.ask_high is not None else given.high
    return [float(end) for end in (low, high) if end is not None and end != given.default]


def _of_factor(values: JobValues, factor: Factor, place: int, ends: list[float]) -> Iterator[_Trial]:
    """The job with a factor that the house left as usual at each of its ends."""
    company = values.job.company
    if (factor, place) in company.factors:
        return
    taken = float(values.of(factor, place))
    word = f", {factor.level.axis.words[place]}" if factor.level.axes else ""
    for end in ends:
        if end != taken:
            changed = replace(company, factors={**company.factors, (factor, place): Entry(end)})
            yield _Trial(f"{factor.label}{word}", taken, factor.unit_text, end, replace(values.job, company=changed))
