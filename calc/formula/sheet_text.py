"""A tree as the text of a spreadsheet formula."""

from __future__ import annotations

from typing import Protocol

from calc.formula.aggregate import Aggregate, Before, ByRow, First, RowAt, RowNumber, RowWord, Running
from calc.formula.functions import CALL, NOTHING
from calc.formula.keys import GroupSum, LookupByKey, SumIf
from calc.formula.levels import JOB, Level
from calc.formula.tree import (
    Apply,
    Exact,
    Expr,
    Literal,
    Named,
    UnitCast,
    bracketed,
)
from calc.formula.value_types import ValueType

_GATHERING = {"total": "SUM", "least": "MIN", "greatest": "MAX"}


class CellReferences(Protocol):
    """The cells as they are seen from the one cell that a formula is written for."""

    def one(self, named: Named) -> str:
        """The one cell of ``named`` that goes with this cell's row, or a look-up of it by row number."""

    def every(self, named: Named) -> str | None:
        """All the cells of ``named``; None when there are none."""

    def together(self, named: Named, level: Level) -> str | None:
        """The cells of ``named`` that belong to this cell's row of ``level``, which stand one after the other.

        None when it cannot be told from the numbers of rows alone.
        """

    def picked(self, named: Named, place: str, of: Level = JOB) -> str:
        """The cell of ``named`` whose number, among the rows of this cell's row of ``of``, ``place`` gives."""

    def nth(self, named: Named, place: int, of: Level) -> str | None:
        """The same for a place that is known for good; None when it must be looked up."""

    def numbers(self, named: Named, level: Level) -> str:
        """For each cell of ``named``, the number of the row of ``level`` it belongs to."""

    def number(self, level: Level) -> str:
        """The number of the row of ``level`` that this cell belongs to."""

    def number_within(self, level: Level, within: Level) -> str:
        """The same, counted anew in each row of the higher level ``within``."""

    def row(self, level: Level) -> int:
        """The row of ``level``, from 0, that this cell belongs to, for a level of named rows."""

    def before(self, named: Named) -> str:
        """The cell of ``named`` in the row before this one."""

    def running(self, named: Named, level: Level) -> str:
        """The total of ``named`` down to this row, within this row's row of ``level``."""

    def number_before(self, level: Level) -> str:
        """The number of the row of ``level`` that the row before this one belongs to."""

    def word(self, level: Level) -> str:
        """The word of the row of ``level`` that this cell belongs to."""

    def words_of(self, named: Named) -> str:
        """The words that the rows of ``named`` go by."""


def sheet_text(node: Expr, seen: CellReferences) -> str:
    """The formula of ``node`` without its ``=``, as it stands in the cell that ``seen`` looks from."""
    return _text(node, seen)[0]


def _text(node: Expr, seen: CellReferences) -> tuple[str, int]:
    """The text and how tightly it binds."""
    match node:
        case Named():
            return seen.one(node), CALL
        case Apply():
            function = node.function
            texts = [bracketed(*_text(part, seen), function.need(i)) for i, part in enumerate(node.arguments)]
            return function.sheet(*texts), function.rank
        case Literal(value=str() as words):
            doubled = words.replace('"', '""')
            return f'"{doubled}"', CALL
        case Literal(value=value):
            return f"{value:g}", CALL
        case Exact():
            return node.written, CALL
        case UnitCast():
            return _text(node.part, seen)
        case ByRow():
            return _text(node.cases[seen.row(node.of)], seen)
        case _:
            return _from_rows(node, seen), CALL


def _from_rows(node: Expr, seen: CellReferences) -> str:
    """The text of a node that goes from row to row."""
    match node:
        case Aggregate():
            return _gathered(node, seen)
        case RowAt():
            return _picked(node, seen)
        case Before():
            otherwise = sheet_text(node.otherwise, seen)
            return f"IF({seen.number_before(node.of)}={seen.number(node.of)},{seen.before(node.part)},{otherwise})"
        case First():
            place = f"MATCH({seen.number(node.of)},{seen.numbers(node.part, node.of)},0)"
            return seen.picked(node.part, place)
        case Running():
            return seen.running(node.part, node.of)
        case LookupByKey():
            if seen.every(node.part) is None:
                return "0"
            place = f"MATCH({sheet_text(node.wanted, seen)},{seen.every(node.key)},{int(node.ascending)})"
            return seen.picked(node.part, place)
        case SumIf():
            if seen.every(node.part) is None:
                return "0"
            return f"SUMIFS({seen.every(node.part)},{seen.every(node.key)},{sheet_text(node.wanted, seen)})"
        case GroupSum():
            keys, key = seen.every(node.key), seen.one(node.key)
            if node.part is None:
                return f"MATCH({key},{keys},0)"
            return f"SUMIFS({seen.every(node.part)},{keys},{key})"
        case RowNumber():
            return seen.number(node.of) if node.within == JOB else seen.number_within(node.of, node.within)
        case RowWord():
            return seen.word(node.of)
    raise TypeError(f"no sheet text for {type(node).__name__}")


def _gathered(node: Aggregate, seen: CellReferences) -> str:
    cells = seen.every(node.part)
    if cells is None:
        return "0"
    if node.to != JOB and (group := seen.together(node.part, node.to)) is not None:
        cells = group
    elif node.how == "total" and node.to != JOB:
        return f"SUMIFS({cells},{seen.numbers(node.part, node.to)},{seen.number(node.to)})"
    if node.how == "place of least":
        return f"MATCH(MIN({cells}),{cells},0)"
    return f"{_GATHERING[node.how]}({cells})"


def _picked(node: RowAt, seen: CellReferences) -> str:
    if seen.every(node.part) is None:
        return "0" if node.sort is ValueType.NUMBER else f'"{NOTHING}"'
    known = _known_place(node)
    if known and (sure := seen.nth(node.part, known, node.of)) is not None:
        return sure
    by = sheet_text(node.by, seen)
    place = f"MATCH({by},{seen.words_of(node.part)},0)" if node.by.sort is ValueType.TEXT else by
    return seen.picked(node.part, place, node.of)


def _known_place(node: RowAt) -> int:
    """The place that a fixed number or a fixed word gives; 0 where it follows from values."""
    words = node.part.level.axis.words if node.part.level.axes and not node.part.level.crossed else ()
    match node.by:
        case Exact(value=value):
            return int(value)
        case Literal(value=str() as word) if word in words:
            return words.index(word) + 1
    return 0
