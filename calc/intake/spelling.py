"""How near two words are, and ids that differ only in how they are typed."""

from __future__ import annotations

import difflib
import unicodedata
from collections.abc import Iterable, Sequence
from functools import lru_cache

LETTERS = 2
"""So many letters apart, a word may be a slip for another."""


@lru_cache(maxsize=1024)
def normalize(text: str) -> str:
    """``text`` as it is compared: without regard to case, to runs of spaces, or to how accents are written."""
    return " ".join(unicodedata.normalize("NFC", text).casefold().split())


def letters_apart(one: str, another: str, most: int = LETTERS) -> int:
    """How many letters must be changed, added or left out to get from one to another; ``most + 1`` when more."""
    if abs(len(one) - len(another)) > most:
        return most + 1
    above = list(range(len(another) + 1))
    for row, letter in enumerate(one, start=1):
        here = [row]
        for column, other in enumerate(another, start=1):
            here.append(min(above[column] + 1, here[-1] + 1, above[column - 1] + (letter != other)))
        above = here
    return min(above[-1], most + 1)


def near(one: str, another: str) -> bool:
    """Whether two words are so alike that one is probably a slip for the other."""
    apart = letters_apart(normalize(one), normalize(another))
    return apart <= LETTERS and apart < len(normalize(another)) / 2


def nearest(word: str, words: Iterable[str]) -> str:
    """The most alike of ``words``; blank when none is."""
    known = {normalize(each): each for each in words}
    found = difflib.get_close_matches(normalize(word), known, n=1, cutoff=0.6)
    return known[found[0]] if found else ""


def did_you_mean(word: str, words: Iterable[str]) -> str:
    """A sentence that offers the nearest word, or lists them when they are few."""
    listed = list(words)
    found = nearest(word, listed)
    if found:
        return f'Did you mean "{found}"?'
    return f"Type one of: {', '.join(listed)}." if len(listed) <= 12 else "Take it from the list of the blank."


def one_of(words: Sequence[object]) -> str:
    """Words as a choice between them: ``dry, damp or wet``."""
    *first, last = (str(word) for word in words)
    return f"{', '.join(first)} or {last}" if first else last
