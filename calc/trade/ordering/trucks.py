"""How an order rides on trucks and what the plant charges for it: written once, for every order that is compared.

The candidates, the ways of placing, the order that is phoned in and pours that share a truck all use these expressions.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.ordering.plant import PlantCharges, ShortLoadTier

ONE_TRUCK = exact(1, "truck")
ONE_STEP = exact(1, "step")


def whole_trucks(order: Expr, capacity: Expr) -> Expr:
    """The trucks that an order takes."""
    return round_up(order / capacity)


def whole_steps(order: Expr, step: Expr) -> Expr:
    """The whole steps of the plant in an order."""
    return round_down(order / step)


def even_share(steps: Expr, trucks: Expr) -> Expr:
    """The steps that every truck carries, where the order is split as evenly as the step allows."""
    return round_down(steps.count / trucks.count)


def with_one_more(steps: Expr, even: Expr, trucks: Expr) -> Expr:
    """How many of the trucks carry one step more than the even share."""
    return steps.count - even.count * trucks.count


def volume(steps: Expr, step: Expr) -> Expr:
    """The concrete in so many steps, in yd3."""
    return steps.count * step


def truck_load(steps: Expr, step: Expr) -> Expr:
    """The load of one truck that carries so many steps, in yd3/truck."""
    return volume(steps, step) / ONE_TRUCK


def free_minutes(by_truck: Expr, by_yard: Expr, carried: Expr) -> Expr:
    """The minutes that a truck may unload for nothing: by the truck or by its yards, whichever is more."""
    return largest(by_truck, by_yard * carried)


def standby(unloading: Expr, free: Expr) -> Expr:
    """The minutes that a truck stands beyond its free time."""
    return largest(0, unloading - free)


def of_tier(value: Line, carried: Expr) -> Expr:
    """``value`` of the last tier that starts at or below the load of a truck, in yd3/truck."""
    return lookup_at_or_below(value, ShortLoadTier.start, rounded(carried, 3))


def short_load_fee(trucks: Expr, carried: Expr) -> Expr:
    """The fees of so many trucks that each carry ``carried``, in yd3/truck."""
    return trucks * of_tier(ShortLoadTier.fee, carried)


def split_fees(trucks: Expr, carried: Expr, odd: Expr, carried_by_odd: Expr) -> Expr:
    """The short-load fees of an order, some of whose trucks carry one step more than the rest."""
    return short_load_fee(odd, carried_by_odd) + short_load_fee(trucks - odd, carried)


def billed_yards(order: Expr) -> Expr:
    """The yards that the plant bills for an order: its least order at least."""
    return largest(order, PlantCharges.least_order)


def plant_charge(order: Expr, yard: Expr, fees: Expr, trucks: Expr) -> Expr:
    """What the plant charges for an order at ``yard``, in $/yd3: its yards, short loads and loads."""
    return money(billed_yards(order) * yard) + money(fees + trucks * PlantCharges.by_load)
