"""What stands in the input workbooks before anyone types: rows, messages and drop-downs, read off the declarations."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from calc.declared import Factor, Input, Kind, Price
from calc.intake.schema import (
    ACKNOWLEDGEABLE,
    AREAS,
    COMPANY_TABLES,
    EVERY_JOB,
    EXAMPLE,
    FACT_TABLES,
    FACTOR_LIST,
    FACTORS,
    JOBS,
    KEYS,
    LISTS,
    OVERRIDABLE,
    OVERRIDES,
    PRICE_LIST,
    PRICES,
    SITE,
    TABLES,
    Heading,
    Table,
    facts_of,
)
from calc.intake.spelling import one_of
from calc.layout.line_sheets import SAFETY
from calc.trade.inputs.job import Site
from calc.trade.inputs.pour import Ordering
from calc.trade.ordering.order import Order

Typed = str | float
"""What stands in a cell: words and dimensions as a person types them, a day as 2026-04-13, a price as a number."""

COMPANY_SHEETS = (*COMPANY_TABLES, SITE)
"""The sheets of the house book, in order."""

_YES_NO = ("yes", "no")
_EITHER = "yes or no"

_NEEDED = frozenset({*KEYS, "fact", "line", "reason", "who", "item", "factor"} - {"area"})
"""The columns that have no declaration and cannot be left blank."""

_EXAMPLES: dict[str, dict[str, str]] = {
    SITE: {"fact": Site.fiber_dose.header, "value": Site.fiber_dose.example},
    OVERRIDES: {
        "area": "", "line": Order.quantity.label, "value": Ordering.fixed.example,
        "reason": Ordering.reason.example, "who": "AB",
    },
}  # fmt: skip
"""The examples of the sheets whose columns say only what kind of thing is typed."""

_ANY_BOOK = (
    "Click a header to read what goes under it. A heavy line under a header means that the column is needed. Columns "
    "may stand in any order, and those that you do not use may be deleted.",
    'Type dimensions as you write them: 12\' 6", 10-6, 4 1/2", 3.2 m, 45 cm, 100 mm. A bare number is in the unit of '
    "its header; a unit that you type beats the header.",
    "A blank cell takes its default, and every default taken is listed with the bid. A zero is a zero, not a blank.",
    f"A cell with a list takes a word of that list. All the words stand on the sheet {LISTS}.",
    "Cells are text cells, so that 1/2 and 24-03 stay what you typed. When you paste, paste values only. Do not merge "
    "cells.",
)
_LAST = f"{SAFETY} The code where you work, the city's own detail and the mix supplier always win over this book."
WEEK_WORDS = (
    f"Only {JOBS} and {AREAS} are needed: a row in {JOBS} for each job, and a row in {AREAS} for each piece of slab, "
    "with the id of its job.",
    *_ANY_BOOK,
    f"Rows with the job {EXAMPLE} are passed over: leave them, or type over them.",
    f"{SITE} takes what is special about a job. {OVERRIDES} forces a line or accepts a stop, with a reason and a name.",
    "The firm, its prices and its factors stand in the house book, house.xlsx, which is kept beside this one all year.",
    _LAST,
)
"""How to fill the week's book: ten lines."""

COMPANY_WORDS = (
    "Keep this book beside the books of the weeks, as house.xlsx. It holds what is the same for every job.",
    *_ANY_BOOK,
    f"{PRICES} has a row for everything that is bought. There is no default price: a line that needs one says so.",
    f"{FACTORS} has a row for every number of the trade. A blank value keeps the usual one, which stands beside it.",
    f"{SITE} takes what usually holds: its rows have the job {EVERY_JOB}. The week's book says where a job differs.",
    _LAST,
)
"""How to fill the house book: ten lines."""


@dataclass
class Row:
    """A row by header: its cells, those that are ``printed`` and not for typing, and the messages on its cells.

    ``words`` are those that its value is one of, when it is a choice.
    """

    cells: dict[str, Typed]
    example: bool = False
    printed: frozenset[str] = frozenset()
    messages: dict[str, str] = field(default_factory=dict)
    words: tuple[str, ...] = ()


@dataclass(frozen=True)
class DropDownList:
    """The words of one drop-down, and the columns of what is said beside each."""

    title: str
    words: tuple[str, ...]
    beside: tuple[tuple[str, tuple[str, ...]], ...] = ()


def example_row(table: Table) -> Row:
    """The example row of a sheet: what its own choices ask for, and nothing that they leave unused."""
    return Row({heading.header: _example(table, heading) for heading in table.headings}, example=True)


def _example(table: Table, heading: Heading) -> str:
    given = heading.given
    if given is None:
        return _EXAMPLES.get(table.name, {}).get(heading.label, heading.example)
    if given.section.table != table.name or (given.used_if is not None and not _asked_for(given)):
        return ""
    return str(_usual_word(given)) if given.kind is Kind.CHOICE else heading.example


def _usual_word(choice: Input) -> float | str | None:
    return choice.example or choice.default


def _asked_for(given: Input) -> bool:
    """Whether the usual word of the choice that a given hangs on makes it used."""
    if given.used_if is None:
        return True
    choice, *words = given.used_if
    return isinstance(choice, Input) and _usual_word(choice) in words


