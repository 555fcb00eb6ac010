"""The sheet Bid: the price and its parts, whether it may be sent, the cautions, what was decided, what was assumed."""

from __future__ import annotations

from collections.abc import Callable

from calc.declared import Declared, Line
from calc.layout.addresses import CellMap
from calc.layout.as_typed import on_one_line
from calc.layout.bid_cautions import lay_cautions
from calc.layout.bid_decisions import lay_decisions, lay_sensitivity
from calc.layout.caution_table import CautionTable, active_cautions, open_stops
from calc.layout.checks_sheet import CHECKED, NOT_READY, READY, ChecksPage, all_checks, failed, is_ready
from calc.layout.front_page import (
    ADDS,
    FIGURE,
    FIGURE_UNIT,
    GRID,
    KEY_LABEL,
    LABEL,
    LAST,
    NAME,
    NEXT,
    UNIT,
    VALUE,
    bring,
    end_row,
    put,
    put_jump,
    section_head,
)
from calc.layout.issued import TOLD, changed_boxes, changed_place, price_value
from calc.layout.page import CellValue, FullSizePage, IssueValue, JobText, Jump, Linked
from calc.layout.sheets import BAR
from calc.layout.styles import LEGEND, number_format
from calc.layout.text_width import text_width
from calc.layout.week_dates import COMPANY_DATE
from calc.model.results import JobValues
from calc.trade.inputs.job import Company, Job
from calc.trade.inputs.papers import PaperFacts
from calc.trade.levels import GROUP
from calc.trade.money.bid import ADDED, FALLS_DUE, KEY, PriceSummary
from calc.trade.money.price import BidPrice, Subtotal
from calc.trade.ordering.order import Order

_SHARE, _RISK, _MONEY = "0%", "0.0%", "#,##0.00"

_OWN_FORMATS: dict[Declared, str] = {Order.risk: _RISK}
"""Number formats that differ from those where the line is computed."""

_FINGERPRINT = 12
"""The signs of the fingerprint of the input that are shown; all of them stand on Log."""

_MARKS = VALUE, KEY_LABEL, LAST
"""The columns of the marks of cells."""

_SIGNERS = {LABEL: "Prepared", UNIT: "Checked", FIGURE: "Approved"}
_SEVERITIES = {KEY_LABEL: "stop", FIGURE: "caution", ADDS: "note"}
"""The columns in which the active cautions of each severity are counted."""

_OPEN = " not acknowledged"

_AND_MORE = 70.0
"""Pixels of how many more there are."""


def bid_page(places: CellMap, checks: ChecksPage) -> FullSizePage:
    """The front page, on one sheet of paper."""
    page = FullSizePage(
        NAME, (*GRID.widths, 2.0, 6.0), "Bid", portrait=True, frozen_rows=2, frozen_cols=0, repeated_rows=1
    )
    page.printed_cols = len(GRID.widths)
    _lay_head(page, places)
    _lay_price(page, places, checks)
    _lay_facts(page, places, checks.cautions)
    lay_cautions(page, checks.cautions)
    _lay_price_parts(page, places)
    lay_decisions(page, places)
    lay_sensitivity(page)
    _lay_overridden(page)
    _lay_foot(page)
    return page


def _lay_head(page: FullSizePage, places: CellMap) -> None:
    """The job, the company, the bar of jumps, the client and the dates."""
    page.put(JobText(0, LABEL, "sheettitle", lambda job: f"Bid {job.id}", wraps=False))
    bring(page, places, Company.name, LAST, "sheetnote")
    end_row(page, 26.0)
    sheets = {short: sheet for short, sheet in BAR.items() if sheet != NAME}
    for col, (short, sheet) in zip(range(LAST + 1), sheets.items(), strict=False):
        page.put(Jump(page.row, col, "barjump", _top_of(sheet), short))
    end_row(page, 12.0)
    for left, right in ((Job.client, Job.bid_date), (Job.address, Job.pour_date)):
        put(page, LABEL, left.label, "quiet")
        bring(page, places, left, VALUE, "told")
        put(page, FIGURE_UNIT, right.label, "quiet")
        bring(page, places, right, LAST, "step", form=COMPANY_DATE)
        end_row(page)


