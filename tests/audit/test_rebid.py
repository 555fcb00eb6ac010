"""Bidding again from written workbooks: what was typed and later edits must not be lost."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

import openpyxl
import pytest
from hypothesis import given as drawn
from hypothesis import strategies as st

from awkward_jobs import AWKWARD
from books import COMPANY, Rows, given, line, write_book
from calc import __version__, batch
from calc.audit.rebid import Rebid, jobs_book_from
from calc.declared import Price
from calc.errors import Severity
from calc.files import shipped
from calc.intake.records import Entry, JobInput
from calc.intake.schema import ACKNOWLEDGEABLE, OVERRIDES, SITE, everything, facts_of
from calc.layout.as_typed import (
    AsTyped,
    format_cell,
    format_origins,
    format_typed,
    on_one_line,
    parse_cell,
    parse_lines,
)
from calc.layout.bid_sheet import slots_for
from calc.layout.workbook import addresses
from calc.model.results import JobValues
from calc.xlsx_read.read import read_book
from front_page_reader import number
from sheet_cells import read_cells, type_over
from sheet_cells import same as same_value
from whole_job import ID, whole_company, whole_week
from witness import Program, recalculate

STOP = next(iter(ACKNOWLEDGEABLE.values())).label
"""A stop caution that can be acknowledged: a slab that is too thin."""

Typed = dict[tuple[str, int], str]


@dataclass
class Bid:
    """The workbooks of a bid, with their jobs; the company book is in the same folder as the jobs book."""

    folder: Path
    run: batch.Run
    jobs: list[JobValues]

    @property
    def workbooks(self) -> list[Path]:
        """The workbooks of the jobs, in their order."""
        return [path for job, path, _ in self.run.written if job]

    @property
    def company(self) -> Path:
        """Its company book."""
        return self.folder / "company.xlsx"


def bid_of(folder: Path, week: Path, company: Path | None = None, write: bool = True) -> Bid:
    """Bids a jobs book and asserts that every job was written; without ``write`` it only evaluates the jobs."""
    run = batch.load_run([week], company, None)
    if write:
        batch.bid(run, folder / "outputs")
    assert not run.not_written and not run.failures, [str(each) for each in run.findings]
    return Bid(folder, run, list(batch.evaluated(batch.ready_jobs(run))))


def written_bid(folder: Path, week: Mapping[str, Rows], company: Mapping[str, Rows] = COMPANY) -> Bid:
    """The bid of a jobs book and a company book of these tables."""
    write_book(folder / "company.xlsx", company)
    return bid_of(folder, write_book(folder / "input.xlsx", week))


def rebid(workbooks: Sequence[Path], file: Path) -> Rebid:
    """The jobs book of written workbooks, without failures."""
    result = jobs_book_from(workbooks, file)
    assert result.written and not result.failures, result.failures
    return result


def bid_again(bid: Bid, folder: Path, write: bool = False) -> Bid:
    """The bid of the jobs book of a bid's workbooks, with the same company book."""
    folder.mkdir()
    assert rebid(bid.workbooks, folder / "rebid.xlsx").notes == []
    return bid_of(folder, folder / "rebid.xlsx", bid.company, write)


def numbers(job: JobValues) -> dict[str, float | str]:
    """Every number and text of a job by its declaration and row."""
    found = {f"{each.id}[{row}]": job.of(each, row) for each in everything() for row in range(job.count(each.level))}
    return {name: "none" if isinstance(value, float) and math.isnan(value) else value for name, value in found.items()}


def typed(job: JobInput) -> Typed:
    """What was typed for every input of the job itself, by declaration and row."""
    company = {id(entry) for entry in (*job.company.facts.values(), *job.company.site.values())}
    of_job = {(given.id, 0): entry for given, entry in job.entries.items() if id(entry) not in company}
    of_rows = {
        (given.id, at): entry
        for level, rows in job.rows.items()
        if rows is not job.company.rows.get(level)
        for at, row in enumerate(rows)
        for given, entry in row.entries.items()
    }
    override = {(named.id, at): entry for (named, at), entry in job.overrides.items()}
    return {key: entry.typed for key, entry in (of_job | of_rows | override).items() if entry.typed}


