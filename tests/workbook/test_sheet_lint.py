"""The lint itself: a clean workbook is left alone, and each kind of fault, planted in it, is found and nothing else."""

from __future__ import annotations

import datetime
import zipfile
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

import pytest
import xlsxwriter
from xlsxwriter.utility import xl_rowcol_to_cell

from sheet_lint import JOB, Fault, Rule, Standard, lint

Plant = Callable[["Base"], None]
"""Puts one fault into the workbook before it is closed."""

Repack = Callable[[dict[str, bytes]], None]
"""Changes the parts of the finished file."""


class Base:
    """A small workbook with every sheet of a job and no fault; a plant changes it before it is closed."""

    def __init__(self, path: Path, sheets: tuple[str, ...] = JOB.sheets) -> None:
        self.workbook = xlsxwriter.Workbook(str(path), {"in_memory": True})
        self.properties: dict[str, Any] = {"title": "Job 1", "author": "us", "created": datetime.datetime(2026, 3, 2)}
        self.custom = {"input_sha256": "0f", "program_version": "0.1.0"}
        self.money = self.workbook.add_format({"num_format": "$#,##0.00"})
        self.day = self.workbook.add_format({"num_format": "yyyy-mm-dd"})
        self.sheets: dict[str, Any] = {}
        for name in sheets:
            self.sheets[name] = self.workbook.add_worksheet(name)
            self.sheets[name].write_string("A1", name)
            if name not in JOB.full_size:
                self.sheets[name].fit_to_pages(1, 0)
        self._measured()
        self._takeoff()
        self._rest()

    def formula(self, place: str, text: str, value: object = 1, look: Any = None) -> None:
        """Write a formula and its value to a place such as ``Takeoff!B3``."""
        sheet, ref = place.split("!")
        self.sheets[sheet].write_formula(ref, text, look, value)

    def close(self) -> None:
        """Write the file."""
        self.workbook.set_properties(self.properties)
        for name, value in self.custom.items():
            self.workbook.set_custom_property(name, value)
        self.workbook.close()

    def _measured(self) -> None:
        sheet = self.sheets["Measured"]
        sheet.write_row("A2", ["Area", "Length ft", "Width ft", "Pour day"])
        for row in range(3, 33):
            sheet.write_string(f"A{row}", f"area {row - 2}")
            sheet.write_formula(f"B{row}", "=10+6.5/12", None, 10 + 6.5 / 12)
            sheet.write_number(f"C{row}", 4)
            sheet.write_datetime(f"D{row}", datetime.datetime(2026, 3, 4), self.day)
        sheet.freeze_panes(2, 0)

    def _takeoff(self) -> None:
        """A block of rows under a heading, numbered by the program, with a total under it."""
        sheet = self.sheets["Takeoff"]
        sheet.write_row("A2", ["No.", "Net area", "Running total", "Bags"])
        for row in range(3, 33):
            sheet.write_number(f"A{row}", row - 2)
            sheet.write_formula(f"B{row}", f"=Measured!B{row}*Measured!C{row}", None, 42)
            running = "=B3" if row == 3 else f"=C{row - 1}+B{row}"
            sheet.write_formula(f"C{row}", running, None, 42 * (row - 2))
            sheet.write_formula(f"D{row}", f"=ROUNDUP(ROUND(B{row}/12,6),0)", None, 4)
        sheet.write_formula("B33", "=SUM(B3:B32)", None, 1260)
        sheet.write_formula("B50", "=IFERROR(INDEX(A2:A32,MATCH(3,A3:A32,0)+1),0)", None, 3)
        sheet.write_string("A50", "Row of area 3")
        sheet.freeze_panes(2, 0)
        sheet.repeat_rows(0, 1)

    def _rest(self) -> None:
        self.sheets["Factors"].write_row("A2", ["Waste", 1.07])
        self.sheets["Prices"].write_row("A2", ["Ready-mix", 168.25], self.money)
        self.formula("Costs!B2", "=ROUND(ROUND(Takeoff!B33*Prices!B2*Factors!B2,6),2)", 226839.18, self.money)
        self.formula("Bid!B2", "=Costs!B2", 226839.18, self.money)
        self.formula("Bid!B3", '=HYPERLINK("week.xlsx","all jobs")', "all jobs")
        self.sheets["Bid"].write_row("A4", ["Price change, fixed at issue", 120.5])
        self.sheets["Log"].write_row("A2", ["fixed at issue", 226839.18])
        self.workbook.define_name("price", "=Bid!$B$2")
        self.formula("Checks!B2", "=IF(ABS(price-Costs!B2)<Factors!B2,0,1)", 0)


def formula(text: str, value: object = 1, place: str = "Takeoff!G2") -> Plant:
    """Plant a formula, in a cell of its own unless ``place`` says another."""
    return lambda base: base.formula(place, text, value)


