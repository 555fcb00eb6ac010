"""The sheet Log: defaults used, overrides with their reasons, notes, and the files that made the workbook."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from calc._version import __version__
from calc.declared import Input, Kind
from calc.errors import Finding
from calc.formula.levels import JOB, Level
from calc.intake.records import DEFAULT, Entry, JobInput
from calc.intake.schema import FACTOR_LIST, INPUTS
from calc.layout.addresses import CellMap
from calc.layout.as_typed import format_origin, on_one_line
from calc.layout.grid import ITEM, STORY, VALUE
from calc.layout.page import CellValue, Constant, FixedText, Jump, Page
from calc.layout.sheet_layout import Draft, SheetLayout
from calc.layout.sheets import BAR, open_sheet, paged
from calc.layout.text_width import text_width, wrapped
from calc.trade.catalog import SECTIONS

NAME = "Log"
ABOUT = "fixed at issue"
LAYOUT = 2
"""The layout of the sheets that are read back: raised when a box or a text of Measured, Prices or Log moves."""

OVERRIDDEN = "Overridden lines and acknowledged stops"
IDENTITY = "Identity"
LAYOUT_ROW, PROGRAM_ROW = "Layout", "Program"
WHERE, _NOTE = 4, 7
EXACT = STORY.last + 2
"""The columns of where and of the note; the first of those that are read back, to the right of the printed ones."""

_SHORT, _WIDE = 160.0, 600.0
"""The pixels of words that every box has room for, and that the boxes of wording have."""


@dataclass(frozen=True)
class Entered:
    """A row of the Log: what, value, unit, where, and a note; of an override its reason, who gave it, and its notes."""

    what: str
    value: CellValue = None
    unit: str = ""
    where: str = ""
    note: str = ""
    reason: str = ""
    who: str = ""
    notes: str = ""

    @property
    def told(self) -> str:
        """What is printed of its note, or of its reason and its notes."""
        reason = f"{self.reason} ({self.who})" if self.who else ""
        return on_one_line("; ".join(each for each in (self.note, reason, self.notes) if each))


def rows_label(level: Level) -> str:
    """The row of the Log that says how many rows of a level were typed."""
    return f"Rows: {level}"


TYPED_LEVELS = tuple(dict.fromkeys(section.level for section in SECTIONS if section.table and section.level != JOB))
"""The levels whose rows are typed, in the jobs book or in the company book."""


def log_rows(job: JobInput) -> list[tuple[str, list[Entered]]]:
    """The blocks of the Log, each with a title."""
    blocks: list[tuple[str, list[Entered]]] = [
        ("Left as usual", list(_left_as_usual(job))),
        (OVERRIDDEN, list(_overridden(job))),
        ("Notes on facts", list(_fact_notes(job))),
        ("Long texts in full", list(_long_texts(job))),
        ("Questions and notes", [_finding(each) for each in job.findings]),
        (IDENTITY, list(_identity(job))),
    ]
    return [(title, rows) for title, rows in blocks if rows or title == OVERRIDDEN]


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
    sheet = open_sheet(NAME, STORY, CellMap(), Draft(), ABOUT, NAME)
    for title, rows in log_rows(job):
        sheet.section(f"{title} ({len(rows)})")
        for row in rows:
            _lay_row(sheet, row)
    sheet.page.put(FixedText(1, EXACT, "issued", "For reading back: note or reason, who, notes"))
    return paged(sheet)


def _lay_row(sheet: SheetLayout, row: Entered) -> None:
    """What, value, unit, where, and the note in as many rows as it takes; to the right, what is read back."""
    page, grid = sheet.page, sheet.grid
    sheet.number_row()
    what = wrapped(row.what, grid.room(ITEM, ITEM))
    note = wrapped(row.told, grid.room(_NOTE)) if row.told else []
    page.put(Constant(page.row, VALUE, "logvalue", row.value))
    page.put(FixedText(page.row, VALUE + 1, "stepunit", row.unit))
    if row.where in BAR.values():
        page.put(Jump(page.row, WHERE, "barjump", lambda: (row.where, 0, 0)))
    else:
        page.put(FixedText(page.row, WHERE, "told", row.where))
    for col, text in enumerate((row.reason, row.who, row.notes), start=EXACT):
        if text:
            page.put(FixedText(page.row, col, "issued", text))
    for place in range(max(len(what), len(note))):
        if place < len(what):
            page.put(FixedText(page.row, ITEM, "item", what[place]))
        if place < len(note):
            page.put(FixedText(page.row, _NOTE, "told", note[place]))
        sheet.end_row()


def _left_as_usual(job: JobInput) -> Iterator[Entered]:
    """How much was left as usual, and where it stands."""
    yield Entered(
        "Inputs left as usual", count_defaults(job), where="Measured", note="nothing as typed stands beside them"
    )
    yield Entered(
        "Factors left as usual",
        count_factors(job),
        where="Factors",
        note="no cell of the company book stands beside them",
    )


def _overridden(job: JobInput) -> Iterator[Entered]:
    for (override, _), entry in job.overrides.items():
        yield Entered(
            override.label, entry.value, override.unit_text, entry.origin,
            reason=entry.reason, who=entry.who, notes=entry.notes,
        )  # fmt: skip


def _fact_notes(job: JobInput) -> Iterator[Entered]:
    for given, entry in job.entries.items():
        if entry.notes:
            yield Entered(given.label, where=format_origin(entry, job), notes=entry.notes)


def _long_texts(job: JobInput) -> Iterator[Entered]:
    """Words that are longer than the room beside their box."""
    for given, entry in _texts(job):
        room = _WIDE if given.section.table == "Wording" else _SHORT
        if isinstance(entry.value, str) and (text_width(entry.value) > room or "\n" in entry.value):
            yield Entered(given.label, where=format_origin(entry, job), note=entry.value)


def _texts(job: JobInput) -> Iterator[tuple[Input, Entry]]:
    for given in INPUTS:
        if given.kind is Kind.TEXT and given.level == JOB:
            yield given, job.entries[given]
        elif given.kind is Kind.TEXT:
            yield from ((given, row.entries[given]) for row in job.rows.get(given.level, []))


def _finding(each: Finding) -> Entered:
    place = f"{each.place.sheet}!{each.place.cell}" if each.place.cell else each.place.sheet
    return Entered(each.severity.word, where=place, note=f"{each.found} {each.remedy}".strip())


def _identity(job: JobInput) -> Iterator[Entered]:
    company = job.company
    yield Entered(PROGRAM_ROW, f"flatwork-calc {__version__}")
    yield Entered(LAYOUT_ROW, LAYOUT)
    yield Entered("Input workbook", job.place.book, note=f"sha256 {job.sha256}")
    yield Entered("Company book", company.name or "none", note=f"sha256 {company.sha256}" if company.sha256 else "")
    for level in TYPED_LEVELS:
        yield Entered(rows_label(level), len(job.rows.get(level, [])))
