"""An edit of a written workbook that cannot be meant: refused by its box, and met by a failing check when it is pasted.

The ordinary run types each kind of mistake into half of the boxes at once, and pastes a number over a cell of every
part of the story. FLATWORK_EDITS=all tries each mistake in each box, and each cell of the story, in a file of its own.
"""

from __future__ import annotations

import os
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

import pytest
from openpyxl.utils import range_boundaries

from calc import api, batch
from calc.files import shipped
from calc.layout.bid_cautions import slots_for
from calc.layout.checks_sheet import PROVEN
from calc.layout.validations import rule_of
from calc.layout.workbook import addresses
from calc.model.results import JobValues
from calc.trade.inputs.areas import Area, Edge
from calc.trade.money.costs import CostTable
from sheet_cells import Held, read_cells, type_over
from witness import Place, Program, recalculate
from wrong_edits import KINDS, Box, boxes_of, errors_in, is_off, is_ready, rules_of, story_cells

pytestmark = pytest.mark.slow

ALL = os.environ.get("FLATWORK_EDITS") == "all"
ORDINARY = ("text", "blank", "zero", "negative", "huge", "error")
"""What the ordinary run pastes: text is a wrong word too, and a date a number like others."""

MAY_SHOW_AN_ERROR = ("huge", "date")
"""What every box of a number refuses, and what may show as an error where somebody pastes it all the same."""

PRICE = "Bid", "A5"
PASTED = 7.25


@dataclass(frozen=True)
class Tried:
    """A file with one kind of mistake in some boxes, or a number pasted over some parts of the story."""

    kind: str
    boxes: tuple[Box, ...] = ()
    cells: Mapping[str, Place] | None = None


@pytest.fixture(scope="module")
def job() -> JobValues:
    """The simplest job of the demo."""
    (values,) = batch.evaluated([api.read(shipped("sample_inputs") / "jobs.xlsx").job("26-041")])
    return values


