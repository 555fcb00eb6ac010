"""What follows from the boxes of a job cost: totals, totals by group, and what was earned, as live formulas.

A box left blank is not known and never 0: its estimate is kept in the total, and such rows are counted. When the
workbook is written every box is blank.
"""

from __future__ import annotations

from collections.abc import Callable

from calc.declared import Line, paper
from calc.layout.addresses import cell
from calc.layout.page import CellValue, FixedText, JobText, Linked
from calc.layout.paper_cells import LABEL, VALUE, Boxes, PaperContext, PaperPage, paper_format
from calc.layout.paper_costs import NOT_KNOWN
from calc.model.results import JobValues

Value = Callable[[JobValues], CellValue]

_COUNT = VALUE
"""The column of how many rows are not known."""

_GAP = 5.0
"""Points between the totals and what was earned."""

_WHOLE = '0;-0;"-"'


def lay_actuals(page: PaperPage, context: PaperContext, part: paper.Actuals) -> None:
    """The totals below the table of boxes."""
    boxes = page.boxes
    if boxes is None:
        raise ValueError(f"no boxes before {part.title!r}")
    _lay_heads(page, boxes, "Group", "Not known")
    for index, word in enumerate(part.groups.axis.words):
        _lay_group(page, context, part, boxes, index, word)
    kept = _lay_totals(page, part, boxes)
    page.heights[page.row] = _GAP
    page.next()
    _lay_heads(page, boxes, "What was earned", "")
    _lay_earned(page, context, part, boxes, kept)


def _lay_heads(page: PaperPage, boxes: Boxes, first: str, count: str) -> None:
    heads = {LABEL: first, _COUNT: count, boxes.estimate: "Estimate", boxes.box: "Actual", boxes.box + 1: "Difference"}
    for col in range(page.printed_cols):
        page.words(col, heads.get(col, ""), "paperhead" if col == LABEL else "paperheadright")
    page.next()


def _fill(page: PaperPage, boxes: Boxes, role: str, *used: int) -> None:
    """The empty cells of a row, so that its rule is as wide as the page."""
    for col in range(VALUE, page.printed_cols):
        if col not in (boxes.estimate, boxes.box, boxes.box + 1, *used):
            page.put(FixedText(page.row, col, role, ""))


def _put(page: PaperPage, col: int, text: str, value: Value, format_text: str, role: str = "papernumber") -> None:
    page.put(Linked(page.row, col, role, lambda: text, value, format_text))


def _difference(page: PaperPage, boxes: Boxes, value: Value, format_text: str, role: str = "papernumber") -> None:
    """Actual less estimate of the row; not known where the actual is."""
    actual, estimate = (cell(page.name, page.row, col, page.name) for col in (boxes.box, boxes.estimate))
    text = f'IF(ISNUMBER({actual}),{actual}-{estimate},"{NOT_KNOWN}")'
    _put(page, boxes.box + 1, text, value, format_text, role)


def _lay_group(
    page: PaperPage, context: PaperContext, part: paper.Actuals, boxes: Boxes, index: int, word: str
) -> None:
    """A group: its estimate, its actual with the estimate where that is not known, and how many are not known."""
    shape = paper_format(part.estimate)
    name = cell(page.name, page.row, LABEL, page.name, "c")
    estimates, typed = boxes.span(boxes.estimate, page.name), boxes.span(boxes.box, page.name)
    groups = boxes.span(boxes.group, page.name)

    def estimate(job: JobValues) -> float:
        return sum(
            float(job.of(part.estimate, row))
            for row in range(job.count(part.estimate.level))
            if job.of(part.group, row) == word
        )

    def unknown(job: JobValues) -> float:
        return _not_known(job, part, word)

    page.put(JobText(page.row, LABEL, "papername", context.word(part.groups, index)))
    _fill(page, boxes, "paperwords", _COUNT)
    condition = f"({groups}={name})"
    blank = f"(1-ISNUMBER({typed}))"
    _put(page, _COUNT, f"SUMPRODUCT({condition}*({estimates}<>0)*{blank})", unknown, _WHOLE)
    _put(page, boxes.estimate, f"SUMIF({groups},{name},{estimates})", estimate, shape)
    kept = f"SUMPRODUCT({condition}*{blank}*{estimates})"
    _put(page, boxes.box, f"SUMIF({groups},{name},{typed})+{kept}", estimate, shape)
    _difference(page, boxes, lambda job: 0.0, shape)
    page.next()


