"""Each pile on each vehicle to each site that takes it, and the cheapest of them.

Overweight is never planned: loads go by room or by weight, whichever asks for more.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.piles import LoadMix, SiteSpec, SoilCleanliness, VehicleSpec
from calc.trade.inputs.job import Disposal, Vehicle
from calc.trade.levels import DISPOSAL, PILE, VEHICLE

_SHEET = "Dig and haul"
ONE_DOLLAR = exact(1, "$")


class LoadCount(Section, title="Loads of each pile on each vehicle", each=VEHICLE * PILE, sheet=_SHEET):
    """By room and by weight, whichever is more; no weight, no load."""

    by_room = line(
        "Loads by room",
        "load",
        when(VehicleSpec.room > 0, round_up(LoadMix.loose / VehicleSpec.room), 0),
        source="loose volume over the room of the heaped box",
    )
    by_weight = line(
        "Loads by weight",
        "load",
        when(VehicleSpec.payload > 0, round_up(LoadMix.tons / VehicleSpec.payload), 0),
        source="weight over the payload",
    )
    loads = line("Loads", "load", largest(by_room, by_weight), source="whichever is more; no pile, no load")
    tons = line("Tons on a load", "ton/load", when(loads > 0, LoadMix.tons / loads, 0), source="split evenly")
    yards = line("Yards on a load", "yd3/load", when(loads > 0, LoadMix.loose / loads, 0), source="split evenly")


class DisposalOption(
    Section, title="Each pile on each vehicle to each site", each=VEHICLE * PILE * DISPOSAL, sheet=_SHEET
):
    """Candidates: what the gate takes, what a dirty load may cost, what the trips cost."""

    takes = line(
        "Can go there",
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
        source="the kind, a rate, and wet soil and roots where there are any in the pile",
    )
    tipping = line(
        "Tipping",
        "$",
        LoadCount.loads * largest(SiteSpec.load, SiteSpec.ton * LoadCount.tons, SiteSpec.yard * LoadCount.yards),
        source="loads, at the dearest of the least charge and the rates that the site has",
    )
    dirty = line(
        "Dirty loads",
        "$",
        when(
            is_word(LoadMix.kind, "soil"),
            LoadCount.loads * Disposal.contamination * SoilCleanliness.chance / PERCENT,
            0,
        ),
        source="surcharge times its chance, for soil at a site for soil",
    )
    trips = line(
        "Trips",
        "$",
        LoadCount.loads.count * (SiteSpec.trip * VehicleSpec.hour + SiteSpec.miles * Vehicle.per_mile),
        source="hours and miles of every load",
    )
    cost = line("All of it", "$", tipping + dirty + trips, source="gate, surcharge and trips")
    compared = line(
        "Compared",
        "$",
        when(takes > 0, money(cost), money(greatest(cost)) + ONE_DOLLAR),
        source="a site that does not take it is put behind the dearest",
    )


class BestDisposal(Section, title="Each pile on each vehicle to its best site", each=VEHICLE * PILE, sheet=_SHEET):
    """The site with the least of gate, surcharge and trips; an empty pile needs none."""

    place = line(
        "Row of the site",
        "",
        argmin(DisposalOption.compared, VEHICLE * PILE),
        source="least, first row wins; 0 for no sites",
    )
    lacks = line(
        "Lacks a site",
        "",
        when(
            both(
                LoadCount.loads > 0,
                either(place <= 0, at(DisposalOption.takes, largest(1, place), of=VEHICLE * PILE) <= 0),
            ),
            1,
            0,
        ),
        source="1 where something lies in it and no site takes it",
    )
    fits = line(
        "Has a site", "", when(both(LoadCount.loads > 0, lacks <= 0), 1, 0), source="1 for a pile that goes somewhere"
    )
    tipping = line(
        "Tipping there",
        "$",
        when(fits > 0, at(DisposalOption.tipping, largest(1, place), of=VEHICLE * PILE), 0),
        source="of that site",
    )
    dirty = line(
        "Dirty loads there",
        "$",
        when(fits > 0, at(DisposalOption.dirty, largest(1, place), of=VEHICLE * PILE), 0),
        source="of that site",
    )
    trips = line(
        "Trips there",
        "$",
        when(fits > 0, at(DisposalOption.trips, largest(1, place), of=VEHICLE * PILE), 0),
        source="of that site",
    )
    hours = line(
        "Trip hours there",
        "h",
        when(fits > 0, LoadCount.loads.count * at(SiteSpec.trip, largest(1, place)), 0),
        source="loads times one trip",
    )
