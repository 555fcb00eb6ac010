"""The measure sheet to print and take to the site: one page for the site and one page for each area.

Its blanks are the columns of the jobs book, so that notes are typed as they were written. It shows no price.
"""

from __future__ import annotations

from collections.abc import Sequence

from calc.declared import Input, Kind
from calc.layout.addresses import CellMap
from calc.layout.page import FixedText, Page
from calc.layout.sheets import SAFETY
from calc.layout.workbook import resolve
from calc.trade.inputs.areas import Area, CrossSection, Deduction, Edge, OutlineCorner
from calc.trade.inputs.job import Job
from calc.trade.inputs.papers import PaperFacts
from calc.trade.inputs.placing import Access, WheelbarrowRoute
from calc.trade.inputs.removal import Footing, Plant
from calc.trade.inputs.site import AreaUse, Permissions
from calc.trade.inputs.work import Digging, OnSite, Removal
from calc.xlsx_write.write import Identity, workbook_bytes

TITLE = "Measure sheet"
_GRID = (9.4,) * 12
_LABEL_WIDE, _FIELD_WIDE = 2, 4
"""Columns of the label of a field, and of a whole field: label, blank, unit."""

_CREATED = 46023.0
"""The creation date in the blank workbooks: fixed, so that the same words give the same bytes."""

_FIELD_HEIGHT, _ROW_HEIGHT, _SKETCH_HEIGHT, _HEAD_HEIGHT, _GAP = 19.0, 17.0, 18.0, 26.0, 6.0

_AREA_FIELDS = (
    Area.length, Area.width, Area.other_width, Area.thickness, Area.other_thickness,
    Area.height_above_grade, Area.base, Area.quantity, Area.given_area, Area.layout_length, Area.panel_width,
    Area.old_slab, Area.old_slab_thickness, AreaUse.cross_slope, AreaUse.running_slope, AreaUse.slopes_to_building,
    AreaUse.vehicles, AreaUse.level_change,
)  # fmt: skip
_SITE_FIELDS = (
    Job.client, Job.address, PaperFacts.contact, Job.soil, Digging.by, Job.lines_to_cap, PaperFacts.water,
    Removal.saw_cut, WheelbarrowRoute.distance, Access.grade, Access.muddy, Access.chute, Access.wheelbarrow,
    Access.pump, Access.wheelbarrows, OnSite.power, Permissions.client, Permissions.right_of_way, Permissions.freezes,
    Permissions.cables, Permissions.licensed, Permissions.outlet, Permissions.locate, Permissions.locate_ends,
)  # fmt: skip
_ASKED_ON_SITE = (
    "WHO CAPS THE WATER, AND WHERE IS ITS VALVE?",
    "Where do the truck, the trailer and the washout go?",
    "How wide is the gate, and how many steps?",
    "Where does water drain? What must not be damaged?",
)


def measure_sheet() -> bytes:
    """The bytes of the workbook: the sheets Site and Area, each one page. Same words, same bytes."""
    pages = (_site_page(), _area_page())
    return workbook_bytes(
        [resolve(page, CellMap()) for page in pages], None, Identity(TITLE, "", _CREATED, "letter", bare=True)
    )


def _site_page() -> Page:
    page = _open("Site", f"{TITLE}: the site", "Fill in once per job. A blank means the default.")
    _lay_fields(page, _SITE_FIELDS)
    for question in _ASKED_ON_SITE:
        _lay_question(page, question)
    _section(page, "Plants to remove")
    _lay_rows(page, (Plant.what, Plant.quantity, Plant.width, Plant.depth, Plant.height, Plant.ball, Plant.ball_height,
                     Plant.trunk, Plant.notes), 8)  # fmt: skip
    _section(page, "Other notes")
    _lay_lines(page, 8)
    return page


