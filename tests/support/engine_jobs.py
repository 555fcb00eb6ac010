"""Seeded draws of small flatwork jobs, each forced into one case where bids usually go wrong."""

import random
from dataclasses import replace
from datetime import date, timedelta

from engine_prices import draw_prices, draw_wages, whole_cents
from reference_engine.facts import (
    Area,
    Deduction,
    Edge,
    Footing,
    Job,
    Pay,
    Plant,
    Shape,
    Site,
    Station,
    Vehicle,
    Wages,
)


def draw_shape(draw: random.Random) -> Shape:
    """Any plan shape of a small job."""
    kind = draw.choice(["rectangle"] * 4 + ["trapezoid", "triangle", "circle", "quarter circle", "stations", "polygon"])
    length, width = draw.randint(4, 40) + draw.choice([0, 0.5, 0.25]), draw.randint(2, 14) + draw.choice([0, 0.5])
    if kind == "trapezoid":
        return Shape(kind, length, width, width + draw.randint(0, 4))
    if kind in ("circle", "quarter circle"):
        return Shape(kind, draw.randint(3, 14))
    if kind == "stations":
        begin = draw.choice([0.0, 2.0])
        stops = [Station(begin + length * i / 3, width + draw.randint(-1, 1) * 0.5) for i in range(4)]
        return Shape(kind, stations=tuple(stops))
    if kind == "polygon":
        w, h = width, length
        return Shape(kind, points=((0, 0), (w, 0), (w, h / 2), (w / 2, h / 2), (w / 2, h), (0, h)))
    return Shape(kind, length, width)


def draw_edges(draw: random.Random) -> tuple[Edge, ...]:
    """Forms, an existing walk with or without dowels, a wall."""
    edges = []
    if draw.random() < 0.8:
        edges.append(Edge("form", draw.randint(3, 40), draw.choice([1, 1, 2])))
    if draw.random() < 0.6:
        spacing = draw.choice([None, 12.0, 18.0, 24.0])
        drill = draw.choice([None, None, 0.5])
        edges.append(Edge("existing", draw.randint(2, 12) + draw.choice([0, 0.5]), 1, spacing, drill_diameter=drill))
    if draw.random() < 0.4:
        edges.append(Edge(draw.choice(["wall", "building", "open"]), draw.randint(2, 20)))
    return tuple(edges)


def draw_area(draw: random.Random, name: str) -> Area:
    """One area with a few of the things that hang on it."""
    shape = draw_shape(draw)
    has_sides = shape.kind in ("rectangle", "trapezoid", "stations")
    depths = tuple(4 + draw.randint(-3, 6) / 8 for _ in range(draw.choice([0, 0, 3, 4, 6, 9])))
    hole = (Deduction(Shape("circle", draw.choice([0.5, 1.0])), draw.choice([1, 2]), draw.random() < 0.7),)
    typed = {} if has_sides else draw.choice([{}, {"run": float(draw.randint(6, 20)), "panel_width": 5.0}])
    return Area(
        shape=shape,
        name=name,
        copies=draw.choice([1, 1, 1, 2, 5]),
        thickness=draw.choice([3.5, 4.0, 4.0, 5.0, 6.0, 8.0]),
        depths=depths,
        base=draw.choice([0.0, 0.0, 2.0, 3.0, 4.0]),
        height_above_grade=draw.choice([-2.0, 0.0, 0.0, 0.5, 1.0, 3.0]),
        run_slope=draw.choice([None, 0.02, 0.05, 0.08]),
        edges=draw_edges(draw),
        deductions=hole if shape.kind == "rectangle" and draw.random() < 0.3 else (),
        **typed,
    )


def draw_fleet(draw: random.Random) -> tuple[Vehicle, ...]:
    """Own trailer, own truck, hired truck with driver, or nothing."""
    every = [
        Vehicle("trailer", 3.0, 2.25, draw.choice([1.0, 1.15]), 18.5, 0.67),
        Vehicle("truck", 5.0, 4.5, 1.0, 42.0, 0.95),
        Vehicle("hired truck", 10.0, 12.0, 1.0, 98.0, 0.0, True, draw.choice([0.0, 3.0, 4.0])),
    ]
    return tuple(v for v in every if draw.random() < 0.6)


