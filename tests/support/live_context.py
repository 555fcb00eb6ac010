"""What has to stand beside a value that is typed over so that it matters: what one job is, another is not.

The whole job digs with a machine, say, so an hour of digging by hand moves nothing in it until a person digs by hand.
"""

from __future__ import annotations

from collections.abc import Mapping

BESIDE: tuple[tuple[str, Mapping[str, object]], ...] = (
    ("Access.wet", {"Access.slope": 0}),
    ("Permissions.cables", {"Job.caps": 0}),
    ("BaseHaul.turnaround, BaseHaul.miles, BaseHaul.minutes", {"BaseHaul.max_pick_up": 60}),
    ("Cautions.too_thin_acknowledged", {"Cautions.thin_stop": 5}),
    ("Evaporation.stop_above, WeatherCautions.dries_unplanned_acknowledged", {"Forecast.plan": "none"}),
    ("FiberKind.dose", {"Site.fiber_dose": None}),
    ("FinishWindow.retarder_hours", {"Mixture.retarder": "yes"}),
    ("HaulCautions.overweight_acknowledged", {"Vehicle.payload": None}),
    ("Labor.min_days_bags", {"Access.method": "bags"}),
    ("AreaSlopes.clear_least", {"Permissions.right_of_way": "no"}),
    ("AreaSlopes.heavy_least, DowelCover.heavy_bar", {"AreaUse.vehicles": "heavy"}),
    ("MoneyCautions.most_chance", {"Ordering.rule": "fixed", "Ordering.fixed": 5.25}),
    ("OpeningToTraffic.cold_times", {"Forecast.night": 30}),
    ("OpeningToTraffic.foot_days", {"AreaUse.vehicles": "none"}),
    ("PourWord.least_gap", {"Ordering.rule": "fixed", "Ordering.fixed": 20}),
    ("PourWord.pump_stone", {"PaperFacts.stone": None}),
    ("PourWord.usual_stone", {"PaperFacts.stone": None, "Access.method": "chute"}),
    ("BidPrice.contingency_rate", {"Terms.contingency": None}),
    ("BidPrice.minimum_price", {"Terms.least": None}),
    ("BidPrice.margin_rate", {"Terms.margin": None}),
    ("BidPrice.overhead_rate", {"Terms.overhead": None}),
    ("BidPrice.tax_rate", {"Terms.tax": None}),
    ("SoilContamination.root_probability", {"Site.turf": "no"}),
    ("WorkingTime.window:90 F", {"Forecast.concrete": 88}),
    ("SiteCautions.no_wage_acknowledged", {"Crew.wages": "prevailing", "Wage.prevailing": None}),
    ("SlabCautions.dowel_stop_acknowledged", {"DowelCover.cover_stop": 3}),
    ("SlabCautions.no_air_acknowledged", {"Mixture.air": "no"}),
    ("SlabCautions.thin_cover_acknowledged", {"FootingCover.least_cover": 20}),
    ("Task.min_hours:unknown", {"Removal.unknown": 1}),
    ("DischargeLimit.hot_weather_limit", {"Forecast.air": 95}),
    ("WalkCautions.high_step_acknowledged", {"AreaUse.lip": 1, "AreaUse.accessible": "yes"}),
    ("WalkCautions.ramp_acknowledged", {"AreaUse.along": 12, "AreaUse.accessible": "yes"}),
    ("WeatherCautions.no_way_acknowledged", {"Access.pump": "no"}),
)
"""Ids, one kind of a factor after a colon, and what else is typed in every row of other ids; None clears a cell."""


def beside(named: str) -> Mapping[str, object]:
    """What stands beside the declaration, or the kind of a factor, that goes by ``named``."""
    return next((typed for names, typed in BESIDE if named in names.split(", ")), {})
