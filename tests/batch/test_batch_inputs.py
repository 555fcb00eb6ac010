"""Which files a run takes: several, folders, patterns; what lies beside them; ids and names that stand twice."""

from __future__ import annotations

from pathlib import Path

import pytest

from books import COMPANY, Rows, write_book
from calc import batch


def book(path: Path, *jobs: str) -> Path:
    """A week's book with these jobs."""
    path.parent.mkdir(parents=True, exist_ok=True)
    tables: dict[str, Rows] = {
        "Jobs": [["job", "bid date"], *([job, "2026-04-13"] for job in jobs)],
        "Slab areas": [["job", "length ft", "width ft"], *([job, 12, 3] for job in jobs)],
    }
    return write_book(path, tables)


def ids(run: batch.Run) -> list[str]:
    """The jobs of a run, in order."""
    return [card.id for card in run.cards]


def said(run: batch.Run) -> list[str]:
    """Its findings as they are printed, less those about prices."""
    return [str(each) for each in run.findings if "No price" not in each.found]


@pytest.fixture
def office(tmp_path: Path) -> Path:
    """A folder as an office has it: two weeks, the house book, a lock file, a letter, a mac's shadow of a file."""
    book(tmp_path / "week15.xlsx", "C", "D")
    book(tmp_path / "week14.xlsx", "A", "B")
    write_book(tmp_path / "company.xlsx", COMPANY)
    (tmp_path / "~$week14.xlsx").write_bytes(b"somebody")
    (tmp_path / "._week14.xlsx").write_bytes(b"shadow")
    (tmp_path / "letter.docx").write_bytes(b"letter")
    return tmp_path


def test_a_folder_is_its_weeks_in_order_with_the_house_book_beside_them(office: Path) -> None:
    run = batch.take([office], None, None)
    assert ids(run) == ["A", "B", "C", "D"] and run.company == "company.xlsx" and not run.failures
    assert run.beside == office


def test_a_pattern_that_no_shell_has_opened_is_opened(office: Path) -> None:
    assert ids(batch.take([office / "week*.xlsx"], None, None)) == ["A", "B", "C", "D"]
    assert ids(batch.take([office / "*1[5-9].xlsx"], None, None)) == ["C", "D"]


def test_a_lock_file_is_passed_over_with_a_word_about_what_is_not_saved(office: Path) -> None:
    for named in (office, office / "*.xlsx", office / "~$week14.xlsx"):
        run = batch.take([named, office / "week14.xlsx"], None, None)
        assert not run.failures and ids(run)[:2] == ["A", "B"]
        assert said(run) == [
            "~$week14.xlsx: note: It is the lock file of week14.xlsx, which is open in another program, "
            "so it is passed over. What is not saved in week14.xlsx yet is not in this run."
        ]


def test_a_file_that_is_named_twice_is_bid_once(office: Path) -> None:
    assert ids(batch.take([office / "week14.xlsx", office, office / "week14.xlsx"], None, None)) == list("ABCD")


def test_results_beside_the_input_are_not_taken_for_input(office: Path) -> None:
    first = batch.take([office], None, None)
    batch.bid(first, office)
    again = batch.take([office], None, None)
    batch.bid(again, office)
    assert ids(again) == ids(first) and not again.failures and again.code == 0


@pytest.mark.parametrize("named", ["", "*.xlsx"])
def test_a_folder_without_a_week_is_said_in_one_line(named: str, tmp_path: Path) -> None:
    write_book(tmp_path / "company.xlsx", COMPANY)
    run = batch.take([tmp_path / named], None, None)
    assert run.code == 3 and len(run.failures) == 1 and "no input workbook" in run.failures[0]


def test_a_book_that_cannot_be_read_leaves_the_others_to_be_bid(office: Path) -> None:
    (office / "week13.xlsx").write_text("not a workbook")
    run = batch.take([office], None, None)
    batch.bid(run, office / "outputs")
    assert run.code == 3 and run.failures[0].startswith("week13.xlsx: ")
    assert len(list((office / "outputs").glob("?.xlsx"))) == 4


def test_an_id_that_stands_in_two_books_is_refused_with_both_places(office: Path) -> None:
    book(office / "week16.xlsx", "E", "a")
    run = batch.take([office], None, None)
    batch.bid(run, office / "outputs")
    assert run.held == ["A"] and run.code == 1
    assert 'week16.xlsx Jobs!A3: stop: The job id "a" stands twice: week14.xlsx Jobs!A2 has it too.' in said(run)[-1]
    assert {path.stem for path in (office / "outputs").glob("?.xlsx")} == set("BCDE")


def test_two_ids_of_two_books_that_give_one_file_are_both_refused(office: Path) -> None:
    book(office / "week16.xlsx", "B:1", "B?1")
    book(office / "week17.xlsx", "b/1", "F")
    run = batch.take([office], None, None)
    assert run.held == ["B:1", "B?1", "b/1"]


def test_two_books_of_one_name_are_told_apart_by_their_folders(tmp_path: Path) -> None:
    north, south = book(tmp_path / "north" / "week.xlsx", "A"), book(tmp_path / "south" / "week.xlsx", "B")
    jobs: Rows = [["job", "bid date"], ["B", "2026-04-13"]]
    write_book(south, {"Jobs": jobs, "Slab areas": [["length ft", "widht ft"], [12, 3]]})
    run = batch.take([north, south], None, None)
    assert ids(run) == ["A", "B"]
    assert run.held == ["B"], "a stop for the whole of one book holds no job of the other"
    assert any(each.startswith("south/week.xlsx Areas") for each in said(run))


def test_a_house_sheet_in_any_of_the_books_holds_for_all(office: Path) -> None:
    (office / "company.xlsx").unlink()
    tables: dict[str, Rows] = {"Jobs": [["job", "bid date"], ["E", "2026-04-13"]], "Company": COMPANY["Company"]}
    write_book(office / "week16.xlsx", {**tables, "Slab areas": [["length ft", "width ft"], [12, 3]]})
    jobs = batch.ready(batch.take([office], None, None))
    assert len(jobs) == 5
    assert {entry.value for job in jobs for given, entry in job.entries.items() if given.label == "Company"} == {
        "Gravelly Bend Flatwork"
    }