def draw_sites(draw: random.Random) -> tuple[Site, ...]:
    """A mixed site and several of each other kind."""
    sites = [Site("transfer station", "mixed", per_ton=whole_cents(draw, 60, 110), minimum=38.0, minutes=22, miles=11)]
    for kind, ton in (("green", 45), ("soil", 18), ("concrete", 12)):
        for n in range(draw.choice([0, 1, 1, 2])):
            per_load = draw.choice([0.0, 0.0, 55.0])
            sites.append(
                Site(
                    f"{kind} {n + 1}",
                    kind,
                    per_ton=0.0 if per_load else round(ton * draw.uniform(0.6, 1.4), 2),
                    per_load=per_load,
                    minimum=draw.choice([0.0, 25.0]),
                    contamination=75.0 if kind == "soil" else 0.0,
                    minutes=draw.randint(8, 45),
                    miles=draw.randint(3, 25),
                    turnaround=draw.choice([10, 15, 20]),
                    takes_wet=kind != "soil" or draw.random() < 0.8,
                    takes_roots=kind != "soil" or draw.random() < 0.8,
                )
            )
    return tuple(sites)


def draw_job(draw: random.Random, name: str) -> Job:
    """An ordinary small job."""
    crew = draw.choice([2, 3, 3, 4, 5])
    placers = draw.randint(1, crew)
    return Job(
        name=name,
        areas=tuple(draw_area(draw, f"A{i + 1}") for i in range(draw.choice([1, 1, 2, 3]))),
        prices=draw_prices(draw),
        wages=draw_wages(draw),
        plants=(Plant(draw.randint(1, 4), 3, 2, 4, 1.5, 1.0),) if draw.random() < 0.3 else (),
        fleet=draw_fleet(draw),
        sites=draw_sites(draw),
        plant_drive=draw.choice([10.0, 25.0, 30.0]),
        soil=draw.choice(["topsoil", "loam", "clay", "sand", "gravelly"]),
        moisture=draw.choice(["dry", "damp", "damp", "wet"]),
        turf=draw.random() < 0.3,
        mix_psi=draw.choice([2500.0, 3000.0, 3500.0, 4000.0]),
        air=draw.random() < 0.3,
        fiber=draw.choice(["none", "none", "micro", "macro"]),
        fiber_dose=draw.choice([1.0, 3.0, 5.0]),
        crew=crew,
        placers=placers,
        finishers=draw.randint(1, 3),
        methods=draw.choice([("chute", "barrow"), ("barrow",), ("chute", "pump"), ("pump", "barrow", "chute")]),
        barrow_distance=draw.choice([None, 30.0, 50.0, 120.0]),
        barrows=draw.randint(1, 3),
        spoil_way=draw.choice([None, 50.0, 80.0, 150.0]),
        machine_digging=draw.random() < 0.25,
        power=draw.random() < 0.5,
        caps=draw.choice([0, 0, 2]),
        permit=draw.choice([None, 0.0, 125.0]),
        air_temperature=draw.choice([None, 38.0, 70.0, 84.0]),
        concrete_temperature=draw.choice([None, 55.0, 60.0, 72.5, 85.0]),
        sealer_coats=draw.choice([0, 0, 0, 1, 2]),
        joints=draw.choice(["tooled", "tooled", "sawn", "early entry"]),
        order_rule=draw.choice(["risk", "risk", "risk", "percent"]),
        pour_date=draw.choice([None, date(2026, 5, 4) + timedelta(days=draw.randint(0, 60))]),
        unforeseen_hours=draw.choice([0.0, 0.0, 2.0]),
    )


def _first(job: Job, **facts) -> Job:
    """The job with facts of its first area changed."""
    return replace(job, areas=(replace(job.areas[0], **facts), *job.areas[1:]))


def _only(job: Job, shape: Shape, **facts) -> Job:
    """The job with one plain area."""
    return replace(job, areas=(Area(shape=shape, **facts),))


def exact_multiples(job: Job, draw: random.Random) -> Job:
    """Lengths that divide exactly: joints at the limit, dowels at the spacing, stakes at three feet."""
    edges = (Edge("form", 30), Edge("existing", 9, 1, 12.0), Edge("existing", 1.5, 1, 12.0))
    return _only(job, Shape("rectangle", 30, 10), thickness=4.0, edges=edges)


