"""Writes the sheets of an input workbook: headers with messages, drop-down lists from ranges, text cells."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date, datetime
from io import BytesIO
from typing import Any

import xlsxwriter
from xlsxwriter.utility import xl_range, xl_range_abs

from calc.blanks.rows import DropDownList, Row, Typed, drop_down_of, message, needed
from calc.declared import Kind
from calc.intake.schema import FACT_TABLES, KEYS, LISTS, READ_ME, Heading, Table
from calc.intake.values import serial
from calc.layout.page import lines_of
from calc.layout.sheets import SAFETY
from calc.layout.styles import BODY, COUNT_FORMAT, FONT, ID_FORMAT, LINE_HEIGHT, number_format, properties
from calc.units.algebra import DATE
from calc.xlsx_write.worksheets import FormatCache, check_code, write_value

DEEP = 600
"""Rows of a sheet that have drop-down lists."""

_DRAWN = 32
"""Rows of a sheet that are framed for typing: what fits on one printed page."""

_OPTIONS = {
    "in_memory": True, "strings_to_formulas": False, "strings_to_urls": False, "strings_to_numbers": False,
}  # fmt: skip
_BASE_FORMAT = {"font_name": FONT, "font_size": BODY}
"""The base font of the book: column widths are counted in its digits."""

_CREATED = datetime(2026, 1, 1)
_LETTER = 1
_NARROW, _ROOMY, _WIDE, _PAGE_WIDE, _ARROW = 9.0, 24.0, 56.0, 92.0, 4
"""Column widths, in digits; the arrow of a drop-down list takes room in its cell."""

_ACROSS = 7
"""Columns of the sheet Lists; further lists go into the next band."""

_DAY, _MONEY = number_format(DATE), number_format("$")
_WORDY = ("reason", "supplier", "notes")
"""The headers without a declaration that hold sentences."""


class Blank:
    """A workbook while it is written: its formats, each made once, and the range of each list on the sheet Lists."""

    def __init__(self, buffer: BytesIO, title: str, drop_downs: Sequence[DropDownList]) -> None:
        self.book = xlsxwriter.Workbook(buffer, {**_OPTIONS, "default_format_properties": dict(_BASE_FORMAT)})
        self.book.set_properties({"title": title, "author": "flatwork-calc", "created": _CREATED, "comments": SAFETY})
        self.formats = FormatCache(self.book, _format)
        self.lists = list(_places(drop_downs))
        self.ranges = {
            words: f"={LISTS}!{xl_range_abs(row + 1, col, row + len(words), col)}" for row, col, _, words in self.lists
        }

    def lay_words(self, title: str, words: Sequence[str]) -> None:
        """The sheet that explains how to fill in the book."""
        sheet = self._open(READ_ME, f"{title}: how to fill it in", [_PAGE_WIDE])
        texts = [f"{number}.  {line}" for number, line in enumerate(words, start=1)]
        height = max(_height([text], [_PAGE_WIDE]) for text in texts) + 4
        for row, text in enumerate(texts, start=1):
            check_code(sheet.set_row(row, height), READ_ME)
            self._put(sheet, row, 0, text, "sentence")
        _print_well(sheet, 1)

    def lay_table(self, table: Table, rows: Sequence[Row]) -> None:
        """A table: its headers, its rows, and blank rows for typing."""
        widths = [_width(table, heading, rows) for heading in table.headings]
        sheet = self._open(table.name, "", widths)
        headers = [heading.header for heading in table.headings]
        check_code(sheet.set_row(0, _height(headers, widths)), table.name)
        for number, row in enumerate(rows, start=1):
            texts = [str(row.cells.get(header, "")) for header in headers]
            check_code(sheet.set_row(number, _height(texts, widths)), table.name)
        for col, heading in enumerate(table.headings):
            self._lay_column(sheet, col, table, heading, rows)
        sheet.freeze_panes(1, sum(heading.label in KEYS and heading.given is None for heading in table.headings))
        marks = {"number_stored_as_text": xl_range(0, 0, max(DEEP, len(rows)), len(headers) - 1)}
        check_code(sheet.ignore_errors(marks), table.name)
        sheet.set_landscape()
        _print_well(sheet, 1)

    def _lay_column(self, sheet: Any, col: int, table: Table, heading: Heading, rows: Sequence[Row]) -> None:
        """A header, its rows, and framed blank cells; the cells below have the same format."""
        format_text = _format_of(heading)
        check_code(
            sheet.set_column(col, col, _width(table, heading, rows), self.formats.of(("formula", format_text))),
            table.name,
        )
        self._put(sheet, 0, col, heading.header, "needed" if needed(heading) else "head")
        self._rule(sheet, (0, 0), col, said=(heading.header, message(heading)))
        self._rule(sheet, (1, DEEP), col, words=drop_down_of(table, heading).words)
        for number, row in enumerate(rows, start=1):
            self._lay_filled(sheet, number, col, heading, row)
        if not any(row.printed for row in rows):
            for number in range(len(rows) + 1, _DRAWN + 1):
                self._put(sheet, number, col, "", "input", format_text)

    def lay_lists(self) -> None:
        """The words of every list, each in its own column, with their explanations."""
        widths = [_NARROW] * _ACROSS
        texts: dict[int, list[str]] = {}
        for row, col, title, words in self.lists:
            widths[col] = min(_WIDE, max(widths[col], *(len(each) + 2 for each in (title, *words))))
            for place, word in enumerate((title, *words)):
                texts.setdefault(row + place, [""] * _ACROSS)[col] = word
        sheet = self._open(LISTS, "Lists: the choices in the drop-down lists of the other sheets", widths)
        for row, cells in texts.items():
            check_code(sheet.set_row(row, _height(cells, widths)), LISTS)
        for row, col, title, words in self.lists:
            self._put(sheet, row, col, title, "head")
            for place, word in enumerate(words, start=row + 1):
                self._put(sheet, place, col, word, "label", ID_FORMAT)
        sheet.freeze_panes(1, 0)
        sheet.set_landscape()
        _print_well(sheet, 1)

    def close(self) -> None:
        """Completes the workbook."""
        self.book.close()

    def _open(self, name: str, title: str, widths: Sequence[float]) -> Any:
        sheet = self.book.add_worksheet(name)
        for col, width in enumerate(widths):
            check_code(sheet.set_column(col, col, width), name)
        if title:
            check_code(sheet.set_row(0, 24), name)
            self._put(sheet, 0, 0, title, "title")
        return sheet

    def _lay_filled(self, sheet: Any, row: int, col: int, heading: Heading, filled: Row) -> None:
        header = heading.header
        style = "label" if header in filled.printed else "example" if filled.example else "input"
        self._put(sheet, row, col, _value(heading, filled.cells.get(header, "")), style, _format_of(heading))
        if header in filled.messages:
            words = filled.words if header == "value" else ()
            self._rule(sheet, (row, row), col, words, (header, filled.messages[header]))

    def _put(self, sheet: Any, row: int, col: int, value: Typed, style: str, format_text: str = "") -> None:
        write_value(sheet, row, col, value, self.formats.of((style, format_text)))

    def _rule(
        self, sheet: Any, rows: tuple[int, int], col: int, words: tuple[str, ...] = (), said: tuple[str, str] = ("", "")
    ) -> None:  # fmt: skip
        """A list, a message, or both on cells of a column; a cell can hold only one rule."""
        rule = {"validate": "any"}
        if words:
            rule = {
                "validate": "list", "source": self.ranges[words], "error_title": "Not in the list",
                "error_message": f"Choose a word from the list. All the lists are on the sheet {LISTS}.",
            }  # fmt: skip
        if said[1]:
            rule |= {"input_title": said[0], "input_message": said[1]}
        if words or said[1]:
            check_code(sheet.data_validation(rows[0], col, rows[1], col, rule), sheet.name)


def _places(drop_downs: Sequence[DropDownList]) -> Iterator[tuple[int, int, str, tuple[str, ...]]]:
    """The place of each column on the sheet Lists: row and column of its header, and its words; a list is not split."""
    row, col, deepest = 2, 0, 0
    for drop_down in drop_downs:
        if col + 1 + len(drop_down.beside) > _ACROSS:
            row, col, deepest = row + deepest + 2, 0, 0
        for title, words in ((drop_down.title, drop_down.words), *drop_down.beside):
            yield row, col, title, words
            col, deepest = col + 1, max(deepest, len(words))


def _format_of(heading: Heading) -> str:
    """The number format of a column: text for what is typed freely; dates, money and counts have their own."""
    given = heading.given
    if given is None:
        return {"price": _MONEY, "dated": _DAY, "valid until": _DAY}.get(heading.label, ID_FORMAT)
    if given.kind is Kind.DATE:
        return _DAY
    return COUNT_FORMAT if given.whole else ID_FORMAT


def _value(heading: Heading, typed: Typed) -> Typed:
    """A date and a count are numbers in the file; the rest stays as typed."""
    if not isinstance(typed, str) or not typed:
        return typed
    format_text = _format_of(heading)
    if format_text == _DAY:
        return serial(date.fromisoformat(typed))
    return float(typed) if format_text == COUNT_FORMAT and typed.isdecimal() else typed


def _format(style: str, format_text: str) -> dict[str, Any]:
    """The format of a cell: required headers have a heavy line, examples are subdued, typed cells are left-aligned."""
    if style == "needed":
        return {**properties("head", ""), "bottom": 5}
    if style == "head":
        return {**properties("head", ""), "bold": False}
    if style == "input":
        return {**properties("input", format_text), "text_wrap": True, "align": "left"}
    if style == "example":
        return {**properties("issue", format_text), "border": 1, "align": "left"}
    return properties(style, format_text)


def _width(table: Table, heading: Heading, rows: Sequence[Row]) -> float:
    """Wide enough for the words of the header, those of the list with its arrow and, up to a limit, the rows."""
    lengths = [len(word) + _ARROW for word in drop_down_of(table, heading).words]
    lengths += [len(str(row.cells.get(heading.header, ""))) + 2 for row in rows]
    wordy = heading.label in _WORDY if heading.given is None else heading.given.kind is Kind.TEXT
    wordy = wordy or (table.name in FACT_TABLES and heading.label == "value")
    return min(_WIDE, max(_ROOMY if wordy else _NARROW, *(len(word) + 2 for word in heading.header.split()), *lengths))


def _height(texts: Sequence[str], widths: Sequence[float]) -> float:
    lines = max(lines_of(text, width) for text, width in zip(texts, widths, strict=True))
    return LINE_HEIGHT * lines + 2


def _print_well(sheet: Any, header_rows: int) -> None:
    sheet.set_paper(_LETTER)
    sheet.set_margins(left=0.4, right=0.4, top=0.5, bottom=0.6)
    sheet.fit_to_pages(1, 0)
    sheet.repeat_rows(0, header_rows - 1)
    sheet.set_footer(f"&L&8{SAFETY}&R&8&F: &A, page &P of &N")
