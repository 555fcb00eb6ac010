"""Dowels, reinforcing bars, mesh and vapor retarder."""

import math
from dataclasses import dataclass

from .facts import Area, Edge, Factors, Job
from .geometry import net_area, two_sides
from .rounding import down, less, up


def dowels_on_edge(edge: Edge) -> int:
    """Dowels on one run of an edge: spaces at the greatest spacing plus one; one in the middle of a short edge."""
    if edge.dowel_spacing is None:
        return 0
    usable = edge.length - 2 * edge.end_distance / 12
    if not less(usable, 0.5):
        return up(usable / (edge.dowel_spacing / 12)) + 1
    return 0 if less(edge.length, 1.0) else 1


@dataclass
class Dowels:
    """Dowels of the whole job."""

    count: int
    bars: dict
    pieces: dict
    bits: int
    epoxy_tubes: int


def job_dowels(job: Job) -> Dowels:
    """Count dowels, cut each length from bars of its own, and buy bits and epoxy."""
    f = job.factors
    by_length: dict[tuple[float, float], int] = {}
    oversize = 0
    for area in job.areas:
        for edge in area.edges:
            n = dowels_on_edge(edge) * edge.repeats * area.copies
            key = (edge.bar_diameter, round(edge.embedment + edge.projection, 6))
            by_length[key] = by_length.get(key, 0) + n
            wide = edge.drill_diameter is not None and less(edge.bar_diameter, edge.drill_diameter)
            oversize += n if wide else 0
    by_length = {k: n for k, n in by_length.items() if n}
    pieces = {k: up(n * (1 + f.dowel_waste)) for k, n in by_length.items()}
    bars: dict[float, int] = {}
    for (size, length), n in pieces.items():
        per_bar = down((f.stock_bar_feet * 12 + f.kerf) / (length + f.kerf))
        bars[size] = bars.get(size, 0) + up(n / per_bar)
    count = sum(by_length.values())
    return Dowels(count, bars, pieces, up(count / f.holes_per_bit), up(oversize / f.holes_per_tube))


@dataclass
class Mat:
    """Reinforcement of one area, all copies together."""

    bars_each_way: tuple[int, int] = (0, 0)
    stock_bars: int = 0
    pounds: float = 0.0
    chairs: int = 0
    ties: float = 0.0
    sheets: int = 0
    hours: float = 0.0


def _sides(area: Area) -> tuple[float, float]:
    """Two sides of the area, or the side of a square of the same size."""
    root = math.sqrt(net_area(area))
    return two_sides(area.shape) or (root, root)


def _one_way(side: float, other: float, area: Area, factors: Factors) -> tuple[int, float, int]:
    """Bars laid side by side along one side: how many, their length with laps, and stock bars to buy."""
    edge = factors.bar_edge_inches / 12
    stock = factors.stock_bar_feet
    length = other - 2 * edge
    if not less(0.0, length):
        return 0, 0.0, 0
    count = up(max(0.0, side - 2 * edge) / (area.bar_spacing / 12)) + 1
    if not less(stock, length):
        return count, length, up(count * area.copies / down(stock / length))
    lap = factors.lap_diameters * (area.bar_number / 8) / 12
    lapped = length + (up(length / stock) - 1) * lap
    return count, lapped, count * area.copies * up(lapped / stock)


def _bar_mat(area: Area, factors: Factors) -> Mat:
    """Bars both ways with chairs, and ties at half of the crossings."""
    first, second = _sides(area)
    n1, long1, stock1 = _one_way(first, second, area, factors)
    n2, long2, stock2 = _one_way(second, first, area, factors)
    pounds = (n1 * long1 + n2 * long2) * factors.bar_pounds[area.bar_number] * area.copies
    return Mat(
        bars_each_way=(n1, n2),
        stock_bars=stock1 + stock2,
        pounds=pounds,
        chairs=up(net_area(area) * area.copies / factors.chair_area),
        ties=n1 * n2 * area.copies * factors.tie_share,
        hours=pounds * factors.bar_hours_pound,
    )


def _mesh_mat(area: Area, factors: Factors) -> Mat:
    """Whole sheets lapped both ways; by the area alone where there are no two sides."""
    size = net_area(area) * area.copies
    hours = size * factors.mesh_hours
    sides = two_sides(area.shape)
    lap, sheet = factors.mesh_lap, factors.mesh_length * factors.mesh_width
    if sides is None:
        return Mat(sheets=up(size * (1 + factors.mesh_waste) / sheet), hours=hours)
    rows = up((max(sides) - lap) / (factors.mesh_length - lap))
    columns = up((min(sides) - lap) / (factors.mesh_width - lap))
    return Mat(sheets=max(1, max(rows, 0) * max(columns, 0)) * area.copies, hours=hours)


def area_mat(area: Area, factors: Factors) -> Mat:
    """Reinforcement of one area: none, bars or mesh."""
    if area.reinforcement == "bars":
        return _bar_mat(area, factors)
    if area.reinforcement == "mesh":
        return _mesh_mat(area, factors)
    return Mat()


@dataclass
class Reinforcement:
    """Reinforcement and vapor retarder of the job."""

    mats: list[Mat]
    stock_bars: dict
    chairs: int
    tie_hundreds: int
    sheets: int
    hours: float
    vapor_area: float
    vapor_rolls: int
    vapor_hours: float


def job_reinforcement(job: Job) -> Reinforcement:
    """Add the areas up; ties are bought by the hundred for the job, vapor retarder by the roll."""
    f = job.factors
    mats = [area_mat(a, f) for a in job.areas]
    stock: dict[int, int] = {}
    for area, mat in zip(job.areas, mats, strict=True):
        if mat.stock_bars:
            stock[area.bar_number] = stock.get(area.bar_number, 0) + mat.stock_bars
    covered = sum(net_area(a) * a.copies for a in job.areas if a.vapor_retarder)
    lapped = covered * (1 + f.vapor_waste)
    return Reinforcement(
        mats=mats,
        stock_bars=stock,
        chairs=sum(m.chairs for m in mats),
        tie_hundreds=up(sum(m.ties for m in mats) / 100),
        sheets=sum(m.sheets for m in mats),
        hours=sum(m.hours for m in mats),
        vapor_area=lapped,
        vapor_rolls=up(lapped / job.prices.vapor_roll_size),
        vapor_hours=covered * f.vapor_hours,
    )
