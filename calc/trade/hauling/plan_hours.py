"""Hours of each haul plan with each vehicle: its trips, and what it makes of the preparation."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.disposal_options import BestDisposal, LoadCount
from calc.trade.hauling.piles import CONCRETE, GREEN, SOIL
from calc.trade.hauling.plans import GreenPlan, PlanSplit, Sorting
from calc.trade.hauling.vehicles import VehicleSpec
from calc.trade.inputs.work import OnSite
from calc.trade.levels import PLAN, VEHICLE
from calc.trade.materials.base_rock import BaseHaul
from calc.trade.work.prep import LOADING_BY_HAND, LOADING_BY_MACHINE, PrepTask
from calc.trade.work.visit_rules import VisitRules

_SHEET = "Dig and haul"
PILE_BY_PILE = "each pile of the plan stands in it with the share of the plan"
"""Why a sum over the piles of a plan has words of its own."""


def of_its_piles(of_pile: Line) -> Expr:
    """The sum over the piles of a plan on one vehicle: those hauled separately, and the mixed rest."""
    return (
        GreenPlan.separate * at(of_pile, GREEN, of=VEHICLE)
        + PlanSplit.soil * at(of_pile, SOIL, of=VEHICLE)
        + PlanSplit.concrete * at(of_pile, CONCRETE, of=VEHICLE)
        + at(of_pile, PlanSplit.mixed_pile, of=VEHICLE)
    )


def prep_visits(hours: Expr) -> Expr:
    """Visits of the whole crew that so many hours of preparation take."""
    return round_up(hours / (OnSite.crew.count * VisitRules.prep_day))


def prep_people(hours: Expr, visits: Expr) -> Expr:
    """People on each of so many visits: as many as the hours ask for, and two where the crew has two."""
    return when(
        visits > 0,
        largest(
            smallest(VisitRules.least_people.count, OnSite.crew.count), round_up(hours / (visits * VisitRules.prep_day))
        ),
        0,
    )


class PlanHours(Section, title="Haul plan hours by vehicle", each=PLAN * VEHICLE, sheet=_SHEET):
    """What a plan makes of the preparation: a vehicle of the company's own is driven by its crew."""

    loads = line(
        "Loads of the plan",
        "load",
        of_its_piles(LoadCount.loads),
        source="sum over the piles of the plan",
        words="Loads of each pile that the plan keeps separate, plus those of its mixed pile",
        words_because=PILE_BY_PILE,
    )
    trips = line(
        "Trip hours of the plan",
        "h",
        of_its_piles(BestDisposal.hours),
        source="sum over the piles of the plan",
        words="Trip hours, cheapest site, of each pile that the plan keeps separate, plus those of its mixed pile",
        words_because=PILE_BY_PILE,
    )
    prep_hours = line(
        "Preparation hours of the plan",
        "h",
        total(PrepTask.hours) + BaseHaul.hours + Sorting.hours + VehicleSpec.own * trips,
        source="tasks, base rock trips, sorting and trips of an own vehicle",
    )
    visits = line(
        "Preparation visits of the plan",
        "",
        prep_visits(prep_hours),
        source="preparation hours over crew times hours on site, rounded up",
    )
    people = line(
        "People on preparation visits",
        "",
        prep_people(prep_hours, visits),
        source="hours over visits times hours on site, rounded up, and at least two where the crew has two",
    )
    waiting = line(
        "Hired truck waits while loaded",
        "h",
        when(
            both(VehicleSpec.own <= 0, loads > 0),
            LOADING_BY_HAND / largest(1, people) + LOADING_BY_MACHINE,
            0,
        ),
        source="hours of loading out over the people, or of the machine; it is paid while it is loaded",
    )
