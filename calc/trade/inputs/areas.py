"""What a person measures: the areas, and what stands in them, around them and under them."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import AREA, CORNER, DEDUCTION, EDGE, STATION


class Area(Section, title="Areas", each=AREA, table="Areas"):
    """Each area as it was measured on the site."""

    shape = choice(
        "Shape",
        "strip",
        "triangle",
        "circle",
        "quarter circle",
        "stations",
        "corners",
        "known area",
        default="strip",
        help="A strip is a rectangle, or a trapezoid when the other width is filled.",
    )
    length = given(
        "Length",
        "ft",
        over=0,
        high=2000,
        ask_high=500,
        example="12' 6\"",
        needed_if=(shape, "strip", "triangle", "circle", "quarter circle"),
        help="Length square to the ends; a triangle's side, a circle's diameter, a quarter circle's radius.",
    )
    width = given(
        "Width",
        "ft",
        over=0,
        ask_high=100,
        example="3",
        needed_if=(shape, "strip", "triangle"),
        help="Width at the first end; a triangle's height.",
    )
    other_width = given(
        "Other width",
        "ft",
        low=0,
        ask_high=100,
        example="2' 9\"",
        used_if=(shape, "strip"),
        help="Width at the other end, where it differs.",
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
        help="Thickness of the slab, at its first end where it tapers.",
    )
    other_thickness = given(
        "Other thickness",
        "in",
        over=0,
        high=24,
        ask_low=3.5,
        ask_high=8,
        example="5",
        help="Thickness at the other end, where the slab tapers.",
    )
    above_grade = given(
        "Raise",
        "in",
        default=0,
        low=-12,
        high=12,
        signed=True,
        ask_low=-3,
        ask_high=3,
        example="0",
        help="Finished top above the dirt; below it is negative.",
    )
    base = given(
        "Base", "in", default=0, low=0, high=18, ask_high=8, example="0", help="Compacted rock under the slab."
    )
    copies = given(
        "Copies",
        "",
        default=1,
        low=1,
        high=500,
        ask_high=20,
        whole=True,
        example="1",
        help="How many identical areas there are.",
    )
    known_area = given(
        "Area",
        "ft2",
        over=0,
        high=200000,
        ask_high=5000,
        example="48",
        needed_if=(shape, "known area"),
        help="The area, when the shape is known area.",
    )
    run = given(
        "Run",
        "ft",
        over=0,
        high=2000,
        ask_high=500,
        example="12",
        help="Length that the joints divide; blank where the shape says it.",
    )
    panel_width = given(
        "Panel width",
        "ft",
        over=0,
        ask_high=100,
        example="3",
        help="Width between the long edges; blank where the shape says it.",
    )
    old_slab = given("Old slab", "ft2", default=0, low=0, example="0", help="Old slab in the dig that is taken out.")
    old_slab_thickness = given(
        "Old slab thickness", "in", default=0, low=0, high=24, example="0", help="Thickness of that old slab."
    )
    notes = text("Notes", help="Anything else about the area.", example="along the north wall")


class Station(Section, title="Stations", each=STATION, table="Stations"):
    """One row a stop on one walk: the tape from one end, never gap by gap."""

    at = given("At", "ft", low=0, example="0", required=True, help="The tape at this stop, from one end.")
    width = given(
        "Width",
        "ft",
        low=0,
        example="3",
        needed_if=(Area.shape, "stations"),
        help="The width here; the widths of a stations area give its shape.",
    )
    depth = given("Depth", "in", over=0, high=24, example="4 1/4", help="String line to ground here: the slab's depth.")
    old_joint = yes_no("Old joint", help="Whether the old walk has a joint here.")
    notes = text("Notes", help="Anything else.", example="at the lamp post")


class Corner(Section, title="Corners", each=CORNER, table="Corners"):
    """The corners of an outline in the order walked, either way round."""

    x = given("X", "ft", signed=True, example="0", required=True, help="Along one line.")
    y = given("Y", "ft", signed=True, example="0", required=True, help="Square to it.")


class Deduction(Section, title="Deductions", each=DEDUCTION, table="Deductions"):
    """What stands in an area and is not poured."""

    shape = choice("Shape", "rectangle", "circle", "triangle", "known area", default="rectangle", help="Its outline.")
    length = given(
        "Length",
        "ft",
        over=0,
        example="2",
        needed_if=(shape, "rectangle", "circle", "triangle"),
        help="Length; a circle's diameter, a triangle's side.",
    )
    width = given(
        "Width",
        "ft",
        over=0,
        example="1",
        needed_if=(shape, "rectangle", "triangle"),
        help="Width; a triangle's height.",
    )
    known_area = given("Area", "ft2", over=0, example="2", needed_if=(shape, "known area"), help="Its known area.")
    count = given("Count", "", default=1, low=1, high=500, whole=True, example="1", help="How many there are.")
    isolation = yes_no("Isolation", default="yes", help="Whether a strip goes round it.")
    perimeter = given("Perimeter", "ft", over=0, example="6", help="Length round it; a rectangle and a circle know it.")
    notes = text("Notes", help="Anything else.", example="valve box")


class Edge(Section, title="Edges", each=EDGE, table="Edges"):
    """Pieces of an outline. An area without a row here takes the edge columns of Areas."""

    kind = choice(
        "Kind", "form", "existing", "wall", "building", "open", default="form", help="What the new slab meets here."
    )
    length = given(
        "Length", "ft", low=0, default=0, high=2000, ask_high=500, example="12' 6\"", help="Length of this piece."
    )
    repeats = given(
        "Repeats", "", default=1, low=1, high=100, whole=True, example="1", help="How many pieces like it there are."
    )
    spacing = given(
        "Dowel spacing",
        "in",
        low=4,
        high=60,
        ask_low=8,
        ask_high=36,
        example="24",
        help="Most between dowels; blank is no dowels.",
    )
    clearance = given(
        "End clearance",
        "in",
        default=6,
        low=0,
        high=36,
        example="6",
        help="From the end of the edge to the first dowel.",
    )
    embed = given("Embed", "in", default=6, over=0, high=24, ask_low=4, example="6", help="How deep the bar goes in.")
    projection = given("Projection", "in", default=6, over=0, high=24, example="6", help="How far the bar stands out.")
    bar = given("Bar", "in", default=0.375, over=0, high=2, example="3/8", help="Diameter of the dowel.")
    surface = choice("Bar surface", "smooth", "ribbed", default="smooth", help="A ribbed bar wants a larger hole.")
    hole = given("Hole", "in", over=0, high=3, example="1/2", help="Diameter of the hole; blank is the bar's.")
    isolation = choice(
        "Isolation",
        "by kind",
        "yes",
        "no",
        default="by kind",
        help="Whether a strip stands here; by kind is yes at a wall and a building.",
    )
    curved = yes_no("Curved", help="Whether the form bends.")
    thick_width = given(
        "Thickened width", "in", default=0, low=0, high=60, example="0", help="Width of a thickened edge."
    )
    thick_extra = given(
        "Extra depth",
        "in",
        default=0,
        low=0,
        high=36,
        example="0",
        help="How much deeper the thickened edge is than the slab.",
    )
    notes = text("Notes", help="Anything else.", example="against the old walk")


SHORT_EDGES = (
    ("form", (("Formed", Edge.length),)),
    ("wall", (("Wall", Edge.length),)),
    ("existing", (("Doweled edge", Edge.length), ("Doweled edges", Edge.repeats), ("Dowel spacing", Edge.spacing))),
)
"""The edge columns of Areas, for an area without a row in Edges: each kind of edge, and the columns that fill it."""
