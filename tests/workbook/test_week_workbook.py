"""The workbook of the week: what it says of each job and adds up, and whether it prints, follows and stays whole."""

from __future__ import annotations

import re
import shutil
import subprocess
import zlib
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any
from zipfile import ZipFile

import openpyxl
import pytest

from books import Rows, write_book
from calc import batch
from calc.batch.run import Run
from calc.files import shipped
from calc.layout.arial import DIGIT, width_of
from calc.layout.week_grid import ROOM_ACROSS
from calc.layout.week_names import SHEETS
from sheet_cells import read_cells, sheet_parts, type_over, unlike
from witness import Program, Recalculations, values

JOBS: Rows = [
    ["job", "client", "bid date", "pour date", "fiber"],
    ["27-031", "Plover Court Owners", "2027-03-01", "2027-03-10", "micro"],
    ["27-032", "M. Sandoval", "2027-03-01", "2027-03-10", "micro"],
    ["27-033", "Alder Fork Freight", "2027-03-01", "2027-03-13", None],
    ["27-035", "Kestrel Schools", "2027-03-01", "2027-03-12", None],
    ["27-036", "Dr. O. Brandvold", "2027-03-01", "2027-03-12", None],
    ["27-037", '=SUM(1) & the "Pine Ferry" Marina of the North Shore', "2027-03-01", "2027-03-11", None],
    ["27-038", "Town of Alder Fork", "2027-03-01", None, None],
]
"""Two that share a truck and a machine, a large one, one with a stop, one with an error, and one without a date."""

AREAS: Rows = [
    ["job", "area", "length ft", "width ft", "thickness in", "base in", "slopes toward a building"],
    *(
        [job, "A1", 30, 3, 4, 4, "yes" if job == "27-035" else None]
        for job in ("27-031", "27-032", "27-035", "27-037", "27-038")
    ),
    ["27-033", "A1", 60, 24, 6, 4, None],
    ["27-036", "A1", "3' 6 1", 5, 4, 4, None],
]
SITE: Rows = [["job", "fact", "value"], ["27-031", "First truck at", 8]]

PAPERS = {"letter": (792.0, 612.0), "A4": (842.0, 595.0)}
"""Points of a sheet that lies across."""


@dataclass(frozen=True)
class Written:
    """A run, its folder, and the workbook of the week."""

    run: Run
    folder: Path

    @property
    def week(self) -> Path:
        """The workbook of the week."""
        return self.folder / "week.xlsx"


def bid_into(folder: Path, out: str, paper: str = "letter") -> Written:
    """The jobs bid with the demo's company book, on a paper."""
    folder.mkdir(exist_ok=True)
    shown = openpyxl.load_workbook(shipped("sample_inputs") / "company.xlsx", data_only=True)
    tables = {
        sheet.title: [[_typed(each) for each in row] for row in sheet.iter_rows(values_only=True)]
        for sheet in shown.worksheets
    }
    next(row for row in tables["Company"] if row[0] == "paper")[1] = paper
    company = write_book(folder / f"company {paper}.xlsx", tables)
    jobs = write_book(folder / "jobs.xlsx", {"Jobs": JOBS, "Areas": AREAS, "Site conditions": SITE})
    run = batch.load_run([jobs], company, None)
    batch.bid(run, folder / out, workers=1)
    assert not run.failures
    return Written(run, folder / out)


def _typed(value: object) -> object:
    """A value as a person types it."""
    return f"{value:%Y-%m-%d}" if isinstance(value, date) else value


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> Written:
    """The week on letter paper."""
    return bid_into(tmp_path_factory.mktemp("week"), "out")


def table(week: Path, sheet: str) -> dict[int, dict[str, object]]:
    """The values of a sheet by row and letter of the column."""
    rows: dict[int, dict[str, object]] = {}
    for (name, ref), held in read_cells(week).items():
        if name == sheet:
            letters, number = re.fullmatch(r"([A-Z]+)(\d+)", ref).groups()  # type: ignore[union-attr]
            rows.setdefault(int(number), {})[letters] = held.value
    return rows


def row_with(week: Path, sheet: str, words: str, col: str = "B") -> tuple[int, dict[str, object]]:
    """The first row whose cell in a column begins with some words."""
    return next((n, row) for n, row in sorted(table(week, sheet).items()) if str(row.get(col, "")).startswith(words))


