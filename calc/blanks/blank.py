"""The blank input workbooks, and filled ones of the same form. The same words give the same bytes: no clock is read."""

from __future__ import annotations

import warnings
from collections.abc import Mapping, Sequence
from io import BytesIO

from calc.blanks.rows import (
    COMPANY_SHEETS,
    COMPANY_WORDS,
    JOBS_WORDS,
    Row,
    Typed,
    drop_downs_of,
    example_row,
    standing_rows,
)
from calc.blanks.sheets import Blank
from calc.intake.schema import TABLES, WEEK_TABLES
from calc.intake.spelling import normalize

Rows = Mapping[str, Sequence[Mapping[str, Typed]]]
"""What is typed, by sheet: the rows, each by header."""

_NAMES = ("fact", "item", "factor", "for")
"""The headers that identify the rows of the company book."""


def blank_jobs_book() -> bytes:
    """The blank jobs book, with one example row per sheet."""
    return _written("Jobs book", {name: [example_row(TABLES[name])] for name in WEEK_TABLES}, JOBS_WORDS)


def jobs_book(typed: Rows) -> bytes:
    """A jobs book with these rows and no example. Raises ValueError for a sheet or a header that it does not have."""
    _refuse_unknown(typed, WEEK_TABLES)
    rows = {name: [Row(dict(row)) for row in typed.get(name, ())] for name in WEEK_TABLES}
    return _written("Jobs book", rows, JOBS_WORDS)


def blank_company_book() -> bytes:
    """The blank company book: one row per company fact, price and factor."""
    return company_book({})


def company_book(typed: Rows) -> bytes:
    """The company book with these values in its rows. Raises ValueError for a sheet, row or header it does not have."""
    _refuse_unknown(typed, COMPANY_SHEETS)
    rows = {name: standing_rows(name) or [Row(dict(row)) for row in typed.get(name, ())] for name in COMPANY_SHEETS}
    for name, values in typed.items():
        for value in values if standing_rows(name) else ():
            _row_for(name, rows[name], value).cells.update(value)
    return _written("Company book", rows, COMPANY_WORDS)


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


def _written(title: str, sheets: Mapping[str, Sequence[Row]], words: Sequence[str]) -> bytes:
    buffer = BytesIO()
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        blank = Blank(buffer, title, drop_downs_of(tuple(sheets)))
        blank.lay_words(title, words)
        for name, rows in sheets.items():
            blank.lay_table(TABLES[name], rows)
        blank.lay_lists()
        blank.close()
    return buffer.getvalue()
