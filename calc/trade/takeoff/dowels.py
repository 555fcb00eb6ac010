"""Dowels: count by edge, cutting list, drilling and epoxy."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import Area, Edge
from calc.trade.levels import EDGE
from calc.trade.takeoff.geometry import MeanThickness

THOUSAND = exact(1000)


class DoweledEdge(Section, title="Dowels by edge", each=EDGE, sheet="Order and placing"):
    """The spacing typed is a maximum: the count is rounded up, and the spacing as laid out is a little less."""

    min_length_for_two = factor(
        "Minimum length for two dowels", "ft", 0.5, low=0.25, high=1, source="common practice, no source"
    )
    min_length_for_one = factor(
        "Minimum edge length for one dowel", "ft", 1, low=0.5, high=2, source="common practice, no source"
    )

    first_to_last = line(
        "First to last dowel",
        "ft",
        Edge.length - TWO * Edge.end_distance / IN_PER_FT,
        source="edge length less the end distance at both ends",
    )
    spaces = line(
        "Spaces per piece",
        "",
        when(is_given(Edge.spacing), round_up(largest(0, first_to_last) * IN_PER_FT / Edge.spacing), 0),
        source="first to last dowel, over the spacing, rounded up",
    )
    per_short_piece = line(
        "Dowels per short piece",
        "bar",
        when(both(is_given(Edge.spacing), Edge.length >= min_length_for_one), 1, 0),
        source="one at the middle of a piece that is too short for two",
    )
    per_piece = line(
        "Dowels per piece",
        "bar",
        when(both(is_given(Edge.spacing), first_to_last >= min_length_for_two), spaces + 1, per_short_piece.count),
        source="spaces plus one",
    )
    dowels = line(
        "Dowels",
        "bar",
        per_piece * Edge.quantity * Area.quantity,
        source="dowels per piece times pieces times copies",
        adds=True,
    )
    spacing_as_laid_out = line(
        "Spacing as laid out",
        "in",
        when(both(per_piece > 1, spaces > 0), first_to_last * IN_PER_FT / spaces, 0),
        source="first to last dowel, over the spaces; 0 for one dowel or none",
    )
    dowel_length = line("Dowel length", "in", Edge.embedment + Edge.projection, source="embedment plus projection")
    drill_diameter = line(
        "Drill diameter", "in", if_given(Edge.drill_diameter, Edge.bar_diameter), source="input, else the bar diameter"
    )
    epoxied = line(
        "Epoxied dowels",
        "bar",
        when(drill_diameter > Edge.bar_diameter, dowels, 0),
        source="dowels whose hole is larger than the bar",
        adds=True,
    )
    epoxy_volume = line(
        "Epoxy volume",
        "in3",
        epoxied.count
        * PI
        * (drill_diameter * drill_diameter - Edge.bar_diameter * Edge.bar_diameter)
        / TWO
        / TWO
        * Edge.embedment,
        source="geometry: annulus between hole and bar times embedment",
        adds=True,
    )
    cover = line(
        "Clear cover of the dowel",
        "in",
        (MeanThickness.mean - Edge.bar_diameter) / TWO,
        source="geometry: bar at mid-depth of the slab",
    )


class CuttingList(Section, title="Cutting list", each=EDGE, sheet="Order and placing"):
    """Each dowel size is cut from its own stock bars; the first edge with a size carries the bars of all such edges."""

    spare_share = factor("Spare dowels, share", "%", 5, low=0, high=10, source="common practice, no source")
    stock_length = factor(
        "Stock bar length",
        "in",
        240,
        low=120,
        high=480,
        source="common practice, no source: deformed bars and smooth rod are stocked in 20 ft lengths",
    )
    kerf = factor("Saw kerf", "in", 0.125, low=0.0625, high=0.25, source="common practice, no source")

    size_key = line(
        "Dowel size key",
        "",
        correlation(
            "",
            lambda length, bar: rounded(length, 3) * THOUSAND + rounded(bar, 3),
            DoweledEdge.dowel_length,
            Edge.bar_diameter,
            source="a key, no measure: both in inches",
        ),
        source="one number for each length and bar diameter: length times 1,000, plus diameter",
    )
    same_size = line(
        "Dowels of that size",
        "bar",
        group_total(DoweledEdge.dowels, size_key),
        source="sum of the edges with the same length and bar",
    )
    is_first = line(
        "First edge of that size",
        "",
        when(equals(first_in_group(size_key), row_number(EDGE)), 1, 0),
        source="1 on the first edge with that dowel size",
    )
    before_spares = line(
        "Dowels to cut, before spares", "bar", is_first * same_size, source="each dowel size once", adds=True
    )
    dowels_to_cut = line(
        "Dowels to cut",
        "bar",
        round_up(before_spares * (1 + spare_share / PERCENT)),
        source="dowels of that size plus spares, rounded up",
        adds=True,
    )
    dowels_per_bar = line(
        "Dowels per stock bar",
        "",
        round_down((stock_length + kerf) / (DoweledEdge.dowel_length + kerf)),
        source="stock length over dowel length plus kerf, rounded down",
    )
    bars = line(
        "Stock bars to buy",
        "bar",
        when(both(dowels_to_cut > 0, dowels_per_bar > 0), round_up(dowels_to_cut / dowels_per_bar), 0),
        source="dowels to cut over dowels per stock bar, rounded up for each size",
        adds=True,
    )


class DowelNeeds(Section, title="Drilling and epoxy", sheet="Order and placing"):
    """Drill bits and epoxy cartridges."""

    holes_per_bit = factor(
        "Holes per drill bit", "bar/each", 40, low=20, high=80, source="common practice, no source: 3/8 in carbide bit"
    )
    dowels_per_cartridge = factor(
        "Dowels per epoxy cartridge",
        "bar/each",
        18,
        low=8,
        high=30,
        source="common practice, no source: the cartridge label wins",
    )

    dowels = line(
        "Dowels, total",
        "bar",
        total(DoweledEdge.dowels),
        source="sum of the edges",
        may_be_overridden=Limits(low=0, high=10_000, ask_high=500, whole=True),
    )
    bits = line(
        "Drill bits needed", "each", round_up(dowels / holes_per_bit), source="dowels over holes per bit, rounded up"
    )
    cartridges = line(
        "Epoxy cartridges",
        "each",
        round_up(total(DoweledEdge.epoxied) / dowels_per_cartridge),
        source="epoxied dowels over dowels per cartridge, rounded up",
    )