def test_a_job_that_was_not_written_is_a_row_with_its_first_reason_and_in_no_total(written: Written) -> None:
    number, row = row_with(written.week, "Week", "27-036")
    assert (row["C"], row["K"]) == ("not written", "\u2013")
    assert str(table(written.week, "Week")[number + 1]["C"]).startswith("jobs.xlsx Areas!C8: Length: ")
    assert table(written.week, "Week")[3]["G"] == "1 NOT READY, 1 not written"
    prices = [row["K"] for row in table(written.week, "Week").values() if str(row.get("B", "")).startswith("27-")]
    _, total = row_with(written.week, "Week", "All jobs with a price")
    assert total["K"] == sum(float(price) for price in prices if isinstance(price, float))


def test_what_is_not_ready_has_its_reason_and_is_not_among_those_that_are(written: Written) -> None:
    number, row = row_with(written.week, "Week", "27-035")
    assert row["C"] == "NOT READY"
    assert str(table(written.week, "Week")[number + 1]["C"]).startswith("Drains to a building: ")
    assert str(row["M"]).startswith("STOP: ")
    _, total = row_with(written.week, "Week", "All jobs with a price")
    _, ready = row_with(written.week, "Week", "of these READY")
    assert float(str(total["K"])) - float(str(ready["K"])) == row["K"]


@pytest.mark.parametrize("book", ["week", "demo"])
def test_every_row_of_the_ledger_has_an_account_and_a_key_of_its_own(
    book: str, written: Written, tmp_path: Path
) -> None:
    """A bookkeeper posts by account, and stacks the weeks by key: a row without one is lost."""
    path = written.week
    if book == "demo":
        run = batch.load_run([shipped("sample_inputs") / "jobs.xlsx"], None, None)
        batch.bid(run, tmp_path, workers=1)
        path = tmp_path / "week.xlsx"
    rows = {number: row for number, row in table(path, "Ledger").items() if number > 3}
    assert len(rows) > 100
    assert sorted(rows) == list(range(4, 4 + len(rows))), "a row that is no cost would break a pivot"
    assert len({row["B"] for row in rows.values()}) == len(rows)
    assert {str(row.get("L", "none")) for row in rows.values()}.isdisjoint({"none", "-", ""})


def test_a_week_without_any_account_books_to_the_names_of_the_groups(tmp_path: Path) -> None:
    jobs = write_book(tmp_path / "jobs.xlsx", {"Jobs": [JOBS[0], JOBS[2]], "Areas": [AREAS[0], AREAS[2]]})
    run = batch.load_run([jobs], None, None)
    batch.bid(run, tmp_path / "out", workers=1)
    rows = [row for number, row in table(tmp_path / "out" / "week.xlsx", "Ledger").items() if number > 3]
    assert {(row["K"], row["L"]) for row in rows} >= {("labor", "Labor"), ("materials", "Materials")}


def test_the_same_jobs_give_the_same_bytes(written: Written, tmp_path: Path) -> None:
    books = written.folder.parent
    run = batch.load_run([books / "jobs.xlsx"], books / "company letter.xlsx", None)
    batch.bid(run, tmp_path, workers=1)
    assert (tmp_path / "week.xlsx").read_bytes() == written.week.read_bytes()


def test_a_workbook_changed_by_hand_is_linked_by_the_name_of_its_numbered_copy(tmp_path: Path) -> None:
    """The link of the week opens the workbook that this run wrote, not the one that somebody edited."""
    first = bid_into(tmp_path, "out")
    (changed,) = [path for job, path, _ in first.run.written if job == "27-032"]
    measured = next(ref for name, ref in read_cells(changed) if name == "Measured")
    type_over(changed, {("Measured", measured): 1}, tmp_path / "edited.xlsx")
    shutil.move(tmp_path / "edited.xlsx", changed)
    areas = [list(row) for row in AREAS]
    areas[2][2] = 31
    jobs = write_book(tmp_path / "jobs.xlsx", {"Jobs": JOBS, "Areas": areas, "Site conditions": SITE})
    run = batch.load_run([jobs], tmp_path / "company letter.xlsx", None)
    batch.bid(run, tmp_path / "out", workers=1)
    (copy,) = run.numbered_copies
    links = [held.formula for held in read_cells(tmp_path / "out" / "week.xlsx").values() if held.formula]
    assert any(copy.name in link.replace('"&"', "") for link in links)


