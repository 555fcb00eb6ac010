"""The spreadsheet formula of a tree."""

from __future__ import annotations

from typing import Protocol

from calc.formula.aggregate import Aggregate, Before, ByRow, First, RowAt, RowCount, RowNumber, RowWord, Running
from calc.formula.dead_pieces import without_dead_pieces
from calc.formula.divisors import DIVIDING, can_be_zero
from calc.formula.functions import CALL, NOTHING
from calc.formula.keys import GroupSum, LookupByKey, SumIf
from calc.formula.levels import JOB, Level
from calc.formula.tree import (
    Apply,
    Exact,
    Expr,
    Literal,
    Named,
    RowCalled,
    UnitCast,
    bracketed,
)
from calc.formula.value_types import ValueType

_AGGREGATE_FUNCTIONS = {"total": "SUM", "least": "MIN", "greatest": "MAX"}


class CellReferences(Protocol):
    """References to cells, as they are written in the formula of one cell."""

    def one(self, named: Named) -> str:
        """The one cell of ``named`` that goes with this cell's row, or a look-up of it by row number."""

    def all_cells(self, named: Named) -> str | None:
        """All the cells of ``named``; None when there are none."""

    def group_cells(self, named: Named, level: Level) -> str | None:
        """The cells of ``named`` that belong to this cell's row of ``level``, which are contiguous.

        None when that does not follow from the numbers of rows alone.
        """

    def cell_at(self, named: Named, place: str, of: Level = JOB) -> str:
        """The cell of ``named`` whose number, among the rows of this cell's row of ``of``, ``place`` gives."""

    def fixed_cell_at(self, named: Named, place: int, of: Level) -> str | None:
        """The same for a fixed number; None when the cell must be looked up."""

    def numbers(self, named: Named, level: Level) -> str:
        """For each cell of ``named``, the number of the row of ``level`` it belongs to."""

    def number(self, level: Level) -> str:
        """The number of the row of ``level`` that this cell belongs to."""

    def number_within(self, level: Level, within: Level) -> str:
        """The same, counted anew in each row of the higher level ``within``."""

    def named_row(self, level: Level) -> int:
        """Which of the names of ``level``, from 0, the row has that this cell belongs to."""

    def number_called(self, level: Level, word: str) -> int:
        """The number of the row of ``level`` with a name; 0 when there is no such row."""

    def before(self, named: Named) -> str:
        """The cell of ``named`` in the row before this one."""

    def running(self, named: Named, level: Level) -> str:
        """The total of ``named`` down to this row, within this row's row of ``level``."""

    def row_count(self, level: Level, within: Level) -> str:
        """How many rows of ``level`` belong to this cell's row of ``within``."""

    def number_before(self, level: Level) -> str:
        """The number of the row of ``level`` that the row before this one belongs to."""

    def word(self, level: Level) -> str:
        """The name of the row of ``level`` that this cell belongs to."""

    def words_of(self, named: Named) -> str:
        """The names of the rows of ``named``."""


def sheet_text(node: Expr, refs: CellReferences) -> str:
    """The formula of ``node`` without its ``=``, with the references of ``refs``."""
    return _text(node, refs)[0]


def _text(node: Expr, refs: CellReferences, asked: str = "") -> tuple[str, int]:
    """The text and its precedence; ``asked`` are the conditions, as text, under which it is worked out."""
    match node:
        case Named():
            return _as_number(node, refs.one(node)), CALL
        case Apply():
            return _applied(node, refs, asked)
        case Literal(value=str() as words):
            doubled = words.replace('"', '""')
            return f'"{doubled}"', CALL
        case Literal(value=value):
            return f"{value:g}", CALL
        case RowCalled():
            return str(refs.number_called(node.of, node.row_name)), CALL
        case Exact():
            return node.in_sheet, CALL
        case UnitCast():
            return _text(node.part, refs, asked)
        case ByRow():
            return _text(node.cases[refs.named_row(node.of)], refs, asked)
        case _:
            return _from_rows(node, refs), CALL


def _applied(node: Apply, refs: CellReferences, asked: str) -> tuple[str, int]:
    function = node.function
    if function.name == "when":
        condition = _text(node.arguments[0], refs, asked)
        within = f"{asked} {condition[0]}"
        parts = [condition, *(_text(part, refs, within) for part in node.arguments[1:])]
    else:
        parts = [_text(part, refs, asked) for part in node.arguments]
    if (left := without_dead_pieces(function.name, parts)) is not None:
        return left
    texts = [bracketed(*part, function.argument_rank(i)) for i, part in enumerate(parts)]
    if function.name == "if_given" and _is_typed(node.arguments[0]) and not _is_signed(node.arguments[0]):
        return f"IF(ISNUMBER({texts[0]}),MAX(0,{texts[0]}),{texts[1]})", CALL
    if function.name in DIVIDING and _may_vanish(node.arguments[1], refs, asked):
        return f"IF({parts[1][0]}=0,0,{function.sheet(*texts)})", CALL
    return function.sheet(*texts), function.rank


