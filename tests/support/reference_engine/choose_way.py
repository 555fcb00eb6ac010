"""Comparing the ways of placing by everything of the job's direct cost that depends on the way."""

from .facts import Job
from .labor import Tasks
from .placing import Way
from .rounding import add_money, at_most, millionths, money
from .visits import Pour, Prep, beyond_lines, paid_time, pour_of, task_lines


def labor_total(job: Job, prep: Prep, pour: Pour | None, tasks: Tasks, way: Way | None) -> float:
    """All labor lines with a pour, or those of the other visits alone."""
    lines = beyond_lines(job, paid_time(job, prep, pour, tasks))
    if way is not None:
        lines |= task_lines(job, tasks, way)
    return add_money(money(v) for v in lines.values())


def way_cost(job: Job, prep: Prep, pour: Pour, tasks: Tasks, way: Way) -> float:
    """Cost lines of the way, its visit with mobilization, and what is expected to be left over.

    A pour that shares the preparation visit brings only what it adds to that visit's paid hours.
    """
    others = task_lines(job, tasks, None)
    alone = labor_total(job, prep, None, tasks, None)
    fixed = add_money(money(v) for n, v in others.items() if n[len("labor_") :] not in tasks.pour)
    labor = labor_total(job, prep, pour, tasks, way) - fixed - alone
    mobilization = 0.0 if pour.shared else job.prices.mobilization_crew
    left = job.factors.surplus_yard * way.rung.expected_left if way.rung else 0.0
    parts = [*way.lines.values(), labor, mobilization, left]
    return add_money(money(v) for v in parts)


def choose(job: Job, ways: list[Way], pours: list[Pour]) -> tuple[Way, Pour]:
    """The cheapest way that fits the truck's time limit; ties go to fewer hours, then to the job's own order."""
    rows = [(w, p) for w, p in zip(ways, pours, strict=True) if w.competes]
    if not rows:
        raise ValueError(f"job {job.name}: no way of placing")
    rows = [r for r in rows if r[0].fits] or rows
    least = min(w.cost for w, _ in rows)
    tied = [r for r in rows if at_most(r[0].cost - least, job.factors.way_tie)]
    return min(tied, key=lambda r: millionths(r[0].elapsed))


def compare(job: Job, ways: list[Way], tasks: Tasks, prep: Prep) -> tuple[Way, Pour]:
    """Put a cost on every way and take the best."""
    pours = [pour_of(job, w, tasks, prep) for w in ways]
    for way, pour in zip(ways, pours, strict=True):
        way.cost = way_cost(job, prep, pour, tasks, way)
    return choose(job, ways, pours)
