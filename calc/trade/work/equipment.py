"""Machines that are rented, and the way there: the cheapest of the prices that the house book gives."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Site
from calc.trade.inputs.work import Digging, OnSite
from calc.trade.levels import RENTAL, TOOL
from calc.trade.prices.price_age import last_day
from calc.trade.prices.rental import Rental
from calc.trade.takeoff.forms import has_price
from calc.trade.work.labor import Labor, Task
from calc.trade.work.tasks import Work

_SHEET = "Costs"
ONE_DOLLAR, ONE_EACH = exact(1, "$"), exact(1, "each")


class Tool(Section, title="Machines", each=TOOL, sheet=_SHEET):
    """A machine is there for as long as its own tasks take. A saw and a breaker have engines of their own."""

    task = line(
        "For the task",
        "",
        by_row(
            TOOL,
            "break out slab",
            "chip footings",
            "demolition saw cut",
            "place base rock",
            "mix bags",
            "drill dowels",
            "dig by machine",
        ),
        source="its own task",
    )
    other_task = line(
        "And for",
        "",
        by_row(
            TOOL,
            "break out slab",
            "chip footings",
            "saw-cut joints",
            "place base rock",
            "mix bags",
            "chip footings",
            "load by machine",
        ),
        source="another task of its own; the same again where it has one",
    )
    of_task = line("Hours of its task", "h", look_up(Task.hours, task), source="labor")
    of_other = line("Hours of the other", "h", look_up(Task.hours, other_task), source="labor")
    hours = line(
        "Hours of the machine",
        "h",
        by_row(
            TOOL,
            of_task,
            of_task,
            of_task + of_other,
            of_task,
            Work.mix_time,
            when(OnSite.power.is_("no"), of_task + of_other + Work.mix_time, 0),
            of_task + of_other,
        ),
        source="of its tasks; a mixer while bags are mixed, a generator for all that wants power where there is none",
    )
    days = line("Rental days", "each", round_up(hours / Rental.day), source="hours over a day, whole days")
    weeks = line(
        "Rental weeks",
        "each",
        round_up(days.count / Rental.week),
        source="rental days over a week, whole weeks",
    )
    half_known = line(
        "Half-day price is known", "", has_price(Rental.half_price, TOOL), source="1 when the house gives it"
    )
    day_known = line(
        "Day price is known", "", has_price(Rental.day_price, TOOL), source="1 when the house book gives it"
    )
    week_known = line(
        "Week price is known", "", has_price(Rental.week_price, TOOL), source="1 when the house book gives it"
    )


class RentalOption(Section, title="Ways of renting each machine", each=TOOL * RENTAL, sheet=_SHEET):
    """Side by side; one without a price, or half a day that is too short, cannot win."""

    way = line("Way of renting", "", row_word(RENTAL), source="half a day, days or weeks")
    count = line(
        "So many",
        "each",
        by_row(RENTAL, when(Tool.hours > 0, ONE_EACH, 0), Tool.days, Tool.weeks),
        source="for the hours of the machine",
    )
    each = line(
        "One costs", "$/each", by_row(RENTAL, Rental.half_price, Rental.day_price, Rental.week_price), source="Prices"
    )
    last_day = line(
        "Rental is good until",
        "day",
        by_row(
            RENTAL,
            by_row(TOOL, *map(last_day, Rental.half_price.prices)),
            by_row(TOOL, *map(last_day, Rental.day_price.prices)),
            by_row(TOOL, *map(last_day, Rental.week_price.prices)),
        ),
        source="Prices",
    )
    cost = line("Rental costs", "$", money(count * each), source="so many times the price")
    competes = line(
        "Can be taken",
        "",
        by_row(RENTAL, when(Tool.hours <= Rental.half_day, Tool.half_known, 0), Tool.day_known, Tool.week_known),
        source="1 with a price; half a day only for so many hours",
    )
    compared = line(
        "Rental compared",
        "$",
        when(competes > 0, cost, greatest(cost, TOOL) + ONE_DOLLAR),
        source="one that cannot be taken is put behind the dearest",
    )


class RentalChoice(Section, title="What is rented", each=TOOL, sheet=_SHEET):
    """The cheapest way that has a price; nothing for no hours."""

    row = line("Row of the way", "", argmin(RentalOption.compared, TOOL), source="least, first row wins")
    lacking = line(
        "Rental lacks a price",
        "",
        when(both(Tool.hours > 0, at(RentalOption.competes, row, of=TOOL) <= 0), 1, 0),
        source="1 when it is needed and the house book gives no price that it can take",
        adds=True,
    )
    way = line(
        "Rented by",
        "",
        when(both(Tool.hours > 0, lacking <= 0), at(RentalOption.way, row, of=TOOL), "none"),
        source="the cheapest way",
    )
    count = line(
        "Rented for",
        "each",
        when(lacking <= 0, at(RentalOption.count, row, of=TOOL), 0),
        source="half days, days or weeks",
    )
    each = line(
        "Each of them costs",
        "$/each",
        when(lacking <= 0, at(RentalOption.each, row, of=TOOL), 0),
        source="of the cheapest way",
    )
    last_day = line(
        "What is rented is good until", "day", at(RentalOption.last_day, row, of=TOOL), source="of that way"
    )
    cost = line(
        "Rental",
        "$",
        when(lacking <= 0, at(RentalOption.cost, row, of=TOOL), 0),
        source="the cheapest of its prices, to the cent",
        adds=True,
    )


class Equipment(Section, title="Equipment", sheet=_SHEET):
    """Rentals, bringing the mini-machine, and coming to the job: once a day, and once more for the sealer."""

    bring_price = price("Delivery of a mini-machine", "$/each", taxed=False, help="There and back, once a job.")
    mobilise_price = price(
        "Mobilise", "$/each", taxed=False, help="A day's way there and back, with tools and trailer."
    )

    brought = line(
        "Mini-machine is brought",
        "each",
        when(both(Digging.by.is_("machine"), Work.dug + Work.loose > 0), ONE_EACH, 0),
        source="once, where it is dug or loaded by machine",
    )
    bringing = line(
        "Delivery of the mini-machine", "$", money(brought * if_given(bring_price, 0)), source="once, there and back"
    )
    rental = line("Rentals", "$", total(RentalChoice.cost), source="sum of the machines")
    visits = line(
        "Days that the crew comes",
        "each",
        Labor.days + when(Site.sealer_coats > 0, 1, 0),
        source="days of the crew, and one more for the sealer, weeks after the pour",
    )
    mobilise = line(
        "Coming to the job", "$", money(visits * if_given(mobilise_price, 0)), source="days times the price of one"
    )
    cost = line("Equipment, cost", "$", rental + bringing + mobilise, source="rentals, delivery, coming to the job")
    known = line(
        "Prices of delivery and of coming are known",
        "",
        when(both(is_given(mobilise_price), either(brought <= 0, is_given(bring_price))), 1, 0),
        source="1 when the house book gives what is needed",
    )
    rentals_known = line(
        "Rentals are known",
        "",
        when(total(RentalChoice.lacking) > 0, 0, 1),
        source="1 when every machine that is needed has a price",
    )
