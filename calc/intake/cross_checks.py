"""Checks across rows and columns: values that are each valid and contradict each other.

Plain arithmetic is enough here, since its results only decide about findings; quantities are computed by the rules.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations, pairwise
from math import isnan, pi

from calc.declared import Input
from calc.errors import Finding, FindingKind
from calc.formula.levels import Level
from calc.intake.records import DEFAULT, JobInput, Row
from calc.trade.inputs.areas import Area, CrossSection, Deduction, Edge, OutlineCorner
from calc.trade.inputs.removal import Footing
from calc.trade.levels import AREA, CROSS_SECTION, DEDUCTION, EDGE, FOOTING, OUTLINE_POINT

Point = tuple[float, float]

MAX_FOOTING_RATIO = 1.1
"""The largest length of a footing as a multiple of the length of its area."""

PERIMETER_TOLERANCE = 0.1
"""The largest difference between edges and perimeter, as a part of the perimeter, before it is questioned."""

FOUR_SIDES = ("rectangle", "trapezoid")
"""The shapes that have a length and a width at each end."""

LARGE_DEDUCTIONS = 0.3
"""The largest part of an area that deductions may take before it is questioned."""

FT2_IN_PER_YD3 = 324
"""A cubic yard is 324 ft2, an inch thick."""

DUST = 1e-9
"""How far a number may be off another that is equal to it, as floats go."""

BEYOND_END = 1.0
"""Feet beyond the end of the joint layout length within which the slab could end at an old joint."""

NEARNESS = 1e-6
"""Feet beyond the end that are no more than the last digit of a length."""

LAYOUT_TOLERANCE = 0.1
"""How far a typed length for joint layout may be off a side, as a part of it, and still mean that side."""


def cross_checks(job: JobInput) -> Iterator[Finding]:
    """The findings about each area of a job, with the place of the row to correct."""
    for index, area in enumerate(job.rows.get(AREA, [])):
        inside = {
            level: _within(job, level, index) for level in (CROSS_SECTION, OUTLINE_POINT, DEDUCTION, EDGE, FOOTING)
        }
        yield from _stations(job, area, inside[CROSS_SECTION])
        yield from _corners(job, area, inside[OUTLINE_POINT])
        size = _area(area, inside)
        yield from _deductions(job, area, inside[DEDUCTION], size)
        yield from _footings(job, area, inside[FOOTING])
        yield from _edges(job, area, inside[EDGE])
        yield from _old_concrete(job, area, inside, size)
        sides = _sides(area, inside)
        yield from _joints(job, area, sides)
        yield from _joints_outside(job, area, inside[CROSS_SECTION], sides)


def _within(job: JobInput, level: Level, area: int) -> list[Row]:
    return [row for row in job.rows.get(level, []) if row.within == area]


def _number(row: Row, given: Input) -> float:
    """The number that was typed, or the default; 0 for none."""
    value = float(row.entries[given].value)
    return 0.0 if isnan(value) else value


def _word(row: Row, given: Input) -> str:
    return str(row.entries[given].value)


def _typed(row: Row, given: Input) -> bool:
    return row.entries[given].origin != DEFAULT


def _finding(kind: FindingKind, job: JobInput, row: Row, found: str, remedy: str = "") -> Finding:
    return Finding(kind, row.place, found, remedy, job.id)


def _stations(job: JobInput, area: Row, stations: Sequence[Row]) -> Iterator[Finding]:
    if _word(area, Area.shape) == "cross-sections" and len(stations) < 2:
        count = f"{len(stations)} row{'s' * (len(stations) != 1)}"
        found = f"The shape of area {area.word} is cross-sections, and it has {count} in Cross-sections."
        yield _finding(FindingKind.TOO_FEW_POINTS, job, area, found, "Type at least two rows in Cross-sections.")
    for one, other in pairwise(stations):
        if _number(other, CrossSection.station) <= _number(one, CrossSection.station):
            found = f"The station at {_number(other, CrossSection.station):g} ft is not beyond the station before it."
            remedy = "Type the stations in order, from one end."
            yield _finding(FindingKind.STATIONS_OUT_OF_ORDER, job, other, found, remedy)


def _corners(job: JobInput, area: Row, corners: Sequence[Row]) -> Iterator[Finding]:
    if _word(area, Area.shape) != "outline points":
        return
    if len(corners) < 3:
        count = f"{len(corners)} row{'s' * (len(corners) != 1)}"
        found = f"The shape of area {area.word} is outline points, and it has {count} in Outline points."
        yield _finding(FindingKind.TOO_FEW_POINTS, job, area, found, "Type at least three rows in Outline points.")
        return
    crossed = _crossing([(_number(row, OutlineCorner.x), _number(row, OutlineCorner.y)) for row in corners])
    if crossed is not None:
        found = f"The outline of area {area.word} crosses itself: the side that starts at this point crosses another."
        remedy = "Type the points in order around the outline."
        yield _finding(FindingKind.OUTLINE_CROSSES_ITSELF, job, corners[crossed], found, remedy)


def _crossing(points: Sequence[Point]) -> int | None:
    """The index of the first side that crosses a later side that is not adjacent to it; None when none does."""
    sides = list(zip(points, [*points[1:], points[0]], strict=True))
    for (one, a), (other, b) in combinations(enumerate(sides), 2):
        adjacent = other - one == 1 or (one == 0 and other == len(sides) - 1)
        if not adjacent and _segments_meet(*a, *b):
            return one
    return None


def _segments_meet(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Whether the segments a-b and c-d have a point in common."""
    return _turn(a, b, c) * _turn(a, b, d) <= 0 and _turn(c, d, a) * _turn(c, d, b) <= 0


