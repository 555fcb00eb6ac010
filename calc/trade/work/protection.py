"""Bond breakers, concrete washout, barricades and signs."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.work import OnSite
from calc.trade.ordering.method_cost import MethodCost
from calc.trade.ordering.methods import Method
from calc.trade.ordering.order import Order
from calc.trade.ordering.pour import Pour
from calc.trade.takeoff.bond_breaker import BondBreaker

_SHEET = "Order and placing"
_ONE_EACH = exact(1, "each")
BARRICADE_DAYS = count_of(OnSite.days_closed, "each")
"""Days closed to traffic, which barricades are paid for."""


class Protection(Section, title="Bond breakers, washout and barricades", sheet=_SHEET):
    """Washout water is caustic: keep it off soil near trees, and out of gutters and drains."""

    sheet_price = price("Bond breaker", "$/ft2", help="Price per square foot.")
    barricade_price = price("Barricades, per day", "$/each", help="Price per day for all barricades of the job.")
    caution_price = price("Caution tape and signs", "$/each", help="Price per set, one per job.")
    water_per_truck = factor(
        "Washout water per truck", "gal/truck", 10, low=7, high=20, source="common practice, no source"
    )
    pump_water = factor("Washout water, pump", "gal", 35, low=25, high=50, source="common practice, no source")
    tool_water = factor("Washout water, tools", "gal", 8, low=5, high=15, source="common practice, no source")
    size_factor = factor(
        "Washout size, times water volume", "", 1.5, low=1.2, high=2, source="common practice, no source"
    )
    gal_per_ft3 = factor(
        "Gallons per cubic foot", "gal/ft3", 7.48, source="NIST Handbook 44, Appendix C: 1,728 in3 over 231, rounded"
    )

    sheet_cost = line(
        "Bond breaker, cost",
        "$",
        money(total(BondBreaker.area) * if_given(sheet_price, 0)),
        source="total area times price",
    )
    water = line(
        "Washout water",
        "gal",
        Order.trucks * water_per_truck + when(at(Method.is_pump, Pour.row) > 0, pump_water, 0) + tool_water,
        source="trucks times water per truck, plus pump and tools",
    )
    washout_capacity = line(
        "Concrete washout capacity", "ft3", water * size_factor / gal_per_ft3, source="washout water times size factor"
    )
    washouts = line("Concrete washouts", "each", when(Order.trucks > 0, 1, 0), source="1 if ready-mix is ordered")
    washout_cost = line(
        "Concrete washout, cost",
        "$",
        money(washouts * if_given(MethodCost.washout_price, 0)),
        source="quantity times price",
    )
    barricades = line(
        "Barricades, cost", "$", money(BARRICADE_DAYS * if_given(barricade_price, 0)), source="days times price"
    )
    caution = line("Caution tape and signs, cost", "$", money(_ONE_EACH * if_given(caution_price, 0)), source="one set")
    cost = line(
        "Protection, total cost",
        "$",
        sheet_cost + washout_cost + barricades + caution,
        source="bond breakers, washout, barricades, tape and signs",
    )
