"""The grids of the sheets: columns, heights of rows, and the room of a printed page."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from calc.layout.text_width import room_of

ROW_NO, ITEM, VALUE = 0, 1, 2
"""The first columns of the story and of the workings: number of the row, what it is, its first value."""


@dataclass(frozen=True)
class Grid:
    """The columns of a kind of sheet, in characters, and the heights of its rows, in points.

    ``split`` is the column in which the text of a formula stands when there is room for it beside its words, ``source``
    that of its source.
    """

    widths: tuple[float, ...]
    row: float
    quiet: float
    split: int
    source: int

    @property
    def last(self) -> int:
        """Its last column."""
        return len(self.widths) - 1

    def room(self, first: int, last: int | None = None) -> float:
        """The pixels of a text from one column to another, the last one unless said."""
        return _room_of(self.widths, first, self.last if last is None else last)


_room_of = lru_cache(maxsize=1024)(room_of)


STORY = Grid((3.6, 24.0, 9.2, 7.5, *(7.5,) * 10), row=11.25, quiet=10.5, split=8, source=11)
"""The sheets that tell a job: item, quantity, unit, ten columns for words or steps."""

CHECKS = Grid((3.6, 25.0, 10.5, 10.5, 7.5, 5.4, *(7.0,) * 8), row=10.5, quiet=10.4, split=6, source=11)
"""The sheet of checks: check, both routes, unit, result, eight columns for words."""

WORKINGS = Grid((3.6, 24.2, *(6.65,) * 14), row=10.5, quiet=10.5, split=10, source=13)
"""The sheets with every step: item, and fourteen steps."""

FACTORS = Grid((3.6, 33.0, 9.2, 9.0, 10.0, *(6.2,) * 9), row=11.25, quiet=10.5, split=8, source=11)
"""The sheet of factors: item, value, unit, usual range, nine columns for the source."""

PRICES = Grid(
    (3.6, 29.3, 9.6, 7.6, 6.4, 8.5, 6.4, 7.4, 9.6, 9.6, *(5.8,) * 4), row=11.25, quiet=10.5, split=8, source=11
)
"""The sheet of prices: item, price, unit, container size and its unit, taxable, account, two days, supplier, row."""

TITLE_HEIGHT, BAR_HEIGHT, SECTION_GAP, SECTION_HEIGHT = 27.0, 12.0, 6.0, 16.5
"""Points of the title, the bar of jumps, the space above a section, and its head."""

BELOW_SECTION = 3.0
"""Points between the head of a section and its first row."""

PAGE_ROOM = 518.0
"""Points of the rows on a landscape page of letter paper, without the title, which is repeated on each."""

A4_ROOM = 500.0
"""The same of A4 paper, for sheets of which no row may be left over on either."""
