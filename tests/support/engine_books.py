"""What a job of the reference engine looks like when it is typed: the tables of a jobs book and of a company book."""

from __future__ import annotations

from itertools import pairwise

from books import Rows
from reference_engine.facts import Area, Edge, Job, Pack, Shape, Station

KINDS = {"mixed": "mixed", "green": "green waste", "soil": "soil", "concrete": "concrete debris"}
SHAPES = {
    "rectangle": "rectangle",
    "trapezoid": "rectangle",
    "triangle": "triangle",
    "circle": "circle",
    "quarter circle": "quarter circle",
    "stations": "cross-sections",
    "polygon": "outline points",
    "area given": "area given",
}
JOINTS = {"tooled": "tooled", "sawn": "saw-cut", "early entry": "early-entry"}
TOOLS = {
    "jackhammer": "demolition hammer",
    "chipping_hammer": "chipping hammer",
    "saw": "concrete saw",
    "plate_compactor": "plate compactor",
    "mixer": "mixer",
    "generator": "generator",
    "mini_excavator": "mini excavator",
}
PLAIN_PRICES = {
    "air": "Entrained air",
    "accelerator": "Accelerator",
    "retarder": "Retarder",
    "winter_heat": "Winter heat",
    "pea_gravel": "Pea-gravel pump mix, added cost",
    "delivery": "Concrete delivery",
    "environmental": "Environmental fee",
    "fuel": "Fuel surcharge",
    "after_hours": "After-hours fee",
    "standby_minute": "Truck standby (wait time)",
    "micro_fiber": "Micro fiber",
    "macro_fiber": "Macro fiber",
    "pump_set_up": "Pump set-up charge",
    "pump_hour": "Pump, per hour",
    "pump_yard": "Pump, per yard",
    "pump_prime": "Pump primer",
    "bag_clean_up": "Clean-up after bagged concrete",
    "washout": "Concrete washout",
    "mini_excavator_delivery": "Mini excavator delivery",
    "base_rock": "Base rock",
    "base_delivery": "Base rock delivery",
    "board_2x4": "Form lumber, 2x4",
    "board_2x6": "Form lumber, 2x6",
    "board_2x8": "Form lumber, 2x8",
    "stake": "Form stake",
    "form_release_agent": "Form release agent",
    "drill_bit": "Drill bit",
    "epoxy_tube": "Epoxy cartridge",
    "isolation_strip": "Isolation-joint filler",
    "cap_and_sealant": "Joint cap and sealant",
    "chair": "Bar support",
    "ties_hundred": "Bar ties, per hundred",
    "mesh_sheet": "Wire mesh sheet",
    "bond_breaker": "Bond breaker",
    "caution_set": "Caution tape and signs",
    "barricade_day": "Barricades, per day",
    "mobilization_crew": "Mobilization, crew visit",
    "mobilization_one": "Mobilization, one-person visit",
}
"""Prices that are one number in both, by the field of the engine's price book."""
LIQUIDS = {"bonding_agent": "Bonding agent", "curing_compound": "Curing compound", "sealer": "Sealer"}


def _prices(job: Job) -> Rows:
    """The price list; a saturday fee is one of two rows, and no row is a fee of nothing."""
    p = job.prices
    rows: list[list[object]] = [["item", "price", "size"]]
    rows += [[f"Ready-mix, {psi} psi", price, None] for psi, price in p.concrete]
    rows += [[label, getattr(p, name), None] for name, label in PLAIN_PRICES.items()]
    rows += [[f"Short-load fee, tier {n}", fee, limit] for n, (limit, fee) in enumerate(sorted(p.short_load_tiers), 1)]
    if p.saturday:
        rows.append([f"Saturday fee, per {p.saturday_by}", p.saturday, None])
    if p.plant_fiber:
        rows.append(["Fiber put in at the plant", p.plant_fiber, None])
    rows += [["Concrete bag", p.bag, job.factors.bag_yield], ["Dowel bar", p.dowel_bar[0.375], None]]
    rows += [[f"Reinforcing bar, #{number}", price, None] for number, price in p.reinforcing_bar.items()]
    rows.append(["Vapor retarder roll", p.vapor_roll, p.vapor_roll_size])
    for name, label in LIQUIDS.items():
        rows += _pails(label, getattr(p, name))
    for name, tool in TOOLS.items():
        rental = getattr(p, name)
        rows.append([f"Rental for half a day, {tool}", rental.half_day, None])
        rows.append([f"Rental for a day, {tool}", rental.day, None])
        if rental.week is not None:
            rows.append([f"Rental for a week, {tool}", rental.week, None])
    return rows


def _pails(label: str, packs: tuple[Pack, ...]) -> list[list[object]]:
    small, large = sorted(packs, key=lambda pack: pack.gallons)
    return [[f"{label}, small pail", small.price, small.gallons], [f"{label}, 5-gal pail", large.price, large.gallons]]


