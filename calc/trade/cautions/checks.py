"""Integrity: numbers that two routes must agree on."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.loads import Hauled, Hauler
from calc.trade.hauling.piles import Pile
from calc.trade.materials.fiber import FiberDose, FiberTotal, TruckFiber
from calc.trade.materials.liquids import BONDING_PACKS, CURING_PACKS, SEALER_PACKS, Bonding, Curing, Sealer
from calc.trade.materials.packs import Packs
from calc.trade.ordering.order import Load, Order
from calc.trade.takeoff.dig import Dig
from calc.trade.takeoff.dowels import CuttingList, DoweledEdge
from calc.trade.takeoff.joint_list import JointPlace
from calc.trade.takeoff.joints import Matched

ONE_LOAD, ONE_PACK, ONE_BAG = exact(1, "load"), exact(1, "pack"), exact(1, "bag") * FiberDose.bag
_FIBER_OVER = FiberTotal.bags * FiberDose.bag - Order.placed * FiberDose.per_yard
"""The fiber that is bought, over what all that is ordered or mixed takes."""

_BATCHES = when(Order.bags > 0, 1, 0)
"""All that is mixed on the site counts as one batch."""


def _outside(value: Expr, most: Expr) -> Expr:
    """How far a number lies below 0, or above ``most``."""
    return largest(0, -value) + largest(0, value - most)


def _packs_off(packs: Packs, need: Line, small: Price, large: Price) -> Expr:
    """The gallons that the packs to buy are short by; or what the least of them holds, where one less would do."""
    held = packs.small * if_given(small.size, 0) + packs.large * if_given(large.size, 0)
    least_pack = ONE_PACK * when(packs.small > 0, if_given(small.size, 0), if_given(large.size, 0))
    too_many = both(held > 0, held - least_pack >= need)
    return when(packs.can_win > 0, largest(0, need - held) + when(too_many, least_pack, 0), 0)


class Integrity(Section, title="Integrity", sheet="Checks"):
    """Each row reaches one number by two routes: 0 is well, 1 is a miss."""

    tolerance = factor(
        "Tolerance of the checks",
        "",
        0.000001,
        low=0,
        high=0.01,
        source="house rule: a millionth, as in every comparison",
    )

    trucks = check(
        "Trucks fit the list (a miss: list too short, run flatwork again)",
        "truck",
        Order.trucks,
        total(Load.rides),
        tolerance,
    )
    loads = check("The trucks carry the order", "yd3", Order.quantity, total(Load.yards), tolerance)
    fiber = check(
        "No truck is short of fiber, nor has a bag too many",
        "lb",
        largest(0, -least(TruckFiber.spare)) + when(greatest(TruckFiber.spare) >= ONE_BAG, ONE_BAG, 0),
        0 * FiberDose.weight,
        tolerance,
    )
    fiber_bought = check(
        "The fiber bought is the dose of all that is poured, and less than a bag over for each truck, unless forced",
        "lb",
        when(FiberTotal.bags.is_overridden, 0, _outside(_FIBER_OVER, (Order.trucks.count + _BATCHES) * ONE_BAG)),
        0 * FiberDose.weight,
        tolerance,
    )
    curing = check(
        "The curing packs hold the need",
        "gal",
        _packs_off(CURING_PACKS, Curing.need, Curing.small, Curing.large),
        0 * Curing.need,
        tolerance,
    )
    bonding = check(
        "The bonding packs hold the need",
        "gal",
        _packs_off(BONDING_PACKS, Bonding.need, Bonding.small, Bonding.large),
        0 * Bonding.need,
        tolerance,
    )
    sealer = check(
        "The sealer packs hold the need",
        "gal",
        _packs_off(SEALER_PACKS, Sealer.need, Sealer.small, Sealer.large),
        0 * Sealer.need,
        tolerance,
    )
    hole = check(
        "Soil and old concrete fill the hole (a miss: more old concrete than hole)",
        "yd3",
        total(Dig.hole),
        total(Dig.bank) + total(Dig.not_soil),
        tolerance,
    )
    overweight = check(
        "No load is over the payload",
        "ton",
        when(Hauler.payload > 0, largest(0, greatest(Hauled.on_one) * ONE_LOAD - Hauler.payload), 0),
        0 * total(Pile.tons),
        tolerance,
    )
    hauled = check("Everything is hauled once", "ton", total(Pile.tons), total(Hauled.tons), tolerance)
    joints = check(
        "Joints fit the list (a miss: list too short, run flatwork again)",
        "",
        total(Matched.joints),
        total(JointPlace.used),
        tolerance,
    )
    dowels = check(
        "Every dowel is on the cutting list once",
        "bar",
        total(DoweledEdge.dowels),
        total(CuttingList.counted),
        tolerance,
    )
