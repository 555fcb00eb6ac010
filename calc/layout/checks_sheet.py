"""The sheet Checks: checks by two routes, and cautions."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cache

from calc.declared import Caution, Check, Severity
from calc.declared.paper import CautionList
from calc.formula.functions import NOTHING
from calc.layout.addresses import CellMap, cell, span
from calc.layout.line_sheets import format_of, open_page
from calc.layout.page import Computed, Linked
from calc.layout.proof import Proof, ProofRows
from calc.model.results import JobValues
from calc.trade.catalog import SECTIONS
from calc.trade.money.price import BidPrice
from calc.trade.papers.catalog import PAPERS

NAME = "Checks"
_HEADS = ("Check", "One route", "Second route", "Unit", "Tolerance", "Failed", "What to do")
_WIDTHS = (30.0, 11.0, 11.0, 9.0, 10.0, 8.0, 28.0, 22.0, 28.0, 20.0, 8.0, 34.0, 9.0, 9.0)
_ONE, _ANOTHER, _UNIT, _TOLERANCE, _FAILED, _REMEDY = range(1, 7)
_SEVERITY, _ACTIVE, _SO_FAR, _OPEN, _NUMBER, _FOUND, _USUAL, _DO, _SOURCE, _OF, _TEXT = range(1, 12)
_COLUMNS = {
    "label": 0,
    "severity": _SEVERITY,
    "active so far": _SO_FAR,
    "open": _OPEN,
    "active": _ACTIVE,
    "found": _FOUND,
    "usual": _USUAL,
    "do": _DO,
    "number": _NUMBER,
    "unit": _OF,
    "text": _TEXT,
}


@cache
def all_checks() -> tuple[Check, ...]:
    """Every check, in order."""
    return tuple(each for section in SECTIONS for each in section.declarations if isinstance(each, Check))


@cache
def paper_cautions() -> dict[str, CautionList]:
    """The list of cautions of each paper that has one, by the title of the paper."""
    return {paper.title: part for paper in PAPERS for part in paper.parts if isinstance(part, CautionList)}


@cache
def all_cautions() -> tuple[Caution, ...]:
    """Every caution, most severe first."""
    every = [each for section in SECTIONS for each in section.declarations if isinstance(each, Caution)]
    order = list(Severity)
    return tuple(sorted(every, key=lambda each: order.index(each.severity)))


def failed(job: JobValues) -> int:
    """How many checks a job fails."""
    return sum(int(job.of(each.failed)) for each in all_checks())


def active_cautions(job: JobValues) -> Iterator[Caution]:
    """The active cautions of a job, most severe first."""
    return (each for each in all_cautions() if job.of(each.fires) == 1)


def open_stops(job: JobValues) -> list[Caution]:
    """The active stops of a job that nobody acknowledged."""
    return [each for each in all_cautions() if each.open is not None and job.of(each.open) == 1]


READY, NOT_READY = "READY TO SEND", "NOT READY"
"""Whether a bid may be sent, in words."""


def is_ready(job: JobValues) -> bool:
    """Whether a bid may be sent: every cost has a price, every check passes, and no stop is open."""
    return not failed(job) and not open_stops(job) and float(job.of(BidPrice.unpriced)) == 0


PROVEN: tuple[tuple[str, str, str, Callable[[Proof], ProofRows]], ...] = (
    (
        "Every box holds a number, a date or a word that it may hold",
        "boxes off",
        ": type what it asks for",
        lambda proof: proof.boxes,
    ),
    ("Every cell of the story is what its formula gives", "off by", ": undo it", lambda proof: proof.story),
)
"""The checks of the workbook itself: label, unit, what to do behind the place that is off, the rows of the proof."""


class ChecksPage:
    """The sheet, and the addresses on it that the sheet Bid and the papers use."""

    def __init__(self, places: CellMap, proof: Proof) -> None:
        self.proof = proof
        self.page = open_page(NAME, "Checks and cautions", _WIDTHS, _HEADS)
        self.page.repeated_rows = 2  # the heads of the checks do not apply to the cautions below them
        self.places = places
        self._lay_checks()
        self._lay_cautions()

    def _lay_checks(self) -> None:
        page = self.page
        self.first_check = page.row
        for each in all_checks():
            page.words(0, each.label, "label")
            for col, line in ((_ONE, each.one), (_ANOTHER, each.another), (_FAILED, each.failed)):
                self.places.put_cell(line, NAME, page.row, col)
                page.put(Computed(page.row, col, "formula", line, 0, format_of(line)))
            page.words(_UNIT, each.unit_text, "unit")
            self._link_tolerance(each)
            if each.remedy:
                self._lay_remedy(each)
            page.next()
        for label, unit, remedy, rows in PROVEN:
            self._lay_proven(label, unit, remedy, rows(self.proof))
        self.last_check = page.row - 1
        page.next()
        self._lay_readiness()
        page.next()

    def _lay_proven(self, label: str, unit: str, remedy: str, rows: ProofRows) -> None:
        """A check that nothing of the proof is off, with the name of the row that is farthest off."""
        page, row = self.page, self.page.row
        page.words(0, label, "label")
        page.words(_UNIT, unit, "unit")
        off = cell(NAME, row, _ONE, NAME)
        page.put(Linked(row, _ONE, "formula", lambda: f"SUM({rows.totals(NAME)})", lambda _job: 0.0, "0.00"))
        failed_text = f"IF(ISNUMBER({off}),IF(ROUND({off},6)>0,1,0),1)"
        page.put(Linked(row, _FAILED, "formula", lambda: failed_text, lambda _job: 0.0, "0"))
        is_failed = cell(NAME, row, _FAILED, NAME)
        name = f'IFERROR({rows.worst(NAME)},"a cell with an error")'
        text = f'IF({is_failed}=1,"See "&{name}&"{remedy}","{NOTHING}")'
        page.put(Linked(row, _REMEDY, "sentence", lambda: text, lambda _job: NOTHING))
        page.heights[row] = 24.0
        page.next()

    def _lay_readiness(self) -> None:
        """What keeps the bid from being sent, counted, and in words whether anything does."""
        page = self.page
        counted: tuple[tuple[str, Callable[[], str], Callable[[JobValues], float]], ...] = (
            ("Checks failed, total", self._failed_text, lambda job: float(failed(job))),
            (
                "Stops not acknowledged",
                lambda: f'SUMIF({self.caution_column("open", NAME, headed=False)},">0")',
                lambda job: float(len(open_stops(job))),
            ),
            (
                "Costs without a price",
                self._unpriced_text,
                lambda job: float(job.of(BidPrice.unpriced)),
            ),
            (
                "Price that is no number",
                lambda: f"IF(ISNUMBER({self.places.one(BidPrice.price, 0, NAME, 'cr')}),0,1)",
                lambda _job: 0.0,
            ),
        )
        self.total = page.row
        for label, text, value in counted:
            page.words(0, label, "check" if page.row == self.total else "label")
            page.put(Linked(page.row, _FAILED, "sum" if page.row == self.total else "formula", text, value, "0"))
            page.next()
        added = f"SUM({span(NAME, (self.total, _FAILED), (page.row - 1, _FAILED), NAME)})"
        page.words(0, "May the bid be sent?", "check")
        words = f'IF(ISNUMBER({added}),IF({added}=0,"{READY}","{NOT_READY}"),"{NOT_READY}")'
        page.put(Linked(page.row, _ONE, "strong", lambda: words, lambda job: READY if is_ready(job) else NOT_READY))
        self.readiness = page.row
        page.next()

    def _unpriced_text(self) -> str:
        """How many costs have no price; 1 where that is an error."""
        unpriced = self.places.one(BidPrice.unpriced, 0, NAME, "cr")
        return f"IF(ISNUMBER({unpriced}),{unpriced},1)"

    def _failed_text(self) -> str:
        """How many checks fail; one whose numbers are errors does."""
        column = self.failed_column(NAME)
        return f'SUMIF({column},">0")+COUNTA({column})-COUNT({column})'

    def _link_tolerance(self, each: Check) -> None:
        tolerance = each.tolerance
        self.page.put(
            Linked(
                self.page.row,
                _TOLERANCE,
                "formula",
                lambda: self.places.one(tolerance, 0, NAME, "cr"),
                lambda job: job.of(tolerance),
                "0.000000",
            )
        )

    def _lay_remedy(self, each: Check) -> None:
        """What to do about a check that fails; a dash while it passes."""
        page = self.page
        is_failed = cell(NAME, page.row, _FAILED, NAME)
        page.put(
            Linked(
                page.row,
                _REMEDY,
                "sentence",
                lambda: f'IF({is_failed}=1,"{each.remedy}","{NOTHING}")',
                lambda job: each.remedy if job.of(each.failed) == 1 else NOTHING,
            )
        )
        page.fit(each.remedy, _REMEDY)

    def _lay_cautions(self) -> None:
        page = self.page
        page.words(0, "Cautions, most severe first", "section")
        page.next()
        page.words(0, "Active is 1 when it applies to the job. Practice and law differ: local code governs.", "heading")
        page.next()
        heads = {
            0: "Caution",
            _SEVERITY: "Severity",
            _ACTIVE: "Active",
            _SO_FAR: "Active so far",
            _OPEN: "Not acknowledged",
            _NUMBER: "Number",
            _OF: "Unit",
            _FOUND: "What was found",
            _USUAL: "Usual practice",
            _DO: "What to do",
            _SOURCE: "Source",
            _TEXT: "Text on the Bid",
        }
        heads |= {col: f"Place on {name}" for col, name in enumerate(paper_cautions(), _TEXT + 1)}
        for col in range(_TEXT + 1 + len(paper_cautions())):
            page.words(col, heads.get(col, ""), "head")
        page.next()
        self.first = page.row
        for place, each in enumerate(all_cautions()):
            self._lay_caution(place, each)
            page.next()
        self.last = page.row - 1

    def _lay_caution(self, place: int, each: Caution) -> None:
        page = self.page
        for col, text in (
            (0, each.label),
            (_SEVERITY, each.severity.value),
            (_USUAL, each.usual),
            (_DO, each.do),
            (_SOURCE, each.source),
            (_OF, each.number.unit_text or "-"),
        ):
            page.words(col, text, "label" if col == 0 else "words")
        self.places.put_cell(each.fires, NAME, page.row, _ACTIVE)
        page.put(Computed(page.row, _ACTIVE, "formula", each.fires, 0, "0"))
        row = page.row
        active = cell(NAME, row, _ACTIVE, NAME)
        above = f"{cell(NAME, self.first, _ACTIVE, NAME, 'cr')}:{active}"
        page.put(
            Linked(
                row,
                _SO_FAR,
                "formula",
                lambda: f"IF({active}=1,SUM({above}),0)",
                lambda job: _so_far(job, place),
                "0",
            )
        )
        for col, listed in enumerate(paper_cautions().values(), _TEXT + 1):
            self._lay_place(each, listed, col, active)
        if each.open is not None:
            self.places.put_cell(each.open, NAME, row, _OPEN)
            page.put(Computed(row, _OPEN, "formula", each.open, 0, "0"))
        self.places.put_cell(each.number, NAME, row, _NUMBER)
        page.put(Computed(row, _NUMBER, "formula", each.number, 0, format_of(each.number)))
        self.places.put_cell(each.found, NAME, page.row, _FOUND)
        page.put(Computed(page.row, _FOUND, "sentence", each.found, 0, ""))
        page.fit(each.found.formula.words, _FOUND)
        parts = '&": "&'.join((cell(NAME, row, _SEVERITY, NAME), cell(NAME, row, _FOUND, NAME)))
        advice = cell(NAME, row, _DO, NAME)
        page.put(Linked(row, _TEXT, "note", lambda: f'{parts}&" "&{advice}', lambda job: caution_text(job, each)))
        page.fit(f"{each.found.formula.words} {each.do} {each.severity.value}", _TEXT)

    def _lay_place(self, each: Caution, listed: CautionList, col: int, active: str) -> None:
        """The place of a caution among the active ones of a paper: 0 if it is not active, a dash if never on it."""
        page, row = self.page, self.page.row
        if not listed.holds(each):
            page.words(col, "-", "words")
            return
        above = span(NAME, (self.first - 1, col), (row - 1, col), NAME)
        page.put(
            Linked(
                row,
                col,
                "formula",
                lambda: f"IF({active}=1,MAX({above})+1,0)",
                lambda job: _place_on(job, listed, each),
                "0",
            )
        )

    def place_column(self, paper_title: str, seen_from: str) -> str:
        """The range of the places of the cautions on a paper."""
        col = _TEXT + 1 + list(paper_cautions()).index(paper_title)
        return span(NAME, (self.first, col), (self.last, col), seen_from)

    def caution_column(self, what: str, seen_from: str, headed: bool) -> str:
        """The range of one column of the cautions."""
        col = _COLUMNS[what]
        return span(NAME, (self.first - headed, col), (self.last, col), seen_from)

    def failed_column(self, seen_from: str) -> str:
        """The range of the failures, 0 or 1 for each check."""
        return span(NAME, (self.first_check, _FAILED), (self.last_check, _FAILED), seen_from)

    def ready_cell(self, seen_from: str) -> str:
        """The address of the words that say whether the bid may be sent."""
        return cell(NAME, self.readiness, _ONE, seen_from, "cr")

    def stops_cell(self, seen_from: str) -> str:
        """The address of the number of stops that nobody acknowledged."""
        return cell(NAME, self.total + 1, _FAILED, seen_from, "cr")

    def failed_cell(self, seen_from: str) -> str:
        """The address of the number of failed checks."""
        return cell(NAME, self.total, _FAILED, seen_from, "cr")


def caution_text(job: JobValues, each: Caution) -> str:
    """The text of a caution: severity, what was found, what to do."""
    return f"{each.severity.value}: {job.of(each.found)} {each.do}"


def _so_far(job: JobValues, place: int) -> float:
    cautions = all_cautions()
    if job.of(cautions[place].fires) != 1:
        return 0.0
    return float(sum(job.of(each.fires) == 1 for each in cautions[: place + 1]))


def _place_on(job: JobValues, listed: CautionList, each: Caution) -> float:
    active = [other for other in active_cautions(job) if listed.holds(other)]
    return float(active.index(each) + 1) if each in active else 0.0
