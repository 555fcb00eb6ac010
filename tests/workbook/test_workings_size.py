"""The workings of a small job: how many pages a reader turns, and whether a text runs into the one behind it."""

from __future__ import annotations

import pytest

from calc.batch import evaluated, load_run, ready_jobs
from calc.files import shipped
from calc.layout.bid_cautions import SLOTS
from calc.layout.grid import PAGE_ROOM, WORKINGS
from calc.layout.page import FullSizePage
from calc.layout.text_flow import TextFlow
from calc.layout.text_width import text_width, wrapped
from calc.layout.workbook import WORKINGS as SHEETS
from calc.layout.workbook import Cell, SheetPlan, plan_of

MOST_PAGES = {"Area workings": 15, "Haul workings": 15, "Order workings": 23, "Cost workings": 30}
"""The pages of the workings of 26-041."""

MOST_CELLS = 20_100
"""The cells of them that hold something."""


@pytest.fixture(scope="module")
def workings() -> dict[str, SheetPlan]:
    """The sheets of workings of the simplest job of the demo."""
    jobs = evaluated(ready_jobs(load_run([shipped("sample_inputs") / "jobs.xlsx"], None, None)))
    shape = next(job.shape for job in jobs if job.job.id == "26-041")
    return {plan.page.name: plan for plan in plan_of(shape, SLOTS) if plan.page.name in SHEETS}


def pages_of(page: FullSizePage) -> int:
    """The printed pages: one ends where a break is set, or where the next row has no room."""
    pages, used = 1, 0.0
    for row in range(1, page.row):
        height = page.heights[row]
        if row in page.breaks or used + height > PAGE_ROOM:
            pages, used = pages + 1, 0.0
        used += height
    return pages


def test_nobody_turns_more_pages_to_follow_a_number(workings: dict[str, SheetPlan]) -> None:
    pages = {name: pages_of(plan.page) for name, plan in workings.items() if isinstance(plan.page, FullSizePage)}
    assert pages.keys() == MOST_PAGES.keys()
    assert all(pages[name] <= most for name, most in MOST_PAGES.items()), pages


def is_held(cell: Cell) -> bool:
    """Whether a cell holds something; a fixed one may be there for its border alone."""
    return not cell.fixed or cell.shows(None) != ""


def test_the_workings_hold_no_more_cells(workings: dict[str, SheetPlan]) -> None:
    held = sum(is_held(cell) for plan in workings.values() for cell in plan.cells)
    assert held <= MOST_CELLS, held


def test_a_text_of_the_workings_is_not_written_over_by_the_one_behind_it(workings: dict[str, SheetPlan]) -> None:
    for name, plan in workings.items():
        taken: dict[int, list[int]] = {}
        for cell in plan.cells:
            if is_held(cell):
                taken.setdefault(cell.row, []).append(cell.col)
        for cell in plan.cells:
            if cell.role in ("quiet", "origin") and cell.fixed and isinstance(text := cell.shows(None), str):
                behind = min((col for col in taken.get(cell.row, ()) if col > cell.col), default=WORKINGS.last + 1)
                room = WORKINGS.room(cell.col, behind - 1) + 6.0
                assert text_width(text) <= room, f"{name} row {cell.row + 1}: {text}"


@pytest.mark.parametrize("words", ["short", "one two three four five six seven " * 12])
def test_a_text_takes_no_more_rows_behind_another_than_below_it(words: str) -> None:
    flow = TextFlow(WORKINGS, 4, 2, WORKINGS.last)
    flow.put(lambda first, room: wrapped("Net area × Mean thickness", room, first))
    placed = flow.put(lambda first, room: wrapped(words, room, first))
    fresh = wrapped(words, WORKINGS.room(2))
    assert placed[-1].row + 1 <= len(fresh) + 1
    assert " ".join(each.text for each in placed) == words.strip()
    assert all(text_width(each.text) <= WORKINGS.room(each.col) for each in placed)
