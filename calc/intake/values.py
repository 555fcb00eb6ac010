"""The value of one cell: what may be typed in it, and what to type instead of what may not."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date, datetime, timedelta
from typing import NamedTuple

from calc.cells import Cell, Kind
from calc.declared import LEAST, MOST, Input, Limits, Override
from calc.declared import Kind as InputKind
from calc.errors import FindingKind, InputRefused
from calc.intake.records import Entry
from calc.intake.spelling import did_you_mean, normalize
from calc.trade.inputs.money import Terms
from calc.units.parse import read_quantity, read_slope, tidy

MAX_INPUT_TEXT = 2000
"""Characters of one text input."""

MAX_ID = 60
"""Characters of an id."""

_INVISIBLE = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\ufffe\uffff]")
"""Control characters that XML cannot store; tab and line breaks are allowed."""

MONEY_SHARES = (Terms.margin, Terms.overhead, Terms.contingency, Terms.tax, Terms.retainage)
"""The shares of money of a job: people type them as a part of 1, too."""

_EPOCH = date(1899, 12, 30)
"""Day 0 of spreadsheet date numbers."""


class Remark(NamedTuple):
    """A question or a note about a value that was read."""

    kind: FindingKind
    text: str


class ReadValue(NamedTuple):
    """The entry of a cell, with the questions and notes about it."""

    entry: Entry
    remarks: tuple[Remark, ...] = ()


def serial(day: date) -> float:
    """The spreadsheet date number of a day."""
    return float((day - _EPOCH).days)


def day_of(serial_number: float) -> date:
    """The day of a spreadsheet date number."""
    return _EPOCH + timedelta(days=int(serial_number))


def read_input(given: Input, cell: Cell, unit: str, origin: str) -> ReadValue:
    """The entry for the input ``given`` from ``cell``, with questions and notes.

    ``unit`` is the unit of a number without one. Raises InputRefused with what was found and what to type.
    """
    refuse_cell_type(cell, given.label, _expected(given), given.unit_text, given.kind is InputKind.DATE)
    if given.kind in (InputKind.TEXT, InputKind.ROW):
        return ReadValue(Entry(read_text(cell), "", as_text(cell), origin))
    if given.kind is InputKind.CHOICE:
        return _choice(given, cell, origin)
    if given.kind is InputKind.DATE:
        return _date(given, cell, origin)
    return _number(given, cell, unit, origin)


def refuse_cell_type(cell: Cell, label: str, expected: str, unit_text: str = "", a_date: bool = False) -> None:
    """Refuses a cell that has no value, or a value that the spreadsheet program changed to another type.

    ``expected`` says what may be typed, in a few words; ``a_date`` that it may be a date.
    """
    example = f"Type {expected}."
    if cell.merged:
        raise InputRefused(
            FindingKind.MERGED_CELLS,
            f"{label} is in the merged cells {cell.merged}.",
            "Unmerge them and type it again.",
        )
    if cell.kind is Kind.ERROR:
        raise InputRefused(FindingKind.CELL_ERROR, f"{label} is the error {cell.value}.", example)
    if cell.kind is Kind.UNCOMPUTED:
        raise InputRefused(
            FindingKind.UNCOMPUTED_FORMULA,
            f"{label} is the formula {cell.value}, whose value was never stored.",
            "Open the book in a spreadsheet program and save it, or type the value.",
        )
    if cell.kind is Kind.BOOLEAN:
        found = f"{label} is the logical value {str(cell.value).upper()}."
        raise InputRefused(FindingKind.WRONG_CELL_TYPE, found, example)
    if cell.kind is Kind.DURATION and unit_text != "h":
        remedy = f"{example} Format the cell as text first."
        raise InputRefused(FindingKind.WRONG_CELL_TYPE, f"{label} became the time {cell.value}.", remedy)
    if cell.kind is Kind.DATE and not a_date:
        raise InputRefused(
            FindingKind.BECAME_A_DATE,
            f"{label} became the date {as_text(cell)}: was something like 1/2 or 4-1/2 typed?",
            f"Format the cell as text, then type {expected}.",
        )


def _expected(given: Input) -> str:
    """What may be typed for ``given``, in a few words."""
    if given.kind is InputKind.CHOICE:
        return " or ".join(given.words_allowed)
    if given.kind is InputKind.DATE:
        return f"a date, for example {given.example or '2026-04-13'}"
    if given.kind in (InputKind.TEXT, InputKind.ROW):
        return "text"
    return a_number(given.unit_text, given.example)


def a_number(unit_text: str, example: str = "") -> str:
    """What may be typed for a number, in a few words."""
    unit = f" of {unit_text}" if unit_text else ""
    return f"a number{unit}, for example {example or '1'}"


def as_text(cell: Cell) -> str:
    """The value of a cell as text: a date as year-month-day, a whole number without a decimal point."""
    if isinstance(cell.value, datetime):
        return cell.value.date().isoformat()
    if isinstance(cell.value, float) and cell.value.is_integer():
        return str(int(cell.value))
    return str(cell.value)


def read_text(cell: Cell) -> str:
    """The text of a cell. Raises InputRefused when it is too long or has a control character."""
    text = as_text(cell)
    if len(text) > MAX_INPUT_TEXT:
        found = f"The text has {len(text):,} characters."
        raise InputRefused(FindingKind.TEXT_TOO_LONG, found, f"Type at most {MAX_INPUT_TEXT:,}.")
    control = _INVISIBLE.search(text)
    if control:
        raise InputRefused(
            FindingKind.INVISIBLE_CHARACTER,
            f"The text has an invisible control character (code {ord(control[0])}) after {control.start()} characters.",
            "Clear the cell and type the text instead of pasting it.",
        )
    return text


def read_id(cell: Cell, label: str) -> str:
    """An id: text, or a whole number as its digits. Raises InputRefused for anything else."""
    retype = "Format the cell as text, then type the id again."
    if cell.kind is Kind.DATE:
        raise InputRefused(FindingKind.INVALID_ID, f"The {label} became the date {as_text(cell)}.", retype)
    if cell.kind is Kind.TEXT:
        text = str(cell.value).strip()
    elif cell.kind is Kind.NUMBER and isinstance(cell.value, (int, float)) and float(cell.value).is_integer():
        text = str(int(cell.value))
    else:
        raise InputRefused(FindingKind.INVALID_ID, f"The {label} is {as_text(cell)}.", retype)
    if len(text) > MAX_ID:
        found = f"The {label} has {len(text):,} characters."
        raise InputRefused(FindingKind.INVALID_ID, found, f"Type at most {MAX_ID}.")
    if re.search(r"[\x00-\x1f]", text):
        found = f"The {label} has a line break or another control character."
        raise InputRefused(FindingKind.INVALID_ID, found, "Type it on one line.")
    return text


_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_NUMERIC_DATE = re.compile(r"(\d{1,4})[-/.](\d{1,2})[-/.](\d{1,4})")
_WORDY_DATE = re.compile(r"(?:[a-z]{3,9},? +)?([a-z]{3,9})\.? +(\d{1,2})(?:st|nd|rd|th)?,? +(\d{4})")
_DAY_FIRST_DATE = re.compile(r"(\d{1,2})(?:st|nd|rd|th)? +([a-z]{3,9})\.?,? +(\d{4})")


def date_of(text: str) -> date | None:
    """The day that a text names, month first: 2026-05-04, 2026-5-4, 5/4/2026, 5/4/26, May 4, 2026. None for no date."""
    typed = " ".join(text.lower().split())
    if found := _NUMERIC_DATE.fullmatch(typed):
        first, second, third = found.groups()
        year, month, day = (first, second, third) if len(first) == 4 else (third, first, second)
        year = f"20{year}" if len(year) == 2 else year
        if len(year) != 4:
            return None
        return _day(year, int(month), day)
    if found := _WORDY_DATE.fullmatch(typed):
        return _day(found[3], _month(found[1]), found[2])
    if found := _DAY_FIRST_DATE.fullmatch(typed):
        return _day(found[3], _month(found[2]), found[1])
    return None


def _month(word: str) -> int:
    """The number of a month by its name; 0 for no month."""
    return next((at for at, name in enumerate(_MONTHS, start=1) if word.startswith(name)), 0)


def _day(year: str, month: int, day: str) -> date | None:
    try:
        return date(int(year), month, int(day))
    except ValueError:
        return None


def date_note(cell: Cell) -> str:
    """What a date was read as, where its day and its month could be the other way round; else blank."""
    found = _NUMERIC_DATE.fullmatch(str(cell.value).strip()) if cell.kind is Kind.TEXT else None
    if found is None or len(found[1]) == 4 or int(found[1]) > 12 or int(found[2]) > 12 or found[1] == found[2]:
        return ""
    day = date_of(str(cell.value))
    return f"{cell.value} was read with the month first: {day:%b} {day.day}, {day.year}." if day else ""


def read_date(cell: Cell) -> float:
    """A day from a date cell, or from text such as 2026-04-13 or 4/13/2026. Raises InputRefused for anything else."""
    day = cell.value.date() if isinstance(cell.value, datetime) else None
    if day is None and cell.kind is Kind.TEXT:
        day = date_of(str(cell.value))
    if day is None:
        remedy = "Type it with the month first, such as 4/13/2026, or as 2026-04-13."
        raise InputRefused(FindingKind.NOT_A_DATE, f'"{as_text(cell)}" is not a date.', remedy)
    if not 2000 <= day.year <= 2100:
        found = f"The date {day.isoformat()} is out of range."
        raise InputRefused(FindingKind.OUT_OF_RANGE, found, "Type a day from 2000 to 2100.")
    return serial(day)


def read_choice(choices: tuple[str, ...], cell: Cell) -> str:
    """The choice that a cell names, ignoring case. Raises InputRefused with the closest one."""
    typed = normalize(as_text(cell))
    known = {normalize(choice): choice for choice in choices}
    if choices == ("yes", "no"):
        known |= {"y": "yes", "n": "no"}
    if typed not in known:
        found = f'"{as_text(cell)}" is not a valid choice.'
        raise InputRefused(FindingKind.INVALID_CHOICE, found, did_you_mean(as_text(cell), choices))
    return known[typed]


def labeled(label: str, refused: InputRefused) -> InputRefused:
    """The same refusal with the label of the input in front of what was found, unless it stands there."""
    if refused.found.startswith(f"{label} "):
        return refused
    return InputRefused(refused.kind, f"{label}: {refused.found}", refused.remedy)


def _date(given: Input, cell: Cell, origin: str) -> ReadValue:
    try:
        note = date_note(cell)
        remarks = (Remark(FindingKind.NUMBER_READ_AS, f"{given.label}: {note}"),) if note else ()
        return ReadValue(Entry(read_date(cell), "", as_text(cell), origin), remarks)
    except InputRefused as refused:
        raise labeled(given.label, refused) from None


def _choice(given: Input, cell: Cell, origin: str) -> ReadValue:
    try:
        return ReadValue(Entry(read_choice(given.words_allowed, cell), "", as_text(cell), origin))
    except InputRefused as refused:
        raise labeled(given.label, refused) from None


def _number(given: Input, cell: Cell, unit: str, origin: str) -> ReadValue:
    slope = given.kind is InputKind.SLOPE
    try:
        read = read_number(cell, given.unit_text, unit, given.signed, slope, origin)
        entry, remarks = share_of_money(read, cell) if any(given is each for each in MONEY_SHARES) else read
    except InputRefused as refused:
        raise labeled(given.label, refused) from None
    texts = [Remark(each.kind, f"{given.label}: {each.text}") for each in remarks]
    within = check_limits(given.limits, given.label, given.unit_text, _expected(given), entry, as_text(cell))
    return ReadValue(entry, (*texts, *within))


def read_forced(override: Override, cell: Cell, label: str, origin: str) -> ReadValue:
    """The value that a line is forced to, read as an input is. Raises InputRefused as :func:`read_input` does."""
    unit, expected = override.unit_text, a_number(override.unit_text)
    refuse_cell_type(cell, label, expected, unit)
    try:
        entry, remarks = read_number(cell, unit, unit, False, False, origin)
    except InputRefused as refused:
        raise labeled(label, refused) from None
    texts = [Remark(each.kind, f"{label}: {each.text}") for each in remarks]
    return ReadValue(entry, (*texts, *check_limits(override.limits, label, unit, expected, entry, as_text(cell))))


def read_number(cell: Cell, meant: str, unit: str, signed: bool, slope: bool, origin: str) -> ReadValue:
    """A number converted to the unit ``meant``; ``unit`` is the unit of a number without one.

    Raises InputRefused for no number, and for one that is too large or too small for anything that is bid.
    """
    read = _read_number(cell, meant, unit, signed, slope, origin)
    size = abs(float(read.entry.value))
    if size > MOST:
        found, remedy = f"{as_text(cell)} is more than any number of a bid.", f"Type at most {MOST:,.0f}."
        raise InputRefused(FindingKind.OUT_OF_RANGE, found, remedy)
    if 0 < size < LEAST:
        found, remedy = f"{as_text(cell)} is less than a millionth, and not 0.", "Type 0, or the number that is meant."
        raise InputRefused(FindingKind.OUT_OF_RANGE, found, remedy)
    return read


def _read_number(cell: Cell, meant: str, unit: str, signed: bool, slope: bool, origin: str) -> ReadValue:
    if meant == "%" and not slope and cell.kind is Kind.NUMBER and "%" in cell.number_format:
        return _percent_cell(cell, signed, origin)
    if cell.kind is Kind.NUMBER and isinstance(cell.value, (int, float)):
        typed = as_text(cell)
        if normalize(unit) == normalize(meant) and not slope:
            value = float(cell.value)
            if value < 0 and not signed:
                remedy = "Type a number that is not below 0."
                raise InputRefused(FindingKind.OUT_OF_RANGE, f"{typed} is negative.", remedy)
            return ReadValue(Entry(value, "", typed, origin))
        written = typed if "e" not in typed else f"{float(cell.value):.12f}"
    else:
        typed = written = str(cell.value)
    if slope:
        reading = read_slope(written, meant)
    else:
        with_unit = _with_unit(written, unit, meant)
        typed = with_unit if with_unit != written else typed
        reading = read_quantity(with_unit, meant, signed=signed)
    entry = Entry(reading.value, reading.formula, typed, origin, feet_and_inches=reading.feet_and_inches)
    texts = ((FindingKind.AMBIGUOUS_NUMBER, reading.ask), (FindingKind.NUMBER_READ_AS, reading.note))
    return ReadValue(entry, tuple(Remark(kind, text) for kind, text in texts if text))


def _percent_cell(cell: Cell, signed: bool, origin: str) -> ReadValue:
    """A cell that a spreadsheet program shows as a percentage: 8.25 % is stored as 0.0825."""
    assert isinstance(cell.value, (int, float))
    percent = float(f"{cell.value * 100:.12g}")
    if percent < 0 and not signed:
        remedy = "Type a number that is not below 0."
        raise InputRefused(FindingKind.OUT_OF_RANGE, f"{percent:g} % is negative.", remedy)
    return ReadValue(Entry(percent, "", f"{percent:.12g}%", origin))


def share_of_money(read: ReadValue, cell: Cell) -> ReadValue:
    """A share of money below 1 without a percent sign, such as .0825, is a part of 1: 8.25 %, which is asked."""
    value = float(read.entry.value)
    bare = "%" not in f"{cell.value}{cell.number_format}" and "percent" not in str(cell.value).lower()
    if not bare or not 0 < value < 1:
        return read
    percent = float(f"{value * 100:.12g}")
    typed = as_text(cell)
    ask = f"{typed} was taken as {percent:g} %. Type {percent:g} % for that, or {typed} % if that is meant."
    entry = replace(read.entry, value=percent, formula="")
    return ReadValue(entry, (*read.remarks, Remark(FindingKind.AMBIGUOUS_NUMBER, ask)))


def _with_unit(written: str, unit: str, meant: str) -> str:
    """The text with ``unit`` after it, when it is a number without a unit and ``unit`` is not the declared one."""
    bare = re.fullmatch(r"[-+\d., /]*\d[-+\d., /]*", tidy(written)) is not None
    return f"{written.strip()} {unit}" if bare and normalize(unit) != normalize(meant) else written


def check_limits(
    limits: Limits, label: str, unit_text: str, expected: str, entry: Entry, typed: str
) -> tuple[Remark, ...]:
    """The question about a number outside its usual range. Raises InputRefused for one outside its limits."""
    value, text = float(entry.value), f"{label}: {typed}"
    unit = f" {unit_text}" if unit_text else ""
    if limits.over is not None and value <= limits.over:
        found = f"{text} is not more than {limits.over:g}{unit}."
        raise InputRefused(FindingKind.OUT_OF_RANGE, found, f"Type {expected}.")
    if limits.low is not None and value < limits.low:
        found = f"{text} is below {limits.low:g}{unit}."
        raise InputRefused(FindingKind.OUT_OF_RANGE, found, f"Type {limits.low:g} or more.")
    if limits.high is not None and value > limits.high:
        found = f"{text} is above {limits.high:g}{unit}."
        raise InputRefused(FindingKind.OUT_OF_RANGE, found, f"Type {limits.high:g} or less.")
    if limits.whole and value != int(value):
        raise InputRefused(FindingKind.NOT_A_WHOLE_NUMBER, f"{text} is not a whole number.", "Type a whole number.")
    for outside, limit, words in (
        (limits.ask_low is not None and value < limits.ask_low, limits.ask_low, "less"),
        (limits.ask_high is not None and value > limits.ask_high, limits.ask_high, "more"),
    ):
        if outside:
            asked = f"{label}: {value:g}{unit} is {words} than the usual {limit:g}{unit}. Is that correct?"
            return (Remark(FindingKind.UNUSUAL_VALUE, asked),)
    return ()
