"""What a person would lose if a bid could not be made again from its workbooks: anything that was typed."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from books import COMPANY, Rows, given, write_book
from calc import batch
from calc.audit.rebid import jobs_book_from
from calc.declared import Price
from calc.intake.schema import ACKNOWLEDGEABLE, OVERRIDES, SITE, everything, facts_of
from calc.xlsx_read.read import read_book
from front_page_reader import number
from rebids import Bid, bid_again, bid_of, made, numbers, overrides, typed, written_bid
from whole_job import ID, whole_company

pytestmark = pytest.mark.slow

STOP = next(iter(ACKNOWLEDGEABLE.values())).label
"""A stop caution that can be acknowledged: a slab that is too thin."""


@pytest.mark.parametrize("which", ["awkward", "whole"])
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
    made(second.workbooks, tmp_path / "third.xlsx")
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
            ["area", "length ft", "width ft", "depth to top of footing in", "notes"],
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


def test_a_bid_date_from_the_command_is_in_the_book(tmp_path: Path) -> None:
    week = write_book(tmp_path / "w.xlsx", {"Jobs": [["job"], ["a"]], "Areas": [["length ft", "width ft"], [9, 3]]})
    run = batch.load_run([week], None, 46125.0)
    batch.bid(run, tmp_path / "outputs")
    made([path for job, path, _ in run.written if job], tmp_path / "rebid.xlsx")
    read = batch.load_run([tmp_path / "rebid.xlsx"], None, None)
    assert [job.entries[given("Job.bid_date")].value for job in batch.ready_jobs(read)] == [46125.0]
    later = jobs_book_from([path for job, path, _ in run.written if job], tmp_path / "may.xlsx", date(2026, 5, 4))
    (job,) = batch.ready_jobs(batch.load_run([later.file], None, None))
    assert job.entries[given("Job.bid_date")].value == 46146.0


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
        "Areas": [
            ["area", "length ft", "width ft", "thickness in"],
            ["A", 9, 3, 1],
            ["B", 9, 3, 4],
            ["C", 9, 3, 4],
        ],
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


def test_what_the_company_book_gave_stays_there(tmp_path: Path) -> None:
    company = {**COMPANY, SITE: [["job", "fact", "value"], ["all", "Moisture", "wet"], ["all", "Bonding coats", 2]]}
    week: dict[str, Rows] = {
        "Jobs": [["job", "bid date", "control joints"], ["a", "2026-04-13", "saw-cut"]],
        "Areas": [["area", "length ft", "width ft"], ["A", 9, 3]],
        SITE: [["fact", "value"], ["Bonding coats", 1]],
    }
    bid = written_bid(tmp_path, week, company)
    made(bid.workbooks, tmp_path / "rebid.xlsx")
    book = read_book(tmp_path / "rebid.xlsx")
    facts = [[cell.value for cell in row.values()][1:3] for _, row in book.sheets[SITE].rows[1:]]
    assert sorted(facts) == [["bonding coats coat", "1"], ["control joints", "saw-cut"]]
    assert not {"Company", "Prices", "Factors", "Vehicles"} & set(book.sheets)


def test_current_prices_are_used_and_quantities_stay(whole: Bid, tmp_path: Path) -> None:
    made(whole.workbooks, tmp_path / "rebid.xlsx")
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
    result = made([*whole.workbooks, *demo.workbooks[:2], *awkward.workbooks[:2]], tmp_path / "rebid.xlsx")
    assert result.jobs == [ID, *(job.job.id for job in demo.jobs[:2]), "<5", "1E3"]
    run = batch.load_run([tmp_path / "rebid.xlsx"], demo.company, None)
    assert [card.id for card in run.jobs] == result.jobs
