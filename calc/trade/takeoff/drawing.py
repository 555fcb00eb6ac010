"""The plan of each area: the points that its outline is drawn through, and where its doweled edges are drawn.

A plan is not to scale: along the run it is in feet, across it in widths of the area, so that every joint reaches from
one edge to the other. Which side is doweled is not measured; it is drawn on the side that the tape lies on.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import FOUR_SIDED, Area, CrossSection, Edge, OutlineCorner
from calc.trade.levels import AREA, CROSS_SECTION, EDGE, OUTLINE_POINT, POINT
from calc.trade.takeoff.geometry import OutlineSegment, Slab, StationStrip
from calc.trade.takeoff.joints import THOUSAND, OldJoint, Panel

_SHEET = "Takeoff"
_ONE, _TWELVE, _ONE_FOOT = exact(1), exact(12), exact(1, "ft")
TURNS = 12
"""The points between the first and the last two lie at twelfths of the way round."""


class StationPoint(Section, title="Stops by number", each=CROSS_SECTION, sheet=_SHEET):
    """So that a plan finds them."""

    one = line("A stop", "", when(CrossSection.station >= 0, 1, 0), source="1 for each")
    place = line("Along the plan", "ft", OldJoint.place, source="from the first stop")
    key = line(
        "Key of the stop", "", row_number(AREA) * THOUSAND + running(one, AREA), source="area and stop in one: 2003"
    )


class OutlinePointNumber(Section, title="Corners by number", each=OUTLINE_POINT, sheet=_SHEET):
    """So that a plan finds them."""

    one = line("A corner", "", when(either(OutlineCorner.x >= 0, OutlineCorner.x < 0), 1, 0), source="1 for each")
    key = line(
        "Key of the corner", "", row_number(AREA) * THOUSAND + running(one, AREA), source="area and corner in one: 2003"
    )


class EdgeDrawn(Section, title="Doweled edges of the plans", each=EDGE, sheet=_SHEET):
    """Drawn once, however often it repeats."""

    doweled = line(
        "Drawn as doweled", "ft", when(is_given(Edge.spacing), Edge.length, 0), source="edges with a dowel spacing"
    )


class Plan(Section, title="Sizes of the plans", each=AREA, sheet=_SHEET):
    """What each outline is drawn from; 0 for what its shape has not."""

    across = line(
        "One width of the plan",
        "ft",
        when(Panel.width > 0, Panel.width, _ONE_FOOT),
        source="panel width, so that a joint is one width long; a foot where it is not known",
    )
    far = line(
        "Far end",
        "ft",
        when(
            Area.shape.is_("area given"),
            square_root(Slab.gross_area),
            when(either(FOUR_SIDED, Area.shape.is_("triangle")), Slab.length, 0),
        ),
        source="length; a known area is drawn as a square of that area",
    )
    tip = line(
        "Tip of a triangle, along",
        "ft",
        when(Area.shape.is_("triangle"), far / TWO, 0),
        source="drawn in the middle",
    )
    first_across = line(
        "First corner, across",
        "ft",
        when(
            Area.shape.is_("area given"),
            far,
            when(either(FOUR_SIDED, Area.shape.is_("triangle")), Slab.width, 0),
        ),
        source="width at the first end, or the height",
    )
    second_across = line(
        "Second corner, across",
        "ft",
        when(FOUR_SIDED, Slab.far_width, first_across),
        source="width at the other end",
    )
    circle = line(
        "Radius of a circle", "ft", when(Area.shape.is_("circle"), Slab.length / TWO, 0), source="half its length"
    )
    quarter = line(
        "Radius of a quarter circle",
        "ft",
        when(Area.shape.is_("quarter circle"), Slab.length, 0),
        source="its length",
    )
    stops = line(
        "Drawn by its stops",
        "",
        when(both(Area.shape.is_("cross-sections"), total(StationPoint.one, AREA) > 0), 1, 0),
        source="1 for an area of stations",
    )
    corners = line(
        "Drawn by its corners",
        "",
        when(both(Area.shape.is_("outline points"), total(OutlinePointNumber.one, AREA) > 0), 1, 0),
        source="1 for an area of corners",
    )
    key = line("Key of its first stop or corner", "", row_number(AREA) * THOUSAND + 1, source="area and number in one")
    step = line(
        "A twelfth of its stops or corners",
        "",
        largest(0, stops * total(StationPoint.one, AREA) + corners * total(OutlinePointNumber.one, AREA) - 1) / _TWELVE,
        source="more than thirteen are drawn evenly",
    )
    dowels_from = line("Doweled from", "ft", 0 * far, source="the first end: the side is not surveyed")
    dowels_to = line(
        "Doweled to",
        "ft",
        when(circle > 0, 0, total(EdgeDrawn.doweled, AREA)),
        source="doweled edges, one after the other; a circle has no straight side to draw them on",
    )


_LONG = square_root(THREE) / TWO
_NEAR = (None, 1 - _LONG, _ONE / TWO, _ONE, THREE / TWO, 1 + _LONG, TWO)
"""1 less the cosine of every twelfth of half a turn: how far along a circle lies, in its radius. None is 0."""
_STEEP, _FLAT = square_root(TWO + square_root(THREE)) / TWO, square_root(TWO - square_root(THREE)) / TWO
_QUARTER = (_ONE, _STEEP, _LONG, square_root(TWO) / TWO, _ONE / TWO, _FLAT, None)
"""The cosines of every 15 degrees of a quarter turn."""


def _circle_along(turn: int) -> Expr | None:
    return _NEAR[turn if turn <= TURNS // 2 else TURNS - turn]


def _circle_across(turn: int) -> Expr | None:
    """A circle is drawn from its near side over its far edge."""
    return _circle_along((turn + TURNS // 4) % TURNS)


def _with(drawn: Expr, radius: Expr, share: Expr | None) -> Expr:
    if share is None:
        return drawn
    return drawn + (radius if share is _ONE else radius * share)


def _along(turn: int) -> Expr:
    corner = Plan.tip if turn <= TURNS // 2 else Plan.far - Plan.tip
    return _with(_with(corner, Plan.circle, _circle_along(turn)), Plan.quarter, _QUARTER[turn // 2])


def _across(turn: int) -> Expr:
    corner = Plan.first_across if turn <= TURNS // 2 else Plan.second_across
    quarter = _QUARTER[TURNS // 2 - turn // 2]
    return _with(_with(corner, Plan.circle, _circle_across(turn)), Plan.quarter, quarter)


class AreaOutlinePoint(Section, title="Points round a plan", each=POINT, sheet=_SHEET):
    """The outline leaves the start, goes round by twelfths, and comes back along the far end."""

    turn = line(
        "Twelfths of the way",
        "",
        smallest(largest(0, row_number(POINT) - TWO), _TWELVE),
        source="the point after the start is the first of the list",
    )
    along = line(
        "Lies along the list",
        "",
        when(both(row_number(POINT) > 1, row_number(POINT) <= _TWELVE + THREE), 1, 0),
        source="all but the start and the end",
    )
    across = line(
        "Lies across from the tape",
        "",
        when(both(row_number(POINT) > 1, row_number(POINT) <= _TWELVE + TWO), 1, 0),
        source="all but the start, the far corner and the end",
    )


def _listed(of_stop: Line, of_corner: Line, key: Line) -> Expr:
    """What a stop or a corner of the list says, for an area that is drawn by its list."""
    corner = when(Plan.corners > 0, lookup_by_key(of_corner, OutlinePointNumber.key, key), 0)
    return when(Plan.stops > 0, lookup_by_key(of_stop, StationPoint.key, key), corner)


class OutlinePoint(Section, title="Points of the plans", each=AREA * POINT, sheet=_SHEET):
    """Along, in feet; across, in widths. The last point closes the outline."""

    key = line(
        "Stop or corner there",
        "",
        Plan.key + round_down(Plan.step * AreaOutlinePoint.turn),
        source="so many twelfths of the way from the first",
    )
    shape_along = line(
        "Along, by the shape",
        "ft",
        by_row(POINT, 0, *(_along(turn) for turn in range(TURNS + 1)), Plan.far, 0),
        source="corners, and parts of the radius; 0 for an area that is drawn by its list",
    )
    shape_across = line(
        "Across, by the shape",
        "ft",
        by_row(POINT, Plan.circle, *(_across(turn) for turn in range(TURNS + 1)), Plan.circle, Plan.circle),
        source="corners, and parts of the radius; 0 for an area that is drawn by its list",
    )
    along = line(
        "Along",
        "ft",
        shape_along + AreaOutlinePoint.along * _listed(StationPoint.place, OutlineSegment.across, key),
        source="by the shape or by the list",
    )
    across = line(
        "Across",
        "",
        (shape_across + AreaOutlinePoint.across * _listed(StationStrip.width, OutlineSegment.up, key)) / Plan.across,
        source="by the shape or by the list, over one width of the plan",
    )
