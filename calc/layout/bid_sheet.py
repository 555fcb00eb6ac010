"""The sheet Bid: the price and its parts, what was decided and why, what moves the price, and the cautions."""

from __future__ import annotations

from collections.abc import Callable

from calc.declared import Declared, Line
from calc.formula.value_types import ValueType
from calc.layout.addresses import CellMap
from calc.layout.bid_cautions import lay_cautions
from calc.layout.caution_table import open_stops
from calc.layout.charts import Cells, Chart, Series, Stroke
from calc.layout.checks_sheet import CHECKED, NOT_READY, READY, ChecksPage, all_checks, failed, is_ready
from calc.layout.front_page import (
    BESIDE,
    FIGURE,
    FIGURE_UNIT,
    LABEL,
    LEAST_SCALE,
    NAME,
    NO_TEXT,
    NUMBER_FORMAT,
    TEXT,
    UNIT,
    VALUE,
    WIDTHS,
    FrontPage,
    column_heads,
    gap_below,
    section_head,
)
from calc.layout.issued import changed_boxes, price_value
from calc.layout.line_sheets import SAFETY, cell_value, format_of
from calc.layout.log_sheet import count_defaults, count_factors
from calc.layout.page import CellValue, Computed, IssueValue, JobText, Linked, Page
from calc.layout.styles import COUNT_FORMAT, LEGEND, LINE_HEIGHT, dashed
from calc.model.results import SENSITIVITIES, JobValues, OtherDigging, RangeEnd, Sensitivity
from calc.trade.inputs.job import Company, Job
from calc.trade.inputs.papers import PaperFacts
from calc.trade.inputs.work import Digging
from calc.trade.levels import GROUP
from calc.trade.money.bid import ADDED, DECISIONS, FALLS_DUE, KEY, Decision, PriceSummary
from calc.trade.money.price import BidPrice, Subtotal
from calc.trade.ordering.order import Order
from calc.trade.work.machine_access import MachineAccess

_PERCENT = "0.0%"
_BARS_WIDE, _APART, _PIXELS_OF_A_ROW = 250, 6, 17
"""Pixels: width of the bars beside the parts of the price, space before them, and height of a row."""

_OWN_FORMATS: dict[Declared, str] = {Order.risk: _PERCENT}
"""Number formats that differ from those where the line is computed."""


def left_of_column(page: Page, col: int) -> int:
    """The pixels from the edge of the sheet to a column, each digit of its width 7 and 5 more."""
    return round(sum(width * 7 + 5 for width in page.widths[:col]))


def price_parts(page: FrontPage) -> tuple[Cells, Cells]:
    """The cells of the labels and the amounts of the parts of the price."""
    first, last = page.parts
    return Cells(NAME, (first, LABEL), (last, LABEL)), Cells(NAME, (first, VALUE), (last, VALUE))


def bid_page(places: CellMap, checks: ChecksPage) -> FrontPage:
    """The front page, on one sheet of paper."""
    page = FrontPage(
        NAME, WIDTHS, "Bid", portrait=True, one_page=True, least_scale=LEAST_SCALE, frozen_rows=2, frozen_cols=0
    )
    _lay_head(page, places)
    _lay_price(page, places, checks)
    lay_cautions(page, checks.cautions)
    _lay_price_parts(page, places)
    _lay_decisions(page, places)
    _lay_digging(page, places)
    _lay_sensitivity(page)
    _lay_legend(page)
    return page


def _lay_head(page: Page, places: CellMap) -> None:
    """Company, client and dates."""
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
    gap_below(page)


