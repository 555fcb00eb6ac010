"""Cells of the workbook of the week: values as of issue, and formulas over them."""

from __future__ import annotations

from collections.abc import Sequence
from math import isnan

from calc.cells import column_letters
from calc.formula.functions import FUNCTIONS, NONE
from calc.layout.line_sheets import SAFETY
from calc.layout.page import Constant, Linked, Page, Shown


def week_page(name: str, title: str, widths: tuple[float, ...], heads: Sequence[str]) -> Page:
    """A sheet with its title, the standing caution and its heads."""
    page = Page(name, widths, title, frozen_cols=2)
    page.words(0, title, "title")
    page.heights[0] = 22
    page.next()
    page.words(0, SAFETY, "subtitle")
    page.next()
    for col, text in enumerate(heads):
        page.words(col, text, "head")
    page.next()
    return page


def say(page: Page, col: int, value: Shown, face: str) -> None:
    """A value as of issue in the current row."""
    shown = NONE if isinstance(value, float) and isnan(value) else value
    page.put(Constant(page.row, col, "issuewords" if isinstance(shown, str) else "issue", shown, face))


def link(page: Page, col: int, role: str, text: str, value: Shown, face: str = "") -> None:
    """A formula in the current row, with its value."""
    page.put(Linked(page.row, col, role, lambda: text, lambda _job: value, face))


def quoted(text: str) -> str:
    """Words as a formula holds them. The writer takes a name before a bracket for a function, in quotes too: a job may
    be called SORT(1), so what stands before a bracket is a text of its own."""
    doubled = text.replace('"', '""').replace("(", '"&"(')
    return f'"{doubled}"'


def span(col: int, first: int, last: int, sheet: str = "") -> str:
    """The address of a column from one row to another."""
    letters = column_letters(col + 1)
    return f"{sheet + '!' if sheet else ''}${letters}${first + 1}:${letters}${max(first, last) + 1}"


def cents(amount: float) -> float:
    """An amount to the cent."""
    return float(FUNCTIONS["money"].numbers(amount))
