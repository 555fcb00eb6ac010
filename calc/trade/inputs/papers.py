"""What a person says for the papers: the mix as it is phoned in, who is on the site, what the bid leaves out."""

from __future__ import annotations

from calc.declare import *

_TABLE = "Site conditions"


class PaperFacts(Section, title="For the papers", table=_TABLE):
    """What the plant, the driver and the client have to be told; no quantity hangs on it."""

    slump = given(
        "Slump",
        "in",
        default=4,
        low=1,
        high=10,
        ask_low=3,
        ask_high=5,
        example="4",
        help="How wet the mix is ordered; 3 to 5 in is usual for a slab.",
    )
    stone = given(
        "Largest stone",
        "in",
        over=0,
        high=2,
        example="3/4",
        help="Largest aggregate of the mix; blank is the usual one, smaller where a pump is taken.",
    )
    arrives = given(
        "First truck at",
        "h",
        low=0,
        high=24,
        ask_low=5,
        ask_high=18,
        example="8.5",
        help="Hour of the day that the first truck is wanted at, as 8 or 8.5.",
    )
    contact = text("Contact on site", help="Who answers on the day, with a number.", example="Ilsa Brandt, 555-0177")
    revision = text("Plan revision", help="The drawing or the revision that was bid.", example="sheet 2, revision B")
    exclusions = text(
        "Exclusions",
        help="What this bid leaves out, beside the house's own words on it.",
        example="moving the irrigation controller",
    )
    water = choice(
        "Water shut off by",
        "the client",
        "us",
        default="the client",
        help="Who shuts the water off at its source before lines are capped.",
    )
