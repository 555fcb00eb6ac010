"""Whether what was typed can be meant: rows that each read well and cannot be true together.

Only refusals and questions are worked out here, so plain arithmetic is enough; what the job comes to is for the rules.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations, pairwise
from math import isnan, pi

from calc.declared import Input
from calc.errors import Finding, Severity
from calc.formula.levels import Level
from calc.intake.records import DEFAULT, JobInput, Row
from calc.trade.inputs.areas import Area, CrossSection, Deduction, Edge, OutlineCorner
from calc.trade.inputs.removal import Footing
from calc.trade.levels import AREA, CROSS_SECTION, DEDUCTION, EDGE, FOOTING, OUTLINE_POINT

Point = tuple[float, float]

MOST_FOOTING = 1.1
"""A footing may be so many times as long as the area before it is refused."""

EDGE_SLACK = 0.1
"""Edges that differ by more than this share from the perimeter are asked about."""


FOUR_SIDES = ("rectangle", "trapezoid")
"""The shapes that have a length and a width at each end."""

OFF_THE_END = 1.0
"""Feet beyond the end of the run within which an old joint is asked about."""


def cross_checks(job: JobInput) -> Iterator[Finding]:
    """The findings about each area of a job, with the place of the row to mend."""
    for place, area in enumerate(job.rows.get(AREA, [])):
        inside = {
            level: _within(job, level, place) for level in (CROSS_SECTION, OUTLINE_POINT, DEDUCTION, EDGE, FOOTING)
        }
        yield from _stations(job, area, inside[CROSS_SECTION])
        yield from _corners(job, area, inside[OUTLINE_POINT])
        size = _area(area, inside)
        yield from _deductions(job, area, inside[DEDUCTION], size)
        yield from _footings(job, area, inside[FOOTING])
        yield from _edges(job, area, inside[EDGE])
        yield from _joints(job, area)
        yield from _off_the_end(job, area, inside[CROSS_SECTION])


def _within(job: JobInput, level: Level, place: int) -> list[Row]:
    return [row for row in job.rows.get(level, []) if row.within == place]


def _number(row: Row, given: Input) -> float:
    """A number that was typed or is the default; 0 for none."""
    value = float(row.entries[given].value)
    return 0.0 if isnan(value) else value


def _word(row: Row, given: Input) -> str:
    return str(row.entries[given].value)


def _typed(row: Row, given: Input) -> bool:
    return row.entries[given].origin != DEFAULT


def _stop(job: JobInput, row: Row, found: str, remedy: str) -> Finding:
    return Finding(Severity.STOP, row.place, found, remedy, job.id)


def _ask(job: JobInput, row: Row, found: str) -> Finding:
    return Finding(Severity.ASK, row.place, found, "", job.id)


def _stations(job: JobInput, area: Row, stations: Sequence[Row]) -> Iterator[Finding]:
    if _word(area, Area.shape) == "cross-sections" and len(stations) < 2:
        found = f"Area {area.word} is shaped by cross-sections and has {len(stations)} of them."
        yield _stop(job, area, found, "Type at least two rows in Cross-sections.")
    for one, other in pairwise(stations):
        if _number(other, CrossSection.station) <= _number(one, CrossSection.station):
            found = f"Station {_number(other, CrossSection.station):g} ft is not beyond the station before it."
            yield _stop(job, other, found, "Type the stations in order, from one end.")


def _corners(job: JobInput, area: Row, corners: Sequence[Row]) -> Iterator[Finding]:
    if _word(area, Area.shape) != "outline points":
        return
    if len(corners) < 3:
        found = f"Area {area.word} is shaped by outline points and has {len(corners)} of them."
        yield _stop(job, area, found, "Type at least three rows in Outline points.")
        return
    crossed = _crossing([(_number(row, OutlineCorner.x), _number(row, OutlineCorner.y)) for row in corners])
    if crossed is not None:
        found = f"The outline of area {area.word} crosses itself: the side from this point crosses another."
        yield _stop(job, corners[crossed], found, "Type the points in order around the outline.")


def _crossing(points: Sequence[Point]) -> int | None:
    """The first corner whose side crosses a later one that is no neighbour of it."""
    sides = list(zip(points, [*points[1:], points[0]], strict=True))
    for (one, a), (other, b) in combinations(enumerate(sides), 2):
        neighbours = other - one == 1 or (one == 0 and other == len(sides) - 1)
        if not neighbours and _cross(*a, *b):
            return one
    return None


def _cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Whether the sides a-b and c-d meet."""
    return _turn(a, b, c) * _turn(a, b, d) <= 0 and _turn(c, d, a) * _turn(c, d, b) <= 0


