"""Every section, in the order in which the rules follow from each other."""

from __future__ import annotations

from calc.declare import Section
from calc.trade.base import Base, BaseNeeds
from calc.trade.bid import Decisions
from calc.trade.cautions import Cautions
from calc.trade.checks import Integrity
from calc.trade.concrete import Concrete, Load, Order
from calc.trade.dig import Dig, Green, Soil, Spoil, Wetness
from calc.trade.dowels import Cut, Doweled, DowelNeeds
from calc.trade.fiber import Dose, FiberKind, FiberTotal, TruckFiber
from calc.trade.geometry import Border, Depth, Hole, Outline, Slab, Walk
from calc.trade.haul import Bed, First, Pile
from calc.trade.inputs import Company, Disposal, Job, Site, Vehicle, Wage, Wording
from calc.trade.joint_list import Eighths, JointPlace, Slot
from calc.trade.joints import HoleIsolation, JointDepth, JointNeeds, Matched, OldJoint, Panel
from calc.trade.old_concrete import OldFooting, OldSlab, Rubble
from calc.trade.removal_inputs import Footing, Plant
from calc.trade.site_inputs import Corner, Deduction, Edge, Measured, Station
from calc.trade.surface import BONDING_PACKS, CURING_PACKS, SEALER_PACKS, Bonding, Curing, Sealer

HOUSE = (Company, Vehicle, Disposal, Wage, Wording)
INPUTS = (*HOUSE, Job, Site, Measured, Station, Corner, Deduction, Edge, Footing, Plant)
TAKEOFF = (Walk, Outline, Hole, Slab, Depth, Border, OldFooting, OldSlab, Rubble, Concrete)
HAUL = (Soil, Wetness, Dig, Green, Spoil, Bed, First, Pile)
ORDER = (Order, Load, FiberKind, Dose, TruckFiber, FiberTotal, Doweled, Cut, DowelNeeds)
LIQUIDS: tuple[type[Section], ...] = (
    Bonding,
    *BONDING_PACKS.sections,
    Curing,
    *CURING_PACKS.sections,
    Sealer,
    *SEALER_PACKS.sections,
)
JOINTS = (Panel, OldJoint, Matched, Eighths, Slot, JointPlace, HoleIsolation, JointDepth, JointNeeds, Base, BaseNeeds)
WATCH = (Integrity, Cautions, Decisions)

SECTIONS: tuple[type[Section], ...] = (*INPUTS, *TAKEOFF, *HAUL, *ORDER, *LIQUIDS, *JOINTS, *WATCH)
"""The catalog. A section may use only what stands before it."""
