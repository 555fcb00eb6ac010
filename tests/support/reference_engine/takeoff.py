"""Quantities of a job: concrete, digging, vegetation, old concrete, base, forms, isolation."""

import math
from dataclasses import dataclass, field

from .facts import Area, Edge, Factors, Job
from .footings import FootingTakeoff, base_inches_over, footing_takeoff
from .geometry import dig_thickness, form_thickness, hole_perimeter, net_area, pour_thickness
from .rounding import at_most, up


@dataclass
class AreaTakeoff:
    """Quantities of one area, all copies together unless said otherwise."""

    name: str
    one_area: float
    area: float
    thickness: float
    dig_depth: float
    concrete_yards: float
    soil_yards: float
    backfill_yards: float
    base_yards: float
    old_slab_yards: float
    chip_yards: float
    chip_hours: float
    bond_area: float
    bond_breaker_area: float
    form_feet: float
    board: str
    stakes: int
    bender_feet: float
    isolation_feet: float
    old_concrete_over: bool
    dig_check: bool


def form_edges(area: Area) -> list[Edge]:
    """The edges that are formed."""
    return [e for e in area.edges if e.kind == "form"]


def _form_feet(area: Area) -> float:
    """Feet of formed edge of one copy."""
    return sum(e.length * e.repeats for e in form_edges(area))


def _stakes(area: Area, factors: Factors) -> int:
    """One more than the spaces on each formed run; closer on curves."""
    total = 0
    for edge in form_edges(area):
        spacing = factors.curve_stake_spacing if edge.curved else factors.stake_spacing
        total += (up(edge.length / spacing) + 1) * edge.repeats
    return total


def board_class(area: Area) -> str:
    """2x4 to four inches, 2x6 to six, 2x8 above."""
    thick = form_thickness(area)
    return "2x4" if at_most(thick, 4) else "2x6" if at_most(thick, 6) else "2x8"


def isolation_feet(area: Area) -> float:
    """Edges isolated (walls and buildings unless typed otherwise) and flagged holes, of one copy."""
    total = 0.0
    for edge in area.edges:
        isolated = edge.kind in ("wall", "building") if edge.isolation is None else edge.isolation
        total += edge.length * edge.repeats if isolated else 0.0
    return total + sum(d.count * hole_perimeter(d) for d in area.deductions if d.isolation)


def dig_depth(area: Area) -> float:
    """Slab and base below the existing grade, in inches, never negative."""
    return max(0.0, dig_thickness(area) + area.base - area.height_above_grade)


def _base_yards(area: Area, plan: float, footings: list[FootingTakeoff]) -> float:
    """Compacted rock: full depth away from footings, and over a footing only what fits."""
    covered = sum(f.plan for f in footings)
    over = sum(f.plan * base_inches_over(f, area) for f in footings)
    return (max(0.0, plan - covered) * area.base + over) / 324


def area_takeoff(area: Area, factors: Factors) -> AreaTakeoff:
    """Every quantity of one area."""
    one = net_area(area)
    n = area.copies
    footings = [footing_takeoff(f, area, factors) for f in area.footings]
    depth = dig_depth(area)
    formed = _form_feet(area)
    straight = sum(e.length * e.repeats for e in form_edges(area) if not e.curved)
    old_slab = area.old_slab_area * area.old_slab_thickness / 324
    in_dig = sum(f.in_dig_yards for f in footings)
    thickness = pour_thickness(area)
    concrete = one * thickness / 324 - sum(f.displaced_yards for f in footings)
    dug = (one + factors.working_room * formed) * depth / 324
    below = one * (depth + area.height_above_grade) / 324
    needed = one * (dig_thickness(area) + area.base) / 324
    return AreaTakeoff(
        name=area.name,
        one_area=one,
        area=one * n,
        thickness=thickness,
        dig_depth=depth,
        concrete_yards=concrete * n,
        soil_yards=max(0.0, dug - old_slab - in_dig) * n,
        backfill_yards=formed * factors.working_room * depth / 324 * n,
        base_yards=_base_yards(area, one, footings) * n,
        old_slab_yards=old_slab * n,
        chip_yards=sum(f.chip_yards for f in footings) * n,
        chip_hours=sum(f.chip_hours for f in footings) * n,
        bond_area=sum(f.bond_area for f in footings) * n,
        bond_breaker_area=sum(f.bond_breaker_area for f in footings) * n,
        form_feet=formed * n,
        board=board_class(area),
        stakes=_stakes(area, factors) * n,
        bender_feet=(formed - straight) * n,
        isolation_feet=isolation_feet(area) * n,
        old_concrete_over=not at_most(old_slab + in_dig, one * depth / 324),
        dig_check=at_most(needed, below),
    )


