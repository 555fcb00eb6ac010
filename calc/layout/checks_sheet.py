"""The sheet Checks: whether the bid may be sent, the checks by two routes, and the active cautions in full."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache

from calc.declared import Check
from calc.layout.addresses import CellMap, cell, span
from calc.layout.caution_table import CautionTable, ShownOf, active_cautions, lay_place, limit_of, open_stops
from calc.layout.grid import CHECKS, ITEM, VALUE
from calc.layout.page import CellValue, Computed, FixedText, FullSizePage, Linked
from calc.layout.proof import Proof, ProofRows
from calc.layout.sheet_layout import Draft
from calc.layout.sheets import open_sheet, paged
from calc.layout.shown import format_of
from calc.layout.styles import COUNT_FORMAT
from calc.model.results import JobValues
from calc.trade.catalog import SECTIONS
from calc.trade.money.costs import CostTable
from calc.trade.money.price import BidPrice

NAME = "Checks"
ABOUT = "two routes to one number, and what to watch"
ONE, ANOTHER, UNIT, FAILED, TOLD = range(VALUE, VALUE + 5)
"""The columns of a check: both routes, their unit, whether it failed, and what is compared, or what to do."""

_NUMBER, _OF, _FOUND = ONE, ANOTHER, UNIT
"""The columns of a caution: its number with its unit, and what was found."""

_RESULT = '"FAIL";"FAIL";"ok"'
"""How a failure, 1 or 0, is shown."""

_NUMBERS = '#,##0.00;-#,##0.00;"-"'
NOTHING = "-"


@cache
def all_checks() -> tuple[Check, ...]:
    """Every check, in order."""
    return tuple(each for section in SECTIONS for each in section.declarations if isinstance(each, Check))


def failed(job: JobValues) -> int:
    """How many checks a job fails."""
    return sum(int(job.of(each.failed)) for each in all_checks())


READY, NOT_READY = "READY TO SEND", "NOT READY"
"""Whether a bid may be sent, in words."""


def is_ready(job: JobValues) -> bool:
    """Whether a bid may be sent: every cost has a price, every check passes, and no stop is open."""
    return not failed(job) and not open_stops(job) and float(job.of(BidPrice.unpriced)) == 0


@dataclass(frozen=True)
class Proven:
    """A check of the workbook itself: what is counted, and the rows of the proof that count it."""

    label: str
    unit: str
    compared: str
    remedy: str
    """Behind the place that is off."""
    rows: Callable[[Proof], ProofRows]


PROVEN = (
    Proven(
        "Boxes hold what they may",
        "boxes",
        "Boxes that hold what they may not: 0",
        ": type what it asks for",
        lambda proof: proof.boxes,
    ),
    Proven(
        "Story = its formulas",
        "off by",
        "How far cells of the story are from their formulas, worked again: 0",
        ": undo it",
        lambda proof: proof.story,
    ),
)

JOB_COST = "Job cost = Costs"
"""The check that holds the paper for the office against the costs."""

_UNDO = "A formula was typed over on Job cost: undo it."

CHECKED = len(PROVEN) + 1
"""The checks of the workbook itself."""


class ChecksPage:
    """The sheet, and the addresses on it that the sheet Bid and the papers use."""

    def __init__(
        self, places: CellMap, proof: Proof, cautions: CautionTable, slots: int, job_cost: Callable[[], str]
    ) -> None:
        """``slots`` are the cautions that it has room for; ``job_cost`` the range of the estimates on Job cost."""
        self.places, self.proof, self.cautions = places, proof, cautions
        self._sheet = open_sheet(NAME, CHECKS, places, Draft(), ABOUT, NAME)
        self._ready_row = self._first = self._last = 1
        self._lay_checks(job_cost)
        self._lay_readiness()
        self._lay_cautions(slots)
        page = self._sheet.page
        page.widths = (*page.widths, 2.0, 6.0)

    @property
    def page(self) -> FullSizePage:
        """The sheet with its page breaks."""
        return paged(self._sheet)

    def _lay_checks(self, job_cost: Callable[[], str]) -> None:
        sheet = self._sheet
        sheet.section("Checks", "one number by two routes; a check that fails says what to do")
        self._lay_heads(
            {
                ITEM: ("linehead", "Check"),
                ONE: ("lineheadright", "One route"),
                ANOTHER: ("lineheadright", "Second route"),
                UNIT: ("lineheadindent", "Unit"),
                FAILED: ("lineheadright", "Result"),
                TOLD: ("lineheadindent", "What is compared; when it fails, what to do"),
            }
        )
        self._first = sheet.page.row
        for each in all_checks():
            self._lay_check(each)
        self._lay_job_cost(job_cost)
        for proven in PROVEN:
            self._lay_proven(proven)
        self._last = sheet.page.row - 1

    def _lay_heads(self, heads: dict[int, tuple[str, str]]) -> None:
        """The heads of columns by their roles."""
        sheet = self._sheet
        sheet.number_row()
        for col in range(ITEM, sheet.grid.last + 1):
            role, text = heads.get(col, ("linehead", ""))
            sheet.page.put(FixedText(sheet.page.row, col, role, text))
        sheet.end_row()

    def _lay_check(self, each: Check) -> None:
        sheet, page, row = self._sheet, self._sheet.page, self._sheet.page.row
        sheet.number_row()
        page.put(FixedText(row, ITEM, "item", each.label))
        for col, line in ((ONE, each.one), (ANOTHER, each.another), (FAILED, each.failed)):
            self.places.put_cell(line, NAME, row, col)
            page.put(Computed(row, col, "step", line, 0, _RESULT if col == FAILED else format_of(line)))
        page.put(FixedText(row, UNIT, "stepunit", each.unit_text))
        self._lay_told(each.compared, f'"{each.remedy}"', lambda job: job.of(each.failed) == 1, each.remedy)
        sheet.end_row()

    def _lay_told(
        self, compared: str, remedy: str, fails: Callable[[JobValues], bool] = lambda _job: False, told: str = ""
    ) -> None:
        """What is compared; what to do, ``remedy`` as a formula and ``told`` as text, when it fails."""
        row = self._sheet.page.row
        is_failed = cell(NAME, row, FAILED, NAME)
        text = f'IF({is_failed}=1,{remedy},"{compared}")'
        put = Linked(row, TOLD, "quietindent", lambda: text, lambda job: told if fails(job) else compared)
        self._sheet.page.put(put)

    def _lay_two(self, one: Callable[[], str], another: Callable[[], str], value: Callable[[JobValues], float]) -> None:
        """Two routes over cells of other sheets, in $; they agree when the workbook is written."""
        page, row = self._sheet.page, self._sheet.page.row
        for col, text in ((ONE, one), (ANOTHER, another)):
            page.put(Linked(row, col, "step", text, value, format_of(CostTable.amount)))
        off = f"ABS({cell(NAME, row, ONE, NAME)}-{cell(NAME, row, ANOTHER, NAME)})"
        result = f"IF(ROUND({off},6)>0,1,0)"
        page.put(Linked(row, FAILED, "step", lambda: result, lambda _job: 0.0, _RESULT))

    def _lay_job_cost(self, job_cost: Callable[[], str]) -> None:
        sheet, total = self._sheet, CostTable.amount.all_rows
        assert total is not None
        sheet.number_row()
        sheet.page.put(FixedText(sheet.page.row, ITEM, "item", JOB_COST))
        sheet.page.put(FixedText(sheet.page.row, UNIT, "stepunit", "$"))
        self._lay_two(
            lambda: f"SUM({job_cost()})",
            lambda: self.places.one(total, 0, NAME),
            lambda job: float(job.of(total)),
        )
        self._lay_told("The estimates on the paper Job cost added up, all cost lines", f'"{_UNDO}"')
        sheet.end_row()

    def _lay_proven(self, each: Proven) -> None:
        """A check that nothing of the proof is off, with the name of the row that is farthest off."""
        sheet, page, row = self._sheet, self._sheet.page, self._sheet.page.row
        rows = each.rows(self.proof)
        sheet.number_row()
        page.put(FixedText(row, ITEM, "item", each.label))
        page.put(FixedText(row, UNIT, "stepunit", each.unit))
        off = cell(NAME, row, ONE, NAME)
        page.put(Linked(row, ONE, "step", lambda: f"SUM({rows.totals(NAME)})", lambda _job: 0.0, "0.00"))
        failed_text = f"IF(ISNUMBER({off}),IF(ROUND({off},6)>0,1,0),1)"
        page.put(Linked(row, FAILED, "step", lambda: failed_text, lambda _job: 0.0, _RESULT))
        name = f'IFERROR({rows.worst(NAME)},"a cell with an error")'
        self._lay_told(each.compared, f'"See "&{name}&"{each.remedy}"')
        sheet.end_row()

    def _lay_readiness(self) -> None:
        """What keeps the bid from being sent, counted, and in words whether anything does."""
        sheet, page = self._sheet, self._sheet.page
        counted: tuple[tuple[str, Callable[[], str], Callable[[JobValues], float]], ...] = (
            ("Checks that fail", self._failed_text, lambda job: float(failed(job))),
            ("Stops not acknowledged", self._stops_text, lambda job: float(len(open_stops(job)))),
            (
                "Costs without a price",
                self._unpriced_text,
                lambda job: float(job.of(BidPrice.unpriced)),
            ),
            (
                "Price that is no number",
                lambda: f"IF(ISNUMBER({self.places.one(BidPrice.price, 0, NAME)}),0,1)",
                lambda _job: 0.0,
            ),
        )
        sheet.section("May the bid be sent?", "only when nothing is counted here")
        top = page.row
        for label, text, value in counted:
            sheet.number_row()
            page.put(FixedText(page.row, ITEM, "item", label))
            page.put(Linked(page.row, ONE, "step", text, value, COUNT_FORMAT))
            sheet.end_row()
        added = f"SUM({span(NAME, (top, ONE), (page.row - 1, ONE), NAME)})"
        words = f'IF(ISNUMBER({added}),IF({added}=0,"{READY}","{NOT_READY}"),"{NOT_READY}")'
        put = Linked(top, UNIT, "itemstrong", lambda: words, lambda job: READY if is_ready(job) else NOT_READY)
        page.put(put)
        self._ready_row = top

    def _failed_text(self) -> str:
        """How many checks fail; one whose numbers are errors does."""
        column = self.failed_column(NAME)
        return f'SUMIF({column},">0")+COUNTA({column})-COUNT({column})'

    def _unpriced_text(self) -> str:
        """How many costs have no price; 1 where that is an error."""
        unpriced = self.places.one(BidPrice.unpriced, 0, NAME)
        return f"IF(ISNUMBER({unpriced}),{unpriced},1)"

    def _stops_text(self) -> str:
        return f'SUMIF({self.cautions.column("open", NAME)},">0")'

    def _lay_cautions(self, slots: int) -> None:
        """The active cautions in full, most severe first, in as many rows as the workbook has room for."""
        sheet, page = self._sheet, self._sheet.page
        sheet.section(
            "Active cautions", "most severe first; all of them stand on Cost workings", lambda: self.cautions.place
        )
        self._lay_heads(
            {
                ITEM: ("linehead", "Caution"),
                _NUMBER: ("lineheadright", "Number"),
                _OF: ("lineheadindent", "Unit"),
                _FOUND: ("linehead", "What was found, what to do"),
            }
        )
        number, top = sheet.grid.last + 2, page.row
        page.put(FixedText(top - 1, number, "rowkey", "Place"))
        for place in range(slots):
            lay_place(page, top, number, place)
            self._lay_caution(place, cell(NAME, page.row, number, NAME, "cr"))
        if slots:
            self._lay_more(slots, cell(NAME, page.row - 3, number, NAME, "cr"))

    def _lay_caution(self, place: int, number: str) -> None:
        sheet, page, top = self._sheet, self._sheet.page, self._sheet.page.row
        sheet.number_row()
        cells: tuple[tuple[int, int, str, str, ShownOf], ...] = (
            (0, ITEM, "itemstrong", "label", lambda _job, each: each.label),
            (0, _FOUND, "told", "found", lambda job, each: job.of(each.found)),
            (1, ITEM, "item", "severity", lambda _job, each: each.severity.value),
            (1, _NUMBER, "step", "number", lambda job, each: job.of(each.number)),
            (1, _OF, "stepunit", "unit", lambda _job, each: each.number.unit_text or NOTHING),
            (1, _FOUND, "told", "do", lambda _job, each: each.do),
            (2, ITEM, "quiet", "limit", lambda _job, each: limit_of(each)),
        )
        for down, col, role, what, value_of in cells:
            format_text = _NUMBERS if what == "number" else ""
            text, value = self.cautions.in_slot(what, place, number, NAME, value_of)
            page.put(Linked(top + down, col, role, text, value, format_text))
        for down in range(3):
            sheet.end_row(detail=down == 2)

    def _lay_more(self, slots: int, last: str) -> None:
        """How many are active beyond those that there is room for."""
        sheet, page = self._sheet, self._sheet.page
        count = self.cautions.count(NAME)
        more = f'IF({count}>{last},"and "&{count}-{last}&" more: see Cost workings","no more are active")'

        def value(job: JobValues) -> CellValue:
            left = sum(1 for _ in active_cautions(job)) - slots
            return f"and {left} more: see Cost workings" if left > 0 else "no more are active"

        page.put(Linked(page.row, ITEM, "quiet", lambda: more, value))
        sheet.end_row()

    @property
    def first(self) -> int:
        """The row of the first check, from 0."""
        return self._first

    def failed_column(self, seen_from: str) -> str:
        """The range of the failures, 0 or 1 for each check."""
        return span(NAME, (self._first, FAILED), (self._last, FAILED), seen_from)

    def ready_cell(self, seen_from: str) -> str:
        """The address of the words that say whether the bid may be sent."""
        return cell(NAME, self._ready_row, UNIT, seen_from, "cr")

    def failed_cell(self, seen_from: str) -> str:
        """The address of the number of failed checks."""
        return cell(NAME, self._ready_row, ONE, seen_from, "cr")

    def stops_cell(self, seen_from: str) -> str:
        """The address of the number of stops that nobody acknowledged."""
        return cell(NAME, self._ready_row + 1, ONE, seen_from, "cr")
