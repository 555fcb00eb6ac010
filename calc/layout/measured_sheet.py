"""The sheet Measured: every input as read, in its box, and as typed, with its cell; and what can be overridden."""

from __future__ import annotations

from calc.declared import Input, Kind, Override
from calc.formula.levels import JOB, Level
from calc.intake.records import Entry, JobInput
from calc.intake.schema import NAMED_TABLES
from calc.layout.addresses import Block
from calc.layout.as_typed import AS_USUAL, format_cell, format_origin
from calc.layout.grid import ITEM, VALUE
from calc.layout.issued import aside
from calc.layout.measured_tables import TypedPlaces, lay_table, put_box
from calc.layout.page import CellValue, FixedText, JobText
from calc.layout.row_keys import RowText, known_rows_above, row_names
from calc.layout.sheet_layout import SheetLayout
from calc.layout.step_formats import unit_of
from calc.layout.text_width import text_width, wrapped
from calc.model.results import Shape
from calc.trade.catalog import SECTIONS
from calc.trade.inputs.job import Company, Job

NAME = "Measured"
ABOUT = "what was typed, and what was left as usual"
BOX, REASON = 4, 9
"""The columns of the box and of the reason of an override."""

_APART = 6
"""The rows of facts that a page is not parted in."""

_STOP = "Acknowledged: "
"""How the name of an acknowledged stop begins; on this sheet the stops stand below a head of their own."""

_UNIT, _TYPED = BOX + 1, BOX + 2
_ORIGIN = 11
"""The column of the cell of a text that has the whole width."""

_SIDES = ((ITEM, VALUE, VALUE + 1), (7, 10, 11))
"""Item, box and as typed of the facts that stand two abreast."""

_TEXT_SIDES = ((ITEM, VALUE, 5), (7, 9, 11))
"""The same of texts: item, box, and the cell, before which the box ends."""

_WIDE_WORDS, _LONG_WORDS = 62.0, 110.0
"""Pixels of the longest word of a choice that needs more than the box of a number, and more than half the width."""


def lay_measured(sheet: SheetLayout, shape: Shape) -> TypedPlaces:
    """What was typed for the areas and what belongs to them, for the job and the company, and what can be overridden.

    Gives the cell that says what was typed for each box.
    """
    counts, typed = dict(shape), TypedPlaces()
    for level in dict.fromkeys(section.level for section in SECTIONS if section.table and section.level != JOB):
        sections = [each for each in SECTIONS if each.table and each.level == level]
        if sections[0].table in NAMED_TABLES:
            continue
        if sections[0].is_left_out(counts):
            sheet.places.left_out |= {member for each in sections for member in each.members}
            continue
        lay_table(sheet, sections, level, counts, typed)
    givens = [
        each
        for section in SECTIONS
        if section.table and section.level == JOB
        for each in section.declarations
        if isinstance(each, Input)
    ]
    _lay_texts(sheet, [each for each in givens if _is_wide(each)], typed)
    _lay_facts(sheet, [each for each in givens if not _is_wide(each)], typed)
    _lay_overrides(sheet, counts, typed)
    return typed


def _is_wide(given: Input) -> bool:
    """Whether its box needs the room of words."""
    return given.kind in (Kind.TEXT, Kind.DATE) or _longest(given) > _WIDE_WORDS


def _longest(given: Input) -> float:
    return max(map(text_width, given.words_allowed), default=0.0)


_LONG = (Company.name, Company.address, Job.client, Job.address, Job.photos, Job.notes)
_LONG_LABELS = ("reason", "exclusions")
"""The texts that get the whole width, and how the labels of others that do end."""


def _is_long(given: Input) -> bool:
    return given in _LONG or given.label.casefold().endswith(_LONG_LABELS) or _longest(given) > _LONG_WORDS


def _lay_texts(sheet: SheetLayout, givens: list[Input], typed: TypedPlaces) -> None:
    """Words of the job and of the company: the long ones over the whole width, the others two abreast."""
    sheet.section("Job", "words and days of this job and of the company, each with the cell it was typed in")
    page = sheet.page
    for given in filter(_is_long, givens):
        sheet.number_row()
        page.put(FixedText(page.row, ITEM, "item", given.label))
        _lay_text(sheet, given, VALUE, _ORIGIN, typed)
        sheet.end_row()
    short = [each for each in givens if not _is_long(each)]
    half = (len(short) + 1) // 2
    for place in range(half):
        sheet.number_row()
        for given, (item, box, origin) in zip(short[place::half], _TEXT_SIDES, strict=False):
            page.put(FixedText(page.row, item, "item", given.label))
            _lay_text(sheet, given, box, origin, typed)
        sheet.end_row()


def _lay_text(sheet: SheetLayout, given: Input, box: int, origin: int, typed: TypedPlaces) -> None:
    page = sheet.page
    sheet.places.put_cell(given, sheet.name, page.row, box)
    put_box(sheet, given, 0, box, "boxtext")
    for col in range(box + 1, origin):
        page.put(FixedText(page.row, col, "boxline", ""))
    page.put(JobText(page.row, origin, "typedwords", _origin_of(given), wraps=False))
    typed.origins[given, 0] = page.row, origin
    _lay_notes(sheet, given, origin, typed)


def _origin_of(given: Input) -> RowText:
    def text(job: JobInput) -> CellValue:
        entry = job.entries[given]
        return format_origin(entry, job) if entry.typed else AS_USUAL

    return text


