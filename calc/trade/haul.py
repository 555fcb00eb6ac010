"""The haul that was chosen, the runner-up beside it, and each pile with its loads and its fill line."""

from __future__ import annotations

from calc.declare import (
    FT3_PER_YD3,
    IN_PER_FT,
    MIN_PER_H,
    PERCENT,
    THREE,
    TWO,
    Section,
    at,
    both,
    by_row,
    count_of,
    equals,
    exact,
    factor,
    greatest,
    joined,
    largest,
    least,
    line,
    opposite,
    per_one,
    place_of_least,
    round_down,
    round_up,
    row_number,
    row_word,
    smallest,
    total,
    when,
)
from calc.trade.haul_inputs import Fleet
from calc.trade.haul_legs import Carry, Leg
from calc.trade.haul_piles import Bed, Gate, Heap
from calc.trade.haul_plans import CONCRETE, GREEN, SOIL, Offer, Parting
from calc.trade.inputs import Site
from calc.trade.levels import HAULED, PLAN, VEHICLE

_SHEET = "Dig and haul"
ONE_DOLLAR = exact(1, "$")
ALL_APART = "D: all apart"


class PlanWord(Section, title="Plans by name", each=PLAN, sheet=_SHEET):
    """The row of the plan that is taken when none can be compared: the chosen one, else all apart."""

    name = line("Plan", "", row_word(PLAN), source="the haul plans")
    taken = line(
        "Taken without prices",
        "",
        when(
            total(Parting.chosen) > 0,
            Parting.chosen * Parting.number,
            by_row(PLAN, 0, 0, 0, Parting.number, 0, 0),
        ),
        source="the chosen plan, else all apart",
        adds=True,
    )


class Choice(Section, title="The haul that wins", sheet=_SHEET):
    """With the runner-up beside it, and the difference, so that it can be overruled knowing the price."""

    near_money = factor(
        "Nearly a tie, by money", "$", 25, low=0, high=100, source="house rule: below that the clock decides"
    )
    near_share = factor("Nearly a tie, by share", "%", 2, low=0, high=10, source="house rule")

    known = line(
        "Plans that may win",
        "",
        total(Offer.wanted),
        source="0 when no plan can be compared: the house book lacks figures",
    )
    winner = line(
        "Row of the winner", "", place_of_least(Offer.tie), source="least cost, then fewer loads, then the order"
    )
    plan = line(
        "Row of the plan taken",
        "",
        when(known > 0, at(Offer.plan, largest(1, winner)), total(PlanWord.taken)),
        source="of the winner; without one the chosen plan, else all apart",
    )
    vehicle = line(
        "Row of the vehicle taken",
        "",
        when(
            known > 0,
            at(Offer.vehicle, largest(1, winner)),
            when(both(Fleet.by > 0, total(Parting.chosen) > 0), Fleet.by, largest(Site.vehicle, 1)),
        ),
        source="of the winner; without one the vehicle named for the job, else the first",
    )
    row = line(
        "Row of both",
        "",
        (plan - 1) * total(Bed.one) + vehicle,
        source="among all plans with all vehicles",
    )
    plan_name = line("Haul plan taken", "", at(PlanWord.name, plan), source="by its row")
    vehicle_name = line("Hauled with", "", at(Bed.name, vehicle), source="by its row")
    cost = line(
        "Haul and tipping",
        "$",
        when(both(total(Bed.one) > 0, known > 0), at(Offer.cost, row), 0),
        source="of the plan taken; 0 when it cannot be known",
    )
    why = line(
        "Why this haul",
        "",
        when(
            known > 0,
            when(
                total(Parting.chosen) > 0,
                ", chosen by hand; see Measured for the reason",
                ": the least of all plans, vehicles and sites",
            ),
            ": no plan can be compared, since the house book lacks rates or sites",
        ),
        source="haul plans",
    )
    loads = line(
        "Loads of the plan", "load", when(total(Bed.one) > 0, at(Offer.loads, row), 0), source="of the plan taken"
    )
    hours = line("Trip hours", "h", when(known > 0, at(Offer.hours, row), 0), source="of the plan taken")
    own_hours = line(
        "Trip hours of own drivers",
        "h",
        when(at(Bed.own, vehicle) > 0, hours, 0),
        source="a hired vehicle brings its driver",
    )


