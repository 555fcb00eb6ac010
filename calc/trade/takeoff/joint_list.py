"""Joint layout list: running distances from one end, as read on a tape."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import AREA, EIGHTH, JOINT
from calc.trade.takeoff.corners import THOUSAND
from calc.trade.takeoff.joints import MatchedJoints, OldJoint, Panel

TWELVE = exact(12)
HALVES_PER_IN = exact(2, "1/in")
QUARTERS = TWO * TWO
"""Quarter inches in an inch."""


class Eighths(Section, title="Eighths of an inch", each=EIGHTH, sheet="Order and placing"):
    """Fractions of an inch as a tape shows them."""

    fraction = line("Fraction shown", "", row_word(EIGHTH), source="fractions of an inch, reduced")


class Slot(Section, title="Joint slots", each=JOINT, sheet="Order and placing", slots_for=MatchedJoints.rows):
    """Rows for the joints; an unused row is 0."""

    number = line("Joint row", "", row_number(JOINT), source="row number, in the order of the areas")


class JointPlace(Section, title="Joint layout", each=JOINT, sheet="Order and placing", slots_for=MatchedJoints.rows):
    """Running distances from where each slab begins, never gap by gap, to the nearest quarter inch."""

    number = line(
        "Joint number in the area",
        "",
        row_number(JOINT) - first(Slot.number, AREA) + 1,
        source="counted from the zero end of the tape",
    )
    in_use = line(
        "Row in use", "", when(number <= MatchedJoints.joints, 1, 0), source="1 for a joint to be made", adds=True
    )
    old_joints = line(
        "Old joints to match in the area", "", when(in_use > 0, MatchedJoints.matched, 0), source="matched joints"
    )
    key_base = line(
        "Joint key base", "", when(in_use > 0, row_number(AREA) * THOUSAND, 0), source="area number times 1,000"
    )
    past_first = line(
        "Past the first old joint",
        "",
        when(both(in_use > 0, old_joints > 0, number > MatchedJoints.joints_to_first), 1, 0),
        source="1 for a joint beyond the first old joint of the area",
    )
    old_before = line(
        "Old joints before this joint",
        "",
        when(
            past_first > 0,
            lookup_at_or_below(OldJoint.running_count, OldJoint.running_key, key_base + number - 1),
            0,
        ),
        source="last old joint whose running joint count is below this number",
    )
    joints_before = line(
        "Joints up to that old joint",
        "",
        when(
            past_first > 0,
            lookup_at_or_below(OldJoint.running_joints, OldJoint.running_key, key_base + number - 1),
            0,
        ),
        source="matched and added joints, up to the last old joint before this one",
    )
    gap = line(
        "Gap to divide",
        "ft",
        when(
            in_use > 0,
            when(
                old_before < old_joints,
                lookup_by_key(OldJoint.gap, OldJoint.key, key_base + old_before + 1),
                MatchedJoints.past_last,
            ),
            0,
        ),
        source="from that old joint to the next, or to the end",
    )
    panels_in_gap = line(
        "Panels in the gap",
        "",
        when(
            in_use > 0,
            when(
                old_before < old_joints,
                lookup_by_key(OldJoint.with_added, OldJoint.key, key_base + old_before + 1),
                MatchedJoints.added_past_last + 1,
            ),
            0,
        ),
        source="joints added in the gap plus one",
    )
    matched = line(
        "Joint station, matched",
        "ft",
        when(old_before > 0, lookup_by_key(OldJoint.place, OldJoint.key, key_base + old_before), 0)
        + gap * (number - joints_before) / largest(1, panels_in_gap),
        source="the old joint before it, or the end of the area; the gap is divided evenly",
    )
    place = line(
        "Joint station",
        "ft",
        when(in_use > 0, when(old_joints > 0, matched, number * MatchedJoints.even_panel), 0),
        source="matched to the old joints, else evenly spaced",
    )
    panel = line(
        "Panel before the joint",
        "ft",
        when(in_use > 0, place - before(place, AREA, 0), 0),
        source="joint station less the one before; the first from where the slab begins",
    )
    along_reach = line(
        "Length of a joint along, drawn",
        "ft",
        when(number <= Panel.joints_along, Panel.run, 0),
        source="joint layout length for as many rows as there are joints along; for the plan drawing",
    )
    along_place = line(
        "Place of a joint along, layout widths",
        "",
        when(number <= Panel.joints_along, number / (Panel.joints_along + 1), 0),
        source="spread evenly over the joint layout width; for the plan drawing",
    )
    quarters = line(
        "Joint station in quarter inches",
        "",
        rounded(place * IN_PER_FT * HALVES_PER_IN * TWO, 0),
        source="rounded to the nearest",
    )
    feet = line("Tape reading, feet", "", round_down(quarters / QUARTERS / TWELVE), source="whole feet")
    inches = line(
        "Tape reading, inches",
        "",
        round_down(quarters / QUARTERS - feet * TWELVE),
        source="whole inches beyond the feet",
    )
    eighths = line(
        "Tape reading, eighths",
        "",
        TWO * (quarters - (feet * TWELVE + inches) * QUARTERS),
        source="remainder, in eighths of an inch",
    )
    shown = line(
        "Tape reading",
        "",
        when(
            in_use > 0,
            joined(
                count_of(feet, "each"),
                "' ",
                count_of(inches, "each"),
                when(eighths > 0, joined(" ", at(Eighths.fraction, eighths + 1)), ""),
                '"',
            ),
            "-",
        ),
        source="feet and inches to the nearest quarter inch",
    )
    why = line(
        "Reason",
        "",
        when(
            in_use <= 0,
            "-",
            when(
                both(old_joints > 0, equals(number - joints_before, panels_in_gap), old_before < old_joints),
                "old joint",
                "added",
            ),
        ),
        source="matches an old joint, or is added between",
    )


class JointLayout(Section, title="Longest panel", each=AREA, sheet="Order and placing"):
    """Panels as they are laid out, old joints included."""

    longest_panel = line(
        "Longest panel",
        "ft",
        largest(greatest(JointPlace.panel, AREA), Panel.run - greatest(JointPlace.place, AREA)),
        source="longest gap between joints across, the ends of the slab included",
    )
    listed_along = line(
        "Joints along in the list",
        "",
        smallest(Panel.joints_along, row_count(JOINT, AREA)),
        source="joints along, as far as the list has rows",
        adds=True,
    )
