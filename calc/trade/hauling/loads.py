"""What is hauled: each pile of the plan that was taken, its loads, its fill line, its site and its clock."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.choice import Choice
from calc.trade.hauling.disposal_options import BestDisposal, LoadCount
from calc.trade.hauling.piles import LoadMix, SiteSpec, VehicleSpec
from calc.trade.hauling.plans import CONCRETE, GREEN, SOIL, PlanSplit
from calc.trade.levels import HAULED

_SHEET = "Dig and haul"


class Hauler(Section, title="The vehicle that hauls", sheet=_SHEET):
    """0 where the house book has no vehicle: the piles then stand in yd3 and tons, and loads say so."""

    room = line("Its room", "yd3", at(VehicleSpec.room, Choice.vehicle), source="of that vehicle")
    payload = line("Its payload", "ton", at(VehicleSpec.payload, Choice.vehicle), source="of that vehicle")
    floor = line("Its floor", "ft2", at(VehicleSpec.floor, Choice.vehicle), source="of that vehicle")
    hour = line("Its hour", "$/h", at(VehicleSpec.hour, Choice.vehicle), source="with its driver")
    mile = line("Its mile", "$/mile", at(VehicleSpec.mile, Choice.vehicle), source="of that vehicle")


class Clock(Section, title="The clock", sheet=_SHEET):
    """How much of a day is left for trips."""

    day = factor("Working day", "h", 8, low=6, high=12, source="common practice, no source")
    set_up = factor("Of it before the first trip", "h", 1.5, low=0.5, high=3, source="common practice, no source")
    step = factor("A gate cheaper by", "$/ton", 10, low=1, high=50, source="house rule: to see how far it may lie")
    starts = factor("The day starts at", "h", 7, low=5, high=10, source="common practice, no source: hour of the day")

    trips = line("Hours of trips in a day", "h", largest(0, day - set_up), source="the day, less what comes before")
    days = line(
        "Haul days",
        "days",
        when(trips > 0, round_up(Choice.hours / trips), 0),
        source="trip hours over the hours of trips in a day",
    )


class Hauled(Section, title="What is hauled", each=HAULED, sheet=_SHEET):
    """Each pile of the plan that is taken. Overweight is never planned; the fill line keeps it so."""

    there = line(
        "Hauled by itself",
        "",
        by_row(
            HAULED,
            at(PlanSplit.green, Choice.plan),
            at(PlanSplit.soil, Choice.plan),
            at(PlanSplit.concrete, Choice.plan),
            1,
        ),
        source="what the plan parts; what is left lies mixed",
    )
    place = line(
        "Row of the pile",
        "",
        (Choice.vehicle - 1) * greatest(LoadMix.number) + by_row(HAULED, GREEN, SOIL, CONCRETE, THREE + Choice.plan),
        source="of that pile on that vehicle",
    )
    loose = line(
        "Hauled, loose",
        "yd3",
        there * at(LoadMix.loose, by_row(HAULED, GREEN, SOIL, CONCRETE, THREE + Choice.plan)),
        source="of the pile",
        adds=True,
    )
    tons = line(
        "Hauled, weight",
        "ton",
        there * at(LoadMix.tons, by_row(HAULED, GREEN, SOIL, CONCRETE, THREE + Choice.plan)),
        source="of the pile",
        adds=True,
    )
    by_room = line(
        "Loads by room",
        "load",
        there * at(LoadCount.by_room, place),
        source="loose volume over the room of the heaped box",
    )
    by_weight = line(
        "Loads by weight", "load", there * at(LoadCount.by_weight, place), source="weight over the payload"
    )
    loads = line("Loads", "load", largest(by_room, by_weight), source="whichever is more; no pile, no load", adds=True)
    governs = line(
        "Governed by",
        "",
        when(loads > 0, when(by_weight > by_room, "weight", "room"), "no load"),
        source="weight where it asks for more loads than room does",
    )
    fill = line(
        "Fill line",
        "yd3",
        when(
            both(loads > 0, tons > 0),
            when(Hauler.room > 0, smallest(Hauler.room, Hauler.payload * loose / tons), Hauler.payload * loose / tons),
            0,
        ),
        source="the loose volume that weighs as much as the payload, or the full box of a vehicle that has one",
    )
    inches = line(
        "Fill line in the box",
        "in",
        when(Hauler.floor > 0, fill * FT3_PER_YD3 * IN_PER_FT / Hauler.floor, 0),
        source="the height of the load over the floor of the bed, level",
    )
    on_one = line("Tons on a load", "ton/load", when(loads > 0, tons / loads, 0), source="split evenly")
    goes = line(
        "Goes to a known site",
        "",
        there * at(BestDisposal.fits, place),
        source="1 where a site takes it and has figures",
    )
    site = line(
        "Row of the site", "", goes * at(BestDisposal.place, place), source="the cheapest of its kind for this pile"
    )
    site_name = line("Site", "", when(site > 0, at(SiteSpec.name, largest(1, site)), "none"), source="by its row")
    tipping = line("Tipping", "$", goes * at(BestDisposal.tipping, place), source="of that site", adds=True)
    dirty = line(
        "Dirty loads", "$", goes * at(BestDisposal.dirty, place), source="surcharge times its chance", adds=True
    )
    trip = line("One trip", "h", when(site > 0, at(SiteSpec.trip, largest(1, site)), 0), source="to that site and back")
    in_a_day = line(
        "Trips in a day",
        "trip",
        when(trip > 0, round_down(Clock.trips / trip), 0),
        source="hours of trips in a day over one trip",
    )
    back = line(
        "Dwell and way back", "h", when(site > 0, at(SiteSpec.back, largest(1, site)), 0), source="of that site"
    )
    first = line(
        "First trip leaves at",
        "h",
        when(site > 0, largest(Clock.starts + Clock.set_up, at(SiteSpec.leave, largest(1, site))), 0),
        source="hour of the day: after the set-up, and not before the site opens",
    )
    closes = line(
        "The site closes at", "h", when(site > 0, at(SiteSpec.closes, largest(1, site)), 0), source="0 when not known"
    )
    piece = line(
        "Largest piece of concrete that it takes",
        "in",
        when(site > 0, at(SiteSpec.piece, largest(1, site)), 0) * by_row(HAULED, 0, 0, 1, 1),
        source="of that site, for piles that may hold concrete; 0 when not known",
    )
    last = line(
        "The last load of a day is there at",
        "h",
        when(
            both(site > 0, loads > 0, in_a_day > 0),
            first + smallest(loads.count, in_a_day.count) * trip - back,
            0,
        ),
        source="hour of the day: trips one after the other from the first, less dwell and the way back of the last",
    )
    late = line(
        "After the site closes",
        "h",
        when(both(last > 0, closes > 0), largest(0, last - closes), 0),
        source="hours by which the last load is too late; 0 where no closing hour is given",
    )
    worth = line(
        "Worth this much further, one way",
        "min",
        when(
            both(site > 0, Hauler.hour > 0),
            on_one
            * Clock.step
            * exact(1, "load")
            / (Hauler.hour * TWO / MIN_PER_H + Hauler.mile * TWO * at(SiteSpec.speed, largest(1, site))),
            0,
        ),
        source="what a cheaper gate saves on a load, over what a minute more each way costs",
    )
