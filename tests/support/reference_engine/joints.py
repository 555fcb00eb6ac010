"""Contraction joints both ways: computed, forced, or in line with the old walk."""

import itertools
from dataclasses import dataclass

from .facts import Area, Factors
from .geometry import panel_thickness, two_sides
from .rounding import less, up


@dataclass
class JointPlan:
    """Joints of one copy of an area; positions run along the slab from where it begins."""

    run: float
    width: float
    limit: float
    spacing: float
    across: int
    along: int
    positions: list[float]
    longest_panel: float
    panel_width: float
    feet: float
    asked: bool = False


def panel_limit(thickness: float, factors: Factors) -> float:
    """Longest side of a panel in feet: thirty thicknesses, and never more than fifteen feet."""
    return min(factors.panel_thicknesses * thickness / 12, factors.panel_maximum)


def run_and_width(area: Area, factors: Factors) -> tuple[float, float, bool] | None:
    """Length and width for joint layout, and whether the typed length is asked about.

    The run is the longer side unless one is typed; the width is then the side that the typed run is not nearest to,
    or the shorter side when the typed run is far from both. Shapes without two sides need both typed.
    """
    sides = two_sides(area.shape)
    if sides is None:
        if area.run is None or area.panel_width is None:
            return None
        return area.run, area.panel_width, False
    if area.run is None:
        return max(sides), min(sides), False
    far = all(less(factors.panel_tolerance * s, abs(area.run - s)) for s in sides)
    if far:
        return area.run, min(sides), True
    first, second = sides
    nearest_first = not less(abs(area.run - second), abs(area.run - first))
    return area.run, second if nearest_first else first, False


def lengthwise_joints(area: Area, width: float, limit: float, factors: Factors) -> int:
    """Joints along the run, evenly spread over the width, so that no panel is wider than the limit."""
    if area.forced_long_joints is not None:
        return area.forced_long_joints
    count = up(width / limit) - 1
    typed = area.panel_width
    if typed is not None and two_sides(area.shape) and less(typed, (1 - factors.panel_tolerance) * width):
        count = max(count, up(width / typed) - 1)
    return max(0, count)


def _even(start: float, end: float, count: int) -> list[float]:
    """Positions of `count` joints spread evenly between two points."""
    return [start + (end - start) * i / (count + 1) for i in range(1, count + 1)]


def _matched(old: list[float], run: float, limit: float) -> list[float]:
    """Every old joint keeps its place; a gap longer than the limit gets more, evenly."""
    stops = [0.0, *old, run]
    places = list(old)
    for a, b in itertools.pairwise(stops):
        places += _even(a, b, max(0, up((b - a) / limit) - 1))
    return sorted(places)


def old_joints_inside(area: Area, run: float) -> list[float]:
    """Old joints measured from where the slab begins; one outside the slab is none."""
    begin = area.shape.stations[0].at if area.shape.kind == "stations" else 0.0
    return sorted(x - begin for x in area.old_joints if less(0.0, x - begin) and less(x - begin, run))


def joint_plan(area: Area, factors: Factors) -> JointPlan | None:
    """Joints of an area; none when its run and width are not known."""
    known = run_and_width(area, factors)
    if known is None:
        return None
    run, width, asked = known
    limit = panel_limit(panel_thickness(area), factors)
    along = lengthwise_joints(area, width, limit, factors)
    panel_width = width / (along + 1)
    spacing = min(limit, max(factors.panel_ratio * panel_width, factors.panel_floor))
    old = old_joints_inside(area, run)
    if area.forced_cross_joints is not None:
        places = _even(0.0, run, area.forced_cross_joints)
    elif old:
        places = _matched(old, run, limit)
    else:
        places = _even(0.0, run, max(0, up(run / spacing) - 1))
    stops = [0.0, *places, run]
    longest = max(b - a for a, b in itertools.pairwise(stops))
    feet = len(places) * width + along * run
    return JointPlan(run, width, limit, spacing, len(places), along, places, longest, panel_width, feet, asked)
