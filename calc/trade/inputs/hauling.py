"""What a person types about hauling: which vehicles may haul, and a haul plan that is chosen by hand."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Site
from calc.trade.levels import PLAN, VEHICLE

CHEAPEST = "cheapest"


class Fleet(Section, title="Hauling", table="Site conditions"):
    """The other vehicles that may haul, and the haul plan if it is not to be the cheapest."""

    vehicle_2 = row_of(
        "Allowed vehicle 2",
        VEHICLE,
        needs=(Site.vehicle_1,),
        help="A second vehicle that may haul, if vehicle 1 is named.",
    )
    vehicle_3 = row_of("Allowed vehicle 3", VEHICLE, needs=(Site.vehicle_1,), help="A third vehicle that may haul.")
    plan = choice(
        "Haul plan",
        CHEAPEST,
        *PLAN.axis.words,
        default=CHEAPEST,
        names=PLAN,
        help="Which piles are hauled separately; cheapest compares every plan.",
    )
    by = row_of(
        "Haul with",
        VEHICLE,
        used_if=(plan, *PLAN.axis.words),
        help="The vehicle for the chosen plan; blank is the cheapest.",
    )
    reason = text(
        "Haul reason",
        needed_if=(plan, *PLAN.axis.words),
        help="Why the plan is chosen by hand.",
        example="the client wants the stone kept separate",
    )
