"""How a run of many jobs does: workers, memory, a run with nothing to do, and the way that people do it by hand.

Whole processes, each timed once: a run of hundreds of jobs is its own average. What is compared was run in turn, on one
machine, with nothing else on it if the figures are to mean anything.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import openpyxl

sys.path.insert(0, str(Path(__file__).parent / "support"))

from books import COMPANY, Rows, write_book
from witness import Program, available, recalculate

JOBS, FILES, BY_HAND = 500, 10, 10
"""Jobs of a book, books of the long run, and workbooks that are filled in the way of a template."""

FLATWORK = "import sys; from calc.cli import main; main()"


@dataclass(frozen=True)
class Took:
    """What a process took: seconds, and the kilobytes that the largest of it and its workers had at their highest."""

    seconds: float
    peak: int


@dataclass(frozen=True)
class Ratio:
    """One line of the benchmark."""

    name: str
    value: float
    aim: str


def of_batches(folder: Path, jobs: int = JOBS, files: int = FILES) -> Iterator[Ratio]:
    """The ratios of a run of many jobs, as they are found."""
    one, many = folder / "one", folder / "many"
    write_weeks(one, 1, jobs)
    alone = bid(one, "alone", "--workers", "1")
    both = bid(one, "both", "--workers", "2")
    yield Ratio(f"{jobs} jobs: one worker over two", alone.seconds / both.seconds, "aim 1.7")
    again = bid(one, "both", "--workers", "2")
    yield Ratio(f"{jobs} jobs again with nothing changed over the first time", again.seconds / both.seconds, "aim 0.1")
    if available(Program.LIBREOFFICE):
        template = next((one / "alone").glob("J*.xlsx"))
        by_hand = filled_by_hand(template, folder / "by hand") / BY_HAND
        name = f"filling and recalculating a template, {BY_HAND} in one call, over ours, a job"
        yield Ratio(name, by_hand / (alone.seconds / jobs), "aim 8")
    write_weeks(many, files, jobs)
    long = bid(many, "long", "--workers", "2")
    name = f"peak memory of {jobs * files:,} jobs from {files} books over {jobs} from one"
    yield Ratio(name, long.peak / both.peak, "aim 1.5")


def write_weeks(folder: Path, files: int, jobs: int) -> None:
    """So many books of so many jobs, of one to four areas each, no two alike."""
    folder.mkdir()
    write_book(folder / "company.xlsx", COMPANY)
    for file in range(files):
        heads: list[list[object]] = [["job", "client", "bid date", "pour date"]]
        areas: list[list[object]] = [
            ["job", "area", "length ft", "width ft", "formed ft", "doweled edge ft", "dowel spacing in"]
        ]
        for number in range(jobs):
            id_ = f"J{file}-{number:04}"
            heads.append([id_, f"Client {number % 37}", "2026-04-13", f"2026-05-{1 + number % 28:02}"])
            for area in range(1 + number % 4):
                length = 8 + (number * 7 + area * 3) % 90 / 4
                areas.append([id_, f"A{area + 1}", length, 3 + area / 2, 2 * length, 3, 12])
        tables: dict[str, Rows] = {"Jobs": heads, "Areas": areas}
        write_book(folder / f"week{file:02}.xlsx", tables)


def bid(folder: Path, into: str, *options: str) -> Took:
    """Bids all the books of a folder, as a process of its own with its modules compiled before."""
    kept = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    command = [sys.executable, "-c", FLATWORK, "bid", str(folder), "-o", str(folder / into), *options]
    start = time.perf_counter()
    run = subprocess.Popen(command, env=kept, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    _, status, used = os.wait4(run.pid, 0)
    run.returncode = os.waitstatus_to_exitcode(status)
    assert run.returncode in (0, 1), f"the run ended with {run.returncode}"
    return Took(time.perf_counter() - start, used.ru_maxrss)


def filled_by_hand(template: Path, folder: Path) -> float:
    """Seconds to type into copies of a workbook by openpyxl, and to have them recalculated."""
    folder.mkdir()
    start = time.perf_counter()
    copies = []
    for number in range(BY_HAND):
        book = openpyxl.load_workbook(template)
        cells = (cell for row in book["Measured"].iter_rows() for cell in row)
        typed = [cell for cell in cells if isinstance(cell.value, int | float)]
        for cell in typed[:5]:
            cell.value += number / 8
        copies.append(folder / f"{number}.xlsx")
        book.save(copies[-1])
    recalculate(copies, Program.LIBREOFFICE, folder)
    took = time.perf_counter() - start
    shutil.rmtree(folder)
    return took
