"""Texts that follow one another over the empty columns of some rows: each begins behind the one before it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import NamedTuple

from calc.layout.grid import Grid
from calc.layout.text_width import text_width

_BETWEEN = 7.0
"""The least pixels between one text and the next."""

_LEAST = 70.0
"""Pixels below which the rest of a row is left empty rather than begun with a text that goes on below."""

Broken = Callable[[float, float], list[str]]
"""The lines of a text, for the room of the first of them and that of the others."""


class Placed(NamedTuple):
    """A line of a text: its row from the first of the flow, its column, its words, and the pixels it may take."""

    row: int
    col: int
    text: str
    room: float


@dataclass
class TextFlow:
    """The free rest of some rows: from ``col`` to ``last`` in the first, from ``below`` on in those that follow."""

    grid: Grid
    col: int
    below: int
    last: int
    row: int = 0
    begun: bool = False
    """Whether a text was laid."""

    def put(self, broken: Broken, width: Callable[[str], float] = text_width) -> list[Placed]:
        """Lays a text behind what was laid before, in as few rows as it takes.

        A text that would take as many rows below begins there, in one piece.
        """
        rest = self.grid.room(self.below, self.last)
        lines, at = self._here(broken, rest), self.col
        if not lines or (self.begun and len(lines) > 1 and len(lines) > len(broken(rest, rest))):
            lines, at = broken(rest, rest), self.below
            self.row += 1
        placed = []
        for place, line in enumerate(lines):
            col = self.below if place else at
            placed.append(Placed(self.row + place, col, line, self.grid.room(col, self.last)))
        end = placed[-1]
        self.row, self.col = end.row, self._behind(end.col, width(end.text))
        self.begun = True
        return placed

    def _here(self, broken: Broken, rest: float) -> list[str]:
        """The lines of a text that begins in the rest of the row; none if there is no room for its beginning."""
        room = self.grid.room(self.col, self.last) if self.col <= self.last else 0.0
        if room <= 0:
            return []
        lines = broken(room, rest)
        if len(lines) > 1 and (room < _LEAST or text_width(lines[0]) > room):
            return []
        return lines if text_width(lines[0]) <= room else []

    def _behind(self, col: int, width: float) -> int:
        """The first column behind a text that begins in ``col``; the one behind the last when there is none."""
        after = col + 1
        while after <= self.last and self.grid.room(col, after - 1) < width + _BETWEEN - 6.0:
            after += 1
        return after
