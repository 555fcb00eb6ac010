"""What a person says of placing: the way to the forms, the weather, and a method that is named by hand."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import METHOD

CHEAPEST = "cheapest"


class BarrowWay(Section, title="The way of the barrows", table="Jobs"):
    """How far concrete is wheeled."""

    feet = given(
        "Barrow",
        "ft",
        default=50,
        low=0,
        high=1000,
        ask_high=200,
        example="50",
        help="From the truck to the middle of the pour, as a barrow goes.",
    )


class Access(Section, title="Placing", table="Site conditions"):
    """What can get to the forms, and how it is placed when that is not left to the price."""

    drive = given(
        "Drive from the plant",
        "min",
        default=25,
        low=0,
        high=120,
        ask_high=60,
        example="25",
        help="Minutes from the plant to the job; they are taken off the time that a truck has.",
    )
    chute = yes_no("Chute reaches", default="yes", help="Whether the truck's chute reaches the forms.")
    barrow = yes_no("Barrow can go", default="yes", help="Whether a barrow can be wheeled to the forms.")
    pump = yes_no("Pump can come", help="Whether a pump may be hired and can be set up.")
    barrows = given(
        "Barrows",
        "",
        default=2,
        low=0,
        high=10,
        ask_high=4,
        whole=True,
        example="2",
        help="Barrows that are wheeled at once.",
    )
    wet = yes_no("Wet way", help="Whether the way of the barrows is wet or muddy.")
    slope = given(
        "Slope of the way",
        "%",
        default=0,
        low=0,
        high=50,
        ask_high=15,
        example="4",
        help="Slope along the way of the barrows.",
    )
    method = choice(
        "Placing method",
        CHEAPEST,
        *METHOD.axis.words,
        default=CHEAPEST,
        help="How the concrete is placed; cheapest compares every way that fits.",
    )
    reason = text(
        "Placing reason",
        needed_if=(method, *METHOD.axis.words),
        help="Why the method is named by hand.",
        example="the client's own pump is on the site",
    )


class Forecast(Section, title="The weather", table="Site conditions"):
    """At the time of the pour; what is blank is not checked."""

    air = given(
        "Air",
        "F",
        signed=True,
        low=-40,
        high=130,
        ask_low=20,
        ask_high=110,
        example="72",
        help="The air at the pour; blank is no check of heat, cold and drying.",
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
        help="The lowest air of the nights after the pour; blank is no check.",
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
        help="The concrete as it comes; blank is no check of drying and of the time to finish.",
    )
    humidity = given(
        "Humidity", "%", low=0, high=100, ask_low=5, example="50", help="Of the air; blank is no check of drying."
    )
    wind = given(
        "Wind",
        "mph",
        low=0,
        high=100,
        ask_high=40,
        example="8",
        help="About 20 in above the slab; blank is no check of drying.",
    )
    plan = choice(
        "Evaporation plan",
        "none",
        "wind break",
        "fog",
        "retarder",
        "night",
        default="none",
        help="What is done against fast drying: a wind break, fog, an evaporation retarder, or a pour at night.",
    )
    frozen = yes_no("Ground frozen", help="Whether the ground under the slab is frozen.")