class Rival(Section, title="Beside the winner", each=PLAN * VEHICLE, sheet=_SHEET):
    """All that compete, but for the one that is taken, whichever of its names it goes by."""

    compared = line(
        "Compared with the winner",
        "$",
        when(
            both(
                Offer.competes > 0,
                opposite(
                    both(
                        equals(Offer.vehicle, Choice.vehicle),
                        equals(Parting.parts, at(Parting.parts, Choice.plan)),
                    )
                ),
            ),
            Offer.cost,
            greatest(Offer.cost) + ONE_DOLLAR,
        ),
        source="what cannot be compared, and the winner, are put behind the dearest",
    )


class RunnerUp(Section, title="The runner-up", sheet=_SHEET):
    """The cheapest of the others."""

    row = line("Row of the runner-up", "", place_of_least(Rival.compared), source="least, first row wins")
    known = line(
        "There is a runner-up",
        "",
        when(both(Choice.known > 0, least(Rival.compared) <= greatest(Offer.cost), total(Offer.competes) > 0), 1, 0),
        source="1 when another plan can be compared",
    )
    plan_name = line(
        "Plan of the runner-up",
        "",
        when(known > 0, at(PlanWord.name, at(Offer.plan, largest(1, row))), "none"),
        source="by its row",
    )
    vehicle_name = line(
        "Vehicle of the runner-up",
        "",
        when(known > 0, at(Bed.name, at(Offer.vehicle, largest(1, row))), "none"),
        source="by its row",
    )
    cost = line("The runner-up costs", "$", when(known > 0, at(Offer.cost, largest(1, row)), 0), source="of that plan")
    difference = line(
        "More than the winner",
        "$",
        when(known > 0, cost - Choice.cost, 0),
        source="runner-up less winner; negative where a dearer plan was chosen by hand",
    )
    gap = line("Apart by", "$", largest(difference, 0 - difference), source="whichever is the dearer")
    wash = line(
        "A wash",
        "",
        when(
            both(
                known > 0,
                Choice.loads > 0,
                gap <= largest(Choice.near_money, Choice.near_share * Choice.cost / PERCENT),
            ),
            1,
            0,
        ),
        source="1 when the difference is nearly nothing: choose by the clock",
    )
    relation = line(
        "How it stands",
        "",
        when(wash > 0, "a wash with ", when(difference < 0, "dearer than ", "next is ")),
        source="by the difference",
    )
    words = line(
        "Beside it",
        "",
        when(
            known > 0,
            joined(relation, plan_name, ", on the ", vehicle_name),
            "no other plan can be compared",
        ),
        source="the runner-up",
    )


class Hauler(Section, title="The vehicle that hauls", sheet=_SHEET):
    """0 where the house book has no vehicle: the piles then stand in yd3 and tons, and loads say so."""

    room = line("Its room", "yd3", at(Bed.room, Choice.vehicle), source="of that vehicle")
    payload = line("Its payload", "ton", at(Bed.payload, Choice.vehicle), source="of that vehicle")
    floor = line("Its floor", "ft2", at(Bed.floor, Choice.vehicle), source="of that vehicle")
    hour = line("Its hour", "$/h", at(Bed.hour, Choice.vehicle), source="with its driver")
    mile = line("Its mile", "$/mile", at(Bed.mile, Choice.vehicle), source="of that vehicle")


