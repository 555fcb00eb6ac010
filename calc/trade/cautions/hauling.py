"""What to watch of the haul: what a gate may turn away or be closed for, weight, and a choice that is nearly a tie."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.choice import RunnerUp
from calc.trade.hauling.loads import Hauled, HaulVehicle
from calc.trade.hauling.piles import SiteSpec, SoilContamination
from calc.trade.hauling.plans import SOIL
from calc.trade.levels import HAULED


class PileWarnings(Section, title="What is watched of each pile", each=HAULED, sheet="Dig and haul"):
    """Piles of the plan that is taken, held against the payload and the sites."""

    over = line(
        "Over the payload",
        "ton",
        when(Hauled.loads > 0, largest(0, Hauled.tons / Hauled.loads.count - HaulVehicle.payload), 0),
        source="a load of it, less the payload; all of it where nobody weighed the payload",
    )
    stranded = line(
        "Without a site",
        "ton",
        when(both(Hauled.loads > 0, Hauled.has_site <= 0, total(SiteSpec.counted) > 0), Hauled.tons, 0),
        source="what no site of the house book takes; 0 where the house book has no sites at all",
        adds=True,
    )


class HaulCautions(Section, title="Cautions of the haul", sheet="Checks"):
    """What was found, the number, the usual practice and who says so, and what to do. Local code always wins."""

    scale = factor(
        "Overweight that a scale shows",
        "ton",
        0.005,
        low=0,
        high=0.05,
        source="house rule: 10 lb, half a step of a truck scale that reads by 20 lb",
    )

    overweight = caution(
        "Load over the payload",
        Severity.STOP,
        greatest(PileWarnings.over) > scale,
        when(
            HaulVehicle.payload > 0,
            "A load is planned that is heavier than the payload; the number is what it is over.",
            "Nobody says what the vehicle may carry; the number is the heaviest load that it would be given.",
        ),
        greatest(PileWarnings.over),
        "ton",
        usual="no load over the gross rating less the weight of the vehicle with its driver",
        do="Fill the payload of the vehicle on Vehicles, as weighed, or haul with another.",
        source="house rule: overweight is never planned; 23 CFR 658.17 and state law on axles",
    )
    dirty = caution(
        "Roots or turf to a site for clean soil",
        Severity.CAUTION,
        both(SoilContamination.surcharge_probability > 0, at(Hauled.has_site, SOIL) > 0),
        "Soil with turf or roots in it goes to a site for soil; the number is its loads.",
        at(Hauled.loads, SOIL),
        "load",
        usual="clean fill is free of turf, roots and rubbish, or is charged as mixed",
        do="Ask the gate before the first load, and keep turf and roots out of the pile.",
        source="common practice, no source",
    )
    gate = caution(
        "Last load after the gate closes",
        Severity.CAUTION,
        greatest(Hauled.late_by) > 0,
        "The last load of a day gets there when the site is closed; the number is by how much.",
        greatest(Hauled.late_by),
        "h",
        usual="the last load of a day is through the gate before it closes",
        do="Start earlier, leave a load for the next morning, or take it to another site.",
        source="house rule, by the hours in the house book: ask the gate for its last load",
    )
    stranded = caution(
        "No site takes a pile",
        Severity.CAUTION,
        total(PileWarnings.stranded) > 0,
        "No site of the house book takes a pile of this plan, or its figures are missing; the number is its weight.",
        total(PileWarnings.stranded),
        "ton",
        usual="every pile has a gate that takes it, with a rate, minutes and miles",
        do="Fill a row of Disposal sites for it, or choose a plan that leaves it mixed.",
        source="house rule",
    )
    wash = caution(
        "Two hauls cost nearly the same",
        Severity.NOTE,
        RunnerUp.near_tie > 0,
        "Another haul costs nearly the same; the number is the difference.",
        RunnerUp.cost_difference,
        "$",
        usual="below $25 or 2 % the clock decides, not the money",
        do="Choose by the clock: fewer trips, the nearer gate, the longer hours.",
        source="house rule",
    )
