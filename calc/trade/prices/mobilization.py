"""What coming to the job costs for the vehicle and its fuel; the people are paid with their visit."""

from __future__ import annotations

from calc.declare import *

ONE_VISIT = exact(1, "each")


class Mobilization(Section, title="Mobilization", sheet="Costs"):
    """Vehicle and fuel only."""

    crew_price = price(
        "Mobilization, crew visit",
        "$/each",
        taxed=False,
        help="Price of a visit of the crew, to prepare or to pour: truck, trailer and fuel, without wages.",
    )
    single_price = price(
        "Mobilization, one-person visit",
        "$/each",
        taxed=False,
        help="Price of a visit of one person, to strip forms or to seal: vehicle and fuel, without wages.",
    )

    crew_visit = line("Mobilization of a crew visit", "$", ONE_VISIT * if_given(crew_price, 0), source="Prices")
    single_visit = line(
        "Mobilization of a one-person visit", "$", ONE_VISIT * if_given(single_price, 0), source="Prices"
    )
