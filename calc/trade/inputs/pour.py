"""What a person says of the pour: the mix, the crew, and how the order is found."""

from __future__ import annotations

from calc.declare import *

_TABLE = "Site conditions"


class Mixture(Section, title="The mix", table=_TABLE):
    """What is phoned to the plant."""

    strength = given(
        "Strength",
        "psi",
        default=3500,
        low=2000,
        high=8000,
        ask_low=2500,
        ask_high=5000,
        example="4000",
        help="Strength of the mix; the price of the next stronger mix that has one is taken.",
    )
    air = yes_no("Entrained air", help="Whether the mix has entrained air.")
    accelerator = yes_no("Accelerator", help="Whether the mix has an accelerator; never with a retarder.")
    retarder = yes_no("Retarder", help="Whether the mix has a retarder.")
    hot_water = yes_no("Hot water", help="Whether the plant heats its water.")


class Crew(Section, title="The crew", table=_TABLE):
    """Who pours, and what they are paid by."""

    placing = given(
        "Placing crew",
        "person",
        default=2,
        low=1,
        high=20,
        ask_low=2,
        whole=True,
        example="2",
        help="People who place and screed.",
    )
    finishing = given(
        "Finishers", "person", default=1, low=1, high=20, whole=True, example="1", help="People who float and trowel."
    )
    wages = choice("Wage table", "private", "prevailing", default="private", help="Which column of Wages holds.")


class Ordering(Section, title="The order", table=_TABLE):
    """How the order is found."""

    rule = choice(
        "Order rule",
        "risk",
        "percent",
        "fixed",
        default="risk",
        help="How the order is found: by what running short and leaving over cost, net plus a percentage, or fixed.",
    )
    fixed = given(
        "Fixed order",
        "yd3",
        over=0,
        ask_high=72,
        example="2.5",
        needed_if=(rule, "fixed"),
        help="The order when the rule is fixed; the next step of the plant is taken.",
    )
    reason = text(
        "Order reason",
        help="Why the order is fixed.",
        example="filling a planter with the rest",
        needed_if=(rule, "fixed"),
    )
