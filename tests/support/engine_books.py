"""A job of the engine as it is typed: the tables of a jobs book and of a company book."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from books import Rows
from reference_engine.facts import Area, Job, Pay, Prices, Shape, Station

BID_DATE = "2026-04-13"
KINDS = {"mixed": "mixed", "green": "green waste", "soil": "soil", "concrete": "concrete debris"}
SHAPES = {"stations": "cross-sections", "polygon": "outline points"}
TOOLS = {
    "jackhammer": "demolition hammer", "chipping_hammer": "chipping hammer", "saw": "concrete saw",
    "plate_compactor": "plate compactor", "mixer": "mixer", "generator": "generator",
    "mini_excavator": "mini excavator",
}  # fmt: skip
ITEMS = {
    "air": "Entrained air", "accelerator": "Accelerator", "retarder": "Retarder", "winter_heat": "Winter heat",
    "pea_gravel": "Pea-gravel pump mix, added cost", "delivery": "Concrete delivery", "base_rock": "Base rock",
    "base_delivery": "Base rock delivery", "bag_clean_up": "Clean-up after bagged concrete",
    "pump_set_up": "Pump set-up charge", "pump_hour": "Pump, per hour", "pump_yard": "Pump, per yard",
    "pump_prime": "Pump primer", "standby_minute": "Truck standby (wait time)", "bond_breaker": "Bond breaker",
    "barricade_day": "Barricades, per day", "caution_set": "Caution tape and signs", "washout": "Concrete washout",
    "mini_excavator_delivery": "Mini excavator delivery", "drill_bit": "Drill bit", "epoxy_tube": "Epoxy cartridge",
    "isolation_strip": "Isolation-joint filler", "cap_and_sealant": "Joint cap and sealant",
    "board_2x4": "Form lumber, 2x4", "board_2x6": "Form lumber, 2x6", "board_2x8": "Form lumber, 2x8",
    "stake": "Form stake", "bender_board": "Bender board", "form_release_agent": "Form release agent",
}  # fmt: skip
"""Prices of one number, by their row."""
NEW_COLUMNS: dict[str, tuple[str, ...]] = {
    "Areas": ("Reinforcement", "Bar size", "Bar spacing in", "Vapor retarder"),
    "Site conditions": ("Spoil way ft", "After-hours delivery"),
    "Prices": ("Environmental fee, per load", "Fuel surcharge, per load", "Saturday fee, per yard",
               "Saturday fee, per load", "After-hours fee, per load", "Fiber added at the plant",
               "Mobilization, crew visit", "Mobilization, one-person visit"),
    "Wages": ("crew mix",),
}  # fmt: skip
"""What is not yet asked for; nothing of it is typed until its column exists."""


def said(answer: bool | None) -> str | None:
    """A yes or no, or a blank."""
    return None if answer is None else "yes" if answer else "no"


def price_rows(prices: Prices) -> list[list[object]]:
    """The price list; $0 is a price."""
    rows: list[list[object]] = [[label, getattr(prices, name), None] for name, label in ITEMS.items()]
    for name, tool in TOOLS.items():
        each = getattr(prices, name)
        ways = (("half a day", each.half_day), ("a day", each.day), ("a week", each.week))
        rows += [[f"Rental for {way}, {tool}", cost, None] for way, cost in ways if cost is not None]
    rows += [[f"Ready-mix, {psi} psi", cost, None] for psi, cost in prices.concrete]
    rows += [[f"Short-load fee, tier {n}", fee, size] for n, (size, fee) in enumerate(prices.short_load_tiers, 1)]
    rows += [["Dowel bar", cost, None] for size, cost in prices.dowel_bar.items() if size == 0.375]
    rows += [["Concrete bag", prices.bag, 0.6], ["Micro fiber", prices.micro_fiber, None]]
    rows += [["Macro fiber", prices.macro_fiber, None]]
    for label, packs in (
        ("Bonding agent", prices.bonding_agent), ("Curing compound", prices.curing_compound), ("Sealer", prices.sealer),
    ):  # fmt: skip
        rows += [[f"{label}, {'small' if p.gallons < 5 else '5-gal'} pail", p.price, p.gallons] for p in packs]
    return rows


def company_tables(job: Job) -> dict[str, Rows]:
    """The company book that a job was drawn with."""
    private, prevailing = job.wages.private, job.wages.prevailing or Pay(None, None)
    pay = [[role, getattr(private, role), getattr(prevailing, role)] for role in ("laborer", "finisher", "driver")]
    return {
        "Vehicles": [
            ["vehicle", "struck bed capacity yd3", "heaped factor", "payload ton", "hourly rate $/h",
             "mileage rate $/mile", "hired", "minimum hours h"],
            *([v.name, v.bed, v.heaped, v.payload, v.per_hour, v.per_mile, said(v.hired), v.minimum_hours]
              for v in job.fleet),
        ],
        "Disposal sites": [
            ["site", "kind", "per ton $/ton", "per yard $/yd3", "per load $/load", "minimum charge $/load",
             "contamination surcharge $/load", "one-way time min", "one-way distance mile", "turnaround time min",
             "closes h", "accepts wet soil", "accepts roots and turf"],
            *([s.name, KINDS[s.kind], s.per_ton or None, s.per_yard or None, s.per_load or None, s.minimum,
               s.contamination, s.minutes, s.miles, s.turnaround, s.closes, said(s.takes_wet), said(s.takes_roots)]
              for s in job.sites),
        ],
        "Wages": [["role", "private $/h", "prevailing $/h"], *pay],
        "Prices": [["item", "price", "size"], *price_rows(job.prices)],
    }  # fmt: skip


def _area(name: str, area: Area) -> list[object]:
    shape = area.shape
    return [
        name, area.name, SHAPES.get(shape.kind, shape.kind), shape.length or None, shape.width or None,
        shape.width_2 or None, area.edge_1 or area.thickness, area.edge_2, area.height_above_grade, area.base,
        area.copies, shape.area or None, area.run, area.panel_width, area.old_slab_area, area.old_slab_thickness,
        None if area.run_slope is None else area.run_slope * 100,
    ]  # fmt: skip


def _stations(name: str, area: Area) -> list[list[object]]:
    """Stations in order. Where a strip has an old joint or a depth the width is between those of its neighbors.

    An old joint off the slab cannot be typed: its row would need a width, and lengthen the slab.
    """
    stops = area.shape.stations
    if not stops:
        return [[name, area.name, n + 1, None, depth, None] for n, depth in enumerate(area.depths)]
    begin, end = stops[0].at, stops[-1].at
    depths = {begin + (end - begin) * (n + 1) / (len(area.depths) + 1): d for n, d in enumerate(area.depths)}
    joints = {at for at in area.old_joints if begin <= at <= end}
    places = sorted({s.at for s in stops} | set(depths) | joints)
    return [[name, area.name, at, _width(stops, at), depths.get(at), "yes" if at in joints else None] for at in places]


def _width(stops: Sequence[Station], at: float) -> float:
    """The width of a strip at a place."""
    for one, two in pairwise(stops):
        if one.at <= at <= two.at:
            return one.width + (two.width - one.width) * (at - one.at) / (two.at - one.at)
    raise ValueError(f"no width at {at}")


def _hole(shape: Shape) -> list[object]:
    return [shape.kind, shape.length or None, shape.width or None, shape.area or None]


def site_facts(job: Job) -> dict[str, object]:
    """What is told of a site."""
    return {
        "Fiber dose": job.fiber_dose, "Moisture": job.moisture, "Turf in the dig": said(job.turf),
        "Keep backfill on site": said(job.keep_backfill), "Bonding coats": job.bond_coats,
        "Sealer coats": job.sealer_coats, "Control joints": "tooled" if job.joints == "tooled" else "saw-cut",
        "Strength": job.mix_psi, "Entrained air": said(job.air), "Accelerator": said(job.accelerator),
        "Retarder": said(job.retarder), "Winter heat": said(job.winter_heat), "Placing crew": job.placers,
        "Finishers": job.finishers, "Wage table": job.wage_table, "Order rule": job.order_rule,
        "Fixed order": job.fixed_order or None, "Order reason": "drawn", "Drive time from plant": job.plant_drive,
        "Chute access": said("chute" in job.methods), "Wheelbarrow access": said("barrow" in job.methods),
        "Pump access": said("pump" in job.methods), "Wheelbarrows": job.barrows, "Muddy route": said(job.wet_way),
        "Air temperature": job.air_temperature, "Concrete temperature": job.concrete_temperature,
        "Demolition saw cut": sum(a.saw_cut * a.copies for a in job.areas),
        "Unforeseen-conditions allowance": job.unforeseen_hours,
        "Crew": job.crew, "Power on site": said(job.power), "Days closed to traffic": job.close_days,
        "Permit": job.permit, "Retainage": job.retainage * 100,
        "Route grade": None if job.way_slope is None else job.way_slope * 100,
    }  # fmt: skip


def week_tables(jobs: Sequence[Job]) -> dict[str, Rows]:
    """The jobs book of some jobs, by their names."""
    areas = [(job.name, area) for job in jobs for area in job.areas]
    facts = [(job.name, *fact) for job in jobs for fact in site_facts(job).items()]
    return {
        "Jobs": [
            ["job", "bid date", "pour date", "soil", "fiber", "irrigation lines to cap", "dug by",
             "wheelbarrow distance ft"],
            *([j.name, BID_DATE, None if j.pour_date is None else j.pour_date.isoformat(), j.soil, j.fiber, j.caps,
               "machine" if j.machine_digging else "hand", j.barrow_distance] for j in jobs),
        ],
        "Site conditions": [["job", "fact", "value"], *([*each] for each in facts if each[2] is not None)],
        "Areas": [
            ["job", "area", "shape", "length ft", "width ft", "other width ft", "thickness in", "other thickness in",
             "height above grade in", "base in", "quantity", "area ft2", "length for joint layout ft",
             "panel width ft", "old slab ft2", "old slab thickness in", "running slope %"],
            *(_area(*each) for each in areas),
        ],
        "Cross-sections": [["job", "area", "station ft", "width ft", "depth in", "old joint"],
                           *(row for each in areas for row in _stations(*each))],
        "Outline points": [["job", "area", "x ft", "y ft"],
                           *([name, a.name, *point] for name, a in areas for point in a.shape.points)],
        "Deductions": [
            ["job", "area", "shape", "length ft", "width ft", "area ft2", "quantity", "isolation", "perimeter ft"],
            *([name, a.name, *_hole(d.shape), d.count, said(d.isolation), d.perimeter or None]
              for name, a in areas for d in a.deductions),
        ],
        "Edges": [
            ["job", "area", "kind", "length ft", "quantity", "curved", "dowel spacing in", "drill diameter in",
             "isolation"],
            *([name, a.name, e.kind, e.length, e.repeats, said(e.curved), e.dowel_spacing, e.drill_diameter,
               said(e.isolation)] for name, a in areas for e in a.edges),
        ],
        "Footings": [
            ["job", "area", "length ft", "width ft", "depth to top of footing in", "required cover in",
             "exposed sides", "reinforced", "treated with"],
            *([name, a.name, f.length, f.width, f.top_below, f.cover, f.exposed_sides, f.reinforced,
               "bond breaker" if f.bond_breaker else "bonding agent"] for name, a in areas for f in a.footings),
        ],
        "Plants": [
            ["job", "quantity", "width ft", "depth ft", "height ft", "root ball ft", "ball height ft"],
            *([j.name, p.count, p.width, p.depth, p.height, p.ball_diameter, p.ball_height]
              for j in jobs for p in j.plants),
        ],
    }  # fmt: skip
