"""Fees that a plant may add to its concrete: by the load for its way, by the yard for the day and for fiber.

Each is a row of Prices, and none where it is blank. They are services, so they are not taxed unless Prices says so.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Job, Site
from calc.trade.inputs.pour import Ordering
from calc.trade.levels import FIBER

_SHEET = "Order and placing"
_SUNDAY = exact(1)
_DAY_AFTER = days_after(if_given(Job.pour_date, Job.bid_date), exact(1, "days"))


class FiberKind(Section, title="Fiber types", each=FIBER):
    """Usual dosage and bag size of each type of fiber; the product data sheet governs."""

    dose = factors(
        "Fiber dosage, usual",
        "lb/yd3",
        0,
        1.5,
        4,
        source="micro: UFGS 03300N, 1.5 lb/yd3 minimum, seen in print; macro: ACI 544.3R, 3 to 7, partly from memory",
    )
    bag = factors("Fiber per bag, usual", "lb/bag", 1, 1, 5, source="common practice, no source: the bag label wins")


class PlantFees(Section, title="Fees added by the plant", sheet=_SHEET):
    """By the load: environmental fee, fuel, after hours, Saturday. By the yard: Saturday, and fiber put in there."""

    environmental_price = price(
        "Environmental fee", "$/truck", taxed=False, help="Charge per load for wash water and dust; blank for none."
    )
    fuel_price = price("Fuel surcharge", "$/truck", taxed=False, help="Charge per load for fuel; blank for none.")
    after_hours_price = price(
        "After-hours fee",
        "$/truck",
        taxed=False,
        help="Charge per load outside the hours of the plant; blank for none.",
    )
    saturday_load_price = price(
        "Saturday fee, per load", "$/truck", taxed=False, help="Charge per load on a Saturday; blank for none."
    )
    saturday_yard_price = price(
        "Saturday fee, per yard", "$/yd3", taxed=False, help="Charge per yard billed on a Saturday; blank for none."
    )
    fiber_price = price(
        "Fiber put in at the plant",
        "$/yd3",
        taxed=False,
        help="Charge per yard with fiber. Where it is given, no bags of fiber are bought for ready-mix.",
    )

    is_saturday = line(
        "Pour is on a Saturday",
        "",
        when(both(is_given(Job.pour_date), equals(day_of_week(_DAY_AFTER), _SUNDAY)), 1, 0),
        source="1 if the pour date is known and the day after it is a Sunday",
    )
    is_after_hours = line(
        "Delivery is after hours", "", when(Ordering.after_hours.is_("yes"), 1, 0), source="1 if the job says so"
    )
    puts_in_fiber = line(
        "Fiber is put in at the plant",
        "",
        when(
            both(
                is_given(fiber_price),
                not_(Job.fiber.is_("none")),
                if_given(Site.fiber_dose, look_up(FiberKind.dose, Job.fiber)) > 0,
            ),
            1,
            0,
        ),
        source="1 if the mix has a dose of fiber and the plant has a price for it",
    )
    always_by_load = line(
        "Environmental fee and fuel per load",
        "$/truck",
        if_given(environmental_price, 0) + if_given(fuel_price, 0),
        source="Prices",
    )
    by_load = line(
        "Added fees per load",
        "$/truck",
        always_by_load
        + is_after_hours * if_given(after_hours_price, 0)
        + is_saturday * if_given(saturday_load_price, 0),
        source="sum of the fees per load that apply",
    )
    by_yard = line(
        "Added fees per yard",
        "$/yd3",
        is_saturday * if_given(saturday_yard_price, 0) + puts_in_fiber * if_given(fiber_price, 0),
        source="sum of the fees per yard that apply",
    )
