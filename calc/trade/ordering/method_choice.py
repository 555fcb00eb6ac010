"""Placing method: the cheapest of those that fit, unless the job names one."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.placing import CHEAPEST, Access
from calc.trade.inputs.pour import Ordering
from calc.trade.levels import METHOD
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.method_cost import MethodCost, Pump
from calc.trade.ordering.methods import Method, TruckSplit
from calc.trade.ordering.placing_rates import PlacingRate
from calc.trade.ordering.plant import ChosenMix
from calc.trade.ordering.trucks import ONE_TRUCK
from calc.trade.ordering.weather import DischargeLimit

_SHEET = "Order and placing"
_ONE_DOLLAR, _ONE_HOUR = exact(1, "$"), exact(1, "h")
_LATE = "no priced placing method empties its trucks in time"


class MethodFit(Section, title="Placing methods that fit", each=METHOD, sheet=_SHEET):
    """A method fits if it has access, if its prices are known, and if it empties every truck in time."""

    tie = factor(
        "Placing methods tied, cost within", "$", 1, low=0, high=25, source="company policy: then the faster one"
    )

    by_hand = line(
        "Chosen by hand",
        "",
        by_row(
            METHOD,
            when(Access.method.is_("chute"), 1, 0),
            when(both(Access.method.is_("wheelbarrow"), PlacingRate.wheelbarrow > 0), 1, 0),
            when(Access.method.is_("pump"), 1, 0),
            when(both(Access.method.is_("bags"), Bags.bag_yield > 0), 1, 0),
        ),
        source="placing method of the job; not without wheelbarrows, or without a bag yield",
    )
    by_hand_row = line(
        "Row of the method chosen by hand",
        "",
        by_hand * row_number(METHOD),
        source="0 if it is not chosen by hand",
        adds=True,
    )
    has_access = line(
        "Access for the method",
        "",
        by_row(
            METHOD,
            when(Access.chute.is_("yes"), 1, 0),
            when(both(Access.wheelbarrow.is_("yes"), PlacingRate.wheelbarrow > 0), 1, 0),
            when(Access.pump.is_("yes"), 1, 0),
            when(both(Bags.possible > 0, not_(Ordering.rule.is_("fixed"))), 1, 0),
        ),
        source="access on site; bags for a small pour, never with a fixed order",
    )
    allowed = line(
        "Method allowed", "", largest(by_hand, has_access), source="1 if it has access, or was chosen by hand"
    )
    missing_prices = line(
        "Missing prices",
        "",
        by_row(
            METHOD,
            1 - ChosenMix.known,
            1 - ChosenMix.known,
            (1 - ChosenMix.known) + (1 - Pump.known),
            when(is_given(Bags.bag_price), 0, 1),
        ),
        source="of the mix, the pump, or the bags",
    )
    missing_standby_price = line(
        "Standby price is missing",
        "",
        when(both(TruckSplit.standby > 0, not_(is_given(MethodCost.standby_price))), 1, 0),
        source="1 if a truck waits and the company book has no standby price",
    )
    over_limit = line(
        "Over the discharge limit",
        "",
        when(TruckSplit.longest_unloading * ONE_TRUCK > DischargeLimit.time_left, 1, 0),
        source="1 if the largest load takes longer than the time left on site",
    )
    shortcomings = line(
        "Shortcomings",
        "",
        (missing_prices + missing_standby_price) * TWO + over_limit,
        source="1 for a truck over the discharge limit, 2 for each missing price",
    )
    points_against = line(
        "Points against",
        "",
        shortcomings + when(allowed > 0, 0, greatest(shortcomings) + 1),
        source="shortcomings; a method that is not allowed is ranked behind all others",
    )
    fits = line(
        "Method fits", "each", when(points_against > 0, 0, 1), source="1 if there are no points against it", adds=True
    )
    compared = line(
        "Method cost compared",
        "$",
        when(
            equals(points_against, least(points_against)),
            MethodCost.cost,
            greatest(MethodCost.cost) + tie + _ONE_DOLLAR,
        ),
        source="cost if the method has the fewest points against it, else behind the highest cost and a tie with it",
    )
    time = line("Placing time compared", "h", rounded(Method.hours, 3), source="to 3 decimals")
    tie_breaker = line(
        "Placing time, as tie-breaker",
        "h",
        when(compared <= least(compared) + tie, time, greatest(time) + _ONE_HOUR),
        source="near ties go to the shortest time, then to the first method",
    )


_BY_HAND = total(MethodFit.by_hand_row)
"""The row of the method chosen by hand; 0 if none is."""


class Placing(Section, title="Placing method chosen", sheet=_SHEET):
    """The cheapest method that fits. If none fits, the one with the fewest points against it."""

    row = line(
        "Row of the method",
        "",
        when(_BY_HAND > 0, _BY_HAND, argmin(MethodFit.tie_breaker)),
        source="chosen by hand, else the cheapest, first row on a tie",
    )
    name = line("Placing method", "", at(Method.name, row), source="looked up by row")
    discharge = line(
        "Row of its discharge",
        "",
        at(Method.discharge, row),
        source="1 from the truck, 2 through a pump; looked up by row",
    )
    is_bags = line("Mixed from bags", "", at(Method.is_bags, row), source="1 if bags are mixed")
    allowed = line("Choice is allowed", "", at(MethodFit.allowed, row), source="looked up by row")
    points_against = line("Points against the choice", "", at(MethodFit.points_against, row), source="0 if it fits")


class RunnerUpFit(Section, title="Runner-up placing methods", each=METHOD, sheet=_SHEET):
    """The same comparison without the method chosen."""

    points_against = line(
        "Points against, among the others",
        "",
        when(equals(row_number(METHOD), Placing.row), greatest(MethodFit.points_against) + 1, MethodFit.points_against),
        source="the method chosen is ranked behind all others",
    )
    compared = line(
        "Method cost compared, among the others",
        "$",
        when(
            equals(points_against, least(points_against)),
            MethodCost.cost,
            greatest(MethodCost.cost) + MethodFit.tie + _ONE_DOLLAR,
        ),
        source="cost if the method has the fewest points against it, else behind the highest cost and a tie with it",
    )
    tie_breaker = line(
        "Placing time of the runner-up, as tie-breaker",
        "h",
        when(compared <= least(compared) + MethodFit.tie, MethodFit.time, greatest(MethodFit.time) + _ONE_HOUR),
        source="near ties go to the shortest time, then to the first method",
    )


class RunnerUpMethod(Section, title="Runner-up placing method", sheet=_SHEET):
    """The best of the other methods."""

    row = line("Row of the runner-up method", "", argmin(RunnerUpFit.tie_breaker), source="lowest, first row on a tie")
    fits = line("Runner-up fits", "each", at(MethodFit.fits, row), source="looked up by row")
    costs_more = line(
        "Runner-up costs more by",
        "$",
        when(fits > 0, at(MethodCost.cost, row) - at(MethodCost.cost, Placing.row), 0),
        source="cost of the runner-up less cost of the method chosen; negative if a dearer method was chosen",
    )


class PlacingWords(Section, title="Reason for the placing method", sheet=_SHEET):
    """In words, for the Bid sheet."""

    no_fit_reason = line(
        "Reason that no method fits",
        "",
        when(
            Placing.allowed <= 0,
            "the job allows no placing method",
            when(Placing.points_against > 1, "the company book has no price, so cost could not decide", _LATE),
        ),
        source="by the points against the choice",
    )
    cost_reason = line(
        "Reason, by cost",
        "",
        when(
            Placing.points_against > 0,
            joined(Placing.name, ": ", no_fit_reason),
            when(
                total(MethodFit.fits) > 1,
                joined(Placing.name, ": cheapest of the ", total(MethodFit.fits), " methods that fit"),
                joined(Placing.name, ": the only method that fits"),
            ),
        ),
        source="cost of the methods that fit",
    )
    reason = line(
        "Reason for the placing method",
        "",
        when(
            _BY_HAND > 0,
            joined(Placing.name, ": chosen by hand; see Measured for the reason"),
            when(
                Access.method.is_(CHEAPEST),
                cost_reason,
                joined(Access.method, " was chosen by hand and is not possible; ", cost_reason),
            ),
        ),
        source="placing method of the job, else cost",
    )
    runner_up = line(
        "Runner-up method in words",
        "",
        when(
            RunnerUpMethod.fits > 0,
            joined(
                "runner-up: ",
                at(Method.name, RunnerUpMethod.row),
                when(abs_(RunnerUpMethod.costs_more) > 0, "; the number is what it costs more", "; same cost"),
            ),
            "no other method fits",
        ),
        source="the cheapest of the other methods that fit",
    )