def overrides(path: Path) -> list[dict[str, object]]:
    """The rows of Overrides of a book, by header."""
    rows = list(openpyxl.load_workbook(path)[OVERRIDES].iter_rows(values_only=True))
    return [dict(zip(map(str, rows[0]), row, strict=True)) for row in rows[1:] if row[0] is not None]


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Bid:
    """The demo jobs."""
    folder = tmp_path_factory.mktemp("demo")
    (folder / "company.xlsx").write_bytes((shipped("sample_inputs") / "company.xlsx").read_bytes())
    return bid_of(folder, shipped("sample_inputs") / "jobs.xlsx")


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> Bid:
    """The job that fills every column."""
    return written_bid(tmp_path_factory.mktemp("whole"), whole_week(), whole_company())


@pytest.fixture(scope="module")
def awkward(tmp_path_factory: pytest.TempPathFactory) -> Bid:
    """Jobs and areas whose ids match wrongly as text, and a job with eight areas."""
    return written_bid(tmp_path_factory.mktemp("awkward"), AWKWARD)


# --- without edits -------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("which", ["demo", "whole"])
def test_a_rebid_at_the_same_prices_gives_the_same_numbers(
    which: str, tmp_path: Path, request: pytest.FixtureRequest
) -> None:
    bid: Bid = request.getfixturevalue(which)
    second = bid_again(bid, tmp_path / "second")
    assert [job.job.id for job in second.jobs] == [job.job.id for job in bid.jobs]
    for first, other in zip(bid.jobs, second.jobs, strict=True):
        assert numbers(other) == numbers(first)
        assert typed(other.job) == typed(first.job)
        assert [row.word for rows in other.job.rows.values() for row in rows] == [
            row.word for rows in first.job.rows.values() for row in rows
        ]


def test_a_rebid_of_a_rebid_is_the_same_book(whole: Bid, tmp_path: Path) -> None:
    second = bid_again(whole, tmp_path / "second", write=True)
    rebid(second.workbooks, tmp_path / "third.xlsx")
    assert (tmp_path / "third.xlsx").read_bytes() == (tmp_path / "second" / "rebid.xlsx").read_bytes()


ODD_WORDS = [
    "default",
    "none",
    "Areas!B2: x",
    "a; b",
    "two\nlines",
    "=1+1",
    " width ft: 9 ",
    "<5",
    "1E3",
    "0012",
    "½",
    "<r>x</r>",
    "_x0041_",
]


def test_texts_are_copied_to_the_character(tmp_path: Path) -> None:
    areas = [f"A{at}" for at in range(len(ODD_WORDS))]
    week: dict[str, Rows] = {
        "Jobs": [["job", "bid date", "client", "notes"], ["1E3", "2026-04-13", ODD_WORDS[4], ODD_WORDS[2]]],
        "Areas": [
            ["area", "length ft", "width ft", "notes"],
            *([area, 12, 3, word] for area, word in zip(areas, ODD_WORDS, strict=True)),
        ],
        "Footings": [
            ["area", "length ft", "width ft", "top below in", "notes"],
            *([area, 2, 1, 3, word] for area, word in zip(areas, ODD_WORDS, strict=True)),
        ],
        "Plants": [["what", "width ft", "notes"], *([word, 1, word] for word in ODD_WORDS)],
        "Site conditions": [["fact", "value", "notes"], ["order reason", ODD_WORDS[6], "two\nlines"]],
    }
    bid = written_bid(tmp_path, week)
    second = bid_again(bid, tmp_path / "second")
    assert typed(second.jobs[0].job) == typed(bid.jobs[0].job)
    reason = next(each for each in facts_of(SITE) if each.label == "Order reason")
    assert second.jobs[0].job.entries[reason].notes == "two\nlines"


def test_a_number_means_the_same_whatever_unit_its_header_had(tmp_path: Path) -> None:
    week: dict[str, Rows] = {
        "Jobs": [["job", "bid date"], ["metric", "2026-04-13"]],
        "Areas": [["area", "length (m)", "width m", "thickness cm"], ["A", 3.5, "1 1/4", "4 in"]],
        "Site conditions": [["fact", "value", "unit"], ["Fiber dose", 0.9, "kg/m3"]],
    }
    bid = written_bid(tmp_path, week)
    second = bid_again(bid, tmp_path / "second")
    assert numbers(second.jobs[0]) == numbers(bid.jobs[0])
    lengths = [typed(bid.jobs[0].job)[f"Area.{name}", 0] for name in ("length", "width", "thickness")]
    assert lengths == ["3.5 m", "1 1/4 m", "4 in"]


