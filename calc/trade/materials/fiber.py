"""Fiber: dosed for the yards in each truck, and put in by whole bags."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Job, Site
from calc.trade.levels import FIBER, TRUCK
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.order import Order, TruckLoad


class FiberKind(Section, title="Fiber types", each=FIBER):
    """Usual dosage and bag size of each type of fiber; the product data sheet governs."""

    dose = factors(
        "Fiber dosage, usual",
        "lb/yd3",
        0,
        1.5,
        4,
        source="micro: UFGS 03300N, 1.5 lb/yd3 minimum, seen in print; macro: ACI 544.3R, 3 to 7, partly from memory",
    )
    bag = factors("Fiber per bag, usual", "lb/bag", 1, 1, 5, source="common practice, no source: the bag label wins")


class FiberDose(Section, title="Fiber", sheet="Order and placing"):
    """Fiber dosage per yard ordered."""

    per_yard = line(
        "Fiber dosage",
        "lb/yd3",
        when(Job.fiber.is_("none"), 0, if_given(Site.fiber_dose, look_up(FiberKind.dose, Job.fiber))),
        source="input, else the usual dosage of the fiber type",
    )
    bag = line(
        "Fiber per bag",
        "lb/bag",
        look_up(FiberKind.bag, Job.fiber),
        source="by fiber type",
    )
    weight = line(
        "Fiber weight",
        "lb",
        Order.quantity * per_yard,
        source="order times dosage: per yard ordered, not per yard in place",
    )


class TruckFiber(Section, title="Fiber by truck", each=TRUCK, sheet="Order and placing", slots_for=Order.trucks):
    """Bags are added whole, so each truck takes whole bags."""

    bags = line(
        "Fiber bags",
        "bag",
        round_up(TruckLoad.yards * FiberDose.per_yard / FiberDose.bag),
        source="load times dosage over fiber per bag, rounded up; common practice, no source: whole bags in each truck",
        adds=True,
    )
    spare = line(
        "Fiber beyond the dose",
        "lb",
        bags * FiberDose.bag - TruckLoad.yards * FiberDose.per_yard,
        source="what its bags hold, less the dose of its load",
    )


class FiberTotal(Section, title="Fiber to buy", sheet="Order and placing"):
    """Fiber for the whole pour."""

    batch = line(
        "Fiber bags for bagged concrete",
        "bag",
        when(
            Order.bags > 0, round_up(Bags.bags * Bags.bag_yield / FT3_PER_YD3 * FiberDose.per_yard / FiberDose.bag), 0
        ),
        source="all bagged concrete counts as one batch",
    )
    bags = line(
        "Fiber bags to buy",
        "bag",
        total(TruckFiber.bags) + batch,
        source="sum of the trucks, and of the batch that is mixed on the site",
        may_be_overridden=True,
    )
