"""All cautions, a row each, at the end of the workings: what the sheets Bid and Checks and the papers read from.

To the right of the printed columns stand the texts that are read from here: what was found, what to do, and the source.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cache, partial

from calc.declared import Caution, Severity
from calc.declared.paper import CautionList
from calc.layout.addresses import cell, span
from calc.layout.grid import ITEM, VALUE
from calc.layout.page import CellValue, Computed, FixedText, Linked, Page
from calc.layout.sheet_layout import SheetLayout
from calc.layout.shown import format_of
from calc.layout.styles import COUNT_FORMAT, dashed
from calc.layout.text_width import text_width
from calc.model.results import JobValues
from calc.trade.catalog import SECTIONS
from calc.trade.papers.catalog import PAPERS

_SEVERITY, _ACTIVE, _NUMBER, _UNIT, _USUAL = range(VALUE + 1, VALUE + 6)
_HEADS = {
    ITEM: ("linehead", "Caution"),
    _SEVERITY: ("lineheadindent", "Severity"),
    _ACTIVE: ("lineheadright", "Active"),
    _NUMBER: ("lineheadright", "Number"),
    _UNIT: ("lineheadindent", "Unit"),
    _USUAL: ("lineheadindent", "Limit: the usual practice"),
}
"""The columns, of which the first two are for the names."""

_ASIDE = ("so far", "open", "found", "do", "brief", "limit")
"""The columns to the right of the printed ones, before those of the papers."""

_WIDE = {"found": 60.0, "do": 54.0, "brief": 40.0, "limit": 60.0}
_COUNTED = dashed(COUNT_FORMAT)

ShownOf = Callable[[JobValues, Caution], CellValue]
"""What a list shows of an active caution."""

ActiveOf = Callable[[JobValues], list[Caution]]
"""The active cautions of a job that a list holds."""


@cache
def all_cautions() -> tuple[Caution, ...]:
    """Every caution, most severe first."""
    every = [each for section in SECTIONS for each in section.declarations if isinstance(each, Caution)]
    order = list(Severity)
    return tuple(sorted(every, key=lambda each: order.index(each.severity)))


@cache
def paper_cautions() -> dict[str, CautionList]:
    """The list of cautions of each paper that has one, by the title of the paper."""
    return {paper.title: part for paper in PAPERS for part in paper.parts if isinstance(part, CautionList)}


def active_cautions(job: JobValues) -> Iterator[Caution]:
    """The active cautions of a job, most severe first."""
    return (each for each in all_cautions() if job.of(each.fires) == 1)


def open_stops(job: JobValues) -> list[Caution]:
    """The active stops of a job that nobody acknowledged."""
    return [each for each in all_cautions() if each.open is not None and job.of(each.open) == 1]


def limit_of(each: Caution) -> str:
    """The usual practice of a caution and who says so."""
    return f"Limit: {each.usual}. {each.source}"


class CautionTable:
    """The table, and the addresses in it that other sheets use."""

    def __init__(self, sheet: SheetLayout | None) -> None:
        """None: for sheets that are laid out alone, whose formulas nobody writes."""
        self._name, self._first, self._columns = "", 1, dict[str, int]()
        names = [*_ASIDE, *paper_cautions()]
        start = 2 if sheet is None else sheet.grid.last + 2
        self._columns = {name: start + place for place, name in enumerate(names)}
        self._columns |= {"label": ITEM, "severity": _SEVERITY, "active": _ACTIVE}
        self._columns |= {"number": _NUMBER, "unit": _UNIT, "usual": _USUAL}
        if sheet is not None:
            self._name = sheet.name
            self._lay(sheet)

    def column(self, what: str, seen_from: str, headed: bool = False) -> str:
        """The range of one column; that of a paper by its title has the places on its list."""
        col, last = self._columns[what], self._first + len(all_cautions()) - 1
        return span(self._name, (self._first - headed, col), (last, col), seen_from)

    def picked(self, what: str, number: str, seen_from: str) -> str:
        """What the active caution with that number has in a column; for a number that is not above those active."""
        return f"INDEX({self.column(what, seen_from, True)},MATCH({number},{self.column('so far', seen_from)},0)+1)"

    def in_slot(
        self, what: str, place: int, number: str, seen_from: str, value_of: ShownOf
    ) -> tuple[Callable[[], str], Callable[[JobValues], CellValue]]:
        """What the active caution of a slot has in a column, as the text of a formula and as a value.

        ``number`` is the cell of the number of the slot, ``place`` its place from 0. A slot not in use shows nothing.
        """
        empty: CellValue = 0.0 if what == "number" else ""
        otherwise = "0" if what == "number" else '""'

        def value(job: JobValues) -> CellValue:
            cautions = list(active_cautions(job))
            return value_of(job, cautions[place]) if place < len(cautions) else empty

        return (
            lambda: f"IF({number}>{self.count(seen_from)},{otherwise},{self.picked(what, number, seen_from)})",
            value,
        )

    def count(self, seen_from: str) -> str:
        """How many cautions are active."""
        return f"SUM({self.column('active', seen_from)})"

    @property
    def place(self) -> tuple[str, int, int]:
        """Sheet, row and column of the first caution, for a jump."""
        return self._name, self._first, ITEM

    def _lay(self, sheet: SheetLayout) -> None:
        page, grid = sheet.page, sheet.grid
        sheet.section("All cautions", "most severe first; practice and law differ: local code governs")
        sheet.number_row()
        for col in range(ITEM, grid.last + 1):
            role, text = _HEADS.get(col, ("linehead", ""))
            page.put(FixedText(page.row, col, role, text))
        for what in (*_ASIDE, *paper_cautions()):
            page.put(FixedText(page.row, self._columns[what], "issued", _aside_head(what)))
        sheet.end_row()
        wide = [_WIDE.get(what, grid.widths[VALUE]) for what in (*_ASIDE, *paper_cautions())]
        page.widths = (*grid.widths, 2.0, *wide)
        self._first = page.row
        for each in all_cautions():
            self._lay_row(sheet, each)

    def _lay_row(self, sheet: SheetLayout, each: Caution) -> None:
        page, row = sheet.page, sheet.page.row
        sheet.number_row()
        texts = {
            ITEM: (_role_of(sheet, each), each.label),
            _SEVERITY: ("stepwords", each.severity.value),
            _UNIT: ("stepunit", each.number.unit_text or "-"),
            _USUAL: ("stepwords", each.usual),
            self._columns["do"]: ("issued", each.do),
            self._columns["brief"]: ("issued", each.brief),
            self._columns["limit"]: ("issued", limit_of(each)),
        }
        for col, (role, text) in texts.items():
            page.put(FixedText(row, col, role, text))
        lines = [(each.fires, _ACTIVE, _COUNTED), (each.number, _NUMBER, dashed(format_of(each.number)))]
        if each.open is not None:
            lines.append((each.open, self._columns["open"], _COUNTED))
        for line, col, format_text in lines:
            sheet.places.put_cell(line, page.name, row, col)
            page.put(Computed(row, col, "step", line, 0, format_text))
        sheet.places.put_cell(each.found, page.name, row, self._columns["found"])
        page.put(Computed(row, self._columns["found"], "issued", each.found, 0, ""))
        self._lay_place(sheet, "so far", each, lambda job: list(active_cautions(job)))
        for title, listed in paper_cautions().items():
            if listed.holds(each):
                self._lay_place(sheet, title, each, partial(_held, listed))
        sheet.end_row()

    def _lay_place(self, sheet: SheetLayout, what: str, each: Caution, active: ActiveOf) -> None:
        """Its place among the active ones; 0 if it is not active."""
        page, row, col = sheet.page, sheet.page.row, self._columns[what]
        above = span(page.name, (self._first - 1, col), (row - 1, col), page.name)
        is_active = cell(page.name, row, _ACTIVE, page.name)

        def value(job: JobValues) -> float:
            found = active(job)
            return float(found.index(each) + 1) if each in found else 0.0

        text = f"IF({is_active}=1,MAX({above})+1,0)"
        page.put(Linked(row, col, "issuedcount", lambda: text, value, COUNT_FORMAT))


def lay_place(page: Page, top: int, col: int, place: int) -> None:
    """The number of a slot of a list of cautions that begins at row ``top``: one more than the slot above it."""
    above = span(page.name, (top - 1, col), (page.row - 1, col), page.name)
    page.put(Linked(page.row, col, "rowkey", lambda: f"MAX({above})+1", lambda _job: place + 1.0, "0"))


def _held(listed: CautionList, job: JobValues) -> list[Caution]:
    return [each for each in active_cautions(job) if listed.holds(each)]


def _role_of(sheet: SheetLayout, each: Caution) -> str:
    """The style of its name: small letters where it would run into the next column."""
    return "item" if text_width(each.label) <= sheet.grid.room(ITEM, _SEVERITY - 1) else "itemsmall"


def _aside_head(what: str) -> str:
    """The head of a column to the right of the printed ones."""
    heads = {
        "so far": "Place",
        "open": "Stop is open",
        "found": "What was found",
        "do": "What to do",
        "brief": "What to do, in brief",
        "limit": "Limit and source",
    }
    return heads.get(what, f"On {what}")
