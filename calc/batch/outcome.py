"""What came of each job of a run, for the table at its end and for ``--json``."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import asdict, dataclass
from typing import Any

from calc.layout.week import UnwrittenJob, WeekRow
from calc.layout.week_rows import NOT_WRITTEN, READY, ToldCaution
from calc.trade.hauling.loads import Hauled
from calc.trade.money.price import BidPrice
from calc.trade.ordering.order import Order
from calc.trade.work.paid_time import PaidTime

MOST_LISTED = 100
"""Jobs that are listed one by one; of more, only those that cannot be sent are."""

_HEADS = ("Job", "State", "Yd3", "Loads", "Hours", "Price", "Worst caution")
_LONGEST_ID = 24
_REASON_WIDTH = 100


@dataclass(frozen=True, slots=True)
class JobOutcome:
    """One job of a run: whether its bid can be sent, and its figures; a job that was not bid has none.

    ``state`` is ``READY``, ``NOT READY`` or ``not written``; ``reason`` says why it is not ready, and is blank else.
    """

    job: str
    state: str
    reason: str = ""
    yards: float | None = None
    """Concrete ordered, in yd3."""
    loads: float | None = None
    """Loads hauled off."""
    hours: float | None = None
    """Paid hours."""
    price: float | None = None
    """The price in dollars."""
    worst_caution: str = ""
    cautions: tuple[ToldCaution, ...] = ()
    file: str = ""
    """The file name of its workbook; blank for a job that was only checked."""


def outcome_of(row: WeekRow | UnwrittenJob) -> JobOutcome:
    """What came of a job."""
    if isinstance(row, UnwrittenJob):
        return JobOutcome(row.job, NOT_WRITTEN, row.reason)
    return JobOutcome(
        row.job,
        row.state,
        row.reason,
        row.of(Order.quantity),
        row.of(Hauled.loads),
        row.of(PaidTime.clock_hours),
        row.of(BidPrice.price),
        row.caution,
        row.cautions,
        row.file,
    )


def as_records(outcomes: Sequence[JobOutcome]) -> list[dict[str, Any]]:
    """The outcomes as data."""
    return [asdict(each) for each in outcomes]


def table(outcomes: Sequence[JobOutcome]) -> Iterator[str]:
    """The lines of the table: a job in each, the reason below one that cannot be sent, and the totals."""
    listed = [each for each in outcomes if len(outcomes) <= MOST_LISTED or each.state != READY][:MOST_LISTED]
    rows = [_cells(each) for each in listed]
    if len(outcomes) > 1:
        rows.append(_totals(outcomes))
    widths = [max(map(len, column)) for column in zip(_HEADS, *rows, strict=True)]
    yield _line(_HEADS, widths)
    for place, row in enumerate(rows):
        yield _line(row, widths)
        if place < len(listed) and listed[place].reason:
            yield f"  {_cut(listed[place].reason, _REASON_WIDTH)}"
    more = len(outcomes) - len(listed)
    if more:
        yield f"{more} more {'job is' if more == 1 else 'jobs are'} in the list of week.xlsx."


def _cells(each: JobOutcome) -> tuple[str, ...]:
    figures = (each.yards, each.loads, each.hours, each.price)
    shown = (_figure(value, form) for value, form in zip(figures, _FORMATS, strict=True))
    return (_cut(each.job, _LONGEST_ID), each.state, *shown, each.worst_caution or "-")


def _totals(outcomes: Sequence[JobOutcome]) -> tuple[str, ...]:
    """The sums over the jobs that were bid, and how many of them can be sent."""
    ready = sum(each.state == READY for each in outcomes)
    sums = (sum(getattr(each, name) or 0.0 for each in outcomes) for name in ("yards", "loads", "hours", "price"))
    shown = (_figure(value, form) for value, form in zip(sums, _FORMATS, strict=True))
    return ("All", f"{ready} {READY}", *shown, "")


_FORMATS = (",.2f", ",.0f", ",.1f", ",.2f")


def _figure(value: float | None, form: str) -> str:
    """A figure; a dash where there is none of it."""
    return format(value, form) if value else "-"


def _line(cells: Sequence[str], widths: Sequence[int]) -> str:
    """Words at the left, figures at the right."""
    padded = [
        text.rjust(width) if 2 <= place <= 5 else text.ljust(width)
        for place, (text, width) in enumerate(zip(cells, widths, strict=True))
    ]
    return "  ".join(padded).rstrip()


def _cut(text: str, width: int) -> str:
    """The text with an ellipsis of three dots where it is longer."""
    return text if len(text) <= width else f"{text[: width - 3].rstrip()}..."
