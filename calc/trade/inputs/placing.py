"""What a person types about placing: access to the forms, the weather, and a method that is chosen by hand."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import METHOD

CHEAPEST = "cheapest"
WITH_WET_SOIL = "if the soil is wet"


class WheelbarrowRoute(Section, title="Wheelbarrow route", table="Jobs"):
    """How far the concrete is wheeled."""

    distance = given(
        "Wheelbarrow distance",
        "ft",
        low=0,
        high=1000,
        ask_high=200,
        example="50",
        help="From the truck to the middle of the pour, along the wheelbarrow or buggy route; blank is the usual one.",
    )


class Access(Section, title="Placing", table="Site conditions"):
    """What can reach the forms, and the placing method if it is not to be the cheapest."""

    drive = given(
        "Drive time from plant",
        "min",
        default=25,
        low=0,
        high=120,
        ask_high=60,
        example="25",
        help="Driving time from the plant; it is taken off the discharge time limit.",
    )
    chute = yes_no("Chute access", default="yes", help="Whether the truck's chute reaches the forms.")
    wheelbarrow = yes_no(
        "Wheelbarrow access", default="yes", help="Whether a wheelbarrow or a concrete buggy can reach the forms."
    )
    pump = yes_no("Pump access", help="Whether a pump may be hired and can be set up.")
    wheelbarrows = given(
        "Wheelbarrows",
        "",
        default=2,
        low=0,
        high=10,
        ask_high=4,
        whole=True,
        example="2",
        help="Number of wheelbarrows in use at once.",
    )
    muddy = choice(
        "Muddy route",
        "yes",
        "no",
        WITH_WET_SOIL,
        default=WITH_WET_SOIL,
        help="Whether the wheelbarrow route is wet or muddy; blank is yes where the soil is wet.",
    )
    grade = slope(
        "Route grade",
        low=0,
        high=50,
        ask_high=15,
        example="4%",
        help="Slope of the wheelbarrow route; blank is the steepest running slope of the areas.",
    )
    spoil_distance = given(
        "Wheelbarrow distance, spoil",
        "ft",
        low=0,
        high=1000,
        ask_high=300,
        example="80",
        help="From the dig to the truck or trailer; blank is the wheelbarrow distance of the concrete.",
    )
    gate_width = given(
        "Gate width",
        "in",
        over=0,
        high=1000,
        ask_low=24,
        ask_high=240,
        example="34",
        help="Narrowest place on the way to the work; blank if a machine can get in, or nobody has measured it.",
    )
    method = choice(
        "Placing method",
        CHEAPEST,
        *METHOD.axis.words,
        default=CHEAPEST,
        help="How the concrete is placed; cheapest compares every method that fits.",
    )
    reason = text(
        "Placing reason",
        needed_if=(method, *METHOD.axis.words),
        help="Why the method is chosen by hand.",
        example="the client's own pump is on site",
    )


class Forecast(Section, title="Weather", table="Site conditions"):
    """The forecast for the pour; what is blank is not checked."""

    air = given(
        "Air temperature",
        "F",
        signed=True,
        low=-40,
        high=130,
        ask_low=20,
        ask_high=110,
        example="72",
        help="Air temperature at the pour; if blank, heat, cold and evaporation are not checked.",
    )
    night = given(
        "Night low",
        "F",
        signed=True,
        low=-60,
        high=110,
        ask_low=10,
        ask_high=90,
        example="48",
        help="Lowest temperature of the nights after the pour; not checked if blank.",
    )
    concrete = given(
        "Concrete temperature",
        "F",
        signed=True,
        low=32,
        high=130,
        ask_low=45,
        ask_high=100,
        example="75",
        help="Temperature of the delivered concrete; if blank, evaporation and finishing time are not checked.",
    )
    humidity = given(
        "Humidity",
        "%",
        low=0,
        high=100,
        ask_low=5,
        example="50",
        help="Relative humidity; if blank, evaporation is not checked.",
    )
    wind = given(
        "Wind",
        "mph",
        low=0,
        high=100,
        ask_high=40,
        example="8",
        help="Wind speed about 20 in above the slab; if blank, evaporation is not checked.",
    )
    plan = choice(
        "Evaporation plan",
        "none",
        "windbreak",
        "fogging",
        "evaporation retarder",
        "night pour",
        default="none",
        needs=(
            air,
            concrete,
            humidity,
            wind,
        ),
        help="What is done against plastic shrinkage cracking.",
    )
    frozen = yes_no("Ground frozen", help="Whether the ground under the slab is frozen.")
