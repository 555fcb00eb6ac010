"""Dates of the week's workbook, as the company writes them: in cells by a number format, in sentences as words.

The formats name their language, so that a spreadsheet program of another one shows the same words.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from math import isnan

from calc.formula.dates import words_of

_EPOCH = date(1899, 12, 30)
_ENGLISH = "[$-409]"
WEEK_DAYS, MONDAY = 7, 2
"""The days of a week, and the remainder of the number of a Monday over them."""


@dataclass(frozen=True)
class DateStyle:
    """How dates are written: the format of a date in a cell, and that of a day of work."""

    full: str
    day: str
    _full_words: str
    _day_words: str

    def full_words(self, number: float) -> str:
        """A date in a sentence, such as Apr 13, 2026."""
        return self._filled(self._full_words, number)

    def day_words(self, number: float) -> str:
        """A day of work in a sentence, such as Mon Apr 13."""
        return self._filled(self._day_words, number)

    def _filled(self, pattern: str, number: float) -> str:
        if isnan(number):
            return NO_DATE
        day = _EPOCH + timedelta(days=int(number))
        weekday, month, _ = words_of(number).split()
        return pattern.format(weekday=weekday, name=month, month=day.month, day=day.day, year=day.year)


NO_DATE = "no date"

WORDS = "words"
"""The usual style."""

COMPANY_DATE = "company date"
"""Stands for the format of a date as the company writes it, in a sheet that many jobs share."""

STYLES = {
    WORDS: DateStyle(
        f"{_ENGLISH}mmm d, yyyy", f"{_ENGLISH}ddd mmm d", "{name} {day}, {year}", "{weekday} {name} {day}"
    ),
    "numbers": DateStyle(
        f"{_ENGLISH}m/d/yyyy", f"{_ENGLISH}ddd m/d", "{month}/{day}/{year}", "{weekday} {month}/{day}"
    ),
    "year first": DateStyle(
        "yyyy-mm-dd", f"{_ENGLISH}ddd mm-dd", "{year}-{month:02}-{day:02}", "{weekday} {month:02}-{day:02}"
    ),
}
"""By the word of the company book."""

CLOCK = f"{_ENGLISH}h:mm AM/PM"
"""A time of day."""


def monday_of(day: float) -> float:
    """The Monday of the week of a day."""
    return day - (day - MONDAY) % WEEK_DAYS
