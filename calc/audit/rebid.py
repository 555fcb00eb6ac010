"""An input book out of written job workbooks, as typed, to bid the same work again at today's prices.

What was typed goes in as it was typed, as long as it still reads as what its cell holds. Where somebody edited the
cell, the edit counts, in the unit of its header, and a note names the cell. What the house book gave stays there.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path

from calc.audit.current_values import CurrentValue, current_value
from calc.audit.written_workbook import Written, WrittenInput, read_written
from calc.blanks.blank import jobs_book
from calc.blanks.rows import Typed
from calc.declared import Input, Override
from calc.errors import Unreadable
from calc.files import write_new
from calc.formula.levels import JOB, Level
from calc.intake.records import BY_COLUMN
from calc.intake.schema import ACKNOWLEDGEABLE, AREAS, JOBS, OVERRIDABLE, OVERRIDES, SITE, TABLES, WEEK_TABLES, Heading
from calc.intake.spelling import normalize
from calc.layout.log_sheet import ITS_NOTES, OVERRIDDEN
from calc.trade.inputs.areas import SHORT_EDGES, Edge
from calc.trade.levels import AREA, EDGE

Row = dict[str, Typed]
"""What is typed in a row, by header."""

Filled = dict[Input, CurrentValue]
"""What a row holds now, by input."""

_STOPS = {each.acknowledged: each.label for each in ACKNOWLEDGEABLE.values() if each.acknowledged is not None}
_LINES = {each.override: each.label for each in OVERRIDABLE.values() if each.override is not None}

_NOT_OVERRIDDEN = {False: ("",), True: ("", "0")}
"""What a cell says that forces no line, and one that accepts no stop."""


@dataclass
class Rebid:
    """What came of it: the book that was written, the jobs in it, what a person should know, and what failed."""

    file: Path
    jobs: list[str] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    failures: list[str] = field(default_factory=list)
    written: bool = False

    @property
    def code(self) -> int:
        """The exit code: 3 when a workbook could not be read or the book not be written, else 0."""
        return 3 if self.failures else 0


def jobs_book_from(workbooks: Sequence[Path], file: Path) -> Rebid:
    """Writes a week's book of all the ``workbooks`` that can be read; none is written over another file."""
    made = Rebid(file)
    rows: dict[str, list[Row]] = {name: [] for name in WEEK_TABLES}
    for path in workbooks:
        try:
            _add(made, rows, read_written(path))
        except Unreadable as reason:
            made.failures.append(str(reason))
    if made.jobs:
        _save(made, rows)
    return made


def _save(made: Rebid, rows: dict[str, list[Row]]) -> None:
    try:
        write_new(made.file, jobs_book(rows))
        made.written = True
    except Unreadable as reason:
        made.failures.append(str(reason))


def _add(made: Rebid, rows: dict[str, list[Row]], job: Written) -> None:
    """Adds one job; one that cannot be read to its end adds nothing."""
    if normalize(job.id) in {normalize(each) for each in made.jobs}:
        raise job.refused(f"the job {job.id} stands in another of the workbooks too. Leave one of them out")
    typed, notes = typed_again(job)
    made.jobs.append(job.id)
    made.notes += notes
    for name, more in typed.items():
        rows[name] += more


def typed_again(job: Written) -> tuple[dict[str, list[Row]], list[str]]:
    """The rows of the week's book that give this job, by sheet, with a note on each cell that somebody edited.

    Raises Unreadable when a cell holds what nobody can type, such as an error.
    """
    notes: list[str] = []
    of_job: Filled = {}
    of_rows: dict[Level, list[Filled]] = {level: [{} for _ in range(count)] for level, count in job.counts.items()}
    override: list[tuple[WrittenInput, CurrentValue]] = []
    for each in job.inputs():
        held = current_value(job, each)
        notes += [held.note] if held.note else []
        if isinstance(each.named, Input) and held.goes_in:
            (of_job if each.named.level == JOB else of_rows[each.named.level][each.index])[each.named] = held
        elif isinstance(each.named, Override) and held.typed not in _NOT_OVERRIDDEN[each.named in _STOPS]:
            override.append((each, held))
    rows = {JOBS: [{"job": job.id, **_cells(of_job, JOBS)}], SITE: list(_facts(job, of_job))}
    areas = job.words(AREA)
    rows[AREAS] = [{"job": job.id, "area": word} for word in areas]
    for level, filled in of_rows.items():
        _put_rows(job, rows, level, filled, areas)
    rows[OVERRIDES] = [_override(job, each, held, areas, notes) for each, held in override]
    return rows, notes


