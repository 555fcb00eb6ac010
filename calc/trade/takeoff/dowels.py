"""Dowels: count by edge, cutting list, drilling and epoxy."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import Area, Edge
from calc.trade.levels import EDGE
from calc.trade.takeoff.geometry import MeanThickness

THOUSAND = exact(1000)


class DoweledEdge(Section, title="Dowels by edge", each=EDGE, sheet="Order and placing"):
    """The spacing typed is a maximum: the count is rounded up, and the spacing as laid out is a little less."""

    least_usable = factor(
        "Minimum length for two dowels", "ft", 0.5, low=0.25, high=1, source="common practice, no source"
    )
    least_edge = factor(
        "Minimum edge length for one dowel", "ft", 1, low=0.5, high=2, source="common practice, no source"
    )

    usable = line(
        "First to last dowel",
        "ft",
        Edge.length - TWO * Edge.clearance / IN_PER_FT,
        source="edge length less the end distance at both ends",
    )
    spaces = line(
        "Spaces per piece",
        "",
        when(is_given(Edge.spacing), round_up(largest(0, usable) * IN_PER_FT / Edge.spacing), 0),
        source="first to last dowel, over the spacing, rounded up",
    )
    short = line(
        "Dowels per short piece",
        "bar",
        when(both(is_given(Edge.spacing), Edge.length >= least_edge), 1, 0),
        source="one at the middle of a piece that is too short for two",
    )
    each = line(
        "Dowels per piece",
        "bar",
        when(both(is_given(Edge.spacing), usable >= least_usable), spaces + 1, short.count),
        source="spaces plus one",
    )
    dowels = line(
        "Dowels",
        "bar",
        each * Edge.repeats * Area.copies,
        source="dowels per piece times pieces times copies",
        adds=True,
    )
    real = line(
        "Spacing as laid out",
        "in",
        when(both(each > 1, spaces > 0), usable * IN_PER_FT / spaces, 0),
        source="first to last dowel, over the spaces; 0 for one dowel or none",
    )
    piece = line("Dowel length", "in", Edge.embed + Edge.projection, source="embedment plus projection")
    hole = line("Drill diameter", "in", if_given(Edge.hole, Edge.bar), source="input, else the bar diameter")
    glued = line(
        "Epoxied dowels",
        "bar",
        when(hole > Edge.bar, dowels, 0),
        source="dowels whose hole is larger than the bar",
        adds=True,
    )
    epoxy = line(
        "Epoxy volume",
        "in3",
        glued.count * PI * (hole * hole - Edge.bar * Edge.bar) / TWO / TWO * Edge.embed,
        source="geometry: annulus between hole and bar times embedment",
        adds=True,
    )
    cover = line(
        "Clear cover of the dowel",
        "in",
        (MeanThickness.mean - Edge.bar) / TWO,
        source="geometry: bar at mid-depth of the slab",
    )


class CuttingList(Section, title="Cutting list", each=EDGE, sheet="Order and placing"):
    """Each dowel size is cut from its own stock bars; the first edge with a size carries the bars of all such edges."""

    spare = factor("Spare dowels, share", "%", 5, low=0, high=10, source="common practice, no source")
    stock = factor(
        "Stock bar length",
        "in",
        240,
        low=120,
        high=480,
        source="common practice, no source: deformed bars and smooth rod are stocked in 20 ft lengths",
    )
    kerf = factor("Saw kerf", "in", 0.125, low=0.0625, high=0.25, source="common practice, no source")

    key = line(
        "Dowel size key",
        "in",
        rounded(DoweledEdge.piece, 3) * THOUSAND + rounded(Edge.bar, 3),
        source="one number for each length and bar diameter: length times 1,000, plus diameter",
    )
    alike = line(
        "Dowels of that size",
        "bar",
        group_total(DoweledEdge.dowels, key),
        source="sum of the edges with the same length and bar",
    )
    counts = line(
        "First edge of that size",
        "",
        when(equals(first_in_group(key), row_number(EDGE)), 1, 0),
        source="1 on the first edge with that dowel size",
    )
    counted = line("Dowels to cut, before spares", "bar", counts * alike, source="each dowel size once", adds=True)
    pieces = line(
        "Dowels to cut",
        "bar",
        round_up(counted * (1 + spare / PERCENT)),
        source="dowels of that size plus spares, rounded up",
        adds=True,
    )
    from_one = line(
        "Dowels per stock bar",
        "",
        round_down((stock + kerf) / (DoweledEdge.piece + kerf)),
        source="stock length over dowel length plus kerf, rounded down",
    )
    bars = line(
        "Stock bars to buy",
        "bar",
        when(both(pieces > 0, from_one > 0), round_up(pieces / from_one), 0),
        source="dowels to cut over dowels per stock bar, rounded up for each size",
        adds=True,
    )
    off_cut = line(
        "Offcut per bar",
        "in",
        largest(0, stock - from_one * (DoweledEdge.piece + kerf)),
        source="stock length less the dowels and kerfs cut from a full bar",
    )


class DowelNeeds(Section, title="Drilling and epoxy", sheet="Order and placing"):
    """Drill bits and epoxy cartridges."""

    holes_a_bit = factor(
        "Holes per drill bit", "bar/each", 40, low=20, high=80, source="common practice, no source: 3/8 in carbide bit"
    )
    dowels_a_tube = factor(
        "Dowels per epoxy cartridge",
        "bar/each",
        18,
        low=8,
        high=30,
        source="common practice, no source: the cartridge label wins",
    )

    dowels = line("Dowels, total", "bar", total(DoweledEdge.dowels), source="sum of the edges", may_be_overridden=True)
    bits = line(
        "Drill bits needed", "each", round_up(dowels / holes_a_bit), source="dowels over holes per bit, rounded up"
    )
    tubes = line(
        "Epoxy cartridges",
        "each",
        round_up(total(DoweledEdge.glued) / dowels_a_tube),
        source="epoxied dowels over dowels per cartridge, rounded up",
    )
