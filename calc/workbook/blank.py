"""The blank input workbooks, and filled ones of the same make.

Each sheet is a table of the declarations: headers with messages, drop-downs from ranges, text cells that keep what was
typed. Same words, same bytes: no clock is asked.
"""

from __future__ import annotations

import warnings
from collections.abc import Mapping, Sequence
from datetime import date, datetime
from io import BytesIO
from typing import Any

import xlsxwriter
from xlsxwriter.utility import xl_range, xl_range_abs

from calc.declared import Kind
from calc.errors import Unreadable
from calc.intake.schema import KEYS, LISTS, READ_ME, TABLES, WEEK_TABLES, Heading, Table
from calc.intake.values import serial
from calc.intake.words import same
from calc.units.algebra import COUNTS
from calc.workbook.blank_rows import (
    HOUSE_SHEETS,
    HOUSE_WORDS,
    WEEK_WORDS,
    Roll,
    Row,
    Typed,
    example_row,
    message,
    needed,
    roll_of,
    rolls_of,
    standing_rows,
)
from calc.workbook.lines import SAFETY
from calc.workbook.looks import BODY, COUNT_FORMAT, FONT, ID_FORMAT, LINE_HEIGHT, number_format, properties
from calc.workbook.page import lines_of

Rows = Mapping[str, Sequence[Mapping[str, Typed]]]
"""What is typed, by sheet: the rows, each by header."""

DEEP = 200
"""Rows of a sheet that have drop-downs and text cells."""

_DRAWN = 32
"""Rows of a sheet of the week that are drawn: what fits on one printed page."""

_OPTIONS = {
    "in_memory": True, "strings_to_formulas": False, "strings_to_urls": False, "strings_to_numbers": False,
}  # fmt: skip
_PLAIN_FACE = {"font_name": FONT, "font_size": BODY}
"""The face of the book itself: a column is so many of its digits wide."""

_CREATED = datetime(2026, 1, 1)
_LETTER = 1
_NARROW, _ROOMY, _WIDE, _PAGE_WIDE, _ARROW = 9.0, 24.0, 46.0, 92.0, 4
"""Widths, in digits; the arrow is what a list puts into its cell."""

_LISTS_HEAD = 2
_DAY, _MONEY = number_format("day", COUNTS), number_format("$", COUNTS)
_WORDY = ("reason", "supplier", "notes")
"""The headers without a declaration that take sentences."""

_NAMES = ("fact", "item", "factor", "for")
"""The headers that tell the rows of the house book apart."""


def blank_week() -> bytes:
    """The blank week's book, with one example row a sheet."""
    return _written("The week's book", {name: [example_row(TABLES[name])] for name in WEEK_TABLES}, WEEK_WORDS)


def week_book(typed: Rows) -> bytes:
    """A week's book with these rows and no example. Raises ValueError for a sheet or a header that it does not have."""
    _refuse_unknown(typed, WEEK_TABLES)
    rows = {name: [Row(dict(row)) for row in typed.get(name, ())] for name in WEEK_TABLES}
    return _written("The week's book", rows, WEEK_WORDS)


def blank_house() -> bytes:
    """The blank house book: every fact of the firm, every price and every factor has its row."""
    return house_book({})


def house_book(typed: Rows) -> bytes:
    """The house book with these values in its rows. Raises ValueError for a sheet, row or header it does not have."""
    _refuse_unknown(typed, HOUSE_SHEETS)
    rows = {name: standing_rows(name) or [Row(dict(row)) for row in typed.get(name, ())] for name in HOUSE_SHEETS}
    for name, values in typed.items():
        for value in values if standing_rows(name) else ():
            _row_for(name, rows[name], value).cells.update(value)
    return _written("The house book", rows, HOUSE_WORDS)


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
        return [same(str(cells.get(each, ""))) for each in _NAMES]

    for row in rows:
        if named(row.cells) == named(typed):
            return row
    raise ValueError(f"{name} has no row for {' '.join(filter(None, named(typed)))}")


def _written(title: str, sheets: Mapping[str, Sequence[Row]], words: Sequence[str]) -> bytes:
    buffer = BytesIO()
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        blank = _Blank(buffer, title, rolls_of(tuple(sheets)))
        blank.lay_words(title, words)
        for name, rows in sheets.items():
            blank.lay_table(TABLES[name], rows)
        blank.lay_lists()
        blank.book.close()
    return buffer.getvalue()


