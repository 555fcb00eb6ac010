"""Integrity: numbers that two routes must agree on."""

from __future__ import annotations

from calc.declare import Section, check, factor, largest, total, when
from calc.trade.concrete import Load, Order
from calc.trade.fiber import Dose, FiberTotal, TruckFiber
from calc.trade.surface import CURING_PACKS, Curing


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
        "No truck is short of fiber",
        "lb",
        largest(0, Dose.weight - total(TruckFiber.bags) * Dose.bag),
        0 * Dose.weight,
        tolerance,
    )
    fiber_bought = check(
        "The bags bought are the bags of the trucks, unless forced",
        "bag",
        when(FiberTotal.bags.is_forced, total(TruckFiber.bags), FiberTotal.bags),
        total(TruckFiber.bags),
        tolerance,
    )
    curing = check(
        "The curing packs hold the need",
        "gal",
        when(CURING_PACKS.can_win > 0, largest(0, Curing.need - CURING_PACKS.bought), 0),
        0 * Curing.need,
        tolerance,
    )