def test_nothing_is_made_smaller_to_fit_and_no_word_is_under_nine_points(written: Written) -> None:
    book = openpyxl.load_workbook(written.week)
    across = columns(written.week)
    assert tuple(book.sheetnames) == SHEETS
    for sheet in book.worksheets:
        setup = sheet.sheet_properties.pageSetUpPr
        assert not (setup and setup.fitToPage) and sheet.page_setup.scale in (None, 100), sheet.title
        assert sum(across[sheet.title][1:]) <= ROOM_ACROSS, sheet.title
        assert min(cell.font.sz for row in sheet.iter_rows() for cell in row if cell.value is not None) >= 9
        assert not sheet.merged_cells.ranges and not any(row.hidden for row in sheet.row_dimensions.values())


def columns(week: Path) -> dict[str, list[int]]:
    """The pixels of the columns of each sheet."""
    with ZipFile(week) as parts:
        return {
            sheet: [
                round(float(width) * DIGIT)
                for first, last, width in re.findall(r'<col min="(\d+)" max="(\d+)" width="([\d.]+)"', text)
                for _ in range(int(first), int(last) + 1)
            ]
            for sheet, part in sheet_parts(parts).items()
            for text in [parts.read(part).decode()]
        }


def test_no_words_are_cut_off_by_the_cell_beside_them(written: Written) -> None:
    shown = openpyxl.load_workbook(written.week, data_only=True)
    across = columns(written.week)
    cut = [
        f"{sheet.title}!{cell.coordinate}: {cell.value}"
        for sheet in shown.worksheets
        for row in sheet.iter_rows()
        for cell in row
        if isinstance(cell.value, str) and not cell.alignment.shrink_to_fit and _cut_off(sheet, cell, across)
    ]
    assert not cut, "\n".join(cut[:20])


def _cut_off(sheet: Any, cell: Any, across: dict[str, list[int]]) -> bool:
    """Whether the words of a cell are wider than it is with the blank cells beside it."""
    step = -1 if cell.alignment.horizontal == "right" else 1
    col, room = cell.column, 0
    while 1 <= col <= sheet.max_column and (col == cell.column or sheet.cell(cell.row, col).value is None):
        room += across[sheet.title][col - 1]
        col += step
    return max(width_of(line, cell.font.sz, bool(cell.font.b)) for line in str(cell.value).split("\n")) > room


def test_words_from_a_person_are_words(written: Written) -> None:
    formulas = [held.formula for held in read_cells(written.week).values() if held.formula]
    assert not [each for each in formulas if each.startswith("SUM(1)")]
    _, row = row_with(written.week, "Week", "27-037")
    assert str(row["B"]).startswith("27-037  =SUM(1)")


