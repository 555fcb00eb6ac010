"""The pour as it was ordered: how long it takes, how long each truck stands, and what that costs.

The ways of placing are compared each with its own order; these are the numbers of the order that is phoned in, which
a person may have forced.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import TRUCK
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.method_choice import Placing, RunnerUpMethod
from calc.trade.ordering.method_cost import MethodCost, charged_hours, pump_hire
from calc.trade.ordering.methods import Method, PlacingRate, TruckSplit
from calc.trade.ordering.order import Load, Order
from calc.trade.ordering.plant import DischargePrice, PlantCharges
from calc.trade.ordering.trucks import ONE_TRUCK, billed_yards, free_minutes, short_load_fee, standby
from calc.trade.ordering.weather import TruckClock

_SHEET = "Order and placing"


class Pour(Section, title="The pour", sheet=_SHEET):
    """By the way that is taken; where concrete was ordered by hand although bags are cheaper, by the next way."""

    row = line(
        "Row of the way of the pour",
        "",
        when(both(Placing.bags > 0, Order.quantity > 0), RunnerUpMethod.row, Placing.row),
        source="the way that is taken",
    )
    way = line("Placed by", "", at(Method.name, row), source="of that row")
    pace = line("Pace of the pour", "yd3/h", at(Method.pace, row), source="of that row")
    from_plant = line(
        "Hours for concrete from the plant",
        "h",
        when(both(pace > 0, Order.quantity > 0), largest(PlacingRate.least_time, Order.quantity / pace), 0),
        source="order over pace, half an hour at least",
    )
    hours = line(
        "Hours to place",
        "h",
        when(Order.bags > 0, Bags.hours, from_plant),
        source="by the order as it stands; for bags the time to mix them",
    )
    yard = line(
        "Price of a yard of the order",
        "$/yd3",
        at(DischargePrice.yard, at(Method.pouring, row)),
        source="for its pouring",
    )


class TruckTime(Section, title="Time of each truck", each=TRUCK, sheet=_SHEET, slots_for=Order.trucks):
    """From the minute it is on the site until it is empty."""

    unloading = line(
        "Unloading",
        "min",
        when(Pour.pace > 0, Load.yards / Pour.pace * MIN_PER_H, 0),
        source="its load over the pace of the pour",
    )
    free = line(
        "Free time",
        "min",
        free_minutes(Load.rides * TruckSplit.free_time, TruckSplit.free_yard, Load.yards),
        source="by the truck or by its yards, whichever is more",
    )
    waiting = line("Waiting", "min", standby(unloading, free), source="unloading less its free time", adds=True)
    fee = line(
        "Short-load fee",
        "$",
        short_load_fee(Load.rides, Load.yards / ONE_TRUCK),
        source="by its load",
        adds=True,
    )


class PourCost(Section, title="What the plant and the pump charge", sheet=_SHEET):
    """Of the order as it stands."""

    billed = line(
        "Yards that are billed",
        "yd3",
        when(Order.quantity > 0, billed_yards(Order.quantity), 0),
        source="the order, the least order of the plant at least; none without an order",
    )
    pumped = line("Of them pumped", "yd3", at(Method.piped, Pour.row) * billed, source="with a pump only")
    pump_hours = line(
        "Hours that the pump is charged",
        "h",
        when(pumped > 0, charged_hours(Pour.hours), 0),
        source="pumping, set-up and wash-out, its least hours at least",
    )
    yards = line("Concrete from the plant", "$", money(billed * Pour.yard), source="the yards that are billed")
    fees = line("Short-load fees of the order", "$", money(total(TruckTime.fee)), source="by the load of each truck")
    delivery = line(
        "Delivery of the order", "$", money(Order.trucks * PlantCharges.delivery), source="by the truck, full or not"
    )
    waiting = line(
        "Waiting of the trucks of the order",
        "$",
        money(total(TruckTime.waiting) * at(MethodCost.minute, Pour.row)),
        source="minutes beyond the free time",
    )
    pump = line(
        "Pump hire of the order",
        "$",
        when(at(Method.piped, Pour.row) > 0, pump_hire(Pour.hours, Order.quantity), 0),
        source="set-up, hours, yards, prime pack",
    )
    longest = line("Longest unloading", "min", greatest(TruckTime.unloading), source="of all trucks")
    late = line(
        "A truck stands too long by",
        "min",
        largest(0, longest - TruckClock.left),
        source="longest unloading less the minutes left at the job",
    )
