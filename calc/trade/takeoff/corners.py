"""Inside corners of a slab: where an opening or a bend of the outline starts a crack."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import Area, Deduction, OutlineCorner
from calc.trade.levels import AREA, DEDUCTION, OUTLINE_POINT
from calc.trade.takeoff.geometry import OutlineSegment

THOUSAND = exact(1000)
_SHEET = "Takeoff"


class OutlinePointNumber(Section, title="Outline points by number", each=OUTLINE_POINT, sheet=_SHEET):
    """Keys by which neighbors and the plan drawing look them up."""

    counted = line(
        "Outline points counted",
        "",
        when(either(OutlineCorner.x >= 0, OutlineCorner.x < 0), 1, 0),
        source="1 for each row",
    )
    key = line(
        "Outline point key",
        "",
        row_number(AREA) * THOUSAND + running(counted, AREA),
        source="area number times 1,000, plus point number: 2003",
    )


def _previous(value: Line) -> Expr:
    """The value at the point before; the first point follows the last."""
    last = row_number(AREA) * THOUSAND + total(OutlinePointNumber.counted, AREA)
    return before(value, AREA, lookup_by_key(value, OutlinePointNumber.key, last))


class OutlineTurn(Section, title="Corners of an outline", each=OUTLINE_POINT, sheet=_SHEET):
    """A corner that turns against the way around the outline is an inside corner."""

    from_x = line("Side before the corner, X", "ft", OutlineSegment.x - _previous(OutlineSegment.x), source="outline")
    from_y = line("Side before the corner, Y", "ft", OutlineSegment.y - _previous(OutlineSegment.y), source="outline")
    next_key = line(
        "Key of the next point",
        "",
        row_number(AREA) * THOUSAND
        + when(
            OutlinePointNumber.key < row_number(AREA) * THOUSAND + total(OutlinePointNumber.counted, AREA),
            OutlinePointNumber.key - row_number(AREA) * THOUSAND + 1,
            1,
        ),
        source="key plus 1; after the last point comes the first",
    )
    turn = line(
        "Turn at the corner",
        "ft2",
        from_x * (lookup_by_key(OutlineSegment.y, OutlinePointNumber.key, next_key) - OutlineSegment.y)
        - from_y * (lookup_by_key(OutlineSegment.x, OutlinePointNumber.key, next_key) - OutlineSegment.x),
        source="surveying: cross product of the sides before and after",
    )
    inside = line(
        "Inside corner",
        "",
        when(
            both(
                Area.shape.is_("outline points"),
                either(
                    both(turn < 0, total(OutlineSegment.twice_area, AREA) > 0),
                    both(turn > 0, total(OutlineSegment.twice_area, AREA) < 0),
                ),
            ),
            1,
            0,
        ),
        source="1 where the outline turns the other way",
    )


class OpeningCorners(Section, title="Openings with corners", each=DEDUCTION, sheet=_SHEET):
    """A well or a box; a round post has no corner."""

    openings = line(
        "Openings with corners",
        "",
        when(Deduction.shape.is_("circle"), 0, Deduction.quantity),
        source="quantity of each opening that is not round",
    )
