"""Fiber: dosed for the yards in each truck, and put in by whole bags."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Job, Site
from calc.trade.levels import FIBER, TRUCK
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.order import Load, Order


class FiberKind(Section, title="Fiber kinds", each=FIBER):
    """The usual dose and bag of each kind of fiber; the maker's data sheet wins."""

    dose = factors(
        "Usual fiber dose",
        "lb/yd3",
        0,
        1.5,
        4,
        source="micro: UFGS 03300N, 1.5 lb/yd3 minimum, seen in print; macro: ACI 544.3R, 3 to 7, partly from memory",
    )
    bag = factors("Fiber in a bag", "lb/bag", 1, 1, 5, source="common practice, no source: read the bag")


class FiberDose(Section, title="Fiber", sheet="Order and placing"):
    """How much fiber goes in each yard ordered."""

    per_yard = line(
        "Fiber dose used",
        "lb/yd3",
        when(Job.fiber.is_("none"), 0, if_given(Site.fiber_dose, look_up(FiberKind.dose, Job.fiber))),
        source="typed, else the usual dose of the fiber",
    )
    bag = line(
        "Fiber in one bag",
        "lb/bag",
        look_up(FiberKind.bag, Job.fiber),
        source="the bag of the fiber",
    )
    weight = line(
        "Fiber for the order",
        "lb",
        Order.quantity * per_yard,
        source="dosed per yard ordered, not per yard in place",
    )


class TruckFiber(Section, title="Fiber by truck", each=TRUCK, sheet="Order and placing", slots_for=Order.trucks):
    """A bag goes in whole, so each truck takes whole bags."""

    bags = line(
        "Fiber bags",
        "bag",
        round_up(Load.yards * FiberDose.per_yard / FiberDose.bag),
        source="common practice, no source: whole bags in each truck",
        adds=True,
    )
    spare = line(
        "Fiber beyond the dose",
        "lb",
        bags * FiberDose.bag - Load.yards * FiberDose.per_yard,
        source="what its bags hold, less the dose of its load",
    )


class FiberTotal(Section, title="Fiber to buy", sheet="Order and placing"):
    """What is bought for the whole pour."""

    batch = line(
        "Fiber bags for bags of concrete",
        "bag",
        when(Order.bags > 0, round_up(Bags.bags * Bags.yields / FT3_PER_YD3 * FiberDose.per_yard / FiberDose.bag), 0),
        source="all that is mixed on the site counts as one batch",
    )
    bags = line(
        "Fiber bags to buy",
        "bag",
        total(TruckFiber.bags) + batch,
        source="sum of the trucks, and of the batch that is mixed on the site",
        may_be_overridden=True,
    )
