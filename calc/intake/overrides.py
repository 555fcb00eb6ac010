"""Overridden lines and acknowledged stops: each needs a reason and initials."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from calc.cells import Cell, Sheet
from calc.declared import Override
from calc.errors import FindingKind, InputRefused
from calc.formula.levels import JOB
from calc.intake.facts import origin_of
from calc.intake.jobs_book import JobsBook, job_of
from calc.intake.records import ACKNOWLEDGED, Entry, JobInput
from calc.intake.schema import ACKNOWLEDGEABLE, OVERRIDABLE, OVERRIDES, TABLES
from calc.intake.spelling import did_you_mean, normalize
from calc.intake.tables import TableRow, read_table
from calc.intake.values import ReadValue, Remark, read_forced, read_id, read_text

_ONE_ROW = "Delete one of the two rows."


def read_overrides(jobs_book: JobsBook, sheet: Sheet | None) -> None:
    """Reads the sheet Overrides into the jobs of ``jobs_book``."""
    if sheet is None:
        return
    rows, findings = read_table(jobs_book.book, sheet, TABLES[OVERRIDES])
    jobs_book.findings += findings
    for row in rows:
        try:
            id_ = read_id(row.cells["job"], "job id") if "job" in row.cells else ""
        except InputRefused as refused:
            jobs_book.refuse(row, row.cells["job"], refused, "")
            continue
        job = job_of(jobs_book, id_, row.at(row.cells.get("job")))
        if job is not None:
            try:
                for each in _read_override(job, row):
                    jobs_book.add(each.kind, row.at(row.cells["value"]), each.text, "", job.id)
            except _Refused as refused:
                jobs_book.refuse(row, refused.cell, refused, job.id)


class _Refused(InputRefused):
    """A refused override, with the cell to correct."""

    def __init__(self, cell: Cell | None, kind: FindingKind, found: str, remedy: str) -> None:
        super().__init__(kind, found, remedy)
        self.cell = cell

    @classmethod
    def at(cls, cell: Cell | None, refused: InputRefused) -> _Refused:
        """The refusal of the value of ``cell``."""
        return cls(cell, refused.kind, refused.found, refused.remedy)


def _read_override(job: JobInput, row: TableRow) -> Sequence[Remark]:
    """Reads one row into ``job``; the questions and notes about its value."""
    name = row.cells.get("line")
    if name is None:
        found = "An override without a line."
        raise _Refused(None, FindingKind.MISSING_LINE, found, "Type the line to override, or clear the row.")
    for column in ("reason", "who"):
        if column not in row.cells:
            found = f'The override of "{name.value}" has no {"reason" if column == "reason" else "initials"}.'
            raise _Refused(name, FindingKind.MISSING_REASON, found, _REQUIRED[column])
    reason, who, notes = (_text(row, label) for label in ("reason", "who", "notes"))
    label = normalize(str(name.value))
    if label in ACKNOWLEDGEABLE:
        acknowledged = ACKNOWLEDGEABLE[label].acknowledged
        assert acknowledged is not None
        _check_acknowledgment(job, acknowledged, row)
        job.overrides[acknowledged, 0] = Entry(1.0, "", ACKNOWLEDGED, origin_of(row, name), reason, who, notes)
        return ()
    if label not in OVERRIDABLE:
        labels = [each.label for each in (*OVERRIDABLE.values(), *ACKNOWLEDGEABLE.values())]
        found = f'There is no line "{name.value}" that can be overridden.'
        raise _Refused(name, FindingKind.UNKNOWN_LINE, found, did_you_mean(str(name.value), labels))
    override = OVERRIDABLE[label].override
    assert override is not None
    index = _row_index(job, override, row)
    if (override, index) in job.overrides:
        raise _Refused(name, FindingKind.DUPLICATE_OVERRIDE, f"{name.value} is overridden twice.", _ONE_ROW)
    read = _value(row, override)
    job.overrides[override, index] = replace(read.entry, reason=reason, who=who, notes=notes)
    return read.remarks


_REQUIRED = {"reason": "Type why it is overridden.", "who": "Type the initials of the person who overrides it."}
"""The remedy for a blank cell of a required column."""


def _check_acknowledgment(job: JobInput, acknowledged: Override, row: TableRow) -> None:
    """Refuses an acknowledged stop with a value, with an area, or a second time: another line may be meant."""
    name = row.cells["line"]
    index = _row_index(job, acknowledged, row)
    if "value" in row.cells:
        found = f"{name.value} is a stop caution, which takes no value."
        raise _Refused(row.cells["value"], FindingKind.UNEXPECTED_VALUE, found, "Leave the value blank.")
    if (acknowledged, index) in job.overrides:
        raise _Refused(name, FindingKind.DUPLICATE_OVERRIDE, f"{name.value} is acknowledged twice.", _ONE_ROW)


def _text(row: TableRow, label: str) -> str:
    """The text of a column, blank when the cell is."""
    cell = row.cells.get(label)
    try:
        return "" if cell is None else read_text(cell)
    except InputRefused as refused:
        raise _Refused.at(cell, refused) from None


def _row_index(job: JobInput, override: Override, row: TableRow) -> int:
    """The index of the row of its level that the override is for: 0 for a line of the whole job."""
    name, cell = row.cells["line"], row.cells.get("area")
    if override.level == JOB:
        if cell is not None:
            found = f"{name.value} is a line of the whole job."
            raise _Refused(cell, FindingKind.UNEXPECTED_AREA, found, "Leave the area blank.")
        return 0
    rows = job.rows.get(override.level, [])
    if cell is None:
        if len(rows) == 1:
            return 0
        found = f"{name.value} is a line of each area, and the area is blank."
        raise _Refused(name, FindingKind.MISSING_AREA_ID, found, "Type the area.")
    try:
        word = read_id(cell, "area id")
    except InputRefused as refused:
        raise _Refused.at(cell, refused) from None
    words = [normalize(each.word) for each in rows]
    if normalize(word) not in words:
        found, remedy = f'Job {job.id} has no area "{word}".', did_you_mean(word, [each.word for each in rows])
        raise _Refused(cell, FindingKind.UNKNOWN_AREA, found, remedy)
    return words.index(normalize(word))


def _what_to_type(override: Override) -> str:
    """A count has no unit."""
    return f"Type the value in {override.unit_text}." if override.unit_text else "Type the value, a plain number."


def _value(row: TableRow, override: Override) -> ReadValue:
    name, cell = row.cells["line"], row.cells.get("value")
    if cell is None:
        found, remedy = f"{name.value} is overridden without a value.", _what_to_type(override)
        raise _Refused(name, FindingKind.MISSING_OVERRIDE_VALUE, found, remedy)
    try:
        return read_forced(override, cell, str(name.value), origin_of(row, cell))
    except InputRefused as refused:
        raise _Refused.at(cell, refused) from None
