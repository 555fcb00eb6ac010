"""Runs killed at any moment: no incomplete workbook, no process left behind, and the same command continues."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import time
import zipfile
from collections.abc import Callable, Iterator
from contextlib import suppress
from pathlib import Path

import pytest

from books import COMPANY, Rows, write_book
from folders import ROOT, SUPPORT

pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(not hasattr(os, "fork"), reason="runs are forked, so that each starts at once"),
]

KILLS, KILLS_OF_SEVERAL_PROCESSES = max(8, int(os.environ.get("FLATWORK_FUZZ", "0")) // 50), 2
GOLDEN = 0.618034
"""Each kill at this share of a run after the one before, round and round: few of them leave no long stretch untried."""
NOT_READY = 1
"""The exit code of a whole run whose company has no prices."""

SERVER = """
import json, os, sys, warnings
from pathlib import Path
from calc import batch, cli
from calc.batch import worker, pool
from calc.xlsx_write.write import job_workbook
from short_workbooks import short_workbook

warnings.simplefilter("ignore")
for line in sys.stdin:
    request = json.loads(line)
    worker.job_workbook = short_workbook if request["short"] else job_workbook
    pool.MIN_WORKBOOKS = request["few"]
    if request["warm"]:
        batch.bid(batch.load_run([Path(request["words"][1])], None, None), Path(request["words"][3]), workers=1)
    pid = os.fork()
    if not pid:
        os.setpgid(0, 0)
        nothing = os.open(os.devnull, os.O_RDWR)
        for stream in range(3):
            os.dup2(nothing, stream)
        sys.argv = ["flatwork", *request["words"]]
        try:
            cli.main()
        except SystemExit as end:
            os._exit(end.code)
        os._exit(70)
    print(pid, flush=True)
    print(os.waitstatus_to_exitcode(os.waitpid(pid, 0)[1]), flush=True)
"""
"""Runs each requested command in a process group of its own, without the half second that imports take.

