"""How fast: ratios to something bare that was timed in the same run, so that they mean the same on every machine.

Run it by name, it is no test: ``python tests/benchmark.py``, where the program and its extra ``dev`` are installed.
Each pair is timed in turn, so that a busy moment of the machine falls on both; what is printed is the median of the
ratios, and the least and the greatest of them.
"""

from __future__ import annotations

import gc
import os
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path

import xlsxwriter

sys.path.insert(0, str(Path(__file__).parent / "support"))

from benchmark_batch import of_batches
from books import COMPANY, Rows, intake_from, write_book
from calc.batch import CHUNK, evaluated, load_run, ready_jobs
from calc.batch.pool import GC_THRESHOLD
from calc.files import shipped
from calc.intake.records import JobInput
from calc.layout import workbook as plan
from calc.layout.addresses import CellMap
from calc.layout.bid_cautions import slots_for
from calc.layout.log_sheet import log_page
from calc.layout.styles import properties
from calc.model.evaluate import evaluate
from calc.model.results import JobValues
from calc.model.sensitivity import with_sensitivity
from calc.xlsx_write.write import job_workbook

LIBRARIES = "import click, numpy, openpyxl, xlsxwriter, defusedxml"
"""What a bid has to import, whatever it does with them."""

FLATWORK = "import sys; from calc.cli import main; main()"
"""What the command runs."""

WRITTEN, AREAS, JOBS = 20, 6, 1000
"""Workbooks that are written, and the jobs, of so many areas each, whose evaluation is held against that."""

Work = Callable[[], object]


@dataclass(frozen=True)
class Pair:
    """Two pieces of work of which the first is held against the second; ``aim`` is the ratio that is hoped for."""

    name: str
    ours: Work
    bare: Work
    aim: str
    runs: int


def main() -> None:
    """Prints a line for each pair, then one for each ratio of a run of many jobs: those take most of the time."""
    gc.set_threshold(GC_THRESHOLD)  # as the command has it
    with tempfile.TemporaryDirectory() as folder:
        one, many = Path(folder, "small"), Path(folder, "evaluated")
        one.mkdir()
        many.mkdir()
        for pair in (*of_workbooks(), *of_processes(one), of_evaluation(many)):
            found = sorted(ratios(pair))
            middle = statistics.median(found)
            print(f"{pair.name:<78} {middle:5.2f}  ({found[0]:.2f} to {found[-1]:.2f})  {pair.aim}", flush=True)
        for each in of_batches(Path(folder)):
            print(f"{each.name:<78} {each.value:5.2f}  {each.aim}", flush=True)


def ratios(pair: Pair) -> list[float]:
    """The ratio of each run; one run of both goes before them and is not counted."""
    pair.ours()
    pair.bare()
    return [seconds(pair.ours) / seconds(pair.bare) for _ in range(pair.runs)]


def seconds(work: Work) -> float:
    """How long a piece of work takes, with no garbage of others to search."""
    gc.collect()
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def of_workbooks() -> list[Pair]:
    """The first job of the demo: its workbook over the same cells with the same looks, written by xlsxwriter alone."""
    run = load_run([shipped("sample_inputs") / "jobs.xlsx"], None, None)
    job = with_sensitivity(next(evaluated(ready_jobs(run))))
    cells = cells_of(job)

    def unplanned() -> None:
        plan.plan_of.cache_clear()
        plan.papers_of.cache_clear()
        plan._layout.cache_clear()
        job_workbook(job)

    count = sum(len(sheet) for _, sheet in cells)
    name = f"a job workbook ({count:,} cells) over xlsxwriter alone"
    return [
        Pair(f"{name}, the first of its shape", unplanned, lambda: bare_workbook(cells), "aim 1.2, hoped 0.5", 9),
        Pair(f"{name}, any other", lambda: job_workbook(job), lambda: bare_workbook(cells), "aim 1.2, hoped 0.5", 9),
    ]


CellValue = tuple[int, int, str, float | str | None, plan.Style]
"""A cell as it is written: row, column, formula, value, and its look."""


