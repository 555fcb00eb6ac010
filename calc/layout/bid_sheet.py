"""The sheet Bid: the price and what it is made of, what was decided and why, what moves the price, what to watch."""

from __future__ import annotations

from collections.abc import Callable

from calc.declared import Declared, Line
from calc.formula.value_types import ValueType
from calc.layout.addresses import CellMap
from calc.layout.bid_blocks import (
    A_WORD,
    BESIDE,
    FIGURE,
    LABEL,
    NAME,
    TEXT,
    UNIT,
    UNIT_OF_FIGURE,
    VALUE,
    WIDTHS,
    FrontPage,
    column_left,
    gap,
    heads,
    lay_cautions,
    lay_legend,
    lay_moves,
    made_of,
    section,
)
from calc.layout.charts import Chart, Series, Stroke
from calc.layout.checks_sheet import ChecksPage, all_checks, failed, fired, open_stops
from calc.layout.line_sheets import SAFETY, format_of, shown
from calc.layout.page import Computed, JobText, Linked, Page, Shown
from calc.layout.styles import dashed
from calc.model.results import JobValues
from calc.trade.inputs.job import Company, Job
from calc.trade.inputs.papers import PaperFacts
from calc.trade.levels import GROUP
from calc.trade.money.bid import ADDED, DECISIONS, FALLS_DUE, KEY, Decision, PriceSummary
from calc.trade.money.price import BidPrice, Subtotal
from calc.trade.ordering.order import Order

__all__ = ["EMPTY", "NAME", "SLOTS", "TOO_SHORT", "bid_page", "slots_for"]

SLOTS = 8
"""Cautions that the front page has room for at issue; doubled until the job fits."""

TOO_SHORT = "CHECK: list too short, run flatwork again"
"""Said when an edit fires more cautions than the front page has slots for."""

EMPTY = A_WORD
"""Shown in a slot that is not in use."""

_PERCENT = "0.0%"
_BARS_WIDE, _APART, _PIXELS_OF_A_ROW = 250, 6, 17
"""Pixels that the bars beside the parts of the price may take, between them and the numbers, and of a row."""

_OWN_FORMATS: dict[Declared, str] = {Order.chance: _PERCENT}
"""The number formats of what is shown otherwise here than where it is computed."""


def slots_for(job: JobValues) -> int:
    """How many cautions the front page must have room for."""
    slots = SLOTS
    while slots < sum(1 for _ in fired(job)):
        slots *= 2
    return slots


def bid_page(places: CellMap, checks: ChecksPage, slots: int) -> FrontPage:
    """The front page: one page, unless the job earned so many cautions that it would be too small to read."""
    page = FrontPage(NAME, WIDTHS, "Bid", portrait=True, one_page=slots <= SLOTS, frozen_rows=2, frozen_cols=0)
    _lay_head(page, places)
    _lay_price(page, places, checks)
    _lay_made_of(page, places)
    _lay_decisions(page, places)
    lay_moves(page)
    lay_cautions(page, checks, slots, TOO_SHORT)
    lay_legend(page)
    return page


def _lay_head(page: Page, places: CellMap) -> None:
    """Whose bid it is, for whom and when."""
    page.put(JobText(0, LABEL, "title", lambda job: f"Bid {job.id}", wraps=False))
    page.heights[0] = 24
    page.next()
    page.words(LABEL, SAFETY, "subtitle")
    page.next()
    for left, right in (
        (Job.client, Job.bid_date),
        (Job.address, Job.pour_date),
        (PaperFacts.revision, Company.name),
    ):
        page.words(LABEL, left.label, "label")
        _link(page, places, left, VALUE, "line")
        page.words(BESIDE, right.label, "label")
        _link(page, places, right, FIGURE, "line")
        page.next()
    gap(page)


def _lay_price(page: Page, places: CellMap, checks: ChecksPage) -> None:
    """The price, whether it is complete, whether a stop stands in the way, and whether the checks hold."""
    section(page, BidPrice.price.label)
    _link(page, places, BidPrice.price, LABEL, "hero")
    _lay_line(page, places, PriceSummary.complete, TEXT, "status")
    _lay_readiness(page, checks)
    page.heights[page.row] = 30
    page.next()
    beside: tuple[Callable[[], None], ...] = (
        lambda: _lay_amount(page, places, BidPrice.by_area),
        lambda: _lay_master_check(page, checks),
    )
    for lay, due in zip(beside, FALLS_DUE[:2], strict=True):
        lay()
        page.words(BESIDE, due.label, "label")
        _link(page, places, due, FIGURE, "formula")
        page.next()
    gap(page)


def _lay_amount(page: Page, places: CellMap, line: Line) -> None:
    page.words(LABEL, line.label, "label")
    _link(page, places, line, VALUE, "formula")
    page.words(UNIT, line.unit_text, "unit")


def _lay_readiness(page: Page, checks: ChecksPage) -> None:
    """Whether a stop stands in the way, in words."""
    open_cells = checks.caution_column("not accepted", NAME, headed=False)
    page.put(
        Linked(
            page.row,
            BESIDE,
            "alarm",
            lambda: (
                f'IF(SUM({open_cells})>0,"NOT READY: "&SUM({open_cells})&" stop(s) not accepted, see below","READY")'
            ),
            lambda job: (
                f"NOT READY: {len(open_stops(job))} stop(s) not accepted, see below" if open_stops(job) else "READY"
            ),
        )
    )


