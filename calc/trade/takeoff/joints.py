"""Joints: layout and depth of control joints, and isolation-joint filler."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import FOUR_SIDED, Area, CrossSection
from calc.trade.inputs.job import SAWN, Site
from calc.trade.levels import AREA, CROSS_SECTION, DEDUCTION
from calc.trade.takeoff.corners import THOUSAND, OpeningCorners, OutlineTurn
from calc.trade.takeoff.geometry import DeductionArea, EdgeTakeoff, MeanThickness, Slab, StationStrip


class Panel(Section, title="Control joints", each=AREA, sheet="Order and placing"):
    """Evenly spaced both ways, as far apart as thickness and width allow; none if the length or width is not known.

    Joints across divide the length for joint layout; joints along it divide a slab that is too wide for one panel.
    """

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

    width_tolerance = factor(
        "Joint layout tolerance",
        "%",
        10,
        low=5,
        high=20,
        source="common practice, no source: how far a typed length or panel width may be off a side and still mean it",
    )

    limit = line(
        "Panel limit",
        "ft",
        smallest(by_thickness * MeanThickness.plain_mean / IN_PER_FT, max_spacing),
        source="smaller of the limit by nominal thickness and the maximum; no panel is longer or wider",
    )
    station_length = line(
        "Length over the stations", "ft", total(StationStrip.gap, AREA), source="last station less first"
    )
    two_sides = line(
        "Has two sides",
        "",
        when(either(FOUR_SIDED, both(Area.shape.is_("cross-sections"), station_length > 0)), 1, 0),
        source="1 for a rectangle, a trapezoid or a strip by cross-sections",
    )
    first_side = line(
        "Side, length of the area",
        "ft",
        when(two_sides > 0, when(FOUR_SIDED, Slab.length, station_length), 0),
        source="length of a rectangle or trapezoid, or over the stations",
    )
    second_side = line(
        "Side, mean width of the area",
        "ft",
        when(
            both(two_sides > 0, first_side > 0),
            when(FOUR_SIDED, Slab.width_sum / TWO, Slab.gross_area / first_side),
            0,
        ),
        source="mean of the two widths, or gross area over the length over the stations",
    )
    shape_run = line(
        "Joint layout length, by shape",
        "ft",
        largest(first_side, second_side),
        source="longer side; a shape without two sides must be typed",
    )
    run = line("Joint layout length", "ft", if_given(Area.layout_length, shape_run), source="input, else by shape")
    off_first = line(
        "Joint layout length, off the length", "ft", abs_(run - first_side), source="difference from that side"
    )
    off_second = line(
        "Joint layout length, off the mean width", "ft", abs_(run - second_side), source="difference from that side"
    )
    shape_width = line(
        "Joint layout width, by shape",
        "ft",
        when(
            both(
                off_first > width_tolerance / PERCENT * first_side,
                off_second > width_tolerance / PERCENT * second_side,
            ),
            smallest(first_side, second_side),
            when(off_first <= off_second, second_side, first_side),
        ),
        source="side that the layout length is not nearest to; the shorter one where it is near neither",
        words="Of Side, length of the area and Side, mean width of the area the one that the layout length is farther "
        "from (as far from both: the mean width); the shorter if it is off both by more than Joint layout tolerance",
        words_because="each of three long names stands in it three times",
    )
    width = line(
        "Joint layout width",
        "ft",
        when(two_sides > 0, shape_width, if_given(Area.panel_width, 0)),
        source="by shape; for a shape without two sides, the panel width typed",
    )
    known = line(
        "Length and width are known",
        "",
        when(
            both(
                run > 0,
                width > 0,
                either(two_sides > 0, both(is_given(Area.layout_length), is_given(Area.panel_width))),
            ),
            1,
            0,
        ),
        source="1 where the shape has two sides, or both are typed",
    )
    typed_width = line(
        "Widest panel wanted", "ft", if_given(Area.panel_width, width), source="input, else the joint layout width"
    )
    typed_panels = line(
        "Panels across the width, by the width typed",
        "",
        when(
            both(two_sides > 0, typed_width < width * (1 - width_tolerance / PERCENT)),
            round_up(width / typed_width),
            0,
        ),
        source="layout width over a typed panel width that is clearly narrower, rounded up",
    )
    joints_along = line(
        "Joints along, each",
        "",
        when(known > 0, largest(1, round_up(width / limit), typed_panels) - 1, 0),
        source="panels across the width less one: by the panel limit, or by a narrower panel width typed",
        may_be_overridden=Limits(low=0, high=1_000, ask_high=50, whole=True),
    )
    panel_width = line(
        "Panel width",
        "ft",
        when(known > 0, width / (joints_along + 1), 0),
        source="joint layout width divided evenly",
    )
    spacing = line(
        "Maximum spacing allowed",
        "ft",
        smallest(limit, largest(by_width * panel_width, min_spacing)),
        source="panel limit, or the limit by width if it is less",
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
    inside_corners = line(
        "Inside corners",
        "",
        total(OpeningCorners.openings, AREA) + total(OutlineTurn.inside, AREA),
        source="openings with corners, plus inside corners of an outline, of one area",
        adds=True,
    )


class OldJoint(Section, title="Old joints to match", each=CROSS_SECTION, sheet="Order and placing"):
    """Each joint of the old walk is matched in the new slab; where two are too far apart, more are added evenly.

    The tape's zero is where the slab begins. Of an area by cross-sections, the slab begins at its first station.
    """

    place = line(
        "Distance from where the slab begins",
        "ft",
        CrossSection.station - when(Area.shape.is_("cross-sections"), first(CrossSection.station, AREA), 0),
        source="station, less the first station of an area by cross-sections",
    )
    is_joint = line(
        "Old joint here",
        "",
        when(
            both(CrossSection.old_joint.is_("yes"), place > 0, either(Panel.run <= 0, place < Panel.run)),
            1,
            0,
        ),
        source="input; none at an end of the slab, which is a joint already, nor outside it",
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
        largest(0, round_up(gap / Panel.limit) - 1),
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
    """Old joints govern the layout if there are any; else, or where the count is overridden, the panels are even."""

    old = line("Old joints matched", "", total(OldJoint.is_joint, AREA), source="each is matched by a new joint")
    joints_to_first = line(
        "Joints up to the first old joint",
        "",
        when(old > 0, lookup_by_key(OldJoint.running_joints, OldJoint.key, row_number(AREA) * THOUSAND + 1), 0),
        source="that old joint and those added before it",
    )
    last_old_joint = line(
        "Station of the last old joint",
        "ft",
        when(old > 0, lookup_by_key(OldJoint.place, OldJoint.key, row_number(AREA) * THOUSAND + old), 0),
        source="from where the slab begins",
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
        largest(0, round_up(past_last / Panel.limit) - 1),
        source="panels that this length needs, less one",
    )
    joints = line(
        "Joints across, each",
        "",
        when(old > 0, total(OldJoint.with_added, AREA) + added_past_last, Panel.even_joints),
        source="matched joints plus those added, or even panels less one",
        adds=True,
        may_be_overridden=Limits(low=0, high=1_000, ask_high=100, whole=True),
    )
    rows = line(
        "Rows of the joint list needed",
        "",
        largest(joints, Panel.joints_along),
        source="joints across, or joints along if there are more; the list is drawn from both",
    )
    matched = line(
        "Old joints that the layout meets",
        "",
        when(joints.is_overridden, 0, old),
        source="all of them; none where the count of joints across was overridden",
    )
    even_panel = line(
        "Panel length, even",
        "ft",
        Panel.run / (joints + 1),
        source="joint layout length over the joints across plus one",
    )
    length = line(
        "Control joint length",
        "ft",
        (joints * Panel.width + Panel.joints_along * Panel.run) * Area.quantity,
        source="(joints across times layout width, plus joints along times layout length) times quantity of the area",
        adds=True,
    )


class OpeningIsolation(
    Section, title="Isolation joints around openings", each=AREA, sheet="Order and placing", needs=DEDUCTION
):
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
        when(SAWN, total(MatchedJoints.length), 0),
        source="control joint length, if the joints are sawn, early or not",
    )
