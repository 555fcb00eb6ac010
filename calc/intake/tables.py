"""A sheet as a table: its header row, its columns and its rows."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from calc.cells import Book, Cell, Kind, Sheet, column_letters, column_number
from calc.errors import Finding, FindingKind, InputRefused, Place
from calc.intake.schema import EVERY_JOB, EXAMPLE, Heading, Table
from calc.intake.spelling import is_similar, normalize
from calc.intake.values import as_text, read_id
from calc.units.typed_units import measure

_HEADER_WITHIN = 12
"""The header is looked for among the first rows that are not blank."""


@dataclass(frozen=True)
class Column:
    """A recognized column of a sheet: its heading, and the unit in its header."""

    heading: Heading
    unit: str


Names = list[tuple[str, str, Heading]]
"""The headings of a table, each with its normalized label and header."""


@dataclass(frozen=True)
class TableRow:
    """One row of a table: its place and number, and its cells, units and addresses by header."""

    place: Place
    number: int
    cells: dict[str, Cell]
    units: dict[str, str]
    refs: dict[str, str]

    def at(self, cell: Cell | None) -> Place:
        """The place of ``cell``, or of the row when the cell is blank."""
        return Place(self.place.book, self.place.sheet, cell.ref) if cell else self.place

    def refused(self, cell: Cell | None, refused: InputRefused, job: str = "") -> Finding:
        """The finding about a cell whose value was refused."""
        return Finding(refused.kind, self.at(cell), refused.found, refused.remedy, job)

    @property
    def job(self) -> str:
        """The id of the one job that the row is for; blank when it cannot be read or the row is for every job."""
        try:
            id_ = read_id(self.cells["job"], "job id") if "job" in self.cells else ""
        except InputRefused:
            return ""  # reported when the row is read
        return "" if normalize(id_) == EVERY_JOB else id_


def read_table(book: Book, sheet: Sheet, table: Table) -> tuple[list[TableRow], list[Finding]]:
    """The rows of ``sheet`` by the columns of ``table``, with the findings about its header."""
    names = _names(table)
    header = _header_row(sheet, names)
    if header is None:
        wanted = ", ".join(heading.header for heading in table.headings[:4])
        place = Place(book.name, sheet.name)
        if not sheet.rows:
            return [], []
        remedy = f"Type the headers in one row: {wanted} ..."
        return [], [Finding(FindingKind.MISSING_HEADER_ROW, place, "No header row was found.", remedy)]
    number, cells = header
    columns, findings = _columns(book, sheet, table, names, cells)
    findings += _unnamed_columns(book, sheet, number, cells)
    rows = list(_rows(book, sheet, number, columns))
    for merged in sheet.merged_ranges:
        findings += _merged(book, sheet, merged, number, columns, rows)
    if not sheet.hidden:  # a hidden sheet is reported once
        findings += _hidden(book, cells, columns, rows)
    return rows, findings + [each for row in rows for each in _formulas(row, columns)]


def _formulas(row: TableRow, columns: dict[int, Column]) -> Iterator[Finding]:
    """Notes about the formulas of a row, in whatever column: their stored values are read."""
    for cell in row.cells.values():
        if cell.formula and cell.kind is not Kind.UNCOMPUTED and normalize(row.job) != EXAMPLE:
            heading = columns[cell.column].heading
            label = heading.label.capitalize() if heading.given is None else heading.given.label
            name = next((row.cells[each] for each in _NAMING if heading.label == "value" and each in row.cells), None)
            what = label if name is None else as_text(name)
            found = f"{what} is the formula {cell.formula}; its stored value {as_text(cell)} was read."
            yield Finding(FindingKind.FORMULA_READ, row.at(cell), found, "", row.job)


_NAMING = ("fact", "factor", "line")
"""The columns that say what the value of their row is."""


def _names(table: Table) -> Names:
    """The headings of a table, longest label first, since one label may start with another."""
    longest = sorted(table.headings, key=lambda each: (-len(each.label), bool(each.unit)))
    return [(normalize(each.label), normalize(each.header), each) for each in longest]


def _header_row(sheet: Sheet, names: Names) -> tuple[int, dict[int, Cell]] | None:
    """The row with the most known headers among the first rows."""
    best, most = None, 0
    for number, cells in sheet.rows[:_HEADER_WITHIN]:
        known = sum(1 for cell in cells.values() if _recognize(cell, names) is not None)
        if known > most:
            best, most = (number, cells), known
    return best


def _recognize(cell: Cell, names: Names) -> Column | None:
    """The column of a header: a label, then an optional unit with or without brackets, ignoring case and spaces."""
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
    """Whether the text after a label is a unit, rather than more words of another label, as in ``formed edge ft``."""
    if text == normalize(meant):
        return True
    try:
        measure(text, meant.split("/"))
    except KeyError:
        return False
    return True


def _columns(
    book: Book, sheet: Sheet, table: Table, names: Names, cells: dict[int, Cell]
) -> tuple[dict[int, Column], list[Finding]]:
    columns: dict[int, Column] = {}
    findings: list[Finding] = []
    unknown: list[Cell] = []
    for number, cell in sorted(cells.items()):
        column = _recognize(cell, names)
        place = Place(book.name, sheet.name, cell.ref)
        if column is None:
            unknown.append(cell)
        elif column.heading in {other.heading for other in columns.values()}:
            found = f'The column "{cell.value}" is in the table twice.'
            findings.append(Finding(FindingKind.DUPLICATE_COLUMN, place, found, "Delete one of the two columns."))
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
        in_other_unit = bool(heading.unit) and is_similar(_without_unit(typed), heading.label)
        if is_similar(typed, heading.label) or is_similar(typed, heading.header) or in_other_unit:
            remedy = f'Did you mean "{heading.header}"? Correct it, or give a column of your own another name.'
            return Finding(FindingKind.MISSPELLED_COLUMN, place, f'The header "{typed}" is not known.', remedy)
    return Finding(FindingKind.UNKNOWN_COLUMN, place, f'The column "{typed}" is not known. It is ignored.')


def _unnamed_columns(book: Book, sheet: Sheet, header: int, headers: dict[int, Cell]) -> list[Finding]:
    """Columns that have values and no header."""
    first: dict[int, Cell] = {}
    for number, cells in sheet.rows:
        for at, cell in cells.items():
            if number > header and at not in headers and not _is_blank(cell):
                first.setdefault(at, cell)
    return [
        Finding(
            FindingKind.UNNAMED_COLUMN,
            Place(book.name, sheet.name, cell.ref),
            f"Column {column_letters(at)} has no header, so its values are ignored.",
            "Type its header, or clear the column.",
        )
        for at, cell in sorted(first.items())
    ]


def _without_unit(header: str) -> str:
    """A header without the unit at its end, as in ``lenght (m)``; unchanged when there is none."""
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
            columns[at].heading.header: cell
            for at, cell in sorted(cells.items())
            if at in columns and not _is_blank(cell)
        }
        if known:
            first = min(known.values(), key=lambda cell: cell.column)
            refs = {column.heading.header: f"{column_letters(at)}{number}" for at, column in columns.items()}
            yield TableRow(Place(book.name, sheet.name, first.ref), number, known, units, refs)


def _is_blank(cell: Cell) -> bool:
    """Whether a cell has only spaces, or a formula that gives an empty text."""
    return cell.kind is Kind.TEXT and not str(cell.value).strip()


def _merged(
    book: Book, sheet: Sheet, merged: str, header: int, columns: dict[int, Column], rows: list[TableRow]
) -> list[Finding]:
    """Errors about a merged range: only its first cell has a value, while the others look filled."""
    left, top, right, bottom = _bounds(merged)
    if bottom < header:
        return []
    remedy = "Unmerge them, and type the value in each cell that it is for."
    if top <= header:
        place = Place(book.name, sheet.name, merged)
        return [Finding(FindingKind.MERGED_CELLS, place, "The header is in merged cells.", remedy)]
    covered = [number for number in sorted(columns) if left <= number <= right]
    findings = []
    for row in rows:
        if not covered or not top <= row.number <= bottom:
            continue
        if any(
            cell.column in covered and columns[cell.column].heading.given is not None for cell in row.cells.values()
        ):
            continue  # reported when the value is read
        name = columns[covered[0]].heading.label.capitalize()
        place = Place(book.name, sheet.name, f"{column_letters(covered[0])}{row.number}")
        found = f"{name} is in the merged cells {merged}, of which only the first has a value."
        findings.append(Finding(FindingKind.MERGED_CELLS, place, found, remedy, row.job))
    return findings


def _bounds(merged: str) -> tuple[int, int, int, int]:
    """The first column and row of a range such as ``B2:C4``, then the last column and row."""
    first, _, last = merged.partition(":")
    (left, top), (right, bottom) = (re.findall(r"[A-Z]+|[0-9]+", corner) for corner in (first, last or first))
    return column_number(left), int(top), column_number(right), int(bottom)


def _hidden(book: Book, header: dict[int, Cell], columns: dict[int, Column], rows: list[TableRow]) -> list[Finding]:
    """Notes about hidden columns and rows, which are read like any other."""
    hidden = {number for number in columns if header[number].hidden}
    if len(hidden) == len(columns):
        hidden = set()  # the header row is hidden, not its columns
    findings = [
        Finding(
            FindingKind.HIDDEN_COLUMN,
            Place(book.name, header[number].sheet, header[number].ref),
            f'The column "{header[number].value}" is hidden. It was read.',
        )
        for number in sorted(hidden)
    ]
    for row in rows:
        others = [cell.hidden for cell in row.cells.values() if cell.column not in hidden]
        if others and all(others):
            found = "The row is hidden or filtered out. It was read."
            findings.append(Finding(FindingKind.HIDDEN_ROW, row.place, found, "", row.job))
    return findings
