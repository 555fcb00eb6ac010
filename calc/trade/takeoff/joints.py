"""Joints: layout and depth of control joints, and isolation-joint filler."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import FOUR_SIDED, Area, CrossSection
from calc.trade.inputs.job import Site
from calc.trade.levels import AREA, CROSS_SECTION
from calc.trade.takeoff.geometry import DeductionArea, EdgeTakeoff, Slab, StationStrip

THOUSAND = exact(1000)


class Panel(Section, title="Control joints", each=AREA, sheet="Order and placing"):
    """Evenly spaced, as far apart as thickness and width allow; none if the length or width is not known."""

    by_thickness = factor(
        "Joint spacing, times thickness",
        "",
        30,
        low=24,
        high=36,
        source="ACI 302.1R-96 and NRMCA CIP 6 (Joints in Concrete Slabs on Grade): 24 to 36, seen in print; middle",
    )
    by_width = factor(
        "Panel length, times width",
        "",
        1.5,
        low=1.25,
        high=1.5,
        source="PCA and ACI 302: at most 1.5; a textbook has square tooled panels; both seen in print; 1.25 is better",
    )
    min_spacing = factor(
        "Minimum joint spacing by width",
        "ft",
        4,
        low=3,
        high=5,
        source="common practice, no source: governs narrow strips",
    )
    max_spacing = factor(
        "Maximum joint spacing",
        "ft",
        15,
        low=10,
        high=18,
        source="NRMCA CIP 6: 15 ft, and 10 is better; ACI 302.1R-96: 18 ft; seen in print; a federal walk has 5 ft "
        "(UFGS 03300N): the details of the job govern",
    )

    station_length = line(
        "Length over the stations", "ft", total(StationStrip.gap, AREA), source="last station less first"
    )
    shape_run = line(
        "Joint layout length, by shape",
        "ft",
        when(FOUR_SIDED, Slab.length, when(Area.shape.is_("cross-sections"), station_length, 0)),
        source="length of a rectangle or trapezoid, or over the stations; other shapes must be typed",
    )
    run = line("Joint layout length", "ft", if_given(Area.layout_length, shape_run), source="input, else by shape")
    shape_width = line(
        "Panel width, by shape",
        "ft",
        when(
            FOUR_SIDED,
            Slab.width_sum / TWO,
            when(both(Area.shape.is_("cross-sections"), station_length > 0), Slab.gross_area / station_length, 0),
        ),
        source="mean width of the area",
    )
    width = line("Panel width", "ft", if_given(Area.panel_width, shape_width), source="input, else by shape")
    spacing = line(
        "Maximum spacing allowed",
        "ft",
        smallest(by_thickness * Area.thickness / IN_PER_FT, largest(by_width * width, min_spacing), max_spacing),
        source="smallest of the limits by thickness, by width and the maximum",
    )
    known = line(
        "Length and width are known",
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
        source="1 if both are typed, or both follow from the shape",
    )
    panels = line(
        "Panels",
        "",
        when(known > 0, largest(1, round_up(run / spacing)), 0),
        source="joint layout length over the maximum spacing, rounded up",
    )
    even_joints = line("Even joints, each", "", largest(0, panels - 1), source="panels less one")
    panel_length = line(
        "Panel length", "ft", when(panels > 0, run / largest(1, panels), 0), source="joint layout length divided evenly"
    )
    matched_spacing = line(
        "Maximum spacing of matched joints",
        "ft",
        by_thickness * Area.thickness / IN_PER_FT,
        source="by thickness alone: every old joint is matched, and joints are added between",
    )


class OldJoint(Section, title="Old joints to match", each=CROSS_SECTION, sheet="Order and placing"):
    """Each joint of the old walk is matched in the new slab; where two are too far apart, more are added evenly."""

    place = line(
        "Distance from the first station",
        "ft",
        CrossSection.station - first(CrossSection.station, AREA),
        source="station less first station",
    )
    is_joint = line(
        "Old joint here",
        "",
        when(
            both(CrossSection.old_joint.is_("yes"), place > 0, either(Panel.run <= 0, place < Panel.run)),
            1,
            0,
        ),
        source="input; one at either end is the end of the slab, which is a joint already",
        adds=True,
    )
    running_count = line("Old joints, running count", "", running(is_joint, AREA), source="within the area")
    key = line(
        "Old joint key",
        "",
        when(is_joint > 0, row_number(AREA) * THOUSAND + running_count, 0),
        source="area number times 1,000, plus joint number: 2003 is the third of area 2",
    )
    gap = line(
        "Distance from the previous old joint",
        "ft",
        when(
            both(is_joint > 0, running_count > 1),
            place - lookup_by_key(place, key, row_number(AREA) * THOUSAND + running_count - 1),
            when(is_joint > 0, place, 0),
        ),
        source="for the first, from the end of the area",
    )
    added = line(
        "Joints added before an old joint",
        "",
        largest(0, round_up(gap / Panel.matched_spacing) - 1),
        source="panels that the gap needs, less one",
    )
    with_added = line(
        "Joints added and matched",
        "",
        when(is_joint > 0, added + 1, 0),
        source="the old joint plus those added before it",
    )
    running_joints = line(
        "Joints, running count", "", running(with_added, AREA), source="matched and added, within the area"
    )
    running_key = line(
        "Running joint key",
        "",
        row_number(AREA) * THOUSAND + running_joints,
        source="area number times 1,000, plus running count of joints",
    )


class MatchedJoints(Section, title="Matched joints", each=AREA, sheet="Order and placing"):
    """Old joints govern the layout if there are any; else the panels are even."""

    old = line(
        "Old joints matched", "", total(OldJoint.is_joint, AREA), source="each is matched by a new joint", adds=True
    )
    last_old_joint = line(
        "Station of the last old joint",
        "ft",
        when(old > 0, lookup_by_key(OldJoint.place, OldJoint.key, row_number(AREA) * THOUSAND + old), 0),
        source="from the first station",
    )
    past_last = line(
        "Length past the last old joint",
        "ft",
        largest(0, Panel.run - last_old_joint),
        source="to the end of the joint layout length",
    )
    added_past_last = line(
        "Joints added past the last old joint",
        "",
        largest(0, round_up(past_last / Panel.matched_spacing) - 1),
        source="panels that this length needs, less one",
    )
    joints = line(
        "Joints, each",
        "",
        when(old > 0, total(OldJoint.with_added, AREA) + added_past_last, Panel.even_joints),
        source="matched joints plus those added, or even panels less one",
        adds=True,
    )
    length = line(
        "Control joint length",
        "ft",
        joints * Panel.width * Area.quantity,
        source="joints times panel width times quantity of the area",
        adds=True,
    )


class OpeningIsolation(Section, title="Isolation joints around openings", each=AREA, sheet="Order and placing"):
    """Around posts, boxes and other openings."""

    length = line(
        "Isolation joint around openings, total",
        "ft",
        total(DeductionArea.isolation, AREA) * Area.quantity,
        source="sum of the openings times quantity of the area",
        adds=True,
    )


class JointDepth(Section, title="Joint depth", each=AREA, sheet="Order and placing"):
    """A joint that is too shallow does not control the crack."""

    depth_share = factor(
        "Joint depth, share of thickness",
        "%",
        25,
        low=20,
        high=34,
        source="ACI 302.1R and NRMCA CIP 6: a quarter of the thickness, and at least 1 in; partly from memory",
    )
    min_depth = factor(
        "Minimum joint depth",
        "in",
        1,
        low=0.75,
        high=1.5,
        source="ACI 302.1R and NRMCA CIP 6, partly from memory; a federal curb has 3/4 in and one city takes 5/8 in, "
        "seen in print",
    )

    required = line(
        "Joint depth required",
        "in",
        largest(Area.thickness * depth_share / PERCENT, min_depth),
        source="share of the nominal thickness, not below the minimum joint depth",
    )
    made = line(
        "Joint depth as made", "in", if_given(Site.joint_depth, required), source="input, else the required depth"
    )
    short_by = line(
        "Joint depth short by", "in", largest(0, required - made), source="required depth less depth as made"
    )


class JointNeeds(Section, title="Isolation-joint filler and saw cuts", sheet="Order and placing"):
    """Filler strips for the isolation joints, and saw cuts for control joints."""

    strip_length = factor(
        "Isolation-joint filler, strip length", "ft/each", 10, low=5, high=10, source="common practice, no source"
    )

    isolation_length = line(
        "Isolation joint length",
        "ft",
        total(EdgeTakeoff.isolated) + total(OpeningIsolation.length),
        source="along edges plus around openings",
    )
    filler_strips = line(
        "Isolation-joint filler strips",
        "each",
        round_up(isolation_length / strip_length),
        source="length over strip length, rounded up",
    )
    saw_cut = line(
        "Saw cut for control joints",
        "ft",
        when(Site.joint_method.is_("saw-cut"), total(MatchedJoints.length), 0),
        source="control joint length, if the joints are saw-cut",
    )
