"""Text of the haul and the pour for the papers: times of day, disposal sites, the mix, the trucks."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.loads import Hauled
from calc.trade.inputs.job import Disposal, Job
from calc.trade.inputs.papers import PaperFacts
from calc.trade.inputs.pour import Mixture
from calc.trade.inputs.removal import Plant
from calc.trade.levels import BOARD, DISPOSAL, HAULED, TRUCK
from calc.trade.ordering.finish_window import FinishWindow
from calc.trade.ordering.methods import Method
from calc.trade.ordering.order import Order, TruckLoad
from calc.trade.ordering.plant_fees import PlantFees
from calc.trade.ordering.pour import Pour, PourCost
from calc.trade.papers.area_text import feet_and_inches
from calc.trade.takeoff.forms import Board
from calc.trade.work.pour_visit import POUR

_HAUL, _POUR = "Dig and haul", "Order and placing"
SIXTY, ONE_MINUTE, ONE_INCH, ONE_FOOT = exact(60, "min"), exact(1, "min"), exact(1, "in"), exact(1, "ft")
TEN = exact(60) / exact(6)
"""Minutes from which a time of day needs no 0 before them."""

HOUR = named_rows("hour", "opens", "closes", "first leaves", "last arrives")
"""A time of day that a driver needs."""

MIX_SIZE = named_rows("size in the mix", "slump", "aggregate")
"""A size that the plant needs."""


def clock_time(called: str, title: str, level: Level, hours: Expr, sheet: str) -> tuple[type[Section], Line]:
    """A section that writes hours of the day as times, such as 7:30, and its line of text; 0 is a dash."""

    class Clock(Section, title=title, each=level, sheet=sheet, called=called):
        """To the minute."""

        time = line("Hour of the day", "h", hours, source="where it is computed; 0 where it is not known")
        minutes = line("Minutes of the day", "min", rounded(time * MIN_PER_H, 0), source="to the nearest minute")
        hour = line("Whole hours", "", round_down(minutes / SIXTY), source="of the minutes")
        past_hour = line("Minutes past the hour", "", (minutes - hour * SIXTY) / ONE_MINUTE, source="remainder")
        text = line(
            "Time of day",
            "",
            when(
                time > 0,
                joined(count_of(hour, "each"), when(past_hour < TEN, ":0", ":"), count_of(past_hour, "each")),
                "-",
            ),
            source="hours and minutes",
        )

    return Clock, Clock.text


class SiteHours(Section, title="Opening hours of disposal sites", each=DISPOSAL, sheet=_HAUL):
    """0 where the company book does not give them."""

    opens = line("Opens", "h", if_given(Disposal.opens, 0), source="company book")


def _of_site(value: Line) -> Expr:
    return when(Hauled.site_row > 0, at(value, largest(1, Hauled.site_row)), 0)


def _of_day(day: Line) -> Expr:
    """Such as ``, day 2``; nothing on the first day."""
    return when(day > 1, joined(", day ", count_of(day, "each")), "")


PileTime, _TIME_TEXT = clock_time(
    "PileTime",
    "Times of the haul",
    HAULED * HOUR,
    by_row(HOUR, _of_site(SiteHours.opens), Hauled.closes, Hauled.first_departure, Hauled.last_arrival),
    _HAUL,
)


class PileText(Section, title="Text of each pile", each=HAULED, sheet=_HAUL):
    """For the driver; piles leave in this order, so that what must stay clean leaves first."""

    destination = line(
        "Goes to",
        "",
        when(
            Hauled.loads > 0,
            joined(
                Hauled.site_name,
                when(
                    Hauled.largest_piece > 0,
                    joined(": no piece over ", count_of(Hauled.largest_piece / ONE_INCH, "each"), " in"),
                    "",
                ),
            ),
            "-",
        ),
        source="the cheapest site of its kind, and the largest piece of concrete that it takes",
    )
    load_line = line(
        "Load line text",
        "",
        when(
            both(Hauled.loads > 0, Hauled.fill_height > 0),
            joined(count_of(round_down(Hauled.fill_height / ONE_INCH), "each"), '"'),
            "-",
        ),
        source="whole inches above the bed floor, never above the payload",
    )
    opens = line("Opens at", "", at(_TIME_TEXT, row_called(HOUR, "opens"), of=HAULED), source="company book")
    closes = line("Closes at", "", at(_TIME_TEXT, row_called(HOUR, "closes"), of=HAULED), source="company book")
    first_leaves = line(
        "First load leaves at",
        "",
        joined(at(_TIME_TEXT, row_called(HOUR, "first leaves"), of=HAULED), _of_day(Hauled.departure_day)),
        source="clock of the loads; the day, if it is not the first",
    )
    last_arrives = line(
        "Last load arrives at",
        "",
        joined(at(_TIME_TEXT, row_called(HOUR, "last arrives"), of=HAULED), _of_day(Hauled.arrival_day)),
        source="clock of the loads; the day, if it is not the first",
    )
    not_accepted = line(
        "Not accepted",
        "",
        when(
            Hauled.loads > 0,
            by_row(
                HAULED,
                "soil on the roots, stones, wire, painted or treated wood, concrete",
                "turf, roots, brush, wood, concrete, bricks, anything that is not soil",
                "soil, wood, brush, long bars, bricks, asphalt",
                "whatever the site refuses: ask before the first load",
            ),
            "-",
        ),
        source="common practice, no source: the site's own list governs",
    )


class FinishingTime(Section, title="Finishing time", sheet=_POUR):
    """Nobody knows it until the temperature of the concrete is typed."""

    minutes = line(
        "Finishing window, whole minutes",
        "min",
        rounded(POUR.window * MIN_PER_H, 0),
        source="finishing window on site, to the nearest minute",
    )
    hours = line("Finishing window, whole hours", "", round_down(minutes / SIXTY), source="of the minutes")


class PourText(Section, title="Text of the pour", sheet=_POUR):
    """For the plant and the crew."""

    min_truck_spacing = factor(
        "Time between trucks, min", "min", 20, low=10, high=40, source="common practice, no source: ask the plant"
    )
    usual_aggregate = factor(
        "Maximum aggregate size, slab", "in", 0.75, low=0.375, high=1, source="common practice, no source: 3/4 to 1 in"
    )
    pump_aggregate = factor(
        "Maximum aggregate size, small pump", "in", 0.375, low=0.375, high=0.5, source="common practice, no source"
    )
    usual_air = factor(
        "Entrained air in freeze-thaw exposure",
        "%",
        6,
        low=4.5,
        high=7.5,
        source="common practice, from memory: 6, give or take 1.5; ask the plant",
    )

    truck_spacing = line(
        "Time between trucks",
        "min",
        when(Order.trucks > 1, largest(PourCost.longest_unloading, min_truck_spacing), 0),
        source="longest unloading, not below the minimum; 0 for one truck",
    )
    aggregate = line(
        "Maximum aggregate size ordered",
        "in",
        if_given(PaperFacts.aggregate_size, when(at(Method.is_pump, Pour.row) > 0, pump_aggregate, usual_aggregate)),
        source="as typed, otherwise the usual size; smaller for a pump",
    )
    air = line("Air ordered", "%", when(Mixture.air.is_("yes"), usual_air, 0), source="where entrained air is ordered")
    balance = line(
        "Balance load text",
        "",
        when(
            Order.trucks > 1,
            "Hold the last truck for our balance (clean-up) load; its quantity may change.",
            when(Order.trucks > 0, "One truck: no balance load.", "No ready-mix: bags are mixed on site."),
        ),
        source="trucks",
    )
    fiber = line(
        "Fiber text",
        "",
        when(
            Job.fiber.is_("none"),
            "no fiber",
            joined(
                Job.fiber,
                when(
                    both(PlantFees.puts_in_fiber > 0, Order.quantity > 0),
                    " fiber, put in at the plant",
                    " fiber, whole bags in each truck",
                ),
            ),
        ),
        source="fiber of the job",
    )
    shutoff = line(
        "Water shutoff text",
        "",
        when(
            Job.lines_to_cap > 0,
            joined(
                count_of(Job.lines_to_cap, "each"),
                when(Job.lines_to_cap > 1, " irrigation lines are", " irrigation line is"),
                " capped; water is shut off at the source by ",
                PaperFacts.water,
                ".",
            ),
            "No irrigation line is capped.",
        ),
        source="irrigation lines to cap, and who shuts the water off",
    )
    finish_window = line(
        "Finishing window text",
        "",
        when(
            FinishWindow.known > 0,
            joined(
                count_of(FinishingTime.hours, "each"),
                " h ",
                count_of((FinishingTime.minutes - FinishingTime.hours * SIXTY) / ONE_MINUTE, "each"),
                " min",
            ),
            "not known",
        ),
        source="hours and minutes, where the temperature of the concrete was typed",
    )
    plants = line("Plants removed", "each", total(Plant.quantity), source="all kinds")


MixSize, _MIX_TEXT = feet_and_inches(
    "MixSize", "Sizes in the mix", MIX_SIZE, by_row(MIX_SIZE, PaperFacts.slump, PourText.aggregate), _POUR
)


class MixText(Section, title="Text of the sizes in the mix", sheet=_POUR):
    """For the plant."""

    slump = line("Slump text", "", at(_MIX_TEXT, row_called(MIX_SIZE, "slump")), source="as typed")
    aggregate = line(
        "Maximum aggregate size text", "", at(_MIX_TEXT, row_called(MIX_SIZE, "aggregate")), source="as ordered"
    )


class Arrival(Section, title="Arrival of each truck", each=TRUCK, sheet=_POUR, slots_for=Order.trucks):
    """One after another, as far apart as the longest unloading takes."""

    after_first = line(
        "After the first truck",
        "min",
        when(TruckLoad.in_use > 0, (row_number(TRUCK) - 1) * PourText.truck_spacing, 0),
        source="number of the truck less one, times the time between trucks",
    )
    hour = line(
        "Arrives at, hour of the day",
        "h",
        when(
            both(TruckLoad.in_use > 0, is_given(PaperFacts.arrives)),
            if_given(PaperFacts.arrives, 0) + after_first / MIN_PER_H,
            0,
        ),
        source="first truck, as typed; 0 where nobody typed it",
    )
    hold = line(
        "Hold",
        "",
        when(
            both(Order.trucks > 1, equals(row_number(TRUCK), Order.trucks.count)),
            "hold",
            "-",
        ),
        source="the last of several trucks",
    )


ArrivalTime, ARRIVES_AT = clock_time("ArrivalTime", "Arrival times", TRUCK, Arrival.hour, _POUR)


class BoardText(Section, title="Form lumber to load", each=BOARD, sheet=_POUR):
    """Whole feet."""

    feet = line("Form lumber to load", "ft", round_up(Board.length, to=ONE_FOOT), source="rounded up to a foot")
