"""Cost of each pile on each vehicle to each disposal site that accepts it, and the cheapest site.

An overweight load is never planned: loads are counted by volume and by weight, whichever needs more.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.piles import LoadMix, SiteSpec, SoilCleanliness, VehicleSpec
from calc.trade.inputs.job import Disposal, Vehicle
from calc.trade.levels import DISPOSAL, PILE, VEHICLE

_SHEET = "Dig and haul"
ONE_DOLLAR = exact(1, "$")


class LoadCount(Section, title="Loads by pile and vehicle", each=VEHICLE * PILE, sheet=_SHEET):
    """By volume or by weight, whichever needs more; no weight, no load."""

    by_room = line(
        "Loads by volume",
        "load",
        when(VehicleSpec.room > 0, round_up(LoadMix.loose / VehicleSpec.room), 0),
        source="loose volume over heaped capacity, rounded up",
    )
    by_weight = line(
        "Loads by weight",
        "load",
        when(VehicleSpec.payload > 0, round_up(LoadMix.tons / VehicleSpec.payload), 0),
        source="tons over payload, rounded up",
    )
    loads = line("Loads", "load", largest(by_room, by_weight), source="larger of loads by volume and by weight")
    tons = line(
        "Tons per load", "ton/load", when(loads > 0, LoadMix.tons / loads, 0), source="divided evenly over the loads"
    )
    yards = line(
        "Loose volume per load",
        "yd3/load",
        when(loads > 0, LoadMix.loose / loads, 0),
        source="divided evenly over the loads",
    )


class DisposalOption(
    Section, title="Disposal cost by pile, vehicle and site", each=VEHICLE * PILE * DISPOSAL, sheet=_SHEET
):
    """Candidates: dump fee, expected contamination surcharge, and trucking."""

    takes = line(
        "Site accepts the pile",
        "",
        when(
            both(
                same_word(LoadMix.kind, Disposal.kind),
                SiteSpec.known > 0,
                either(Disposal.wet.is_("yes"), SoilCleanliness.wet * LoadMix.soil <= 0),
                either(
                    Disposal.roots.is_("yes"),
                    SoilCleanliness.roots * LoadMix.soil + SoilCleanliness.balls * LoadMix.green <= 0,
                ),
            ),
            1,
            0,
        ),
        source="1 if the kind matches, the site has a rate, and it accepts wet soil and roots, where the pile has any",
    )
    tipping = line(
        "Dump fee",
        "$",
        LoadCount.loads * largest(SiteSpec.load, SiteSpec.ton * LoadCount.tons, SiteSpec.yard * LoadCount.yards),
        source="loads times the highest of the charge per load and the rates by ton and by yard",
    )
    dirty = line(
        "Contamination surcharge, expected",
        "$",
        when(is_word(LoadMix.kind, "soil"), LoadCount.loads * Disposal.dirty * SoilCleanliness.chance / PERCENT, 0),
        source="loads times surcharge times its probability, for soil at a soil site",
    )
    trips = line(
        "Trucking",
        "$",
        LoadCount.loads.count * (SiteSpec.trip * VehicleSpec.hour + SiteSpec.miles * Vehicle.per_mile),
        source="loads times the hours and miles of a trip",
    )
    cost = line("Disposal cost", "$", tipping + dirty + trips, source="dump fee, surcharge and trucking")
    compared = line(
        "Disposal cost compared",
        "$",
        when(takes > 0, money(cost), money(greatest(cost)) + ONE_DOLLAR),
        source="a site that does not accept the pile is ranked behind the highest cost",
    )


class BestDisposal(Section, title="Cheapest site by pile and vehicle", each=VEHICLE * PILE, sheet=_SHEET):
    """The site with the lowest disposal cost; an empty pile needs none."""

    place = line(
        "Row of the cheapest site",
        "",
        argmin(DisposalOption.compared, VEHICLE * PILE),
        source="lowest cost, first row on a tie; 0 if there are no sites",
    )
    lacks = line(
        "No site for the pile",
        "",
        when(
            both(
                LoadCount.loads > 0,
                either(place <= 0, at(DisposalOption.takes, largest(1, place), of=VEHICLE * PILE) <= 0),
            ),
            1,
            0,
        ),
        source="1 if the pile has loads and no site accepts it",
    )
    fits = line(
        "Site for the pile",
        "",
        when(both(LoadCount.loads > 0, lacks <= 0), 1, 0),
        source="1 if the pile has loads and a site",
    )
    tipping = line(
        "Dump fee, cheapest site",
        "$",
        when(fits > 0, at(DisposalOption.tipping, largest(1, place), of=VEHICLE * PILE), 0),
        source="looked up by row",
    )
    dirty = line(
        "Contamination surcharge, cheapest site",
        "$",
        when(fits > 0, at(DisposalOption.dirty, largest(1, place), of=VEHICLE * PILE), 0),
        source="looked up by row",
    )
    trips = line(
        "Trucking, cheapest site",
        "$",
        when(fits > 0, at(DisposalOption.trips, largest(1, place), of=VEHICLE * PILE), 0),
        source="looked up by row",
    )
    hours = line(
        "Trip hours, cheapest site",
        "h",
        when(fits > 0, LoadCount.loads.count * at(SiteSpec.trip, largest(1, place)), 0),
        source="loads times trip time",
    )
