"""What a person measures of what comes out: old footings and plants."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import FOOTING, PLANT


class Footing(Section, title="Footings", each=FOOTING, table="Footings"):
    """Old footings under the new slab."""

    length = given("Length", "ft", over=0, high=2000, required=True, example="8", help="Length of the footing.")
    width = given("Width", "ft", over=0, high=2000, required=True, example="1", help="Width of the footing.")
    depth_to_top = given(
        "Depth to top of footing",
        "in",
        required=True,
        low=-24,
        high=48,
        signed=True,
        example="1",
        help="Depth of its top below the top of the new slab; negative if it stands above.",
    )
    required_cover = given(
        "Required cover",
        "in",
        default=2,
        low=1.5,
        high=24,
        ask_low=2,
        example="2",
        help="Required thickness of concrete over it.",
    )
    sides = given(
        "Exposed sides",
        "",
        default=0,
        low=0,
        high=2,
        whole=True,
        example="1",
        needs=(("treatment", "bonding agent"),),
        help="Number of its sides that the new slab touches.",
    )
    reinforced = choice(
        "Reinforced",
        "yes",
        "no",
        "unknown",
        default="unknown",
        help="Whether it is reinforced, which makes chipping twice as slow.",
    )
    treatment = choice(
        "Treated with",
        "bonding agent",
        "bond breaker",
        "nothing",
        default="bonding agent",
        help="A bonding agent, or a bond breaker that lets the slab move.",
    )
    notes = text("Notes", help="Anything else.", example="old porch")


class Plant(Section, title="Plants", each=PLANT, table="Plants"):
    """Plants to remove: the brush is cut, the root balls are dug."""

    what = text("What", help="Kind of plant.", example="boxwood")
    quantity = given("Quantity", "", default=1, low=0, high=500, whole=True, example="2", help="Number of plants.")
    width = given(
        "Width",
        "ft",
        default=0,
        low=0,
        high=100,
        example="3",
        needs=(
            "depth",
            "height",
        ),
        help="Width of the brush.",
    )
    depth = given(
        "Depth",
        "ft",
        default=0,
        low=0,
        high=100,
        example="3",
        needs=(
            "width",
            "height",
        ),
        help="Width of the brush in the other direction.",
    )
    height = given(
        "Height",
        "ft",
        default=0,
        low=0,
        high=100,
        ask_high=8,
        example="4",
        needs=(
            "width",
            "depth",
        ),
        help="Height of the brush.",
    )
    ball = given("Root ball", "ft", default=0, low=0, high=100, example="1.5", help="Diameter of the root ball.")
    ball_height = given(
        "Ball height", "ft", default=0, low=0, high=100, example="1", needs=("ball",), help="Height of the root ball."
    )
    trunk = given("Trunk", "in", default=0, low=0, high=120, ask_high=6, example="1", help="Diameter of the trunk.")
    notes = text("Notes", help="Anything else.", example="roots under the walk")
