"""A sheet during layout: the content of each cell. Nothing here knows a value or a file."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from functools import lru_cache
from math import ceil

from calc.declared import Declared, Line
from calc.intake.records import JobInput
from calc.layout.charts import Chart
from calc.layout.styles import LINE_HEIGHT
from calc.model.results import JobValues

_LETTERS = 1.22
"""Letters of body text in one unit of column width, with a small margin."""

CellValue = float | str | None
"""What a cell shows."""


@dataclass(frozen=True, slots=True)
class FixedText:
    """Fixed text."""

    row: int
    col: int
    role: str
    text: str


@dataclass(frozen=True, slots=True)
class Constant:
    """A value fixed at issue for the whole workbook."""

    row: int
    col: int
    role: str
    value: CellValue
    format: str = ""


@dataclass(frozen=True, slots=True)
class Number:
    """A row number that the program assigns."""

    row: int
    col: int
    role: str
    value: int


@dataclass(frozen=True, slots=True)
class Typed:
    """What a person typed for an input, a factor, a price or an override: it is edited here.

    ``offered`` are the words of a choice that the job may choose from, where those are not all.
    """

    row: int
    col: int
    role: str
    named: Declared
    index: int
    format: str
    offered: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Issued:
    """What a box held when the workbook was written; it is not edited."""

    row: int
    col: int
    role: str
    named: Declared
    index: int
    format: str


@dataclass(frozen=True, slots=True)
class Computed:
    """The formula of a line; its text is written when every cell has its address."""

    row: int
    col: int
    role: str
    line: Line
    index: int
    format: str


@dataclass(frozen=True, slots=True)
class Linked:
    """A formula that only refers to cells; ``text`` is written when every cell has its address."""

    row: int
    col: int
    role: str
    text: Callable[[], str]
    value: Callable[[JobValues], CellValue]
    format: str = ""
    wraps: bool = False
    """Whether its text is wrapped, so that the row height is set when it is written."""
    optional: bool = False
    """Whether it may show nothing."""


@dataclass(frozen=True, slots=True)
class JobText:
    """Text of the job itself: what was typed, in which cell, notes. Fixed at issue."""

    row: int
    col: int
    role: str
    value: Callable[[JobInput], CellValue]
    format: str = ""
    wraps: bool = True


@dataclass(frozen=True, slots=True)
class FormulaText:
    """The text of a formula, shown beside it.

    With ``room``, in pixels, a longer text goes on in the rows below; ``first`` is the room of the first row, ``part``
    which of ``parts`` rows this is.
    """

    row: int
    col: int
    role: str
    line: Line
    index: int
    room: float = 0.0
    first: float = 0.0
    part: int = 0
    parts: int = 1


@dataclass(frozen=True, slots=True)
class Jump:
    """A link to a cell of the workbook: its text names the sheet and the row, so that it can be followed on paper.

    ``called`` stands in place of the sheet and the row.
    """

    row: int
    col: int
    role: str
    target: Callable[[], tuple[str, int, int]]
    called: str = ""


@dataclass(frozen=True, slots=True)
class AddressText:
    """The address of a row of a line, as text."""

    row: int
    col: int
    role: str
    named: Declared
    index: int


@dataclass(frozen=True, slots=True)
class IssueValue:
    """What was worked out about the job when its workbook was written. Fixed at issue, not live."""

    row: int
    col: int
    role: str
    value: Callable[[JobValues], CellValue]
    format: str = ""
    wraps: bool = False


Content = (
    FixedText
    | Constant
    | Number
    | Typed
    | Issued
    | Computed
    | Linked
    | JobText
    | FormulaText
    | Jump
    | AddressText
    | IssueValue
)


@dataclass
class Page:
    """A sheet: its cells, its widths and heights, and how it prints."""

    name: str
    widths: tuple[float, ...]
    title: str = ""
    portrait: bool = False
    one_page: bool = False
    least_scale: float = 0.0
    """One page only where it need not be printed smaller than this; else as many as it takes."""
    contents: list[Content] = field(default_factory=list)
    heights: dict[int, float] = field(default_factory=dict)
    row: int = 0
    frozen_rows: int = 3
    frozen_cols: int = 1
    repeated_rows: int = 0
    """The rows that every printed page begins with; those that are frozen when 0."""
    charts: list[Callable[[], Chart]] = field(default_factory=list)
    """The charts over its cells; made when every cell has its address."""

    def put(self, cell: Content) -> None:
        """Adds a cell."""
        self.contents.append(cell)

    def words(self, col: int, text: str, role: str = "words") -> None:
        """Text in the current row; the row is made high enough for it."""
        self.contents.append(FixedText(self.row, col, role, text))
        if role not in ("section", "heading", "title", "subtitle"):
            self.fit(text, col)

    def fit(self, text: str, col: int, row: int | None = None) -> None:
        """Makes the row high enough to show ``text`` wrapped in its column."""
        self.fit_height(self.heights, self.row if row is None else row, text, col)

    def fit_height(self, heights: dict[int, float], row: int, text: str, col: int) -> None:
        """Makes a row of ``heights`` high enough to show ``text`` wrapped in its column."""
        heights[row] = max(heights.get(row, LINE_HEIGHT), self.height_of(text, col))

    def height_of(self, text: str, col: int) -> float:
        """How high a row must be to show ``text`` wrapped in its column; no program takes more than 409 points."""
        lines = lines_of(text, self.widths[min(col, len(self.widths) - 1)])
        return min(409.0, lines * LINE_HEIGHT + (2 if lines > 1 else 0))

    def next(self, rows: int = 1) -> None:
        """Goes down to the next row."""
        self.row += rows


@dataclass
class FullSizePage(Page):
    """A sheet that prints at full size: its columns fit the paper, so that nothing is made smaller."""

    label: str = ""
    """What the foot of each page says of the workbook."""
    row_height: float = 12.0
    """Points of a row that sets none."""
    repeated_from: int = 0
    """The first of the rows that every printed page begins with."""
    breaks: list[int] = field(default_factory=list)
    """The rows that begin a new page."""
    printed_cols: int = 0
    """The columns that are printed; all of them when 0."""
    details: set[int] = field(default_factory=set)
    """The rows that an outline can fold away. They stand open."""


def default_height(page: Page) -> float | None:
    """Points of a row that sets none; None is that of the writer."""
    return page.row_height if isinstance(page, FullSizePage) else None


def details_of(page: Page) -> set[int]:
    """The rows that an outline can fold away."""
    return page.details if isinstance(page, FullSizePage) else set()


@lru_cache(maxsize=16384)
def lines_of(text: str, width: float) -> int:
    """How many lines ``text`` takes when it is wrapped in a column so wide."""
    room = max(4.0, width * _LETTERS)
    if len(text) <= room and "\n" not in text:
        return 1
    lines = 0
    for paragraph in text.split("\n"):
        used, count = 0.0, 1
        for word in paragraph.split(" "):
            length = len(word) + (1 if used else 0)
            if used and used + length > room:
                count, used = count + 1, 0.0
                length = len(word)
            count += max(0, ceil(length / room) - 1)
            used += length if length <= room else length % room
        lines += count
    return max(1, lines)
