"""What a person types for the documents: the mix to order, the contact on site, what the bid excludes."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Job

_TABLE = "Site conditions"


class PaperFacts(Section, title="For the documents", table=_TABLE):
    """What the plant, the driver and the client are told; no quantity depends on it."""

    slump = given(
        "Slump",
        "in",
        default=4,
        low=1,
        high=10,
        ask_low=3,
        ask_high=5,
        example="4",
        help="Slump to order; 3 to 5 in is usual for a slab.",
    )
    aggregate_size = given(
        "Maximum aggregate size",
        "in",
        over=0,
        high=2,
        example="3/4",
        help="Maximum aggregate size of the mix; blank is the usual size, smaller for a pump.",
    )
    arrives = given(
        "First truck at",
        "h",
        low=0,
        high=24,
        ask_low=5,
        ask_high=18,
        example="8.5",
        help="Time of day for the first truck, as 8 or 8.5.",
    )
    contact = text(
        "Contact on site", help="Contact on the day of the pour, with a phone number.", example="Ilsa Brandt, 555-0177"
    )
    revision = text(
        "Plan revision", help="Drawing and revision that the bid is based on.", example="sheet 2, revision B"
    )
    exclusions = text(
        "Exclusions",
        help="What this bid excludes, besides the company's usual exclusions.",
        example="moving the irrigation controller",
    )
    water = choice(
        "Water shut off by",
        "the client",
        "us",
        default="the client",
        needs=(Job.lines_to_cap,),
        help="Who shuts off the water at its source before lines are capped.",
    )