def company_tables(job: Job) -> dict[str, Rows]:
    """The company book of the job: its prices, wages, vehicles and disposal sites."""
    wages = job.wages
    public = wages.prevailing
    pay: list[list[object]] = [["role", "private $/h", "prevailing $/h"]]
    for role, field in (
        ("laborer", "laborer"),
        ("finisher", "finisher"),
        ("driver", "driver"),
        ("crew mix", "crew_mix"),
    ):
        pay.append([role, getattr(wages.private, field), getattr(public, field) if public else None])
    return {
        "Company": [["fact", "value"], ["Company", "Gravelly Bend Flatwork"], ["Deposit cap", job.factors.deposit_cap]],
        "Vehicles": [
            ["vehicle", "struck bed capacity yd3", "heaped factor", "payload ton", "hourly rate $/h",
             "mileage rate $/mile", "hired", "minimum hours h"],
            *([v.name, v.bed, v.heaped, v.payload, v.per_hour, v.per_mile, "yes" if v.hired else "no", v.minimum_hours]
              for v in job.fleet),
        ],
        "Disposal sites": [
            ["site", "kind", "per ton $/ton", "per yard $/yd3", "per load $/load", "minimum charge $/load",
             "contamination surcharge $/load", "one-way time min", "one-way distance mile", "turnaround time min",
             "accepts wet soil", "accepts roots and turf"],
            *([s.name, KINDS[s.kind], s.per_ton, s.per_yard, s.per_load, s.minimum, s.contamination, s.minutes, s.miles,
               s.turnaround, _yes(s.takes_wet), _yes(s.takes_roots)] for s in job.sites),
        ],
        "Wages": pay,
        "Prices": _prices(job),
    }  # fmt: skip


def _yes(fact: bool | None) -> str | None:
    return None if fact is None else "yes" if fact else "no"


def _facts(job: Job) -> Rows:
    """The site conditions; what is the usual is left out."""
    saw_cut = sum(area.saw_cut * area.copies for area in job.areas)
    typed: dict[str, object] = {
        "Moisture": job.moisture,
        "Turf in the dig": _yes(job.turf),
        "Keep backfill on site": _yes(job.keep_backfill),
        "Bonding coats": job.bond_coats,
        "Sealer coats": job.sealer_coats,
        "Control joints": JOINTS[job.joints],
        "Strength": job.mix_psi,
        "Entrained air": _yes(job.air),
        "Accelerator": _yes(job.accelerator),
        "Retarder": _yes(job.retarder),
        "Winter heat": _yes(job.winter_heat),
        "Placing crew": job.placers,
        "Finishers": job.finishers,
        "Wage table": job.wage_table,
        "Order rule": job.order_rule,
        "After-hours delivery": _yes(job.after_hours),
        "Drive time from plant": job.plant_drive,
        "Chute access": _yes("chute" in job.methods),
        "Wheelbarrow access": _yes("barrow" in job.methods),
        "Pump access": _yes("pump" in job.methods),
        "Wheelbarrows": job.barrows,
        "Muddy route": _yes(job.wet_way),
        "Route grade": None if job.way_slope is None else f"{job.way_slope * 100:g}%",
        "Wheelbarrow distance, spoil": job.spoil_way,
        "Air temperature": job.air_temperature,
        "Concrete temperature": job.concrete_temperature,
        "Demolition saw cut": saw_cut,
        "Unforeseen-conditions allowance": job.unforeseen_hours,
        "Crew": job.crew,
        "Power on site": _yes(job.power),
        "Days closed to traffic": job.close_days,
        "Permit": job.permit,
        "Retainage": f"{job.retainage * 100:g}%",
        "Fiber dose": job.fiber_dose if job.fiber != "none" else None,
    }
    if job.order_rule == "fixed":
        typed |= {"Fixed order": job.fixed_order, "Order reason": "drawn"}
    rows: list[list[object]] = [["fact", "value"]]
    return rows + [[fact, value] for fact, value in typed.items() if value is not None]


def _sides(shape: Shape) -> dict[str, object]:
    if shape.kind in ("rectangle", "trapezoid"):
        other = shape.width_2 if shape.kind == "trapezoid" else None
        return {"length ft": shape.length, "width ft": shape.width, "other width ft": other}
    if shape.kind == "triangle":
        return {"length ft": shape.length, "width ft": shape.width}
    if shape.kind in ("circle", "quarter circle"):
        return {"length ft": shape.length}
    return {"area ft2": shape.area} if shape.kind == "area given" else {}


def _area(area: Area) -> dict[str, object]:
    taper = area.edge_1 is not None and area.edge_2 is not None
    return {
        "area": area.name,
        "shape": SHAPES[area.shape.kind],
        **_sides(area.shape),
        "thickness in": area.edge_1 if taper else area.thickness,
        "other thickness in": area.edge_2 if taper else None,
        "height above grade in": area.height_above_grade,
        "base in": area.base,
        "quantity": area.copies,
        "length for joint layout ft": area.run,
        "panel width ft": area.panel_width,
        "old slab ft2": area.old_slab_area or None,
        "old slab thickness in": area.old_slab_thickness or None,
        "running slope %": None if area.run_slope is None else f"{area.run_slope * 100:g}%",
        "reinforcement": area.reinforcement,
        "bar size": f"#{area.bar_number}",
        "bar spacing in": area.bar_spacing,
        "vapor retarder": _yes(area.vapor_retarder),
    }


