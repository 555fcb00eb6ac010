"""Safe writing of files: no edits are lost, no file is incomplete, no id gives a dangerous file name."""

from __future__ import annotations

import errno
import json
import os
import shutil
from pathlib import Path

import openpyxl
import pytest
from openpyxl.cell import Cell

from books import write_book
from calc import batch, files
from calc.batch import worker
from calc.errors import Unreadable
from calc.files import RECORD, Results, Saved, safe_name, write_new
from short_workbooks import short_workbook


def test_a_workbook_changed_by_hand_is_never_overwritten(tmp_path: Path) -> None:
    results = Results(tmp_path)
    path, saved = results.save("24-031.xlsx", b"one")
    assert saved is Saved.WRITTEN
    path.write_bytes(b"one, and a note of the foreman's")
    copy, saved = Results(tmp_path).save("24-031.xlsx", b"two")
    assert (copy.name, saved) == ("24-031 (2).xlsx", Saved.NUMBERED_COPY)
    assert path.read_bytes() == b"one, and a note of the foreman's"
    again, _ = Results(tmp_path).save("24-031.xlsx", b"three")
    assert (again.name, again.read_bytes()) == ("24-031 (2).xlsx", b"three")


@pytest.mark.parametrize("other", ["24-031 (2)", "week (2)", "CAFE\u0301 (2)"])
def test_a_copy_beside_an_edited_workbook_never_has_the_name_of_another_job(other: str, tmp_path: Path) -> None:
    edited = "Caf\u00e9" if other.startswith("CAF") else other.removesuffix(" (2)")
    results = Results(tmp_path, [f"{edited}.xlsx", f"{other}.xlsx"])
    results.save(f"{edited}.xlsx", b"one")[0].write_bytes(b"edited by hand")
    copy, _ = Results(tmp_path, results.names).save(f"{edited}.xlsx", b"two", "input")
    mine, _ = Results(tmp_path, results.names).save(f"{other}.xlsx", b"three", "input")
    assert (copy.name, copy.read_bytes()) == (f"{edited} (3).xlsx", b"two")
    assert (mine.name, mine.read_bytes()) == (f"{other}.xlsx", b"three")
    again = Results(tmp_path, results.names)
    assert [again.current(each.name, "input") for each in (mine, tmp_path / f"{edited}.xlsx")] == [mine, copy]


def test_the_workbook_of_a_job_that_is_not_in_this_run_is_not_taken_for_a_copy_of_another(tmp_path: Path) -> None:
    Results(tmp_path, ["A.xlsx", "A (2).xlsx"]).save("A (2).xlsx", b"another job")
    Results(tmp_path, ["A.xlsx"]).save("A.xlsx", b"one")[0].write_bytes(b"edited by hand")
    copy, _ = Results(tmp_path, ["A.xlsx"]).save("A.xlsx", b"two")
    assert (copy.name, (tmp_path / "A (2).xlsx").read_bytes()) == ("A (3).xlsx", b"another job")
    kept, _ = Results(tmp_path, ["A (3).xlsx"]).save("A (3).xlsx", b"a job of that name")
    assert (kept.name, copy.read_bytes()) == ("A (3) (2).xlsx", b"two")


def test_jobs_with_the_names_of_copies_keep_their_workbooks(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(worker, "job_workbook", short_workbook)
    jobs = ["A", "A (2)", "week (2)"]
    tables = {
        "Jobs": [["job", "bid date"], *([each, "2026-04-13"] for each in jobs)],
        "Areas": [["job", "length ft", "width ft"], *([each, 12, 3] for each in jobs)],
    }
    write_book(tmp_path / "jobs.xlsx", tables)
    folder = tmp_path / "out"
    for _ in range(2):
        run = batch.load_run([tmp_path / "jobs.xlsx"], None, None)
        batch.bid(run, folder)
        for name in ("A.xlsx", "week.xlsx"):
            (folder / name).write_bytes(b"edited by hand")
    assert {path.name for _, path, _ in run.written} == {"A (3).xlsx", "A (2).xlsx", "week (2).xlsx", "week (3).xlsx"}
    assert [job for job, path, _ in run.written if path.name in ("A (2).xlsx", "week (2).xlsx")] == jobs[1:]


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="a system without pipes in folders")
def test_a_pipe_or_a_link_under_the_name_of_a_result_is_kept_and_nobody_waits(tmp_path: Path) -> None:
    theirs = tmp_path / "theirs.xlsx"
    theirs.write_bytes(b"theirs")
    folder = tmp_path / "out"
    for make in (
        os.mkfifo,
        lambda path: path.symlink_to(theirs),
        lambda path: path.symlink_to(folder / "gone"),
        os.mkdir,
    ):
        Results(folder)
        make(folder / "A.xlsx")
        assert Results(folder).current("A.xlsx", "input") is None
        path, saved = Results(folder).save("A.xlsx", b"one", "input")
        assert (path.name, saved, theirs.read_bytes()) == ("A (2).xlsx", Saved.NUMBERED_COPY, b"theirs")
        assert Results(folder).current("A.xlsx", "input") == path
        with pytest.raises(Unreadable, match="the file exists already"):
            write_new(folder / "A.xlsx", b"one")
        (folder / RECORD).unlink()
        make(folder / RECORD)
        with pytest.raises(
            Unreadable, match=r"flatwork-written\.jsonl: it cannot be read: it is a link, a folder or a pipe"
        ):
            Results(folder)
        assert Results.names_in(folder) == set()
        shutil.rmtree(folder)


