"""The tables with several rows per job: its areas, the rows within an area, its plants and its changes."""

from __future__ import annotations

from itertools import takewhile

from calc.cells import Cell, Kind, Sheet
from calc.declared import Input
from calc.errors import FindingKind
from calc.formula.levels import Level
from calc.intake.facts import place_of
from calc.intake.jobs_book import RENAME, JobsBook, entries_of, id_of, job_of, read_entry
from calc.intake.records import EDGE_COLUMN, Entry, JobInput, Row
from calc.intake.schema import AREAS, ROW_TABLES, TABLES, Heading, facts_of
from calc.intake.spelling import did_you_mean, normalize
from calc.intake.tables import TableRow, read_table
from calc.trade.inputs.areas import SHORT_EDGES, Edge
from calc.trade.levels import AREA, EDGE

EdgeColumns = dict[tuple[str, int], dict[Input, Entry]]
"""The entries in the edge columns of one row of Areas, by kind of edge and its position."""


def read_areas(jobs_book: JobsBook, sheet: Sheet | None) -> dict[str, list[EdgeColumns]]:
    """Reads Areas into the jobs, and returns the entries of its edge columns: for each job a list by area."""
    columns: dict[str, list[EdgeColumns]] = {}
    for row, job in _rows_of_jobs(jobs_book, sheet, AREAS):
        areas = job.rows.setdefault(AREA, [])
        word = id_of(jobs_book, row, "area", "area id", job.id) or str(len(areas) + 1)
        if normalize(word) in {normalize(each.word) for each in areas}:
            found = f'The area id "{word}" is used twice in job {job.id}.'
            jobs_book.add(FindingKind.DUPLICATE_AREA, row.at(row.cells.get("area")), found, RENAME, job.id)
        areas.append(Row(word, row.place, 0, dict(entries_of(jobs_book, row, facts_of(AREAS), job.id)), row.refs))
        columns.setdefault(normalize(job.id), []).append(_edge_columns(jobs_book, row, job))
    return columns


def _edge_columns(jobs_book: JobsBook, row: TableRow, job: JobInput) -> EdgeColumns:
    found: EdgeColumns = {}
    for position, (kind, columns) in enumerate(SHORT_EDGES):
        for label, given in columns:
            heading = Heading(label.lower(), given.unit_text)
            cell = row.cells.get(heading.header)
            entry = read_entry(jobs_book, row, given, cell, row.units.get(heading.header, given.unit_text), job.id)
            if entry is not None:
                found.setdefault((kind, position), {})[given] = entry
    return found


def read_rows_within_areas(
    jobs_book: JobsBook, sheets: dict[str, Sheet], columns: dict[str, list[EdgeColumns]]
) -> None:
    """Reads the tables with rows within an area; an area without rows in Edges takes its edges from ``columns``."""
    for name in ROW_TABLES:
        level = TABLES[name].level
        for row, job in _rows_of_jobs(jobs_book, sheets.get(name), name):
            area = _area_index(jobs_book, row, job)
            if area is not None:
                entries = dict(entries_of(jobs_book, row, facts_of(name), job.id))
                job.rows.setdefault(level, []).append(Row("", row.place, area, entries, row.refs))
    for job in jobs_book.jobs.values():
        _add_edges(jobs_book, job, columns.get(normalize(job.id), []))
        for level, rows in job.rows.items():
            if level.axes and AREA.axis in level.axes and level != AREA:
                rows.sort(key=lambda each: each.within)


def read_rows_of_job(jobs_book: JobsBook, sheet: Sheet | None, name: str, level: Level) -> None:
    """Reads a table whose rows belong to the job as a whole."""
    for row, job in _rows_of_jobs(jobs_book, sheet, name):
        entries = dict(entries_of(jobs_book, row, facts_of(name), job.id))
        job.rows.setdefault(level, []).append(Row("", row.place, 0, entries, row.refs))