def _lay_totals(page: PaperPage, part: paper.Actuals, boxes: Boxes) -> str:
    """What is known, what is not, and both together; gives the address of the actual total."""
    shape = paper_format(part.estimate)
    estimates, typed = boxes.span(boxes.estimate, page.name), boxes.span(boxes.box, page.name)
    blank = f"(1-ISNUMBER({typed}))"

    def whole(job: JobValues) -> float:
        return float(sum(float(job.of(part.estimate, row)) for row in range(job.count(part.estimate.level))))

    def unknown(job: JobValues) -> float:
        return sum(_not_known(job, part, word) for word in part.groups.axis.words)

    page.words(LABEL, "Known", "papername")
    _fill(page, boxes, "paperwords")
    _put(page, boxes.estimate, f"SUM({estimates})-SUMPRODUCT({blank}*{estimates})", lambda job: 0.0, shape)
    _put(page, boxes.box, f"SUM({typed})", lambda job: 0.0, shape)
    _difference(page, boxes, lambda job: 0.0, shape)
    page.next()
    page.put(FixedText(page.row, LABEL, "papernameline", "Not known, estimate kept"))
    _fill(page, boxes, "paperwords", _COUNT)
    page.put(FixedText(page.row, boxes.box + 1, "paperwords", ""))
    _put(page, _COUNT, f"SUMPRODUCT(({estimates}<>0)*{blank})", unknown, _WHOLE)
    for col in (boxes.estimate, boxes.box):
        _put(page, col, f"SUMPRODUCT({blank}*{estimates})", whole, shape)
    page.next()
    _lay_sum_label(page, boxes, "Total")
    for col in (boxes.estimate, boxes.box):
        above = ":".join(cell(page.name, page.row - back, col, page.name) for back in (2, 1))
        _put(page, col, f"SUM({above})", whole, shape, "papersum")
    _difference(page, boxes, lambda job: 0.0, shape, "papersum")
    page.next()
    return cell(page.name, page.row - 1, boxes.box, page.name, "cr")


def _not_known(job: JobValues, part: paper.Actuals, group: str) -> float:
    """How many boxes of a group are for something that costs anything: when the workbook is written all are blank."""
    rows = range(job.count(part.estimate.level))
    costs = sum(job.of(part.group, row) == group and job.of(part.estimate, row) != 0 for row in rows)
    return float(min(costs, 1) if group == part.one_row else costs)


def _lay_sum_label(page: PaperPage, boxes: Boxes, label: str) -> None:
    """The label of a row of sums, and its empty cells, so that its rule is as wide as the page."""
    page.words(LABEL, label, "papertotal")
    _fill(page, boxes, "papersum")


def _lay_earned(page: PaperPage, context: PaperContext, part: paper.Actuals, boxes: Boxes, actual_cost: str) -> None:
    """What was billed less what it cost: by the bid, and as it turned out."""
    shape = paper_format(part.estimate)
    first = page.row
    sides: dict[int, list[tuple[int, Line]]] = {boxes.estimate: [], boxes.box: []}
    for row in part.earned:
        page.put(FixedText(page.row, LABEL, "papernameline", row.label))
        _fill(page, boxes, "paperwords")
        after = row.estimate if row.actual is None else row.actual
        for col, named in ((boxes.estimate, row.estimate), (boxes.box, after)):
            whole = named if named.all_rows is None else named.all_rows
            sides[col].append((row.adds, whole))
            text = context.text_of(whole, 0, page.name)
            if col == boxes.box and row.actual is None:
                _put(page, col, actual_cost, context.value_of(whole, 0), shape)
            else:
                page.put(Linked(page.row, col, "papernumber", text, context.value_of(whole, 0), shape))
        _difference(page, boxes, _of_sides([(1, sides[boxes.box][-1][1]), (-1, sides[boxes.estimate][-1][1])]), shape)
        page.next()
    _lay_sum_label(page, boxes, "Margin earned")
    for col, terms in sides.items():
        cells = (cell(page.name, first + place, col, page.name) for place in range(len(terms)))
        signed = "".join(f"{'+' if adds > 0 else '-'}{at}" for (adds, _), at in zip(terms, cells, strict=True))
        _put(page, col, signed.removeprefix("+"), _of_sides(terms), shape, "papersum")
    minus = [(-adds, line) for adds, line in sides[boxes.estimate]]
    _difference(page, boxes, _of_sides([*sides[boxes.box], *minus]), shape, "papersum")
    page.next()


def _of_sides(terms: list[tuple[int, Line]]) -> Value:
    """The sum of lines of the job, each with its sign."""
    kept = tuple(terms)
    return lambda job: float(sum(adds * float(job.of(each)) for adds, each in kept))
