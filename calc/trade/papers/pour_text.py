"""What the papers say of the haul and of the pour: hours as a clock shows them, the mix as it is phoned in."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.loads import Hauled
from calc.trade.inputs.job import Disposal, Job
from calc.trade.inputs.papers import PaperFacts
from calc.trade.inputs.placing import Access
from calc.trade.inputs.pour import Mixture
from calc.trade.inputs.removal import Plant
from calc.trade.levels import BOARD, DISPOSAL, HAULED, TRUCK
from calc.trade.ordering.methods import Method
from calc.trade.ordering.order import Order, TruckLoad
from calc.trade.ordering.pour import Pour, PourCost
from calc.trade.papers.area_text import on_tape
from calc.trade.takeoff.forms import Board

_HAUL, _POUR = "Dig and haul", "Order and placing"
SIXTY, ONE_MINUTE, ONE_INCH, ONE_FOOT = exact(60, "min"), exact(1, "min"), exact(1, "in"), exact(1, "ft")
TEN = exact(60) / exact(6)
"""Minutes from which a clock needs no 0 before them."""

HOUR = named_rows("hour", "opens", "closes", "first leaves", "last is there")
"""An hour of the day that a driver minds."""

MIX_SIZE = named_rows("size in the mix", "slump", "largest stone")
"""A size that the plant is told."""


def on_clock(called: str, title: str, level: Level, hours: Expr, sheet: str) -> tuple[type[Section], Line]:
    """A section that writes hours of the day as a clock shows them, and the line of it that says them; 0 is a dash."""

    class Clock(Section, title=title, each=level, sheet=sheet, called=called):
        """To the minute."""

        time = line("Hour of the day", "h", hours, source="where it is computed; 0 where it is not known")
        minutes = line("Minutes of the day", "min", rounded(time * MIN_PER_H, 0), source="the nearest")
        hour = line("Whole hours", "", round_down(minutes / SIXTY), source="of the minutes")
        past = line("Minutes past", "", (minutes - hour * SIXTY) / ONE_MINUTE, source="what is left")
        said = line(
            "As a clock shows it",
            "",
            when(
                time > 0,
                joined(count_of(hour, "each"), when(past < TEN, ":0", ":"), count_of(past, "each")),
                "-",
            ),
            source="hours and minutes",
        )

    return Clock, Clock.said


class SiteHours(Section, title="When the sites open", each=DISPOSAL, sheet=_HAUL):
    """0 where the house book does not say."""

    opens = line("Opens", "h", if_given(Disposal.opens, 0), source="house book")


def _of_site(value: Line) -> Expr:
    return when(Hauled.site_row > 0, at(value, largest(1, Hauled.site_row)), 0)


HaulClock, _HAUL_SAID = on_clock(
    "HaulClock",
    "Hours of the haul",
    HAULED * HOUR,
    by_row(HOUR, _of_site(SiteHours.opens), Hauled.closes, Hauled.first_departure, Hauled.last_arrival),
    _HAUL,
)


class HaulWord(Section, title="Each pile in words", each=HAULED, sheet=_HAUL):
    """What the driver reads of it; piles leave in this order, so that what must stay clean leaves first."""

    goes = line(
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
    fill = line(
        "Fill line in words",
        "",
        when(
            both(Hauled.loads > 0, Hauled.fill_height > 0),
            joined(count_of(round_down(Hauled.fill_height / ONE_INCH), "each"), '"'),
            "-",
        ),
        source="whole inches over the floor of the bed, never above the payload",
    )
    opens = line("Opens at", "", at(_HAUL_SAID, row_called(HOUR, "opens"), of=HAULED), source="house book")
    closes = line("Closes at", "", at(_HAUL_SAID, row_called(HOUR, "closes"), of=HAULED), source="house book")
    leaves = line("First leaves at", "", at(_HAUL_SAID, row_called(HOUR, "first leaves"), of=HAULED), source="haul")
    there = line("Last there at", "", at(_HAUL_SAID, row_called(HOUR, "last is there"), of=HAULED), source="haul")
    spoils = line(
        "Keep out of it",
        "",
        when(
            Hauled.loads > 0,
            by_row(
                HAULED,
                "soil on the roots, stones, wire, painted or treated wood, concrete",
                "turf, roots, brush, wood, concrete, bricks, anything that is not soil",
                "soil, wood, brush, long bars, bricks, asphalt",
                "what the gate refuses: ask before the first load",
            ),
            "-",
        ),
        source="common practice, no source: the gate's own list wins",
    )


class PourWord(Section, title="The pour in words", sheet=_POUR):
    """What the plant is told, beside the numbers."""

    least_gap = factor(
        "Least time between trucks", "min", 20, low=10, high=40, source="common practice, no source: ask the plant"
    )
    usual_stone = factor(
        "Largest stone of a slab", "in", 0.75, low=0.375, high=1, source="common practice, no source: 3/4 to 1 in"
    )
    pump_stone = factor(
        "Largest stone through a small pump", "in", 0.375, low=0.375, high=0.5, source="common practice, no source"
    )
    usual_air = factor(
        "Air in the mix where it freezes",
        "%",
        6,
        low=4.5,
        high=7.5,
        source="common practice, from memory: 6, give or take 1.5; ask the plant",
    )

    gap = line(
        "Between trucks",
        "min",
        when(Order.trucks > 1, largest(PourCost.longest_unloading, least_gap), 0),
        source="the longest unloading, and the least time; 0 for one truck",
    )
    stone = line(
        "Largest stone ordered",
        "in",
        if_given(PaperFacts.stone, when(at(Method.is_pump, Pour.row) > 0, pump_stone, usual_stone)),
        source="typed, else the usual one; smaller through a pump",
    )
    air = line("Air ordered", "%", when(Mixture.air.is_("yes"), usual_air, 0), source="only where it was asked for")
    hold = line(
        "Balance in words",
        "",
        when(
            Order.trucks > 1,
            "Hold the last truck for our balance call; what it brings may change.",
            when(
                Order.trucks > 0, "One truck: no balance call.", "Nothing from the plant: bags are mixed on the site."
            ),
        ),
        source="trucks",
    )
    fiber = line(
        "Fiber in words",
        "",
        when(Job.fiber.is_("none"), "no fiber", joined(Job.fiber, " fiber, whole bags in each truck")),
        source="fiber of the job",
    )
    water = line(
        "Water in words",
        "",
        when(
            Job.caps > 0,
            joined(
                count_of(Job.caps, "each"),
                " irrigation line(s) are capped; the water is shut off at its source by ",
                PaperFacts.water,
                " before work begins.",
            ),
            "No irrigation line is capped.",
        ),
        source="caps, and who shuts the water off",
    )
    barrows = line(
        "Barrows to load",
        "each",
        when(is_word(Pour.method, "barrow"), Access.barrows, 0),
        source="where concrete is wheeled",
    )
    plants = line("Plants taken out", "each", total(Plant.count), source="all kinds")


MixSize, _MIX_SAID = on_tape(
    "MixSize", "Sizes in the mix", MIX_SIZE, by_row(MIX_SIZE, PaperFacts.slump, PourWord.stone), _POUR
)


class MixWord(Section, title="Sizes in the mix, in words", sheet=_POUR):
    """As the plant hears them."""

    slump = line("Slump in words", "", at(_MIX_SAID, row_called(MIX_SIZE, "slump")), source="as typed")
    stone = line(
        "Largest stone in words", "", at(_MIX_SAID, row_called(MIX_SIZE, "largest stone")), source="as ordered"
    )


class Arrival(Section, title="When each truck comes", each=TRUCK, sheet=_POUR, slots_for=Order.trucks):
    """One after the other, as far apart as the longest of them takes to unload."""

    after = line(
        "After the first truck",
        "min",
        when(TruckLoad.in_use > 0, (row_number(TRUCK) - 1) * PourWord.gap, 0),
        source="number of the truck less one, times the time between trucks",
    )
    hour = line(
        "Comes at, hour of the day",
        "h",
        when(
            both(TruckLoad.in_use > 0, is_given(PaperFacts.arrives)),
            if_given(PaperFacts.arrives, 0) + after / MIN_PER_H,
            0,
        ),
        source="first truck, as typed; 0 where nobody typed it",
    )
    held = line(
        "Held",
        "",
        when(
            both(Order.trucks > 1, equals(row_number(TRUCK), Order.trucks.count)),
            "hold",
            "-",
        ),
        source="the last of several",
    )


ArrivalClock, COMES_AT = on_clock("ArrivalClock", "Arrival by the clock", TRUCK, Arrival.hour, _POUR)


class BoardWord(Section, title="Boards to load", each=BOARD, sheet=_POUR):
    """Whole feet."""

    feet = line("Boards to load", "ft", round_up(Board.length, to=ONE_FOOT), source="up to the foot")
