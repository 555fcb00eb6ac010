"""Dowels: how many on each edge, what is cut and bought for them, and what is drilled and glued."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import Area, Edge
from calc.trade.levels import EDGE
from calc.trade.takeoff.geometry import MeanThickness

THOUSAND = exact(1000)


class DoweledEdge(Section, title="Dowels by edge", each=EDGE, sheet="Order and placing"):
    """The spacing typed is the most there may be, so the count is rounded up and the real spacing is a little less."""

    least_usable = factor(
        "Least length for two dowels", "ft", 0.5, low=0.25, high=1, source="common practice, no source"
    )
    least_edge = factor("Least edge for one dowel", "ft", 1, low=0.5, high=2, source="common practice, no source")

    usable = line(
        "Between end dowels",
        "ft",
        Edge.length - TWO * Edge.end_distance / IN_PER_FT,
        source="length less both clearances",
    )
    spaces = line(
        "Spaces on one piece",
        "",
        when(is_given(Edge.spacing), round_up(largest(0, usable) * IN_PER_FT / Edge.spacing), 0),
        source="length between end dowels over the spacing, rounded up",
    )
    short = line(
        "Dowels on a short piece",
        "bar",
        when(both(is_given(Edge.spacing), Edge.length >= least_edge), 1, 0),
        source="one in the middle of a piece that is too short for two",
    )
    each = line(
        "Dowels on one piece",
        "bar",
        when(both(is_given(Edge.spacing), usable >= least_usable), count_of(spaces + 1, "bar"), short),
        source="one more than there are spaces",
    )
    dowels = line(
        "Dowels",
        "bar",
        each * Edge.quantity * Area.quantity,
        source="times the pieces and the copies",
        adds=True,
    )
    real = line(
        "Real spacing",
        "in",
        when(both(each > 1, spaces > 0), usable * IN_PER_FT / spaces, 0),
        source="length between end dowels over the spaces; 0 where there is one dowel or none",
    )
    piece = line("Length of a dowel", "in", Edge.embedment + Edge.projection, source="what goes in and what stands out")
    hole = line(
        "Hole", "in", if_given(Edge.drill_diameter, Edge.bar_diameter), source="the bar's own where no other was typed"
    )
    glued = line(
        "Glued dowels",
        "bar",
        when(hole > Edge.bar_diameter, dowels, 0),
        source="a hole larger than its bar is filled",
        adds=True,
    )
    epoxy = line(
        "Epoxy, by volume",
        "in3",
        glued.count * PI * (hole * hole - Edge.bar_diameter * Edge.bar_diameter) / TWO / TWO * Edge.embedment,
        source="geometry: the ring between hole and bar, as deep as the bar goes in",
        adds=True,
    )
    cover = line(
        "Clear cover", "in", (MeanThickness.mean - Edge.bar_diameter) / TWO, source="a bar at half the slab's depth"
    )


class CuttingList(Section, title="Cutting list", each=EDGE, sheet="Order and placing"):
    """Each length of dowel is cut from bars of its own; the first edge with a length takes the bars of all alike."""

    spare = factor("Spare dowels", "%", 5, low=0, high=10, source="common practice, no source")
    stock = factor("Stock bar", "in", 240, low=120, high=480, source="common practice, no source: bars come 20 ft long")
    kerf = factor("Saw kerf", "in", 0.125, low=0.0625, high=0.25, source="common practice, no source")

    key = line(
        "Kind of dowel",
        "in",
        rounded(DoweledEdge.piece, 3) * THOUSAND + rounded(Edge.bar_diameter, 3),
        source="a number that is the same for dowels of one length and one bar",
    )
    alike = line(
        "Dowels alike",
        "bar",
        group_total(DoweledEdge.dowels, key),
        source="over all edges with the same length and bar",
    )
    counts = line(
        "Counts here",
        "",
        when(equals(first_in_group(key), row_number(EDGE)), 1, 0),
        source="1 on the first edge with its kind of dowel",
    )
    counted = line("Dowels counted here", "bar", counts * alike, source="each kind once", adds=True)
    pieces = line(
        "Pieces to cut",
        "bar",
        round_up(counted * (1 + spare / PERCENT)),
        source="dowels alike and the spare",
        adds=True,
    )
    from_one = line(
        "Pieces from one bar",
        "",
        round_down((stock + kerf) / (DoweledEdge.piece + kerf)),
        source="stock over piece, a kerf with each",
    )
    bars = line(
        "Bars to buy",
        "bar",
        when(both(pieces > 0, from_one > 0), round_up(pieces / from_one), 0),
        source="pieces over pieces from one bar, rounded up for each kind",
        adds=True,
    )
    off_cut = line(
        "Off-cut of one bar",
        "in",
        largest(0, stock - from_one * (DoweledEdge.piece + kerf)),
        source="what is left of a full bar",
    )


class DowelNeeds(Section, title="Drilling and gluing", sheet="Order and placing"):
    """What drilling and gluing use up."""

    holes_a_bit = factor(
        "Holes from one bit", "bar/each", 40, low=20, high=80, source="common practice, no source: 3/8 in carbide"
    )
    dowels_a_tube = factor("Dowels glued from one tube", "bar/each", 18, low=8, high=30, source="read the tube")

    dowels = line("Dowels in all", "bar", total(DoweledEdge.dowels), source="sum of the edges", may_be_overridden=True)
    bits = line("Bits", "each", round_up(dowels / holes_a_bit), source="holes over holes from one bit")
    tubes = line(
        "Tubes of epoxy",
        "each",
        round_up(total(DoweledEdge.glued) / dowels_a_tube),
        source="glued dowels over a tube's",
    )
