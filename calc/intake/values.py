"""One cell as one value: what may stand in it, and what to type instead of what may not."""

from __future__ import annotations

import re
from datetime import date, datetime, timedelta

from calc.cells import Cell, Kind
from calc.declared import Input
from calc.declared import Kind as GivenKind
from calc.errors import InputRefused
from calc.intake.records import Entry
from calc.intake.spelling import did_you_mean, normalize
from calc.units.parse import read_quantity, read_slope, tidy

MAX_WORDS = 2000
"""Letters of one cell of words."""

MAX_ID = 60
"""Letters of an id."""

_UNSEEN = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\ufffe\uffff]")
"""Characters that no paper shows and no workbook holds as they are: a tab and the end of a line are none of them."""

_EPOCH = date(1899, 12, 30)
"""Day 0 of the count of days that spreadsheet programs keep."""


def serial(day: date) -> float:
    """A day as spreadsheet programs count it."""
    return float((day - _EPOCH).days)


def day_of(serial_number: float) -> date:
    """The day of a number of days as spreadsheet programs count them."""
    return _EPOCH + timedelta(days=int(serial_number))


def read_given(given: Input, cell: Cell, unit: str, origin: str) -> tuple[Entry, list[str], list[str]]:
    """The entry that ``cell`` holds for ``given``, with the questions and the notes that go with it.

    ``unit`` is the unit that a bare number is in. Raises InputRefused with what was found and what to type.
    """
    _refuse_what_is_no_value(cell, given)
    if given.kind in (GivenKind.TEXT, GivenKind.ROW):
        return Entry(read_words(cell), "", _typed(cell), origin), [], []
    if given.kind is GivenKind.CHOICE:
        return _choice(given, cell, origin), [], []
    if given.kind is GivenKind.DATE:
        return _date(given, cell, origin), [], []
    return _number(given, cell, unit, origin)


def _refuse_what_is_no_value(cell: Cell, given: Input) -> None:
    """A cell that holds no value of any kind, or one that the spreadsheet program turned into something else."""
    example = f"Type {_wanted(given)}."
    if cell.merged:
        raise InputRefused(f"{_name(given)} lies in the merged cells {cell.merged}.", "Unmerge them and type it again.")
    if cell.kind is Kind.ERROR:
        raise InputRefused(f"{_name(given)} is the error {cell.value}.", example)
    if cell.kind is Kind.UNCOMPUTED:
        raise InputRefused(
            f"{_name(given)} is the formula {cell.value}, whose value was never stored.",
            "Open the book in a spreadsheet program and save it, or type the value.",
        )
    if cell.kind is Kind.BOOLEAN:
        raise InputRefused(f"{_name(given)} is the logical value {str(cell.value).upper()}.", example)
    if cell.kind is Kind.DURATION:
        raise InputRefused(f"{_name(given)} became the time {cell.value}.", f"{example} Format the cell as text first.")
    if cell.kind is Kind.DATE and given.kind is not GivenKind.DATE:
        raise InputRefused(
            f"{_name(given)} became the date {_day(cell)}: was something like 1/2 or 4-1/2 typed?",
            f"Format the cell as text, then type {_wanted(given)}.",
        )


def _name(given: Input) -> str:
    return given.label


def _wanted(given: Input) -> str:
    """What may be typed for ``given``, in a few words."""
    if given.kind is GivenKind.CHOICE:
        return " or ".join(given.words_allowed)
    if given.kind is GivenKind.DATE:
        return f"a date, for example {given.example or '2026-04-13'}"
    if given.kind in (GivenKind.TEXT, GivenKind.ROW):
        return "words"
    unit = f" of {given.unit_text}" if given.unit_text else ""
    return f"a number{unit}, for example {given.example or '1'}"


def _day(cell: Cell) -> str:
    return cell.value.date().isoformat() if isinstance(cell.value, datetime) else str(cell.value)


def _typed(cell: Cell) -> str:
    """The cell as it was typed, for the sheet that shows it."""
    if cell.kind is Kind.DATE:
        return _day(cell)
    if isinstance(cell.value, float) and cell.value.is_integer():
        return str(int(cell.value))
    return str(cell.value)


def read_words(cell: Cell) -> str:
    """The words of a cell; numbers are read as their digits, dates as year-month-day."""
    words = _typed(cell)
    if len(words) > MAX_WORDS:
        raise InputRefused(f"The cell holds {len(words):,} letters.", f"Type at most {MAX_WORDS:,}.")
    unseen = _UNSEEN.search(words)
    if unseen:
        raise InputRefused(
            f"The cell holds a character that nobody sees (code {ord(unseen[0])}, behind {unseen.start()} others).",
            "Clear the cell and type the words, instead of pasting them.",
        )
    return words


def read_id(cell: Cell, what: str) -> str:
    """An id: words as typed, or a whole number as its digits. Raises InputRefused for anything else."""
    if cell.kind is Kind.DATE:
        raise InputRefused(
            f"The {what} became the date {_day(cell)}.", "Format the cell as text, then type the id again."
        )
    if cell.kind is Kind.TEXT:
        words = str(cell.value).strip()
    elif cell.kind is Kind.NUMBER and isinstance(cell.value, (int, float)) and float(cell.value).is_integer():
        words = str(int(cell.value))
    else:
        raise InputRefused(f"The {what} is {_typed(cell)}.", "Format the cell as text, then type the id again.")
    if len(words) > MAX_ID:
        raise InputRefused(f"The {what} has {len(words):,} letters.", f"Type at most {MAX_ID}.")
    if re.search(r"[\x00-\x1f]", words):
        raise InputRefused(f"The {what} holds a line break or another control character.", "Type it on one line.")
    return words


