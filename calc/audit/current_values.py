"""The current value of a cell of Measured: what was typed for the input, or what the cell was edited to."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime
from math import isclose, isnan

from calc.audit.written_workbook import WrittenInput, WrittenWorkbook
from calc.cells import Cell
from calc.cells import Kind as CellKind
from calc.declared import Declared, Input, Kind, Override
from calc.errors import InputRefused
from calc.formula.functions import NONE
from calc.formula.levels import JOB
from calc.intake.records import ACKNOWLEDGED, NOT_GIVEN
from calc.intake.schema import COMPANY_TABLES, WEEK_TABLES
from calc.intake.spelling import normalize
from calc.intake.values import as_text, day_of, read_input, read_number
from calc.layout.as_typed import on_one_line
from calc.layout.measured_sheet import NAME

_TOLERANCE = 1e-9
"""The relative and absolute difference from which a cell counts as edited: programs differ in the last digits."""

Value = float | str
"""The value of an input; NaN for a number that was not given."""


@dataclass(frozen=True)
class CurrentValue:
    """What to type in the jobs book for one input; blank for none.

    ``remark`` is the text in the column of reasons and notes, ``note`` tells the user about an edit.
    """

    typed: str | float
    origin: str = ""
    is_edited: bool = False
    note: str = ""
    remark: str = ""
    of_company: bool = False

    @property
    def in_jobs_book(self) -> bool:
        """Whether it is typed in the jobs book."""
        return self.typed != "" and not self.of_company


def current_value(job: WrittenWorkbook, each: WrittenInput) -> CurrentValue:
    """What was typed for an input, or the edit that replaced it. Raises Unreadable for a value that cannot be typed."""
    named, as_typed = each.named, each.as_typed
    assert isinstance(named, Input | Override)
    current = _value_now(job, each)
    origin = as_typed.origin if as_typed is not None else ""
    remark = each.remark if named.level == JOB else ""
    of_company = isinstance(named, Input) and (named.section.table in COMPANY_TABLES or _is_of_company(origin))
    if _is_same(_value_as_written(job, each), current):
        return CurrentValue(_unedited(each, current), origin, remark=remark, of_company=of_company)
    edit = _edit(job, each, current)
    before = f"was {as_typed.typed}" if as_typed is not None and as_typed.typed else "was blank"
    after = f"{edit} is used" if edit != "" else "it is left blank"
    if isinstance(named, Input) and named.section.table in COMPANY_TABLES:
        note = f"{job.place_of(each)}: {named.label} was edited. It belongs in the company book and is not copied."
        return CurrentValue("", note=note)
    note = f"{job.place_of(each)}: {named.label} was edited after the workbook was written ({before}); {after}."
    return CurrentValue(edit, origin, True, note, remark)


def _unedited(each: WrittenInput, current: Value) -> str | float:
    """What was typed; a text, which may have several lines, is taken from its own cell."""
    if each.as_typed is None:
        return ""
    if isinstance(each.named, Input) and each.named.kind is Kind.TEXT:
        return str(current)
    return _plain_number(each.as_typed.typed) if _is_number(each.named) else each.as_typed.typed.strip()


def _is_number(named: Declared) -> bool:
    return not isinstance(named, Input) or named.kind in (Kind.NUMBER, Kind.SLOPE)


def _is_of_company(origin: str) -> bool:
    """Whether a fact was typed in the company book: then its origin begins with the name of that book."""
    sheet = origin.rpartition("!")[0]
    return bool(sheet) and normalize(sheet) not in {normalize(name) for name in WEEK_TABLES}


def _value_as_written(job: WrittenWorkbook, each: WrittenInput) -> Value:
    """The value of the cell when the workbook was written: the value of what was typed, or the default."""
    named, as_typed = each.named, each.as_typed
    if as_typed is None:
        return named.default if isinstance(named, Input) and named.default is not None else NOT_GIVEN
    if as_typed.typed == ACKNOWLEDGED and isinstance(named, Override):
        return 1.0
    if isinstance(named, Input) and named.kind is Kind.TEXT:
        return as_typed.typed
    if isinstance(named, Input) and named.kind is Kind.ROW:
        names = [normalize(name) for name in _row_names(job, named)]
        name = normalize(as_typed.typed)
        return names.index(name) + 1.0 if name in names else NOT_GIVEN
    cell = _number_cell(Cell(NAME, 1, 1, CellKind.TEXT, as_typed.typed))
    try:
        if isinstance(named, Input):
            return read_input(named, cell, named.unit_text, "").entry.value
        return read_number(cell, named.unit_text, named.unit_text, False, False, "").entry.value
    except InputRefused:  # the text was edited: the value in the other cell counts
        return NOT_GIVEN


def _number_cell(typed: Cell) -> Cell:
    """The cell of a number in scientific notation as a number cell; any other cell unchanged."""
    number = _plain_number(str(typed.value))
    return typed if isinstance(number, str) else replace(typed, kind=CellKind.NUMBER, value=number)


def _value_now(job: WrittenWorkbook, each: WrittenInput) -> Value:
    """The value that the cell has now."""
    cell, named = each.cell, each.named
    is_text = isinstance(named, Input) and named.kind is Kind.TEXT
    is_words = is_text or (isinstance(named, Input) and named.kind is Kind.CHOICE)
    if cell is None or cell.value == "":
        return NONE if is_text else NOT_GIVEN
    if cell.kind is CellKind.TEXT:
        return NOT_GIVEN if normalize(str(cell.value)) == NONE and not is_words else str(cell.value)
    if cell.kind is CellKind.NUMBER and isinstance(cell.value, int | float):
        return _digits(float(cell.value)) if is_words else float(cell.value)
    if cell.kind is CellKind.DATE and isinstance(cell.value, datetime) and isinstance(named, Input):
        if is_text:
            return cell.value.date().isoformat()
        if named.kind is Kind.DATE:
            return read_input(named, cell, "", "").entry.value
    if cell.kind is CellKind.UNCOMPUTED:
        raise job.refused(
            f"{NAME}!{each.ref} is a formula whose value was never stored. Open the workbook in a spreadsheet "
            "program, save it and run again"
        )
    raise job.refused(f"{NAME}!{each.ref} ({named.label}) is {as_text(cell)}. Type a valid value and run again")


def _row_names(job: WrittenWorkbook, given: Input) -> list[str]:
    """The names of the rows of the company book that an input refers to by number."""
    return job.names(given.rows) if given.rows is not None else []


def _is_same(before: Value, now: Value) -> bool:
    if isinstance(before, str) and isinstance(now, str):
        return normalize(on_one_line(before)) == normalize(on_one_line(now))
    if isinstance(before, str) or isinstance(now, str):
        return False
    return (isnan(before) and isnan(now)) or isclose(before, now, rel_tol=_TOLERANCE, abs_tol=_TOLERANCE)


def _edit(job: WrittenWorkbook, each: WrittenInput, value: Value) -> str | float:
    """What to type for the value that the cell has now."""
    named = each.named
    kind = named.kind if isinstance(named, Input) else Kind.NUMBER
    if isinstance(value, str) and kind is Kind.DATE:
        raise job.refused(f"{NAME}!{each.ref} ({named.label}): {value} is not a date. Type one as 2026-04-13")
    if isinstance(value, str):
        return "" if kind is Kind.TEXT and normalize(value) == NONE else value
    if isnan(value):
        return ""
    if kind is Kind.DATE:
        return day_of(value).isoformat()
    if isinstance(named, Input) and named.kind is Kind.ROW:
        names = _row_names(job, named)
        if value not in range(1, len(names) + 1):
            raise job.refused(f"{NAME}!{each.ref} ({named.label}) is {_digits(value)}, and Prices has no such row")
        return names[int(value) - 1]
    return _plain_number(_digits(value))


def _digits(number: float) -> str:
    return str(int(number)) if number.is_integer() else repr(number)


def _plain_number(typed: str) -> str | float:
    """A number in scientific notation as a float, since an input book refuses that notation in text."""
    if "e" in typed.casefold():
        try:
            return float(typed)
        except ValueError:
            return typed
    return typed
