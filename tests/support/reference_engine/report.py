"""Lays the results of a bid out as one flat dict by name."""

from .bid import gallons
from .hauling import near_tie, payload_limit
from .labor import joint_feet
from .placing import truck_limit_minutes
from .risk import (
    expected_need,
    job_rung,
    ladder,
    percent_order,
    quick_order,
    short_lump,
    surplus_cost,
)
from .rounding import at_most, less, up
from .visits import stop_over_long


def _takeoff(b) -> dict:
    t, f = b.takeoff, b.job.factors
    liquids = {f"{name}_gallons": need for name, need in gallons(b.job, t).items()}
    same = [
        "slab_area",
        "net_yards",
        "brush_loose",
        "root_ball_bank",
        "root_balls",
        "green_loose",
        "green_tons",
        "soil_gross_bank",
        "soil_bank",
        "soil_hauled_bank",
        "soil_loose",
        "soil_tons",
        "chip_yards",
        "old_slab_yards",
        "old_concrete_loose",
        "old_concrete_tons",
        "base_yards",
        "base_tons",
        "base_bought",
        "form_feet",
        "isolation_feet",
        "bond_area",
        "bond_breaker_area",
        "saw_cut_feet",
    ]
    columns = [c for c in vars(t.areas[0]) if c not in ("one_area", "board")]
    return (
        {name: getattr(t, name) for name in same}
        | {f"area_{c}": [getattr(a, c) for a in t.areas] for c in columns}
        | {"board_feet_" + c: feet for c, feet in t.boards.items()}
        | {"isolation_pieces": up(t.isolation_feet / f.isolation_piece), "stakes": sum(a.stakes for a in t.areas)}
        | liquids
    )


def _joints(b) -> dict:
    plans = b.joints
    return {
        "joint_feet": joint_feet(b.job, plans),
        "area_joint_run": [p.run if p else None for p in plans],
        "area_joint_width": [p.width if p else None for p in plans],
        "area_joint_limit": [p.limit if p else None for p in plans],
        "area_joint_spacing": [p.spacing if p else None for p in plans],
        "area_joints_across": [p.across if p else 0 for p in plans],
        "area_joints_along": [p.along if p else 0 for p in plans],
        "area_joint_positions": [p.positions if p else [] for p in plans],
        "area_longest_panel": [p.longest_panel if p else None for p in plans],
        "area_panel_width": [p.panel_width if p else None for p in plans],
    }


def _bars(b) -> dict:
    d, r = b.dowels, b.mats
    return {
        "dowels": d.count,
        "dowel_pieces": dict(d.pieces),
        "dowel_bars": dict(d.bars),
        "drill_bits": d.bits,
        "epoxy_tubes": d.epoxy_tubes,
        "reinforcing_stock_bars": dict(r.stock_bars),
        "reinforcing_pounds": sum(m.pounds for m in r.mats),
        "area_bars_each_way": [m.bars_each_way for m in r.mats],
        "chairs": r.chairs,
        "tie_hundreds": r.tie_hundreds,
        "mesh_sheets": r.sheets,
        "vapor_retarder_area": r.vapor_area,
        "vapor_retarder_rolls": r.vapor_rolls,
    }


def _haul(b) -> dict:
    ranked = b.haul_rows
    out = {
        "haul_rows": [(p.letter, p.vehicle.name, round(p.total, 6), p.trips) for p in ranked],
        "haul_missing": b.spoil and not ranked,
        "haul_near_tie": near_tie(b.job, ranked),
        "base_trips": b.base.trips,
        "base_haul_hours": b.base.hours,
        "base_delivered": b.base.delivered,
    }
    if b.haul is None:
        return out
    plan, f = b.haul, b.job.factors
    piles = plan.piles
    loaded = plan.wait_hours / plan.trips if plan.trips else 0.0
    return out | {
        "haul_plan": plan.letter,
        "haul_vehicle": plan.vehicle.name,
        "haul_total": plan.total,
        "haul_trips": plan.trips,
        "haul_first_people": plan.people,
        "haul_prep_hours": plan.prep_hours,
        "haul_driving_hours": plan.driving_hours,
        "haul_wait_hours": plan.wait_hours,
        "haul_wait_note": less(f.wait_note_hours, loaded),
        "haul_top_up_hours": plan.top_up_hours,
        "separating_hours": plan.separating_hours,
        "last_load_day": plan.last_day,
        "payload_limit": payload_limit(b.job, plan.vehicle),
        "payload_exceeded": less(1.0, f.payload_share),
        "pile_streams": [p.streams for p in piles],
        "pile_site": [p.site.name for p in piles],
        "pile_loads": [p.loads for p in piles],
        "pile_governs": [p.governs for p in piles],
        "pile_loose": [p.loose for p in piles],
        "pile_tons": [p.tons for p in piles],
        "pile_load_line_yards": [payload_limit(b.job, plan.vehicle) * p.loose / p.tons for p in piles],
        "pile_first_leaves": [p.first_leaves for p in piles],
        "pile_back": [p.back for p in piles],
    }


