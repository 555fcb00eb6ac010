"""The lower half of the front page: what moves the price, what to watch, and how cells look."""

from __future__ import annotations

from collections.abc import Callable

from calc.declared import Caution
from calc.layout.addresses import cell
from calc.layout.charts import Cells
from calc.layout.checks_sheet import ChecksPage, fired
from calc.layout.log_sheet import count_defaults, count_factors
from calc.layout.page import IssueValue, Linked, Number, Page, Shown, lines_of
from calc.layout.styles import LEGEND, LINE_HEIGHT
from calc.model.results import SENSITIVITIES, JobValues, RangeEnd, Sensitivity
from calc.trade.money.price import BidPrice

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
    for place in range(SENSITIVITIES):
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
