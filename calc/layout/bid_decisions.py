"""The decisions of the sheet Bid, each with its next best, and what the assumed inputs do to the price."""

from __future__ import annotations

from collections.abc import Callable

from calc.layout.addresses import CellMap
from calc.layout.front_page import (
    ADDS,
    BESIDE,
    FIGURE,
    FIGURE_UNIT,
    KEY_LABEL,
    LABEL,
    LAST,
    NEXT,
    NO_TEXT,
    NUMBER_FORMAT,
    UNIT,
    VALUE,
    bring,
    column_heads,
    end_row,
    put,
    put_jump,
    section_head,
)
from calc.layout.log_sheet import count_defaults, count_factors
from calc.layout.page import CellValue, FullSizePage, IssueValue
from calc.layout.step_formats import is_words
from calc.model.results import JobValues, OtherDigging, RangeEnd, Sensitivity
from calc.trade.inputs.work import Digging
from calc.trade.money.bid import DAYS, DECISIONS, Decision
from calc.trade.money.price import BidPrice
from calc.trade.work.machine_access import MachineAccess

SENSITIVITIES_SHOWN = 5
"""The assumed inputs that the front page shows, those that move the price most."""

_CHANGE, _PRICE = '+#,##0;-#,##0;"-"', '#,##0;-#,##0;"-"'
_ENDS = (UNIT, BESIDE, KEY_LABEL), (FIGURE, FIGURE_UNIT, ADDS)
"""For both ends of a usual range the columns of the value, the price and its change."""


def lay_decisions(page: FullSizePage, places: CellMap) -> None:
    """What was decided, and the next best with what it adds."""
    section_head(page, "What was decided", "each choice is the cheapest that fits, with the next best beside it")
    heads = {LABEL: "Choice", VALUE: "Result", NEXT: "Next best", ADDS: "Adds, $", LAST: "Where"}
    column_heads(page, heads, (ADDS, LAST))
    for each in DECISIONS:
        if each.came_to not in places.left_out:
            _lay_decision(page, places, each)
    put(page, LABEL, "Days", "item")
    bring(page, places, DAYS, VALUE, "told")
    put_jump(page, places, DAYS)
    end_row(page)
    _lay_digging(page, places)


def _lay_decision(page: FullSizePage, places: CellMap, each: Decision) -> None:
    put(page, LABEL, each.what, "item")
    came_to = each.came_to if each.came_to.all_rows is None else each.came_to.all_rows
    bring(page, places, came_to, VALUE, "told" if is_words(came_to) else "step")
    put(page, UNIT, each.came_to.unit_shown.replace("$", ""), "stepunit")
    bring(page, places, each.beside, NEXT, "quiet")
    bring(page, places, each.more, ADDS, "shrunkright", form=NUMBER_FORMAT)
    put_jump(page, places, came_to)
    end_row(page)
    if each.why is not None:
        bring(page, places, each.why, VALUE, "quiet")
        end_row(page)


def _lay_digging(page: FullSizePage, places: CellMap) -> None:
    """By hand or by machine: the whole price the other way, fixed at issue. It is not chosen for the user."""
    put(page, LABEL, "Hand or machine", "item")
    bring(page, places, Digging.by, VALUE, "told")
    page.put(IssueValue(page.row, NEXT, "issueline", _other_digging))
    page.put(IssueValue(page.row, ADDS, "issuefigure", _other_digging_more, NUMBER_FORMAT))
    page.put(IssueValue(page.row, LAST, "issuefigure", lambda _job: "fixed at issue"))
    end_row(page)
    bring(page, places, MachineAccess.words, VALUE, "quiet")
    end_row(page)


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
    return f"by {other.word}: ${other.price:,.2f}"


def _other_digging_more(job: JobValues) -> CellValue:
    other = job.other_digging
    if other is None or not _other_is_priced(job, other):
        return NO_TEXT
    return other.price - float(job.of(BidPrice.price))


def lay_sensitivity(page: FullSizePage) -> None:
    """What was not measured and moves the price most, with the price at the ends of its usual range."""
    section_head(page, "Assumptions and price sensitivity (fixed at issue)", "one at a time", FIGURE)
    one, other = _ENDS
    heads = {LABEL: "Assumed input", VALUE: "Value", one[0]: "If instead", one[1]: "Price", one[2]: "Change"}
    heads |= {other[0]: "or if", other[1]: "Price", other[2]: "Change"}
    column_heads(page, heads, (*one[1:], *other[1:]), (one[0], other[0]))
    for place in range(SENSITIVITIES_SHOWN):
        _lay_assumed(page, place)
        end_row(page)
    page.put(IssueValue(page.row, LABEL, "issueline", _assumed))
    end_row(page)


def _lay_assumed(page: FullSizePage, place: int) -> None:
    def put_value(col: int, role: str, value_of: Callable[[Sensitivity, JobValues], CellValue], form: str = "") -> None:
        page.put(IssueValue(page.row, col, role, _in_row(place, value_of), form))

    put_value(LABEL, "issueshrunk", lambda item, _job: item.label)
    put_value(VALUE, "issueshrunk", lambda item, _job: f"{_plain_text(item.assumed)} {item.unit_text}".rstrip())
    for end, (value, price, change) in enumerate(_ENDS):
        put_value(value, "issueindent", _of_end(end, lambda each, item, _job: _at(each, item)))
        put_value(price, "issuefigure", _of_end(end, lambda each, _item, job: _priced(each, job)), _PRICE)
        put_value(change, "issuefigure", _of_end(end, lambda each, _item, _job: each.more), _CHANGE)


def _of_end(
    end: int, value_of: Callable[[RangeEnd, Sensitivity, JobValues], CellValue]
) -> Callable[[Sensitivity, JobValues], CellValue]:
    """What is shown of one end of a usual range; nothing where it has no more ends."""

    def value(item: Sensitivity, job: JobValues) -> CellValue:
        return value_of(item.ends[end], item, job) if end < len(item.ends) else ""

    return value


def _at(end: RangeEnd, item: Sensitivity) -> str:
    unit = f" {item.unit_text}" if item.unit_text and isinstance(end.value, float) else ""
    return f"{_plain_text(end.value)}{unit}"


def _priced(end: RangeEnd, job: JobValues) -> float:
    return float(job.of(BidPrice.price)) + end.more


def _assumed(job: JobValues) -> str:
    """How many inputs and factors were assumed, in words."""
    inputs, factors = count_defaults(job.job), count_factors(job.job)
    return (
        f"{inputs} {'input has its default value' if inputs == 1 else 'inputs have their default value'}, and "
        f"{factors} {'factor has its usual value' if factors == 1 else 'factors have their usual value'}: see Log."
    )


def _in_row(place: int, value_of: Callable[[Sensitivity, JobValues], CellValue]) -> Callable[[JobValues], CellValue]:
    """What one row of the sensitivities shows; nothing where the job has no more of them."""

    def value(job: JobValues) -> CellValue:
        items = job.sensitivity or ()
        return value_of(items[place], job) if place < len(items) else ""

    return value


def _plain_text(value: float | str) -> str:
    return value if isinstance(value, str) else f"{value:,.3f}".rstrip("0").rstrip(".")
