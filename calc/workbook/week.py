"""The workbook of the week: a row a job, quantities by day, and a ledger that stacks on other weeks'.

It holds values of the job workbooks, since no workbook links into another; totals and amounts are formulas.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import isnan

from calc.cells import column_letters
from calc.declared import Declared, Line, Price
from calc.formula.functions import FUNCTIONS, NONE
from calc.trade.inputs import Job
from calc.trade.week import COLUMNS, LEDGER
from calc.workbook.checks import missed, open_stops
from calc.workbook.lines import SAFETY, format_of
from calc.workbook.page import Linked, Page, Shown, Stated
from calc.workbook.places import Places
from calc.workbook.plan import SheetPlan, resolve
from calc.workbook.values import JobValues

JOBS, DAYS, LEDGER_SHEET = "Week", "By day", "Ledger"
_DATE = "yyyy-mm-dd"
_FACTS = 5  # columns before the quantities
_LEDGER_HEADS = ("Bid date", "Job", "Line", "Quantity", "Unit", "Rate", "Amount", "Group", "Account")


@dataclass(frozen=True)
class LedgerRow:
    """One thing that a job buys."""

    label: str
    quantity: float
    unit: str
    rate: float
    group: str
    account: str


@dataclass(frozen=True)
class WeekRow:
    """What the week keeps of a job when its workbook is written."""

    job: str
    file: str
    client: str
    bid_date: float
    pour_date: float
    quantities: tuple[float, ...]
    state: str
    ledger: tuple[LedgerRow, ...]


def week_row(job: JobValues, file: str) -> WeekRow:
    """The row of a job."""
    stops, misses = len(open_stops(job)), missed(job)
    state = "NOT READY" if stops else ("CHECK" if misses else "ready")
    quantities = tuple(float(job.of(_whole(each))) for each in COLUMNS)
    ledger = tuple(_ledger_row(job, *entered) for entered in LEDGER)
    return WeekRow(
        job.job.id,
        file,
        str(job.of(Job.client)),
        float(job.of(Job.bid_date)),
        float(job.of(Job.pour_date)),
        quantities,
        state,
        tuple(each for each in ledger if each.quantity),
    )


def _whole(line: Line) -> Declared:
    """The line for the whole job."""
    return line.all_rows if line.all_rows is not None else line


def _ledger_row(job: JobValues, line: Line, price: Price | None, group: str) -> LedgerRow:
    row = job.job.house.price_rows.get(price) if price is not None else None
    rate = float(job.of(price)) if price is not None else float("nan")
    label = line.label if price is None else price.label
    return LedgerRow(label, float(job.of(_whole(line))), line.unit_text, rate, group, row.account if row else "")


def week_sheets(rows: Sequence[WeekRow]) -> list[SheetPlan]:
    """The three sheets of the week."""
    places = Places()
    return [resolve(page, places) for page in (_jobs_page(rows), _days_page(rows), _ledger_page(rows))]


def _page(name: str, title: str, widths: tuple[float, ...], heads: Sequence[str]) -> Page:
    page = Page(name, widths, title, frozen_cols=2)
    page.words(0, title, "title")
    page.heights[0] = 22
    page.next()
    page.words(0, SAFETY, "subtitle")
    page.next()
    for col, text in enumerate(heads):
        page.words(col, text, "head")
    page.next()
    return page


def _jobs_page(rows: Sequence[WeekRow]) -> Page:
    heads = ["Job", "Client", "Bid date", "Pour date", "State", *(_head_of(each) for each in COLUMNS)]
    page = _page(JOBS, "Week: a row a job", (14.0, 30.0, 11.0, 11.0, 12.0, *(11.0,) * len(COLUMNS)), heads)
    first = page.row
    for row in rows:
        _link(page, 0, "sentence", f"HYPERLINK({_quoted(row.file)},{_quoted(row.job)})", row.job)
        facts: tuple[tuple[Shown, str], ...] = (
            (row.client, ""),
            (row.bid_date, _DATE),
            (row.pour_date, _DATE),
            (row.state, ""),
        )
        for col, (value, face) in enumerate(facts, start=1):
            _say(page, col, value, face)
        for col, (line, value) in enumerate(zip(COLUMNS, row.quantities, strict=True), start=_FACTS):
            _say(page, col, value, format_of(line))
        page.next()
    page.next()
    page.words(0, "All jobs", "check")
    states = _span(4, first, first + len(rows) - 1)
    waiting = sum(row.state != "ready" for row in rows)
    _link(
        page,
        1,
        "check",
        f'IF(COUNTIF({states},"ready")=COUNTA({states}),"ALL CHECKS PASS","CHECK: some jobs are not ready")',
        "CHECK: some jobs are not ready" if waiting else "ALL CHECKS PASS",
    )
    for place, line in enumerate(COLUMNS):
        cells = _span(_FACTS + place, first, first + len(rows) - 1)
        total = sum(row.quantities[place] for row in rows)
        _link(page, _FACTS + place, "sum", f"SUM({cells})", total, format_of(line))
    return page


def _head_of(line: Line) -> str:
    return f"{line.label}, {line.unit_text}"


def _days_page(rows: Sequence[WeekRow]) -> Page:
    """What is poured on each day; jobs without a pour date stand under none."""
    heads = ["Pour date", "Jobs", *(_head_of(each) for each in COLUMNS)]
    page = _page(DAYS, "By day: what is needed on each day", (14.0, 8.0, *(11.0,) * len(COLUMNS)), heads)
    last = 3 + len(rows) - 1
    days = _span(3, 3, last, JOBS)
    for day, count, sums in _by_day(rows):
        key = f"$A{page.row + 1}"
        _say(page, 0, day, _DATE)
        _link(page, 1, "formula", f"COUNTIFS({days},{key})", float(count), "0")
        for place, line in enumerate(COLUMNS):
            cells = _span(_FACTS + place, 3, last, JOBS)
            _link(page, 2 + place, "formula", f"SUMIFS({cells},{days},{key})", sums[place], format_of(line))
        page.next()
    return page


def _by_day(rows: Sequence[WeekRow]) -> Iterator[tuple[float, int, Sequence[float]]]:
    """Each pour date, how many jobs it has, and the sums of their quantities; the jobs that have none come last."""
    if len(rows) == 1:
        yield rows[0].pour_date, 1, rows[0].quantities
        return
    import pandas as pd  # takes as long as three jobs do, and one job alone needs no grouping

    frame = pd.DataFrame([row.quantities for row in rows])
    days = pd.Series([row.pour_date for row in rows])
    for day, jobs in frame.groupby(days, dropna=False, sort=True):
        yield float(day), len(jobs), [float(each) for each in jobs.sum()]


def _ledger_page(rows: Sequence[WeekRow]) -> Page:
    page = _page(LEDGER_SHEET, "Ledger", (11.0, 14.0, 36.0, 11.0, 8.0, 11.0, 12.0, 14.0, 16.0), _LEDGER_HEADS)
    first = page.row
    total = 0.0
    for row in rows:
        for each in row.ledger:
            amount = 0.0 if isnan(each.rate) else _cents(each.quantity * each.rate)
            total += amount
            for col, value, face in (
                (0, row.bid_date, _DATE), (1, row.job, ""), (2, each.label, ""), (3, each.quantity, "#,##0.00"),
                (4, each.unit, ""), (5, each.rate, '"$"#,##0.00'), (7, each.group, ""), (8, each.account or NONE, ""),
            ):  # fmt: skip
                _say(page, col, value, face)
            quantity, rate = (f"{letter}{page.row + 1}" for letter in "DF")
            formula = f"IF(ISNUMBER({rate}),ROUND(ROUND({quantity}*{rate},6),2),0)"
            _link(page, 6, "formula", formula, amount, '"$"#,##0.00')
            page.next()
    page.next()
    page.words(2, "All amounts", "check")
    _link(page, 6, "sum", f"SUM({_span(6, first, page.row - 2)})", total, '"$"#,##0.00')
    return page


def _cents(amount: float) -> float:
    return float(FUNCTIONS["money"].numbers(amount))


def _say(page: Page, col: int, value: Shown, face: str) -> None:
    shown = NONE if isinstance(value, float) and isnan(value) else value
    page.put(Stated(page.row, col, "issue", shown, face))


def _link(page: Page, col: int, role: str, text: str, value: Shown, face: str = "") -> None:
    page.put(Linked(page.row, col, role, lambda: text, lambda _job: value, face))


def _quoted(text: str) -> str:
    """Words as a formula holds them. The writer takes a name before a bracket for a function, in quotes too: a job may
    be called SORT(1), so what stands before a bracket is a text of its own."""
    doubled = text.replace('"', '""').replace("(", '"&"(')
    return f'"{doubled}"'


def _span(col: int, first: int, last: int, sheet: str = "") -> str:
    letters = column_letters(col + 1)
    return f"{sheet + '!' if sheet else ''}${letters}${first + 1}:${letters}${max(first, last) + 1}"