def _order(b) -> dict:
    job, way = b.job, b.way
    out = {
        "method": way.method,
        "order_yards": way.order,
        "trucks": way.trucks,
        "unload_minutes": way.unload_minutes,
        "standby_minutes": way.standby_minutes,
        "place_hours": way.elapsed,
        "bags": way.bags,
        "volume_spread": b.spread,
        "truck_limit_minutes": truck_limit_minutes(job),
        "way_fits": way.fits,
        "ways": [w.method for w in b.ways],
        "way_costs": [w.cost for w in b.ways],
        "way_orders": [w.order for w in b.ways],
        "way_competes": [w.competes for w in b.ways],
        "bags_asked": any(not w.competes for w in b.ways),
    }
    f = job.factors
    water = f.wash_tools + f.wash_truck * len(way.trucks) + (f.wash_pump if way.method == "pump" else 0.0)
    out |= {"wash_water_gallons": water, "wash_box_feet3": water * f.wash_box / f.gallons_per_foot3}
    return out | (_risk(b) if way.rung else {})


def _risk(b) -> dict:
    job, way, net = b.job, b.way, b.takeoff.net_yards
    need = expected_need(job, net, way.method)
    lump, surplus = short_lump(job, way.method), surplus_cost(job, way.method)
    percent = percent_order(job, net, way.method)
    rungs = ladder(job, way.method, need, b.spread)
    return {
        "expected_need": need,
        "short_lump": lump,
        "chance_short": way.rung.chance_short,
        "expected_left": way.rung.expected_left,
        "expected_cost": way.rung.expected_cost,
        "ladder_orders": [r.order for r in rungs],
        "ladder_expected_costs": [r.expected_cost for r in rungs],
        "ladder_too_short": way.rung.order == rungs[-1].order,
        "quick_order": quick_order(need, b.spread, lump, surplus),
        "percent_order": percent,
        "percent_chance_short": job_rung(job, way.method, need, b.spread, percent).chance_short,
        "truck_spacing_minutes": max(way.unload_minutes[0], job.factors.truck_spacing),
    }


def _visits(b) -> dict:
    f, pour, time = b.job.factors, b.pour, b.time
    task = sum(p.task_hours for _, p in time.each())
    clock = sum(p.clock for _, p in time.each())
    share = task / clock if clock else 0.0
    return {
        "prep_hours": b.prep.hours,
        "prep_visits": b.prep.visits,
        "prep_people": b.prep.people,
        "pour_people": pour.people,
        "pour_placers": pour.placers,
        "pour_finishers": pour.finishers,
        "placer_time_on_site": pour.placer_time,
        "finisher_time_on_site": pour.finisher_time,
        "saw_time_on_site": pour.saw_time,
        "finish_window_on_site": pour.window,
        "finish_from_last_truck": pour.last_finish,
        "finish_caution": pour.caution,
        "finishers_needed": pour.finishers_needed,
        "finishers_over_crew": pour.finishers_needed is not None and pour.finishers_needed > b.job.crew,
        "pour_over_limit": stop_over_long(b.job, pour),
        "bags_share_prep": pour.shared,
        "strip_visits": time.strip.visits,
        "seal_visits": time.seal.visits,
        "crew_visits": b.prep.visits + (0 if pour.shared else 1),
        "single_visits": time.strip.visits + time.seal.visits,
        "task_hours": task,
        "clock_hours": clock,
        "task_share": share,
        "task_share_note": not at_most(f.task_share_note, share),
    } | {f"{kind}_{name}": getattr(p, name) for kind, p in time.each() for name in ("task_hours", "clock", "beyond")}


def _hours(b) -> dict:
    tasks = b.tasks
    hours = {}
    for group in (tasks.prep, tasks.pour, tasks.strip, tasks.seal):
        hours |= group
    return {f"hours_{name}": value for name, value in hours.items()} | {"hours_place": b.way.task_hours}


def report(b) -> dict:
    """One flat dict of everything."""
    out = _takeoff(b) | _joints(b) | _bars(b) | _haul(b) | _order(b) | _visits(b) | _hours(b) | b.days
    return out | {f"money_{name}": value for name, value in b.lines.items()} | b.money
