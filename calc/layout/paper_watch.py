"""What a paper says of the cautions: those that the job earned, and whether a stop keeps the bid from being ready."""

from __future__ import annotations

from collections.abc import Callable

from calc.declared import Caution
from calc.declared.paper import DASH
from calc.layout.addresses import span
from calc.layout.checks_sheet import fired, open_stops
from calc.layout.page import FixedText, Linked, Page, Shown
from calc.layout.paper_cells import LABEL, VALUE, PaperContext
from calc.model.results import JobValues
from calc.trade.money.price import BidPrice

NOT_READY = "NOT READY: stops are open, see Bid"
"""Said beside the price while nobody has accepted a stop; such a paper is not handed out."""

NOT_COMPLETE = "NOT COMPLETE: costs have no price"
"""Said beside the price while the house book lacks a price that it needs."""

_READY = "for all of the above"


def readiness(page: Page, desk: PaperContext) -> None:
    """Beside the price: whether a stop, or a cost without a price, keeps it from being handed out."""
    stops = desk.checks.caution_column("not accepted", page.name, headed=False)

    def text() -> str:
        lacking = desk.places.one(BidPrice.unpriced, 0, page.name, "cr")
        return f'IF(SUM({stops})>0,"{NOT_READY}",IF({lacking}>0,"{NOT_COMPLETE}","{_READY}"))'

    def value(job: JobValues) -> Shown:
        return NOT_READY if open_stops(job) else NOT_COMPLETE if float(job.of(BidPrice.unpriced)) > 0 else _READY

    page.put(Linked(page.row, VALUE + 1, "strong", text, value))


def lay_watched(page: Page, desk: PaperContext) -> None:
    """Each caution in a line: what it is, and what to do. Slots not in use show a dash."""
    for col in range(len(page.widths)):
        text = {LABEL: "Caution", VALUE: "What to do; Checks says what was found"}.get(col, "")
        page.put(FixedText(page.row, col, "headline", text))
    head = page.row
    page.next()
    for place in range(desk.caution_slots):
        _say(page, desk, head, (LABEL, "strong", "label"), place, lambda each: each.label)
        _say(page, desk, head, (VALUE, "small", "do"), place, lambda each: each.do)
        page.next()


def _say(
    page: Page, desk: PaperContext, head: int, where: tuple[int, str, str], place: int, say: Callable[[Caution], Shown]
) -> None:
    """One cell of a slot. Its number is how many cells stand above it, the head among them."""
    col, role, column = where
    number = f"COUNTA({span(page.name, (head, LABEL), (page.row - 1, LABEL), page.name)})"
    so_far = desk.checks.caution_column("so far", page.name, headed=False)
    fires = desk.checks.caution_column("fires", page.name, headed=False)
    words = desk.checks.caution_column(column, page.name, headed=True)

    def value(job: JobValues) -> Shown:
        cautions = list(fired(job))
        return say(cautions[place]) if place < len(cautions) else DASH

    page.put(
        Linked(
            page.row,
            col,
            role,
            lambda: f'IF({number}>SUM({fires}),"{DASH}",INDEX({words},MATCH({number},{so_far},0)+1))',
            value,
        )
    )
