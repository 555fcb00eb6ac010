"""Sensitivity of the price: the job evaluated again with each assumed input at the ends of its usual range.

It is fixed at issue. A fact that was typed, and a factor that the company set, are known and left out. All trials of
several jobs are evaluated in one batch, with only the rules that the price depends on.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cache

from calc.declared import Declared, Factor, Input, Kind, Line
from calc.formula.levels import JOB
from calc.intake.records import DEFAULT, Entry, JobInput
from calc.model.evaluate import evaluate
from calc.model.results import SENSITIVITIES, JobValues, OtherDigging, RangeEnd, Sensitivity
from calc.trade.hauling.piles import SoilContamination
from calc.trade.inputs.areas import Area
from calc.trade.inputs.job import Job, Site
from calc.trade.inputs.placing import Access
from calc.trade.inputs.work import Digging, OnSite, Removal
from calc.trade.levels import TASK
from calc.trade.money.price import BidPrice
from calc.trade.ordering.finish_window import FinishWindow
from calc.trade.ordering.order_candidates import Risk
from calc.trade.takeoff.dig import Excavation
from calc.trade.takeoff.forms import Board
from calc.trade.takeoff.uncertainty import DepthUncertainty
from calc.trade.work.carrying import Carrying
from calc.trade.work.labor import Task
from calc.trade.work.task_rates import TaskRates

TASKS = 3
"""How many tasks are tried: those with the widest range of labor cost."""

FACTS: tuple[Input, ...] = (
    Job.soil,
    Site.moisture,
    Site.turf,
    Digging.by,
    Access.chute,
    Access.muddy,
    OnSite.power,
    Removal.unforeseen,
    Area.thickness,
    Area.base,
)
"""Facts of the site that move the price. A number goes to the limits outside which the program asks, a choice to each
of its other words."""

FACTORS: tuple[Factor, ...] = (
    FinishWindow.rate,
    Carrying.usual_distance,
    SoilContamination.root_probability,
    Excavation.overdig,
    DepthUncertainty.default_std_dev,
    Risk.waste,
    Board.reuses,
)
"""Factors of the site and the crew that move the price. How the company prices is its own choice, and is left out."""

_CENT = 0.005


@dataclass(frozen=True, slots=True)
class _Trial:
    """The job with one assumed input at one end of its range."""

    label: str
    assumed: float | str
    unit_text: str
    value: float | str
    job: JobInput


def with_sensitivity(values: JobValues) -> JobValues:
    """The job with its sensitivities, unless it has them already. Same job, same result."""
    return values if values.sensitivity is not None else all_with_sensitivity([values])[0]


def all_with_sensitivity(jobs: Sequence[JobValues]) -> list[JobValues]:
    """The jobs with the sensitivities of each, evaluated in one batch. Same job, same result, with any others."""
    if not jobs:
        return []
    trials = [list(_trials(values)) for values in jobs]
    others = [_dug_other_way(values.job) for values in jobs]
    batch = evaluate([*others, *(trial.job for of_job in trials for trial in of_job)], price_lines())
    prices, missing = (batch.columns[named].tolist() for named in (BidPrice.price, BidPrice.unpriced))
    tried = iter(zip(prices[len(others) :], missing[len(others) :], strict=True))
    return [
        replace(
            values,
            sensitivity=_sensitivities(values, [(trial, *next(tried)) for trial in of_job]),
            other_digging=OtherDigging(_other_way(values.job), prices[place], int(missing[place])),
        )
        for place, (values, of_job) in enumerate(zip(jobs, trials, strict=True))
    ]


def _other_way(job: JobInput) -> str:
    """By machine for a job that is dug by hand, and the other way round."""
    (word,) = (each for each in Digging.by.words_allowed if each != job.entries[Digging.by].value)
    return word


def _dug_other_way(job: JobInput) -> JobInput:
    return replace(job, entries={**job.entries, Digging.by: Entry(_other_way(job))})


def _sensitivities(values: JobValues, tried: Sequence[tuple[_Trial, float, float]]) -> tuple[Sensitivity, ...]:
    """The largest sensitivities, largest first, from the price and the count of missing prices of each trial.

    It is the price that is bid, rounded, on both sides: what is told beside it adds up to it.
    An end that needs a price which the company book lacks cannot be compared, and is left out.
    """
    price, unpriced = float(values.of(BidPrice.price)), float(values.of(BidPrice.unpriced))
    ends: dict[tuple[str, float | str, str], list[RangeEnd]] = {}
    for trial, changed, missing in tried:
        more = round(changed - price, 2)
        if missing <= unpriced and abs(more) > _CENT:
            ends.setdefault((trial.label, trial.assumed, trial.unit_text), []).append(RangeEnd(trial.value, more))
    sensitivity = [Sensitivity(*named, ends=_outermost(found)) for named, found in ends.items()]
    return tuple(sorted(sensitivity, key=lambda move: -move.effect)[:SENSITIVITIES])


def _outermost(ends: list[RangeEnd]) -> tuple[RangeEnd, ...]:
    """The ends with the lowest and the highest price."""
    ordered = sorted(ends, key=lambda end: end.more)
    return (ordered[0], ordered[-1]) if len(ordered) > 1 else (ordered[0],)


@cache
def price_lines() -> frozenset[Declared]:
    """Everything that the price depends on."""
    found: set[Declared] = set()
    waiting: list[Declared] = [BidPrice.price, BidPrice.unpriced]
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
            float(values.of(TaskRates.low, place)),
            float(values.of(TaskRates.high, place)),
        )
        yield from _of_factor(values, TaskRates.usual, place, [low_hours, high_hours])


def _tasks(values: JobValues) -> list[int]:
    """The rows of the tasks with the widest range of labor cost."""

    def cost_range(place: int) -> float:
        hours = float(values.of(Task.high_hours, place)) - float(values.of(Task.low_hours, place))
        return hours * float(values.of(Task.rate, place))

    places = sorted(range(len(TASK.axis.words)), key=lambda place: -cost_range(place))
    return [place for place in places[:TASKS] if cost_range(place) > 0]


def _of_fact(job: JobInput, given: Input) -> Iterator[_Trial]:
    """The job with a fact that was not typed at each of its ends, on every row where it was not typed."""
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
    """The values to try: the other words of a choice, the limits of a number outside which the program asks."""
    if given.kind is Kind.CHOICE:
        return [word for word in given.words_allowed if word != given.default]
    low = given.ask_low if given.ask_low is not None else given.low
    high = given.ask_high if given.ask_high is not None else given.high
    return [float(end) for end in (low, high) if end is not None and end != given.default]


def _of_factor(values: JobValues, factor: Factor, place: int, ends: list[float]) -> Iterator[_Trial]:
    """The job with a factor at its usual value at each of its ends."""
    company = values.job.company
    if (factor, place) in company.factors:
        return
    assumed = float(values.of(factor, place))
    word = f", {factor.level.axis.words[place]}" if factor.level.axes else ""
    for end in ends:
        if end != assumed:
            changed = replace(company, factors={**company.factors, (factor, place): Entry(end)})
            yield _Trial(f"{factor.label}{word}", assumed, factor.unit_text, end, replace(values.job, company=changed))
