"""Loads of the chosen haul plan: for each pile its loads, fill limit, disposal site and trip times."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.choice import Choice
from calc.trade.hauling.clock import CLOCKS, day_of
from calc.trade.hauling.disposal_options import BestDisposal, LoadCount, expected_surcharge
from calc.trade.hauling.piles import NUMBER_OF_CONCRETE, NUMBER_OF_GREEN, NUMBER_OF_SOIL, LoadMix
from calc.trade.hauling.plans import CONCRETE_PLACE, GREEN_PLACE, SOIL_PLACE, GreenPlan, PlanSplit
from calc.trade.hauling.vehicles import SiteSpec, VehicleSpec
from calc.trade.inputs.job import Disposal, Vehicle
from calc.trade.levels import HAUL_PLACE, HAULED
from calc.trade.work.visit_rules import VisitRules

_SHEET = "Dig and haul"
_BED = at(VehicleSpec.bed_area, Choice.vehicle)


class HaulVehicle(Section, title="Haul vehicle", sheet=_SHEET):
    """0 if the company book has no vehicle: the piles are then given in yd3 and tons, without loads."""

    heaped_capacity = line(
        "Heaped capacity, vehicle chosen",
        "yd3",
        at(VehicleSpec.heaped_capacity, Choice.vehicle),
        source="looked up by row",
    )
    payload = line("Payload, vehicle chosen", "ton", at(VehicleSpec.payload, Choice.vehicle), source="looked up by row")
    planned_payload = line(
        "Load planned, vehicle chosen",
        "ton",
        at(VehicleSpec.planned_payload, Choice.vehicle),
        source="looked up by row",
    )
    hourly_cost = line(
        "Hourly cost, vehicle chosen",
        "$/h",
        at(VehicleSpec.hourly_cost, Choice.vehicle),
        source="looked up by row; with its driver",
    )


class Workday(Section, title="Workday", sheet=_SHEET):
    """When work on site begins, and what a cheaper disposal site is worth."""

    starts = factor(
        "Site opens",
        "h",
        8,
        low=6,
        high=10,
        source="common practice, no source: hour of the day; set-up comes after it",
    )
    cheaper_by = factor(
        "Dump rate cheaper by",
        "$/ton",
        10,
        low=1,
        high=50,
        source="company policy: to see how much farther a cheaper site may be",
    )

    works_from = line(
        "Work on site begins",
        "h",
        starts + VisitRules.fixed_hours,
        source="hour of the day: the site opens, then set-up",
    )


class HaulTimes(Section, title="Clock of the plan chosen", each=HAUL_PLACE, sheet=_SHEET):
    """In hours of work since the first day began; what has no loads stays as the pile before it."""

    first_leaves = line(
        "First load leaves, plan chosen",
        "h",
        when(Choice.has_plan > 0, by_row(HAUL_PLACE, *(at(each.first_leaves, Choice.row) for each in CLOCKS)), 0),
        source="clock of the loads",
    )
    back = line(
        "Back from the last load, plan chosen",
        "h",
        when(Choice.has_plan > 0, by_row(HAUL_PLACE, *(at(each.back, Choice.row) for each in CLOCKS)), 0),
        source="clock of the loads",
    )


def _hour(hours: Expr) -> Expr:
    """The hour of the day, of hours of work since the start of the first day."""
    return Workday.works_from + hours - (day_of(hours) - 1) * VisitRules.prep_day


_NUMBER = by_row(HAULED, NUMBER_OF_GREEN, NUMBER_OF_SOIL, NUMBER_OF_CONCRETE, at(PlanSplit.mixed_pile, Choice.plan))


class Hauled(Section, title="Loads hauled", each=HAULED, sheet=_SHEET):
    """Each pile of the plan chosen. An overweight load is never planned; the fill limit prevents it."""

    in_plan = line(
        "Pile in the plan",
        "",
        by_row(
            HAULED,
            at(GreenPlan.separate, Choice.plan),
            at(PlanSplit.soil, Choice.plan),
            at(PlanSplit.concrete, Choice.plan),
            1,
        ),
        source="1 for a pile that the plan hauls separately, and for the mixed rest",
    )
    row = line(
        "Row of pile and vehicle",
        "",
        (Choice.vehicle - 1) * greatest(LoadMix.number) + _NUMBER,
        source="row number among all piles on all vehicles",
    )
    loose = line(
        "Loose volume hauled",
        "yd3",
        in_plan * at(LoadMix.loose, _NUMBER),
        source="looked up by row; 0 for a pile that is not in the plan",
        adds=True,
    )
    tons = line(
        "Tons hauled",
        "ton",
        in_plan * at(LoadMix.tons, _NUMBER),
        source="looked up by row; 0 for a pile that is not in the plan",
        adds=True,
    )
    by_volume = line(
        "Loads by volume",
        "load",
        in_plan * at(LoadCount.by_volume, row),
        source="loose volume over heaped capacity, rounded up",
    )
    by_weight = line(
        "Loads by weight",
        "load",
        in_plan * at(LoadCount.by_weight, row),
        source="tons over the load planned, rounded up",
    )
    loads = line(
        "Loads hauled",
        "load",
        largest(by_volume, by_weight),
        source="larger of loads by volume and by weight",
        adds=True,
    )
    limited_by = line(
        "Load limited by",
        "",
        when(loads > 0, when(by_weight > by_volume, "weight", "volume"), "no load"),
        source="weight, if it needs more loads than volume does",
    )
    fill_limit = line(
        "Fill limit",
        "yd3",
        when(
            both(loads > 0, tons > 0),
            when(
                HaulVehicle.heaped_capacity > 0,
                smallest(HaulVehicle.heaped_capacity, HaulVehicle.planned_payload * loose / tons),
                HaulVehicle.planned_payload * loose / tons,
            ),
            0,
        ),
        source="loose volume that weighs as much as the load planned, not above the heaped capacity",
    )
    fill_height = line(
        "Fill height in the bed",
        "in",
        when(_BED > 0, fill_limit * FT3_PER_YD3 * IN_PER_FT / _BED, 0),
        source="fill limit over bed floor area, level load",
    )
    tons_per_load = line(
        "Tons per load", "ton/load", when(loads > 0, tons / loads, 0), source="divided evenly over the loads"
    )
    site_row = line(
        "Row of the disposal site",
        "",
        in_plan * at(BestDisposal.site, row),
        source="the cheapest site for the pile; 0 if none that has rates accepts it",
    )
    site_name = line(
        "Disposal site",
        "",
        when(site_row > 0, at(SiteSpec.name, largest(1, site_row)), "none"),
        source="looked up by row",
    )
    surcharge = line(
        "Contamination surcharge, expected",
        "$",
        when(
            both(site_row > 0, is_word(row_word(HAULED), "soil")),
            expected_surcharge(loads, at(Disposal.contamination, largest(1, site_row))),
            0,
        ),
        source="surcharge times its probability, for soil at a soil site",
        adds=True,
    )
    dump_fee = line(
        "Dump fee",
        "$",
        in_plan * at(BestDisposal.dump_fee, row) - surcharge,
        source="without the surcharge",
        adds=True,
    )
    round_trip = line(
        "Round trip",
        "h",
        when(site_row > 0, at(SiteSpec.round_trip, largest(1, site_row)), 0),
        source="site and back, with the time at the site",
    )
    return_time = line(
        "Dump and return time",
        "h",
        when(site_row > 0, at(SiteSpec.return_time, largest(1, site_row)), 0),
        source="looked up by row",
    )
    place = line(
        "Place in the haul",
        "",
        by_row(HAULED, GREEN_PLACE, SOIL_PLACE, CONCRETE_PLACE, at(PlanSplit.mixed_place, Choice.plan)),
        source="green waste, concrete debris, soil, mixed; a mixed pile of one material keeps that one's place",
    )
    leaves_after = line(
        "First load leaves after",
        "h",
        when(both(site_row > 0, loads > 0), at(HaulTimes.first_leaves, place), 0),
        source="clock of the loads: hours of work since the first day began",
    )
    back_after = line(
        "Back from the last load after",
        "h",
        when(both(site_row > 0, loads > 0), at(HaulTimes.back, place), 0),
        source="clock of the loads",
    )
    first_departure = line(
        "First trip leaves",
        "h",
        when(leaves_after > 0, _hour(leaves_after), 0),
        source="hour of the day, when the first load is filled and the vehicle is there",
    )
    departure_day = line(
        "Workday of the first trip", "", when(leaves_after > 0, day_of(leaves_after), 0), source="clock of the loads"
    )
    closes = line(
        "Site closes",
        "h",
        when(site_row > 0, at(SiteSpec.closes, largest(1, site_row)), 0),
        source="hour of the day; 0 if not known",
    )
    largest_piece = line(
        "Largest concrete piece accepted",
        "in",
        when(site_row > 0, at(SiteSpec.largest_piece, largest(1, site_row)), 0) * by_row(HAULED, 0, 0, 1, 1),
        source="looked up by row, for piles that may have concrete; 0 if not known",
    )
    last_arrival = line(
        "Last load arrives",
        "h",
        when(back_after > 0, _hour(back_after - return_time), 0),
        source="hour of the day: back from the last load, less dump and return time",
    )
    arrival_day = line(
        "Workday of the last arrival",
        "",
        when(back_after > 0, day_of(back_after - return_time), 0),
        source="clock of the loads",
    )
    late_by = line(
        "Last load late by",
        "h",
        when(both(last_arrival > 0, closes > 0), largest(0, last_arrival - closes), 0),
        source="hours after the site closes; 0 if no closing hour is given",
    )
    worth_driving = line(
        "Worth driving farther, one way",
        "min",
        when(
            both(site_row > 0, HaulVehicle.hourly_cost > 0),
            tons_per_load
            * Workday.cheaper_by
            * exact(1, "load")
            / (
                HaulVehicle.hourly_cost * TWO / MIN_PER_H
                + at(Vehicle.per_mile, Choice.vehicle) * TWO * at(SiteSpec.speed, largest(1, site_row))
            ),
            0,
        ),
        source="saving of a cheaper dump rate per load, over the cost of one more minute each way",
    )