class Clock(Section, title="The clock", sheet=_SHEET):
    """How much of a day is left for trips."""

    day = factor("Working day", "h", 8, low=6, high=12, source="common practice, no source")
    set_up = factor("Of it before the first trip", "h", 1.5, low=0.5, high=3, source="common practice, no source")
    step = factor("A gate cheaper by", "$/ton", 10, low=1, high=50, source="house rule: to see how far it may lie")
    starts = factor("The day starts at", "h", 7, low=5, high=10, source="common practice, no source: hour of the day")

    trips = line("Hours of trips in a day", "h", largest(0, day - set_up), source="the day, less what comes before")
    days = line(
        "Haul days",
        "day",
        when(trips > 0, round_up(Choice.hours / trips), 0) * exact(1, "day"),
        source="trip hours over the hours of trips in a day",
    )


class Hauled(Section, title="What is hauled", each=HAULED, sheet=_SHEET):
    """Each pile of the plan that is taken. Overweight is never planned; the fill line keeps it so."""

    there = line(
        "Hauled by itself",
        "",
        by_row(
            HAULED,
            at(Parting.green, Choice.plan),
            at(Parting.soil, Choice.plan),
            at(Parting.concrete, Choice.plan),
            1,
        ),
        source="what the plan parts; what is left lies mixed",
    )
    place = line(
        "Row of the pile",
        "",
        (Choice.vehicle - 1) * greatest(Heap.number) + by_row(HAULED, GREEN, SOIL, CONCRETE, THREE + Choice.plan),
        source="of that pile on that vehicle",
    )
    loose = line(
        "Hauled, loose",
        "yd3",
        there * at(Heap.loose, by_row(HAULED, GREEN, SOIL, CONCRETE, THREE + Choice.plan)),
        source="of the pile",
        adds=True,
    )
    tons = line(
        "Hauled, weight",
        "ton",
        there * at(Heap.tons, by_row(HAULED, GREEN, SOIL, CONCRETE, THREE + Choice.plan)),
        source="of the pile",
        adds=True,
    )
    by_room = line(
        "Loads by room", "load", there * at(Carry.by_room, place), source="loose volume over the room of the heaped box"
    )
    by_weight = line("Loads by weight", "load", there * at(Carry.by_weight, place), source="weight over the payload")
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
        "Goes to a known site", "", there * at(Leg.fits, place), source="1 where a site takes it and has figures"
    )
    site = line("Row of the site", "", goes * at(Leg.place, place), source="the cheapest of its kind for this pile")
    site_name = line("Site", "", when(site > 0, at(Gate.name, largest(1, site)), "none"), source="by its row")
    tipping = line("Tipping", "$", goes * at(Leg.tipping, place), source="of that site", adds=True)
    dirty = line("Dirty loads", "$", goes * at(Leg.dirty, place), source="surcharge times its chance", adds=True)
    trip = line("One trip", "h", when(site > 0, at(Gate.trip, largest(1, site)), 0), source="to that site and back")
    in_a_day = line(
        "Trips in a day",
        "trip",
        when(trip > 0, count_of(round_down(Clock.trips / trip), "trip"), 0),
        source="hours of trips in a day over one trip",
    )
    back = line("Dwell and way back", "h", when(site > 0, at(Gate.back, largest(1, site)), 0), source="of that site")
    first = line(
        "First trip leaves at",
        "h",
        when(site > 0, largest(Clock.starts + Clock.set_up, at(Gate.leave, largest(1, site))), 0),
        source="hour of the day: after the set-up, and not before the site opens",
    )
    closes = line(
        "The site closes at", "h", when(site > 0, at(Gate.closes, largest(1, site)), 0), source="0 when not known"
    )
    last = line(
        "The last load of a day is there at",
        "h",
        when(
            both(site > 0, loads > 0, in_a_day > 0),
            first + smallest(per_one(loads), per_one(in_a_day)) * trip - back,
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
            / (Hauler.hour * TWO / MIN_PER_H + Hauler.mile * TWO * at(Gate.speed, largest(1, site))),
            0,
        ),
        source="what a cheaper gate saves on a load, over what a minute more each way costs",
    )