def on(sheet: str, method: str, *arguments: object) -> Plant:
    """Call a method of a sheet."""
    return lambda base: getattr(base.sheets[sheet], method)(*arguments)


def without(properties: str, name: str) -> Plant:
    """Leave a property of the document out."""
    return lambda base: getattr(base, properties).pop(name)


def dated(look: str) -> Plant:
    """Show a typed date in another way."""

    def plant(base: Base) -> None:
        base.sheets["Measured"].write_number("F2", 46085, base.workbook.add_format({"num_format": look}))

    return plant


def chained(length: int) -> Plant:
    """Plant formulas that hang one on the other, along a row so that they form no block."""

    def plant(base: Base) -> None:
        for column in range(length):
            before = xl_rowcol_to_cell(5, column - 1) if column else "Factors!B2"
            base.sheets["Checks"].write_formula(5, column, f"={before}+1", None, column)

    return plant


def part(name: str, content: bytes = b"") -> Repack:
    """Add a part to the file."""
    return lambda parts: parts.update({name: content})


def text(name: str, old: str, new: str) -> Repack:
    """Replace text in a part of the file; it must be there."""

    def repack(parts: dict[str, bytes]) -> None:
        assert old.encode() in parts[name]
        parts[name] = parts[name].replace(old.encode(), new.encode())

    return repack


BOOK, SHEET = "xl/workbook.xml", "xl/worksheets/sheet1.xml"

