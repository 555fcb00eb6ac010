"""Cautions for the people on site and those who pass: heat, lifting, bars, traffic, fumes, gear, licenses."""

from __future__ import annotations

from calc.declare import *
from calc.trade.cautions.site import SAWING_BY_HAND, DustHours
from calc.trade.cautions.worst import worst
from calc.trade.hauling.choice import Choice
from calc.trade.hauling.loads import Hauled
from calc.trade.hauling.vehicles import VehicleSpec
from calc.trade.inputs.job import Vehicle
from calc.trade.inputs.placing import Forecast
from calc.trade.inputs.removal import Plant
from calc.trade.inputs.site import NOT_ASKED, Permissions
from calc.trade.inputs.work import OnSite
from calc.trade.levels import EDGE, PLANT, VEHICLE
from calc.trade.materials.base_rock import BaseHaul
from calc.trade.materials.liquids import Bonding, Curing, Sealer
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.order import Order
from calc.trade.takeoff.dowels import DoweledEdge, DowelNeeds
from calc.trade.takeoff.reinforcement import BarsToBuy

_COSTS, _HAUL, _TAKEOFF = "Costs", "Dig and haul", "Takeoff"


class CommercialLicense(Section, title="Commercial license", each=VEHICLE, sheet=_HAUL):
    """A heavy trailer behind a truck needs a driver with a commercial license; one that is hired brings its own."""

    least_combined = factor(
        "Combined rating of a commercial license, from",
        "lb",
        26001,
        low=10001,
        high=26001,
        source="49 CFR 383.5, commercial motor vehicle, group A, from memory; some states set less",
    )
    max_trailer = factor(
        "Trailer rating without a commercial license, max",
        "lb",
        10000,
        low=3000,
        high=10000,
        source="49 CFR 383.5, commercial motor vehicle, group A, from memory; some states set less",
    )

    in_use = line(
        "Driven by the crew",
        "",
        VehicleSpec.own
        * when(
            either(
                both(total(Hauled.loads) > 0, equals(Choice.vehicle, row_number(VEHICLE))),
                both(BaseHaul.trips > 0, equals(BaseHaul.row, row_number(VEHICLE))),
            ),
            1,
            0,
        ),
        source="1 for an own vehicle that hauls spoil or base rock",
    )
    combined = line("Combined rating, if typed", "lb", if_given(Vehicle.combined_rating, 0), source="company book")
    trailer = line("Trailer rating, if typed", "lb", if_given(Vehicle.trailer_rating, 0), source="company book")
    rating = line(
        "Rating that needs a commercial license",
        "lb",
        when(
            both(
                in_use > 0,
                combined >= least_combined,
                trailer > max_trailer,
            ),
            combined,
            0,
        ),
        source="combined rating, where it and that of the trailer are over their limits; 0 where either was not typed",
    )


class EpoxyUsed(Section, title="Epoxy in dowel holes", each=EDGE, sheet=_TAKEOFF):
    """Where dowels are set in oversized holes."""

    used = line("Epoxy is used", "", when(DoweledEdge.epoxy_volume > 0, 1, 0), source="1 with epoxy", adds=True)


class RootsCut(Section, title="Roots that are cut", each=PLANT, sheet=_TAKEOFF):
    """Plants with a root ball or a trunk."""

    plants = line(
        "Plants whose roots are cut",
        "each",
        when(either(Plant.ball > 0, Plant.trunk > 0), Plant.quantity, 0),
        source="plants with a root ball or a trunk",
        adds=True,
    )


