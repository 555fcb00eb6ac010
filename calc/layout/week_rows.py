"""What the week's workbook shows of each job, and of all of them together."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from math import isnan

from calc.declared import Caution, Declared, Line, Severity
from calc.formula.functions import FUNCTIONS, NONE
from calc.layout.caution_table import active_cautions, open_stops
from calc.layout.checks_sheet import failed
from calc.layout.week_dates import STYLES, DateStyle
from calc.layout.week_grid import Places
from calc.model.results import (
    JobDays,
    JobValues,
    RefusedLoad,
    RentalDay,
    RentalUse,
    SharedTruck,
    SmallPour,
    WeekCalendar,
)
from calc.trade.inputs.job import Company, Job
from calc.trade.inputs.money import Terms
from calc.trade.levels import BOARD
from calc.trade.money.cost_rows import ROWS
from calc.trade.money.costs import CostTable
from calc.trade.money.price import BidPrice
from calc.trade.money.week import COLUMNS, LENT, WeekComparison

READY, NOT_READY, NOT_WRITTEN = "READY", "NOT READY", "not written"
TAX = "Sales tax"


@dataclass(frozen=True, slots=True)
class LedgerRow:
    """One cost of a job; an unknown rate is NaN."""

    label: str
    quantity: float
    unit: str
    rate: float
    taxed: str
    group: str
    account: str

    @property
    def amount(self) -> float:
        """Quantity times rate to the cent, 0 where the rate is not known."""
        return 0.0 if isnan(self.rate) else float(FUNCTIONS["money"].numbers(self.quantity * self.rate))


@dataclass(frozen=True, slots=True)
class ToldCaution:
    """An active caution: its severity, what it is about, what was found and what to do."""

    severity: str
    caution: str
    found: str
    do: str
    acknowledged: bool


@dataclass(frozen=True, slots=True)
class WeekRow:
    """The row of a job, kept when its workbook is written. ``reason`` is why it is not ready, in words."""

    job: str
    file: str
    client: str
    bid_date: float
    pour_date: float
    quantities: tuple[float, ...]
    state: str
    reason: str
    caution: str
    cautions: tuple[ToldCaution, ...]
    """Every active caution, the most severe first."""
    ledger: tuple[LedgerRow, ...]
    address: str
    by_area: float
    usual: tuple[float, float]
    pour: SmallPour
    days: JobDays
    rentals: tuple[RentalUse, ...] = ()
    lent: tuple[tuple[str, float, str], ...] = ()
    """What is brought and taken home again: its name, how much of it, and the unit."""
    company: str = ""
    dates: str = "words"

    def of(self, line: Line) -> float:
        """A quantity or an amount of the job, one of :data:`calc.trade.money.week.COLUMNS`."""
        return self.quantities[COLUMNS.index(line)]


@dataclass(frozen=True, slots=True)
class UnwrittenJob:
    """A job whose workbook was not written, with the first reason."""

    job: str
    reason: str
    client: str = ""


@dataclass(frozen=True)
class Week:
    """The jobs of a run in their order, and what looking across them found."""

    jobs: Sequence[WeekRow | UnwrittenJob]
    review: Mapping[str, str]
    """For each job what looks odd beside the other jobs, in words; a dash for nothing."""
    shared: Sequence[SharedTruck]
    refused: Sequence[RefusedLoad]
    calendar: WeekCalendar
    rentals: Sequence[RentalDay]

    @cached_property
    def rows(self) -> Sequence[WeekRow]:
        """The jobs that were written."""
        return [each for each in self.jobs if isinstance(each, WeekRow)]

    @cached_property
    def unwritten(self) -> Sequence[UnwrittenJob]:
        """The jobs that were not."""
        return [each for each in self.jobs if isinstance(each, UnwrittenJob)]

    @cached_property
    def counts(self) -> Mapping[tuple[str, float], tuple[int, float]]:
        """The crews and the people that are counted with each job on each day."""
        return {(job, day.day): counted for day in self.calendar.days for job, counted in day.counted.items()}

    @cached_property
    def places(self) -> Places:
        """Where each table stands."""
        return Places()

    @property
    def dates(self) -> DateStyle:
        """How the company writes dates."""
        return STYLES[self.rows[0].dates]


def week_row(job: JobValues, file: str, pour: SmallPour, days: JobDays, rentals: tuple[RentalUse, ...] = ()) -> WeekRow:
    """The row of a job whose workbook is ``file``; ``pour``, ``days`` and ``rentals`` are what is compared of it."""
    reasons = list(_reasons(job))
    client = str(job.of(Job.client))
    return WeekRow(
        job=job.job.id,
        file=file,
        client="" if client == NONE else client,
        bid_date=float(job.of(Job.bid_date)),
        pour_date=float(job.of(Job.pour_date)),
        quantities=tuple(float(job.of(_whole(each))) for each in COLUMNS),
        state=NOT_READY if reasons else READY,
        reason=" ".join(reasons),
        caution=_worst_caution(job),
        cautions=tuple(_told(job, each) for each in active_cautions(job)),
        ledger=tuple(each for each in _ledger(job) if each.quantity),
        address=str(job.of(Job.address)),
        by_area=float(job.of(BidPrice.per_ft2)),
        usual=(float(job.of(WeekComparison.low)), float(job.of(WeekComparison.high))),
        pour=pour,
        days=days,
        rentals=rentals,
        lent=tuple(each for each in _lent(job) if each[1]),
        company=str(job.of(Company.name)),
        dates=str(job.of(Company.dates)),
    )


def _whole(line: Line) -> Declared:
    """The line for the whole job."""
    return line.all_rows if line.all_rows is not None else line


def _reasons(job: JobValues) -> Iterator[str]:
    """Why a bid may not be sent, the most severe first."""
    for each in open_stops(job):
        yield f"{each.label}: {each.do}"
    unpriced = [row.label for index, row in enumerate(ROWS) if float(job.of(CostTable.unpriced, index))]
    if unpriced:
        count = "1 cost has" if len(unpriced) == 1 else f"{len(unpriced)} costs have"
        yield f"{count} no price: {'; '.join(unpriced)}."
    misses = failed(job)
    if misses:
        yield f"{'1 check fails' if misses == 1 else f'{misses} checks fail'}: see Checks of its workbook."


_CALLED = {Severity.STOP: "STOP", Severity.CAUTION: "Caution", Severity.NOTE: "Note"}


def _worst_caution(job: JobValues) -> str:
    """The most severe active caution; an open stop before one that was acknowledged."""
    worst = next(iter([*open_stops(job), *active_cautions(job)]), None)
    if worst is None:
        return "none"
    acknowledged = worst.open is not None and job.of(worst.open) != 1
    return f"{'Acknowledged' if acknowledged else _CALLED[worst.severity]}: {worst.label[0].lower()}{worst.label[1:]}"


def _told(job: JobValues, each: Caution) -> ToldCaution:
    acknowledged = each.open is not None and job.of(each.open) != 1
    return ToldCaution(_CALLED[each.severity].lower(), each.label, str(job.of(each.found)), each.do, acknowledged)


def _ledger(job: JobValues) -> Iterator[LedgerRow]:
    """One row for every cost, and one for the tax."""
    for index, cost in enumerate(ROWS):
        known = float(job.of(CostTable.known, index)) > 0
        yield LedgerRow(
            cost.label,
            float(job.of(CostTable.quantity, index)),
            cost.unit_text,
            float(job.of(CostTable.rate, index)) if known else float("nan"),
            str(job.of(CostTable.taxed, index)),
            cost.group,
            str(job.of(CostTable.account, index)),
        )
    rate = float(job.of(Terms.tax))
    rate = float(job.of(BidPrice.tax_rate)) if isnan(rate) else rate
    taxed = float(job.of(BidPrice.taxed)) if float(job.of(BidPrice.tax)) else 0.0
    yield LedgerRow(TAX, taxed, "$", rate / 100, "no", "tax", str(job.of(Company.tax_account)))


def _lent(job: JobValues) -> Iterator[tuple[str, float, str]]:
    boards, stakes = LENT
    for index, word in enumerate(BOARD.axis.words):
        yield f"Form lumber {word}", float(job.of(boards, index)), boards.unit_text
    yield "Form stakes", float(job.of(stakes)), stakes.unit_text
