"""What a person types about the pour: the mix, the crew, and how the order is found."""

from __future__ import annotations

from calc.declare import *

_TABLE = "Site conditions"


class Mixture(Section, title="Mix", table=_TABLE):
    """What is ordered from the plant."""

    strength = given(
        "Strength",
        "psi",
        default=3500,
        low=2000,
        high=8000,
        ask_low=2500,
        ask_high=5000,
        example="4000",
        help="Compressive strength of the mix; the next stronger mix with a price is priced.",
    )
    air = yes_no("Entrained air", help="Whether the mix has entrained air.")
    accelerator = yes_no("Accelerator", help="Whether the mix has a set accelerator; never together with a retarder.")
    retarder = yes_no("Retarder", help="Whether the mix has a set retarder.")
    winter_heat = yes_no("Winter heat", help="Whether the plant heats the mix with hot water.")


class Crew(Section, title="Crew", table=_TABLE):
    """Who pours, and on which wage table."""

    placing = given(
        "Placing crew",
        "person",
        default=2,
        low=1,
        high=20,
        ask_low=2,
        whole=True,
        example="2",
        help="Number of people who place and screed.",
    )
    finishing = given(
        "Finishers",
        "person",
        default=1,
        low=1,
        high=20,
        whole=True,
        example="1",
        help="Number of people who float and finish.",
    )
    wages = choice("Wage table", "private", "prevailing", default="private", help="Which column of Wages applies.")


class Ordering(Section, title="Order", table=_TABLE):
    """How the order is found."""

    rule = choice(
        "Order rule",
        "risk",
        "percent",
        "fixed",
        default="risk",
        help="How the order is found: risk is the lowest expected cost of running short and of surplus concrete, "
        "percent is the net volume plus a percentage, and fixed is the order that you type.",
    )
    fixed = given(
        "Fixed order",
        "yd3",
        over=0,
        ask_high=72,
        example="2.5",
        needed_if=(rule, "fixed"),
        help="The order if the rule is fixed, rounded up to the order increment.",
    )
    reason = text(
        "Order reason",
        help="Why the order is fixed.",
        example="the surplus fills a planter",
        needed_if=(rule, "fixed"),
    )
