"""Integrity: numbers that two routes must agree on."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.loads import Hauled, HaulVehicle
from calc.trade.hauling.piles import Pile
from calc.trade.materials.fiber import FiberDose, FiberTotal, TruckFiber
from calc.trade.materials.liquids import BONDING_PACKS, CURING_PACKS, SEALER_PACKS, Bonding, Curing, Sealer
from calc.trade.ordering.order import Order, TruckLoad
from calc.trade.takeoff.dig import Excavation
from calc.trade.takeoff.dowels import CuttingList, DoweledEdge
from calc.trade.takeoff.joint_list import JointPlace
from calc.trade.takeoff.joints import MatchedJoints


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
        total(TruckLoad.in_use),
        tolerance,
    )
    loads = check("The trucks carry the order", "yd3", Order.quantity, total(TruckLoad.yards), tolerance)
    fiber = check(
        "No truck is short of fiber",
        "lb",
        largest(0, FiberDose.weight - total(TruckFiber.bags) * FiberDose.bag),
        0 * FiberDose.weight,
        tolerance,
    )
    fiber_bought = check(
        "The bags bought are the bags of the trucks, unless forced",
        "bag",
        when(FiberTotal.bags.is_overridden, total(TruckFiber.bags) + FiberTotal.batch, FiberTotal.bags),
        total(TruckFiber.bags) + FiberTotal.batch,
        tolerance,
    )
    curing = check(
        "The curing packs hold the need",
        "gal",
        when(CURING_PACKS.can_win > 0, largest(0, Curing.need - CURING_PACKS.bought), 0),
        0 * Curing.need,
        tolerance,
    )
    bonding = check(
        "The bonding packs hold the need",
        "gal",
        when(BONDING_PACKS.can_win > 0, largest(0, Bonding.need - BONDING_PACKS.bought), 0),
        0 * Bonding.need,
        tolerance,
    )
    sealer = check(
        "The sealer packs hold the need",
        "gal",
        when(SEALER_PACKS.can_win > 0, largest(0, Sealer.need - SEALER_PACKS.bought), 0),
        0 * Sealer.need,
        tolerance,
    )
    hole = check(
        "Soil and old concrete fill the hole (a miss: more old concrete than hole)",
        "yd3",
        total(Excavation.volume),
        total(Excavation.bank) + total(Excavation.old_concrete),
        tolerance,
    )
    overweight = check(
        "No load is over the payload",
        "ton",
        when(
            HaulVehicle.payload > 0, largest(0, total(Hauled.tons) - HaulVehicle.payload * total(Hauled.loads).count), 0
        ),
        0 * total(Pile.tons),
        tolerance,
    )
    hauled = check("Everything is hauled once", "ton", total(Pile.tons), total(Hauled.tons), tolerance)
    joints = check(
        "Joints fit the list (a miss: list too short, run flatwork again)",
        "",
        total(MatchedJoints.joints),
        total(JointPlace.in_use),
        tolerance,
    )
    dowels = check(
        "Every dowel is on the cutting list once",
        "bar",
        total(DoweledEdge.dowels),
        total(CuttingList.before_spares),
        tolerance,
    )
