"""Many values typed over in few workbooks, and what a fresh run makes of the same values in the input books.

A workbook is typed over in several places at once, since a spreadsheet program takes a second for each. The meaning
stays: an edit shares a workbook only with edits beside which it still changes what some line gives, so a sheet that
does not follow it cannot agree with the fresh run.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from pathlib import Path

from openpyxl.utils.cell import coordinate_to_tuple

from books import Rows, in_lists_of, only_job, written
from calc.declared import Account, Check, Factor, Input, Line, Override, Pack, Price, PriceDay, Taxed
from calc.formula.aggregate import RowCount
from calc.formula.levels import JOB
from calc.formula.tree import Expr
from calc.intake.records import DEFAULT, JobInput
from calc.intake.schema import (
    ACKNOWLEDGEABLE,
    FACTORS,
    OVERRIDABLE,
    OVERRIDES,
    PRICE_LIST,
    PRICES,
    SITE,
    TABLES,
    everything,
)
from calc.layout.addresses import cell
from calc.layout.bid_cautions import slots_for
from calc.layout.checks_sheet import all_checks
from calc.layout.issued import SINCE_ISSUE
from calc.layout.workbook import Cell, addresses, plan_of
from calc.model.results import JobValues, Shape
from calc.trade.levels import AREA
from live_edits import Edit, Way, complete, edited, moves_a_number, with_each
from sheet_cells import Held, read_cells, same, type_over
from whole_job import Row
from witness import Place

TOGETHER = 120
"""Edits in one workbook at most, their companions not counted."""

HOUSE_FILE = "company.xlsx "
STOPS = {each.acknowledged: each.label for each in ACKNOWLEDGEABLE.values() if each.acknowledged is not None}
LABELS = STOPS | {each.override: each.label for each in OVERRIDABLE.values() if each.override is not None}
"""What Overrides calls each line that may be forced and each stop that may be accepted."""

Table = list[list[object]]


@dataclass(frozen=True)
class Books:
    """The input books of one job as tables, and the job as they are read; ``folder`` holds what is made of them."""

    folder: Path
    week: Mapping[str, Rows]
    company: Mapping[str, Rows]
    job: JobValues

    @cached_property
    def workbook(self) -> Path:
        """The job's workbook as the program writes it."""
        return written(self.job, self.folder / "as-written.xlsx")

    def typed_over(self, edits: Iterable[Edit], folder: Path) -> Books:
        """The books with other values in them, read afresh: what was typed stands where the reader found it."""
        week = {name: [list(row) for row in rows] for name, rows in self.week.items()}
        company = {name: [list(row) for row in rows] for name, rows in self.company.items()}
        for edit in edits:
            _type_in(edit, self.job.job, week, company)
        return read_books(folder, week, company)


def read_books(folder: Path, week: Mapping[str, Rows], company: Mapping[str, Rows]) -> Books:
    """The books as they are, written into a new folder and read."""
    folder.mkdir()
    return Books(folder, week, company, only_job(folder, week, company))


def _type_in(edit: Edit, job: JobInput, week: dict[str, Table], company: dict[str, Table]) -> None:
    match edit.named:
        case Factor() as factor:
            entry = job.company.factors.get((factor, edit.index))
            words = factor.level.axis.words if factor.level.axes else ()
            row: Row = {"factor": factor.label, "for": words[edit.index] if words else None, "value": edit.typed}
            _set_or_add(entry.origin if entry else DEFAULT, edit.typed, FACTORS, row, company)
        case Price() | Pack() as price:
            _set(job.company.prices[price].origin, edit.typed, company)
        case Taxed() | Account() | PriceDay() as beside:
            _set(_beside_price(beside, job), edit.typed, company)
        case Override() as override:
            _force(override, edit, job, week)
        case Input() as given if given.level == JOB:
            origin = job.entries[given].origin
            fact = {"job": job.id, "fact": given.label, "value": edit.typed}
            _set_or_add(origin, edit.typed, SITE, fact, company if origin.startswith(HOUSE_FILE) else week)
        case Input() as given:
            _set(_origin_of(given, edit.index, job), edit.typed, company if given.section.table in company else week)


