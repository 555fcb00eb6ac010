"""The tables whose rows lie below a job: its areas, what is listed within an area, and its plants."""

from __future__ import annotations

from calc.cells import Sheet
from calc.declared import Input
from calc.errors import Finding, Severity
from calc.formula.levels import Level
from calc.intake.facts import place_of
from calc.intake.jobs_book import JobsBook, entries_of, id_of, job_of, read_entry
from calc.intake.records import BY_COLUMN, Entry, JobInput, Row
from calc.intake.schema import AREAS, ROW_TABLES, TABLES, Heading, facts_of
from calc.intake.spelling import did_you_mean, normalize
from calc.intake.tables import TableRow, read_table
from calc.trade.inputs.areas import SHORT_EDGES, Edge
from calc.trade.levels import AREA, EDGE

Shorts = dict[tuple[str, int], dict[Input, Entry]]
"""What the edge columns of Areas hold for each area of a job, by kind of edge."""


def read_areas(week: JobsBook, sheet: Sheet | None) -> dict[str, list[Shorts]]:
    """Reads Areas into the jobs, and gives what its edge columns hold: for each job a list by area."""
    shorts: dict[str, list[Shorts]] = {}
    for row, job in _rows_of_jobs(week, sheet, AREAS):
        listed = job.rows.setdefault(AREA, [])
        word = id_of(week, row, "area", "area id", job.id) or str(len(listed) + 1)
        if normalize(word) in {normalize(each.word) for each in listed}:
            week.stop(
                row,
                row.cells.get("area"),
                f'The area id "{word}" stands twice in job {job.id}.',
                "Give one of them another id.",
                job.id,
            )
        listed.append(Row(word, row.place, 0, dict(entries_of(week, row, facts_of(AREAS), job.id)), row.refs))
        shorts.setdefault(normalize(job.id), []).append(_short_edges(week, row, job))
    return shorts


def _short_edges(week: JobsBook, row: TableRow, job: JobInput) -> Shorts:
    found: Shorts = {}
    for place, (kind, columns) in enumerate(SHORT_EDGES):
        for label, given in columns:
            heading = Heading(label.lower(), given.unit_text)
            cell = row.cells.get(heading.header)
            entry = read_entry(week, row, given, cell, row.units.get(heading.header, given.unit_text), job.id)
            if entry is not None:
                found.setdefault((kind, place), {})[given] = entry
    return found


def read_listed(week: JobsBook, sheets: dict[str, Sheet], shorts: dict[str, list[Shorts]]) -> None:
    """Reads the tables whose rows lie within an area; an area without edges takes them from the edge columns."""
    for name in ROW_TABLES:
        level = TABLES[name].level
        for row, job in _rows_of_jobs(week, sheets.get(name), name):
            place = _area_of(week, row, job)
            if place is not None:
                entries = dict(entries_of(week, row, facts_of(name), job.id))
                job.rows.setdefault(level, []).append(Row("", row.place, place, entries, row.refs))
    for job in week.jobs.values():
        _add_short_edges(week, job, shorts.get(normalize(job.id), []))
        for level, rows in job.rows.items():
            if level.axes and AREA.axis in level.axes and level != AREA:
                rows.sort(key=lambda each: each.within)


def read_by_job(week: JobsBook, sheet: Sheet | None, name: str, level: Level) -> None:
    """Reads a table whose rows belong to the job as a whole."""
    for row, job in _rows_of_jobs(week, sheet, name):
        entries = dict(entries_of(week, row, facts_of(name), job.id))
        job.rows.setdefault(level, []).append(Row("", row.place, 0, entries, row.refs))


def _rows_of_jobs(week: JobsBook, sheet: Sheet | None, name: str) -> list[tuple[TableRow, JobInput]]:
    if sheet is None:
        return []
    rows, found = read_table(week.book, sheet, TABLES[name])
    week.findings += found
    pairs = []
    for row in rows:
        id_ = id_of(week, row, "job", "job id")
        job = None if id_ is None else job_of(week, id_, row.at(row.cells.get("job")))
        if job is not None:
            pairs.append((row, job))
    return pairs


def _area_of(week: JobsBook, row: TableRow, job: JobInput) -> int | None:
    """The place of the area that a row belongs to; in a job with one area its id may be blank."""
    areas = job.rows.get(AREA, [])
    word = id_of(week, row, "area", "area id", job.id)
    if word is None:
        return None
    if not word and len(areas) == 1:
        return 0
    for place, area in enumerate(areas):
        if word and normalize(area.word) == normalize(word):
            return place
    text = f'Job {job.id} has no area "{word}".' if word else f"The area id is blank, and job {job.id} has several."
    week.stop(row, row.cells.get("area"), text, did_you_mean(word, [area.word for area in areas]), job.id)
    return None


def _add_short_edges(week: JobsBook, job: JobInput, shorts: list[Shorts]) -> None:
    edges = job.rows.setdefault(EDGE, [])
    listed = {edge.within for edge in edges}
    for place, area in enumerate(job.rows.get(AREA, [])):
        found = shorts[place] if place < len(shorts) else {}
        if place in listed:
            for entry in (entry for entries in found.values() for entry in entries.values()):
                at = place_of(entry, area.place, job.company)
                text = f"Area {area.word} has rows in Edges, and an edge column of Areas too."
                week.findings.append(Finding(Severity.STOP, at, text, "Leave one of the two.", job.id))
            continue
        for number, (kind, _) in enumerate(SHORT_EDGES):
            given = found.get((kind, number), {})
            edges.append(Row("", area.place, place, {Edge.kind: Entry(kind, "", kind, BY_COLUMN), **given}))
