"""What publications say of drying, heat and cold, of the time that a truck has, and of concrete that is wheeled."""

from __future__ import annotations

from published import (
    RANGE,
    CompanyBook,
    Known,
    Published,
    Says,
    Typed,
    Usual,
    between,
    printed,
    says,
    slab,
    typed,
)

QUESTION = "ACI Concrete International, questions and answers on estimating evaporation"
FORMULA = "ACI Materials Journal 95-M34 (1998) and ACI 305R, metric form"
TABLE = "PCA table of drying tendency for plastic shrinkage (1957)"
BOOK_1908 = "Concrete Construction: Methods and Costs (1908), wheelbarrows"
KG_M2_IN_LB_FT2 = 0.45359237 / 0.3048**2
"""Kilograms a square metre in a pound a square foot: 4.8824."""
ROUNDED = 1.05
"""The constants of the metric form are rounded from 5.2751, 17.7778 and 4.0234: it reads some 4 % below the US form."""


def weather(concrete: float | str, air: float | str, humidity: float, wind: float | str) -> tuple[Typed, ...]:
    """A small slab on such a day."""
    return slab(10, 4), typed("Forecast", concrete=concrete, air=air, humidity=humidity, wind=wind)


def metric(concrete: float, air: float, damp: float, wind: float) -> float:
    """The metric form in degrees C, a share of 1 and km/h, in pounds a square foot and hour."""
    pull = 5 * ((concrete + 18) ** 2.5 - damp * (air + 18) ** 2.5) * (wind + 4) * 1e-6
    return pull / KG_M2_IN_LB_FT2


_EXAMPLE = (
    Published(
        "concrete at 87 F, air at 80 F and 50 %, 12 mph: 0.24 by the formula",
        QUESTION,
        Known.SEEN,
        weather(87, 80, 50, 12),
        (printed("Evaporation.rate", "0.24"), says("Evaporation.rate", 0.24347, 0.0005), says("Evaporation.known", 1)),
    ),
    Published(
        "the same by nomograph: 0.25",
        QUESTION,
        Known.SEEN,
        weather(87, 80, 50, 12),
        (between("Evaporation.rate", 0.25 * 0.95, 0.25 * 1.05),),
    ),
    Published(
        "the same in metric units: 1.15 kg/m2/h, which reads low by the rounding of its constants",
        QUESTION,
        Known.SEEN,
        weather("31 C", "27 C", 50, "19 km/h"),
        (between("Evaporation.rate", 1.15 / KG_M2_IN_LB_FT2, 1.15 * ROUNDED / KG_M2_IN_LB_FT2),),
    ),
)

_METRIC = tuple(
    Published(
        f"metric form at {concrete} and {air} C, {damp:.0%}, {wind} km/h: at most 5 % below the US form",
        FORMULA,
        Known.SEEN,
        weather(f"{concrete} C", f"{air} C", damp * 100, f"{wind} km/h"),
        (between("Evaporation.rate", metric(concrete, air, damp, wind), metric(concrete, air, damp, wind) * ROUNDED),),
    )
    for concrete, air, damp, wind in ((30, 25, 0.5, 20), (32, 35, 0.25, 30), (20, 20, 0.7, 10), (25, 15, 0.9, 8))
)

_POINTS = (
    # concrete F, air F, humidity, wind mph, lb/ft2/h
    (70, 70, 70, 0, 0.015),
    (70, 70, 70, 5, 0.038),
    (70, 70, 70, 10, 0.062),
    (70, 70, 70, 15, 0.085),
    (70, 70, 70, 20, 0.110),
    (70, 70, 70, 25, 0.135),
    (70, 70, 90, 10, 0.020),
    (70, 70, 50, 10, 0.100),
    (70, 70, 30, 10, 0.135),
    (70, 70, 10, 10, 0.175),
    (50, 50, 70, 10, 0.026),
    (60, 60, 70, 10, 0.043),
    (80, 80, 70, 10, 0.077),
    (90, 90, 70, 10, 0.110),
    (90, 90, 10, 0, 0.070),
    (90, 90, 10, 10, 0.336),
    (90, 90, 10, 25, 0.740),
    (80, 40, 100, 10, 0.205),
    (70, 40, 100, 10, 0.130),
    (60, 40, 100, 10, 0.075),
    (70, 40, 50, 0, 0.035),
    (70, 40, 50, 10, 0.162),
    (70, 40, 50, 25, 0.357),
)
_CALM = (70, 70, 70, 0)


def _near(point: tuple[int, int, int, int, float]) -> Says:
    """Within 12 %; in air at 40 F the formula reads up to 20 % high, and in still air the table is rounded coarsely."""
    *weather_there, dries = point
    if tuple(weather_there) == _CALM:
        return says("Evaporation.rate", dries, 0.003)
    if point[1] < 50:
        return between("Evaporation.rate", dries, dries * 1.2)
    return between("Evaporation.rate", dries * 0.88, dries * 1.12)


