"""The finish window: how long the concrete can be worked at its temperature, against how long it is worked."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.placing import Forecast
from calc.trade.inputs.pour import Crew, Mixture
from calc.trade.levels import COOLING
from calc.trade.ordering.order import Load, Order
from calc.trade.ordering.pour import Pour
from calc.trade.takeoff.geometry import Slab

_SHEET = "Order and placing"
_FIRST = exact(1)


class WorkingTime(Section, title="How long concrete can be worked", each=COOLING, sheet=_SHEET):
    """A table of a few temperatures, straight lines between them, held at its ends."""

    warmth = factors(
        "Concrete at", "F", 50, 60, 70, 80, 90, source="steps of the table: 10 F apart, as the trade speaks of it"
    )
    workable = factors(
        "Time to finish", "h", 5.5, 4.5, 3.5, 2.75, 2, source="common practice, no source: ask the plant"
    )

    cooler = line("The row before", "", largest(_FIRST, row_number(COOLING) - 1), source="the first has none")
    step = line("Warmer than the row before by", "F", warmth - at(warmth, cooler), source="0 in the first row")
    beyond = line(
        "Concrete is warmer than the row before by",
        "F",
        largest(0, smallest(step, if_given(Forecast.concrete, 0) - at(warmth, cooler))),
        source="as far as this row goes",
    )
    lost = line(
        "Time lost in this row",
        "h",
        when(step > 0, (at(workable, cooler) - workable) * beyond / step, 0),
        source="a straight line from row to row",
        adds=True,
    )


class FinishWindow(Section, title="Time to finish", sheet=_SHEET):
    """What is placed first sets first: the largest truck must be placed and finished before it is too stiff."""

    hastened = factor(
        "Time to finish with an accelerator", "%", 75, low=50, high=100, source="common practice, no source"
    )
    delayed = factor("Time that a retarder adds", "h", 1, low=0.5, high=3, source="common practice, no source")
    pace = factor(
        "Finishing pace", "ft2/h/person", 80, low=40, high=120, source="common practice, no source: a finisher's hour"
    )

    known = line(
        "Concrete temperature is known", "", when(is_given(Forecast.concrete), 1, 0), source="1 when it was typed"
    )
    plain = line(
        "Time to finish, without admixtures",
        "h",
        at(WorkingTime.workable, _FIRST) - total(WorkingTime.lost),
        source="time at the coolest row less what is lost row by row",
    )
    by_mix = line(
        "Time to finish, with admixtures",
        "h",
        when(Mixture.accelerator.is_("yes"), plain * hastened / PERCENT, plain)
        + when(Mixture.retarder.is_("yes"), delayed, 0),
        source="shorter with an accelerator, longer with a retarder",
    )
    share = line(
        "Share of the largest truck",
        "",
        when(Order.quantity > 0, greatest(Load.yards) / Order.quantity, 1),
        source="of the order; bags are one lot",
    )
    finishing = line(
        "Finishing all of it",
        "h",
        total(Slab.net_area) / (pace * Crew.finishing),
        source="area over what the finishers do in an hour",
    )
    needed = line(
        "Time that the largest truck takes",
        "h",
        share * (Pour.hours + finishing),
        source="its share of placing and of finishing",
    )
    lacking = line(
        "Time to finish lacks",
        "h",
        when(known > 0, largest(0, needed - by_mix), 0),
        source="0 where it is enough, or where no temperature was typed",
    )
