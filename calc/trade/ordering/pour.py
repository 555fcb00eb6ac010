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
from calc.trade.ordering.methods import Method, TruckSplit
from calc.trade.ordering.order import Order, TruckLoad
from calc.trade.ordering.placing_rates import PlacingRate
from calc.trade.ordering.plant import DischargePrice, PlantCharges
from calc.trade.ordering.trucks import ONE_TRUCK, billed_yards, free_minutes, short_load_fee, standby
from calc.trade.ordering.weather import DischargeLimit

_SHEET = "Order and placing"


class Pour(Section, title="Pour", sheet=_SHEET):
    """By the placing method chosen; by the runner-up if the order is overridden although bags are cheaper."""

    row = line(
        "Row of the placing method, as ordered",
        "",
        when(both(Placing.is_bags > 0, Order.quantity > 0), RunnerUpMethod.row, Placing.row),
        source="placing method chosen, or the runner-up",
    )
    method = line("Placing method, as ordered", "", at(Method.name, row), source="looked up by row")
    rate = line("Placing rate, as ordered", "yd3/h", at(Method.rate, row), source="looked up by row")
    from_plant = line(
        "Placing time, ready-mix",
        "h",
        when(both(rate > 0, Order.quantity > 0), largest(PlacingRate.min_time, Order.quantity / rate), 0),
        source="order over placing rate, not below the minimum placing time",
    )
    hours = line(
        "Placing time, as ordered",
        "h",
        when(Order.bags > 0, Bags.hours, from_plant),
        source="ready-mix placing time; for bags the mixing hours",
    )


class TruckTime(Section, title="Truck times", each=TRUCK, sheet=_SHEET, slots_for=Order.trucks):
    """From arrival on site until the truck is empty."""

    unloading = line(
        "Unloading time",
        "min",
        when(Pour.rate > 0, TruckLoad.yards / Pour.rate * MIN_PER_H, 0),
        source="load over placing rate",
    )
    allowance = line(
        "Unloading allowance",
        "min",
        free_minutes(TruckLoad.in_use * TruckSplit.allowance_per_truck, TruckSplit.allowance_per_yard, TruckLoad.yards),
        source="larger of the allowances per truck and per yard",
    )
    standby = line(
        "Truck standby",
        "min",
        standby(unloading, allowance),
        source="unloading time less unloading allowance",
        adds=True,
    )
    fee = line(
        "Short-load fee",
        "$",
        short_load_fee(TruckLoad.in_use, TruckLoad.yards / ONE_TRUCK),
        source="by its load, from the fee table",
        adds=True,
    )


class PourCost(Section, title="Plant and pump charges", sheet=_SHEET):
    """Charges for the order."""

    yards_billed = line(
        "Yards billed",
        "yd3",
        when(Order.quantity > 0, billed_yards(Order.quantity), 0),
        source="order, not below the minimum order; 0 without an order",
    )
    yards_pumped = line("Yards pumped", "yd3", at(Method.is_pump, Pour.row) * yards_billed, source="with a pump only")
    pump_hours = line(
        "Pump hours charged",
        "h",
        when(yards_pumped > 0, charged_hours(Pour.hours), 0),
        source="placing time plus set-up and washout, not below the pump minimum",
    )
    concrete = line(
        "Ready-mix concrete cost",
        "$",
        money(yards_billed * at(DischargePrice.yard, at(Method.discharge, Pour.row))),
        source="yards billed times price per yard",
    )
    fees = line("Short-load fees, total", "$", money(total(TruckTime.fee)), source="sum of the trucks")
    delivery = line(
        "Delivery and added fees, total",
        "$",
        money(Order.trucks * PlantCharges.by_load),
        source="trucks times delivery and added fees per truck",
    )
    standby = line(
        "Truck standby cost, total",
        "$",
        money(total(TruckTime.standby) * at(MethodCost.standby_rate, Pour.row)),
        source="standby minutes times standby rate",
    )
    pump = line(
        "Pump charge, total",
        "$",
        when(at(Method.is_pump, Pour.row) > 0, pump_hire(Pour.hours, Order.quantity), 0),
        source="set-up, hours, yards and primer",
    )
    longest_unloading = line("Longest unloading time", "min", greatest(TruckTime.unloading), source="of all trucks")
    over_limit_by = line(
        "Over the discharge limit by",
        "min",
        largest(0, longest_unloading - DischargeLimit.time_left),
        source="longest unloading time less time left on site",
    )
