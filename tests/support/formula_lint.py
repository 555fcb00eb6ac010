"""The rules that a formula has to keep, and what formulas do together: chains, circles and blocks."""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Iterator
from graphlib import CycleError, TopologicalSorter

from openpyxl.cell.cell import ERROR_CODES

from formula_text import Area
from written_book import Book, Fault, FormulaCell, Rule

# fmt: off
FUNCTIONS = frozenset({
    "ABS", "EXP", "LN", "PI", "POWER", "PRODUCT", "ROUND", "ROUNDDOWN", "ROUNDUP", "SQRT",
    "CHOOSE", "DAY", "MONTH", "WEEKDAY",
    "SUM", "SUMIF", "SUMIFS", "SUMPRODUCT", "COUNT", "COUNTA", "COUNTIF", "COUNTIFS",
    "AVERAGE", "MAX", "MIN", "NORMSDIST", "NORMSINV", "STDEV",
    "AND", "IF", "IFERROR", "ISBLANK", "ISNUMBER", "ISTEXT", "NOT", "OR",
    "CONCATENATE", "HYPERLINK", "INDEX", "MATCH",
})
# fmt: on
"""Functions that gave the same answer in every spreadsheet program they were tried in."""

VOLATILE = frozenset({"CELL", "INDIRECT", "INFO", "NOW", "OFFSET", "RAND", "RANDBETWEEN", "TODAY"})

LITERALS = frozenset({0, 1, 2, 3, 6, 12, 27, 60, 100, 144, 1000, 2000})
"""Digits for ROUND, steps of one, and exact unit divisors: any other number is a factor, with a cell and a source."""

IFS = 2

DEAD = re.compile(
    r"""[*/]1(?![\d./:]) | (?<![\w.$)"])1\* | [+-]0(?![\d.]) | (?<![\w.$)"])0[+*/<>=] | \*0(?![\d.]) | ABS\(0\)
    | ROUND\(\d+,6\)""",
    re.VERBOSE,
)
"""Times one, plus nothing, a comparison that is settled, rounding of what is whole; not ``1/2``, which is a half."""
ONE_WORD = re.compile(r'="(?:[^"]|"")*"')

BLOCK = 4
"""From so many rows on, most of them alike, a formula that is unlike its neighbours is taken for a slip."""


def formula_faults(book: Book) -> Iterator[Fault]:
    """Every fault of every formula of ``book``, and of the formulas together."""
    for cell in book.formulas:
        for check in (_value, _form, _size, _calls, _literals, _dead_pieces, _references):
            yield from check(book, cell)
    yield from _chains(book)
    yield from _blocks(book)


def _value(book: Book, cell: FormulaCell) -> Iterator[Fault]:
    if cell.cached is None and '""' not in cell.formula.text:
        yield Fault(Rule.CACHED_VALUE, cell.place, "The formula has no value beside it.")
    elif cell.cached in ERROR_CODES:
        yield Fault(Rule.NO_ERROR, cell.place, f"The value is the error {cell.cached}.")
    if cell.formula.has_error:
        yield Fault(Rule.NO_ERROR, cell.place, f"An error stands in {cell.formula.text}.")


def _form(book: Book, cell: FormulaCell) -> Iterator[Fault]:
    if not isinstance(cell.cell.value, str):
        yield Fault(Rule.ARRAY, cell.place, "The formula fills an array or a data table.")


def _size(book: Book, cell: FormulaCell) -> Iterator[Fault]:
    formula, standard = cell.formula, book.standard
    if book.is_proof(cell):
        return  # it puts formulas together that stand in cells of their own
    for count, limit, things in (
        (len(formula.text), standard.characters, "characters"),
        (len(formula.references), standard.references, "references"),
        (formula.operations, standard.operations, "functions and operators"),
    ):
        if count > limit:
            yield Fault(Rule.SIZE, cell.place, f"The formula has {count} {things}; {limit} are allowed.")
    ifs = sum(call.name == "IF" for call in formula.calls)
    if ifs > IFS:
        yield Fault(Rule.TWO_IFS, cell.place, f"The formula has {ifs} IFs.")


def _calls(book: Book, cell: FormulaCell) -> Iterator[Fault]:
    for call in cell.formula.calls:
        if call.name in VOLATILE:
            yield Fault(Rule.VOLATILE, cell.place, f"{call.name} gives another answer each time it is asked.")
        elif call.name not in FUNCTIONS:
            yield Fault(Rule.FUNCTION, cell.place, f"{call.name} is not on the list of portable functions.")
        if call.name in ("ROUNDUP", "ROUNDDOWN") and not call.first_is("ROUND", whole=True):
            yield Fault(Rule.ROUNDED_BEFORE_UP, cell.place, f"{call.name} takes a number that is not rounded first.")
        if call.name == "IFERROR" and not call.first_is("INDEX", "MATCH", "SUMPRODUCT"):
            sentence = "IFERROR stands around something that is no look-up and no count of changed boxes."
            yield Fault(Rule.GUARDED_LOOK_UP, cell.place, sentence)
        if call.name == "HYPERLINK" and set(call.first_text.partition("#")[0]) & set("/\\:"):
            yield Fault(
                Rule.NOTHING_FOREIGN, cell.place, f"A link leads to {call.first_text}, not to a file beside it."
            )


