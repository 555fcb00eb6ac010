"""Published figures as rows of tables: who says so, how it is known, what a user types for it, what must come out.

A reader who finds another figure adds a row to one of the tables in ``published_*.py`` and writes no code: a row
names declarations by their ids, so it outlives a label that is reworded and a column that moves.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import Enum
from pathlib import Path

from books import COMPANY as BENCH_HOUSE
from books import Rows, given, intake_from, line
from calc.batch import evaluated
from calc.declared import Input, Price
from calc.intake.read_run import has_error
from calc.intake.schema import AREAS, FACTORS, JOBS, PRICES, SITE, facts_of
from calc.model.results import JobValues


class Known(Enum):
    """How a published figure is known."""

    SEEN = "seen in print"
    QUOTED = "as quoted: seen in a quotation of the source"
    PARTLY = "partly seen in print, partly from memory"
    MEMORY = "from memory"
    ARITHMETIC = "arithmetic"
    CONSTRUCTED = "constructed: published rules, our numbers, arithmetic"


@dataclass(frozen=True)
class Typed:
    """One row that a user types: the section whose givens it fills, and what is typed for each by its name.

    A given of another section in the same row goes by its id, such as ``AreaUse.cross_slope``.
    """

    section: str
    cells: tuple[tuple[str, float | str], ...]


def typed(section: str, **cells: float | str) -> Typed:
    """A typed row: ``typed("Area", length=40, width="3 ft")`` is a row of Areas."""
    return Typed(section, tuple(cells.items()))


@dataclass(frozen=True)
class CompanyBook:
    """What the company book says for a figure: its own factors (id, kind or blank, value), vehicle, packs and site.

    A pack is a price by its id, what it costs and what it holds. Blank is the company book of the bench.
    """

    factors: tuple[tuple[str, str, float | str], ...] = ()
    vehicle: Typed | None = None
    packs: tuple[tuple[str, float, float], ...] = ()
    site: Typed | None = None

    def tables(self) -> dict[str, Rows]:
        """The sheets of the company book."""
        tables = dict(BENCH_HOUSE)
        if self.factors:
            rows = [[line(name).label, kind, value] for name, kind, value in self.factors]
            tables[FACTORS] = [["factor", "for", "value"], *rows]
        for name, row in (("trailer", self.vehicle), ("dump", self.site)):
            if row:
                cells = [(_given(row.section, given), value) for given, value in row.cells]
                named = cells[0][0].section
                head = [named.level.axis.name, *(given.header for given, _ in cells)]
                tables[named.table] = [head, [name, *(value for _, value in cells)]]
        if self.packs:
            rows = [[line(name).label, price, _sold_by(name), size] for name, price, size in self.packs]
            tables[PRICES] = [["item", "price", "unit", "size"], *rows]
        return tables


@dataclass(frozen=True)
class Says:
    """What a line must say: between ``low`` and ``high`` in a row of its level, or the ratio of it to ``over``."""

    line: str
    low: float
    high: float
    row: int = 0
    over: str = ""


def says(name: str, expected: float, within: float = 0, *, row: int = 0, over: str = "") -> Says:
    """A line equals ``expected``, give or take ``within``; without it, but for the rounding of floats."""
    within = within or 1e-9 * max(1.0, abs(expected))
    return Says(name, expected - within, expected + within, row, over)


def between(name: str, low: float, high: float, *, row: int = 0, over: str = "") -> Says:
    """A line lies within a published range."""
    return Says(name, low, high, row, over)


def printed(name: str, figure: str, *, row: int = 0, over: str = "") -> Says:
    """A line equals a figure as it was printed, such as ``"0.80"``, to half a unit of its last decimal."""
    half = 0.5 * 10.0 ** -len(figure.partition(".")[2])
    return says(name, float(figure), half * (1 + 1e-9), row=row, over=over)


@dataclass(frozen=True)
class Published:
    """A published figure. ``name`` says what it is, in the words of the trade."""

    name: str
    source: str
    known: Known
    typed: tuple[Typed, ...]
    says: tuple[Says, ...]
    company: CompanyBook = CompanyBook()
    """The company book, where the publication takes another factor than the house's usual one."""


