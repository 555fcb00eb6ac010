"""Cell addresses: the cell of every declaration, and references to cells as they are written in another cell."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from calc.cells import column_letters
from calc.declared import Declared
from calc.formula.levels import JOB, Level
from calc.formula.tree import Named
from calc.formula.value_types import nothing


@dataclass(frozen=True)
class Block:
    """The rows of one level on a sheet, side by side or one below the other, with their numbers and words.

    ``numbers`` and ``words`` give for each level the row (side by side) or the column (one below the other) that
    holds the number, or the word, of each row. ``above`` gives for each row its row (from 0) of a higher level, where
    that follows from the numbers of rows alone: such a row is referred to without looking it up.
    """

    sheet: str
    level: Level
    first: int
    count: int
    across: bool
    numbers: dict[Level, int] = field(default_factory=dict)
    words: int | None = None
    above: dict[Level, tuple[int, ...]] = field(default_factory=dict)
    named: dict[Level, int] = field(default_factory=dict)
    """The columns of the words of each level that is crossed in this one."""
    keyed_by: Block | None = None
    """The block of the same rows, on the same sheet, that holds their numbers and words where this one does not."""

    @property
    def keys(self) -> Block:
        """The block that holds the numbers and the words of its rows."""
        return self.keyed_by or self


KeyUse = tuple[str, Level, Level, str]
"""A sheet, a level of rows on it, and the level whose numbers or words a formula refers to there."""

NUMBER, WORD = "number", "word"


@dataclass(frozen=True)
class Location:
    """The cells of a declaration: ``position`` is its row (side by side) or column (one below another) in a block."""

    block: Block
    position: int


def cell(sheet: str, row: int, col: int, seen_from: str, fixed: str = "") -> str:
    """The address of one cell; ``fixed`` says which of its column (c) and row (r) stay when it is copied."""
    c, r = ("$" if "c" in fixed else ""), ("$" if "r" in fixed else "")
    return f"{_other(sheet, seen_from)}{c}{column_letters(col + 1)}{r}{row + 1}"


def span(sheet: str, first: tuple[int, int], last: tuple[int, int], seen_from: str) -> str:
    """The address of a range, fixed."""
    start = f"${column_letters(first[1] + 1)}${first[0] + 1}"
    end = f"${column_letters(last[1] + 1)}${last[0] + 1}"
    return f"{_other(sheet, seen_from)}{start}:{end}"


def _other(sheet: str, seen_from: str) -> str:
    if sheet == seen_from:
        return ""
    return f"{sheet}!" if sheet.isalnum() else f"'{sheet}'!"


@dataclass(frozen=True)
class Shown:
    """A column of rows that are found by their running number: where it stands, and where its total does.

    ``place`` is the line whose number above 0 says that a row of ``named`` is listed; ``named`` is None for words.
    """

    section: str
    sheet: str
    first: tuple[int, int]
    last: tuple[int, int]
    named: Named | None
    place: Named
    total: tuple[int, int] | None = None


@dataclass
class CellMap:
    """The cells of all declarations."""

    locations: dict[Named, Location] = field(default_factory=dict)
    left_out: set[Named] = field(default_factory=set)
    """What has no cell, since the job has nothing of its section: it is 0, or a dash, wherever it is used."""
    texts: dict[tuple[Named, int], str] = field(default_factory=dict)
    """The formulas already written: each is in its cell, and as text beside it."""
    counts: Mapping[Level, int] = field(default_factory=dict)
    """How many rows the job has of each level."""
    keys_used: set[KeyUse] = field(default_factory=set)
    """The numbers and the words of rows that formulas refer to."""
    shown: list[Shown] = field(default_factory=list)
    """The columns of rows that are found by their running number."""
    issued: dict[str, tuple[str, int, int]] = field(default_factory=dict)
    """Sheet, row and column of what is counted of the values at issue (:mod:`calc.layout.issued`)."""

    def key(self, block: Block, level: Level, kind: str) -> tuple[Block, int]:
        """The block and the position of the numbers, or of the words, of the rows of ``block``, which are now in use.

        Raises LookupError when they are not there.
        """
        keys = block.keys
        self.keys_used.add((block.sheet, block.level, level, kind))
        if kind == NUMBER:
            position = keys.numbers.get(level)
        else:
            position = keys.words if level == block.level else keys.named.get(level)
        if position is None:
            raise LookupError(f"the rows of {block.level} on {block.sheet} have no {kind} of {level}")
        return keys, position

    def put_cell(self, named: Declared, sheet: str, row: int, col: int) -> None:
        """Records the one cell of a declaration of the job."""
        self.locations[named] = Location(Block(sheet, JOB, row, 1, False), col)

    def put_range(self, named: Declared, block: Block, position: int) -> None:
        """Records the row or column of a block that holds a declaration."""
        self.locations[named] = Location(block, position)

    def one(self, named: Named, index: int, seen_from: str, fixed: str = "") -> str:
        """The address of one row of ``named``, or the nothing that stands for it where it has no cell."""
        if named in self.left_out:
            return _nothing(named)
        location = self.locations[named]
        if location.block.across:
            return cell(location.block.sheet, location.position, location.block.first + index, seen_from, fixed)
        return cell(location.block.sheet, location.block.first + index, location.position, seen_from, fixed)

    def range_of(self, block: Block, position: int, seen_from: str, headed: bool = False) -> str:
        """The address of one row or column of a block, with the cell before the first when ``headed``."""
        return self.part_of(block, position, -headed, block.count - 1, seen_from)

    def part_of(self, block: Block, position: int, first: int, last: int, seen_from: str) -> str:
        """The address of some of the cells of one row or column of a block, from its row ``first`` (from 0) on."""
        start, end = block.first + first, block.first + last
        if block.across:
            return span(block.sheet, (position, start), (position, end), seen_from)
        return span(block.sheet, (start, position), (end, position), seen_from)


def _nothing(named: Named) -> str:
    """What a formula has in place of something that the job does not have."""
    found = nothing(named.value_type)
    return f'"{found}"' if isinstance(found, str) else "0"


@dataclass(frozen=True)
class RefFrom:
    """References from one cell: row ``index`` of ``block``, or a cell of the job on ``sheet``."""

    places: CellMap
    sheet: str
    block: Block | None = None
    index: int = 0

    @property
    def is_alone(self) -> bool:
        """Whether it is the one cell of a line of the job: nobody copies it, so that nothing in it need be fixed."""
        return self.block is not None and self.block.level == JOB

    def _free(self, address: str) -> str:
        """An address without the signs that fix it, in a cell that nobody copies."""
        return address.replace("$", "") if self.is_alone else address

    def one(self, named: Named) -> str:
        """The cell of ``named`` that goes with this one: the job's, this row's, or one looked up by row number."""
        if named in self.places.left_out:
            return self.places.one(named, 0, self.sheet)
        location = self.places.locations[named]
        if location.block.level == JOB:
            return self.places.one(named, 0, self.sheet, "" if self.is_alone else "cr")
        if self.block is not None and location.block.level == self.block.level:
            return self.places.one(named, self.index, self.sheet, "" if location.block.across else "c")
        if self.block is not None and location.block.level in self.block.above:
            row = self.block.above[location.block.level][self.index]
            return self.places.one(named, row, self.sheet, "" if location.block.across else "c")
        return self.cell_at(named, self._place_in(location.block))

    def all_cells(self, named: Named) -> str | None:
        """All the cells of ``named``; None when it has none."""
        if named in self.places.left_out:
            return None
        location = self.places.locations[named]
        if not location.block.count:
            return None
        return self._free(self.places.range_of(location.block, location.position, self.sheet))

    def group_cells(self, named: Named, level: Level) -> str | None:
        """The cells of ``named`` that belong to this cell's row of ``level``; None when that must be looked up."""
        location = self.places.locations[named]
        rows = self._group(location.block, level)
        return None if rows is None else self.places.part_of(location.block, location.position, *rows, self.sheet)

    def _group(self, block: Block, level: Level) -> tuple[int, int] | None:
        """The first and the last row of ``block`` that belong to this cell's row of ``level``."""
        if self.block is None or level not in block.above:
            return None
        if self.block.level == level:
            row = self.index
        elif level in self.block.above:
            row = self.block.above[level][self.index]
        else:
            return None
        rows = [place for place, each in enumerate(block.above[level]) if each == row]
        return (rows[0], rows[-1]) if rows and len(rows) == rows[-1] - rows[0] + 1 else None

    def cell_at(self, named: Named, place: str, of: Level = JOB) -> str:
        """The cell of ``named`` whose number, among the rows of this cell's row of ``of``, ``place`` gives."""
        location = self.places.locations[named]
        if of != JOB and (rows := self._group(location.block, of)) is not None:
            return self._of_range(
                location.block,
                self.places.part_of(location.block, location.position, rows[0] - 1, rows[1], self.sheet),
                place,
            )
        return self._nth(location.block, location.position, place)

    def fixed_cell_at(self, named: Named, place: int, of: Level = JOB) -> str | None:
        """The same for a place that is known for good; None when it must be looked up."""
        block = self.places.locations[named].block
        rows = (0, block.count - 1) if of == JOB else self._group(block, of)
        if rows is None or place > rows[1] - rows[0] + 1 or not block.level.axes:
            return None
        return self.places.one(named, rows[0] + place - 1, self.sheet, "" if self.is_alone else "cr")

    def numbers(self, named: Named, level: Level) -> str:
        """The numbers of the rows of ``level`` that the cells of ``named`` belong to."""
        block = self.places.locations[named].block
        return self._free(self.places.range_of(*self.places.key(block, level, NUMBER), self.sheet))

    def number(self, level: Level) -> str:
        """The number of the row of ``level`` that this cell belongs to."""
        block = self._own()
        if level in block.above and level not in block.keys.numbers:
            return self._key_cell(self._listing(level), level, NUMBER, block.above[level][self.index])
        return self._key_cell(block, level, NUMBER, self.index)

    def number_within(self, level: Level, within: Level) -> str:
        """The same, counted anew in each row of the higher level ``within``."""
        block = self._own()
        first = block.above[within].index(block.above[within][self.index])
        start = self._key_cell(block, level, NUMBER, first, "cr")
        return f"({self.number(level)}-{start}+1)"

    def row_count(self, level: Level, within: Level) -> str:
        """How many rows of ``level``, in use or not, belong to this cell's row of ``within``."""
        block = self._listing(level)
        rows = (0, block.count - 1) if within == JOB else self._group(block, within)
        if rows is None:
            raise LookupError(f"the rows of the {level} of one {within} stand in no one place")
        return f"COUNT({self.places.part_of(block, block.numbers[level], *rows, self.sheet)})"

    def named_row(self, level: Level) -> int:
        """Which of the names of ``level``, from 0, the row has that this cell belongs to."""
        block = self._own()
        row = self.index if block.level == level else block.above[level][self.index]
        return level.axis.places(self.places.counts)[row]

    def number_called(self, level: Level, word: str) -> int:
        """The number of the row of ``level`` with a name; 0 in a job that does not have it."""
        words = level.axis.words_of(self.places.counts)
        return words.index(word) + 1 if word in words else 0

    def _listing(self, level: Level) -> Block:
        """A block that has the rows of ``level`` themselves, with their numbers."""
        blocks = (location.block for location in self.places.locations.values() if location.block.level == level)
        found = next((block for block in blocks if level in block.keys.numbers), None)
        if found is None:
            raise LookupError(f"the rows of the {level} have no numbers on any sheet")
        return found

    def before(self, named: Named) -> str:
        """The cell of ``named`` in the row before this one; before the first it is the head of its column."""
        return self.places.one(named, self.index - 1, self.sheet, "c")

    def running(self, named: Named, level: Level) -> str:
        """The total of ``named`` up to this row, within this row's row of ``level``."""
        location = self.places.locations[named]
        cells = self._up_to_here(location.block, location.position)
        if level == JOB:
            return f"SUM({cells})"
        numbers = self._up_to_here(*self.places.key(location.block, level, NUMBER))
        return f"SUMIFS({cells},{numbers},{self._key_cell(self._own(), level, NUMBER, self.index)})"

    def _up_to_here(self, block: Block, position: int) -> str:
        """The cells of a block from its first row to this one; a range that grows when it is copied."""
        last = (position, block.first + self.index) if block.across else (block.first + self.index, position)
        first = (position, block.first) if block.across else (block.first, position)
        fixed = "r" if block.across else "c"
        return f"{cell(block.sheet, *first, self.sheet, 'cr')}:{cell(block.sheet, *last, block.sheet, fixed)}"

    def number_before(self, level: Level) -> str:
        """The number of the row of ``level`` that the row before this one belongs to."""
        return self._key_cell(self._own(), level, NUMBER, self.index - 1)

    def word(self, level: Level) -> str:
        """The word of the row of ``level`` that this cell belongs to, looked up where this block does not have it."""
        own = self._own()
        if (own.level == level and own.keys.words is not None) or level in own.keys.named:
            return self._key_cell(own, level, WORD, self.index)
        blocks = (location.block for location in self.places.locations.values() if location.block.level == level)
        for block in blocks:
            if block.keys.words is not None:
                keys, position = self.places.key(block, level, WORD)
                if level in own.above:
                    return self._key_cell(block, level, WORD, own.above[level][self.index], "cr")
                return self._nth(keys, position, self._place_in(block))
        raise LookupError(f"the rows of the {level} have no words on any sheet")

    def words_of(self, named: Named) -> str:
        """The words that the rows of ``named`` go by."""
        block = self.places.locations[named].block
        return self._free(self.places.range_of(*self.places.key(block, block.level, WORD), self.sheet))

    def _place_in(self, block: Block) -> str:
        """The place among the rows of ``block`` of the one that this cell belongs to: the number of that row."""
        return self.number(block.level)

    def _key_cell(self, block: Block, level: Level, kind: str, index: int, fixed: str = "") -> str:
        """The cell with the number, or the word, of ``level`` in one row of a block."""
        keys, position = self.places.key(block, level, kind)
        if keys.across:
            return cell(keys.sheet, position, keys.first + index, self.sheet, fixed or "r")
        return cell(keys.sheet, keys.first + index, position, self.sheet, fixed or "c")

    def _nth(self, block: Block, position: int, place: str) -> str:
        """The cell at ``place`` of a row or column of a block.

        The range starts one cell early: some programs take an INDEX over a range of one cell for an error, and over a
        range side by side want both the row and the column.
        """
        return self._of_range(block, self.places.range_of(block, position, self.sheet, headed=True), place)

    def _of_range(self, block: Block, cells: str, place: str) -> str:
        cells = self._free(cells)
        return f"INDEX({cells},1,{place}+1)" if block.across else f"INDEX({cells},{place}+1)"

    def _own(self) -> Block:
        if self.block is None:
            raise LookupError(f"a cell of the job on {self.sheet} belongs to no row")
        return self.block
