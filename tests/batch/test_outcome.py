"""What came of each job: the table at the end of a run, its figures in ``--json``, and workbooks of earlier runs."""

from __future__ import annotations

from pathlib import Path

import pytest

from books import write_book
from calc import api
from calc.batch.outcome import MOST_LISTED, JobOutcome, table
from calc.batch.summary import as_data, summary
from calc.cli import commands
from priced_company import PRICED

JOBS = {
    "Jobs": [["job", "bid date"], ["24-031", "2026-04-13"], ["24-032", "2026-04-13"]],
    "Areas": [["job", "length ft", "width ft"], ["24-031", "12' 6\"", "3"], ["24-032", "10", "3"]],
}


def with_length(length: str) -> dict[str, list[list[str]]]:
    """The two jobs, the second with another length."""
    return JOBS | {"Areas": [*JOBS["Areas"][:2], ["24-032", length, "3"]]}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A folder with a company book and a jobs book of two jobs."""
    write_book(tmp_path / "company.xlsx", PRICED)
    write_book(tmp_path / "jobs.xlsx", JOBS)
    return tmp_path


def test_the_table_shows_price_and_state_of_each_job_and_the_totals() -> None:
    jobs = [
        JobOutcome("24-031", "READY", "", 1.25, 1.0, 12.34, 1985.0, "Note: silica dust"),
        JobOutcome("24-032", "NOT READY", "1 cost has no price: rock.", 0.0, 2.0, 8.0, 1200.5, "none"),
        JobOutcome("24-033", "not written", "Areas!B2: no number."),
    ]
    head, *rows = (line.split() for line in table(jobs))
    assert head == ["Job", "State", "Yd3", "Loads", "Hours", "Price", "Worst", "caution"]
    assert rows[0] == ["24-031", "READY", "1.25", "1", "12.3", "1,985.00", "Note:", "silica", "dust"]
    assert rows[1][:8] == ["24-032", "NOT", "READY", "-", "2", "8.0", "1,200.50", "none"]
    assert " ".join(rows[2]) == "1 cost has no price: rock."
    assert rows[3] == ["24-033", "not", "written", "-", "-", "-", "-", "-"]
    assert rows[-1] == ["All", "1", "READY", "1.25", "3", "20.3", "3,185.50"]


def test_of_a_thousand_jobs_those_that_cannot_be_sent_are_listed() -> None:
    jobs = [JobOutcome(f"{place}", "READY", "", 1.0, 1.0, 1.0, 10.0) for place in range(10 * MOST_LISTED)]
    jobs[700] = JobOutcome("late", "NOT READY", "1 check fails.", 1.0, 1.0, 1.0, 10.0)
    lines = list(table(jobs))
    assert [line.split()[0] for line in lines] == ["Job", "late", "1", "All", "999"]
    assert lines[-1] == "999 more jobs are in the list of week.xlsx."


def test_a_check_tells_the_price_of_each_job_and_a_bid_the_same(folder: Path) -> None:
    checked, bid = api.check(folder / "jobs.xlsx"), api.bid(folder / "jobs.xlsx")
    told, written = as_data(checked, [], "")["results"], as_data(bid, [], "x")["results"]
    assert [each["job"] for each in told] == ["24-031", "24-032"] and all(each["price"] > 500 for each in told)
    assert [each | {"file": ""} for each in written] == told
    assert {"severity", "caution", "found", "do", "acknowledged"} == set(told[0]["cautions"][0])
    assert bid.code == checked.code == 0


def test_a_bid_without_prices_is_not_ready_and_ends_with_1(folder: Path) -> None:
    (folder / "company.xlsx").unlink()
    run = api.check(folder / "jobs.xlsx")
    assert {each.state for each in run.outcomes} == {"NOT READY"} and run.code == 1
    assert all("no price" in each.reason for each in run.outcomes)


def test_a_company_without_a_vehicle_does_not_haul_for_nothing(folder: Path) -> None:
    write_book(folder / "company.xlsx", {name: rows for name, rows in PRICED.items() if name != "Vehicles"})
    run = api.check(folder / "jobs.xlsx")
    assert {each.state for each in run.outcomes} == {"NOT READY"}
    told = [str(each) for each in run.findings if each.kind.code == "missing-price"]
    assert len(told) == 2 and all("company.xlsx Vehicles: note" in each and "List a vehicle" in each for each in told)


def test_a_missing_price_is_told_by_its_row_of_prices(folder: Path) -> None:
    prices = [row for row in PRICED["Prices"] if row[0] != "Caution tape and signs"]
    write_book(folder / "company.xlsx", {**PRICED, "Prices": prices})
    (told, _) = (str(each) for each in api.check(folder / "jobs.xlsx").findings if each.kind.code == "missing-price")
    assert "Prices: note: 1 cost has no price: Caution tape and signs." in told
    assert "in its row of Prices" in told


def test_an_older_workbook_of_a_job_that_was_not_written_is_named(folder: Path) -> None:
    api.bid(folder / "jobs.xlsx")
    write_book(folder / "jobs.xlsx", with_length("ten"))
    run = api.bid(folder / "jobs.xlsx")
    (older,) = (each for each in run.findings if each.kind.code == "older-workbook")
    assert older.job == "24-032" and "24-032.xlsx in" in older.found
    assert [each.state for each in run.outcomes] == ["READY", "not written"]
    assert "Areas!B3" in run.outcomes[1].reason
    write_book(
        folder / "jobs.xlsx", JOBS | {"Areas": [JOBS["Areas"][0], *(["24-031", "ten", "3"], ["24-032", "x", "3"])]}
    )
    found = [each.found for each in api.bid(folder / "jobs.xlsx").findings if each.kind.code == "older-workbook"]
    assert [each.split()[0] for each in found] == ["24-031.xlsx", "24-032.xlsx", "week.xlsx"]


def test_one_job_alone_is_not_told_what_is_wrong_with_another(folder: Path) -> None:
    write_book(folder / "jobs.xlsx", with_length("ten"))
    alone = api.check(folder / "jobs.xlsx", job="24-031")
    assert alone.code == 0 and not [each for each in alone.findings if each.job == "24-032"]


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (["bidd", "jobs.xlsx"], "There is no command bidd, and no file of that name. Did you mean bid?"),
        (["nothing"], "The commands are bid, blank, check, demo, proposal, rebid."),
        (["bid", "jobs.xlsx", "--compny", "company.xlsx"], "--company"),
    ],
)
def test_a_mistyped_word_is_told_and_not_bid_as_a_file(
    words: list[str], message: str, folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(folder)
    with pytest.raises(SystemExit) as end:
        commands.main(words, prog_name="flatwork")
    assert end.value.code == 2 and message in capsys.readouterr().err


def test_a_check_counts_every_job_that_an_error_of_the_company_book_holds_back(folder: Path) -> None:
    (item,) = (row for row in PRICED["Prices"] if row[0] == "Concrete bag")
    rows = [[*row[:3], None] if row is item else row for row in PRICED["Prices"]]
    write_book(folder / "company.xlsx", {**PRICED, "Prices": rows})
    told = summary(api.check(folder / "jobs.xlsx"), "")
    assert told.startswith("2 jobs checked, 2 with errors;")
