"""Charts, drawn by the spreadsheet program from cells, so that they follow every edit."""

from __future__ import annotations

from copy import deepcopy
from dataclasses import dataclass
from enum import Enum
from typing import Any

from calc.layout.styles import FONT, INK, QUIET, RULE

_SIZE = 9
"""Points of the text in a chart."""


@dataclass(frozen=True, slots=True)
class Cells:
    """A range that a chart is drawn from, counted from 0."""

    sheet: str
    first: tuple[int, int]
    last: tuple[int, int]

    @property
    def listed(self) -> list[str | int]:
        """The range as the writer takes it."""
        return [self.sheet, *self.first, *self.last]


class Stroke(Enum):
    """How a series is drawn."""

    OUTLINE = "outline"
    JOINTS = "joints"
    JOINTS_ALONG = "joints along"
    DOWELS = "dowels"


@dataclass(frozen=True, slots=True)
class Series:
    """Positions along, positions across, and the name in the legend."""

    stroke: Stroke
    name: str
    along: Cells
    across: Cells


@dataclass(frozen=True, slots=True)
class Chart:
    """A chart: its upper left corner and size, its title and axis title, and its alternative text.

    ``left`` is in pixels from the edge of the sheet, like the size. ``title`` and ``foot`` are text, or the cell that
    holds it.
    """

    row: int
    left: int
    width: int
    height: int
    title: Cells | str
    foot: Cells | str
    alt_text: str
    series: tuple[Series, ...]


_BACK_TO_ZERO = {
    "type": "percentage", "value": 100, "direction": "minus", "end_style": 0,
    "line": {"color": QUIET, "width": 1.25, "dash_type": "dash"},
}  # fmt: skip
"""A dashed line from a point back to an axis."""

_STROKES: dict[Stroke, dict[str, Any]] = {
    Stroke.OUTLINE: {"line": {"color": INK, "width": 2}, "marker": {"type": "none"}},
    Stroke.JOINTS: {"line": {"none": True}, "marker": {"type": "none"}, "y_error_bars": _BACK_TO_ZERO},
    Stroke.JOINTS_ALONG: {"line": {"none": True}, "marker": {"type": "none"}, "x_error_bars": _BACK_TO_ZERO},
    Stroke.DOWELS: {"line": {"color": RULE, "width": 5}, "marker": {"type": "none"}},
}  # fmt: skip


def draw(book: Any, sheet: Any, chart: Chart) -> int:
    """Draws a chart on a sheet of a workbook that is being written. The writer's code: not 0 when it could not."""
    drawn = book.add_chart({"type": "scatter", "subtype": "straight"})
    for each in chart.series:
        drawn.add_series(
            {
                "name": each.name,
                "categories": each.along.listed,
                "values": each.across.listed,
                **deepcopy(_STROKES[each.stroke]),  # the writer may write into them: the next would differ
            }
        )
    _frame_plan(drawn, chart)
    drawn.set_size({"width": chart.width, "height": chart.height})
    return int(
        sheet.insert_chart(
            chart.row, 0, drawn, {"description": chart.alt_text, "object_position": 1, "x_offset": chart.left}
        )
        or 0
    )


def _frame_plan(drawn: Any, chart: Chart) -> None:
    _frame(drawn, chart)
    foot = {"name": _text(chart.foot), "name_font": _font(_SIZE), "num_font": _font(8)}
    drawn.set_x_axis({**foot, "major_gridlines": {"visible": False}, "num_format": "0", "min": 0})
    drawn.set_y_axis({"visible": False, "major_gridlines": {"visible": False}, "crossing": "min"})
    drawn.set_legend({"position": "bottom", "font": _font(8)})


def _frame(drawn: Any, chart: Chart) -> None:
    drawn.set_title({"name": _text(chart.title), "name_font": _font(10, bold=True), "overlay": False})
    drawn.set_chartarea({"border": {"color": RULE, "width": 0.75}})


def _text(text: Cells | str) -> str | list[str | int]:
    return text if isinstance(text, str) else text.listed[:3]


def _font(size: int, bold: bool = False) -> dict[str, Any]:
    return {"name": FONT, "size": size, "bold": bold, "color": INK}