class CrewHealth(Section, title="Heat, lifting and fumes", sheet=_COSTS):
    """What the cautions of the crew's health compare."""

    heat_note = factor(
        "Heat illness, note from",
        "F",
        80,
        low=75,
        high=90,
        source="8 CCR 3395 (California) and guidance of OSHA and NIOSH, from memory: shade and water from 80 F",
    )
    heat_caution = factor(
        "Heat illness, caution from",
        "F",
        95,
        low=85,
        high=100,
        source="8 CCR 3395 (California), high heat, from memory; OSHA and NIOSH go by the heat index",
    )
    max_lift = factor(
        "Weight lifted by one person, max",
        "lb/bag",
        51,
        low=35,
        high=51,
        source="NIOSH lifting equation (1994), load constant 51 lb, from memory: the most in the best posture",
    )
    dry_weight = factor(
        "Dry mix in a cubic foot of concrete",
        "lb/ft3",
        133,
        low=125,
        high=140,
        source="bag labels: 80 lb yield 0.6 ft3 and 60 lb 0.45 ft3",
    )
    solvent_cure = factor(
        "Curing compound with solvents",
        "",
        0,
        low=0,
        high=1,
        source="company policy: 1 where the curing compound that is used has solvents",
    )

    air = line("Air temperature, for heat illness", "F", if_given(Forecast.air, 0), source="input; 0 if not typed")
    bag_weight = line(
        "Weight of a bag",
        "lb/bag",
        Bags.bag_yield * dry_weight,
        source="yield times dry mix in a cubic foot; 0 where the company book has no bags",
    )
    lifted = line(
        "Weight of a bag that is lifted",
        "lb/bag",
        when(Order.bags > 0, bag_weight, 0),
        source="0 where no bags are mixed",
    )
    liquids = line(
        "Epoxy, bonding agent, sealer, curing compound with solvents",
        "gal",
        Bonding.need + Sealer.need + solvent_cure * Curing.need,
        source="gallons required; epoxy is bought by the cartridge and adds none",
    )


