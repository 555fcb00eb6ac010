"""Cost of each haul plan with each vehicle.

Dump rates alone do not decide: minimum charges, trucking and the labor of sorting count too.
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
ONE_DOLLAR = exact(1, "$")
GREEN, SOIL, CONCRETE = (exact(place) for place in (1, 2, 3))
"""Row numbers of the piles that can be hauled separately. The mixed pile of plan N is row 3 + N."""


class Sorting(Section, title="Sorting the piles", sheet=_SHEET):
    """Labor to keep green waste separate: a disposal cost, not part of the crew hours."""

    rate = factor("Sorting out green waste", "h/yd3", 0.25, low=0.1, high=0.5, source="common practice, no source")
    hours = line(
        "Sorting hours", "h", Spoil.green_loose * rate, source="loose volume of green waste times hours per yard"
    )


class PlanSplit(Section, title="Haul plans", each=PLAN, sheet=_SHEET):
    """The piles that each plan hauls separately; the rest is mixed. A plan that equals an earlier one drops out."""

    green = line("Green waste separate", "", by_row(PLAN, 0, 1, 0, 1, 1, 0), source="1 if the plan hauls it separately")
    soil = line("Soil separate", "", by_row(PLAN, 0, 0, 0, 1, 0, 1), source="1 if the plan hauls it separately")
    concrete = line(
        "Concrete debris separate", "", by_row(PLAN, 0, 0, 1, 1, 1, 0), source="1 if the plan hauls it separately"
    )
    code = line(
        "Separate piles, as a code",
        "",
        (green * at(Pile.not_empty, GREEN) * TWO + soil * at(Pile.not_empty, SOIL)) * TWO
        + concrete * at(Pile.not_empty, CONCRETE),
        source="binary digits for green waste, soil and concrete debris: equal for plans that come to the same piles",
    )
    repeats = line(
        "Same as an earlier plan",
        "",
        when(equals(first_in_group(code), row_number(PLAN)), 0, 1),
        source="1 if, for lack of a pile, the plan is the same as one above",
    )
    chosen = line(
        "Chosen by hand",
        "",
        when(same_word(row_word(PLAN), Fleet.plan), 1, 0),
        source="haul plan of the job",
        adds=True,
    )
    needs_sorting = line(
        "Piles are sorted by hand",
        "",
        when(
            both(
                at(Pile.not_empty, GREEN) > 0,
                at(Pile.not_empty, SOIL) + at(Pile.not_empty, CONCRETE) > 0,
                either(green > 0, soil > 0),
            ),
            1,
            0,
        ),
        source="1 if green waste is kept separate from another pile",
    )
    number = line("Plan number", "", row_number(PLAN), source="row number")


def _of_its_piles(of_pile: Line) -> Expr:
    """The sum over the piles of a plan on one vehicle: those hauled separately, and the mixed rest."""
    return (
        PlanSplit.green * at(of_pile, GREEN, of=VEHICLE)
        + PlanSplit.soil * at(of_pile, SOIL, of=VEHICLE)
        + PlanSplit.concrete * at(of_pile, CONCRETE, of=VEHICLE)
        + at(of_pile, THREE + row_number(PLAN), of=VEHICLE)
    )


class PlanCost(Section, title="Haul plan costs by vehicle", each=PLAN * VEHICLE, sheet=_SHEET):
    """Complete plans, to the cent. Ties go to fewer loads, then to the first plan and the first vehicle."""

    loads = line(
        "Loads of the plan",
        "load",
        _of_its_piles(LoadCount.loads),
        source="sum over the piles of the plan",
    )
    hours = line(
        "Trip hours of the plan",
        "h",
        _of_its_piles(BestDisposal.hours),
        source="sum over the piles of the plan",
    )
    dump_fees = line(
        "Dump fees of the plan",
        "$",
        _of_its_piles(BestDisposal.dump_fee),
        source="sum over the piles of the plan",
    )
    surcharge = line(
        "Contamination surcharge of the plan",
        "$",
        PlanSplit.soil * at(BestDisposal.surcharge, SOIL, of=VEHICLE),
        source="expected surcharge, if the plan hauls soil separately",
    )
    trucking = line(
        "Trucking of the plan",
        "$",
        _of_its_piles(BestDisposal.trucking),
        source="sum over the piles of the plan",
    )
    minimum_top_up = line(
        "Minimum-hire top-up",
        "$",
        when(
            both(Vehicle.hired.is_("yes"), loads > 0),
            largest(0, Vehicle.minimum_hours - hours) * VehicleSpec.hourly_cost,
            0,
        ),
        source="minimum hours less trip hours, times hourly cost, once per plan",
    )
    sorting = line(
        "Sorting labor",
        "$",
        PlanSplit.needs_sorting * Sorting.hours * CrewRate.composite,
        source="sorting hours at the composite crew rate, if green waste is sorted out",
    )
    cost = line(
        "Total cost of the plan",
        "$",
        money(dump_fees + surcharge + trucking + minimum_top_up + sorting),
        source="dump fees, surcharge, trucking, top-up and sorting, rounded once",
    )
    piles_without_site = line(
        "Piles without a site",
        "",
        _of_its_piles(BestDisposal.no_site),
        source="piles that no known site accepts",
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
                    either(PlanSplit.needs_sorting <= 0, CrewRate.composite > 0),
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
        when(equals(compared, least(compared)), loads, greatest(loads) + 1),
        source="ties go to fewer loads",
    )
    plan = line("Number of its plan", "", PlanSplit.number, source="row number")
    vehicle = line("Number of its vehicle", "", row_number(VEHICLE), source="row number")
