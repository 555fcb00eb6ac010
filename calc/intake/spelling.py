"""Comparing ids and words as people type them: normalization, edit distance, suggestions."""

from __future__ import annotations

import difflib
import unicodedata
from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import Final

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


OTHER_WORDS: Final = {
    **dict.fromkeys(("square", "sq", "box", "strip", "slab", "pad", "walk", "rectangular"), ("rectangle",)),
    **dict.fromkeys(("half circle", "half round", "semicircle", "semi-circle", "half-circle"), ("area given",)),
    **dict.fromkeys(("oval", "ellipse", "irregular", "odd", "curved", "kidney", "arc", "free form"), ("area given",)),
    **dict.fromkeys(("l", "l-shape", "l shape", "l-shaped", "polygon", "points", "corners"), ("outline points",)),
    **dict.fromkeys(("round", "disk", "disc"), ("circle",)),
    **dict.fromkeys(("quarter", "quarter round", "quadrant"), ("quarter circle",)),
    **dict.fromkeys(("stations", "sections", "taper", "tapered"), ("cross-sections", "trapezoid")),
    **dict.fromkeys(("labor", "labour", "labourer", "helper", "hand"), ("laborer", "hand")),
    **dict.fromkeys(("mason", "cement mason", "cement finisher", "concrete finisher"), ("finisher",)),
    **dict.fromkeys(("teamster", "truck driver", "trucker", "hauler"), ("driver",)),
    **dict.fromkeys(("crew", "composite", "average"), ("crew mix",)),
    **dict.fromkeys(("dirt", "earth", "ground"), ("soil", "loam")),
    "soil": ("loam",),
    **dict.fromkeys(("gravel", "rocky", "stony", "rock"), ("gravelly",)),
    **dict.fromkeys(("concrete", "old concrete", "rubble", "debris", "demo"), ("concrete debris",)),
    **dict.fromkeys(("green", "brush", "plants", "yard waste", "vegetation"), ("green waste",)),
    **dict.fromkeys(("rebar", "bar", "steel"), ("bars",)),
    **dict.fromkeys(("wire", "wire mesh", "wwm", "wwf", "welded wire"), ("mesh",)),
    **dict.fromkeys(("tailgate", "direct", "truck", "off the truck"), ("chute", "heavy")),
    **dict.fromkeys(("buggy", "barrow", "wheelbarrows", "buggies"), ("wheelbarrow",)),
    **dict.fromkeys(("line pump", "boom", "boom pump", "pumped"), ("pump",)),
    **dict.fromkeys(("bag", "sacks", "bagged", "sack"), ("bags",)),
    **dict.fromkeys(("excavator", "backhoe", "mini", "skid steer", "mini excavator"), ("machine",)),
    **dict.fromkeys(("shovel", "shovels", "by hand"), ("hand",)),
    **dict.fromkeys(("sawcut", "saw cut", "sawed", "sawn", "saw"), ("saw-cut",)),
    **dict.fromkeys(("hand tooled", "grooved", "groover", "tool"), ("tooled",)),
    **dict.fromkeys(("car", "cars", "passenger cars"), ("light",)),
    **dict.fromkeys(("trucks", "delivery trucks"), ("heavy",)),
    **dict.fromkeys(("formed", "forms"), ("form",)),
    **dict.fromkeys(("dowel", "doweled", "dowels", "old slab", "old walk"), ("existing",)),
    **dict.fromkeys(("house", "foundation", "garage"), ("building",)),
    **dict.fromkeys(("x", "true", "1", "ok", "yep"), ("yes",)),
    **dict.fromkeys(("false", "0", "-", "nope"), ("no",)),
    **dict.fromkeys(("davis-bacon", "davis bacon", "public", "union"), ("prevailing",)),
    **dict.fromkeys(("homeowner", "house owner"), ("owner",)),
    "hoa": ("association",),
}
"""What people of the trade write for a choice, and the choices that it may be, where they are in the list."""


def did_you_mean(word: str, words: Iterable[str]) -> str:
    """A sentence that suggests the right word, or lists the words when there are few: no word is better than a wrong
    one.
    """
    choices = list(words)
    other = OTHER_WORDS.get(normalize(word))
    found = next((each for each in other if each in choices), "") if other else nearest(word, choices)
    if found:
        return f'Did you mean "{found}"?'
    return f"Type one of: {', '.join(choices)}." if len(choices) <= 12 else "Choose from the list in the blank book."


def one_of(words: Sequence[object]) -> str:
    """A list of alternatives: ``dry, damp or wet``."""
    *first, last = (str(word) for word in words)
    return f"{', '.join(first)} or {last}" if first else last