def _literals(book: Book, cell: FormulaCell) -> Iterator[Fault]:
    if cell.sheet in book.standard.arithmetic:
        return
    for number in cell.formula.literals:
        if number not in LITERALS:
            yield Fault(Rule.LITERAL, cell.place, f"{number:g} is typed into {cell.formula.text}.")


def _dead_pieces(book: Book, cell: FormulaCell) -> Iterator[Fault]:
    if cell.sheet in book.standard.arithmetic:
        return
    text = cell.formula.text
    if ONE_WORD.fullmatch(text):
        yield Fault(Rule.DEAD_PIECE, cell.place, f"The formula {text} only says a word.")
    elif found := DEAD.search(re.sub(r'"[^"]*"', '"', text)):
        yield Fault(Rule.DEAD_PIECE, cell.place, f"{found[0]} changes nothing in {text}.")


def _references(book: Book, cell: FormulaCell) -> Iterator[Fault]:
    for reference in cell.formula.references:
        area = book.area(reference, cell.sheet)
        if area is None:
            yield Fault(Rule.REFERENCE, cell.place, f"{reference} is not a bounded range of cells in this file.")
        elif area.backwards:
            yield Fault(Rule.REFERENCE, cell.place, f"{reference} ends before it begins.")
        elif area.sheet in book.standard.boxes:
            continue
        elif not any(each in book.filled for each in area.cells()):
            yield Fault(Rule.EMPTY_REFERENCE, cell.place, f"Nothing stands in {area}.")


def _chains(book: Book) -> Iterator[Fault]:
    """Circles; and the one longest chain from an input to a result, when it is too long."""
    graph = _graph(book)
    try:
        order = list(TopologicalSorter(graph).static_order())
    except CycleError as circle:
        cells: list[FormulaCell] = circle.args[1]
        through = " - ".join(cell.place for cell in cells)
        yield Fault(Rule.CIRCLE, cells[0].place, f"The formula depends on itself: {through}.")
        return
    depth: dict[FormulaCell, int] = {}
    for cell in order:
        depth[cell] = 1 + max((depth[precedent] for precedent in graph[cell]), default=0)
    deepest = max(depth, key=depth.__getitem__, default=None)
    if deepest is not None and depth[deepest] > book.standard.chain:
        sentence = f"{depth[deepest]} formulas hang one on the other; {book.standard.chain} are allowed."
        yield Fault(Rule.CHAIN, deepest.place, sentence)


def _graph(book: Book) -> dict[FormulaCell, set[FormulaCell]]:
    """The formulas that each formula refers to. Many refer to the same range, so what is in one is kept."""
    at = {cell.key: cell for cell in book.formulas}
    inside: dict[Area, list[FormulaCell]] = {}
    graph: dict[FormulaCell, set[FormulaCell]] = {}
    for cell in book.formulas:
        precedents = graph.setdefault(cell, set())
        for area in book.areas(cell):
            if area not in inside:
                inside[area] = [at[key] for key in area.cells() if key in at]
            precedents.update(inside[area])
    return graph


def _blocks(book: Book) -> Iterator[Fault]:
    """Formulas that differ from the rest of their column though the cells above and below them do not."""
    columns: dict[tuple[str, int], list[FormulaCell]] = defaultdict(list)
    for cell in book.formulas:
        columns[cell.sheet, cell.cell.column].append(cell)
    for column in columns.values():
        for block in _runs(column):
            yield from _odd_ones(block)


def _runs(column: list[FormulaCell]) -> Iterator[list[FormulaCell]]:
    """The cells of a column in stretches without a gap."""
    run: list[FormulaCell] = []
    for cell in column:
        if run and cell.cell.row != run[-1].cell.row + 1:
            yield run
            run = []
        run.append(cell)
    if run:
        yield run


def _odd_ones(block: list[FormulaCell]) -> Iterator[Fault]:
    """The first and the last row may differ: a running sum begins, a total ends."""
    if len(block) < BLOCK:
        return
    shapes = [cell.formula.shape(cell.cell.row, cell.cell.column) for cell in block]
    usual, count = Counter(shapes).most_common(1)[0]
    if count * 3 < len(block) * 2:
        return
    first, last = shapes.index(usual), len(shapes) - shapes[::-1].index(usual)
    for cell, shape in zip(block[first:last], shapes[first:last], strict=True):
        if shape != usual:
            yield Fault(Rule.LIKE_ITS_COLUMN, cell.place, f"{cell.formula.text} is unlike the rest of its column.")
