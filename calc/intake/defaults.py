"""What was not typed: every default filled in, and what is needed asked for."""

from __future__ import annotations

from dataclasses import replace

from calc.declared import Given, Kind
from calc.errors import Finding, InputRefused, Place, Severity
from calc.formula.levels import JOB, Level
from calc.intake.facts import place_of
from calc.intake.fleet import row_named
from calc.intake.records import DEFAULT, NOT_GIVEN, Entry, JobInput
from calc.intake.schema import AREAS, GIVENS
from calc.intake.week import Week
from calc.trade.levels import AREA

Entries = dict[Given, Entry]


def fill(week: Week, job: JobInput) -> None:
    """Gives every given of a job its default, and asks for what is needed and was not typed."""
    if not job.rows.get(AREA):
        week.findings.append(
            Finding(Severity.STOP, job.place, f"Job {job.id} has no area.", f"Type a row for it in {AREAS}.", job.id)
        )
    _resolve(week, job)
    for given in GIVENS:
        if given.level == JOB:
            _default(week, given, [job.entries], job.place, job.id)
        else:
            for row in job.rows.get(given.level, []):
                _default(week, given, [row.entries, *_above(job, given.level, row.within)], row.place, job.id)


def _resolve(week: Week, job: JobInput) -> None:
    """Facts that name a row of the house book become the number of that row."""
    for given, entry in job.entries.items():
        if given.kind is Kind.ROW and given.rows is not None and isinstance(entry.value, str):
            try:
                number = row_named(entry.value, job.rows.get(given.rows, []), str(given.rows))
                job.entries[given] = replace(entry, value=number)
            except InputRefused as refused:
                place = place_of(entry, job.place, job.house)
                week.findings.append(
                    Finding(Severity.STOP, place, f"{given.label}: {refused.found}", refused.remedy, job.id)
                )


def _above(job: JobInput, level: Level, within: int) -> list[Entries]:
    """The entries of the area that a row lies within."""
    areas = job.rows.get(AREA, [])
    return [areas[within].entries] if AREA.axis in level.axes and level != AREA and within < len(areas) else []


def _default(week: Week, given: Given, entries: list[Entries], place: Place, job: str) -> None:
    """``entries`` are those of the given's own row, then those of the rows above it."""
    typed = given in entries[0] and entries[0][given].origin != DEFAULT
    if not typed and given not in entries[0]:
        entries[0][given] = Entry(NOT_GIVEN if given.default is None else given.default)
    if given.required and not typed and given.level != JOB:
        _ask_for(week, given, place, job, f"{given.label} is blank.")
    if given.used_if is None:
        return
    asker, *words = given.used_if
    assert isinstance(asker, Given)
    word = next((each[asker].value for each in entries if asker in each), asker.default)
    if given.needed_if is not None and word in words and not typed:
        _ask_for(
            week, given, place, job, f"{given.label} is needed where {asker.label.lower()} is {word}, and it is blank."
        )
    if typed and word not in words:
        text = f"{given.label} is not used where {asker.label.lower()} is {word}."
        week.findings.append(Finding(Severity.NOTE, place_of(entries[0][given], place, house), text, "", job))


def _ask_for(week: Week, given: Given, place: Place, job: str, found: str) -> None:
    """A needed cell that is blank; not again when it was typed and refused."""
    refused = any(
        each.job == job
        and each.severity is Severity.STOP
        and each.found.startswith(f"{given.label}")
        and each.place.sheet == place.sheet
        and _row(each.place) == _row(place)
        for each in week.findings
    )
    if not refused:
        unit = f" in {given.unit_text}" if given.unit_text and given.unit_text != "day" else ""
        week.findings.append(Finding(Severity.STOP, place, found, f"Type {given.label.lower()}{unit}.", job))


def _row(place: Place) -> str:
    return "".join(letter for letter in place.cell if letter.isdigit())
