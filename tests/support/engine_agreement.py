"""Holds the program against the engine over drawn jobs.

``PYTHONPATH=.:tests/support python tests/support/engine_agreement.py --jobs 300 --seed 7`` draws so many jobs and says,
name by name, how many agree, with the first that does not.
"""

from __future__ import annotations

import argparse
import tempfile
from collections.abc import Iterator
from pathlib import Path

from books import intake_from, line, value
from calc.batch import evaluated
from calc.intake.read_run import has_error
from calc.model.results import JobValues
from calc.trade.levels import TASK
from engine_books import company_tables, week_tables
from engine_jobs import random_jobs
from engine_names import MONEY, NAMES, TASKS
from reference_engine import work_out
from reference_engine.facts import Job

Compared = tuple[str, str, float, float]
"""Job, name, ours, the engine's."""


def compared(jobs: list[Job], folder: Path) -> Iterator[Compared]:
    """Every number of every job beside the engine's; a job that is held back is named with its finding."""
    inputs, known = [], []
    for job in jobs:
        intake = intake_from(folder, week_tables([job]), company_tables(job))
        held = not intake.jobs or has_error(intake.jobs[0], intake.findings)
        if held:
            errors = [str(each)[:150] for each in intake.findings if "note:" not in str(each)]
            print(job.name, "held back:", *errors[:2], sep="\n  ")
            yield job.name, "is not held back", 0, 1
        else:
            inputs += intake.jobs
            known.append(job)
    for job, values in zip(known, evaluated(inputs), strict=True):
        yield from _numbers(job, values)


def _numbers(job: Job, values: JobValues) -> Iterator[Compared]:
    theirs = work_out(job)
    for name, ours in NAMES.items():
        if name in theirs:
            yield job.name, name, float(value(values, ours)), float(theirs[name])
    for name, words in TASKS.items():
        got = sum(float(value(values, "Task.hours", TASK.axis.words.index(word))) for word in words)
        yield job.name, name, got, float(theirs.get(name, 0.0))
    labels = line("CostTable.amount").level.axis.words
    for name, rows in MONEY.items():
        got = sum(float(value(values, "CostTable.amount", labels.index(label))) for label in rows)
        yield job.name, name, got, float(theirs.get(name, 0.0))


def agree(ours: float, theirs: float) -> bool:
    """Whether two numbers are the same but for their last digits."""
    return abs(ours - theirs) <= 1e-6 * max(1.0, abs(theirs))


def main() -> None:
    """The command line."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--jobs", type=int, default=300)
    asked.add_argument("--seed", type=int, default=7)
    given = asked.parse_args()
    by_name: dict[str, list[Compared]] = {}
    with tempfile.TemporaryDirectory() as folder:
        for each in compared(random_jobs(given.jobs, given.seed), Path(folder)):
            by_name.setdefault(each[1], []).append(each)
    for name, rows in sorted(by_name.items(), key=lambda each: sum(agree(*row[2:]) for row in each[1]) / len(each[1])):
        wrong = [row for row in rows if not agree(*row[2:])]
        first = f"  {wrong[0][0]}: ours {wrong[0][2]:.4f}, engine {wrong[0][3]:.4f}" if wrong else ""
        print(f"{len(rows) - len(wrong):5} of {len(rows)}  {name}{first}")


if __name__ == "__main__":
    main()
