"""The costs of a job with a box for what each came to, on the paper for the office.

Which costs are listed is fixed at issue, so that what is typed in a box stays beside its cost whatever is edited. Their
numbers are live. What an edit adds stands in a row of its own, and labor, which a crew has no receipts of, in one.
"""

from __future__ import annotations

from collections.abc import Callable

from calc.declared import Line, paper
from calc.declared.paper import DASH
from calc.layout.addresses import cell
from calc.layout.page import CellValue, FixedText, IssueValue, Linked
from calc.layout.paper_cells import LABEL, VALUE, Boxes, PaperContext, PaperPage, paper_format
from calc.layout.styles import number_format
from calc.model.results import JobValues

Value = Callable[[JobValues], CellValue]

NOT_KNOWN = "not known"
"""Shown where nothing was typed in a box; its estimate is kept in totals."""

_QUANTITY, _UNIT, _RATE, _ESTIMATE, _BOX, _DIFFERENCE, _ACCOUNT = range(VALUE, VALUE + 7)
_NUMBER, _GROUP, _LISTED = VALUE + 9, VALUE + 10, VALUE + 11
"""The columns behind the printed ones: the number of the cost among all, its group, and its amount once more."""

_HEADS = {
    LABEL: "Cost", _QUANTITY: "Quantity", _UNIT: "Unit", _RATE: "Rate", _ESTIMATE: "Estimate", _BOX: "Actual",
    _DIFFERENCE: "Difference", _ACCOUNT: "Account",
}  # fmt: skip
_INDENTED = {_UNIT, _ACCOUNT}
_MONEY = '#,##0.00;-#,##0.00;""'
_ANY = '#,##0.00##;-#,##0.00##;""'


def lay_costs(page: PaperPage, context: PaperContext, part: paper.JobCosts) -> None:
    """The heads, a row for each cost that the job had at issue, one for labor, and one for what was added since."""
    page.widths = (*page.widths, 2.0, 6.0, 9.0, 9.0)
    for col in range(page.printed_cols):
        role = "paperhead" if col == LABEL else "paperheadindent" if col in _INDENTED else "paperheadright"
        page.put(FixedText(page.row, col, role, _HEADS.get(col, "")))
    page.put(FixedText(page.row, _NUMBER, "rowkey", "No."))
    page.put(FixedText(page.row, _GROUP, "issued", "Group"))
    page.put(FixedText(page.row, _LISTED, "issued", "Listed, $"))
    page.next()
    first, slots = page.row, context.counts[part.listed.level]
    page.boxes = Boxes(first, first + slots + 1, _BOX, _ESTIMATE, _GROUP)
    for slot in range(slots):
        _lay_cost(page, context, part, slot)
    _lay_labor(page, context, part)
    _lay_added(page, context, part, first)


def difference(page: PaperPage) -> str:
    """Actual less estimate of the current row; not known where the box is blank, a dash where nothing was expected."""
    actual, estimate = (cell(page.name, page.row, col, page.name) for col in (_BOX, _ESTIMATE))
    return f'IF(ISNUMBER({actual}),{actual}-{estimate},IF({estimate}=0,"{DASH}","{NOT_KNOWN}"))'


def _lay_cost(page: PaperPage, context: PaperContext, part: paper.JobCosts, slot: int) -> None:
    def number(job: JobValues) -> int:
        return int(float(job.of(part.listed, slot)))

    def word_of(words: tuple[str, ...]) -> Value:
        return lambda job: words[number(job) - 1] if number(job) else ""

    page.put(IssueValue(page.row, LABEL, "papernameline", word_of(part.names)))
    page.put(IssueValue(page.row, _UNIT, "paperwordsindent", word_of(part.units)))
    page.put(IssueValue(page.row, _NUMBER, "rowkey", lambda job: float(number(job)), "0"))
    brought = (
        (_QUANTITY, part.quantity, 0.0, "papernumber", _ANY),
        (_RATE, part.rate, 0.0, "papernumber", _ANY),
        (_ESTIMATE, part.amount, 0.0, "papernumber", _MONEY),
        (_ACCOUNT, part.account, "", "paperwordsindent", ""),
        (_GROUP, part.group, "", "issued", ""),
        (_LISTED, part.amount, 0.0, "issued", _MONEY),
    )
    for col, named, empty, role, shown in brought:
        page.put(Linked(page.row, col, role, *_picked(page, context, named, number, empty), shown))
    _lay_box(page, lambda job: job.of(part.amount, number(job) - 1) if number(job) else 0.0)


