"""The sheet Checks: two routes to one number, and what to watch."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from calc.declared import Caution, Check, Severity
from calc.layout.addresses import CellMap, cell, span
from calc.layout.line_sheets import format_of, open_page
from calc.layout.page import Computed, Linked
from calc.model.results import JobValues
from calc.trade.catalog import SECTIONS

NAME = "Checks"
_HEADS = ("Check", "One route", "Another route", "Unit", "Tolerance", "Missed")
_WIDTHS = (30.0, 11.0, 11.0, 9.0, 10.0, 8.0, 28.0, 22.0, 28.0, 20.0, 8.0, 34.0)
_ONE, _ANOTHER, _UNIT, _TOLERANCE, _MISSED = range(1, 6)
_SEVERITY, _FIRES, _SO_FAR, _OPEN, _NUMBER, _FOUND, _USUAL, _DO, _SOURCE, _OF, _SAID = range(1, 12)
_COLUMNS = {
    "label": 0,
    "severity": _SEVERITY,
    "so far": _SO_FAR,
    "not accepted": _OPEN,
    "fires": _FIRES,
    "found": _FOUND,
    "do": _DO,
    "number": _NUMBER,
    "unit": _OF,
    "said": _SAID,
}


@cache
def all_checks() -> tuple[Check, ...]:
    """Every check, in order."""
    return tuple(each for section in SECTIONS for each in section.declarations if isinstance(each, Check))


@cache
def all_cautions() -> tuple[Caution, ...]:
    """Every caution, the loudest first."""
    every = [each for section in SECTIONS for each in section.declarations if isinstance(each, Caution)]
    order = list(Severity)
    return tuple(sorted(every, key=lambda each: order.index(each.severity)))


def failed(job: JobValues) -> int:
    """How many checks a job misses."""
    return sum(int(job.of(each.failed)) for each in all_checks())


def fired(job: JobValues) -> Iterator[Caution]:
    """The cautions that a job earned, the loudest first."""
    return (each for each in all_cautions() if job.of(each.fires) == 1)


def open_stops(job: JobValues) -> list[Caution]:
    """The stops that the job earned and nobody accepted."""
    return [each for each in all_cautions() if each.open is not None and job.of(each.open) == 1]


class ChecksPage:
    """The sheet, and the addresses on it that the front page asks for."""

    def __init__(self, places: CellMap) -> None:
        self.page = open_page(NAME, "Checks: two routes to one number, and what to watch", _WIDTHS, _HEADS)
        self.page.repeated_rows = 2  # the heads of the checks say nothing of the cautions below them
        self.places = places
        self._lay_checks()
        self._lay_cautions()

    def _lay_checks(self) -> None:
        page = self.page
        self.first_check = page.row
        for each in all_checks():
            page.words(0, each.label, "label")
            for col, line in ((_ONE, each.one), (_ANOTHER, each.another), (_MISSED, each.failed)):
                self.places.put_cell(line, NAME, page.row, col)
                page.put(Computed(page.row, col, "formula", line, 0, format_of(line)))
            page.words(_UNIT, each.unit_text, "unit")
            self._link_tolerance(each)
            page.next()
        self.last_check = page.row - 1
        page.next()
        self.total = page.row
        page.words(0, "Checks missed, in all", "check")
        cells = self.failed_column(NAME)
        page.put(Linked(page.row, _MISSED, "sum", lambda: f"SUM({cells})", lambda job: float(failed(job)), "0"))
        page.next(2)

    def _link_tolerance(self, each: Check) -> None:
        tolerance = each.tolerance
        self.page.put(
            Linked(
                self.page.row,
                _TOLERANCE,
                "formula",
                lambda: self.places.one(tolerance, 0, NAME, "cr"),
                lambda job: job.of(tolerance),
                "0.000000",
            )
        )

    def _lay_cautions(self) -> None:
        page = self.page
        page.words(0, "Cautions, the loudest first", "section")
        page.next()
        page.words(
            0, "Fires is 1 when the job earned it. Practice and law differ by place: local code wins.", "heading"
        )
        page.next()
        heads = {
            0: "Caution",
            _SEVERITY: "Severity",
            _FIRES: "Fires",
            _SO_FAR: "Fired so far",
            _OPEN: "Not accepted",
            _NUMBER: "Number",
            _OF: "Unit of the number",
            _FOUND: "What was found",
            _USUAL: "Usual practice",
            _DO: "What to do",
            _SOURCE: "Source",
            _SAID: "As said on the Bid",
        }
        for col in range(_SAID + 1):
            page.words(col, heads.get(col, ""), "head")
        page.next()
        self.first = page.row
        for place, each in enumerate(all_cautions()):
            self._lay_caution(place, each)
            page.next()
        self.last = page.row - 1

    def _lay_caution(self, place: int, each: Caution) -> None:
        page = self.page
        for col, text in (
            (0, each.label),
            (_SEVERITY, each.severity.value),
            (_USUAL, each.usual),
            (_DO, each.do),
            (_SOURCE, each.source),
            (_OF, each.number.unit_text or "-"),
        ):
            page.words(col, text, "label" if col == 0 else "words")
        self.places.put_cell(each.fires, NAME, page.row, _FIRES)
        page.put(Computed(page.row, _FIRES, "formula", each.fires, 0, "0"))
        row = page.row
        fires = cell(NAME, row, _FIRES, NAME)
        above = f"{cell(NAME, self.first, _FIRES, NAME, 'cr')}:{fires}"
        page.put(
            Linked(
                row,
                _SO_FAR,
                "formula",
                lambda: f"IF({fires}=1,SUM({above}),0)",
                lambda job: _so_far(job, place),
                "0",
            )
        )
        if each.open is not None:
            self.places.put_cell(each.open, NAME, row, _OPEN)
            page.put(Computed(row, _OPEN, "formula", each.open, 0, "0"))
        self.places.put_cell(each.number, NAME, row, _NUMBER)
        page.put(Computed(row, _NUMBER, "formula", each.number, 0, format_of(each.number)))
        self.places.put_cell(each.found, NAME, page.row, _FOUND)
        page.put(Computed(page.row, _FOUND, "sentence", each.found, 0, ""))
        page.room(each.found.formula.words, _FOUND)
        parts = '&": "&'.join((cell(NAME, row, _SEVERITY, NAME), cell(NAME, row, _FOUND, NAME)))
        advice = cell(NAME, row, _DO, NAME)
        page.put(Linked(row, _SAID, "note", lambda: f'{parts}&" "&{advice}', lambda job: said(job, each)))
        page.room(f"{each.found.formula.words} {each.do} {each.severity.value}", _SAID)

    def caution_column(self, what: str, seen_from: str, headed: bool) -> str:
        """The range of one column of the cautions."""
        col = _COLUMNS[what]
        return span(NAME, (self.first - headed, col), (self.last, col), seen_from)

    def failed_column(self, seen_from: str) -> str:
        """The range of the misses, 0 or 1 for each check."""
        return span(NAME, (self.first_check, _MISSED), (self.last_check, _MISSED), seen_from)

    def failed_cell(self, seen_from: str) -> str:
        """The address of the number of missed checks."""
        return cell(NAME, self.total, _MISSED, seen_from, "cr")


def said(job: JobValues, each: Caution) -> str:
    """A caution as the front page says it."""
    return f"{each.severity.value}: {job.of(each.found)} {each.do}"


def _so_far(job: JobValues, place: int) -> float:
    cautions = all_cautions()
    if job.of(cautions[place].fires) != 1:
        return 0.0
    return float(sum(job.of(each.fires) == 1 for each in cautions[: place + 1]))
