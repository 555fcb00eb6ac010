"""The joint list: running totals from one end, as a tape shows them."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import AREA, EIGHTH, JOINT
from calc.trade.takeoff.joints import THOUSAND, Matched, OldJoint, Panel

TWELVE = exact(12)
HALVES_PER_IN = exact(2, "1/in")


class Eighths(Section, title="Eighths of an inch", each=EIGHTH, sheet="Order and placing"):
    """How a tape shows them."""

    said = line("Said as", "", row_word(EIGHTH), source="the tape")


class Slot(Section, title="Joint slots", each=JOINT, sheet="Order and placing", slots_for=Matched.joints):
    """Rows for the joints; those not in use hold 0."""

    number = line("Slot", "", row_number(JOINT), source="in the order of the areas")


class JointPlace(Section, title="Joint list", each=JOINT, sheet="Order and placing", slots_for=Matched.joints):
    """Running totals from one end of each area, never gap by gap; to the nearest quarter inch."""

    number = line(
        "Joint of the area",
        "",
        row_number(JOINT) - first(Slot.number, AREA) + 1,
        source="counted from the end that the tape starts at",
    )
    used = line("In use", "", when(number <= Matched.joints, 1, 0), source="1 for a joint that is made", adds=True)
    old = line("Old joints of the area", "", when(used > 0, Matched.old, 0), source="of its area")
    base = line(
        "Key of the area", "", when(used > 0, row_number(AREA) * THOUSAND, 0), source="area number in thousands"
    )
    before_it = line(
        "Old joints before it",
        "",
        when(
            both(used > 0, old > 0),
            lookup_at_or_below(OldJoint.so_far, OldJoint.ladder, base + number - 1),
            0,
        ),
        source="those whose joints so far are less",
    )
    counted = line(
        "Joints to there",
        "",
        when(
            both(used > 0, old > 0),
            lookup_at_or_below(OldJoint.numbered, OldJoint.ladder, base + number - 1),
            0,
        ),
        source="old and added, to the last old joint before it",
    )
    start = line(
        "From the old joint at",
        "ft",
        when(before_it > 0, lookup_by_key(OldJoint.place, OldJoint.key, base + before_it), 0),
        source="the end of the area where there is none",
    )
    gap = line(
        "Over a gap of",
        "ft",
        when(
            used > 0,
            when(
                before_it < old,
                lookup_by_key(OldJoint.gap, OldJoint.key, base + before_it + 1),
                Matched.tail,
            ),
            0,
        ),
        source="to the next old joint, or to the end",
    )
    parts = line(
        "In so many panels",
        "",
        when(
            used > 0,
            when(
                before_it < old,
                lookup_by_key(OldJoint.both_kinds, OldJoint.key, base + before_it + 1),
                Matched.tail_added + 1,
            ),
            0,
        ),
        source="joints added there and one",
    )
    matched = line(
        "Place where old joints decide",
        "ft",
        start + gap * (number - counted) / largest(1, parts),
        source="evenly over the gap",
    )
    place = line(
        "Place of the joint",
        "ft",
        when(used > 0, when(old > 0, matched, number * Panel.longest), 0),
        source="matched, or evenly spaced",
    )
    quarters = line(
        "In quarter inches",
        "",
        rounded(place * IN_PER_FT * HALVES_PER_IN * TWO, 0),
        source="the nearest",
    )
    feet = line("Feet", "", round_down(quarters / TWELVE / TWO / TWO), source="whole feet")
    inches = line("Inches", "", round_down((quarters - feet * TWELVE * TWO * TWO) / TWO / TWO), source="whole inches")
    eighths = line(
        "Eighths",
        "",
        TWO * (quarters - feet * TWELVE * TWO * TWO - inches * TWO * TWO),
        source="what is left, in eighths",
    )
    shown = line(
        "On the tape",
        "",
        when(
            used > 0,
            joined(
                count_of(feet, "each"),
                "' ",
                count_of(inches, "each"),
                when(eighths > 0, joined(" ", at(Eighths.said, eighths + 1)), ""),
                '"',
            ),
            "-",
        ),
        source="feet and inches to the nearest quarter",
    )
    why = line(
        "Because",
        "",
        when(
            used <= 0,
            "-",
            when(both(old > 0, equals(number - counted, parts), before_it < old), "old joint", "added"),
        ),
        source="it meets an old joint, or is added",
    )