def test_a_bid_date_from_the_command_is_in_the_jobs_book(tmp_path: Path) -> None:
    week = write_book(tmp_path / "w.xlsx", {"Jobs": [["job"], ["a"]], "Areas": [["length ft", "width ft"], [9, 3]]})
    run = batch.load_run([week], None, 46125.0)
    batch.bid(run, tmp_path / "outputs")
    rebid([path for job, path, _ in run.written if job], tmp_path / "rebid.xlsx")
    read = batch.load_run([tmp_path / "rebid.xlsx"], None, None)
    assert [job.entries[given("Job.bid_date")].value for job in batch.ready_jobs(read)] == [46125.0]


def test_an_overridden_line_and_an_acknowledged_stop_keep_their_reasons(tmp_path: Path) -> None:
    reasons: list[Rows] = [
        ["a", "", STOP, None, "thin (for now)", "R (K)", "see\nphotos"],
        ["a", "B", "Mean thickness", "3 1/2", "probed; twice", "RK", ""],
        ["a", "C", "Mean thickness", 5, "probed", "LM", ""],
        ["a", "", "Concrete to order", 4.5, "a planter\ntakes the rest", "RK", "noted beside it"],
    ]
    headers = ["job", "area", "line", "value", "reason", "who", "notes"]
    week: dict[str, Rows] = {
        "Jobs": [["job", "bid date"], ["a", "2026-04-13"]],
        "Areas": [["area", "length ft", "width ft", "thickness in"], ["A", 9, 3, 1], ["B", 9, 3, 4], ["C", 9, 3, 4]],
        OVERRIDES: [headers, *reasons],
    }
    bid = written_bid(tmp_path, week)
    second = bid_again(bid, tmp_path / "second")
    assert numbers(second.jobs[0]) == numbers(bid.jobs[0])
    found = {
        (row["area"], row["line"]): tuple(row[each] for each in headers[3:])
        for row in overrides(tmp_path / "second" / "rebid.xlsx")
    }
    assert found == {
        (row[1] or None, row[2]): (None if row[3] is None else str(row[3]), *(each or None for each in row[4:]))
        for row in reasons
    }  # fmt: skip


def test_facts_of_the_company_book_are_not_copied(tmp_path: Path) -> None:
    company = {**COMPANY, SITE: [["job", "fact", "value"], ["all", "Moisture", "wet"], ["all", "Bond coats", 2]]}
    week: dict[str, Rows] = {
        "Jobs": [["job", "bid date", "joints are"], ["a", "2026-04-13", "sawn"]],
        "Areas": [["area", "length ft", "width ft"], ["A", 9, 3]],
        SITE: [["fact", "value"], ["Bond coats", 1]],
    }
    bid = written_bid(tmp_path, week, company)
    rebid(bid.workbooks, tmp_path / "rebid.xlsx")
    book = read_book(tmp_path / "rebid.xlsx")
    facts = [[cell.value for cell in row.values()][1:3] for _, row in book.sheets[SITE].rows[1:]]
    assert sorted(facts) == [["bond coats coat", "1"], ["joints are", "sawn"]]
    assert not {"Company", "Prices", "Factors", "Vehicles"} & set(book.sheets)


def test_current_prices_are_used_and_quantities_stay(whole: Bid, tmp_path: Path) -> None:
    rebid(whole.workbooks, tmp_path / "rebid.xlsx")
    dearer = whole_company()
    headers, *rows = dearer["Prices"]
    price = list(headers).index("price")
    dearer["Prices"] = [headers, *([*row[:price], 3 * number(row[price]), *row[price + 1 :]] for row in rows)]
    dear = write_book(tmp_path / "company.xlsx", dearer)
    second = bid_of(tmp_path, tmp_path / "rebid.xlsx", dear, write=False)
    before, after = numbers(whole.jobs[0]), numbers(second.jobs[0])
    measured = [name for name in before if name.startswith(("Measured.", "Slab.", "Depth.", "Concrete.", "Spoil."))]
    assert len(measured) > 100 and all(after[name] == before[name] for name in measured)
    paid = {each.id for each in everything() if isinstance(each, Price)}
    changed = {name.partition("[")[0] for name in before if before[name] != after[name]}
    assert paid <= changed and changed - paid


