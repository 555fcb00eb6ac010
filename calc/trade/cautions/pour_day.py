"""What to watch on the day of the pour: the weather, the clock of the trucks, the time to finish."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.placing import Forecast
from calc.trade.ordering.finish_window import FinishWindow
from calc.trade.ordering.method_choice import Placing
from calc.trade.ordering.pour import PourCost
from calc.trade.ordering.weather import Evaporation, TemperatureLimits
from calc.trade.takeoff.geometry import Slab

_DRYING = "ACI 305R and UFGS, partly from memory; local code wins"
_DRIES = "wind broken, fog sprayed, an evaporation retarder, or a pour at night; wind is taken 20 in above the slab"


class WeatherCautions(Section, title="Cautions of the weather", sheet="Checks"):
    """What was found, the number, the usual practice and who says so, and what to do. Local code always wins."""

    no_way = caution(
        "Trucks not emptied in time",
        Severity.STOP,
        either(PourCost.over_limit_by > 0, Placing.allowed <= 0),
        when(
            Placing.allowed <= 0,
            "The job allows no way of placing.",
            "The fullest truck takes longer to empty than it may stand.",
        ),
        PourCost.over_limit_by,
        "min",
        usual="90 min from batching, 60 min in heat, less the drive",
        do="Send smaller loads, more barrows or a pump, or agree on another time limit with the plant.",
        source="ASTM C94 to about 2013, from memory; the plant's rules win",
    )
    dries = caution(
        "Slab dries fast",
        Severity.CAUTION,
        both(
            Evaporation.rate > Evaporation.caution_above,
            either(Evaporation.rate <= Evaporation.stop_above, not_(Forecast.plan.is_("none"))),
        ),
        "Water leaves the slab faster than it may rise in it.",
        Evaporation.rate,
        "lb/ft2/h",
        usual="no more than 0.1, or 0.2 where the mix bleeds well",
        do="Have at hand: " + _DRIES + ".",
        source=_DRYING,
    )
    dries_unplanned = caution(
        "Slab dries too fast without a plan",
        Severity.STOP,
        both(Evaporation.rate > Evaporation.stop_above, Forecast.plan.is_("none")),
        "Water leaves the slab so fast that it cracks while it is soft.",
        Evaporation.rate,
        "lb/ft2/h",
        usual="precautions above 0.2",
        do="Name an evaporation plan: " + _DRIES + ".",
        source=_DRYING,
    )
    hot = caution(
        "Hot concrete",
        Severity.CAUTION,
        TemperatureLimits.concrete_over > 0,
        "The concrete is hotter than usual.",
        TemperatureLimits.concrete_over + TemperatureLimits.hot_limit,
        "F",
        usual="90 F at most; 95 F is the limit of a common specification",
        do="Pour early, have the plant cool the mix or add a retarder, and have more finishers.",
        source="ACI 301 and 305.1, from memory; local code wins",
    )
    cold = caution(
        "Cold weather",
        Severity.CAUTION,
        TemperatureLimits.coldest_under > 0,
        "The air is, or the nights will be, colder than concrete likes while it is young.",
        TemperatureLimits.coldest,
        "F",
        usual="no less than 40 F in the days of protection; a thin slab is kept at 55 F",
        do="Cover it with blankets, have warm concrete, keep it from freezing until it is strong.",
        source="ACI 306R, seen in print; 55 F from memory; local code wins",
    )
    frozen = caution(
        "Frozen ground",
        Severity.STOP,
        Forecast.frozen.is_("yes"),
        "The ground under the slab is frozen.",
        total(Slab.net_area),
        "ft2",
        usual="concrete is never placed on frozen ground",
        do="Thaw it and compact it again, or pour later.",
        source="ACI 306R, from memory; local code wins",
    )
    stiff = caution(
        "Stiff before it is finished",
        Severity.CAUTION,
        FinishWindow.short_by > 0,
        "The largest truck takes longer to place and finish than its concrete can be worked.",
        FinishWindow.short_by,
        "h",
        usual="5.5 h at 50 F, 3.5 h at 70 F, 2 h at 90 F",
        do="Have more finishers, a retarder, smaller loads, or pour on two days.",
        source="common practice, no source; ask the plant",
    )