def _picked(
    page: PaperPage, context: PaperContext, named: Line, number: Callable[[JobValues], int], empty: CellValue
) -> tuple[Callable[[], str], Value]:
    """What the cost of the current row has of a line, as the text of a formula and as a value."""
    at = cell(page.name, page.row, _NUMBER, page.name, "c")

    def text() -> str:
        location = context.places.locations[named]
        cells = context.places.range_of(location.block, location.position, page.name, headed=True)
        return f"IF({at}=0,{'0' if empty == 0.0 else chr(34) * 2},INDEX({cells},{at}+1))"

    return text, lambda job: job.of(named, number(job) - 1) if number(job) else empty


def _lay_box(page: PaperPage, expected: Value) -> None:
    """The box of the current row, the difference beside it, and the end of its rule."""
    page.put(FixedText(page.row, _BOX, "box", ""))
    text = difference(page)

    def value(job: JobValues) -> CellValue:
        return DASH if expected(job) == 0 else NOT_KNOWN

    page.put(Linked(page.row, _DIFFERENCE, "papernumber", lambda: text, value, _shown_money()))
    page.put(FixedText(page.row, _ACCOUNT + 1, "paperwords", ""))
    page.next()


def _shown_money() -> str:
    """Dollars and cents, a dash for none."""
    return f'{number_format("$")};-{number_format("$")};"-"'


def _lay_labor(page: PaperPage, context: PaperContext, part: paper.JobCosts) -> None:
    """All labor in one row: who works writes down hours, not tasks."""
    place = part.subtotal.level.axis.words.index(part.labor)
    page.put(FixedText(page.row, LABEL, "papernameline", "Labor, paid hours"))
    page.put(FixedText(page.row, _GROUP, "issued", part.labor))
    text, value = context.text_of(part.subtotal, place, page.name), context.value_of(part.subtotal, place)
    page.put(Linked(page.row, _ESTIMATE, "papernumber", text, value, paper_format(part.amount)))
    page.put(Linked(page.row, _LISTED, "issued", text, value, _MONEY))
    _fill(page)
    _lay_box(page, value)


def _lay_added(page: PaperPage, context: PaperContext, part: paper.JobCosts, first: int) -> None:
    """What all costs are more than labor and those listed.

    These are added up in a column of their own: a number pasted over an estimate must not be taken up here.
    """
    whole = part.amount.all_rows
    assert whole is not None, "costs add up"
    total = context.text_of(whole, 0, page.name)
    listed = ":".join(cell(page.name, row, _LISTED, page.name) for row in (first, page.row - 1))

    def text() -> str:
        return f"ROUND({total()}-SUM({listed}),2)"

    page.put(FixedText(page.row, LABEL, "papernameline", "Costs added since issue"))
    page.put(FixedText(page.row, _GROUP, "issued", "added"))
    page.put(Linked(page.row, _ESTIMATE, "papernumber", text, lambda _job: 0.0, paper_format(part.amount)))
    _fill(page)
    _lay_box(page, lambda _job: 0.0)


def _fill(page: PaperPage) -> None:
    for col in (_QUANTITY, _UNIT, _RATE, _ACCOUNT):
        page.put(FixedText(page.row, col, "paperwords", ""))
