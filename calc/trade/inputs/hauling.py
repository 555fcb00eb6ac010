"""What a person says of the hauling: which vehicles may haul, and a plan that is chosen by hand."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import PLAN, VEHICLE

CHEAPEST = "cheapest"


class Fleet(Section, title="Hauling", table="Site conditions"):
    """The vehicles that compete, beside the first, and the plan when it is not left to the price."""

    second = row_of("Second vehicle", VEHICLE, help="Another vehicle that may haul, where a first one is named.")
    third = row_of("Third vehicle", VEHICLE, help="One more.")
    plan = choice(
        "Haul plan",
        CHEAPEST,
        *PLAN.axis.words,
        default=CHEAPEST,
        help="How what is hauled away is parted; cheapest compares every way.",
    )
    by = row_of(
        "Haul with",
        VEHICLE,
        used_if=(plan, *PLAN.axis.words),
        help="The vehicle of a chosen plan; blank is the cheapest.",
    )
    reason = text(
        "Haul reason",
        needed_if=(plan, *PLAN.axis.words),
        help="Why the plan is chosen by hand.",
        example="the client wants the stone kept apart",
    )
