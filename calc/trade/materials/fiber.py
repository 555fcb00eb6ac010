"""Fiber: dosed for the yards in each truck, and put in by whole bags, or by the plant."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import TRUCK
from calc.trade.materials.fiber_dose import FiberDose
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.order import Order, TruckLoad
from calc.trade.ordering.plant_fees import PlantFees


class TruckFiber(Section, title="Fiber by truck", each=TRUCK, sheet="Order and placing", slots_for=Order.trucks):
    """Bags are added whole, so each truck takes whole bags; none where the plant puts the fiber in."""

    dose = line(
        "Fiber added on site",
        "lb",
        when(PlantFees.puts_in_fiber > 0, 0, TruckLoad.yards * FiberDose.per_yard),
        source="load times dosage; 0 where the plant puts the fiber in",
    )
    bags = line(
        "Fiber bags",
        "bag",
        round_up(dose / FiberDose.bag),
        source="dose over fiber per bag, rounded up; common practice, no source: whole bags in each truck",
        adds=True,
    )
    spare = line(
        "Fiber beyond the dose",
        "lb",
        bags * FiberDose.bag - dose,
        source="what its bags hold, less the dose of its load",
    )


class FiberTotal(Section, title="Fiber to buy", sheet="Order and placing"):
    """Fiber for the whole pour."""

    weight = line(
        "Fiber weight",
        "lb",
        Order.quantity * FiberDose.per_yard,
        source="order times dosage: per yard ordered, not per yard in place",
    )

    batch = line(
        "Fiber bags for bagged concrete",
        "bag",
        when(Order.bags > 0, round_up(Bags.volume * FiberDose.per_yard / FiberDose.bag), 0),
        source="all bagged concrete counts as one batch",
    )
    bags = line(
        "Fiber bags to buy",
        "bag",
        total(TruckFiber.bags) + batch,
        source="sum of the trucks, and of the batch that is mixed on the site",
        may_be_overridden=Limits(low=0, high=10_000, ask_high=200, whole=True),
    )
