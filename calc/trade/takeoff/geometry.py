"""Area and mean thickness of each piece of slab.

Measured depths give the concrete its volume; the nominal thickness goes for digging, forms, joints and cautions.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import FOUR_SIDED, Area, CrossSection, Deduction, Edge, OutlineCorner
from calc.trade.levels import AREA, CROSS_SECTION, DEDUCTION, EDGE, OUTLINE_POINT


class StationStrip(Section, title="Stations", each=CROSS_SECTION, sheet="Takeoff"):
    """Between one stop and the next the width is taken to change evenly."""

    width = line("Width at the stop", "ft", if_given(CrossSection.width, 0), source="as measured")
    gap = line(
        "From the stop before",
        "ft",
        CrossSection.station - before(CrossSection.station, AREA, CrossSection.station),
        source="the tape, less the tape",
    )
    strip = line(
        "Area since the stop before",
        "ft2",
        gap * (width + before(width, AREA, width)) / TWO,
        source="surveying: trapezoids between offsets, equal or unequal",
    )
    depth = line("Depth at the stop", "in", if_given(CrossSection.depth, 0), source="as measured")
    has_depth = line(
        "Depth was measured",
        "",
        when(is_given(CrossSection.depth), 1, 0),
        source="1 where a depth was typed",
        adds=True,
    )


class OutlineSegment(Section, title="Corners", each=OUTLINE_POINT, sheet="Takeoff"):
    """Triangles from the first corner to each side, with their sign; either way round gives the same area."""

    across = line("X from the first corner", "ft", OutlineCorner.x - first(OutlineCorner.x, AREA), source="coordinates")
    up = line("Y from the first corner", "ft", OutlineCorner.y - first(OutlineCorner.y, AREA), source="coordinates")
    twice = line(
        "Twice the triangle",
        "ft2",
        before(across, AREA, across) * up - across * before(up, AREA, up),
        source="surveying: area by coordinates",
    )


class DeductionArea(Section, title="Deductions", each=DEDUCTION, sheet="Takeoff"):
    """What stands in the area and is not poured."""

    length = line("Length of the hole", "ft", if_given(Deduction.length, 0), source="as measured")
    width = line("Width of the hole", "ft", if_given(Deduction.width, 0), source="as measured")
    square_area = line(
        "As a rectangle or a triangle",
        "ft2",
        when(Deduction.shape.is_("triangle"), length * width / TWO, length * width),
        source="geometry",
    )
    round_area = line("As a circle", "ft2", PI * length / TWO * length / TWO, source="geometry")
    known = line("As known", "ft2", if_given(Deduction.given_area, 0), source="as typed")
    one = line(
        "Area of one hole",
        "ft2",
        when(
            Deduction.shape.is_("area given"),
            known,
            when(Deduction.shape.is_("circle"), round_area, square_area),
        ),
        source="by its shape",
    )
    area = line("Area of the holes", "ft2", one * Deduction.quantity, source="times the count", adds=True)
    known_round = line(
        "Length round one, by its shape",
        "ft",
        when(
            Deduction.shape.is_("circle"),
            PI * length,
            when(Deduction.shape.is_("rectangle"), TWO * (length + width), 0),
        ),
        source="geometry; other shapes take the perimeter that was typed",
    )
    isolation = line(
        "Isolation round the holes",
        "ft",
        when(Deduction.isolation.is_("yes"), if_given(Deduction.perimeter, known_round) * Deduction.quantity, 0),
        source="every hole that is flagged",
        adds=True,
    )


class Slab(Section, title="Areas", each=AREA, sheet="Takeoff"):
    """The slab in plan: copies multiply everything that hangs on an area."""

    length = line("Length of the area", "ft", if_given(Area.length, 0), source="as measured")
    width = line("Width at the first end", "ft", if_given(Area.width, 0), source="as measured")
    far_width = line(
        "Width at the other end",
        "ft",
        if_given(Area.other_width, width),
        source="the first width where no other was typed",
    )
    width_sum = line("Sum of the two widths", "ft", width + far_width, source="geometry")
    straight = line(
        "As a strip or a triangle",
        "ft2",
        when(Area.shape.is_("triangle"), length * width / TWO, length * width_sum / TWO),
        source="geometry: a trapezoid has its length square to its two ends",
    )
    round_area = line(
        "As a circle or a quarter circle",
        "ft2",
        PI * length / TWO * length / TWO,
        source="geometry: pi D2/4; a quarter circle of radius R is pi R2/4, the same with R for D",
    )
    walked = line(
        "As walked or as corners",
        "ft2",
        when(
            Area.shape.is_("cross-sections"),
            total(StationStrip.strip, AREA),
            abs_(total(OutlineSegment.twice, AREA)) / TWO,
        ),
        source="surveying: offsets, or coordinates",
    )
    plain_shape = line(
        "As a plain shape",
        "ft2",
        when(either(Area.shape.is_("circle"), Area.shape.is_("quarter circle")), round_area, straight),
        source="by its shape",
    )
    listed = line(
        "From a list or as known",
        "ft2",
        when(Area.shape.is_("area given"), if_given(Area.given_area, 0), walked),
        source="by its shape",
    )
    gross_area = line(
        "Area of one copy, gross",
        "ft2",
        when(
            either(Area.shape.is_("cross-sections"), Area.shape.is_("outline points"), Area.shape.is_("area given")),
            listed,
            plain_shape,
        ),
        source="by its shape",
    )
    deducted = line("Deducted from one copy", "ft2", total(DeductionArea.area, AREA), source="sum of the holes")
    net_area = line(
        "Net area",
        "ft2",
        (gross_area - deducted) * Area.quantity,
        source="gross less holes, times copies",
        adds=True,
        may_be_overridden=True,
    )


class MeanThickness(Section, title="Mean thickness", each=AREA, sheet="Takeoff"):
    """Measured depths where there are any, else the taper, else the nominal thickness."""

    far = line(
        "Thickness at the other end",
        "in",
        if_given(Area.other_thickness, Area.thickness),
        source="the first thickness where no other was typed",
    )
    plain_mean = line("Mean of the two thicknesses", "in", (Area.thickness + far) / TWO, source="geometry")
    weighted = line(
        "Widths times thicknesses, by the end rule",
        "ft*in",
        Slab.width * (TWO * Area.thickness + far) + Slab.far_width * (Area.thickness + TWO * far),
        source="geometry: exact where width and thickness both change evenly along the length",
    )
    tapered = line(
        "Mean thickness of a taper",
        "in",
        when(Slab.width_sum > 0, weighted / THREE / Slab.width_sum, plain_mean),
        source="geometry: the volume of a tapered strip over its area",
    )
    drawn = line(
        "Mean thickness as drawn",
        "in",
        when(FOUR_SIDED, tapered, plain_mean),
        source="a tapered strip, else the plain mean",
    )
    points = line("Depth points", "", total(StationStrip.has_depth, AREA), source="stops with a depth")
    point_sum = line("Sum of the depths", "in", total(StationStrip.depth, AREA), source="stops with a depth")
    mean = line(
        "Mean thickness",
        "in",
        when(points > 0, point_sum / points, drawn),
        source="measured depths, else as drawn",
        may_be_overridden=True,
    )


class EdgeTakeoff(Section, title="Edges", each=EDGE, sheet="Takeoff"):
    """The outline, by what the slab meets there."""

    length = line(
        "Length, all pieces",
        "ft",
        Edge.length * Edge.quantity * Area.quantity,
        source="length times repeats times copies",
        adds=True,
    )
    formed = line("Formed", "ft", when(Edge.kind.is_("form"), length, 0), source="edges that are formed", adds=True)
    isolated = line(
        "Isolation along edges",
        "ft",
        when(
            either(
                Edge.isolation.is_("yes"),
                both(Edge.isolation.is_("auto"), either(Edge.kind.is_("wall"), Edge.kind.is_("building"))),
            ),
            length,
            0,
        ),
        source="walls and buildings unless typed otherwise, and every edge flagged yes",
        adds=True,
    )
    thickened = line(
        "Thickened edge",
        "yd3",
        length * Edge.thickened_width * Edge.extra_depth / IN_PER_FT / IN_PER_FT / FT3_PER_YD3,
        source="geometry: length times width times extra depth",
        adds=True,
    )
