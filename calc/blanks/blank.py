"""The blank input workbooks, and filled ones of the same form. The same words give the same bytes: no clock is read."""

from __future__ import annotations

import warnings
from collections.abc import Mapping, Sequence
from io import BytesIO

from calc.blanks.rows import (
    COMPANY_SHEETS,
    COMPANY_WORDS,
    JOBS_WORDS,
    MORE_SHEETS,
    Row,
    Typed,
    drop_downs_of,
    example_row,
    standing_rows,
)
from calc.blanks.sheets import Blank
from calc.blanks.usual import EDGES_OF_THE_EXAMPLE, usual_tables
from calc.intake.schema import AREAS, FACTOR_TABLES, KEYS, TABLES, WEEK_TABLES, Table
from calc.intake.spelling import normalize

Rows = Mapping[str, Sequence[Mapping[str, Typed]]]
"""What is typed, by sheet: the rows, each by header."""

_NAMES = ("fact", "item", "factor", "for", *(key for key in KEYS if key not in ("job", "area")))
"""The headers that identify the rows of the company book."""


def blank_jobs_book(full: bool = False) -> bytes:
    """The blank jobs book, with one example row per sheet: what usual jobs need, or every sheet and column."""
    if full:
        return _written("Jobs book", [(TABLES[name], [example_row(TABLES[name])]) for name in WEEK_TABLES], JOBS_WORDS)
    examples = {table.name: example_row(table) for table in usual_tables()}
    examples[AREAS].cells.update(EDGES_OF_THE_EXAMPLE)
    words = (*JOBS_WORDS[:-1], MORE_SHEETS, JOBS_WORDS[-1])
    return _written("Jobs book", [(table, [examples[table.name]]) for table in usual_tables()], words)


def jobs_book(typed: Rows) -> bytes:
    """A jobs book with these rows and no example. Raises ValueError for a sheet or a header that it does not have."""
    _refuse_unknown(typed, WEEK_TABLES)
    rows = [(TABLES[name], [Row(dict(row)) for row in typed.get(name, ())]) for name in WEEK_TABLES]
    return _written("Jobs book", rows, JOBS_WORDS)


def blank_company_book() -> bytes:
    """The blank company book: a row per company fact, price and factor, and an example of each vehicle and site."""
    rows = {name: standing_rows(name) or [example_row(TABLES[name])] for name in COMPANY_SHEETS}
    return _written("Company book", [(TABLES[name], rows[name]) for name in COMPANY_SHEETS], COMPANY_WORDS)


def company_book(typed: Rows) -> bytes:
    """The company book with these values in its rows. Raises ValueError for a sheet, row or header it does not have.

    A factor may be given under either sheet of factors.
    """
    _refuse_unknown(typed, COMPANY_SHEETS)
    rows = {name: standing_rows(name) or [Row(dict(row)) for row in typed.get(name, ())] for name in COMPANY_SHEETS}
    for name, values in typed.items():
        sheets = FACTOR_TABLES if name in FACTOR_TABLES else (name,)
        for value in values if standing_rows(name) else ():
            _row_for(name, [row for sheet in sheets for row in rows[sheet]], value).cells.update(value)
    return _written("Company book", [(TABLES[name], rows[name]) for name in COMPANY_SHEETS], COMPANY_WORDS)


def _refuse_unknown(typed: Rows, sheets: Sequence[str]) -> None:
    for name, rows in typed.items():
        if name not in sheets:
            raise ValueError(f"there is no sheet {name}; there are {', '.join(sheets)}")
        headers = {heading.header for heading in TABLES[name].headings}
        unknown = sorted({header for row in rows for header in row} - headers)
        if unknown:
            raise ValueError(f"{name} has no column {', '.join(unknown)}")


def _row_for(name: str, rows: Sequence[Row], typed: Mapping[str, Typed]) -> Row:
    def named(cells: Mapping[str, Typed]) -> list[str]:
        return [normalize(str(cells.get(each, ""))) for each in _NAMES]

    for row in rows:
        if named(row.cells) == named(typed):
            return row
    raise ValueError(f"{name} has no row for {' '.join(filter(None, named(typed)))}")


def _written(title: str, sheets: Sequence[tuple[Table, Sequence[Row]]], words: Sequence[str]) -> bytes:
    buffer = BytesIO()
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        blank = Blank(buffer, title, drop_downs_of([table for table, _ in sheets]))
        blank.lay_words(title, words)
        for table, rows in sheets:
            blank.lay_table(table, rows)
        blank.lay_lists()
        blank.close()
    return buffer.getvalue()
