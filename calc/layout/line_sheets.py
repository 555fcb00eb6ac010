"""The sheets of lines: item, total, unit, how it is worked, formula, source, and to the right the value of each row."""

from __future__ import annotations

from math import isnan

from calc.declared import Declared
from calc.formula.functions import NONE
from calc.formula.value_types import ValueType
from calc.layout.page import CellValue, Page
from calc.layout.styles import number_format

ITEM, QUANTITY, UNIT, WORKED, CODE, SOURCE, FIGURES = range(7)
"""The columns of a sheet of lines. Each area keeps its column from FIGURES on, on every sheet."""

WIDTHS = (24.0, 10.0, 7.5, 32.0, 26.0, 19.0, *(9.5,) * 60)
HEADS = ("Item", "Total", "Unit", "How it is worked", "Formula", "Source")
SAFETY = "Check local code. This is not engineering. Licensed trades where the law asks."
"""Printed on every page."""


def open_page(name: str, title: str, widths: tuple[float, ...] = WIDTHS, heads: tuple[str, ...] = HEADS) -> Page:
    """A sheet with its title, the safety notice, and its header row."""
    page = Page(name, widths, title)
    page.words(ITEM, title, "title")
    page.heights[0] = 22
    page.next()
    page.words(ITEM, SAFETY, "subtitle")
    page.next()
    for col, title_of_col in enumerate(heads):
        page.words(col, title_of_col, "head")
    page.next()
    return page


def format_of(named: Declared) -> str:
    """The number format of a declaration; none for words."""
    return number_format(named.unit_text) if named.value_type is ValueType.NUMBER else ""


def cell_value(value: float | str) -> CellValue:
    """A value as a cell shows it: the word none for a number that was not given."""
    return NONE if isinstance(value, float) and isnan(value) else value