_DRYING_TABLE = tuple(
    Published(
        f"drying at {concrete} F in air at {air} F, {humidity} %, {wind} mph: {dries}",
        TABLE,
        Known.MEMORY,
        weather(concrete, air, humidity, wind),
        (_near((concrete, air, humidity, wind, dries)),),
    )
    for concrete, air, humidity, wind, dries in _POINTS
)

_AIR = "ACI 306R: cold weather is air below 40 F in the days of protection"
_LIMITS = (
    Published(
        "air at 39 F is cold weather",
        _AIR,
        Known.SEEN,
        (slab(10, 4), typed("Forecast", air=39)),
        (says("PourCautions.cold_weather_fires", 1), says("TemperatureLimits.coldest", 39)),
    ),
    Published(
        "air at 40 F is not yet cold weather",
        _AIR,
        Known.SEEN,
        (slab(10, 4), typed("Forecast", air=40)),
        (says("PourCautions.cold_weather_fires", 0),),
    ),
    Published(
        "concrete at 96 F is hot",
        "ACI 301 and 305.1: 95 F at most unless agreed otherwise",
        Known.MEMORY,
        (slab(10, 4), typed("Forecast", concrete=96)),
        (says("PourCautions.hot_concrete_fires", 1),),
    ),
    Published(
        "drying of a fifth of a pound wants precautions, a hair less does not stop the pour",
        "ACI 305R and UFGS: 0.20 lb/ft2/h, or 1.0 kg/m2/h as it is rounded",
        Known.PARTLY,
        weather(70, 70, 3, 10),
        (printed("Evaporation.rate", "0.20"), says("PourCautions.evaporation_unplanned_fires", 0)),
    ),
    Published(
        "an hour and a half from batching, less the drive",
        "ASTM C94 to about 2013: 90 min, which the buyer may waive",
        Known.MEMORY,
        (slab(10, 4), typed("Access", drive=25)),
        (says("DischargeLimit.time_left", 65), says("DischargeLimit.limit", 90)),
    ),
)

_AS_OF_1908 = CompanyBook(
    factors=(
        ("Carrying.barrow_volume", "", 3),
        ("Carrying.travel_speed", "", 200),
        ("PlacingRate.fill_time", "", 0.75),
        ("PlacingRate.working_share", "", 100),
    )
)
_WHEELED = tuple(
    Published(
        f"a barrow of 3 ft3 wheeled {feet} ft: {minutes} min a yard",
        f"{BOOK_1908}: 200 ft a minute both ways and 3/4 min lost a trip",
        Known.PARTLY,
        (slab(10, 4), typed("WheelbarrowRoute", distance=feet), typed("Access", wheelbarrows=1)),
        (says("PlacingRate.cycle_time", minutes / 9), says("PlacingRate.wheelbarrow", 60 / minutes)),
        company=_AS_OF_1908,
    )
    for feet, minutes in ((50, 11.25), (100, 15.75), (200, 24.75))
)

WEATHER = (*_EXAMPLE, *_METRIC, *_DRYING_TABLE, *_LIMITS, *_WHEELED)

USUAL_WEATHER = (
    Usual("Evaporation.stop_above", 0.2, 0.2, "ACI 305R: precautions above 0.20 lb/ft2/h", Known.PARTLY),
    Usual("Evaporation.caution_above", 0.1, 0.1, "ACI 305R and UFGS: 0.10 for mixes that bleed little", Known.PARTLY),
    Usual("Evaporation.wind_share", 0.4, 0.4, "ACI 305R, US form", Known.SEEN),
    Usual("TemperatureLimits.hot_limit", 95, 95, "ACI 301 and 305.1: 95 F at most", Known.MEMORY, departs=RANGE),
    Usual("TemperatureLimits.cold_limit", 40, 40, "ACI 306R", Known.SEEN),
    Usual("DischargeLimit.usual_limit", 90, 90, "ASTM C94 to about 2013", Known.MEMORY),
    Usual("Carrying.travel_speed", 200, 200, BOOK_1908, Known.PARTLY, departs=RANGE),
    Usual("PlacingRate.fill_time", 0.75, 0.75, BOOK_1908, Known.MEMORY, departs=RANGE),
    Usual("Carrying.barrow_volume", 3, 3, f"{BOOK_1908}: on the level", Known.PARTLY, departs=RANGE),
    Usual("Carrying.barrow_volume", 2, 2, f"{BOOK_1908}: on a steep way", Known.PARTLY, departs=RANGE),
    Usual("TruckSplit.allowance_per_yard", 5, 10, "ready-mix practice: 5 to 10 min to unload a yard", Known.MEMORY),
)
