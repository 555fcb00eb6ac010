"""Digging and plants: what is dug, how much of it there is loose, and what it weighs.

Weight goes by the bank volume, so that swell never changes it. Digging goes by the nominal thickness.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import Area
from calc.trade.inputs.job import Job, Site
from calc.trade.inputs.removal import Plant
from calc.trade.levels import AREA, MOISTURE, PLANT, SOIL
from calc.trade.takeoff.geometry import EdgeTakeoff, Slab
from calc.trade.takeoff.old_concrete import OldFooting, OldSlab


class Soil(Section, title="Soils", each=SOIL):
    """Soil as it lies in the ground; published tables scatter by 15 %."""

    weight = factors(
        "Weight of soil in the bank",
        "lb/yd3",
        2500,
        2900,
        3300,
        3000,
        3200,
        source="common practice, no source; a textbook table has clay 3,000, earth 3,100, sand and gravel 3,200, "
        "partly from memory",
    )
    swell = factors(
        "Swell of soil",
        "%",
        25,
        25,
        33,
        12,
        12,
        source="within the ranges of a construction planning textbook, table 4-1, seen in print: topsoil 10 to 25, "
        "loam 10 to 35, clay 30 to 60, clean sand or gravel 5 to 15; an army table has sand 11, clay 43, partly from "
        "memory",
    )


class Wetness(Section, title="Moisture", each=MOISTURE):
    """Water adds weight, not volume."""

    times = factors(
        "Weight by moisture",
        "",
        0.92,
        1,
        1.15,
        source="common practice, no source: dry 0.92, wet 1.10 to 1.25; CalRecycle has wet gravel 1.2 and wet sand 1.3 "
        "times the dry, seen in print",
    )


class Dig(Section, title="Dig", each=AREA, sheet="Dig and haul"):
    """What is dug for each area, before root balls."""

    room = factor(
        "Working room along forms", "ft", 0.25, low=0.25, high=0.5, source="common practice, no source: 3 to 6 in"
    )

    depth = line(
        "Dig depth",
        "in",
        largest(0, Area.thickness + Area.base - Area.height_above_grade),
        source="nominal thickness and base, less how far the top stands above the dirt",
    )
    formed = line(
        "Formed edge", "ft", total(EdgeTakeoff.formed, AREA), source="sum of the edges that are formed", adds=True
    )
    area = line(
        "Area dug",
        "ft2",
        Slab.net_area + room * formed,
        source="net area and the working room; the working room is not concrete",
        adds=True,
    )
    hole = line("Hole", "yd3", area * depth / IN_PER_FT / FT3_PER_YD3, source="area dug times dig depth", adds=True)
    not_soil = line(
        "Of it old concrete",
        "yd3",
        OldSlab.solid + total(OldFooting.dug, AREA),
        source="old slab and footings in the dig are not soil",
        adds=True,
    )
    bank = line(
        "Soil in the bank",
        "yd3",
        largest(0, hole - not_soil),
        source="the hole, less the old concrete in it",
        adds=True,
    )
    backfill = line(
        "Backfill along forms",
        "yd3",
        formed * room * depth / IN_PER_FT / FT3_PER_YD3,
        source="what goes back along the forms",
        adds=True,
    )


class Green(Section, title="Plants", each=PLANT, sheet="Dig and haul"):
    """Brush that is cut and stomped into the trailer, and root balls, which are bowls and not cylinders."""

    stomped = factor("Stomped brush over its outline", "%", 25, low=15, high=40, source="common practice, no source")
    bowl = factor("Root ball over its cylinder", "%", 67, low=60, high=75, source="common practice, no source: a bowl")

    brush = line(
        "Brush, loose",
        "yd3",
        Plant.quantity * Plant.width * Plant.depth * Plant.height / FT3_PER_YD3 * stomped / PERCENT,
        source="outline times what is left of it when stomped",
        adds=True,
    )
    balls = line(
        "Root balls, in the bank",
        "yd3",
        Plant.quantity * PI * Plant.ball / TWO * Plant.ball / TWO * Plant.ball_height / FT3_PER_YD3 * bowl / PERCENT,
        source="cylinders times the share that a bowl fills",
        adds=True,
    )


class Spoil(Section, title="Soil and green", sheet="Dig and haul"):
    """The two piles of the dig. A root ball is in the green pile, so it is taken off the soil."""

    root_swell = factor("Swell of root balls", "%", 10, low=5, high=20, source="common practice, no source")
    brush_weight = factor(
        "Weight of loose brush",
        "lb/yd3",
        350,
        low=250,
        high=600,
        source="between 250 (US EPA 2016) and 600 (CalRecycle) lb/yd3 loose, 640 compacted (Oregon DEQ), seen in print",
    )
    ball_weight = factor(
        "Weight of root balls", "lb/yd3", 1100, low=900, high=1600, source="common practice, no source"
    )

    bank = line(
        "Soil, in the bank",
        "yd3",
        largest(
            0,
            total(Dig.bank) - total(Green.balls) - when(Site.keep_backfill.is_("yes"), total(Dig.backfill), 0),
        ),
        source="dug, less root balls, less the backfill that stays where it is kept on the site",
        may_be_overridden=True,
    )
    loose = line(
        "Soil, loose",
        "yd3",
        bank * (1 + look_up(Soil.swell, Job.soil) / PERCENT),
        source="bank volume and its swell",
    )
    tons = line(
        "Soil, weight",
        "ton",
        bank * look_up(Soil.weight, Job.soil) * look_up(Wetness.times, Site.moisture) / LB_PER_TON,
        source="bank volume times its weight and its moisture: swell never changes it",
    )
    green_loose = line(
        "Green, loose",
        "yd3",
        total(Green.brush) + total(Green.balls) * (1 + root_swell / PERCENT),
        source="stomped brush, and root balls with their swell",
    )
    green_tons = line(
        "Green, weight",
        "ton",
        (total(Green.brush) * brush_weight + total(Green.balls) * ball_weight) / LB_PER_TON,
        source="brush by its loose volume, root balls by theirs in the bank",
    )
