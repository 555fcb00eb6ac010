"""Holds the program against the engine over drawn jobs.

``PYTHONPATH=.:tests/support python tests/support/engine_agreement.py --jobs 2000 --seed 9`` draws so many jobs and
says, name by name, how many agree, with the first that does not.

Three things the engine leaves open, and the program does not: placing methods that cost the same and take as long (the
engine takes the order in which a job names them), a machine on hire for more than a week, and a job that owns no
vehicle and hauls (the engine gives no haul).
"""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from pathlib import Path

from books import book_of, line, value
from calc.batch import evaluated
from calc.intake.read_run import has_error, read_run
from calc.model.results import JobValues
from calc.trade.levels import METHOD, TASK, VISIT
from engine_books import company_tables, job_tables
from engine_jobs import random_jobs
from engine_names import BEYOND_POUR, MONEY, NAMES, PLANS, TASKS, VISITS, WAYS
from reference_engine import work_out
from reference_engine.facts import Job

Compared = tuple[str, str, float | str, float | str]
"""Job, name, ours, the engine's."""
HAUL = {"haul_trips", "haul_wait_hours", "haul_top_up_hours", "last_load_day"}
WEEK = 5 * 8
"""Hours on hire beyond which a machine is hired by more than one week, which the engine does not do."""


def compared(jobs: list[Job]) -> Iterator[Compared]:
    """Every number of every job beside the engine's; a job that is held back is named with its finding."""
    inputs, known = [], []
    for job in jobs:
        intake = read_run(
            [book_of(Path("week.xlsx"), job_tables(job))], book_of(Path("company.xlsx"), company_tables(job))
        )
        held = not intake.jobs or has_error(intake.jobs[0], intake.findings)
        if held:
            errors = [str(each)[:150] for each in intake.findings if ": error" in str(each)]
            print(job.name, "held back:", *errors[:2], sep="\n  ")
            yield job.name, "is not held back", 0, 1
        else:
            inputs += intake.jobs
            known.append(job)
    for job, values in zip(known, evaluated(inputs), strict=True):
        theirs = work_out(job)
        if not _beyond_the_engine(theirs):
            for name, ours, other in _numbers(values, theirs):
                yield job.name, name, ours, other


def _beyond_the_engine(theirs: dict[str, object]) -> bool:
    """Whether a machine is on hire for more than a week."""
    hours = [float(str(theirs[f"hours_{name}"])) for name in ("base", "dig", "load_out", "chip", "break_slab")]
    return max(*hours, hours[1] + hours[2], float(str(theirs.get("last_load_day", 0))) * 8) > WEEK


def _numbers(values: JobValues, theirs: dict) -> Iterator[tuple[str, float | str, float | str]]:
    for name, ours in NAMES.items():
        if name in theirs and not (theirs["haul_missing"] and name in HAUL):
            yield name, number(values, ours), float(theirs[name] or 0)
    yield "order_yards", number(values, "Order.quantity"), 0.0 if theirs["bags"] else float(theirs["order_yards"])
    for name, words in TASKS.items():
        got = sum(number(values, "Task.hours", TASK.axis.words.index(word)) for word in words)
        yield name, got, float(theirs.get(name, 0.0))
    yield from _ways(values, theirs)
    yield from _visits(values, theirs)
    yield from _money(values, theirs)
    if "haul_plan" in theirs:
        yield "haul_plan", str(value(values, "Choice.plan_name")), PLANS[theirs["haul_plan"]]
        yield "haul_vehicle", str(value(values, "Choice.vehicle_name")), theirs["haul_vehicle"]
        yield "haul_total", number(values, "Choice.compared_cost"), round(theirs["haul_total"] + 1e-9, 2)


def _ways(values: JobValues, theirs: dict) -> Iterator[tuple[str, float | str, float | str]]:
    """What each method costs, and which is taken; methods that cost and take the same are as good as one another."""
    costs = dict(zip(theirs["ways"], theirs["way_costs"], strict=True))
    for way, cost in costs.items():
        yield f"cost of {way}", number(values, "MethodCost.cost", METHOD.axis.words.index(WAYS[way])), cost
    ours, taken = str(value(values, "Pour.method")), theirs["method"]
    equal = {WAYS[way] for way, cost in costs.items() if abs(cost - costs[taken]) <= 1}
    yield "method", WAYS[taken] if ours in equal else ours, WAYS[taken]


def _visits(values: JobValues, theirs: dict) -> Iterator[tuple[str, float | str, float | str]]:
    for row, kind in enumerate(VISITS):
        assert VISIT.axis.words[row] == kind
        yield f"{kind}_task_hours", number(values, "Visit.task_hours", row), theirs[f"{kind}_task_hours"]
        yield f"{kind}_clock", number(values, "Visit.clock_hours", row), theirs[f"{kind}_clock"]
        yield f"{kind}_beyond", number(values, "Visit.beyond", row), theirs[f"{kind}_beyond"]


def _money(values: JobValues, theirs: dict) -> Iterator[tuple[str, float | str, float | str]]:
    labels = line("CostTable.amount").level.axis.words
    for name, rows in MONEY.items():
        got = sum(number(values, "CostTable.amount", labels.index(label)) for label in rows)
        yield name, got, float(theirs.get(name, 0.0))
    for names, label in BEYOND_POUR.items():
        wanted = sum(float(theirs.get(f"money_{name}", 0.0)) for name in names)
        yield f"money_{names[0]}", number(values, "CostTable.amount", labels.index(label)), wanted


def number(values: JobValues, name: str, row: int = 0) -> float:
    """A number of a job."""
    return float(value(values, name, row))


def agree(ours: float | str, theirs: float | str) -> bool:
    """Whether two words are the same, or two numbers but for their last digits."""
    if isinstance(ours, str) or isinstance(theirs, str):
        return ours == theirs
    return abs(ours - theirs) <= 1e-6 * max(1.0, abs(theirs))


def close(name: str, ours: float | str, theirs: float | str) -> bool:
    """Whether they agree; the cost of a method is a sum of other lines in each, each rounded to the cent."""
    if name.startswith("cost of ") and not isinstance(ours, str) and not isinstance(theirs, str):
        return abs(ours - theirs) <= CENTS
    return agree(ours, theirs)


CENTS = 0.06
"""What the roundings of the parts of a method's cost may come to, in $."""


def main() -> None:
    """The command line."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--jobs", type=int, default=300)
    asked.add_argument("--seed", type=int, default=7)
    given = asked.parse_args()
    by_name: dict[str, list[Compared]] = {}
    for each in compared(random_jobs(given.jobs, given.seed)):
        by_name.setdefault(each[1], []).append(each)
    for name, rows in sorted(by_name.items(), key=lambda each: -sum(not close(*row[1:]) for row in each[1])):
        wrong = [row for row in rows if not close(*row[1:])]
        first = f"  {wrong[0][0]}: ours {wrong[0][2]}, engine {wrong[0][3]}" if wrong else ""
        print(f"{len(rows) - len(wrong):5} of {len(rows)}  {name}{first}")


if __name__ == "__main__":
    main()
