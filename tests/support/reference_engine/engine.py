"""The whole bid of one job as one flat dict."""

import math
from dataclasses import dataclass, replace

from .bars import Dowels, Reinforcement, job_dowels, job_reinforcement
from .bid import from_cost_to_bid, haul_lines, material_lines, rental_lines, visit_lines
from .calendar_days import job_days
from .choose_way import compare
from .facts import Job
from .hauling import BaseHaul, HaulPlan, base_haul, haul_plans, rank, streams
from .joints import JointPlan, joint_plan
from .labor import Tasks, job_tasks
from .placing import Way, ways
from .prep import prep_visits
from .report import report
from .risk import volume_spread
from .rounding import money
from .takeoff import Takeoff, job_takeoff
from .visits import PaidTime, Pour, Prep, beyond_lines, paid_time, pour_of, prep_of, task_lines


@dataclass
class Bid:
    """Everything that was worked out on the way to a bid."""

    job: Job
    takeoff: Takeoff
    dowels: Dowels
    mats: Reinforcement
    joints: list[JointPlan | None]
    tasks: Tasks
    base: BaseHaul
    haul_rows: list[HaulPlan]
    spoil: bool
    prep: Prep
    ways: list[Way]
    way: Way
    pour: Pour
    time: PaidTime
    spread: float
    lines: dict
    money: dict
    days: dict

    @property
    def haul(self) -> HaulPlan | None:
        """The haul plan taken."""
        return self.haul_rows[0] if self.haul_rows else None


def _prep(job: Job, tasks: Tasks, base: BaseHaul, plan: HaulPlan | None) -> Prep:
    """Preparation hours with hauling and separating, and the visits they take."""
    if plan is not None:
        return prep_of(job, plan.prep_hours, plan.visits, plan.last_day)
    hours = math.fsum(tasks.prep.values()) + base.hours
    return prep_of(job, hours, prep_visits(job, hours), 0)


def _all_lines(job: Job, b: dict, plan: HaulPlan | None) -> dict[str, float]:
    """Every cost line of the job to the cent."""
    time, tasks, way, pour, prep = b["time"], b["tasks"], b["way"], b["pour"], b["prep"]
    crew_visits = prep.visits + (0 if pour.shared else 1)
    lines = material_lines(job, b["takeoff"], b["dowels"], b["mats"])
    lines |= way.lines
    lines |= rental_lines(job, tasks, plan.last_day if plan else 1)
    lines |= haul_lines(job, plan, b["base"])
    lines |= visit_lines(job, crew_visits, time.strip.visits + time.seal.visits)
    lines |= task_lines(job, tasks, way) | beyond_lines(job, time)
    return {name: money(value) for name, value in lines.items()}


def build(job: Job) -> Bid:
    """Decide in order: haul, base, preparation, way of placing, the rest."""
    t = job_takeoff(job)
    dowels, mats = job_dowels(job), job_reinforcement(job)
    joints = [joint_plan(a, job.factors) for a in job.areas]
    tasks = job_tasks(job, t, dowels, mats, joints)
    base = base_haul(job, t)
    rows = rank(haul_plans(job, t, tasks, base.hours))
    plan = rows[0] if rows else None
    prep = _prep(job, tasks, base, plan)
    spread = volume_spread(job, t)
    options = ways(job, t, spread, tasks.prep["chip"] + tasks.prep["dowels"])
    way, _ = compare(job, options, tasks, prep)
    pour = pour_of(job, way, tasks, prep)
    time = paid_time(job, prep, pour, tasks)
    known = {"takeoff": t, "dowels": dowels, "mats": mats, "tasks": tasks, "base": base}
    known |= {"prep": prep, "way": way, "pour": pour, "time": time}
    lines = _all_lines(job, known, plan)
    days = job_days(job.pour_date, prep.visits, pour.shared, time.strip.visits, time.seal.visits, job.factors)
    return Bid(
        job=job,
        **known,
        joints=joints,
        haul_rows=rows,
        spoil=bool(streams(job, t, tasks)),
        ways=options,
        spread=spread,
        lines=lines,
        money=from_cost_to_bid(job, lines, t.slab_area),
        days=days,
    )


def work_out(job: Job) -> dict:
    """All results of a job by name."""
    return report(build(job))


def hand_or_machine(job: Job) -> dict[str, float]:
    """The bid dug by hand and dug by machine."""
    other = replace(job, machine_digging=not job.machine_digging)
    here, there = build(job).money["bid"], build(other).money["bid"]
    by_hand, by_machine = (there, here) if job.machine_digging else (here, there)
    return {"bid_by_hand": by_hand, "bid_by_machine": by_machine, "difference": money(by_machine - by_hand)}
