"""Every private part of xlsxwriter that this program relies on, with a check of each.

xlsxwriter promises to keep its documented methods; it promises nothing about the parts used here, which let a worksheet
take rows that are rendered already instead of one cell at a time. For each part there is a function or a class that
uses it and a function that tries it: on a small workbook in memory, the answer of the part is compared with what
stands in the file that was written. A part that was renamed, or that answers otherwise, makes its check return False.
Then :func:`supports_rendered_rows` is False and every workbook is written cell by cell through documented methods:
the same cells, in about three times the time.

The checks run once in a process, at the first workbook.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from functools import cache
from io import BytesIO, StringIO
from shutil import copyfileobj
from typing import IO, Any
from zipfile import ZipFile

from xlsxwriter.workbook import Workbook
from xlsxwriter.worksheet import Worksheet

RangeValues = Callable[[int, int, int, int], Sequence[Any]]
"""The values of a range: first row and column, last row and column, from 0; row by row."""


def format_number(made: Any) -> int:
    """The number by which the file's cells refer to a format (their attribute ``s``).

    Relies on ``Format._get_xf_index()``, which numbers the formats in the order in which they are first asked for.
    """
    return int(made._get_xf_index())


def string_numbers(sheet: Any) -> Callable[[str], int]:
    """What gives a text its number among the shared strings of the workbook of ``sheet``, adding it where it is new.

    Relies on ``Worksheet.str_table``, which all sheets of a workbook share, and its ``_get_shared_string_index()``.
    """
    number: Callable[[str], int] = sheet.str_table._get_shared_string_index
    return number


class RenderedRowsSheet(Worksheet):  # type: ignore[misc]  # xlsxwriter has no type information
    """A worksheet whose rows are the text of the file already.

    Relies on ``Worksheet._write_rows()``, called once between the tags of ``<sheetData>``; on ``Worksheet.fh``, the
    open text file that it writes to; and on ``Worksheet._get_range_data()``, called for the values that a chart stores
    beside the addresses of its cells.
    """

    def use_rendered_rows(self, rows: IO[str], values: RangeValues) -> None:
        """Has the sheet take its rows from the file ``rows``, and the values that charts store from ``values``."""
        self._flatwork_rows, self._flatwork_values = rows, values

    def rows_were_written(self) -> bool:
        """Closes the rows, after the workbook was closed: whether xlsxwriter copied them into the file."""
        written = self._flatwork_rows.tell() > 0
        self._flatwork_rows.close()
        return written

    def _write_rows(self) -> None:
        copyfileobj(self._flatwork_rows, self.fh)

    def _get_range_data(self, row_start: int, col_start: int, row_end: int, col_end: int) -> Sequence[Any]:
        return self._flatwork_values(row_start, col_start, row_end, col_end)


class RawFormulaSheet(Worksheet):  # type: ignore[misc]  # xlsxwriter has no type information
    """A worksheet that stores every formula as it was given.

    Relies on ``Worksheet._prepare_formula()``, which takes a formula with its ``=`` and returns the text for the file.
    It searches each formula for some sixty functions that are younger than the file format, which took half of the
    time of writing; none of ours is, and a test looks at all that is written. Where the part was renamed, the method
    below is never called; where it answers otherwise, it is not used: both are only slower.
    """

    def _prepare_formula(self, formula: str, *options: Any, **named: Any) -> Any:
        if prepares_formulas():
            return formula.removeprefix("=")
        return super()._prepare_formula(formula, *options, **named)


def _checked(works: Callable[[], bool]) -> Callable[[], bool]:
    """A check that is made once; a part that raises does not work, whatever it raises."""

    @cache
    def check() -> bool:
        try:
            return works()
        except Exception:  # xlsxwriter changed in a way that nobody could foresee: the documented methods remain
            return False

    check.__doc__ = works.__doc__
    return check


@_checked
def numbers_formats() -> bool:
    """Whether :func:`format_number` gives the numbers that the file has."""
    claimed: list[int] = []

    def build(book: Any) -> None:
        sheet = book.add_worksheet()
        formats = [book.add_format(each) for each in ({"bold": True}, {"italic": True}, {"bold": True})]
        claimed.extend(format_number(formats[place]) for place in (1, 0, 2, 1))
        for col, place in enumerate((1, 0, 2, 1)):
            sheet.write_number(0, col, col, formats[place])

    cells = re.findall(r'<c r="[A-D]1" s="(\d+)">', _parts(build)["xl/worksheets/sheet1.xml"])
    return claimed == [int(each) for each in cells] and len(set(claimed)) == 2


@_checked
def numbers_strings() -> bool:
    """Whether :func:`string_numbers` gives the numbers that the file has, to every sheet."""
    claimed: list[int] = []

    def build(book: Any) -> None:
        one, another = book.add_worksheet(), book.add_worksheet()
        one.write_string(0, 0, "first")
        claimed.extend(string_numbers(another)(words) for words in ("second", "first", "third"))
        for col, words in enumerate(("second", "first", "third")):
            another.write_string(0, col, words)

    parts = _parts(build)
    cells = re.findall(r't="s"><v>(\d+)</v>', parts["xl/worksheets/sheet2.xml"])
    strings = re.findall(r"<t>(\w+)</t>", parts["xl/sharedStrings.xml"])
    return claimed == [int(each) for each in cells] == [1, 0, 2] and strings == ["first", "second", "third"]


@_checked
def asks_for_rows() -> bool:
    """Whether the rows of a :class:`RenderedRowsSheet` are the rows in the file, and nothing else is."""
    rows = '<row r="1"><c r="A1"><v>41</v></c></row>'

    def build(book: Any) -> None:
        sheet = book.add_worksheet(None, RenderedRowsSheet)
        sheet.use_rendered_rows(StringIO(rows), lambda *_: ())
        sheet.write_blank(0, 0, None, book.add_format())

    return f"<sheetData>{rows}</sheetData>" in _parts(build)["xl/worksheets/sheet1.xml"]


@_checked
def asks_for_chart_values() -> bool:
    """Whether a chart stores the values that a :class:`RenderedRowsSheet` gives it as it does those of any sheet."""
    cells: dict[tuple[int, int], float | str] = {(0, 0): 41.5, (1, 0): "words", (2, 0): 7.0, (4, 0): 3.0}

    def build(book: Any) -> None:
        plain, rendered = book.add_worksheet("Plain"), book.add_worksheet("Rendered", RenderedRowsSheet)
        for (row, col), value in cells.items():
            plain.write_formula(row, col, "=A9", None, value)
        rendered.use_rendered_rows(
            StringIO("<row/>"), lambda top, left, bottom, _: [cells.get((row, left)) for row in range(top, bottom + 1)]
        )
        for sheet in (plain, rendered):
            chart = book.add_chart({"type": "bar"})
            chart.add_series({"name": [sheet.name, 1, 0], "values": [sheet.name, 0, 0, 4, 0]})
            sheet.insert_chart(6, 0, chart)

    parts = _parts(build)
    stored = [
        re.findall(r"<c:(?:str|num)Cache>.*?</c:(?:str|num)Cache>", parts[f"xl/charts/chart{number}.xml"])
        for number in (1, 2)
    ]
    return stored[0] == stored[1] and "<c:v>41.5</c:v>" in "".join(stored[0])


@_checked
def prepares_formulas() -> bool:
    """Whether ``Worksheet._prepare_formula()`` takes a formula with its ``=`` and returns its text without it."""
    return bool(Worksheet()._prepare_formula("=SUM(A1:A2)+1") == "SUM(A1:A2)+1")


@cache
def supports_rendered_rows() -> bool:
    """Whether rows may be rendered by this program: every part that this needs is there and answers as expected."""
    return numbers_formats() and numbers_strings() and asks_for_rows() and asks_for_chart_values()


def _parts(build: Callable[[Any], None]) -> dict[str, str]:
    """The parts of a small workbook, by name."""
    buffer = BytesIO()
    book = Workbook(buffer, {"in_memory": True})
    build(book)
    book.close()
    with ZipFile(buffer) as file:
        return {name: file.read(name).decode() for name in file.namelist()}
