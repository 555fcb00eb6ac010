"""A trade too small to be of use, with every kind of level and every way of going between levels.

The heart is tried on it: on its numbers, and on the sheets that :mod:`small_layout` makes of them. It has areas with
edges, plans and vehicles in pairs, slots for trucks, ways to choose from, and mixes to look up.
"""

from __future__ import annotations

from calc.declare import (
    FT3_PER_YD3,
    IN_PER_FT,
    Section,
    argmin,
    at,
    choice,
    count_of,
    factor,
    factors,
    given,
    greatest,
    if_given,
    is_word,
    joined,
    least,
    line,
    look_up,
    money,
    named_rows,
    price,
    round_up,
    rounded,
    row_number,
    row_word,
    slot_rows,
    text,
    total,
    typed_rows,
    when,
    yes_no,
)
from calc.formula.across import before, first, first_in_group, group_total, lookup_at_or_below, lookup_by_key, running

AREA = typed_rows("area", across=True)
EDGE = typed_rows("edge", AREA)
PLAN = typed_rows("plan")
VEHICLE = typed_rows("vehicle")
HAUL = PLAN * VEHICLE
DRIVE = EDGE * VEHICLE
TRUCK = slot_rows("truck")
WAY = named_rows("way", "by hand", "by cart", "by pump")
MIX = named_rows("mix", "plain", "grey", "red", "buff", "brown", "black", "white")
"""Too many words to stand side by side."""

ASKED = "asked in the test"
"""The source of everything here."""


class Bid(Section, title="Bid", table="Bid"):
    """What is typed once for the job."""

    mix = choice("Mix", *MIX.axis.words, default="plain")
    spare = given("Spare", "yd3")
    client = text("Client")
    pump = price("Pump", "$/yd3")


class Area(Section, title="Areas", each=AREA, table="Areas"):
    """What is typed for each area."""

    length = given("Length", "ft", required=True)
    width = given("Width", "ft", required=True)
    thickness = given("Thickness", "in", default=4)


class Edge(Section, title="Edges", each=EDGE, table="Edges"):
    """What is typed for each edge of an area."""

    run = given("Length for joint layout", "ft", required=True)
    railed = yes_no("Railed")


class Plan(Section, title="Plans", each=PLAN, table="Plans"):
    """What is typed for each plan of hauling."""

    soil = given("Soil", "yd3", required=True)


class Vehicle(Section, title="Vehicles", each=VEHICLE, table="Vehicles"):
    """What is typed for each vehicle."""

    payload = given("Payload", "yd3/load", required=True)
    rate = given("Rate", "$/load", required=True)


class Mix(Section, title="Mixes", each=MIX):
    """What each mix costs."""

    cost = factors("Cost of the mix", "$/yd3", 120, 131.5, 149.25, 152, 155, 160.75, 171.1, source=ASKED)


class Slab(Section, title="Slabs", each=AREA, sheet="Worked out"):
    """Numbers of an area; the totals over its edges come up to it."""

    area = line("Slab area", "ft2", Area.length * Area.width, source=ASKED, adds=True)
    volume = line(
        "Slab volume",
        "yd3",
        area * Area.thickness / IN_PER_FT / FT3_PER_YD3,
        source=ASKED,
        adds=True,
        may_be_overridden=True,
    )
    share = line("Share of the whole", "", when(total(area) > 0, area / total(area), 0), source=ASKED)
    run = line("Run of its edges", "ft", total(Edge.run, AREA), source=ASKED)
    number = line("Number of the area", "", row_number(AREA), source=ASKED)
    says = line("Called", "", joined("no. ", count_of(row_number(AREA), "each"), " is ", row_word(AREA)), source=ASKED)


class Rail(Section, title="Rails", each=EDGE, sheet="Worked out"):
    """Numbers of an edge; those of its area, and of the whole job, come down to it."""

    railed = line("Railed run", "ft", when(Edge.railed.is_("yes"), Edge.run, 0), source=ASKED, adds=True)
    band = line("Band", "ft2", Edge.run * Area.width, source=ASKED)
    share = line("Share of all slabs", "", when(total(Slab.area) > 0, Slab.area / total(Slab.area), 0), source=ASKED)
    of_area = line("Number of its area", "", row_number(AREA), source=ASKED)
    area_called = line("Its area", "", joined("of ", row_word(AREA)), source=ASKED)
    of_run = line("Run of all edges of its area", "ft", total(Edge.run, AREA), source=ASKED)
    earlier = line("Run of the edge before", "ft", before(Edge.run, AREA, 0), source=ASKED)
    opening = line("Run of the first edge", "ft", first(Edge.run, AREA), source=ASKED)
    found = line("Area found by its number", "ft2", lookup_by_key(Slab.area, Slab.number, of_area), source=ASKED)
    alike = line("Runs of areas with this number", "ft", group_total(Edge.run, of_area), source=ASKED)
    twin = line("First edge of areas with this number", "", first_in_group(of_area), source=ASKED)


class Railed(Section, title="Railed areas", each=AREA, sheet="Worked out"):
    """Up again, by way of a line."""

    run = line("Railed run of the area", "ft", total(Rail.railed, AREA), source=ASKED)