def _top_of(sheet: str) -> Callable[[], tuple[str, int, int]]:
    return lambda: (sheet, 0, 0)


def _lay_price(page: FullSizePage, places: CellMap, checks: ChecksPage) -> None:
    """The price, whether it may be sent, and whether the checks pass."""
    bring(page, places, BidPrice.price, LABEL, "heroprice", form=number_format("$"))
    for col in range(VALUE, LAST + 1):
        if col not in (VALUE, FIGURE):
            put(page, col, "", "band")
    stops = checks.stops_cell(NAME)
    ready = f'{checks.ready_cell(NAME)}&IF({stops}>0,": "&{stops}&IF({stops}=1," stop"," stops")&"{_OPEN}","")'
    page.put(Linked(page.row, VALUE, "bandready", lambda: ready, _readiness))
    wrong, every = checks.failed_cell(NAME), len(all_checks()) + CHECKED
    fails = f'{wrong}&IF({wrong}=1," CHECK FAILS"," CHECKS FAIL")&": see Checks"'
    passed = f'COUNT({checks.failed_column(NAME)})&" of "&COUNTA({checks.failed_column(NAME)})&" checks ok"'
    link = f"HYPERLINK(\"#'Checks'!B{checks.first + 1}\",IF({wrong}=0,{passed},{fails}))"

    def told(job: JobValues) -> CellValue:
        found = failed(job)
        if not found:
            return f"{every} of {every} checks ok"
        return f"{found} {'CHECK FAILS' if found == 1 else 'CHECKS FAIL'}: see Checks"

    page.put(Linked(page.row, FIGURE, "bandjump", lambda: link, told))
    end_row(page, 34.0)


def _readiness(job: JobValues) -> str:
    found = len(open_stops(job))
    told = f": {found} {'stop' if found == 1 else 'stops'}{_OPEN}" if found else ""
    return f"{READY if is_ready(job) else NOT_READY}{told}"


def _lay_facts(page: FullSizePage, places: CellMap, cautions: CautionTable) -> None:
    """What stands below the price: by area, complete or not, due, changed since issue, revision, fingerprint."""
    bring(page, places, BidPrice.per_ft2, LABEL, "quiet", form='"$"#,##0.00" per ft2"')
    bring(page, places, PriceSummary.complete, VALUE, "told")
    for col, word in _SEVERITIES.items():
        page.put(Linked(page.row, col, "told", _count_text(cautions, word), _counted(word)))
    end_row(page)
    put(page, LABEL, "Changed since issue", "quiet")
    page.put(Linked(page.row, VALUE, TOLD, lambda: _changed(places), lambda _job: "0 boxes"))
    page.put(Jump(page.row, NEXT, "jump", changed_place(places)))
    _lay_due(page, places, FALLS_DUE[0])
    put(page, LABEL, "Price at issue", "quiet")
    page.put(IssueValue(page.row, VALUE, "issueline", lambda job: f"${price_value(job):,.2f}"))
    _lay_due(page, places, FALLS_DUE[1])
    put(page, LABEL, PaperFacts.revision.label, "quiet")
    bring(page, places, PaperFacts.revision, VALUE, "told")
    put(page, KEY_LABEL, "Fingerprint of the input", "quiet")
    page.put(JobText(page.row, LAST, "issuefigure", lambda job: job.sha256[:_FINGERPRINT], wraps=False))
    end_row(page)


def _changed(places: CellMap) -> str:
    count = changed_boxes(places, NAME)
    return f'{count}&IF({count}=1," box"," boxes")'


def _lay_due(page: FullSizePage, places: CellMap, due: Line) -> None:
    put(page, KEY_LABEL, due.label, "quiet")
    bring(page, places, due, LAST, "step")
    end_row(page)


