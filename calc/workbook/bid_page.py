"""The sheet Bid: what is ordered and bought, what was decided and why, what to watch, and whether the checks hold."""

from __future__ import annotations

from collections.abc import Callable

from calc.declared import Caution, Declared, Given, Kind, Line
from calc.formula.kinds import Sort
from calc.trade.bid import BID
from calc.workbook.checks import ChecksPage, all_checks, fired, missed, open_stops, said
from calc.workbook.lines import SAFETY, format_of, shown
from calc.workbook.looks import LEGEND
from calc.workbook.page import Computed, Linked, Number, Page, Shown, Spoken
from calc.workbook.places import Places, cell
from calc.workbook.values import JobValues

NAME = "Bid"
_LABEL, _VALUE, _UNIT, _TEXT, _PLACE = range(5)
_WIDTHS = (30.0, 13.0, 8.0, 64.0, 5.0)
_NUMBER = '#,##0.00;-#,##0.00;"-"'
SLOTS = 8
"""Cautions that the front page has room for at issue; doubled until the job fits."""

TOO_SHORT = "CHECK: list too short, run flatwork again"
"""Said when an edit fires more cautions than the front page has slots for."""

EMPTY = "-"
"""Shown in a slot that is not in use."""


def slots_for(job: JobValues) -> int:
    """How many cautions the front page must have room for."""
    slots = SLOTS
    while slots < sum(1 for _ in fired(job)):
        slots *= 2
    return slots


def bid_page(places: Places, checks: ChecksPage, slots: int) -> Page:
    """The front page."""
    page = Page(NAME, _WIDTHS, "Bid", portrait=True, one_page=True, frozen_rows=2, frozen_cols=0)
    page.put(Spoken(0, _LABEL, "title", lambda job: f"Bid {job.id}"))
    page.heights[0] = 24
    page.next()
    page.words(_LABEL, SAFETY, "subtitle")
    page.next(2)
    _lay_master_check(page, checks)
    _lay_readiness(page, checks)
    for title, rows in BID.blocks:
        _section(page, title)
        for named in rows:
            _lay_row(page, places, *(named if isinstance(named, tuple) else (named, None)))
        page.next()
    _lay_cautions(page, checks, slots)
    _lay_legend(page)
    return page


def _section(page: Page, title: str) -> None:
    for col in range(_TEXT + 1):
        page.words(col, title if col == _LABEL else "", "section")
    page.next()


def _lay_master_check(page: Page, checks: ChecksPage) -> None:
    """How many checks pass, and in words whether all do."""
    page.words(_LABEL, "Checks", "big")
    missed_cell = checks.missed_cell(NAME)
    every = len(all_checks())
    page.put(
        Linked(
            page.row,
            _TEXT,
            "check",
            lambda: f'IF({missed_cell}=0,"ALL CHECKS PASS",{missed_cell}&" CHECK(S) FAIL: see Checks")',
            lambda job: "ALL CHECKS PASS" if not missed(job) else f"{missed(job)} CHECK(S) FAIL: see Checks",
        )
    )
    page.put(
        Linked(
            page.row,
            _VALUE,
            "formula",
            lambda: f"{_count(checks)}-{missed_cell}",
            lambda job: float(every - missed(job)),
            "0",
        )
    )
    page.words(_UNIT, "pass", "unit")
    page.heights[page.row] = 20
    page.next()


def _lay_readiness(page: Page, checks: ChecksPage) -> None:
    """Whether a stop stands in the way, in words."""
    page.words(_LABEL, "Ready", "big")
    open_cells = checks.caution_column("not accepted", NAME, headed=False)
    page.put(
        Linked(
            page.row,
            _TEXT,
            "alarm",
            lambda: (
                f'IF(SUM({open_cells})>0,"NOT READY: "&SUM({open_cells})&" stop(s) not accepted, see Cautions","READY")'
            ),
            lambda job: (
                f"NOT READY: {len(open_stops(job))} stop(s) not accepted, see Cautions" if open_stops(job) else "READY"
            ),
        )
    )
    page.heights[page.row] = 20
    page.next(2)


def _count(checks: ChecksPage) -> str:
    return f"COUNT({checks.missed_column(NAME)})"


