"""Many jobs in one run: every job has the same workbook, once, whatever the executor, the slices and the workers."""

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
"""An even number of jobs, which two workers share in slices of any size."""


def tables(jobs: int = 3, changed: int | None = None) -> dict[str, Rows]:
    """A jobs book of small jobs that all differ; one of them may be changed."""
    return {
        "Jobs": [
            ["job", "bid date", "pour date"],
            *([f"J{n}", "2026-04-13", f"2026-05-{1 + n % 3:02}"] for n in range(jobs)),
        ],
        "Areas": [
            ["job", "area", "length ft", "width ft", "doweled edge ft", "dowel spacing in"],
            *(
                [f"J{n}", f"A{area}", 10 + n / 3 + area + (n == changed), 3 + area / 7, 3, 12]
                for n in range(jobs)
                for area in range(1 + n % 2)
            ),
        ],
    }


def bid(folder: Path, output: str = "outputs", **options: Any) -> batch.Run:
    """Bids the books of a folder."""
    taken = batch.load_run([folder / "week.xlsx"], None, None)
    batch.bid(taken, folder / output, **options)
    assert not taken.failures and not taken.not_written
    return taken


def bytes_of(folder: Path) -> dict[str, bytes]:
    """Every workbook of a folder of results."""
    return {path.name: path.read_bytes() for path in sorted(folder.glob("*.xlsx"))}


def saved_as(done: batch.Run) -> dict[str, Saved]:
    """How each workbook was saved, by its file name."""
    return {path.name: saved for _, path, saved in done.written}


