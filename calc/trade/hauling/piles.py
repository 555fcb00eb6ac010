"""Piles to haul, vehicles, and disposal sites."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.hauling import Fleet
from calc.trade.inputs.job import Disposal, Site, Vehicle
from calc.trade.levels import DISPOSAL, PILE, STREAM, VEHICLE
from calc.trade.prices.wage_rates import CrewRate
from calc.trade.takeoff.dig import GreenWaste, Spoil
from calc.trade.takeoff.old_concrete import ConcreteDebris

_SHEET = "Dig and haul"


class Pile(Section, title="Spoil piles", each=STREAM, sheet=_SHEET):
    """Material to haul, before a haul plan is chosen."""

    loose = line(
        "Spoil, loose volume",
        "yd3",
        by_row(STREAM, Spoil.green_loose, Spoil.loose, ConcreteDebris.loose),
        source="from the takeoff, by material",
        adds=True,
    )
    tons = line(
        "Spoil, tons",
        "ton",
        by_row(STREAM, Spoil.green_tons, Spoil.tons, ConcreteDebris.tons),
        source="from the takeoff, by material",
        adds=True,
    )
    not_empty = line("Pile is not empty", "", when(tons > 0, 1, 0), source="1 if the pile has weight")


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
    payload = line("Payload", "ton", if_given(Vehicle.payload, 0), source="company book, as weighed")
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
    mile_cost = line("Cost per mile", "$/mile", Vehicle.per_mile, source="company book")
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
    earliest_departure = line(
        "Earliest departure",
        "h",
        if_given(Disposal.opens, 0) - if_given(Disposal.minutes, 0) / MIN_PER_H,
        source="hour of the day: opening hour less the way there",
    )
    closes = line("Site closes", "h", if_given(Disposal.closes, 0), source="company book; 0 if not given")
    largest_piece = line(
        "Largest piece accepted", "in", if_given(Disposal.piece, 0), source="company book; 0 if not given"
    )
    speed = line(
        "Travel speed",
        "mile/min",
        when(if_given(Disposal.minutes, 0) > 0, trip_miles / TWO / Disposal.minutes, 0),
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


class SoilContamination(Section, title="Soil contamination", sheet=_SHEET):
    """A disposal site may charge a surcharge for soil with turf or roots, or refuse the load."""

    turf_probability = factor(
        "Surcharge probability, soil with turf",
        "%",
        100,
        low=50,
        high=100,
        source="common practice, no source",
    )
    root_probability = factor(
        "Surcharge probability, soil with root balls",
        "%",
        25,
        low=0,
        high=100,
        source="common practice, no source",
    )

    has_root_balls = line(
        "Root balls present", "", when(total(GreenWaste.root_balls) > 0, 1, 0), source="1 if a root ball is removed"
    )
    has_roots = line(
        "Roots or turf in the soil",
        "",
        when(both(Spoil.tons > 0, either(Site.turf.is_("yes"), has_root_balls > 0)), 1, 0),
        source="1 if turf is excavated or a root ball is removed",
    )
    is_wet = line(
        "Wet soil",
        "",
        when(both(Site.moisture.is_("wet"), Spoil.tons > 0), 1, 0),
        source="1 if there is soil and it is wet",
    )
    surcharge_probability = line(
        "Surcharge probability",
        "%",
        when(Site.turf.is_("yes"), turf_probability, when(has_root_balls > 0, root_probability, 0)),
        source="per load of soil at a soil site",
    )


class LoadMix(Section, title="Piles that can be loaded", each=PILE, sheet=_SHEET):
    """Each material by itself, and what each plan leaves mixed."""

    green = factors("Green waste in the pile", "", 1, 0, 0, 1, 0, 1, 0, 0, 1, source="by definition of the pile")
    soil = factors("Soil in the pile", "", 0, 1, 0, 1, 1, 1, 0, 1, 0, source="by definition of the pile")
    concrete = factors("Concrete debris in the pile", "", 0, 0, 1, 1, 1, 0, 0, 0, 1, source="by definition of the pile")

    loose = line(
        "Loose volume of the pile",
        "yd3",
        green * Spoil.green_loose + soil * Spoil.loose + concrete * ConcreteDebris.loose,
        source="sum of the materials in the pile",
    )
    tons = line(
        "Tons in the pile",
        "ton",
        green * Spoil.green_tons + soil * Spoil.tons + concrete * ConcreteDebris.tons,
        source="sum of the materials in the pile",
    )
    kind = line(
        "Kind of disposal site",
        "",
        when(row_number(PILE) > THREE, "mixed", row_word(PILE)),
        source="a mixed pile goes to a site for mixed waste",
    )
    number = line("Pile number", "", row_number(PILE), source="row number")
