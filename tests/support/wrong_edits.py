"""What a person may do to a written workbook by mistake: wrong things in its boxes, numbers pasted over formulas.

The boxes and the formulas are those of the file's own layout, the validations those that stand in the file.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import openpyxl
from openpyxl.utils import range_boundaries

from calc.cells import column_letters
from calc.declared import Declared
from calc.layout.bid_cautions import slots_for
from calc.layout.page import Computed, FixedText, Linked, Page, Typed
from calc.layout.validations import TOP, rule_of
from calc.layout.workbook import plan_of
from calc.model.results import JobValues
from calc.trade.story.catalog import STORY
from sheet_cells import AsStored, Held
from witness import Place

Wrong = float | str | AsStored | None

KINDS: Mapping[str, Wrong] = {
    "text": "3' 6\"",
    "blank": None,
    "zero": 0.0,
    "negative": -4.0,
    "huge": 1e12,
    "fraction": 2.4,
    "wrong word": "purple",
    "date": 46139.0,
    "error": AsStored("e", "#N/A", "A1"),
}
"""What is typed into a box by mistake."""

READY = "READY TO SEND"


@dataclass(frozen=True)
class Box:
    """A box of a written workbook."""

    place: Place
    named: Declared
    index: int


@dataclass(frozen=True)
class Rule:
    """A validation of the file."""

    kind: str
    one: str
    two: str
    message: str

    def takes(self, value: Wrong) -> bool:
        """Whether a person may type ``value``; clearing a cell is never refused, and an error always is."""
        if value is None:
            return True
        if isinstance(value, AsStored):
            return False
        if self.kind == "list":
            return str(value) in self.one.strip('"').split(",")
        if self.kind == "textLength":
            return len(str(value)) <= float(self.one)
        if self.kind == "custom":
            return self._meets_condition(value)
        number = isinstance(value, float) and float(self.one) <= value <= float(self.two)
        return number and (self.kind != "whole" or float(value) == int(float(value)))

    def _meets_condition(self, value: float | str) -> bool:
        """The conditions that we write: a number within limits, perhaps whole, perhaps the word none instead."""
        if isinstance(value, str):
            return value == "none" and '="none"' in self.one
        limits = re.findall(r"[A-Z]+\d+(>=|<=|>)(-?[\d.e+]+)", self.one)
        assert len(limits) == 2, self.one
        holds = {">": value.__gt__, ">=": value.__ge__, "<=": value.__le__}
        whole = "ROUND(" not in self.one or value == int(value)
        return whole and all(holds[sign](float(limit)) for sign, limit in limits)


def boxes_of(job: JobValues) -> list[Box]:
    """Every box of the workbook of a job, in its order."""
    return [
        Box((plan.page.name, f"{column_letters(put.col + 1)}{put.row + 1}"), put.named, put.index)
        for plan in plan_of(job.shape, slots_for(job))
        for put in plan.page.contents
        if isinstance(put, Typed)
    ]


def story_cells(job: JobValues) -> dict[str, list[Place]]:
    """The cells of each part of the story that a number may be pasted over, by the name of the part."""
    names = {sheet.name: sheet.short for sheet in STORY}
    found: dict[str, list[Place]] = {}
    for plan in plan_of(job.shape, slots_for(job)):
        if plan.page.name not in names:
            continue
        titles = [put for put in plan.page.contents if isinstance(put, FixedText) and put.role == "storysection"]
        for put in plan.page.contents:
            if isinstance(put, Computed) and isinstance(job.of(put.line, put.index), float):
                title = next(each.text for each in reversed(titles) if each.row < put.row)
                ref = f"{column_letters(put.col + 1)}{put.row + 1}"
                found.setdefault(f"{names[plan.page.name]}: {title}", []).append((plan.page.name, ref))
        for part, put in _linked_of(plan.page, names[plan.page.name], titles):
            found.setdefault(part, []).append((plan.page.name, f"{column_letters(put.col + 1)}{put.row + 1}"))
    return found


def _linked_of(page: Page, short: str, titles: list[FixedText]) -> Iterator[tuple[str, Linked]]:
    """The cells that bring a number or a word from elsewhere: inputs, and rows found by their running number."""
    for put in page.contents:
        if isinstance(put, Linked):
            title = next(each.text for each in reversed(titles) if each.row < put.row)
            listed = "INDEX(" in put.text() or put.text().startswith("SUM(")
            yield f"{page.name}, found: {title}" if listed else f"{short}: what it brings", put


def rules_of(path: Path) -> dict[Place, Rule]:
    """The validation of every cell of a file that has one."""
    found: dict[Place, Rule] = {}
    for sheet in openpyxl.load_workbook(path).worksheets:
        for rule in sheet.data_validations.dataValidation:
            made = Rule(str(rule.type), str(rule.formula1 or ""), str(rule.formula2 or ""), str(rule.error or ""))
            assert rule.errorStyle in (None, "stop") and rule.showErrorMessage, f"{sheet.title} {rule.sqref}"
            for ref in _cells(rule):
                found[sheet.title, ref] = made
    return found


def _cells(rule: Any) -> Iterator[str]:
    for part in str(rule.sqref).split():
        left, top, right, bottom = range_boundaries(part)
        for row in range(top, bottom + 1):
            for column in range(left, right + 1):
                yield f"{column_letters(column)}{row}"


def is_off(box: Box, kind: str) -> bool:
    """Whether a mistake leaves a box with something that no box of its kind may hold, by its declaration alone."""
    rule, value = rule_of(box.named), KINDS[kind]
    if rule.words:
        return True
    if rule.low is None:
        return False
    if not isinstance(value, float):
        return True
    if rule.whole and value != int(value):
        return True
    return value < rule.low or (rule.over and value <= rule.low) or (rule.high < TOP and value > rule.high)


def is_ready(cells: Mapping[Place, Held]) -> bool:
    """Whether the front page says that the bid may be sent."""
    return any(sheet == "Bid" and str(held.value).startswith(READY) for (sheet, _), held in cells.items())


def errors_in(cells: Mapping[Place, Held]) -> list[Place]:
    """The formulas that give an error value."""
    return [place for place, held in cells.items() if held.formula is not None and held.is_error]
