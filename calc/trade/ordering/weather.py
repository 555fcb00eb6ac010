"""What the weather does to fresh concrete: how fast it dries, how long a truck may stand, what is too hot or too cold.

What was not typed is not checked: the numbers are 0 then, and a line beside them says that they are not known.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.placing import Access, Forecast

_SHEET = "Order and placing"
_THOUSAND = exact(1000)


class TruckClock(Section, title="How long a truck may stand", sheet=_SHEET):
    """From the minute it is batched at the plant; the drive uses up some of it."""

    usual = factor(
        "Time limit of a truck",
        "min",
        90,
        low=60,
        high=120,
        source="ASTM C94 to about 2013, from memory: 90 min from batching, which the buyer may waive; newer editions "
        "let the buyer state a limit",
    )
    in_heat = factor(
        "Time limit of a truck in heat", "min", 60, low=45, high=90, source="common practice, no source: ask the plant"
    )
    heat = factor(
        "Heat for the truck, from", "F", 85, low=80, high=95, source="common practice, no source: ask the plant"
    )

    hot = line(
        "It is hot for the truck",
        "",
        when(both(is_given(Forecast.air), if_given(Forecast.air, 0) >= heat), 1, 0),
        source="1 when the air is at the limit or above",
    )
    limit = line("Time limit that holds", "min", when(hot > 0, in_heat, usual), source="by the air at the pour")
    left = line("Minutes left at the job", "min", largest(0, limit - Access.drive), source="time limit less the drive")


def _dried(concrete: Expr, air: Expr, damp: Expr, wind: Expr, share: Expr) -> Expr:
    """Pounds of water a square foot and hour: degrees F, damp as a share of 1, wind in mph."""
    pull = square(concrete) * square_root(concrete) - damp * square(air) * square_root(air)
    return pull * (1 + share * wind) / _THOUSAND / _THOUSAND


class Evaporation(Section, title="How fast the slab dries", sheet=_SHEET):
    """Water that leaves the fresh slab; it cracks when more leaves than rises in it."""

    wind_share = factor(
        "Wind in the drying formula",
        "",
        0.4,
        source="ACI 305R and ACI Materials Journal 95-M34 (1998), seen in print: the US form, with wind in mph",
    )
    most = factor(
        "Drying, caution above",
        "lb/ft2/h",
        0.1,
        low=0.05,
        high=0.2,
        source="ACI 305R and UFGS, partly from memory: 0.10 for mixes that bleed little",
    )
    stop = factor(
        "Drying, stop above",
        "lb/ft2/h",
        0.2,
        low=0.1,
        high=0.3,
        source="ACI 305R, partly from memory: 0.20 wants precautions",
    )

    known = line(
        "Weather for drying is known",
        "",
        when(
            both(
                is_given(Forecast.air),
                is_given(Forecast.concrete),
                is_given(Forecast.humidity),
                is_given(Forecast.wind),
            ),
            1,
            0,
        ),
        source="1 when air, concrete, humidity and wind were typed",
    )
    air = line("Air, for drying", "F", largest(0, if_given(Forecast.air, 0)), source="the formula starts at 0 F")
    concrete = line("Concrete, for drying", "F", if_given(Forecast.concrete, 0), source="as typed")
    damp = line("Damp of the air", "", if_given(Forecast.humidity, 0) / PERCENT, source="humidity as a share of 1")
    wind = line("Wind, for drying", "mph", if_given(Forecast.wind, 0), source="as typed")
    formula = line(
        "Drying by the formula",
        "lb/ft2/h",
        correlation("lb/ft2/h", _dried, concrete, air, damp, wind, wind_share, source="ACI 305R: F, share of 1, mph"),
        source="ACI 305R and ACI Materials Journal 95-M34 (1998), US form, seen in print: degrees F, humidity as a "
        "share of 1, wind in mph; the metric form has rounded constants and reads 4 % lower",
    )
    rate = line(
        "Drying of the slab",
        "lb/ft2/h",
        when(known > 0, largest(0, formula), 0),
        source="0 where it is not known, or where damp air wets the slab; up to 40 % off (ACI SP-338 of 2020, seen "
        "in print)",
    )


class Heat(Section, title="Too hot or too cold", sheet=_SHEET):
    """Degrees beyond the usual limits; 0 where all is well or where nothing was typed."""

    hot_limit = factor(
        "Hot concrete, caution above",
        "F",
        90,
        low=80,
        high=95,
        source="common practice, no source; ACI 301 and 305.1, from memory: 95 unless agreed otherwise",
    )
    cold_limit = factor(
        "Cold air, caution below", "F", 40, low=35, high=45, source="ACI 306R, seen in print: in the days of protection"
    )

    over = line(
        "Concrete above the limit",
        "F",
        largest(0, if_given(Forecast.concrete, 0) - hot_limit),
        source="0 where no temperature was typed",
    )
    air_lacks = line(
        "Air below the limit",
        "F",
        when(is_given(Forecast.air), largest(0, cold_limit - if_given(Forecast.air, 0)), 0),
        source="0 where it was not typed",
    )
    night_lacks = line(
        "Night below the limit",
        "F",
        when(is_given(Forecast.night), largest(0, cold_limit - if_given(Forecast.night, 0)), 0),
        source="0 where it was not typed",
    )
    under = line(
        "Coldest air below the limit", "F", largest(air_lacks, night_lacks), source="air at the pour or night low"
    )
    coldest = line("Coldest air", "F", cold_limit - under, source="of the air and the night low, where below the limit")
