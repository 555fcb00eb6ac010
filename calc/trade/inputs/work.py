"""What a person says of the work: how it is dug, who is on the site, what is there, and what nobody can see yet."""

from __future__ import annotations

from calc.declare import *

_TABLE = "Site conditions"


class Digging(Section, title="Digging", table="Jobs"):
    """By shovel or with a machine."""

    by = choice(
        "Dug by", "hand", "machine", default="hand", help="How it is dug; a machine loads whatever leaves, too."
    )


class Removal(Section, title="Removal", table=_TABLE):
    """What has to come out, and what may be found there."""

    saw_cut = given(
        "Removal saw cut",
        "ft",
        default=0,
        low=0,
        high=2000,
        ask_high=500,
        example="12",
        help="Saw cuts between the old slab that is taken out and what stays, in all.",
    )
    unknown = given(
        "Unknown allowance",
        "h",
        default=0,
        low=0,
        high=200,
        ask_high=16,
        example="2",
        help="Hours for what nobody can see yet: roots, pipes, buried footings.",
    )


class OnSite(Section, title="On the site", table=_TABLE):
    """Who works there, and what they find there."""

    crew = given(
        "Crew",
        "person",
        default=3,
        low=1,
        high=20,
        whole=True,
        example="3",
        help="People on the site, those who place and finish among them.",
    )
    power = yes_no("Power on site", help="Whether electric tools can be plugged in; else a generator is rented.")
    closed = given(
        "Close days",
        "",
        default=3,
        low=0,
        high=60,
        whole=True,
        example="3",
        help="Days for which nobody may walk on it: barricades are rented for them.",
    )