PLANTED: list[tuple[Rule, str, Plant]] = [
    (Rule.SHEET_TITLE, "Costs!A1", lambda base: base.sheets["Costs"].write_blank("A1", None, base.day)),
    (Rule.SHEET_TITLE, "Log!A1", on("Log", "write_number", "A1", 0)),
    (Rule.NOTHING_HIDDEN, "Log", on("Log", "hide")),
    (Rule.NOTHING_HIDDEN, "Log", on("Log", "very_hidden")),
    (Rule.NOTHING_HIDDEN, "Takeoff!7", on("Takeoff", "set_row", 6, None, None, {"hidden": True})),
    (Rule.NOTHING_HIDDEN, "Takeoff!7", on("Takeoff", "set_row", 6, 0)),
    (Rule.NOTHING_HIDDEN, "Takeoff!C", on("Takeoff", "set_column", "C:C", None, None, {"hidden": True})),
    (Rule.NOTHING_MERGED, "Costs!D4:E4", on("Costs", "merge_range", "D4:E4", "both")),
    (Rule.NOTHING_FOREIGN, "xl/worksheets/_rels/sheet1.xml.rels", on("Bid", "write_url", "D9", "https://a.example")),
    (Rule.NOTHING_FOREIGN, "Takeoff!G2", formula('=HYPERLINK("https://a.example/b","b")', "b")),
    (Rule.NOTHING_FOREIGN, "Takeoff!G2", formula('=HYPERLINK("../week.xlsx","b")', "b")),
    (Rule.NO_PASSWORD, "Costs", on("Costs", "protect", "secret")),
    (Rule.ONE_CELL_NAMES, "rate", lambda base: base.workbook.define_name("rate", "=0.99")),
    (Rule.ONE_CELL_NAMES, "areas", lambda base: base.workbook.define_name("areas", "=Takeoff!$B$3:$B$9")),
    (Rule.ONE_CELL_NAMES, "rate", lambda base: base.workbook.define_name("Costs!rate", "=1+Factors!$B$2")),
    (Rule.PLAIN_DATES, "Measured!F2", dated("mm/dd/yy")),
    (Rule.PLAIN_DATES, "Measured!F2", dated("yyyy-mm-dd hh:mm")),
    (Rule.DIGITS_FIT, "Measured!F2", dated('General;-General;"-"')),
    (Rule.IDENTITY, "document properties", without("custom", "input_sha256")),
    (Rule.IDENTITY, "document properties", without("custom", "program_version")),
    (Rule.IDENTITY, "document properties", without("properties", "title")),
    (Rule.IDENTITY, "document properties", without("properties", "author")),
    (Rule.FROZEN_HEADER, "Takeoff", on("Takeoff", "freeze_panes", 0, 0)),
    (Rule.FROZEN_HEADER, "Takeoff", on("Takeoff", "freeze_panes", 0, 1)),
    (Rule.REPEATED_HEADER, "Measured", on("Measured", "write_string", "A50", "far down")),
    (Rule.PAGE_WIDTH, "Costs", on("Costs", "fit_to_pages", 2, 0)),
    (Rule.PAGE_WIDTH, "Costs", on("Costs", "set_print_scale", 80)),
    (Rule.TYPED_NUMBER, "Takeoff!G2", on("Takeoff", "write_number", "G2", 5)),
    (Rule.TYPED_NUMBER, "Takeoff!B40", on("Takeoff", "write_number", "B40", 0)),
    (Rule.TYPED_NUMBER, "Proposal!B2", lambda base: base.sheets["Proposal"].write_number("B2", 46085, base.day)),
    (Rule.LITERAL, "Takeoff!G2", formula("=B33*1.07")),
    (Rule.LITERAL, "Takeoff!G2", formula("=B33*-5")),
    (Rule.FUNCTION, "Takeoff!G2", formula("=CEILING(B33,1)")),
    (Rule.FUNCTION, "Takeoff!G2", formula("=_xlfn.CONCAT(A3,A4)")),
    (Rule.FUNCTION, "Takeoff!G2", formula('=TEXT(B33,"0.00")', "1.00")),
    (Rule.VOLATILE, "Takeoff!G2", formula("=TODAY()")),
    (Rule.ARRAY, "Takeoff!G2", on("Takeoff", "write_array_formula", "G2:G2", "{=SUM(B3:B9*C3:C9)}", None, 1)),
    (Rule.ARRAY, "Takeoff!G2", on("Takeoff", "write_dynamic_array_formula", "G2:G2", "=SUM(B3:B9*C3:C9)", None, 1)),
    (Rule.REFERENCE, "Takeoff!G2", formula("=SUM(B:B)")),
    (Rule.REFERENCE, "Takeoff!G2", formula("=SUM(3:3)")),
    (Rule.REFERENCE, "Takeoff!G2", formula("=SUM(B3:B1048576)")),
    (Rule.REFERENCE, "Takeoff!G2", formula("=SUM(B3:B2)")),
    (Rule.REFERENCE, "Takeoff!G2", formula("=Nowhere!B3")),
    (Rule.REFERENCE, "Takeoff!G2", formula("=nobody+1")),
    (Rule.REFERENCE, "Takeoff!G2", formula("='[other.xlsx]Bid'!B2")),
    (Rule.EMPTY_REFERENCE, "Takeoff!G2", formula("=Costs!Z9+1")),
    (Rule.EMPTY_REFERENCE, "Takeoff!G2", formula("=SUM(Costs!Y8:Z9)")),
    (Rule.ROUNDED_BEFORE_UP, "Takeoff!G2", formula("=ROUNDUP(B33/12,0)")),
    (Rule.ROUNDED_BEFORE_UP, "Takeoff!G2", formula("=ROUNDUP(ROUND(B33,6)/12,0)")),
    (Rule.ROUNDED_BEFORE_UP, "Takeoff!G2", formula("=ROUNDDOWN(B33/12,0)")),
    (Rule.GUARDED_LOOK_UP, "Takeoff!G2", formula("=IFERROR(B33/C3,0)")),
    (Rule.DEAD_PIECE, "Takeoff!G2", formula("=B33*1")),
    (Rule.DEAD_PIECE, "Takeoff!G2", formula("=IF(0>0,B33,C3)")),
    (Rule.DEAD_PIECE, "Takeoff!G2", formula('="concrete"', "concrete")),
    (Rule.TWO_IFS, "Takeoff!G2", formula("=IF(B3>0,1,0)+IF(B4>0,1,0)+IF(B5>0,1,0)")),
    (Rule.SIZE, "Takeoff!G2", formula('=B33&"' + "a" * 249 + '"', "a" * 249)),
    (Rule.SIZE, "Takeoff!G2", formula("=SUM(B3,B4,B5,B6,B7,B8,B9,B10,B11,B12,B13,B14,B15)")),
    (Rule.SIZE, "Takeoff!G2", formula("=B3" + "+1" * 25)),
    (Rule.CHAIN, "Checks!GS6", chained(JOB.chain + 1)),
    (Rule.CIRCLE, "Takeoff!G2", formula("=G2+1")),
    (Rule.LIKE_ITS_COLUMN, "Takeoff!B9", formula("=Measured!B9*Measured!C8", place="Takeoff!B9")),
    (Rule.LIKE_ITS_COLUMN, "Takeoff!B9", formula("=Measured!B9*Measured!$C$9", place="Takeoff!B9")),
    (Rule.CACHED_VALUE, "Takeoff!G2", formula("=B33+1", "")),
    (Rule.NO_ERROR, "Takeoff!G2", formula("=B33/Log!A1", "#VALUE!")),
    (Rule.NO_ERROR, "Takeoff!G2", formula("=#REF!+1")),
]
"""The rule that is broken, the place that the lint must name, and the plant."""

