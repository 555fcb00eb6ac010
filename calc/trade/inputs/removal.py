"""What a person measures of what comes out: old footings and plants."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import FOOTING, PLANT


class Footing(Section, title="Footings", each=FOOTING, table="Footings"):
    """Old footings that the new slab passes over."""

    length = given("Length", "ft", over=0, required=True, example="8", help="Length of the footing.")
    width = given("Width", "ft", over=0, required=True, example="1", help="Width of the footing.")
    top_below = given(
        "Top below",
        "in",
        required=True,
        low=-24,
        high=48,
        signed=True,
        example="1",
        help="Depth of its top below the new slab's top; negative sticks up above it.",
    )
    cover = given(
        "Cover wanted",
        "in",
        default=2,
        low=1.5,
        high=24,
        ask_low=2,
        example="2",
        help="Concrete that must lie over it.",
    )
    sides = given(
        "Exposed sides", "", default=0, low=0, high=2, whole=True, example="1", help="Sides that the new slab touches."
    )
    reinforced = choice(
        "Reinforced", "yes", "no", "unknown", default="unknown", help="Bars make chipping twice as slow."
    )
    over = choice(
        "Treated with",
        "bond",
        "slip sheet",
        "nothing",
        default="bond",
        help="Bonding agent, or a sheet that lets the slab slide.",
    )
    notes = text("Notes", help="Anything else.", example="old porch")


class Plant(Section, title="Plants", each=PLANT, table="Plants"):
    """Plants that are taken out; brush is cut, root balls are dug."""

    what = text("What", help="Which plant.", example="boxwood")
    count = given("Count", "", default=1, low=0, high=500, whole=True, example="2", help="How many.")
    width = given("Width", "ft", default=0, low=0, example="3", help="Across.")
    depth = given("Depth", "ft", default=0, low=0, example="3", help="The other way across.")
    height = given("Height", "ft", default=0, low=0, ask_high=8, example="4", help="Height of the brush.")
    ball = given("Root ball", "ft", default=0, low=0, example="1.5", help="Diameter of the root ball.")
    ball_height = given("Ball height", "ft", default=0, low=0, example="1", help="Height of the root ball.")
    trunk = given("Trunk", "in", default=0, low=0, ask_high=6, example="1", help="Diameter of the trunk.")
    notes = text("Notes", help="Anything else.", example="roots under the walk")
