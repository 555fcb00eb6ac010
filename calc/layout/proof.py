"""The proof of a workbook, at the end of its workings: boxes hold what they must, cells of the story their formulas.

A row is a group of boxes or a part of the story. Each of its cells counts boxes that hold something else, or adds up
how far cells are from their own formulas, worked again. All are 0; what somebody pastes over a cell shows here.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass

from calc.cells import column_letters
from calc.declared import Declared, Factor, Input, Override
from calc.formula.functions import NONE
from calc.formula.sheet_text import sheet_text
from calc.formula.tree import Named
from calc.formula.value_types import ValueType
from calc.layout.addresses import CellMap, RefFrom, Shown, cell, span
from calc.layout.grid import ITEM, VALUE
from calc.layout.page import Computed, FixedText, Linked, Page
from calc.layout.sheet_layout import SheetLayout
from calc.layout.styles import dashed
from calc.layout.text_width import text_width
from calc.layout.validations import TOP, BoxRule, boxes_of
from calc.model.results import JobValues
from calc.trade.money.costs import CostTable
from calc.trade.money.price import BidPrice, PaymentSchedule, PriceParts
from calc.trade.work.labor import Task

_COUNTS = (12, 6, 3, 2, 1)
"""The numbers that a formula may hold: any other count is a sum of these."""

_MOST_IFS, _LONGEST = 2, 900
"""A formula that puts others together has no more conditions and characters than these."""

_FACTORS_TOGETHER = 12

Text = Callable[[], str]
"""The text of a formula, which is asked for when every cell has its address."""


@dataclass(frozen=True)
class Count:
    """A number of the proof: its formula, and the boxes that it counts, in words, where it counts boxes."""

    text: Text
    boxes: str = ""


Spans = Sequence[tuple[tuple[int, int], tuple[int, int]]]
"""The first and the last cell of each of some ranges."""


@dataclass(frozen=True)
class ProofRows:
    """Where a part of the proof stands: its rows on its sheet, from ``first`` to ``last``."""

    sheet: str
    first: int
    last: int

    def totals(self, seen_from: str) -> str:
        """The range of what each row adds up to."""
        return span(self.sheet, (self.first, VALUE), (self.last, VALUE), seen_from)

    def worst(self, seen_from: str) -> str:
        """What the row that is farthest off goes by, as a formula; it is for a total above 0."""
        names = span(self.sheet, (self.first - 1, ITEM), (self.last, ITEM), seen_from)
        totals = self.totals(seen_from)
        return f"INDEX({names},MATCH(MAX({totals}),{totals},0)+1)"


@dataclass(frozen=True)
class Proof:
    """Both parts of the proof."""

    boxes: ProofRows
    story: ProofRows


UNPLACED = Proof(ProofRows("", 1, 1), ProofRows("", 1, 1))
"""For sheets that are laid out alone, whose formulas nobody writes."""


def lay_proof(
    sheet: SheetLayout, typed: Sequence[Page], story: Sequence[tuple[str, Page]], front: Callable[[], Page]
) -> Proof:
    """Lays the proof on the last sheet of the workings: of the boxes of ``typed``, and of the cells of ``story``.

    ``front`` is the sheet that shows them first, which is laid later.
    """
    boxes = _lay(
        sheet,
        "Boxes that hold what they must",
        "each number counts boxes with text, a blank, a number past its limits or a word that is not on their list",
        list(_groups_of_boxes(typed, sheet)),
    )
    again = _lay(
        sheet,
        "The story, worked again",
        "each number adds up how far cells are from their own formulas, worked again here",
        [
            ("Bid: what it brings", [Count(lambda: _brought(_linked(front()), front().name, sheet.name))]),
            *_groups_of_brought(story, sheet.places, sheet.name),
            *_groups_of_story(story, sheet.places, sheet.name),
            *_groups_of_shown(sheet.places.shown, sheet.places, sheet.name),
            ("Cost workings: costs, tasks, price", _counts_of_money(sheet)),
        ],
    )
    return Proof(boxes, again)


def _lay(sheet: SheetLayout, title: str, note: str, groups: Sequence[tuple[str, Sequence[Count]]]) -> ProofRows:
    """A group a row, or more: its name, its total, and the numbers that it adds up."""
    page, grid = sheet.page, sheet.grid
    sheet.section(title, note)
    page.put(FixedText(page.row, ITEM, "itemhead", "Where"))
    page.put(FixedText(page.row, VALUE, "stephead", "All"))
    for col in range(VALUE + 1, grid.last + 1):
        page.put(FixedText(page.row, col, "stephead", ""))
    sheet.end_row()
    first, each = page.row, grid.last - VALUE
    for name, counts in groups:
        for start in range(0, len(counts), each):
            _lay_row(sheet, name, counts[start : start + each])
    return ProofRows(sheet.name, first, page.row - 1)


def _lay_row(sheet: SheetLayout, name: str, counts: Sequence[Count]) -> None:
    page = sheet.page
    sheet.number_row()
    added = span(page.name, (page.row, VALUE + 1), (page.row, VALUE + len(counts)), page.name)
    if counts[0].boxes:
        total = cell(page.name, page.row, VALUE, page.name)
        boxes = ",".join(f'"{each.boxes}"' for each in counts)
        called = f'IF({total}=0,"{name}",CHOOSE(MATCH(MAX({added}),{added},0),{boxes}))'
        page.put(Linked(page.row, ITEM, "item", _fixed(called), lambda _job: name))
    else:
        page.put(FixedText(page.row, ITEM, "item", name))
    page.put(Linked(page.row, VALUE, "stepsum", _fixed(f"SUM({added})"), _nothing, _FORMAT))
    for col, each in enumerate(counts, start=VALUE + 1):
        page.put(Linked(page.row, col, "step", each.text, _nothing, _FORMAT))
    sheet.end_row()


def _groups_of_boxes(pages: Iterable[Page], sheet: SheetLayout) -> Iterator[tuple[str, list[Count]]]:
    """The boxes of each section, each kind of box in a formula of its own."""
    groups: dict[str, list[Count]] = {}
    for page in pages:
        factors: list[tuple[int, int]] = []
        for named, rule, cells in boxes_of(page):
            if isinstance(named, Factor) and not rule.over:
                factors += cells
            elif rule.is_number or rule.words:
                counted = _counted(rule, page.name, cells, sheet, named.label)
                groups.setdefault(_group_of(page, named), []).append(counted)
        for start in range(0, len(factors), _FACTORS_TOGETHER):
            counted = _counted(_ANY_FACTOR, page.name, factors[start : start + _FACTORS_TOGETHER], sheet)
            groups.setdefault(f"{page.name}, usual values", []).append(counted)
    yield from groups.items()


def _counted(rule: BoxRule, sheet: str, cells: Sequence[tuple[int, int]], proof: SheetLayout, label: str = "") -> Count:
    """How many of some boxes with one rule do not hold what they must; their label is said where it has room."""
    first, last = (f"{column_letters(col + 1)}{row + 1}" for row, col in (cells[0], cells[-1]))
    boxes = f"{sheet} {first}" if first == last else f"{sheet} {first}:{last}"
    called = f"{boxes} {label}".rstrip()
    room = proof.grid.room(ITEM, ITEM)
    fits = '"' not in called and text_width(called) <= room
    return Count(_fixed(_broken(rule, sheet, cells, proof.page.name)), called if fits else boxes)


_ANY_FACTOR = BoxRule("", low=0.0)


def _group_of(page: Page, named: Declared) -> str:
    match named:
        case Input():
            return named.section.title
        case Override():
            return "Overrides"
        case Factor():
            return f"{page.name}, divided by"
    return page.name


def _broken(rule: BoxRule, sheet: str, cells: Sequence[tuple[int, int]], seen_from: str) -> str:
    """How many of some cells with one rule do not hold what they must, as a formula."""
    ranges = [span(sheet, first, last, seen_from) if first != last else cell(sheet, *first, seen_from, "cr")
              for first, last in _spans(cells)]  # fmt: skip
    if rule.words:
        return _count(len(cells)) + "".join(f'-COUNTIF({each},"{word}")' for each in ranges for word in rule.words)
    text = f"{_count(len(cells))}-COUNT({','.join(ranges)})"
    if rule.optional:
        text += "".join(f'-COUNTIF({each},"{NONE}")' for each in ranges)
    if rule.low is not None and rule.low > -TOP:
        below = f"{'<=' if rule.over else '<'}{rule.low:g}"
        text += "".join(f'+COUNTIF({each},"{below}")' for each in ranges)
    if rule.high < TOP:
        text += "".join(f'+COUNTIF({each},">{rule.high:g}")' for each in ranges)
    if rule.whole:  # each cell for itself: the halves of two would add up to a whole number
        text += "".join(_fraction(cell(sheet, *each, seen_from, "cr")) for each in cells)
    return text


def _fraction(box: str) -> str:
    """1 where a box holds a number above 0 that is no whole one."""
    number = f'SUMIF({box},">0")'
    return f"+ROUNDUP(ROUND(ABS({number}-ROUND({number},0)),6),0)"


def _spans(cells: Sequence[tuple[int, int]]) -> Spans:
    """Cells as ranges: those that follow one another in a column or in a row together."""
    spans: list[tuple[tuple[int, int], tuple[int, int]]] = []
    for row, col in cells:
        if spans:
            first, last = spans[-1]
            below, beside = (last[0] + 1, first[1]) == (row, col), (first[0], last[1] + 1) == (row, col)
            if (below and first[1] == last[1]) or (beside and first[0] == last[0]):
                spans[-1] = (first, (row, col))
                continue
        spans.append(((row, col), (row, col)))
    return spans


def _count(number: int) -> str:
    """A count as a sum of numbers that a formula may hold."""
    parts: list[str] = []
    for each in _COUNTS:
        parts += [str(each)] * (number // each)
        number %= each
    return "+".join(parts)


def _groups_of_story(
    story: Iterable[tuple[str, Page]], places: CellMap, seen_from: str
) -> Iterator[tuple[str, list[Count]]]:
    """The cells of each part of the story, as few formulas as can be read."""
    for name, page in story:
        titles = [put for put in page.contents if isinstance(put, FixedText) and put.role == "storysection"]
        groups: dict[str, list[str]] = {title.text: [] for title in titles}
        for put in page.contents:
            if isinstance(put, Computed) and put.line.held(put.index, places.counts) is None:
                title = next((title.text for title in reversed(titles) if title.row < put.row), "")
                groups.setdefault(title, []).append(_off(put, places, seen_from))
        for title, terms in groups.items():
            if terms:
                yield f"{name}: {title}" if title else name, [Count(_fixed(text)) for text in _joined(terms)]


def _groups_of_shown(shown: Iterable[Shown], places: CellMap, seen_from: str) -> Iterator[tuple[str, list[Count]]]:
    """How far the rows that are found by their running number are from the rows that they are found in."""
    groups: dict[str, list[str]] = {}
    for each in shown:
        groups.setdefault(f"{each.sheet}, found: {each.section}", []).extend(_off_shown(each, places, seen_from))
    for title, terms in groups.items():
        yield title, [Count(_fixed(text)) for text in _joined(terms)]


def _off_shown(each: Shown, places: CellMap, seen_from: str) -> Iterator[str]:
    """How far a column adds up to something else than its source, and its total to something else than it.

    Words add up to 0: a number that stands among them shows. What a list has no room for is a matter of its own check.
    """
    cells = span(each.sheet, each.first, each.last, seen_from)
    if each.named is None:
        yield f"ABS(SUM({cells}))"
        return
    listed, source = (_all_of(named, places, seen_from) for named in (each.place, each.named))
    yield f'ABS(SUM({cells})-SUMIF({listed},">0",{source})+SUMIF({listed},">"&COUNTA({cells}),{source}))'
    if each.total is not None:
        yield f"ABS({cell(each.sheet, *each.total, seen_from, 'cr')}-SUM({cells}))"


def _all_of(named: Named, places: CellMap, seen_from: str) -> str:
    found = places.locations[named]
    return places.range_of(found.block, found.position, seen_from)


_MONEY = {CostTable.amount, Task.hours, Task.cost}
"""The columns of the tables of costs and of tasks that the price adds up."""

_PRICE = {BidPrice, PriceParts, PaymentSchedule}


def _counts_of_money(sheet: SheetLayout) -> list[Count]:
    """The cells of the workings from which the price follows, worked again."""
    terms = [
        _off(put, sheet.places, sheet.name)
        for put in sheet.page.contents
        if isinstance(put, Computed) and put.line.held(put.index, sheet.places.counts) is None
        if put.line in _MONEY or put.line.section in _PRICE
    ]
    return [Count(_fixed(text)) for text in _joined(terms)]


_ONE_CELL = re.compile(r"(?:'[^']+'|\w+)!\$?[A-Z]+\$?\d+")


def _groups_of_brought(
    story: Iterable[tuple[str, Page]], places: CellMap, seen_from: str
) -> Iterator[tuple[str, list[Count]]]:
    """The inputs that the tables of the story bring from where they are typed."""
    for name, page in story:
        found = {
            row for each in places.shown if each.sheet == page.name for row in range(each.first[0], each.last[0] + 2)
        }
        linked = [put for put in _linked(page) if put.row not in found]
        parts = [linked[start : start + _BROUGHT_TOGETHER] for start in range(0, len(linked), _BROUGHT_TOGETHER)]
        if parts:
            yield f"{name}: what it brings", [Count(_brought_of(part, page.name, seen_from)) for part in parts]


_BROUGHT_TOGETHER = 20


def _linked(page: Page) -> list[Linked]:
    return [put for put in page.contents if isinstance(put, Linked)]


def _brought_of(linked: Sequence[Linked], sheet: str, seen_from: str) -> Text:
    return lambda: _brought(linked, sheet, seen_from)


def _brought(linked: Sequence[Linked], sheet: str, seen_from: str) -> str:
    """How many cells of a sheet are not the cells that they bring."""
    found = ((put, put.text()) for put in linked)
    terms = [
        f"1-({cell(sheet, put.row, put.col, seen_from, 'cr')}={text})"
        for put, text in found
        if _ONE_CELL.fullmatch(text)
    ]
    return "+".join(terms) or "0"


def _off(put: Computed, places: CellMap, seen_from: str) -> str:
    """How far a cell is from its own formula; 1 where words differ."""
    line, index = put.line, put.index
    shown = places.one(line, index, seen_from, "cr")
    formula = sheet_text(line.formula, RefFrom(places, seen_from, places.locations[line].block, index))
    if line.value_type is ValueType.NUMBER:
        return f"ABS({shown}-({formula}))" if formula != "0" else f"ABS({shown})"
    return f"1-({shown}=({formula}))"


def _joined(terms: Sequence[str]) -> Iterator[str]:
    """The sums of some terms, each with no more conditions and characters than a formula may have."""
    joined = ""
    for term in terms:
        longer = f"{joined}+{term}" if joined else term
        if joined and (len(longer) > _LONGEST or len(_IF.findall(longer)) > _MOST_IFS):
            yield joined
            joined = term
        else:
            joined = longer
    if joined:
        yield joined


_IF = re.compile(r"\bIF\(")
_FORMAT = dashed("0.00")


def _fixed(text: str) -> Callable[[], str]:
    return lambda: text


def _nothing(_job: JobValues) -> float:
    return 0.0