class _Blank:
    """A workbook while it is written: its faces, each made once, and where on Lists the words of each list stand."""

    def __init__(self, buffer: BytesIO, title: str, rolls: Sequence[Roll]) -> None:
        self.book = xlsxwriter.Workbook(buffer, {**_OPTIONS, "default_format_properties": dict(_PLAIN_FACE)})
        self.book.set_properties({"title": title, "author": "flatwork-calc", "created": _CREATED, "comments": SAFETY})
        self.faces: dict[tuple[str, str], Any] = {}
        self.columns: list[tuple[str, tuple[str, ...]]] = []
        self.ranges: dict[tuple[str, ...], str] = {}
        for roll in rolls:
            col, first = len(self.columns), _LISTS_HEAD + 1
            self.ranges[roll.words] = f"={LISTS}!{xl_range_abs(first, col, first + len(roll.words) - 1, col)}"
            self.columns += [(roll.title, roll.words), *roll.beside]

    def lay_words(self, title: str, words: Sequence[str]) -> None:
        """The sheet that says how to fill the book."""
        sheet = self._open(READ_ME, f"{title}: how to fill it", [_PAGE_WIDE])
        for row, line in enumerate(words, start=1):
            text = f"{row}.  {line}"
            _done(sheet.set_row(row, _height([text], [_PAGE_WIDE]) + 6), READ_ME)
            self._put(sheet, row, 0, text, "sentence")
        _print_well(sheet, 1)

    def lay_table(self, table: Table, rows: Sequence[Row]) -> None:
        """A table: its header, its rows, and blank rows that are ready for typing."""
        widths = [_width(table, heading, rows) for heading in table.headings]
        sheet = self._open(table.name, "", widths)
        headers = [heading.header for heading in table.headings]
        _done(sheet.set_row(0, _height(headers, widths)), table.name)
        for number, row in enumerate(rows, start=1):
            texts = [str(row.cells.get(header, "")) for header in headers]
            _done(sheet.set_row(number, _height(texts, widths)), table.name)
        for col, heading in enumerate(table.headings):
            self._lay_column(sheet, col, table, heading, rows)
        sheet.freeze_panes(1, sum(heading.label in KEYS and heading.given is None for heading in table.headings))
        sheet.ignore_errors({"number_stored_as_text": xl_range(0, 0, DEEP, len(headers) - 1)})
        sheet.set_landscape()
        _print_well(sheet, 1)

    def _lay_column(self, sheet: Any, col: int, table: Table, heading: Heading, rows: Sequence[Row]) -> None:
        """A header, its filled cells, and the cells for typing; only where a person adds rows are those drawn."""
        self._put(sheet, 0, col, heading.header, "needed" if needed(heading) else "head")
        self._rule(sheet, (0, 0), col, said=(heading.header, message(heading)))
        self._rule(sheet, (1, DEEP), col, words=roll_of(table, heading).words)
        drawn = 0 if any(row.printed for row in rows) else _DRAWN
        for number in range(1, DEEP + 1):
            if number <= len(rows):
                self._lay_filled(sheet, number, col, heading, rows[number - 1])
            else:
                self._put(sheet, number, col, "", "input" if number <= drawn else "formula", _format_of(heading))

    def lay_lists(self) -> None:
        """The words of every list, each in its column, with what is said beside them."""
        widths = [min(_WIDE, max(len(each) for each in (title, *words)) + 2) for title, words in self.columns]
        sheet = self._open(LISTS, "Lists: the words that the lists of the other sheets offer", widths)
        for col, (title, words) in enumerate(self.columns):
            self._put(sheet, _LISTS_HEAD, col, title, "head")
            for row, word in enumerate(words, start=_LISTS_HEAD + 1):
                self._put(sheet, row, col, word, "label", ID_FORMAT)
        for place in range(max(len(words) for _, words in self.columns)):
            texts = [words[place] if place < len(words) else "" for _, words in self.columns]
            _done(sheet.set_row(_LISTS_HEAD + 1 + place, _height(texts, widths)), LISTS)
        sheet.freeze_panes(_LISTS_HEAD + 1, 0)
        sheet.set_landscape()
        _print_well(sheet, _LISTS_HEAD + 1)

    def _open(self, name: str, title: str, widths: Sequence[float]) -> Any:
        sheet = self.book.add_worksheet(name)
        for col, width in enumerate(widths):
            _done(sheet.set_column(col, col, width), name)
        if title:
            _done(sheet.set_row(0, 24), name)
            self._put(sheet, 0, 0, title, "title")
        return sheet

    def _lay_filled(self, sheet: Any, row: int, col: int, heading: Heading, filled: Row) -> None:
        header = heading.header
        look = "label" if header in filled.printed else "example" if filled.example else "input"
        self._put(sheet, row, col, _value(heading, filled.cells.get(header, "")), look, _format_of(heading))
        if header in filled.messages:
            words = filled.words if header == "value" else ()
            self._rule(sheet, (row, row), col, words, (header, filled.messages[header]))

    def _put(self, sheet: Any, row: int, col: int, value: Typed, look: str, format_text: str = "") -> None:
        """One cell; a blank one has its face all the same."""
        key = (look, format_text)
        if key not in self.faces:
            self.faces[key] = self.book.add_format(_face(look, format_text))
        if value == "":
            code = sheet.write_blank(row, col, None, self.faces[key])
        elif isinstance(value, str):
            code = sheet.write_string(row, col, value, self.faces[key])
        else:
            code = sheet.write_number(row, col, float(value), self.faces[key])
        _done(code, sheet.name)

    def _rule(
        self, sheet: Any, rows: tuple[int, int], col: int, words: tuple[str, ...] = (), said: tuple[str, str] = ("", "")
    ) -> None:  # fmt: skip
        """A list, a message, or both on cells of a column, which can hold one rule each."""
        rule = {"validate": "any"}
        if words:
            rule = {
                "validate": "list", "source": self.ranges[words], "error_title": "Not in the list",
                "error_message": f"Take a word of the list. All the words stand on the sheet {LISTS}.",
            }  # fmt: skip
        if said[1]:
            rule |= {"input_title": said[0], "input_message": said[1]}
        if words or said[1]:
            _done(sheet.data_validation(rows[0], col, rows[1], col, rule), sheet.name)


