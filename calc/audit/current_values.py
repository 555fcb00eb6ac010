"""What one cell of Measured holds now: what was typed for it, or what somebody made of it since."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime
from math import isclose, isnan

from calc.audit.written_workbook import Written, WrittenInput
from calc.cells import Cell
from calc.cells import Kind as CellKind
from calc.declared import Declared, Input, Kind, Override
from calc.errors import InputRefused
from calc.formula.functions import NONE
from calc.formula.levels import JOB
from calc.intake.records import NOT_GIVEN
from calc.intake.schema import COMPANY_TABLES, WEEK_TABLES
from calc.intake.spelling import normalize
from calc.intake.values import day_of, read_given, read_number
from calc.layout.as_typed import on_one_line
from calc.layout.measured_sheet import NAME

ACKNOWLEDGED = "accepted"
"""What stands as typed for a stop that was accepted."""

_CLOSE = 1e-9
"""As a part of the number or of 1: further apart, a cell was edited. Programs differ in the last digits."""

Value = float | str
"""A value as it is computed with; NaN for a number that was not given."""


@dataclass(frozen=True)
class CurrentValue:
    """What goes into the input book for one input; blank when nothing does."""

    typed: str | float
    origin: str = ""
    edited: bool = False
    note: str = ""
    beside: str = ""
    of_company: bool = False

    @property
    def goes_in(self) -> bool:
        """Whether the week's book has a cell for it."""
        return self.typed != "" and not self.of_company


def current_value(job: Written, each: WrittenInput) -> CurrentValue:
    """What was typed for an input, or the edit that replaced it. Raises Unreadable for what nobody can type."""
    named, told = each.named, each.told
    assert isinstance(named, Input | Override)
    issued = _issued(job, each)
    holds = _holds(job, each)
    origin = told.origin if told is not None else ""
    beside = each.beside if named.level == JOB else ""
    of_company = isinstance(named, Input) and (named.section.table in COMPANY_TABLES or _is_of_company(origin))
    if _alike(issued, holds):
        return CurrentValue(_as_typed(each, holds), origin, beside=beside, of_company=of_company)
    typed = _edit(job, each, holds)
    was = f"typed: {told.typed}" if told is not None and told.typed else "nothing was typed"
    taken = f"{typed} is taken" if typed != "" else "it is left blank"
    if isinstance(named, Input) and named.section.table in COMPANY_TABLES:
        return CurrentValue(
            "", note=f"{job.at(each)}: {named.label} was edited; it belongs in the house book, and stays there."
        )
    note = f"{job.at(each)}: {named.label} was edited since the workbook was written ({was}); {taken}."
    return CurrentValue(typed, origin, True, note, beside)


def _as_typed(each: WrittenInput, holds: Value) -> str | float:
    """What was typed; words, which may have more than one line, stand in their own cell."""
    if each.told is None:
        return ""
    if isinstance(each.named, Input) and each.named.kind is Kind.TEXT:
        return str(holds)
    return _plain(each.told.typed) if _is_number(each.named) else each.told.typed.strip()


def _is_number(named: Declared) -> bool:
    return not isinstance(named, Input) or named.kind in (Kind.NUMBER, Kind.SLOPE)


def _is_of_company(origin: str) -> bool:
    """Whether a fact stood in the house book, whose name is then part of where it stood."""
    sheet = origin.rpartition("!")[0]
    return bool(sheet) and normalize(sheet) not in {normalize(name) for name in WEEK_TABLES}


def _issued(job: Written, each: WrittenInput) -> Value:
    """What the cell held when the workbook was written: what was typed, as it reads, or the default."""
    named, told = each.named, each.told
    if told is None:
        return named.default if isinstance(named, Input) and named.default is not None else NOT_GIVEN
    if told.typed == ACKNOWLEDGED and isinstance(named, Override):
        return 1.0
    if isinstance(named, Input) and named.kind is Kind.TEXT:
        return told.typed
    if isinstance(named, Input) and named.kind is Kind.ROW:
        names = [normalize(name) for name in _names(job, named)]
        return names.index(normalize(told.typed)) + 1.0 if normalize(told.typed) in names else NOT_GIVEN
    typed = Cell(NAME, 1, 1, CellKind.TEXT, told.typed)
    try:
        if isinstance(named, Input):
            return read_given(named, _written_out(typed), named.unit_text, "")[0].value
        return read_number(_written_out(typed), named.unit_text, named.unit_text, False, False, "")[0].value
    except InputRefused:  # somebody changed the words: the value beside them is what counts
        return NOT_GIVEN


def _written_out(typed: Cell) -> Cell:
    """A number that was typed with a power of ten is read as the number that it is."""
    number = _plain(str(typed.value))
    return typed if isinstance(number, str) else replace(typed, kind=CellKind.NUMBER, value=number)


def _holds(job: Written, each: WrittenInput) -> Value:
    """What the cell holds now."""
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
            return read_given(named, cell, "", "")[0].value
    if cell.kind is CellKind.UNCOMPUTED:
        raise job.refused(
            f"{NAME}!{each.ref} is a formula whose value was never stored. Open the workbook in a spreadsheet "
            "program, save it and run again"
        )
    raise job.refused(f"{NAME}!{each.ref} ({named.label}) holds {cell.value}. Type what is meant and run again")


def _names(job: Written, given: Input) -> list[str]:
    """The names of the rows of the house book that a given picks from by number."""
    return job.names(given.rows) if given.rows is not None else []


def _alike(issued: Value, holds: Value) -> bool:
    if isinstance(issued, str) and isinstance(holds, str):
        return normalize(on_one_line(issued)) == normalize(on_one_line(holds))
    if isinstance(issued, str) or isinstance(holds, str):
        return False
    return (isnan(issued) and isnan(holds)) or isclose(issued, holds, rel_tol=_CLOSE, abs_tol=_CLOSE)


def _edit(job: Written, each: WrittenInput, holds: Value) -> str | float:
    """What is typed to get what the cell holds."""
    named = each.named
    kind = named.kind if isinstance(named, Input) else Kind.NUMBER
    if isinstance(holds, str) and kind is Kind.DATE:
        raise job.refused(f"{NAME}!{each.ref} ({named.label}): {holds} is not a date. Type one as 2026-04-13")
    if isinstance(holds, str):
        return "" if kind is Kind.TEXT and normalize(holds) == NONE else holds
    if isnan(holds):
        return ""
    if kind is Kind.DATE:
        return day_of(holds).isoformat()
    if isinstance(named, Input) and named.kind is Kind.ROW:
        names = _names(job, named)
        if holds not in range(1, len(names) + 1):
            raise job.refused(f"{NAME}!{each.ref} ({named.label}) is {_digits(holds)}, and Prices has no such row")
        return names[int(holds) - 1]
    return _plain(_digits(holds))


def _digits(number: float) -> str:
    return str(int(number)) if number.is_integer() else repr(number)


def _plain(typed: str) -> str | float:
    """What was typed; a number with a power of ten as a number, since nobody may type it so in words."""
    if "e" in typed.casefold():
        try:
            return float(typed)
        except ValueError:
            return typed
    return typed
