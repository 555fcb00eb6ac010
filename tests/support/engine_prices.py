"""Seeded draws of a price book and of wage tables."""

import random

from reference_engine.facts import Pack, Pay, Prices, Rental, Wages


def whole_cents(draw: random.Random, low: float, high: float) -> float:
    """A price in whole cents."""
    return draw.randint(int(low * 100), int(high * 100)) / 100


def _rental(draw: random.Random) -> Rental:
    day = whole_cents(draw, 40, 180)
    return Rental(round(day * 0.7, 2), day, round(day * draw.choice([2.5, 3.0, 4.0]), 2))


def draw_prices(draw: random.Random) -> Prices:
    """A full price book."""
    psi = {3000: 0, 3500: 6, 4000: 14, 5000: 30}
    first = whole_cents(draw, 140, 190)
    names = ["jackhammer", "chipping_hammer", "saw", "plate_compactor", "mixer", "mini_excavator", "generator"]
    return Prices(
        concrete=tuple((strength, round(first + more, 2)) for strength, more in psi.items()),
        air=whole_cents(draw, 2, 6),
        pea_gravel=whole_cents(draw, 4, 10),
        accelerator=whole_cents(draw, 5, 14),
        retarder=whole_cents(draw, 3, 9),
        winter_heat=whole_cents(draw, 3, 8),
        short_load_tiers=((2, 160.0), (4, 110.0), (6, 60.0)),
        delivery=whole_cents(draw, 0, 60),
        environmental=draw.choice([0.0, 12.5, 20.0]),
        fuel=draw.choice([0.0, 15.25]),
        saturday=draw.choice([0.0, 35.0]),
        saturday_by=draw.choice(["load", "yard"]),
        after_hours=draw.choice([0.0, 95.0]),
        plant_fiber=draw.choice([0.0, 0.0, 9.5]),
        standby_minute=draw.choice([1.75, 2.0, 2.505]),
        micro_fiber=whole_cents(draw, 9, 15),
        micro_fiber_pounds=1.0,
        macro_fiber=whole_cents(draw, 35, 60),
        macro_fiber_pounds=5.0,
        pump_set_up=whole_cents(draw, 150, 300),
        pump_hour=whole_cents(draw, 110, 190),
        pump_yard=whole_cents(draw, 2, 5),
        pump_prime=whole_cents(draw, 25, 60),
        bag=whole_cents(draw, 5, 9),
        bag_clean_up=whole_cents(draw, 5, 30),
        washout=whole_cents(draw, 20, 60),
        mini_excavator_delivery=whole_cents(draw, 80, 160),
        base_rock=whole_cents(draw, 18, 45),
        base_delivery=whole_cents(draw, 60, 120),
        board_2x4=whole_cents(draw, 0.5, 1.2),
        board_2x6=whole_cents(draw, 0.8, 1.6),
        board_2x8=whole_cents(draw, 1.1, 2.2),
        stake=whole_cents(draw, 0.6, 1.8),
        form_release_agent=whole_cents(draw, 8, 22),
        dowel_bar={0.375: whole_cents(draw, 7, 12), 0.5: whole_cents(draw, 10, 17), 0.625: whole_cents(draw, 14, 24)},
        drill_bit=whole_cents(draw, 6, 14),
        epoxy_tube=whole_cents(draw, 18, 40),
        bonding_agent=(Pack(1, 29.99), Pack(5, draw.choice([99.95, 149.95]))),
        curing_compound=(Pack(1, 24.5), Pack(5, draw.choice([79.99, 122.5, 130.0]))),
        sealer=(Pack(1, 39.0), Pack(5, 165.0)),
        isolation_strip=whole_cents(draw, 4, 9),
        cap_and_sealant=whole_cents(draw, 0.4, 1.5),
        reinforcing_bar={3: whole_cents(draw, 7, 12), 4: whole_cents(draw, 10, 17), 5: whole_cents(draw, 15, 26)},
        chair=whole_cents(draw, 0.3, 1.2),
        ties_hundred=whole_cents(draw, 4, 9),
        mesh_sheet=whole_cents(draw, 11, 24),
        vapor_roll=whole_cents(draw, 70, 160),
        vapor_roll_size=draw.choice([500.0, 1000.0]),
        bond_breaker=whole_cents(draw, 0.1, 0.6),
        caution_set=whole_cents(draw, 5, 40),
        barricade_day=whole_cents(draw, 0, 30),
        mobilization_crew=whole_cents(draw, 30, 120),
        mobilization_one=whole_cents(draw, 15, 60),
        **{name: _rental(draw) for name in names},
    )


def draw_wages(draw: random.Random) -> Wages:
    """Private and prevailing tables; sometimes a driver's row and a typed crew rate."""
    laborer = whole_cents(draw, 28, 48)
    finisher = round(laborer + whole_cents(draw, 4, 18), 2)
    driver = draw.choice([None, round(laborer + 3.33, 2)])
    mix = draw.choice([None, None, None, round(laborer + 5, 2)])
    private = Pay(laborer, finisher, driver, mix)
    return Wages(private, Pay(round(laborer * 1.6, 2), round(finisher * 1.5, 2), driver, None))
