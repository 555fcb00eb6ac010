"""What a person types about the work: how it is dug, the crew, what is on site, and unforeseen conditions."""

from __future__ import annotations

from calc.declare import *

_TABLE = "Site conditions"


class Digging(Section, title="Digging", table="Jobs"):
    """By hand or by machine."""

    by = choice(
        "Dug by",
        "hand",
        "machine",
        default="hand",
        help="How the soil is dug; a machine also loads everything that is hauled.",
    )


class Removal(Section, title="Removal", table=_TABLE):
    """Demolition, and an allowance for unforeseen conditions."""

    saw_cut = given(
        "Demolition saw cut",
        "ft",
        default=0,
        low=0,
        high=2000,
        ask_high=500,
        example="12",
        help="Total length of saw cut between the slab that is removed and what stays.",
    )
    unforeseen = given(
        "Unforeseen-conditions allowance",
        "h",
        default=0,
        low=0,
        high=200,
        ask_high=16,
        example="2",
        help="Labor hours for what cannot be seen yet: roots, pipes, buried footings.",
    )


class OnSite(Section, title="On site", table=_TABLE):
    """The crew, and what is available on site."""

    crew = given(
        "Crew",
        "person",
        default=3,
        low=1,
        high=20,
        whole=True,
        example="3",
        help="Number of people on site, including those who place and finish.",
    )
    power = yes_no("Power on site", help="Whether there is power for electric tools; if not, a generator is rented.")
    days_closed = given(
        "Days closed to traffic",
        "",
        default=3,
        low=0,
        high=60,
        whole=True,
        example="3",
        help="Days closed to foot traffic; barricades are rented for these days.",
    )
