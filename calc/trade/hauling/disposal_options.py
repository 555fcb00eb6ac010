"""Cost of each pile on each vehicle to each disposal site that accepts it, and the cheapest site.

An overweight load is never planned: loads are counted by volume and by weight, whichever needs more.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.piles import GreenMix, LoadMix, SoilContamination
from calc.trade.hauling.vehicles import SiteSpec, VehicleSpec
from calc.trade.inputs.job import Disposal, Vehicle
from calc.trade.levels import DISPOSAL, PILE, VEHICLE

_SHEET = "Dig and haul"
ONE_DOLLAR = exact(1, "$")


def expected_surcharge(loads: Expr, surcharge: Expr) -> Expr:
    """The contamination surcharge for loads of soil, times its probability."""
    return loads * surcharge * SoilContamination.surcharge_probability / PERCENT


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


class DisposalOption(
    Section, title="Disposal cost by pile, vehicle and site", each=VEHICLE * PILE * DISPOSAL, sheet=_SHEET
):
    """Candidates: dump fee with the expected contamination surcharge, and trucking."""

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
                    SoilContamination.has_roots * LoadMix.soil + SoilContamination.has_root_balls * GreenMix.green <= 0,
                ),
            ),
            1,
            0,
        ),
        source="1 if the kind matches, the site has a rate, and it accepts wet soil and roots, where the pile has any",
    )
    dump_fee = line(
        "Dump fee, with expected surcharge",
        "$",
        when(
            LoadCount.loads > 0,
            largest(
                LoadCount.loads * SiteSpec.per_load, SiteSpec.per_ton * LoadMix.tons, SiteSpec.per_yard * LoadMix.loose
            )
            + when(is_word(LoadMix.kind, "soil"), expected_surcharge(LoadCount.loads, Disposal.contamination), 0),
            0,
        ),
        source="highest of charge per load and rates by ton and by yard, plus the surcharge on soil at a soil site",
    )
    trucking = line(
        "Trucking",
        "$",
        LoadCount.loads.count
        * (SiteSpec.round_trip * VehicleSpec.hourly_cost + SiteSpec.trip_miles * Vehicle.per_mile),
        source="loads times the hours and miles of a trip",
    )
    compared = line(
        "Disposal cost compared",
        "$",
        when(accepts > 0, money(dump_fee + trucking), money(greatest(dump_fee) + greatest(trucking)) + ONE_DOLLAR),
        source="dump fee and trucking; a site that does not accept the pile is ranked behind all others",
    )


class BestDisposal(Section, title="Cheapest site by pile and vehicle", each=VEHICLE * PILE, sheet=_SHEET):
    """The site with the lowest disposal cost; an empty pile needs none."""

    site = line(
        "Row of the cheapest site",
        "",
        when(
            both(LoadCount.loads > 0, total(DisposalOption.accepts, VEHICLE * PILE) > 0),
            argmin(DisposalOption.compared, VEHICLE * PILE),
            0,
        ),
        source="lowest cost, first row on a tie; 0 if the pile has no loads, or no site accepts it",
    )
    no_site = line(
        "No site for the pile",
        "",
        when(both(LoadCount.loads > 0, site <= 0), 1, 0),
        source="1 if the pile has loads and no site accepts it",
    )
    dump_fee = line(
        "Dump fee, cheapest site",
        "$",
        when(site > 0, at(DisposalOption.dump_fee, largest(1, site), of=VEHICLE * PILE), 0),
        source="looked up by row; with the expected surcharge",
    )
    trucking = line(
        "Trucking, cheapest site",
        "$",
        when(site > 0, at(DisposalOption.trucking, largest(1, site), of=VEHICLE * PILE), 0),
        source="looked up by row",
    )
    trip = line(
        "Round trip, cheapest site",
        "h",
        when(site > 0, at(SiteSpec.round_trip, largest(1, site)), 0),
        source="looked up by row",
    )
    hours = line(
        "Trip hours, cheapest site",
        "h",
        LoadCount.loads.count * trip,
        source="loads times round trip",
    )