def _lay_row(page: Page, places: Places, named: Declared, why: Line | None) -> None:
    """A fact or a number brought from where it stands, with the reason in words where there is one."""
    page.words(_LABEL, named.label, "label")
    if why is not None:
        places.put_cell(why, NAME, page.row, _TEXT)
        page.put(Computed(page.row, _TEXT, "sentence", why, 0, ""))
        page.heights[page.row] = 27
    if named.sort is Sort.TEXT or (isinstance(named, Given) and named.kind is Kind.DATE):
        _link(page, places, named, _TEXT)
    else:
        line = named.all_rows if isinstance(named, Line) and named.all_rows is not None else named
        _link(page, places, line, _VALUE)
        page.words(_UNIT, named.unit_text, "unit")
        if isinstance(line, Line) and why is None:
            whole = line.formula.words if line is named else f"all rows: {_formula_words(named)}"
            page.words(_TEXT, whole, "note")
    page.next()


def _formula_words(named: Declared) -> str:
    return named.formula.words if isinstance(named, Line) else ""


def _link(page: Page, places: Places, named: Declared, col: int) -> None:
    date = isinstance(named, Given) and named.kind is Kind.DATE
    words = named.sort is Sort.TEXT

    page.put(
        Linked(
            page.row,
            col,
            "sentence" if words or date else "sum",
            lambda: places.one(named, 0, NAME, "cr"),
            lambda job: shown(job.of(named)),
            "yyyy-mm-dd" if date else format_of(named),
        )
    )


def _lay_cautions(page: Page, checks: ChecksPage, slots: int) -> None:
    """The cautions that the job earned, the loudest first, in slots that follow the numbers."""
    _section(page, "Cautions")
    heads = {_LABEL: "Caution", _VALUE: "Number", _UNIT: "Unit", _TEXT: "What was found, and what to do", _PLACE: "No."}
    for col, head in heads.items():
        page.words(col, head, "head")
    page.next()
    for place in range(slots):
        _lay_caution(page, checks, place)
        page.next()
    page.next()
    fires, last = checks.caution_column("fires", NAME, headed=False), cell(NAME, page.row - 2, _PLACE, NAME, "cr")
    page.put(
        Linked(
            page.row,
            _TEXT,
            "check",
            lambda: f'IF(SUM({fires})>{last},"{TOO_SHORT}",SUM({fires})&" caution(s), all shown")',
            lambda job: f"{sum(1 for _ in fired(job))} caution(s), all shown",
        )
    )
    page.next(2)


def _lay_caution(page: Page, checks: ChecksPage, place: int) -> None:
    row = page.row
    page.put(Number(row, _PLACE, "number", place + 1))
    number = cell(NAME, row, _PLACE, NAME, "c")
    picks: tuple[tuple[int, str, Callable[[JobValues, Caution], Shown], Shown, str, str], ...] = (
        (_LABEL, "label", lambda _job, each: each.label, EMPTY, "label", ""),
        (_VALUE, "formula", lambda job, each: job.of(each.number), 0.0, "number", _NUMBER),
        (_UNIT, "unit", lambda _job, each: each.number.unit_text or EMPTY, EMPTY, "unit", ""),
        (_TEXT, "sentence", said, EMPTY, "said", ""),
    )
    for col, role, say, empty, column, format_text in picks:
        page.put(
            Linked(
                row,
                col,
                role,
                _picked(checks, number, column, empty),
                _in_slot(place, say, empty),
                format_text,
            )
        )
    page.heights[row] = 27


def _picked(checks: ChecksPage, number: str, column: str, empty: Shown) -> Callable[[], str]:
    so_far = checks.caution_column("so far", NAME, headed=False)
    fires = checks.caution_column("fires", NAME, headed=False)
    picked = f"INDEX({checks.caution_column(column, NAME, headed=True)},MATCH({number},{so_far},0)+1)"
    otherwise = "0" if empty == 0.0 else f'"{EMPTY}"'
    return lambda: f"IF({number}>SUM({fires}),{otherwise},{picked})"


def _in_slot(place: int, say: Callable[[JobValues, Caution], Shown], empty: Shown) -> Callable[[JobValues], Shown]:
    def value(job: JobValues) -> Shown:
        cautions = list(fired(job))
        return say(job, cautions[place]) if place < len(cautions) else empty

    return value


def _lay_legend(page: Page) -> None:
    _section(page, "Legend")
    for role, meaning in LEGEND:
        page.words(_LABEL, {"issue": "as of issue"}.get(role, role), role)
        page.words(_TEXT, meaning, "note")
        page.next()