def _lay_master_check(page: Page, checks: ChecksPage) -> None:
    """How many checks pass, and in words whether all do."""
    page.words(LABEL, "Checks that pass", "label")
    failed_cell = checks.failed_cell(NAME)
    every = len(all_checks())
    page.put(
        Linked(
            page.row,
            TEXT,
            "status",
            lambda: f'IF({failed_cell}=0,"ALL CHECKS PASS",{failed_cell}&" CHECK(S) FAIL: see Checks")',
            lambda job: "ALL CHECKS PASS" if not failed(job) else f"{failed(job)} CHECK(S) FAIL: see Checks",
        )
    )
    page.put(
        Linked(
            page.row,
            VALUE,
            "formula",
            lambda: f"COUNT({checks.failed_column(NAME)})-{failed_cell}",
            lambda job: float(every - failed(job)),
            "0",
        )
    )


def _lay_made_of(page: FrontPage, places: CellMap) -> None:
    """The parts of the price with the share of each, and beside them what a foreman asks first."""
    section(page, "What the price is made of", "Key quantities")
    parts = [(Subtotal.amount, place, word.capitalize()) for place, word in enumerate(GROUP.axis.words)]
    parts += [(line, 0, label) for label, line in ADDED]
    first = page.row
    for (line, place, label), key in zip([*parts, (BidPrice.price, 0, "Price")], KEY, strict=True):
        role = "sum" if line is BidPrice.price else "formula"
        page.words(LABEL, label, "label" if role == "formula" else "strong")
        _link(page, places, line, VALUE, role, place)
        _lay_share(page, places, line, place)
        _lay_key(page, places, key)
        page.next()
    page.parts = (first, page.row - 2)
    page.charts.append(lambda: _bars(page))
    gap(page)


def _bars(page: FrontPage) -> Chart:
    """A bar beside each part of the price, as long as its amount."""
    first, last = page.parts
    return Chart(
        first,
        column_left(page, TEXT) + _APART,
        _BARS_WIDE,
        (last - first + 1) * _PIXELS_OF_A_ROW,
        "",
        "",
        "A bar beside each part of the price, as long as its amount: the longest is where most of the money goes.",
        (Series(Stroke.SHARES, "parts of the price", *made_of(page)),),
    )


def _lay_share(page: Page, places: CellMap, line: Line, place: int) -> None:
    """How much of the price it is."""
    row, price = page.row, BidPrice.price

    def text() -> str:
        whole = places.one(price, 0, NAME, "cr")
        return f"IF(ROUND({whole},6)>0,{places.one(line, place, NAME, 'cr')}/{whole},0)"

    def value(job: JobValues) -> Shown:
        whole = float(job.of(price))
        return float(job.of(line, place)) / whole if round(whole, 6) > 0 else 0.0

    page.put(Linked(row, UNIT, "share", text, value, _PERCENT))


def _lay_key(page: Page, places: CellMap, line: Line) -> None:
    """A quantity of the job, beside the parts of the price."""
    page.words(BESIDE, line.label, "label")
    _link(page, places, line if line.all_rows is None else line.all_rows, FIGURE, "formula")
    page.words(UNIT_OF_FIGURE, line.unit_text, "unit")


def _lay_decisions(page: Page, places: CellMap) -> None:
    """What was decided, why in words, and what would come next, with what it would cost more."""
    section(page, "What was decided, and why", "Beside it")
    heads(page, {LABEL: "Decision", VALUE: "Came to", TEXT: "Why", BESIDE: "What comes next", FIGURE: "By, $"})
    for each in DECISIONS:
        _lay_decision(page, places, each)
        page.next()
    gap(page)


def _lay_decision(page: Page, places: CellMap, each: Decision) -> None:
    page.words(LABEL, each.what, "label")
    came_to = each.came_to if each.came_to.all_rows is None else each.came_to.all_rows
    _link(page, places, came_to, VALUE, "figure")
    page.words(UNIT, each.came_to.unit_text.replace("$", ""), "unit")
    _lay_line(page, places, each.why, TEXT, "sentence")
    if each.beside is not None and each.more is not None:
        _lay_line(page, places, each.beside, BESIDE, "sentence")
        _link(page, places, each.more, FIGURE, "figure")
    if each.wordy:
        page.heights[page.row] = 25.5


def _lay_line(page: Page, places: CellMap, line: Line, col: int, role: str) -> None:
    """A line of the front page's own stands here; any other is brought from where it is computed."""
    if line.section.sheet != NAME:
        _link(page, places, line, col, role)
        return
    places.put_cell(line, NAME, page.row, col)
    page.put(Computed(page.row, col, role, line, 0, format_of(line)))


def _link(page: Page, places: CellMap, named: Declared, col: int, role: str, place: int = 0) -> None:
    """Brings a number or a fact from where it stands."""
    if isinstance(named, Line) and named.section.sheet == NAME and named not in places.locations:
        _lay_line(page, places, named, col, role)
        return
    face = _OWN_FORMATS.get(named, format_of(named))
    page.put(
        Linked(
            page.row,
            col,
            role,
            lambda: places.one(named, place, NAME, "cr"),
            lambda job: shown(job.of(named, place)),
            dashed(face) if role == "figure" and named.value_type is ValueType.NUMBER else face,
        )
    )