class Whole(Section, title="Whole job", sheet="Worked out"):
    """Numbers of the job."""

    capacity = factor("Capacity", "yd3/truck", 2.5, source=ASKED)

    longest = line("Longest edge", "ft", greatest(Edge.run), source=ASKED)
    shortest = line("Shortest edge", "ft", least(Edge.run), source=ASKED)
    smallest = line("Row of the smallest slab", "", argmin(Slab.area), source=ASKED)
    thickness = line("Thickness of the smallest slab", "in", at(Area.thickness, smallest), source=ASKED)
    cheapest = line("Cost of the cheapest mix", "$/yd3", at(Mix.cost, argmin(Mix.cost)), source=ASKED)
    ordered = line("Ordered", "yd3", total(Slab.volume) + if_given(Bid.spare, 0), source=ASKED)
    trucks = line("Truck loads", "truck", round_up(ordered / capacity), source=ASKED)
    mix_cost = line("Cost of the mix taken", "$/yd3", look_up(Mix.cost, Bid.mix), source=ASKED)
    cost = line("Cost of the mix ordered", "$", money(mix_cost * ordered), source=ASKED)


class Truck(Section, title="Truck loads", each=TRUCK, sheet="Worked out", slots_for=Whole.trucks):
    """A slot that is not in use holds 0."""

    rides = line(
        "Truck in use",
        "truck",
        when(row_number(TRUCK) <= Whole.trucks.count, count_of(1, "truck"), 0),
        source=ASKED,
        adds=True,
    )


class Way(Section, title="Ways", each=WAY, sheet="Worked out"):
    """Named rows of which one wins."""

    name = line("Way", "", row_word(WAY), source=ASKED)
    from_trucks = line("From so many trucks", "truck", count_of(row_number(WAY) - 1, "truck"), source=ASKED)
    rate = line(
        "Rate of the way",
        "$/yd3",
        when(is_word(row_word(WAY), "by pump"), if_given(Bid.pump, 0), Whole.mix_cost),
        source=ASKED,
    )
    cost = line("Cost of the method", "$", money(rate * Whole.ordered), source=ASKED)


class Won(Section, title="The way that wins", sheet="Worked out"):
    """The least of the rows; the first of them when several are least."""

    row = line("Row of the way", "", argmin(Way.cost), source=ASKED)
    name = line("The way", "", at(Way.name, row), source=ASKED)
    cost = line("Cost of the best way", "$", at(Way.cost, row), source=ASKED)
    by_trucks = line(
        "Way by the number of trucks", "", lookup_at_or_below(Way.name, Way.from_trucks, Whole.trucks), source=ASKED
    )
    sentence = line("In words", "", joined("way ", count_of(row, "each"), ", ", name), source=ASKED)


class Haul(Section, title="Hauls", each=HAUL, sheet="Worked out"):
    """A row for each plan with each vehicle."""

    loads = line("Loads", "load", round_up(Plan.soil / Vehicle.payload), source=ASKED, adds=True)
    so_far = line("Loads of the plan so far", "load", running(loads, PLAN), source=ASKED)
    cost = line("Cost of the loads", "$", money(loads * Vehicle.rate), source=ASKED)


class PlanCost(Section, title="Plans by cost", each=PLAN, sheet="Worked out"):
    """Up from pairs to one of the two."""

    loads = line("Loads, plan chosen", "load", total(Haul.loads, PLAN), source=ASKED)
    cost = line("Least cost of the plan", "$", least(Haul.cost, PLAN), source=ASKED)
    dearest = line("Greatest cost of the plan", "$", greatest(Haul.cost, PLAN), source=ASKED)
    place = line("Vehicle that the plan is cheapest with", "", argmin(Haul.cost, PLAN), source=ASKED)
    best_loads = line("Loads of the plan with that vehicle", "load", at(Haul.loads, place, of=PLAN), source=ASKED)


class VehicleCost(Section, title="Vehicles by cost", each=VEHICLE, sheet="Worked out"):
    """Up from pairs to the other of the two."""

    cost = line("Cost of the vehicle", "$", total(Haul.cost, VEHICLE), source=ASKED)


class Drive(Section, title="Drives", each=DRIVE, sheet="Worked out"):
    """A pair of which one lies within something: three levels down."""

    effort = line("Effort", "ft*$/load", Edge.run * Vehicle.rate, source=ASKED)
    slab_share = line("Share of the slab", "", Slab.share, source=ASKED)
    band = line("Band of the edge", "ft2", Rail.band, source=ASKED)


class Driven(Section, title="Driven areas", each=AREA, sheet="Worked out"):
    """Up from a pair past one level."""

    effort = line("Effort of the area", "ft*$/load", total(Drive.effort, AREA), source=ASKED)


class Cheapest(Section, title="Cheapest haul", sheet="Worked out"):
    """The least over pairs, and the total of totals."""

    cost = line("Least cost of a haul", "$", least(Haul.cost), source=ASKED)
    row = line("Row of the least cost", "", argmin(Haul.cost), source=ASKED)
    loads = line("Loads of the cheapest haul", "load", at(Haul.loads, row), source=ASKED)
    efforts = line("All efforts", "ft*$/load", total(Driven.effort), source=ASKED)
    each_load = line("Cost of one load, rounded", "$/load", when(loads > 0, rounded(cost / loads, 2), 0), source=ASKED)


SECTIONS: tuple[type[Section], ...] = (
    Bid,
    Area,
    Edge,
    Plan,
    Vehicle,
    Mix,
    Slab,
    Rail,
    Railed,
    Whole,
    Truck,
    Way,
    Won,
    Haul,
    PlanCost,
    VehicleCost,
    Drive,
    Driven,
    Cheapest,
)
