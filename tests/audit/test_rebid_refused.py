"""What cannot be made again is said in a line, nothing is written over, and what is said of a row is understood."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given as drawn
from hypothesis import strategies as st

from books import write_book
from calc import __version__
from calc.audit.rebid import jobs_book_from
from calc.errors import Place
from calc.files import shipped
from calc.intake.records import CompanyBook, Entry, JobInput
from calc.layout.as_typed import OF_COMPANY, AsTyped, format_cell, on_one_line, parse_cell
from calc.layout.log_sheet import LAYOUT_ROW
from rebids import Bid
from sheet_cells import read_cells, type_over

pytestmark = pytest.mark.slow


def test_a_file_that_is_no_workbook_of_a_job_is_refused_in_a_line(demo: Bid, tmp_path: Path) -> None:
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
    said = [
        "not a job workbook that flatwork wrote",
        "a text file",
        "there is no",
        "not a job workbook that flatwork wrote",
        "flatwork bid",
        "of a week",
    ]
    assert len(result.failures) == len(files) and result.code == 3
    for path, line_said, words in zip(files, result.failures, said, strict=True):
        assert line_said.startswith(path.name) and words in line_said and line_said.isprintable()
    assert result.jobs == [demo.jobs[0].job.id] and result.written


def test_a_workbook_of_another_version_is_refused_in_a_line(whole: Bid, tmp_path: Path) -> None:
    label = f"B{_row_of('Strength, psi', 'Measured', whole)}"
    type_over(whole.workbooks[0], {("Measured", label): "Strength of slab"}, tmp_path / "old.xlsx")
    (said,) = jobs_book_from([tmp_path / "old.xlsx"], tmp_path / "rebid.xlsx").failures
    assert said.startswith(f'old.xlsx: Measured!{label} is "Strength of slab" instead of "Strength, psi"')
    assert __version__ in said and said.isprintable()


@pytest.mark.parametrize("version", ["0.3.0", "0.2.0", "of my cousin"])
def test_a_workbook_from_before_the_oldest_version_that_is_read_says_to_bid_again(
    whole: Bid, tmp_path: Path, version: str
) -> None:
    told = "Log", f"C{_row_of('Program', 'Log', whole)}"
    assert read_cells(whole.workbooks[0])[told].value == f"flatwork-calc {__version__}"
    type_over(whole.workbooks[0], {told: f"flatwork-calc {version}"}, tmp_path / "old.xlsx")
    (said,) = jobs_book_from([tmp_path / "old.xlsx"], tmp_path / "rebid.xlsx").failures
    assert said.startswith("old.xlsx: ") and f"version {version} of the program wrote it" in said
    assert said.isprintable() and "Bid the job again" in said and "0.4.0" in said


@pytest.mark.parametrize(
    ("row", "held", "said"), [(LAYOUT_ROW, 1, "laid it out otherwise"), ("Rows: area", 2.5, '"area"')]
)
def test_a_workbook_whose_log_does_not_say_how_it_is_laid_out_is_not_guessed_at(
    whole: Bid, tmp_path: Path, row: str, held: float, said: str
) -> None:
    told = "Log", f"C{_row_of(row, 'Log', whole)}"
    type_over(whole.workbooks[0], {told: held}, tmp_path / "other.xlsx")
    (failure,) = jobs_book_from([tmp_path / "other.xlsx"], tmp_path / "rebid.xlsx").failures
    assert failure.startswith("other.xlsx: ") and said in failure


def _row_of(label: str, sheet: str, bid: Bid) -> int:
    """The row of a sheet that has a label in its column of items."""
    cells = read_cells(bid.workbooks[0]).items()
    refs = (ref for (name, ref), held in cells if name == sheet and held.value == label)
    return next(int(ref[1:]) for ref in refs if ref[0] == "B" and ref[1:].isdecimal())


def test_a_job_that_stands_in_two_workbooks_is_asked_about(demo: Bid, tmp_path: Path) -> None:
    copy = tmp_path / "copy.xlsx"
    copy.write_bytes(demo.workbooks[0].read_bytes())
    result = jobs_book_from([demo.workbooks[0], copy], tmp_path / "rebid.xlsx")
    assert result.jobs == [demo.jobs[0].job.id]
    assert len(result.failures) == 1 and "copy.xlsx: the job" in result.failures[0]


def test_a_book_that_is_there_is_not_written_over(demo: Bid, tmp_path: Path) -> None:
    (tmp_path / "rebid.xlsx").write_bytes(b"somebody's own")
    result = jobs_book_from(demo.workbooks[:1], tmp_path / "rebid.xlsx")
    assert not result.written and "the file exists already" in result.failures[0]
    assert (tmp_path / "rebid.xlsx").read_bytes() == b"somebody's own"
    lost = jobs_book_from(demo.workbooks[:1], tmp_path / "no folder" / "rebid.xlsx")
    assert not lost.written and "cannot be written" in lost.failures[0]


LINES = st.text(st.characters(exclude_categories=["Cs"]), max_size=20)


@drawn(LINES, st.booleans())
def test_what_is_said_of_a_value_is_understood_again(text: str, of_company: bool) -> None:
    company = CompanyBook("company: 2026.xlsx")
    place = "Site conditions!C4"
    entry = Entry(0.0, "", text, f"{company.name} {place}" if of_company else place)
    job = JobInput("a", Place("jobs.xlsx"), company)
    wanted = AsTyped(on_one_line(text), f"{OF_COMPANY}{place}" if of_company else place) if text else None
    assert parse_cell(format_cell(entry, job)) == wanted
