"""What a paper says of the cautions: those that the job earned, and whether a stop keeps the bid from being ready."""

from __future__ import annotations

from collections.abc import Callable

from calc.declared import Caution, paper
from calc.workbook.bid_page import EMPTY
from calc.workbook.checks import fired, open_stops
from calc.workbook.page import Linked, Number, Page, Shown
from calc.workbook.paper_cells import LABEL, VALUE, Desk
from calc.workbook.places import cell
from calc.workbook.values import JobValues

NOT_READY = "NOT READY: stops are open, see Bid"
"""Said beside the price while nobody has accepted a stop; such a paper is not handed out."""

_READY = "for all of the above"


def readiness(page: Page, desk: Desk, fact: paper.Fact) -> None:
    """Beside the price: whether a stop keeps it from being handed out."""
    stops = desk.checks.caution_column("not accepted", page.name, headed=False)
    page.put(
        Linked(
            page.row,
            VALUE + 1,
            "line",
            lambda: f'IF(SUM({stops})>0,"{NOT_READY}","{_READY}")',
            lambda job: NOT_READY if open_stops(job) else _READY,
        )
    )


def lay_watched(page: Page, desk: Desk) -> None:
    """Each caution in two lines: what it is and what was found, then what to do. Slots not in use show a dash."""
    number_col = len(page.widths) - 1
    page.words(LABEL, "Caution", "head")
    for col in range(VALUE, number_col):
        page.words(col, "What was found, and what to do" if col == VALUE else "", "headline")
    page.words(number_col, "No.", "rowhead")
    page.next()
    for place in range(desk.caution_slots):
        number = cell(page.name, page.row, number_col, page.name, "cr")
        page.put(Number(page.row, number_col, "number", place + 1))
        _say(page, desk, number, (LABEL, "strong", "label"), place, lambda _job, each: each.label)
        _say(page, desk, number, (VALUE, "line", "found"), place, lambda job, each: job.of(each.found))
        page.next()
        _say(page, desk, number, (VALUE, "small", "do"), place, lambda _job, each: each.do)
        page.next()


def _say(
    page: Page,
    desk: Desk,
    number: str,
    where: tuple[int, str, str],
    place: int,
    say: Callable[[JobValues, Caution], Shown],
) -> None:
    col, role, column = where
    so_far = desk.checks.caution_column("so far", page.name, headed=False)
    fires = desk.checks.caution_column("fires", page.name, headed=False)
    words = desk.checks.caution_column(column, page.name, headed=True)

    def value(job: JobValues) -> Shown:
        cautions = list(fired(job))
        return say(job, cautions[place]) if place < len(cautions) else EMPTY

    page.put(
        Linked(
            page.row,
            col,
            role,
            lambda: f'IF({number}>SUM({fires}),"{EMPTY}",INDEX({words},MATCH({number},{so_far},0)+1))',
            value,
        )
    )
