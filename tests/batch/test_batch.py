"""Many jobs in one run: whoever does the work, however it is cut up, every job has the same workbook, once."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import BrokenExecutor, Executor, Future, ProcessPoolExecutor, ThreadPoolExecutor
from multiprocessing import get_context
from pathlib import Path
from typing import Any

import pytest

from books import COMPANY, Rows, write_book
from calc import batch
from calc.batch import bidding, load, pool, run, serialize, worker
from calc.errors import Severity
from calc.files import Saved
from calc.intake.records import JobInput
from calc.intake.schema import everything
from short_workbooks import short_workbook

JOBS = 6
"""So many that they do not go evenly into twos, whichever of them two workers take."""


def tables(jobs: int = 3, changed: int | None = None) -> dict[str, Rows]:
    """A week of small jobs, no two alike; one of them may be changed."""
    return {
        "Jobs": [
            ["job", "bid date", "pour date"],
            *([f"J{n}", "2026-04-13", f"2026-05-{1 + n % 3:02}"] for n in range(jobs)),
        ],
        "Slab areas": [
            ["job", "area", "length ft", "width ft", "doweled edge ft", "dowel spacing in"],
            *(
                [f"J{n}", f"A{area}", 10 + n / 3 + area + (n == changed), 3 + area / 7, 3, 12]
                for n in range(jobs)
                for area in range(1 + n % 2)
            ),
        ],
    }


def bid(folder: Path, into: str = "outputs", **how: Any) -> batch.Run:
    """Bids the books of a folder."""
    taken = batch.take([folder / "week.xlsx"], None, None)
    batch.bid(taken, folder / into, **how)
    assert not taken.failures and not taken.held
    return taken


def bytes_of(folder: Path) -> dict[str, bytes]:
    """Every workbook of a folder of results."""
    return {path.name: path.read_bytes() for path in sorted(folder.glob("*.xlsx"))}


def hows(done: batch.Run) -> dict[str, Saved]:
    """How each workbook was saved, by its file name."""
    return {path.name: saved for _, path, saved in done.written}


@pytest.fixture(scope="module")
def undisturbed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with a week that this process has bid by itself."""
    folder = tmp_path_factory.mktemp("undisturbed")
    write_book(folder / "week.xlsx", tables(JOBS))
    write_book(folder / "company.xlsx", COMPANY)
    bid(folder, workers=1)
    return folder


@pytest.fixture
def week(tmp_path: Path) -> Path:
    """A folder with a small week."""
    write_book(tmp_path / "week.xlsx", tables())
    write_book(tmp_path / "company.xlsx", COMPANY)
    return tmp_path


