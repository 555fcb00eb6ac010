"""Cautions of hauling: payload, disposal sites, near ties, and spoil for the size of the slab."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.choice import Choice, RunnerUp
from calc.trade.hauling.loads import Hauled, HaulVehicle
from calc.trade.hauling.piles import SoilContamination
from calc.trade.hauling.vehicles import SiteSpec, VehicleSpec
from calc.trade.inputs.job import Disposal
from calc.trade.levels import DISPOSAL, HAULED
from calc.trade.materials.base_rock import BaseHaul, BaseNeeds
from calc.trade.takeoff.geometry import Slab

_SOIL = row_called(HAULED, "soil")


class PileConditions(Section, title="Payload and disposal sites checked", each=HAULED, sheet="Dig and haul"):
    """The piles of the chosen plan, checked against the payload and the disposal sites."""

    overweight = line(
        "Load over the payload",
        "ton",
        when(Hauled.loads > 0, largest(0, Hauled.tons / Hauled.loads.count - HaulVehicle.payload), 0),
        source="weight of a load less the payload; the whole load where no payload is given",
    )
    without_site = line(
        "Without a disposal site",
        "ton",
        when(both(Hauled.loads > 0, Hauled.site_row <= 0, total(SiteSpec.counted) > 0), Hauled.tons, 0),
        source="weight that no disposal site takes; 0 where the company book has no sites",
        adds=True,
    )


class SpoilPerArea(Section, title="Spoil for the area", sheet="Dig and haul"):
    """Checked to find a typing error."""

    by_area = line(
        "Spoil per square foot",
        "ton/ft2",
        when(total(Slab.net_area) > 0, total(Hauled.tons) / total(Slab.net_area), 0),
        source="weight of all piles over the net area",
    )


class RockSeller(Section, title="Disposal sites that sell base rock", each=DISPOSAL, sheet="Dig and haul"):
    """By the company book."""

    sells = line("Sells base rock", "", when(Disposal.sells_rock.is_("yes"), 1, 0), source="Disposal sites")


class EmptyReturn(Section, title="Loads to a site that sells base rock", each=HAULED, sheet="Dig and haul"):
    """A vehicle that dumps there returns empty, and could bring base rock for the job."""

    loads = line(
        "Loads that could bring base rock back",
        "load",
        when(Hauled.site_row > 0, at(RockSeller.sells, largest(1, Hauled.site_row)), 0) * Hauled.loads,
        source="loads of the pile, if its site sells base rock",
        adds=True,
    )


class BackHaul(Section, title="Base rock brought back from a disposal site", sheet="Dig and haul"):
    """Only for base rock that own vehicles fetch. It is not in the price."""

    loads = line(
        "Own loads that could bring base rock back",
        "load",
        when(
            both(total(VehicleSpec.counted) > 0, BaseHaul.trips > 0),
            at(VehicleSpec.own, largest(1, Choice.vehicle)) * total(EmptyReturn.loads),
            0,
        ),
        source="loads to a site that sells base rock, if the vehicle is not hired and base rock is picked up",
    )
    rock_left = line(
        "Base rock left to pick up",
        "ton",
        largest(0, BaseNeeds.buy - loads.count * HaulVehicle.payload),
        source="base rock to buy, less the payload of each of those loads",
    )
    trips = line(
        "Base rock trips saved",
        "trip",
        when(loads > 0, BaseHaul.trips - count_of(round_up(rock_left / BaseHaul.payload), "trip"), 0),
        source="trips to the rock yard, less those for the rock that is left",
    )
    saving = line(
        "Saving of base rock brought back",
        "$",
        when(trips > 0, money(BaseHaul.pick_up_cost * trips.count / BaseHaul.trips.count), 0),
        source="share of the pick-up cost of base rock: hours of the vehicle with its driver, plus miles",
    )


class HaulCautions(Section, title="Hauling cautions", sheet="Checks"):
    """What was found, the number, the usual practice with its source, and what to do. Local code governs."""

    scale_step = factor(
        "Overweight that a scale shows",
        "ton",
        0.005,
        low=0,
        high=0.05,
        source="house rule: 10 lb, half the increment of a truck scale that reads by 20 lb",
    )
    max_spoil = factor("Spoil per square foot, caution above", "ton/ft2", 0.15, low=0.1, high=0.3, source="house rule")

    max_waiting = factor(
        "Wait of a hired truck per load, note above", "h", 1, low=0.5, high=2, source="common practice, no source"
    )

    overweight = caution(
        "Load over the payload",
        Severity.STOP,
        either(greatest(PileConditions.overweight) > scale_step, VehicleSpec.planned_share > PERCENT),
        when(
            HaulVehicle.payload > 0,
            "A planned load is heavier than the payload; the number is the excess.",
            "The vehicle has no payload; the number is the heaviest load planned for it.",
        ),
        greatest(PileConditions.overweight),
        "ton",
        usual="no load over the payload: GVWR minus the weight of the vehicle with its driver",
        do="Type the payload of the vehicle in Vehicles, as weighed, or haul with another.",
        brief="Type its payload as weighed, or use another vehicle.",
        source="house rule: never overweight; 23 CFR 658.17 and state law on axles",
    )
    contaminated_soil = caution(
        "Roots or turf to a site for clean soil",
        Severity.CAUTION,
        both(SoilContamination.surcharge_probability > 0, at(Hauled.site_row, _SOIL) > 0),
        "Soil with turf or roots goes to a disposal site for soil; the number is its loads.",
        at(Hauled.loads, _SOIL),
        "load",
        usual="clean fill is free of turf, roots and trash, or is charged as mixed",
        do="Ask the disposal site before the first load, and keep turf and roots out of the pile.",
        brief="Ask the site first; keep turf and roots out.",
        source="common practice, no source",
    )
    site_closed = caution(
        "Last load after closing",
        Severity.CAUTION,
        greatest(Hauled.late_by) > 0,
        "The last load of a day arrives after the disposal site closes; the number is how late.",
        greatest(Hauled.late_by),
        "h",
        usual="the last load of a day is over the scale before closing",
        do="Start earlier, leave a load for the next morning, or use another disposal site.",
        brief="Start earlier, leave a load, or use another site.",
        source="house rule, by the hours in the company book: ask the site for its last load",
    )
    no_site = caution(
        "No disposal site for a pile",
        Severity.CAUTION,
        total(PileConditions.without_site) > 0,
        "No disposal site takes a pile, or its rate, time or miles are missing; the number is the weight.",
        total(PileConditions.without_site),
        "ton",
        usual="every pile has a disposal site, with a rate, minutes and miles",
        do="Add a row to Disposal sites for it, or choose a plan that leaves it mixed.",
        brief="Add a disposal site for it, or leave it mixed.",
        source="house rule",
    )
    waiting = caution(
        "Hired truck waits while it is loaded",
        Severity.NOTE,
        Choice.waiting_per_load > max_waiting,
        "The hired truck is paid while it is loaded; the number is the wait of a load.",
        Choice.waiting_per_load,
        "h",
        usual="up to an hour for a load",
        do="Stage the pile before it comes, or load by machine.",
        source="common practice, no source",
    )
    near_tie = caution(
        "Haul plans nearly tied",
        Severity.NOTE,
        RunnerUp.near_tie > 0,
        "Another haul plan costs nearly the same; the number is the difference.",
        RunnerUp.cost_difference,
        "$",
        usual="below $25 or 2 % time decides, not money",
        do="Choose by time: fewer trips, the nearer site, the longer hours.",
        brief="Choose by time: fewer trips, nearer site.",
        source="house rule",
    )
    back_haul = caution(
        "Disposal site sells base rock",
        Severity.NOTE,
        BackHaul.saving > 0,
        joined(
            "A disposal site sells base rock: bringing it back saves ",
            BackHaul.trips,
            when(equals(BackHaul.trips.count, 1), " trip", " trips"),
            "; the number is the saving.",
        ),
        BackHaul.saving,
        "$",
        usual="a vehicle that dumps where rock is sold brings it back, in a clean bed, within payload",
        do="Ask the site for rock and price, and clear the bed. It is not in the price.",
        brief="Ask the site for its rock price. Not in the price.",
        source="common practice, no source",
    )
    spoil_per_area = caution(
        "Spoil high for the area",
        Severity.CAUTION,
        SpoilPerArea.by_area > max_spoil,
        "More weight is hauled away than usual for a slab of this size.",
        SpoilPerArea.by_area,
        "ton/ft2",
        usual="below 0.15 ton per square foot",
        do="Check depths, old slab and plants for a typing error.",
        source="common practice, no source: to find a typing error",
    )
