"""Inputs that were not typed: defaults are filled in, and required inputs are reported."""

from __future__ import annotations

from dataclasses import replace

from calc.declared import Input, Kind
from calc.errors import FindingKind, InputRefused, Place
from calc.formula.levels import JOB, Level
from calc.intake.facts import place_of
from calc.intake.jobs_book import JobsBook
from calc.intake.named_rows import row_named
from calc.intake.records import DEFAULT, REFUSED, Entry, JobInput, Row
from calc.intake.schema import AREAS, INPUTS, TABLES
from calc.intake.values import labeled
from calc.trade.levels import AREA

Entries = dict[Input, Entry]


def fill_defaults(jobs_book: JobsBook, job: JobInput) -> None:
    """Gives every input of a job that was not typed its default, and reports the required ones."""
    if not job.rows.get(AREA):
        remedy = f"Type a row for it in {AREAS}."
        jobs_book.add(FindingKind.MISSING_AREA, job.place, f"Job {job.id} has no area.", remedy, job.id)
    _resolve_names(jobs_book, job)
    for given in INPUTS:
        if given.level == JOB:
            _fill(jobs_book, job, given, job, [])
        else:
            for row in job.rows.get(given.level, []):
                _fill(jobs_book, job, given, row, _above(job, given.level, row.within))


def _resolve_names(jobs_book: JobsBook, job: JobInput) -> None:
    """Replaces the name of a row of the company book by the number of that row."""
    for given, entry in job.entries.items():
        if given.kind is Kind.ROW and given.rows is not None and isinstance(entry.value, str):
            try:
                number = row_named(entry.value, job.rows.get(given.rows, []), str(given.rows))
                job.entries[given] = replace(entry, value=number)
            except InputRefused as refused:
                error = labeled(given.label, refused)
                place = place_of(entry, job.place, job.company)
                jobs_book.add(error.kind, place, error.found, error.remedy, job.id)


def _above(job: JobInput, level: Level, within: int) -> list[Entries]:
    """The entries of the area that a row belongs to."""
    areas = job.rows.get(AREA, [])
    return [areas[within].entries] if AREA.axis in level.axes and level != AREA and within < len(areas) else []


def _fill(jobs_book: JobsBook, job: JobInput, given: Input, row: JobInput | Row, above: list[Entries]) -> None:
    """Fills one input of ``row``; ``above`` are the entries of the row that it belongs to."""
    entry = row.entries.setdefault(given, Entry.not_typed(given))
    if entry.origin == REFUSED:
        return
    typed = entry.origin != DEFAULT
    if typed and given.names is not None and row is job:
        _check_offered(jobs_book, job, given, entry)
    cell = row.refs.get(given.header, "")
    blank = Place(row.place.book, row.place.sheet, cell) if cell else row.place
    if given.required and not typed and given.level != JOB:
        _report_missing(jobs_book, job, given, blank, f"{given.label} is blank.")
    if given.used_if is None:
        return
    controlling, *choices = given.used_if
    assert isinstance(controlling, Input)
    typed_in = (each[controlling] for each in (row.entries, *above) if controlling in each)
    choice = next(typed_in, Entry.not_typed(controlling))
    if choice.origin == REFUSED:
        return
    condition = f"{controlling.label.lower()} is {choice.value}"
    if given.needed_if is not None and choice.value in given.needed_if[1:] and not typed:
        place = blank if cell or given.level != JOB else place_of(choice, row.place, job.company)
        _report_missing(jobs_book, job, given, place, f"{given.label} is blank, and required when {condition}.")
    if typed and choice.value not in choices:
        place = place_of(entry, row.place, job.company)
        jobs_book.add(FindingKind.UNUSED_INPUT, place, f"{given.label} is not used when {condition}.", "", job.id)


def _check_offered(jobs_book: JobsBook, job: JobInput, given: Input, entry: Entry) -> None:
    """Reports the choice of a row that the job does not have, for lack of the typed rows that it is made of."""
    assert given.names is not None
    axis = given.names.axis
    counts = {level: len(job.rows.get(level, [])) for level in axis.needs if level != JOB}
    offered = given.words_offered(counts)
    if entry.value not in offered:
        needed = axis.needs[axis.words.index(str(entry.value))]
        table = next(name for name, table in TABLES.items() if table.level == needed)
        found = f'{given.label}: "{entry.value}" is for a job with rows in {table}, and it has none.'
        place = place_of(entry, job.place, job.company)
        jobs_book.add(FindingKind.INVALID_CHOICE, place, found, f"Type one of: {', '.join(offered)}.", job.id)


def _report_missing(jobs_book: JobsBook, job: JobInput, given: Input, place: Place, found: str) -> None:
    unit = f" ({given.unit_shown})" if given.unit_shown else ""
    jobs_book.add(FindingKind.MISSING_INPUT, place, found, f"Type {given.label.lower()}{unit}.", job.id)
