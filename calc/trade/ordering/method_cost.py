"""What each way of placing costs: the concrete, trucks that wait, the people who place, and the pump."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.pour import Crew
from calc.trade.levels import METHOD
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.methods import Method, TruckSplit
from calc.trade.ordering.plant import DischargePrice
from calc.trade.ordering.trucks import plant_charge, split_fees
from calc.trade.prices.wage_rates import CrewRate

_SHEET = "Order and placing"
_ONE = exact(1, "each")


class Pump(Section, title="Pump charges", sheet=_SHEET):
    """A small line pump with operator, hired for a minimum number of hours."""

    set_up_price = price("Pump set-up charge", "$/each", taxed=False, help="Charge per job before the pump runs.")
    hour_price = price("Pump, per hour", "$/h", taxed=False, help="Charge per hour of the pump with its operator.")
    yard_price = price("Pump, per yard", "$/yd3", taxed=False, help="Added charge per yard pumped; blank for none.")
    primer_price = price("Pump primer", "$/each", taxed=False, help="Primer or slurry pack, per job; blank for none.")
    min_hours = factor("Pump minimum hours", "h", 3, low=2, high=4, source="common practice, no source")
    set_up_hours = factor(
        "Pump set-up and washout time", "h", 0.75, low=0.5, high=1.5, source="common practice, no source: charged time"
    )

    known = line(
        "Pump prices are known",
        "",
        when(both(is_given(set_up_price), is_given(hour_price)), 1, 0),
        source="1 if set-up and hour have a price; $0 is a price",
    )
    set_up = line("Pump set-up", "$", money(_ONE * if_given(set_up_price, 0)), source="Prices")
    hourly = line("Pump rate per hour", "$/h", if_given(hour_price, 0), source="Prices")
    by_yard = line("Pump rate per yard", "$/yd3", if_given(yard_price, 0), source="Prices")
    primer = line("Pump primer, per job", "$", money(_ONE * if_given(primer_price, 0)), source="Prices")


def charged_hours(hours: Expr) -> Expr:
    """The hours that a pump is charged which pumps for so long."""
    return largest(Pump.min_hours, hours + Pump.set_up_hours)


def pump_hire(hours: Expr, yards: Expr) -> Expr:
    """What a pump costs that pumps for so long, and so many yards."""
    return Pump.set_up + money(charged_hours(hours) * Pump.hourly) + money(yards * Pump.by_yard) + Pump.primer


class MethodCost(Section, title="Placing method costs", each=METHOD, sheet=_SHEET):
    """Only the costs that differ between methods; base, forms and finishing cost the same."""

    standby_price = price(
        "Truck standby (wait time)", "$/min", taxed=False, help="Charge per minute beyond the unloading allowance."
    )

    standby_rate = line("Truck standby rate", "$/min", if_given(standby_price, 0), source="Prices")
    fees = line(
        "Short-load fees",
        "$",
        split_fees(TruckSplit.trucks, TruckSplit.base_load, TruckSplit.extra_trucks, TruckSplit.largest_load),
        source="by the load of each truck, from the fee table",
    )
    charge = line(
        "Plant charges",
        "$",
        plant_charge(Method.order, at(DischargePrice.yard, Method.discharge), fees, TruckSplit.trucks),
        source="yards, not below the minimum order, plus short-load fees, delivery and added fees per truck",
    )
    concrete = line(
        "Concrete cost of the method",
        "$",
        by_row(METHOD, charge, charge, charge, Bags.cost),
        source="plant charges, or bags with mixer and clean-up",
    )
    standby = line(
        "Truck standby cost",
        "$",
        money(TruckSplit.standby * standby_rate),
        source="standby minutes times standby rate",
    )
    placing_crew = line(
        "Placing crew cost",
        "$",
        money(Crew.placing.count * Method.hours * CrewRate.laborer),
        source="placing crew times placing time at the laborer rate",
    )
    crew = line(
        "Crew cost of the method",
        "$",
        by_row(METHOD, placing_crew, placing_crew, placing_crew, Bags.labor),
        source="placing crew, or mixing crew",
    )
    pump = line(
        "Pump charge",
        "$",
        by_row(METHOD, 0, 0, pump_hire(Method.hours, Method.order), 0),
        source="set-up, hours, yards and primer",
    )
    cost = line("Cost of the method", "$", concrete + standby + crew + pump, source="concrete, standby, crew and pump")