def _edge(area: Area, edge: Edge) -> dict[str, object]:
    return {
        "area": area.name,
        "kind": edge.kind,
        "length ft": edge.length,
        "quantity": edge.repeats,
        "dowel spacing in": edge.dowel_spacing,
        "end distance in": edge.end_distance if edge.dowel_spacing else None,
        "embedment in": edge.embedment if edge.dowel_spacing else None,
        "projection in": edge.projection if edge.dowel_spacing else None,
        "bar diameter in": edge.bar_diameter if edge.dowel_spacing else None,
        "drill diameter in": edge.drill_diameter if edge.dowel_spacing else None,
        "isolation": _yes(edge.isolation),
        "curved": _yes(edge.curved),
    }


def _width_at(stops: tuple[Station, ...], place: float) -> float | None:
    """The width between two stations; None outside the slab, where none can be typed."""
    for first, second in pairwise(stops):
        if first.at <= place <= second.at:
            return first.width + (second.width - first.width) * (place - first.at) / (second.at - first.at)
    return None


def _stations(area: Area) -> list[dict[str, object]]:
    """Widths, depths and old joints by their stations; of a strip by stations, each row has its width.

    An old joint outside such a strip cannot be typed, since its width would lengthen the slab.
    """
    stops = area.shape.stations
    begin = stops[0].at if stops else 0.0
    rows: dict[float, dict[str, object]] = {stop.at: {} for stop in stops}
    for place in area.old_joints:
        rows.setdefault(place, {})["old joint"] = "yes"
    step = (stops[1].at - begin) / 16 if stops else 1.0
    for number, depth in enumerate(area.depths):
        rows.setdefault(begin + number * step, {})["depth in"] = depth
    if stops:
        widths = {place: _width_at(stops, place) for place in rows}
        rows = {place: {"width ft": widths[place], **row} for place, row in rows.items() if widths[place] is not None}
    return [{"area": area.name, "station ft": place, **rows[place]} for place in sorted(rows)]


def _deductions(area: Area) -> list[dict[str, object]]:
    return [
        {"area": area.name, "shape": SHAPES[each.shape.kind], **_sides(each.shape), "quantity": each.count,
         "isolation": _yes(each.isolation), "perimeter ft": each.perimeter or None}
        for each in area.deductions
    ]  # fmt: skip


def _footings(area: Area) -> list[dict[str, object]]:
    return [
        {
            "area": area.name,
            "length ft": each.length,
            "width ft": each.width,
            "depth to top of footing in": each.top_below,
            "required cover in": each.cover,
            "exposed sides": each.exposed_sides,
            "reinforced": each.reinforced,
            "treated with": "bond breaker" if each.bond_breaker else "bonding agent",
        }
        for each in area.footings
    ]


def _table(rows: list[dict[str, object]]) -> Rows:
    """Rows as a table; columns that nobody fills are left out."""
    columns = list(dict.fromkeys(name for row in rows for name, value in row.items() if value is not None))
    return [columns, *([row.get(name) for name in columns] for row in rows)]


def job_tables(job: Job) -> dict[str, Rows]:
    """The jobs book of the job."""
    first = {
        "job": "one",
        "bid date": "2026-04-13",
        "pour date": job.pour_date.isoformat() if job.pour_date else None,
        "soil": job.soil,
        "fiber": job.fiber,
        "irrigation lines to cap": job.caps,
        "dug by": "machine" if job.machine_digging else "hand",
        "wheelbarrow distance ft": job.barrow_distance,
    }
    points = [
        {"area": area.name, "x ft": x, "y ft": y} for area in job.areas for x, y in area.shape.points
    ]  # fmt: skip
    plants = [
        {"quantity": p.count, "width ft": p.width, "depth ft": p.depth, "height ft": p.height,
         "root ball ft": p.ball_diameter, "ball height ft": p.ball_height}
        for p in job.plants
    ]  # fmt: skip
    forced = [
        {"line": f"Joints {way}, each", "area": area.name, "value": count, "reason": "drawn", "by": "XY"}
        for area in job.areas
        for way, count in (("across", area.forced_cross_joints), ("along", area.forced_long_joints))
        if count is not None
    ]
    tables = {
        "Jobs": [first],
        "Areas": [_area(area) for area in job.areas],
        "Cross-sections": [row for area in job.areas for row in _stations(area)],
        "Outline points": points,
        "Deductions": [row for area in job.areas for row in _deductions(area)],
        "Edges": [_edge(area, edge) for area in job.areas for edge in area.edges],
        "Footings": [row for area in job.areas for row in _footings(area)],
        "Plants": plants,
        "Overrides": forced,
    }
    return {name: _table(rows) for name, rows in tables.items() if rows} | {"Site conditions": _facts(job)}
