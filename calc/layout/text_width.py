"""The room of a text on a sheet, and the lines that it takes there."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache

from calc.layout.arial import pixels, width_of

_MARGIN = 6.0
"""Pixels that a cell keeps free at its two sides."""

_VOWELS = "aeiouy"
_PARTS = re.compile(r"[^ ]* ?")
_CODE_PARTS = re.compile(r"[^,+*/&-]*[,+*/&-]?")


text_width = lru_cache(maxsize=65536)(width_of)
"""The width of a text on one line, in pixels; most texts are asked for again and again."""


def room_of(widths: Sequence[float], first: int, last: int) -> float:
    """The pixels that a text has from one column to another."""
    return sum(pixels(width) for width in widths[first : last + 1]) - _MARGIN


def wrapped(text: str, room: float, first: float | None = None) -> list[str]:
    """The lines of a text, none wider than ``room`` pixels as far as its words allow; ``first``: that of the first."""
    return list(_filled(_PARTS, text, room, room if first is None else first))


def wrapped_code(text: str, room: float, first: float | None = None) -> list[str]:
    """The lines of a formula, broken behind its operators and commas."""
    return list(_filled(_CODE_PARTS, text, room, room if first is None else first))


@lru_cache(maxsize=16384)
def _filled(pattern: re.Pattern[str], text: str, room: float, first: float) -> tuple[str, ...]:
    """The lines of a text of which no part that the pattern finds is broken; most are asked for in every layout."""
    lines: list[str] = []
    line, width = "", 0.0
    for part in pattern.findall(text):
        if line and width + text_width(part.rstrip()) > (room if lines else first):
            lines.append(line.rstrip())
            line, width = "", 0.0
        line += part
        width += text_width(part)
    return (*lines, line.rstrip()) if line.strip() or not lines else tuple(lines)


@lru_cache(maxsize=4096)
def heading(text: str, room: float, size: float = 9, bold: bool = True) -> list[str]:
    """The lines of the head of a column; a word that is wider than the column is broken with a hyphen."""
    parts = [piece for word in text.split(" ") for piece in _broken(word, room, size, bold)]
    lines: list[str] = []
    for part in parts:
        if lines and not lines[-1].endswith("-") and text_width(f"{lines[-1]} {part}", size, bold) <= room:
            lines[-1] = f"{lines[-1]} {part}"
        else:
            lines.append(part)
    return lines


def _broken(word: str, room: float, size: float, bold: bool) -> list[str]:
    """A word in pieces that fit, broken between a vowel and a consonant where there is such a place."""
    pieces: list[str] = []
    while text_width(word, size, bold) > room and len(word) > 5:
        fitting = [at for at in range(3, len(word) - 2) if text_width(f"{word[:at]}-", size, bold) <= room]
        if not fitting:
            break
        soft = [at for at in fitting if word[at - 1].lower() in _VOWELS and word[at].lower() not in _VOWELS]
        at = (soft or fitting)[-1]
        pieces.append(f"{word[:at]}-")
        word = word[at:]
    return [*pieces, word]
