"""A sheet as a table: which row is its header, which column is which, and its rows."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from calc.cells import Book, Cell, Kind, Sheet, column_letters, column_number
from calc.errors import Finding, InputRefused, Place, Severity
from calc.intake.schema import EVERY_JOB, Heading, Table
from calc.intake.spelling import near, normalize
from calc.intake.values import read_id
from calc.units.typed_units import measure

_HEADER_WITHIN = 12
"""The header is among the first rows that hold something."""


@dataclass(frozen=True)
class Column:
    """A column of a sheet that was recognised: what it is, and the unit that its header states."""

    heading: Heading
    unit: str


Names = list[tuple[str, str, Heading]]
"""The headings of a table, each with its label and its header as they are compared."""


@dataclass(frozen=True)
class TableRow:
    """One row of a table: where it stands, and its cells, units and addresses by the header of their column."""

    place: Place
    number: int
    cells: dict[str, Cell]
    units: dict[str, str]
    refs: dict[str, str]

    def at(self, cell: Cell | None) -> Place:
        """The place of ``cell``, or of the row when the cell is blank."""
        return Place(self.place.book, self.place.sheet, cell.ref) if cell else self.place

    @property
    def job(self) -> str:
        """The id of the one job that the row is for; blank when it is not known, or is for every job."""
        try:
            id_ = read_id(self.cells["job"], "job id") if "job" in self.cells else ""
        except InputRefused:
            return ""  # whoever reads the row says so
        return "" if normalize(id_) == EVERY_JOB else id_


def read_table(book: Book, sheet: Sheet, table: Table) -> tuple[list[TableRow], list[Finding]]:
    """The rows of ``sheet`` as ``table`` means them, with what is wrong with its header."""
    names = _names(table)
    header = _header_row(sheet, names)
    if header is None:
        wanted = ", ".join(heading.header for heading in table.headings[:4])
        place = Place(book.name, sheet.name)
        if not sheet.rows:
            return [], []
        return [], [
            Finding(Severity.STOP, place, "No header row was found.", f"Type the headers in one row: {wanted} ...")
        ]
    number, cells = header
    columns, findings = _columns(book, sheet, table, names, cells)
    findings += _headless(book, sheet, number, cells)
    rows = list(_rows(book, sheet, number, columns))
    for merged in sheet.merged_ranges:
        findings += _merged(book, sheet, merged, number, columns, rows)
    if not sheet.hidden:  # a hidden sheet is noted once
        findings += _hidden(book, cells, columns, rows)
    return rows, findings


def _names(table: Table) -> Names:
    """The headings of a table by what they may be called, the longest first: it is the one that is meant."""
    longest = sorted(table.headings, key=lambda each: (-len(each.label), bool(each.unit)))
    return [(normalize(each.label), normalize(each.header), each) for each in longest]


def _header_row(sheet: Sheet, names: Names) -> tuple[int, dict[int, Cell]] | None:
    """The row among the first that holds the most known headers."""
    best, most = None, 0
    for number, cells in sheet.rows[:_HEADER_WITHIN]:
        known = sum(1 for cell in cells.values() if _recognise(cell, names) is not None)
        if known > most:
            best, most = (number, cells), known
    return best


def _recognise(cell: Cell, names: Names) -> Column | None:
    """A header is a label, then perhaps a unit with or without brackets, without regard to case and spaces."""
    if cell.kind is not Kind.TEXT:
        return None
    typed = normalize(str(cell.value))
    for label, header, heading in names:
        if typed in (label, header):
            return Column(heading, heading.unit)
        if typed.startswith(label + " "):
            unit = re.sub(r"[()\[\],]", " ", typed[len(label) :]).strip()
            if unit and heading.unit and _is_unit(unit, heading.unit):
                return Column(heading, unit)
    return None


def _is_unit(text: str, meant: str) -> bool:
    """Whether what stands after a label may be a unit at all, rather than more words of some other label."""
    return text == normalize(meant) or re.fullmatch(r"[a-z$%/0-9²³^*.\- ]{1,12}", text) is not None


def _columns(
    book: Book, sheet: Sheet, table: Table, names: Names, cells: dict[int, Cell]
) -> tuple[dict[int, Column], list[Finding]]:
    columns: dict[int, Column] = {}
    findings: list[Finding] = []
    unknown: list[Cell] = []
    for number, cell in sorted(cells.items()):
        column = _recognise(cell, names)
        place = Place(book.name, sheet.name, cell.ref)
        if column is None:
            unknown.append(cell)
        elif column.heading in {other.heading for other in columns.values()}:
            findings.append(
                Finding(
                    Severity.STOP, place, f'The header "{cell.value}" stands twice.', "Leave one of the two columns."
                )
            )
        else:
            columns[number] = column
    known = {column.heading for column in columns.values()}
    absent = [heading for heading in table.headings if heading not in known]
    findings += [_unknown_header(book, cell, absent) for cell in unknown]
    return columns, findings


def _unknown_header(book: Book, cell: Cell, absent: list[Heading]) -> Finding:
    place = Place(book.name, cell.sheet, cell.ref)
    typed = str(cell.value)
    for heading in absent:
        in_other_unit = bool(heading.unit) and near(_less_its_unit(typed), heading.label)
        if near(typed, heading.label) or near(typed, heading.header) or in_other_unit:
            return Finding(
                Severity.STOP,
                place,
                f'The header "{typed}" is not known.',
                f'Did you mean "{heading.header}"? Type it so, or rename the column.',
            )
    return Finding(Severity.NOTE, place, f'The column "{typed}" is not known, so it is passed over.')


def _headless(book: Book, sheet: Sheet, header: int, headed: dict[int, Cell]) -> list[Finding]:
    """Columns that hold something and have no header: nobody can say what is meant by it."""
    first: dict[int, Cell] = {}
    for number, cells in sheet.rows:
        for at, cell in cells.items():
            if number > header and at not in headed and _holds(cell):
                first.setdefault(at, cell)
    return [
        Finding(
            Severity.ASK,
            Place(book.name, sheet.name, cell.ref),
            f"Column {column_letters(at)} has no header, so what stands in it is passed over.",
            "Type its header, or clear the column.",
        )
        for at, cell in sorted(first.items())
    ]


def _less_its_unit(header: str) -> str:
    """A header without the unit that ends it, as in ``lenght (m)``; whole when nothing like a unit does."""
    label, _, last = header.rpartition(" ")
    try:
        measure(last.strip("()[]"), ())
    except KeyError:
        return header
    return label


def _rows(book: Book, sheet: Sheet, header: int, columns: dict[int, Column]) -> Iterator[TableRow]:
    units = {column.heading.header: column.unit for column in columns.values()}
    for number, cells in sheet.rows:
        if number <= header:
            continue
        known = {
            columns[at].heading.header: cell for at, cell in sorted(cells.items()) if at in columns and _holds(cell)
        }
        if known:
            first = min(known.values(), key=lambda cell: cell.column)
            refs = {column.heading.header: f"{column_letters(at)}{number}" for at, column in columns.items()}
            yield TableRow(Place(book.name, sheet.name, first.ref), number, known, units, refs)


def _holds(cell: Cell) -> bool:
    """A cell of spaces, or a formula that gives an empty text, is blank."""
    return not (cell.kind is Kind.TEXT and not str(cell.value).strip())


def _merged(
    book: Book, sheet: Sheet, merged: str, header: int, columns: dict[int, Column], rows: list[TableRow]
) -> list[Finding]:
    """What a merged range hides: of its cells only the first holds anything, and the others look filled."""
    left, top, right, bottom = _bounds(merged)
    if bottom < header:
        return []
    remedy = "Unmerge them, and type the value in each cell it is meant for."
    if top <= header:
        place = Place(book.name, sheet.name, merged)
        return [Finding(Severity.STOP, place, "The header lies in merged cells.", remedy)]
    covered = [number for number in sorted(columns) if left <= number <= right]
    findings = []
    for row in rows:
        if not covered or not top <= row.number <= bottom:
            continue
        if any(
            cell.column in covered and columns[cell.column].heading.given is not None for cell in row.cells.values()
        ):
            continue  # whoever reads the value says so
        name = columns[covered[0]].heading.label.capitalize()
        place = Place(book.name, sheet.name, f"{column_letters(covered[0])}{row.number}")
        found = f"{name} lies in the merged cells {merged}, of which only the first holds anything."
        findings.append(Finding(Severity.STOP, place, found, remedy, row.job))
    return findings


def _bounds(merged: str) -> tuple[int, int, int, int]:
    """The first column and row of a range such as ``B2:C4``, then the last."""
    first, _, last = merged.partition(":")
    (left, top), (right, bottom) = (re.findall(r"[A-Z]+|[0-9]+", corner) for corner in (first, last or first))
    return column_number(left), int(top), column_number(right), int(bottom)


def _hidden(book: Book, header: dict[int, Cell], columns: dict[int, Column], rows: list[TableRow]) -> list[Finding]:
    """Columns and rows that nobody sees are read all the same, and it is said."""
    unseen = {number for number in columns if header[number].hidden}
    if len(unseen) == len(columns):
        unseen = set()  # the header row is hidden, not its columns
    findings = [
        Finding(
            Severity.NOTE,
            Place(book.name, header[number].sheet, header[number].ref),
            f'The column "{header[number].value}" is hidden; it was read.',
        )
        for number in sorted(unseen)
    ]
    for row in rows:
        seen = [cell.hidden for cell in row.cells.values() if cell.column not in unseen]
        if seen and all(seen):
            found = "The row is hidden or filtered out; it was read."
            findings.append(Finding(Severity.NOTE, row.place, found, "", row.job))
    return findings
