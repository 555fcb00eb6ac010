"""Plan areas, sides and mean thickness of a slab."""

import itertools
import math

from .facts import Area, Deduction, Shape


def _stations_area(shape: Shape) -> float:
    """Strip by strip: each stretch times the mean of its two widths."""
    rows = shape.stations
    return sum((b.at - a.at) * (a.width + b.width) / 2 for a, b in itertools.pairwise(rows))


def _polygon_area(shape: Shape) -> float:
    """Half the closed sum of cross products, whichever way the outline was walked."""
    points = shape.points
    turned = points[1:] + points[:1]
    return abs(sum(x * v - u * y for (x, y), (u, v) in zip(points, turned, strict=True))) / 2


def plan_area(shape: Shape) -> float:
    """Plan area of one shape in square feet."""
    rules = {
        "rectangle": lambda s: s.length * s.width,
        "trapezoid": lambda s: s.length * (s.width + s.width_2) / 2,
        "triangle": lambda s: s.length * s.width / 2,
        "circle": lambda s: math.pi * s.length**2 / 4,
        "quarter circle": lambda s: math.pi * s.length**2 / 4,
        "stations": _stations_area,
        "polygon": _polygon_area,
        "area given": lambda s: s.area,
    }
    return rules[shape.kind](shape)


def net_area(area: Area) -> float:
    """Gross plan less the holes, of one copy; nothing left is an error of that job."""
    net = plan_area(area.shape) - sum(d.count * plan_area(d.shape) for d in area.deductions)
    if net <= 0:
        raise ValueError(f"area {area.name} has no slab left")
    return net


def two_sides(shape: Shape) -> tuple[float, float] | None:
    """The two sides of a rectangle, a trapezoid (mean width) or a strip measured at stations; else none."""
    if shape.kind == "rectangle":
        return shape.length, shape.width
    if shape.kind == "trapezoid":
        return shape.length, (shape.width + shape.width_2) / 2
    if shape.kind == "stations":
        run = shape.stations[-1].at - shape.stations[0].at
        return run, plan_area(shape) / run
    return None


def is_tapered(area: Area) -> bool:
    """An area with a thickness typed at both edges."""
    return area.edge_1 is not None and area.edge_2 is not None


def _tapered_mean(area: Area) -> float:
    """Mean of the two ends; exact where the width changes along the taper (first edge at the first width)."""
    first, second, shape = area.edge_1, area.edge_2, area.shape
    if shape.kind != "trapezoid":
        return (first + second) / 2
    w1, w2 = shape.width, shape.width_2
    return (w1 * (2 * first + second) + w2 * (first + 2 * second)) / (3 * (w1 + w2))


def dig_thickness(area: Area) -> float:
    """Thickness as planned, for digging: nominal, or the mean of a tapered area's planned ends."""
    return _tapered_mean(area) if is_tapered(area) else area.thickness


def pour_thickness(area: Area) -> float:
    """Thickness for concrete: mean of the measured depths where there are any, else as planned."""
    if area.depths:
        return sum(area.depths) / len(area.depths)
    return dig_thickness(area)


def panel_thickness(area: Area) -> float:
    """Nominal thickness for joints; the plain mean of a tapered area's ends."""
    return (area.edge_1 + area.edge_2) / 2 if is_tapered(area) else area.thickness


def form_thickness(area: Area) -> float:
    """Thickness for form boards: the thicker edge of a tapered area."""
    return max(area.edge_1, area.edge_2) if is_tapered(area) else area.thickness


def hole_perimeter(hole: Deduction) -> float:
    """Length of isolation around one hole; a shape other than circle or rectangle has it typed."""
    if hole.shape.kind == "circle":
        return math.pi * hole.shape.length
    if hole.shape.kind == "rectangle":
        return 2 * (hole.shape.length + hole.shape.width)
    return hole.perimeter
