"""The week's workbook: one row per job, quantities by day, shared loads, and a ledger that appends to other weeks'.

It has values of the job workbooks, since no workbook links into another; totals and amounts are formulas.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from math import isnan

from calc.cells import column_letters
from calc.declared import Declared, Line
from calc.formula.functions import FUNCTIONS, NONE
from calc.layout.addresses import CellMap
from calc.layout.checks_sheet import failed, open_stops
from calc.layout.line_sheets import SAFETY, format_of
from calc.layout.page import CellValue, Constant, Linked, Page
from calc.layout.styles import DATE_FORMAT, LINE_HEIGHT
from calc.layout.week_calendar import CALENDAR, CALENDAR_TITLE, CALENDAR_WIDTHS, days_over, lay_calendar
from calc.layout.workbook import Cell, SheetPlan, resolve
from calc.model.results import JobDays, JobValues, SharedTruck, SmallPour, WeekCalendar
from calc.trade.inputs.job import Job
from calc.trade.money.cost_rows import ROWS
from calc.trade.money.costs import CostTable
from calc.trade.money.price import BidPrice
from calc.trade.money.week import BEYOND_COSTS, COLUMNS, WeekComparison
from calc.trade.takeoff.geometry import Slab

JOBS, DAYS, LEDGER_SHEET = "Week", "By day", "Ledger"
_FACTS = 5  # columns before the quantities
_LEDGER_HEADS = ("Bid date", "Job", "Line", "Quantity", "Unit", "Rate", "Amount", "Group", "Account")
SHARED_LOADS = "Shared loads"

_SHARED_HEADS = (
    "Pour date",
    "First stop",
    "Second stop",
    "Third stop",
    "Yards",
    "Trucks apart, $",
    "One truck, $",
    "Saving, $",
    "Conditions",
)
_SAVING, _NOTE = 7, 8
_OTHERS_LISTED = 500
"""So many of the other choices are listed: what saves less than so many is not worth a call."""
_CONDITIONS = (
    "Same day, one plant; the strongest mix and its admixtures for all; all unloaded, with the drive between the "
    "stops, within the discharge time limit. Ask the plant; nothing is changed automatically."
)


@dataclass(frozen=True, slots=True)
class LedgerRow:
    """One cost of a job."""

    label: str
    quantity: float
    unit: str
    rate: float
    group: str
    account: str


@dataclass(frozen=True, slots=True)
class WeekRow:
    """The row of a job, kept when its workbook is written."""

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
    days: JobDays


def week_row(job: JobValues, file: str, pour: SmallPour, days: JobDays) -> WeekRow:
    """The row of a job whose workbook is ``file``; ``pour`` is what the search for shared trucks needs of it, and
    ``days`` what the calendar needs."""
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
        pour,
        days,
    )


def _whole(line: Line) -> Declared:
    """The line for the whole job."""
    return line.all_rows if line.all_rows is not None else line


def _ledger(job: JobValues) -> Iterator[LedgerRow]:
    """One row for every cost, and for the rest of the direct cost. An unknown rate is none."""
    for index, cost in enumerate(ROWS):
        known = float(job.of(CostTable.known, index)) > 0
        rate = float(job.of(CostTable.rate, index)) if known else float("nan")
        account = str(job.of(CostTable.account, index))
        quantity = float(job.of(CostTable.quantity, index))
        yield LedgerRow(cost.label, quantity, cost.unit_text, rate, cost.group, account)
    for line in BEYOND_COSTS:
        amount = float(job.of(line))
        yield LedgerRow(line.label, 1.0 if amount else 0.0, "", amount, line.label.lower(), "-")


@dataclass(frozen=True)
class _Cells:
    """The cells of a sheet that grows with the jobs, made each time they are iterated: those of thousands of jobs would
    take more memory than the rest of a run."""

    pages: Callable[[Sequence[WeekRow]], Iterator[Page]]
    rows: Sequence[WeekRow]

    def __iter__(self) -> Iterator[Cell]:
        places = CellMap()
        for page in self.pages(self.rows):
            yield from resolve(page, places).cells


def week_sheets(
    rows: Sequence[WeekRow],
    review: Mapping[str, str],
    shared_trucks: Sequence[SharedTruck],
    calendar: WeekCalendar,
) -> list[SheetPlan]:
    """The sheets of the week.

    ``review`` says for each job id what looks odd beside the other jobs (:func:`calc.model.outliers.outliers`), and
    ``shared_trucks`` are the pours that could share one (:func:`calc.model.truck_sharing.shared_trucks`);
    ``calendar`` is what is done on each day (:func:`calc.model.week_calendar.week_calendar`).
    """
    pages = (_calendar_page(calendar), _days_page(rows), _shared_loads_page(shared_trucks))
    by_day, days, shared = (resolve(page, CellMap()) for page in pages)
    return [
        _growing(partial(_jobs_pages, review=review, calendar=calendar), rows),
        by_day,
        days,
        shared,
        _growing(_ledger_pages, rows),
    ]


def _growing(pages: Callable[[Sequence[WeekRow]], Iterator[Page]], rows: Sequence[WeekRow]) -> SheetPlan:
    """A sheet whose first page has its widths and head; the other pages continue below it."""
    return SheetPlan(next(pages(rows)), _Cells(pages, rows))


def _below(page: Page) -> Page:
    """A page that continues where ``page`` ends."""
    return Page(page.name, page.widths, row=page.row)


def _jobs_pages(rows: Sequence[WeekRow], review: Mapping[str, str], calendar: WeekCalendar) -> Iterator[Page]:
    heads = ["Job", "Client", "Bid date", "Pour date", "Status", *(_head_of(each) for each in COLUMNS), *_REVIEW_HEADS]
    widths = (12.0, 22.0, 10.0, 10.0, 11.0, *(10.0,) * len(COLUMNS), 10.0, 30.0)
    page = _open_page(JOBS, "Week: one row per job", widths, heads)
    first = page.row
    page.heights[first + len(rows) + 1] = LINE_HEIGHT
    yield page
    for row in rows:
        page = _below(page)
        _lay_job(page, row, review[row.job])
        yield page
    page = _below(page)
    page.next()
    _lay_all_jobs(page, rows, first)
    _lay_days_over(page, calendar)
    yield page


def _lay_days_over(page: Page, calendar: WeekCalendar) -> None:
    """The days that need more crews than the company has, in words."""
    page.next(2)
    page.put(Constant(page.row, 0, "strong", "Days that need more crews than the company has"))
    for day, sentence in days_over(calendar):
        page.next()
        page.put(Constant(page.row, 0, "issuelabel", day))
        page.put(Constant(page.row, 1, "issueline", sentence))
    if not calendar.over:
        page.next()
        page.put(Constant(page.row, 1, "issueline", "none"))


def _calendar_page(calendar: WeekCalendar) -> Page:
    page = _open_page(CALENDAR, CALENDAR_TITLE, CALENDAR_WIDTHS, ())
    page.row -= 1
    lay_calendar(page, calendar)
    return page


def _lay_job(page: Page, row: WeekRow, remark: str) -> None:
    put_formula(page, 0, "sentence", f"HYPERLINK({_quoted(row.file)},{_quoted(row.job)})", row.job)
    facts: tuple[tuple[CellValue, str], ...] = (
        (row.client, ""),
        (row.bid_date, DATE_FORMAT),
        (row.pour_date, DATE_FORMAT),
        (row.state, ""),
    )
    for col, (value, format_text) in enumerate(facts, start=1):
        put_value(page, col, value, format_text)
    for col, (line, value) in enumerate(zip(COLUMNS, row.quantities, strict=True), start=_FACTS):
        put_value(page, col, value, format_of(line))
    _lay_review(page, row, remark)
    page.next()


def _lay_all_jobs(page: Page, rows: Sequence[WeekRow], first: int) -> None:
    """Whether all jobs are ready, and what they come to."""
    page.words(0, "All jobs", "check")
    states = _column_range(4, first, first + len(rows) - 1)
    waiting = sum(row.state != "ready" for row in rows)
    put_formula(
        page,
        1,
        "check",
        f'IF(COUNTIF({states},"ready")=COUNTA({states}),"ALL CHECKS PASS","CHECK: some jobs are not ready")',
        "CHECK: some jobs are not ready" if waiting else "ALL CHECKS PASS",
    )
    for place, line in enumerate(COLUMNS):
        cells = _column_range(_FACTS + place, first, first + len(rows) - 1)
        total = sum(row.quantities[place] for row in rows)
        put_formula(page, _FACTS + place, "sum", f"SUM({cells})", total, format_of(line))


_REVIEW_HEADS = ("Price per ft2, $", "Review")
_PRICE, _AREA = COLUMNS.index(BidPrice.price), COLUMNS.index(Slab.net_area)


def _lay_review(page: Page, row: WeekRow, words: str) -> None:
    """The price per square foot, and what is unusual among the jobs."""
    price, area = (f"{column_letters(_FACTS + place + 1)}{page.row + 1}" for place in (_PRICE, _AREA))
    put_formula(page, _FACTS + len(COLUMNS), "formula", f"IF({area}>0,{price}/{area},0)", row.by_area, '"$"#,##0.00')
    put_value(page, _FACTS + len(COLUMNS) + 1, words, "")


def _head_of(line: Line) -> str:
    return f"{line.label}, {line.unit_text}"


def _days_page(rows: Sequence[WeekRow]) -> Page:
    """Quantities of each day; jobs without a pour date are under none."""
    heads = ["Pour date", "Jobs", *(_head_of(each) for each in COLUMNS)]
    page = _open_page(DAYS, "By day: quantities of each pour date", (14.0, 8.0, *(11.0,) * len(COLUMNS)), heads)
    last = 3 + len(rows) - 1
    days = _column_range(3, 3, last, JOBS)
    for day, count, sums in _by_day(rows):
        key = f"$A{page.row + 1}"
        put_value(page, 0, day, DATE_FORMAT)
        put_formula(page, 1, "formula", f"COUNTIFS({days},{key})", float(count), "0")
        for place, line in enumerate(COLUMNS):
            cells = _column_range(_FACTS + place, 3, last, JOBS)
            put_formula(page, 2 + place, "formula", f"SUMIFS({cells},{days},{key})", sums[place], format_of(line))
        page.next()
    return page


def _by_day(rows: Sequence[WeekRow]) -> Iterator[tuple[float, int, Sequence[float]]]:
    """Each pour date, how many jobs it has, and the sums of their quantities; the jobs that have none come last."""
    if len(rows) == 1:
        yield rows[0].pour_date, 1, rows[0].quantities
        return
    import pandas as pd  # the import takes as long as three jobs, and one job needs no grouping

    frame = pd.DataFrame([row.quantities for row in rows])
    days = pd.Series([row.pour_date for row in rows])
    for day, jobs in frame.groupby(days, dropna=False, sort=True):
        yield float(day), len(jobs), [float(each) for each in jobs.sum()]


def _ledger_pages(rows: Sequence[WeekRow]) -> Iterator[Page]:
    page = _open_page(LEDGER_SHEET, "Ledger", (11.0, 14.0, 36.0, 11.0, 8.0, 11.0, 12.0, 14.0, 16.0), _LEDGER_HEADS)
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
    put_formula(page, 6, "sum", f"SUM({_column_range(6, first, page.row - 2)})", total, '"$"#,##0.00')
    yield page


def _lay_entry(page: Page, row: WeekRow, each: LedgerRow) -> float:
    """One row of the ledger; gives its amount."""
    amount = 0.0 if isnan(each.rate) else _to_cent(each.quantity * each.rate)
    for col, value, format_text in (
        (0, row.bid_date, DATE_FORMAT), (1, row.job, ""), (2, each.label, ""), (3, each.quantity, "#,##0.00"),
        (4, each.unit, ""), (5, each.rate, '"$"#,##0.00'), (7, each.group, ""), (8, each.account, ""),
    ):  # fmt: skip
        put_value(page, col, value, format_text)
    quantity, rate = (f"{letter}{page.row + 1}" for letter in "DF")
    formula = f"IF(ISNUMBER({rate}),ROUND(ROUND({quantity}*{rate},6),2),0)"
    put_formula(page, 6, "formula", formula, amount, '"$"#,##0.00')
    page.next()
    return amount


def _shared_loads_page(found: Sequence[SharedTruck]) -> Page:
    """Small pours that could share a truck: the set that saves most, then the others, the largest saving first."""
    page = _open_page(
        SHARED_LOADS,
        "Shared loads: small pours that could share a truck",
        (20.0, 14.0, 14.0, 14.0, 9.0, 12.0, 12.0, 12.0, 60.0),
        _SHARED_HEADS,
    )
    if not found:
        page.words(0, "none", "label")
        page.words(_NOTE, "No pours of this week would save by sharing a truck.", "note")
        return page
    best, others = [each for each in found if each.best], [each for each in found if not each.best]
    first = page.row
    for truck in best:
        _lay_shared_truck(page, truck)
    page.words(0, "Best set", "check")
    total = sum(each.saving for each in best)
    put_formula(page, _SAVING, "sum", f"SUM({_column_range(_SAVING, first, page.row - 1)})", total, '"$"#,##0.00')
    page.words(
        _NOTE,
        "No job twice. It is the largest saving there is; on a very busy day, the largest that was found.",
        "note",
    )
    page.next(2)
    if others:
        page.words(0, "Other choices", "section")
        page.next()
    for truck in others[:_OTHERS_LISTED]:
        _lay_shared_truck(page, truck)
    if len(others) > _OTHERS_LISTED:
        page.words(_NOTE, f"{len(others) - _OTHERS_LISTED} more choices save less than these.", "note")
    return page


def _lay_shared_truck(page: Page, truck: SharedTruck) -> None:
    names = (*(each.job for each in truck.stops), "-")[:3]
    facts: tuple[tuple[CellValue, str], ...] = (
        (truck.day, DATE_FORMAT),
        *((name, "") for name in names),
        (truck.yards, "#,##0.00"),
        (truck.apart, '"$"#,##0.00'),
        (truck.together, '"$"#,##0.00'),
    )
    for col, (value, format_text) in enumerate(facts):
        put_value(page, col, value, format_text)
    row = page.row + 1
    put_formula(page, _SAVING, "sum", f"F{row}-G{row}", truck.saving, '"$"#,##0.00')
    page.words(_NOTE, _CONDITIONS, "note")
    page.next()


def _open_page(name: str, title: str, widths: tuple[float, ...], heads: Sequence[str]) -> Page:
    """A sheet with its title, the safety notice and its heads."""
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


def put_value(page: Page, col: int, value: CellValue, format_text: str) -> None:
    """A value fixed at issue in the current row."""
    content = NONE if isinstance(value, float) and isnan(value) else value
    page.put(Constant(page.row, col, "issuetext" if isinstance(content, str) else "issue", content, format_text))


def put_formula(page: Page, col: int, role: str, text: str, value: CellValue, format_text: str = "") -> None:
    """A formula in the current row, with its value."""
    page.put(Linked(page.row, col, role, lambda: text, lambda _job: value, format_text))


def _quoted(text: str) -> str:
    """Text quoted for a formula. The writer takes a name before a parenthesis for a function, in quotes too: a job may
    be called SORT(1), so the text before a parenthesis is quoted by itself."""
    doubled = text.replace('"', '""').replace("(", '"&"(')
    return f'"{doubled}"'


def _column_range(col: int, first: int, last: int, sheet: str = "") -> str:
    """The address of a column from one row to another."""
    letters = column_letters(col + 1)
    return f"{sheet + '!' if sheet else ''}${letters}${first + 1}:${letters}${max(first, last) + 1}"


def _to_cent(amount: float) -> float:
    """An amount to the cent."""
    return float(FUNCTIONS["money"].numbers(amount))