def _set_or_add(origin: str, typed: object, table: str, row: Row, book: dict[str, Table]) -> None:
    """The cell where a fact stands, or a new row for one that was left to its default."""
    if origin == DEFAULT:
        _add(table, row, book)
    else:
        _set(origin, typed, book)


def _set(origin: str, typed: object, book: dict[str, Table]) -> None:
    sheet, _, ref = origin.removeprefix(HOUSE_FILE).partition("!")
    row, column = coordinate_to_tuple(ref)
    book[sheet][row - 1][column - 1] = typed


def _add(table: str, row: Row, book: dict[str, Table]) -> None:
    book[table].append([row.get(heading.header) for heading in TABLES[table].headings])


def _origin_of(given: Input, index: int, job: JobInput) -> str:
    """The input cell of a value in a row; for one that was left blank, the cell of its column in that row."""
    row = job.rows[given.level][index]
    origin = row.entries[given].origin
    if "!" in origin:
        return origin
    headers = [heading.header for heading in TABLES[given.section.table].headings]
    number = int(re.sub(r"\D", "", row.place.cell))
    return cell(given.section.table, number - 1, headers.index(given.header), "").replace("'", "")


def _beside_price(named: Taxed | Account | PriceDay, job: JobInput) -> str:
    """The cell of the company book for whether a price is taxed, its account, its day, or how long it holds."""
    price = next(each for each in PRICE_LIST if named in (each.taxed, each.account, each.dated, each.valid))
    header = {price.taxed: "taxable", price.account: "account", price.dated: "dated", price.valid: "valid until"}[named]
    headers = [heading.header for heading in TABLES[PRICES].headings]
    row = int(job.company.price_rows[price].origin.rpartition(" ")[2])
    return cell(PRICES, row - 1, headers.index(header), "").replace("'", "")


def _force(override: Override, edit: Edit, job: JobInput, week: dict[str, Table]) -> None:
    entry = job.overrides.get((override, edit.index))
    if entry is not None:
        sheet, _, ref = entry.origin.partition("!")
        row = week[sheet][coordinate_to_tuple(ref)[0] - 1]
        row[:] = [None] * len(row)
    if edit.typed is None:
        return
    is_stop = override in STOPS
    area = job.rows[AREA][edit.index].word if override.level == AREA else None
    why: Row = {"job": job.id, "area": area, "line": LABELS[override], "reason": "tried", "who": "RK"}
    _add(OVERRIDES, why if is_stop else {**why, "value": edit.typed}, week)


