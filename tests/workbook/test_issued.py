"""What a person would lose if a box that was changed since issue were not counted, or one that was not were."""

from __future__ import annotations

from pathlib import Path

import pytest

from books import COMPANY, Rows, only_job, written
from calc.cells import column_letters
from calc.layout.addresses import CellMap
from calc.layout.bid_cautions import slots_for
from calc.layout.grid import STORY
from calc.layout.issued import aside, changed_boxes, price_at_issue, price_value
from calc.layout.workbook import addresses, measured_page
from calc.model.results import JobValues
from sheet_cells import AsStored, read_cells, type_over
from witness import Place, Program, recalculate

WEEK: dict[str, Rows] = {
    "Jobs": [["job", "bid date", "client"], ["a", "2026-04-13", "Larch Row Owners"]],
    "Areas": [["area", "length ft", "width ft"], ["A", "12' 7 1/3\"", "3.2 m"], ["B", 12, 3]],
}

CHANGES: dict[str, dict[tuple[str, int], float | str]] = {
    "nothing": {},
    "a number": {("Area.length", 0): 14.0},
    "what was arithmetic, typed as its number to some digits": {("Area.width", 0): 10.4987},
    "a text in a box for a number": {("Area.length", 1): "12"},
    "a number where there was none": {("Area.other_width", 1): 3.0},
    "none where there was a number": {("Area.thickness", 0): "none"},
    "zero to blank": {("Area.base", 0): ""},
    "a word": {("Area.shape", 1): "circle"},
    "a name": {("Job.client", 0): "Larch Row"},
    "two boxes": {("Area.length", 0): 14.0, ("Area.length", 1): 15.0},
}


@pytest.fixture(scope="module")
def job(tmp_path_factory: pytest.TempPathFactory) -> JobValues:
    """A job with lengths that no program can hold in full."""
    return only_job(tmp_path_factory.mktemp("issued"), WEEK, COMPANY)


def _place(job: JobValues, price: bool = False) -> Place:
    places = CellMap()
    measured_page(places, job.shape)
    sheet, _, ref = (price_at_issue if price else changed_boxes)(places, "Bid").replace("$", "").partition("!")
    return sheet, ref


@pytest.fixture(scope="module")
def counted(job: JobValues, tmp_path_factory: pytest.TempPathFactory, gnumeric: Program) -> dict[str, float]:
    """How many boxes are counted as changed after each change, and after an error was typed.

    The program that works out the fewest functions for each cell of a range is asked; the other is with every edit of
    the tests of liveness.
    """
    folder = tmp_path_factory.mktemp("counted")
    original = written(job, folder / "a.xlsx")
    where = addresses(job.shape, slots_for(job))
    files = {name: folder / f"{at}.xlsx" for at, name in enumerate(CHANGES)}
    for name, file in files.items():
        type_over(original, {where[key]: value for key, value in CHANGES[name].items()}, file)
    files["an error"] = folder / "error.xlsx"
    length = where["Area.length", 0]
    type_over(original, {length: AsStored("e", "<v>#N/A</v>", length[1])}, files["an error"])
    done = recalculate(list(files.values()), gnumeric, folder)
    return {name: float(str(read_cells(done[file])[_place(job)].value)) for name, file in files.items()}


def test_every_changed_box_is_counted_and_no_other(counted: dict[str, float]) -> None:
    wanted = {name: float(len(changes)) for name, changes in CHANGES.items()}
    assert {name: counted[name] for name in CHANGES} == wanted


def test_an_error_in_a_box_is_a_change_and_no_error_of_the_count(counted: dict[str, float]) -> None:
    assert counted["an error"] >= 1


def test_the_price_at_issue_and_what_boxes_held_are_kept(job: JobValues, tmp_path: Path) -> None:
    cells = read_cells(written(job, tmp_path / "a.xlsx"))
    assert cells[_place(job, price=True)].value == price_value(job)
    sheet, ref = addresses(job.shape, slots_for(job))["Area.length", 1]
    row = int("".join(filter(str.isdigit, ref)))
    col = next(at for at in range(50) if f"{column_letters(at + 1)}{row}" == ref) + aside(STORY)
    assert cells[sheet, f"{column_letters(col + 1)}{row}"].value == 12
