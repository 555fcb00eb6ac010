"""Tables on a paper: a row for each row of a level, and the lists that run along a tape."""

from __future__ import annotations

from collections.abc import Callable

from calc.declared import Caution, Line, paper
from calc.declared.paper import DASH
from calc.formula.levels import Level
from calc.intake.records import JobInput
from calc.layout.addresses import span
from calc.layout.checks_sheet import fired
from calc.layout.page import AddressText, FixedText, JobText, Linked, Page, Shown
from calc.layout.paper_cells import LABEL, VALUE, PaperContext, face_of, is_words
from calc.model.results import JobValues

_NAMES_BESIDE = "rowname"

_HAIR = 3.0
"""Points of the row that keeps the sums apart from what they are of."""


def lay_table(page: Page, desk: PaperContext, table: paper.Table, wordy: bool) -> None:
    """The head, a row for each row of the level, and the sums below."""
    places = _columns(table, wordy)
    _lay_head(page, table, places)
    for index in range(desk.counts[table.level]):
        if table.called:
            page.words(LABEL, f"{table.called}{index + 1}", _NAMES_BESIDE)
        else:
            page.put(JobText(page.row, LABEL, _NAMES_BESIDE, desk.word(table.level, index)))
        _fill(page, places, "rowwords")
        for column, col in places.items():
            _lay_cell(page, desk, column, index, col)
        page.next()
    if table.sums:
        _lay_sums(page, desk, places)


def _columns(table: paper.Table, wordy: bool) -> dict[paper.Column, int]:
    """Where each column stands: the wide one beside the names, the others from there on."""
    start = VALUE + 1 if wordy else VALUE
    narrow = [column for column in table.columns if not column.wide]
    places = {column: start + place for place, column in enumerate(narrow)}
    return places | {column: VALUE for column in table.columns if column.wide}


def _lay_head(page: Page, table: paper.Table, places: dict[paper.Column, int]) -> None:
    page.words(LABEL, table.head or str(table.level).capitalize(), "head")
    _fill(page, places, "head")
    for column, col in places.items():
        page.words(col, column.head, "head" if column.wide else "rowhead")
        page.room(column.head, col)
    page.next()


def _fill(page: Page, places: dict[paper.Column, int], role: str) -> None:
    """The cells of a row that no column stands in, so that a table is as wide as the page."""
    for col in range(VALUE, len(page.widths)):
        if col not in places.values():
            page.put(FixedText(page.row, col, role, ""))


def _lay_cell(page: Page, desk: PaperContext, column: paper.Column, index: int, col: int) -> None:
    role = "rowwords" if column.wide else "rowfigure"
    if column.points_to is not None:
        page.put(AddressText(page.row, col, role, column.points_to, index))
    elif column.words:
        page.put(FixedText(page.row, col, role, column.words[index]))
    elif column.named is None:
        page.put(FixedText(page.row, col, "byhand", ""))
    else:
        named, otherwise = column.named, column.otherwise
        text = desk.text_of(named, index, page.name, otherwise)
        value = desk.value_of(named, index, otherwise)
        page.put(Linked(page.row, col, role, text, value, face_of(named, column.like), wraps=is_words(named)))


def _lay_sums(page: Page, desk: PaperContext, places: dict[paper.Column, int]) -> None:
    page.heights[page.row] = _HAIR
    page.next()
    page.words(LABEL, "In all", "rowtotal")
    _fill(page, places, "rowtotal")
    for column, col in places.items():
        named = column.named
        if isinstance(named, Line) and named.all_rows is not None:
            whole = named.all_rows
            text, value = desk.text_of(whole, 0, page.name), desk.value_of(whole, 0)
            page.put(Linked(page.row, col, "rowsum", text, value, face_of(whole, column.like)))
        else:
            page.put(FixedText(page.row, col, "rowsum", ""))
    page.next()


def lay_running(page: Page, desk: PaperContext, part: paper.RunningList) -> None:
    """The slots of each row, side by side over the whole width, and as many lines as they take."""
    room = len(page.widths) - VALUE
    slots = desk.counts[part.named.level] // max(1, desk.counts[part.level])
    for row in range(desk.counts[part.level]):
        for start in range(0, slots, room):
            end = min(start + room, slots)
            name = _names(desk, part.level, row, f", {part.called} {start + 1} to {end}")
            page.put(JobText(page.row, LABEL, _NAMES_BESIDE, name))
            for place in range(start, end):
                index = row * slots + place
                text, value = desk.text_of(part.named, index, page.name), desk.value_of(part.named, index)
                page.put(Linked(page.row, VALUE + place - start, "rowfigure", text, value))
            page.next()


def _names(desk: PaperContext, level: Level, row: int, ending: str) -> Callable[[JobInput], Shown]:
    word = desk.word(level, row)
    return lambda job: f"{word(job)}{ending}"


def lay_watched(page: Page, desk: PaperContext) -> None:
    """Each caution in a line: what it is, and what to do. Slots not in use show a dash."""
    for col in range(len(page.widths)):
        text = {LABEL: "Caution", VALUE: "What to do; Checks says what was found"}.get(col, "")
        page.put(FixedText(page.row, col, "headline", text))
    head = page.row
    page.next()
    for place in range(desk.caution_slots):
        _say(page, desk, head, (LABEL, "strong", "label"), place, lambda each: each.label)
        _say(page, desk, head, (VALUE, "small", "do"), place, lambda each: each.do)
        page.next()


def _say(
    page: Page, desk: PaperContext, head: int, where: tuple[int, str, str], place: int, say: Callable[[Caution], Shown]
) -> None:
    """One cell of a slot. Its number is how many cells stand above it, the head among them."""
    col, role, column = where
    number = f"COUNTA({span(page.name, (head, LABEL), (page.row - 1, LABEL), page.name)})"
    so_far = desk.checks.caution_column("so far", page.name, headed=False)
    fires = desk.checks.caution_column("fires", page.name, headed=False)
    words = desk.checks.caution_column(column, page.name, headed=True)

    def value(job: JobValues) -> Shown:
        cautions = list(fired(job))
        return say(cautions[place]) if place < len(cautions) else DASH

    page.put(
        Linked(
            page.row,
            col,
            role,
            lambda: f'IF({number}>SUM({fires}),"{DASH}",INDEX({words},MATCH({number},{so_far},0)+1))',
            value,
        )
    )
