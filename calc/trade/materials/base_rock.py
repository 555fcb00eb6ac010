"""The rock base under the slab: how much, and how it comes. The word base means nothing else here."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.piles import VehicleSpec
from calc.trade.inputs.areas import Area
from calc.trade.inputs.hauling import Fleet
from calc.trade.inputs.job import Site, Vehicle
from calc.trade.levels import AREA, VEHICLE
from calc.trade.takeoff.geometry import Slab

_SHEET = "Order and placing"
NAMED_FIRST, NAMED_SECOND, NAMED_THIRD = (exact(place) for place in (1, 2, 3))
"""The turns of the vehicles that are named for the job; all others come after them in the order of their table."""


class Base(Section, title="Rock base", each=AREA, sheet=_SHEET):
    """Compacted rock under the slab."""

    compacted = line(
        "Base, compacted",
        "yd3",
        Slab.net_area * Area.base / IN_PER_FT / FT3_PER_YD3,
        source="area times depth",
        adds=True,
    )


class BaseNeeds(Section, title="Base to buy", sheet=_SHEET):
    """Weighed and bought by the half ton."""

    weight = factor(
        "Base per compacted yard",
        "ton/yd3",
        1.9,
        low=1.85,
        high=2.05,
        source="common practice, no source, for crushed rock; a textbook has compacted sand and gravel at 3,650 "
        "lb/yd3, from memory",
    )
    waste = factor("Waste of base", "%", 5, low=0, high=10, source="common practice, no source")
    step = factor("Step of the rock yard", "ton", 0.5, low=0.25, high=1, source="common practice, no source")

    tons = line(
        "Base needed", "ton", total(Base.compacted) * weight * (1 + waste / PERCENT), source="volume, weight and waste"
    )
    buy = line("Base to buy", "ton", round_up(tons, to=step), source="up to the step of the rock yard")


class RockRide(Section, title="What could fetch the rock", each=VEHICLE, sheet=_SHEET):
    """Own vehicles of the job's fleet in their order, whatever hauls the spoil; nobody hires one for the rock."""

    turn = line(
        "Turn of the vehicle",
        "",
        when(
            equals(Site.vehicle_1, row_number(VEHICLE)),
            NAMED_FIRST,
            when(equals(Fleet.vehicle_2, row_number(VEHICLE)), NAMED_SECOND, NAMED_THIRD + row_number(VEHICLE)),
        ),
        source="as named for the job, else the order of the vehicles",
    )
    fit = line(
        "Could fetch rock",
        "",
        when(both(VehicleSpec.own > 0, VehicleSpec.free > 0, VehicleSpec.payload > 0), 1, 0),
        source="1 for an own vehicle of the fleet with a known payload",
        adds=True,
    )
    compared = line(
        "Turn of those that could",
        "",
        when(fit > 0, turn, greatest(turn) + 1),
        source="one that could not is put behind the last",
    )
    hourly_known = line(
        "Its hour is known", "", when(is_given(Vehicle.hourly), 1, 0), source="1 when the house book gives its rate"
    )


class BaseHaul(Section, title="How the rock comes", sheet=_SHEET):
    """A little of it rides on an own vehicle; more than that, or any of it where there is none, is delivered."""

    rock_price = price("Base rock", "$/ton", help="A ton of crushed rock at the rock yard.")
    delivery_price = price(
        "Delivery of base rock", "$/each", taxed=False, help="What the rock yard charges to bring it, once."
    )
    fetched = factor(
        "Most rock that is fetched", "ton", 3, low=1, high=6, source="common practice, no source: more is delivered"
    )
    minutes = factor("Rock yard, one way", "min", 20, low=5, high=60, source="common practice, no source")
    miles = factor("Rock yard, miles one way", "mile", 8, low=1, high=40, source="common practice, no source")
    dwell = factor("Dwell at the rock yard", "min", 15, low=5, high=45, source="common practice, no source")

    row = line("Row of the vehicle for rock", "", argmin(RockRide.compared), source="the first that could")
    payload = line(
        "Its payload for rock",
        "ton",
        when(total(RockRide.fit) > 0, at(VehicleSpec.payload, largest(1, row)), 0),
        source="of that vehicle; 0 when there is none",
    )
    delivered = line(
        "Rock is delivered",
        "",
        when(both(BaseNeeds.buy > 0, either(BaseNeeds.buy > fetched, payload <= 0)), 1, 0),
        source="1 for more than is fetched, or without an own vehicle",
    )
    trips = line(
        "Trips for rock",
        "trip",
        when(both(delivered <= 0, payload > 0), round_up(BaseNeeds.buy / payload), 0),
        source="tons bought over the payload, whole trips",
    )
    hours = line(
        "Hours for rock",
        "h",
        trips.count * (TWO * minutes + dwell) / MIN_PER_H,
        source="there and back, and the time at the yard: a driver's, never the crew's",
    )
    trip_cost = line(
        "Fetching the rock",
        "$",
        money(
            hours * at(VehicleSpec.hour, largest(1, row))
            + trips.count * TWO * miles * at(VehicleSpec.mile, largest(1, row))
        ),
        source="hours with their driver, and miles",
    )
    rock = line("Rock", "$", money(BaseNeeds.buy * if_given(rock_price, 0)), source="tons bought times the price")
    delivery = line(
        "Delivery of the rock",
        "$",
        money(count_of(delivered, "each") * if_given(delivery_price, 0)),
        source="once, where it is delivered",
    )
    cost = line("Rock on the site", "$", rock + trip_cost + delivery, source="bought, fetched and delivered")
    rock_known = line(
        "Price of rock is known",
        "",
        when(either(is_given(rock_price), BaseNeeds.buy <= 0), 1, 0),
        source="1 when the house book gives it, or no rock is bought",
    )
    way_known = line(
        "Cost of its way is known",
        "",
        when(
            either(
                BaseNeeds.buy <= 0,
                both(delivered > 0, is_given(delivery_price)),
                both(delivered <= 0, at(RockRide.hourly_known, largest(1, row)) > 0),
            ),
            1,
            0,
        ),
        source="1 when the house book gives the delivery, or the hour of the vehicle; or no rock comes",
    )
