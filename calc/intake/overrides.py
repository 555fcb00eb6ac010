"""Lines that a person forces, and stops that a person accepts: each needs a reason and a name."""

from __future__ import annotations

from dataclasses import replace

from calc.cells import Cell, Sheet
from calc.declared import Override
from calc.errors import InputRefused
from calc.formula.levels import JOB
from calc.intake.facts import origin_of
from calc.intake.jobs_book import JobsBook, job_of
from calc.intake.records import Entry, JobInput
from calc.intake.schema import ACKNOWLEDGEABLE, OVERRIDABLE, OVERRIDES, TABLES
from calc.intake.spelling import did_you_mean, normalize
from calc.intake.tables import TableRow, read_table
from calc.intake.values import read_id, read_number, read_words


def read_overrides(week: JobsBook, sheet: Sheet | None) -> None:
    """Reads the sheet Overrides into the jobs of ``week``."""
    if sheet is None:
        return
    rows, found = read_table(week.book, sheet, TABLES[OVERRIDES])
    week.findings += found
    for row in rows:
        try:
            id_ = read_id(row.cells["job"], "job id") if "job" in row.cells else ""
        except InputRefused as refused:
            week.stop(row, row.cells["job"], refused.found, refused.remedy, "")
            continue
        job = job_of(week, id_, row.at(row.cells.get("job")))
        if job is not None:
            try:
                _read_override(job, row)
            except _Refused as refused:
                week.stop(row, refused.cell, refused.found, refused.remedy, job.id)


class _Refused(InputRefused):
    """An override that cannot be read, with the cell that is to be mended."""

    def __init__(self, cell: Cell | None, found: str, remedy: str) -> None:
        super().__init__(found, remedy)
        self.cell = cell


def _read_override(job: JobInput, row: TableRow) -> None:
    name = row.cells.get("line")
    if name is None:
        raise _Refused(None, "An override without a line.", "Type the line that is forced.")
    typed = normalize(str(name.value))
    for wanted in ("reason", "who"):
        if wanted not in row.cells:
            raise _Refused(name, f'The override of "{name.value}" has no {wanted}.', f"Type {_why(wanted)}.")
    reason, who, notes = (_words(row, label) for label in ("reason", "who", "notes"))
    if typed in ACKNOWLEDGEABLE:
        acknowledged = ACKNOWLEDGEABLE[typed].acknowledged
        assert acknowledged is not None
        _refuse_more(job, acknowledged, row)
        job.overrides[acknowledged, 0] = Entry(1.0, "", "accepted", origin_of(row, name), reason, who, notes)
        return
    if typed not in OVERRIDABLE:
        labels = [each.label for each in (*OVERRIDABLE.values(), *ACKNOWLEDGEABLE.values())]
        raise _Refused(
            name, f'There is no line "{name.value}" that may be forced.', did_you_mean(str(name.value), labels)
        )
    override = OVERRIDABLE[typed].override
    assert override is not None
    place = _row_of(job, override, row)
    if (override, place) in job.overrides:
        raise _Refused(name, f"{name.value} is forced twice.", "Leave one of the two rows.")
    job.overrides[override, place] = replace(_value(row, override), reason=reason, who=who, notes=notes)


def _refuse_more(job: JobInput, acknowledged: Override, row: TableRow) -> None:
    """A stop is accepted once, for the whole job, and without a value: more may be meant for another line."""
    name = row.cells["line"]
    place = _row_of(job, acknowledged, row)
    if "value" in row.cells:
        raise _Refused(row.cells["value"], f"{name.value} is a stop: it takes no value.", "Leave the value blank.")
    if (acknowledged, place) in job.overrides:
        raise _Refused(name, f"{name.value} is accepted twice.", "Leave one of the two rows.")


def _words(row: TableRow, label: str) -> str:
    """The words of a column, blank when the cell is."""
    cell = row.cells.get(label)
    try:
        return "" if cell is None else read_words(cell)
    except InputRefused as refused:
        raise _Refused(cell, refused.found, refused.remedy) from None


def _why(wanted: str) -> str:
    return "why it is forced" if wanted == "reason" else "the initials of whoever forces it"


def _row_of(job: JobInput, override: Override, row: TableRow) -> int:
    """Which row of its level the override is for: 0 for a line of the whole job."""
    cell = row.cells.get("area")
    if override.level == JOB:
        if cell is not None:
            raise _Refused(cell, f"{row.cells['line'].value} is a line of the whole job.", "Leave the area blank.")
        return 0
    rows = job.rows.get(override.level, [])
    if cell is None:
        if len(rows) == 1:
            return 0
        raise _Refused(row.cells["line"], f"{row.cells['line'].value} goes by area.", "Type which area.")
    try:
        word = read_id(cell, "area id")
    except InputRefused as refused:
        raise _Refused(cell, refused.found, refused.remedy) from None
    words = [normalize(each.word) for each in rows]
    if normalize(word) not in words:
        raise _Refused(cell, f'Job {job.id} has no area "{word}".', did_you_mean(word, [each.word for each in rows]))
    return words.index(normalize(word))


def _value(row: TableRow, override: Override) -> Entry:
    cell = row.cells.get("value")
    if cell is None:
        raise _Refused(
            row.cells["line"],
            f"{row.cells['line'].value} is forced to nothing.",
            f"Type the value in {override.unit_text}.",
        )
    try:
        entry, _, _ = read_number(cell, override.unit_text, override.unit_text, False, False, origin_of(row, cell))
    except InputRefused as refused:
        raise _Refused(cell, f"{row.cells['line'].value}: {refused.found}", refused.remedy) from None
    return entry
