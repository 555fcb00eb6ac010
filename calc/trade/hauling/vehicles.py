"""Vehicles and disposal sites: what each holds, takes and costs."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.hauling import Fleet
from calc.trade.inputs.job import Disposal, Site, Vehicle
from calc.trade.levels import DISPOSAL, VEHICLE
from calc.trade.prices.wage_rates import CrewRate

_SHEET = "Dig and haul"


class VehicleSpec(Section, title="Vehicle capacity and cost", each=VEHICLE, sheet=_SHEET):
    """0 for what the company book does not give."""

    name = line("Vehicle", "", row_word(VEHICLE), source="company book")
    counted = line("Vehicles counted", "", when(row_number(VEHICLE) > 0, 1, 0), source="1 for each row", adds=True)
    heaped_capacity = line(
        "Heaped capacity",
        "yd3",
        if_given(Vehicle.struck_capacity, 0) * Vehicle.heaped_factor,
        source="struck bed capacity times heaped factor",
    )
    planned_share = factor(
        "Planned load, share of the payload",
        "%",
        90,
        low=80,
        high=100,
        source="common practice, no source: weights of soil scatter by 15 %; base rock is weighed at the yard",
    )
    payload = line("Payload", "ton", if_given(Vehicle.payload, 0), source="company book, as weighed")
    planned_payload = line(
        "Load planned, at most", "ton", payload * planned_share / PERCENT, source="payload times the planned share"
    )
    bed_area = line(
        "Bed floor area",
        "ft2",
        if_given(Vehicle.bed_length, 0) * if_given(Vehicle.bed_width, 0),
        source="bed length times bed width",
    )
    named = line(
        "Named for the job",
        "",
        when(
            either(
                equals(Site.vehicle_1, row_number(VEHICLE)),
                equals(Fleet.vehicle_2, row_number(VEHICLE)),
                equals(Fleet.vehicle_3, row_number(VEHICLE)),
            ),
            1,
            0,
        ),
        source="1 for a vehicle that the job allows",
    )
    allowed = line(
        "Vehicle allowed",
        "",
        when(Site.vehicle_1 > 0, named, 1),
        source="those named for the job; all if none is named",
    )
    allowed_by_hand = line(
        "Allowed for a plan chosen by hand",
        "",
        when(Fleet.by > 0, when(equals(Fleet.by, row_number(VEHICLE)), 1, 0), allowed),
        source="the vehicle named to haul with; the allowed vehicles if none is named",
    )
    own = line(
        "Own vehicle",
        "",
        when(Vehicle.hired.is_("yes"), 0, 1),
        source="1 for a vehicle that is not hired with its driver",
    )
    known = line(
        "Cost is known",
        "",
        when(
            both(
                heaped_capacity > 0,
                payload > 0,
                is_given(Vehicle.hourly),
                either(Vehicle.hired.is_("yes"), CrewRate.driver > 0),
            ),
            1,
            0,
        ),
        source="1 if the company book has bed capacity, payload, hourly rate and a wage for the driver",
    )
    hourly_cost = line(
        "Hourly cost with driver",
        "$/h",
        if_given(Vehicle.hourly, 0) + when(Vehicle.hired.is_("yes"), 0, CrewRate.driver),
        source="hourly rate, plus the driver rate unless it is hired with its driver",
    )


class SiteSpec(Section, title="Disposal sites", each=DISPOSAL, sheet=_SHEET):
    """Rates, hours and trip time of each disposal site."""

    name = line("Disposal site", "", row_word(DISPOSAL), source="company book")
    counted = line("Sites counted", "", when(row_number(DISPOSAL) > 0, 1, 0), source="1 for each row", adds=True)
    known = line(
        "Cost is known",
        "",
        when(
            both(
                either(is_given(Disposal.per_ton), is_given(Disposal.per_yard), is_given(Disposal.per_load)),
                is_given(Disposal.minutes),
                is_given(Disposal.miles),
            ),
            1,
            0,
        ),
        source="1 if the company book has a rate, minutes and miles",
    )
    round_trip = line(
        "Round trip",
        "h",
        (TWO * if_given(Disposal.minutes, 0) + Disposal.turnaround) / MIN_PER_H,
        source="both ways, plus time at the site",
    )
    trip_miles = line("Miles per round trip", "mile", TWO * if_given(Disposal.miles, 0), source="both ways")
    return_time = line(
        "Dump and return time",
        "h",
        (if_given(Disposal.minutes, 0) + Disposal.turnaround) / MIN_PER_H,
        source="time at the site plus the way back",
    )
    closes = line("Site closes", "h", if_given(Disposal.closes, 0), source="company book; 0 if not given")
    largest_piece = line(
        "Largest piece accepted", "in", if_given(Disposal.piece, 0), source="company book; 0 if not given"
    )
    speed = line(
        "Travel speed",
        "mile/min",
        when(is_given(Disposal.minutes), when(Disposal.minutes > 0, trip_miles / TWO / Disposal.minutes, 0), 0),
        source="miles over minutes, one way",
    )
    per_ton = line("Dump rate per ton", "$/ton", if_given(Disposal.per_ton, 0), source="company book")
    per_yard = line("Dump rate per loose yard", "$/yd3", if_given(Disposal.per_yard, 0), source="company book")
    per_load = line(
        "Dump charge per load, minimum",
        "$/load",
        largest(Disposal.minimum_charge, if_given(Disposal.per_load, 0)),
        source="company book: larger of the rate per load and the minimum charge",
    )