Where it is told so, a job's workbook is short, so that twelve runs take seconds: what is looked at is how files come to
be. Where it is told to get warm, it bids itself first, and the plans of those workbooks are there for every run.
"""


class Server:
    """Runs commands, and kills them on request."""

    def __init__(self) -> None:
        environment = {**os.environ, "PYTHONPATH": os.pathsep.join((str(ROOT), str(SUPPORT)))}
        pipe = subprocess.PIPE
        self.process = subprocess.Popen(
            [sys.executable, "-c", SERVER], stdin=pipe, stdout=pipe, text=True, env=environment
        )

    def run(
        self, words: list[str], short: bool, killed_after: float | None = None, few: int = 1000, warm: bool = False
    ) -> int:
        """The exit code of a command, killed with all its processes after ``killed_after`` seconds."""
        assert self.process.stdin and self.process.stdout
        request = {"words": words, "short": short, "few": few, "warm": warm}
        self.process.stdin.write(json.dumps(request) + "\n")
        self.process.stdin.flush()
        group = int(self.process.stdout.readline())
        if killed_after is not None:
            time.sleep(killed_after)
            with suppress(ProcessLookupError):  # it ended before
                os.killpg(group, signal.SIGKILL)
        return int(self.process.stdout.readline())

    def close(self) -> None:
        """Ends the server."""
        assert self.process.stdin and self.process.stdout
        self.process.stdin.close()
        self.process.wait()
        self.process.stdout.close()


@pytest.fixture(scope="module")
def server() -> Iterator[Server]:
    """The server of all kills."""
    started = Server()
    yield started
    started.close()


def write_week(path: Path, edition: int, jobs: int) -> None:
    """A jobs book in which every job differs in every edition."""
    tables: dict[str, Rows] = {
        "Jobs": [["job", "client", "bid date"], *([f"J{n}", f"Edition {edition}", "2026-04-13"] for n in range(jobs))],
        "Areas": [["job", "length ft", "width ft"], *([f"J{n}", 10 + n, 3] for n in range(jobs))],
    }
    write_book(path, tables)


def workbooks(folder: Path) -> dict[str, bytes]:
    """Every workbook in a folder of results; each must be a complete zip file."""
    found = {path.name: path.read_bytes() for path in sorted(folder.glob("*.xlsx"))}
    for name in found:
        with zipfile.ZipFile(folder / name) as whole:
            assert whole.testzip() is None, f"{name} is broken"
    return found


@pytest.mark.parametrize(
    ("kills", "jobs", "alone"),
    [(KILLS, 2, True), (KILLS_OF_SEVERAL_PROCESSES, 2, False)],
    ids=["alone", "with workers"],
)
def test_a_run_killed_at_any_moment_leaves_complete_files_and_the_same_command_continues(
    kills: int, jobs: int, alone: bool, server: Server, tmp_path: Path
) -> None:
    """Each run replaces the results of another edition, so that there are old workbooks of the same names."""
    write_book(tmp_path / "company.xlsx", COMPANY)
    undisturbed, commands = [], []
    for edition in range(2):
        week = tmp_path / f"edition {edition}.xlsx"
        write_week(week, edition, jobs)
        commands.append(["bid", str(week), "-o", str(tmp_path / "results"), "--workers", "2"])
        whole = tmp_path / f"undisturbed {edition}"
        assert server.run(["bid", str(week), "-o", str(whole)], alone, warm=True) == NOT_READY
        undisturbed.append(workbooks(whole))
    assert len(undisturbed[0]) == jobs + 1 and all(
        undisturbed[0][name] != undisturbed[1][name] for name in undisturbed[0]
    )
    few = 1000 if alone else 1
    start = time.monotonic()
    assert server.run(commands[1], alone, few=few) == NOT_READY
    longest = time.monotonic() - start
    killed = runs = 0
    while killed < kills:
        edition = runs % 2
        runs += 1
        killed += server.run(commands[edition], alone, longest * (runs * GOLDEN % 1), few) < 0
        left = workbooks(tmp_path / "results")
        assert all(data in (each[name] for each in undisturbed) for name, data in left.items())
        assert server.run(commands[edition], alone) == NOT_READY
        assert workbooks(tmp_path / "results") == undisturbed[edition]
        assert runs < 10 * kills, "the runs are over before they can be killed"


@pytest.mark.skipif(not Path("/proc/self/stat").exists(), reason="looks for processes where Linux lists them")
def test_no_worker_is_left_behind_when_the_run_is_killed(tmp_path: Path) -> None:
    write_week(tmp_path / "week.xlsx", 0, 40)
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    command = [sys.executable, "-m", "calc.cli", "bid", str(tmp_path / "week.xlsx"), "--workers", "2"]
    run = subprocess.Popen(command, env=environment, start_new_session=True, stderr=subprocess.DEVNULL)
    try:
        assert waited(lambda: len(session(run.pid)) >= 3), "the workers never came"
        assert waited((tmp_path / "outputs" / "J0.xlsx").exists)
        run.kill()
        run.wait()
        assert waited(lambda: not session(run.pid)), "workers were left behind"
    finally:
        for pid in session(run.pid):
            os.kill(pid, signal.SIGKILL)
        run.kill()
        run.wait()


def waited(for_what: Callable[[], bool], seconds: float = 30) -> bool:
    """Whether something came true in time."""
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        if for_what():
            return True
        time.sleep(0.05)
    return False


def session(leader: int) -> list[int]:
    """The living processes of a session."""
    found = []
    for stat in Path("/proc").glob("[0-9]*/stat"):
        try:
            state, _, _, of_session = stat.read_text().rpartition(")")[2].split()[:4]
        except OSError:
            continue  # it ended in the meantime
        if int(of_session) == leader and state != "Z":
            found.append(int(stat.parent.name))
    return found
