"""The sheet Log: defaults used, overrides with their reasons, notes, and the files that made the workbook."""

from __future__ import annotations

from collections.abc import Iterator

from calc._version import __version__
from calc.declared import Kind
from calc.errors import Finding
from calc.formula.levels import JOB
from calc.intake.records import DEFAULT, Entry, JobInput
from calc.intake.schema import FACTOR_LIST, INPUTS
from calc.layout.line_sheets import open_page
from calc.layout.page import CellValue, Constant, Page

NAME = "Log"
_HEADS = ("What", "Value", "Unit", "Where", "Note", "Who")
_WIDTHS = (38.0, 22.0, 10.0, 34.0, 62.0, 12.0)
OVERRIDDEN = "Overridden lines and acknowledged stops"
ITS_NOTES = "its notes"
"""The name of the row below an overridden line that holds the notes of the override."""

Entered = tuple[str, CellValue, str, str, str] | tuple[str, CellValue, str, str, str, str]
"""One row of the Log: what, value, unit, where, note, and who, where that is known."""


def log_rows(job: JobInput) -> list[tuple[str, list[Entered]]]:
    """The blocks of the Log, each with a title."""
    return [
        ("Left as usual", list(_left_as_usual(job))),
        (OVERRIDDEN, list(_overridden(job))),
        ("Questions and notes", [_finding(each) for each in job.findings]),
        ("Identity", list(_identity(job))),
    ]


def count_defaults(job: JobInput) -> int:
    """How many inputs of the job have their default value."""
    return sum(entry.origin == DEFAULT for entry in _entries(job))


def count_factors(job: JobInput) -> int:
    """How many factors have their usual value."""
    return sum(
        (factor, place) not in job.company.factors for factor in FACTOR_LIST for place in range(len(factor.values))
    )


def _entries(job: JobInput) -> Iterator[Entry]:
    """Every input of the job but texts."""
    for given in INPUTS:
        if given.kind is Kind.TEXT:
            continue
        if given.level == JOB:
            yield job.entries[given]
        else:
            yield from (row.entries[given] for row in job.rows.get(given.level, []))


def log_page(job: JobInput) -> Page:
    """The sheet; it is fixed at issue, and its length is the job's own."""
    page = open_page(NAME, "Log: fixed at issue", _WIDTHS, _HEADS)
    for title, rows in log_rows(job):
        for col in range(len(_HEADS)):
            page.words(col, f"{title} ({len(rows)})" if col == 0 else "", "section")
        page.next()
        for row in rows:
            for col, value in enumerate(row):
                if value not in ("", None):
                    page.put(Constant(page.row, col, "issue", value))
                    page.fit(str(value), col)
            page.next()
        page.next()
    return page


def _left_as_usual(job: JobInput) -> Iterator[Entered]:
    """How much was left as usual, and where it stands."""
    yield "Inputs with their default value", count_defaults(job), "", "Measured", "shown there as default"
    yield "Factors with their usual value", count_factors(job), "", "Factors", "shown there without a cell at the right"


def _overridden(job: JobInput) -> Iterator[Entered]:
    for (override, _), entry in job.overrides.items():
        yield override.label, entry.value, override.unit_text, entry.origin, entry.reason, entry.who
        if entry.notes:
            yield ITS_NOTES, None, "", entry.origin, entry.notes


def _finding(each: Finding) -> Entered:
    place = f"{each.place.sheet}!{each.place.cell}" if each.place.cell else each.place.sheet
    return each.severity.word, None, "", place, f"{each.found} {each.remedy}".strip()


def _identity(job: JobInput) -> Iterator[Entered]:
    yield "Program", f"flatwork-calc {__version__}", "", "", ""
    yield "Input workbook", job.place.book, "", "", f"sha256 {job.sha256}"
    yield (
        "Company book",
        job.company.name or "none",
        "",
        "",
        f"sha256 {job.company.sha256}" if job.company.sha256 else "",
    )
