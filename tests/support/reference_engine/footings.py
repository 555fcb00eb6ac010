"""Old footings under a slab: what is chipped, displaced, bonded, and left in the dig."""

from dataclasses import dataclass

from .facts import Area, Factors, Footing
from .geometry import dig_thickness, pour_thickness
from .rounding import less


@dataclass
class FootingTakeoff:
    """One footing worked out, for one copy of its area."""

    chip_depth: float
    chip_yards: float
    chip_hours: float
    displaced_yards: float
    in_dig_yards: float
    bond_area: float
    bond_breaker_area: float
    top_after: float
    plan: float


def chip_depth(footing: Footing) -> float:
    """Inches to take off so that the required cover passes over the footing."""
    return max(0.0, footing.cover - footing.top_below)


def _bond_area(footing: Footing, thickness: float, top_after: float) -> float:
    """Top and exposed sides; nothing for a bond breaker or a footing at or below the underside of the slab."""
    if footing.bond_breaker or not less(top_after, thickness):
        return 0.0
    cover = max(0.0, top_after)
    sides = footing.exposed_sides * footing.length * (thickness - cover) / 12
    return footing.length * footing.width + sides


def footing_takeoff(footing: Footing, area: Area, factors: Factors) -> FootingTakeoff:
    """Work out one footing. Measured thickness for what is poured, planned thickness for what is dug."""
    plan = footing.length * footing.width
    depth = chip_depth(footing)
    top_after = footing.top_below + depth
    chip = plan * (depth + (factors.over_break if depth > 0 else 0.0)) / 324
    slow = factors.chip_reinforced if footing.reinforced == "yes" else 1.0
    thickness = pour_thickness(area)
    bottom = dig_thickness(area) + area.base
    return FootingTakeoff(
        chip_depth=depth,
        chip_yards=chip,
        chip_hours=chip * factors.chip_hours * slow,
        displaced_yards=plan * max(0.0, thickness - top_after) / 324,
        in_dig_yards=plan * max(0.0, bottom - max(area.height_above_grade, footing.top_below)) / 324,
        bond_area=_bond_area(footing, thickness, top_after),
        bond_breaker_area=plan if footing.bond_breaker else 0.0,
        top_after=top_after,
        plan=plan,
    )


def base_inches_over(footing: FootingTakeoff, area: Area) -> float:
    """Rock that fits between the chipped footing and the underside of the slab, never more than the base."""
    return max(0.0, min(area.base, footing.top_after - dig_thickness(area)))
