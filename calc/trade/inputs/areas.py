"""What a person measures: the areas, what stands in them, their edges and their cross-sections."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import AREA, BAR, CROSS_SECTION, DEDUCTION, EDGE, OUTLINE_POINT


class Area(Section, title="Areas", each=AREA, table="Areas"):
    """Each area as measured on site."""

    shape = choice(
        "Shape",
        "rectangle",
        "trapezoid",
        "triangle",
        "circle",
        "quarter circle",
        "cross-sections",
        "outline points",
        "area given",
        default="rectangle",
        help="A trapezoid has its own width at each end. A rectangle with another width filled in is a trapezoid.",
    )
    length = given(
        "Length",
        "ft",
        over=0,
        high=2000,
        ask_high=500,
        example="12' 6\"",
        needed_if=(shape, "rectangle", "trapezoid", "triangle", "circle", "quarter circle"),
        help="Length, square to the ends; the base of a triangle, diameter of a circle, radius of a quarter circle.",
    )
    width = given(
        "Width",
        "ft",
        over=0,
        high=2000,
        ask_high=100,
        example="3",
        needed_if=(shape, "rectangle", "trapezoid", "triangle"),
        help="Width at the first end; the height of a triangle.",
    )
    other_width = given(
        "Other width",
        "ft",
        low=0,
        high=2000,
        ask_high=100,
        example="2' 9\"",
        needed_if=(shape, "trapezoid"),
        used_if=(shape, "rectangle", "trapezoid"),
        help="Width at the other end, if different.",
    )
    thickness = given(
        "Thickness",
        "in",
        default=4,
        over=0,
        high=24,
        ask_low=3.5,
        ask_high=8,
        example="4",
        help="Slab thickness; at the first end if the slab tapers.",
    )
    other_thickness = given(
        "Other thickness",
        "in",
        over=0,
        high=24,
        ask_low=3.5,
        ask_high=8,
        example="5",
        help="Slab thickness at the other end, if the slab tapers.",
    )
    height_above_grade = given(
        "Height above grade",
        "in",
        default=0,
        low=-12,
        high=12,
        signed=True,
        ask_low=-3,
        ask_high=3,
        example="0",
        help="Height of the finished surface above the existing grade; negative if below it.",
    )
    base = given(
        "Base", "in", default=0, low=0, high=18, ask_high=8, example="0", help="Compacted base rock under the slab."
    )
    quantity = given(
        "Quantity",
        "",
        default=1,
        low=1,
        high=500,
        ask_high=20,
        whole=True,
        example="1",
        help="Number of identical areas.",
    )
    given_area = given(
        "Area",
        "ft2",
        over=0,
        high=200000,
        ask_high=5000,
        example="48",
        needed_if=(shape, "area given"),
        help="The area itself, if the shape is area given.",
    )
    layout_length = given(
        "Length for joint layout",
        "ft",
        over=0,
        high=2000,
        ask_high=500,
        example="12",
        help="Length that the joints across divide into panels; blank is the longer side of the shape.",
    )
    panel_width = given(
        "Panel width",
        "ft",
        over=0,
        high=2000,
        ask_high=100,
        example="3",
        help="Widest panel wanted across that length; of a shape without two sides, its whole width.",
    )
    old_slab = given(
        "Old slab",
        "ft2",
        default=0,
        low=0,
        high=200000,
        example="0",
        needs=("old_slab_thickness",),
        help="Existing slab within the dig that is removed.",
    )
    old_slab_thickness = given(
        "Old slab thickness",
        "in",
        default=0,
        low=0,
        high=24,
        example="0",
        needs=("old_slab",),
        help="Thickness of that existing slab.",
    )
    reinforcement = choice(
        "Reinforcement",
        "none",
        "mesh",
        "bars",
        default="none",
        help="Wire mesh, or bars both ways; macro fiber in the mix counts as none.",
    )
    bar_size = choice(
        "Bar size",
        *BAR.axis.words,
        default="#4",
        needs=((reinforcement, "bars"),),
        help="Size of the reinforcing bars.",
    )
    bar_spacing = given(
        "Bar spacing",
        "in",
        default=18,
        low=3,
        high=48,
        ask_low=6,
        ask_high=24,
        example="18",
        needs=((reinforcement, "bars"),),
        help="Spacing of the reinforcing bars, both ways.",
    )
    vapor_retarder = yes_no("Vapor retarder", help="Whether a vapor retarder goes under the slab.")
    notes = text("Notes", help="Anything else about the area.", example="along the north wall")


FOUR_SIDED = either(Area.shape.is_("rectangle"), Area.shape.is_("trapezoid"))
"""Whether an area has a length and a width at each end: a rectangle or a trapezoid."""


class CrossSection(Section, title="Cross-sections", each=CROSS_SECTION, table="Cross-sections"):
    """Width and depth measured at stations along an area, each station taped from the same end."""

    station = given(
        "Station",
        "ft",
        low=0,
        high=2000,
        example="0",
        required=True,
        help="Distance of this cross-section from one end.",
    )
    width = given(
        "Width",
        "ft",
        low=0,
        high=2000,
        example="3",
        needed_if=(Area.shape, "cross-sections"),
        help="Width at this station; with the shape cross-sections, these widths give the area.",
    )
    depth = given(
        "Depth",
        "in",
        over=0,
        high=24,
        example="4 1/4",
        help="Depth from the string line to the subgrade at this station: the slab thickness.",
    )
    old_joint = yes_no("Old joint", help="Whether the existing walk has a joint at this station.")
    notes = text("Notes", help="Anything else.", example="at the lamp post")


class OutlineCorner(Section, title="Outline points", each=OUTLINE_POINT, table="Outline points"):
    """The corners of an outline in order around it, in either direction."""

    x = given(
        "X",
        "ft",
        signed=True,
        low=-2000,
        high=2000,
        example="0",
        required=True,
        needs=((Area.shape, "outline points"),),
        help="Distance along one line.",
    )
    y = given(
        "Y",
        "ft",
        signed=True,
        low=-2000,
        high=2000,
        example="0",
        required=True,
        needs=((Area.shape, "outline points"),),
        help="Distance square to that line.",
    )


class Deduction(Section, title="Deductions", each=DEDUCTION, table="Deductions"):
    """What stands inside an area and is not poured."""

    shape = choice(
        "Shape", "rectangle", "circle", "triangle", "area given", default="rectangle", help="Shape of the deduction."
    )
    length = given(
        "Length",
        "ft",
        over=0,
        high=2000,
        example="2",
        needed_if=(shape, "rectangle", "circle", "triangle"),
        help="Length; the diameter of a circle, the base of a triangle.",
    )
    width = given(
        "Width",
        "ft",
        over=0,
        high=2000,
        example="1",
        needed_if=(shape, "rectangle", "triangle"),
        help="Width; the height of a triangle.",
    )
    given_area = given(
        "Area",
        "ft2",
        over=0,
        high=200000,
        example="2",
        needed_if=(shape, "area given"),
        help="The area itself, if the shape is area given.",
    )
    quantity = given(
        "Quantity", "", default=1, low=1, high=500, whole=True, example="1", help="Number of identical deductions."
    )
    isolation = yes_no(
        "Isolation",
        default="yes",
        help="Whether an isolation joint goes around it.",
    )
    perimeter = given(
        "Perimeter",
        "ft",
        over=0,
        high=10000,
        example="6",
        needs=((isolation, "yes"),),
        help="Length around it; blank for a rectangle or a circle.",
    )
    notes = text("Notes", help="Anything else.", example="valve box")


class Edge(Section, title="Edges", each=EDGE, table="Edges"):
    """The parts of an outline. An area without a row here takes the edge columns of Areas."""

    kind = choice(
        "Kind",
        "form",
        "existing",
        "wall",
        "building",
        "open",
        default="form",
        help="What the new slab meets at this edge; existing is an existing slab.",
    )
    length = given(
        "Length", "ft", low=0, default=0, high=2000, ask_high=500, example="12' 6\"", help="Length of this edge."
    )
    quantity = given(
        "Quantity",
        "",
        default=1,
        low=1,
        high=100,
        whole=True,
        example="1",
        needs=("length",),
        help="Number of identical edges.",
    )
    spacing = given(
        "Dowel spacing",
        "in",
        low=4,
        high=60,
        ask_low=8,
        ask_high=36,
        example="24",
        needs=("length",),
        help="Maximum dowel spacing; blank if there are no dowels.",
    )
    end_distance = given(
        "End distance",
        "in",
        default=6,
        low=0,
        high=36,
        example="6",
        needs=("spacing",),
        help="Distance from the end of the edge to the first dowel.",
    )
    embedment = given(
        "Embedment",
        "in",
        default=6,
        over=0,
        high=24,
        ask_low=4,
        example="6",
        needs=("spacing",),
        help="Depth of the dowel in the existing slab.",
    )
    projection = given(
        "Projection",
        "in",
        default=6,
        over=0,
        high=24,
        example="6",
        needs=("spacing",),
        help="Length of the dowel in the new slab.",
    )
    bar_diameter = given(
        "Bar diameter",
        "in",
        default=0.375,
        over=0,
        high=2,
        example="3/8",
        needs=("spacing",),
        help="Diameter of the dowel bar.",
    )
    surface = choice(
        "Bar surface",
        "smooth",
        "deformed",
        default="smooth",
        needs=("spacing",),
        help="A deformed bar needs a larger hole than its size.",
    )
    drill_diameter = given(
        "Drill diameter",
        "in",
        over=0,
        high=3,
        example="1/2",
        needs=("spacing",),
        help="Diameter of the drilled hole; blank is that of the bar.",
    )
    isolation = choice(
        "Isolation",
        "auto",
        "yes",
        "no",
        default="auto",
        needs=("length",),
        help="Whether this edge has an isolation joint; auto is yes at a wall or a building.",
    )
    curved = yes_no("Curved", needs=("length",), help="Whether the form is curved.")
    thickened_width = given(
        "Thickened width",
        "in",
        default=0,
        low=0,
        high=60,
        example="0",
        needs=(
            "length",
            "extra_depth",
        ),
        help="Width of a thickened edge.",
    )
    extra_depth = given(
        "Extra depth",
        "in",
        default=0,
        low=0,
        high=36,
        example="0",
        needs=(
            "length",
            "thickened_width",
        ),
        help="Depth of the thickened edge below the bottom of the slab.",
    )
    notes = text("Notes", needs=("length",), help="Anything else.", example="against the old walk")


SHORT_EDGES = (
    ("form", (("Formed", Edge.length),)),
    ("wall", (("Wall", Edge.length),)),
    ("existing", (("Doweled edge", Edge.length), ("Doweled edges", Edge.quantity), ("Dowel spacing", Edge.spacing))),
)
"""The edge columns of Areas, for an area without a row in Edges: each kind of edge, and the columns that fill it."""