def _format_of(heading: Heading) -> str:
    """Text for what a person types in his own way; days, money and counts have their formats."""
    given = heading.given
    if given is None:
        return {"price": _MONEY, "dated": _DAY, "valid until": _DAY}.get(heading.label, ID_FORMAT)
    if given.kind is Kind.DATE:
        return _DAY
    return COUNT_FORMAT if given.whole else ID_FORMAT


def _value(heading: Heading, typed: Typed) -> Typed:
    """A day and a count are numbers in the file; the rest stays as it was typed."""
    if not isinstance(typed, str) or not typed:
        return typed
    format_text = _format_of(heading)
    if format_text == _DAY:
        return serial(date.fromisoformat(typed))
    return float(typed) if format_text in (COUNT_FORMAT, _MONEY) else typed


def _face(look: str, format_text: str) -> dict[str, Any]:
    """The look of a cell; headers that are needed have a heavy line, and examples are quiet."""
    if look == "needed":
        return {**properties("head", ""), "bottom": 5}
    if look == "head":
        return {**properties("head", ""), "bold": False}
    if look == "input":
        return {**properties("input", format_text), "text_wrap": True}
    if look == "example":
        return {**properties("issue", format_text), "border": 1}
    return properties(look, format_text)


def _width(table: Table, heading: Heading, rows: Sequence[Row]) -> float:
    """Wide enough for each word of the header, for the words of the list and its arrow, and for what is typed, within reason."""
    lengths = [len(word) + _ARROW for word in roll_of(table, heading).words]
    lengths += [len(str(row.cells.get(heading.header, ""))) + 2 for row in rows]
    wordy = heading.label in _WORDY if heading.given is None else heading.given.kind is Kind.TEXT
    return min(_WIDE, max(_ROOMY if wordy else _NARROW, *(len(word) + 2 for word in heading.header.split()), *lengths))


def _height(texts: Sequence[str], widths: Sequence[float]) -> float:
    lines = max(lines_of(text, width) for text, width in zip(texts, widths, strict=True))
    return LINE_HEIGHT * lines + 2


def _done(code: Any, sheet: str) -> None:
    """The writer answers what it did not write with a code: that is never passed over."""
    if code:
        raise Unreadable(f"a cell of {sheet} could not be written (code {code})")


def _print_well(sheet: Any, header_rows: int) -> None:
    sheet.set_paper(_LETTER)
    sheet.set_margins(left=0.4, right=0.4, top=0.5, bottom=0.6)
    sheet.fit_to_pages(1, 0)
    sheet.repeat_rows(0, header_rows - 1)
    sheet.set_footer(f"&L&8{SAFETY}&R&8&F: &A, page &P of &N")