def _lay_price(page: Page, places: CellMap, checks: ChecksPage) -> None:
    """The price, whether it is complete, whether a stop is open, and whether the checks pass."""
    section_head(page, BidPrice.price.label)
    _link(page, places, BidPrice.price, LABEL, "hero")
    _lay_line(page, places, PriceSummary.complete, TEXT, "status")
    _lay_readiness(page, checks)
    page.heights[page.row] = 30
    page.next()
    beside: tuple[Callable[[], None], ...] = (
        lambda: _lay_amount(page, places, BidPrice.per_ft2),
        lambda: _lay_master_check(page, checks),
    )
    for lay, due in zip(beside, FALLS_DUE[:2], strict=True):
        lay()
        page.words(BESIDE, due.label, "label")
        _link(page, places, due, FIGURE, "formula")
        page.next()
    _lay_changes(page, places)
    page.next()
    gap_below(page)


def _lay_changes(page: Page, places: CellMap) -> None:
    """How many boxes were changed since the workbook was written, and what the price was then."""
    page.words(LABEL, "Boxes changed since issue", "label")
    page.put(
        Linked(page.row, VALUE, "issuedcount", lambda: changed_boxes(places, NAME), lambda _job: 0.0, COUNT_FORMAT)
    )
    page.words(BESIDE, "Price at issue", "label")
    page.put(IssueValue(page.row, FIGURE, "issuefigure", lambda job: f"${price_value(job):,.2f}"))


def _lay_amount(page: Page, places: CellMap, line: Line) -> None:
    page.words(LABEL, line.label, "label")
    _link(page, places, line, VALUE, "formula")
    page.words(UNIT, line.unit_text, "unit")


def _lay_readiness(page: Page, checks: ChecksPage) -> None:
    """Whether the bid may be sent; behind it the stops that keep it, if there are any."""
    stops = checks.stops_cell(NAME)
    ending = " not acknowledged, see below"
    text = f'{checks.ready_cell(NAME)}&IF({stops}>0,": "&{stops}&IF({stops}=1," stop"," stops")&"{ending}","")'

    def value(job: JobValues) -> str:
        found = len(open_stops(job))
        told = f": {found} {'stop' if found == 1 else 'stops'}{ending}" if found else ""
        return f"{READY if is_ready(job) else NOT_READY}{told}"

    page.put(Linked(page.row, BESIDE, "alarm", lambda: text, value))


def _lay_master_check(page: Page, checks: ChecksPage) -> None:
    """How many checks pass, and in words whether all do."""
    page.words(LABEL, "Checks passed", "label")
    cell_of_failed, every = checks.failed_cell(NAME), len(all_checks()) + CHECKED
    failing = f'{cell_of_failed}&IF({cell_of_failed}=1," CHECK FAILS"," CHECKS FAIL")&": see Checks"'

    def value(job: JobValues) -> str:
        found = failed(job)
        return f"{found} {'CHECK FAILS' if found == 1 else 'CHECKS FAIL'}: see Checks" if found else "ALL CHECKS PASS"

    page.put(Linked(page.row, TEXT, "status", lambda: f'IF({cell_of_failed}=0,"ALL CHECKS PASS",{failing})', value))
    passed = f"COUNT({checks.failed_column(NAME)})-{cell_of_failed}"
    page.put(Linked(page.row, VALUE, "formula", lambda: passed, lambda job: float(every - failed(job)), "0"))


def _lay_price_parts(page: FrontPage, places: CellMap) -> None:
    """The parts of the price with the share of each, and beside them the key quantities."""
    section_head(page, "Price breakdown", "Key quantities")
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
    gap_below(page)


def _bars(page: FrontPage) -> Chart:
    """A bar beside each part of the price, as long as its amount."""
    first, last = page.parts
    return Chart(
        first,
        left_of_column(page, TEXT) + _APART,
        _BARS_WIDE,
        (last - first + 1) * _PIXELS_OF_A_ROW,
        "",
        "",
        "A bar beside each part of the price, as long as its amount.",
        (Series(Stroke.SHARES, "parts of the price", *price_parts(page)),),
    )