def _may_vanish(node: Expr, refs: CellReferences, asked: str) -> bool:
    """Whether a divisor may be 0 in spite of what was ``asked`` of it."""
    if not can_be_zero(node):
        return False
    match node:
        case UnitCast():
            return _may_vanish(node.part, refs, asked)
        case Apply() if node.function.name == "multiply":
            return any(_may_vanish(part, refs, asked) for part in node.arguments)
        case Apply() if node.function.name == "divide":
            return _may_vanish(node.arguments[0], refs, asked)
        case Apply() if node.function.name == "add":
            return all(_may_vanish(part, refs, asked) for part in node.arguments)
        case Apply() if node.function.name == "subtract":
            more, less = (_text(part, refs)[0] for part in node.arguments)
            return f"ROUND({more},6)>ROUND({less},6)" not in asked
    return f"ROUND({_text(node, refs)[0]},6)>0" not in asked


def _as_number(named: Named, cell: str) -> str:
    """A cell that a person types as a number: text, an error or a number below 0 there counts as 0; a check says so.

    One that may be none is asked with ISNUMBER wherever it is used.
    """
    number = named.typed and named.value_type is ValueType.NUMBER and not getattr(named, "optional", False)
    if not number or cell == "0":
        return cell
    if _is_signed(named):
        return f'(SUMIF({cell},">0")+SUMIF({cell},"<0"))'
    return f"MAX(0,{cell})" if cell.startswith("IFERROR(") else f'SUMIF({cell},">0")'


def _is_signed(node: Expr) -> bool:
    """Whether a person may type a number below 0."""
    return bool(getattr(node, "signed", False))


def _is_typed(node: Expr) -> bool:
    """Whether a person types any part of it."""
    return any(leaf.typed for leaf in node.leaves())


def _from_rows(node: Expr, refs: CellReferences) -> str:
    """The text of a node that works across rows."""
    match node:
        case Aggregate():
            return _aggregate_text(node, refs)
        case RowAt():
            return _row_at_text(node, refs)
        case Before():
            otherwise = sheet_text(node.otherwise, refs)
            return f"IF({refs.number_before(node.of)}={refs.number(node.of)},{refs.before(node.part)},{otherwise})"
        case First() | Running() if refs.all_cells(node.part) is None:
            return "0"
        case First():
            place = f"MATCH({refs.number(node.of)},{refs.numbers(node.part, node.of)},0)"
            return refs.cell_at(node.part, place)
        case Running():
            return refs.running(node.part, node.of)
        case LookupByKey():
            if refs.all_cells(node.part) is None:
                return "0"
            place = f"MATCH({sheet_text(node.wanted, refs)},{refs.all_cells(node.key)},{int(node.ascending)})"
            return refs.cell_at(node.part, place)
        case SumIf():
            if refs.all_cells(node.part) is None:
                return "0"
            return f"SUMIFS({refs.all_cells(node.part)},{refs.all_cells(node.key)},{sheet_text(node.wanted, refs)})"
        case GroupSum():
            keys, key = refs.all_cells(node.key), refs.one(node.key)
            if node.part is None:
                return f"MATCH({key},{keys},0)"
            return f"SUMIFS({refs.all_cells(node.part)},{keys},{key})"
        case RowNumber():
            return refs.number(node.of) if node.within == JOB else refs.number_within(node.of, node.within)
        case RowCount():
            return refs.row_count(node.of, node.within)
        case RowWord():
            return refs.word(node.of)
    raise TypeError(f"no sheet text for {type(node).__name__}")


def _aggregate_text(node: Aggregate, refs: CellReferences) -> str:
    cells = refs.all_cells(node.part)
    if cells is None:
        return "0"
    if node.to != JOB and (group := refs.group_cells(node.part, node.to)) is not None:
        cells = group
    elif node.how == "total" and node.to != JOB:
        return f"SUMIFS({cells},{refs.numbers(node.part, node.to)},{refs.number(node.to)})"
    if node.how == "place of least":
        return f"MATCH(MIN({cells}),{cells},0)"
    return f"{_AGGREGATE_FUNCTIONS[node.how]}({cells})"


def _row_at_text(node: RowAt, refs: CellReferences) -> str:
    known = _fixed_place(node, refs)
    if refs.all_cells(node.part) is None or known == 0:
        return "0" if node.value_type is ValueType.NUMBER else f'"{NOTHING}"'
    if known and (fixed := refs.fixed_cell_at(node.part, known, node.of)) is not None:
        return _as_number(node.part, fixed)
    by = sheet_text(node.by, refs)
    if node.by.value_type is not ValueType.TEXT:
        return _as_number(node.part, refs.cell_at(node.part, by, node.of))
    found = refs.cell_at(node.part, f"MATCH({by},{refs.words_of(node.part)},0)", node.of)
    if _is_typed(node.by):  # a word that is not on the list finds nothing
        nothing = "0" if node.value_type is ValueType.NUMBER else f'"{NOTHING}"'
        found = f"IFERROR({found},{nothing})"
    return _as_number(node.part, found)


def _fixed_place(node: RowAt, refs: CellReferences) -> int | None:
    """The row number when it is a constant number or name, 0 for a row that is not there; None when it depends on
    values."""
    words = node.part.level.axis.words if node.part.level.axes and not node.part.level.crossed else ()
    match node.by:
        case RowCalled():
            return refs.number_called(node.by.of, node.by.row_name)
        case Exact(value=value):
            return int(value)
        case Literal(value=str() as word) if word in words:
            return words.index(word) + 1
    return None