def test_workbooks_of_several_runs_go_into_one_jobs_book(demo: Bid, whole: Bid, awkward: Bid, tmp_path: Path) -> None:
    result = rebid([*whole.workbooks, *demo.workbooks[:2], *awkward.workbooks[:2]], tmp_path / "rebid.xlsx")
    assert result.jobs == [ID, *(job.job.id for job in demo.jobs[:2]), "<5", "1E3"]
    run = batch.load_run([tmp_path / "rebid.xlsx"], demo.company, None)
    assert [job.id for job in run.jobs] == result.jobs


# --- later edits ---------------------------------------------------------------------------------------------------

Edits = dict[tuple[str, int], Any]
"""What is typed over, by an input's declaration and row."""

EDITS: Edits = {
    ("Area.length", 0): 18.25, ("Area.thickness", 1): 5.5, ("Area.shape", 2): "quarter circle",
    ("Area.other_width", 0): "none", ("Area.notes", 0): "along the south wall", ("Area.notes", 3): "new",
    ("Station.depth", 1): 4.125, ("Station.old_joint", 0): "no", ("Edge.length", 4): 7.5, ("Edge.bar", 7): 0.5,
    ("Job.pour_date", 0): 46150, ("Job.caps", 0): 3, ("Job.fiber", 0): "none", ("Job.client", 0): "Larch Row Owners",
    ("Site.vehicle", 0): 1, ("Site.moisture", 0): "dry", ("Site.fiber_dose", 0): "none", ("Plant.count", 1): 4,
    ("MeanThickness.mean_override", 7): "none", ("MeanThickness.mean_override", 2): 4.75,
    ("FiberTotal.bags_override", 0): 41,
}  # fmt: skip
"""Edits on Measured: lengths that were arithmetic, defaults, choices, texts, dates, names, overridden lines."""


WHY = ("MeanThickness.mean_override", -1)
"""The cell with the reason of the overridden mean thickness."""

EDITED: dict[str, Edits] = {
    "many": EDITS | {WHY: "probed (RK)\nformed deeper (LM)"},
    "an error": {("Area.length", 1): "=1/0"},
    "a date": {("Area.width", 1): date(2026, 1, 2)},
    "text for a date": {("Job.bid_date", 0): "soon"},
    "a vehicle that does not exist": {("Site.vehicle", 0): 9},
    "text for numbers": {("Area.length", 1): "3.2 m", ("Area.width", 1): "about five"},
    "overridden without a reason": {("MeanThickness.mean_override", 2): 4.75},
    "a column of Areas": {("Edge.length", 0): 14},
    "a column that Areas does not have": {("Edge.bar", 2): 0.5},
    "the kind of a column": {("Edge.kind", 1): "building"},
}
"""The edits in the workbook of the whole job, or in that of the job with edges in Areas."""

EDGES = ("a column of Areas", "a column that Areas does not have", "the kind of a column")
BY_OPENPYXL = ("many", "an error", "a date")
"""Those that are edited through openpyxl, which stores no values."""

RECALCULATED = (*BY_OPENPYXL, *EDGES)
"""The edits that are recalculated; the other workbooks keep their stored values."""

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
    """The edited workbooks, recalculated and saved by another program."""
    folder = tmp_path_factory.mktemp("edited")
    files = {name: _edit_workbook(short if name in EDGES else whole, name, folder) for name in EDITED}
    files_to_recalculate = [file for name, file in files.items() if name in RECALCULATED]
    for file, copy in recalculate(files_to_recalculate, Program.LIBREOFFICE, folder).items():
        copy.rename(file)
    return files


def _edit_workbook(bid: Bid, name: str, folder: Path) -> Path:
    where = addresses(bid.jobs[0].shape, slots_for(bid.jobs[0]))
    row = re.sub(r"\D", "", where["MeanThickness.mean_override", 0][1])
    where = {**where, WHY: ("Measured", f"F{row}")}
    changes = {where[key]: value for key, value in EDITED[name].items()}
    file = folder / f"{name}.xlsx"
    if name not in BY_OPENPYXL:
        type_over(bid.workbooks[0], changes, file)
        return file
    book = openpyxl.load_workbook(bid.workbooks[0])
    for (sheet, ref), value in changes.items():
        book[sheet][ref] = value
    book.save(file)
    return file