def half_cents(job: Job, draw: random.Random) -> Job:
    """Rates and prices that end in half cents."""
    wages = Wages(Pay(35.005, 41.015), Pay(55.005, 61.015))
    return replace(job, wages=wages, prices=replace(job.prices, cap_and_sealant=0.125, board_2x4=0.33, base_rock=20.01))


def all_zero(job: Job, draw: random.Random) -> Job:
    """A slab on grade with nothing to dig, form or haul."""
    return replace(_only(job, Shape("rectangle", 10, 8), height_above_grade=4.0), plants=(), turf=False)


def tiny(job: Job, draw: random.Random) -> Job:
    """A patch of a few square feet."""
    return _only(job, Shape("rectangle", draw.choice([0.5, 1.0, 2.0]), 1.0), edges=(Edge("form", 1.0),))


def at_a_tier(job: Job, draw: random.Random) -> Job:
    """A fixed order at or one increment under a short-load tier."""
    order = draw.choice([2.0, 1.75, 4.0, 3.75, 6.0, 5.75, 9.0, 9.25, 18.0])
    return replace(job, order_rule="fixed", fixed_order=order)


def crew_of_one(job: Job, draw: random.Random) -> Job:
    """One person for everything, by bags or by truck."""
    job = _only(job, Shape("rectangle", draw.choice([3, 6, 9]), 3), edges=(Edge("form", 6),))
    return replace(job, crew=1, placers=1, finishers=1, barrows=1)


def bags_against_truck(job: Job, draw: random.Random) -> Job:
    """A pour at, under or a little above the largest pour from bags."""
    length = draw.choice([27.0, 26.0, 20.0, 27.5, 33.75, 34.0])
    return replace(
        _only(job, Shape("rectangle", length, 3), thickness=4.0, edges=(Edge("form", 12),)), order_rule="risk"
    )


def no_vehicle(job: Job, draw: random.Random) -> Job:
    """Spoil but nothing to haul it with."""
    return replace(job, fleet=())


def hired_truck(job: Job, draw: random.Random) -> Job:
    """A hired truck with its driver and minimum hours, alone in the fleet."""
    least = draw.choice([0.0, 3.0, 4.0])
    return replace(job, fleet=(Vehicle("hired truck", 10.0, 12.0, 1.0, 98.0, 0.0, True, least),))


def several_sites(job: Job, draw: random.Random) -> Job:
    """Two sites of a kind that cost the same for one load, and one far away."""
    sites = [Site(f"{kind} {n}", kind, 30.0, minutes=m, miles=m / 2, turnaround=15, contamination=60.0)
             for kind in ("mixed", "green", "soil", "concrete") for n, m in ((1, 12), (2, 12), (3, 40))]  # fmt: skip
    fleet = job.fleet or (Vehicle("truck", 5.0, 4.5, 1.0, 42.0, 0.95),)
    old = {"old_slab_area": 30.0, "old_slab_thickness": 4.0, "saw_cut": 8.0}
    return _first(replace(job, sites=tuple(sites), fleet=fleet, plants=(Plant(2, 3, 3, 5, 2, 1.5),)), **old)


def taper(job: Job, draw: random.Random) -> Job:
    """A slab that tapers in thickness, and in width too."""
    shape = draw.choice([Shape("rectangle", 20, 4), Shape("trapezoid", 18, 3, 6), Shape("trapezoid", 12, 5, 5)])
    return _only(job, shape, thickness=4.5, edge_1=4.0, edge_2=5.0, base=2.0, edges=(Edge("form", 20),))


def stations_with_old_joints(job: Job, draw: random.Random) -> Job:
    """A strip measured at stations along an old walk with joints, some of them off the slab."""
    begin = draw.choice([0.0, 1.0, 2.5])
    stops = tuple(Station(begin + x, w) for x, w in ((0, 3.0), (8, 3.5), (20, 3.25), (27, 3.0)))
    old = (*tuple(begin + x for x in (0.0, 5.0, 10.0, 20.0, 27.0, 30.0)), 0.5)
    return _only(job, Shape("stations", stations=stops), thickness=4.0, old_joints=old, edges=(Edge("form", 27),))


def footings(job: Job, draw: random.Random) -> Job:
    """Old footings above, just under and deep below the slab's top; one with a bond breaker."""
    rows = (
        Footing(10, 1, -1.0, 2.0, 1, draw.choice(["yes", "no", "unknown"])),
        Footing(6, 0.8, 2.0, 2.0, 0),
        Footing(5, 1, 4.0, 2.0, 0),
        Footing(5, 1, 3.0, 3.5, 2, "no", True),
    )
    return _only(job, Shape("rectangle", 24, 5), base=2.0, footings=rows, edges=(Edge("form", 24), Edge("wall", 24)))