def _lay_share(page: Page, places: CellMap, line: Line, place: int) -> None:
    """How much of the price it is."""
    row, price = page.row, BidPrice.price

    def text() -> str:
        whole = places.one(price, 0, NAME, "cr")
        return f"IF(ROUND({whole},6)>0,{places.one(line, place, NAME, 'cr')}/{whole},0)"

    def value(job: JobValues) -> CellValue:
        whole = float(job.of(price))
        return float(job.of(line, place)) / whole if round(whole, 6) > 0 else 0.0

    page.put(Linked(row, UNIT, "share", text, value, _PERCENT))


def _lay_key(page: Page, places: CellMap, line: Line) -> None:
    """A quantity of the job, beside the parts of the price."""
    page.words(BESIDE, line.label, "label")
    _link(page, places, line if line.all_rows is None else line.all_rows, FIGURE, "formula")
    page.words(FIGURE_UNIT, line.unit_text, "unit")


def _lay_decisions(page: Page, places: CellMap) -> None:
    """What was decided and why, and the next-best option with what it would cost more."""
    section_head(page, "Decisions and reasons", "Runner-up")
    column_heads(
        page,
        {LABEL: "Decision", VALUE: "Result", TEXT: "Why", BESIDE: "Next-best option", FIGURE: "Costs more by, $"},
    )
    for each in DECISIONS:
        _lay_decision(page, places, each)
        page.next()


def _lay_digging(page: Page, places: CellMap) -> None:
    """By hand or by machine: the whole price the other way, fixed at issue. It is not chosen for the user."""
    page.words(LABEL, "Hand or machine", "label")
    _link(page, places, Digging.by, VALUE, "line")
    _link(page, places, MachineAccess.words, TEXT, "sentence")
    page.put(IssueValue(page.row, BESIDE, "issueline", _other_digging))
    page.put(IssueValue(page.row, FIGURE, "issuefigure", _other_digging_more, NUMBER_FORMAT))
    page.heights[page.row] = 25.5
    page.next()
    gap_below(page)


def _other_is_priced(job: JobValues, other: OtherDigging) -> bool:
    """Whether the other way lacks no more prices than the way that was typed."""
    return other.unpriced <= float(job.of(BidPrice.unpriced))


def _other_digging(job: JobValues) -> str:
    """What the job would be bid at dug the other way, in words."""
    other = job.other_digging
    if other is None:
        return NO_TEXT
    if not _other_is_priced(job, other):
        return f"by {other.word}: a price is missing"
    return f"by {other.word}, fixed at issue: ${other.price:,.2f}"


def _other_digging_more(job: JobValues) -> CellValue:
    other = job.other_digging
    if other is None or not _other_is_priced(job, other):
        return NO_TEXT
    return other.price - float(job.of(BidPrice.price))


def _lay_decision(page: Page, places: CellMap, each: Decision) -> None:
    page.words(LABEL, each.what, "label")
    came_to = each.came_to if each.came_to.all_rows is None else each.came_to.all_rows
    _link(page, places, came_to, VALUE, "figure")
    page.words(UNIT, each.came_to.unit_shown.replace("$", ""), "unit")
    _lay_line(page, places, each.why, TEXT, "sentence")
    if each.beside is not None and each.more is not None:
        _lay_line(page, places, each.beside, BESIDE, "sentence")
        _link(page, places, each.more, FIGURE, "figure")
    if each.wordy:
        page.heights[page.row] = 25.5


def _lay_line(page: Page, places: CellMap, line: Line, col: int, role: str) -> None:
    """Puts a line of the sheet Bid here; any other is brought from where it is computed."""
    if line.section.sheet != NAME:
        _link(page, places, line, col, role)
        return
    places.put_cell(line, NAME, page.row, col)
    page.put(Computed(page.row, col, role, line, 0, format_of(line)))


