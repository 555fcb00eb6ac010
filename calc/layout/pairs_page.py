"""The sheet of small pours that could share a truck."""

from __future__ import annotations

from collections.abc import Sequence

from calc.layout.page import Page, Shown
from calc.layout.styles import DATE_FORMAT
from calc.layout.week_cells import link, say, week_page
from calc.model.results import SharedTruck

PAIRS = "Two on a truck"

_PAIR_HEADS = ("Pour date", "First stop", "Second stop", "Yards", "Apart", "Together", "Saves", "What must hold")
_MUST_HOLD = (
    "Same day, one plant; the stronger mix and what goes into it for both; both unloaded, with the way from one stop "
    "to the next, before the truck's time is up. Ask the plant; nothing is changed by itself."
)


def pairs_page(found: Sequence[SharedTruck]) -> Page:
    """Small pours that could share a truck, the best saving first."""
    page = week_page(
        PAIRS,
        "Two on a truck: small pours that could share one",
        (11.0, 14.0, 14.0, 9.0, 12.0, 12.0, 12.0, 60.0),
        _PAIR_HEADS,
    )
    for pair in found:
        _lay_pair(page, pair)
        page.next()
    if not found:
        page.words(0, "none", "label")
        page.words(7, "No two pours of this week could share a truck and save by it.", "note")
    return page


def _lay_pair(page: Page, pair: SharedTruck) -> None:
    facts: tuple[tuple[int, Shown, str], ...] = (
        (0, pair.first.day, DATE_FORMAT),
        (1, pair.first.job, ""),
        (2, pair.second.job, ""),
        (3, pair.first.yards + pair.second.yards, "#,##0.00"),
        (4, pair.apart, '"$"#,##0.00'),
        (5, pair.together, '"$"#,##0.00'),
    )
    for col, value, face in facts:
        say(page, col, value, face)
    row = page.row + 1
    link(page, 6, "sum", f"E{row}-F{row}", pair.saving, '"$"#,##0.00')
    page.words(7, _MUST_HOLD, "note")
