"""How wide words are in Arial, so that what is laid out fits its columns: no program is asked, and none differs."""

from __future__ import annotations

from collections.abc import Iterator

_EM = {
    0.222: "ijl'",
    0.278: " .,:;!|/tfI[]\\",
    0.333: 'r()-"`·',
    0.5: "ckszvxyJ",
    0.556: "abdeghnopqu0123456789L?$_\u2013",
    0.584: "+<=>~÷\u00d7\u2212",
    0.611: "FTZ",
    0.667: "ABEKPSVXY&",
    0.722: "CDHNRUw",
    0.778: "GOQ",
    0.833: "mM",
    0.889: "%",
    0.944: "W",
    1.0: "…",
}
"""The widths of characters as a share of the size, as the font's own table has them."""

_WIDTH = {character: width for width, characters in _EM.items() for character in characters}
_OTHER = 0.667
"""A character that is not in the table is taken for a wide letter."""

_PIXELS_PER_POINT = 96 / 72
_BOLD = 1.09
"""Bold words are so much wider, or less."""

DIGIT, PADDING = 7, 5
"""Pixels of a unit of a column's width, and of what each column has beside them."""


def width_of(words: str, points: float = 9, bold: bool = False) -> float:
    """The pixels that words take on one line, at 96 to the inch."""
    em = sum(_WIDTH.get(character, _OTHER) for character in words)
    return em * points * _PIXELS_PER_POINT * (_BOLD if bold else 1.0)


def pixels(column: float) -> int:
    """The pixels of a column that is so many characters wide."""
    return round(DIGIT * column + PADDING)


def on_lines(words: str, room: float) -> Iterator[str]:
    """Words on as many lines as they take in ``room`` pixels; a word that is wider than that is cut."""
    line = ""
    for word in words.split(" "):
        longer = f"{line} {word}" if line else word
        if width_of(longer) <= room:
            line = longer
            continue
        if line:
            yield line
        *full, line = _cut(word, room)
        yield from full
    if line:
        yield line


def _cut(word: str, room: float) -> list[str]:
    """A word in parts that fit."""
    parts = [""]
    for character in word:
        if parts[-1] and width_of(parts[-1] + character) > room:
            parts.append("")
        parts[-1] += character
    return parts


def shortened(words: str, room: float) -> str:
    """Words that fit ``room`` pixels, with three dots in place of what does not."""
    if width_of(words) <= room:
        return words
    while words and width_of(f"{words}…") > room:
        words = words[:-1]
    return f"{words.rstrip(' ,;:')}…"
