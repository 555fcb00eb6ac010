"""Leaves out of a spreadsheet formula what changes nothing: ``x*1``, ``x+0``, a comparison of 0 with 0.

A rule is written for every job. Where a job has no rows of some kind their total is a bare 0, and a unit that is one of
something is a bare 1; in a cell such a piece only hides what the formula does.
"""

from __future__ import annotations

import operator
from collections.abc import Callable, Sequence

from calc.formula.functions import ADDING, CALL

Text = tuple[str, int]
"""The text of a part of a formula and its precedence."""

_TRUE, _FALSE, _ZERO = ("TRUE", CALL), ("FALSE", CALL), ("0", CALL)
"""The two flags never stand in a cell: whatever asks one of them is left out with it."""


def without_dead_pieces(function: str, parts: Sequence[Text]) -> Text | None:
    """What is left of ``function`` of these parts; None where every part matters."""
    rule = _RULES.get(function)
    return rule(*parts) if rule is not None else None


def _add(a: Text, b: Text) -> Text | None:
    if a[0] == "0":
        return b
    if b[0] == "0":
        return a
    return (f"{a[0]}{b[0].removeprefix('0')}", ADDING) if b[0].startswith("0-") else None


def _subtract(a: Text, b: Text) -> Text | None:
    return a if b[0] == "0" else None


def _multiply(a: Text, b: Text) -> Text | None:
    if "0" in (a[0], b[0]):
        return _ZERO
    if a[0] == "1":
        return b
    return a if b[0] == "1" else None


def _divide(a: Text, b: Text) -> Text | None:
    return a if a[0] == "0" or b[0] == "1" else None


def _of_whole(a: Text) -> Text | None:
    """Rounding, and the size, of a whole number."""
    return a if a[0].isdigit() else None


def _root(a: Text) -> Text | None:
    return _ZERO if a[0] == "0" else None


def _to_whole(function: str) -> Callable[[Text, Text], Text | None]:
    """For rounding to whole ones, which needs no division by 1."""

    def rule(a: Text, step: Text) -> Text | None:
        if a[0] == "0":
            return _ZERO
        return (f"{function}(ROUND({a[0]},6),0)", CALL) if step[0] == "1" else None

    return rule


def _extreme(*parts: Text) -> Text | None:
    return parts[0] if len({text for text, _ in parts}) == 1 else None


def _compare(holds: Callable[[int, int], bool]) -> Callable[[Text, Text], Text | None]:
    def rule(a: Text, b: Text) -> Text | None:
        if not (a[0].isdigit() and b[0].isdigit()):
            return None
        return _TRUE if holds(int(a[0]), int(b[0])) else _FALSE

    return rule


def _both(*parts: Text) -> Text | None:
    return _flags(parts, neutral=_TRUE, decides=_FALSE)


def _either(*parts: Text) -> Text | None:
    return _flags(parts, neutral=_FALSE, decides=_TRUE)


def _flags(parts: Sequence[Text], neutral: Text, decides: Text) -> Text | None:
    """``decides`` settles it alone, ``neutral`` says nothing."""
    if decides in parts:
        return decides
    left = [part for part in parts if part != neutral]
    if not left:
        return neutral
    return left[0] if len(left) == 1 else None


def _not(a: Text) -> Text | None:
    return {_TRUE: _FALSE, _FALSE: _TRUE}.get(a)


def _when(condition: Text, yes: Text, no: Text) -> Text | None:
    return yes if yes[0] == no[0] else {_TRUE: yes, _FALSE: no}.get(condition)


_RULES: dict[str, Callable[..., Text | None]] = {
    "add": _add,
    "subtract": _subtract,
    "multiply": _multiply,
    "divide": _divide,
    "abs_": _of_whole,
    "square_root": _root,
    "round_up": _of_whole,
    "round_down": _of_whole,
    "money": _of_whole,
    "rounded": _to_whole("ROUND"),
    "round_up_to": _to_whole("ROUNDUP"),
    "largest": _extreme,
    "smallest": _extreme,
    "more": _compare(operator.gt),
    "not_less": _compare(operator.ge),
    "less": _compare(operator.lt),
    "not_more": _compare(operator.le),
    "equals": _compare(operator.eq),
    "both": _both,
    "either": _either,
    "not_": _not,
    "when": _when,
}
