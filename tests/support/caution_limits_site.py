"""The jobs on either side of the limits of surface, slab, site and price: see ``caution_limits``."""

from __future__ import annotations

from collections.abc import Mapping
from math import ceil, erfc, exp, pi, sqrt

from books import COMPANY, Rows, usual
from caution_limits import NEED, Limit, Tables, a_job, facts, planted, priced
from priced_company import EVERY_JOB, PRICED, good_until, without

WELL = a_job()


def lying(**columns: object) -> Tables:
    """A slab of 9 by 9 ft, 4 in thick, with more columns of Areas, each by its header with underscores for spaces."""
    heads = ["length ft", "width ft", "thickness in", *(name.replace("_", " ") for name in columns)]
    own = {"length ft", "width ft", "thickness in"} & {name.replace("_", " ") for name in columns}
    plain = [(head, value) for head, value in zip(heads, (9, 9, 4, *columns.values()), strict=True)]
    kept = [(head, value) for place, (head, value) in enumerate(plain) if place >= 3 or head not in own]
    return WELL | {"Areas": [[head for head, _ in kept], [value for _, value in kept]]}


def edged(kind: str = "existing", **columns: object) -> Tables:
    """The slab with one edge of 9 ft."""
    names = [name.replace("_", " ") for name in columns]
    return WELL | {"Edges": [["kind", "length ft", *names], [kind, 9, *columns.values()]]}


def over_footing(top: float, cover: float = 1.5, treated: str = "bonding agent") -> Tables:
    """The slab over a footing whose top lies so deep, chipped until ``cover`` lies over it."""
    heads = ["length ft", "width ft", "depth to top of footing in", "required cover in", "treated with"]
    return WELL | {"Footings": [heads, [8, 1, top, cover, treated]]}


def said(**typed: object) -> Tables:
    """The job with words or numbers of its site."""
    return WELL | {
        "Site conditions": [["fact", "value"], *([name.replace("_", " "), value] for name, value in typed.items())]
    }


def held_in(isolation: str) -> Tables:
    """Bonded to a footing, doweled to the old walk, and against a wall."""
    edges: Rows = [
        ["kind", "length ft", "dowel spacing in", "isolation"],
        ["existing", 9, 24, None],
        ["wall", 9, None, isolation],
    ]
    return over_footing(1, 2) | {"Edges": edges}


def broken(inches: float) -> Tables:
    """The slab over an old slab of 81 ft2 that is broken out."""
    return lying(base_in=8, old_slab_ft2=81, old_slab_thickness_in=inches)


def frozen(*typed: tuple[str, object]) -> Tables:
    """The job where it freezes, with air in the mix unless more is said."""
    told = {"Freeze-thaw site": "yes", "Entrained air": "yes"} | dict(typed)
    return WELL | {"Site conditions": [["fact", "value"], *([name, value] for name, value in told.items())]}


def only_permit(dollars: float, margin: float) -> Tables:
    """The job whose one cost is its permit, with a margin of its own."""
    return said(Permit=dollars, Job_margin=margin, Job_overhead=0, Job_contingency=0)


def ordering(yards: float) -> Tables:
    """The job with its order overridden."""
    return WELL | {
        "Overrides": [["line", "value", "reason", "who"], ["Concrete to order", yards, "as agreed", "QZ"]],
    }


def opened(shape: str) -> Tables:
    """The slab around one opening of that shape."""
    return WELL | {"Deductions": [["shape", "length ft", "width ft"], [shape, 1, 1]]}


def mixed_by_hand() -> Tables:
    """The job with its concrete from bags, whatever a truck would cost."""
    return said(Placing_method="bags", Placing_reason="no truck comes near")


def bagged(cubic_feet: float) -> Mapping[str, Rows]:
    """A company book with bags that yield so much."""
    return priced(["Concrete bag", 6, "bag", cubic_feet])


def rated(combined: float, trailer: float) -> Mapping[str, Rows]:
    """A company book with one truck and trailer, by their ratings in lb."""
    heads = ["vehicle", "struck bed capacity yd3", "payload ton", "combined rating lb", "trailer rating lb"]
    return COMPANY | {"Vehicles": [heads, ["trailer", 5, 4.5, combined, trailer]]}


SPREAD = sqrt(
    (81 * usual("DepthUncertainty.default_std_dev") / 324) ** 2
    + (81 * usual("VolumeUncertainty.string_line_error") / 324) ** 2
    + (usual("VolumeUncertainty.area_error") / 100) ** 2
    + (usual("VolumeUncertainty.yield_error") / 100) ** 2
)
"""Of the need of a cubic yard whose depth nobody measured, in yards: an inch of 81 ft2 is 81 / 324 yd3."""


