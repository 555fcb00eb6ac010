"""What a person says of the pour: the mix, the crew, and how the order is found."""

from __future__ import annotations

from calc.declare import *

_TABLE = "Site conditions"


class Addition(Input):
    """Whether the plant puts something into the mix, which it charges by the yard.

    One entry is enough: its column, its price, its cost, its row on the plant order and whether two pours may share a
    truck all come from it. ``price`` and ``cost`` are the labels of its price and of its cost. What can be
    ``added_later`` may go in after the first stop of a truck, which then takes none of it.
    """

    def __init__(
        self, label: str, help: str, *, price: str, price_help: str, cost: str, added_later: bool = False
    ) -> None:
        super().__init__(label, "", Kind.CHOICE, words=("yes", "no"), default="no", help=help)
        self.price, self.price_help, self.cost, self.added_later = price, price_help, cost, added_later


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
    air = Addition(
        "Entrained air",
        "Whether the mix has entrained air.",
        price="Entrained air",
        price_help="More for a yard with entrained air.",
        cost="Air in the mix",
    )
    accelerator = Addition(
        "Accelerator",
        "Whether the mix has an accelerator; never with a retarder.",
        price="Accelerator",
        price_help="More for a yard with an accelerator.",
        cost="Accelerator in the mix",
        added_later=True,
    )
    retarder = Addition(
        "Retarder",
        "Whether the mix has a retarder.",
        price="Retarder",
        price_help="More for a yard with a retarder.",
        cost="Retarder in the mix",
        added_later=True,
    )
    hot_water = Addition(
        "Hot water",
        "Whether the plant heats its water.",
        price="Hot water",
        price_help="More for a yard mixed with hot water.",
        cost="Hot water in the mix",
    )


ADDITIONS = tuple(each for each in Mixture.declarations if isinstance(each, Addition))
"""What the plant may put into the mix, in the order in which it is asked."""


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
