"""Where a new page begins: a short section is not parted, and no head stands alone at the foot of a page."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

_WHOLE, _WHOLE_DENSE = 0.35, 0.2
"""The share of a page up to which a section is never parted, on a sheet that is read and on one with every step."""

_LEAST, _LEAST_DENSE = 80.0, 110.0
"""Points of a section that a page must have room for, or the section begins on the next."""


def page_breaks(
    heights: Mapping[int, float], starts: Sequence[int], rows: int, room: float, dense: bool = False
) -> list[int]:
    """The rows above which a page begins, for sections that begin at ``starts`` and pages with ``room`` points.

    On a ``dense`` sheet only short sections are kept whole.
    """
    breaks: list[int] = []
    used = sum(heights.get(row, 0.0) for row in range(1, starts[0] if starts else rows))
    for start, end in zip(starts, [*starts[1:], rows], strict=True):
        height = sum(heights.get(row, 0.0) for row in range(start, end))
        left = room - used
        if dense:
            whole = height <= room * _WHOLE_DENSE
        else:
            whole = height <= room * _WHOLE or (height <= room and left < room / 2)
        if height > left and used > 0 and (whole or left < (_LEAST_DENSE if dense else _LEAST)):
            breaks.append(start)
            used = 0.0
        for row in range(start, end):
            one = heights.get(row, 0.0)
            used = one if used + one > room else used + one
    return breaks
