"""What has to stand beside a value that is typed over so that it matters: what one job is, another is not.

The whole job digs with a machine, say, so an hour of digging by hand moves nothing in it until a person digs by hand.
"""

from __future__ import annotations

from collections.abc import Mapping

BESIDE: tuple[tuple[str, Mapping[str, object]], ...] = (
    ("Access.muddy", {"Access.grade": 0}),
    ("Permissions.cables", {"Job.lines_to_cap": 0}),
    ("BaseHaul.turnaround, BaseHaul.miles, BaseHaul.minutes", {"BaseHaul.max_pick_up": 60}),
    ("SlabCautions.too_thin_acknowledged", {"SlabCautions.stop_thickness": 5}),
    ("Evaporation.stop_above, PourCautions.evaporation_unplanned_acknowledged", {"Forecast.plan": "none"}),
    ("FiberKind.dose", {"Site.fiber_dose": None}),
    ("FinishWindow.retarder_hours", {"Mixture.retarder": "yes"}),
    ("HaulCautions.overweight_acknowledged", {"Vehicle.payload": None}),
    ("Carrying.free_distance, Carrying.loose_rock", {"Digging.by": "hand", "Access.spoil_distance": 200}),
    ("Carrying.usual_distance", {"WheelbarrowRoute.distance": None, "Access.spoil_distance": None}),
    ("SawDelay.early", {"Site.joint_method": "early-entry"}),
    ("WorkingTime.usual_temperature", {"Forecast.concrete": None}),
    ("PourCautions.pour_too_long_acknowledged", {"VisitRules.pour_stop": 3}),
    ("BarMat.lap_diameters", {"BarMat.stock_length": 12}),
    ("BarSize.diameter:#3", {"Area.bar_size": "#3", "BarMat.stock_length": 12}),
    ("BarSize.diameter:#4", {"BarMat.stock_length": 12}),
    ("BarSize.diameter:#5", {"Area.bar_size": "#5", "BarMat.stock_length": 12}),
    ("BarSize.weight:#3", {"Area.bar_size": "#3"}),
    ("BarSize.weight:#5", {"Area.bar_size": "#5"}),
    ("HaulCautions.max_waiting", {"Vehicle.hired": "yes", "Digging.by": "hand"}),
    ("AreaSlopes.min_clear_width", {"Permissions.right_of_way": "no"}),
    ("AreaSlopes.min_heavy_thickness, DowelCover.min_heavy_bar", {"AreaUse.vehicles": "heavy"}),
    ("OrderCautions.max_shortage_chance", {"Ordering.rule": "fixed", "Ordering.fixed": 5.25}),
    ("OpeningToTraffic.cold_factor", {"Forecast.night": 30}),
    ("OpeningToTraffic.foot_days", {"AreaUse.vehicles": "none"}),
    ("PourText.min_truck_spacing", {"Ordering.rule": "fixed", "Ordering.fixed": 20}),
    ("PourText.pump_aggregate", {"PaperFacts.aggregate_size": None}),
    ("PourText.usual_aggregate", {"PaperFacts.aggregate_size": None, "Access.method": "chute"}),
    ("BidPrice.contingency_rate", {"Terms.contingency": None}),
    ("BidPrice.minimum_price", {"Terms.minimum": None}),
    ("BidPrice.margin_rate", {"Terms.margin": None}),
    ("BidPrice.overhead_rate", {"Terms.overhead": None}),
    ("BidPrice.tax_rate", {"Terms.tax": None}),
    ("SoilContamination.root_probability", {"Site.turf": "no"}),
    ("WorkingTime.window:90 F", {"Forecast.concrete": 88}),
    ("CrewCautions.no_wage_rate_acknowledged", {"Crew.wages": "prevailing", "Wage.prevailing": None}),
    ("SlabCautions.dowel_stop_acknowledged", {"DowelCover.stop_cover": 3}),
    ("SlabCautions.no_air_acknowledged", {"Mixture.air": "no"}),
    ("SlabCautions.thin_cover_acknowledged", {"FootingCover.min_cover": 20}),
    ("TaskRates.minimum:unknown", {"Removal.unforeseen": 1}),
    ("DischargeLimit.hot_weather_limit", {"Forecast.air": 95}),
    ("SurfaceCautions.high_level_change_acknowledged", {"AreaUse.level_change": 1, "AreaUse.accessible_route": "yes"}),
    ("SurfaceCautions.ramp_slope_acknowledged", {"AreaUse.running_slope": 12, "AreaUse.accessible_route": "yes"}),
    ("PourCautions.unloading_time_acknowledged", {"Access.pump": "no"}),
)
"""Ids, one kind of a factor after a colon, and what else is typed in every row of other ids; None clears a cell."""


def beside(named: str) -> Mapping[str, object]:
    """What stands beside the declaration, or the kind of a factor, that goes by ``named``."""
    return next((typed for names, typed in BESIDE if named in names.split(", ")), {})
