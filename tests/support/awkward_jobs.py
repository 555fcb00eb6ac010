"""Jobs whose ids, shapes and sizes are awkward for a spreadsheet program."""

from __future__ import annotations

from books import Rows

AREA = ["job", "area", "shape", "length ft", "width ft", "thickness in", "area ft2"]
AWKWARD: dict[str, Rows] = {
    "Jobs": [
        ["job", "bid date", "fiber"],
        *([id_, "2026-04-13", "macro"] for id_ in ("<5", "1E3", "huge")),
    ],
    "Areas": [
        AREA,
        ["<5", "A*", "circle", 6, None, 4, None],
        *(["1E3", f"{number}E3", "", 9 + number, 3, 4, None] for number in range(8)),
        ["huge", "lot", "area given", None, None, 6, 6000],
    ],
}
"""Ids that match wrongly as text, a job of one area, one of eight, and a pour of thirteen trucks."""
