"""Equipment rental and mobilization: the cheapest rental period that has a price in the company book."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.choice import Choice
from calc.trade.inputs.work import Digging, OnSite
from calc.trade.levels import RENTAL, TOOL
from calc.trade.prices.mobilization import Mobilization
from calc.trade.prices.price_age import last_day
from calc.trade.prices.rental import Rental
from calc.trade.takeoff.forms import has_price
from calc.trade.work.labor import Task
from calc.trade.work.paid_time import PaidTime
from calc.trade.work.prep import PrepWork
from calc.trade.work.tasks import Work

_SHEET = "Costs"
_ONE_DOLLAR, _ONE_EACH = exact(1, "$"), exact(1, "each")


def _hours(task: str) -> Expr:
    """Hours of a task."""
    return look_up(Task.hours, task)


class Tool(Section, title="Rental equipment", each=TOOL, sheet=_SHEET):
    """A machine is on site for as long as its own tasks take. A saw and a demolition hammer have their own engine."""

    hours = line(
        "Machine hours",
        "h",
        by_row(
            TOOL,
            _hours("break out slab"),
            _hours("chip footings"),
            _hours("demolition saw cut") + _hours("saw-cut joints"),
            _hours("place base rock"),
            Work.mix_time,
            when(OnSite.power.is_("no"), _hours("drill dowels") + _hours("chip footings") + Work.mix_time, 0),
            _hours("dig by machine") + _hours("load by machine"),
        ),
        source="hours of its tasks; mixer: mixing time; generator: all tasks that need power, if the site has none",
    )
    kept_until = line(
        "Workday of the last load it fills",
        "each",
        by_row(TOOL, 0, 0, 0, 0, 0, 0, when(hours > 0, count_of(Choice.last_day, "each"), 0)),
        source="a machine that loads stays until the last load is filled",
    )
    days = line(
        "Rental days",
        "each",
        largest(round_up(hours / Rental.day), kept_until.count),
        source="machine hours over a rental day, rounded up, and at least to the last load",
    )


class RentalOption(Section, title="Rental options by machine", each=TOOL * RENTAL, sheet=_SHEET):
    """Half day, days and weeks; a period without a price, or a half day that is too short, is not eligible."""

    way = line("Rental period", "", row_word(RENTAL), source="half day, days or weeks")
    count = line(
        "Rental periods",
        "each",
        by_row(
            RENTAL,
            when(Tool.hours > 0, _ONE_EACH, 0),
            Tool.days,
            count_of(round_up(Tool.days.count / Rental.week), "each"),
        ),
        source="for the machine hours; days over a rental week, rounded up",
    )
    price_each = line(
        "Price per period",
        "$/each",
        by_row(RENTAL, Rental.half_price, Rental.day_price, Rental.week_price),
        source="Prices",
    )
    last_day = line(
        "Rental price valid until",
        "day",
        by_row(
            RENTAL,
            by_row(TOOL, *map(last_day, Rental.half_price.prices)),
            by_row(TOOL, *map(last_day, Rental.day_price.prices)),
            by_row(TOOL, *map(last_day, Rental.week_price.prices)),
        ),
        source="Prices",
    )
    account = line(
        "Account of the option",
        "",
        by_row(
            RENTAL,
            by_row(TOOL, *Rental.half_price.accounts),
            by_row(TOOL, *Rental.day_price.accounts),
            by_row(TOOL, *Rental.week_price.accounts),
        ),
        source="Prices",
    )
    cost = line("Rental cost of the option", "$", money(count * price_each), source="periods times price per period")
    available = line(
        "Available",
        "",
        by_row(
            RENTAL,
            when(
                both(Tool.hours <= Rental.half_day, Tool.kept_until <= _ONE_EACH), has_price(Rental.half_price, TOOL), 0
            ),
            has_price(Rental.day_price, TOOL),
            has_price(Rental.week_price, TOOL),
        ),
        source="1 if it has a price, and a half day is long enough, with no load to fill on another day",
    )
    compared = line(
        "Rental cost compared",
        "$",
        when(available > 0, cost, greatest(cost, TOOL) + _ONE_DOLLAR),
        source="an option that is not available is ranked behind the highest cost",
    )


class RentalChoice(Section, title="Rental chosen", each=TOOL, sheet=_SHEET):
    """The cheapest option that has a price; none without machine hours."""

    row = line(
        "Row of the rental option", "", argmin(RentalOption.compared, TOOL), source="lowest cost, first row on a tie"
    )
    no_price = line(
        "No rental price",
        "",
        when(both(Tool.hours > 0, at(RentalOption.available, row, of=TOOL) <= 0), 1, 0),
        source="1 if the machine is needed and the company book has no price that applies",
    )
    way = line(
        "Rental period chosen",
        "",
        when(both(Tool.hours > 0, no_price <= 0), at(RentalOption.way, row, of=TOOL), "none"),
        source="the cheapest option",
    )
    count = line(
        "Rental periods chosen",
        "each",
        when(no_price <= 0, at(RentalOption.count, row, of=TOOL), 0),
        source="number of half days, days or weeks",
    )
    price_each = line(
        "Price per period chosen",
        "$/each",
        when(no_price <= 0, at(RentalOption.price_each, row, of=TOOL), 0),
        source="of the cheapest option",
    )
    last_day = line(
        "Price chosen, valid until", "day", at(RentalOption.last_day, row, of=TOOL), source="looked up by row"
    )
    account = line("Account of the price chosen", "", at(RentalOption.account, row, of=TOOL), source="looked up by row")
    cost = line(
        "Rental cost",
        "$",
        when(no_price <= 0, at(RentalOption.cost, row, of=TOOL), 0),
        source="the cheapest option, to the cent",
        adds=True,
    )


class Equipment(Section, title="Equipment", sheet=_SHEET):
    """Rental, delivery of the mini excavator, and mobilization: once per crew day, and once for the sealer."""

    excavator_delivery_price = price(
        "Mini excavator delivery", "$/each", taxed=False, help="Price per job, delivery and pick-up."
    )

    excavator_deliveries = line(
        "Mini excavator delivered",
        "each",
        when(both(Digging.by.is_("machine"), PrepWork.excavated + PrepWork.loose > 0), 1, 0),
        source="1 if soil is excavated or loaded by machine",
    )
    mobilization = line(
        "Mobilization cost",
        "$",
        money(PaidTime.crew_visits * Mobilization.crew_visit)
        + money(PaidTime.single_visits * Mobilization.single_visit),
        source="visits times the price of each kind",
    )
    cost = line(
        "Equipment, total cost",
        "$",
        total(RentalChoice.cost) + money(excavator_deliveries * if_given(excavator_delivery_price, 0)) + mobilization,
        source="rental, delivery, mobilization",
    )
