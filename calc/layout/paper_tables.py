"""Tables on a paper: one row for each row of a level, running measurements, and the list of cautions."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from calc.declared import Caution, Line, paper
from calc.declared.paper import DASH
from calc.formula.levels import Level
from calc.intake.records import JobInput
from calc.layout.addresses import span
from calc.layout.caution_table import active_cautions, all_cautions
from calc.layout.page import CellValue, FixedText, JobText, Linked, Page
from calc.layout.paper_cells import LABEL, VALUE, PaperContext, PaperPage, is_words, paper_format
from calc.model.results import JobValues

_ROW_NAME = "papername"


def lay_table(page: PaperPage, context: PaperContext, table: paper.Table, wordy: bool) -> None:
    """The head, a row for each row of the level, and the sums below."""
    places = _columns(table, wordy)
    _lay_head(page, table, places)
    for index in range(context.counts[table.level]):
        row = _Row(page, context, table, index)
        row.lay_name()
        _fill(page, places, "paperwords")
        for column, col in places.items():
            row.lay(column, col)
        page.next()
    if table.sums:
        _lay_sums(page, context, places, table.total)


def _columns(table: paper.Table, wordy: bool) -> dict[paper.Column, int]:
    """The column of each: the wide one beside the names, the others after it."""
    start = VALUE + 1 if wordy else VALUE
    narrow = [column for column in table.columns if not column.wide]
    places = {column: start + place for place, column in enumerate(narrow)}
    return places | {column: VALUE for column in table.columns if column.wide}


def _lay_head(page: PaperPage, table: paper.Table, places: dict[paper.Column, int]) -> None:
    page.words(LABEL, table.head or str(table.level).capitalize(), "paperhead")
    _fill(page, places, "paperhead")
    for column, col in places.items():
        page.words(col, column.head, "paperhead" if column.wide else "paperheadright")
        page.fit(column.head, col)
    page.next()


def _fill(page: PaperPage, places: dict[paper.Column, int], role: str) -> None:
    """The cells of a row that no column uses, so that a table is as wide as the page."""
    for col in range(VALUE, page.printed_cols):
        if col not in places.values():
            page.put(FixedText(page.row, col, role, ""))


@dataclass(frozen=True)
class _Row:
    """A row of a table. One that is not in use is empty, to write in."""

    page: PaperPage
    context: PaperContext
    table: paper.Table
    index: int

    def lay_name(self) -> None:
        """Its name, in the first column."""
        page, context, table, index = self.page, self.context, self.table, self.index
        if table.names is not None:
            text = context.text_of(table.names, index, page.name)
            self._put(LABEL, _ROW_NAME, text, context.value_of(table.names, index))
            return
        if table.used is None and not table.called:
            page.put(JobText(page.row, LABEL, _ROW_NAME, context.word(table.level, index)))
            return
        axis = table.level.axis
        name = f"{table.called}{index + 1}" if table.called else axis.words[axis.places(context.counts)[index]]
        page.fit(name, LABEL)
        if table.used is None:
            page.put(FixedText(page.row, LABEL, _ROW_NAME, name))
        else:
            self._put(LABEL, _ROW_NAME, lambda: f'"{name}"', lambda _job: name)

    def lay(self, column: paper.Column, col: int) -> None:
        """A cell of it."""
        page, context, index = self.page, self.context, self.index
        role = "paperwords" if column.wide else "papernumber"
        if column.named is None:
            page.put(FixedText(page.row, col, "paperblank", ""))
        else:
            named = column.named
            text = context.text_of(named, index, page.name, DASH)
            value, shown = context.value_of(named, index, DASH), paper_format(named, column.like)
            self._put(col, role, text, value, shown, wraps=is_words(named))

    def _put(
        self,
        col: int,
        role: str,
        text: Callable[[], str],
        value: Callable[[JobValues], CellValue],
        shown: str = "",
        wraps: bool = False,
    ) -> None:
        page, used, index = self.page, self.table.used, self.index
        if used is None:
            page.put(Linked(page.row, col, role, text, value, shown, wraps=wraps))
            return
        in_use = self.context.text_of(used, index, page.name)
        page.put(
            Linked(
                page.row,
                col,
                role,
                lambda: f'IF({in_use()}>0,{text()},"")',
                lambda job: value(job) if float(job.of(used, index)) > 0 else "",
                shown,
                wraps=wraps,
                optional=True,
            )
        )


def _lay_sums(page: PaperPage, context: PaperContext, places: dict[paper.Column, int], total: str) -> None:
    page.words(LABEL, total, "papertotal")
    _fill(page, places, "papertotal")
    for column, col in places.items():
        named = column.named
        if isinstance(named, Line) and named.all_rows is not None:
            whole = named.all_rows
            text, value = context.text_of(whole, 0, page.name), context.value_of(whole, 0)
            role = "papertotal" if column.wide else "papersum"
            page.put(Linked(page.row, col, role, text, value, paper_format(whole, column.like)))
        else:
            page.put(FixedText(page.row, col, "papersum", ""))
    page.next()


def lay_running_list(page: PaperPage, context: PaperContext, part: paper.RunningList) -> None:
    """The values of each row, side by side over the whole width, on as many lines as they take."""
    room = page.printed_cols - VALUE
    slots = context.counts[part.named.level] // max(1, context.counts[part.level])
    for row in range(context.counts[part.level]):
        for start in range(0, slots, room):
            end = min(start + room, slots)
            name = _names(context, part.level, row, f", from {start + 1}" if start else "")
            page.put(JobText(page.row, LABEL, "papernameline", name, wraps=False))
            for place in range(start, end):
                index = row * slots + place
                text, value = context.text_of(part.named, index, page.name), context.value_of(part.named, index)
                page.put(Linked(page.row, VALUE + place - start, "papernumber", text, value))
            page.next()


def _names(context: PaperContext, level: Level, row: int, ending: str) -> Callable[[JobInput], CellValue]:
    word = context.word(level, row)
    return lambda job: f"{word(job)}{ending}"


def lay_caution_list(page: PaperPage, context: PaperContext, part: paper.CautionList) -> None:
    """Each caution: what it is, what to do, and what is usual below that. Lines not in use are empty."""
    told = "What to do; usual practice stands on Checks" if part.one_line else "What to do, and usual practice below it"
    for col in range(page.printed_cols):
        page.put(FixedText(page.row, col, "paperheadline", {LABEL: "Caution", VALUE: told}.get(col, "")))
    head = page.row
    page.next()
    shown = sum(part.holds(each) for each in all_cautions())
    for place in range(min(context.caution_slots, shown if part.most is None else min(shown, part.most))):
        number = f"COUNTA({span(page.name, (head, LABEL), (page.row - 1, LABEL), page.name)})"
        listing = _Listing(page, context, part, place, number)
        listing.lay(LABEL, "papercaution", "label", lambda each: each.label)
        listing.lay(VALUE, "papersmall", "do", lambda each: each.do)
        if not part.one_line:
            page.next()
            listing.lay(VALUE, "papersmall", "usual", lambda each: each.usual)
        page.next()


@dataclass(frozen=True)
class _Listing:
    """A caution on a paper: the text of its number, and its place from 0."""

    page: Page
    context: PaperContext
    part: paper.CautionList
    place: int
    number: str

    def lay(
        self,
        col: int,
        role: str,
        column: str,
        text_of: Callable[[Caution], CellValue],
    ) -> None:
        """A cell with the text of a column of the table of cautions; nothing where it is not in use."""
        cautions, name, number = self.context.checks.cautions, self.page.name, self.number
        places = cautions.column(name, name)
        text = f"INDEX({cautions.column(column, name, headed=True)},MATCH({number},{places},0)+1)"

        def value(job: JobValues) -> CellValue:
            cautions = [each for each in active_cautions(job) if self.part.holds(each)]
            return text_of(cautions[self.place]) if self.place < len(cautions) else ""

        formula = f'IFERROR({text},"")'
        self.page.put(Linked(self.page.row, col, role, lambda: formula, value))