def _lay_notes(sheet: SheetLayout, given: Input, col: int, typed: TypedPlaces) -> None:
    """The notes that were typed beside a fact, to the right of the printed columns; the Log prints them."""
    if given.section.table in ("Company", "Site conditions"):
        at = col + aside(sheet.grid)
        sheet.page.put(JobText(sheet.page.row, at, "issued", lambda job: job.entries[given].notes, wraps=False))
        typed.notes[given] = sheet.page.row, at


def _lay_facts(sheet: SheetLayout, givens: list[Input], typed: TypedPlaces) -> None:
    """Every other fact, two abreast: what it is, its box, and the cell and what was typed there."""
    sheet.section(
        "Facts", "typed in the cell that stands beside it, or left as usual; a number is in the unit after its name"
    )
    page, top = sheet.page, sheet.page.row
    rooms = (sheet.grid.room(ITEM, ITEM), sheet.grid.room(_SIDES[1][0], _SIDES[1][1] - 1))
    texts = {each: f"{each.label}, {unit}" if (unit := unit_of(each)) else each.label for each in givens}
    heights = [len(wrapped(texts[each], rooms[0])) for each in givens]
    half = next(at for at in range(len(givens) + 1) if sum(heights[:at]) * 2 >= sum(heights))
    ends = []
    for side, of_side in enumerate((givens[:half], givens[half:])):
        page.row = top
        item, box, told = _SIDES[side]
        for given in of_side:
            for place, part in enumerate(wrapped(texts[given], rooms[side])):
                page.put(FixedText(page.row + place, item, "item", part))
            sheet.places.put_cell(given, sheet.name, page.row, box)
            put_box(sheet, given, 0, box)
            _lay_typed(sheet, given, told, typed)
            page.row += len(wrapped(texts[given], rooms[side]))
        ends.append(page.row)
    page.row = top
    while page.row < max(ends):
        if (page.row - top) % _APART == 0 and page.row > top:
            sheet.starts.append(page.row)
        sheet.number_row()
        sheet.end_row()


def _lay_typed(sheet: SheetLayout, given: Input, col: int, typed: TypedPlaces) -> None:
    def text(job: JobInput) -> CellValue:
        return format_cell(job.entries[given], job) or AS_USUAL

    sheet.page.put(JobText(sheet.page.row, col, "typedwords", text, wraps=False))
    typed.cells[given, 0] = sheet.page.row, col
    _lay_notes(sheet, given, col, typed)


def _lay_overrides(sheet: SheetLayout, counts: dict[Level, int], typed: TypedPlaces) -> None:
    """A box for every line that can be overridden, and for every stop that can be acknowledged."""
    sheet.section(
        "Overridden lines and acknowledged stops",
        "type a number (1 acknowledges a stop), or none to let it be computed, and the reason with initials",
    )
    page = sheet.page
    heads = {ITEM: "Line", BOX: "Used instead", _TYPED: "As typed", REASON: "Reason (who)"}
    for col in range(ITEM, sheet.grid.last + 1):
        page.put(FixedText(page.row, col, "typedhead" if col == BOX else "typedheadleft", heads.get(col, "")))
    sheet.end_row()
    stops = False
    overrides = [member for section in SECTIONS for member in section.members if isinstance(member, Override)]
    for level in dict.fromkeys(each.level for each in overrides):
        for override in (each for each in overrides if each.level == level):
            if override.label.startswith(_STOP) and not stops:
                sheet.starts.append(page.row)
                sheet.group("Stops", "1 acknowledges the stop")
                stops = True
            _lay_override(sheet, override, counts, typed)


def _lay_override(sheet: SheetLayout, override: Override, counts: dict[Level, int], typed: TypedPlaces) -> None:
    page, label = sheet.page, override.label.removesuffix(": override").removeprefix(_STOP)
    of_job = override.level == JOB
    names: list[RowText] = [lambda _job: ""] if of_job else row_names(override.level, counts)
    if of_job:
        sheet.places.put_cell(override, sheet.name, page.row, BOX)
    else:
        listed = sheet.places.locations[_first_input(override.level)].block.keys
        above = known_rows_above(override.level, counts)
        block = Block(sheet.name, override.level, page.row, len(names), False, above=above, keyed_by=listed)
        sheet.places.put_range(override, block, BOX)
    for index, name in enumerate(names):
        sheet.number_row()
        page.put(JobText(page.row, ITEM, "item", _labeled(name, label), wraps=False))
        put_box(sheet, override, index, BOX, "boxforced")
        page.put(FixedText(page.row, _UNIT, "stepunit", override.unit_text))
        page.put(JobText(page.row, _TYPED, "typedwords", _typed_of(override, index), wraps=False))
        page.put(JobText(page.row, REASON, "typedwords", _reason_of(override, index), wraps=False))
        typed.cells[override, index] = page.row, _TYPED
        sheet.end_row()


def _first_input(level: Level) -> Input:
    return next(
        each
        for section in SECTIONS
        if section.level == level
        for each in section.declarations
        if isinstance(each, Input)
    )


def _labeled(name: RowText, label: str) -> RowText:
    return lambda job: f"{named}: {label}" if (named := name(job)) else label


def _typed_of(override: Override, index: int) -> RowText:
    return lambda job: format_cell(job.overrides.get((override, index)), job)


def _reason_of(override: Override, index: int) -> RowText:
    def text(job: JobInput) -> CellValue:
        entry = job.overrides.get((override, index))
        return told_reason(entry) if entry else ""

    return text


def told_reason(entry: Entry) -> str:
    """Why a line was overridden, and by whom."""
    return f"{entry.reason} ({entry.who})"
