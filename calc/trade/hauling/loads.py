"""Loads of the chosen haul plan: for each pile its loads, fill limit, disposal site and trip times."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.choice import Choice
from calc.trade.hauling.disposal_options import BestDisposal, LoadCount
from calc.trade.hauling.piles import LoadMix, SiteSpec, VehicleSpec
from calc.trade.hauling.plans import CONCRETE, GREEN, SOIL, PlanSplit
from calc.trade.levels import HAULED

_SHEET = "Dig and haul"


class Hauler(Section, title="Haul vehicle", sheet=_SHEET):
    """0 if the company book has no vehicle: the piles are then given in yd3 and tons, without loads."""

    room = line(
        "Heaped capacity, vehicle chosen", "yd3", at(VehicleSpec.room, Choice.vehicle), source="looked up by row"
    )
    payload = line("Payload, vehicle chosen", "ton", at(VehicleSpec.payload, Choice.vehicle), source="looked up by row")
    floor = line(
        "Bed floor area, vehicle chosen", "ft2", at(VehicleSpec.floor, Choice.vehicle), source="looked up by row"
    )
    hour = line(
        "Hourly cost, vehicle chosen",
        "$/h",
        at(VehicleSpec.hour, Choice.vehicle),
        source="looked up by row; with its driver",
    )
    mile = line(
        "Cost per mile, vehicle chosen", "$/mile", at(VehicleSpec.mile, Choice.vehicle), source="looked up by row"
    )


class Clock(Section, title="Workday", sheet=_SHEET):
    """Time of a workday that is left for trips."""

    day = factor("Working day", "h", 8, low=6, high=12, source="common practice, no source")
    set_up = factor("Set-up before the first trip", "h", 1.5, low=0.5, high=3, source="common practice, no source")
    step = factor(
        "Dump rate cheaper by",
        "$/ton",
        10,
        low=1,
        high=50,
        source="company policy: to see how much farther a cheaper site may be",
    )
    starts = factor("Workday starts at", "h", 7, low=5, high=10, source="common practice, no source: hour of the day")

    trips = line("Trip hours per day", "h", largest(0, day - set_up), source="working day less set-up")
    days = line(
        "Haul days",
        "days",
        when(trips > 0, round_up(Choice.hours / trips), 0),
        source="trip hours over trip hours per day, rounded up",
    )


class Hauled(Section, title="Loads hauled", each=HAULED, sheet=_SHEET):
    """Each pile of the plan chosen. An overweight load is never planned; the fill limit prevents it."""

    there = line(
        "Pile in the plan",
        "",
        by_row(
            HAULED,
            at(PlanSplit.green, Choice.plan),
            at(PlanSplit.soil, Choice.plan),
            at(PlanSplit.concrete, Choice.plan),
            1,
        ),
        source="1 for a pile that the plan hauls separately, and for the mixed rest",
    )
    place = line(
        "Row of pile and vehicle",
        "",
        (Choice.vehicle - 1) * greatest(LoadMix.number) + by_row(HAULED, GREEN, SOIL, CONCRETE, THREE + Choice.plan),
        source="row number among all piles on all vehicles",
    )
    loose = line(
        "Loose volume hauled",
        "yd3",
        there * at(LoadMix.loose, by_row(HAULED, GREEN, SOIL, CONCRETE, THREE + Choice.plan)),
        source="looked up by row; 0 for a pile that is not in the plan",
        adds=True,
    )
    tons = line(
        "Tons hauled",
        "ton",
        there * at(LoadMix.tons, by_row(HAULED, GREEN, SOIL, CONCRETE, THREE + Choice.plan)),
        source="looked up by row; 0 for a pile that is not in the plan",
        adds=True,
    )
    by_room = line(
        "Loads by volume",
        "load",
        there * at(LoadCount.by_room, place),
        source="loose volume over heaped capacity, rounded up",
    )
    by_weight = line(
        "Loads by weight", "load", there * at(LoadCount.by_weight, place), source="tons over payload, rounded up"
    )
    loads = line(
        "Loads hauled", "load", largest(by_room, by_weight), source="larger of loads by volume and by weight", adds=True
    )
    governs = line(
        "Load limited by",
        "",
        when(loads > 0, when(by_weight > by_room, "weight", "volume"), "no load"),
        source="weight, if it needs more loads than volume does",
    )
    fill = line(
        "Fill limit",
        "yd3",
        when(
            both(loads > 0, tons > 0),
            when(Hauler.room > 0, smallest(Hauler.room, Hauler.payload * loose / tons), Hauler.payload * loose / tons),
            0,
        ),
        source="loose volume that weighs as much as the payload, not above the heaped capacity",
    )
    inches = line(
        "Fill height in the bed",
        "in",
        when(Hauler.floor > 0, fill * FT3_PER_YD3 * IN_PER_FT / Hauler.floor, 0),
        source="fill limit over bed floor area, level load",
    )
    on_one = line("Tons per load", "ton/load", when(loads > 0, tons / loads, 0), source="divided evenly over the loads")
    goes = line(
        "Site is known",
        "",
        there * at(BestDisposal.fits, place),
        source="1 if a site accepts the pile and has rates",
    )
    site = line(
        "Row of the disposal site", "", goes * at(BestDisposal.place, place), source="the cheapest site for the pile"
    )
    site_name = line(
        "Disposal site", "", when(site > 0, at(SiteSpec.name, largest(1, site)), "none"), source="looked up by row"
    )
    tipping = line("Dump fee", "$", goes * at(BestDisposal.tipping, place), source="looked up by row", adds=True)
    dirty = line(
        "Contamination surcharge, expected",
        "$",
        goes * at(BestDisposal.dirty, place),
        source="surcharge times its probability",
        adds=True,
    )
    trip = line(
        "Round trip",
        "h",
        when(site > 0, at(SiteSpec.trip, largest(1, site)), 0),
        source="site and back, with the time at the site",
    )
    in_a_day = line(
        "Trips per day",
        "trip",
        when(trip > 0, round_down(Clock.trips / trip), 0),
        source="trip hours per day over round trip, rounded down",
    )
    back = line(
        "Dump and return time", "h", when(site > 0, at(SiteSpec.back, largest(1, site)), 0), source="looked up by row"
    )
    first = line(
        "First trip leaves",
        "h",
        when(site > 0, largest(Clock.starts + Clock.set_up, at(SiteSpec.leave, largest(1, site))), 0),
        source="hour of the day: after set-up, and not to arrive before the site opens",
    )
    closes = line(
        "Site closes",
        "h",
        when(site > 0, at(SiteSpec.closes, largest(1, site)), 0),
        source="hour of the day; 0 if not known",
    )
    piece = line(
        "Largest concrete piece accepted",
        "in",
        when(site > 0, at(SiteSpec.piece, largest(1, site)), 0) * by_row(HAULED, 0, 0, 1, 1),
        source="looked up by row, for piles that may have concrete; 0 if not known",
    )
    last = line(
        "Last load arrives",
        "h",
        when(
            both(site > 0, loads > 0, in_a_day > 0),
            first + smallest(loads.count, in_a_day.count) * trip - back,
            0,
        ),
        source="hour of the day: first trip plus round trips, less dump and return time of the last",
    )
    late = line(
        "Last load late by",
        "h",
        when(both(last > 0, closes > 0), largest(0, last - closes), 0),
        source="hours after the site closes; 0 if no closing hour is given",
    )
    worth = line(
        "Worth driving farther, one way",
        "min",
        when(
            both(site > 0, Hauler.hour > 0),
            on_one
            * Clock.step
            * exact(1, "load")
            / (Hauler.hour * TWO / MIN_PER_H + Hauler.mile * TWO * at(SiteSpec.speed, largest(1, site))),
            0,
        ),
        source="saving of a cheaper dump rate per load, over the cost of one more minute each way",
    )
