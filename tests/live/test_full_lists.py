"""A list that an edit of the workbook makes too short says so on Checks, with what to do; none gives an error value.

Every list whose length follows from values is tried, each with an edit that asks for more rows than the workbook has.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pytest

from books import COMPANY, Rows, line
from calc.declared import Check
from calc.declared.checks import LIST_FULL
from calc.layout.checks_sheet import all_checks
from calc.trade.catalog import SECTIONS
from live_edits import Edit
from live_runs import Books, TypedOver, disagreements, read_books, type_in_workbook
from sheet_cells import read_cells
from witness import Program, recalculate

pytestmark = pytest.mark.slow

LISTS = [each for each in all_checks() if each.of_list is not None]

WEEK: dict[str, Rows] = {
    "Jobs": [
        ["job", "bid date", "pour date", "fiber", "irrigation lines to cap"],
        ["26-101", "2026-04-13", "2026-04-27", "none", 0],
    ],
    "Areas": [
        ["area", "length ft", "width ft", "thickness in", "base in", "reinforcement", "bar size", "bar spacing in",
         "vapor retarder", "old slab ft2", "old slab thickness in"],
        ["walk", 12, 4, 4, 4, "none", "#4", 18, "no", 0, 0],
    ],
    "Site conditions": [
        ["fact", "value"],
        ["Order rule", "risk"],
        ["Fixed order", 3],
        ["Order reason", "as the client wishes"],
        ["Sealer coats", 0],
        ["Right of way", "no"],
    ],
}  # fmt: skip
"""A short walk of two joints and one truck."""

HOUSE = {**COMPANY, "Factors": [["factor", "value"], ["Notice for a locate ticket, working days", 2]]}


def _typed(name: str, value: float | str) -> Edit:
    return Edit(line(name), 0, value, value)


OUTGROWN: Mapping[str, list[Edit]] = {
    "truck": [_typed("Ordering.rule", "fixed"), _typed("Ordering.fixed", 90.0)],
    "order size": [_typed("Area.length", 60.0), _typed("Area.width", 40.0)],
    "joint": [_typed("Area.length", 90.0)],
    "day": [_typed("CalendarRules.notice", 10.0)],
    "cost of the job": [
        _typed("Job.fiber", "micro"),
        _typed("Area.reinforcement", "bars"),
        _typed("Area.vapor_retarder", "yes"),
        _typed("Site.sealer_coats", 2.0),
        _typed("Area.old_slab", 40.0),
        _typed("Area.old_slab_thickness", 4.0),
    ],
    "task of the job": [
        _typed("Job.lines_to_cap", 2.0),
        _typed("Area.reinforcement", "bars"),
        _typed("Area.vapor_retarder", "yes"),
        _typed("Site.sealer_coats", 2.0),
        _typed("Area.old_slab", 40.0),
        _typed("Area.old_slab_thickness", 4.0),
    ],
    "row of the load list": [
        _typed("Job.fiber", "micro"),
        _typed("Job.lines_to_cap", 2.0),
        _typed("Area.reinforcement", "bars"),
        _typed("Area.vapor_retarder", "yes"),
        _typed("Permissions.right_of_way", "yes"),
        _typed("Site.sealer_coats", 2.0),
    ],
}
"""For each list an edit that asks for more rows than the workbook has."""


@pytest.fixture(scope="module")
def edited(tmp_path_factory: pytest.TempPathFactory) -> dict[str, TypedOver]:
    """The workbook of the walk, edited once for each list."""
    folder = tmp_path_factory.mktemp("lists")
    books: Books = read_books(folder / "books", WEEK, HOUSE)
    return {
        name: type_in_workbook(books, edits, folder / f"{place}.xlsx")
        for place, (name, edits) in enumerate(OUTGROWN.items())
    }


@pytest.fixture(scope="module")
def copies(
    edited: dict[str, TypedOver], libreoffice: Program, tmp_path_factory: pytest.TempPathFactory
) -> dict[Path, Path]:
    """The edited workbooks as LibreOffice recalculates them, all together."""
    return recalculate([each.file for each in edited.values()], libreoffice, tmp_path_factory.mktemp("recalculated"))


def test_every_list_whose_length_follows_from_values_has_a_check_and_an_edit_that_fills_it() -> None:
    lists = {section.level.axis.name for section in SECTIONS if section.slots_for is not None}
    assert lists == {each.of_list.axis.name for each in LISTS if each.of_list is not None} == OUTGROWN.keys()


@pytest.mark.parametrize("check", LISTS, ids=lambda check: check.label)
def test_an_edit_that_asks_for_more_rows_than_a_list_has_fails_its_check_and_says_what_to_do(
    check: Check, edited: dict[str, TypedOver], copies: dict[Path, Path]
) -> None:
    assert check.of_list is not None
    typed = edited[check.of_list.axis.name]
    assert typed.base.of(check.failed) == 0, "the workbook as it was written has no room"
    assert typed.fresh.of(check.failed) == 0, "a new run has no room"
    assert check in typed.full
    cells = {place: held.value for place, held in read_cells(copies[typed.file]).items()}
    row = next(ref[1:] for (sheet, ref), value in cells.items() if sheet == "Checks" and value == check.label)
    assert cells["Checks", f"F{row}"] == 1
    assert cells["Checks", f"G{row}"] == LIST_FULL
    front = [str(value) for (sheet, _), value in cells.items() if sheet == "Bid"]
    assert any("CHECK FAILS" in each or "CHECKS FAIL" in each for each in front)


@pytest.mark.parametrize("name", OUTGROWN)
def test_a_workbook_with_a_full_list_gives_in_every_cell_what_the_program_gives_for_such_a_list(
    name: str, edited: dict[str, TypedOver], copies: dict[Path, Path]
) -> None:
    found = disagreements(edited[name], copies[edited[name].file])
    assert not found, "\n".join(found[:8])
