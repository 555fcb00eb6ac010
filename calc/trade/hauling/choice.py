"""The haul that was chosen, the runner-up beside it, and each pile with its loads and its fill line."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.piles import VehicleSpec
from calc.trade.hauling.plans import PlanCost, PlanSplit
from calc.trade.inputs.hauling import Fleet
from calc.trade.inputs.job import Site
from calc.trade.levels import PLAN, VEHICLE

_SHEET = "Dig and haul"
ONE_DOLLAR = exact(1, "$")


class PlanWord(Section, title="Plans by name", each=PLAN, sheet=_SHEET):
    """The row of the plan that is taken when none can be compared: the chosen one, else all apart."""

    name = line("Plan", "", row_word(PLAN), source="the haul plans")
    taken = line(
        "Taken without prices",
        "",
        when(
            total(PlanSplit.chosen) > 0,
            PlanSplit.chosen * PlanSplit.number,
            by_row(PLAN, 0, 0, 0, PlanSplit.number, 0, 0),
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
        total(PlanCost.wanted),
        source="0 when no plan can be compared: the house book lacks figures",
    )
    winner = line("Row of the winner", "", argmin(PlanCost.tie), source="least cost, then fewer loads, then the order")
    plan = line(
        "Row of the plan taken",
        "",
        when(known > 0, at(PlanCost.plan, largest(1, winner)), total(PlanWord.taken)),
        source="of the winner; without one the chosen plan, else all apart",
    )
    vehicle = line(
        "Row of the vehicle taken",
        "",
        when(
            known > 0,
            at(PlanCost.vehicle, largest(1, winner)),
            when(both(Fleet.by > 0, total(PlanSplit.chosen) > 0), Fleet.by, largest(Site.vehicle_1, 1)),
        ),
        source="of the winner; without one the vehicle named for the job, else the first",
    )
    row = line(
        "Row of both",
        "",
        (plan - 1) * total(VehicleSpec.one) + vehicle,
        source="among all plans with all vehicles",
    )
    plan_name = line("Haul plan taken", "", at(PlanWord.name, plan), source="by its row")
    vehicle_name = line("Hauled with", "", at(VehicleSpec.name, vehicle), source="by its row")
    cost = line(
        "Haul and tipping",
        "$",
        when(both(total(VehicleSpec.one) > 0, known > 0), at(PlanCost.cost, row), 0),
        source="of the plan taken; 0 when it cannot be known",
    )
    why = line(
        "Why this haul",
        "",
        when(
            known > 0,
            when(
                total(PlanSplit.chosen) > 0,
                ", chosen by hand; see Measured for the reason",
                ": the least of all plans, vehicles and sites",
            ),
            ": no plan can be compared, since the house book lacks rates or sites",
        ),
        source="haul plans",
    )
    loads = line(
        "Loads of the plan",
        "load",
        when(total(VehicleSpec.one) > 0, at(PlanCost.loads, row), 0),
        source="of the plan taken",
    )
    hours = line("Trip hours", "h", when(known > 0, at(PlanCost.hours, row), 0), source="of the plan taken")
    own_hours = line(
        "Trip hours of own drivers",
        "h",
        when(at(VehicleSpec.own, vehicle) > 0, hours, 0),
        source="a hired vehicle brings its driver",
    )


class PlanDifference(Section, title="Beside the winner", each=PLAN * VEHICLE, sheet=_SHEET):
    """All that compete, but for the one that is taken, whichever of its names it goes by."""

    compared = line(
        "Compared with the winner",
        "$",
        when(
            both(
                PlanCost.competes > 0,
                not_(
                    both(
                        equals(PlanCost.vehicle, Choice.vehicle),
                        equals(PlanSplit.parts, at(PlanSplit.parts, Choice.plan)),
                    )
                ),
            ),
            PlanCost.cost,
            greatest(PlanCost.cost) + ONE_DOLLAR,
        ),
        source="what cannot be compared, and the winner, are put behind the dearest",
    )


class RunnerUp(Section, title="The runner-up", sheet=_SHEET):
    """The cheapest of the others."""

    row = line("Row of the runner-up", "", argmin(PlanDifference.compared), source="least, first row wins")
    known = line(
        "There is a runner-up",
        "",
        when(
            both(
                Choice.known > 0,
                least(PlanDifference.compared) <= greatest(PlanCost.cost),
                total(PlanCost.competes) > 0,
            ),
            1,
            0,
        ),
        source="1 when another plan can be compared",
    )
    plan_name = line(
        "Plan of the runner-up",
        "",
        when(known > 0, at(PlanWord.name, at(PlanCost.plan, largest(1, row))), "none"),
        source="by its row",
    )
    vehicle_name = line(
        "Vehicle of the runner-up",
        "",
        when(known > 0, at(VehicleSpec.name, at(PlanCost.vehicle, largest(1, row))), "none"),
        source="by its row",
    )
    cost = line(
        "The runner-up costs", "$", when(known > 0, at(PlanCost.cost, largest(1, row)), 0), source="of that plan"
    )
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
