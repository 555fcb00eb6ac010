"""Weather and fresh concrete: discharge time limit, evaporation rate, temperature limits.

Without a forecast nothing is checked: the numbers are 0, and a line beside them shows that they are not known.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.placing import Access, Forecast

_SHEET = "Order and placing"
_THOUSAND = exact(1000)


class DischargeLimit(Section, title="Discharge time limit", sheet=_SHEET):
    """From batching at the plant, travel time included."""

    usual_limit = factor(
        "Discharge time limit, usual",
        "min",
        90,
        low=60,
        high=120,
        source="ASTM C94 to about 2013, Mixing and Delivery, from memory: 90 min from batching, unless waived by "
        "the purchaser; newer editions let the purchaser state a limit",
    )
    hot_weather_limit = factor(
        "Discharge time limit, hot weather",
        "min",
        60,
        low=45,
        high=90,
        source="common practice, no source: ask the plant",
    )
    hot_weather_from = factor(
        "Hot weather for discharge, from", "F", 85, low=80, high=95, source="common practice, no source: ask the plant"
    )

    hot = line(
        "Hot weather applies",
        "",
        when(both(is_given(Forecast.air), if_given(Forecast.air, 0) >= hot_weather_from), 1, 0),
        source="1 if the air is at or above the hot-weather temperature",
    )
    limit = line(
        "Discharge time limit",
        "min",
        when(hot > 0, hot_weather_limit, usual_limit),
        source="by air temperature at the pour",
    )
    time_left = line(
        "Time left on site", "min", largest(0, limit - Access.drive), source="discharge time limit less travel time"
    )


def _dried(concrete: Expr, air: Expr, damp: Expr, wind: Expr, share: Expr) -> Expr:
    """Evaporation, lb/ft2/h, for temperatures in F, humidity as a fraction and wind in mph."""
    pull = square(concrete) * square_root(concrete) - damp * square(air) * square_root(air)
    return pull * (1 + share * wind) / _THOUSAND / _THOUSAND


class Evaporation(Section, title="Evaporation rate", sheet=_SHEET):
    """Plastic shrinkage cracks form when the fresh slab loses water faster than bleed water rises."""

    wind_share = factor(
        "Wind coefficient, evaporation formula",
        "",
        0.4,
        source="ACI 305R; P. Uno, ACI Materials Journal 95-M34, July-August 1998; seen in print: US form, wind in mph",
    )
    caution_above = factor(
        "Evaporation rate, caution above",
        "lb/ft2/h",
        0.1,
        low=0.05,
        high=0.2,
        source="ACI 305R and UFGS, partly from memory: 0.10 for mixes with little bleed water",
    )
    stop_above = factor(
        "Evaporation rate, stop above",
        "lb/ft2/h",
        0.2,
        low=0.1,
        high=0.3,
        source="ACI 305R, partly from memory: precautions at 0.20",
    )

    known = line(
        "Weather for evaporation is known",
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
        source="1 if air, concrete, humidity and wind were typed",
    )
    air = line(
        "Air temperature, for evaporation",
        "F",
        largest(0, if_given(Forecast.air, 0)),
        source="input, not below 0 F, where the formula starts",
    )
    concrete = line(
        "Concrete temperature, for evaporation", "F", largest(0, if_given(Forecast.concrete, 0)), source="input"
    )
    humidity = line(
        "Relative humidity, as a fraction", "", if_given(Forecast.humidity, 0) / PERCENT, source="humidity over 100"
    )
    wind = line("Wind speed, for evaporation", "mph", if_given(Forecast.wind, 0), source="input")
    formula = line(
        "Evaporation by formula",
        "lb/ft2/h",
        correlation("lb/ft2/h", _dried, concrete, air, humidity, wind, wind_share, source="ACI 305R: F, fraction, mph"),
        source="ACI 305R; P. Uno, ACI Materials Journal 95-M34, July-August 1998; seen in print: F, humidity as a "
        "fraction, wind in mph; the metric form has rounded constants and gives 4 % less",
    )
    rate = line(
        "Evaporation rate",
        "lb/ft2/h",
        when(known > 0, largest(0, formula), 0),
        source="0 if not known, or if water condenses on the slab; may be off by 40 % (ACI SP-338, 2020, seen "
        "in print)",
    )


class TemperatureLimits(Section, title="Temperature limits", sheet=_SHEET):
    """Degrees beyond the limits; 0 if within them or not typed."""

    hot_limit = factor(
        "Concrete temperature, caution above",
        "F",
        90,
        low=80,
        high=95,
        source="common practice, no source; ACI 301 and ACI 305.1, from memory: 95 F unless otherwise specified",
    )
    cold_limit = factor(
        "Air temperature, caution below", "F", 40, low=35, high=45, source="ACI 306R, seen in print: protection period"
    )

    concrete_over = line(
        "Concrete temperature over the limit",
        "F",
        largest(0, if_given(Forecast.concrete, 0) - hot_limit),
        source="concrete temperature less limit; 0 if not typed",
    )
    air_under = line(
        "Air temperature under the limit",
        "F",
        when(is_given(Forecast.air), largest(0, cold_limit - if_given(Forecast.air, 0)), 0),
        source="limit less temperature; 0 if not typed",
    )
    night_under = line(
        "Night low under the limit",
        "F",
        when(is_given(Forecast.night), largest(0, cold_limit - if_given(Forecast.night, 0)), 0),
        source="limit less temperature; 0 if not typed",
    )
    coldest_under = line(
        "Coldest temperature under the limit",
        "F",
        largest(air_under, night_under),
        source="larger of air and night low under the limit",
    )
    coldest = line("Coldest temperature", "F", cold_limit - coldest_under, source="limit less degrees under it")