def _turn(a: Point, b: Point, c: Point) -> float:
    """The cross product of a-b and a-c: positive for a left turn, 0 for points in a line."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _area(area: Row, inside: dict[Level, list[Row]]) -> float:
    """The gross area of one of the area's copies, in ft2."""
    length, width = _number(area, Area.length), _number(area, Area.width)
    far = _number(area, Area.other_width) if _typed(area, Area.other_width) else width
    shape = _word(area, Area.shape)
    if shape == "cross-sections":
        stops = [
            (_number(row, CrossSection.station), _number(row, CrossSection.width)) for row in inside[CROSS_SECTION]
        ]
        return sum((x2 - x1) * (w1 + w2) / 2 for (x1, w1), (x2, w2) in pairwise(stops))
    if shape == "outline points":
        points = [(_number(row, OutlineCorner.x), _number(row, OutlineCorner.y)) for row in inside[OUTLINE_POINT]]
        turned = zip(points, [*points[1:], *points[:1]], strict=True)
        return abs(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in turned)) / 2
    return {
        **dict.fromkeys(FOUR_SIDES, length * (width + far) / 2),
        "triangle": length * width / 2,
        "area given": _number(area, Area.given_area),
    }.get(shape, pi * length * length / 4)


def _deducted(row: Row) -> float:
    """The area of a deduction, in ft2."""
    length, width = _number(row, Deduction.length), _number(row, Deduction.width)
    one = {
        "circle": pi * length * length / 4,
        "triangle": length * width / 2,
        "area given": _number(row, Deduction.given_area),
    }.get(_word(row, Deduction.shape), length * width)
    return one * _number(row, Deduction.quantity)


def _deductions(job: JobInput, area: Row, deductions: Sequence[Row], size: float) -> Iterator[Finding]:
    deducted = sum(_deducted(row) for row in deductions)
    if deductions and deducted >= size:
        found = f"The deductions of area {area.word} total {deducted:.2f} ft2, and the area is {size:.2f} ft2."
        remedy = "Correct the deductions or the area."
        yield _finding(FindingKind.DEDUCTIONS_EXCEED_AREA, job, deductions[-1], found, remedy)
    elif deductions and deducted > LARGE_DEDUCTIONS * size:
        percent = f"{100 * deducted / size:.0f}%"
        found = f"The deductions are {percent} of area {area.word}. Is that correct?"
        yield _finding(FindingKind.LARGE_DEDUCTIONS, job, deductions[-1], found)


def _footings(job: JobInput, area: Row, footings: Sequence[Row]) -> Iterator[Finding]:
    width = max(_number(area, Area.width), _number(area, Area.other_width))
    length = _number(area, Area.length)
    if _word(area, Area.shape) not in FOUR_SIDES:
        return
    remedy = "Type only the part of the footing that is under the area."
    for row in footings:
        if _number(row, Footing.width) > width:
            found = (
                f"The footing is {_number(row, Footing.width):g} ft wide, and area {area.word} is {width:g} ft wide."
            )
            yield _finding(FindingKind.FOOTING_EXCEEDS_AREA, job, row, found, remedy)
        if _number(row, Footing.length) > MAX_FOOTING_RATIO * length:
            found = (
                f"The footing is {_number(row, Footing.length):g} ft long, and area {area.word} is {length:g} ft long."
            )
            yield _finding(FindingKind.FOOTING_EXCEEDS_AREA, job, row, found, remedy)


