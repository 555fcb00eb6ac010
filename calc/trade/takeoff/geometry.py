"""Area and mean thickness of each slab.

Measured depths govern the concrete volume; the nominal thickness governs excavation, forms, joints and cautions.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import FOUR_SIDED, Area, CrossSection, Deduction, Edge, OutlineCorner
from calc.trade.levels import AREA, CROSS_SECTION, DEDUCTION, EDGE, OUTLINE_POINT


class StationStrip(Section, title="Station strips", each=CROSS_SECTION, sheet="Takeoff"):
    """Width is taken to vary evenly between one station and the next."""

    width = line("Width at the station", "ft", if_given(CrossSection.width, 0), source="as measured")
    gap = line(
        "Distance from the previous station",
        "ft",
        CrossSection.station - before(CrossSection.station, AREA, CrossSection.station),
        source="station less previous station",
    )
    area = line(
        "Area from the previous station",
        "ft2",
        gap * (width + before(width, AREA, width)) / TWO,
        source="surveying: trapezoidal rule, equal or unequal intervals",
    )
    depth = line("Depth at the station", "in", if_given(CrossSection.depth, 0), source="as measured")
    has_depth = line(
        "Depth measured here", "", when(is_given(CrossSection.depth), 1, 0), source="1 if a depth was typed"
    )


class OutlineSegment(Section, title="Outline segments", each=OUTLINE_POINT, sheet="Takeoff"):
    """Signed triangles from the first outline point to each side; clockwise or not, the area is the same."""

    x = line(
        "X from the first point",
        "ft",
        OutlineCorner.x - first(OutlineCorner.x, AREA),
        source="coordinate less that of the first point",
    )
    y = line(
        "Y from the first point",
        "ft",
        OutlineCorner.y - first(OutlineCorner.y, AREA),
        source="coordinate less that of the first point",
    )
    twice_area = line(
        "Twice the triangle area",
        "ft2",
        before(x, AREA, x) * y - x * before(y, AREA, y),
        source="surveying: area by coordinates (shoelace formula)",
    )


class DeductionArea(Section, title="Deductions", each=DEDUCTION, sheet="Takeoff"):
    """Openings and objects within an area where no concrete is placed."""

    length = line("Opening length", "ft", if_given(Deduction.length, 0), source="as measured")
    width = line("Opening width", "ft", if_given(Deduction.width, 0), source="as measured")
    square_area = line(
        "Opening area, rectangle or triangle",
        "ft2",
        when(Deduction.shape.is_("triangle"), length * width / TWO, length * width),
        source="geometry: length times width, half of it for a triangle",
    )
    round_area = line("Opening area, circle", "ft2", PI * length / TWO * length / TWO, source="geometry: pi D2/4")
    given_area = line("Opening area, as given", "ft2", if_given(Deduction.given_area, 0), source="input")
    area_each = line(
        "Area per opening",
        "ft2",
        when(
            Deduction.shape.is_("area given"),
            given_area,
            when(Deduction.shape.is_("circle"), round_area, square_area),
        ),
        source="by its shape",
    )
    area = line(
        "Area of the openings",
        "ft2",
        area_each * Deduction.quantity,
        source="area per opening times quantity",
        adds=True,
    )
    perimeter_by_shape = line(
        "Perimeter per opening, by shape",
        "ft",
        when(
            Deduction.shape.is_("circle"),
            PI * length,
            when(Deduction.shape.is_("rectangle"), TWO * (length + width), 0),
        ),
        source="geometry; other shapes take the perimeter typed",
    )
    isolation = line(
        "Isolation joint around openings",
        "ft",
        when(Deduction.isolation.is_("yes"), if_given(Deduction.perimeter, perimeter_by_shape) * Deduction.quantity, 0),
        source="perimeter times quantity of each opening marked for isolation",
        adds=True,
    )


class Slab(Section, title="Slab areas", each=AREA, sheet="Takeoff"):
    """The slab in plan. The quantity of an area multiplies all that belongs to it."""

    length = line("Slab length", "ft", if_given(Area.length, 0), source="as measured")
    width = line("Slab width, first end", "ft", if_given(Area.width, 0), source="as measured")
    far_width = line(
        "Slab width, other end",
        "ft",
        if_given(Area.other_width, width),
        source="input, else the first width",
    )
    width_sum = line("Sum of the two widths", "ft", width + far_width, source="first end plus other end")
    straight_area = line(
        "Area, rectangle, trapezoid or triangle",
        "ft2",
        when(Area.shape.is_("triangle"), length * width / TWO, length * width_sum / TWO),
        source="geometry: length times mean width; half of length times height for a triangle",
    )
    round_area = line(
        "Area, circle or quarter circle",
        "ft2",
        PI * length / TWO * length / TWO,
        source="geometry: pi D2/4 for a circle of diameter D, pi R2/4 for a quarter circle of radius R",
    )
    surveyed_area = line(
        "Area, cross-sections or outline points",
        "ft2",
        when(
            Area.shape.is_("cross-sections"),
            total(StationStrip.area, AREA),
            abs_(total(OutlineSegment.twice_area, AREA)) / TWO,
        ),
        source="surveying: trapezoidal rule, or area by coordinates",
    )
    plain_area = line(
        "Area, plain shape",
        "ft2",
        when(either(Area.shape.is_("circle"), Area.shape.is_("quarter circle")), round_area, straight_area),
        source="by its shape",
    )
    listed_area = line(
        "Area, from a list or as given",
        "ft2",
        when(Area.shape.is_("area given"), if_given(Area.given_area, 0), surveyed_area),
        source="by its shape",
    )
    gross_area = line(
        "Gross area, each",
        "ft2",
        when(
            either(Area.shape.is_("cross-sections"), Area.shape.is_("outline points"), Area.shape.is_("area given")),
            listed_area,
            plain_area,
        ),
        source="by its shape",
    )
    deducted = line("Deductions, each", "ft2", total(DeductionArea.area, AREA), source="sum of the openings")
    net_area = line(
        "Net area",
        "ft2",
        (gross_area - deducted) * Area.quantity,
        source="(gross area less deductions) times quantity",
        adds=True,
        may_be_overridden=Limits(low=0, high=200_000, ask_high=5_000),
    )


class MeanThickness(Section, title="Mean thickness", each=AREA, sheet="Takeoff"):
    """From the measured depths if there are any, else from the taper, else the nominal thickness."""

    other_end = line(
        "Thickness, other end",
        "in",
        if_given(Area.other_thickness, Area.thickness),
        source="input, else the first thickness",
    )
    plain_mean = line(
        "Mean of the two thicknesses", "in", (Area.thickness + other_end) / TWO, source="half of their sum"
    )
    weighted = line(
        "Width times thickness, weighted",
        "ft*in",
        Slab.width * (TWO * Area.thickness + other_end) + Slab.far_width * (Area.thickness + TWO * other_end),
        source="geometry: exact where width and thickness both change evenly along the length",
    )
    tapered = line(
        "Mean thickness, tapered strip",
        "in",
        when(Slab.width_sum > 0, weighted / THREE / Slab.width_sum, plain_mean),
        source="geometry: volume of a tapered strip over its area",
    )
    by_dimensions = line(
        "Mean thickness, by dimensions",
        "in",
        when(FOUR_SIDED, tapered, plain_mean),
        source="tapered strip, else the mean of the two thicknesses",
    )
    depth_count = line("Depth measurements", "", total(StationStrip.has_depth, AREA), source="stations with a depth")
    depth_sum = line(
        "Sum of the measured depths", "in", total(StationStrip.depth, AREA), source="stations with a depth"
    )
    mean = line(
        "Mean thickness",
        "in",
        when(depth_count > 0, depth_sum / depth_count, by_dimensions),
        source="mean of the measured depths, else by dimensions",
        may_be_overridden=Limits(over=0, high=24, ask_low=3.5, ask_high=8),
    )


class EdgeTakeoff(Section, title="Edges", each=EDGE, sheet="Takeoff"):
    """The edges of the slab, by what each one meets."""

    length = line(
        "Edge length, all pieces",
        "ft",
        Edge.length * Edge.quantity * Area.quantity,
        source="length times repeats times quantity of the area",
        adds=True,
    )
    formed = line(
        "Formed edge",
        "ft",
        when(Edge.kind.is_("form"), length, 0),
        source="edge length where the kind is form",
        adds=True,
    )
    isolated = line(
        "Isolation joint along edges",
        "ft",
        when(
            either(
                Edge.isolation.is_("yes"),
                both(Edge.isolation.is_("auto"), either(Edge.kind.is_("wall"), Edge.kind.is_("building"))),
            ),
            length,
            0,
        ),
        source="edges at walls and buildings unless typed otherwise, and every edge marked yes",
        adds=True,
    )
    thickened = line(
        "Thickened-edge volume",
        "yd3",
        length * Edge.thickened_width * Edge.extra_depth / IN_PER_FT / IN_PER_FT / FT3_PER_YD3,
        source="geometry: length times width times extra depth",
        adds=True,
    )
