"""Old concrete: footings that the new slab passes over, and old slab that is taken out."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import Area
from calc.trade.inputs.removal import Footing
from calc.trade.levels import AREA, FOOTING
from calc.trade.takeoff.geometry import MeanThickness


class OldFooting(Section, title="Old footings", each=FOOTING, sheet="Dig and haul"):
    """Chipped down until the cover that is wanted lies over it; what is left displaces new concrete."""

    over_chip = factor(
        "Over-chip",
        "in",
        0,
        low=0,
        high=1,
        source="common practice, no source: the extra depth that a breaker takes",
    )

    plan = line(
        "Footing in plan",
        "ft2",
        Footing.length * Footing.width * Area.quantity,
        source="length times width times copies",
        adds=True,
    )
    chip = line(
        "Chip depth",
        "in",
        largest(0, Footing.required_cover - Footing.depth_to_top),
        source="cover wanted less the cover there is",
    )
    cover = line("Cover after chipping", "in", Footing.depth_to_top + chip, source="the old cover and the chipping")
    chipped = line(
        "Chipped out",
        "yd3",
        when(chip > 0, plan * (chip + over_chip) / IN_PER_FT / FT3_PER_YD3, 0),
        source="plan times chip depth and over-chip",
        adds=True,
    )
    displaced = line(
        "New concrete displaced",
        "yd3",
        plan * largest(0, MeanThickness.mean - cover) / IN_PER_FT / FT3_PER_YD3,
        source="what the footing still takes up within the slab; a deep footing displaces nothing",
        adds=True,
    )
    dug = line(
        "Footing within the dig",
        "yd3",
        plan
        * largest(0, Area.thickness + Area.base - largest(Area.height_above_grade, Footing.depth_to_top))
        / IN_PER_FT
        / FT3_PER_YD3,
        source="not soil, so it is not dug: from the dirt or its top, whichever is deeper, to the dig's floor",
        adds=True,
    )
    side = line(
        "Side faces",
        "ft2",
        Footing.sides * Footing.length * Area.quantity * largest(0, MeanThickness.mean - largest(0, cover)) / IN_PER_FT,
        source="exposed sides times length times what stands within the slab",
    )
    bonded = line(
        "Bonded face of one coat",
        "ft2",
        when(both(Footing.treatment.is_("bonding agent"), cover < MeanThickness.mean), plan + side, 0),
        source="its top and the sides that the new slab touches; none at or below the slab's underside",
        adds=True,
    )


class OldSlab(Section, title="Old slab", each=AREA, sheet="Dig and haul"):
    """Old slab that is broken out of the dig."""

    solid = line(
        "Old slab, solid",
        "yd3",
        Area.old_slab * Area.quantity * Area.old_slab_thickness / IN_PER_FT / FT3_PER_YD3,
        source="area times thickness times copies",
        adds=True,
    )


class Rubble(Section, title="Old concrete", sheet="Dig and haul"):
    """What leaves the site as broken concrete. Weight goes by the solid volume, room by the loose."""

    bulking = factor(
        "Bulking of broken concrete",
        "%",
        60,
        low=50,
        high=70,
        source="common practice, no source; 2,400 lb/yd3 loose (CalRecycle, seen in print) against 4,050 solid is 69 %",
    )
    weight = factor(
        "Weight of concrete",
        "lb/yd3",
        4050,
        low=3900,
        high=4200,
        source="150 lb/ft3, the usual figure for normal-weight concrete, seen in print; 860 (US EPA 2016) and 1,400 "
        "(USGBC 2009) lb/yd3 are a bin of it and loose rubble, not the solid",
    )

    solid = line(
        "Old concrete, solid",
        "yd3",
        total(OldFooting.chipped) + total(OldSlab.solid),
        source="chipped footings and old slab",
    )
    loose = line("Old concrete, loose", "yd3", solid * (1 + bulking / PERCENT), source="solid and its bulking")
    tons = line("Old concrete, weight", "ton", solid * weight / LB_PER_TON, source="solid volume times its weight")