def shared_out(job: JobValues, ways: Sequence[Way]) -> list[list[Way]]:
    """The edits in sets for one workbook each; in every set each edit still changes what some line gives."""
    done: list[list[Way]] = []
    waiting = list(ways)
    together = TOGETHER
    while waiting:
        sets = _without_clashes(job.job, waiting, together)
        waiting = []
        for each in sets:
            idle = _idle(job, each) if len(each) > 1 else []
            done.append([way for way in each if way not in idle])
            waiting += idle
        together = max(1, together // 2)
    return [each for each in done if each]


def _without_clashes(job: JobInput, ways: Sequence[Way], together: int) -> list[list[Way]]:
    """Sets in which no cell is typed over twice and nothing is lacking; neighbours go to different sets."""
    count = max(1, -(-len(ways) // together))
    sets: list[list[Way]] = [[] for _ in range(count)]
    for at, way in enumerate(ways):
        turns = [(at + more) % len(sets) for more in range(len(sets))]
        fits = (turn for turn in turns if _fits(job, sets[turn], way, together))
        turn = next(fits, None)
        if turn is None:
            sets.append([way])
        else:
            sets[turn].append(way)
    return sets


def _fits(job: JobInput, ways: Sequence[Way], way: Way, together: int) -> bool:
    """Whether a way has room in a set: its edit is new there, and no cell is to hold two things at once."""
    there = {(edit.named, edit.index): edit for each in ways for edit in each}
    first = way[0]
    clash = any(there.get((edit.named, edit.index), edit) != edit for edit in way)
    if len(ways) >= together or clash or (first.named, first.index) in there:
        return False
    return complete(edited(job, all_edits([*ways, way])))


def _idle(job: JobValues, ways: Sequence[Way]) -> list[Way]:
    """Those of a set without which every line would give the same. One that is idle by itself has no say in it."""
    without = [all_edits([*(each for each in ways if each is not way), way[1:]]) for way in ways]
    full, *made = with_each(job.job, [all_edits(ways), *without])
    idle = [way for way, each in zip(ways, made, strict=True) if not moves_a_number(full, each)]
    return [way for way, alone in zip(idle, with_each(job.job, idle), strict=True) if moves_a_number(job, alone)]


def all_edits(ways: Iterable[Way]) -> list[Edit]:
    """The edits of several ways, one after the other; what stands beside two of them is typed once."""
    return list(dict.fromkeys(edit for way in ways for edit in way))


def formula_cells(job: JobValues) -> tuple[tuple[Place, Cell], ...]:
    """Every formula of the workbook of a job, with its place; the Log has none."""
    return _formula_cells(job.shape, slots_for(job))


@lru_cache(maxsize=4)
def _formula_cells(shape: Shape, caution_slots: int) -> tuple[tuple[Place, Cell], ...]:
    return tuple(
        ((sheet.page.name, cell("", each.row, each.col, "")), each)
        for sheet in plan_of(shape, caution_slots)
        for each in sheet.cells
        if each.formula
    )


@dataclass(frozen=True)
class TypedOver:
    """A workbook that was typed over, with the job it was written for and the job of a fresh run on the same values."""

    file: Path
    base: JobValues
    edits: Sequence[Edit]
    fresh: JobValues

    @cached_property
    def wanted(self) -> JobValues:
        """The values of the fresh run in the lists of the workbook, which may be longer than it needs, or too short."""
        return in_lists_of(self.base, self.fresh.job)

    @property
    def full(self) -> list[Check]:
        """The checks of the lists that the edits made too short."""
        return [each for each in all_checks() if each.of_list is not None and self.wanted.of(each.failed) == 1]


def type_in_workbook(books: Books, edits: Sequence[Edit], file: Path) -> TypedOver:
    """The workbook of a job typed over into ``file``, and a fresh run on its books typed over likewise."""
    where = _addresses(books.job)
    changes = {where[edit.named.id, edit.index]: edit.shown for edit in edits}
    type_over(books.workbook, changes, file)
    return TypedOver(file, books.job, edits, books.typed_over(edits, file.with_suffix(".books")).job)


def disagreements(typed: TypedOver, copy: Path) -> list[str]:
    """Every formula cell of a recalculated copy that is not what the fresh run gives, named by its declaration."""
    cells = read_cells(copy)
    named = {place: f"{id_}[{index}]" for (id_, index), place in _addresses(typed.base).items()}
    found = []
    for place, each in formula_cells(typed.base):
        held, wanted = cells.get(place, Held(None)), each.value(typed.wanted)
        if each.role in SINCE_ISSUE and 0 <= _number_in(held.value) <= len(typed.edits):
            continue  # a fresh run has no box that was changed, the workbook at most those that were typed over
        if held.is_error or not same(held.value, wanted):
            what = named.get(place, each.formula)
            found.append(f"{'!'.join(place)} {what}: the sheet gives {held.value!r}, a fresh run {wanted!r}")
    return found + ([] if typed.full else _by_length(typed))


def _number_in(value: object) -> float:
    """A count, or the count that "3 boxes" begins with; -1 for what is none."""
    word = str(value).split(" ", 1)[0].replace(".0", "", 1)
    return float(word) if word.isdigit() else -1.0


def _by_length(typed: TypedOver) -> list[str]:
    """Every line that is not the same in the lists of the workbook as in those of a fresh run: how long they are
    must not matter while they are long enough."""
    return [
        f"{each.id}[{row}] depends on the length of a list"
        for each in everything()
        if isinstance(each, Line) and not any(axis.slots for axis in each.level.axes) and not _is_of_length(each)
        for row in range(typed.fresh.count(each.level))
        if not same(typed.wanted.of(each, row), typed.fresh.of(each, row))
    ]


def _is_of_length(line: Line) -> bool:
    """Whether a line is about the length of a list itself."""
    return any(isinstance(node, RowCount) for node in _nodes(line.formula))


def _nodes(node: Expr) -> Iterator[Expr]:
    yield node
    for part in node.parts:
        yield from _nodes(part)


def _addresses(job: JobValues) -> dict[tuple[str, int], Place]:
    return addresses(job.shape, slots_for(job))
