"""Comparing ids and words as people type them: normalization, edit distance, suggestions."""

from __future__ import annotations

import difflib
import unicodedata
from collections.abc import Iterable, Sequence
from functools import lru_cache

MAX_EDITS = 2
"""A word within this edit distance of another may be a misspelling of it."""


@lru_cache(maxsize=1024)
def normalize(text: str) -> str:
    """``text`` for comparison: without regard to case, repeated spaces, or how accents are encoded."""
    return " ".join(unicodedata.normalize("NFC", text).casefold().split())


def edit_distance(one: str, other: str, limit: int = MAX_EDITS) -> int:
    """The Levenshtein distance of two texts; ``limit + 1`` when it is larger than ``limit``."""
    if abs(len(one) - len(other)) > limit:
        return limit + 1
    previous = list(range(len(other) + 1))
    for row, letter in enumerate(one, start=1):
        current = [row]
        for column, other_letter in enumerate(other, start=1):
            replaced = previous[column - 1] + (letter != other_letter)
            current.append(min(previous[column] + 1, current[-1] + 1, replaced))
        previous = current
    return min(previous[-1], limit + 1)


def is_similar(one: str, other: str) -> bool:
    """Whether ``one`` is probably a misspelling of ``other``."""
    distance = edit_distance(normalize(one), normalize(other))
    return distance <= MAX_EDITS and distance < len(normalize(other)) / 2


def nearest(word: str, words: Iterable[str]) -> str:
    """The most similar of ``words``; blank when none is similar."""
    known = {normalize(each): each for each in words}
    found = difflib.get_close_matches(normalize(word), known, n=1, cutoff=0.6)
    return known[found[0]] if found else ""


def did_you_mean(word: str, words: Iterable[str]) -> str:
    """A sentence that suggests the nearest word, or lists the words when there are few."""
    choices = list(words)
    found = nearest(word, choices)
    if found:
        return f'Did you mean "{found}"?'
    return f"Type one of: {', '.join(choices)}." if len(choices) <= 12 else "Choose from the list in the blank book."


def one_of(words: Sequence[object]) -> str:
    """A list of alternatives: ``dry, damp or wet``."""
    *first, last = (str(word) for word in words)
    return f"{', '.join(first)} or {last}" if first else last