def _area_page() -> Page:
    page = _open(
        "Area",
        f"{TITLE}: an area",
        "One page per area. Tape every station from ONE end, never gap by gap. Write units: 10' 6 1/2\", 45 cm.",
    )
    _lay_line(page, ("Area", "Photos, from-to"))
    page.put(FixedText(page.row, 0, "signaturelabel", f"Circle the shape:   {'     '.join(Area.shape.words_allowed)}"))
    page.heights[page.row] = _FIELD_HEIGHT
    page.next()
    _lay_fields(page, _AREA_FIELDS)
    _section(page, "Sketch, with north and the end of the tape")
    _lay_lines(page, 12, _SKETCH_HEIGHT, "dotted")
    _section(page, "Cross-sections: one row per station; depth is string line to subgrade. X and Y: outline points")
    _lay_rows(page, (CrossSection.station, CrossSection.width, CrossSection.depth, CrossSection.old_joint,
                     OutlineCorner.x, OutlineCorner.y, CrossSection.notes), 9)  # fmt: skip
    _section(page, "Edges")
    _lay_rows(page, (Edge.kind, Edge.length, Edge.quantity, Edge.spacing, Edge.bar_diameter, Edge.isolation,
                     Edge.curved, Edge.notes), 6)  # fmt: skip
    _section(page, "FOOTING?   Y   N        old footings under the new slab")
    _lay_rows(page, (Footing.length, Footing.width, Footing.depth_to_top, Footing.sides, Footing.reinforced,
                     Footing.treatment, Footing.notes), 2)  # fmt: skip
    _section(page, "Deductions: what stands inside the area and is not poured")
    _lay_rows(page, (Deduction.shape, Deduction.length, Deduction.width, Deduction.quantity, Deduction.isolation,
                     Deduction.notes), 2)  # fmt: skip
    return page


def _open(name: str, title: str, how: str) -> Page:
    page = Page(name, _GRID, title, portrait=True, one_page=True, frozen_rows=2, frozen_cols=0)
    page.words(0, title, "title")
    page.heights[0] = 24
    page.next()
    page.words(0, SAFETY, "subtitle")
    page.next()
    page.put(FixedText(page.row, 0, "line", how))
    page.next()
    _lay_line(page, ("Job", "Date", "Initials"))
    return page


def _section(page: Page, title: str) -> None:
    page.heights[page.row] = _GAP
    page.next()
    for col in range(len(_GRID)):
        page.words(col, title if col == 0 else "", "section")
    page.heights[page.row] = 16
    page.next()


def _lay_line(page: Page, labels: Sequence[str]) -> None:
    """Labels in one row, each with a line to write on."""
    share = len(_GRID) // len(labels)
    for place, label in enumerate(labels):
        first = place * share
        page.put(FixedText(page.row, first, "signaturelabel", label))
        for col in range(first + share // _FIELD_WIDE + (share > _FIELD_WIDE), first + share):
            page.put(FixedText(page.row, col, "signature", ""))
    page.heights[page.row] = _FIELD_HEIGHT
    page.next()


def _lay_fields(page: Page, givens: Sequence[Input]) -> None:
    """Three fields per row: the label, a blank, and its unit or Y and N to circle."""
    across = len(_GRID) // _FIELD_WIDE
    for start in range(0, len(givens), across):
        for place, given in enumerate(givens[start : start + across]):
            first = place * _FIELD_WIDE
            page.put(FixedText(page.row, first, "signaturelabel", given.label))
            page.put(FixedText(page.row, first + _LABEL_WIDE, "blank", ""))
            unit = _unit(given)
            page.put(
                FixedText(
                    page.row,
                    first + _LABEL_WIDE + 1,
                    "signaturelabel" if unit else "blank",
                    f"  {unit}" if unit else "",
                )
            )
        page.heights[page.row] = _FIELD_HEIGHT
        page.next()


def _unit(given: Input) -> str:
    """The unit of a blank, or the letters to circle; other choices are written out."""
    if given.kind is Kind.CHOICE:
        return "Y   N" if set(given.words_allowed) == {"yes", "no"} else ""
    return given.unit_text if given.kind in (Kind.NUMBER, Kind.SLOPE) else ""


def _lay_rows(page: Page, givens: Sequence[Input], rows: int) -> None:
    """A table of blanks under the headers of the jobs book; the last column takes the rest of the page."""
    for col in range(len(_GRID)):
        page.words(col, givens[col].header if col < len(givens) else "", "head")
    page.heights[page.row] = _HEAD_HEIGHT
    page.next()
    for _ in range(rows):
        for col in range(len(_GRID)):
            page.put(FixedText(page.row, col, "blank" if col < len(givens) - 1 else "signature", ""))
        page.heights[page.row] = _ROW_HEIGHT
        page.next()


def _lay_question(page: Page, question: str) -> None:
    page.put(FixedText(page.row, 0, "signaturelabel", question))
    for col in range(5, len(_GRID)):
        page.put(FixedText(page.row, col, "signature", ""))
    page.heights[page.row] = 22
    page.next()


def _lay_lines(page: Page, rows: int, height: float = _FIELD_HEIGHT, role: str = "signature") -> None:
    for _ in range(rows):
        for col in range(len(_GRID)):
            page.put(FixedText(page.row, col, role, ""))
        page.heights[page.row] = height
        page.next()
