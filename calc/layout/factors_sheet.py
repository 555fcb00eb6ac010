"""The sheet Factors: the usual values of the trade, each with its range and its source. They are edited here."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import groupby

from calc.cells import column_letters
from calc.declared import Factor, Section
from calc.formula.levels import JOB, Level
from calc.intake.records import JobInput
from calc.intake.schema import FACTOR_LIST
from calc.layout.addresses import Block
from calc.layout.grid import FACTORS as GRID
from calc.layout.grid import ITEM, VALUE
from calc.layout.page import CellValue, FixedText, JobText, Typed
from calc.layout.sheet_layout import SheetLayout
from calc.layout.styles import PLAIN_FORMAT
from calc.layout.text_width import wrapped

NAME = "Factors"
ABOUT = "the usual values of the trade; edit a value here, and the job follows"
_UNIT, _RANGE, _SOURCE = VALUE + 1, VALUE + 2, VALUE + 3
_OTHER = "Other"


def lay_factors(sheet: SheetLayout) -> None:
    """Every factor of the whole job in a row, by subject; those of a level as a table."""
    for subject, of_subject in groupby(sorted(FACTOR_LIST, key=_place_of_subject), key=_subject):
        factors = list(of_subject)
        sheet.section(subject, "value, unit, usual range, source; at the right, what the company book changed")
        source = ""
        for factor in factors:
            if factor.level == JOB:
                _lay_factor(sheet, factor, source)
                source = factor.source
        for (level, _), group in groupby((each for each in factors if each.level != JOB), key=_table_of):
            _lay_table(sheet, level, list(group))


def _subject(factor: Factor) -> str:
    return factor.section.sheet or _OTHER


def _place_of_subject(factor: Factor) -> int:
    """The subjects in the order in which they come up."""
    subjects = list(dict.fromkeys(map(_subject, FACTOR_LIST)))
    return subjects.index(_subject(factor))


def _table_of(factor: Factor) -> tuple[Level, type[Section]]:
    return factor.level, factor.section


def _lay_factor(sheet: SheetLayout, factor: Factor, source_above: str) -> None:
    page = sheet.page
    sheet.places.put_cell(factor, NAME, page.row, VALUE)
    sheet.number_row()
    top, last = page.row, sheet.label(factor.label)
    page.put(Typed(page.row, VALUE, "box", factor, 0, PLAIN_FORMAT))
    sheet.unit(factor, _UNIT)
    _note(sheet, factor, 0, _RANGE, _SOURCE, source_above)
    sheet.close_label(top, last)


def _note(sheet: SheetLayout, factor: Factor, index: int, at: int, first: int, source_above: str = "") -> None:
    """Its usual range and its source, which is said once of several factors in a row."""
    page, grid = sheet.page, sheet.grid
    if told := _range(factor):
        page.put(FixedText(page.row, at, "quiet", told))
    page.put(JobText(page.row, grid.last, "changed", _changed(factor, index), wraps=False))
    source = "as above" if factor.source == source_above and len(source_above) > len("as above") else factor.source
    rows = wrapped(source, grid.room(first, grid.last - 2))
    for place, text in enumerate(rows):
        page.put(FixedText(page.row, first, "origin", text))
        sheet.end_row(detail=place > 0)


def _range(factor: Factor) -> str:
    return "" if factor.low is None or factor.high is None else f"{factor.low:g} to {factor.high:g}"


def _changed(factor: Factor, index: int) -> Callable[[JobInput], CellValue]:
    """Where the company book gives the value; nothing for a usual one."""

    def origin(job: JobInput) -> CellValue:
        entry = job.company.factors.get((factor, index))
        return entry.origin if entry else ""

    return origin


def _lay_table(sheet: SheetLayout, level: Level, factors: Sequence[Factor]) -> None:
    """The factors of a level: a row for each of its rows, a column for each factor, and below it their sources."""
    page, words = sheet.page, level.axis.words
    heads = {ITEM: (str(level).capitalize(), "", True)}
    heads |= {VALUE + place: (factor.label, factor.unit_text, False) for place, factor in enumerate(factors)}
    sheet.column_heads(heads, VALUE + len(factors) - 1)
    block = Block(NAME, level, page.row, len(words), False, {}, ITEM)
    for place, factor in enumerate(factors):
        sheet.places.put_range(factor, block, VALUE + place)
    for index, word in enumerate(words):
        sheet.number_row()
        page.put(FixedText(page.row, ITEM, "item", word))
        for place, factor in enumerate(factors):
            page.put(Typed(page.row, VALUE + place, "box", factor, index, PLAIN_FORMAT))
        page.put(JobText(page.row, sheet.grid.last, "changed", _changed_row(factors, index), wraps=False))
        sheet.end_row()
    for place, factor in enumerate(factors):
        top = page.row
        last = sheet.label(f"  {column_letters(VALUE + place + 1)}  {factor.label}", "quiet", "       ")
        for row, text in enumerate(wrapped(f"{_range_ahead(factor)}{factor.source}", GRID.room(VALUE))):
            page.put(FixedText(page.row, VALUE, "origin", text))
            sheet.end_row(detail=row > 0)
        sheet.close_label(top, last)


def _range_ahead(factor: Factor) -> str:
    return f"{_range(factor)}; " if _range(factor) else ""


def _changed_row(factors: Sequence[Factor], index: int) -> Callable[[JobInput], CellValue]:
    """Where the company book gives one of the values of a row."""

    def origins(job: JobInput) -> CellValue:
        found = (job.company.factors.get((factor, index)) for factor in factors)
        return ", ".join(entry.origin for entry in found if entry)

    return origins
