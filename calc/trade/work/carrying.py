"""Carrying by wheelbarrow: how far, how fast, and what a long way adds to loading out and to the base."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Site
from calc.trade.inputs.placing import WITH_WET_SOIL, Access, WheelbarrowRoute
from calc.trade.inputs.site import AreaUse
from calc.trade.inputs.work import Digging
from calc.trade.levels import AREA

_SHEET = "Dig and haul"


class RouteSlope(Section, title="Slopes on the route", each=AREA, sheet=_SHEET):
    """The route runs along the work, so the work's slope is taken for it unless its own is typed."""

    slope = line(
        "Running slope of the area, if typed", "%", if_given(AreaUse.running_slope, 0), source="input; 0 if not typed"
    )


class Carrying(Section, title="Wheelbarrow route", sheet=_SHEET):
    """Loading rates hold for a short way; what is farther is walked both ways with each wheelbarrow."""

    usual_distance = factor(
        "Wheelbarrow distance, if not typed", "ft", 50, low=20, high=150, source="common practice, no source"
    )
    travel_speed = factor(
        "Wheelbarrow travel speed",
        "ft/min",
        150,
        low=100,
        high=200,
        source="common practice, no source; a cost handbook of 1908, partly seen in print: 200 both ways",
    )
    barrow_volume = factor(
        "Concrete per wheelbarrow",
        "ft3",
        2.75,
        low=2,
        high=4,
        source="common practice, no source; a cost handbook of 1908, partly seen in print: 3 on the level, 2 uphill",
    )
    poor_route_share = factor(
        "Rate on a muddy or steep route", "%", 70, low=50, high=100, source="common practice, no source: applied once"
    )
    steep_grade = factor("Steep route, grade above", "%", 5, low=3, high=10, source="common practice, no source")
    free_distance = factor(
        "Distance that loading rates include", "ft", 50, low=25, high=100, source="common practice, no source"
    )
    loose_rock = factor(
        "Base rock density, loose", "ton/yd3", 1.4, low=1.3, high=1.5, source="common practice, no source"
    )

    distance = line(
        "Wheelbarrow distance used",
        "ft",
        if_given(WheelbarrowRoute.distance, usual_distance),
        source="input, else the usual distance",
    )
    spoil_distance = line(
        "Wheelbarrow distance used, spoil and base",
        "ft",
        if_given(Access.spoil_distance, distance),
        source="input, else that of the concrete",
    )
    grade = line(
        "Route grade used",
        "%",
        if_given(Access.grade, greatest(RouteSlope.slope)),
        source="input, else the steepest running slope typed",
    )
    muddy = line(
        "Route is muddy",
        "",
        when(either(Access.muddy.is_("yes"), both(Access.muddy.is_(WITH_WET_SOIL), Site.moisture.is_("wet"))), 1, 0),
        source="input, else 1 if the soil is wet",
    )
    route_factor = line(
        "Route factor",
        "",
        when(either(muddy > 0, grade > steep_grade), poor_route_share / PERCENT, 1),
        source="reduced once if the route is muddy, steep or both",
    )
    extra_distance = line(
        "Distance beyond the loading rates",
        "ft",
        when(Digging.by.is_("hand"), largest(0, spoil_distance - free_distance), 0),
        source="distance of the spoil less what the rates include; none with a machine",
    )
    hours_per_yard = line(
        "Carrying time per loose yard",
        "h/yd3",
        FT3_PER_YD3 * TWO * extra_distance / (barrow_volume * travel_speed * MIN_PER_H * route_factor),
        source="wheelbarrows per yard times the extra distance both ways at travel speed, slower on a poor route",
    )
    rock_per_ton = line(
        "Carrying time per ton of base rock",
        "h/ton",
        hours_per_yard / loose_rock,
        source="carrying time per loose yard over the loose density",
    )
