"""The workbook of the week: a row a job, quantities by day, and a ledger that stacks on other weeks'.

It holds values of the job workbooks, since no workbook links into another; totals and amounts are formulas.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from math import isnan

from calc.cells import column_letters
from calc.declared import Declared, Line
from calc.formula.functions import NONE
from calc.layout.addresses import CellMap
from calc.layout.checks_sheet import failed, open_stops
from calc.layout.line_sheets import format_of
from calc.layout.page import Page, Shown
from calc.layout.pairs_page import pairs_page
from calc.layout.styles import DATE_FORMAT, LINE_HEIGHT
from calc.layout.week_cells import cents, link, quoted, say, span, week_page
from calc.layout.workbook import Cell, SheetPlan, resolve
from calc.model.outliers import outliers
from calc.model.results import JobValues
from calc.model.truck_sharing import SmallPour, small_pour
from calc.trade.inputs.job import Job
from calc.trade.money.cost_rows import ROWS
from calc.trade.money.costs import CostTable
from calc.trade.money.price import BidPrice
from calc.trade.money.week import BEYOND_COSTS, COLUMNS, WeekComparison
from calc.trade.takeoff.geometry import Slab

JOBS, DAYS, LEDGER_SHEET = "Week", "By day", "Ledger"
_FACTS = 5  # columns before the quantities
_LEDGER_HEADS = ("Bid date", "Job", "Line", "Quantity", "Unit", "Rate", "Amount", "Group", "Account")


@dataclass(frozen=True, slots=True)
class LedgerRow:
    """One thing that a job buys."""

    label: str
    quantity: float
    unit: str
    rate: float
    group: str
    account: str


@dataclass(frozen=True, slots=True)
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
    address: str
    by_area: float
    usual: tuple[float, float]
    pour: SmallPour


def week_row(job: JobValues, file: str) -> WeekRow:
    """The row of a job."""
    stops, misses = len(open_stops(job)), failed(job)
    state = "NOT READY" if stops else ("CHECK" if misses else "ready")
    quantities = tuple(float(job.of(_whole(each))) for each in COLUMNS)
    return WeekRow(
        job.job.id,
        file,
        str(job.of(Job.client)),
        float(job.of(Job.bid_date)),
        float(job.of(Job.pour_date)),
        quantities,
        state,
        tuple(each for each in _ledger(job) if each.quantity),
        str(job.of(Job.address)),
        float(job.of(BidPrice.per_ft2)),
        (float(job.of(WeekComparison.low)), float(job.of(WeekComparison.high))),
        small_pour(job),
    )


def _whole(line: Line) -> Declared:
    """The line for the whole job."""
    return line.all_rows if line.all_rows is not None else line


def _ledger(job: JobValues) -> Iterator[LedgerRow]:
    """A row for every cost, and for what the direct cost holds beside them. A rate that nobody knows is none."""
    for index, cost in enumerate(ROWS):
        row = job.job.company.price_rows.get(cost.price) if cost.price is not None else None
        known = float(job.of(CostTable.known, index)) > 0
        rate = float(job.of(CostTable.rate, index)) if known else float("nan")
        account = row.account if row else ""
        quantity = float(job.of(CostTable.quantity, index))
        yield LedgerRow(cost.label, quantity, cost.unit_text, rate, cost.group, account)
    for line in BEYOND_COSTS:
        amount = float(job.of(line))
        yield LedgerRow(line.label, 1.0 if amount else 0.0, "", amount, line.label.lower(), "")


@dataclass(frozen=True)
class _Cells:
    """The cells of a sheet that grows with the jobs, made anew whenever they are asked for: of thousands of jobs they
    would take more room than all the rest of a run."""

    pages: Callable[[Sequence[WeekRow]], Iterator[Page]]
    rows: Sequence[WeekRow]

    def __iter__(self) -> Iterator[Cell]:
        places = CellMap()
        for page in self.pages(self.rows):
            yield from resolve(page, places).cells


def week_sheets(rows: Sequence[WeekRow]) -> list[SheetPlan]:
    """The sheets of the week."""
    days, shared = (resolve(page, CellMap()) for page in (_days_page(rows), pairs_page([row.pour for row in rows])))
    return [_growing(_jobs_pages, rows), days, shared, _growing(_ledger_pages, rows)]


def _growing(pages: Callable[[Sequence[WeekRow]], Iterator[Page]], rows: Sequence[WeekRow]) -> SheetPlan:
    """A sheet whose first page says how it looks; the others go on below it."""
    return SheetPlan(next(pages(rows)), _Cells(pages, rows))


def _below(page: Page) -> Page:
    """A page that goes on where ``page`` ends."""
    return Page(page.name, page.widths, row=page.row)


def _jobs_pages(rows: Sequence[WeekRow]) -> Iterator[Page]:
    heads = ["Job", "Client", "Bid date", "Pour date", "State", *(_head_of(each) for each in COLUMNS), *_LOOK_HEADS]
    widths = (12.0, 22.0, 10.0, 10.0, 11.0, *(10.0,) * len(COLUMNS), 10.0, 30.0)
    page = week_page(JOBS, "Week: a row a job", widths, heads)
    first = page.row
    page.heights[first + len(rows) + 1] = LINE_HEIGHT
    yield page
    look = outliers(rows)
    for row in rows:
        page = _below(page)
        _lay_job(page, row, look[row.job])
        yield page
    page = _below(page)
    page.next()
    _lay_all_jobs(page, rows, first)
    yield page


def _lay_job(page: Page, row: WeekRow, look: str) -> None:
    link(page, 0, "sentence", f"HYPERLINK({quoted(row.file)},{quoted(row.job)})", row.job)
    facts: tuple[tuple[Shown, str], ...] = (
        (row.client, ""),
        (row.bid_date, DATE_FORMAT),
        (row.pour_date, DATE_FORMAT),
        (row.state, ""),
    )
    for col, (value, face) in enumerate(facts, start=1):
        say(page, col, value, face)
    for col, (line, value) in enumerate(zip(COLUMNS, row.quantities, strict=True), start=_FACTS):
        say(page, col, value, format_of(line))
    _lay_look(page, row, look)
    page.next()


def _lay_all_jobs(page: Page, rows: Sequence[WeekRow], first: int) -> None:
    """Whether all jobs are ready, and what they come to."""
    page.words(0, "All jobs", "check")
    states = span(4, first, first + len(rows) - 1)
    waiting = sum(row.state != "ready" for row in rows)
    link(
        page,
        1,
        "check",
        f'IF(COUNTIF({states},"ready")=COUNTA({states}),"ALL CHECKS PASS","CHECK: some jobs are not ready")',
        "CHECK: some jobs are not ready" if waiting else "ALL CHECKS PASS",
    )
    for place, line in enumerate(COLUMNS):
        cells = span(_FACTS + place, first, first + len(rows) - 1)
        total = sum(row.quantities[place] for row in rows)
        link(page, _FACTS + place, "sum", f"SUM({cells})", total, format_of(line))


_LOOK_HEADS = ("Price by area, $/ft2", "Look again")
_PRICE, _AREA = COLUMNS.index(BidPrice.price), COLUMNS.index(Slab.net_area)


def _lay_look(page: Page, row: WeekRow, words: str) -> None:
    """What a square foot costs, and what looks odd beside the other jobs."""
    price, area = (f"{column_letters(_FACTS + place + 1)}{page.row + 1}" for place in (_PRICE, _AREA))
    link(page, _FACTS + len(COLUMNS), "formula", f"IF({area}>0,{price}/{area},0)", row.by_area, '"$"#,##0.00')
    say(page, _FACTS + len(COLUMNS) + 1, words, "")


def _head_of(line: Line) -> str:
    return f"{line.label}, {line.unit_text}"


def _days_page(rows: Sequence[WeekRow]) -> Page:
    """What is poured on each day; jobs without a pour date stand under none."""
    heads = ["Pour date", "Jobs", *(_head_of(each) for each in COLUMNS)]
    page = week_page(DAYS, "By day: what is needed on each day", (14.0, 8.0, *(11.0,) * len(COLUMNS)), heads)
    last = 3 + len(rows) - 1
    days = span(3, 3, last, JOBS)
    for day, count, sums in _by_day(rows):
        key = f"$A{page.row + 1}"
        say(page, 0, day, DATE_FORMAT)
        link(page, 1, "formula", f"COUNTIFS({days},{key})", float(count), "0")
        for place, line in enumerate(COLUMNS):
            cells = span(_FACTS + place, 3, last, JOBS)
            link(page, 2 + place, "formula", f"SUMIFS({cells},{days},{key})", sums[place], format_of(line))
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


def _ledger_pages(rows: Sequence[WeekRow]) -> Iterator[Page]:
    page = week_page(LEDGER_SHEET, "Ledger", (11.0, 14.0, 36.0, 11.0, 8.0, 11.0, 12.0, 14.0, 16.0), _LEDGER_HEADS)
    first = page.row
    page.heights[first + sum(len(row.ledger) for row in rows) + 1] = LINE_HEIGHT
    yield page
    total = 0.0
    for row in rows:
        page = _below(page)
        for each in row.ledger:
            total += _lay_entry(page, row, each)
        yield page
    page = _below(page)
    page.next()
    page.words(2, "All amounts", "check")
    link(page, 6, "sum", f"SUM({span(6, first, page.row - 2)})", total, '"$"#,##0.00')
    yield page


def _lay_entry(page: Page, row: WeekRow, each: LedgerRow) -> float:
    """One row of the ledger; gives its amount."""
    amount = 0.0 if isnan(each.rate) else cents(each.quantity * each.rate)
    for col, value, face in (
        (0, row.bid_date, DATE_FORMAT), (1, row.job, ""), (2, each.label, ""), (3, each.quantity, "#,##0.00"),
        (4, each.unit, ""), (5, each.rate, '"$"#,##0.00'), (7, each.group, ""), (8, each.account or NONE, ""),
    ):  # fmt: skip
        say(page, col, value, face)
    quantity, rate = (f"{letter}{page.row + 1}" for letter in "DF")
    formula = f"IF(ISNUMBER({rate}),ROUND(ROUND({quantity}*{rate},6),2),0)"
    link(page, 6, "formula", formula, amount, '"$"#,##0.00')
    page.next()
    return amount
