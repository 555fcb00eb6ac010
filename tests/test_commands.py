"""The commands as the office uses them: what they print, what they leave behind, and the exit code."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import openpyxl
import pytest

from books import HOUSE, write_book

ENVIRONMENT = {**os.environ, "PYTHONPATH": str(Path(__file__).parent.parent)}
GOOD = {
    "Jobs": [["job", "bid date"], ["24-031", "2026-04-13"]],
    "Areas": [["job", "length ft", "width ft"], ["24-031", "12' 6\"", "3"]],
}


def flatwork(*words: str | Path, cwd: Path, **environment: str) -> subprocess.CompletedProcess[str]:
    """The command as a process of its own."""
    return subprocess.run(
        [sys.executable, "-m", "calc.cli", *(str(word) for word in words)],
        cwd=cwd,
        capture_output=True,
        text=True,
        timeout=120,
        check=False,
        env={**ENVIRONMENT, **environment},
        stdin=subprocess.DEVNULL,
    )


@pytest.fixture
def week(tmp_path: Path) -> Path:
    """A folder with a week's book and a house book."""
    write_book(tmp_path / "house.xlsx", HOUSE)
    return write_book(tmp_path / "week.xlsx", GOOD)


def test_a_bid_leaves_a_workbook_a_job_and_one_of_the_week(week: Path) -> None:
    run = flatwork("bid", "week.xlsx", cwd=week.parent)
    assert (run.returncode, run.stderr) == (0, "")
    assert run.stdout == "1 job: 1 written to outputs, 0 held back; house book house.xlsx\n"
    assert {path.name for path in (week.parent / "outputs").glob("*.xlsx")} == {"24-031.xlsx", "week.xlsx"}


def test_a_file_dropped_on_a_shortcut_is_bid(week: Path) -> None:
    assert flatwork(week, cwd=week.parent).returncode == 0
    assert (week.parent / "outputs" / "24-031.xlsx").is_file()


def test_the_same_input_gives_the_same_bytes(week: Path) -> None:
    flatwork("bid", "week.xlsx", "-o", "one", cwd=week.parent)
    flatwork("bid", "week.xlsx", "-o", "two", cwd=week.parent)
    for name in ("24-031.xlsx", "week.xlsx"):
        assert (week.parent / "one" / name).read_bytes() == (week.parent / "two" / name).read_bytes()


def test_check_finds_what_bid_would_find_and_writes_nothing(week: Path) -> None:
    bad = {**GOOD, "Areas": [["job", "length ft", "width ft"], ["24-031", "ten", "3"]]}
    write_book(week, bad)
    before = sorted(week.parent.iterdir())
    checked = flatwork("check", "week.xlsx", cwd=week.parent)
    assert sorted(week.parent.iterdir()) == before
    assert checked.returncode == 1
    assert checked.stderr.startswith("week.xlsx Areas!B2: stop: Length: ")
    assert flatwork("bid", "week.xlsx", cwd=week.parent).stderr == checked.stderr


def test_three_broken_jobs_among_twenty_hold_back_no_other(week: Path) -> None:
    broken = {"24-104": "ten", "24-109": "10,5", "24-117": "-3"}
    ids = [f"24-{100 + place}" for place in range(20)]
    write_book(
        week,
        {
            "Jobs": [["job", "bid date"], *([id_, "2026-04-13"] for id_ in ids)],
            "Areas": [["job", "length ft", "width ft"], *([id_, broken.get(id_, "12"), "3"] for id_ in ids)],
        },
    )
    run = flatwork("bid", "week.xlsx", cwd=week.parent)
    written = {path.stem for path in (week.parent / "outputs").glob("24-*.xlsx")}
    assert run.returncode == 1
    assert written == set(ids) - set(broken)
    cells = [line.partition(": ")[0] for line in run.stderr.splitlines()]
    assert cells == ["week.xlsx Areas!B6", "week.xlsx Areas!B11", "week.xlsx Areas!B19"]
    assert "17 written" in run.stdout and "3 held back" in run.stdout
    assert not list((week.parent / "outputs").glob("*.part"))


