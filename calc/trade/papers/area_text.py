"""Text of each area for the papers: sizes in feet and inches, shape, thickness, dowels and joints.

A size on a paper is in feet, inches and eighths of an inch, never a decimal.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import FOUR_SIDED, Area
from calc.trade.inputs.job import Site
from calc.trade.levels import AREA, EIGHTH
from calc.trade.takeoff.dig import Excavation
from calc.trade.takeoff.dowels import DoweledEdge, DowelNeeds
from calc.trade.takeoff.geometry import MeanThickness, Slab
from calc.trade.takeoff.joint_list import HALVES_PER_IN, TWELVE, JointLayout
from calc.trade.takeoff.joints import JointDepth, MatchedJoints, Panel

_SHEET = "Takeoff"

SIZE = named_rows(
    "size",
    "length",
    "width",
    "other width",
    "thickness",
    "other thickness",
    "base",
    "dig",
    "mean thickness",
    "panel",
    "panel width",
    "joint depth",
)
"""A size of an area that the papers show."""

SHAPE = named_rows(
    "shape", "rectangle", "triangle", "circle", "quarter circle", "cross-sections", "outline points", "area given"
)
"""A shape that an area may have; a trapezoid is a rectangle with another width at its other end."""


class EighthText(Section, title="Eighths of an inch", each=EIGHTH, sheet=_SHEET):
    """The fraction as it is written, after whole inches and without them."""

    after_inches = fixed(
        "Fraction after the inches",
        EIGHTH,
        *('"', ' 1/8"', ' 1/4"', ' 3/8"', ' 1/2"', ' 5/8"', ' 3/4"', ' 7/8"'),
        source="the tape",
    )
    without_inches = fixed(
        "Fraction without inches",
        EIGHTH,
        *('0"', '1/8"', '1/4"', '3/8"', '1/2"', '5/8"', '3/4"', '7/8"'),
        source="the tape",
    )


def feet_and_inches(called: str, title: str, level: Level, inches: Expr, sheet: str) -> tuple[type[Section], Line]:
    """A section that writes ``inches`` as feet, inches and eighths, and its line of text."""

    class Size(Section, title=title, each=level, sheet=sheet, called=called):
        """To the nearest eighth of an inch."""

        eighths = line(
            "Eighths of an inch, total", "", rounded(inches * HALVES_PER_IN * TWO * TWO, 0), source="the nearest eighth"
        )
        feet = line("Feet", "", round_down(eighths / TWELVE / TWO / TWO / TWO), source="whole feet")
        whole_inches = line(
            "Inches",
            "",
            round_down((eighths - feet * TWELVE * TWO * TWO * TWO) / TWO / TWO / TWO),
            source="whole inches after the feet",
        )
        remaining_eighths = line(
            "Eighths",
            "",
            eighths - feet * TWELVE * TWO * TWO * TWO - whole_inches * TWO * TWO * TWO,
            source="remainder",
        )
        text = line(
            "Size in feet and inches",
            "",
            joined(
                when(feet > 0, joined(count_of(feet, "each"), "' "), ""),
                when(
                    both(feet <= 0, whole_inches <= 0),
                    at(EighthText.without_inches, remaining_eighths + 1),
                    joined(count_of(whole_inches, "each"), at(EighthText.after_inches, remaining_eighths + 1)),
                ),
            ),
            source="feet, inches and eighths",
        )

    return Size, Size.text


_SIZES = by_row(
    SIZE,
    Slab.length * IN_PER_FT,
    Slab.width * IN_PER_FT,
    Slab.far_width * IN_PER_FT,
    Area.thickness,
    MeanThickness.other_end,
    Area.base,
    Excavation.depth,
    MeanThickness.mean,
    JointLayout.longest_panel * IN_PER_FT,
    Panel.panel_width * IN_PER_FT,
    JointDepth.made,
)
AreaSize, _SIZE_TEXT = feet_and_inches("AreaSize", "Sizes of the areas", AREA * SIZE, _SIZES, _SHEET)


def _size(word: str) -> Expr:
    """The text of one size of this area."""
    return at(_SIZE_TEXT, row_called(SIZE, word), of=AREA)


class ShapeText(Section, title="Text of each shape", each=SHAPE, sheet=_SHEET):
    """What a shape is called on the papers, and which sizes follow."""

    prefix = fixed(
        "Name",
        SHAPE,
        "Rectangle ",
        "Triangle, side ",
        "Circle, diameter ",
        "Quarter circle, radius ",
        "As measured at its cross-sections",
        "Straight sides, as measured",
        "As measured",
        source="shape",
    )
    separator = fixed(
        "Between the sizes",
        SHAPE,
        *(" by ", ", height ", "-", "-", "-", "-", "-"),
        source="shape; a dash for one without a second size",
    )


_SHAPE = when(FOUR_SIDED, "rectangle", Area.shape)
_AS_MEASURED = either(*(Area.shape.is_(word) for word in ("cross-sections", "outline points", "area given")))


class AreaText(Section, title="Text of each area", each=AREA, sheet=_SHEET):
    """For the papers."""

    tapers = line(
        "Two widths",
        "",
        when(both(FOUR_SIDED, not_(equals(Slab.width, Slab.far_width))), 1, 0),
        source="1 for a rectangle whose ends differ",
    )
    prefix = line(
        "Shape name",
        "",
        when(tapers > 0, "Trapezoid ", look_up(ShapeText.prefix, _SHAPE)),
        source="shape",
    )
    separator = line("Between length and width", "", look_up(ShapeText.separator, _SHAPE), source="shape")
    outline = line(
        "Outline text",
        "",
        joined(
            prefix,
            when(_AS_MEASURED, "", _size("length")),
            when(is_word(separator, "-"), "", joined(separator, _size("width"))),
        ),
        source="shape and sizes",
    )
    shape = line(
        "Shape text",
        "",
        joined(
            outline,
            when(tapers > 0, joined(", ", _size("other width"), " at the other end"), ""),
            when(Area.quantity > 1, joined("; quantity ", count_of(Area.quantity, "each")), ""),
        ),
        source="outline, a second width, quantity",
    )
    thickness = line(
        "Thickness text",
        "",
        joined(
            _size("thickness"),
            when(equals(Area.thickness, MeanThickness.other_end), "", joined(" to ", _size("other thickness"))),
        ),
        source="nominal, from end to end",
    )
    mean_thickness = line(
        "Mean thickness text", "", _size("mean thickness"), source="measured depths, otherwise nominal"
    )
    base = line("Base text", "", when(Area.base > 0, _size("base"), "none"), source="compacted rock")
    dig = line(
        "Excavation depth text", "", when(Excavation.depth > 0, _size("dig"), "none"), source="below existing grade"
    )
    joint_depth = line("Joint depth text", "", _size("joint depth"), source="as made")
    old_slab = line(
        "Old slab, total", "ft2", Area.old_slab * Area.quantity, source="old slab times quantity", adds=True
    )
    dowels = line("Dowels, total of the area", "bar", total(DoweledEdge.dowels, AREA), source="sum of its edges")
    dowel_text = line(
        "Dowel text",
        "",
        when(
            dowels > 0,
            when(DowelNeeds.dowels.is_overridden, "Doweled to existing concrete.", joined("Dowels: ", dowels, ".")),
            "No dowels.",
        ),
        source="count of the area; no number where the count of the job was overridden",
    )
    joints_across = line(
        "Joints across, text",
        "",
        joined(
            count_of(MatchedJoints.joints, "each"),
            " across",
            when(MatchedJoints.matched > 0, " to match the old joints", ""),
        ),
        source="count of one of several alike, and whether old joints govern",
    )
    joints_along = line(
        "Joints along, text",
        "",
        when(
            Panel.joints_along > 0,
            joined(count_of(Panel.joints_along, "each"), ", every ", _size("panel width")),
            "none",
        ),
        source="count of one of several alike, and the distance from a long edge to the first and between them",
    )
    joint_method = line(
        "Joint method text",
        "",
        when(Site.joint_method.is_("early-entry"), "early-entry saw-cut", Site.joint_method),
        source="control joints, as typed",
    )
    panel_text = line(
        "Panel text",
        "",
        when(
            Panel.known > 0,
            joined("panels up to ", _size("panel"), " by ", _size("panel width")),
            "panels as the joints fall",
        ),
        source="panel length and width, where the joint layout is known",
    )
    joint_text = line(
        "Joint text",
        "",
        when(
            MatchedJoints.joints + Panel.joints_along > 0,
            joined(
                "Joints: ",
                joints_across,
                when(Panel.joints_along > 0, joined(", ", count_of(Panel.joints_along, "each"), " along"), ""),
                ", ",
                joint_method,
                ", ",
                panel_text,
                ".",
            ),
            "No joints.",
        ),
        source="of one of several alike",
    )
    description = line(
        "Description", "", joined(shape, ". ", dowel_text, " ", joint_text), source="shape, dowels, joints"
    )