def cells_of(job: JobValues) -> list[tuple[str, list[CellValue]]]:
    """Every cell of a job's workbook, by sheet."""
    shape = job.shape, slots_for(job)
    sheets = [*plan.plan_of(*shape), plan.resolve(log_page(job.job), CellMap()), *plan.papers_of(*shape)]
    return [
        (
            sheet.page.name,
            [(cell.row, cell.col, cell.formula_for(job), cell.shows(job), cell.style) for cell in sheet.cells],
        )
        for sheet in sheets
    ]


def bare_workbook(sheets: Sequence[tuple[str, list[CellValue]]]) -> bytes:
    """The same cells with the same looks, and nothing else."""
    buffer = BytesIO()
    book = xlsxwriter.Workbook(buffer, {"in_memory": True})
    faces = {look: book.add_format(properties(*look)) for look in {cell[4] for _, cells in sheets for cell in cells}}
    for name, cells in sheets:
        sheet = book.add_worksheet(name)
        for row, col, formula, value, look in cells:
            if formula:
                sheet.write_formula(row, col, f"={formula}", faces[look], value)
            elif value is None or value == "":
                sheet.write_blank(row, col, None, faces[look])
            elif isinstance(value, str):
                sheet.write_string(row, col, value, faces[look])
            else:
                sheet.write_number(row, col, value, faces[look])
    book.close()
    return buffer.getvalue()


def of_processes(folder: Path) -> list[Pair]:
    """Whole processes, from an empty console to the last file: what a person waits for."""
    write_book(folder / "week.xlsx", one_job())
    write_book(folder / "company.xlsx", COMPANY)

    def bid() -> None:
        with tempfile.TemporaryDirectory(dir=folder) as into:  # a workbook that is there already is not made again
            python(folder, FLATWORK, "bid", str(folder / "week.xlsx"), "-o", into)()
            assert Path(into, "26-050.xlsx").is_file()

    return [
        Pair("flatwork bid of one job over importing its libraries", bid, python(folder, LIBRARIES), "aim 2", 11),
        Pair("flatwork --help over importing click", python(folder, FLATWORK, "--help"),
             python(folder, "import click"), "aim 3", 11),
    ]  # fmt: skip


def one_job() -> dict[str, Rows]:
    """A week of one walk with a doweled edge."""
    return {
        "Jobs": [["job", "client", "bid date"], ["26-050", "Tamarack Row Owners", "2026-04-13"]],
        "Areas": [
            ["job", "length ft", "width ft", "formed ft", "doweled edge ft", "dowel spacing in"],
            ["26-050", "12' 6\"", "3", "28", "3", "12"],
        ],
    }


def python(folder: Path, code: str, *arguments: str) -> Work:
    """A process of its own, with its modules compiled before, as an installed program has them."""
    kept = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    environment = {**kept, "PYTHONPYCACHEPREFIX": str(folder / "compiled")}

    def work() -> None:
        command = [sys.executable, "-c", code, *arguments]
        subprocess.run(command, env=environment, check=True, capture_output=True, stdin=subprocess.DEVNULL)

    return work


def of_evaluation(folder: Path) -> Pair:
    """All the numbers of many jobs over a few of their workbooks."""
    jobs = many_jobs(folder)
    some = list(evaluated(jobs[:WRITTEN]))

    def write() -> None:
        for job in some:
            job_workbook(with_sensitivity(job))

    def work_out() -> None:
        for start in range(0, len(jobs), CHUNK):
            evaluate(jobs[start : start + CHUNK])

    name = f"evaluating {JOBS:,} jobs of {AREAS} areas over writing {WRITTEN} of their workbooks"
    return Pair(name, work_out, write, "aim 1", 3)


def many_jobs(folder: Path) -> list[JobInput]:
    """Jobs of several areas each, no two alike."""
    jobs: list[list[object]] = [["job", "bid date"]]
    areas: list[list[object]] = [
        ["job", "area", "length ft", "width ft", "formed ft", "doweled edge ft", "dowel spacing in"]
    ]
    for number in range(JOBS):
        jobs.append([f"J{number}", "2026-04-13"])
        for area in range(AREAS):
            length = 8 + (number * 7 + area * 3) % 90 / 4
            areas.append([f"J{number}", f"A{area + 1}", length, 3 + area / 2, 2 * length, 3, 12])
    return intake_from(folder, {"Jobs": jobs, "Areas": areas}).jobs


if __name__ == "__main__":
    main()
