"""Joints: where they go and how deep, and the strips that keep the slab from what it must not push."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import FOUR_SIDED, Area, CrossSection
from calc.trade.inputs.job import Site
from calc.trade.levels import AREA, CROSS_SECTION
from calc.trade.takeoff.geometry import DeductionArea, EdgeTakeoff, Slab, StationStrip

THOUSAND = exact(1000)


class Panel(Section, title="Joints", each=AREA, sheet="Order and placing"):
    """Evenly spaced, as far apart as thickness and width allow; none where the run or the width is not known."""

    by_thickness = factor(
        "Spacing over thickness",
        "",
        30,
        low=24,
        high=36,
        source="ACI 302.1R-96 and NRMCA CIP 6, 24 to 36 times the thickness, seen in print; the middle",
    )
    by_width = factor(
        "Panel length over width",
        "",
        1.5,
        low=1.25,
        high=1.5,
        source="PCA and ACI 302, at most 1.5, a textbook has tooled panels square, both seen in print; 1.25 is better",
    )
    least_spacing = factor(
        "Least spacing by width", "ft", 4, low=3, high=5, source="common practice, no source: for narrow strips"
    )
    most_spacing = factor(
        "Most spacing",
        "ft",
        15,
        low=10,
        high=18,
        source="NRMCA CIP 6, 15 ft and 10 better, ACI 302.1R-96, 18, seen in print; a federal walk has 5 ft (UFGS "
        "03300N): the detail sheet of the job wins",
    )

    walked = line("Length walked", "ft", total(StationStrip.gap, AREA), source="last stop less first")
    shape_run = line(
        "Run by the shape",
        "ft",
        when(FOUR_SIDED, Slab.length, when(Area.shape.is_("cross-sections"), walked, 0)),
        source="a strip's length, a walk's length; other shapes must be typed",
    )
    run = line("Run", "ft", if_given(Area.layout_length, shape_run), source="typed, else by the shape")
    shape_width = line(
        "Width by the shape",
        "ft",
        when(
            FOUR_SIDED,
            Slab.width_sum / TWO,
            when(both(Area.shape.is_("cross-sections"), walked > 0), Slab.gross_area / walked, 0),
        ),
        source="the mean width",
    )
    width = line("Panel width", "ft", if_given(Area.panel_width, shape_width), source="typed, else by the shape")
    spacing = line(
        "Most between joints",
        "ft",
        smallest(by_thickness * Area.thickness / IN_PER_FT, largest(by_width * width, least_spacing), most_spacing),
        source="the least of what thickness, width and the cap allow",
    )
    known = line(
        "Run and width are known",
        "",
        when(
            both(
                run > 0,
                width > 0,
                either(
                    both(is_given(Area.layout_length), is_given(Area.panel_width)),
                    both(not_(is_given(Area.layout_length)), not_(is_given(Area.panel_width))),
                ),
            ),
            1,
            0,
        ),
        source="1 where both are typed, or the shape says both",
    )
    panels = line(
        "Panels",
        "",
        when(known > 0, largest(1, round_up(run / spacing)), 0),
        source="run over the spacing, rounded up",
    )
    even_joints = line("Even joints of one copy", "", largest(0, panels - 1), source="one less than the panels")
    longest = line(
        "Panel length", "ft", when(panels > 0, run / largest(1, panels), 0), source="the run, divided evenly"
    )
    limit = line(
        "Most between matched joints",
        "ft",
        by_thickness * Area.thickness / IN_PER_FT,
        source="thickness alone: a matched joint is never dropped, only added to",
    )


class OldJoint(Section, title="Old joints", each=CROSS_SECTION, sheet="Order and placing"):
    """A joint of the old walk is met by one in the new slab; where two lie too far apart, more are added evenly."""

    place = line(
        "From the first stop", "ft", CrossSection.station - first(CrossSection.station, AREA), source="the tape"
    )
    is_joint = line(
        "Old joint here",
        "",
        when(
            both(CrossSection.old_joint.is_("yes"), place > 0, either(Panel.run <= 0, place < Panel.run)),
            1,
            0,
        ),
        source="as typed; one at either end of the run is the end of the slab, which is a joint already",
        adds=True,
    )
    so_far = line("Old joints so far", "", running(is_joint, AREA), source="in this area")
    key = line(
        "Key of an old joint",
        "",
        when(is_joint > 0, row_number(AREA) * THOUSAND + so_far, 0),
        source="area number and joint number in one: 2003 is the third of area 2",
    )
    gap = line(
        "From the old joint before",
        "ft",
        when(
            both(is_joint > 0, so_far > 1),
            place - lookup_by_key(place, key, row_number(AREA) * THOUSAND + so_far - 1),
            when(is_joint > 0, place, 0),
        ),
        source="from the end of the area for the first",
    )
    added = line(
        "Joints added before it",
        "",
        largest(0, round_up(gap / Panel.limit) - 1),
        source="one less than the panels that the gap needs",
    )
    both_kinds = line("Joints with it", "", when(is_joint > 0, added + 1, 0), source="itself and those added before it")
    numbered = line("Joints so far", "", running(both_kinds, AREA), source="old and added, in this area")
    ladder = line(
        "Key of the joints so far",
        "",
        row_number(AREA) * THOUSAND + numbered,
        source="area number and joints so far in one",
    )


class Matched(Section, title="Matched joints", each=AREA, sheet="Order and placing"):
    """Where the old walk has joints, they decide; else the panels are even."""

    old = line("Old joints", "", total(OldJoint.is_joint, AREA), source="met by a new joint each", adds=True)
    last = line(
        "Last old joint",
        "ft",
        when(old > 0, lookup_by_key(OldJoint.place, OldJoint.key, row_number(AREA) * THOUSAND + old), 0),
        source="from the first stop",
    )
    tail = line("After the last old joint", "ft", largest(0, Panel.run - last), source="to the end of the run")
    tail_added = line(
        "Joints added after it",
        "",
        largest(0, round_up(tail / Panel.limit) - 1),
        source="one less than the panels that the rest needs",
    )
    joints = line(
        "Joints of one copy",
        "",
        when(old > 0, total(OldJoint.both_kinds, AREA) + tail_added, Panel.even_joints),
        source="old joints and those added between, or one less than the even panels",
        adds=True,
    )
    length = line(
        "Joints, length",
        "ft",
        joints * Panel.width * Area.quantity,
        source="joints times panel width times copies",
        adds=True,
    )


class HoleIsolation(Section, title="Isolation round holes", each=AREA, sheet="Order and placing"):
    """Round what stands in the slab, on every copy."""

    length = line(
        "Isolation round holes",
        "ft",
        total(DeductionArea.isolation, AREA) * Area.quantity,
        source="sum of the holes, times copies",
        adds=True,
    )


class JointDepth(Section, title="Joint depth", each=AREA, sheet="Order and placing"):
    """A joint that is too shallow does not draw the crack."""

    share = factor(
        "Joint depth over thickness",
        "%",
        25,
        low=20,
        high=34,
        source="ACI 302.1R and NRMCA CIP 6, a quarter and 1 in at least, partly from memory",
    )
    least_depth = factor(
        "Least joint depth",
        "in",
        1,
        low=0.75,
        high=1.5,
        source="ACI 302.1R and NRMCA CIP 6, partly from memory; a federal curb has 3/4 in and one city takes 5/8 in, "
        "seen in print",
    )

    needed = line(
        "Joint depth needed",
        "in",
        largest(Area.thickness * share / PERCENT, least_depth),
        source="a share of the nominal thickness, and never less than the least",
    )
    made = line("Joint depth made", "in", if_given(Site.joint_depth, needed), source="typed, else what is needed")
    lacking = line("Joint depth lacking", "in", largest(0, needed - made), source="needed less made")


class JointNeeds(Section, title="Strips and saw cuts", sheet="Order and placing"):
    """The strips that keep the slab from what it must not push, and what is sawn."""

    strip_length = factor("Isolation strip", "ft/each", 10, low=5, high=10, source="common practice, no source")

    isolation = line(
        "Isolation, length",
        "ft",
        total(EdgeTakeoff.isolated) + total(HoleIsolation.length),
        source="walls, buildings and flagged edges, and round the holes",
    )
    strips = line("Isolation strips", "each", round_up(isolation / strip_length), source="length over one strip")
    saw = line(
        "Saw cut for joints",
        "ft",
        when(Site.joint_method.is_("saw-cut"), total(Matched.length), 0),
        source="only where the joints are sawn",
    )