@dataclass(frozen=True)
class Usual:
    """What a publication says of a factor, from ``low`` to ``high``; ``kind`` picks one of a factor that goes by kind.

    ``departs`` is blank where the usual value lies within, ``RANGE`` where it does not but the factor's range
    does hold what is published, and else the words of the factor's source that say why it is another.
    """

    factor: str
    low: float
    high: float
    source: str
    known: Known
    kind: str = ""
    departs: str = ""


RANGE = "the range holds it"


def slab(length: float | str, width: float | str, thickness: float | str = 4, **more: float | str) -> Typed:
    """An area that is a strip."""
    return typed("Area", length=length, width=width, thickness=thickness, **more)


def fixed(yards: float | str, area: Typed | None = None) -> tuple[Typed, ...]:
    """An area, a small one unless it is given, and an order of so many yards, by the fixed rule."""
    return area or slab(10, 4), typed("Ordering", rule="fixed", fixed=yards, reason="as published")


def bid_all(folder: Path, figures: Sequence[Published]) -> dict[str, JobValues]:
    """The values of every figure's job, by name: a book for each company book, all jobs in one evaluation."""
    by_company: dict[CompanyBook, dict[str, Published]] = {}
    for number, figure in enumerate(figures, start=1):
        by_company.setdefault(figure.company, {})[str(number)] = figure
    intakes = [intake_from(folder, week_of(jobs), company.tables()) for company, jobs in by_company.items()]
    ready = [job for intake in intakes for job in intake.jobs if not has_error(job, intake.findings)]
    assert len(ready) == len(figures), "\n".join(str(each) for intake in intakes for each in intake.findings)
    return {figures[int(job.job.id) - 1].name: job for job in evaluated(ready)}


def week_of(jobs: Mapping[str, Published]) -> dict[str, Rows]:
    """A jobs book with a job for every figure, by job id."""
    sheets: dict[str, list[Mapping[str, object]]] = {}
    for id_, figure in jobs.items():
        job: dict[str, object] = {"job": id_}
        sheets.setdefault(JOBS, []).append(job)
        job |= {given.header: given.example for given in facts_of(JOBS) if given.required}
        for row in figure.typed:
            _add_row(sheets, id_, job, row)
    return {name: _table(rows) for name, rows in sheets.items()}


def _add_row(sheets: dict[str, list[Mapping[str, object]]], job: str, facts: dict[str, object], row: Typed) -> None:
    """Adds a typed row to its sheet; facts of the job go in its row of Jobs, or down the page of Site conditions."""
    givens = [(_given(row.section, name), value) for name, value in row.cells]
    sheet = givens[0][0].section.table
    if sheet == JOBS:
        facts |= {given.header: value for given, value in givens}
    elif sheet == SITE:
        sheets.setdefault(SITE, []).extend({"job": job, "fact": given.label, "value": value} for given, value in givens)
    else:
        cells: dict[str, object] = {"job": job, **{given.header: value for given, value in givens}}
        if sheet == AREAS:
            cells["area"] = f"A{1 + sum(each['job'] == job for each in sheets.get(AREAS, []))}"
        sheets.setdefault(sheet, []).append(cells)


def _sold_by(name: str) -> str:
    found = line(name)
    assert isinstance(found, Price), f"{found.id} is no price"
    return found.unit_text.partition("/")[2]


def _given(section: str, name: str) -> Input:
    return given(name if "." in name else f"{section}.{name}")


def _table(rows: Sequence[Mapping[str, object]]) -> Rows:
    """Rows of many figures under one header: what a figure does not type is a blank cell."""
    header = list(dict.fromkeys(head for row in rows for head in row))
    return [header, *([row.get(head) for head in header] for row in rows)]
