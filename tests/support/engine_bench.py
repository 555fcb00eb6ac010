"""A patio, its prices and wages, on which the engine is worked by hand."""

from reference_engine.facts import Area, Edge, Factors, Job, Pack, Pay, Prices, Shape, Wages

F = Factors()
TIERS = ((2, 160.0), (4, 110.0), (6, 60.0))
PATIO = Area(Shape("rectangle", 10, 8), height_above_grade=4.0, edges=(Edge("form", 10),))
PRICES = Prices(
    concrete=((3000, 165.0), (3500, 172.0)),
    short_load_tiers=TIERS,
    delivery=24.0,
    standby_minute=2.0,
    board_2x4=0.80,
    stake=1.20,
    form_release_agent=12.0,
    curing_compound=(Pack(1, 24.5), Pack(5, 99.0)),
    mobilization_crew=50.0,
    mobilization_one=30.0,
)
WAGES = Wages(Pay(40.0, 52.0))


def make(*areas: Area, **facts) -> Job:
    """A job with plain prices and wages."""
    return Job(areas=areas or (PATIO,), **({"prices": PRICES, "wages": WAGES, "methods": ("chute",)} | facts))


def slab(length: float, width: float, **facts) -> Area:
    """A rectangle."""
    return Area(Shape("rectangle", length, width), **facts)
