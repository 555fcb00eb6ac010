"""A sheet as a table: its header row, its columns and its rows."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from calc.cells import Book, Cell, Kind, Sheet, column_letters, column_number
from calc.errors import Finding, FindingKind, InputRefused, Place
from calc.intake.column_names import meant, misspelling
from calc.intake.schema import EVERY_JOB, EXAMPLE, Heading, Table
from calc.intake.spelling import normalize
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
    columns, findings = _columns(book, sheet, table, names, number)
    findings += _unnamed_columns(book, sheet, number, cells)
    rows = list(_rows(book, sheet, number, columns))
    for merged in sheet.merged_ranges:
        findings += _merged(book, sheet, merged, number, columns, rows)
    findings += [each for row in rows for each in _struck(book, row)]
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


_KEYS = ("job", "area")
"""The columns with an id, which may be headed so: ``Area ID``."""


def likeness(sheet: Sheet, table: Table) -> int:
    """How many headers of the table a sheet has in a row with something below it; 0 unless most there are known."""
    header = _header_row(sheet, _names(table))
    if header is None or sheet.rows[-1][0] <= header[0]:
        return 0
    known = sum(1 for cell in header[1].values() if _recognize(cell, _names(table)) is not None)
    return known if known >= _KNOWN_AT_LEAST and 2 * known >= len(header[1]) else 0


_KNOWN_AT_LEAST = 2
"""Known headers of a sheet that looks like an input table."""


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
        if typed in (label, header) or (label in _KEYS and typed in (f"{label} id", f"{label} no", f"{label} #")):
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
    book: Book, sheet: Sheet, table: Table, names: Names, header: int
) -> tuple[dict[int, Column], list[Finding]]:
    cells = dict(sheet.rows)[header]
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
    findings += [_unknown_header(book, cell, absent, _has_numbers(sheet, header, cell.column)) for cell in unknown]
    return columns, findings


def _unknown_header(book: Book, cell: Cell, absent: list[Heading], numbers: bool) -> Finding:
    """What is said of a column that the table does not have; ``numbers`` says that numbers stand in it."""
    place = Place(book.name, cell.sheet, cell.ref)
    typed = str(cell.value)
    misspelled = misspelling(typed, absent)
    heading = misspelled or (meant(typed, absent) if numbers else None)
    if heading is not None:
        remedy = f'Did you mean "{heading.header}"? Correct it, or give a column of your own another name.'
        return Finding(FindingKind.MISSPELLED_COLUMN, place, f'The header "{typed}" is not known.', remedy)
    if numbers:
        found = f'The column "{typed}" is not known, and there are numbers in it. It is ignored. Is that meant?'
        return Finding(FindingKind.IGNORED_NUMBERS, place, found)
    return Finding(FindingKind.UNKNOWN_COLUMN, place, f'The column "{typed}" is not known. It is ignored.')


def _has_numbers(sheet: Sheet, header: int, at: int) -> bool:
    """Whether a column has a number below its header, or a text that begins like a dimension."""
    below = (cells[at] for number, cells in sheet.rows if number > header and at in cells)
    return any(cell.kind is Kind.NUMBER or _begins_with_number(cell) for cell in below)


def _begins_with_number(cell: Cell) -> bool:
    """Whether a text is a dimension such as ``4 1/2"`` rather than a date, a telephone number or words."""
    return cell.kind is Kind.TEXT and _DIMENSION.fullmatch(str(cell.value).strip()) is not None


_DIMENSION = re.compile(r"\$?\d[\d.,]*(?:[- ]?\d+/\d+)?\s*(?:['\"%½¼¾⅛]|ft|in|inches|feet|sf|lf|cy|yd|each|ea)?\.?")


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


def _struck(book: Book, row: TableRow) -> Iterator[Finding]:
    """The question about cells of a row that are struck through, once a row: they are read like any other."""
    struck = [cell for cell in row.cells.values() if cell.struck]
    if struck:
        first = min(struck, key=lambda cell: cell.column)
        whole = len(struck) == len(row.cells)
        found = (
            "The row is struck through. It was read." if whole else f'"{first.value}" is struck through. It was read.'
        )
        remedy = "Clear it if it is not meant."
        yield Finding(FindingKind.STRUCK_THROUGH, Place(book.name, first.sheet, first.ref), found, remedy, row.job)


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
