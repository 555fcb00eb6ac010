"""What the cautions look at: how each area lies, what lies under it, what holds it, and how long it may cure."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import Area, Edge
from calc.trade.inputs.placing import Forecast
from calc.trade.inputs.removal import Footing
from calc.trade.inputs.site import AreaUse, Permissions
from calc.trade.inputs.work import OnSite
from calc.trade.levels import AREA, EDGE, FOOTING
from calc.trade.takeoff.dowels import DoweledEdge
from calc.trade.takeoff.geometry import MeanThickness
from calc.trade.takeoff.joints import MatchedJoints, Panel
from calc.trade.takeoff.old_concrete import OldFooting

_SHEET = "Takeoff"


class BuildingEdges(Section, title="Edges at buildings", each=EDGE, sheet=_SHEET):
    """Where water must be led away."""

    building = line(
        "Along a building", "", when(Edge.kind.is_("building"), 1, 0), source="edges of that kind", adds=True
    )


class AreaSlopes(Section, title="How each area lies", each=AREA, sheet=_SHEET):
    """Past its limit by how much; 0 is within it, or was not measured."""

    cross_most = factor(
        "Cross slope of a walk, most", "%", 100 / 48, low=1.5, high=2.1, source="2010 ADA 403.3, 1:48, seen in print"
    )
    along_most = factor(
        "Run slope of a walk, most", "%", 5, low=4, high=5, source="2010 ADA 403.3, 1:20, seen in print"
    )
    ramp_most = factor(
        "Run slope of a ramp, most", "%", 100 / 12, low=8, high=100 / 12, source="2010 ADA 405, 1:12, from memory"
    )
    drains = factor("Slope that drains", "%", 1, low=0.5, high=2, source="common practice, no source")
    drains_from = factor(
        "Slope that drains from a building", "%", 2, low=2, high=5, source="IRC R401.3 and IBC 1804, from memory"
    )
    clear_least = factor("Clear width, least", "in", 36, low=32, high=48, source="2010 ADA 403.5, from memory")
    clear_public = factor(
        "Clear width in a right of way, least", "in", 48, low=36, high=60, source="PROWAG R302, from memory"
    )
    lip_most = factor("Lip, most", "in", 0.25, low=0.125, high=0.25, source="2010 ADA 303.2, seen in print")
    lip_stop = factor("Lip, stop above", "in", 0.5, low=0.25, high=0.5, source="2010 ADA 303.3, seen in print")
    light_least = factor("Slab under cars, least", "in", 5, low=4, high=6, source="common practice, no source")
    heavy_least = factor("Slab under trucks, least", "in", 6, low=5, high=8, source="common practice, no source")
    panel_most = factor(
        "Panel over thickness, most", "", 30, low=24, high=36, source="ACI 302.1R-96, 24 to 36, seen in print"
    )

    walked = line("Nothing drives on it", "", when(AreaUse.vehicles.is_("none"), 1, 0), source="vehicles")
    driven = line("Driven on", "", 1 - walked, source="vehicles", adds=True)
    accessible = line(
        "Walk for everybody",
        "",
        when(AreaUse.accessible.is_("by use"), walked, when(AreaUse.accessible.is_("yes"), 1, 0)),
        source="as typed, else any area that nothing drives on",
    )
    cross_over = line(
        "Cross slope over its limit",
        "%",
        accessible * largest(0, if_given(AreaUse.cross, 0) - cross_most),
        source="of a walk for everybody",
    )
    along = line("Run slope as checked", "%", accessible * if_given(AreaUse.along, 0), source="of a walk for everybody")
    steepest = line(
        "Slope that water has",
        "%",
        largest(if_given(AreaUse.cross, 0), if_given(AreaUse.along, 0)),
        source="the greater of the two",
    )
    building = line(
        "At a building",
        "",
        when(total(BuildingEdges.building, AREA) > 0, 1, 0),
        source="1 with an edge along a building",
    )
    flat = line(
        "Too flat to drain by",
        "%",
        when(
            either(is_given(AreaUse.cross), is_given(AreaUse.along)),
            largest(0, when(building > 0, drains_from, drains) - steepest),
            0,
        ),
        source="slope that drains less the one it has; a blank slope is not checked",
    )
    clear_needed = line(
        "Clear width needed",
        "in",
        when(Permissions.right_of_way.is_("yes"), clear_public, clear_least),
        source="by where it lies",
    )
    narrow = line(
        "Clear width lacking",
        "in",
        largest(0, clear_needed - if_given(AreaUse.clear * IN_PER_FT, clear_needed)),
        source="least clear width less what was measured",
    )
    lip = line("Lip of a walk", "in", accessible * AreaUse.lip, source="of a walk for everybody")
    vehicle_least = line(
        "Least thickness for its vehicles",
        "in",
        when(AreaUse.vehicles.is_("heavy"), heavy_least, when(AreaUse.vehicles.is_("light"), light_least, 0)),
        source="by what drives on it",
    )
    too_thin = line(
        "Thickness lacking under vehicles",
        "in",
        largest(0, vehicle_least - smallest(Area.thickness, MeanThickness.other_end)),
        source="least thickness less the thinner end",
    )
    falls = line("Water runs to a building", "", when(AreaUse.falls.is_("yes"), 1, 0), source="as typed", adds=True)
    aspect = line(
        "Longer over shorter side of a panel",
        "",
        when(
            both(MatchedJoints.old <= 0, Panel.panel_length > 0, Panel.width > 0),
            largest(Panel.panel_length, Panel.width) / smallest(Panel.panel_length, Panel.width),
            0,
        ),
        source="longest panel and panel width; 0 where old joints decide",
    )
    floored = line(
        "Spaced by the floor for narrow strips",
        "",
        when(both(Panel.by_width * Panel.width < Panel.min_spacing, Panel.spacing >= Panel.min_spacing), 1, 0),
        source="1 where a narrow strip would want a joint every few inches",
    )
    aspect_free = line(
        "Long panels, of joints by width", "", aspect * (1 - floored), source="where the floor does not decide"
    )
    aspect_floored = line("Long panels, of a narrow strip", "", aspect * floored, source="where the floor decides")
    long_panel = line(
        "Panel longer than its thickness allows",
        "ft",
        largest(0, Panel.panel_length - panel_most * Area.thickness / IN_PER_FT),
        source="longest panel less its limit",
    )


class FootingCover(Section, title="Cover over footings", each=FOOTING, sheet=_SHEET):
    """Where the slab lies on one."""

    least_cover = factor("Cover over a footing, least", "in", 2, low=1.5, high=3, source="common practice, no source")

    touched = line(
        "The slab lies on it", "", when(OldFooting.cover < MeanThickness.mean, 1, 0), source="cover less than thickness"
    )
    below_least = line(
        "Cover lacking to the least",
        "in",
        touched * largest(0, least_cover - OldFooting.cover),
        source="least less cover",
    )
    below_half = line(
        "Cover lacking to half the slab",
        "in",
        touched * largest(0, Area.thickness / TWO - OldFooting.cover),
        source="half the nominal thickness less cover",
    )
    bonded = line(
        "Bonded",
        "",
        touched * when(Footing.over.is_("bond"), 1, 0),
        source="1 where the slab is bonded to it",
        adds=True,
    )


class DowelCover(Section, title="Dowels under watch", each=EDGE, sheet=_SHEET):
    """0 where an edge has no dowels."""

    cover_least = factor("Cover of a dowel, least", "in", 1.5, low=1, high=2, source="common practice, no source")
    cover_stop = factor(
        "Cover of a dowel, stop below", "in", 1, low=0.75, high=1.5, source="common practice, no source"
    )
    end_least = factor("End clearance of a dowel, least", "in", 6, low=4, high=12, source="common practice, no source")
    light_bar = factor("Dowel under cars, least", "in", 0.5, low=0.375, high=0.75, source="common practice, no source")
    heavy_bar = factor("Dowel under trucks, least", "in", 0.625, low=0.5, high=1, source="common practice, no source")

    doweled = line("Doweled", "", when(DoweledEdge.dowels > 0, 1, 0), source="1 with dowels", adds=True)
    cover_lacking = line(
        "Cover of dowels lacking",
        "in",
        doweled * largest(0, cover_least - DoweledEdge.cover),
        source="least less cover",
    )
    stop_lacking = line(
        "Cover of dowels lacking to the stop",
        "in",
        doweled * largest(0, cover_stop - DoweledEdge.cover),
        source="stop less cover",
    )
    end_lacking = line(
        "End clearance lacking", "in", doweled * largest(0, end_least - Edge.clearance), source="least less typed"
    )
    tight = line(
        "Ribbed bar in a tight hole",
        "",
        doweled * when(both(Edge.surface.is_("ribbed"), DoweledEdge.drill_diameter <= Edge.bar), 1, 0),
        source="ribs measure more than the bar",
        adds=True,
    )
    small = line(
        "Bar lacking for its vehicles",
        "in",
        doweled
        * largest(
            0,
            when(AreaUse.vehicles.is_("heavy"), heavy_bar, when(AreaUse.vehicles.is_("light"), light_bar, 0))
            - Edge.bar,
        ),
        source="least bar under vehicles less the bar",
    )
    free_wall = line(
        "Wall without isolation",
        "",
        when(both(Edge.kind.is_("wall"), Edge.isolation.is_("no")), 1, 0),
        source="a wall that the slab is poured against",
        adds=True,
    )


class Restraint(Section, title="Held on all sides", each=AREA, sheet=_SHEET):
    """Bonded below, doweled at the side and held by a wall: it cannot shrink, so it cracks."""

    held = line(
        "Bonded, doweled and walled in",
        "",
        when(
            both(
                total(FootingCover.bonded, AREA) > 0,
                total(DowelCover.doweled, AREA) > 0,
                total(DowelCover.free_wall, AREA) > 0,
            ),
            1,
            0,
        ),
        source="all three in one area",
        adds=True,
    )


class OpeningToTraffic(Section, title="When it may be used", sheet=_SHEET):
    """Cold doubles the days."""

    foot_days = factor("Days before feet", "", 1, low=1, high=3, source="common practice, no source")
    wheel_days = factor("Days before wheels", "", 7, low=3, high=14, source="common practice, no source")
    cold_below = factor(
        "Curing is slow below", "F", 50, low=40, high=55, source="common practice, no source; ACI 306R, from memory"
    )
    cold_times = factor("Days when it is slow, times", "", 2, low=1.5, high=3, source="common practice, no source")

    coldest = line(
        "Coldest",
        "F",
        smallest(if_given(Forecast.air, cold_below), if_given(Forecast.night, cold_below)),
        source="air now or the night's low; not cold where neither is given",
    )
    driven = line("Areas that are driven on", "", total(AreaSlopes.driven), source="vehicles")
    needed = line(
        "Days it needs",
        "",
        when(driven > 0, wheel_days, foot_days) * when(coldest < cold_below, cold_times, 1),
        source="feet or wheels, doubled in the cold",
    )
    lacking = line("Days lacking", "", largest(0, needed - OnSite.closed), source="needed less the close days")
