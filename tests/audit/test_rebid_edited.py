"""What a person would lose if a cell that was typed over in a workbook did not count when it is bid again."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from books import Rows, given, in_lists_of, line
from calc import batch
from calc.audit.rebid import jobs_book_from
from calc.cells import column_letters
from calc.errors import Severity
from calc.intake.values import serial
from calc.layout.bid_cautions import slots_for
from calc.layout.measured_sheet import REASON
from calc.layout.workbook import addresses
from calc.model.results import JobValues
from rebids import Bid, bid_of, made, numbers, overrides, written_bid
from sheet_cells import AsStored, read_cells, type_over
from sheet_cells import same as same_value
from whole_job import ID
from witness import Place, Program, recalculate

pytestmark = pytest.mark.slow

Edits = dict[tuple[str, int], Any]
"""What is typed over, by an input's declaration and row."""

EDITS: Edits = {
    ("Area.length", 0): 18.25, ("Area.thickness", 1): 5.5, ("Area.shape", 2): "quarter circle",
    ("Area.other_width", 0): "none", ("Area.notes", 0): "along the south wall", ("Area.notes", 3): "new",
    ("CrossSection.depth", 1): 4.125, ("CrossSection.old_joint", 0): "no", ("Edge.length", 4): 7.5,
    ("Edge.bar_diameter", 7): 0.5,
    ("Job.pour_date", 0): 46150, ("Job.lines_to_cap", 0): 3, ("Job.fiber", 0): "none",
    ("Job.client", 0): "Larch Row Owners",
    ("Site.vehicle_1", 0): 1, ("Site.moisture", 0): "dry", ("Site.fiber_dose", 0): "none", ("Plant.quantity", 1): 4,
    ("MeanThickness.mean_override", 7): "none", ("MeanThickness.mean_override", 2): 4.75,
    ("FiberTotal.bags_override", 0): 41,
}  # fmt: skip
"""Values typed over on Measured: lengths that were arithmetic, defaults, choices, words, dates, names, overrides."""


WHY = ("MeanThickness.mean_override", -1)
"""The cell beside the mean thickness that says why it was overridden."""

EDITED: dict[str, Edits] = {
    "many": EDITS | {WHY: "formed deeper (LM)"},
    "an error": {("Area.length", 1): ("e", "<f>1/0</f><v>#DIV/0!</v>", ("Area.length", 1))},
    "a date": {("Area.width", 1): ("n", f"<v>{serial(date(2026, 1, 2))}</v>", ("Job.pour_date", 0))},
    "words for a date": {("Job.bid_date", 0): "soon"},
    "a vehicle that is none": {("Site.vehicle_1", 0): 9},
    "words for numbers": {("Area.length", 1): "3.2 m", ("Area.width", 1): "about five"},
    "overridden without a reason": {("MeanThickness.mean_override", 2): 4.75},
    "a column of Areas": {("Edge.length", 0): 14},
    "a column that Areas has not": {("Edge.bar_diameter", 2): 0.5},
    "the kind of a column": {("Edge.kind", 1): "building"},
}
"""What is typed over in the workbook of the whole job, and in that of the job with edges in Areas."""

EDGES = ("a column of Areas", "a column that Areas has not", "the kind of a column")
FOLLOWED = ("many", *EDGES)
"""Those that are recalculated; the others keep their stored values."""

EDGE_HEADERS = ("formed ft", "wall ft", "doweled edge ft", "doweled edges", "dowel spacing in")


@pytest.fixture(scope="module")
def short(tmp_path_factory: pytest.TempPathFactory) -> Bid:
    """A job whose edges were typed in Areas."""
    week: dict[str, Rows] = {
        "Jobs": [["job", "bid date"], ["a", "2026-04-13"]],
        "Areas": [["area", "length ft", "width ft", *EDGE_HEADERS], ["A", 12, 3, 24, 4, 3, 2, 18]],
    }
    return written_bid(tmp_path_factory.mktemp("short"), week)


@pytest.fixture(scope="module")
def edited(whole: Bid, short: Bid, tmp_path_factory: pytest.TempPathFactory, libreoffice: Program) -> dict[str, Path]:
    """The workbooks typed over, recalculated and saved by another program."""
    folder = tmp_path_factory.mktemp("edited")
    files = {name: _typed_over(short if name in EDGES else whole, name, folder) for name in EDITED}
    asked = [file for name, file in files.items() if name in FOLLOWED]
    for file, copy in recalculate(asked, Program.LIBREOFFICE, folder).items():
        copy.rename(file)
    return files


def _typed_over(bid: Bid, name: str, folder: Path) -> Path:
    where = addresses(bid.jobs[0].shape, slots_for(bid.jobs[0]))
    if WHY in EDITED[name]:
        row = re.sub(r"\D", "", where["MeanThickness.mean_override", 2][1])
        where = {**where, WHY: ("Measured", f"{column_letters(REASON + 1)}{row}")}
    changes = {where[key]: _as_stored(value, where) for key, value in EDITED[name].items()}
    file = folder / f"{name}.xlsx"
    if name != "many":  # that one is edited through openpyxl, which stores no values
        type_over(bid.workbooks[0], changes, file)
        return file
    book = openpyxl.load_workbook(bid.workbooks[0])
    for (sheet, ref), value in changes.items():
        book[sheet][ref] = value
    book.save(file)
    return file


