"""Plan drawing of each area: the points of its outline, and its doweled edges.

A plan is not to scale: the joint layout length is in feet, the width in layout widths, so that every joint line
reaches from one edge to the other. It is turned where the layout length lies along the width of the area. Which side
is doweled is not measured; dowels are drawn on the side of the tape.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import FOUR_SIDED, Area, CrossSection, Edge
from calc.trade.levels import AREA, CROSS_SECTION, DRAWN_END, EDGE, POINT
from calc.trade.takeoff.corners import THOUSAND, OutlinePointNumber
from calc.trade.takeoff.geometry import OutlineSegment, Slab, StationStrip
from calc.trade.takeoff.joints import OldJoint, Panel

_SHEET = "Takeoff"
_ONE, _TWELVE, _ONE_FOOT = exact(1), exact(12), exact(1, "ft")
SEGMENTS = 12
"""The points between the first and the last two divide the outline into twelve segments."""


class StationPoint(Section, title="Stations by number", each=CROSS_SECTION, sheet=_SHEET):
    """Keys by which the plan drawing looks them up."""

    counted = line("Stations counted", "", when(CrossSection.station >= 0, 1, 0), source="1 for each row")
    key = line(
        "Station key",
        "",
        row_number(AREA) * THOUSAND + running(counted, AREA),
        source="area number times 1,000, plus station number: 2003",
    )


class EdgeDrawn(Section, title="Doweled edges drawn", each=EDGE, sheet=_SHEET):
    """Each edge is drawn once, however often it repeats."""

    doweled = line(
        "Doweled length drawn",
        "ft",
        when(is_given(Edge.spacing), Edge.length, 0),
        source="length of an edge with a dowel spacing",
    )


class Plan(Section, title="Plan dimensions", each=AREA, sheet=_SHEET):
    """Dimensions that each outline is drawn from; 0 where the shape has none."""

    across = line(
        "Plan width unit",
        "ft",
        when(Panel.width > 0, Panel.width, _ONE_FOOT),
        source="joint layout width, so that a joint is one unit long; 1 ft where it is not known",
    )
    turned = line(
        "Plan is turned",
        "",
        when(
            both(
                Panel.two_sides > 0,
                equals(Panel.width, Panel.first_side),
                not_(equals(Panel.first_side, Panel.second_side)),
            ),
            1,
            0,
        ),
        source="1 where the joint layout length lies along the width of the area",
    )
    length = line(
        "Length drawn",
        "ft",
        when(
            Area.shape.is_("area given"),
            square_root(Slab.gross_area),
            when(either(FOUR_SIDED, Area.shape.is_("triangle")), Slab.length, 0),
        ),
        source="length; an area given is drawn as a square of that area",
    )
    apex = line(
        "Apex of a triangle, along",
        "ft",
        when(Area.shape.is_("triangle"), length / TWO, 0),
        source="at mid-length",
    )
    first_across = line(
        "Width at the first end, drawn",
        "ft",
        when(
            Area.shape.is_("area given"),
            length,
            when(either(FOUR_SIDED, Area.shape.is_("triangle")), Slab.width, 0),
        ),
        source="width at the first end, or height of the triangle",
    )
    second_across = line(
        "Width at the other end, drawn",
        "ft",
        when(FOUR_SIDED, Slab.far_width, first_across),
        source="width at the other end, else as at the first",
    )
    circle = line(
        "Circle radius", "ft", when(Area.shape.is_("circle"), Slab.length / TWO, 0), source="half the diameter"
    )
    quarter = line(
        "Quarter-circle radius",
        "ft",
        when(Area.shape.is_("quarter circle"), Slab.length, 0),
        source="length of the area",
    )
    stops = line(
        "Drawn from stations",
        "",
        when(both(Area.shape.is_("cross-sections"), total(StationPoint.counted, AREA) > 0), 1, 0),
        source="1 for an area given by stations",
    )
    corners = line(
        "Drawn from outline points",
        "",
        when(both(Area.shape.is_("outline points"), total(OutlinePointNumber.counted, AREA) > 0), 1, 0),
        source="1 for an area given by outline points",
    )
    key = line(
        "Key of the first list point", "", row_number(AREA) * THOUSAND + 1, source="area number times 1,000, plus 1"
    )
    step = line(
        "List points per segment",
        "",
        largest(0, stops * total(StationPoint.counted, AREA) + corners * total(OutlinePointNumber.counted, AREA) - 1)
        / _TWELVE,
        source="list points less one, over twelve segments: a longer list is drawn at even intervals",
    )


class DowelsDrawn(Section, title="Doweled length drawn", each=AREA * DRAWN_END, sheet=_SHEET):
    """Where the doweled length of a plan begins and ends. It is drawn on the side that the plan starts on."""

    along = line(
        "Doweled length along",
        "ft",
        by_row(DRAWN_END, 0 * Plan.length, when(Plan.circle > 0, 0, total(EdgeDrawn.doweled, AREA))),
        source="from the first end; a circle has no straight side to draw it on",
    )
    across = line("Doweled length across", "", Plan.circle / Plan.across, source="the side that the plan starts on")


_LONG = square_root(THREE) / TWO
_NEAR = (None, 1 - _LONG, _ONE / TWO, _ONE, THREE / TWO, 1 + _LONG, TWO)
"""1 - cos of each 30 degrees of half a turn: distance along a circle, in radii. None is 0."""
_STEEP, _FLAT = square_root(TWO + square_root(THREE)) / TWO, square_root(TWO - square_root(THREE)) / TWO
_QUARTER = (_ONE, _STEEP, _LONG, square_root(TWO) / TWO, _ONE / TWO, _FLAT, None)
"""Cosine of each 15 degrees of a quarter turn."""


def _circle_along(turn: int) -> Expr | None:
    return _NEAR[turn if turn <= SEGMENTS // 2 else SEGMENTS - turn]


def _circle_across(turn: int) -> Expr | None:
    """Distance across a circle, in radii: drawn from its near side over its far edge."""
    return _circle_along((turn + SEGMENTS // 4) % SEGMENTS)


def _with(drawn: Expr, radius: Expr, share: Expr | None) -> Expr:
    if share is None:
        return drawn
    return drawn + (radius if share is _ONE else radius * share)


def _along(turn: int) -> Expr:
    corner = Plan.apex if turn <= SEGMENTS // 2 else Plan.length - Plan.apex
    return _with(_with(corner, Plan.circle, _circle_along(turn)), Plan.quarter, _QUARTER[turn // 2])


def _across(turn: int) -> Expr:
    corner = Plan.first_across if turn <= SEGMENTS // 2 else Plan.second_across
    quarter = _QUARTER[SEGMENTS // 2 - turn // 2]
    return _with(_with(corner, Plan.circle, _circle_across(turn)), Plan.quarter, quarter)


class AreaOutlinePoint(Section, title="Outline points of a plan", each=POINT, sheet=_SHEET):
    """The outline leaves the start, goes around in twelve segments, and closes along the far end."""

    turn = line(
        "Segments from the start",
        "",
        smallest(largest(0, row_number(POINT) - TWO), _TWELVE),
        source="point number less two, 0 to 12",
    )
    along = line(
        "Distance along from the list",
        "",
        when(both(row_number(POINT) > 1, row_number(POINT) <= _TWELVE + THREE), 1, 0),
        source="1 for all but the start and the end",
    )
    across = line(
        "Distance across from the list",
        "",
        when(both(row_number(POINT) > 1, row_number(POINT) <= _TWELVE + TWO), 1, 0),
        source="1 for all but the start, the far corner and the end",
    )


def _listed(of_stop: Line, of_corner: Line, key: Line) -> Expr:
    """The value at a station or outline point, for an area that is drawn from its list."""
    corner = when(Plan.corners > 0, lookup_by_key(of_corner, OutlinePointNumber.key, key), 0)
    return when(Plan.stops > 0, lookup_by_key(of_stop, StationPoint.key, key), corner)


class OutlinePoint(Section, title="Plan outline points", each=AREA * POINT, sheet=_SHEET):
    """Along, in feet; across, in layout widths. The last point closes the outline."""

    key = line(
        "List point key",
        "",
        Plan.key + round_down(Plan.step * AreaOutlinePoint.turn),
        source="first list point, plus list points per segment times segments",
    )
    shape_along = line(
        "Distance along, by shape",
        "ft",
        by_row(POINT, 0, *(_along(turn) for turn in range(SEGMENTS + 1)), Plan.length, 0),
        source="corners, and parts of the radius; 0 for an area drawn from its list",
    )
    shape_across = line(
        "Distance across, by shape",
        "ft",
        by_row(POINT, Plan.circle, *(_across(turn) for turn in range(SEGMENTS + 1)), Plan.circle, Plan.circle),
        source="corners, and parts of the radius; 0 for an area drawn from its list",
    )
    on_tape = line(
        "Distance on the tape",
        "ft",
        shape_along + AreaOutlinePoint.along * _listed(OldJoint.place, OutlineSegment.x, key),
        source="by the shape, or from the list",
    )
    square_to_tape = line(
        "Distance square to the tape",
        "ft",
        shape_across + AreaOutlinePoint.across * _listed(StationStrip.width, OutlineSegment.y, key),
        source="by the shape, or from the list",
    )
    along = line(
        "Distance along",
        "ft",
        when(Plan.turned > 0, square_to_tape, on_tape),
        source="along the joint layout length",
    )
    across = line(
        "Distance across, layout widths",
        "",
        when(Plan.turned > 0, on_tape, square_to_tape) / Plan.across,
        source="across the joint layout length, over the plan width unit",
    )
