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


class Pump(Section, title="What a pump costs", sheet=_SHEET):
    """A small line pump with its driver, hired for a few hours at least."""

    set_up_price = price("Pump, set-up", "$/each", taxed=False, help="What the pump costs before it runs.")
    hour_price = price("Pump, an hour", "$/h", taxed=False, help="An hour of the pump with its driver.")
    yard_price = price(
        "Pump, a yard", "$/yd3", taxed=False, help="More for a yard that is pumped; nothing when it is blank."
    )
    prime_price = price("Pump, prime pack", "$/each", help="What goes through the hose first; nothing when blank.")
    least_hire = factor("Least hours of a pump", "h", 3, low=2, high=4, source="common practice, no source")
    about = factor(
        "Pump set up and washed out", "h", 0.75, low=0.5, high=1.5, source="common practice, no source: it is charged"
    )

    known = line(
        "Pump has its prices",
        "",
        when(both(is_given(set_up_price), is_given(hour_price)), 1, 0),
        source="1 when the set-up and the hour have a price; $0 is a price",
    )
    set_up = line("Pump set up", "$", money(_ONE * if_given(set_up_price, 0)), source="Prices")
    hourly = line("Pump by the hour", "$/h", if_given(hour_price, 0), source="Prices")
    by_yard = line("Pump by the yard", "$/yd3", if_given(yard_price, 0), source="Prices")
    prime = line("Prime pack", "$", money(_ONE * if_given(prime_price, 0)), source="Prices")


def charged_hours(hours: Expr) -> Expr:
    """The hours that a pump is charged which pumps for so long."""
    return largest(Pump.least_hire, hours + Pump.about)


def pump_hire(hours: Expr, yards: Expr) -> Expr:
    """What a pump costs that pumps for so long, and so many yards."""
    return Pump.set_up + money(charged_hours(hours) * Pump.hourly) + money(yards * Pump.by_yard) + Pump.prime


class MethodCost(Section, title="What each way costs", each=METHOD, sheet=_SHEET):
    """What differs from way to way; the base, the forms and the finishing cost the same."""

    waiting_price = price(
        "Waiting of a truck", "$/min", taxed=False, help="A minute that a truck stands beyond its free time."
    )

    minute = line("A minute of waiting", "$/min", if_given(waiting_price, 0), source="Prices")
    fees = line(
        "Short-load fees",
        "$",
        split_fees(TruckSplit.trucks, TruckSplit.load, TruckSplit.odd, TruckSplit.more),
        source="by the load of each truck",
    )
    charge = line(
        "Plant charges",
        "$",
        plant_charge(Method.order, at(DischargePrice.yard, Method.pouring), fees, TruckSplit.trucks),
        source="the yards, the least order at least; fees and delivery by the truck",
    )
    concrete = line(
        "Concrete",
        "$",
        by_row(METHOD, charge, charge, charge, Bags.cost),
        source="what the plant charges, or bags with mixer and clean-up",
    )
    waiting = line(
        "Waiting of the trucks",
        "$",
        money(TruckSplit.waiting * minute),
        source="minutes beyond the free time",
    )
    people = line(
        "People who place",
        "$",
        money(Crew.placing.count * Method.hours * CrewRate.labourer),
        source="placing crew as labourers",
    )
    crew = line(
        "Crew", "$", by_row(METHOD, people, people, people, Bags.labor), source="people who place, or who mix bags"
    )
    pump = line(
        "Pump hire",
        "$",
        by_row(METHOD, 0, 0, pump_hire(Method.hours, Method.order), 0),
        source="set-up, hours, yards, prime pack",
    )
    cost = line("Cost of the way", "$", concrete + waiting + crew + pump, source="concrete, waiting, crew and pump")
