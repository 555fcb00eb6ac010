"""What the blocks of the sheet Bid share: its columns, its widths, the heads of blocks and the rows between them."""

from __future__ import annotations

from calc.layout.page import Page, lines_of

NAME = "Bid"
LABEL, VALUE, UNIT, TEXT, BESIDE, FIGURE, FIGURE_UNIT = range(7)
"""The columns of the front page: a label with its number, words, and the same again beside them."""

WIDTHS = (28.0, 11.0, 6.5, 38.5, 34.0, 12.5, 5.5)
NO_TEXT = "-"
"""Shown where there is no text."""

NUMBER_FORMAT = '#,##0.00;-#,##0.00;"-"'
_GAP = 4.5
TWO_SMALL_LINES = 23.0
LEAST_SCALE = 0.69
"""The smallest at which the page is printed; as wide as its columns are, it is at 0.7 on A4."""
SMALL_LINE, _SMALLER = 11.4, 8 / 9
"""Points of a line of small text, and its size over that of body text."""


class FrontPage(Page):
    """The front page: the wrapped text beside its numbers is small."""

    parts: tuple[int, int] = (0, 0)
    """The first and the last row of what is added up to the price."""

    def height_of(self, text: str, col: int) -> float:
        """How high a row must be to show ``text`` wrapped in its column."""
        if col not in (TEXT, BESIDE):
            return super().height_of(text, col)
        return lines_of(text, self.widths[col] / _SMALLER) * SMALL_LINE


def section_head(page: Page, title: str, beside: str = "") -> None:
    """The title of a block, and of the block beside it."""
    for col in range(FIGURE_UNIT + 1):
        page.words(col, {LABEL: title, BESIDE: beside}.get(col, ""), "section")
    page.heights[page.row] = 16
    page.next()


def gap_below(page: Page) -> None:
    """A small space below a block."""
    page.heights[page.row] = _GAP
    page.next()


def column_heads(page: Page, words: dict[int, str]) -> None:
    """The column heads of a block, those of numbers to the right."""
    for col in range(FIGURE_UNIT + 1):
        page.words(col, words.get(col, ""), "rowhead" if col in (VALUE, FIGURE, FIGURE_UNIT) else "head")
    page.next()
