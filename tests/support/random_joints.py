"""Areas with joints in them, drawn by chance, the same every time; limits are met exactly far more often."""

from __future__ import annotations

from dataclasses import replace
from random import Random

from books import Rows, line
from reference_engine.factors import Factors
from reference_engine.facts import Area, Shape, Station

OTHER_HOUSE = replace(
    Factors(), panel_thicknesses=24.0, panel_maximum=12.0, panel_ratio=1.25, panel_floor=3.0, panel_tolerance=0.05
)
"""A house with rules of its own."""

FACTOR_IDS = {
    "Panel.by_thickness": lambda factors: factors.panel_thicknesses,
    "Panel.max_spacing": lambda factors: factors.panel_maximum,
    "Panel.by_width": lambda factors: factors.panel_ratio,
    "Panel.min_spacing": lambda factors: factors.panel_floor,
    "Panel.width_tolerance": lambda factors: 100 * factors.panel_tolerance,
}
"""The factors of joints by their ids, and what a house has for each."""

SHAPES = {
    "rectangle": "rectangle",
    "trapezoid": "trapezoid",
    "stations": "cross-sections",
    "circle": "circle",
    "area given": "area given",
}
"""What a jobs book calls a shape."""


def drawn_area(chance: Random, name: str) -> Area:
    """An area of a shape that has two sides, or of one that has none."""
    shape = _shape(chance)
    area = Area(shape, name, chance.choice([1, 1, 1, 3]), chance.choice([3.5, 4.0, 4.0, 5.0, 6.0, 8.0]))
    if chance.random() < 0.2:
        area = replace(area, edge_1=area.thickness, edge_2=area.thickness + chance.choice([0.5, 1.0]))
    area = _typed_sides(chance, area)
    area = _old_joints(chance, area)
    if shape.kind in ("circle", "area given") and None in (area.run, area.panel_width):
        return area
    if chance.random() < 0.15:
        area = replace(area, forced_cross_joints=chance.choice([0, 1, 2, 5]))
    if chance.random() < 0.15:
        area = replace(area, forced_long_joints=chance.choice([0, 1, 3]))
    return area


def _shape(chance: Random) -> Shape:
    length, width = float(chance.choice([5, 9, 10, 16, 20, 30, 45, 60])), float(chance.choice([1, 3, 4, 6, 10, 20, 24]))
    kind = chance.choice([*["rectangle"] * 3, "trapezoid", "stations", "stations", "circle", "area given"])
    if kind == "trapezoid":
        return Shape(kind, length, width, width + chance.choice([1.0, 2.0, 8.0]))
    if kind == "stations":
        begin = chance.choice([0.0, 1.0, 2.5])
        middle = length * chance.choice([0.25, 0.5, 0.75])
        rows = (Station(begin, width), Station(begin + middle, width + 1), Station(begin + length, width))
        return Shape(kind, stations=rows)
    return {
        "rectangle": Shape(kind, length, width),
        "circle": Shape(kind, length),
        "area given": Shape(kind, area=length * width),
    }[kind]


def _typed_sides(chance: Random, area: Area) -> Area:
    """A layout length at, near, just past and far from a side; a panel width that is narrower, or hardly so."""
    shape = area.shape
    if shape.kind in ("circle", "area given"):
        run, width = chance.choice([(None, None), (16.0, None), (None, 5.0), (16.0, 3.0), (12.0, 12.0), (40.0, 22.0)])
        return replace(area, run=run, panel_width=width)
    length = shape.length or shape.stations[-1].at - shape.stations[0].at
    width = shape.width or shape.stations[0].width
    runs = (None, None, None, length, length * 1.08, length * 1.1, width * 0.95, length * 0.6, length * 1.3)
    widths = (None, None, None, width * 0.9, width * 0.899, width / 2, width / 3, width * 1.5)
    return replace(area, run=chance.choice(runs), panel_width=chance.choice(widths))


def _old_joints(chance: Random, area: Area) -> Area:
    """Old joints at even feet, at the ends of the slab, and outside it."""
    shape = area.shape
    if chance.random() < 0.5 or shape.kind in ("circle", "area given"):
        return area
    if shape.kind != "stations":
        places = (3.0, 8.0, 9.0, 16.0, 20.5, 31.25, shape.length, shape.length + 0.5, shape.length + 7)
        old = {each for each in places if chance.random() < 0.4}
        return replace(area, old_joints=tuple(sorted(old)))
    first, middle, last = shape.stations
    at = first.at + (middle.at - first.at) / 2
    rows = (first, Station(at, first.width + 0.5), middle, last)
    old = {each.at for each in rows if chance.random() < 0.5}
    return replace(area, shape=replace(shape, stations=rows), old_joints=tuple(sorted(old)))


def tables(jobs: list[list[Area]]) -> dict[str, Rows]:
    """The sheets of a jobs book with these jobs, numbered from 1."""
    header = ["job", "area", "shape", "length ft", "width ft", "other width ft", "thickness in", "other thickness in"]
    areas: list[list[object]] = [[*header, "quantity", "area ft2", "length for joint layout ft", "panel width ft"]]
    stations: list[list[object]] = [["job", "area", "station ft", "width ft", "old joint"]]
    overrides: list[list[object]] = [["job", "area", "line", "value", "reason", "who"]]
    for number, job in enumerate(jobs, start=1):
        for area in job:
            areas.append([f"job {number}", area.name, *_cells(area)])
            stations += [[f"job {number}", area.name, *row] for row in _stops(area)]
            for label, count in _forced(area):
                overrides.append([f"job {number}", area.name, label, count, "as drawn", "QZ"])
    dates: list[list[object]] = [[f"job {number}", "2026-04-13"] for number in range(1, len(jobs) + 1)]
    return {
        "Jobs": [["job", "bid date"], *dates],
        "Areas": areas,
        "Cross-sections": stations,
        "Overrides": overrides,
    }


def _cells(area: Area) -> list[object]:
    """The cells of an area in Areas, after its name."""
    shape = area.shape
    thickness, other = (area.thickness, None) if area.edge_1 is None else (area.edge_1, area.edge_2)
    sizes = [shape.length or None, shape.width or None, shape.width_2 or None]
    return [SHAPES[shape.kind], *sizes, thickness, other, area.copies, shape.area or None, area.run, area.panel_width]


def _stops(area: Area) -> list[list[object]]:
    """The rows of an area in Cross-sections: station, width and whether an old joint is there."""
    if area.shape.kind == "stations":
        return [[each.at, each.width, "yes" if each.at in area.old_joints else "no"] for each in area.shape.stations]
    return [[each, None, "yes"] for each in area.old_joints]


def _forced(area: Area) -> list[tuple[str, int]]:
    """The counts that are forced, by the label of their line."""
    across, along = line("MatchedJoints.joints").label, line("Panel.joints_along").label
    counts = ((across, area.forced_cross_joints), (along, area.forced_long_joints))
    return [(label, count) for label, count in counts if count is not None]


def factor_table(factors: Factors) -> Rows:
    """The sheet Factors of a house."""
    return [["factor", "value"], *([line(each).label, value(factors)] for each, value in FACTOR_IDS.items())]
