"""Base rock under the slab: quantity, and how it gets to the site. "Base" always means base rock here."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.vehicles import VehicleSpec
from calc.trade.inputs.areas import Area
from calc.trade.inputs.hauling import Fleet
from calc.trade.inputs.job import Site, Vehicle
from calc.trade.levels import AREA, FOOTING, VEHICLE
from calc.trade.prices.wage_rates import CrewRate
from calc.trade.takeoff.geometry import MeanThickness, Slab
from calc.trade.takeoff.old_concrete import OldFooting

_SHEET = "Order and placing"
NAMED_FIRST, NAMED_SECOND, NAMED_THIRD = (exact(place) for place in (1, 2, 3))
"""Order of the vehicles named for the job; all others follow in the order of their table."""


class BaseOverFooting(Section, title="Base rock over old footings", each=FOOTING, sheet=_SHEET):
    """Between a footing and the slab there is only room for as much rock as fits."""

    compacted = line(
        "Base rock over the footing",
        "yd3",
        OldFooting.plan_area
        * largest(0, smallest(Area.base, OldFooting.cover - MeanThickness.by_dimensions))
        / IN_PER_FT
        / FT3_PER_YD3,
        source="plan area times what fits between the footing, once chipped, and the slab, never more than the base",
        adds=True,
    )


class Base(Section, title="Base rock", each=AREA, sheet=_SHEET):
    """Compacted crushed rock under the slab."""

    clear_area = line(
        "Area without old footings",
        "ft2",
        largest(0, Slab.net_area - total(OldFooting.plan_area, AREA)),
        source="net area less the plan area of the footings",
    )
    compacted = line(
        "Base rock, compacted volume",
        "yd3",
        clear_area * Area.base / IN_PER_FT / FT3_PER_YD3 + total(BaseOverFooting.compacted, AREA),
        source="area without footings times base depth, plus what fits over the footings",
        adds=True,
    )


class BaseNeeds(Section, title="Base rock to buy", sheet=_SHEET):
    """Bought by weight, in increments of the rock yard."""

    density = factor(
        "Base rock density, compacted",
        "ton/yd3",
        1.9,
        low=1.85,
        high=2.05,
        source="common practice, no source, for crushed rock; a textbook has compacted sand and gravel at 3,650 "
        "lb/yd3, from memory",
    )
    waste = factor("Base rock waste factor", "%", 5, low=0, high=10, source="common practice, no source")
    increment = factor("Base rock order increment", "ton", 0.5, low=0.25, high=1, source="common practice, no source")

    tons = line(
        "Base rock required",
        "ton",
        total(Base.compacted) * density * (1 + waste / PERCENT),
        source="compacted volume times density, plus waste",
    )
    buy = line(
        "Base rock to buy",
        "ton",
        round_up(tons, to=increment),
        source="required tons rounded up to the order increment",
    )


class RockVehicle(Section, title="Vehicles for base rock", each=VEHICLE, sheet=_SHEET):
    """Own vehicles that the job allows, in their order; no vehicle is hired to pick up base rock."""

    preference = line(
        "Order of preference",
        "",
        when(
            equals(Site.vehicle_1, row_number(VEHICLE)),
            NAMED_FIRST,
            when(equals(Fleet.vehicle_2, row_number(VEHICLE)), NAMED_SECOND, NAMED_THIRD + row_number(VEHICLE)),
        ),
        source="as named for the job, else in the order of the vehicles",
    )
    able = line(
        "Can pick up base rock",
        "",
        when(both(VehicleSpec.own > 0, VehicleSpec.allowed > 0, VehicleSpec.payload > 0), 1, 0),
        source="1 for an own, allowed vehicle with a known payload",
        adds=True,
    )
    compared = line(
        "Order of preference, if able",
        "",
        when(able > 0, preference, greatest(preference) + 1),
        source="a vehicle that cannot is ranked behind the last",
    )


class BaseHaul(Section, title="Base rock delivery", sheet=_SHEET):
    """A small quantity is picked up with an own vehicle; a larger one, or any without a vehicle, is delivered."""

    rock_price = price("Base rock", "$/ton", help="Price per ton of crushed rock at the rock yard.")
    delivery_price = price(
        "Base rock delivery", "$/each", taxed=False, help="Charge per job for delivery by the rock yard."
    )
    max_pick_up = factor(
        "Maximum base rock picked up", "ton", 3, low=1, high=6, source="common practice, no source: more is delivered"
    )
    minutes = factor("Rock yard, minutes one way", "min", 20, low=5, high=60, source="common practice, no source")
    miles = factor("Rock yard, miles one way", "mile", 8, low=1, high=40, source="common practice, no source")
    turnaround = factor("Rock yard, turnaround time", "min", 15, low=5, high=45, source="common practice, no source")

    row = line("Row of the pick-up vehicle", "", argmin(RockVehicle.compared), source="first by order of preference")
    payload = line(
        "Payload of the pick-up vehicle",
        "ton",
        when(total(RockVehicle.able) > 0, at(VehicleSpec.payload, largest(1, row)), 0),
        source="looked up by row; 0 if there is no vehicle",
    )
    delivered = line(
        "Base rock is delivered",
        "each",
        when(both(BaseNeeds.buy > 0, either(BaseNeeds.buy > max_pick_up, payload <= 0)), 1, 0),
        source="1 if it is more than is picked up, or there is no own vehicle",
    )
    trips = line(
        "Base rock trips",
        "trip",
        when(both(delivered <= 0, payload > 0), round_up(BaseNeeds.buy / payload), 0),
        source="tons to buy over payload, rounded up",
    )
    hours = line(
        "Base rock trip hours",
        "h",
        trips.count * (TWO * minutes + turnaround) / MIN_PER_H,
        source="trips times (both ways plus turnaround time): driver hours, not crew hours",
    )
    pick_up_driver = line(
        "Base rock pick-up, driver", "$", money(hours * CrewRate.driver), source="trip hours at the driver rate"
    )
    pick_up_truck = line(
        "Base rock pick-up, truck",
        "$",
        money(
            hours * (at(VehicleSpec.hourly_cost, largest(1, row)) - CrewRate.driver)
            + trips.count * TWO * miles * at(Vehicle.per_mile, largest(1, row))
        ),
        source="trip hours at hourly cost without the driver, plus miles",
    )
    pick_up_cost = line("Base rock pick-up cost", "$", pick_up_truck + pick_up_driver, source="truck and driver")
    rock = line(
        "Base rock purchase cost", "$", money(BaseNeeds.buy * if_given(rock_price, 0)), source="tons to buy times price"
    )
    delivery = line(
        "Base rock delivery cost",
        "$",
        money(delivered * if_given(delivery_price, 0)),
        source="price per job, if it is delivered",
    )
    cost = line(
        "Base rock, total cost",
        "$",
        rock + pick_up_cost + delivery,
        source="purchase, pick-up and delivery",
    )
