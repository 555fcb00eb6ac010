"""A paper as a sheet: its parts one below another on one grid, every number brought from its own cell.

The layout depends on how many rows were typed, never on what is in them.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import singledispatch

from calc.declared import paper
from calc.layout.addresses import cell, span
from calc.layout.arial import pixels
from calc.layout.checks_sheet import READY, is_ready
from calc.layout.page import FixedText, JobText, Linked, Page
from calc.layout.paper_actuals import lay_actuals
from calc.layout.paper_cells import (
    GRIDS,
    LABEL,
    NOTHING,
    ROW,
    SURE,
    VALUE,
    WIDE,
    PaperContext,
    PaperPage,
    is_words,
    put_fact,
    total_of,
)
from calc.layout.paper_costs import lay_costs
from calc.layout.paper_tables import lay_caution_list, lay_running_list, lay_table
from calc.layout.text_width import wrapped
from calc.model.results import JobValues

NOT_READY = "NOT READY: see Bid"
"""Shown beside the price of a bid that may not be sent; such a paper is not given out."""

_TITLE_HEIGHT, _SECTION_HEIGHT, _GAP, _LARGE_HEIGHT, _SIGN_HEIGHT, _LINE_HEIGHT = 25.0, 17.0, 5.0, 20.0, 26.0, 19.0
_WRITTEN_HEIGHT = 18.0
_TICK = 3
"""The column of the box to tick."""

_SECOND = {len(GRIDS[paper.Columns.EVEN]): (4, 7), len(GRIDS[paper.Columns.WORDS]): (2, 4)}
"""The columns of the second of two facts in a row, by the number of columns of the paper."""


def paper_page(handout: paper.Paper, context: PaperContext) -> Page:
    """The sheet of a paper."""
    first = handout.parts[0]
    headed = isinstance(first, paper.JobCosts) and not first.title
    page = PaperPage(
        handout.title,
        GRIDS[handout.columns],
        handout.title,
        portrait=True,
        frozen_rows=2 if headed else 1,
        frozen_cols=0,
        row_height=ROW,
    )
    page.printed_cols = len(page.widths)
    page.words(LABEL, handout.title, "papertitle")
    page.heights[0] = _TITLE_HEIGHT
    last = page.printed_cols - 1
    page.put(JobText(0, last, "paperstamp", lambda job: f"Job {job.id}, {handout.reader}", wraps=False))
    page.next()
    shown = [part for part in handout.parts if context.shows(part)]
    for place, part in enumerate(shown):
        if place and part.title:
            page.heights[page.row] = _GAP
            page.next()
        _lay_title(page, part)
        _lay(part, page, context, handout)
    for row in range(page.row):
        page.heights.setdefault(row, ROW)
    return page


def estimates(papers: Sequence[Page]) -> str:
    """The range of the estimates beside the boxes of actual amounts, as it is seen from another sheet."""
    page, boxes = next((each, each.boxes) for each in papers if isinstance(each, PaperPage) and each.boxes is not None)
    return span(page.name, (boxes.first, boxes.estimate), (boxes.last, boxes.estimate), "")


def _lay_title(page: PaperPage, part: paper.Part) -> None:
    """The title of a block and how it is read, over a rule as wide as the page."""
    if part.title:
        note = part.note if isinstance(part, paper.Table) else ""
        for col in range(page.printed_cols):
            text = {LABEL: part.title, VALUE: note}.get(col, "")
            page.put(FixedText(page.row, col, "papersection" if col == LABEL else "papernote", text))
        page.heights[page.row] = _SECTION_HEIGHT
        page.next()


@singledispatch
def _lay(part: object, page: PaperPage, context: PaperContext, handout: paper.Paper) -> None:
    raise TypeError(f"no layout for {type(part).__name__}")


@_lay.register
def _(part: paper.Facts, page: PaperPage, context: PaperContext, handout: paper.Paper) -> None:
    if part.abreast:
        _lay_abreast(page, context, part)
        return
    flush = _flush(handout, part)
    for fact in part.rows:
        if context.row_of(fact) is None:
            continue
        _lay_label(page, context, fact, LABEL, VALUE)
        if fact.prominent:
            page.heights[page.row] = _LARGE_HEIGHT
        if fact.named is None:
            _lay_blank(page)
        elif fact.named is handout.status_beside:
            put_fact(page, context, fact, flush, unless=(f'{context.checks.ready_cell(page.name)}<>"{READY}"', _held))
            _lay_readiness(page, context, handout.ready)
        else:
            put_fact(page, context, fact, flush)
        if part.ticked:
            page.put(FixedText(page.row, _TICK, "paperbox", ""))
        page.next()


def _lay_blank(page: PaperPage) -> None:
    """A line to write on, half as wide as the page."""
    page.heights[page.row] = _WRITTEN_HEIGHT
    last = next(col for col in range(VALUE, page.printed_cols) if sum(page.widths[VALUE : col + 1]) >= WIDE)
    for col in range(VALUE, last + 1):
        page.put(FixedText(page.row, col, "paperblank", ""))


def _lay_label(page: PaperPage, context: PaperContext, fact: paper.Fact, col: int, at: int) -> None:
    """What a fact tells; nothing where it tells only what there is, and there is none."""
    if not fact.if_any or fact.named is None:
        page.put(FixedText(page.row, col, "paperlabelline", fact.called))
        return
    named, row = total_of(fact, context)
    if named in context.places.left_out:
        return
    shown = cell(page.name, page.row, at, page.name)
    value = context.value_of(named, row)
    page.put(
        Linked(
            page.row,
            col,
            "paperlabelline",
            lambda: f'IF({shown}="","","{fact.called}")',
            lambda job: "" if value(job) in NOTHING else fact.called,
            optional=True,
        )
    )


def _lay_readiness(page: PaperPage, context: PaperContext, ready: str) -> None:
    """Beside the price: whether the bid may be sent."""
    checks = context.checks
    text = f'IF({checks.ready_cell(page.name)}="{READY}","{ready}","{NOT_READY}")'
    page.put(
        Linked(page.row, VALUE + 1, "paperstrong", lambda: text, lambda job: ready if is_ready(job) else NOT_READY)
    )


def _held(job: JobValues) -> bool:
    return not is_ready(job)


def _flush(handout: paper.Paper, part: paper.Facts) -> bool:
    """Whether the values of a block are flush left: where some are text, or blanks to fill by hand."""
    return handout.describes or any(fact.named is None or is_words(fact.named) for fact in part.rows)


def _lay_abreast(page: PaperPage, context: PaperContext, part: paper.Facts) -> None:
    """Two in a row: the first half to the left, the second to the right."""
    half = (len(part.rows) + 1) // 2
    second, second_value = _SECOND[page.printed_cols]
    top = page.row
    for place, fact in enumerate(part.rows):
        page.row = top + place % half
        right = place >= half
        label, value = (second, second_value) if right else (LABEL, VALUE)
        _lay_label(page, context, fact, label, value)
        if fact.prominent:
            page.heights[page.row] = _LARGE_HEIGHT
        if fact.named is None:
            for col in range(value, page.printed_cols if right else VALUE + 1):
                page.put(FixedText(page.row, col, "paperblank", ""))
        else:
            put_fact(page, context, fact, flush=True, col=value)
    page.row = top + half


@_lay.register
def _(part: paper.Table, page: PaperPage, context: PaperContext, handout: paper.Paper) -> None:
    lay_table(page, context, part, handout.describes)


@_lay.register
def _(part: paper.JobCosts, page: PaperPage, context: PaperContext, handout: paper.Paper) -> None:
    lay_costs(page, context, part)


@_lay.register
def _(part: paper.Actuals, page: PaperPage, context: PaperContext, handout: paper.Paper) -> None:
    lay_actuals(page, context, part)


@_lay.register
def _(part: paper.RunningList, page: PaperPage, context: PaperContext, handout: paper.Paper) -> None:
    lay_running_list(page, context, part)


@_lay.register
def _(part: paper.CautionList, page: PaperPage, context: PaperContext, handout: paper.Paper) -> None:
    lay_caution_list(page, context, part)


@_lay.register
def _(part: paper.Sentences, page: PaperPage, context: PaperContext, handout: paper.Paper) -> None:
    for sentence in part.sentences:
        for line in wrapped(sentence, sum(map(pixels, page.widths)) * SURE):
            page.put(FixedText(page.row, LABEL, "paperline", line))
            page.next()


@_lay.register
def _(part: paper.CompanyText, page: PaperPage, context: PaperContext, handout: paper.Paper) -> None:
    words = part.words
    for index in range(context.counts[words.level]):
        page.put(JobText(page.row, LABEL, "paperlabel", context.word(words.level, index)))
        page.put(
            Linked(
                page.row,
                VALUE,
                "papersentence",
                context.text_of(words, index, page.name),
                context.value_of(words, index),
                wraps=True,
            )
        )
        page.next()


@_lay.register
def _(part: paper.BlankLines, page: PaperPage, context: PaperContext, handout: paper.Paper) -> None:
    for _line in range(part.count):
        page.heights[page.row] = _LINE_HEIGHT
        for col in range(page.printed_cols):
            page.put(FixedText(page.row, col, "paperblank", ""))
        page.next()


@_lay.register
def _(part: paper.SignatureLines, page: PaperPage, context: PaperContext, handout: paper.Paper) -> None:
    for who in part.who:
        page.heights[page.row] = _SIGN_HEIGHT
        page.put(FixedText(page.row, LABEL, "papersigner", who))
        page.put(FixedText(page.row, VALUE, "papersignature", ""))
        page.put(FixedText(page.row, VALUE + 1, "papersigner", "  Date"))
        for col in range(VALUE + 2, page.printed_cols):
            page.put(FixedText(page.row, col, "papersignature", ""))
        page.next()