def reinforcement(job: Job, draw: random.Random) -> Job:
    """Bars with laps, bars in one stock length, mesh with and without two sides, vapor retarder."""
    kind = draw.choice(["bars", "bars", "mesh"])
    shape = draw.choice([Shape("rectangle", 40.5, 12), Shape("rectangle", 20.5, 9.5), Shape("circle", 12)])
    number, spacing = draw.choice([3, 4, 5]), draw.choice([12.0, 18.0, 24.0])
    facts = {"reinforcement": kind, "bar_number": number, "bar_spacing": spacing, "vapor_retarder": True}
    return _only(job, shape, thickness=5.0, copies=draw.choice([1, 3]), **facts)


def hot(job: Job, draw: random.Random) -> Job:
    """Hot air and hot concrete."""
    job = replace(job, air_temperature=draw.choice([85.0, 95.0]), concrete_temperature=90.0, plant_drive=25.0)
    return replace(job, retarder=True)


def cold(job: Job, draw: random.Random) -> Job:
    """Cold air, winter heat and an accelerator."""
    job = replace(job, air_temperature=35.0, concrete_temperature=draw.choice([45.0, 50.0]))
    return replace(job, accelerator=True, winter_heat=True)


def prevailing(job: Job, draw: random.Random) -> Job:
    """Public work at prevailing wages with retainage."""
    return replace(job, wage_table="prevailing", retainage=0.05)


def machine(job: Job, draw: random.Random) -> Job:
    """Machine digging with enough spoil for several loads."""
    fleet = job.fleet or (Vehicle("trailer", 3.0, 2.25, 1.0, 18.5, 0.67),)
    job = _only(job, Shape("rectangle", 30, 20), thickness=5.0, base=4.0, edges=(Edge("form", 100),))
    return replace(job, machine_digging=True, fleet=fleet, spoil_way=150.0)


def saturday(job: Job, draw: random.Random) -> Job:
    """A pour on a Saturday, after hours, with fiber put in at the plant."""
    prices = replace(job.prices, saturday=35.0, after_hours=95.0, plant_fiber=9.5)
    return replace(job, prices=prices, pour_date=date(2026, 5, 9), after_hours=True, fiber="macro", fiber_dose=4.0)


def pump_only(job: Job, draw: random.Random) -> Job:
    """A pump is the only way."""
    return replace(job, methods=("pump",))


def everything_to_haul(job: Job, draw: random.Random) -> Job:
    """Brush, root balls, old slab and soil, with own and hired vehicles and a site of every kind."""
    sites = tuple(
        Site(k, k, ton, minimum=20.0, contamination=75.0, minutes=15, miles=8, turnaround=12)
        for k, ton in (("mixed", draw.choice([40.0, 90.0])), ("green", 45.0), ("soil", 15.0), ("concrete", 12.0))
    )
    fleet = (Vehicle("truck", 5.0, 4.5, 1.0, 42.0, 0.95), Vehicle("hired truck", 10.0, 12.0, 1.0, 98.0, 0.0, True, 4.0))
    job = _first(job, old_slab_area=40.0, old_slab_thickness=4.0, height_above_grade=0.0, base=3.0)
    return replace(job, sites=sites, fleet=fleet, plants=(Plant(3, 3, 3, 4, 2, 1.5),), turf=draw.random() < 0.5)


CASES = (
    exact_multiples, half_cents, all_zero, tiny, at_a_tier, crew_of_one, bags_against_truck, no_vehicle, hired_truck,
    several_sites, taper, stations_with_old_joints, footings, reinforcement, hot, cold, prevailing, machine, saturday,
    pump_only, everything_to_haul,
)  # fmt: skip


def random_jobs(count: int, seed: int) -> list[Job]:
    """Jobs by turns: every dangerous case comes as often as any other, and a few are left as drawn."""
    draw = random.Random(seed)
    jobs = []
    for i in range(count):
        job = draw_job(draw, f"job {i + 1}")
        turn = i % (len(CASES) + 1)
        jobs.append(CASES[turn](job, draw) if turn < len(CASES) else job)
    return jobs
