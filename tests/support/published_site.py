"""Published figures: slopes, lips and widths of walks, dust, lifting, bars, heat, heavy trailers, locate notice."""

from __future__ import annotations

from published import CompanyBook, Known, Published, Says, Typed, Usual, says, slab, typed

ADA = "2010 ADA Standards"
PROWAG = "PROWAG (2023)"
TABLE_1 = "29 CFR 1926.1153, table 1"
LIFTING = "Applications Manual for the Revised NIOSH Lifting Equation (94-110), load constant"
LICENSE = "49 CFR 383.5, commercial motor vehicle, combination vehicle (group A)"
HEAT_INDEX = "National Weather Service, heat index: caution from 80 F, extreme caution from 90 F, danger from 103 F"


def fires(name: str, active: bool) -> Says:
    """Whether a caution is active."""
    return says(f"{name}_fires", float(active))


def used(public: bool = False, **columns: float | str) -> tuple[Typed, ...]:
    """A walk with columns of Areas about its use, in a right of way or outside."""
    about = {f"AreaUse.{name}": value for name, value in columns.items()}
    return (slab(20, 5, 4, **about), *((typed("Permissions", right_of_way="yes"),) if public else ()))


WALKS = (
    Published(
        "a lip of more than half an inch is a ramp",
        f"{ADA} 303.4",
        Known.SEEN,
        used(level_change=0.625),
        (fires("SurfaceCautions.high_level_change", True),),
    ),
    Published(
        "a walk that nobody calls accessible trips people all the same",
        f"{ADA} 303, for every walk by the rule of this program",
        Known.CONSTRUCTED,
        used(level_change=0.625, accessible_route="no", running_slope=9),
        (fires("SurfaceCautions.high_level_change", True), fires("SurfaceCautions.ramp_slope", True)),
    ),
    Published(
        "a walk of 1 in 48 across is within the limit",
        f"{ADA} 403.3",
        Known.SEEN,
        used(cross_slope="1:48"),
        (says("AreaSlopes.excess_cross_slope", 0),),
    ),
    Published(
        "a public walk of 1 in 48 across is within the limit",
        f"{PROWAG} R302.5: 1:48 (2.1 %)",
        Known.MEMORY,
        used(public=True, cross_slope="1:48"),
        (says("AreaSlopes.excess_cross_slope", 0), says("AreaSlopes.cross_slope_limit", 2.1)),
    ),
    Published(
        "a public walk of 2.5 % across is over the limit",
        f"{PROWAG} R302.5",
        Known.MEMORY,
        used(public=True, cross_slope=2.5),
        (says("AreaSlopes.excess_cross_slope", 0.4),),
    ),
    Published(
        "a walk of 1 in 20 along is no ramp",
        f"{ADA} 403.3",
        Known.SEEN,
        used(running_slope="1:20"),
        (fires("SurfaceCautions.running_slope", False),),
    ),
    Published(
        "a walk of 1 in 12 along is a ramp",
        f"{ADA} 405.2",
        Known.MEMORY,
        used(running_slope="1:12"),
        (fires("SurfaceCautions.running_slope", True), fires("SurfaceCautions.ramp_slope", False)),
    ),
    Published(
        "a public walk may be as steep as its street",
        f"{PROWAG} R302.4.1, exception",
        Known.MEMORY,
        used(public=True, running_slope=9, street_grade=9),
        (fires("SurfaceCautions.running_slope", False), fires("SurfaceCautions.ramp_slope", False)),
    ),
    Published(
        "beside a flat street a public walk may have 5 %",
        f"{PROWAG} R302.4.1",
        Known.MEMORY,
        used(public=True, running_slope=5, street_grade=2),
        (fires("SurfaceCautions.running_slope", False), says("AreaSlopes.running_slope_limit", 5)),
    ),
    Published(
        "a private walk does not follow the street",
        f"{ADA} 403.3",
        Known.SEEN,
        used(running_slope=6, street_grade=9),
        (fires("SurfaceCautions.running_slope", True),),
    ),
    Published(
        "a public walk is 48 in wide",
        f"{PROWAG} R302.2",
        Known.MEMORY,
        used(public=True, clear_width=3.5),
        (says("AreaSlopes.width_shortfall", 6),),
    ),
    Published(
        "a walk is 36 in wide",
        f"{ADA} 403.5.1",
        Known.MEMORY,
        used(clear_width=2.5),
        (says("AreaSlopes.width_shortfall", 6),),
    ),
)

HEAVY = CompanyBook(
    vehicle=typed(
        "Vehicle",
        struck_capacity=10,
        payload=8,
        combined_rating=26001,
        trailer_rating=10001,
        bed_length=12,
        bed_width=6,
    )
)
LIGHT_TRAILER = CompanyBook(
    vehicle=typed(
        "Vehicle",
        struck_capacity=10,
        payload=8,
        combined_rating=33000,
        trailer_rating=10000,
        bed_length=12,
        bed_width=6,
    )
)