def needed(heading: Heading) -> bool:
    """Whether a row needs this column, unless one of its choices says otherwise."""
    given = heading.given
    if given is None:
        return heading.label in _NEEDED
    return given.required or (given.needed_if is not None and _asked_for(given))


def standing_rows(name: str) -> list[Row]:
    """The rows of a sheet of the house book that are there from the start; none where the house lists its own."""
    if name in FACT_TABLES:
        return [_fact_row(name, given) for given in facts_of(name)]
    if name == PRICES:
        return [_price_row(price) for price in PRICE_LIST]
    if name == FACTORS:
        return [_factor_row(factor, place) for factor in FACTOR_LIST for place in range(len(factor.values))]
    return []


def _fact_row(name: str, given: Input) -> Row:
    keys = {key: EVERY_JOB for key in FACT_TABLES[name]}
    cells: dict[str, Typed] = {**keys, "fact": given.header}
    return Row(cells, False, frozenset(cells), {"value": _message_of(given, given.help)}, given.words_allowed)


def _price_row(price: Price) -> Row:
    messages = {"price": price.help}
    if price.pack is not None:
        held, _, pack = price.pack.unit_text.partition("/")
        messages["size"] = f"How many {held} one {pack} holds."
    return Row({"item": price.label, "unit": price.unit_text}, False, frozenset({"item", "unit"}), messages)


def _factor_row(factor: Factor, place: int) -> Row:
    usual = f"{factor.values[place]:.6f}".rstrip("0").rstrip(".")
    cells: dict[str, Typed] = {
        "factor": factor.label, "for": factor.level.axis.words[place] if factor.level.axes else "",
        "unit": factor.unit_text, "usual": usual, "source": _sentence(factor.source),
    }  # fmt: skip
    message = f"Blank keeps the usual {usual} {factor.unit_text}".rstrip() + "."
    if factor.low is not None and factor.high is not None:
        message += f" It is mostly from {factor.low:g} to {factor.high:g}."
    return Row(cells, False, frozenset(cells), {"value": message})


def message(heading: Heading) -> str:
    """What the header tells a person to type."""
    if heading.given is not None:
        return _message_of(heading.given, heading.help)
    said = "required" in heading.help or not needed(heading)
    return _sentence(heading.help) if said else f"{_sentence(heading.help)} Needed."


def _message_of(given: Input, help_text: str) -> str:
    return " ".join(filter(None, (_sentence(help_text), *_how(given), _when_blank(given))))


def _how(given: Input) -> tuple[str, ...]:
    if given.kind is Kind.CHOICE:
        return (f"Type {one_of(given.words_allowed)}.",)
    unit = f"Unit: {given.unit_text}." if given.kind is Kind.NUMBER and given.unit_text else ""
    return unit, f"Example: {given.example}." if given.example else ""


def _when_blank(given: Input) -> str:
    if given.required:
        return "Needed."
    if given.needed_if is not None:
        choice, *words = given.needed_if
        asked = choice.label.lower() if isinstance(choice, Input) else ""
        return f"Needed where {asked} is {one_of(words)}."
    if given.kind is Kind.CHOICE:
        return f"Blank means {given.default}."
    if given.kind is Kind.NUMBER and given.default is not None:
        return f"Blank means {given.default:g}."
    return "It may be left blank."


def _sentence(text: str) -> str:
    return f"{text[:1].upper()}{text[1:].rstrip('.')}."


def drop_downs_of(names: Sequence[str]) -> list[DropDownList]:
    """Every drop-down of these sheets, in order."""
    rolls = [drop_down_of(TABLES[name], heading) for name in names for heading in TABLES[name].headings]
    rolls += [
        _of_choice(name, given)
        for name in names if name in FACT_TABLES
        for given in facts_of(name)
    ]  # fmt: skip
    return list({roll.title: roll for roll in rolls if roll.words}.values())


def drop_down_of(table: Table, heading: Heading) -> DropDownList:
    """The drop-down of a column; one without words when any words may be typed."""
    if heading.given is not None:
        return _of_choice(table.name, heading.given)
    title = f"{table.name}: {heading.header}"
    if heading.label == "fact":
        facts = facts_of(table.name)
        beside = (("what it is", tuple(_sentence(each.help) for each in facts)),)
        return DropDownList(title, tuple(each.header for each in facts), beside)
    if heading.label == "line":
        stops = tuple(each.label for each in ACKNOWLEDGEABLE.values())
        units = (*(each.unit_text for each in OVERRIDABLE.values()), *("a stop" for _ in stops))
        return DropDownList(title, (*(each.label for each in OVERRIDABLE.values()), *stops), (("unit", units),))
    if heading.label == "taxable":
        return DropDownList(_EITHER, _YES_NO)
    words = {
        "item": [each.label for each in PRICE_LIST],
        "factor": [each.label for each in FACTOR_LIST],
        "for": [word for each in FACTOR_LIST if each.level.axes for word in each.level.axis.words],
    }.get(heading.label, [])  # fmt: skip
    return DropDownList(title, tuple(dict.fromkeys(words)))


def _of_choice(name: str, given: Input) -> DropDownList:
    """All the columns that take yes or no share one list."""
    if given.words_allowed == _YES_NO:
        return DropDownList(_EITHER, _YES_NO)
    return DropDownList(f"{name}: {given.label.lower()}", given.words_allowed)