def test_each_file_is_on_the_disk_before_it_has_its_name_and_the_folder_once_a_run(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    calls: list[str] = []
    fsync, replace = os.fsync, os.replace
    monkeypatch.setattr(files.os, "fsync", lambda handle: (calls.append("sync"), fsync(handle)))
    monkeypatch.setattr(files.os, "replace", lambda *names: (calls.append("rename"), replace(*names)))
    results = Results(tmp_path)
    results.save("A.xlsx", b"one")
    results.save("B.xlsx", b"two")
    assert calls == ["sync", "rename", "sync", "rename"]
    results.sync()
    assert calls[4:] == ["sync", "sync"]


def test_a_workbook_of_the_program_is_replaced_in_place(tmp_path: Path) -> None:
    Results(tmp_path).save("24-031.xlsx", b"one")
    path, saved = Results(tmp_path).save("24-031.xlsx", b"two")
    assert (path.name, saved, path.read_bytes()) == ("24-031.xlsx", Saved.WRITTEN, b"two")
    assert Results(tmp_path).save("24-031.xlsx", b"two")[1] is Saved.UNCHANGED


@pytest.mark.parametrize("lock", [".~lock.24-031.xlsx#", "~$24-031.xlsx"])
def test_a_workbook_that_is_open_elsewhere_is_left_alone_and_named(lock: str, tmp_path: Path) -> None:
    Results(tmp_path).save("24-031.xlsx", b"one")
    (tmp_path / lock).write_text("")
    with pytest.raises(Unreadable, match=r"24-031\.xlsx: it is open in another program\. Close it and run again\."):
        Results(tmp_path).save("24-031.xlsx", b"two")
    assert (tmp_path / "24-031.xlsx").read_bytes() == b"one"


def test_a_full_disk_leaves_the_old_file_whole_and_no_half_of_the_new(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    Results(tmp_path).save("24-031.xlsx", b"one")

    def full(*_: object) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(files.os, "replace", full)
    with pytest.raises(Unreadable, match="no space left on device"):
        Results(tmp_path).save("24-031.xlsx", b"two")
    assert (tmp_path / "24-031.xlsx").read_bytes() == b"one"
    assert not list(tmp_path.glob("*.part")) and not list(tmp_path.glob(".*.part"))


def test_a_folder_that_cannot_be_created_is_reported_in_one_line(tmp_path: Path) -> None:
    (tmp_path / "outputs").write_text("a file")
    with pytest.raises(Unreadable, match="the folder cannot be created"):
        Results(tmp_path / "outputs")


def test_an_incomplete_record_costs_no_workbook(tmp_path: Path) -> None:
    Results(tmp_path).save("24-031.xlsx", b"one")
    with (tmp_path / RECORD).open("a") as record:
        record.write('{"file": "24-0')
    for data in (b"two", b"three"):
        path, saved = Results(tmp_path).save("24-031.xlsx", data)
        assert (path.name, saved) == ("24-031.xlsx", Saved.WRITTEN)


def test_after_a_full_disk_later_runs_still_recognize_their_workbooks(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    results = Results(tmp_path)
    whole = json.dumps

    def half(*things: object, **how: object) -> str:
        monkeypatch.setattr(files.json, "dumps", whole)
        with (tmp_path / RECORD).open("a") as record:
            record.write('{"file": "24-0')
        raise OSError(errno.ENOSPC, "No space left on device")

    results.save("24-031.xlsx", b"one", "input")
    monkeypatch.setattr(files.json, "dumps", half)
    with pytest.raises(Unreadable, match="no space left on device"):
        results.save("24-032.xlsx", b"two", "input")
    results.save("24-033.xlsx", b"three", "input")
    again = Results(tmp_path)
    assert [bool(again.current(f"24-03{n}.xlsx", "input")) for n in (1, 2, 3)] == [True, False, True]


def test_temporary_files_of_a_killed_run_are_deleted_and_no_others(tmp_path: Path) -> None:
    left, fresh, foreign = (tmp_path / name for name in (".a.xlsx.123.part", ".b.xlsx.124.part", "c.part"))
    for path in (left, fresh, foreign):
        path.write_bytes(b"half")
    for path in (left, foreign):
        os.utime(path, (0, 0))
    Results(tmp_path)
    assert [path.exists() for path in (left, fresh, foreign)] == [False, True, True]


@pytest.mark.parametrize("made_from", ["input", "another input"])
def test_only_a_complete_workbook_made_from_the_same_input_is_current(made_from: str, tmp_path: Path) -> None:
    Results(tmp_path).save("24-031.xlsx", b"one", "input")
    is_current = made_from == "input"
    assert (Results(tmp_path).current("24-031.xlsx", made_from) is not None) is is_current
    (tmp_path / "24-031.xlsx").write_bytes(b"on")
    assert Results(tmp_path).current("24-031.xlsx", made_from) is None


def test_a_record_that_cannot_be_read_is_reported_in_one_line(tmp_path: Path) -> None:
    (tmp_path / RECORD).mkdir()
    with pytest.raises(Unreadable, match=r"flatwork-written\.jsonl: it cannot be read"):
        Results(tmp_path)


@pytest.mark.parametrize(
    "job",
    ["../../x", "CON", "con.1", "a/b", "week", "..", "trailing. ", "x" * 200, 'a"<>|b', "LPT1", "\U0001f3d7" * 60],
)
def test_no_job_id_makes_a_file_name_that_leaves_the_folder_or_names_a_device(job: str) -> None:
    name = safe_name(job)
    assert name and len(name) <= 81 and len(f".{name} (99).xlsx.1234567.part".encode()) <= 255
    assert os.path.basename(name) == name and not name.startswith(".") and not name.endswith((".", " "))
    assert name.split(".")[0].casefold() not in {"con", "lpt1", "week"}


def test_two_ids_that_give_one_file_name_are_both_refused(tmp_path: Path) -> None:
    ids = ["a/b", "a:b", "Caf\u00e9", "fine"]
    write_book(
        tmp_path / "week.xlsx",
        {
            "Jobs": [["job", "bid date"], *([id_, "2026-04-13"] for id_ in ids)],
            "Areas": [["job", "length ft", "width ft"], *([id_, 12, 3] for id_ in ids)],
        },
    )
    run = batch.load_run([tmp_path / "week.xlsx"], None, None)
    batch.bid(run, tmp_path / "out")
    assert sorted(run.not_written) == ["a/b", "a:b"] and run.code == 1
    assert {path.stem for path in (tmp_path / "out").glob("*.xlsx")} == {"Café", "fine", "week"}


def test_a_workbook_that_cannot_be_written_does_not_stop_the_others(tmp_path: Path) -> None:
    write_book(
        tmp_path / "week.xlsx",
        {
            "Jobs": [["job", "bid date"], ["one", "2026-04-13"], ["two", "2026-04-13"]],
            "Areas": [["job", "length ft", "width ft"], ["one", 12, 3], ["two", 12, 3]],
        },
    )
    folder = tmp_path / "out"
    folder.mkdir()
    (folder / "~$one.xlsx").write_text("")
    run = batch.load_run([tmp_path / "week.xlsx"], None, None)
    batch.bid(run, folder)
    assert run.code == 3 and len(run.failures) == 1
    assert (folder / "two.xlsx").is_file() and not (folder / "one.xlsx").exists()


TEXTS = ["=1+1", "@SUM(1)", "{=1}", "http://x", "-1+2", "  spaced  ", "internal:Bid!A1", "☃ and é", "x" * 2000]


@pytest.fixture(scope="module")
def worded(tmp_path_factory: pytest.TempPathFactory) -> list[Cell]:
    """Every cell of the workbook of a job whose areas, plants and client have those words."""
    folder = tmp_path_factory.mktemp("worded")
    write_book(
        folder / "week.xlsx",
        {
            "Jobs": [["job", "bid date", "client", "notes"], ["one", "2026-04-13", TEXTS[0], TEXTS[1]]],
            "Areas": [
                ["area", "length ft", "width ft", "notes"],
                *([f"A{n}", 12, 3, text] for n, text in enumerate(TEXTS)),
            ],
            "Plants": [["what", "width ft", "notes"], *([text, 1, text] for text in TEXTS)],
        },
    )
    run = batch.load_run([folder / "week.xlsx"], None, None)
    batch.bid(run, folder / "out")
    return [cell for sheet in openpyxl.load_workbook(folder / "out" / "one.xlsx") for row in sheet for cell in row]


@pytest.mark.parametrize("text", TEXTS)
def test_words_that_look_like_a_formula_or_a_link_come_out_as_words(text: str, worded: list[Cell]) -> None:
    cells = [cell for cell in worded if cell.value == text]
    assert len(cells) >= 3 and all(cell.data_type == "s" and cell.hyperlink is None for cell in cells)