def place_in(bid: Bid, key: tuple[str, int]) -> str:
    """The address of an input in the workbook of a bid's first job."""
    return "!".join(addresses(bid.jobs[0].shape, slots_for(bid.jobs[0]))[key])


def test_a_later_edit_is_used_and_reported(whole: Bid, edited: dict[str, Path], tmp_path: Path) -> None:
    result = rebid([edited["many"]], tmp_path / "rebid.xlsx")
    assert {note.partition(": ")[0] for note in result.notes} == {f"many.xlsx {place_in(whole, key)}" for key in EDITS}
    bid = bid_of(tmp_path, tmp_path / "rebid.xlsx", whole.company, write=False)
    assert bid.jobs[0].job.entries[given("Site.vehicle")].typed == "dump trailer"
    override = [(row["area"], row["value"], row["reason"], row["who"]) for row in overrides(tmp_path / "rebid.xlsx")]
    assert override == [("1", "4.75", "formed deeper", "LM"), (None, "41", "a full pallet", "RK")]
    assert_follows(bid.jobs[0], edited["many"])


def assert_follows(job: JobValues, path: Path) -> None:
    """Asserts that a new bid has in every line what another program computed in the edited workbook."""
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
def test_an_edge_that_was_typed_in_areas_keeps_its_later_edit(
    name: str, short: Bid, edited: dict[str, Path], tmp_path: Path
) -> None:
    rebid([edited[name]], tmp_path / "rebid.xlsx")
    areas = openpyxl.load_workbook(tmp_path / "rebid.xlsx")["Areas"]
    row = {str(areas.cell(1, column).value): areas.cell(2, column).value for column in range(1, areas.max_column + 1)}
    fits = name == "a column of Areas"
    assert [str(row[header]) for header in EDGE_HEADERS] == (["14", "4", "3", "2", "18"] if fits else ["None"] * 5)
    second = bid_of(tmp_path, tmp_path / "rebid.xlsx", short.company, write=False)
    wanted = {key: value for key, value in numbers(short.jobs[0]).items() if key.startswith("Edge.")}
    wanted |= {f"{key}[{index}]": value for (key, index), value in EDITED[name].items()}
    assert {key: value for key, value in numbers(second.jobs[0]).items() if key.startswith("Edge.")} == wanted
    assert_follows(second.jobs[0], edited[name])


def test_an_edit_that_was_not_recalculated_is_refused(whole: Bid, tmp_path: Path) -> None:
    book = openpyxl.load_workbook(whole.workbooks[0])
    book.save(tmp_path / "edited.xlsx")
    failures = jobs_book_from([tmp_path / "edited.xlsx"], tmp_path / "rebid.xlsx").failures
    place = place_in(whole, ("Area.length", 0))
    assert len(failures) == 1 and f"{place} is a formula whose value was never stored" in failures[0]
    assert not (tmp_path / "rebid.xlsx").exists()


@pytest.mark.parametrize(
    ("name", "message"),
    [
        ("an error", "#DIV/0!"), ("a date", "is 2026-01-02. Type"), ("text for a date", "soon is not a date"),
        ("a vehicle that does not exist", "Prices has no such row"),
    ],
)  # fmt: skip
def test_a_cell_with_a_value_that_cannot_be_typed_is_reported(
    name: str, message: str, whole: Bid, edited: dict[str, Path], tmp_path: Path
) -> None:
    (failure,) = jobs_book_from([edited[name]], tmp_path / "rebid.xlsx").failures
    assert message in failure and place_in(whole, next(iter(EDITED[name]))) in failure
    assert not (tmp_path / "rebid.xlsx").exists()


def test_text_typed_over_a_number_is_an_error_of_the_rebid(whole: Bid, edited: dict[str, Path], tmp_path: Path) -> None:
    rebid([edited["text for numbers"]], tmp_path / "rebid.xlsx")
    run = batch.load_run([tmp_path / "rebid.xlsx"], whole.company, None)
    assert run.not_written == [ID]
    assert [str(each.place).split()[1] for each in run.findings if each.severity == Severity.ERROR] == ["Areas!E3"]


