"""Accounts for every cell of an input book: it was read as typed, or reported in a finding; the rest is lost.

The account goes by cells, not by declarations, since a reader that skips a cell, a row or a column does not report it.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace
from datetime import date
from typing import Any

from calc.cells import Book, Cell, Kind, Sheet
from calc.declared import Input
from calc.declared import Kind as GivenKind
from calc.errors import Severity
from calc.intake.records import ACKNOWLEDGED, Entry, Intake, Row
from calc.intake.schema import (
    COMPANY_TABLES,
    EVERY_JOB,
    EXAMPLE,
    JOBS,
    KEYS,
    NAMED_TABLES,
    OVERRIDES,
    PRICES,
    SITE,
    TABLES,
    Heading,
    Table,
    facts_of,
)  # fmt: skip
from calc.intake.spelling import normalize
from calc.intake.tables import TableRow, read_table
from calc.intake.values import serial

Location = tuple[str, str, str]
"""A cell of a run: book, sheet and reference."""

NOT_KEPT = {
    "Company": {"unit", "notes"}, SITE: {"unit"}, PRICES: {"unit", "notes"},
    "Factors": {"unit", "usual", "source", "notes"}, "Main factors": {"unit", "usual", "source", "notes"},
}  # fmt: skip
"""Columns that need not be kept: the unit is part of its value, and notes of the company book are for the office."""

OF_ROW = {"reason", "who", "notes"}
OF_PRICE = {"dated", "valid until", "supplier", "taxable", "account"}
NAMES = {"fact", "line", "item", "factor", "for"}
"""Columns that name the value of their row."""


@dataclass
class Result:
    """The findings and the values of a run, by cell."""

    intake: Intake
    reported: set[Location] = field(default_factory=set)
    errors: set[Location] = field(default_factory=set)
    whole_sheets: set[tuple[str, str]] = field(default_factory=set)
    """Books and sheets with an error as a whole."""
    values: dict[Location, list[tuple[object, Entry]]] = field(default_factory=dict)
    words: set[str] = field(default_factory=set)
    """The normalized ids and names of jobs, areas, vehicles and other rows."""

    def __post_init__(self) -> None:
        for each in self.intake.findings:
            spot = (each.place.book, each.place.sheet, each.place.cell)
            if each.place.cell:
                self.reported.add(spot)
                if each.severity is Severity.ERROR:
                    self.errors.add(spot)
            elif each.severity is Severity.ERROR:
                self.whole_sheets.add((each.place.book, each.place.sheet))
        company = self.intake.company
        self._add_entries("", {**company.facts, **company.site}.items())
        self._add_entries("", company.factors.items())
        self._add_entries("", company.prices.items())
        self._add_rows("", [row for rows in company.rows.values() for row in rows])
        for job in self.intake.jobs:
            self.words.add(normalize(job.id))
            self._add_entries(job.place.book, [*job.entries.items(), *job.overrides.items()])
            self._add_rows(job.place.book, [row for rows in job.rows.values() for row in rows])

    def _add_rows(self, book: str, rows: list[Row]) -> None:
        for row in rows:
            self.words.add(normalize(row.word))
            self._add_entries(book, row.entries.items())

    def _add_entries(self, book: str, entries: Iterable[tuple[Any, Entry]]) -> None:
        for named, entry in entries:
            place, _, ref = entry.origin.rpartition("!")
            of = next((name for name in self.intake.company.books if place.startswith(f"{name} ")), "")
            spot = (of or book, place.removeprefix(f"{of} ") if of else place, ref)
            self.values.setdefault(spot, []).append((named[0] if isinstance(named, tuple) else named, entry))


def unaccounted_cells(book: Book, intake: Intake) -> list[str]:
    """Every cell of a book that was neither read nor reported, with its value."""
    result = Result(intake)
    if (book.name, "") in result.whole_sheets or not intake.jobs:
        return []  # no job of it can be bid, which was reported
    found = []
    for sheet in book.sheets.values():
        table = next((each for name, each in TABLES.items() if normalize(name) == normalize(sheet.name)), None)
        if table is None or (book.name, sheet.name) in result.whole_sheets:
            continue
        found += [
            f"{sheet.name}!{cell.ref} {cell.value!r}: {why}"
            for cell, why in _unaccounted_in(book, sheet, table, result)
        ]
    return found


def _unaccounted_in(book: Book, sheet: Sheet, table: Table, result: Result) -> Iterator[tuple[Cell, str]]:
    if table.name == JOBS:  # a fact of the site may be a column of Jobs
        facts = (Heading(each.label.lower(), each.unit_text, "", each) for each in facts_of(SITE))
        table = replace(table, headings=(*table.headings, *facts))
    rows, _ = read_table(book, sheet, table)
    seen = {id(cell) for row in rows for cell in row.cells.values()}
    for _, cells in sheet.rows:
        for cell in cells.values():
            below = bool(rows) and cell.row >= rows[0].number
            if (
                below
                and id(cell) not in seen
                and not _is_blank(cell)
                and not _column_reported(book, sheet, cell, result)
            ):
                yield cell, "it is in no column"
    for row in rows:
        yield from _unaccounted_in_row(book, table, row, result)


def _column_reported(book: Book, sheet: Sheet, cell: Cell, result: Result) -> bool:
    """Whether an unknown column was reported, at its header or at its first cell."""
    column = (cells[cell.column] for _, cells in sheet.rows if cell.column in cells)
    return any(_spot(book, each) in result.reported for each in column)


def _unaccounted_in_row(book: Book, table: Table, row: TableRow, result: Result) -> Iterator[tuple[Cell, str]]:
    locations = {header: _spot(book, cell) for header, cell in row.cells.items()}
    naming = [
        (row.place.book, row.place.sheet, row.place.cell),
        *(locations[each] for each in (*KEYS, *NAMES) if each in locations),
    ]
    if result.errors & set(naming) or locations.get("item") in result.reported:
        return  # what the row is for cannot be known, which was reported
    key = table.level.axis.name if table.name in NAMED_TABLES and not table.level.axis.words else "job"
    if key in row.cells and _is(row.cells[key], EXAMPLE):
        return
    if (
        table.name in (*COMPANY_TABLES, SITE)
        and set(NAMES) & set(locations)
        and not {"value", "price", "size"} & set(locations)
    ):
        return  # a row of the company book without a value
    refused = bool(result.errors & set(locations.values()))
    if refused and table.name == OVERRIDES:
        return  # an override is read or refused as a whole
    entries = [pair for spot in locations.values() for pair in result.values.get(spot, [])]
    for header, cell in row.cells.items():
        if refused and header in (*NAMES, *KEYS, *OF_ROW, *OF_PRICE):
            continue  # the row was reported at its value
        why = _reason(book, table, header, cell, entries, result)
        if why:
            yield cell, why


def _reason(
    book: Book, table: Table, header: str, cell: Cell, entries: list[tuple[object, Entry]], result: Result
) -> str:
    """Why a cell is unaccounted for; blank when it was read or reported."""
    spot = _spot(book, cell)
    if spot in result.errors or header in NOT_KEPT.get(table.name, ()):
        return ""
    read = result.values.get(spot, [])
    if read and header not in NAMES:
        return (
            ""
            if any(_is_read(cell, named, entry) for named, entry in read)
            or (spot in result.reported and any(_is_ratio(cell, named, entry) for named, entry in read))
            else f"it was read as {read[0][1].typed!r}, {read[0][1].value!r}"
        )
    if spot in result.reported:
        return ""
    if header in KEYS:
        return "" if _is(cell, EVERY_JOB) or normalize(_typed(cell)) in result.words else "no row has this id"
    if header in NAMES:
        labels = {normalize(text) for named, _ in entries for text in _labels(named)}
        return (
            ""
            if header == "for" or any(normalize(_typed(cell)) in label for label in labels)
            else "no value belongs to it"
        )
    if header in OF_ROW and not any(
        heading.header == header and heading.given is not None for heading in table.headings
    ):
        kept = {text for _, entry in entries for text in (entry.reason, entry.who, entry.notes)}
        return "" if _typed(cell) in kept else "it is not kept"
    if header in OF_PRICE:
        return "" if _is_kept(cell, header, result) else "it is not kept"
    return "it was neither read nor reported"


def _is_kept(cell: Cell, header: str, result: Result) -> bool:
    """Whether the cell is kept with its price."""
    kept = result.intake.company.price_rows.values()
    if header == "taxable":
        return normalize(_typed(cell))[:1] in {normalize(each.taxable)[:1] for each in kept}
    if header in ("dated", "valid until"):
        days = {day for each in kept for day in (each.dated, each.valid_until)}
        return serial(date.fromisoformat(_typed(cell).strip())) in days
    return _typed(cell) in {word for each in kept for word in (each.supplier, each.account)}


def _labels(named: object) -> tuple[str, ...]:
    label = str(getattr(named, "label", ""))
    return (
        label,
        str(getattr(named, "header", "")),
        label.removesuffix(": override"),
        label.removeprefix("Acknowledged: "),
    )


def _is_read(cell: Cell, named: object, entry: Entry) -> bool:
    """Whether an entry has the text and the number of its cell."""
    typed, value = _typed(cell), entry.value
    if entry.typed == ACKNOWLEDGED:
        return True
    if not entry.typed.startswith(typed) and cell.kind is not Kind.NUMBER:
        return False
    kind = named.kind if isinstance(named, Input) else GivenKind.NUMBER
    if kind is GivenKind.CHOICE:
        return isinstance(value, str) and normalize(value)[:1] == normalize(typed)[:1]
    if kind in (GivenKind.NUMBER, GivenKind.SLOPE) and cell.kind is Kind.NUMBER and entry.typed == typed:
        return isinstance(value, float) and value == cell.value
    if kind in (GivenKind.NUMBER, GivenKind.SLOPE, GivenKind.DATE):
        return isinstance(value, float) and math.isfinite(value)
    return True


def _is_ratio(cell: Cell, named: object, entry: Entry) -> bool:
    """Whether a small number in a column of slopes was read as a ratio, which is reported at its cell."""
    of_slope = isinstance(named, Input) and named.kind is GivenKind.SLOPE
    return of_slope and isinstance(cell.value, float) and entry.value == 100 * cell.value


def _typed(cell: Cell) -> str:
    if cell.kind is Kind.DATE:
        return str(cell.value)[:10]
    if isinstance(cell.value, float) and cell.value.is_integer():
        return str(int(cell.value))
    return str(cell.value)


def _is(cell: Cell, word: str) -> bool:
    return normalize(_typed(cell)) == word


def _is_blank(cell: Cell) -> bool:
    return cell.kind is Kind.TEXT and not str(cell.value).strip()


def _spot(book: Book, cell: Cell) -> Location:
    return book.name, cell.sheet, cell.ref