@pytest.mark.parametrize("paper", PAPERS)
def test_it_prints_on_the_pages_that_were_counted_with_nine_points_at_nine(
    paper: str, tmp_path: Path, libreoffice: Program
) -> None:
    """One page across on either paper: a second one would show as more pages than the rows take."""
    week = bid_into(tmp_path, "out", paper).week
    profile = f"-env:UserInstallation={(tmp_path / 'profile').as_uri()}"
    subprocess.run(
        [libreoffice.command, "--headless", profile, "--convert-to", "pdf", "--outdir", str(tmp_path), str(week)],
        check=True,
        capture_output=True,
        timeout=180,
    )
    data = (tmp_path / "week.pdf").read_bytes()
    sizes = re.findall(rb"/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)", data)
    across, down = PAPERS[paper]
    assert {(round(float(wide)), round(float(high))) for wide, high in sizes} == {(across, down)}
    book = openpyxl.load_workbook(week)
    rows = sum(sheet.max_row for sheet in book.worksheets)
    pages = len(re.findall(rb"/Type\s*/Page\b", data))
    assert pages <= len(SHEETS) - 1 + -(-book["Ledger"].max_row // 38), f"{pages} pages for {rows} rows"
    body = _points(data)
    assert 9.0 in body
    assert min(body) >= 8.0, "the foot of the page has 8"


def _points(data: bytes) -> set[float]:
    """The sizes of the letters on the pages of a PDF file."""
    found: set[float] = set()
    for stream in re.findall(rb"stream\r?\n(.*?)endstream", data, re.DOTALL):
        try:
            text = zlib.decompress(stream)
        except zlib.error:
            continue  # a stream that is not packed this way holds no page
        found |= {round(float(size), 1) for size in re.findall(rb"/F\d+ ([\d.]+) Tf", text)}
    return found


def test_other_programs_compute_every_cell_of_it_alike(
    written: Written, witness: Program, recalculated: Recalculations
) -> None:
    recalculated.add(written.week)
    wrong = [str(each) for each in unlike(written.week, recalculated.result(written.week, witness))]
    assert not wrong, "\n".join(wrong[:20])


def test_a_number_typed_over_in_the_ledger_fails_the_check_of_its_job_and_the_front_says_so(
    written: Written, libreoffice: Program, tmp_path: Path
) -> None:
    number, entry = row_with(written.week, "Ledger", "27-032-")
    edited = tmp_path / "edited.xlsx"
    type_over(written.week, {("Ledger", f"H{number}"): float(str(entry["H"])) + 1}, edited)
    calculations = Recalculations(tmp_path)
    calculations.add(edited)
    after = values(calculations.result(edited, libreoffice))
    check, _ = row_with(written.week, "Checks", "Ledger = job, 27-032")
    all_jobs, _ = row_with(written.week, "Checks", "Ledger = all jobs")
    other, _ = row_with(written.week, "Checks", "Ledger = job, 27-031")
    assert [after["Checks", f"F{each}"] for each in (check, all_jobs, other)] == ["FAIL", "FAIL", "ok"]
    assert str(after["Week", "K3"]).startswith("CHECKS FAIL: ")


def test_an_edit_of_a_visit_changes_its_day_on_the_calendar(
    written: Written, libreoffice: Program, tmp_path: Path
) -> None:
    number, _ = row_with(written.week, "Visits", "27-033", col="C")
    edited = tmp_path / "edited.xlsx"
    type_over(written.week, {("Visits", f"{letters}{number}"): 9 for letters in "EG"}, edited)
    calculations = Recalculations(tmp_path)
    calculations.add(edited)
    before, after = values(written.week), values(calculations.result(edited, libreoffice))
    changed = {place for place, value in after.items() if place[0] == "Calendar" and value != before.get(place)}
    assert any(after[place] == "prep 9" for place in changed)
    assert any(place[1].startswith("F") for place in changed), "the people that the day needs"


def test_dates_are_written_as_the_company_writes_them(tmp_path: Path) -> None:
    company = write_book(tmp_path / "company.xlsx", {"Company": [["fact", "value"], ["Dates", "numbers"]]})
    jobs = write_book(tmp_path / "jobs.xlsx", {"Jobs": [JOBS[0], JOBS[2]], "Areas": [AREAS[0], AREAS[2]]})
    batch.bid(batch.load_run([jobs], company, None), tmp_path / "out", workers=1)
    book = openpyxl.load_workbook(tmp_path / "out" / "week.xlsx")
    assert book["Week"]["A1"].value == "Week of 3/1/2027"
    assert book["Ledger"]["C4"].number_format == "[$-409]m/d/yyyy"


def test_a_week_of_many_jobs_repeats_the_head_of_its_table(tmp_path: Path) -> None:
    """The second page of the jobs says what its columns are."""
    many = [[f"J{number:02}", None, "2027-03-01", None, None] for number in range(24)]
    areas = [[job[0], "A1", 30, 3, 4, None, None] for job in many]
    jobs = write_book(tmp_path / "jobs.xlsx", {"Jobs": [JOBS[0], *many], "Areas": [AREAS[0], *areas]})
    batch.bid(batch.load_run([jobs], None, None), tmp_path / "out", workers=1)
    week = tmp_path / "out" / "week.xlsx"
    head, _ = row_with(week, "Week", "Job", col="B")
    head = next(number for number, row in table(week, "Week").items() if row.get("B") == "Job")
    assert openpyxl.load_workbook(week)["Week"].print_title_rows == f"${head}:${head}"
    shutil.rmtree(tmp_path / "out")