def test_json_says_the_same_as_the_lines(week: Path) -> None:
    write_book(week, {**GOOD, "Areas": [["job", "length ft", "width ft"], ["24-031", "ten", "3"]]})
    run = flatwork("check", "week.xlsx", "--json", cwd=week.parent)
    said = json.loads(run.stdout)
    assert (said["exit"], said["jobs"], run.returncode) == (1, 1, 1)
    assert said["findings"][0] | {"found": "", "remedy": ""} == {
        "severity": "stop",
        "book": "week.xlsx",
        "sheet": "Areas",
        "cell": "B2",
        "job": "24-031",
        "found": "",
        "remedy": "",
    }


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (["bid"], 2, "Missing argument"),
        (["bid", "week.xlsx", "--bid-date", "yesterday"], 2, "is not a date"),
        (["bid", "week.xlsx", "--job", "99"], 2, "there is no job 99"),
        (["bid", "absent.xlsx"], 3, "absent.xlsx"),
        (["bid", "notes.txt"], 3, "notes.txt"),
        (["blank", "week.xlsx"], 3, "exists already"),
        (["blank", "week.csv"], 2, "does not end in .xlsx"),
        (["bid", "week.xlsx", "--house", "absent.xlsx"], 3, "absent.xlsx"),
    ],
)
def test_what_cannot_be_done_is_said_in_one_line(words: list[str], code: int, said: str, week: Path) -> None:
    (week.parent / "notes.txt").write_text("not a workbook")
    run = flatwork(*words, cwd=week.parent)
    assert run.returncode == code
    assert said in run.stderr
    assert "Traceback" not in run.stderr + run.stdout


def test_a_console_without_the_character_still_gets_its_line(tmp_path: Path) -> None:
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


def test_blanks_and_the_demo_are_there_from_any_folder(tmp_path: Path) -> None:
    assert flatwork("blank", "mine.xlsx", cwd=tmp_path).returncode == 0
    assert flatwork("blank", "house.xlsx", "--house", cwd=tmp_path).returncode == 0
    assert openpyxl.load_workbook(tmp_path / "mine.xlsx").sheetnames[1] == "Jobs"
    run = flatwork("demo", cwd=tmp_path)
    assert run.returncode == 0, run.stderr
    assert (tmp_path / "outputs" / "week.xlsx").is_file()


def test_a_stop_of_the_rules_is_an_exit_of_1_until_it_is_accepted_by_name(week: Path) -> None:
    thin = {**GOOD, "Areas": [["job", "length ft", "width ft", "thickness in"], ["24-031", "12", "3", "1.5"]]}
    write_book(week, thin)
    run = flatwork("bid", "week.xlsx", cwd=week.parent)
    assert run.returncode == 1 and "Slab too thin" in run.stderr
    assert (week.parent / "outputs" / "24-031.xlsx").is_file()
    accepted = [["job", "line", "reason", "who"], ["24-031", "Slab too thin", "a stepping stone", "MK"]]
    write_book(week, {**thin, "Overrides": accepted})
    assert flatwork("bid", "week.xlsx", cwd=week.parent).returncode == 0


def test_help_answers_without_the_heavy_libraries() -> None:
    heavy = "numpy", "openpyxl", "xlsxwriter", "pint", "pandas"
    code = (
        "import sys; from calc import cli; from click.testing import CliRunner;"
        f"CliRunner().invoke(cli.commands, ['--help']); print([each for each in {heavy!r} if each in sys.modules])"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, env=ENVIRONMENT)
    assert run.stdout.strip() == "[]"


def test_a_bid_that_finds_nothing_wrong_never_pays_for_pint(week: Path) -> None:
    code = (
        "import sys; from calc import cli; from click.testing import CliRunner;"
        f"r = CliRunner().invoke(cli.commands, ['bid', {str(week)!r}]); print(r.exit_code, 'pint' in sys.modules)"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, env=ENVIRONMENT)
    assert run.stdout.strip().splitlines()[-1] == "0 False"
