"""A date in words, alike in a spreadsheet formula and in numbers: ``Mon Apr 27``.

No format code does it: spreadsheet programs write those in the language of the machine.
"""

from __future__ import annotations

from datetime import date, timedelta

import numpy as np

from calc.formula.rounding import Column
from calc.formula.value_types import NONE

_EPOCH = date(1899, 12, 30)
"""Day 0 of the dates of spreadsheet programs, from March 1900 on."""
_WEEKDAYS = ("Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat")
_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def _choose(place: str, words: tuple[str, ...]) -> str:
    listed = ",".join(f'"{word}"' for word in words)
    return f"CHOOSE({place},{listed})"


def sheet_text(day: str) -> str:
    """The formula of the words of the date ``day``."""
    return f'{_choose(f"WEEKDAY({day})", _WEEKDAYS)}&" "&{_choose(f"MONTH({day})", _MONTHS)}&" "&DAY({day})'


def words_of(number: float) -> str:
    """The words of one date, by its number; those of none for no number."""
    if np.isnan(number):
        return NONE
    day = _EPOCH + timedelta(days=int(number))
    return f"{_WEEKDAYS[day.isoweekday() % 7]} {_MONTHS[day.month - 1]} {day.day}"


def weekday(days: Column) -> Column:
    """The weekday of each date, from 1 for Sunday to 7 for Saturday; NaN for no date."""
    return np.asarray((np.floor(days) - 1) % len(_WEEKDAYS) + 1)


def date_words(days: Column) -> Column:
    """The words of each date."""
    texts = [words_of(float(each)) for each in np.ravel(days)]
    return np.array(texts, dtype=object).reshape(np.shape(days))