def _turn(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _area(area: Row, inside: dict[Level, list[Row]]) -> float:
    """The gross area of one copy."""
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


def _hole(row: Row) -> float:
    length, width = _number(row, Deduction.length), _number(row, Deduction.width)
    one = {
        "circle": pi * length * length / 4,
        "triangle": length * width / 2,
        "area given": _number(row, Deduction.given_area),
    }.get(_word(row, Deduction.shape), length * width)
    return one * _number(row, Deduction.quantity)


def _deductions(job: JobInput, area: Row, holes: Sequence[Row], size: float) -> Iterator[Finding]:
    taken = sum(_hole(row) for row in holes)
    if holes and taken >= size:
        found = f"The deductions of area {area.word} come to {taken:.2f} ft2, and the area itself has {size:.2f} ft2."
        yield _stop(job, holes[-1], found, "Mend the deductions or the area.")
    elif holes and taken > 0.3 * size:
        yield _ask(
            job, holes[-1], f"The deductions take {100 * taken / size:.0f} % of area {area.word}; is that meant?"
        )


def _footings(job: JobInput, area: Row, footings: Sequence[Row]) -> Iterator[Finding]:
    width = max(_number(area, Area.width), _number(area, Area.other_width))
    length = _number(area, Area.length)
    if _word(area, Area.shape) not in FOUR_SIDES:
        return
    for row in footings:
        if _number(row, Footing.width) > width:
            found = f"The footing is {_number(row, Footing.width):g} ft wide, and area {area.word} {width:g} ft."
            yield _stop(job, row, found, "Type what lies under the area only.")
        if _number(row, Footing.length) > MOST_FOOTING * length:
            found = f"The footing is {_number(row, Footing.length):g} ft long, and area {area.word} {length:g} ft."
            yield _stop(job, row, found, "Type what lies under the area only.")


def _edges(job: JobInput, area: Row, edges: Sequence[Row]) -> Iterator[Finding]:
    shape = _word(area, Area.shape)
    for row in edges:
        if shape in ("circle", "quarter circle") and _number(row, Edge.length) and not _typed(row, Edge.curved):
            yield _ask(job, row, f"Area {area.word} is round; is this edge curved?")
    typed = sum(_number(row, Edge.length) * _number(row, Edge.quantity) for row in edges)
    around = _perimeter(area)
    listed = [row for row in edges if row.place.sheet != area.place.sheet]
    if listed and around and abs(typed - around) > EDGE_SLACK * around:
        found = f"The edges of area {area.word} come to {typed:.1f} ft, and its perimeter is {around:.1f} ft"
        yield _ask(job, listed[-1], f"{found}; is that meant?")


def _perimeter(area: Row) -> float:
    """The perimeter of a rectangle; 0 where it is not known for certain."""
    if _word(area, Area.shape) not in FOUR_SIDES or _typed(area, Area.other_width):
        return 0.0
    return 2 * (_number(area, Area.length) + _number(area, Area.width))


def _joints(job: JobInput, area: Row) -> Iterator[Finding]:
    known = [_typed(area, given) for given in (Area.layout_length, Area.panel_width)]
    if _word(area, Area.shape) not in (*FOUR_SIDES, "cross-sections") and not all(known):
        yield _ask(
            job,
            area,
            f"Area {area.word} gets no joints: its length for joint layout and its panel width are not both typed.",
        )
    elif sum(known) == 1:
        yield _ask(
            job, area, f"Area {area.word} gets no joints: only one of length for joint layout and panel width is typed."
        )


def _off_the_end(job: JobInput, area: Row, stations: Sequence[Row]) -> Iterator[Finding]:
    """An old joint just beyond the end of the run, which the end of the new slab might as well meet."""
    run = _number(area, Area.layout_length)
    start = _number(stations[0], CrossSection.station) if stations else 0.0
    for row in stations:
        beyond = _number(row, CrossSection.station) - start - run
        if run and _word(row, CrossSection.old_joint) == "yes" and 0 < beyond < OFF_THE_END:
            found = f"An old joint lies {beyond:.2f} ft beyond the end of area {area.word}; should the slab end there?"
            yield _ask(job, row, found)
