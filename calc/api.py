"""The program as functions: read, evaluate and bid from a notebook or another program.

These are what the commands call. They print nothing and end no process: what was found comes back as findings, each
with its place and a remedy. ``import calc`` offers all of them: ``calc.bid(...)``.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import Executor
from dataclasses import asdict, dataclass
from datetime import date
from functools import cache
from os import PathLike
from pathlib import Path
from typing import Any, Generic, TypeVar, overload

from calc import batch
from calc.batch import Progress, Run
from calc.declared import Account, Declared, Factor, Input, Line, Override, Pack, Price, PriceDay, Taxed
from calc.errors import Finding
from calc.intake.records import JobInput
from calc.intake.schema import FACTORS, OVERRIDES, PRICES, everything
from calc.intake.values import serial
from calc.layout.worked import worked
from calc.model.results import JobValues


class UnknownJob(LookupError):
    """There is no job with the id that was asked for."""


Books = str | PathLike[str] | Sequence[str | PathLike[str]]
"""A jobs book, a folder of them or a pattern such as ``weeks/*.xlsx``; or several of these."""


@dataclass(frozen=True, slots=True)
class Declaration:
    """One row of the catalog: something that is declared once and appears everywhere."""

    id: str
    """Its lasting name, section and name: ``Order.quantity``."""
    kind: str
    """``line`` (computed), ``input``, ``factor``, ``price``, ``pack``, ``taxed``, ``date`` or ``override``."""
    label: str
    unit: str
    """Blank for words and for plain numbers."""
    level: str
    """What it has a value for each of: ``job``, ``area``, ``truck`` and so on."""
    sheet: str
    """The sheet of the job workbook for a line, a factor or a price; that of the input book for what is typed."""
    source: str
    """Where a line or a factor comes from; blank for what is typed."""
    words: str
    """The formula of a line in words; the help of what is typed."""


@dataclass(frozen=True, slots=True)
class Value(Declaration):
    """One value of a job: a declaration in one row of its level."""

    row: int
    """The number of the row within the job, from 1."""
    row_word: str
    """The name of the row, where the rows of its level have names."""
    value: float | str
    """A number in ``unit`` (NaN where none is given; a date counts days, as spreadsheet programs do), or words."""


Row = TypeVar("Row", bound=Declaration)


class _Table(Sequence[Row], Generic[Row]):
    """Records in order, by place; :meth:`to_frame` makes a pandas DataFrame of them."""

    def __init__(self, rows: Sequence[Row]) -> None:
        self._rows = tuple(rows)

    @overload
    def __getitem__(self, place: int) -> Row: ...
    @overload
    def __getitem__(self, place: slice) -> Sequence[Row]: ...
    def __getitem__(self, place: int | slice) -> Row | Sequence[Row]:
        return self._rows[place]

    def __len__(self) -> int:
        return len(self._rows)

    def named(self, id: str) -> list[Row]:
        """The rows with this id. Raises KeyError when there are none."""
        found = [row for row in self._rows if row.id == id]
        if not found:
            raise KeyError(id)
        return found

    def find(self, text: str) -> list[Row]:
        """The rows with ``text`` in their id or label, in whatever case."""
        wanted = text.casefold()
        return [row for row in self._rows if wanted in row.id.casefold() or wanted in row.label.casefold()]

    def to_frame(self) -> Any:
        """A pandas DataFrame with a column for each field; pandas is imported now and not before."""
        import pandas as pd

        return pd.DataFrame([asdict(row) for row in self._rows])


class Catalog(_Table[Declaration]):
    """Everything that is declared, in order of evaluation."""


class Values(_Table[Value]):
    """Every value of a job, in order of evaluation."""

    def __init__(self, rows: Sequence[Value], job: JobValues) -> None:
        super().__init__(rows)
        self.job = job

    def of(self, id: str, row: int = 1) -> float | str:
        """One value by its id, in the row with this number. Raises KeyError when there is none."""
        for each in self.named(id):
            if each.row == row:
                return each.value
        raise KeyError(f"{id} has no row {row} in this job")


@dataclass(frozen=True)
class Inputs:
    """What was read: the jobs that can be evaluated, and all that was found."""

    jobs: tuple[JobInput, ...]
    """The jobs without an error, in the order of the books."""
    findings: tuple[Finding, ...]
    """Errors, questions and notes, each with its cell and what to type instead."""
    held: tuple[str, ...]
    """The ids of the jobs that an error keeps from being evaluated."""
    failures: tuple[str, ...]
    """What could not be read at all."""

    def job(self, id: str) -> JobInput:
        """The job with this id. Raises KeyError when there is none, or when an error holds it back."""
        for each in self.jobs:
            if each.id == id:
                return each
        raise KeyError(id)


def read(
    books: Books, company: str | PathLike[str] | None = None, *, job: str = "", bid_date: date | None = None
) -> Inputs:
    """The jobs of jobs books, and the findings.

    Without ``company`` the company book is ``company.xlsx`` beside the first book. ``job`` takes one job alone;
    ``bid_date`` is the bid date of jobs that have none.

    :raises UnknownJob: when there is no such job.
    """
    run = _take(books, company, job, bid_date, None)
    return Inputs(
        tuple(batch.ready_jobs(run)), tuple(dict.fromkeys(run.findings)), tuple(run.not_written), tuple(run.failures)
    )


def check(
    books: Books,
    company: str | PathLike[str] | None = None,
    *,
    job: str = "",
    bid_date: date | None = None,
    progress: Progress | None = None,
) -> Run:
    """Finds everything that :func:`bid` would find, and writes nothing; the arguments are those of :func:`read`."""
    run = _take(books, company, job, bid_date, progress)
    batch.check(run)
    return run


def bid(
    books: Books,
    company: str | PathLike[str] | None = None,
    folder: str | PathLike[str] | None = None,
    *,
    job: str = "",
    bid_date: date | None = None,
    workers: int | None = None,
    progress: Progress | None = None,
    pool: Executor | None = None,
) -> Run:
    """Writes the workbook of every job of some jobs books, and ``week.xlsx``; the command ``flatwork bid``.

    The first arguments are those of :func:`read`. ``folder`` is for the workbooks, ``outputs`` beside the first book
    when None. ``workers`` is the number of processes, one for each core when None; ``pool`` does their work instead.
    A workbook that is there already, made from the same input by the same program, is left as it is.

    The run that comes back has ``written`` (job, file and how it was saved), ``findings``, ``failures``,
    ``not_written`` and
    ``code``, the exit code of the command. A file that cannot be read or written is a failure, and raises nothing.

    :raises UnknownJob: when there is no such job.
    """
    run = _take(books, company, job, bid_date, progress)
    run.folder = Path(folder) if folder is not None else run.input_folder / "outputs"
    if run.jobs:
        batch.bid(run, run.folder, workers, progress, pool)
    return run


def _take(
    books: Books, company: str | PathLike[str] | None, job: str, bid_date: date | None, progress: Progress | None
) -> Run:
    paths = [Path(books)] if isinstance(books, str | PathLike) else [Path(each) for each in books]
    run = batch.load_run(
        paths,
        Path(company) if company is not None else None,
        serial(bid_date) if bid_date is not None else None,
        job,
        progress,
    )
    if job and not run.jobs and not run.failures:
        raise UnknownJob(f"there is no job {job} in the input")
    return run


def evaluate(job: JobInput) -> Values:
    """Every value of a job that :func:`read` gave: inputs, factors, prices and lines, in order of evaluation."""
    (values,) = batch.evaluated([job])
    return Values(list(_values(values)), values)


def _values(job: JobValues) -> Iterator[Value]:
    for declared, facts in zip(everything(), lines(), strict=True):
        level = declared.level
        words = job.frame.rows_of(level).words
        start = job.starts[level]
        named = {field: getattr(facts, field) for field in _FIELDS}
        for index in range(job.count(level)):
            yield Value(**named, row=index + 1, row_word=str(words[start + index]), value=job.of(declared, index))


_FIELDS = tuple(Declaration.__dataclass_fields__)

_KINDS: tuple[tuple[type[Declared], str, Callable[[Any], str]], ...] = (
    (Line, "line", lambda line: line.section.sheet),
    (Input, "input", lambda given: given.section.table),
    (Factor, "factor", lambda _: FACTORS),
    (Price, "price", lambda _: PRICES),
    (Pack, "pack", lambda _: PRICES),
    (Taxed, "taxed", lambda _: PRICES),
    (Account, "account", lambda _: PRICES),
    (PriceDay, "date", lambda _: PRICES),
    (Override, "override", lambda _: OVERRIDES),
)
"""The kinds of declarations, and the sheet of each."""


@cache
def lines() -> Catalog:
    """The catalog: every declared input, factor, price and line, in order of evaluation."""
    return Catalog([_declaration(each) for each in everything()])


def _declaration(declared: Declared) -> Declaration:
    kind, sheet = next((kind, sheet) for type_, kind, sheet in _KINDS if isinstance(declared, type_))
    return Declaration(
        declared.id,
        kind,
        declared.label,
        declared.unit_text,
        str(declared.level),
        sheet(declared),
        getattr(declared, "source", ""),
        worked(declared) if isinstance(declared, Line) else declared.help,
    )
