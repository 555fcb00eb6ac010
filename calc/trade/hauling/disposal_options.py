"""Cost of each pile on each vehicle to each disposal site that accepts it, and the cheapest site.

An overweight load is never planned: loads are counted by volume and by weight, whichever needs more.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.piles import LoadMix, SoilContamination
from calc.trade.hauling.vehicles import SiteSpec, VehicleSpec
from calc.trade.inputs.job import Disposal, Vehicle
from calc.trade.levels import DISPOSAL, PILE, VEHICLE

_SHEET = "Dig and haul"
ONE_DOLLAR = exact(1, "$")


class LoadCount(Section, title="Loads by pile and vehicle", each=VEHICLE * PILE, sheet=_SHEET):
    """By volume or by weight, whichever needs more; no weight, no load."""

    by_volume = line(
        "Loads by volume",
        "load",
        when(VehicleSpec.heaped_capacity > 0, round_up(LoadMix.loose / VehicleSpec.heaped_capacity), 0),
        source="loose volume over heaped capacity, rounded up",
    )
    by_weight = line(
        "Loads by weight",
        "load",
        when(VehicleSpec.planned_payload > 0, round_up(LoadMix.tons / VehicleSpec.planned_payload), 0),
        source="tons over the load planned, rounded up",
    )
    loads = line("Loads", "load", largest(by_volume, by_weight), source="larger of loads by volume and by weight")
    tons_per_load = line(
        "Tons per load", "ton/load", when(loads > 0, LoadMix.tons / loads, 0), source="divided evenly over the loads"
    )
    volume_per_load = line(
        "Loose volume per load",
        "yd3/load",
        when(loads > 0, LoadMix.loose / loads, 0),
        source="divided evenly over the loads",
    )


class DisposalOption(
    Section, title="Disposal cost by pile, vehicle and site", each=VEHICLE * PILE * DISPOSAL, sheet=_SHEET
):
    """Candidates: dump fee, expected contamination surcharge, and trucking."""

    accepts = line(
        "Site accepts the pile",
        "",
        when(
            both(
                same_word(LoadMix.kind, Disposal.kind),
                SiteSpec.known > 0,
                either(Disposal.wet.is_("yes"), SoilContamination.is_wet * LoadMix.soil <= 0),
                either(
                    Disposal.roots.is_("yes"),
                    SoilContamination.has_roots * LoadMix.soil + SoilContamination.has_root_balls * LoadMix.green <= 0,
                ),
            ),
            1,
            0,
        ),
        source="1 if the kind matches, the site has a rate, and it accepts wet soil and roots, where the pile has any",
    )
    dump_fee = line(
        "Dump fee",
        "$",
        LoadCount.loads
        * largest(
            SiteSpec.per_load, SiteSpec.per_ton * LoadCount.tons_per_load, SiteSpec.per_yard * LoadCount.volume_per_load
        ),
        source="loads times the highest of the charge per load and the rates by ton and by yard",
    )
    surcharge = line(
        "Contamination surcharge, expected",
        "$",
        when(
            is_word(LoadMix.kind, "soil"),
            LoadCount.loads * Disposal.contamination * SoilContamination.surcharge_probability / PERCENT,
            0,
        ),
        source="loads times surcharge times its probability, for soil at a soil site",
    )
    trucking = line(
        "Trucking",
        "$",
        LoadCount.loads.count
        * (SiteSpec.round_trip * VehicleSpec.hourly_cost + SiteSpec.trip_miles * Vehicle.per_mile),
        source="loads times the hours and miles of a trip",
    )
    cost = line("Disposal cost", "$", dump_fee + surcharge + trucking, source="dump fee, surcharge and trucking")
    compared = line(
        "Disposal cost compared",
        "$",
        when(accepts > 0, money(cost), money(greatest(cost)) + ONE_DOLLAR),
        source="a site that does not accept the pile is ranked behind the highest cost",
    )


class BestDisposal(Section, title="Cheapest site by pile and vehicle", each=VEHICLE * PILE, sheet=_SHEET):
    """The site with the lowest disposal cost; an empty pile needs none."""

    row = line(
        "Row of the cheapest site",
        "",
        argmin(DisposalOption.compared, VEHICLE * PILE),
        source="lowest cost, first row on a tie; 0 if there are no sites",
    )
    no_site = line(
        "No site for the pile",
        "",
        when(
            both(
                LoadCount.loads > 0,
                either(row <= 0, at(DisposalOption.accepts, largest(1, row), of=VEHICLE * PILE) <= 0),
            ),
            1,
            0,
        ),
        source="1 if the pile has loads and no site accepts it",
    )
    has_site = line(
        "Site for the pile",
        "",
        when(both(LoadCount.loads > 0, no_site <= 0), 1, 0),
        source="1 if the pile has loads and a site",
    )
    dump_fee = line(
        "Dump fee, cheapest site",
        "$",
        when(has_site > 0, at(DisposalOption.dump_fee, largest(1, row), of=VEHICLE * PILE), 0),
        source="looked up by row",
    )
    surcharge = line(
        "Contamination surcharge, cheapest site",
        "$",
        when(has_site > 0, at(DisposalOption.surcharge, largest(1, row), of=VEHICLE * PILE), 0),
        source="looked up by row",
    )
    trucking = line(
        "Trucking, cheapest site",
        "$",
        when(has_site > 0, at(DisposalOption.trucking, largest(1, row), of=VEHICLE * PILE), 0),
        source="looked up by row",
    )
    trip = line(
        "Round trip, cheapest site",
        "h",
        when(has_site > 0, at(SiteSpec.round_trip, largest(1, row)), 0),
        source="looked up by row",
    )
    hours = line(
        "Trip hours, cheapest site",
        "h",
        LoadCount.loads.count * trip,
        source="loads times round trip",
    )