def read_date(cell: Cell) -> float:
    """A day from a date cell, or from words such as 2026-04-13. Raises InputRefused for others."""
    found = cell.value.date() if isinstance(cell.value, datetime) else None
    if found is None and cell.kind is Kind.TEXT:
        try:
            found = date.fromisoformat(str(cell.value).strip())
        except ValueError:
            found = None
    if found is None:
        raise InputRefused(f'"{_typed(cell)}" is not a date.', "Type it as year-month-day, for example 2026-04-13.")
    if not 2000 <= found.year <= 2100:
        raise InputRefused(f"The date {found.isoformat()} is out of range.", "Type a day from 2000 to 2100.")
    return serial(found)


def read_choice(words: tuple[str, ...], cell: Cell) -> str:
    """The word of a list that a cell names, without regard to case. Raises InputRefused with the nearest."""
    typed = normalize(_typed(cell))
    known = {normalize(word): word for word in words}
    if words == ("yes", "no"):
        known |= {"y": "yes", "n": "no"}
    if typed not in known:
        raise InputRefused(f'"{_typed(cell)}" is not one of its words.', did_you_mean(_typed(cell), words))
    return known[typed]


def _date(given: Input, cell: Cell, origin: str) -> Entry:
    try:
        return Entry(read_date(cell), "", _typed(cell), origin)
    except InputRefused as refused:
        raise InputRefused(f"{given.label}: {refused.found}", refused.remedy) from None


def _choice(given: Input, cell: Cell, origin: str) -> Entry:
    try:
        return Entry(read_choice(given.words_allowed, cell), "", _typed(cell), origin)
    except InputRefused as refused:
        raise InputRefused(f"{given.label}: {refused.found}", refused.remedy) from None


def _number(given: Input, cell: Cell, unit: str, origin: str) -> tuple[Entry, list[str], list[str]]:
    asks, notes = [], []
    try:
        entry, ask, note = read_number(cell, given.unit_text, unit, given.signed, given.kind is GivenKind.SLOPE, origin)
    except InputRefused as refused:
        raise InputRefused(f"{given.label}: {refused.found}", refused.remedy) from None
    asks += [f"{given.label}: {ask}"] if ask else []
    notes += [f"{given.label}: {note}"] if note else []
    _hold_limits(given, entry, _typed(cell))
    asks += _outside_usual(given, entry)
    return entry, asks, notes


def read_number(cell: Cell, meant: str, unit: str, signed: bool, slope: bool, origin: str) -> tuple[Entry, str, str]:
    """A number in the unit ``meant`` from a cell whose bare numbers are in ``unit``; with a question and a note."""
    if cell.kind is Kind.NUMBER and isinstance(cell.value, (int, float)):
        typed = _typed(cell)
        if normalize(unit) == normalize(meant) and not slope:
            value = float(cell.value)
            if value < 0 and not signed:
                raise InputRefused(f"{typed} is negative.", "Type a number that is not below 0.")
            return Entry(value, "", typed, origin), "", ""
        written = typed if "e" not in typed else f"{float(cell.value):.12f}"
    else:
        typed = written = str(cell.value)
    if slope:
        reading = read_slope(written, meant)
    else:
        united = _with_unit(written, unit, meant)
        typed = united if united != written else typed
        reading = read_quantity(united, meant, signed=signed)
    entry = Entry(reading.value, reading.formula, typed, origin, feet_and_inches=reading.feet_and_inches)
    return entry, reading.ask, reading.note


def _with_unit(written: str, unit: str, meant: str) -> str:
    """A bare number, such as 3 or 1 1/2, in a column whose header states another unit than the one that is meant."""
    bare = re.fullmatch(r"[-+\d., /]*\d[-+\d., /]*", tidy(written)) is not None
    return f"{written.strip()} {unit}" if bare and normalize(unit) != normalize(meant) else written


def _hold_limits(given: Input, entry: Entry, typed: str) -> None:
    value = float(entry.value)
    unit = f" {given.unit_text}" if given.unit_text else ""
    if given.over is not None and value <= given.over:
        raise InputRefused(f"{given.label}: {typed} is not more than {given.over:g}{unit}.", f"Type {_wanted(given)}.")
    if given.low is not None and value < given.low:
        raise InputRefused(f"{given.label}: {typed} is below {given.low:g}{unit}.", f"Type {given.low:g} or more.")
    if given.high is not None and value > given.high:
        raise InputRefused(f"{given.label}: {typed} is above {given.high:g}{unit}.", f"Type {given.high:g} or less.")
    if given.whole and value != int(value):
        raise InputRefused(f"{given.label}: {typed} is not a whole number.", "Type a whole number.")


def _outside_usual(given: Input, entry: Entry) -> list[str]:
    value = float(entry.value)
    unit = f" {given.unit_text}" if given.unit_text else ""
    if given.ask_low is not None and value < given.ask_low:
        return [f"{given.label}: {value:g}{unit} is less than the usual {given.ask_low:g}{unit}; is that meant?"]
    if given.ask_high is not None and value > given.ask_high:
        return [f"{given.label}: {value:g}{unit} is more than the usual {given.ask_high:g}{unit}; is that meant?"]
    return []


def as_read(label: str, cell: Cell) -> str:
    """The note on a formula cell, which is read by its stored value; blank for others."""
    if not cell.formula:
        return ""
    return f"{label} is the formula {cell.formula}; its stored value {_typed(cell)} was read."