def _old_concrete(job: JobInput, area: Row, inside: dict[Level, list[Row]], size: float) -> Iterator[Finding]:
    """More old concrete than the hole of one copy of the area, in inches over its square feet."""
    bottom, raised = _number(area, Area.thickness) + _number(area, Area.base), _number(area, Area.height_above_grade)
    net = size - sum(_deducted(row) for row in inside[DEDUCTION])
    old = _number(area, Area.old_slab) * _number(area, Area.old_slab_thickness) + sum(
        _number(row, Footing.length)
        * _number(row, Footing.width)
        * max(0.0, bottom - max(raised, _number(row, Footing.depth_to_top)))
        for row in inside[FOOTING]
    )
    dig = net * max(0.0, bottom - raised)
    if net > 0 and old > dig * (1 + DUST) + DUST:
        found = (
            f"The old slab and footings of area {area.word} are {old / FT2_IN_PER_YD3:.2f} yd3, and its dig is "
            f"{dig / FT2_IN_PER_YD3:.2f} yd3. Is that correct?"
        )
        yield _finding(FindingKind.OLD_CONCRETE_EXCEEDS_DIG, job, area, found)


def _edges(job: JobInput, area: Row, edges: Sequence[Row]) -> Iterator[Finding]:
    shape = _word(area, Area.shape)
    for row in edges:
        if shape in ("circle", "quarter circle") and _number(row, Edge.length) and not _typed(row, Edge.curved):
            yield _finding(FindingKind.STRAIGHT_EDGE, job, row, f"Area {area.word} is round. Is this edge curved?")
    typed = sum(_number(row, Edge.length) * _number(row, Edge.quantity) for row in edges)
    perimeter = _perimeter(area)
    rows = [row for row in edges if row.place.sheet != area.place.sheet]
    if rows and perimeter and abs(typed - perimeter) > PERIMETER_TOLERANCE * perimeter:
        found = f"The edges of area {area.word} total {typed:.1f} ft, and its perimeter is {perimeter:.1f} ft."
        yield _finding(FindingKind.PERIMETER_MISMATCH, job, rows[-1], f"{found} Is that correct?")


def _perimeter(area: Row) -> float:
    """The perimeter of a rectangle in ft; 0 for any other shape."""
    if _word(area, Area.shape) not in FOUR_SIDES or _typed(area, Area.other_width):
        return 0.0
    return 2 * (_number(area, Area.length) + _number(area, Area.width))


def _sides(area: Row, inside: dict[Level, list[Row]]) -> tuple[float, float] | None:
    """The length and the mean width of an area that has two sides, in ft; None for any other shape."""
    if _word(area, Area.shape) in FOUR_SIDES:
        length = _number(area, Area.length)
    elif _word(area, Area.shape) == "cross-sections" and inside[CROSS_SECTION]:
        stops = [_number(row, CrossSection.station) for row in inside[CROSS_SECTION]]
        length = stops[-1] - stops[0]
    else:
        return None
    return (length, _area(area, inside) / length) if length > 0 else None


def _joints(job: JobInput, area: Row, sides: tuple[float, float] | None) -> Iterator[Finding]:
    known = [_typed(area, given) for given in (Area.layout_length, Area.panel_width)]
    if _word(area, Area.shape) not in (*FOUR_SIDES, "cross-sections") and not all(known):
        found = f"Area {area.word} gets no joints: its length for joint layout and its panel width are not both typed."
        yield _finding(FindingKind.NO_JOINT_LAYOUT, job, area, found)
    run = _number(area, Area.layout_length)
    if run and sides is not None and all(abs(run - side) > LAYOUT_TOLERANCE * side for side in sides):
        found = (
            f"The length for joint layout of area {area.word} is {run:g} ft, and its sides are {sides[0]:.1f} and "
            f"{sides[1]:.1f} ft. Is that correct?"
        )
        yield _finding(FindingKind.LAYOUT_LENGTH_MISMATCH, job, area, found)


def _joints_outside(
    job: JobInput, area: Row, stations: Sequence[Row], sides: tuple[float, float] | None
) -> Iterator[Finding]:
    """Old joints beyond the end of a slab, which no new joint meets; just beyond it, the slab could end there."""
    run = _number(area, Area.layout_length) or max(sides or (0.0,))
    by_stations = stations and _word(area, Area.shape) == "cross-sections"
    start = _number(stations[0], CrossSection.station) if by_stations else 0.0
    for row in stations:
        beyond = _number(row, CrossSection.station) - start - run
        if not run or _word(row, CrossSection.old_joint) != "yes" or beyond <= NEARNESS:
            continue
        if beyond < BEYOND_END:
            found = f"An old joint is {beyond:.2f} ft beyond the end of area {area.word}. Should the slab end there?"
            yield _finding(FindingKind.JOINT_BEYOND_END, job, row, found)
        else:
            found = f"An old joint is {beyond:.2f} ft beyond the end of area {area.word}, where no new joint meets it."
            remedy = "Measure old joints from where the slab begins."
            yield _finding(FindingKind.JOINT_OUTSIDE_SLAB, job, row, found, remedy)
