"""What a person types about the pour: the mix, the crew, and how the order is found."""

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
        help="Compressive strength of the mix; the next stronger mix with a price is priced.",
    )
    air = Addition(
        "Entrained air",
        "Whether the mix has entrained air.",
        price="Entrained air",
        price_help="More for a yard with entrained air.",
        cost="Entrained air in the mix",
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
    winter_heat = Addition(
        "Winter heat",
        "Whether the plant heats its water.",
        price="Winter heat",
        price_help="More for a yard mixed with hot water.",
        cost="Winter heat in the mix",
    )


ADDITIONS = tuple(each for each in Mixture.declarations if isinstance(each, Addition))
"""What the plant may put into the mix, in the order in which it is asked."""


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
        high=1000,
        ask_high=72,
        example="2.5",
        needed_if=(rule, "fixed"),
        help="The order if the rule is fixed, rounded up to the order increment.",
    )
    after_hours = yes_no(
        "After-hours delivery",
        help="Whether the plant delivers outside its hours, for which it may charge by the load.",
    )
    reason = text(
        "Order reason",
        help="Why the order is fixed.",
        example="the surplus fills a planter",
        needed_if=(rule, "fixed"),
    )
