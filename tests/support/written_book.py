"""A written workbook opened for inspection: its parts, its cells as written and as cached, its formulas taken apart."""

from __future__ import annotations

import zipfile
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from functools import cached_property
from pathlib import Path
from typing import Any

import openpyxl
from defusedxml import ElementTree

from formula_text import Area, Formula, area
from sheet_cells import Held, read_cells

LAST_ROW = 100_000
"""A range that reaches further is a whole column in disguise."""


class Rule(StrEnum):
    """What a written workbook has to keep; the value says it in words."""

    SHEET_ORDER = "the same sheets in the same order in every file"
    SHEET_NAME = "sheet names that every program takes"
    SHEET_TITLE = "a title in the first cell of each sheet"
    NOTHING_HIDDEN = "no hidden sheet, row or column"
    NOTHING_MERGED = "no merged cells"
    NOTHING_FOREIGN = "no macro, no link out of the file"
    NO_PASSWORD = "no password"
    ONE_CELL_NAMES = "a defined name is one cell"
    PLAIN_DATES = "dates count from 1900 and are shown as the workbook has them"
    DIGITS_FIT = "a number has fixed decimals, or as many as fit: parts of a format with General show ###"
    IDENTITY = "the file says what it is and what it was made from"
    RECALCULATED_ON_LOAD = "a spreadsheet program recalculates it on opening"
    FROZEN_HEADER = "the header of a long sheet stays in sight"
    REPEATED_HEADER = "the header of a long sheet is printed on each page"
    PAGE_WIDTH = "each sheet prints one page wide"
    TYPED_NUMBER = "numbers are typed on the sheets for inputs, factors and prices only"
    LITERAL = "no number in a formula but digits and exact unit divisors"
    DEAD_PIECE = "nothing in a formula that changes nothing, and no formula that only says a word"
    FUNCTION = "only functions that mean the same in every program"
    VOLATILE = "no function that changes by itself"
    ARRAY = "no array formula"
    REFERENCE = "references are cells and bounded ranges of this file"
    EMPTY_REFERENCE = "no reference to empty cells"
    ROUNDED_BEFORE_UP = "rounding up or down is done to a rounded number"
    GUARDED_LOOK_UP = "errors are caught around a look-up, or a count of changed boxes, only"
    TWO_IFS = "at most two IFs in a formula"
    SIZE = "formulas that a person can read"
    CHAIN = "a short way from input to result"
    CIRCLE = "no formula that depends on itself"
    LIKE_ITS_COLUMN = "one formula down a block of rows"
    CACHED_VALUE = "a value beside every formula"
    NO_ERROR = "no error value"


@dataclass(frozen=True)
class Fault:
    """A place in a workbook that breaks a rule, and a sentence that says how."""

    rule: Rule
    place: str
    sentence: str

    def __str__(self) -> str:
        return f"{self.place}: {self.sentence} (Rule: {self.rule}.)"


@dataclass(frozen=True)
class Standard:
    """What one kind of workbook may do; as it stands, a job's workbook.

    ``sheets`` are always there, in order; without any, all are right. Numbers may be typed on the ``typed`` sheets, on
    the ``as_issued`` ones, which say so, in a row or column whose heading ends in "No." or says "fixed at issue",
    and in a block whose title says so. Formulas may ask what will be typed into the empty cells of ``boxes`` sheets.
    ``arithmetic`` sheets show a typed length as it was worked out. The rest are limits: characters, references and
    operations of a formula, and cells from input to result (hauling, then digging days, then the pour visit and its
    cautions, hang one on the other: 200).
    """

    sheets: tuple[str, ...] = (
        "Bid",
        "Measured",
        "Takeoff",
        "Dig and haul",
        "Order and placing",
        "Costs",
        "Checks",
        "Proposal",
        "Plant order",
        "Load list",
        "Haul-off sheet",
        "Pour day",
        "Change order",
        "Invoice",
        "Job cost",
        "Area workings",
        "Haul workings",
        "Order workings",
        "Cost workings",
        "Factors",
        "Prices",
        "Log",
    )
    typed: frozenset[str] = frozenset({"Measured", "Factors", "Prices"})
    as_issued: frozenset[str] = frozenset({"Log"})
    boxes: frozenset[str] = frozenset({"Job cost"})
    arithmetic: frozenset[str] = frozenset({"Measured"})
    characters: int = 255
    references: int = 12
    operations: int = 24
    chain: int = 200
    full_size: frozenset[str] = frozenset(
        {
            "Proposal",
            "Plant order",
            "Load list",
            "Haul-off sheet",
            "Pour day",
            "Change order",
            "Invoice",
            "Job cost",
            "Bid",
            "Measured",
            "Log",
            "Takeoff",
            "Dig and haul",
            "Order and placing",
            "Costs",
            "Checks",
            "Area workings",
            "Haul workings",
            "Order workings",
            "Cost workings",
            "Factors",
            "Prices",
        }
    )
    """The sheets that print at 100 %, rather than fitted to the width of a page."""
    dates: tuple[str, ...] = (
        "[$-409]mmm d, yyyy",
        "[$-409]m/d/yyyy",
        "yyyy-mm-dd",
        'yyyy-mm-dd;-;"-"',
        'm/d/yy;-;"\N{EN DASH}"',
    )
    """How a day is shown, and a day that shows a dash while it is not known."""


