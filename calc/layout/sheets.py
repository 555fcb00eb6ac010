"""The sheets of a job workbook by name, the bar of jumps between them, and how one at full size begins and ends."""

from __future__ import annotations

from calc.layout.addresses import CellMap
from calc.layout.grid import PAGE_ROOM, Grid
from calc.layout.page import FullSizePage
from calc.layout.page_breaks import page_breaks
from calc.layout.sheet_layout import Draft, SheetLayout
from calc.trade.papers.catalog import PAPERS
from calc.trade.story.catalog import STORY

WORKINGS = {
    "Area workings": "every step by area, edge and joint, and what the plans and papers are drawn from",
    "Haul workings": "every pile, vehicle, site and haul plan that was compared",
    "Order workings": "every order size, placing method and pack that was compared",
    "Cost workings": "every task, machine, rental and cost line",
}
"""The sheets of workings, in order, with what they are about."""

SHEETS_OF_LINES = (*(sheet.name for sheet in STORY), *WORKINGS)
"""The sheets whose lines follow from the others: those of the story, then the workings."""

SAFETY = "Check local code. This is not engineering. Licensed trades where the law asks."
"""Printed on every page."""

BAR = {
    "Bid": "Bid",
    "Measured": "Measured",
    **{sheet.short: sheet.name for sheet in STORY},
    "Checks": "Checks",
    "Papers": PAPERS[0].title,
    "Workings": next(iter(WORKINGS)),
    "Factors": "Factors",
    "Prices": "Prices",
    "Log": "Log",
}
"""The bar of jumps: the short name of each sheet, or of the first of several."""
SHORT_NAMES = {sheet: short for short, sheet in BAR.items()} | {
    name: f"{name.removesuffix('workings')}w." for name in WORKINGS
}
"""The name of a sheet in the text of a jump."""


def open_sheet(name: str, grid: Grid, places: CellMap, draft: Draft, about: str, here: str) -> SheetLayout:
    """A sheet with its title and its bar."""
    page = FullSizePage(name, grid.widths, name, frozen_rows=2, frozen_cols=0, repeated_rows=1)
    page.printed_cols = len(grid.widths)
    sheet = SheetLayout(page, grid, places, draft)
    sheet.head(about, BAR, here)
    return sheet


def paged(sheet: SheetLayout, room: float = PAGE_ROOM) -> FullSizePage:
    """The sheet with its page breaks, for pages with so many points of room."""
    page = sheet.page
    page.breaks = page_breaks(page.heights, sheet.starts, page.row, room, dense=not sheet.airy)
    return page