def _cells(filled: Filled, table: str) -> Row:
    """The columns of a table that a row fills."""
    return {given.header: held.typed for given, held in filled.items() if given.section.table == table}


def _facts(job: Written, filled: Filled) -> list[Row]:
    """The rows of Site conditions; a fact that was a column of Jobs is a row all the same."""
    return [
        {"job": job.id, "fact": given.header, "value": held.typed, "notes": held.beside}
        for given, held in filled.items()
        if given.section.table == SITE
    ]


def _put_rows(
    job: Written, rows: dict[str, list[Row]], level: Level, filled: Sequence[Filled], areas: Sequence[str]
) -> None:
    """The rows of one level, each under the table that it is typed in."""
    table = next(name for name in WEEK_TABLES if TABLES[name].level == level and level != JOB)
    if level == AREA:
        for row, held in zip(rows[AREAS], filled, strict=True):
            row.update(_cells(held, table))
        return
    rows[table] = []
    if AREA.axis not in level.axes:
        rows[table] = [{"job": job.id, **_cells(held, table)} for held in filled]
        return
    lie_in = [job.within(level, index, AREA) for index in range(len(filled))]
    for place, word in enumerate(areas):
        inside = [held for held, area in zip(filled, lie_in, strict=True) if area == place]
        short = _short_edges(inside) if level == EDGE else None
        if short is not None:
            rows[AREAS][place] |= short
            continue
        rows[table] += [
            {"job": job.id, "area": word, **_cells(held, table)} for held in inside if not _is_blank_column(held)
        ]


def _short_edges(edges: Sequence[Filled]) -> Row | None:
    """The edge columns of an area, where all that its edges hold fits them; None where they need rows of Edges."""
    if len(edges) != len(SHORT_EDGES):
        return None
    row: Row = {}
    for held, (_, columns) in zip(edges, SHORT_EDGES, strict=True):
        headers = {given: Heading(label.lower(), given.unit_text).header for label, given in columns}
        if not _is_by_column(held) or not set(held) <= {Edge.kind, *headers}:
            return None
        row |= {headers[given]: each.typed for given, each in held.items() if given != Edge.kind}
    return row


def _is_by_column(edge: Filled) -> bool:
    """Whether an edge column of Areas gave the edge, and its kind is still the column's."""
    kind = edge.get(Edge.kind)
    return kind is not None and kind.origin == BY_COLUMN and not kind.edited


def _is_blank_column(row: Filled) -> bool:
    """Whether a row is an edge column of Areas that nobody filled."""
    return set(row) == {Edge.kind} and _is_by_column(row)


def _override(job: Written, each: WrittenInput, held: CurrentValue, areas: Sequence[str], notes: list[str]) -> Row:
    """The row of Overrides of a forced line or an accepted stop, with its reason and who said so."""
    assert isinstance(each.named, Override)
    label = _LINES.get(each.named) or _STOPS[each.named]
    row: Row = {"job": job.id, "line": label, "value": "" if each.named in _STOPS else held.typed}
    if each.named.level == AREA:
        row["area"] = areas[each.index]
    log = job.log(OVERRIDDEN)
    told = {found[0]: found for found in log if each.told is not None and found[3] == each.told.origin}
    if each.named.label in told:
        _, _, _, _, reason, who = told[each.named.label]
        return row | {"reason": reason, "who": who, "notes": told[ITS_NOTES][4] if ITS_NOTES in told else ""}
    reason, who = _new_reason(each.beside, [found for found in log if found[0] == each.named.label])
    if not reason:
        notes.append(f"{job.at(each)}: {label} was forced without a word why: type reason and who in {OVERRIDES}.")
    return row | {"reason": reason, "who": who}


def _new_reason(beside: str, log: Sequence[Sequence[str]]) -> tuple[str, str]:
    """The reason and the name that somebody typed since beside a forced line, as in ``probed (RK)``."""
    for found in log:
        beside = beside.replace(f"{found[4]} ({found[5]})", "", 1)
    reason, bracket, who = beside.strip().removesuffix(")").rpartition(" (")
    return (reason, who) if bracket else (beside.strip(), "")
