"""Excavation and clearing: bank volume, loose volume and weight of the soil and green waste.

Weight follows from the bank volume, so swell never changes it. The excavation follows from the nominal thickness.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import Area
from calc.trade.inputs.job import Job, Site
from calc.trade.inputs.removal import Plant
from calc.trade.levels import AREA, MOISTURE, PLANT, SOIL
from calc.trade.takeoff.geometry import EdgeTakeoff, MeanThickness, Slab
from calc.trade.takeoff.old_concrete import OldFooting, OldSlab


class Soil(Section, title="Soils", each=SOIL):
    """Soil in its natural (bank) state; published densities scatter by 15 %."""

    density = factors(
        "Soil density, bank",
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
        "Soil swell, bank to loose",
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


class Moisture(Section, title="Moisture", each=MOISTURE):
    """Moisture adds weight, not volume."""

    weight_factor = factors(
        "Moisture factor",
        "",
        0.92,
        1,
        1.15,
        source="common practice, no source: dry 0.92, wet 1.10 to 1.25; CalRecycle has wet gravel 1.2 and wet sand 1.3 "
        "times the dry, seen in print",
    )


class Excavation(Section, title="Excavation", each=AREA, sheet="Dig and haul"):
    """Excavation of each area, before root balls are taken off."""

    overdig = factor(
        "Overdig along forms", "ft", 0.25, low=0.25, high=0.5, source="common practice, no source: 3 to 6 in"
    )

    depth = line(
        "Excavation depth",
        "in",
        largest(0, MeanThickness.by_dimensions + Area.base - Area.height_above_grade),
        source="thickness as planned, of a taper its mean, plus base, less the height above grade",
    )
    formed = line(
        "Formed edge length", "ft", total(EdgeTakeoff.formed, AREA), source="sum of the formed edges", adds=True
    )
    area = line(
        "Excavation area",
        "ft2",
        Slab.net_area + overdig * formed,
        source="net area plus the overdig along forms; the overdig takes no concrete",
        adds=True,
    )
    volume = line(
        "Excavation volume",
        "yd3",
        area * depth / IN_PER_FT / FT3_PER_YD3,
        source="excavation area times excavation depth",
        adds=True,
    )
    below_top = line(
        "Volume from the top of the slab to the bottom of the dig",
        "yd3",
        Slab.net_area * (depth + Area.height_above_grade) / IN_PER_FT / FT3_PER_YD3,
        source="net area times excavation depth and height above grade",
        adds=True,
    )
    slab_and_base = line(
        "Slab and base as planned",
        "yd3",
        Slab.net_area * (MeanThickness.by_dimensions + Area.base) / IN_PER_FT / FT3_PER_YD3,
        source="net area times thickness as planned and base",
        adds=True,
    )
    old_concrete = line(
        "Old concrete in the excavation",
        "yd3",
        OldSlab.solid + total(OldFooting.in_excavation, AREA),
        source="old slab and footings in the excavation are not soil",
        adds=True,
    )
    bank = line(
        "Excavated soil, bank volume",
        "yd3",
        largest(0, volume - old_concrete),
        source="excavation volume less the old concrete in it",
        adds=True,
    )
    backfill = line(
        "Backfill along forms",
        "yd3",
        formed * overdig * depth / IN_PER_FT / FT3_PER_YD3,
        source="formed edge times overdig times excavation depth",
        adds=True,
    )


class GreenWaste(Section, title="Vegetation to clear", each=PLANT, sheet="Dig and haul"):
    """Brush, cut and compacted into the trailer, and root balls, which are bowl-shaped."""

    compacted_share = factor(
        "Compacted brush, share of its outline", "%", 25, low=15, high=40, source="common practice, no source"
    )
    ball_share = factor(
        "Root ball, share of its cylinder",
        "%",
        67,
        low=60,
        high=75,
        source="common practice, no source; a half ellipsoid fills 67 % of its cylinder",
    )

    brush = line(
        "Brush, loose volume",
        "yd3",
        Plant.quantity * Plant.width * Plant.depth * Plant.height / FT3_PER_YD3 * compacted_share / PERCENT,
        source="width times depth times height, times the share left after compaction",
        adds=True,
    )
    root_balls = line(
        "Root balls, bank volume",
        "yd3",
        Plant.quantity
        * PI
        * Plant.ball
        / TWO
        * Plant.ball
        / TWO
        * Plant.ball_height
        / FT3_PER_YD3
        * ball_share
        / PERCENT,
        source="cylinder of the ball times the share that the ball fills",
        adds=True,
    )


class Spoil(Section, title="Soil", sheet="Dig and haul"):
    """The soil of the excavation. A root ball goes to the green-waste pile, so it is deducted from the soil."""

    bank = line(
        "Soil to haul, bank volume",
        "yd3",
        largest(
            0,
            total(Excavation.bank)
            - total(GreenWaste.root_balls)
            - when(Site.keep_backfill.is_("yes"), total(Excavation.backfill), 0),
        ),
        source="excavated soil, less root balls, less the backfill that is kept on site",
        may_be_overridden=Limits(low=0, high=10_000, ask_high=200),
    )
    loose = line(
        "Soil to haul, loose volume",
        "yd3",
        bank * (1 + look_up(Soil.swell, Job.soil) / PERCENT),
        source="bank volume times (1 + swell)",
    )
    tons = line(
        "Soil to haul, tons",
        "ton",
        bank * look_up(Soil.density, Job.soil) * look_up(Moisture.weight_factor, Site.moisture) / LB_PER_TON,
        source="bank volume times density times moisture factor; swell never changes it",
    )


class GreenSpoil(Section, title="Green waste", sheet="Dig and haul", needs=PLANT):
    """The plants that are cleared, as they are hauled."""

    root_swell = factor("Root ball swell, bank to loose", "%", 10, low=5, high=20, source="common practice, no source")
    brush_density = factor(
        "Brush density, loose",
        "lb/yd3",
        350,
        low=250,
        high=600,
        source="between 250 (US EPA, Volume-to-Weight Conversion Factors, 2016) and 600 (CalRecycle) lb/yd3 loose, 640 "
        "compacted (Oregon DEQ), seen in print",
    )
    ball_density = factor(
        "Root ball density, bank", "lb/yd3", 1100, low=900, high=1600, source="common practice, no source"
    )

    loose = line(
        "Green waste, loose volume",
        "yd3",
        total(GreenWaste.brush) + total(GreenWaste.root_balls) * (1 + root_swell / PERCENT),
        source="compacted brush, plus root balls with their swell",
    )
    tons = line(
        "Green waste, tons",
        "ton",
        (total(GreenWaste.brush) * brush_density + total(GreenWaste.root_balls) * ball_density) / LB_PER_TON,
        source="brush by loose volume, root balls by bank volume",
    )
