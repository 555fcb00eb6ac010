"""What has to go and what it may go on: piles, vehicles, disposal sites."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.hauling import Fleet
from calc.trade.inputs.job import Disposal, Site, Vehicle
from calc.trade.levels import DISPOSAL, PILE, STREAM, VEHICLE
from calc.trade.prices.wage_rates import CrewRate
from calc.trade.takeoff.dig import Green, Spoil
from calc.trade.takeoff.old_concrete import Rubble

_SHEET = "Dig and haul"


class Pile(Section, title="Piles by what they are", each=STREAM, sheet=_SHEET):
    """What has to go, before it is known how."""

    loose = line(
        "Spoil, loose",
        "yd3",
        by_row(STREAM, Spoil.green_loose, Spoil.loose, Rubble.loose),
        source="of the pile",
        adds=True,
    )
    tons = line(
        "Spoil, weight",
        "ton",
        by_row(STREAM, Spoil.green_tons, Spoil.tons, Rubble.tons),
        source="of the pile",
        adds=True,
    )
    some = line("There is some", "", when(tons > 0, 1, 0), source="1 for a pile that weighs something")


class VehicleSpec(Section, title="What each vehicle holds and costs", each=VEHICLE, sheet=_SHEET):
    """0 for what the house book does not say."""

    name = line("Vehicle", "", row_word(VEHICLE), source="house book")
    one = line("Counts", "", when(row_number(VEHICLE) > 0, 1, 0), source="to count the vehicles", adds=True)
    room = line(
        "Room when heaped", "yd3", if_given(Vehicle.struck_capacity, 0) * Vehicle.heaped_factor, source="box times heap"
    )
    payload = line("Payload", "ton", if_given(Vehicle.payload, 0), source="house book, as weighed")
    floor = line(
        "Floor of the bed",
        "ft2",
        if_given(Vehicle.bed_length, 0) * if_given(Vehicle.bed_width, 0),
        source="length times width of the bed",
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
        source="1 for a vehicle of the job's fleet",
    )
    free = line("In the fleet", "", when(Site.vehicle_1 > 0, named, 1), source="every one, when none is named")
    picked = line(
        "May carry a chosen plan",
        "",
        when(Fleet.by > 0, when(equals(Fleet.by, row_number(VEHICLE)), 1, 0), free),
        source="the one named to haul with, in the fleet or not; the fleet when none is named",
    )
    own = line("Own", "", when(Vehicle.hired.is_("yes"), 0, 1), source="1 for a vehicle that comes without a driver")
    mile = line("A mile of it", "$/mile", Vehicle.per_mile, source="house book")
    known = line(
        "Can be compared",
        "",
        when(
            both(
                room > 0,
                payload > 0,
                is_given(Vehicle.hourly),
                either(Vehicle.hired.is_("yes"), CrewRate.driver > 0),
            ),
            1,
            0,
        ),
        source="1 when the house book gives its box, its payload, its hourly rate and a wage for its driver",
    )
    hour = line(
        "An hour of it with its driver",
        "$/h",
        if_given(Vehicle.hourly, 0) + when(Vehicle.hired.is_("yes"), 0, CrewRate.driver),
        source="a hired one comes with its driver",
    )


class SiteSpec(Section, title="Disposal sites", each=DISPOSAL, sheet=_SHEET):
    """Whether a site can be compared, and what a trip to it takes."""

    name = line("Site", "", row_word(DISPOSAL), source="house book")
    one = line("Counts", "", when(row_number(DISPOSAL) > 0, 1, 0), source="to count the sites", adds=True)
    known = line(
        "Can be compared",
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
        source="1 when the house book gives a rate, minutes and miles",
    )
    trip = line(
        "One trip",
        "h",
        (TWO * if_given(Disposal.minutes, 0) + Disposal.turnaround) / MIN_PER_H,
        source="there and back, and the time at the gate",
    )
    miles = line("Miles of a trip", "mile", TWO * if_given(Disposal.miles, 0), source="there and back")
    back = line(
        "Of it dwell and the way back",
        "h",
        (if_given(Disposal.minutes, 0) + Disposal.turnaround) / MIN_PER_H,
        source="what is left of a trip when it is at the gate",
    )
    leave = line(
        "First trip not before",
        "h",
        if_given(Disposal.opens, 0) - if_given(Disposal.minutes, 0) / MIN_PER_H,
        source="hour of the day: when it opens, less the way there",
    )
    closes = line("Closes", "h", if_given(Disposal.closes, 0), source="house book; 0 when it does not say")
    piece = line("Largest piece", "in", if_given(Disposal.piece, 0), source="house book; 0 when it does not say")
    speed = line(
        "Miles in a minute",
        "mile/min",
        when(if_given(Disposal.minutes, 0) > 0, miles / TWO / Disposal.minutes, 0),
        source="one way",
    )
    ton = line("For a ton", "$/ton", if_given(Disposal.per_ton, 0), source="house book")
    yard = line("For a loose yard", "$/yd3", if_given(Disposal.per_yard, 0), source="house book")
    load = line(
        "For a load, at least",
        "$/load",
        largest(Disposal.minimum_charge, if_given(Disposal.per_load, 0)),
        source="house book: the dearer of a rate by the load and the least charge",
    )


class SoilCleanliness(Section, title="How clean the soil is", sheet=_SHEET):
    """Turf or roots in the soil may make a gate charge a load as dirty, or turn it away."""

    turf_chance = factor(
        "Chance that soil with turf is charged as dirty",
        "%",
        100,
        low=50,
        high=100,
        source="common practice, no source",
    )
    root_chance = factor(
        "Chance that soil after root balls is charged as dirty",
        "%",
        25,
        low=0,
        high=100,
        source="common practice, no source",
    )

    balls = line("Root balls", "", when(total(Green.balls) > 0, 1, 0), source="1 when a root ball comes out")
    roots = line(
        "Roots or turf in the soil",
        "",
        when(both(Spoil.tons > 0, either(Site.turf.is_("yes"), balls > 0)), 1, 0),
        source="1 when turf is dug or a root ball comes out of the soil",
    )
    wet = line(
        "Wet soil",
        "",
        when(both(Site.moisture.is_("wet"), Spoil.tons > 0), 1, 0),
        source="1 when there is soil and it is wet",
    )
    chance = line(
        "Chance of the surcharge",
        "%",
        when(Site.turf.is_("yes"), turf_chance, when(balls > 0, root_chance, 0)),
        source="for a load of soil at a site for soil",
    )


class LoadMix(Section, title="What may lie on a vehicle", each=PILE, sheet=_SHEET):
    """A stream by itself, and what each plan leaves mixed."""

    green = factors("Green in the pile", "", 1, 0, 0, 1, 0, 1, 0, 0, 1, source="what the pile is: no choice")
    soil = factors("Soil in the pile", "", 0, 1, 0, 1, 1, 1, 0, 1, 0, source="what the pile is: no choice")
    concrete = factors("Old concrete in the pile", "", 0, 0, 1, 1, 1, 0, 0, 0, 1, source="what the pile is: no choice")

    loose = line(
        "Loose",
        "yd3",
        green * Spoil.green_loose + soil * Spoil.loose + concrete * Rubble.loose,
        source="of what lies in it",
    )
    tons = line(
        "Weight",
        "ton",
        green * Spoil.green_tons + soil * Spoil.tons + concrete * Rubble.tons,
        source="of what lies in it",
    )
    kind = line(
        "Goes to a site for",
        "",
        when(row_number(PILE) > THREE, "mixed", row_word(PILE)),
        source="a mixed pile goes to a site that takes everything",
    )
    number = line("Row of the pile", "", row_number(PILE), source="to find its rows again")
