"""The commands as the office uses them: what they print, what they write, and the exit code."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
from pathlib import Path

import openpyxl
import pytest

from books import write_book
from calc.batch.pool import MIN_WORKBOOKS
from calc.cli import commands
from folders import ROOT, SUPPORT
from priced_company import PRICED

pytestmark = pytest.mark.slow

ENVIRONMENT = {**os.environ, "PYTHONPATH": str(ROOT)}
GOOD = {
    "Jobs": [["job", "bid date"], ["24-031", "2026-04-13"]],
    "Areas": [["job", "length ft", "width ft"], ["24-031", "12' 6\"", "3"]],
}


MIXED = {
    "Jobs": [["job", "bid date", "reminder"], ["24-031", "2026-04-13", ""], ["24-032", "2026-04-13", "call first"]],
    "Areas": [["job", "length ft", "width ft"], ["24-031", "ten", "3"], ["24-032", "10' 14\"", "3"]],
}
"""A jobs book with an error, a question and a note."""

JSON_SAMPLE = Path(__file__).with_name("check.json")
"""The output of ``flatwork check --json`` for :data:`MIXED`."""

FULL, SHORT = ("-m", "calc.cli"), (str(SUPPORT / "short_workbooks.py"),)
"""The command, and the command with short workbooks, for tests that write many and do not read them."""


def flatwork(
    *words: str | Path, cwd: Path, program: tuple[str, ...] = FULL, **environment: str
) -> subprocess.CompletedProcess[str]:
    """The command as a process of its own."""
    return subprocess.run(
        [sys.executable, *program, *(str(word) for word in words)],
        cwd=cwd,
        capture_output=True,
        text=True,
        timeout=120,
        check=False,
        env={**ENVIRONMENT, **environment},
        stdin=subprocess.DEVNULL,
    )


def messages(run: subprocess.CompletedProcess[str]) -> list[str]:
    """The messages of a command, without the note about missing prices."""
    return [line for line in run.stderr.splitlines() if "no price: " not in line]


@pytest.fixture
def week(tmp_path: Path) -> Path:
    """A folder with a jobs book and a company book."""
    write_book(tmp_path / "company.xlsx", PRICED)
    return write_book(tmp_path / "week.xlsx", GOOD)


@pytest.fixture(scope="module")
def done(tmp_path_factory: pytest.TempPathFactory) -> tuple[subprocess.CompletedProcess[str], Path]:
    """The bid of the jobs book as a process of its own, and the folder in which that was."""
    folder = tmp_path_factory.mktemp("done")
    write_book(folder / "company.xlsx", PRICED)
    write_book(folder / "week.xlsx", GOOD)
    return flatwork("bid", "week.xlsx", cwd=folder, PYTHONHASHSEED="1"), folder


def test_a_bid_writes_one_workbook_per_job_and_one_of_the_week(
    done: tuple[subprocess.CompletedProcess[str], Path],
) -> None:
    run, folder = done
    assert (run.returncode, messages(run)) == (0, [])
    head, job, last = run.stdout.splitlines()
    assert head.split()[:2] == ["Job", "State"] and job.split()[:2] == ["24-031", "READY"]
    assert last == ("1 job: 1 written to outputs, 0 not written; company book company.xlsx. Open outputs/24-031.xlsx")
    assert {path.name for path in (folder / "outputs").glob("*.xlsx")} == {"24-031.xlsx", "week.xlsx"}


def test_a_file_dropped_on_a_shortcut_is_bid(week: Path) -> None:
    assert flatwork(week, cwd=week.parent, program=SHORT).returncode == 0
    assert (week.parent / "outputs" / "24-031.xlsx").is_file()


def test_the_same_input_gives_the_same_bytes(done: tuple[subprocess.CompletedProcess[str], Path]) -> None:
    _, folder = done
    flatwork("bid", "week.xlsx", "-o", "again", cwd=folder, PYTHONHASHSEED="2")
    for name in ("24-031.xlsx", "week.xlsx"):
        assert (folder / "again" / name).read_bytes() == (folder / "outputs" / name).read_bytes()


def test_the_same_command_again_reports_unchanged_workbooks(week: Path) -> None:
    flatwork("bid", "week.xlsx", cwd=week.parent, program=SHORT, PYTHONHASHSEED="1")
    run = flatwork("bid", "week.xlsx", cwd=week.parent, program=SHORT, PYTHONHASHSEED="2")
    assert "1 job: 0 written to outputs, 1 unchanged, 0 not written; company book company.xlsx." in run.stdout
    data = json.loads(flatwork("bid", "week.xlsx", "--json", cwd=week.parent, program=SHORT).stdout)
    assert [each["how"] for each in data["written"]] == ["unchanged", "unchanged"]


def test_a_full_disk_is_not_reported_a_thousand_times(week: Path) -> None:
    ids = [f"24-{100 + place}" for place in range(13)]
    jobs, areas = [["job", "bid date"]], [["job", "length ft", "width ft"]]
    write_book(
        week,
        {"Jobs": [*jobs, *([id_, "2026-04-13"] for id_ in ids)], "Areas": [*areas, *([id_, 12, 3] for id_ in ids)]},
    )
    (week.parent / "outputs").mkdir()
    for id_ in ids:
        (week.parent / "outputs" / f"~${id_}.xlsx").write_text("")
    run = flatwork("bid", "week.xlsx", "--workers", "1", cwd=week.parent, program=SHORT)
    assert run.returncode == 3 and "0 written" in run.stdout and "13 failed" in run.stdout
    failures = messages(run)
    assert len(failures) == 11 and failures[-1] == "3 more failures. --json lists all of them."


WITH_CTRL_C = """
import signal
signal.signal(signal.SIGINT, signal.default_int_handler)
from calc.cli import main
main()
"""
"""The command with the handler of Ctrl-C, which processes started in the background do not have."""


def under_a_terminal(words: list[str], folder: Path, stop_at: str = "") -> tuple[int, str]:
    """The exit code of a command and its output on a terminal; Ctrl-C is sent when ``stop_at`` shows."""
    shown, terminal = os.openpty()
    command = [sys.executable, "-c", WITH_CTRL_C, *words]
    run = subprocess.Popen(
        command, cwd=folder, env=ENVIRONMENT, stdin=terminal, stdout=terminal, stderr=terminal, start_new_session=True
    )
    os.close(terminal)
    text = ""
    while True:
        try:
            piece = os.read(shown, 1024).decode()
        except OSError:
            break  # the program has closed its end of the terminal
        if not piece:
            break
        text += piece
        if stop_at and stop_at in text:
            os.killpg(run.pid, signal.SIGINT)
            stop_at = ""
    os.close(shown)
    return run.wait(), text


@pytest.mark.skipif(not hasattr(os, "openpty"), reason="needs a terminal to look at")
def test_a_terminal_shows_the_progress_and_a_pipe_does_not(
    week: Path, done: tuple[subprocess.CompletedProcess[str], Path]
) -> None:
    code, shown = under_a_terminal(["bid", "week.xlsx"], week.parent)
    assert code == 0 and "Bidding" in shown and "1/1" in shown and "a second" in shown
    assert "Bidding" not in done[0].stderr


@pytest.mark.skipif(not hasattr(os, "openpty"), reason="needs a terminal to stop it from")
@pytest.mark.parametrize(("workers", "jobs"), [(1, 5), (2, MIN_WORKBOOKS)])
def test_a_run_stopped_by_ctrl_c_continues_with_the_same_command(workers: int, jobs: int, week: Path) -> None:
    ids = [f"24-{100 + place}" for place in range(jobs)]
    heads, areas = [["job", "bid date"]], [["job", "length ft", "width ft"]]
    write_book(
        week,
        {"Jobs": [*heads, *([id_, "2026-04-13"] for id_ in ids)], "Areas": [*areas, *([id_, 12, 3] for id_ in ids)]},
    )
    words = ["bid", "week.xlsx", "--workers", str(workers)]
    code, shown = under_a_terminal(words, week.parent, stop_at=f" 2/{jobs}")
    assert code == 3 and "Run the same command again to continue" in shown and "Traceback" not in shown
    done = len(list((week.parent / "outputs").glob("24-*.xlsx")))
    assert 2 <= done < jobs
    run = flatwork("bid", "week.xlsx", "--workers", "1", cwd=week.parent, program=SHORT)
    assert f"{jobs - done} written to outputs, {done} unchanged" in run.stdout


def test_check_prints_the_findings_of_bid_and_writes_nothing(week: Path) -> None:
    bad = {**GOOD, "Areas": [["job", "length ft", "width ft"], ["24-031", "ten", "3"]]}
    write_book(week, bad)
    before = sorted(week.parent.iterdir())
    checked = flatwork("check", "week.xlsx", cwd=week.parent)
    assert sorted(week.parent.iterdir()) == before
    assert checked.returncode == 1
    assert messages(checked)[0].startswith("week.xlsx Areas!B2: error: Length: ")
    assert flatwork("bid", "week.xlsx", cwd=week.parent).stderr == checked.stderr


def test_three_jobs_with_errors_among_twenty_keep_no_other_from_being_written(week: Path) -> None:
    broken = {"24-104": "ten", "24-109": "10,5", "24-117": "-3"}
    ids = [f"24-{100 + place}" for place in range(20)]
    write_book(
        week,
        {
            "Jobs": [["job", "bid date"], *([id_, "2026-04-13"] for id_ in ids)],
            "Areas": [["job", "length ft", "width ft"], *([id_, broken.get(id_, "12"), "3"] for id_ in ids)],
        },
    )
    run = flatwork("bid", "week.xlsx", "--workers", "1", cwd=week.parent, program=SHORT)
    written = {path.stem for path in (week.parent / "outputs").glob("24-*.xlsx")}
    assert run.returncode == 1
    assert written == set(ids) - set(broken)
    cells = [line.partition(": ")[0] for line in messages(run)]
    assert cells == ["week.xlsx Areas!B6", "week.xlsx Areas!B11", "week.xlsx Areas!B19"]
    assert "17 written" in run.stdout and "3 not written" in run.stdout
    assert not list((week.parent / "outputs").glob("*.part"))


def test_json_has_the_fields_that_other_programs_read(week: Path) -> None:
    """Fields are only ever added: the stored sample changes with a new field, never by a renamed or removed one."""
    write_book(week, MIXED)
    run = flatwork("check", "week.xlsx", "--json", cwd=week.parent)
    assert (run.returncode, run.stderr) == (1, "")
    data, sample = json.loads(run.stdout), json.loads(JSON_SAMPLE.read_text(encoding="utf-8"))
    for found, expected in zip(data["findings"], sample["findings"], strict=True):
        assert found["found"]
        expected |= {"found": found["found"], "remedy": found["remedy"]}  # sentences may be reworded
    for told, expected in zip(data["results"], sample["results"], strict=True):
        assert told.keys() == expected.keys()
        assert [each.keys() for each in told["cautions"][:1]] == [each.keys() for each in expected["cautions"]]
    assert data | {"results": sample["results"]} == sample
    assert data["schema"] == 1
    assert {each["severity"] for each in data["findings"]} == {"error", "question", "note"}


@pytest.mark.parametrize(
    ("words", "code", "message"),
    [
        (["bid"], 2, "Missing argument"),
        (["bid", "week.xlsx", "--bid-date", "yesterday"], 2, "is not a date"),
        (["bid", "absent.xlsx"], 3, "absent.xlsx"),
        (["bid", "notes.txt"], 3, "notes.txt"),
        (["blank", "week.xlsx"], 3, "exists already"),
        (["blank", "week.csv"], 2, "does not end in .xlsx"),
        (["bid", "week.xlsx", "--company", "absent.xlsx"], 3, "absent.xlsx"),
    ],
)
def test_a_command_that_cannot_be_done_is_reported_in_one_line(
    words: list[str],
    code: int,
    message: str,
    week: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    """In this process, in which an error that ends in a stack trace is one of the test."""
    (week.parent / "notes.txt").write_text("not a workbook")
    monkeypatch.chdir(week.parent)
    with pytest.raises(SystemExit) as end:
        commands.main(words, prog_name="flatwork")
    assert end.value.code == code
    assert message in capsys.readouterr().err


def test_a_wrong_word_ends_the_process_with_its_code_and_in_one_line(week: Path) -> None:
    run = flatwork("bid", "week.xlsx", "--job", "99", cwd=week.parent)
    assert (run.returncode, run.stdout) == (2, "")
    assert "there is no job 99" in run.stderr and "Traceback" not in run.stderr


def test_a_console_without_the_character_still_shows_the_message(tmp_path: Path) -> None:
    write_book(
        tmp_path / "week.xlsx",
        {
            "Jobs": [["job", "bid date"], ["Café ☃", "2026-04-13"]],
            "Areas": [["job", "length ft", "width ft"], ["Café ☃", "☃", "3"]],
        },
    )
    run = flatwork("bid", "week.xlsx", cwd=tmp_path, PYTHONIOENCODING="ascii")
    assert run.returncode == 1
    assert "Areas!B2" in run.stderr and "Traceback" not in run.stderr


def test_blanks_and_the_demo_are_available_in_any_folder(tmp_path: Path) -> None:
    assert flatwork("blank", "mine.xlsx", cwd=tmp_path).returncode == 0
    assert flatwork("blank", "company.xlsx", "--company", cwd=tmp_path).returncode == 0
    assert openpyxl.load_workbook(tmp_path / "mine.xlsx").sheetnames[1] == "Jobs"
    run = flatwork("demo", cwd=tmp_path, program=SHORT)
    assert run.returncode == 0, run.stderr
    assert "The slab slopes toward a building" in run.stderr
    assert (tmp_path / "outputs" / "week.xlsx").is_file()


def test_an_open_stop_caution_is_an_exit_code_of_1_until_it_is_acknowledged(week: Path) -> None:
    thin = {**GOOD, "Areas": [["job", "length ft", "width ft", "thickness in"], ["24-031", "12", "3", "1.5"]]}
    write_book(week, thin)
    run = flatwork("bid", "week.xlsx", cwd=week.parent, program=SHORT)
    assert run.returncode == 1 and "Slab too thin" in run.stderr
    assert (week.parent / "outputs" / "24-031.xlsx").is_file()
    acknowledged = [["job", "line", "reason", "who"], ["24-031", "Slab too thin", "a stepping stone", "MK"]]
    write_book(week, {**thin, "Overrides": acknowledged})
    assert flatwork("bid", "week.xlsx", cwd=week.parent, program=SHORT).returncode == 0


def test_help_starts_without_the_heavy_libraries() -> None:
    heavy = "numpy", "openpyxl", "xlsxwriter", "pint", "pandas"
    code = (
        "import sys; from calc import cli; from click.testing import CliRunner;"
        f"CliRunner().invoke(cli.commands, ['--help']); print([each for each in {heavy!r} if each in sys.modules])"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, env=ENVIRONMENT)
    assert run.stdout.strip() == "[]"


def test_a_bid_without_errors_never_imports_pint(week: Path) -> None:
    code = (
        "import sys; from calc import cli; from click.testing import CliRunner;"
        f"r = CliRunner().invoke(cli.commands, ['bid', {str(week)!r}]); print(r.exit_code, 'pint' in sys.modules)"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, env=ENVIRONMENT)
    assert run.stdout.strip().splitlines()[-1] == "0 False"
