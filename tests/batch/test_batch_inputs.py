"""The input files of a run: several, folders, patterns, files that are no input, duplicate ids and names."""

from __future__ import annotations

from pathlib import Path

import pytest

from books import COMPANY, Rows, write_book
from calc import batch
from calc.errors import FindingKind


def book(path: Path, *jobs: str) -> Path:
    """A jobs book with these jobs."""
    path.parent.mkdir(parents=True, exist_ok=True)
    tables: dict[str, Rows] = {
        "Jobs": [["job", "bid date"], *([job, "2026-04-13"] for job in jobs)],
        "Areas": [["job", "length ft", "width ft"], *([job, 12, 3] for job in jobs)],
    }
    return write_book(path, tables)


def ids(run: batch.Run) -> list[str]:
    """The jobs of a run, in order."""
    return [job.id for job in run.jobs]


def messages(run: batch.Run) -> list[str]:
    """Its findings as they are printed, without those about missing prices."""
    return [str(each) for each in run.findings if each.kind is not FindingKind.MISSING_PRICE]


@pytest.fixture
def office(tmp_path: Path) -> Path:
    """A folder as in an office: two jobs books, the company book, a lock file, a letter, a hidden file of macOS."""
    book(tmp_path / "week15.xlsx", "C", "D")
    book(tmp_path / "week14.xlsx", "A", "B")
    write_book(tmp_path / "company.xlsx", COMPANY)
    (tmp_path / "~$week14.xlsx").write_bytes(b"somebody")
    (tmp_path / "._week14.xlsx").write_bytes(b"shadow")
    (tmp_path / "letter.docx").write_bytes(b"letter")
    return tmp_path


def test_a_folder_means_its_jobs_books_in_order_and_its_company_book(office: Path) -> None:
    run = batch.load_run([office], None, None)
    assert ids(run) == ["A", "B", "C", "D"] and run.company == "company.xlsx" and not run.failures
    assert run.input_folder == office


def test_a_pattern_that_the_shell_did_not_expand_is_expanded(office: Path) -> None:
    assert ids(batch.load_run([office / "week*.xlsx"], None, None)) == ["A", "B", "C", "D"]
    assert ids(batch.load_run([office / "*1[5-9].xlsx"], None, None)) == ["C", "D"]


def test_a_lock_file_is_ignored_with_a_note_about_unsaved_changes(office: Path) -> None:
    for named in (office, office / "*.xlsx", office / "~$week14.xlsx"):
        run = batch.load_run([named, office / "week14.xlsx"], None, None)
        assert not run.failures and ids(run)[:2] == ["A", "B"]
        assert messages(run) == [
            "~$week14.xlsx: note: This is the lock file of week14.xlsx, which is open in another program. "
            "It is ignored. Unsaved changes in week14.xlsx are not in this run."
        ]


def test_a_file_that_is_named_twice_is_bid_once(office: Path) -> None:
    assert ids(batch.load_run([office / "week14.xlsx", office, office / "week14.xlsx"], None, None)) == list("ABCD")


def test_results_in_the_folder_of_the_input_are_not_read_as_input(office: Path) -> None:
    first = batch.load_run([office], None, None)
    batch.bid(first, office)
    again = batch.load_run([office], None, None)
    batch.bid(again, office)
    assert ids(again) == ids(first) and not again.failures


@pytest.mark.parametrize("named", ["", "*.xlsx"])
def test_a_folder_without_a_jobs_book_is_reported_in_one_line(named: str, tmp_path: Path) -> None:
    write_book(tmp_path / "company.xlsx", COMPANY)
    run = batch.load_run([tmp_path / named], None, None)
    assert run.code == 3 and len(run.failures) == 1 and "no input workbook" in run.failures[0]


def test_a_book_that_cannot_be_read_does_not_stop_the_others(office: Path) -> None:
    (office / "week13.xlsx").write_text("not a workbook")
    run = batch.load_run([office], None, None)
    batch.bid(run, office / "outputs")
    assert run.code == 3 and run.failures[0].startswith("week13.xlsx: ")
    assert len(list((office / "outputs").glob("?.xlsx"))) == 4


def test_an_id_that_is_in_two_books_is_an_error_with_both_places(office: Path) -> None:
    book(office / "week16.xlsx", "E", "a")
    run = batch.load_run([office], None, None)
    batch.bid(run, office / "outputs")
    assert run.not_written == ["A"] and run.code == 1
    assert (
        'week16.xlsx Jobs!A3: error: The job id "a" is used twice. The other row is week14.xlsx Jobs!A2.'
        in messages(run)[-1]
    )
    assert {path.stem for path in (office / "outputs").glob("?.xlsx")} == set("BCDE")


def test_ids_of_two_books_that_give_one_file_name_are_all_errors(office: Path) -> None:
    book(office / "week16.xlsx", "B:1", "B?1")
    book(office / "week17.xlsx", "b/1", "F")
    run = batch.load_run([office], None, None)
    assert run.not_written == ["B:1", "B?1", "b/1"]


def test_two_books_with_one_name_are_named_with_their_folders(tmp_path: Path) -> None:
    north, south = book(tmp_path / "north" / "week.xlsx", "A"), book(tmp_path / "south" / "week.xlsx", "B")
    jobs: Rows = [["job", "bid date"], ["B", "2026-04-13"]]
    write_book(south, {"Jobs": jobs, "Areas": [["length ft", "widht ft"], [12, 3]]})
    run = batch.load_run([north, south], None, None)
    assert ids(run) == ["A", "B"]
    assert run.not_written == ["B"], "an error of one whole book keeps no job of the other from being written"
    assert any(each.startswith("south/week.xlsx Areas") for each in messages(run))


def test_a_company_sheet_in_any_book_applies_to_all_of_them(office: Path) -> None:
    (office / "company.xlsx").unlink()
    tables: dict[str, Rows] = {"Jobs": [["job", "bid date"], ["E", "2026-04-13"]], "Company": COMPANY["Company"]}
    write_book(office / "week16.xlsx", {**tables, "Areas": [["length ft", "width ft"], [12, 3]]})
    jobs = batch.ready_jobs(batch.load_run([office], None, None))
    assert len(jobs) == 5
    assert {entry.value for job in jobs for given, entry in job.entries.items() if given.label == "Company"} == {
        "Gravelly Bend Flatwork"
    }