PEOPLE = (
    Published(
        "from 26,001 lb with a trailer over 10,000 lb the driver has a commercial license",
        LICENSE,
        Known.MEMORY,
        (slab(20, 5),),
        (fires("SafetyCautions.commercial_license", True),),
        HEAVY,
    ),
    Published(
        "behind a heavy truck a trailer of 10,000 lb needs no group A",
        LICENSE,
        Known.MEMORY,
        (slab(20, 5),),
        (fires("SafetyCautions.commercial_license", False),),
        LIGHT_TRAILER,
    ),
    Published(
        "bars onto which somebody may fall are guarded",
        "29 CFR 1926.701(b)",
        Known.MEMORY,
        (slab(20, 5), typed("Edge", kind="existing", length=5, spacing=12)),
        (fires("SafetyCautions.standing_bars", True),),
    ),
    Published(
        "a hand-held saw that runs 4 h needs no respirator outdoors",
        f"{TABLE_1} (ii): hand-held power saws, with water, outdoors: none up to 4 h a shift",
        Known.PARTLY,
        (slab(20, 5), typed("Removal", saw_cut=133)),
        (fires("SafetyCautions.saw_respirator", False),),
    ),
    Published(
        "a hand-held saw that runs longer needs one",
        f"{TABLE_1} (ii): an assigned protection factor of 10 beyond 4 h a shift",
        Known.PARTLY,
        (slab(20, 5), typed("Removal", saw_cut=140)),
        (fires("SafetyCautions.saw_respirator", True),),
    ),
    Published(
        "at a heat index of 80 F caution begins",
        HEAT_INDEX,
        Known.MEMORY,
        (slab(20, 5), typed("Forecast", air=80)),
        (fires("SafetyCautions.heat", True), fires("SafetyCautions.high_heat", False)),
    ),
    Published(
        "at 95 F procedures for high heat begin",
        "8 CCR 3395(e)",
        Known.MEMORY,
        (slab(20, 5), typed("Forecast", air=95)),
        (fires("SafetyCautions.heat", False), fires("SafetyCautions.high_heat", True)),
    ),
)

SITE = (*WALKS, *PEOPLE)

USUAL_SITE = (
    Usual("AreaSlopes.max_public_cross_slope", 100 / 48, 2.1, f"{PROWAG} R302.5", Known.MEMORY),
    Usual("AreaSlopes.usual_street_grade", 5, 5, f"{PROWAG} R302.4.1", Known.MEMORY),
    Usual("AreaSlopes.max_level_change", 0.25, 0.25, f"{ADA} 303.2", Known.SEEN),
    Usual("AreaSlopes.stop_level_change", 0.5, 0.5, f"{ADA} 303.3", Known.SEEN),
    Usual("AreaSlopes.max_walk_slope", 5, 5, f"{ADA} 403.3", Known.SEEN),
    Usual("AreaSlopes.max_ramp_slope", 100 / 12, 100 / 12, f"{ADA} 405.2", Known.MEMORY),
    Usual("DustHours.max_sawing", 4, 4, f"{TABLE_1} (ii)", Known.PARTLY),
    Usual("DustHours.max_without_respirator", 4, 4, f"{TABLE_1} (x)", Known.PARTLY),
    Usual("CrewHealth.max_lift", 51, 51, LIFTING, Known.MEMORY),
    Usual("CrewHealth.dry_weight", 80 / 0.6 - 0.5, 80 / 0.6 + 0.5, "bag labels: 80 lb yield 0.6 ft3", Known.MEMORY),
    Usual("CrewHealth.dry_weight", 60 / 0.45 - 0.5, 60 / 0.45 + 0.5, "bag labels: 60 lb yield 0.45 ft3", Known.MEMORY),
    Usual("CrewHealth.heat_note", 80, 90, HEAT_INDEX, Known.MEMORY),
    Usual("CrewHealth.heat_note", 80, 80, "8 CCR 3395(d): shade from 80 F", Known.MEMORY),
    Usual("CrewHealth.heat_caution", 90, 103, HEAT_INDEX, Known.MEMORY),
    Usual("CrewHealth.heat_caution", 95, 95, "8 CCR 3395(e): high heat from 95 F", Known.MEMORY),
    Usual("CommercialLicense.least_combined", 26001, 26001, LICENSE, Known.MEMORY),
    Usual("CommercialLicense.max_trailer", 10000, 10000, LICENSE, Known.MEMORY),
    Usual("CalendarRules.notice", 2, 3, "state one-call laws: two or three working days", Known.MEMORY),
)