def test_a_line_overridden_later_without_a_reason_is_reported(
    whole: Bid, edited: dict[str, Path], tmp_path: Path
) -> None:
    result = rebid([edited["overridden without a reason"]], tmp_path / "rebid.xlsx")
    place = place_in(whole, ("MeanThickness.mean_override", 2))
    assert any(f"{place}: Mean thickness was overridden without a reason" in note for note in result.notes)
    run = batch.load_run([tmp_path / "rebid.xlsx"], whole.company, None)
    assert any("has no reason" in each.found for each in run.findings if each.severity == Severity.ERROR)


# --- refused --------------------------------------------------------------------------------------------


def test_a_file_that_is_no_job_workbook_is_refused_in_one_line(demo: Bid, tmp_path: Path) -> None:
    other = write_book(tmp_path / "other.xlsx", {"Sheet1": [["a"]]})
    (tmp_path / "text.xlsx").write_text("a,b")
    week = next(path for job, path, _ in demo.run.written if not job)
    files = [
        other,
        tmp_path / "text.xlsx",
        tmp_path / "missing.xlsx",
        demo.company,
        shipped("sample_inputs") / "jobs.xlsx",
        week,
    ]
    result = jobs_book_from([*files, demo.workbooks[0]], tmp_path / "rebid.xlsx")
    messages = [
        "not a job workbook",
        "a text file",
        "there is no",
        "not a job workbook",
        "flatwork bid",
        "of a week",
    ]
    assert len(result.failures) == len(files) and result.code == 3
    for path, failure, message in zip(files, result.failures, messages, strict=True):
        assert failure.startswith(path.name) and message in failure and failure.isprintable()
    assert result.jobs == [demo.jobs[0].job.id] and result.written


def test_a_workbook_of_another_version_is_refused_in_one_line(whole: Bid, tmp_path: Path) -> None:
    book = openpyxl.load_workbook(whole.workbooks[0])
    label = next(cell for (cell,) in book["Measured"]["A1:A200"] if cell.value == "Thickness")
    label.value = "Depth of slab"
    book.save(tmp_path / "old.xlsx")
    (failure,) = jobs_book_from([tmp_path / "old.xlsx"], tmp_path / "rebid.xlsx").failures
    assert failure.startswith(f'old.xlsx: Measured!{label.coordinate} is "Depth of slab" instead of "Thickness"')
    assert __version__ in failure and failure.isprintable()


def test_a_job_that_is_in_two_workbooks_is_reported(demo: Bid, tmp_path: Path) -> None:
    copy = tmp_path / "copy.xlsx"
    copy.write_bytes(demo.workbooks[0].read_bytes())
    result = jobs_book_from([demo.workbooks[0], copy], tmp_path / "rebid.xlsx")
    assert result.jobs == [demo.jobs[0].job.id]
    assert len(result.failures) == 1 and "copy.xlsx: the job" in result.failures[0]


def test_an_existing_file_is_not_overwritten(demo: Bid, tmp_path: Path) -> None:
    (tmp_path / "rebid.xlsx").write_bytes(b"somebody's own")
    result = jobs_book_from(demo.workbooks[:1], tmp_path / "rebid.xlsx")
    assert not result.written and "the file exists already" in result.failures[0]
    assert (tmp_path / "rebid.xlsx").read_bytes() == b"somebody's own"
    lost = jobs_book_from(demo.workbooks[:1], tmp_path / "no folder" / "rebid.xlsx")
    assert not lost.written and "cannot be written" in lost.failures[0]


LINES = st.text(st.characters(exclude_categories=["Cs"]), max_size=20)


@drawn(
    st.lists(
        st.tuples(st.sampled_from(["at ft", "width ft", "notes"]), LINES), max_size=3, unique_by=lambda each: each[0]
    )
)
def test_what_was_typed_in_a_row_is_read_back(typed_of: list[tuple[str, str]]) -> None:
    entries = [(name, Entry(0.0, "", text, f"Stations!C{at}")) for at, (name, text) in enumerate(typed_of, start=2)]
    wanted = {name: AsTyped(on_one_line(entry.typed), entry.origin) for name, entry in entries if entry.typed}
    assert parse_lines(format_typed(entries), format_origins(entries)) == wanted
    for _, entry in entries:
        assert parse_cell(format_cell(entry)) == (AsTyped(entry.typed, entry.origin) if entry.typed else None)
