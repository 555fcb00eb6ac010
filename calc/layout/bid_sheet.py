"""The sheet Bid: the price and its parts, what was decided and why, what moves the price, and the cautions."""

from __future__ import annotations

from collections.abc import Callable

from calc.declared import Caution, Declared, Line
from calc.formula.value_types import ValueType
from calc.layout.addresses import CellMap, cell
from calc.layout.charts import Cells, Chart, Series, Stroke
from calc.layout.checks_sheet import ChecksPage, all_checks, failed, fired, open_stops
from calc.layout.line_sheets import SAFETY, format_of, shown
from calc.layout.log_sheet import count_defaults, count_factors
from calc.layout.page import Computed, IssueValue, JobText, Linked, Number, Page, Shown, lines_of
from calc.layout.styles import LEGEND, LINE_HEIGHT, dashed
from calc.model.results import JobValues, RangeEnd, Sensitivity
from calc.model.sensitivity import SHOWN
from calc.trade.inputs.job import Company, Job
from calc.trade.inputs.papers import PaperFacts
from calc.trade.levels import GROUP
from calc.trade.money.bid import ADDED, DECISIONS, FALLS_DUE, KEY, Decision, PriceSummary
from calc.trade.money.price import BidPrice, Subtotal
from calc.trade.ordering.order import Order

NAME = "Bid"
LABEL, VALUE, UNIT, TEXT, BESIDE, FIGURE, UNIT_OF_FIGURE = range(7)
"""The columns of the front page: a label with its number, words, and the same again beside them."""

WIDTHS = (25.0, 11.0, 6.5, 39.5, 36.0, 11.0, 6.0)
A_WORD = "-"
"""Stands where there is nothing to say."""

_NUMBER = '#,##0.00;-#,##0.00;"-"'
_GAP = 4.5
_TWO_SMALL_LINES = 23.0
_SMALL_LINE, _SMALLER = 11.4, 8 / 9
"""Points of a line of small text, and its size over that of body text."""

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


class FrontPage(Page):
    """The front page: the wrapped words beside its numbers are small."""

    parts: tuple[int, int] = (0, 0)
    """The first and the last row of what is added up to the price."""

    def height_of(self, text: str, col: int) -> float:
        """How high a row must be to show ``text`` wrapped in its column."""
        if col not in (TEXT, BESIDE):
            return super().height_of(text, col)
        return lines_of(text, self.widths[col] / _SMALLER) * _SMALL_LINE


def section(page: Page, title: str, beside: str = "") -> None:
    """The title of a block, and of what stands beside it."""
    for col in range(UNIT_OF_FIGURE + 1):
        page.words(col, {LABEL: title, BESIDE: beside}.get(col, ""), "section")
    page.heights[page.row] = 16
    page.next()


def gap(page: Page) -> None:
    """A little room below a block."""
    page.heights[page.row] = _GAP
    page.next()


def column_left(page: Page, col: int) -> int:
    """The pixels from the edge of the sheet to a column, each digit of its width 7 and 5 more."""
    return round(sum(width * 7 + 5 for width in page.widths[:col]))


def made_of(page: FrontPage) -> tuple[Cells, Cells]:
    """Where the front page has the words and the amounts of what the price is made of."""
    first, last = page.parts
    return Cells(NAME, (first, LABEL), (last, LABEL)), Cells(NAME, (first, VALUE), (last, VALUE))


def heads(page: Page, words: dict[int, str]) -> None:
    """The heads of a block's columns, those of figures to the right."""
    for col in range(UNIT_OF_FIGURE + 1):
        page.words(col, words.get(col, ""), "rowhead" if col in (VALUE, FIGURE, UNIT_OF_FIGURE) else "head")
    page.next()


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
            dashed(face) if role == "figure" and named.sort is ValueType.NUMBER else face,
        )
    )


def lay_moves(page: Page) -> None:
    """What nobody measured, with the ends of its usual range and the price there. As of issue."""
    section(page, "What nobody measured, and what moves this price: as of issue")
    heads(
        page,
        {
            LABEL: "Left as usual",
            VALUE: "Taken as",
            TEXT: "At one end of its usual range",
            BESIDE: "At the other end",
            FIGURE: "As of issue",
        },
    )
    for place in range(SHOWN):
        page.put(IssueValue(page.row, LABEL, "told", _of_move(place, _label), wraps=True))
        page.put(IssueValue(page.row, VALUE, "telling", _of_move(place, _taken)))
        page.put(IssueValue(page.row, TEXT, "telling", _of_move(place, _one_end)))
        page.put(IssueValue(page.row, BESIDE, "telling", _of_move(place, _other_end)))
        page.put(IssueValue(page.row, FIGURE, "toldfigure", _of_move(place, _most), _NUMBER))
        page.heights[page.row] = LINE_HEIGHT
        page.next()
    page.put(IssueValue(page.row, LABEL, "telling", _unmeasured))
    page.heights[page.row] = LINE_HEIGHT
    page.next()
    gap(page)


def _unmeasured(job: JobValues) -> str:
    inputs, usual = count_defaults(job.job), count_factors(job.job)
    return f"{inputs} inputs were left to their default, and {usual} factors as usual: the Log has them all."


