"""The shape that most cautions have: the worst of many rows is past a limit, and is the number that is shown."""

from __future__ import annotations

from calc.declare import *


def worst(
    label: str,
    severity: Severity,
    found: str,
    checked: Line | Input,
    *,
    above: Expr | float = 0,
    unless: Expr | None = None,
    usual: str,
    do: str,
    source: str,
    brief: str = "",
) -> Caution:
    """A caution that is active where the greatest of ``checked`` over its rows is ``above`` a limit.

    The greatest is its number. ``unless`` names what a more severe caution says of the same thing.
    """
    past = greatest(checked) > above
    fires = past if unless is None else both(past, not_(unless))
    return caution(
        label,
        severity,
        fires,
        found,
        greatest(checked),
        checked.unit_text,
        usual=usual,
        do=do,
        source=source,
        brief=brief,
    )
