"""Which way of placing is taken: the cheapest of those that fit, unless a person names one."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.placing import CHEAPEST, Access
from calc.trade.inputs.pour import Ordering
from calc.trade.levels import METHOD
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.method_cost import MethodCost, Pump
from calc.trade.ordering.methods import Method, PlacingRate, TruckSplit
from calc.trade.ordering.plant import ChosenMix
from calc.trade.ordering.trucks import ONE_TRUCK
from calc.trade.ordering.weather import TruckClock

_SHEET = "Order and placing"
_ONE_DOLLAR, _ONE_HOUR = exact(1, "$"), exact(1, "h")
_LATE = "no way that is priced empties its trucks in time"
NOT_THERE = exact(12)
"""How far a way that the job does not allow is put back: behind every other."""


class MethodFit(Section, title="Which ways fit", each=METHOD, sheet=_SHEET):
    """A way fits when it can get there, when its prices are known, and when it empties every truck in time."""

    named = line(
        "Named by hand",
        "",
        by_row(
            METHOD,
            when(Access.method.is_("chute"), 1, 0),
            when(both(Access.method.is_("wheelbarrow"), PlacingRate.barrow > 0), 1, 0),
            when(Access.method.is_("pump"), 1, 0),
            when(both(Access.method.is_("bags"), Bags.yields > 0), 1, 0),
        ),
        source="placing method; not where there is no barrow, or no bag",
        adds=True,
    )
    named_row = line("Row named by hand", "", named * row_number(METHOD), source="0 where it is not named", adds=True)
    reaches = line(
        "It can be done",
        "",
        by_row(
            METHOD,
            when(Access.chute.is_("yes"), 1, 0),
            when(both(Access.wheelbarrow.is_("yes"), PlacingRate.barrow > 0), 1, 0),
            when(Access.pump.is_("yes"), 1, 0),
            when(both(Bags.can > 0, not_(Ordering.rule.is_("fixed"))), 1, 0),
        ),
        source="as the site allows; bags for a small pour, never where the order is fixed",
    )
    allowed = line("Allowed", "", largest(named, reaches), source="it can be done, or was named by hand")
    lacks_price = line(
        "Prices that it lacks",
        "",
        by_row(
            METHOD,
            1 - ChosenMix.known,
            1 - ChosenMix.known,
            (1 - ChosenMix.known) + (1 - Pump.known),
            when(is_given(Bags.bag_price), 0, 1),
        ),
        source="the mix, the pump, the bags",
    )
    lacks_waiting = line(
        "Waiting lacks its price",
        "",
        when(both(TruckSplit.waiting > 0, not_(is_given(MethodCost.waiting_price))), 1, 0),
        source="1 when a truck waits and the house book does not say what a minute costs",
    )
    late = line(
        "A truck is emptied too late",
        "",
        when(TruckSplit.longest * ONE_TRUCK > TruckClock.left, 1, 0),
        source="the fullest truck against the minutes left at the job",
    )
    put_back = line(
        "Put back by",
        "",
        (1 - allowed) * NOT_THERE + (lacks_price + lacks_waiting) * TWO + late,
        source="0 fits; 1 a truck is late; 2 for each price that lacks; 12 it cannot be done",
    )
    fits = line("Fits", "", when(put_back > 0, 0, 1), source="1 when nothing puts it back", adds=True)
    compared = line(
        "Cost compared",
        "$",
        when(equals(put_back, least(put_back)), MethodCost.cost, greatest(MethodCost.cost) + _ONE_DOLLAR),
        source="what fits better is cheaper than what fits less",
    )
    time = line("Hours compared", "h", rounded(Method.hours, 3), source="to the thousandth")
    tie = line(
        "Hours of the cheapest",
        "h",
        when(equals(compared, least(compared)), time, greatest(time) + _ONE_HOUR),
        source="ties go to the fewest hours, then to the order of the ways",
    )


class Placing(Section, title="The way that is taken", sheet=_SHEET):
    """The cheapest that fits. When none does, the one that lacks least is taken all the same."""

    by_hand = line("Row named by hand, if any", "", total(MethodFit.named_row), source="0 when none is named")
    row = line(
        "Row of the way",
        "",
        when(by_hand > 0, by_hand, argmin(MethodFit.tie)),
        source="named by hand, else the cheapest, the first row of equals",
    )
    name = line("Way of placing", "", at(Method.name, row), source="of that row")
    pouring = line("Row of the pouring", "", at(Method.pouring, row), source="1 from the truck, 2 through a pump")
    order = line("Order for the way", "yd3", at(Method.order, row), source="of that row")
    hours = line("Hours of the way", "h", at(Method.hours, row), source="of that row")
    cost = line("Cost of the way taken", "$", at(MethodCost.cost, row), source="of that row")
    bags = line("Placed by bags", "", at(Method.bags, row), source="1 when bags are mixed")
    put_back = line("The way is put back by", "", at(MethodFit.put_back, row), source="0 when it fits")


class RunnerUpFit(Section, title="What comes next", each=METHOD, sheet=_SHEET):
    """The same comparison without the way that is taken."""

    put_back = line(
        "Put back by, among the others",
        "",
        when(equals(row_number(METHOD), Placing.row), greatest(MethodFit.put_back) + 1, MethodFit.put_back),
        source="the way that is taken stands behind all others",
    )
    compared = line(
        "Cost compared, among the others",
        "$",
        when(equals(put_back, least(put_back)), MethodCost.cost, greatest(MethodCost.cost) + _ONE_DOLLAR),
        source="what fits better is cheaper than what fits less",
    )
    tie = line(
        "Hours of the next",
        "h",
        when(equals(compared, least(compared)), MethodFit.time, greatest(MethodFit.time) + _ONE_HOUR),
        source="ties go to the fewest hours, then to the order of the ways",
    )


class RunnerUpMethod(Section, title="The next way", sheet=_SHEET):
    """What would be taken if the first were not to be had."""

    row = line("Row of the next way", "", argmin(RunnerUpFit.tie), source="least, first row wins")
    name = line("Next way", "", at(Method.name, row), source="of that row")
    fits = line("The next way fits", "", at(MethodFit.fits, row), source="of that row")
    more = line(
        "The next way costs more by",
        "$",
        when(fits > 0, at(MethodCost.cost, row) - Placing.cost, 0),
        source="cost of the next less cost of the way taken; less than 0 when that one was named by hand or lacks more",
    )


class PlacingWords(Section, title="Why this way of placing", sheet=_SHEET):
    """In words, for the front page."""

    unfit = line(
        "Why no way fits",
        "",
        when(
            Placing.put_back >= NOT_THERE,
            "the job allows no way of placing",
            when(Placing.put_back > 1, "the house book lacks a price, so that cost could not decide", _LATE),
        ),
        source="by what the way is put back that is put back least",
    )
    by_cost = line(
        "Why this way, by cost",
        "",
        when(
            Placing.put_back > 0,
            joined("by ", Placing.name, ": ", unfit),
            joined(
                "by ", Placing.name, ": the cheapest of ", count_of(total(MethodFit.fits), "each"), " way(s) that fit"
            ),
        ),
        source="cost of the ways that fit",
    )
    why = line(
        "Why this way of placing",
        "",
        when(
            Placing.by_hand > 0,
            joined("by ", Placing.name, ": named by hand; see Measured for the reason"),
            when(
                Access.method.is_(CHEAPEST),
                by_cost,
                joined(Access.method, " was named by hand and cannot be done; ", by_cost),
            ),
        ),
        source="placing method, else cost",
    )
    next_way = line(
        "What the next way is",
        "",
        when(
            RunnerUpMethod.fits > 0,
            joined(
                "next comes ",
                RunnerUpMethod.name,
                when(abs_(RunnerUpMethod.more) > 0, "; the number is what it costs more", "; it costs the same"),
            ),
            "no other way fits",
        ),
        source="the next of the ways that fit",
    )
