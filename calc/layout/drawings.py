"""The plans of the areas: charts that the spreadsheet program draws from cells, so that they follow every edit."""

from __future__ import annotations

from collections.abc import Callable

from calc.declared import Line
from calc.formula.levels import Level
from calc.layout.addresses import CellMap
from calc.layout.arial import pixels
from calc.layout.charts import Cells, Chart, Series, Stroke
from calc.layout.page import FixedText, Page
from calc.model.results import Shape
from calc.trade.levels import AREA, DRAWN_END, JOINT, POINT
from calc.trade.papers.area_text import AreaText
from calc.trade.takeoff.drawing import DowelsDrawn, OutlinePoint
from calc.trade.takeoff.joint_list import JointPlace

_ABREAST, _HIGH, _APART = 3, 200, 8
"""Plans side by side, and pixels: the height of a plan and the space between two."""

_ROW_POINTS, _ROW_PIXELS = 11.25, 15
"""The height of an empty row."""

_ROWS = -(-(_HIGH + _APART) // _ROW_PIXELS)
"""The rows that a plan covers."""


def lay_plans(page: Page, places: CellMap, shape: Shape) -> None:
    """A plan of each area, three side by side."""
    counts = dict(shape)
    first = page.row
    wide = sum(pixels(width) for width in page.widths) // _ABREAST - _APART
    page.charts += [_plan(places, first, area, counts, wide) for area in range(counts[AREA])]
    for _ in range(-(-counts[AREA] // _ABREAST) * _ROWS):
        page.heights[page.row] = _ROW_POINTS
        page.put(FixedText(page.row, 0, "quiet", ""))  # the print area goes down to the last cell
        page.next()


def _plan(places: CellMap, first: int, area: int, counts: dict[Level, int], wide: int) -> Callable[[], Chart]:
    """The plan of one area; its cells are looked up when every cell has its address."""

    joints, points, ends = counts[JOINT] // counts[AREA], len(POINT.axis.words), len(DRAWN_END.axis.words)
    drawn = (
        (Stroke.DOWELS, "doweled, side unknown", DowelsDrawn.along, DowelsDrawn.across, ends),
        (Stroke.OUTLINE, "outline, not to scale", OutlinePoint.along, OutlinePoint.across, points),
        (Stroke.JOINTS, "joints", JointPlace.place, JointPlace.in_use, joints),
        (Stroke.JOINTS_ALONG, "joints along", JointPlace.along_reach, JointPlace.along_place, joints),
    )

    def rows(line: Line, each: int) -> Cells:
        return _cells(places, line, area * each, area * each + each - 1)

    def chart() -> Chart:
        return Chart(
            first + (area // _ABREAST) * _ROWS,
            (area % _ABREAST) * (wide + _APART),
            wide,
            _HIGH,
            _name(places, area),
            _cells(places, AreaText.shape, area, area),
            f"Plan of area {area + 1}, not to scale: its outline, the joints across and along it, the doweled length.",
            tuple(
                Series(stroke, name, rows(along, each), rows(across, each))
                for stroke, name, along, across, each in drawn
            ),
        )

    return chart


def _cells(places: CellMap, line: Line, first: int, last: int) -> Cells:
    """Some of the cells of a line."""
    block, position = places.locations[line].block, places.locations[line].position
    start, end = block.first + first, block.first + last
    if block.across:
        return Cells(block.sheet, (position, start), (position, end))
    return Cells(block.sheet, (start, position), (end, position))


def _name(places: CellMap, area: int) -> Cells:
    """The cell with the name of an area."""
    blocks = (location.block for location in places.locations.values() if location.block.level == AREA)
    block = next(block for block in blocks if block.words is not None)
    assert block.words is not None
    place = (block.words, block.first + area) if block.across else (block.first + area, block.words)
    return Cells(block.sheet, place, place)
