"""A paper as a sheet: its parts one below another on one grid, every number brought from its own cell.

The layout depends on how many rows were typed, never on what is in them.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import singledispatch

from calc.declared import paper
from calc.layout.addresses import span
from calc.layout.checks_sheet import READY, is_ready
from calc.layout.line_sheets import SAFETY
from calc.layout.page import FixedText, JobText, Linked, Page
from calc.layout.paper_actuals import lay_actuals
from calc.layout.paper_cells import (
    LABEL,
    LONG_LINES,
    PLAIN_GRID,
    ROW,
    VALUE,
    WORDY_GRID,
    PaperContext,
    PaperPage,
    is_words,
    put_fact,
    wrapped_lines,
)
from calc.layout.paper_tables import lay_caution_list, lay_running_list, lay_table
from calc.model.results import JobValues

NOT_READY = "NOT READY: see Bid"
"""Shown beside the price of a bid that may not be sent; such a paper is not given out."""

AREAS_ON_A_PAGE = 6
"""A paper of a job with no more areas is one page."""

_LEAST_SCALE = 0.7
_GAP, _LARGE_HEIGHT, _SIGN_HEIGHT = 5.0, 17.0, 32.0
_TICK, _SECOND, _SECOND_VALUE = 3, 4, 7
"""Columns of the even grid: the box to tick, and the second of two facts in a row."""


def paper_page(handout: paper.Paper, context: PaperContext) -> Page:
    """The sheet of a paper."""
    first = handout.parts[0]
    headed = isinstance(first, paper.Table) and not first.title
    few = context.areas <= AREAS_ON_A_PAGE and not headed
    page = PaperPage(
        handout.title,
        _grid(handout),
        handout.title,
        portrait=True,
        one_page=few,
        least_scale=_LEAST_SCALE,
        frozen_rows=3 if headed else 2,
        frozen_cols=0,
    )
    page.words(LABEL, handout.title, "title")
    page.heights[0] = 24
    last = len(page.widths) - 1
    page.put(JobText(0, last, "stamp", lambda job: f"Job {job.id}, {handout.reader}", wraps=False))
    page.next()
    page.words(LABEL, SAFETY, "subtitle")
    page.next()
    for part in handout.parts:
        if context.shows(part):
            _lay_title(page, part.title)
            _lay(part, page, context, handout)
            page.heights[page.row] = _GAP
            page.next()
    for row in range(page.row):
        page.heights.setdefault(row, ROW)
    return page


def estimates(papers: Sequence[Page]) -> str:
    """The range of the estimates beside the boxes of actual amounts, as it is seen from another sheet."""
    page, boxes = next((each, each.boxes) for each in papers if isinstance(each, PaperPage) and each.boxes is not None)
    return span(page.name, (boxes.first, boxes.estimate), (boxes.last, boxes.estimate), "")


def _grid(handout: paper.Paper) -> tuple[float, ...]:
    """The column widths of a paper."""
    long_lines = any(isinstance(part, paper.CautionList) and part.one_line for part in handout.parts)
    even = (*PLAIN_GRID, LONG_LINES) if long_lines else PLAIN_GRID
    return WORDY_GRID if handout.describes else even


def _lay_title(page: Page, title: str) -> None:
    if title:
        for col in range(len(page.widths)):
            page.words(col, title if col == LABEL else "", "section")
        page.heights[page.row] = 16
        page.next()


@singledispatch
def _lay(part: object, page: PaperPage, context: PaperContext, handout: paper.Paper) -> None:
    raise TypeError(f"no layout for {type(part).__name__}")


@_lay.register
def _(part: paper.Facts, page: Page, context: PaperContext, handout: paper.Paper) -> None:
    if part.abreast:
        _lay_abreast(page, context, part)
        return
    flush = _flush(handout, part)
    for fact in part.rows:
        if context.row_of(fact) is None:
            continue
        page.words(LABEL, fact.called, "label")
        if fact.prominent:
            page.heights[page.row] = _LARGE_HEIGHT
        if fact.named is None:
            page.put(FixedText(page.row, VALUE, "line", paper.BY_HAND))
        elif fact.named is handout.status_beside:
            put_fact(page, context, fact, flush, unless=(f'{context.checks.ready_cell(page.name)}<>"{READY}"', _held))
            _lay_readiness(page, context, handout.ready)
        else:
            put_fact(page, context, fact, flush)
        if part.ticked:
            page.put(FixedText(page.row, _TICK, "blank", ""))
        page.next()


def _lay_readiness(page: Page, context: PaperContext, ready: str) -> None:
    """Beside the price: whether the bid may be sent."""
    checks = context.checks
    text = f'IF({checks.ready_cell(page.name)}="{READY}","{ready}","{NOT_READY}")'
    page.put(Linked(page.row, VALUE + 1, "strong", lambda: text, lambda job: ready if is_ready(job) else NOT_READY))


def _held(job: JobValues) -> bool:
    return not is_ready(job)


def _flush(handout: paper.Paper, part: paper.Facts) -> bool:
    """Whether the values of a block are flush left: where some are text, or blanks to fill by hand."""
    return handout.describes or any(fact.named is None or is_words(fact.named) for fact in part.rows)


def _lay_abreast(page: Page, context: PaperContext, part: paper.Facts) -> None:
    """Two in a row: the first half to the left, the second to the right."""
    half = (len(part.rows) + 1) // 2
    top = page.row
    for place, fact in enumerate(part.rows):
        page.row = top + place % half
        right = place >= half
        page.put(FixedText(page.row, _SECOND if right else LABEL, "line", fact.called))
        if fact.prominent:
            page.heights[page.row] = _LARGE_HEIGHT
        put_fact(page, context, fact, flush=False, col=_SECOND_VALUE if right else VALUE)
    page.row = top + half


@_lay.register
def _(part: paper.Table, page: PaperPage, context: PaperContext, handout: paper.Paper) -> None:
    lay_table(page, context, part, handout.describes)


@_lay.register
def _(part: paper.Actuals, page: PaperPage, context: PaperContext, handout: paper.Paper) -> None:
    lay_actuals(page, context, part)


@_lay.register
def _(part: paper.RunningList, page: Page, context: PaperContext, handout: paper.Paper) -> None:
    lay_running_list(page, context, part)


@_lay.register
def _(part: paper.CautionList, page: Page, context: PaperContext, handout: paper.Paper) -> None:
    lay_caution_list(page, context, part)


@_lay.register
def _(part: paper.Sentences, page: Page, context: PaperContext, handout: paper.Paper) -> None:
    for sentence in part.sentences:
        for line in wrapped_lines(sentence, sum(page.widths)):
            page.put(FixedText(page.row, LABEL, "line", line))
            page.next()


@_lay.register
def _(part: paper.CompanyText, page: Page, context: PaperContext, handout: paper.Paper) -> None:
    words = part.words
    for index in range(context.counts[words.level]):
        page.put(JobText(page.row, LABEL, "label", context.word(words.level, index)))
        page.put(
            Linked(
                page.row,
                VALUE,
                "sentence",
                context.text_of(words, index, page.name),
                context.value_of(words, index),
                wraps=True,
            )
        )
        page.next()


@_lay.register
def _(part: paper.SignatureLines, page: Page, context: PaperContext, handout: paper.Paper) -> None:
    for who in part.who:
        page.heights[page.row] = _SIGN_HEIGHT
        page.put(FixedText(page.row, LABEL, "signaturelabel", who))
        page.put(FixedText(page.row, VALUE, "signature", ""))
        page.put(FixedText(page.row, VALUE + 1, "signaturelabel", "  Date"))
        for col in range(VALUE + 2, len(page.widths)):
            page.put(FixedText(page.row, col, "signature", ""))
        page.next()
