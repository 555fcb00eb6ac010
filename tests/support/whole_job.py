"""A job that fills every column of both input books with something other than its default, and jobs that are awkward.

What is written here says which shapes, kinds and choices occur. A column that is not written here is filled by its own
declaration, so that a column which is added to an input table is in the whole job at once.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from books import COMPANY, Rows
from calc.declared import Input, Kind, Price
from calc.intake.schema import (
    COMPANY_TABLES,
    FACT_TABLES,
    FACTORS,
    MAIN_FACTORS,
    OVERRIDES,
    PRICE_LIST,
    PRICES,
    TABLES,
    Table,
    facts_of,
)

Tables = dict[str, Rows]
Row = Mapping[str, object]

ID = "24-03"
"""The job id of the whole job."""

JOBS: list[Row] = [
    {"job": ID, "client": "Tamarack Row Owners", "address": "41 Orchard Spur", "bid date": "2026-04-13",
     "pour date": "2026-04-27", "soil": "clay", "fiber": "micro", "irrigation lines to cap": 2, "photos": "roll 7",
     "notes": "34 in gate"},
]  # fmt: skip

AREAS: list[Row] = [
    # a tapered trapezoid that could as well be any other shape: what each needs is typed
    {"area": "walk", "shape": "rectangle", "length ft": "20' 6\"", "width ft": 4, "other width ft": 3,
     "thickness in": 5,
     "other thickness in": 4, "height above grade in": 1, "base in": 4, "quantity": 2, "area ft2": 75,
     "length for joint layout ft": 21,
     "panel width ft": 3.1, "old slab ft2": 12, "old slab thickness in": 3.5, "cross slope %": 2.5,
     "running slope %": 5, "reinforcement": "bars", "bar size": "#4", "bar spacing in": 16, "vapor retarder": "yes",
     "notes": "along the north wall"},
    {"area": "001", "shape": "triangle", "length ft": 6, "width ft": 5, "formed ft": 11, "wall ft": 6,
     "doweled edge ft": 5, "doweled edges": 2, "dowel spacing in": 18},
    {"area": "1", "shape": "circle", "length ft": 8, "thickness in": 4.5, "height above grade in": -1},
    {"area": "<5", "shape": "quarter circle", "length ft": 5.5, "base in": 3},
    {"area": "A*", "shape": "cross-sections", "thickness in": 6, "quantity": 3, "cross slope %": 1.5,
     "running slope %": 1.25, "reinforcement": "mesh"},
    {"area": "1E3", "shape": "outline points"},
    {"area": "known", "shape": "area given", "area ft2": 48, "other thickness in": 5, "reinforcement": "mesh"},
    {"area": "thin", "shape": "rectangle", "length ft": "3.2 m", "width ft": "2'-9\"", "thickness in": 2.75},
]  # fmt: skip

STATIONS: list[Row] = [
    {
        "area": "walk",
        "station ft": 0,
        "width ft": 4,
        "depth in": "5 1/4",
        "old joint": "yes",
        "notes": "at the lamp post",
    },
    {"area": "walk", "station ft": 9, "width ft": 3.5, "depth in": 4.5},
    {"area": "walk", "station ft": 20.5, "width ft": 3, "depth in": 4, "old joint": "yes"},
    {"area": "A*", "station ft": 1, "width ft": 3},
    {"area": "A*", "station ft": 5.5, "width ft": 3.25, "depth in": 6.5, "old joint": "yes"},
    {"area": "A*", "station ft": 12, "width ft": 2.5},
]

CORNERS: list[Row] = [
    *({"area": "walk", "x ft": x, "y ft": y} for x, y in ((1, 1), (21, 1), (21, 4), (1, 5))),
    *({"area": "1E3", "x ft": x, "y ft": y} for x, y in ((0, 0), (0, 9), (4, 9), (4, 4), (10, 4), (10, -1))),
]

DEDUCTIONS: list[Row] = [
    # could be any shape
    {"area": "walk", "shape": "rectangle", "length ft": 2, "width ft": 1.5, "area ft2": 4, "quantity": 2,
     "isolation": "yes", "notes": "valve box"},
    {"area": "walk", "shape": "circle", "length ft": 0.5, "isolation": "no"},
    {"area": "1", "shape": "triangle", "length ft": 3, "width ft": 2, "perimeter ft": 8, "quantity": 3},
    {"area": "A*", "shape": "area given", "area ft2": 2.25, "perimeter ft": 6},
]  # fmt: skip

EDGES: list[Row] = [
    {"area": "walk", "kind": "form", "length ft": 20.5, "curved": "yes", "thickened width in": 8, "extra depth in": 6,
     "notes": "bends at the tree"},
    {"area": "walk", "kind": "existing", "length ft": 3.5, "quantity": 2, "dowel spacing in": 12,
     "end distance in": 4, "embedment in": 5, "projection in": 7, "bar diameter in": 0.5, "bar surface": "deformed",
     "drill diameter in": 0.625},
    {"area": "walk", "kind": "wall", "length ft": 12, "isolation": "no"},
    {"area": "walk", "kind": "building", "length ft": 2},
    {"area": "A*", "kind": "form", "length ft": 12.5},
    {"area": "1", "kind": "building", "length ft": 7.5, "dowel spacing in": 24},
    {"area": "1", "kind": "open", "length ft": 9, "isolation": "yes"},
    # one in the middle of a piece that is too short for two, and another with the dowels of the first doweled edge
    {"area": "walk", "kind": "existing", "length ft": 1.25, "dowel spacing in": 16},
    {"area": "A*", "kind": "existing", "length ft": 4, "dowel spacing in": 14, "embedment in": 5, "projection in": 7,
     "bar diameter in": 0.5, "drill diameter in": "9/16"},
]  # fmt: skip

FOOTINGS: list[Row] = [
    {"area": "walk", "length ft": 8, "width ft": 1, "depth to top of footing in": 1, "required cover in": 2.5,
     "exposed sides": 2,
     "reinforced": "yes", "treated with": "bonding agent", "notes": "old porch"},
    {"area": "1", "length ft": 3, "width ft": 2, "depth to top of footing in": -1.5, "treated with": "bond breaker"},
    {"area": "known", "length ft": 5, "width ft": 1.5, "depth to top of footing in": 3, "exposed sides": 1,
     "treated with": "bond breaker"},
    {"area": "known", "length ft": 5, "width ft": 1.5, "depth to top of footing in": 9, "treated with": "nothing"},
]  # fmt: skip

PLANTS: list[Row] = [
    {"what": "boxwood", "quantity": 3, "width ft": 3, "depth ft": 2.5, "height ft": 4, "root ball ft": 1.5,
     "ball height ft": 1, "trunk in": 1.5, "notes": "roots under the walk"},
    {"what": "grass", "width ft": 4, "depth ft": 1, "height ft": 0.5},
]  # fmt: skip

SITE: dict[str, object] = {
    "Order rule": "risk", "Fixed order": 14.3, "Order reason": "a planter takes the rest", "Fiber dose": 1.75,
    "Moisture": "wet", "Keep backfill on site": "yes", "Bonding coats": 2, "Sealer coats": 1,
    "Control joints": "saw-cut",
    "Joint depth": 1.25, "Allowed vehicle 1": "pickup", "Allowed vehicle 2": "dump trailer",
    "Allowed vehicle 3": "hired dumper",
    "Haul with": "dump trailer", "Haul plan": "cheapest", "Placing method": "cheapest",
    "Permit": 85, "Job margin": 21,
    "Wage table": "private", "Locate expires": "2026-04-24", "Accelerator": "yes", "Retarder": "no",
    "Muddy route": "no", "Days closed to traffic": 5,
}  # fmt: skip
"""Facts of the site. The order rule stays what it is when blank: forcing and fixing have their turn as edits."""

OVERRIDDEN: list[Row] = [
    {"area": "thin", "line": "Mean thickness", "value": 3.25, "reason": "probed", "who": "RK", "notes": "six probes"},
    {"line": "Fiber bags to buy", "value": 40, "reason": "a full pallet", "who": "RK"},
]

VEHICLES: list[Row] = [
    {"vehicle": "dump trailer", "struck bed capacity yd3": 5, "heaped factor": 1.05, "payload ton": 4.5,
     "bed length ft": 12, "bed width ft": 6,
     "hourly rate $/h": 38, "mileage rate $/mile": 0.9},
    {"vehicle": "pickup", "struck bed capacity yd3": 2.5, "heaped factor": 1.1, "payload ton": 1.25,
     "bed length ft": 8, "bed width ft": 5,
     "hourly rate $/h": 26, "mileage rate $/mile": 0.7},
    {"vehicle": "hired dumper", "struck bed capacity yd3": 10, "heaped factor": 1, "payload ton": 11,
     "bed length ft": 14, "bed width ft": 7,
     "hourly rate $/h": 235, "hired": "yes", "minimum hours h": 3},
]  # fmt: skip

SITES: list[Row] = [
    {"site": "transfer", "kind": "mixed", "per ton $/ton": 92, "minimum charge $/load": 45, "one-way time min": 22,
     "one-way distance mile": 11, "opens h": 7, "closes h": 16},
    {"site": "brush yard", "kind": "green waste", "per yard $/yd3": 12, "minimum charge $/load": 20,
     "one-way time min": 14,
     "one-way distance mile": 6},
    {"site": "quarry fill", "kind": "soil", "per ton $/ton": 14, "minimum charge $/load": 25,
     "contamination surcharge $/load": 150, "one-way time min": 26, "one-way distance mile": 14, "opens h": 7,
     "closes h": 15.5},
    {"site": "far pit", "kind": "soil", "per load $/load": 40, "one-way time min": 45, "one-way distance mile": 30,
     "turnaround time min": 10},
    {"site": "crusher", "kind": "concrete debris", "per ton $/ton": 22, "minimum charge $/load": 30,
     "one-way time min": 19,
     "one-way distance mile": 9, "largest piece in": 24},
]  # fmt: skip

WAGES: list[Row] = [
    {"role": "laborer", "private $/h": 46, "prevailing $/h": 68},
    {"role": "finisher", "private $/h": 58, "prevailing $/h": 81},
    {"role": "driver", "private $/h": 44, "prevailing $/h": 64},
    {"role": "crew mix"},
]

DATED: Row = {"dated": "2026-03-30", "valid until": "2026-06-30", "supplier": "Alder Fork Supply", "taxable": "yes",
              "account": "5100", "notes": "picked up"}  # fmt: skip

PRICE_ROWS: list[Row] = [
    *(dict(zip(map(str, COMPANY[PRICES][0]), row, strict=True), **DATED) for row in COMPANY[PRICES][1:]),
    *(
        {"item": f"Ready-mix, {psi} psi", "price": price}
        for psi, price in ((2500, 158), (3000, 164), (3500, 171), (4000, 179), (4500, 188), (5000, 198))
    ),
    {"item": "Concrete delivery", "price": 28, "dated": "2026-04-01"},
    {"item": "Short-load fee, tier 1", "price": 155, "size": 2},
    {"item": "Short-load fee, tier 2", "price": 105, "size": 4},
    {"item": "Short-load fee, tier 3", "price": 55, "size": 6},
    {"item": "Truck standby (wait time)", "price": 2.25},
    {"item": "Concrete bag", "price": 7.4, "size": 0.6},
]

HOUSE_FACTORS: list[Row] = [
    {"factor": "Waste factor", "value": 4, "unit": "%", "usual": 3, "source": "our own trucks", "notes": "spring"},
    {"factor": "Soil swell, bank to loose", "for": "clay", "value": 40},
    {"factor": "Moisture factor", "for": "wet", "value": 1.2},
]

FIRM: dict[str, object] = {"Deposit cap": 4000}

WRITTEN: dict[str, list[Row]] = {
    "Jobs": JOBS,
    "Areas": AREAS,
    "Company": [{"fact": fact, "value": value} for fact, value in FIRM.items()],
    "Site conditions": [{"fact": fact, "value": value, "notes": "as seen"} for fact, value in SITE.items()],
    "Cross-sections": STATIONS,
    "Outline points": CORNERS,
    "Deductions": DEDUCTIONS,
    "Edges": EDGES,
    "Footings": FOOTINGS,
    "Plants": PLANTS,
    OVERRIDES: OVERRIDDEN,
    "Vehicles": VEHICLES,
    "Disposal sites": SITES,
    "Wages": WAGES,
    # the day after the pour, on which forms would be stripped
    "Holidays": [{"holiday": "Founders' day", "date": "2026-04-28"}],
    PRICES: PRICE_ROWS,
    MAIN_FACTORS: [{"factor": "Overtime rate, times the hourly rate", "value": 1.75, "notes": "our own agreement"}],
    FACTORS: HOUSE_FACTORS,
}


def whole_week(areas: Sequence[str] = ()) -> Tables:
    """The jobs book of the whole job, or of some of its areas."""
    return {name: _filled(table, areas) for name, table in TABLES.items() if name not in COMPANY_TABLES}


def whole_company() -> Tables:
    """Its company book."""
    return {name: _filled(TABLES[name], ()) for name in COMPANY_TABLES}


def headed(table: str, rows: Sequence[Row]) -> Rows:
    """Rows under the header of their table."""
    headers = [heading.header for heading in TABLES[table].headings]
    for row in rows:
        assert set(row) <= set(headers), f"{table} has no column {sorted(set(row) - set(headers))}"
    return [headers, *([row.get(header) for header in headers] for row in rows)]


def _filled(table: Table, areas: Sequence[str]) -> Rows:
    """What is written for a table, with every column filled in some row."""
    written = WRITTEN.get(table.name, [])
    rows = [dict(row) for row in written if not areas or row.get("area", areas[0]) in areas]
    if table.name in FACT_TABLES:
        rows += _missing_facts(table.name, {str(row["fact"]) for row in rows})
    if table.name == PRICES:
        known = {row["item"] for row in rows}
        rows += [_priced(each, at) for at, each in enumerate(PRICE_LIST) if each.label not in known]
    if not rows:
        rows = [{}]
    for row in rows:
        if any(heading.label == "job" for heading in table.headings):
            row["job"] = ID
    for heading in table.headings:
        if all(row.get(heading.header) is None for row in rows):
            rows[0][heading.header] = heading.example if heading.given is None else sample(heading.given)
    return headed(table.name, rows)


def _priced(price: Price, at: int) -> dict[str, object]:
    return {"item": price.label, "price": 5.5 + at, "size": 5 if price.pack is not None else None}


def _missing_facts(table: str, known: set[str]) -> list[dict[str, object]]:
    return [{"fact": each.label, "value": sample(each)} for each in facts_of(table) if each.label not in known]


def sample(given: Input) -> object:
    """Something that may be typed for ``given`` and is not its default."""
    match given.kind:
        case Kind.CHOICE:
            return next(word for word in given.words_allowed if word != given.default)
        case Kind.NUMBER | Kind.SLOPE:
            return _number_for(given)
        case _:
            return given.example or given.label


def _number_for(given: Input) -> object:
    low = next((each for each in (given.ask_low, given.low, given.over) if each is not None), 0.0)
    high = next((each for each in (given.ask_high, given.high) if each is not None), low + 10)
    middle = (low + high) / 2
    return float(int(middle) + (middle == given.default)) if given.whole else middle
