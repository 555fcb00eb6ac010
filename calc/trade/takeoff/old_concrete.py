"""Old concrete: footings under the new slab, and old slab to be removed."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import Area
from calc.trade.inputs.removal import Footing
from calc.trade.levels import AREA, FOOTING
from calc.trade.takeoff.geometry import MeanThickness


class OldFooting(Section, title="Old footings", each=FOOTING, sheet="Dig and haul"):
    """Chipped down to the required cover; what is left of a footing displaces new concrete."""

    over_break = factor(
        "Over-break below the chipped depth",
        "in",
        0,
        low=0,
        high=1,
        source="common practice, no source: extra depth that a demolition hammer breaks out",
    )

    plan_area = line(
        "Footing plan area",
        "ft2",
        Footing.length * Footing.width * Area.quantity,
        source="length times width times quantity of the area",
        adds=True,
    )
    chip_depth = line(
        "Chipping depth",
        "in",
        largest(0, Footing.required_cover - Footing.depth_to_top),
        source="required cover less depth to top of footing",
    )
    cover = line(
        "Cover after chipping",
        "in",
        Footing.depth_to_top + chip_depth,
        source="depth to top of footing plus chipping depth",
    )
    chipped_volume = line(
        "Chipped concrete volume",
        "yd3",
        when(chip_depth > 0, plan_area * (chip_depth + over_break) / IN_PER_FT / FT3_PER_YD3, 0),
        source="plan area times (chipping depth plus over-break)",
        adds=True,
    )
    displaced = line(
        "New concrete displaced",
        "yd3",
        plan_area * largest(0, MeanThickness.mean - cover) / IN_PER_FT / FT3_PER_YD3,
        source="part of the footing that is still within the slab; a deep footing displaces none",
        adds=True,
    )
    in_excavation = line(
        "Footing volume within the excavation",
        "yd3",
        plan_area
        * largest(0, MeanThickness.by_dimensions + Area.base - largest(Area.height_above_grade, Footing.depth_to_top))
        / IN_PER_FT
        / FT3_PER_YD3,
        source="not soil: from grade or top of footing, whichever is deeper, to the bottom of the excavation",
        adds=True,
    )
    side_area = line(
        "Exposed side faces",
        "ft2",
        Footing.sides * Footing.length * Area.quantity * largest(0, MeanThickness.mean - largest(0, cover)) / IN_PER_FT,
        source="exposed sides times length times height within the slab",
    )
    bonded_area = line(
        "Bonded face, per coat",
        "ft2",
        when(both(Footing.treatment.is_("bonding agent"), cover < MeanThickness.mean), plan_area + side_area, 0),
        source="top and sides in contact with the new slab; none at or below the bottom of the slab",
        adds=True,
    )


class OldSlab(Section, title="Old slab removal", each=AREA, sheet="Dig and haul"):
    """Old slab that is broken out of the excavation."""

    solid = line(
        "Old slab, solid volume",
        "yd3",
        Area.old_slab * Area.quantity * Area.old_slab_thickness / IN_PER_FT / FT3_PER_YD3,
        source="area times thickness times quantity",
        adds=True,
    )


class ConcreteDebris(Section, title="Concrete debris", sheet="Dig and haul"):
    """Broken concrete that is hauled away: weight follows the solid volume, truck space the loose volume."""

    swell = factor(
        "Swell of broken concrete",
        "%",
        60,
        low=50,
        high=70,
        source="common practice, no source; 2,400 lb/yd3 loose (CalRecycle, seen in print) against 4,050 solid is 69 %",
    )
    density = factor(
        "Density of concrete",
        "lb/yd3",
        4050,
        low=3900,
        high=4200,
        source="150 lb/ft3, the usual value for normal-weight concrete, seen in print; 860 (US EPA 2016) and 1,400 "
        "(USGBC 2009) lb/yd3 are for debris in a bin and loose rubble, not solid concrete",
    )

    solid = line(
        "Concrete debris, solid volume",
        "yd3",
        total(OldFooting.chipped_volume) + total(OldSlab.solid),
        source="chipped footings plus old slab",
    )
    loose = line(
        "Concrete debris, loose volume", "yd3", solid * (1 + swell / PERCENT), source="solid volume times (1 + swell)"
    )
    tons = line("Concrete debris, tons", "ton", solid * density / LB_PER_TON, source="solid volume times density")