def _count_text(cautions: CautionTable, word: str) -> Callable[[], str]:
    """How many cautions of a severity are active, as a formula."""
    counted = f'SUMIF({cautions.column("severity", NAME)},"{word}",{cautions.column("active", NAME)})'
    return lambda: f'"{word}s: "&{counted}'


def _counted(word: str) -> Callable[[JobValues], str]:
    return lambda job: f"{word}s: {sum(each.severity.value == word for each in active_cautions(job))}"


def _lay_price_parts(page: FullSizePage, places: CellMap) -> None:
    """The parts of the price with the share of each, and beside them the job in numbers."""
    section_head(page, "The price, and the job in numbers")
    parts = [(Subtotal.amount, place, word.capitalize()) for place, word in enumerate(GROUP.axis.words)]
    parts += [(line, 0, label) for label, line in ADDED]
    for (line, place, label), (key, called) in zip([*parts, (BidPrice.price, 0, "Price")], KEY, strict=True):
        whole = line is BidPrice.price
        put(page, LABEL, label, "steptotalwords" if whole else "item")
        bring(page, places, line, VALUE, "steptotal" if whole else "step", place, _MONEY)
        _lay_share(page, places, line, place, "steptotal" if whole else "stepquiet")
        put_jump(page, places, line, NEXT, place)
        put(page, KEY_LABEL, called, "item")
        shown = key if key.all_rows is None else key.all_rows
        bring(page, places, shown, FIGURE_UNIT, "shrunkright", form=_OWN_FORMATS.get(key))
        put(page, FIGURE_UNIT + 1, key.unit_text, "stepunit")
        put_jump(page, places, shown)
        end_row(page)


def _lay_share(page: FullSizePage, places: CellMap, line: Line, place: int, role: str) -> None:
    """How much of the price it is."""
    price = BidPrice.price

    def text() -> str:
        whole = places.one(price, 0, NAME, "cr")
        return f"IF(ROUND({whole},6)>0,{places.one(line, place, NAME, 'cr')}/{whole},0)"

    def value(job: JobValues) -> CellValue:
        whole = float(job.of(price))
        return float(job.of(line, place)) / whole if round(whole, 6) > 0 else 0.0

    page.put(Linked(page.row, UNIT, role, text, value, _SHARE))


def _lay_overridden(page: FullSizePage) -> None:
    """Which lines were overridden and which stops acknowledged at issue; the reasons stand on Log."""
    put(page, LABEL, "Overridden, acknowledged", "quiet")
    page.put(IssueValue(page.row, VALUE, "issueline", _overridden))
    page.put(Jump(page.row, LAST, "jump", _top_of("Log"), "Log"))
    end_row(page)


def _overridden(job: JobValues) -> str:
    room = GRID.room(VALUE, LAST - 1)
    told: list[str] = []
    every = list(job.job.overrides.items())
    for place, ((override, _), entry) in enumerate(every):
        number = f" {entry.value:,g} {override.unit_text}".rstrip() if isinstance(entry.value, float) else ""
        item = on_one_line(f"{override.label.replace(': override', '')}{number} ({entry.who})")
        rest = len(every) - place - 1
        if text_width("; ".join([*told, item])) + (_AND_MORE if rest else 0.0) > room:
            return f"{'; '.join(told)}; and {rest + 1} more".removeprefix("; ")
        told.append(item)
    return "; ".join(told) or "nothing"


def _lay_foot(page: FullSizePage) -> None:
    """Who prepared, checked and approved it; and the marks of cells."""
    end_row(page, 8.0)
    for col in range(LAST + 1):
        put(page, col, _SIGNERS.get(col, ""), "signaturequiet")
    end_row(page, 14.0)
    put(page, LABEL, "Marks", "quiet")
    for col, (role, mark, meaning) in zip(_MARKS, LEGEND, strict=True):
        put(page, col, mark, role)
        if meaning:
            put(page, col + 1, meaning, "stepunit")
    end_row(page, 12.0)