def _link(page: Page, places: CellMap, named: Declared, col: int, role: str, place: int = 0) -> None:
    """Brings a number or a fact from its own cell."""
    if isinstance(named, Line) and named.section.sheet == NAME and named not in places.locations:
        _lay_line(page, places, named, col, role)
        return
    format_text = _OWN_FORMATS.get(named, format_of(named))
    page.put(
        Linked(
            page.row,
            col,
            role,
            lambda: places.one(named, place, NAME, "cr"),
            lambda job: cell_value(job.of(named, place)),
            dashed(format_text) if role == "figure" and named.value_type is ValueType.NUMBER else format_text,
        )
    )


def _lay_sensitivity(page: Page) -> None:
    """The assumed inputs that move the price most, with the price at the ends of their usual range."""
    section_head(page, "Assumptions and price sensitivity (fixed at issue)")
    column_heads(
        page,
        {
            LABEL: "Assumed input",
            VALUE: "Value",
            TEXT: "Price at one end of its usual range",
            BESIDE: "Price at the other end",
            FIGURE: "Price change, $",
        },
    )
    for place in range(SENSITIVITIES):
        for col, role, value_of in (
            (LABEL, "issuelabel", lambda item, _job: item.label),
            (VALUE, "issueline", lambda item, _job: f"{_plain_text(item.assumed)} {item.unit_text}".rstrip()),
            (TEXT, "issueline", lambda item, job: _at_end(item.ends[0], item, job)),
            (BESIDE, "issueline", _other_end),
        ):
            page.put(IssueValue(page.row, col, role, _in_row(place, value_of), wraps=col == LABEL))
        effect = _in_row(place, lambda item, _job: item.effect)
        page.put(IssueValue(page.row, FIGURE, "issuefigure", effect, NUMBER_FORMAT))
        page.heights[page.row] = LINE_HEIGHT
        page.next()
    page.put(IssueValue(page.row, LABEL, "issueline", _assumed))
    page.heights[page.row] = LINE_HEIGHT
    page.next()
    gap_below(page)


def _assumed(job: JobValues) -> str:
    """How many inputs and factors were assumed, in words."""
    inputs, factors = count_defaults(job.job), count_factors(job.job)
    return (
        f"{inputs} {'input has its default value' if inputs == 1 else 'inputs have their default value'}, and "
        f"{factors} {'factor has its usual value' if factors == 1 else 'factors have their usual value'}: see Log."
    )


def _in_row(place: int, value_of: Callable[[Sensitivity, JobValues], CellValue]) -> Callable[[JobValues], CellValue]:
    """What one row of the sensitivities shows; a dash where the job has no more of them."""

    def value(job: JobValues) -> CellValue:
        items = job.sensitivity or ()
        return value_of(items[place], job) if place < len(items) else NO_TEXT

    return value


def _other_end(item: Sensitivity, job: JobValues) -> CellValue:
    return _at_end(item.ends[1], item, job) if len(item.ends) > 1 else NO_TEXT


def _at_end(end: RangeEnd, item: Sensitivity, job: JobValues) -> str:
    """Such as ``at 2.8 h: $2,295.48, 95.00 more``."""
    unit = f" {item.unit_text}" if item.unit_text and isinstance(end.value, float) else ""
    price, change = float(job.of(BidPrice.price)) + end.more, f"{abs(end.more):,.2f}"
    return f"at {_plain_text(end.value)}{unit}: ${price:,.2f}, {change} {'more' if end.more > 0 else 'less'}"


def _plain_text(value: float | str) -> str:
    return value if isinstance(value, str) else f"{value:,.3f}".rstrip("0").rstrip(".")


def _lay_legend(page: Page) -> None:
    """The cell styles and their meaning."""
    section_head(page, "Legend")
    for role, meaning in LEGEND:
        page.words(LABEL, {"boxforced": "override", "issued": "fixed at issue"}.get(role, role), role)
        page.words(TEXT, meaning, "meaning")
        page.heights[page.row] = LINE_HEIGHT
        page.next()