@pytest.fixture(scope="module")
def workbook(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Its workbook."""
    folder = tmp_path_factory.mktemp("job")
    api.bid(shipped("sample_inputs") / "jobs.xlsx", folder=folder, job="26-041")
    return folder / "26-041.xlsx"


@pytest.fixture(scope="module")
def recalculated(
    job: JobValues, workbook: Path, libreoffice: Program, tmp_path_factory: pytest.TempPathFactory
) -> list[tuple[Tried, Path]]:
    """Every edited workbook as LibreOffice recalculates it, all in one call."""
    boxes, parts = boxes_of(job), story_cells(job)
    if ALL:
        tried = [Tried(kind, (box,)) for kind in KINDS for box in boxes]
        tried += [Tried("pasted", cells={part: place}) for part, places in parts.items() for place in places]
    else:
        tried = [Tried(kind, tuple(half(boxes, kind, place))) for place, kind in enumerate(ORDINARY)]
        tried += [
            Tried("pasted", cells={part: places[at % len(places)] for part, places in parts.items()}) for at in (0, 7)
        ]
        tried += [Tried(kind, (box,)) for kind, box in alone(boxes)]
    tried += [Tried("renamed"), Tried("job cost")]
    folder = tmp_path_factory.mktemp("edits")
    files = [folder / f"{number}.xlsx" for number in range(len(tried))]
    for each, file in zip(tried, files, strict=True):
        typed = {box.place: KINDS[each.kind] for box in each.boxes}
        pasted = {place: PASTED + at for at, place in enumerate((each.cells or {}).values())}
        renamed = {group_of_a_cost(job): "concreet"} if each.kind == "renamed" else {}
        estimate = {first_estimate(workbook): PASTED} if each.kind == "job cost" else {}
        type_over(workbook, typed or pasted or renamed or estimate, file)
    done = recalculate(files, libreoffice, folder)
    return [(each, done[file]) for each, file in zip(tried, files, strict=True)]


def group_of_a_cost(job: JobValues) -> Place:
    """The group of the first cost with an amount."""
    index = next(row for row in range(job.count(CostTable.amount.level)) if job.of(CostTable.amount, row) > 0)
    return addresses(job.shape, slots_for(job))[CostTable.group.id, index]


def first_estimate(workbook: Path) -> Place:
    """The estimate of the first cost on the paper Job cost."""
    cells = read_cells(workbook)
    ref = next(ref for (sheet, ref), held in cells.items() if sheet == "Job cost" and held.value == "Estimate")
    return "Job cost", f"{ref[0]}{int(ref[1:]) + 1}"


def half(boxes: Sequence[Box], kind: str, place: int) -> list[Box]:
    """Every other box; of numbers only where the mistake is an error, which a comparison of words passes on."""
    return [box for box in boxes if kind != "error" or rule_of(box.named).is_number][place % 2 :: 2]


def alone(boxes: Sequence[Box]) -> list[tuple[str, Box]]:
    """A length with a foot mark and a count with a fraction, each alone in a workbook."""
    by_name = {(box.named, box.index): box for box in boxes}
    return [
        ("text", by_name[Area.length, 1]),
        ("fraction", by_name[Edge.quantity, 1]),
    ]


def counted(cells: Mapping[Place, Held], label: str) -> float:
    """What a check of the workbook itself counts."""
    row = next(ref[1:] for (sheet, ref), held in cells.items() if sheet == "Checks" and held.value == label)
    value = cells["Checks", f"C{row}"].value
    assert isinstance(value, float), f"{label}: {value}"
    return value


def test_every_box_says_what_may_be_typed_and_takes_what_it_holds(job: JobValues, workbook: Path) -> None:
    rules, cells = rules_of(workbook), read_cells(workbook)
    for box in boxes_of(job):
        rule, held = rules[box.place], cells.get(box.place, Held(None))
        assert rule.message, box
        assert rule.takes(held.value), f"{box.place} refuses its own {held.value}: {rule}"


def test_every_mistake_that_a_person_types_is_refused_with_a_word_what_to_type(job: JobValues, workbook: Path) -> None:
    """Blanks are met by a check; text is welcome in a box of text."""
    rules = rules_of(workbook)
    for box in boxes_of(job):
        for kind, value in KINDS.items():
            if kind != "blank" and is_off(box, kind):
                assert not rules[box.place].takes(value), f"{box.place} takes {kind}"


def test_a_mistake_pasted_into_a_box_is_counted_and_keeps_the_bid_from_being_sent(
    recalculated: list[tuple[Tried, Path]],
) -> None:
    for each, file in recalculated:
        if not each.boxes:
            continue
        cells = read_cells(file)
        off = sum(is_off(box, each.kind) for box in each.boxes)
        where = f"{each.kind} in {[(box.place, box.named.label) for box in each.boxes][:9]}"
        assert counted(cells, PROVEN[0].label) == off, where
        assert not (off and is_ready(cells)), where
        if each.kind not in MAY_SHOW_AN_ERROR:
            assert errors_in(cells) == [], where


def test_what_no_number_may_be_takes_ready_away_where_it_shows_as_an_error(
    recalculated: list[tuple[Tried, Path]],
) -> None:
    for each, file in recalculated:
        cells = read_cells(file)
        assert not (cells[PRICE].is_error and is_ready(cells)), each


def test_the_check_says_which_box_holds_what_it_may_not(recalculated: list[tuple[Tried, Path]]) -> None:
    """One box is off: the check names its cell, or the cells of its row or column from the first to the last."""
    found = [(each, file) for each, file in recalculated if len(each.boxes) == 1 and is_off(each.boxes[0], each.kind)]
    assert found
    for each, file in found:
        cells, (sheet, ref) = read_cells(file), each.boxes[0].place
        row = next(at[1:] for (name, at), held in cells.items() if name == "Checks" and held.value == PROVEN[0].label)
        told = re.fullmatch(rf"See {sheet} ([A-Z]+\d+(?::[A-Z]+\d+)?)\b.*: type what it asks for", remedy(cells, row))
        assert told, f"{each.kind} in {sheet} {ref}: {remedy(cells, row)}"
        left, top, right, bottom = range_boundaries(told[1])
        column, line, *_ = range_boundaries(ref)
        assert left <= column <= right and top <= line <= bottom, f"{each.kind} in {sheet} {ref}: {told[0]}"


def remedy(cells: Mapping[Place, Held], row: str, begins: str = "See ") -> str:
    """What a row of the sheet Checks says to do."""
    return next(
        str(held.value)
        for (name, at), held in cells.items()
        if name == "Checks" and at[1:] == row and str(held.value).startswith(begins)
    )


def test_a_number_pasted_over_the_story_fails_a_check_that_names_the_place(
    recalculated: list[tuple[Tried, Path]],
) -> None:
    for each, file in recalculated:
        if each.cells is None:
            continue
        cells = read_cells(file)
        assert counted(cells, PROVEN[1].label) > 0 and not is_ready(cells), each.cells
        rows = [(held.value, ref[1:]) for (sheet, ref), held in cells.items() if sheet == "Cost workings"]
        seen = {part for part, row in rows if part in each.cells and cells["Cost workings", f"C{row}"].value != 0}
        assert seen == each.cells.keys(), "pasted there, and nothing shows it"


def test_a_cost_whose_group_was_renamed_fails_the_check_of_the_groups(recalculated: list[tuple[Tried, Path]]) -> None:
    (file,) = (file for each, file in recalculated if each.kind == "renamed")
    cells = read_cells(file)
    row = next(
        ref[1:] for (sheet, ref), held in cells.items() if sheet == "Checks" and held.value == "Cost lines = groups"
    )
    assert cells["Checks", f"F{row}"].value == 1 and not is_ready(cells)
    assert remedy(cells, row, "A group was renamed")


def test_a_number_pasted_over_an_estimate_of_job_cost_fails_the_check_of_its_sum(
    recalculated: list[tuple[Tried, Path]],
) -> None:
    (file,) = (file for each, file in recalculated if each.kind == "job cost")
    cells = read_cells(file)
    row = next(
        ref[1:] for (sheet, ref), held in cells.items() if sheet == "Checks" and held.value == "Job cost = Costs"
    )
    assert cells["Checks", f"F{row}"].value == 1 and not is_ready(cells)
