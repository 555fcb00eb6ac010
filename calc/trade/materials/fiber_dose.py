"""The dose of fiber per yard."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Job, Site
from calc.trade.ordering.plant_fees import FiberKind


class FiberDose(Section, title="Fiber", sheet="Order and placing"):
    """Fiber dosage per yard ordered."""

    per_yard = line(
        "Fiber dosage",
        "lb/yd3",
        when(Job.fiber.is_("none"), 0, if_given(Site.fiber_dose, look_up(FiberKind.dose, Job.fiber))),
        source="input, else the usual dosage of the fiber type",
    )
    bag = line(
        "Fiber per bag",
        "lb/bag",
        look_up(FiberKind.bag, Job.fiber),
        source="by fiber type",
    )
