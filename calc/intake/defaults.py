"""What was not typed: every default filled in, and what is needed asked for."""

from __future__ import annotations

from dataclasses import replace

from calc.declared import Input, Kind
from calc.errors import Finding, InputRefused, Place, Severity
from calc.formula.levels import JOB, Level
from calc.intake.facts import place_of
from calc.intake.jobs_book import JobsBook
from calc.intake.named_rows import row_named
from calc.intake.records import DEFAULT, REFUSED, Entry, JobInput, Row
from calc.intake.schema import AREAS, GIVENS
from calc.trade.levels import AREA

Entries = dict[Input, Entry]


def fill(week: JobsBook, job: JobInput) -> None:
    """Gives every given of a job its default, and asks for what is needed and was not typed."""
    if not job.rows.get(AREA):
        week.findings.append(
            Finding(Severity.STOP, job.place, f"Job {job.id} has no area.", f"Type a row for it in {AREAS}.", job.id)
        )
    _resolve(week, job)
    for given in GIVENS:
        if given.level == JOB:
            _default(week, job, given, job, [])
        else:
            for row in job.rows.get(given.level, []):
                _default(week, job, given, row, _above(job, given.level, row.within))


def _resolve(week: JobsBook, job: JobInput) -> None:
    """Facts that name a row of the house book become the number of that row."""
    for given, entry in job.entries.items():
        if given.kind is Kind.ROW and given.rows is not None and isinstance(entry.value, str):
            try:
                number = row_named(entry.value, job.rows.get(given.rows, []), str(given.rows))
                job.entries[given] = replace(entry, value=number)
            except InputRefused as refused:
                place = place_of(entry, job.place, job.company)
                week.findings.append(
                    Finding(Severity.STOP, place, f"{given.label}: {refused.found}", refused.remedy, job.id)
                )


def _above(job: JobInput, level: Level, within: int) -> list[Entries]:
    """The entries of the area that a row lies within."""
    areas = job.rows.get(AREA, [])
    return [areas[within].entries] if AREA.axis in level.axes and level != AREA and within < len(areas) else []


def _default(week: JobsBook, job: JobInput, given: Input, row: JobInput | Row, above: list[Entries]) -> None:
    """Fills one given of ``row``; ``above`` are the entries of the rows that it lies within."""
    entry = row.entries.setdefault(given, Entry.not_typed(given))
    if entry.origin == REFUSED:
        return
    typed = entry.origin != DEFAULT
    cell = row.refs.get(given.header, "")
    blank = Place(row.place.book, row.place.sheet, cell) if cell else row.place
    if given.required and not typed and given.level != JOB:
        _ask_for(week, job, given, blank, f"{given.label} is blank.")
    if given.used_if is None:
        return
    asker, *words = given.used_if
    assert isinstance(asker, Input)
    asked = next((each[asker] for each in (row.entries, *above) if asker in each), Entry.not_typed(asker))
    if asked.origin == REFUSED:
        return
    where = f"where {asker.label.lower()} is {asked.value}"
    if given.needed_if is not None and asked.value in given.needed_if[1:] and not typed:
        at = blank if cell or given.level != JOB else place_of(asked, row.place, job.company)
        _ask_for(week, job, given, at, f"{given.label} is needed {where}, and it is blank.")
    if typed and asked.value not in words:
        at = place_of(entry, row.place, job.company)
        week.findings.append(Finding(Severity.NOTE, at, f"{given.label} is not used {where}.", "", job.id))


def _ask_for(week: JobsBook, job: JobInput, given: Input, place: Place, found: str) -> None:
    """Asks for a needed cell that is blank."""
    unit = f" in {given.unit_shown}" if given.unit_shown else ""
    week.findings.append(Finding(Severity.STOP, place, found, f"Type {given.label.lower()}{unit}.", job.id))
