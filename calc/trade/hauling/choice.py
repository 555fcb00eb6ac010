"""The haul plan chosen, and the runner-up with its difference in cost."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.clock import MIXED_CLOCK
from calc.trade.hauling.plan_cost import PlanCost
from calc.trade.hauling.plan_hours import PlanHours
from calc.trade.hauling.plans import PlanSplit, Sorting
from calc.trade.hauling.vehicles import VehicleSpec
from calc.trade.inputs.hauling import Fleet
from calc.trade.inputs.job import Site
from calc.trade.levels import PLAN, VEHICLE
from calc.trade.prices.wage_rates import CrewRate

_SHEET = "Dig and haul"
ONE_DOLLAR = exact(1, "$")
ELIGIBLE = total(PlanCost.eligible)
"""The plans that can be compared; none for lack of figures in the company book."""


class PlanWord(Section, title="Haul plan names", each=PLAN, sheet=_SHEET):
    """The plan used if no plan can be compared: the one chosen by hand, else all piles separate."""

    name = line("Haul plan", "", row_word(PLAN), source="haul plans")
    fallback = line(
        "Plan used without prices",
        "",
        when(
            total(PlanSplit.chosen) > 0,
            PlanSplit.chosen * PlanSplit.number,
            by_row(PLAN, *(PlanSplit.number if word == "all separated" else 0 for word in PLAN.axis.words)),
        ),
        source="the plan chosen by hand, else all piles separate",
        adds=True,
    )


def _plan_of(row: Expr) -> Expr:
    """The number of the plan in a row of plan and vehicle."""
    return round_up(largest(1, row) / largest(1, total(VehicleSpec.counted)))


def _vehicle_of(row: Expr, plan: Expr) -> Expr:
    """The number of the vehicle in a row of plan and vehicle."""
    return row - (plan - 1) * total(VehicleSpec.counted)


def _of_plan(of_plan: Line, has_plan: Expr, row: Expr) -> Expr:
    """A number of the plan chosen; 0 where no plan is known."""
    return when(has_plan > 0, at(of_plan, largest(1, row)), 0)


class Choice(Section, title="Haul plan chosen", sheet=_SHEET):
    """The cheapest plan, vehicle and sites, unless the job names a plan."""

    near_money = factor(
        "Near tie, difference up to", "$", 25, low=0, high=100, source="company policy: below that, choose by time"
    )
    near_share = factor("Near tie, difference up to, share of cost", "%", 2, low=0, high=10, source="company policy")

    winner = line(
        "Row of the cheapest plan",
        "",
        argmin(PlanCost.tie_breaker),
        source="lowest cost, then fewest loads, then first row",
    )
    plan = line(
        "Row of the plan chosen",
        "",
        when(ELIGIBLE > 0, _plan_of(winner), total(PlanWord.fallback)),
        source="of the cheapest plan; without prices, the plan chosen by hand, else all piles separate",
    )
    vehicle = line(
        "Row of the vehicle chosen",
        "",
        when(
            ELIGIBLE > 0,
            _vehicle_of(winner, plan),
            when(both(Fleet.by > 0, total(PlanSplit.chosen) > 0), Fleet.by, largest(Site.vehicle_1, 1)),
        ),
        source="of the cheapest plan; without prices, the vehicle named for the job, else the first",
    )
    row = line(
        "Row of plan and vehicle",
        "",
        (plan - 1) * total(VehicleSpec.counted) + vehicle,
        source="row number among all plans with all vehicles",
    )
    plan_name = line("Haul plan chosen", "", at(PlanWord.name, plan), source="looked up by row")
    vehicle_name = line("Haul vehicle", "", at(VehicleSpec.name, vehicle), source="looked up by row")
    has_plan = line(
        "Plan is known",
        "",
        when(both(total(VehicleSpec.counted) > 0, ELIGIBLE > 0), 1, 0),
        source="1 if there is a vehicle and a plan can be compared",
    )
    compared_cost = line(
        "Cost as compared",
        "$",
        _of_plan(PlanCost.cost, has_plan, row),
        source="total cost of the plan chosen, rounded once",
    )
    dump_fees = line(
        "Dump fees, plan chosen",
        "$",
        money(_of_plan(PlanCost.dump_fees, has_plan, row)),
        source="with the expected contamination surcharge",
    )
    hours = line("Trip hours, plan chosen", "h", _of_plan(PlanHours.trips, has_plan, row), source="of the plan chosen")
    own_hours = line(
        "Trip hours, own drivers",
        "h",
        at(VehicleSpec.own, vehicle) * hours,
        source="trip hours of an own vehicle; a hired one comes with its driver",
    )
    sorting_hours = line(
        "Sorting hours, plan chosen",
        "h",
        when(has_plan > 0, at(Sorting.hours, plan), 0),
        source="of the plan chosen",
    )
    waiting = line(
        "Hired truck waits while loaded, plan chosen",
        "h",
        _of_plan(PlanHours.waiting, has_plan, row),
        source="of the plan chosen",
    )
    top_up_hours = line(
        "Minimum-hire top-up, plan chosen",
        "h",
        _of_plan(PlanCost.top_up_hours, has_plan, row),
        source="of the plan chosen",
    )
    trucking = line(
        "Trucking, plan chosen",
        "$",
        _of_plan(PlanCost.trucking, has_plan, row),
        source="trips with their driver and miles",
    )
    driver = line("Driver, plan chosen", "$", money(own_hours * CrewRate.driver), source="0 for a hired vehicle")
    truck = line(
        "Truck, plan chosen",
        "$",
        money(trucking - own_hours * CrewRate.driver + (waiting + top_up_hours) * at(VehicleSpec.hourly_cost, vehicle)),
        source="trucking without the driver, plus waiting and top-up at the hourly cost",
    )
    sorting = line(
        "Sorting, plan chosen",
        "$",
        money(sorting_hours * CrewRate.composite),
        source="sorting hours at the composite crew rate",
    )
    cost = line(
        "Hauling and dump fees", "$", dump_fees + truck + driver + sorting, source="fees, truck, driver and sorting"
    )
    reason = line(
        "Reason for the haul plan",
        "",
        when(
            ELIGIBLE > 0,
            when(
                total(PlanSplit.chosen) > 0,
                ", chosen by hand; see Measured for the reason",
                ": lowest cost of all plans, vehicles and sites",
            ),
            ": no plan can be compared, because the company book has no rates or sites",
        ),
        source="haul plans",
    )
    loads = line(
        "Loads, plan chosen",
        "load",
        when(total(VehicleSpec.counted) > 0, at(PlanHours.loads, row), 0),
        source="of the plan chosen",
    )
    waiting_per_load = line(
        "Wait of a load", "h", when(loads > 0, waiting / loads.count, 0), source="waiting over loads"
    )
    last_day = line(
        "Workday of the last load, plan chosen",
        "",
        when(loads > 0, _of_plan(MIXED_CLOCK.last_day, has_plan, row), 0),
        source="of the plan chosen; 0 without a load",
    )


class PlanDifference(Section, title="Compared with the choice", each=PLAN * VEHICLE, sheet=_SHEET):
    """Every plan compared, except the one chosen and any plan that comes to the same piles."""

    compared = line(
        "Cost compared with the choice",
        "$",
        when(
            both(
                PlanCost.is_compared > 0,
                not_(
                    both(
                        equals(row_number(VEHICLE), Choice.vehicle),
                        equals(PlanSplit.code, at(PlanSplit.code, Choice.plan)),
                    )
                ),
            ),
            PlanCost.cost,
            greatest(PlanCost.cost) + ONE_DOLLAR,
        ),
        source="cost; the choice, and plans not compared, are ranked behind the highest cost",
    )


class RunnerUp(Section, title="Runner-up haul plan", sheet=_SHEET):
    """The cheapest of the other plans."""

    row = line("Row of the runner-up", "", argmin(PlanDifference.compared), source="lowest cost, first row on a tie")
    plan = line(
        "Row of the plan of the runner-up",
        "",
        _plan_of(row),
        source="its row among all plans with all vehicles",
    )
    known = line(
        "Runner-up exists",
        "",
        when(
            both(
                ELIGIBLE > 0,
                least(PlanDifference.compared) <= greatest(PlanCost.cost),
                total(PlanCost.is_compared) > 0,
            ),
            1,
            0,
        ),
        source="1 if another plan can be compared",
    )
    plan_name = line(
        "Runner-up haul plan",
        "",
        when(known > 0, at(PlanWord.name, plan), "none"),
        source="looked up by row",
    )
    vehicle_name = line(
        "Runner-up vehicle",
        "",
        when(known > 0, at(VehicleSpec.name, _vehicle_of(row, plan)), "none"),
        source="looked up by row",
    )
    difference = line(
        "Runner-up costs more by",
        "$",
        when(known > 0, at(PlanCost.cost, largest(1, row)) - Choice.compared_cost, 0),
        source="runner-up less plan chosen; negative if a more expensive plan was chosen by hand",
    )
    cost_difference = line(
        "Cost difference, absolute", "$", largest(difference, 0 - difference), source="difference without its sign"
    )
    near_tie = line(
        "Near tie",
        "",
        when(
            both(
                known > 0,
                Choice.loads > 0,
                cost_difference <= largest(Choice.near_money, Choice.near_share * Choice.compared_cost / PERCENT),
            ),
            1,
            0,
        ),
        source="1 if the difference is within the near-tie limits: choose by time",
    )
    comparison = line(
        "Comparison in words",
        "",
        when(near_tie > 0, "nearly tied with ", when(difference < 0, "costs more than ", "runner-up: ")),
        source="by the cost difference",
    )
    words = line(
        "Runner-up",
        "",
        when(
            known > 0,
            joined(comparison, plan_name, ", on the ", vehicle_name),
            "no other plan can be compared",
        ),
        source="plan and vehicle of the runner-up",
    )