REPACKED: list[tuple[Rule, str, Repack]] = [
    (Rule.NOTHING_FOREIGN, "xl/vbaProject.bin", part("xl/vbaProject.bin")),
    (Rule.NOTHING_FOREIGN, "xl/externalLinks/externalLink1.xml", part("xl/externalLinks/externalLink1.xml")),
    (Rule.NOTHING_FOREIGN, "xl/connections.xml", part("xl/connections.xml")),
    (Rule.NO_PASSWORD, "workbook", text(BOOK, "<bookViews", '<workbookProtection workbookPassword="CC2A"/><bookViews')),
    (Rule.PLAIN_DATES, "workbook", text(BOOK, "<workbookPr ", '<workbookPr date1904="1" ')),
    (Rule.RECALCULATED_ON_LOAD, "workbook", text(BOOK, ' fullCalcOnLoad="1"', "")),
    (Rule.CIRCLE, "workbook", text(BOOK, "<calcPr ", '<calcPr iterate="1" ')),
    (Rule.SHEET_NAME, "History", text(BOOK, 'name="Proposal"', 'name="History"')),
    (Rule.IDENTITY, "document properties", text("docProps/core.xml", "2026-03-02T00:00:00Z", "")),
]
"""The same for what the library that writes our workbooks would not write."""


def build(path: Path, plant: Plant | None = None, sheets: tuple[str, ...] = JOB.sheets) -> Path:
    """Write the clean workbook with one plant."""
    base = Base(path, sheets)
    if plant is not None:
        plant(base)
    base.close()
    return path


def repack(path: Path, change: Repack) -> Path:
    """Change the parts of a finished file."""
    with zipfile.ZipFile(path) as old:
        parts = {name: old.read(name) for name in old.namelist()}
    change(parts)
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as new:
        for name, content in parts.items():
            new.writestr(name, content)
    return path


def told(faults: list[Fault]) -> set[tuple[Rule, str]]:
    """Rules and places, without the sentences."""
    return {(fault.rule, fault.place) for fault in faults}


def named(planted: Sequence[tuple[Rule, str, object]]) -> list[str]:
    """What each case is called when it fails."""
    return [f"{rule.name.lower()} {place}" for rule, place, _ in planted]


def test_a_clean_workbook_is_not_accused(tmp_path: Path) -> None:
    assert [str(fault) for fault in lint(build(tmp_path / "clean.xlsx"))] == []


@pytest.mark.parametrize(("rule", "place", "plant"), PLANTED, ids=named(PLANTED))
def test_a_planted_fault_is_found_where_it_is_and_nothing_else_is(
    tmp_path: Path, rule: Rule, place: str, plant: Plant
) -> None:
    assert told(lint(build(tmp_path / "planted.xlsx", plant))) == {(rule, place)}


@pytest.mark.parametrize(("rule", "place", "change"), REPACKED, ids=named(REPACKED))
def test_a_fault_in_the_parts_of_the_file_is_found(tmp_path: Path, rule: Rule, place: str, change: Repack) -> None:
    found = told(lint(repack(build(tmp_path / "repacked.xlsx"), change)))
    assert (rule, place) in found
    assert {each for each, _ in found} <= {rule, Rule.SHEET_ORDER, Rule.PAGE_WIDTH}


@pytest.mark.parametrize(
    "sheets",
    [
        ("Measured", "Bid", *JOB.sheets[2:]),
        (*JOB.sheets, "Notes"),
        (*(each for each in JOB.sheets if each != "Pour day"), "Pour day"),
        ("Proposal", *(each for each in JOB.sheets if each != "Proposal")),
    ],
    ids=["swapped", "one more", "a paper behind the workings", "a paper first"],
)
def test_an_auditor_finds_every_sheet_where_it_was_in_the_last_file(tmp_path: Path, sheets: tuple[str, ...]) -> None:
    assert told(lint(build(tmp_path / "order.xlsx", sheets=sheets))) == {(Rule.SHEET_ORDER, "workbook")}


def test_every_rule_has_been_seen_to_find_something() -> None:
    shown = {rule for rule, *_ in (*PLANTED, *REPACKED)} | {Rule.SHEET_ORDER}
    assert shown == set(Rule)


def test_a_workbook_of_another_kind_is_held_against_its_own_standard(tmp_path: Path) -> None:
    path = build(tmp_path / "week.xlsx", on("Takeoff", "write_number", "G2", 5), (*JOB.sheets, "Ledger"))
    assert told(lint(path)) == {(Rule.SHEET_ORDER, "workbook"), (Rule.TYPED_NUMBER, "Takeoff!G2")}
    assert lint(path, Standard(sheets=(), typed=JOB.typed | {"Takeoff"})) == []


def test_a_fault_reads_as_place_sentence_and_rule() -> None:
    fault = Fault(Rule.NOTHING_MERGED, "Bid!A1:B1", "These cells are merged.")
    assert str(fault) == "Bid!A1:B1: These cells are merged. (Rule: no merged cells.)"