def _as_stored(value: Any, where: Mapping[tuple[str, int], Place]) -> Any:
    """What is typed, or what a spreadsheet program stores for it: kind, content, and whose number format it has."""
    if not isinstance(value, tuple):
        return value
    kind, content, like = value
    return AsStored(kind, content, where[like][1])


def place_in(bid: Bid, key: tuple[str, int]) -> str:
    """Where an input stands in the workbook of a bid's first job."""
    return "!".join(addresses(bid.jobs[0].shape, slots_for(bid.jobs[0]))[key])


def test_a_cell_edited_since_counts_and_is_named(whole: Bid, edited: dict[str, Path], tmp_path: Path) -> None:
    result = made([edited["many"]], tmp_path / "rebid.xlsx")
    assert {note.partition(": ")[0] for note in result.notes} == {f"many.xlsx {place_in(whole, key)}" for key in EDITS}
    bid = bid_of(tmp_path, tmp_path / "rebid.xlsx", whole.company, write=False)
    assert bid.jobs[0].job.entries[given("Site.vehicle_1")].typed == "dump trailer"
    override = [(row["area"], row["value"], row["reason"], row["who"]) for row in overrides(tmp_path / "rebid.xlsx")]
    assert override == [("1", "4.75", "formed deeper", "LM"), (None, "41", "a full pallet", "RK")]
    assert_follows(in_lists_of(whole.jobs[0], bid.jobs[0].job), edited["many"])


def assert_follows(job: JobValues, path: Path) -> None:
    """Holds that a fresh bid, in lists as long as the workbook has, comes to what another program computed in it."""
    cells = read_cells(path)
    wrong = [
        f"{name}[{index}] {'!'.join(place)}: the sheet gives {cells[place].value!r}, the new bid {shown!r}"
        for (name, index), place in addresses(job.shape, slots_for(job)).items()
        if not same_value(cells[place].value, shown := _shown(job.of(line(name), index)))
    ]
    assert not wrong, "\n".join(wrong[:20])


def _shown(value: float | str) -> float | str:
    return "none" if isinstance(value, float) and math.isnan(value) else value


@pytest.mark.parametrize("name", EDGES)
def test_an_edge_that_was_typed_in_areas_keeps_its_edit(
    name: str, short: Bid, edited: dict[str, Path], tmp_path: Path
) -> None:
    made([edited[name]], tmp_path / "rebid.xlsx")
    areas = openpyxl.load_workbook(tmp_path / "rebid.xlsx")["Areas"]
    row = {str(areas.cell(1, column).value): areas.cell(2, column).value for column in range(1, areas.max_column + 1)}
    fits = name == "a column of Areas"
    assert [str(row[header]) for header in EDGE_HEADERS] == (["14", "4", "3", "2", "18"] if fits else ["None"] * 5)
    second = bid_of(tmp_path, tmp_path / "rebid.xlsx", short.company, write=False)
    wanted = {key: value for key, value in numbers(short.jobs[0]).items() if key.startswith("Edge.")}
    wanted |= {f"{key}[{index}]": value for (key, index), value in EDITED[name].items()}
    assert {key: value for key, value in numbers(second.jobs[0]).items() if key.startswith("Edge.")} == wanted
    assert_follows(in_lists_of(short.jobs[0], second.jobs[0].job), edited[name])


def test_an_edit_that_nobody_recalculated_is_not_guessed_at(whole: Bid, tmp_path: Path) -> None:
    book = openpyxl.load_workbook(whole.workbooks[0])
    book.save(tmp_path / "edited.xlsx")
    said = jobs_book_from([tmp_path / "edited.xlsx"], tmp_path / "rebid.xlsx").failures
    place = place_in(whole, ("Area.length", 0))
    assert len(said) == 1 and f"{place} is a formula whose value was never stored" in said[0]
    assert not (tmp_path / "rebid.xlsx").exists()


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("an error", "#DIV/0!"), ("a date", "is 2026-01-02. Type a valid"), ("words for a date", "soon is not a date"),
        ("a vehicle that is none", "Prices has no such row"),
    ],
)  # fmt: skip
def test_a_cell_that_holds_what_nobody_can_type_is_named(
    name: str, said: str, whole: Bid, edited: dict[str, Path], tmp_path: Path
) -> None:
    (failure,) = jobs_book_from([edited[name]], tmp_path / "rebid.xlsx").failures
    assert said in failure and place_in(whole, next(iter(EDITED[name]))) in failure
    assert not (tmp_path / "rebid.xlsx").exists()


def test_words_typed_over_a_number_are_left_to_the_bid_to_ask_about(
    whole: Bid, edited: dict[str, Path], tmp_path: Path
) -> None:
    made([edited["words for numbers"]], tmp_path / "rebid.xlsx")
    run = batch.load_run([tmp_path / "rebid.xlsx"], whole.company, None)
    assert run.not_written == [ID]
    assert [str(each.place).split()[1] for each in run.findings if each.severity == Severity.ERROR] == ["Areas!E3"]


def test_a_line_overridden_since_without_a_reason_is_asked_about(
    whole: Bid, edited: dict[str, Path], tmp_path: Path
) -> None:
    result = made([edited["overridden without a reason"]], tmp_path / "rebid.xlsx")
    place = place_in(whole, ("MeanThickness.mean_override", 2))
    assert any(f"{place}: Mean thickness was overridden without a reason." in note for note in result.notes)
    run = batch.load_run([tmp_path / "rebid.xlsx"], whole.company, None)
    assert any("has no reason" in each.found for each in run.findings if each.severity == Severity.ERROR)