def _rows_of_jobs(jobs_book: JobsBook, sheet: Sheet | None, name: str) -> list[tuple[TableRow, JobInput]]:
    if sheet is None:
        return []
    rows, findings = read_table(jobs_book.book, sheet, TABLES[name])
    jobs_book.findings += findings
    pairs = []
    totals = totals_rows(rows) if name == AREAS else []
    for row in totals:
        found = (
            f"Row {row.number} has numbers and no job below the rows that have one. It was taken for a total, not bid."
        )
        remedy = "Type its job if it is an area, or clear the row."
        jobs_book.add(FindingKind.TOTALS_ROW, row.place, found, remedy)
    for row in (each for each in rows if each not in totals):
        id_ = id_of(jobs_book, row, "job", "job id")
        job = None if id_ is None else job_of(jobs_book, id_, row.at(row.cells.get("job")))
        if job is not None:
            pairs.append((row, job))
    return pairs


def totals_rows(rows: list[TableRow]) -> list[TableRow]:
    """The rows at the end of a table that hold sums: numbers only, without job and area, which stand apart from rows
    that have a job, or add up what is above them.
    """
    ends = list(takewhile(_is_bare, reversed(rows)))[::-1]
    above = rows[: len(rows) - len(ends)]
    if not above and len(ends) > 1:
        above, ends = ends[:-1], ends[-1:]
    with_job = any("job" in row.cells for row in above)
    apart = bool(ends and above) and ends[0].number > above[-1].number + 1
    return [row for row in ends if (with_job and apart) or _adds_up(row, above)]


def _is_bare(row: TableRow) -> bool:
    """Whether a row has neither a job nor an area, and nothing but numbers."""
    return not {"job", "area"} & row.cells.keys() and all(cell.kind is Kind.NUMBER for cell in row.cells.values())


def _adds_up(row: TableRow, above: list[TableRow]) -> bool:
    """Whether every number of a row is the sum of the numbers above it, of at least two rows."""
    return len(above) > 1 and all(
        abs(sum(_number(each.cells.get(header)) for each in above) - _number(cell)) <= NEAR_ENOUGH
        for header, cell in row.cells.items()
    )


def _number(cell: Cell | None) -> float:
    """The number in a cell; 0 for none."""
    return float(cell.value) if cell is not None and isinstance(cell.value, (int, float)) else 0.0


NEAR_ENOUGH = 1e-6
"""How far a sum may be off, as a spreadsheet program rounds."""


def _area_index(jobs_book: JobsBook, row: TableRow, job: JobInput) -> int | None:
    """The index of the area that a row belongs to; in a job with one area its id may be blank."""
    areas = job.rows.get(AREA, [])
    word = id_of(jobs_book, row, "area", "area id", job.id)
    if word is None:
        return None
    if not word and len(areas) == 1:
        return 0
    for index, area in enumerate(areas):
        if word and normalize(area.word) == normalize(word):
            return index
    kind = FindingKind.UNKNOWN_AREA if word else FindingKind.MISSING_AREA_ID
    if word:
        found = f'Job {job.id} has no area "{word}".'
    else:
        found = f"The area id is blank, and job {job.id} has {'several areas' if areas else 'no area'}."
    remedy = did_you_mean(word, [area.word for area in areas]) if areas else f"Type a row for it in {AREAS}."
    jobs_book.add(kind, row.at(row.cells.get("area")), found, remedy, job.id)
    return None


def _add_edges(jobs_book: JobsBook, job: JobInput, columns: list[EdgeColumns]) -> None:
    """Adds the edges of the edge columns of Areas; an area with rows in Edges too is an error."""
    edges = job.rows.setdefault(EDGE, [])
    with_rows = {edge.within for edge in edges}
    for index, area in enumerate(job.rows.get(AREA, [])):
        typed = columns[index] if index < len(columns) else {}
        if index in with_rows:
            for entry in (entry for entries in typed.values() for entry in entries.values()):
                place = place_of(entry, area.place, job.company)
                found = f"The edges of area {area.word} are typed both in Edges and in a column of Areas."
                jobs_book.add(FindingKind.DUPLICATE_EDGES, place, found, "Keep one of the two.", job.id)
            continue
        for position, (kind, _) in enumerate(SHORT_EDGES):
            entries = typed.get((kind, position), {})
            edges.append(Row("", area.place, index, {Edge.kind: Entry(kind, "", kind, EDGE_COLUMN), **entries}))
