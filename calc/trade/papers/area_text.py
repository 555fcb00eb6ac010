"""Sizes as a tape shows them, and each area in words: what the papers say of an area.

A size on a paper is in feet, inches and eighths of an inch, never a decimal; here it becomes words, once.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import Area
from calc.trade.inputs.job import Site
from calc.trade.levels import AREA, EIGHTH
from calc.trade.takeoff.dig import Excavation
from calc.trade.takeoff.dowels import DoweledEdge, DowelNeeds
from calc.trade.takeoff.geometry import MeanThickness, Slab
from calc.trade.takeoff.joint_list import HALVES_PER_IN, TWELVE
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
    "joint depth",
)
"""A size of an area that the papers show."""

SHAPE = named_rows("shape", "strip", "triangle", "circle", "quarter circle", "stations", "corners", "known area")
"""A shape that an area may have."""


class EighthMark(Section, title="Ends of a size", each=EIGHTH, sheet=_SHEET):
    """What stands behind the whole inches."""

    ending = line(
        "Written behind the inches",
        "",
        by_row(EIGHTH, '"', ' 1/8"', ' 1/4"', ' 3/8"', ' 1/2"', ' 5/8"', ' 3/4"', ' 7/8"'),
        source="the tape",
    )
    alone = line(
        "Written without inches",
        "",
        by_row(EIGHTH, '0"', '1/8"', '1/4"', '3/8"', '1/2"', '5/8"', '3/4"', '7/8"'),
        source="the tape",
    )


def on_tape(called: str, title: str, level: Level, inches: Expr, sheet: str) -> tuple[type[Section], Line]:
    """A section that writes ``inches`` as feet, inches and eighths, and the line of it that says them."""

    class Tape(Section, title=title, each=level, sheet=sheet, called=called):
        """To the nearest eighth of an inch."""

        size = line("Size", "in", inches, source="where it is computed")
        eighths = line(
            "In whole eighths", "", rounded(size * HALVES_PER_IN * TWO * TWO, 0), source="the nearest eighth"
        )
        feet = line("Feet of the size", "", round_down(eighths / TWELVE / TWO / TWO / TWO), source="whole feet")
        whole = line(
            "Inches of the size",
            "",
            round_down((eighths - feet * TWELVE * TWO * TWO * TWO) / TWO / TWO / TWO),
            source="whole inches beside the feet",
        )
        rest = line(
            "Eighths of the size",
            "",
            eighths - feet * TWELVE * TWO * TWO * TWO - whole * TWO * TWO * TWO,
            source="what is left",
        )
        said = line(
            "As a tape shows it",
            "",
            joined(
                when(feet > 0, joined(count_of(feet, "each"), "' "), ""),
                when(
                    both(feet <= 0, whole <= 0),
                    at(EighthMark.alone, rest + 1),
                    joined(count_of(whole, "each"), at(EighthMark.ending, rest + 1)),
                ),
            ),
            source="feet, inches and eighths",
        )

    return Tape, Tape.said


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
    Panel.panel_length * IN_PER_FT,
    JointDepth.made,
)
AreaSize, _SAID = on_tape("AreaSize", "Sizes of the areas", AREA * SIZE, _SIZES, _SHEET)


def _said(word: str) -> Expr:
    """One size of this area, as a tape shows it."""
    return at(_SAID, row_called(SIZE, word), of=AREA)


class ShapeWord(Section, title="Shapes in words", each=SHAPE, sheet=_SHEET):
    """How a shape is spoken of, and which sizes say it."""

    opening = line(
        "Called",
        "",
        by_row(
            SHAPE,
            "Strip ",
            "Triangle, side ",
            "Circle, diameter ",
            "Quarter circle, radius ",
            "Strip, as measured at its stations",
            "Straight sides, as measured",
            "As measured",
        ),
        source="shape",
    )
    lengths = line("Its length is said", "", by_row(SHAPE, 1, 1, 1, 1, 0, 0, 0), source="1 where it is")
    widths = line("Its width is said", "", by_row(SHAPE, 1, 1, 0, 0, 0, 0, 0), source="1 where it is")
    between = line("Between them", "", by_row(SHAPE, " by ", ", height ", "-", "-", "-", "-", "-"), source="shape")


class AreaWord(Section, title="Each area in words", each=AREA, sheet=_SHEET):
    """What a client reads of it."""

    opening = line("Shape, called", "", look_up(ShapeWord.opening, Area.shape), source="shape")
    long = line("Length is said", "", look_up(ShapeWord.lengths, Area.shape), source="shape")
    wide = line("Width is said", "", look_up(ShapeWord.widths, Area.shape), source="shape")
    between = line("Between the two", "", look_up(ShapeWord.between, Area.shape), source="shape")
    length = line("Length, on the tape", "", _said("length"), source="sizes of the areas")
    width = line("Width, on the tape", "", _said("width"), source="sizes of the areas")
    outline = line(
        "Outline in words",
        "",
        joined(opening, when(long > 0, length, ""), when(wide > 0, joined(between, width), "")),
        source="shape and sizes",
    )
    narrows = line(
        "Two widths",
        "",
        when(both(Area.shape.is_("strip"), not_(equals(Slab.width, Slab.far_width))), 1, 0),
        source="1 for a strip whose ends differ",
    )
    shape = line(
        "Shape in words",
        "",
        joined(
            outline,
            when(narrows > 0, joined(", ", _said("other width"), " at the other end"), ""),
            when(Area.copies > 1, joined("; ", count_of(Area.copies, "each"), " alike"), ""),
        ),
        source="outline, a second width, copies",
    )
    thickness = line(
        "Thickness in words",
        "",
        joined(
            _said("thickness"),
            when(equals(Area.thickness, MeanThickness.other_end), "", joined(" to ", _said("other thickness"))),
        ),
        source="nominal, from end to end",
    )
    mean = line("Mean thickness in words", "", _said("mean thickness"), source="measured depths, else as drawn")
    base = line("Base in words", "", when(Area.base > 0, _said("base"), "none"), source="compacted rock")
    dig = line("Dig in words", "", when(Excavation.depth > 0, _said("dig"), "none"), source="below the ground as it is")
    joint_depth = line("Joint depth in words", "", _said("joint depth"), source="as made")
    old_slab = line("Old slab of all copies", "ft2", Area.old_slab * Area.copies, source="area times copies", adds=True)
    dowels = line("Dowels of the area", "bar", total(DoweledEdge.dowels, AREA), source="sum of its edges", adds=True)
    dowels_said = line(
        "Dowels in words",
        "",
        when(
            dowels > 0,
            when(DowelNeeds.dowels.is_overridden, "Doweled to what is there.", joined("Dowels: ", dowels, ".")),
            "No dowels.",
        ),
        source="count of the area; no number where it was forced for the job",
    )
    apart = line(
        "Apart in words",
        "",
        when(MatchedJoints.old > 0, "to meet the old ones", joined(_said("panel"), " apart")),
        source="the old joints, else the panels",
    )
    joints_said = line(
        "Joints in words",
        "",
        when(
            MatchedJoints.joints > 0,
            joined("Joints: ", count_of(MatchedJoints.joints, "each"), ", ", Site.joint_making, ", ", apart, "."),
            "No joints.",
        ),
        source="of one copy",
    )
    described = line(
        "The area in words", "", joined(shape, ". ", dowels_said, " ", joints_said), source="shape, dowels, joints"
    )
