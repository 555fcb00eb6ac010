"""Sheets of the small trade: two sheets, laid out by the fewest rules that show every way a cell can stand.

Numbers of the job stand in a column. Rows of areas and of a few named rows stand side by side from column G, with
their words and their numbers above; all other rows stand one below the other, with the numbers of everything that
they belong to beside them.
"""

from __future__ import annotations

from math import isnan
from pathlib import Path

import xlsxwriter

from calc.declare import JOB, Level, Line, Section
from calc.declared import Account, Declared, PriceDay, Taxed
from calc.formula.compute import Batch
from calc.formula.functions import NONE
from calc.formula.levels import level_of
from calc.formula.sheet_text import sheet_text
from calc.layout.addresses import Block, CellMap, RefFrom
from small_jobs import Job, Value, evaluate, of_job
from small_trade import SECTIONS

TYPED, WORKED = "Typed", "Worked out"
LABEL, ALL_ROWS, FIRST = 0, 1, 6
"""Columns: what it is, its value or the sum of its rows, and its first row."""

Cell = tuple[int, int, Value]
"""Row, column and content of a cell that is no formula."""


class Layout:
    """The places of everything in one job of a frame, and the cells that are no formulas."""

    def __init__(self, frame: Batch, job: int) -> None:
        self.frame, self.job = frame, job
        self.places = CellMap()
        self.cells: dict[str, list[Cell]] = {TYPED: [], WORKED: []}
        self.next_row = dict.fromkeys(self.cells, 1)
        for section in SECTIONS:
            self._lay(section)

    def _lay(self, section: type[Section]) -> None:
        sheet = section.sheet or TYPED
        rows, self.next_row[sheet] = self._sized(section)
        if section.level == JOB or section.level.across:
            block = self._across(sheet, section.level, rows)
            for row, member in enumerate(_laid(section), start=rows):
                self._put_in_a_row(sheet, row, member, block)
        else:
            self._put_in_columns(sheet, rows, section)

    def _sized(self, section: type[Section]) -> tuple[int, int]:
        """The first row of a section below its heads, and the row after it."""
        start = self.next_row[section.sheet or TYPED] + 3
        below = section.level != JOB and not section.level.across
        job_rows = sum(member.level == JOB for member in _laid(section))
        length = self._count(section.level) + job_rows if below else len(_laid(section))
        return start, start + length + 1

    def _count(self, level: Level) -> int:
        return int((self.frame.rows_of(level).job == self.job).sum())

    def _numbers(self, lower: Level, upper: Level) -> list[float]:
        """For each row of ``lower`` the number of the row of ``upper`` that it belongs to."""
        rows = self.frame.rows_of(lower)
        numbers = self.frame.rows_of(upper).number[self.frame.above(lower, upper)]
        return [float(number) for number in numbers[rows.job == self.job]]

    def _words(self, level: Level) -> list[str]:
        rows = self.frame.rows_of(level)
        return [str(word) for word in rows.words[rows.job == self.job]]

    def _across(self, sheet: str, level: Level, first_row: int) -> Block | None:
        if level == JOB:
            return None
        words, numbers = first_row - 2, first_row - 1
        for index, (word, number) in enumerate(zip(self._words(level), self._numbers(level, level), strict=True)):
            self.cells[sheet] += [(words, FIRST + index, word), (numbers, FIRST + index, number)]
        return Block(sheet, level, FIRST, self._count(level), True, {level: numbers}, words)

    def _put_in_a_row(self, sheet: str, row: int, member: Declared, block: Block | None) -> None:
        self.cells[sheet].append((row, LABEL, member.label))
        if block is None or member.level == JOB:
            self.places.put_cell(member, sheet, row, ALL_ROWS)
        else:
            self.places.put_range(member, block, row)

    def _put_in_columns(self, sheet: str, first_row: int, section: type[Section]) -> None:
        level, head = section.level, first_row - 1
        uppers = [upper for upper in map(level_of, sorted(level.axes, key=str)) if upper != level]
        lanes = {upper: FIRST + place for place, upper in enumerate([level, *uppers])}
        words = FIRST + len(lanes)
        counts = {each: self._count(each) for each in [level, *self.frame.rows]}
        crossed = [upper for upper in uppers if level.crossed and {*upper.leaves} <= {*level.leaves}]
        above = {upper: level.rows_above(upper, counts) for upper in crossed}
        block = Block(sheet, level, first_row, self._count(level), False, lanes, words, above)
        for upper, lane in lanes.items():
            column = self._numbers(level, upper)
            self.cells[sheet] += [(head, lane, f"{upper} No.")]
            self.cells[sheet] += [(first_row + index, lane, number) for index, number in enumerate(column)]
        self.cells[sheet] += [(first_row + index, words, word) for index, word in enumerate(self._words(level))]
        for place, member in enumerate(_laid(section)):
            if member.level == JOB:
                self._put_in_a_row(sheet, first_row + place, member, None)
            else:
                self.cells[sheet].append((head, words + 1 + place, member.label))
                self.places.put_range(member, block, words + 1 + place)


def _laid(section: type[Section]) -> list[Declared]:
    """What has a place: nothing here asks whether a price is taxed, nor its account, nor its days."""
    return [member for member in section.members if not isinstance(member, Account | PriceDay | Taxed)]


def write(path: Path, job: Job) -> Path:
    """Writes the workbook of one job: what was typed, and a live formula with its value for everything else."""
    frame = evaluate([job])
    layout = Layout(frame, 0)
    workbook = xlsxwriter.Workbook(str(path), {"in_memory": True})
    plain, money = workbook.add_format(), workbook.add_format({"num_format": "$#,##0.00"})
    sheets = {name: workbook.add_worksheet(name) for name in layout.cells}
    for name, cells in layout.cells.items():
        for row, col, content in cells:
            _write_value(sheets[name], row, col, content)
    for named, spot in layout.places.locations.items():
        sheet, look = sheets[spot.block.sheet], money if named.unit_text == "$" else plain
        for index, value in enumerate(of_job(frame, named)):
            row, col = spot.block.first + index, spot.position
            if spot.block.across:
                row, col = spot.position, spot.block.first + index
            if isinstance(named, Line):
                sheet.write_formula(row, col, formula(layout, named, index), look, _shown(value))
            else:
                _write_value(sheet, row, col, value)
    workbook.close()
    return path


def formula(layout: Layout, line: Line, index: int = 0) -> str:
    """The formula of one row of a line as it stands in its cell."""
    block = layout.places.locations[line].block
    own = None if block.level == JOB else block
    return f"={sheet_text(line.formula, RefFrom(layout.places, block.sheet, own, index))}"


def _shown(value: Value) -> Value:
    return NONE if isinstance(value, float) and isnan(value) else value


def _write_value(sheet: xlsxwriter.worksheet.Worksheet, row: int, col: int, value: Value) -> None:
    if isinstance(_shown(value), str):
        sheet.write_string(row, col, _shown(value))
    else:
        sheet.write_number(row, col, value)