def task(word: str) -> float:
    """Hours for one of what a task is counted in."""
    return usual("TaskRates.usual", word)


PLACING = 0.5 * 2
"""Two people for half an hour."""

HOURS = (
    usual("TaskRates.minimum", "layout")
    + task("dig by hand")
    + task("load by hand") * (1 + usual("Soil.swell", "loam") / 100)
    + PLACING
    + 81 / usual("FinishWindow.rate")
    + 81 * task("apply curing compound")
    + task("clean up")
)
"""Laying out, digging and loading a yard, placing, finishing, curing, cleaning up."""

MIXED_HOURS = HOURS - PLACING + ceil(NEED * 27 / 0.6) * usual("Bags.minutes_per_bag") / 60 * usual("Bags.crew")
"""The same where nobody costs anything, so that bags of 0.6 ft3 win."""


def short_by(order: float) -> float:
    """The chance that an order runs short of the need."""
    return erfc((order - NEED) / SPREAD / sqrt(2)) / 2


def left_of(order: float) -> float:
    """What an order should leave over of the need."""
    z = (order - NEED) / SPREAD
    return order - NEED + SPREAD * (exp(-z * z / 2) / sqrt(2 * pi) - z * short_by(order))


UNPRICED: Mapping[str, Rows] = COMPANY | {"Prices": COMPANY["Prices"][:1]}
"""A company book that has a price for nothing."""

PREVAILING = PRICED | {"Wages": [["role", "prevailing $/h"], ["laborer", 68], ["finisher", 81]]}

