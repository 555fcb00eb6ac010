"""The charts of a job workbook: a plan of each area on Takeoff, and the price breakdown on Costs."""

from __future__ import annotations

from collections.abc import Callable

from calc.declared import Line
from calc.formula.levels import Level
from calc.layout.addresses import CellMap, Location
from calc.layout.charts import Cells, Chart, Series, Stroke
from calc.layout.line_sheets import FIGURES, ITEM
from calc.layout.page import Page
from calc.model.results import Shape
from calc.trade.levels import AREA, POINT
from calc.trade.papers.area_text import AreaText
from calc.trade.takeoff.drawing import OutlinePoint, Plan
from calc.trade.takeoff.joint_list import JointPlace

_WIDE, _HIGH, _APART, _BARS_HIGH, _ROW = 424, 250, 6, 300, 20
"""Pixels: width and height of a plan, the space between two, the height of the bars, and of an empty row."""

_ROWS = _HIGH // _ROW + 1
"""The rows that a plan covers."""


def lay_plans(page: Page, places: CellMap, shape: Shape) -> None:
    """A plan of each area, two side by side, above the lines of the sheet."""
    counts = dict(shape)
    _lay_title(page, "Plans of the areas", "Not to scale. Which side of an area is doweled was not surveyed.")
    first = page.row
    page.charts += [_plan(places, first, area, counts) for area in range(counts[AREA])]
    page.next(-(-counts[AREA] // 2) * _ROWS + 1)


def _lay_title(page: Page, title: str, heading: str) -> None:
    for col in range(FIGURES):
        page.words(col, title if col == ITEM else "", "section")
    page.next()
    page.words(ITEM, heading, "heading")
    page.next()


def _plan(places: CellMap, first: int, area: int, counts: dict[Level, int]) -> Callable[[], Chart]:
    """The plan of one area; its cells are looked up when every cell has its address."""
    points = len(POINT.axis.words)

    def chart() -> Chart:
        along, across = places.locations[OutlinePoint.along], places.locations[OutlinePoint.across]

        def rows(location: Location, start: int) -> Cells:
            top = location.block.first + area * points
            return Cells(location.block.sheet, (top + start, location.position), (top + points - 1, location.position))

        name = (along.block.first + area * points, along.block.named[AREA])
        return Chart(
            first + (area // 2) * _ROWS,
            (area % 2) * (_WIDE + _APART),
            _WIDE,
            _HIGH,
            Cells(along.block.sheet, name, name),
            _cell(places, AreaText.shape, area),
            f"Plan of area {area + 1}, not to scale: its outline, the joints across and along it, the doweled length.",
            (
                Series(Stroke.DOWELS, "doweled, side unknown", *_dowels(places, area)),
                Series(Stroke.OUTLINE, "outline, not to scale", rows(along, 0), rows(across, 0)),
                Series(Stroke.JOINTS, "joints", *_joints(places, area, counts[AREA])),
                Series(Stroke.JOINTS_ALONG, "joints along", *_joints_along(places, area, counts[AREA])),
            ),
        )

    return chart


def _cell(places: CellMap, line: Line, area: int) -> Cells:
    """The cell of an area in a row of values."""
    location = places.locations[line]
    place = (location.position, location.block.first + area)
    return Cells(location.block.sheet, place, place)


def _dowels(places: CellMap, area: int) -> tuple[Cells, Cells]:
    """Where the doweled length begins and ends, along and across, one below another."""

    def pair(start: Line, end: Line) -> Cells:
        one, other = _cell(places, start, area), _cell(places, end, area)
        return Cells(one.sheet, one.first, other.last)

    return pair(Plan.dowels_from, Plan.dowels_to), pair(Plan.dowels_across_from, Plan.dowels_across_to)


def _joints(places: CellMap, area: int, areas: int) -> tuple[Cells, Cells]:
    """The positions of the joints of an area, and one width for each in use; the rest are at the start with none."""
    return _slots(places, JointPlace.place, area, areas), _slots(places, JointPlace.in_use, area, areas)


def _joints_along(places: CellMap, area: int, areas: int) -> tuple[Cells, Cells]:
    """The far ends of the joints along an area, and how far across each lies; the rest are at the start."""
    return _slots(places, JointPlace.along_reach, area, areas), _slots(places, JointPlace.along_place, area, areas)


def _slots(places: CellMap, line: Line, area: int, areas: int) -> Cells:
    """The cells of an area in the joint list."""
    location = places.locations[line]
    slots = location.block.count // areas
    first = location.block.first + area * slots
    return Cells(location.block.sheet, (first, location.position), (first + slots - 1, location.position))


def lay_money(page: Page, parts: Callable[[], tuple[Cells, Cells]]) -> None:
    """The price breakdown: a bar for each part of the price, drawn from the sheet Bid."""
    _lay_title(page, "Price breakdown", "Drawn from the price breakdown on Bid.")
    row = page.row

    def chart() -> Chart:
        return Chart(
            row,
            0,
            2 * _WIDE + _APART,
            _BARS_HIGH,
            "Price breakdown, $",
            "",
            "Bars of the parts of the price: the costs by group, tax, contingency, overhead, and margin.",
            (Series(Stroke.BARS, "parts of the price", *parts()),),
        )

    page.charts.append(chart)
    page.next(_BARS_HIGH // _ROW + 2)