def _of_move(place: int, say: Callable[[Sensitivity, JobValues], Shown]) -> Callable[[JobValues], Shown]:
    def value(job: JobValues) -> Shown:
        sensitivity = job.sensitivity or ()
        return say(sensitivity[place], job) if place < len(sensitivity) else A_WORD

    return value


def _label(move: Sensitivity, _job: JobValues) -> Shown:
    return move.label


def _taken(move: Sensitivity, _job: JobValues) -> Shown:
    return f"{_plainly(move.taken)} {move.unit_text}".rstrip()


def _one_end(move: Sensitivity, job: JobValues) -> Shown:
    return _at_end(move.ends[0], move, job)


def _other_end(move: Sensitivity, job: JobValues) -> Shown:
    return _at_end(move.ends[1], move, job) if len(move.ends) > 1 else A_WORD


def _most(move: Sensitivity, _job: JobValues) -> Shown:
    return move.effect


def _at_end(end: RangeEnd, move: Sensitivity, job: JobValues) -> str:
    """Such as ``at 2.8 h: $2,295.48, 95.00 more``."""
    unit = f" {move.unit_text}" if move.unit_text and isinstance(end.value, float) else ""
    price = float(job.of(BidPrice.to_cent)) + end.more
    return f"at {_plainly(end.value)}{unit}: ${price:,.2f}, {abs(end.more):,.2f} {'more' if end.more > 0 else 'less'}"


def _plainly(value: float | str) -> str:
    return value if isinstance(value, str) else f"{value:,.3f}".rstrip("0").rstrip(".")


def lay_cautions(page: Page, checks: ChecksPage, slots: int, too_short: str) -> None:
    """The cautions that the job earned, the loudest first, in slots that follow the numbers."""
    section(page, "Cautions, the loudest first")
    heads(
        page,
        {
            LABEL: "Caution",
            VALUE: "Number",
            TEXT: "What was found",
            BESIDE: "What to do",
            FIGURE: "How loud",
            UNIT_OF_FIGURE: "No.",
        },
    )
    for place in range(slots):
        _lay_caution(page, checks, place)
        page.next()
    fires, last = (
        checks.caution_column("fires", NAME, headed=False),
        cell(NAME, page.row - 1, UNIT_OF_FIGURE, NAME, "cr"),
    )
    gap(page)
    page.put(
        Linked(
            page.row,
            TEXT,
            "check",
            lambda: f'IF(SUM({fires})>{last},"{too_short}",SUM({fires})&" caution(s), all shown")',
            lambda job: f"{sum(1 for _ in fired(job))} caution(s), all shown",
        )
    )
    page.next()
    gap(page)


def _lay_caution(page: Page, checks: ChecksPage, place: int) -> None:
    row = page.row
    page.put(Number(row, UNIT_OF_FIGURE, "number", place + 1))
    number = cell(NAME, row, UNIT_OF_FIGURE, NAME, "c")
    picks: tuple[tuple[int, str, Callable[[JobValues, Caution], Shown], Shown, str, str], ...] = (
        (LABEL, "label", lambda _job, each: each.label, A_WORD, "label", ""),
        (VALUE, "formula", lambda job, each: job.of(each.number), 0.0, "number", _NUMBER),
        (UNIT, "unit", lambda _job, each: each.number.unit_text or A_WORD, A_WORD, "unit", ""),
        (TEXT, "finding", lambda job, each: job.of(each.found), A_WORD, "found", ""),
        (BESIDE, "finding", lambda _job, each: each.do, A_WORD, "do", ""),
        (FIGURE, "figure", lambda _job, each: each.severity.value, A_WORD, "severity", ""),
    )
    for col, role, say, empty, column, face in picks:
        text = _picked(checks, number, column, empty)
        page.put(Linked(row, col, role, text, _in_slot(place, say, empty), face, wraps=col in (TEXT, BESIDE)))
    page.heights[row] = _TWO_SMALL_LINES


def _picked(checks: ChecksPage, number: str, column: str, empty: Shown) -> Callable[[], str]:
    so_far = checks.caution_column("so far", NAME, headed=False)
    fires = checks.caution_column("fires", NAME, headed=False)
    picked = f"INDEX({checks.caution_column(column, NAME, headed=True)},MATCH({number},{so_far},0)+1)"
    otherwise = "0" if empty == 0.0 else f'"{A_WORD}"'
    return lambda: f"IF({number}>SUM({fires}),{otherwise},{picked})"


def _in_slot(place: int, say: Callable[[JobValues, Caution], Shown], empty: Shown) -> Callable[[JobValues], Shown]:
    def value(job: JobValues) -> Shown:
        cautions = list(fired(job))
        return say(job, cautions[place]) if place < len(cautions) else empty

    return value


def lay_legend(page: Page) -> None:
    """How cells look, and what that means."""
    section(page, "Legend")
    for role, meaning in LEGEND:
        page.words(LABEL, {"issue": "as of issue"}.get(role, role), role)
        page.words(TEXT, meaning, "beside")
        page.heights[page.row] = LINE_HEIGHT
        page.next()