class SafetyCautions(Section, title="Safety cautions", sheet="Checks"):
    """What was found, the number, the usual practice with its source, and what to do. Local code governs."""

    heat = caution(
        "Heat",
        Severity.NOTE,
        both(CrewHealth.air >= CrewHealth.heat_note, CrewHealth.air < CrewHealth.heat_caution),
        "It is warm enough for heat illness; humid air or sun counts as hotter.",
        CrewHealth.air,
        "F",
        usual="a quart of water an hour each, rest in the shade; new people start with short days",
        do="Bring water and shade, and watch each other.",
        source="OSHA and NIOSH guidance, 8 CCR 3395, from memory",
    )
    high_heat = caution(
        "High heat",
        Severity.CAUTION,
        CrewHealth.air >= CrewHealth.heat_caution,
        "It is hot enough for heat stroke.",
        CrewHealth.air,
        "F",
        usual="water, shade, a rest of 10 min every 2 h, a buddy, and somebody who calls for help",
        do="Pour early; stop, cool and call 911 for anybody confused or faint.",
        brief="Pour early; cool anybody faint, and call 911.",
        source="OSHA and NIOSH guidance, 8 CCR 3395, from memory",
    )
    standing_bars = caution(
        "Bars standing out",
        Severity.NOTE,
        DowelNeeds.dowels + total(BarsToBuy.count) > 0,
        "Dowels or bars stand out where somebody may fall on them; the number is how many.",
        DowelNeeds.dowels + total(BarsToBuy.count),
        "bar",
        usual="each is capped, covered or bent over",
        do="Cap them, or bend them over, until the concrete is placed.",
        brief="Cap or bend them until the concrete is placed.",
        source="29 CFR 1926.701(b), from memory",
    )
    lifting = caution(
        "Heavy bags",
        Severity.CAUTION,
        CrewHealth.lifted > CrewHealth.max_lift,
        "A bag is heavier than one person should lift; the number is its weight.",
        CrewHealth.lifted,
        "lb/bag",
        usual="51 lb at most in the best posture, and less to the side or from the ground",
        do="Lift bags by two people, or buy smaller bags.",
        source="NIOSH lifting equation (1994), from memory",
    )
    backing = caution(
        "Truck backing",
        Severity.NOTE,
        Order.trucks > 0,
        "Mixer trucks back up to the pour; the number is how many.",
        Order.trucks,
        "truck",
        usual="a spotter in the driver's sight; 10 ft from overhead lines with chute and boom",
        do="Name the spotter, look up for lines, and keep people out from behind the truck.",
        brief="Name a spotter, look up for lines, keep clear.",
        source="29 CFR 1926.601(b)(4) and 1926.1408, from memory",
    )
    closed_walk = caution(
        "Walk or lane closed",
        Severity.CAUTION,
        Permissions.lane_closed.is_("yes"),
        "The work closes a public walk or a lane; the number is the days.",
        OnSite.days_closed,
        "",
        usual="a detour that wheelchairs can use, with signs and barricades that a cane finds",
        do="Ask for the local permit, plan the detour, and price its signs.",
        brief="Get the permit, plan the detour, price its signs.",
        source="MUTCD part 6, PROWAG R303 and R402, from memory; local law",
    )
    closed_walk_unknown = caution(
        "Walk or lane closed, not asked",
        Severity.NOTE,
        both(Permissions.right_of_way.is_("yes"), Permissions.lane_closed.is_(NOT_ASKED)),
        "Whether the work in the right of way closes a walk or a lane was not asked.",
        OnSite.days_closed,
        "",
        usual="a closed walk or lane needs a permit, a detour and signs",
        do='Ask, and type yes or no as "Walk or lane closed".',
        source="MUTCD part 6, from memory; local law",
    )
    gear = caution(
        "Breaker and saw",
        Severity.NOTE,
        DustHours.loud > 0,
        "A breaker or a saw throws chips and is loud; the number is the hours.",
        DustHours.loud,
        "h",
        usual="safety glasses, hearing protection, boots with toe caps",
        do="Wear them, and have people near by wear them too.",
        source="29 CFR 1926.28, 1926.52, 1926.96 and 1926.102, from memory",
    )
    saw_respirator = caution(
        "Long hours of sawing",
        Severity.CAUTION,
        DustHours.max_sawing < SAWING_BY_HAND,
        "Cutting with a hand-held saw takes longer than a shift allows without a respirator.",
        SAWING_BY_HAND,
        "h",
        usual="outdoors with water: none up to 4 h a shift, then a protection factor of 10",
        do="Provide respirators that fit, share the work, or use a walk-behind saw.",
        brief="Respirators, shared work, or a walk-behind saw.",
        source="29 CFR 1926.1153 table 1, partly from memory; state law",
    )
    commercial_license = worst(
        "Commercial license",
        Severity.CAUTION,
        "Truck and trailer are rated so high that the driver needs a commercial license.",
        CommercialLicense.rating,
        usual="from 26,001 lb combined, with a trailer over 10,000 lb",
        do="Send a driver who has one, a lighter trailer, or a hired truck.",
        brief="Licensed driver, lighter trailer, or hired truck.",
        source="49 CFR 383.5, from memory; state law",
    )
    fumes = caution(
        "Epoxy and solvents",
        Severity.NOTE,
        either(CrewHealth.liquids > 0, total(EpoxyUsed.used) > 0),
        "Epoxy, bonding agent, sealer or a curing compound with solvents is used.",
        CrewHealth.liquids,
        "gal",
        usual="nitrile gloves, moving air, no flame; skin that has epoxy on it is washed at once",
        do="Read each label and safety data sheet, and keep it on site.",
        brief="Read each label and safety data sheet.",
        source="29 CFR 1910.1200 and product labels, from memory",
    )
    roots = caution(
        "Roots of trees",
        Severity.NOTE,
        total(RootsCut.plants) > 0,
        "Roots are cut; those of a protected tree may need a permit. The number is the plants.",
        total(RootsCut.plants),
        "each",
        usual="no root over 2 in of a tree that stays is cut without asking",
        do="Ask the owner and the city before cutting roots of a tree that stays.",
        brief="Ask owner and city before cutting their roots.",
        source="common practice, no source; local tree ordinances",
    )