PROOF_TITLE = "Boxes that hold what they must"
"""The section of the workings below which formulas hold boxes and cells against what they must be."""


@dataclass(frozen=True, eq=False)
class FormulaCell:
    """A formula where it stands: its sheet, its cell as written, and the value cached beside it."""

    sheet: str
    cell: Any
    formula: Formula
    cached: object

    @property
    def key(self) -> tuple[str, int, int]:
        """Sheet, row and column."""
        return self.sheet, self.cell.row, self.cell.column

    @property
    def place(self) -> str:
        """Sheet and reference, as a person writes them."""
        return f"{self.sheet}!{self.cell.coordinate}"


class Book:
    """A workbook file with the standard it is held against. Raises what openpyxl raises when it cannot be read."""

    def __init__(self, path: Path, standard: Standard) -> None:
        self.standard = standard
        self.written: Any = openpyxl.load_workbook(path)
        with zipfile.ZipFile(path) as parts:
            self.parts = {name: parts.read(name) for name in parts.namelist()}
        self._stored = read_cells(path)

    def part(self, name: str) -> Any:
        """The root element of a part of the file, or ``None`` when the file has no such part."""
        return ElementTree.fromstring(self.parts[name]) if name in self.parts else None

    @cached_property
    def cells(self) -> list[tuple[Any, Any]]:
        """Each sheet with each of its cells that holds something."""
        return [
            (sheet, cell)
            for sheet in self.written.worksheets
            for row in sheet.iter_rows()
            for cell in row
            if cell.value is not None
        ]

    @cached_property
    def sheets(self) -> frozenset[str]:
        """The names of the sheets, which openpyxl gathers anew whenever it is asked."""
        return frozenset(self.written.sheetnames)

    @cached_property
    def filled(self) -> set[tuple[str, int, int]]:
        """Sheet, row and column of each cell that holds something."""
        return {(sheet.title, cell.row, cell.column) for sheet, cell in self.cells}

    @cached_property
    def formulas(self) -> list[FormulaCell]:
        """Every formula, sheet by sheet in reading order."""
        return [
            FormulaCell(
                sheet.title,
                cell,
                Formula(str(getattr(cell.value, "text", cell.value))),  # an array formula carries its text
                self._value_beside(sheet.title, cell.coordinate),
            )
            for sheet, cell in self.cells
            if cell.data_type == "f"
        ]

    @cached_property
    def _proof_from(self) -> dict[str, int]:
        """The row of each sheet from which on formulas are worked again."""
        return {sheet.title: cell.row for sheet, cell in self.cells if cell.value == PROOF_TITLE}

    def is_proof(self, cell: FormulaCell) -> bool:
        """Whether a formula only works others again, which stand in cells of their own."""
        return cell.cell.row > self._proof_from.get(cell.sheet, cell.cell.row)

    def _value_beside(self, sheet: str, ref: str) -> object:
        """The value that is stored beside a formula; an empty text cannot be told from none."""
        value = self._stored.get((sheet, ref), Held(None)).value
        return None if value == "" else value

    def areas(self, cell: FormulaCell) -> Iterator[Area]:
        """What the references of a formula mean; one that means nothing here is left out."""
        for reference in cell.formula.references:
            meant = self.area(reference, cell.sheet)
            if meant is not None:
                yield meant

    def area(self, reference: str, sheet: str) -> Area | None:
        """What a reference or a defined name means on ``sheet``; ``None`` when it is no bounded range of this file."""
        name = self.written.defined_names.get(reference)
        meant = area(name.attr_text if name is not None else reference, sheet)
        if meant is None or meant.sheet not in self.sheets or meant.last_row > LAST_ROW:
            return None
        return meant
