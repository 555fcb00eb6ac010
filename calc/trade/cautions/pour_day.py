"""Cautions of the pour day: unloading time, weather, finishing time."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.placing import Forecast
from calc.trade.ordering.method_choice import Placing
from calc.trade.ordering.order import Order
from calc.trade.ordering.pour import PourCost
from calc.trade.ordering.weather import Evaporation, TemperatureLimits
from calc.trade.takeoff.geometry import Slab
from calc.trade.work.pour_visit import FinishersNeeded

_ACI = "ACI 305R and UFGS, partly from memory; local code governs"
_MEASURES = "windbreak, fog spray, evaporation retarder, or a pour at night"


class PourCautions(Section, title="Pour day cautions", sheet="Checks"):
    """What was found, the number, the usual practice with its source, and what to do. Local code governs."""

    unloading_time = caution(
        "Unloading exceeds the discharge time limit",
        Severity.STOP,
        either(PourCost.over_limit_by > 0, Placing.allowed <= 0),
        when(
            Placing.allowed <= 0,
            "No placing method fits the job.",
            "The largest load takes longer to unload than the discharge time limit; the number is the excess.",
        ),
        PourCost.over_limit_by,
        "min",
        usual="90 min from batching, 60 min in hot weather, less the drive",
        do="Order smaller loads, use more wheelbarrows or a pump, or ask the plant for another limit.",
        brief="Order smaller loads, or place faster; ask the plant.",
        source="ASTM C94 to about 2013, from memory; the plant's rules govern",
    )
    weather_unknown = caution(
        "Weather not known",
        Severity.NOTE,
        both(Order.placed > 0, either(not_(is_given(Forecast.air)), not_(is_given(Forecast.concrete)))),
        "Air or concrete temperature is not typed, so heat, cold and finishing time are not checked.",
        Order.placed,
        "yd3",
        usual="a forecast for the day of the pour, and the plant's concrete temperature",
        do="Type both in Site conditions before the pour, and bid again.",
        brief="Type both in Site conditions, and bid again.",
        source="common practice, no source",
    )
    surface_water = caution(
        "Bleed water and rain",
        Severity.NOTE,
        Order.placed > 0,
        "Water that is finished into the surface makes it scale and dust.",
        Order.placed,
        "yd3",
        usual="bleed water goes before floating; rain within 3 h washes curing compound off",
        do="Never finish water in; cover fresh concrete, and spray again after rain.",
        brief="Never finish water in; cover it, spray after rain.",
        source="NRMCA CIP 20 and ASTM C309 labels, from memory",
    )
    evaporation = caution(
        "High evaporation rate",
        Severity.CAUTION,
        both(
            Evaporation.rate > Evaporation.caution_above,
            either(Evaporation.rate <= Evaporation.stop_above, not_(Forecast.plan.is_("none"))),
        ),
        "Water evaporates from the surface faster than bleed water may replace it.",
        Evaporation.rate,
        "lb/ft2/h",
        usual="0.1 at most, or 0.2 where the mix bleeds well; wind is measured 20 in above the slab",
        do="Have ready: " + _MEASURES + ".",
        brief="Have windbreak, fog spray and retarder ready.",
        source=_ACI,
    )
    evaporation_unplanned = caution(
        "Evaporation rate too high (plastic shrinkage)",
        Severity.STOP,
        both(Evaporation.rate > Evaporation.stop_above, Forecast.plan.is_("none")),
        "Water evaporates so fast that the slab cracks while it is plastic, and no measure is planned.",
        Evaporation.rate,
        "lb/ft2/h",
        usual="precautions above 0.2; wind is measured 20 in above the slab",
        do="Plan for it: " + _MEASURES + ".",
        brief="Plan windbreak, fog spray, retarder, or pour at night.",
        source=_ACI,
    )
    hot_concrete = caution(
        "Hot concrete",
        Severity.CAUTION,
        TemperatureLimits.concrete_over > 0,
        "The concrete is hotter than usual.",
        TemperatureLimits.concrete_over + TemperatureLimits.hot_limit,
        "F",
        usual="90 F at most; 95 F is the limit of a common specification",
        do="Pour early, have the plant cool the mix or add a retarder, and have more finishers.",
        brief="Pour early, cool or retard the mix, more finishers.",
        source="ACI 301 and 305.1, from memory; local code governs",
    )
    cold_weather = caution(
        "Cold weather",
        Severity.CAUTION,
        TemperatureLimits.coldest_under > 0,
        "The air is, or the nights will be, too cold for young concrete.",
        TemperatureLimits.coldest,
        "F",
        usual="at least 40 F during protection; a thin slab is kept at 55 F",
        do="Cover it with blankets, order warm concrete, keep it from freezing until it is strong.",
        brief="Blankets, warm concrete; keep it from freezing.",
        source="ACI 306R, seen in print; 55 F from memory; local code governs",
    )
    frozen_ground = caution(
        "Frozen ground",
        Severity.STOP,
        Forecast.frozen.is_("yes"),
        "The ground under the slab is frozen.",
        total(Slab.net_area),
        "ft2",
        usual="concrete is never placed on frozen ground",
        do="Thaw it and compact it again, or pour later.",
        source="ACI 306R, from memory; local code governs",
    )
    finishing_time = caution(
        "More finishers needed",
        Severity.CAUTION,
        either(FinishersNeeded.day_over_by > 0, FinishersNeeded.window_over_by > 0),
        when(
            FinishersNeeded.count > 0,
            "Finishing ends too late; the number is the finishers needed, who may be more than the crew.",
            "No number of finishers ends within the working day and the finishing window.",
        ),
        FinishersNeeded.count,
        "",
        usual="on site 5.5 h from batching at 50 F, 3.5 h at 70 F, 2 h at 90 F, less the drive",
        do="Have more finishers, a retarder or smaller loads, or pour on two days.",
        brief="More finishers, retarder, smaller loads, or two days.",
        source="common practice, no source; ask the plant",
    )
    pour_too_long = caution(
        "Pour visit too long",
        Severity.STOP,
        FinishersNeeded.visit_over_by > 0,
        "Somebody is on the pour visit longer than people can work well; the number is the excess.",
        FinishersNeeded.visit_over_by,
        "h",
        usual="12 h at most, with the way there and back",
        do="Make two pours of it, or have more people.",
        source="common practice, no source",
    )