@pytest.fixture
def short_workbooks(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where files are looked at, and not what they hold."""
    monkeypatch.setattr(worker, "job_workbook", short_workbook)


EXECUTORS: dict[str, Callable[[], Executor]] = {
    "threads": lambda: ThreadPoolExecutor(3),
    "processes": lambda: ProcessPoolExecutor(2, mp_context=get_context("spawn")),
}


@pytest.mark.parametrize("executor", EXECUTORS)
def test_whoever_does_the_work_every_byte_is_the_same(executor: str, week: Path) -> None:
    bid(week, "here")
    with EXECUTORS[executor]() as hands:
        bid(week, executor, workers=2, pool=hands)
    assert len(bytes_of(week / executor)) == 4
    assert bytes_of(week / executor) == bytes_of(week / "here")


def test_two_workers_leave_the_same_bytes_as_one(undisturbed: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(pool, "FEW", JOBS)
    monkeypatch.setattr(pool.InlineExecutor, "submit", lambda *_, **__: pytest.fail("one process did it all"))
    bid(undisturbed, "two", workers=2)
    assert bytes_of(undisturbed / "two") == bytes_of(undisturbed / "outputs")


def test_a_job_has_the_same_workbook_whatever_stands_around_it(
    undisturbed: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for module in (run, load, worker, bidding):
        monkeypatch.setattr(module, "CHUNK", 2)
    bid(undisturbed, "twos", workers=1)
    assert bytes_of(undisturbed / "twos") == bytes_of(undisturbed / "outputs")


def test_what_cannot_be_asked_of_some_jobs_together_is_asked_of_each(
    week: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    bid(week, "together")
    asked: list[int] = []

    def fails(jobs: Sequence[Any]) -> Any:
        asked.append(len(jobs))
        raise ZeroDivisionError("one of them cannot be worked out")

    monkeypatch.setattr(worker, "all_with_sensitivity", fails)
    bid(week, "alone")
    assert asked and bytes_of(week / "alone") == bytes_of(week / "together")


def test_a_job_bid_alone_has_the_workbook_that_it_has_in_its_week(undisturbed: Path) -> None:
    alone = batch.take([undisturbed / "week.xlsx"], None, None, only="j4")
    batch.bid(alone, undisturbed / "alone")
    assert bytes_of(undisturbed / "alone")["J4.xlsx"] == bytes_of(undisturbed / "outputs")["J4.xlsx"]


@pytest.mark.usefixtures("short_workbooks")
def test_a_small_week_does_not_wait_for_processes(week: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(pool, "ProcessPoolExecutor", lambda *_, **__: pytest.fail("a process was started"))
    assert set(hows(bid(week, workers=8)).values()) == {Saved.WRITTEN}


@pytest.mark.usefixtures("short_workbooks")
def test_the_same_command_again_writes_nothing(week: Path) -> None:
    bid(week)
    before = {path: path.stat().st_mtime_ns for path in (week / "outputs").iterdir()}
    again = bid(week)
    assert set(hows(again).values()) == {Saved.UNCHANGED} and len(again.written) == 4
    assert {path: path.stat().st_mtime_ns for path in (week / "outputs").iterdir()} == before


@pytest.mark.usefixtures("short_workbooks")
def test_a_change_of_one_job_writes_that_job_and_the_week(week: Path) -> None:
    bid(week)
    write_book(week / "week.xlsx", tables(changed=1))
    written = {name for name, saved in hows(bid(week)).items() if saved is Saved.WRITTEN}
    assert written == {"J1.xlsx", "week.xlsx"}


@pytest.mark.usefixtures("short_workbooks")
def test_a_new_price_writes_every_job_again(week: Path) -> None:
    bid(week)
    prices = [*COMPANY["Prices"][:-1], ["Sealer, 5-gal pail", 151, "pack", 5]]
    write_book(week / "company.xlsx", {**COMPANY, "Prices": prices})
    assert set(hows(bid(week)).values()) == {Saved.WRITTEN}


def test_a_changed_program_makes_every_job_again(week: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(worker, "job_workbook", short_workbook)
    bid(week)
    made: list[object] = []
    monkeypatch.setattr(bidding, "program_fingerprint", lambda: "another")
    monkeypatch.setattr(worker, "job_workbook", lambda job: made.append(job) or short_workbook(job))
    bid(week)
    assert len(made) == 3


@pytest.mark.usefixtures("short_workbooks")
def test_a_workbook_that_was_thrown_away_is_written_again(week: Path) -> None:
    bid(week)
    (week / "outputs" / "J1.xlsx").unlink()
    assert hows(bid(week)) == {
        "J0.xlsx": Saved.UNCHANGED, "J1.xlsx": Saved.WRITTEN, "J2.xlsx": Saved.UNCHANGED, "week.xlsx": Saved.UNCHANGED,
    }  # fmt: skip


@pytest.mark.usefixtures("short_workbooks")
def test_a_note_written_into_a_workbook_survives_every_later_run(week: Path) -> None:
    bid(week)
    noted = week / "outputs" / "J1.xlsx"
    noted.write_bytes(noted.read_bytes() + b"a note of the foreman's")
    kept = noted.read_bytes()
    first, second = bid(week), bid(week)
    assert hows(first)["J1 (2).xlsx"] is Saved.BESIDE and hows(second)["J1 (2).xlsx"] is Saved.UNCHANGED
    assert noted.read_bytes() == kept
    assert [path.name for path in second.beside_others] == ["J1 (2).xlsx"]


@pytest.mark.usefixtures("short_workbooks")
def test_a_lost_record_costs_time_and_no_workbook(week: Path) -> None:
    bid(week)
    before = bytes_of(week / "outputs")
    (week / "outputs" / ".flatwork-written.jsonl").unlink()
    bid(week)
    assert bytes_of(week / "outputs") == before
    assert set(hows(bid(week)).values()) == {Saved.UNCHANGED}


def test_one_job_that_cannot_be_made_takes_no_other_with_it(week: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def fails_one(job: Any) -> bytes:
        if job.job.id == "J1":
            raise ZeroDivisionError("no such luck")
        return short_workbook(job)

    monkeypatch.setattr(worker, "job_workbook", fails_one)
    taken = batch.take([week / "week.xlsx"], None, None)
    batch.bid(taken, week / "outputs")
    assert taken.failures == ["J1.xlsx: it could not be made: ZeroDivisionError: no such luck"] and taken.code == 3
    assert set(bytes_of(week / "outputs")) == {"J0.xlsx", "J2.xlsx", "week.xlsx"}


@pytest.mark.usefixtures("short_workbooks")
def test_a_folder_that_goes_away_in_the_middle_is_said_for_each_job(week: Path) -> None:
    class Vanishing(batch.Progress):
        def step(self) -> None:
            shutil.rmtree(week / "outputs", ignore_errors=True)

    taken = batch.take([week / "week.xlsx"], None, None)
    batch.bid(taken, week / "outputs", progress=Vanishing())
    assert taken.code == 3 and len(taken.failures) == 3
    assert all("it cannot be written: no such file or directory" in each for each in taken.failures)


def test_memory_stays_flat_since_little_is_under_way_at_a_time() -> None:
    class Slow(Executor):
        waiting = most = 0

        def submit(self, fn: Callable[..., Any], /, *args: Any, **kwargs: Any) -> Future[Any]:
            Slow.waiting += 1
            Slow.most = max(Slow.most, Slow.waiting)
            future: Future[Any] = Future()
            future.set_result(fn(*args))
            return future

    def pieces() -> Iterator[int]:
        yield from range(100)

    for place, result in enumerate(pool.map_slices(pieces(), lambda each: each * 2, Slow(), 3, lambda: None)):
        Slow.waiting -= 1
        assert result == place * 2
    assert Slow.waiting == 0 and 3 <= Slow.most <= 8


@pytest.mark.usefixtures("short_workbooks")
def test_a_worker_that_the_system_ends_loses_no_job(week: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    class Broken(Executor):
        calls = 0

        def submit(self, fn: Callable[..., Any], /, *args: Any, **kwargs: Any) -> Future[Any]:
            Broken.calls += 1
            if Broken.calls > 1:
                raise BrokenExecutor("it is gone")
            future: Future[Any] = Future()
            future.set_exception(BrokenExecutor("it is gone"))
            return future

    done = bid(week, workers=2, pool=Broken())
    assert len(bytes_of(week / "outputs")) == 4
    assert {each.severity for each in done.findings if "worker" in each.found} == {Severity.NOTE}


def test_jobs_come_out_of_their_packing_as_they_went_in(week: Path) -> None:
    jobs = batch.ready(batch.take([week / "week.xlsx"], None, None))
    unpacked: list[JobInput] = serialize.unpacked(serialize.packed(jobs))
    assert [repr(each) for each in unpacked] == [repr(each) for each in jobs]
    assert [list(each.entries) for each in unpacked] == [list(each.entries) for each in jobs]
    assert [serialize.job_fingerprint(each) for each in unpacked] == [serialize.job_fingerprint(each) for each in jobs]


def test_no_two_declarations_go_by_one_name() -> None:
    """A job that another process unpacks would have the value of one in the place of the other."""
    named: Sequence[Any] = everything()
    assert len({each.id for each in named}) == len(named)
    assert all(serialize.level(str(level)) == level for level in {each.level for each in named if each.section.table})