@pytest.fixture(scope="module")
def undisturbed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with a jobs book that this process has bid alone."""
    folder = tmp_path_factory.mktemp("undisturbed")
    write_book(folder / "week.xlsx", tables(JOBS))
    write_book(folder / "company.xlsx", COMPANY)
    bid(folder, workers=1)
    return folder


@pytest.fixture
def week(tmp_path: Path) -> Path:
    """A folder with a small jobs book."""
    write_book(tmp_path / "week.xlsx", tables())
    write_book(tmp_path / "company.xlsx", COMPANY)
    return tmp_path


@pytest.fixture
def short_workbooks(monkeypatch: pytest.MonkeyPatch) -> None:
    """For tests of files, not of their content."""
    monkeypatch.setattr(worker, "job_workbook", short_workbook)


EXECUTORS: dict[str, Callable[[], Executor]] = {
    "threads": lambda: ThreadPoolExecutor(3),
    "processes": lambda: ProcessPoolExecutor(2, mp_context=get_context("spawn")),
}


@pytest.mark.parametrize("executor", EXECUTORS)
def test_every_executor_writes_the_same_bytes(executor: str, week: Path) -> None:
    bid(week, "inline")
    with EXECUTORS[executor]() as executor_pool:
        bid(week, executor, workers=2, pool=executor_pool)
    assert len(bytes_of(week / executor)) == 4
    assert bytes_of(week / executor) == bytes_of(week / "inline")


def test_two_workers_write_the_same_bytes_as_one(undisturbed: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(pool, "MIN_WORKBOOKS", JOBS)
    monkeypatch.setattr(pool.InlineExecutor, "submit", lambda *_, **__: pytest.fail("one process did it all"))
    bid(undisturbed, "two", workers=2)
    assert bytes_of(undisturbed / "two") == bytes_of(undisturbed / "outputs")


def test_a_job_has_the_same_workbook_in_chunks_of_any_size(undisturbed: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for module in (run, load, worker, bidding):
        monkeypatch.setattr(module, "CHUNK", 2)
    bid(undisturbed, "twos", workers=1)
    assert bytes_of(undisturbed / "twos") == bytes_of(undisturbed / "outputs")


def test_a_sensitivity_that_fails_for_a_slice_is_computed_for_each_job(
    week: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    bid(week, "together")
    calls: list[int] = []

    def fails(jobs: Sequence[Any]) -> Any:
        calls.append(len(jobs))
        raise ZeroDivisionError("one of them cannot be computed")

    monkeypatch.setattr(worker, "all_with_sensitivity", fails)
    bid(week, "alone")
    assert calls and bytes_of(week / "alone") == bytes_of(week / "together")


def test_a_job_bid_alone_has_the_workbook_that_it_has_among_others(undisturbed: Path) -> None:
    alone = batch.load_run([undisturbed / "week.xlsx"], None, None, only="j4")
    batch.bid(alone, undisturbed / "alone")
    assert bytes_of(undisturbed / "alone")["J4.xlsx"] == bytes_of(undisturbed / "outputs")["J4.xlsx"]


@pytest.mark.usefixtures("short_workbooks")
def test_a_small_run_starts_no_processes(week: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(pool, "ProcessPoolExecutor", lambda *_, **__: pytest.fail("a process was started"))
    assert set(saved_as(bid(week, workers=8)).values()) == {Saved.WRITTEN}


@pytest.mark.usefixtures("short_workbooks")
def test_the_same_command_again_writes_nothing(week: Path) -> None:
    bid(week)
    before = {path: path.stat().st_mtime_ns for path in (week / "outputs").iterdir()}
    again = bid(week)
    assert set(saved_as(again).values()) == {Saved.UNCHANGED} and len(again.written) == 4
    assert {path: path.stat().st_mtime_ns for path in (week / "outputs").iterdir()} == before


@pytest.mark.usefixtures("short_workbooks")
def test_a_change_of_one_job_writes_only_that_job_and_the_week(week: Path) -> None:
    bid(week)
    write_book(week / "week.xlsx", tables(changed=1))
    written = {name for name, saved in saved_as(bid(week)).items() if saved is Saved.WRITTEN}
    assert written == {"J1.xlsx", "week.xlsx"}


@pytest.mark.usefixtures("short_workbooks")
def test_a_new_price_writes_every_job_again(week: Path) -> None:
    bid(week)
    prices = [*COMPANY["Prices"][:-1], ["Sealer, 5-gal pail", 151, "pack", 5]]
    write_book(week / "company.xlsx", {**COMPANY, "Prices": prices})
    assert set(saved_as(bid(week)).values()) == {Saved.WRITTEN}


def test_a_changed_program_writes_every_job_again(week: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(worker, "job_workbook", short_workbook)
    bid(week)
    written: list[object] = []
    monkeypatch.setattr(bidding, "program_fingerprint", lambda: "another")
    monkeypatch.setattr(worker, "job_workbook", lambda job: written.append(job) or short_workbook(job))
    bid(week)
    assert len(written) == 3


@pytest.mark.usefixtures("short_workbooks")
def test_a_deleted_workbook_is_written_again(week: Path) -> None:
    bid(week)
    (week / "outputs" / "J1.xlsx").unlink()
    assert saved_as(bid(week)) == {
        "J0.xlsx": Saved.UNCHANGED, "J1.xlsx": Saved.WRITTEN, "J2.xlsx": Saved.UNCHANGED, "week.xlsx": Saved.UNCHANGED,
    }  # fmt: skip


@pytest.mark.usefixtures("short_workbooks")
def test_a_note_written_into_a_workbook_survives_every_later_run(week: Path) -> None:
    bid(week)
    noted = week / "outputs" / "J1.xlsx"
    noted.write_bytes(noted.read_bytes() + b"a note of the foreman's")
    kept = noted.read_bytes()
    first, second = bid(week), bid(week)
    assert saved_as(first)["J1 (2).xlsx"] is Saved.NUMBERED_COPY and saved_as(second)["J1 (2).xlsx"] is Saved.UNCHANGED
    assert noted.read_bytes() == kept
    assert [path.name for path in second.numbered_copies] == ["J1 (2).xlsx"]


@pytest.mark.usefixtures("short_workbooks")
def test_a_lost_record_costs_time_and_no_workbook(week: Path) -> None:
    bid(week)
    before = bytes_of(week / "outputs")
    (week / "outputs" / ".flatwork-written.jsonl").unlink()
    bid(week)
    assert bytes_of(week / "outputs") == before
    assert set(saved_as(bid(week)).values()) == {Saved.UNCHANGED}


def test_one_job_that_cannot_be_written_costs_no_other_its_workbook(
    week: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fails_one(job: Any) -> bytes:
        if job.job.id == "J1":
            raise ZeroDivisionError("no such luck")
        return short_workbook(job)

    monkeypatch.setattr(worker, "job_workbook", fails_one)
    taken = batch.load_run([week / "week.xlsx"], None, None)
    batch.bid(taken, week / "outputs")
    assert taken.failures == ["J1.xlsx: it could not be written: ZeroDivisionError: no such luck"] and taken.code == 3
    assert set(bytes_of(week / "outputs")) == {"J0.xlsx", "J2.xlsx", "week.xlsx"}


@pytest.mark.usefixtures("short_workbooks")
def test_a_folder_that_is_deleted_during_the_run_is_a_failure_of_each_job(week: Path) -> None:
    class Vanishing(batch.Progress):
        def step(self, name: str = "") -> None:
            shutil.rmtree(week / "outputs", ignore_errors=True)

    taken = batch.load_run([week / "week.xlsx"], None, None)
    batch.bid(taken, week / "outputs", progress=Vanishing())
    assert taken.code == 3 and len(taken.failures) == 3
    assert all("it cannot be written: no such file or directory" in each for each in taken.failures)


def test_few_slices_are_submitted_at_a_time_so_that_memory_use_is_bounded() -> None:
    class Slow(Executor):
        pending = most = 0

        def submit(self, fn: Callable[..., Any], /, *args: Any, **kwargs: Any) -> Future[Any]:
            Slow.pending += 1
            Slow.most = max(Slow.most, Slow.pending)
            future: Future[Any] = Future()
            future.set_result(fn(*args))
            return future

    def slices() -> Iterator[int]:
        yield from range(100)

    for place, result in enumerate(pool.map_slices(slices(), lambda each: each * 2, Slow(), 3, lambda: None)):
        Slow.pending -= 1
        assert result == place * 2
    assert Slow.pending == 0 and 3 <= Slow.most <= 8


@pytest.mark.usefixtures("short_workbooks")
def test_a_worker_that_the_system_kills_costs_no_job_its_workbook(week: Path, monkeypatch: pytest.MonkeyPatch) -> None:
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


def test_packing_a_job_loses_nothing(week: Path) -> None:
    jobs = batch.ready_jobs(batch.load_run([week / "week.xlsx"], None, None))
    unpack: list[JobInput] = serialize.unpack(serialize.pack(jobs))
    assert [repr(each) for each in unpack] == [repr(each) for each in jobs]
    assert [list(each.entries) for each in unpack] == [list(each.entries) for each in jobs]
    assert [serialize.job_fingerprint(each) for each in unpack] == [serialize.job_fingerprint(each) for each in jobs]


def test_no_two_declarations_have_one_id() -> None:
    """Else a job that another process unpacks could get the value of one declaration for the other."""
    named: Sequence[Any] = everything()
    assert len({each.id for each in named}) == len(named)
    assert all(serialize.level(str(level)) == level for level in {each.level for each in named if each.section.table})
