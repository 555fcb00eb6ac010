"""The pictures of a job workbook: the plan of each area on Takeoff, and where the money goes on Costs."""

from __future__ import annotations

from collections.abc import Callable

from calc.declared import Line
from calc.formula.levels import Level
from calc.trade.joint_list import JointPlace
from calc.trade.levels import AREA, POINT
from calc.trade.outline_points import OutlinePoint, Plan
from calc.trade.paper_lines import AreaWord
from calc.workbook.blocks import head, word_of
from calc.workbook.charts import Cells, Chart, Series, Stroke
from calc.workbook.lines import CODE, FIGURES, ITEM, SOURCE, UNIT, WORKED, format_of
from calc.workbook.page import Computed, Explained, Page, Spoken
from calc.workbook.places import Block, Places, Spot
from calc.workbook.values import Shape

_WIDE, _HIGH, _APART, _BARS_HIGH, _ROW = 424, 250, 6, 300, 20
"""Pixels of a plan, between two, of the bars, and of a row that nothing stands in."""

_ROWS = _HIGH // _ROW + 1
"""The rows that a plan lies over."""

_WORDS = {
    OutlinePoint.along: "for each point its corner, its part of the radius, or its stop or corner of the list; the "
    "last point closes the outline",
    OutlinePoint.across: "for each point its corner, its part of the radius, or its stop or corner of the list, over "
    "one width of the plan",
}
"""What the formulas say in all, where each row has one of its own."""

_A_TURNING_POINT = 2
"""The row whose formula is shown: the first has nothing but the start."""


def lay_plans(page: Page, places: Places, shape: Shape) -> None:
    """A plan of each area, two abreast, above the lines of the sheet."""
    counts = dict(shape)
    _lay_title(page, "Plans of the areas", "Not to scale. Which side of an area is doweled was not surveyed.")
    first = page.row
    page.charts += [_plan(places, first, area, counts) for area in range(counts[AREA])]
    page.next(-(-counts[AREA] // 2) * _ROWS + 1)


def lay_points(page: Page, places: Places, shape: Shape) -> None:
    """The points that the plans are drawn through."""
    counts = dict(shape)
    level = OutlinePoint.level
    _lay_title(page, OutlinePoint.title, OutlinePoint.heading)
    for line, words in _WORDS.items():
        page.words(ITEM, line.label, "label")
        page.words(UNIT, line.unit_text, "unit")
        page.words(WORKED, words)
        page.put(Explained(page.row, CODE, "code", line, _A_TURNING_POINT))
        page.words(SOURCE, line.source, "note")
        page.next()
    above = {upper: level.rows_above(upper, counts) for upper in (AREA, POINT)}
    block = Block(page.name, level, page.row + 1, counts[level], False, {}, None, above)
    _lay_points(page, places, block)
    page.next(block.count + 2)


def _lay_title(page: Page, title: str, heading: str) -> None:
    for col in range(FIGURES):
        page.words(col, title if col == ITEM else "", "section")
    page.next()
    page.words(ITEM, heading, "heading")
    page.next()


def _lay_points(page: Page, places: Places, block: Block) -> None:
    head(page, page.row, FIGURES, "area")
    for col, line in enumerate(_WORDS, start=FIGURES + 1):
        places.put_lane(line, block, col)
        head(page, page.row, col, f"{line.label}, {line.unit_text}" if line.unit_text else line.label)
        for index in range(block.count):
            page.put(Computed(block.first + index, col, "formula", line, index, format_of(line) or "0.000"))
    points = len(POINT.axis.words)
    for index in range(0, block.count, points):
        page.put(Spoken(block.first + index, FIGURES, "words", word_of(AREA, index // points), wraps=False))


def _plan(places: Places, first: int, area: int, counts: dict[Level, int]) -> Callable[[], Chart]:
    """The plan of one area; its cells are looked up when every place is known."""
    points = len(POINT.axis.words)

    def chart() -> Chart:
        along, across = places.spots[OutlinePoint.along], places.spots[OutlinePoint.across]

        def rows(spot: Spot, start: int) -> Cells:
            top = spot.block.first + area * points
            return Cells(spot.block.sheet, (top + start, spot.lane), (top + points - 1, spot.lane))

        name = (along.block.first + area * points, FIGURES)
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


def _cell(places: Places, line: Line, area: int) -> Cells:
    """The cell of an area in a row of figures."""
    spot = places.spots[line]
    place = (spot.lane, spot.block.first + area)
    return Cells(spot.block.sheet, place, place)


def _dowels(places: Places, area: int) -> Cells:
    """Where the doweled length begins and ends, one below the other."""
    start, end = _cell(places, Plan.dowels_from, area), _cell(places, Plan.dowels_to, area)
    return Cells(start.sheet, start.first, end.last)


def _joints(places: Places, area: int, areas: int) -> tuple[Cells, Cells]:
    """Where the joints of an area lie, and for each in use one width; the rest lie at the start with none."""
    slots = places.spots[JointPlace.place].block.count // areas

    def of_area(line: Line) -> Cells:
        spot = places.spots[line]
        first = spot.block.first + area * slots
        return Cells(spot.block.sheet, (first, spot.lane), (first + slots - 1, spot.lane))

    return of_area(JointPlace.place), of_area(JointPlace.used)


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