MORE: dict[str, Limit] = {
    # 2010 ADA 303: 1/4 in, and up to 1/2 in with a bevel
    "SurfaceCautions.level_change": Limit(
        lying(vertical_change_in_level_in=0.25), lying(vertical_change_in_level_in=0.26), 0.26
    ),
    # where only wheels cross it, half an inch is the limit
    "SurfaceCautions.driven_level_change": Limit(
        lying(vertical_change_in_level_in=0.5, vehicles="light"),
        lying(vertical_change_in_level_in=0.51, vehicles="light"),
        0.51,
    ),
    "SurfaceCautions.high_level_change": Limit(
        lying(vertical_change_in_level_in=0.5), lying(vertical_change_in_level_in=0.51), 0.51
    ),
    # 2010 ADA 403.3: 1:48 across, and 1:20 along
    "SurfaceCautions.cross_slope": Limit(lying(cross_slope="1:48"), lying(cross_slope=100 / 48 + 0.1), 0.1),
    "SurfaceCautions.running_slope": Limit(
        lying(running_slope=5, cross_slope=2), lying(running_slope=5.1, cross_slope=2), 5.1
    ),
    # 2010 ADA 405: 1:12
    "SurfaceCautions.ramp_slope": Limit(lying(running_slope="1:12"), lying(running_slope=8.4), 8.4),
    # 1 %, and 2 % at a building
    "SurfaceCautions.poor_drainage": Limit(
        lying(cross_slope=2) | {"Edges": [["kind", "length ft"], ["building", 9]]},
        lying(cross_slope=1.75) | {"Edges": [["kind", "length ft"], ["building", 9]]},
        0.25,
    ),
    "SurfaceCautions.drains_to_building": Limit(
        lying(slopes_toward_a_building="no"), lying(slopes_toward_a_building="yes"), 1
    ),
    # PROWAG R302: 48 in within a right of way
    "SurfaceCautions.narrow_walk": Limit(
        lying(clear_width_ft=4) | {"Site conditions": [["fact", "value"], ["Right of way", "yes"]]},
        lying(clear_width_ft=3.75) | {"Site conditions": [["fact", "value"], ["Right of way", "yes"]]},
        3,
    ),
    # a day, twice that below 50 F
    "SurfaceCautions.early_traffic": Limit(
        facts(Days_closed_to_traffic=1, Air_temperature=50), facts(Days_closed_to_traffic=1, Air_temperature=49), 1
    ),
    # 2 in over a footing; a 6 in slab wants 3 in
    "SlabCautions.thin_cover": Limit(over_footing(2), over_footing(1.9), 0.1),
    "SlabCautions.half_cover": Limit(
        over_footing(2) | {"Areas": [["length ft", "width ft", "thickness in"], [9, 9, 4]]},
        over_footing(2) | {"Areas": [["length ft", "width ft", "thickness in"], [9, 9, 6]]},
        1,
    ),
    # 5 in under cars, 6 in under trucks
    # 4 in thick: a panel of 10 ft, so 100 ft2 of a shape without two sides are one, and 121 ft2 are not
    "SlabCautions.without_joints": Limit(
        lying(shape="area given", area_ft2=100), lying(shape="area given", area_ft2=121), 121
    ),
    "SlabCautions.driven_unreinforced": Limit(
        lying(vehicles="light", reinforcement="mesh"), lying(vehicles="light"), 81
    ),
    "SlabCautions.reinforced": Limit(WELL, lying(reinforcement="bars"), 81),
    "SlabCautions.thin_for_vehicles": Limit(lying(vehicles="none"), lying(vehicles="light"), 1),
    # a 3/8 in bar in the middle: 3 3/8 in leave 1 1/2 above and below, 2 3/8 in leave 1
    "SlabCautions.dowel_cover": Limit(
        edged(dowel_spacing_in=24, bar_diameter_in=1), edged(dowel_spacing_in=24, bar_diameter_in=1.25), 0.125
    ),
    "SlabCautions.dowel_stop": Limit(
        edged(dowel_spacing_in=24, bar_diameter_in=0.5)
        | {"Areas": [["length ft", "width ft", "thickness in"], [9, 9, 2.5]]},
        edged(dowel_spacing_in=24, bar_diameter_in=0.5)
        | {"Areas": [["length ft", "width ft", "thickness in"], [9, 9, 2.25]]},
        0.125,
    ),
    "SlabCautions.dowel_end": Limit(
        edged(dowel_spacing_in=24, end_distance_in=6), edged(dowel_spacing_in=24, end_distance_in=5), 1
    ),
    "SlabCautions.tight_hole": Limit(
        edged(dowel_spacing_in=24, bar_diameter_in=0.5, drill_diameter_in=0.5625, bar_surface="deformed"),
        edged(dowel_spacing_in=24, bar_diameter_in=0.5, drill_diameter_in=0.5, bar_surface="deformed"),
        1,
    ),
    # 1/2 in under cars
    "SlabCautions.dowel_size": Limit(
        edged(dowel_spacing_in=24, bar_diameter_in=0.5) | {"Areas": lying(vehicles="light")["Areas"]},
        edged(dowel_spacing_in=24, bar_diameter_in=0.375) | {"Areas": lying(vehicles="light")["Areas"]},
        0.125,
    ),
    # ACI 302.1R-96: half as long again as wide; 12 by 8 is, 9 by 5.9 is more. Spacing by width is 1.5 w, so a factor
    "SlabCautions.long_panels": Limit(
        lying(length_ft=9, width_ft=6),
        lying(length_ft=9, width_ft=6),
        1.5,
        COMPANY,
        COMPANY | {"Factors": [["factor", "value"], ["Panel length to width, max", 1.49]]},
    ),
    # a strip 2 ft wide is jointed every 4 ft
    "SlabCautions.narrow_strip": Limit(lying(length_ft=8, width_ft=3), lying(length_ft=8, width_ft=2), 2),
    # 24 to 36 times the thickness; spacing at 36 times makes a panel of 12 ft, 30 times 4 in are 10 ft
    "SlabCautions.panel_length": Limit(
        lying(length_ft=10, width_ft=10),
        lying(length_ft=12, width_ft=12),
        2,
        COMPANY,
        COMPANY | {"Factors": [["factor", "value"], ["Joint spacing, times thickness", 36]]},
    ),
    # a round opening has no corner that points into the slab
    "SlabCautions.inside_corners": Limit(opened("circle"), opened("rectangle"), 1),
    "SlabCautions.restraint": Limit(held_in("yes"), held_in("no"), 1),
    # ACI 318 exposure F: air, and 4,000 psi
    "SlabCautions.no_air": Limit(frozen(("Entrained air", "yes")), frozen(("Entrained air", "no")), 3500),
    "SlabCautions.low_strength": Limit(frozen(("Strength", 4000)), frozen(("Strength", 3999)), 3999),
    # an inch of an old slab of 81 ft2 is 81 / 324 yd3
    "SiteCautions.silica": Limit(WELL, broken(1), 81 / 324 * task("break out slab")),
    "SiteCautions.respirator": Limit(broken(4), broken(10.5), 81 * 10.5 / 324 * task("break out slab")),
    "SiteCautions.generator_exhaust": Limit(
        broken(4) | {"Site conditions": [["fact", "value"], ["Power on site", "yes"]]},
        edged(dowel_spacing_in=24),
        task("drill dowels") * 5,
    ),
    "SiteCautions.shutoffs": Limit(
        WELL, {**WELL, "Jobs": [["job", "bid date", "irrigation lines to cap"], ["one", "2026-04-13", 2]]}, 2
    ),
    "SiteCautions.licensed_trade": Limit(WELL, said(Wall_or_wiring_touched="yes"), 0),
    "SiteCautions.locate_expired": Limit(
        {
            **said(Locate_expires="2026-04-24"),
            "Jobs": [["job", "bid date", "pour date"], ["one", "2026-04-13", "2026-04-27"]],
        },
        {
            **said(Locate_expires="2026-04-23"),
            "Jobs": [["job", "bid date", "pour date"], ["one", "2026-04-13", "2026-04-27"]],
        },
        1,
    ),
    "SiteCautions.pour_on_day_off": Limit(
        {**WELL, "Jobs": [["job", "bid date", "pour date"], ["one", "2026-04-13", "2026-04-24"]]},
        {**WELL, "Jobs": [["job", "bid date", "pour date"], ["one", "2026-04-13", "2026-04-25"]]},
        2,  # Saturday to Monday
    ),
    "SiteCautions.permits": Limit(said(Permit=0), WELL, 81),
    "SafetyCautions.standing_bars": Limit(WELL, edged(dowel_spacing_in=24), 5),
    # NIOSH lifting equation: 51 lb; a foot of concrete is 133 lb of dry mix
    "SafetyCautions.lifting": Limit(mixed_by_hand(), mixed_by_hand(), 0.39 * 133, bagged(0.38), bagged(0.39)),
    "SafetyCautions.closed_walk": Limit(said(Walk_or_lane_closed="no"), said(Walk_or_lane_closed="yes"), 3),
    "SafetyCautions.closed_walk_unknown": Limit(
        said(Right_of_way="yes", Walk_or_lane_closed="no"), said(Right_of_way="yes"), 3
    ),
    "SafetyCautions.gear": Limit(WELL, broken(1), 81 / 324 * task("break out slab")),
    # 29 CFR 1926.1153 table 1: 4 h a shift, at 0.03 h a foot
    "SafetyCautions.saw_respirator": Limit(
        said(Demolition_saw_cut=133), said(Demolition_saw_cut=134), 134 * task("demolition saw cut")
    ),
    # 49 CFR 383.5: from 26,001 lb, with a trailer over 10,000 lb
    "SafetyCautions.commercial_license": Limit(WELL, WELL, 26001, rated(26000, 10001), rated(26001, 10001)),
    # 8 ft2 of a footing, or nothing on it
    "SafetyCautions.fumes": Limit(over_footing(2, treated="nothing"), over_footing(2), 8 / usual("Bonding.coverage")),
    "SafetyCautions.roots": Limit(planted(0), planted(1), 2),
    "CrewCautions.client_unknown": Limit(said(Client_kind="owner"), WELL, 81),
    "CrewCautions.private_wages": Limit(
        said(Client_kind="owner"), said(Client_kind="school"), MIXED_HOURS, PRICED, PRICED
    ),
    "CrewCautions.no_wage_rate": Limit(
        said(Wage_table="prevailing"), said(Wage_table="prevailing"), MIXED_HOURS, PREVAILING, PRICED
    ),
    "PriceCautions.unpriced_costs": Limit(WELL, WELL, 1, PRICED, without(EVERY_JOB)),
    "PriceCautions.expired_prices": Limit(
        WELL,
        WELL,
        1,
        PRICED,
        good_until(EVERY_JOB, "2026-04-12"),
    ),
    # 10 to 40 %; a permit of $900 and nothing else: 900 / 0.92 goes up to 980
    "PriceCautions.margin": Limit(
        only_permit(900, margin=11), only_permit(900, margin=8), (1 - 900 / 980) * 100, UNPRICED, UNPRICED
    ),
    "PriceCautions.minimum_charge": Limit(said(Job_minimum=50), said(Job_minimum=9000), 9000, PRICED, PRICED),
    # one pour in ten, and three quarters of a yard
    "OrderCautions.may_run_short": Limit(ordering(1.17), ordering(1.15), short_by(1.15)),
    "OrderCautions.surplus": Limit(ordering(1.77), ordering(1.8), left_of(1.8)),
    "SlabCautions.deep_base": Limit(lying(base_in=8), lying(base_in=8.25), 8.25),
    # a hole of 26.9 in: damp loam is 0.12 ton a square foot, wet clay is 0.158
    "HaulCautions.spoil_per_area": Limit(
        lying(base_in=17.9, thickness_in=9),
        lying(base_in=17.9, thickness_in=9)
        | {
            "Jobs": [["job", "bid date", "soil"], ["one", "2026-04-13", "clay"]],
            "Site conditions": [["fact", "value"], ["Moisture", "wet"]],
        },
        26.9 / 324 * usual("Soil.density", "clay") * usual("Moisture.weight_factor", "wet") / 2000,
    ),
}