@dataclass
class Takeoff:
    """Quantities of the whole job."""

    areas: list[AreaTakeoff]
    slab_area: float
    net_yards: float
    brush_loose: float
    root_ball_bank: float
    root_balls: int
    green_loose: float
    green_tons: float
    soil_gross_bank: float
    soil_bank: float
    soil_hauled_bank: float
    soil_loose: float
    soil_tons: float
    chip_yards: float
    old_slab_yards: float
    old_concrete_loose: float
    old_concrete_tons: float
    base_yards: float
    base_tons: float
    base_bought: float
    form_feet: float
    isolation_feet: float
    bond_area: float
    bond_breaker_area: float
    saw_cut_feet: float
    boards: dict = field(default_factory=dict)


def _vegetation(job: Job) -> tuple[float, float, int]:
    """Loose brush, root balls as they sit in the ground, and how many balls are grubbed."""
    f = job.factors
    brush = sum(p.count * p.width * p.depth * p.height / 27 for p in job.plants) * f.brush_compaction
    balls = [p for p in job.plants if p.ball_diameter > 0 and p.ball_height > 0]
    bowls = sum(p.count * math.pi / 4 * p.ball_diameter**2 * p.ball_height for p in balls)
    return brush, bowls * f.root_ball_bowl / 27, sum(p.count for p in balls)


def _boards(areas: list[AreaTakeoff]) -> dict[str, float]:
    """Straight form feet by board class."""
    feet = {"2x4": 0.0, "2x6": 0.0, "2x8": 0.0}
    for a in areas:
        feet[a.board] += a.form_feet - a.bender_feet
    return feet


def job_takeoff(job: Job) -> Takeoff:
    """Add the areas up; weigh soil in the bank, so that swell never changes a weight."""
    f = job.factors
    areas = [area_takeoff(a, f) for a in job.areas]

    def total(name: str) -> float:
        return sum(getattr(a, name) for a in areas)

    brush, balls, count = _vegetation(job)
    pounds, swell = f.soils[job.soil]
    gross = total("soil_yards")
    bank = max(0.0, gross - balls)
    hauled = max(0.0, bank - total("backfill_yards")) if job.keep_backfill else bank
    old = total("chip_yards") + total("old_slab_yards")
    base_tons = total("base_yards") * f.base_tons_per_yard * (1 + f.base_waste)
    return Takeoff(
        areas=areas,
        slab_area=total("area"),
        net_yards=total("concrete_yards"),
        brush_loose=brush,
        root_ball_bank=balls,
        root_balls=count,
        green_loose=brush + f.root_ball_swell * balls,
        green_tons=(brush * f.brush_pounds + balls * f.root_ball_pounds) / 2000,
        soil_gross_bank=gross,
        soil_bank=bank,
        soil_hauled_bank=hauled,
        soil_loose=hauled * (1 + swell),
        soil_tons=hauled * pounds * f.moisture[job.moisture] / 2000,
        chip_yards=total("chip_yards"),
        old_slab_yards=total("old_slab_yards"),
        old_concrete_loose=old * (1 + f.concrete_swell),
        old_concrete_tons=old * f.concrete_pounds / 2000,
        base_yards=total("base_yards"),
        base_tons=base_tons,
        base_bought=up(base_tons, f.base_increment),
        form_feet=total("form_feet"),
        isolation_feet=total("isolation_feet"),
        bond_area=total("bond_area"),
        bond_breaker_area=total("bond_breaker_area"),
        saw_cut_feet=sum(a.saw_cut * a.copies for a in job.areas),
        boards=_boards(areas),
    )
