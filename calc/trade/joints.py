"""Joints, isolation strips and the rock base."""

from __future__ import annotations

from calc.declare import (
    FT3_PER_YD3,
    IN_PER_FT,
    PERCENT,
    TWO,
    Section,
    both,
    either,
    factor,
    if_given,
    is_given,
    largest,
    line,
    round_up,
    smallest,
    total,
    when,
)
from calc.trade.geometry import Border, Hole, Slab, Walk
from calc.trade.inputs import Site
from calc.trade.levels import AREA
from calc.trade.site_inputs import Measured


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
        source="PCA and ACI 302, at most 1.5, seen in print; 1.25 is better",
    )
    least_spacing = factor(
        "Least spacing by width", "ft", 4, low=3, high=5, source="common practice, no source: for narrow strips"
    )
    most_spacing = factor("Most spacing", "ft", 15, low=10, high=18, source="NRMCA CIP 6, 15 ft, seen in print")

    walked = line("Length walked", "ft", total(Walk.gap, AREA), source="last stop less first")
    shape_run = line(
        "Run by the shape",
        "ft",
        when(Measured.shape.is_("strip"), Slab.length, when(Measured.shape.is_("stations"), walked, 0)),
        source="a strip's length, a walk's length; other shapes must be typed",
    )
    run = line("Run", "ft", if_given(Measured.run, shape_run), source="typed, else by the shape")
    shape_width = line(
        "Width by the shape",
        "ft",
        when(
            Measured.shape.is_("strip"),
            Slab.width_sum / TWO,
            when(both(Measured.shape.is_("stations"), walked > 0), Slab.gross_area / walked, 0),
        ),
        source="the mean width",
    )
    width = line("Panel width", "ft", if_given(Measured.panel_width, shape_width), source="typed, else by the shape")
    spacing = line(
        "Most between joints",
        "ft",
        smallest(by_thickness * Measured.thickness / IN_PER_FT, largest(by_width * width, least_spacing), most_spacing),
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
                    both(is_given(Measured.run), is_given(Measured.panel_width)),
                    both(shape_run > 0, shape_width > 0),
                ),
            ),
            1,
            0,
        ),
        source="1 where both are",
    )
    panels = line(
        "Panels",
        "",
        when(known > 0, largest(1, round_up(run / spacing)), 0),
        source="run over the spacing, rounded up",
    )
    joints = line("Joints of one copy", "", largest(0, panels - 1), source="one less than the panels")
    longest = line(
        "Panel length", "ft", when(panels > 0, run / largest(1, panels), 0), source="the run, divided evenly"
    )
    length = line(
        "Joints, length",
        "ft",
        joints * width * Measured.copies,
        source="joints times panel width times copies",
        adds=True,
    )


class HoleIsolation(Section, title="Isolation round holes", each=AREA, sheet="Order and placing"):
    """Round what stands in the slab, on every copy."""

    length = line(
        "Isolation round holes",
        "ft",
        total(Hole.isolation, AREA) * Measured.copies,
        source="sum of the holes, times copies",
        adds=True,
    )


class JointNeeds(Section, title="Joint depth and strips", sheet="Order and placing"):
    """What the joints are cut to, and the strips that keep the slab from what it must not push."""

    depth_share = factor(
        "Joint depth over thickness",
        "%",
        25,
        low=20,
        high=34,
        source="ACI 302.1R and NRMCA CIP 6, a quarter and 1 in at least, partly from memory",
    )
    least_depth = factor("Least joint depth", "in", 1, low=0.75, high=1.5, source="as above, partly from memory")
    strip_length = factor("Isolation strip", "ft/each", 10, low=5, high=10, source="common practice, no source")

    isolation = line(
        "Isolation, length",
        "ft",
        total(Border.isolated) + total(HoleIsolation.length),
        source="walls, buildings and flagged edges, and round the holes",
    )
    strips = line("Isolation strips", "each", round_up(isolation / strip_length), source="length over one strip")
    saw = line(
        "Saw cut for joints",
        "ft",
        when(Site.joint_making.is_("sawn"), total(Panel.length), 0),
        source="only where the joints are sawn",
    )


class Base(Section, title="Rock base", each=AREA, sheet="Order and placing"):
    """Compacted rock under the slab."""

    compacted = line(
        "Base, compacted",
        "yd3",
        Slab.net_area * Measured.base / IN_PER_FT / FT3_PER_YD3,
        source="area times depth",
        adds=True,
    )


class BaseNeeds(Section, title="Base to buy", sheet="Order and placing"):
    """Weighed and bought by the half ton."""

    weight = factor("Base per compacted yard", "ton/yd3", 1.9, low=1.85, high=2.05, source="common practice, no source")
    waste = factor("Waste of base", "%", 5, low=0, high=10, source="common practice, no source")
    step = factor("Step of the rock yard", "ton", 0.5, low=0.25, high=1, source="common practice, no source")

    tons = line(
        "Base needed", "ton", total(Base.compacted) * weight * (1 + waste / PERCENT), source="volume, weight and waste"
    )
    buy = line("Base to buy", "ton", round_up(tons, to=step), source="up to the step of the rock yard")
