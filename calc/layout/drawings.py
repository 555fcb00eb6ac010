"""The pictures of a job workbook: the plan of each area on Takeoff, and where the money goes on Costs."""

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
from calc.trade.papers.area_text import AreaWord
from calc.trade.takeoff.drawing import OutlinePoint, Plan
from calc.trade.takeoff.joint_list import JointPlace

_WIDE, _HIGH, _APART, _BARS_HIGH, _ROW = 424, 250, 6, 300, 20
"""Pixels of a plan, between two, of the bars, and of a row that nothing stands in."""

_ROWS = _HIGH // _ROW + 1
"""The rows that a plan lies over."""


def lay_plans(page: Page, places: CellMap, shape: Shape) -> None:
    """A plan of each area, two abreast, above the lines of the sheet."""
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
    """The plan of one area; its cells are looked up when every place is known."""
    points = len(POINT.axis.words)

    def chart() -> Chart:
        along, across = places.locations[OutlinePoint.along], places.locations[OutlinePoint.across]

        def rows(spot: Location, start: int) -> Cells:
            top = spot.block.first + area * points
            return Cells(spot.block.sheet, (top + start, spot.lane), (top + points - 1, spot.lane))

        name = (along.block.first + area * points, along.block.named[AREA])
        return Chart(
            first + (area // 2) * _ROWS,
            (area % 2) * (_WIDE + _APART),
            _WIDE,
            _HIGH,
            Cells(along.block.sheet, name, name),
            _cell(places, AreaWord.shape, area),
            f"Plan of area {area + 1}, not to scale: its outline, the joints across it, what is doweled.",
            (
                Series(Stroke.DOWELS, "doweled, side unknown", _dowels(places, area), rows(across, points - 2)),
                Series(Stroke.OUTLINE, "outline, not to scale", rows(along, 0), rows(across, 0)),
                Series(Stroke.JOINTS, "joints", *_joints(places, area, counts[AREA])),
            ),
        )

    return chart


def _cell(places: CellMap, line: Line, area: int) -> Cells:
    """The cell of an area in a row of figures."""
    spot = places.locations[line]
    place = (spot.lane, spot.block.first + area)
    return Cells(spot.block.sheet, place, place)


def _dowels(places: CellMap, area: int) -> Cells:
    """Where the doweled length begins and ends, one below the other."""
    start, end = _cell(places, Plan.dowels_from, area), _cell(places, Plan.dowels_to, area)
    return Cells(start.sheet, start.first, end.last)


def _joints(places: CellMap, area: int, areas: int) -> tuple[Cells, Cells]:
    """Where the joints of an area lie, and for each in use one width; the rest lie at the start with none."""
    slots = places.locations[JointPlace.place].block.count // areas

    def of_area(line: Line) -> Cells:
        spot = places.locations[line]
        first = spot.block.first + area * slots
        return Cells(spot.block.sheet, (first, spot.lane), (first + slots - 1, spot.lane))

    return of_area(JointPlace.place), of_area(JointPlace.in_use)


def lay_money(page: Page, parts: Callable[[], tuple[Cells, Cells]]) -> None:
    """Where the money goes: a bar for each part of the price, drawn from the front page."""
    _lay_title(page, "Where the money goes", "Drawn from what the price is made of, on Bid.")
    row = page.row

    def chart() -> Chart:
        return Chart(
            row,
            0,
            2 * _WIDE + _APART,
            _BARS_HIGH,
            "Where the money goes, in $",
            "",
            "Bars of what the price is made of: the costs by group, tax, contingency, overhead, and margin.",
            (Series(Stroke.BARS, "parts of the price", *parts()),),
        )

    page.charts.append(chart)
    page.next(_BARS_HIGH // _ROW + 2)
