"""Cost of each haul plan with each vehicle.

Dump rates alone do not decide: minimum charges, trucking, waiting and the labor of sorting count too.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.clock import CLOCKS
from calc.trade.hauling.disposal_options import BestDisposal
from calc.trade.hauling.piles import Pile
from calc.trade.hauling.plan_hours import PILE_BY_PILE, PlanHours, of_its_piles
from calc.trade.hauling.plans import PlanSplit, Sorting
from calc.trade.hauling.vehicles import VehicleSpec
from calc.trade.inputs.job import Vehicle
from calc.trade.levels import PLAN, VEHICLE
from calc.trade.prices.wage_rates import CrewRate

ONE_DOLLAR = exact(1, "$")


def _days_hauled() -> Expr:
    """Workdays on which the vehicle comes back with a load, over all piles."""
    first_clock, *others = CLOCKS
    days: Expr = first_clock.days
    for each in others:
        days = days + each.days
    return days


class PlanCost(Section, title="Haul plan costs by vehicle", each=PLAN * VEHICLE, sheet="Dig and haul"):
    """Complete plans. Ties go to fewer loads, then to the first plan and the first vehicle."""

    dump_fees = line(
        "Dump fees of the plan",
        "$",
        of_its_piles(BestDisposal.dump_fee),
        source="sum over the piles of the plan",
        words="Dump fee, cheapest site, of each pile that the plan keeps separate, plus that of its mixed pile",
        words_because=PILE_BY_PILE,
    )
    trucking = line(
        "Trucking of the plan",
        "$",
        of_its_piles(BestDisposal.trucking),
        source="trips with their driver and miles: sum over the piles of the plan",
        words="Trucking, cheapest site, of each pile that the plan keeps separate, plus that of its mixed pile",
        words_because=PILE_BY_PILE,
    )
    days = line(
        "Workdays with a load",
        "",
        _days_hauled(),
        source="of all piles, a shared day once",
        words="Workdays with a load, added up over the four piles of the plan; a workday shared with the pile before "
        "counts once",
        words_because=PILE_BY_PILE,
    )
    top_up_hours = line(
        "Minimum-hire top-up, hours",
        "h",
        when(
            both(VehicleSpec.own <= 0, PlanHours.loads > 0),
            largest(0, days * Vehicle.minimum_hours - PlanHours.trips - PlanHours.waiting),
            0,
        ),
        source="minimum hours on each day with a load, less trip hours and waiting together",
    )
    cost = line(
        "Total cost of the plan",
        "$",
        money(
            dump_fees
            + trucking
            + (PlanHours.waiting + top_up_hours) * VehicleSpec.hourly_cost
            + Sorting.hours * CrewRate.composite
        ),
        source="dump fees, trucking, waiting and top-up at the hourly cost, sorting at the crew rate, rounded once",
    )
    piles_without_site = line(
        "Piles without a site",
        "",
        of_its_piles(BestDisposal.no_site),
        source="piles that no known site accepts",
        words="Number of piles without a site, among those that the plan keeps separate and its mixed pile",
        words_because=PILE_BY_PILE,
    )
    feasible = line(
        "Feasible",
        "",
        when(
            either(
                total(Pile.tons) <= 0,
                both(
                    piles_without_site <= 0,
                    VehicleSpec.known > 0,
                    either(Sorting.needed <= 0, CrewRate.composite > 0),
                ),
            ),
            1,
            0,
        ),
        source="1 if every pile has a site, and vehicle and sorting have their rates, or there is nothing to haul",
    )
    is_compared = line(
        "Plan compared",
        "",
        feasible * VehicleSpec.allowed * (1 - PlanSplit.repeats),
        source="1 if feasible, with an allowed vehicle, and no earlier plan is the same",
        adds=True,
    )
    eligible = line(
        "Eligible",
        "",
        when(total(PlanSplit.chosen) > 0, feasible * PlanSplit.chosen * VehicleSpec.allowed_by_hand, is_compared),
        source="all plans compared, or only the plan chosen by hand",
        adds=True,
    )
    compared = line(
        "Plan cost compared",
        "$",
        when(eligible > 0, cost, greatest(cost) + ONE_DOLLAR),
        source="a plan that is not eligible is ranked behind the highest cost",
    )
    tie_breaker = line(
        "Loads, as tie-breaker",
        "load",
        when(equals(compared, least(compared)), PlanHours.loads, greatest(PlanHours.loads) + 1),
        source="ties go to fewer loads",
    )
