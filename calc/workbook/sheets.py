"""The worksheets of the writer: one is poured from a cast, one grows row by row, and one takes its cells one by one.

The first two give the writer rows that are ready. It does not promise to ask for them: the third is for that case.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from shutil import copyfileobj
from tempfile import TemporaryFile
from typing import Any
from weakref import WeakKeyDictionary

from xlsxwriter.worksheet import Worksheet

from calc.errors import Unreadable
from calc.workbook.cast import Cast, Look, as_run, cast, growing, in_order, spelled
from calc.workbook.looks import LINE_HEIGHT, properties
from calc.workbook.page import Shown
from calc.workbook.plan import Cell, SheetPlan
from calc.workbook.values import JobValues


class Faces:
    """The formats of a workbook, each made once."""

    def __init__(self, book: Any) -> None:
        self.book = book
        self.made: dict[Look, Any] = {}

    def of(self, look: Look) -> Any:
        """The face of a role with a number format."""
        if look not in self.made:
            self.made[look] = self.book.add_format(properties(*look))
        return self.made[look]

    def number(self, look: Look) -> int:
        """Its number in the file."""
        return int(_part_of(self.of(look), "_get_xf_index")())


@dataclass(frozen=True, slots=True)
class Extent:
    """How many rows and columns of a sheet hold cells, and how high those rows are that say so, in points."""

    rows: int
    cols: int
    heights: dict[int, float]


class OtherWriter(Exception):
    """The writer is a release that puts a file together in another way, and has no use for rows from a cast."""


def _part_of(thing: Any, name: str) -> Any:
    """A part of the writer that it does not promise to keep."""
    try:
        return getattr(thing, name)
    except AttributeError as reason:
        raise OtherWriter from reason


class PlainSheet(Worksheet):  # type: ignore[misc]
    """A worksheet that takes its cells one by one, and every formula as it stands.

    The writer looks in each formula for some thirty functions that are younger than the file format, to mark them, and
    that took half of its time. None of ours is: the table of functions has none, and a test looks at what is written. A
    release of the writer that looks elsewhere never asks this, and is only slower.
    """

    def _prepare_formula(self, formula: str, expand_future_functions: bool = False) -> str:
        return formula.removeprefix("=")

    def take(self, plan: SheetPlan, faces: Faces, job: JobValues | None) -> Extent:
        """Takes every cell of a plan."""
        heights = dict(plan.page.heights)
        for row, height in heights.items():
            self.set_row(row, height)
        rows, cols = 1, 1
        cells = plan.cells if self.constant_memory else in_order(plan.cells)
        for cell in cells:
            rows, cols = max(rows, cell.row + 1), max(cols, cell.col + 1)
            value = self._take_cell(cell, faces, job)
            if cell.own_words and isinstance(value, str):
                least = heights.get(cell.row, LINE_HEIGHT)
                heights[cell.row] = max(least, plan.page.height_of(value, cell.col))
                self.set_row(cell.row, heights[cell.row])
        return Extent(rows, cols, heights)

    def finish(self) -> None:
        """Nothing is left to be asked for."""

    def _take_cell(self, cell: Cell, faces: Faces, job: JobValues | None) -> Shown:
        value = cell.shows(job)
        face = faces.of(cell.look)
        formula = cell.formula_for(job)
        if formula:
            result = spelled(value) if isinstance(value, str) else value
            code = self.write_formula(cell.row, cell.col, f"={formula}", face, result)
        elif value is None or value == "":
            code = self.write_blank(cell.row, cell.col, None, face)
        elif isinstance(value, str):
            code = self.write_string(cell.row, cell.col, as_run(value), face)
        else:
            code = self.write_number(cell.row, cell.col, float(value), face)
        done(code, self.name)
        return value


def done(code: Any, sheet: str) -> None:
    """The writer answers a cell that it did not write with a code: that is never passed over."""
    if code:
        raise Unreadable(f"a cell of {sheet} could not be written (code {code})")


_CASTS: WeakKeyDictionary[SheetPlan, Cast] = WeakKeyDictionary()
"""The casts of the plans that live."""


def _cast_of(plan: SheetPlan, faces: Faces) -> Cast:
    """The cast of a plan for a workbook whose formats have these numbers."""
    there = _CASTS.get(plan)
    if there is not None and [faces.number(look) for look in there.numbers] == list(there.numbers.values()):
        return there
    _CASTS[plan] = made = cast(plan.page, plan.cells, faces.number)
    return made


class _PouredSheet(Worksheet):  # type: ignore[misc]
    """A worksheet whose rows are ready, and wait to be asked for when the writer puts the file together.

    A release of the writer that does not ask is found out at the end, by :meth:`finish`.
    """

    _asked = False

    def _shared(self) -> Callable[[str], int]:
        """What gives a text its number among the strings of the workbook."""
        shared: Callable[[str], int] = _part_of(_part_of(self, "str_table"), "_get_shared_string_index")
        return shared

    def _say_size(self, first: tuple[int, int], last: tuple[int, int], face: Any) -> None:
        """Tells the writer how far the sheet goes."""
        for row, col in (first, last):
            done(self.write_blank(row, col, None, face), self.name)

    def _write_rows(self) -> None:
        self._asked = True
        self._give_rows()

    def _give_rows(self) -> None:
        """Puts its rows into the file."""
        raise NotImplementedError

    def finish(self) -> None:
        """Makes sure that its rows got into the file; raises OtherWriter when they did not."""
        if not self._asked:
            raise OtherWriter


class CastSheet(_PouredSheet):
    """A sheet of a job, poured from its cast."""

    def take(self, plan: SheetPlan, faces: Faces, job: JobValues | None) -> Extent:
        """Takes the rows of a plan."""
        made = _cast_of(plan, faces)
        poured = made.pour(job, self._shared())
        self._cast, self._job, self._rows = made, job, poured.rows
        heights = plan.page.heights | poured.heights
        if plan.page.charts:  # they lie over rows, and are as high as those
            for row, height in heights.items():
                self.set_row(row, height)
        last = max([made.rows - 1, *plan.page.heights]), made.cols - 1
        self._say_size((0, 0), last, faces.of(made.cells[0].look))
        return Extent(made.rows, made.cols, heights)

    def _give_rows(self) -> None:
        self.fh.write(self._rows)

    def _get_range_data(self, first_row: int, first_col: int, last_row: int, last_col: int) -> Sequence[Any]:
        """The cells that a chart is drawn from, as the writer keeps them beside it."""
        places = ((row, col) for row in range(first_row, last_row + 1) for col in range(first_col, last_col + 1))
        return [self._charted(self._cast.by_place.get(place)) for place in places]

    def _charted(self, cell: Cell | None) -> float | str | None:
        if cell is None:
            return None
        value = cell.shows(self._job)
        if isinstance(value, str) or value is None or cell.formula_for(self._job):
            return "" if value is None else value
        return f"{value:.16g}"


class GrowingSheet(_PouredSheet):
    """A sheet that grows with the jobs: its rows wait in a file of their own, one after the other."""

    def take(self, plan: SheetPlan, faces: Faces, job: JobValues | None) -> Extent:
        """Takes the rows of a plan."""
        self._rows = TemporaryFile("w+", encoding="utf-8", newline="")  # noqa: SIM115  # closed by finish
        rows, cols = 1, 1
        for row in growing(plan.page, plan.cells, faces.number, self._shared()):
            rows, cols = row.number + 1, max(cols, row.cols)
            self._rows.write(row.text)
        self._say_size((0, 0), (rows - 1, cols - 1), faces.of(("words", "")))
        return Extent(rows, cols, dict(plan.page.heights))

    def _give_rows(self) -> None:
        self._rows.seek(0)
        copyfileobj(self._rows, self.fh)

    def finish(self) -> None:
        """Makes sure that its rows got into the file, and lets go of them."""
        self._rows.close()
        super().finish()


Kind = type[PlainSheet] | type[CastSheet] | type[GrowingSheet]
"""What a sheet of a workbook is."""
