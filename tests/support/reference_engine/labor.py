"""Task hours by visit: preparation, pour, strip and seal."""

from dataclasses import dataclass

from .bars import Dowels, Reinforcement
from .facts import Job
from .joints import JointPlan
from .rounding import less
from .takeoff import Takeoff

FINISHER_TASKS = frozenset({"finish", "tooled_joints", "sawn_joints"})


def route_is_bad(job: Job) -> bool:
    """A wet or steep way slows carrying; unless typed, wet ground and the steepest running slope count."""
    wet = job.moisture == "wet" if job.wet_way is None else job.wet_way
    slope = job.way_slope
    if slope is None:
        slope = max((a.run_slope or 0.0 for a in job.areas), default=0.0)
    return wet or less(job.factors.steep, slope)


def carry_way(job: Job) -> float:
    """Feet that spoil and rock are carried; blank is the way of the concrete."""
    if job.spoil_way is not None:
        return job.spoil_way
    return job.factors.barrow_default if job.barrow_distance is None else job.barrow_distance


def carry_hours(job: Job, loose_yards: float) -> float:
    """Extra hours of carrying by hand beyond the way that the loading rates hold; none with a machine."""
    f = job.factors
    extra = carry_way(job) - f.carry_free
    if job.machine_digging or extra <= 0:
        return 0.0
    trips = 27 * loose_yards / f.barrow_feet3
    hours = trips * 2 * extra / f.barrow_speed / 60
    return hours / f.bad_way if route_is_bad(job) else hours


def load_out_hours(job: Job, loose_yards: float) -> float:
    """Loading hours of a pile: by machine, or by hand with the extra way."""
    if job.machine_digging:
        return loose_yards * job.factors.machine_load_hours
    return loose_yards * job.factors.load_out_hours + carry_hours(job, loose_yards)


@dataclass
class Tasks:
    """Task hours of one person, by visit; placing or mixing, and hauling, are added later."""

    prep: dict
    pour: dict
    strip: dict
    seal: dict
    saw_feet: float
    finish_and_tooled: float


def _prep_tasks(job: Job, t: Takeoff, dowels: Dowels, mats: Reinforcement) -> dict:
    """Everything before the concrete, without driving and separating."""
    f = job.factors
    dig_rate = f.machine_dig_hours if job.machine_digging else f.dig_hours
    loose = t.green_loose + t.old_concrete_loose + t.soil_loose
    return {
        "layout": max(f.layout_minimum, f.layout_hours * t.slab_area),
        "cap_lines": f.cap_hours * job.caps,
        "cut_brush": f.brush_hours * t.brush_loose,
        "grub": f.grub_hours * t.root_balls,
        "break_slab": f.break_hours * t.old_slab_yards,
        "saw_cut": f.saw_hours * t.saw_cut_feet,
        "chip": sum(a.chip_hours for a in t.areas),
        "dig": dig_rate * t.soil_bank,
        "load_out": load_out_hours(job, loose),
        "base": f.base_hours * t.base_tons + carry_hours(job, t.base_tons / f.base_loose_tons_per_yard),
        "set_forms": f.set_form_hours * t.form_feet,
        "dowels": f.dowel_hours * dowels.count,
        "isolation": f.isolation_hours * t.isolation_feet,
        "bond_breaker": f.bond_breaker_hours * t.bond_breaker_area,
        "vapor_retarder": mats.vapor_hours,
        "reinforcement": mats.hours,
        "unforeseen": job.unforeseen_hours,
    }


def joint_feet(job: Job, plans: list[JointPlan | None]) -> float:
    """Feet of contraction joint of the job."""
    return sum(p.feet * a.copies for p, a in zip(plans, job.areas, strict=True) if p)


def job_tasks(job: Job, t: Takeoff, dowels: Dowels, mats: Reinforcement, plans: list[JointPlan | None]) -> Tasks:
    """Task hours by visit. Without forms there is no strip visit and clean up belongs to the pour."""
    f = job.factors
    feet = joint_feet(job, plans)
    tooled = f.tool_joint_hours * feet if job.joints == "tooled" else 0.0
    saw_feet = feet if job.joints != "tooled" else 0.0
    existing = any(e.kind == "existing" for a in job.areas for e in a.edges)
    finish = t.slab_area / f.finish_area_per_hour
    pour = {
        "bonding": f.bond_hours * t.bond_area * job.bond_coats,
        "protection": f.protection_hours if existing else 0.0,
        "finish": finish,
        "tooled_joints": tooled,
        "sawn_joints": f.saw_hours * saw_feet,
        "cure": f.cure_hours * t.slab_area,
    }
    clean_up = {"clean_up": f.clean_up_hours}
    strip = {}
    if t.form_feet > 0:
        strip = {"strip_forms": f.strip_form_hours * t.form_feet} | clean_up
    else:
        pour |= clean_up
    seal = {"seal": f.seal_hours * t.slab_area * job.sealer_coats} if job.sealer_coats else {}
    return Tasks(_prep_tasks(job, t, dowels, mats), pour, strip, seal, saw_feet, finish + tooled)
