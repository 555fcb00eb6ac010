"""Whole haul plans side by side: each plan with each vehicle.

Gate rates alone do not decide: minimums, trips and the labor of parting piles do too.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.disposal_options import BestDisposal, LoadCount
from calc.trade.hauling.piles import Pile, VehicleSpec
from calc.trade.inputs.hauling import Fleet
from calc.trade.inputs.job import Vehicle
from calc.trade.levels import PLAN, VEHICLE
from calc.trade.prices.wage_rates import CrewRate
from calc.trade.takeoff.dig import Spoil

_SHEET = "Dig and haul"
ONE_DOLLAR, ONE_LOAD = exact(1, "$"), exact(1, "load")
GREEN, SOIL, CONCRETE = (exact(place) for place in (1, 2, 3))
"""The rows of the piles that are hauled apart. The pile that a plan leaves mixed stands as many rows further on."""


class Separating(Section, title="Parting the piles", sheet=_SHEET):
    """Keeping green apart takes hours; they are disposal, and never in the hours of the crew."""

    rate = factor("Keeping green apart", "h/yd3", 0.25, low=0.1, high=0.5, source="common practice, no source")
    hours = line("Hours to keep green apart", "h", Spoil.green_loose * rate, source="by the loose yard of green")


class PlanSplit(Section, title="Haul plans", each=PLAN, sheet=_SHEET):
    """What each plan hauls apart; all else of it lies mixed. A plan that comes to an earlier one drops out."""

    green = line("Green apart", "", by_row(PLAN, 0, 1, 0, 1, 1, 0), source="1 where it is hauled by itself")
    soil = line("Soil apart", "", by_row(PLAN, 0, 0, 0, 1, 0, 1), source="1 where it is hauled by itself")
    concrete = line("Old concrete apart", "", by_row(PLAN, 0, 0, 1, 1, 1, 0), source="1 where it is hauled by itself")
    parts = line(
        "What it parts here",
        "",
        green * at(Pile.some, GREEN) * exact(100)
        + soil * at(Pile.some, SOIL) * exact(12)
        + concrete * at(Pile.some, CONCRETE),
        source="a number that is the same for plans that come to the same here",
    )
    repeats = line(
        "Repeats an earlier one",
        "",
        when(equals(first_in_group(parts), row_number(PLAN)), 0, 1),
        source="1 where a pile is empty, so that the plan is the same as one above",
    )
    chosen = line(
        "Chosen by hand",
        "",
        when(same_word(row_word(PLAN), Fleet.plan), 1, 0),
        source="haul plan of the job",
        adds=True,
    )
    labor = line(
        "Piles are parted by hand",
        "",
        when(
            both(
                at(Pile.some, GREEN) > 0,
                at(Pile.some, SOIL) + at(Pile.some, CONCRETE) > 0,
                either(green > 0, soil > 0),
            ),
            1,
            0,
        ),
        source="1 where green is kept apart from something else",
    )
    number = line("Row of the plan", "", row_number(PLAN), source="to find its rows again")


def _of_its_piles(of_pile: Line) -> Expr:
    """The sum over the piles of a plan on one vehicle: what it hauls apart, and what it leaves mixed."""
    return (
        PlanSplit.green * at(of_pile, GREEN, of=VEHICLE)
        + PlanSplit.soil * at(of_pile, SOIL, of=VEHICLE)
        + PlanSplit.concrete * at(of_pile, CONCRETE, of=VEHICLE)
        + at(of_pile, THREE + row_number(PLAN), of=VEHICLE)
    )


class PlanCost(Section, title="Each plan with each vehicle", each=PLAN * VEHICLE, sheet=_SHEET):
    """Whole plans, to the cent. Ties go to fewer loads, then to the order of the plans and of the vehicles."""

    loads = line(
        "Loads",
        "load",
        _of_its_piles(LoadCount.loads),
        source="of the piles of the plan",
    )
    hours = line(
        "Trip hours",
        "h",
        _of_its_piles(BestDisposal.hours),
        source="of the piles of the plan",
    )
    tipping = line(
        "Tipping",
        "$",
        _of_its_piles(BestDisposal.tipping),
        source="of the piles of the plan",
    )
    dirty = line(
        "Dirty loads",
        "$",
        PlanSplit.soil * at(BestDisposal.dirty, SOIL, of=VEHICLE),
        source="soil that is hauled apart",
    )
    trips = line(
        "Trips",
        "$",
        _of_its_piles(BestDisposal.trips),
        source="of the piles of the plan",
    )
    topped = line(
        "Up to the least hours of a hire",
        "$",
        when(
            both(Vehicle.hired.is_("yes"), loads > 0),
            largest(0, Vehicle.minimum_hours - hours) * VehicleSpec.hour,
            0,
        ),
        source="once a plan, at the hour of the vehicle",
    )
    parting = line(
        "Parting the piles",
        "$",
        PlanSplit.labor * Separating.hours * CrewRate.mix,
        source="hours for the loose green at crew mix, where it is kept apart",
    )
    cost = line(
        "The plan costs",
        "$",
        money(tipping + dirty + trips + topped + parting),
        source="rounded once for the plan",
    )
    lacks = line(
        "Piles without a site",
        "",
        _of_its_piles(BestDisposal.lacks),
        source="piles that no known site takes",
    )
    feasible = line(
        "Can be done",
        "",
        when(
            either(
                total(Pile.tons) <= 0,
                both(lacks <= 0, VehicleSpec.known > 0, either(PlanSplit.labor <= 0, CrewRate.mix > 0)),
            ),
            1,
            0,
        ),
        source="every pile has a site, the vehicle its figures and the parting its wage; or there is nothing to haul",
    )
    competes = line(
        "Is compared",
        "",
        feasible * VehicleSpec.free * (1 - PlanSplit.repeats),
        source="by a vehicle of the fleet, and no earlier plan is the same",
        adds=True,
    )
    wanted = line(
        "May win",
        "",
        when(total(PlanSplit.chosen) > 0, feasible * PlanSplit.chosen * VehicleSpec.picked, competes),
        source="all that are compared, or only what was chosen by hand",
        adds=True,
    )
    compared = line(
        "Compared",
        "$",
        when(wanted > 0, cost, greatest(cost) + ONE_DOLLAR),
        source="what may not win is put behind the dearest",
    )
    tie = line(
        "Loads of the cheapest",
        "load",
        when(equals(compared, least(compared)), loads, greatest(loads) + ONE_LOAD),
        source="ties go to fewer loads",
    )
    plan = line("Row of its plan", "", PlanSplit.number, source="to find its rows again")
    vehicle = line("Row of its vehicle", "", row_number(VEHICLE), source="to find its rows again")
