"""What keeps the job, the street and the old walk clean and safe: sheets, wash water, barricades."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.removal import Footing
from calc.trade.inputs.work import OnSite
from calc.trade.levels import FOOTING
from calc.trade.ordering.methods import Method
from calc.trade.ordering.order import Order
from calc.trade.ordering.pour import Pour
from calc.trade.takeoff.geometry import MeanThickness
from calc.trade.takeoff.old_concrete import OldFooting

_SHEET = "Order and placing"
ONE_EACH = exact(1, "each")


class SlipSheet(Section, title="Slip sheets", each=FOOTING, sheet=_SHEET):
    """Lets the slab slide over a footing, where nobody wants a bond."""

    area = line(
        "Slip sheet",
        "ft2",
        when(both(Footing.treatment.is_("bond breaker"), OldFooting.cover < MeanThickness.mean), OldFooting.plan, 0),
        source="top of the footing; none at or below the slab's underside",
        adds=True,
    )


class Protection(Section, title="Sheets, wash water and barricades", sheet=_SHEET):
    """Wash water is as harsh as lye: never onto soil near trees, nor to a gutter or a drain."""

    sheet_price = price("Slip sheet", "$/ft2", help="A square foot of it.")
    barricade_price = price("Barricades for a day", "$/each", help="All that the job takes, for one day.")
    caution_price = price("Caution tape and signs", "$/each", help="One set, once a job.")
    wash_price = price("Wash-out box", "$/each", help="Box, liner and getting rid of it, once where a truck comes.")
    a_truck = factor("Wash water of a truck", "gal/truck", 10, low=7, high=20, source="common practice, no source")
    of_pump = factor("Wash water of a pump", "gal", 35, low=25, high=50, source="common practice, no source")
    of_tools = factor("Wash water of tools", "gal", 8, low=5, high=15, source="common practice, no source")
    room = factor(
        "Room in the wash-out box", "", 1.5, low=1.2, high=2, source="common practice, no source: over its water"
    )
    cubic_foot = factor(
        "Gallons in a cubic foot", "gal/ft3", 7.48, source="NIST Handbook 44, appendix C: 1,728 in3 over 231, rounded"
    )

    sheeted = line("Slip sheet to cut", "ft2", total(SlipSheet.area), source="sum of the footings")
    sheet_cost = line("Slip sheet, cost", "$", money(sheeted * if_given(sheet_price, 0)), source="area times price")
    water = line(
        "Wash water",
        "gal",
        Order.trucks * a_truck + when(at(Method.piped, Pour.row) > 0, of_pump, 0) + of_tools,
        source="trucks, pump and tools",
    )
    box = line("Wash-out box holds", "ft3", water * room / cubic_foot, source="wash water, and room over it")
    washed = line("Wash-out box", "each", when(Order.trucks > 0, ONE_EACH, 0), source="once, where a truck comes")
    washed_cost = line("Wash-out box, cost", "$", money(washed * if_given(wash_price, 0)), source="once")
    closed = line("Barricade days", "each", OnSite.days_closed, source="close days")
    barricades = line("Barricades, cost", "$", money(closed * if_given(barricade_price, 0)), source="days times price")
    caution = line("Tape and signs, cost", "$", money(ONE_EACH * if_given(caution_price, 0)), source="one set")
    cost = line(
        "Protection, cost",
        "$",
        sheet_cost + washed_cost + barricades + caution,
        source="sheets, wash-out, barricades, tape and signs",
    )
    known = line(
        "Prices of protection are known",
        "",
        when(
            both(
                is_given(caution_price),
                either(closed <= 0, is_given(barricade_price)),
                either(washed <= 0, is_given(wash_price)),
                either(sheeted <= 0, is_given(sheet_price)),
            ),
            1,
            0,
        ),
        source="1 when the house book gives what is needed",
    )
