"""What may be typed into each box of a workbook, with the message for anything else."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from calc.cells import column_letters
from calc.declared import MOST, Account, Declared, Factor, Input, Kind, Override, Pack, Price, PriceDay, Taxed
from calc.formula.functions import NONE
from calc.intake.schema import divided_by
from calc.layout.page import Page, Typed
from calc.units.algebra import COUNTS

TOP = MOST
"""The most that a number without a limit of its own may be: what is more was typed by mistake."""

_FIRST_DAY, _LAST_DAY = 36526.0, 73050.0
"""January 1, 2000 and December 31, 2099."""

_LONGEST_TEXT = 1000
_LONGEST_LIST = 255
"""Characters that a spreadsheet program keeps of the words of a list."""

Cells = tuple[tuple[int, int], ...]
"""Rows and columns, counting from 0."""


@dataclass(frozen=True)
class BoxRule:
    """What a box may hold: a number within limits, one of some words, a date, or text.

    A number that is ``optional`` may be the word none, ``over`` says that it must be more than ``low``.
    """

    message: str
    low: float | None = None
    high: float = TOP
    over: bool = False
    whole: bool = False
    optional: bool = False
    words: tuple[str, ...] = ()

    @property
    def is_number(self) -> bool:
        """Whether it holds a number, or a date."""
        return self.low is not None


@lru_cache(maxsize=4096)
def rule_of(named: Declared, offered: tuple[str, ...] = ()) -> BoxRule:
    """The rule of the boxes of a declaration. Raises TypeError for one that nobody types.

    ``offered`` are the words of a choice that the job may choose from, where those are not all.
    """
    match named:
        case Input():
            return _of_input(named, offered)
        case Factor():
            divides = named in divided_by()
            return _number(named, low=0.0, over=divides)
        case Price():
            return _number(named, low=0.0, optional=True)
        case Pack():
            return _number(named, low=0.0, over=True, optional=True)
        case Override():
            return _of_override(named)
        case PriceDay():
            return _date(named, optional=True)
        case Taxed():
            return _words(named, ("yes", "no"))
        case Account():
            return _text(named)
    raise TypeError(f"nobody types {named.label}")


def _of_override(override: Override) -> BoxRule:
    limits = override.limits
    low, high = limits.low or limits.over or 0.0, TOP if limits.high is None else limits.high
    return _number(override, low, high, over=limits.over is not None, whole=limits.whole, optional=True)


def _of_input(given: Input, offered: tuple[str, ...]) -> BoxRule:
    if given.kind is Kind.DATE:
        return _date(given, given.optional)
    if given.kind is Kind.CHOICE:
        return _words(given, offered or given.words_allowed)
    if given.kind is Kind.TEXT:
        return _text(given)
    if given.kind is Kind.ROW:
        message = f"Type the number of its row on Prices, or {NONE}."
        return BoxRule(message, 0.0, 1000.0, whole=True, optional=True)
    low = given.low if given.low is not None else given.over
    least = -TOP if given.signed and low is None else low or 0.0
    high = TOP if given.high is None else given.high
    return _number(given, least, high, over=given.over is not None, whole=given.whole, optional=given.optional)


def _number(
    named: Declared, low: float, high: float = TOP, *, over: bool = False, whole: bool = False, optional: bool = False
) -> BoxRule:
    """A number, with what to type in words: such as ``a number of ft from 0.5 to 60, such as 3.5 or =3+6/12``."""
    unit = "" if named.unit_text in COUNTS else named.unit_text
    what = f"{'a whole number' if whole else 'a number'}{f' in {unit}' if unit else ''}"
    ends = [f"more than {low:g}" if over else "" if low == -TOP else f"{low:g} or more"]
    ends += [] if high == TOP else [f"at most {high:g}"]
    limits = ", ".join(filter(None, ends))
    such = ", such as 3.5 or =3+6/12" if unit == "ft" else ""
    nothing = f", or the word {NONE}" if optional else ""
    return BoxRule(f"Type {what}{f', {limits}' if limits else ''}{such}{nothing}.", low, high, over, whole, optional)


def _date(named: Declared, optional: bool) -> BoxRule:
    nothing = f", or the word {NONE}" if optional else ""
    return BoxRule(f"Type a date, such as 4/27/2026{nothing}.", _FIRST_DAY, _LAST_DAY, optional=optional)


def _words(named: Declared, words: tuple[str, ...]) -> BoxRule:
    return BoxRule(f"Type one of: {', '.join(words)}."[:_LONGEST_LIST], words=words)


def _text(named: Declared) -> BoxRule:
    return BoxRule(f"Type at most {_LONGEST_TEXT:,} characters.")


def boxes_of(page: Page) -> Iterator[tuple[Declared, BoxRule, Cells]]:
    """The boxes of a sheet with their rule, those of one declaration together, in the order of the sheet."""
    found: dict[tuple[Declared, tuple[str, ...]], list[tuple[int, int]]] = {}
    for put in page.contents:
        if isinstance(put, Typed):
            found.setdefault((put.named, put.offered), []).append((put.row, put.col))
    for (named, offered), cells in found.items():
        yield named, rule_of(named, offered), tuple(cells)


def validations_of(page: Page) -> Iterator[tuple[Cells, Mapping[str, Any]]]:
    """What the writer is told of the boxes of a sheet: cells with one rule and one title together."""
    together: dict[tuple[str, BoxRule], list[tuple[int, int]]] = {}
    for named, rule, cells in boxes_of(page):
        together.setdefault((_title(named), rule), []).extend(cells)
    for (title, rule), found in together.items():
        yield tuple(found), _told(title, rule, found[0])


def _title(named: Declared) -> str:
    """The title of the message: the label; what all factors or all prices have in common for those."""
    match named:
        case Factor():
            return "Factor"
        case Price() | Pack() | Taxed() | Account() | PriceDay():
            return "Price"
    return named.label if len(named.label) <= 32 else f"{named.label[:29]}..."


def _told(title: str, rule: BoxRule, first: tuple[int, int]) -> dict[str, Any]:
    told: dict[str, Any] = {"error_title": title, "error_message": rule.message, "error_type": "stop"}
    if rule.words:
        return told | {"validate": "list", "source": list(rule.words)}
    if not rule.is_number:
        return told | {"validate": "length", "criteria": "<=", "value": _LONGEST_TEXT}
    if rule.optional or rule.over:
        return told | {"validate": "custom", "value": f"={_condition(rule, first)}"}
    kind = "whole" if rule.whole else "decimal"
    return told | {"validate": kind, "criteria": "between", "minimum": rule.low, "maximum": rule.high}


def _condition(rule: BoxRule, first: tuple[int, int]) -> str:
    """The condition that the first of the cells meets, as a formula that the others take over."""
    cell = f"{column_letters(first[1] + 1)}{first[0] + 1}"
    parts = [f"ISNUMBER({cell})", f"{cell}{'>' if rule.over else '>='}{rule.low:g}", f"{cell}<={rule.high:.0f}"]
    parts += [f"ROUND({cell},0)={cell}"] if rule.whole else []
    holds = f"AND({','.join(parts)})"
    return f'OR({cell}="{NONE}",{holds})' if rule.optional else holds
