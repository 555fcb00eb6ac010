"""Conditions that the cautions check: slopes, panels and thickness of each area, cover, restraint, days to traffic."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import Area, Edge
from calc.trade.inputs.job import Site
from calc.trade.inputs.placing import Forecast
from calc.trade.inputs.removal import Footing
from calc.trade.inputs.site import AreaUse, Permissions
from calc.trade.inputs.work import OnSite
from calc.trade.levels import AREA, EDGE, FOOTING
from calc.trade.takeoff.dowels import DoweledEdge
from calc.trade.takeoff.geometry import MeanThickness, Slab
from calc.trade.takeoff.joint_list import JointLayout
from calc.trade.takeoff.joints import MatchedJoints, Panel
from calc.trade.takeoff.old_concrete import OldFooting

_SHEET = "Takeoff"


class BuildingEdges(Section, title="Edges at buildings", each=EDGE, sheet=_SHEET):
    """Edges where water must drain away from a building."""

    building = line("Along a building", "", when(Edge.kind.is_("building"), 1, 0), source="edges of that kind")


class AreaSlopes(Section, title="Slopes, panels and thickness checked", each=AREA, sheet=_SHEET):
    """How far each is past its limit; 0 is within the limit, or not measured."""

    max_cross_slope = factor(
        "Walk cross slope, max", "%", 100 / 48, low=1.5, high=2.1, source="2010 ADA 403.3, 1:48, seen in print"
    )
    max_public_cross_slope = factor(
        "Walk cross slope in a right of way, max", "%", 2.1, low=1.5, high=2.1, source="PROWAG R302.5, from memory"
    )
    max_walk_slope = factor(
        "Walk running slope, max", "%", 5, low=4, high=5, source="2010 ADA 403.3, 1:20, seen in print"
    )
    max_ramp_slope = factor(
        "Ramp running slope, max", "%", 100 / 12, low=8, high=100 / 12, source="2010 ADA 405, 1:12, from memory"
    )
    min_drain_slope = factor("Drainage slope, min", "%", 1, low=0.5, high=2, source="common practice, no source")
    min_building_slope = factor(
        "Drainage slope away from a building, min",
        "%",
        2,
        low=2,
        high=5,
        source="IRC R401.3 and IBC 1804, from memory",
    )
    usual_street_grade = factor(
        "Walk running slope in a right of way, without a street grade",
        "%",
        5,
        low=4,
        high=5,
        source="PROWAG R302.4, from memory: 5 %, or the grade of the street where that is more",
    )
    min_clear_width = factor("Clear width, min", "in", 36, low=32, high=48, source="2010 ADA 403.5, from memory")
    min_public_width = factor(
        "Clear width in a right of way, min", "in", 48, low=36, high=60, source="PROWAG R302, from memory"
    )
    max_level_change = factor(
        "Vertical change in level, max", "in", 0.25, low=0.125, high=0.25, source="2010 ADA 303.2, seen in print"
    )
    stop_level_change = factor(
        "Vertical change in level, stop above", "in", 0.5, low=0.25, high=0.5, source="2010 ADA 303.3, seen in print"
    )
    min_light_thickness = factor(
        "Slab thickness under cars, min", "in", 5, low=4, high=6, source="common practice, no source"
    )
    min_heavy_thickness = factor(
        "Slab thickness under trucks, min", "in", 6, low=5, high=8, source="common practice, no source"
    )
    max_panel_ratio = factor(
        "Panel length to thickness, max", "", 30, low=24, high=36, source="ACI 302.1R-96, 24 to 36, seen in print"
    )

    no_vehicles = line("No vehicles", "", when(AreaUse.vehicles.is_("none"), 1, 0), source="vehicles")
    has_vehicles = line("Vehicle traffic", "", 1 - no_vehicles, source="vehicles", adds=True)
    driven_unreinforced = line(
        "Driven on without reinforcement",
        "ft2",
        when(both(has_vehicles > 0, Area.reinforcement.is_("none")), Slab.net_area, 0),
        source="net area with vehicles and neither bars nor mesh; macro fiber counts as none",
        adds=True,
    )
    without_joints = line(
        "Area without a joint layout",
        "ft2",
        when(
            both(Panel.known <= 0, square_root(Slab.net_area / Area.quantity) > Panel.limit),
            Slab.net_area,
            0,
        ),
        source="net area, if its length and width are not known and a square as large is longer than a panel",
        adds=True,
    )
    reinforced = line(
        "Reinforced area",
        "ft2",
        when(Area.reinforcement.is_("none"), 0, Slab.net_area),
        source="net area with bars or mesh",
        adds=True,
    )
    accessible = line(
        "Accessible route checked",
        "",
        when(AreaUse.accessible_route.is_("auto"), no_vehicles, when(AreaUse.accessible_route.is_("yes"), 1, 0)),
        source="as typed; otherwise every area without vehicles",
    )
    walked = line(
        "Walked on",
        "",
        largest(no_vehicles, accessible),
        source="every area without vehicles, and every accessible route",
    )
    cross_slope_limit = line(
        "Cross slope limit",
        "%",
        when(Permissions.right_of_way.is_("yes"), max_public_cross_slope, max_cross_slope),
        source="in or outside a right of way",
    )
    excess_cross_slope = line(
        "Cross slope over the limit",
        "%",
        accessible * largest(0, if_given(AreaUse.cross_slope, 0) - cross_slope_limit),
        source="accessible routes only",
    )
    running_slope = line(
        "Running slope checked",
        "%",
        walked * if_given(AreaUse.running_slope, 0),
        source="every area that people walk on",
    )
    running_slope_limit = line(
        "Running slope limit",
        "%",
        when(
            Permissions.right_of_way.is_("yes"),
            largest(usual_street_grade, if_given(AreaUse.street_grade, 0)),
            max_walk_slope,
        ),
        source="in a right of way a walk may follow the street",
    )
    steep_slope = line(
        "Running slope over the limit",
        "%",
        when(running_slope > running_slope_limit, running_slope, 0),
        source="the slope; 0 within the limit",
    )
    ramp_limit = line(
        "Ramp running slope limit",
        "%",
        largest(max_ramp_slope, running_slope_limit),
        source="that of a ramp, or of the street where that is more",
    )
    ramp_slope = line(
        "Running slope over that of a ramp",
        "%",
        when(running_slope > ramp_limit, running_slope, 0),
        source="the slope; 0 where it is no more than a ramp or the street may have",
    )
    drainage_slope = line(
        "Slope for drainage",
        "%",
        largest(if_given(AreaUse.cross_slope, 0), if_given(AreaUse.running_slope, 0)),
        source="the greater of the two slopes",
    )
    at_building = line(
        "At a building",
        "",
        when(total(BuildingEdges.building, AREA) > 0, 1, 0),
        source="1 with an edge along a building",
    )
    slope_shortfall = line(
        "Drainage slope short by",
        "%",
        when(
            either(is_given(AreaUse.cross_slope), is_given(AreaUse.running_slope)),
            largest(0, when(at_building > 0, min_building_slope, min_drain_slope) - drainage_slope),
            0,
        ),
        source="minimum drainage slope less the slope; a blank slope is not checked",
    )
    required_width = line(
        "Required clear width",
        "in",
        when(Permissions.right_of_way.is_("yes"), min_public_width, min_clear_width),
        source="in or outside a right of way",
    )
    width_shortfall = line(
        "Clear width short by",
        "in",
        largest(0, required_width - if_given(AreaUse.clear_width * IN_PER_FT, required_width)),
        source="required clear width less the measured one",
    )
    level_change = line(
        "Change in level, walked on",
        "in",
        walked * AreaUse.level_change,
        source="every area that people walk on",
    )
    driven_level_change = line(
        "Change in level, driven on",
        "in",
        (1 - walked) * AreaUse.level_change,
        source="areas with vehicles that are no accessible route",
    )
    min_thickness = line(
        "Minimum thickness for its vehicles",
        "in",
        when(
            AreaUse.vehicles.is_("heavy"),
            min_heavy_thickness,
            when(AreaUse.vehicles.is_("light"), min_light_thickness, 0),
        ),
        source="by the vehicles typed",
    )
    thickness_shortfall = line(
        "Thickness under vehicles short by",
        "in",
        largest(0, min_thickness - smallest(Area.thickness, MeanThickness.other_end)),
        source="minimum thickness less the thinner end",
    )
    drains_to_building = line(
        "Drains to a building", "", when(AreaUse.slopes_to_building.is_("yes"), 1, 0), source="as typed", adds=True
    )
    longer_side = line(
        "Longer side of the longest panel",
        "ft",
        when(
            both(JointLayout.longest_panel > 0, Panel.panel_width > 0),
            largest(JointLayout.longest_panel, Panel.panel_width),
            0,
        ),
        source="its length or its width; 0 where either is not known",
    )
    aspect_ratio = line(
        "Panel length to width",
        "",
        when(longer_side > 0, longer_side / smallest(JointLayout.longest_panel, Panel.panel_width), 0),
        source="longer over shorter side of the longest panel",
    )
    at_min_spacing = line(
        "At the minimum joint spacing",
        "",
        when(
            both(
                Panel.by_width * Panel.panel_width < Panel.min_spacing,
                Panel.spacing >= Panel.min_spacing,
                MatchedJoints.old <= 0,
            ),
            1,
            0,
        ),
        source="1 for a strip so narrow that its width would put joints too close together",
    )
    aspect_by_width = line(
        "Panel length to width, spaced by width",
        "",
        aspect_ratio * (1 - at_min_spacing),
        source="where the minimum spacing does not govern",
    )
    aspect_at_min_spacing = line(
        "Panel length to width, at the minimum spacing",
        "",
        aspect_ratio * at_min_spacing,
        source="where the minimum spacing governs",
    )
    excess_panel_length = line(
        "Panel length over the limit",
        "ft",
        largest(0, longer_side - smallest(max_panel_ratio * MeanThickness.plain_mean / IN_PER_FT, Panel.max_spacing)),
        source="longer side of the longest panel less the limit for its thickness, and less the maximum spacing",
    )


class FootingCover(Section, title="Cover over footings", each=FOOTING, sheet=_SHEET):
    """Checked where the slab crosses an old footing."""

    min_cover = factor("Cover over a footing, min", "in", 2, low=1.5, high=3, source="common practice, no source")

    over_footing = line(
        "Slab over the footing",
        "",
        when(OldFooting.cover < MeanThickness.mean, 1, 0),
        source="1 where the cover is less than the thickness",
    )
    cover_shortfall = line(
        "Cover short by",
        "in",
        over_footing * largest(0, min_cover - OldFooting.cover),
        source="minimum cover less cover",
    )
    half_depth_shortfall = line(
        "Cover below half the slab, short by",
        "in",
        over_footing * largest(0, Area.thickness / TWO - OldFooting.cover),
        source="half the nominal thickness less cover",
    )
    bonded = line(
        "Bonded",
        "",
        over_footing * when(both(Footing.treatment.is_("bonding agent"), Site.bond_coats > 0), 1, 0),
        source="1 where the slab is bonded to the footing; with no coat of bonding agent nothing is",
    )


class DowelCover(Section, title="Dowel cover and size", each=EDGE, sheet=_SHEET):
    """Checked on doweled edges; 0 on the others."""

    min_cover = factor("Dowel cover, min", "in", 1.5, low=1, high=2, source="common practice, no source")
    stop_cover = factor("Dowel cover, stop below", "in", 1, low=0.75, high=1.5, source="common practice, no source")
    min_end_distance = factor("Dowel end distance, min", "in", 6, low=4, high=12, source="common practice, no source")
    min_light_bar = factor(
        "Dowel diameter under cars, min", "in", 0.5, low=0.375, high=0.75, source="common practice, no source"
    )
    min_heavy_bar = factor(
        "Dowel diameter under trucks, min", "in", 0.625, low=0.5, high=1, source="common practice, no source"
    )

    doweled = line("Doweled", "", when(DoweledEdge.dowels > 0, 1, 0), source="1 with dowels")
    cover_shortfall = line(
        "Dowel cover short by",
        "in",
        doweled * largest(0, min_cover - DoweledEdge.cover),
        source="minimum cover less cover",
    )
    stop_shortfall = line(
        "Dowel cover below the stop, short by",
        "in",
        doweled * largest(0, stop_cover - DoweledEdge.cover),
        source="stop limit less cover",
    )
    end_shortfall = line(
        "Dowel end distance short by",
        "in",
        doweled * largest(0, min_end_distance - Edge.end_distance),
        source="minimum end distance less the typed one",
    )
    tight_hole = line(
        "Deformed bar in a tight hole",
        "",
        doweled * when(both(Edge.surface.is_("deformed"), DoweledEdge.drill_diameter <= Edge.bar_diameter), 1, 0),
        source="the deformations of a bar add to its diameter",
        adds=True,
    )
    bar_shortfall = line(
        "Dowel diameter short by",
        "in",
        doweled
        * largest(
            0,
            when(AreaUse.vehicles.is_("heavy"), min_heavy_bar, when(AreaUse.vehicles.is_("light"), min_light_bar, 0))
            - Edge.bar_diameter,
        ),
        source="minimum diameter under its vehicles less the bar",
    )
    no_isolation = line(
        "Wall without isolation",
        "",
        when(both(Edge.kind.is_("wall"), Edge.isolation.is_("no")), 1, 0),
        source="1 where the slab is placed against a wall",
    )


class Restraint(Section, title="Restraint", each=AREA, sheet=_SHEET):
    """A slab that is bonded below, doweled at an edge and tight against a wall cannot shrink, so it cracks."""

    restrained = line(
        "Bonded, doweled and against a wall",
        "",
        when(
            both(
                total(FootingCover.bonded, AREA) > 0,
                total(DowelCover.doweled, AREA) > 0,
                total(DowelCover.no_isolation, AREA) > 0,
            ),
            1,
            0,
        ),
        source="1 where all three apply",
        adds=True,
    )


class OpeningToTraffic(Section, title="Opening to traffic", sheet=_SHEET):
    """Days closed against the days that the concrete needs, which are more in cold weather."""

    foot_days = factor("Days to foot traffic", "", 1, low=1, high=3, source="common practice, no source")
    vehicle_days = factor("Days to vehicle traffic", "", 7, low=3, high=14, source="common practice, no source")
    cold_limit = factor(
        "Slow curing below", "F", 50, low=40, high=55, source="common practice, no source; ACI 306R, from memory"
    )
    cold_factor = factor(
        "Days to traffic in cold weather, multiplier", "", 2, low=1.5, high=3, source="common practice, no source"
    )

    lowest_temperature = line(
        "Lowest temperature",
        "F",
        smallest(if_given(Forecast.air, cold_limit), if_given(Forecast.night, cold_limit)),
        source="air temperature or night low; not cold where neither is given",
    )
    required_days = line(
        "Days required",
        "",
        when(total(AreaSlopes.has_vehicles) > 0, vehicle_days, foot_days)
        * when(lowest_temperature < cold_limit, cold_factor, 1),
        source="foot or vehicle traffic, times the multiplier in cold weather",
    )
    days_short = line(
        "Days short",
        "",
        largest(0, required_days - OnSite.days_closed),
        source="days required less days closed to traffic",
    )
