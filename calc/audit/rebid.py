"""A jobs book from written job workbooks, to bid the same work again at current prices.

Inputs are copied as they were typed, as long as the cell still has that value. Where a cell was edited, the edit is
typed instead, in the unit of its header, and a note names the cell. What came from the company book is not copied.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path

from calc.audit.current_values import CurrentValue, current_value
from calc.audit.written_workbook import WrittenInput, WrittenWorkbook, read_written
from calc.blanks.blank import jobs_book
from calc.blanks.rows import Typed
from calc.declared import Input, Override
from calc.errors import Unreadable
from calc.files import write_new
from calc.formula.levels import JOB, Level
from calc.intake.records import EDGE_COLUMN
from calc.intake.schema import ACKNOWLEDGEABLE, AREAS, JOBS, OVERRIDABLE, OVERRIDES, SITE, TABLES, WEEK_TABLES, Heading
from calc.intake.spelling import normalize
from calc.layout.log_sheet import OVERRIDDEN
from calc.trade.inputs.areas import SHORT_EDGES, Edge
from calc.trade.inputs.job import Job
from calc.trade.levels import AREA, EDGE

Row = dict[str, Typed]
"""What to type in a row of the jobs book, by header."""

Values = dict[Input, CurrentValue]
"""The current values of a row, by input."""

_STOPS = {each.acknowledged: each.label for each in ACKNOWLEDGEABLE.values() if each.acknowledged is not None}
_LINES = {each.override: each.label for each in OVERRIDABLE.values() if each.override is not None}


@dataclass
class Rebid:
    """The result: the file, the jobs in it, notes about edited cells, and the workbooks that could not be read."""

    file: Path
    jobs: list[str] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    failures: list[str] = field(default_factory=list)
    written: bool = False

    @property
    def code(self) -> int:
        """The exit code: 3 when a workbook could not be read or the book not be written, else 0."""
        return 3 if self.failures else 0


def jobs_book_from(workbooks: Sequence[Path], file: Path, bid_date: date | None = None) -> Rebid:
    """Writes a jobs book with the jobs of all ``workbooks`` that can be read, unless ``file`` exists.

    ``bid_date`` is the bid date of all of them; None keeps what was typed.
    """
    result = Rebid(file)
    rows: dict[str, list[Row]] = {name: [] for name in WEEK_TABLES}
    for path in workbooks:
        try:
            _add(result, rows, read_written(path))
        except Unreadable as reason:
            result.failures.append(str(reason))
    if bid_date is not None:
        for row in rows[JOBS]:
            row[Job.bid_date.header] = bid_date.isoformat()
    if result.jobs:
        _save(result, rows)
    return result


def _save(result: Rebid, rows: dict[str, list[Row]]) -> None:
    try:
        write_new(result.file, jobs_book(rows))
        result.written = True
    except Unreadable as reason:
        result.failures.append(str(reason))


def _add(result: Rebid, rows: dict[str, list[Row]], job: WrittenWorkbook) -> None:
    """Adds the rows of one job; a job with an error adds none."""
    if normalize(job.id) in {normalize(each) for each in result.jobs}:
        raise job.refused(f"the job {job.id} is in another of the workbooks too. Leave one of them out")
    job_rows, notes = rows_of_job(job)
    result.jobs.append(job.id)
    result.notes += notes
    for name, more in job_rows.items():
        rows[name] += more


def rows_of_job(job: WrittenWorkbook) -> tuple[dict[str, list[Row]], list[str]]:
    """The rows of the jobs book for one job, by sheet, with a note on each edited cell.

    Raises Unreadable when a cell has a value that cannot be typed, such as an error.
    """
    notes: list[str] = []
    of_job: Values = {}
    of_rows: dict[Level, list[Values]] = {level: [{} for _ in range(count)] for level, count in job.counts.items()}
    overrides: list[tuple[WrittenInput, CurrentValue]] = []
    for each in job.inputs():
        value = current_value(job, each)
        notes += [value.note] if value.note else []
        if isinstance(each.named, Input) and value.in_jobs_book:
            (of_job if each.named.level == JOB else of_rows[each.named.level][each.index])[each.named] = value
        elif isinstance(each.named, Override) and not _is_off(each.named, value):
            overrides.append((each, value))
    rows = {JOBS: [{"job": job.id, **_columns(of_job, JOBS)}], SITE: list(_facts(job, of_job))}
    areas = job.words(AREA)
    rows[AREAS] = [{"job": job.id, "area": word} for word in areas]
    for level, values in of_rows.items():
        _add_rows(job, rows, level, values, areas)
    rows[OVERRIDES] = [_override(job, each, value, areas, notes) for each, value in overrides]
    return rows, notes


def _is_off(override: Override, value: CurrentValue) -> bool:
    """Whether the cell overrides no line, or acknowledges no stop."""
    return value.typed == "" or (override in _STOPS and value.typed == "0")


def _columns(values: Values, table: str) -> Row:
    """The columns of a table that a row fills."""
    return {given.header: value.typed for given, value in values.items() if given.section.table == table}


def _facts(job: WrittenWorkbook, values: Values) -> list[Row]:
    """The rows of Site conditions, also for facts that were typed in a column of Jobs."""
    return [
        {"job": job.id, "fact": given.header, "value": value.typed, "notes": value.remark}
        for given, value in values.items()
        if given.section.table == SITE
    ]


def _add_rows(
    job: WrittenWorkbook, rows: dict[str, list[Row]], level: Level, values: Sequence[Values], areas: Sequence[str]
) -> None:
    """Adds the rows of one level to its table."""
    table = next(name for name in WEEK_TABLES if TABLES[name].level == level and level != JOB)
    if level == AREA:
        for row, of_row in zip(rows[AREAS], values, strict=True):
            row.update(_columns(of_row, table))
        return
    rows[table] = []
    if AREA.axis not in level.axes:
        rows[table] = [{"job": job.id, **_columns(of_row, table)} for of_row in values]
        return
    area_of = [job.row_above(level, index, AREA) for index in range(len(values))]
    for place, word in enumerate(areas):
        in_area = [of_row for of_row, area in zip(values, area_of, strict=True) if area == place]
        columns = _edge_columns(in_area) if level == EDGE else None
        if columns is not None:
            rows[AREAS][place] |= columns
            continue
        rows[table] += [
            {"job": job.id, "area": word, **_columns(of_row, table)} for of_row in in_area if not _is_blank(of_row)
        ]


def _edge_columns(edges: Sequence[Values]) -> Row | None:
    """The edge columns of an area, when they can express all of its edges; None when it needs rows of Edges."""
    if len(edges) != len(SHORT_EDGES):
        return None
    row: Row = {}
    for values, (_, columns) in zip(edges, SHORT_EDGES, strict=True):
        headers = {given: Heading(label.lower(), given.unit_text).header for label, given in columns}
        if not _is_edge_column(values) or not set(values) <= {Edge.kind, *headers}:
            return None
        row |= {headers[given]: each.typed for given, each in values.items() if given != Edge.kind}
    return row


def _is_edge_column(edge: Values) -> bool:
    """Whether the edge was typed in a column of Areas, and its kind was not edited."""
    kind = edge.get(Edge.kind)
    return kind is not None and kind.origin == EDGE_COLUMN and not kind.is_edited


def _is_blank(row: Values) -> bool:
    """Whether a row is a blank edge column of Areas."""
    return set(row) == {Edge.kind} and _is_edge_column(row)


def _override(
    job: WrittenWorkbook, each: WrittenInput, value: CurrentValue, areas: Sequence[str], notes: list[str]
) -> Row:
    """The row of Overrides of an overridden line or an acknowledged stop, with its reason and initials."""
    assert isinstance(each.named, Override)
    label = _LINES.get(each.named) or _STOPS[each.named]
    row: Row = {"job": job.id, "line": label, "value": "" if each.named in _STOPS else value.typed}
    if each.named.level == AREA:
        row["area"] = areas[each.index]
    origin = each.as_typed.origin if each.as_typed is not None else None
    logged = next((entry for entry in job.log(OVERRIDDEN) if entry.where == origin), None)
    if logged is not None:
        return row | {"reason": logged.reason, "who": logged.who, "notes": logged.notes}
    reason, who = _new_reason(each.remark)
    if not reason:
        place = job.place_of(each)
        notes.append(f"{place}: {label} was overridden without a reason. Type reason and who in {OVERRIDES}.")
    return row | {"reason": reason, "who": who}


def _new_reason(remark: str) -> tuple[str, str]:
    """The reason and the initials typed later next to an overridden line, as in ``probed (RK)``."""
    reason, bracket, who = remark.strip().removesuffix(")").rpartition(" (")
    return (reason, who) if bracket else (remark.strip(), "")
