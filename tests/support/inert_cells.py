"""Typed cells that do nothing: jobs with something in every other column, drawn by chance, and each cell changed.

A cell is inert when no line of its job is another after the change and no finding stands at the cell. Words that are
only shown are not tried: that they are shown is asked of the workbook (`missing_text`).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, fields, is_dataclass, replace
from pathlib import Path
from random import Random

import numpy as np

from books import Rows, book_of
from calc.cells import Book
from calc.declared import Declared, Input, Kind, Line
from calc.formula.compute import Batch
from calc.formula.levels import JOB, Level
from calc.intake.read_run import has_error, read_run
from calc.intake.records import Entry, Intake, JobInput, Row
from calc.intake.schema import ROW_TABLES, TABLES, everything, facts_of
from calc.model.evaluate import evaluate
from calc.trade.papers.catalog import PAPERS
from whole_job import whole_company

SITE = "Site conditions"
AREAS = 2
"""Areas of a drawn job."""


def drawn_week(chance: Random, jobs: Sequence[str]) -> dict[str, Rows]:
    """A jobs book in which each column of each table is typed by chance, and what other columns need always."""
    week: dict[str, list[list[object]]] = {
        name: [[heading.header for heading in TABLES[name].headings]]
        for name in ("Jobs", "Areas", SITE, *ROW_TABLES, "Plants", "Changes")
    }
    for job in jobs:
        above = _drawn_row(chance, facts_of("Jobs"), {})
        week["Jobs"].append(_cells("Jobs", {"job": job}, above))
        facts = _drawn_row(chance, facts_of(SITE), above)
        week[SITE] += [[job, given.label, value] for given, value in facts.items()]
        for number in range(1, AREAS + 1):
            area = _drawn_row(chance, facts_of("Areas"), {})
            week["Areas"].append(_cells("Areas", {"job": job, "area": f"A{number}"}, area))
            for name in ROW_TABLES:
                rows = [_drawn_row(chance, facts_of(name), area) for _ in range(_rows_of(chance, name, area))]
                for place, row in enumerate(rows):
                    typed = {given: _part(name, given, value) for given, value in _in_order(name, row, place).items()}
                    week[name].append(_cells(name, {"job": job, "area": f"A{number}"}, typed))
        for name in ("Plants", "Changes"):
            for _ in range(chance.choice((0, 1, 2))):
                week[name].append(_cells(name, {"job": job}, _drawn_row(chance, facts_of(name), {})))
    return week


def _rows_of(chance: Random, table: str, area: dict[Input, object]) -> int:
    """How many rows an area has in a table: as many as its shape needs, else a few."""
    shapes = {"Cross-sections": ("cross-sections", 3), "Outline points": ("outline points", 4)}
    shape, needed = shapes.get(table, ("", 0))
    return needed if shape in area.values() else chance.choice((0, 0, 1, 2, 3))


SMALL = {"Deductions": 0.05, "Footings": 0.1}
"""Parts of an area, as a share of what would be usual for a whole one."""


def _cells(table: str, keys: dict[str, object], typed: dict[Input, object]) -> list[object]:
    by_header = keys | {given.header: value for given, value in typed.items()}
    return [by_header.get(heading.header) for heading in TABLES[table].headings]


CORNERS = ((0, 0), (12, 0), (12, 9), (0, 9))


def _part(table: str, given: Input, value: object) -> object:
    small = isinstance(value, float) and table in SMALL and given.unit_text in ("ft", "ft2")
    return round(SMALL[table] * value, 2) if small else value


def _in_order(table: str, row: dict[Input, object], place: int) -> dict[Input, object]:
    """Stations one behind the other, and points around a rectangle."""
    for given in row:
        if given.id == "CrossSection.station":
            row[given] = 4 * place
        if given.id in ("OutlineCorner.x", "OutlineCorner.y"):
            row[given] = CORNERS[place][given.id.endswith("y")]
    return row


def _drawn_row(chance: Random, columns: Sequence[Input], above: dict[Input, object]) -> dict[Input, object]:
    """Values for some of the columns, and for all that are needed by what was drawn."""
    typed: dict[Input, object] = {}
    share = chance.choice((0.1, 0.3, 0.6, 0.9))
    for given in columns:
        if given.kind in (Kind.TEXT, Kind.ROW) and given.needed_if is None:
            continue
        needed = given.required or (given.needed_if is not None and _meets(given.needed_if, {**above, **typed}))
        if needed or chance.random() < share:
            typed[given] = drawn(chance, given)
    return typed


def _meets(condition: tuple[Input | str, ...], typed: dict[Input, object]) -> bool:
    choice, *words = condition
    assert isinstance(choice, Input)
    return typed.get(choice, choice.default) in words


def drawn(chance: Random, given: Input) -> object:
    """Something that may be typed, as people usually type it."""
    match given.kind:
        case Kind.CHOICE:
            return chance.choice(given.words_allowed)
        case Kind.DATE:
            return f"2026-0{chance.randint(4, 6)}-{chance.randint(10, 28)}"
        case Kind.NUMBER | Kind.SLOPE:
            return _drawn_number(chance, given)
    return given.example or given.label


def _drawn_number(chance: Random, given: Input) -> float | str:
    limits = given.limits
    low = next((each for each in (limits.ask_low, limits.low, limits.over) if each is not None), 0.0)
    high = next((each for each in (limits.ask_high, limits.high) if each is not None), low + 10)
    high = min(high, low + 30)
    value = float(f"{low + (high - low) * chance.uniform(0.05, 0.95):.4g}")
    return float(round(value)) if given.whole else f"{value:g}%" if given.kind is Kind.SLOPE else value


@dataclass(frozen=True)
class Typed:
    """A typed cell of a job: its input, the row it is in, and its entry."""

    given: Input
    place: int
    entry: Entry

    def __str__(self) -> str:
        return f"{self.given.id} {self.entry.typed} in {self.entry.origin}"


def typed_cells(job: JobInput) -> Iterator[Typed]:
    """Every cell of the jobs book that was typed for a job, but for words."""
    for given, entry in job.entries.items():
        if _is_tried(given, entry):
            yield Typed(given, 0, entry)
    for rows in job.rows.values():
        for place, row in enumerate(rows):
            for given, entry in row.entries.items():
                if _is_tried(given, entry):
                    yield Typed(given, place, entry)


def _is_tried(given: Input, entry: Entry) -> bool:
    sheet, _, cell = entry.origin.partition("!")
    says_nothing_new = entry.value == given.default
    return bool(cell) and sheet in TABLES and given.kind not in (Kind.TEXT, Kind.ROW) and not says_nothing_new


def changed(chance: Random, job: JobInput, cell: Typed) -> Iterator[JobInput]:
    """The job with something else in a cell, a few ways: other words, a number much less and much more, nothing."""
    given = cell.given
    if given.kind is Kind.CHOICE:
        values: list[float | str] = [word for word in given.words_allowed if word != cell.entry.value]
    elif given.kind is Kind.DATE:
        values = [float(cell.entry.value) + step for step in (-40, -1, 1, 9)]
    else:
        values = [given.limits.low or 0.0 if given.limits.over is None else given.limits.over + 0.001]
        values += [float(cell.entry.value) * share for share in (0.5, 1.5)]
        too_large = given.section.table in SMALL  # to fit into its area
        values += [given.limits.high] if given.limits.high is not None and not too_large else []
        if given.whole:
            values = [float(round(float(value))) + 1.0 for value in values]
    for value in values:
        if value != cell.entry.value:
            yield with_entry(job, cell, replace(cell.entry, value=value))
    if not given.required:
        yield with_entry(job, cell, Entry.not_typed(given))


def with_entry(job: JobInput, cell: Typed, entry: Entry) -> JobInput:
    """The job with another entry in a cell."""
    if cell.given.level == JOB:
        return replace(job, entries=job.entries | {cell.given: entry})
    level: Level = cell.given.level
    rows: list[Row] = list(job.rows[level])
    rows[cell.place] = replace(rows[cell.place], entries=rows[cell.place].entries | {cell.given: entry})
    return replace(job, rows=job.rows | {level: rows})


CHUNK = 150

STATED = {
    "CrossSection.old_joint": "an old joint at an end of the slab, or of a slab whose joints are not laid out",
    "Edge.surface": "asks for a larger hole, where the hole is not larger already",
    "Footing.reinforced": "makes chipping slower, where the footing is chipped",
    "Footing.sides": "are bonded, where the footing stands in the slab",
    "Footing.treatment": "is for a footing that stands in the slab",
    "Forecast.plan": "is asked for where evaporation is high",
    "Access.wheelbarrow": "matters where concrete could be wheeled",
    "AreaUse.street_grade": "matters where it is steeper than the usual street",
    "Job.soil": "is dug, where the job digs",
    "Permissions.cables": "matters where it is dug",
    "Change.billed_with": "moves money, where the change has an amount",
    "Site.bond_coats": "matters where a footing that stands in the slab is bonded",
    "Site.keep_backfill": "keeps what is filled back, where there is any",
    "Deduction.isolation": "goes around it, where the length around it is known",
    "PaperFacts.arrives": "is asked of the plant, where trucks come",
    "Site.moisture": "is of soil, where some is hauled",
}
"""Facts of the site and the work that are true of a job whether or not they move a number of it, and when they do."""


def printed() -> set[Declared]:
    """The inputs that stand on a paper as they were typed."""
    found: list[object] = [PAPERS]
    inputs = set()
    while found:
        each = found.pop()
        if isinstance(each, Input):
            inputs.add(each)
        elif isinstance(each, tuple | list):
            found += each
        elif is_dataclass(each) and not isinstance(each, type):
            found += [getattr(each, field.name) for field in fields(each)]
    return inputs


def inert_cells(intake: Intake, chance: Random) -> tuple[list[Typed], set[Input]]:
    """The typed cells of the jobs without errors that change no line and have no finding; inputs that change one."""
    told = {f"{each.place.sheet}!{each.place.cell}" for each in intake.findings}
    inert: list[Typed] = []
    moving: set[Input] = set()
    for job in intake.jobs:
        if has_error(job, intake.findings):
            continue
        cells = [cell for cell in typed_cells(job) if cell.entry.origin not in told]
        ways = [(cell, way) for cell in cells for way in changed(chance, job, cell)]
        moved: set[int] = set()
        for start in range(0, len(ways), CHUNK):
            some = ways[start : start + CHUNK]
            frame = evaluate([job, *(way for _, way in some)])
            differs = _differing(frame)
            moved |= {id(cell) for place, (cell, _) in enumerate(some, start=1) if differs[place]}
        inert += [cell for cell in cells if id(cell) not in moved]
        moving |= {cell.given for cell in cells if id(cell) in moved}
    return inert, moving


def _differing(frame: Batch) -> Sequence[bool]:
    """For each job of a chunk whether any of its lines is another than that of the first job."""
    differs = np.zeros(frame.jobs, dtype=bool)
    for named in everything():
        if isinstance(named, Line):
            column, job_of = frame.columns[named], frame.rows_of(named.level).job
            ends = np.searchsorted(job_of, np.arange(frame.jobs + 1))
            first = column[: ends[1]]
            if (ends[1:] - ends[:-1] == len(first)).all():
                table = column.reshape(frame.jobs, len(first)) if len(first) else column.reshape(frame.jobs, 0)
                same = table == first
                if column.dtype == float:
                    same |= np.isnan(table) & np.isnan(first)
                differs |= ~same.all(axis=1)
            else:
                for job in range(1, frame.jobs):
                    part = column[ends[job] : ends[job + 1]]
                    differs[job] |= len(part) != len(first) or not _same(part, first)
    return differs.tolist()


def _same(one: np.ndarray, other: np.ndarray) -> bool:
    equal = one == other
    if one.dtype == float:
        equal = equal | (np.isnan(one) & np.isnan(other))
    return bool(np.all(equal))


def drawn_intake(seed: int, jobs: int, folder: Path) -> tuple[Book, Intake]:
    """The jobs that are drawn from a seed, with the company that has everything."""
    chance = Random(seed)
    book = book_of(folder / "week.xlsx", drawn_week(chance, [f"J{number}" for number in range(jobs)]))
    return book, read_run([book], book_of(folder / "company.xlsx", whole_company()))
